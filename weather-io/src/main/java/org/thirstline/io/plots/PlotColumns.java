package org.thirstline.io.plots;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.thirstline.io.error.NearestName;
import org.thirstline.io.weather.Fields;
import org.thirstline.model.engine.GrowthCalendar;
import org.thirstline.model.error.InputException;
import org.thirstline.model.weather.Site;

/** The columns of a file of plot data. Confined to one reading. */
final class PlotColumns {

    static final String SITE = "site";
    static final String ZONE = "zone";
    static final String PLOT = "plot";
    static final String BLOCK = "block";
    static final String PLANTING_YEAR = "planting_year";
    static final String GROWTH_YEAR = "growth_year";
    static final String HARVEST_DATE = "harvest_date";
    static final String VARIABLE = "variable";
    static final String VALUE = "value";
    static final String UNIT = "unit";
    static final String ERROR = "error";
    static final String DATE = "date";
    static final String DEPTH = "depth_m";

    private static final int MONTHS_TO_MID_YEAR = 6;

    private static final List<String> KNOWN = List.of(
            SITE,
            ZONE,
            PLOT,
            BLOCK,
            PLANTING_YEAR,
            GROWTH_YEAR,
            HARVEST_DATE,
            DATE,
            DEPTH,
            VARIABLE,
            VALUE,
            UNIT,
            ERROR,
            "invented");

    private static final int SHORTEST_SLIP = 4;

    private final Fields fields;
    private final List<String> names = new ArrayList<>();
    private final Map<Integer, Integer> years = new LinkedHashMap<>();

    PlotColumns(String header, boolean oneZone) {
        fields = new Fields(Fields.separatorOf(header));
        fields.split(header);
        for (int i = 0; i < fields.count(); i++) {
            names.add(fields.text(i).strip().toLowerCase(Locale.ROOT).replace(' ', '_'));
        }
        for (int i = 0; i < names.size(); i++) {
            if (names.get(i).matches("(1[89]|2[0-9])[0-9]{2}")) {
                years.put(Integer.parseInt(names.get(i)), i);
            }
        }
        names.forEach(this::refuseSlip);
        require(PLOT, "name of the plot");
        require(UNIT, "unit of the yields, e.g. " + YieldUnit.MG_HA.text());
        if (!oneZone) {
            require(ZONE, "zone of the field, as the study names it");
        }
        if (!isWide()) {
            require(VALUE, "the yield; or one column for each year, named for it");
            require(VARIABLE, "what was measured, e.g. yield");
            if (at(HARVEST_DATE) < 0 && at(DATE) < 0) {
                require(GROWTH_YEAR, "growth year of the yield; or harvest_date");
            }
        }
    }

    private void refuseSlip(String name) {
        if (KNOWN.contains(name) || name.length() < SHORTEST_SLIP || years.containsValue(names.indexOf(name))) {
            return;
        }
        String near = NearestName.within(name, KNOWN, name.length() > 6 ? 2 : 1);
        if (near != null && !names.contains(near)) {
            throw new InputException(PlotError.COLUMN_UNKNOWN, name, near);
        }
    }

    private void require(String name, String meaning) {
        if (at(name) < 0) {
            String near = NearestName.within(name, names, 2);
            String hint = near == null ? "" : ". Is '" + near + "' meant to be " + name + "?";
            throw new InputException(PlotError.COLUMN_MISSING, name, meaning, String.join(", ", names), hint);
        }
    }

    /** Returns whether each year has a column of its own. */
    boolean isWide() {
        return !years.isEmpty() && at(VALUE) < 0;
    }

    /** Returns the columns of years by year. */
    Map<Integer, Integer> years() {
        return years;
    }

    /** Returns columns that are there but not read. */
    List<String> ignored() {
        return names.stream()
                .filter(name -> !name.isEmpty() && !KNOWN.contains(name) && !years.containsValue(names.indexOf(name)))
                .toList();
    }

    /** Returns where a column is, -1 if it is not there. */
    int at(String name) {
        return names.indexOf(name);
    }

    String name(int column) {
        return names.get(column);
    }

    void split(String line) {
        fields.split(line);
        if (fields.count() != names.size()) {
            throw new InputException(PlotError.FIELD_COUNT, fields.count(), names.size());
        }
    }

    /** Returns a field, null where it is empty or the column absent. */
    @Nullable
    String text(String name) {
        int at = at(name);
        return at < 0 || fields.isEmpty(at) ? null : fields.text(at);
    }

    /** Returns a field that must be filled. */
    String needed(String name, String allowed) {
        String text = text(name);
        if (text == null) {
            throw new InputException(PlotError.BAD_FIELD, name, "", allowed);
        }
        return text;
    }

    /** Returns a number, NaN where it is missing. */
    double number(int column) {
        if (column < 0) {
            return Double.NaN;
        }
        double value = fields.number(column);
        if (Double.isInfinite(value)) {
            throw new InputException(
                    PlotError.BAD_FIELD,
                    names.get(column),
                    fields.text(column),
                    "a number, or nothing where the yield is missing");
        }
        return value;
    }

    /** Returns a date that must be there. */
    LocalDate date(String column) {
        String text = needed(column, "year-month-day, e.g. 2012-03-14");
        try {
            return LocalDate.parse(text);
        } catch (DateTimeException notDate) {
            throw new InputException(PlotError.BAD_FIELD, column, text, "year-month-day, e.g. 2012-03-14");
        }
    }

    /** Returns a year that must be there. */
    int year(String column) {
        String found = needed(column, "a year");
        if (!found.matches("(1[89]|2[0-9])[0-9]{2}")) {
            throw new InputException(PlotError.BAD_FIELD, column, found, "a year, e.g. 2012");
        }
        return Integer.parseInt(found);
    }

    /** Returns the growth year of a harvest, by its date or as stated. */
    int growthYear(Site site) {
        if (text(HARVEST_DATE) == null) {
            return year(GROWTH_YEAR);
        }
        LocalDate date = date(HARVEST_DATE);
        int fromDate = GrowthCalendar.growthYear(site, date.minusMonths(MONTHS_TO_MID_YEAR));
        if (text(GROWTH_YEAR) != null && year(GROWTH_YEAR) != fromDate) {
            throw new InputException(PlotError.YEARS_DISAGREE, year(GROWTH_YEAR), date, fromDate);
        }
        return fromDate;
    }

    /** Returns a field as it is written. */
    String written(int column) {
        return fields.text(column);
    }
}
