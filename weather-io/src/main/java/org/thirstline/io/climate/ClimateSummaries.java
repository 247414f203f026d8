package org.thirstline.io.climate;

import java.time.YearMonth;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.IntStream;
import org.thirstline.io.weather.WeatherRecord;
import org.thirstline.model.climate.GammaFit;
import org.thirstline.model.climate.MonthlyRain;
import org.thirstline.model.climate.NormalPeriod;
import org.thirstline.model.climate.StandardizedPrecipitation;
import org.thirstline.model.weather.DailyDrivers;
import org.thirstline.model.weather.Origin;
import org.thirstline.model.weather.WeatherSeries;
import org.thirstline.model.weather.WeatherVariable;

/**
 * Summarises the climate of a record. Growing season: April to September in the north, October to March in the south. A month counts
 * towards a normal if the record holds all of it and no more than five of its days were filled, which is also the rule for rain
 * deficits; for radiation and evapotranspiration the temperatures decide, as both may be estimated every day. Frost and growth are told
 * from years of which every month counts for the temperatures.
 */
public final class ClimateSummaries {

    /** Scales of the precipitation index [months]: a dry spell, a growing season, a year. */
    private static final int[] INDEX_MONTHS = {3, 6, 12};

    private static final int SEASON_MONTHS = 6;
    private static final int MOST_FILLED_DAYS = NormalPeriod.DEFAULT_MAXIMUM_FILLED_DAYS;

    private final WeatherRecord record;
    private final WeatherSeries series;
    private final DailyDrivers drivers;
    private final boolean southern;

    private ClimateSummaries(WeatherRecord record) {
        this.record = record;
        series = record.series();
        drivers = DailyDrivers.of(record.site(), series);
        southern = record.site().isSouthern();
    }

    /**
     * Summarises the years of a record that lie between two years. The precipitation index takes the whole record.
     *
     * @param record the weather
     * @param firstYear first calendar year
     * @param lastYear last calendar year
     */
    public static ClimateSummary of(WeatherRecord record, int firstYear, int lastYear) {
        return new ClimateSummaries(record).summary(firstYear, lastYear);
    }

    /** Summarises all years of a record. */
    public static ClimateSummary of(WeatherRecord record) {
        return of(
                record, record.series().start().getYear(), record.series().end().getYear());
    }

    private ClimateSummary summary(int firstYear, int lastYear) {
        List<ClimateNormal> months = IntStream.rangeClosed(1, 12)
                .mapToObj(month -> normal(String.format(Locale.ROOT, "%02d", month), month, 1, firstYear, lastYear))
                .toList();
        List<YearSeason> years = new YearSeasons(drivers, southern, month -> counts(ClimateVariable.ET0, month))
                .all(firstYear, lastYear);
        MonthlyRain rain = MonthlyRain.of(series, MOST_FILLED_DAYS);
        List<StandardizedPrecipitation> indices = new ArrayList<>();
        for (int scale : INDEX_MONTHS) {
            indices.add(StandardizedPrecipitation.of(rain, scale, GammaFit.Method.MAXIMUM_LIKELIHOOD));
        }
        return new ClimateSummary(
                firstYear,
                lastYear,
                southern,
                months,
                normal("season", southern ? 10 : 4, SEASON_MONTHS, firstYear, lastYear),
                years,
                YearSeasons.lastFrosts(years),
                YearSeasons.firstFrosts(years),
                rain,
                indices);
    }

    private ClimateNormal normal(String name, int firstMonth, int months, int firstYear, int lastYear) {
        Map<ClimateVariable, ClimateNormal.Value> values = new EnumMap<>(ClimateVariable.class);
        for (ClimateVariable variable : ClimateVariable.values()) {
            values.put(variable, value(variable, firstMonth, months, firstYear, lastYear));
        }
        return new ClimateNormal(name, values);
    }

    private ClimateNormal.Value value(
            ClimateVariable variable, int firstMonth, int months, int firstYear, int lastYear) {
        double sum = 0.0;
        int years = 0;
        int days = 0;
        int measured = 0;
        for (int year = firstYear; year <= lastYear; year++) {
            YearMonth first = YearMonth.of(year, firstMonth);
            if (!IntStream.range(0, months).allMatch(i -> counts(variable, first.plusMonths(i)))) {
                continue;
            }
            int from = series.indexOf(first.atDay(1));
            int to = series.indexOf(first.plusMonths(months - 1L).atEndOfMonth());
            years++;
            days += to - from + 1;
            for (int day = from; day <= to; day++) {
                sum += daily(variable, day);
            }
            measured += variable == ClimateVariable.ET0 ? 0 : measured(engineVariable(variable), from, to);
        }
        double value = sum / (variable.isTotal() ? years : days);
        double measuredPct = variable == ClimateVariable.ET0 ? Double.NaN : 100.0 * measured / days;
        return new ClimateNormal.Value(value, years, measuredPct);
    }

    private double daily(ClimateVariable variable, int day) {
        return switch (variable) {
            case TMIN -> drivers.tmin(day);
            case TMAX -> drivers.tmax(day);
            case RAIN -> drivers.rain(day);
            case SOLAR -> drivers.solar(day);
            case ET0 -> drivers.et0(day);
        };
    }

    private boolean counts(ClimateVariable variable, YearMonth month) {
        return switch (variable) {
            case TMIN -> isKnown(WeatherVariable.TMIN, month);
            case TMAX -> isKnown(WeatherVariable.TMAX, month);
            case RAIN -> record.rainKnown() && isKnown(WeatherVariable.RAIN, month);
            case SOLAR, ET0 -> isKnown(WeatherVariable.TMIN, month) && isKnown(WeatherVariable.TMAX, month);
        };
    }

    private boolean isKnown(WeatherVariable variable, YearMonth month) {
        int from = series.indexOf(month.atDay(1));
        int to = series.indexOf(month.atEndOfMonth());
        return from >= 0
                && to < series.days()
                && month.lengthOfMonth() - measured(variable, from, to) <= MOST_FILLED_DAYS;
    }

    private int measured(WeatherVariable variable, int from, int to) {
        return series.count(variable, Origin.MEASURED, from, to);
    }

    private static WeatherVariable engineVariable(ClimateVariable variable) {
        return switch (variable) {
            case TMIN -> WeatherVariable.TMIN;
            case TMAX -> WeatherVariable.TMAX;
            case RAIN -> WeatherVariable.RAIN;
            case SOLAR, ET0 -> WeatherVariable.SOLAR;
        };
    }
}
