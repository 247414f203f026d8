package org.thirstline.calibration.years;

import java.time.LocalDate;
import java.time.Month;
import java.util.ArrayList;
import java.util.List;
import org.thirstline.model.engine.GrowthCalendar;
import org.thirstline.model.result.DailyResults;
import org.thirstline.model.result.DailyVariable;
import org.thirstline.model.result.SeasonRecord;
import org.thirstline.model.units.Units;
import org.thirstline.model.weather.Site;

/** Months of growth years, counted from the first month of the growth year, so that south and north line up. */
public final class MonthsOfYears {

    private static final int MONTHS = 12;

    private MonthsOfYears() {}

    /**
     * One month of one growth year.
     *
     * @param growthYear the growth year
     * @param month calendar month
     * @param rainMm rain [mm]
     * @param et0Mm reference evapotranspiration [mm]
     * @param transpirationMm transpiration [mm]
     * @param soilWaterMm mean water in the profile [mm]
     * @param leafAreaIndex mean green leaf area index [m²/m²]
     * @param growthMgHa dry matter grown, above and below ground [Mg/ha]
     * @param waterFactor mean water factor on days with a green canopy; NaN without such days [1]
     */
    public record YearMonthSums(
            int growthYear,
            Month month,
            double rainMm,
            double et0Mm,
            double transpirationMm,
            double soilWaterMm,
            double leafAreaIndex,
            double growthMgHa,
            double waterFactor) {}

    /**
     * Sums the whole months of a growth year that the days hold.
     *
     * @param site decides when the growth year starts
     * @param daily the days
     * @param season the season of that growth year
     */
    public static List<YearMonthSums> of(Site site, DailyResults daily, SeasonRecord season) {
        List<YearMonthSums> months = new ArrayList<>();
        LocalDate start = GrowthCalendar.firstDay(site, season.growthYear());
        for (int i = 0; i < MONTHS; i++) {
            LocalDate first = start.plusMonths(i);
            int from = (int) (first.toEpochDay() - daily.start().toEpochDay());
            int until = from + first.lengthOfMonth() - 1;
            if (from >= 0 && until < daily.days()) {
                months.add(sums(daily, season, first.getMonth(), from, until));
            }
        }
        return months;
    }

    private static YearMonthSums sums(DailyResults daily, SeasonRecord season, Month month, int from, int until) {
        int days = until - from + 1;
        double factor = 0.0;
        int green = 0;
        for (int day = from; day <= until; day++) {
            if (daily.at(DailyVariable.LEAF_AREA_INDEX, day) > 0.0) {
                factor += daily.at(DailyVariable.WATER_FACTOR, day);
                green++;
            }
        }
        return new YearMonthSums(
                season.growthYear(),
                month,
                sum(daily, DailyVariable.RAIN, from, until),
                sum(daily, DailyVariable.ET0, from, until),
                sum(daily, DailyVariable.TRANSPIRATION, from, until),
                sum(daily, DailyVariable.SOIL_WATER, from, until) / days,
                sum(daily, DailyVariable.LEAF_AREA_INDEX, from, until) / days,
                Units.mgHa(sum(daily, DailyVariable.GROWTH, from, until)),
                green == 0 ? Double.NaN : factor / green);
    }

    private static double sum(DailyResults daily, DailyVariable variable, int from, int until) {
        double sum = 0.0;
        for (int day = from; day <= until; day++) {
            sum += daily.at(variable, day);
        }
        return sum;
    }
}
