package org.thirstline.io.plots;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import org.thirstline.io.text.Nearest;
import org.thirstline.model.engine.GrowthCalendar;
import org.thirstline.model.error.InputException;
import org.thirstline.model.weather.Site;

/** Reads the rows of plot data that are no yields. Confined to one reading. */
final class MeasurementReader {

    private static final double DEEPEST_M = 10.0;
    private static final double LARGEST_ERROR_SHARE = 2.0;

    private final Site site;
    private final List<PlotObservation> observations = new ArrayList<>();

    MeasurementReader(Site site) {
        this.site = site;
    }

    List<PlotObservation> observations() {
        return observations;
    }

    /** Returns what tells the row from others of its plot, or null where the value is missing. */
    @Nullable
    String add(PlotColumns columns, PlotVariable variable, int line, String zone, String plot, int planted) {
        String unit = columns.needed(PlotColumns.UNIT, String.join(", ", variable.units()));
        double depthM = depth(columns, variable);
        double factor = factor(variable, unit, depthM);
        LocalDate date = variable.timing() == PlotVariable.Timing.DAY ? columns.date(PlotColumns.DATE) : null;
        double value;
        int year;
        if (variable.timing() == PlotVariable.Timing.DATE) {
            LocalDate seen = seenDate(columns, unit);
            if (seen == null) {
                return null;
            }
            date = seen;
            year = GrowthCalendar.growthYear(site, seen);
            value = ChronoUnit.DAYS.between(GrowthCalendar.firstDay(site, year), seen) + 1.0;
        } else {
            value = factor * columns.number(columns.at(PlotColumns.VALUE));
            if (Double.isNaN(value)) {
                return null;
            }
            requirePossible(columns, variable, unit, value);
            year = date == null ? columns.growthYear(site) : GrowthCalendar.growthYear(site, date);
        }
        if (year < planted) {
            throw new InputException(PlotError.BEFORE_PLANTING, year, planted);
        }
        double error = error(columns, factor, variable);
        observations.add(new PlotObservation(line, zone, plot, planted, year, variable, date, depthM, value, error));
        return variable.key()
                + (variable.timing() == PlotVariable.Timing.DAY ? " on " + date : " of " + year)
                + (Double.isNaN(depthM) ? "" : " to " + depthM + " m");
    }

    private static double factor(PlotVariable variable, String unit, double depthM) {
        double factor = variable.factor(unit, depthM)
                .orElseThrow(() -> new InputException(
                        PlotError.UNIT_OF_VARIABLE,
                        unit,
                        variable.key(),
                        String.join(", ", variable.units()),
                        Nearest.hint(unit, variable.units())));
        if (Double.isNaN(factor)) {
            throw new InputException(PlotError.DEPTH_MISSING, unit);
        }
        return factor;
    }

    private static void requirePossible(PlotColumns columns, PlotVariable variable, String unit, double value) {
        if (!(value >= 0.0 && value <= variable.highest())) {
            throw new InputException(
                    PlotError.VALUE_IMPOSSIBLE,
                    columns.written(columns.at(PlotColumns.VALUE)) + " " + unit,
                    variable.key(),
                    PlotReader.text(variable.highest()),
                    variable.unit());
        }
    }

    private static double depth(PlotColumns columns, PlotVariable variable) {
        double depthM = columns.number(columns.at(PlotColumns.DEPTH));
        if (variable != PlotVariable.SOIL_WATER) {
            return Double.NaN;
        }
        if (depthM <= 0.0 || depthM > DEEPEST_M) {
            throw new InputException(
                    PlotError.BAD_FIELD,
                    PlotColumns.DEPTH,
                    columns.written(columns.at(PlotColumns.DEPTH)),
                    "a depth in metres, 0 to 10, or nothing for the whole profile");
        }
        return depthM;
    }

    private @Nullable LocalDate seenDate(PlotColumns columns, String unit) {
        if (columns.text(PlotColumns.VALUE) == null) {
            return null;
        }
        if (unit.strip().toLowerCase(Locale.ROOT).equals(PlotVariable.DATE_UNIT)) {
            return columns.date(PlotColumns.VALUE);
        }
        double day = columns.number(columns.at(PlotColumns.VALUE));
        if (Double.isNaN(day)) {
            return null;
        }
        if (!(day >= 1.0 && day <= 366.0 && day == Math.rint(day))) {
            throw new InputException(
                    PlotError.BAD_FIELD,
                    PlotColumns.VALUE,
                    columns.written(columns.at(PlotColumns.VALUE)),
                    "a whole day of the calendar year, 1 to 366");
        }
        LocalDate first = GrowthCalendar.firstDay(site, columns.growthYear(site));
        LocalDate inYear = LocalDate.of(first.getYear(), 1, 1).plusDays((long) day - 1);
        return inYear.isBefore(first) ? LocalDate.of(first.getYear() + 1, 1, 1).plusDays((long) day - 1) : inYear;
    }

    private static double error(PlotColumns columns, double factor, PlotVariable variable) {
        double error = factor * columns.number(columns.at(PlotColumns.ERROR));
        if (error <= 0.0 || error > LARGEST_ERROR_SHARE * variable.highest()) {
            throw new InputException(
                    PlotError.BAD_FIELD,
                    PlotColumns.ERROR,
                    columns.written(columns.at(PlotColumns.ERROR)),
                    "a standard error above 0 in the unit of the value (days for a date), or nothing");
        }
        return error;
    }
}
