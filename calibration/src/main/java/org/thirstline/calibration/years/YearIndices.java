package org.thirstline.calibration.years;

import java.time.LocalDate;
import java.time.MonthDay;
import java.time.YearMonth;
import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.thirstline.calibration.error.CalibrationError;
import org.thirstline.calibration.study.StudyOutcome;
import org.thirstline.model.climate.GammaFit;
import org.thirstline.model.climate.MonthlyRain;
import org.thirstline.model.climate.NormalPeriod;
import org.thirstline.model.climate.RainfallDeficit;
import org.thirstline.model.climate.StandardizedPrecipitation;
import org.thirstline.model.climate.WindowRain;
import org.thirstline.model.engine.GrowingSeason;
import org.thirstline.model.engine.GrowthCalendar;
import org.thirstline.model.error.InputException;
import org.thirstline.model.result.SeasonRecord;
import org.thirstline.model.weather.Site;
import org.thirstline.model.weather.WeatherSeries;

/** Every index of every year of a study, all against the same normal years. Immutable and thread-safe. */
public final class YearIndices {

    private final Site site;
    private final NormalPeriod period;
    private final GrowingSeason spiWindow;
    private final RainSums sums;
    private final @Nullable GrowingSeason named;
    private final Map<IndexKind, RainfallDeficit> deficits = new EnumMap<>(IndexKind.class);
    private final Map<IndexKind, StandardizedPrecipitation> spis = new EnumMap<>(IndexKind.class);

    private YearIndices(StudyOutcome outcome, @Nullable GrowingSeason named) {
        this.named = named;
        site = outcome.study().site();
        period = outcome.deficit().normals().period();
        sums = new RainSums(outcome.drivers());
        GrowingSeason season = outcome.study().season();
        spiWindow = named == null ? season : named;
        WeatherSeries weather = outcome.weather().series();
        MonthDay start = MonthDay.from(GrowthCalendar.firstDay(site, 2001));
        MonthDay end = MonthDay.from(GrowthCalendar.firstDay(site, 2002).minusDays(1));
        deficits.put(IndexKind.SEASON, outcome.deficit());
        add(IndexKind.YEAR_TO_DATE, weather, new GrowingSeason(start, season.until()));
        add(IndexKind.GROWTH_YEAR, weather, new GrowingSeason(start, end));
        if (named != null) {
            requireHeld(named, weather);
            deficits.put(IndexKind.WINDOW, RainfallDeficit.of(weather, site, named, period));
        }
        MonthlyRain rain = MonthlyRain.of(weather, period.maximumFilledDays());
        for (IndexKind kind : IndexKind.values()) {
            if (kind.isSpi()) {
                spis.put(
                        kind, StandardizedPrecipitation.of(rain, kind.spiMonths(), GammaFit.Method.MAXIMUM_LIKELIHOOD));
            }
        }
    }

    /**
     * Computes the indices of a study.
     *
     * @param outcome the simulated study
     * @param named a further window to look at, null for none
     * @throws InputException if the weather holds no such window, or the window does not lie in one growth year
     */
    public static YearIndices of(StudyOutcome outcome, @Nullable GrowingSeason named) {
        return new YearIndices(outcome, named);
    }

    private void requireHeld(GrowingSeason window, WeatherSeries weather) {
        if (WindowRain.of(weather, site, window).isEmpty()) {
            throw new InputException(
                    CalibrationError.NO_WINDOW,
                    weather.start(),
                    weather.end(),
                    window.from().toString().substring(2),
                    window.until().toString().substring(2));
        }
    }

    /** A window with no usable year of the normal period has no index; that is no mistake of the user's. */
    private void add(IndexKind kind, WeatherSeries weather, GrowingSeason window) {
        boolean usable = WindowRain.of(weather, site, window).stream()
                .anyMatch(
                        year -> period.contains(year.growthYear()) && year.filledDays() <= period.maximumFilledDays());
        if (usable) {
            deficits.put(kind, RainfallDeficit.of(weather, site, window, period));
        }
    }

    /** Returns the window the user named. */
    public Optional<GrowingSeason> named() {
        return Optional.ofNullable(named);
    }

    /** Returns the window at whose end the Standardized Precipitation Index is read. */
    public GrowingSeason spiWindow() {
        return spiWindow;
    }

    /**
     * Returns an index of a season; NaN where it cannot be told, or where more of its rain is filled in than a normal year may have.
     *
     * @param kind which index
     * @param season which season; its dates bound the canopy's indices
     */
    public double at(IndexKind kind, SeasonRecord season) {
        int year = season.growthYear();
        return switch (kind) {
            case SEASON, YEAR_TO_DATE, GROWTH_YEAR, WINDOW -> deficit(kind, year);
            case ET0_MINUS_RAIN ->
                beyondRain(deficitWindow().start(site, year), deficitWindow().end(site, year));
            case CANOPY -> canopyDeficit(season);
            case CANOPY_ET0_MINUS_RAIN ->
                beyondRain(season.dates().emergence(), season.dates().canopyEnd());
            default -> spi(kind, year);
        };
    }

    private GrowingSeason deficitWindow() {
        RainfallDeficit season = deficits.get(IndexKind.SEASON);
        if (season == null) {
            throw new IllegalStateException("every study has a growing season");
        }
        return season.window();
    }

    private double deficit(IndexKind kind, int year) {
        RainfallDeficit deficit = deficits.get(kind);
        return deficit != null && deficit.isReliable(year)
                ? deficit.deficitMm(year).orElse(Double.NaN)
                : Double.NaN;
    }

    private boolean usable(LocalDate from, LocalDate until) {
        return sums.holds(from, until) && sums.filledDays(from, until) <= period.maximumFilledDays();
    }

    private double beyondRain(@Nullable LocalDate from, @Nullable LocalDate until) {
        if (from == null || until == null || !usable(from, until)) {
            return Double.NaN;
        }
        return sums.et0Mm(from, until) - sums.rainMm(from, until);
    }

    /** The normal is the mean rain between the same two dates of the normal years. */
    private double canopyDeficit(SeasonRecord season) {
        LocalDate from = season.dates().emergence();
        LocalDate until = season.dates().canopyEnd();
        if (from == null || until == null || !usable(from, until)) {
            return Double.NaN;
        }
        double sum = 0.0;
        int count = 0;
        for (int year = period.firstYear(); year <= period.lastYear(); year++) {
            LocalDate first = from.plusYears(year - (long) season.growthYear());
            LocalDate last = until.plusYears(year - (long) season.growthYear());
            if (usable(first, last)) {
                sum += sums.rainMm(first, last);
                count++;
            }
        }
        return count == 0 ? Double.NaN : sum / count - sums.rainMm(from, until);
    }

    /** Read at the last month that has ended by the end of the window. */
    private double spi(IndexKind kind, int year) {
        LocalDate end = spiWindow.end(site, year);
        YearMonth month = YearMonth.from(end);
        YearMonth ended = end.equals(month.atEndOfMonth()) ? month : month.minusMonths(1);
        StandardizedPrecipitation spi = spis.get(kind);
        return spi == null ? Double.NaN : spi.at(ended);
    }
}
