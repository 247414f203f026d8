package org.thirstline.calibration.years;

import java.time.LocalDate;
import java.time.MonthDay;
import java.util.ArrayList;
import java.util.List;
import org.hipparchus.stat.descriptive.rank.Percentile;
import org.hipparchus.stat.descriptive.rank.Percentile.EstimationType;
import org.thirstline.calibration.study.StudyOutcome;
import org.thirstline.calibration.study.ZoneOutcome;
import org.thirstline.io.study.Study;
import org.thirstline.model.crop.Cut;
import org.thirstline.model.crop.HarvestRule;
import org.thirstline.model.engine.GrowthCalendar;
import org.thirstline.model.engine.PairedRuns;
import org.thirstline.model.result.DailyResults;
import org.thirstline.model.result.DailyVariable;
import org.thirstline.model.result.SeasonRecord;
import org.thirstline.model.result.StandResult;
import org.thirstline.model.soil.SoilLayer;
import org.thirstline.model.soil.SoilProfile;
import org.thirstline.model.units.Units;
import org.thirstline.model.weather.Site;

/**
 * What a cut on each half month between the end of the canopy and the next emergence would have brought in, over the years of a zone.
 * Immutable and thread-safe.
 *
 * @param zone name of the zone
 * @param moistureLimitPct moisture up to which a bale counts as dry enough [% wet basis]
 * @param wetnessLimit wettest topsoil that carries a machine [share of field capacity]
 * @param dates from the earliest half month to the last; of each at least nine tenths of the years, so that dates compare the same years
 * @param days every year on every one of these days, by date and year
 */
public record HarvestDates(
        String zone, double moistureLimitPct, double wetnessLimit, List<CutDate> dates, List<YearDay> days) {

    /** Moisture up to which bales count as dry where the study has no limit [% wet basis] (common practice, no source). */
    public static final double DEFAULT_MOISTURE_PCT = 20.0;

    /** Wettest topsoil that carries a machine where the study has no limit [share of field capacity] (common practice, no source). */
    public static final double DEFAULT_WETNESS = 0.95;

    /** As in the harvest rules. */
    private static final double TRAFFIC_DEPTH_M = 0.2;

    private static final double FROZEN_GROUND_C = -0.5;

    private static final double NEEDED_SHARE = 0.9;

    /** Copies the lists. */
    public HarvestDates {
        dates = List.copyOf(dates);
        days = List.copyOf(days);
    }

    /**
     * A cut on one day of one year.
     *
     * @param growthYear the growth year
     * @param date the day
     * @param harvestedMgHa what a cut would have brought in [Mg/ha]
     * @param moisturePct moisture of the crop [% wet basis]
     * @param carries whether the ground carried a machine
     */
    public record YearDay(int growthYear, LocalDate date, double harvestedMgHa, double moisturePct, boolean carries) {}

    /**
     * A day over the years.
     *
     * @param day day of the year
     * @param years years with a standing crop on that day
     * @param harvested what a cut would have brought in [Mg/ha]
     * @param moisture moisture of the crop [% wet basis]
     * @param dryShare share of years in which the crop was dry enough [1]
     * @param carriesShare share of years in which the ground carried a machine [1]
     * @param readyShare share of years in which both held [1]
     */
    public record CutDate(
            MonthDay day,
            int years,
            Spread harvested,
            Spread moisture,
            double dryShare,
            double carriesShare,
            double readyShare) {}

    /**
     * Mean and the limits of the middle eight tenths of years.
     *
     * @param mean mean
     * @param low lower decile
     * @param high upper decile
     */
    public record Spread(double mean, double low, double high) {

        static Spread of(double[] values) {
            Percentile percentile = new Percentile().withEstimationType(EstimationType.R_7);
            percentile.setData(values);
            double sum = 0.0;
            for (double value : values) {
                sum += value;
            }
            return new Spread(sum / values.length, percentile.evaluate(10.0), percentile.evaluate(90.0));
        }
    }

    /**
     * Simulates a zone whose stand is left until the next shoots.
     *
     * @param outcome the study
     * @param zone one of its zones
     */
    public static HarvestDates of(StudyOutcome outcome, ZoneOutcome zone) {
        Study study = outcome.study();
        HarvestRule rule = study.management().harvest();
        boolean limits = rule instanceof HarvestRule.InWindow;
        double moisture = limits ? rule.maxMoisturePct() : DEFAULT_MOISTURE_PCT;
        double wetness = limits ? rule.maxTopsoilWetness() : DEFAULT_WETNESS;
        LocalDate half = GrowthCalendar.firstDay(study.site(), 2001).plusMonths(6);
        StandResult uncut = PairedRuns.simulate(
                outcome.drivers(),
                StudyFields.harvested(study, zone.zone(), new HarvestRule.OnDate(MonthDay.from(half.minusDays(1)))),
                study.weather().missingRainLimitDays());
        List<YearDay> days = days(study, zone, uncut, wetness);
        return new HarvestDates(zone.zone().name(), moisture, wetness, dates(study.site(), days, moisture), days);
    }

    private static List<YearDay> days(Study study, ZoneOutcome zone, StandResult uncut, double wetness) {
        Cut cut = new Cut(study.management().stubbleM(), study.management().pickUpShare());
        List<YearDay> days = new ArrayList<>();
        for (MonthDay day : halfMonths(study.site())) {
            for (SeasonRecord season : uncut.completeSeasons()) {
                LocalDate date = date(study.site(), season.growthYear(), day);
                LocalDate end = season.dates().canopyEnd();
                LocalDate last = season.dates().harvest();
                if (FullGrown.is(season) && end != null && last != null && !date.isBefore(end) && date.isBefore(last)) {
                    days.add(yearDay(
                            season.growthYear(),
                            date,
                            uncut.daily(),
                            cut,
                            zone.zone().soil(),
                            wetness));
                }
            }
        }
        return days;
    }

    private static YearDay yearDay(
            int growthYear, LocalDate date, DailyResults daily, Cut cut, SoilProfile soil, double wetness) {
        int day = (int) (date.toEpochDay() - daily.start().toEpochDay());
        double leaf = daily.at(DailyVariable.GREEN_LEAF, day) + daily.at(DailyVariable.DEAD_LEAF, day);
        double grams = cut.harvested(daily.at(DailyVariable.STEM, day), leaf, daily.at(DailyVariable.HEIGHT, day));
        double mean = 0.5 * (daily.at(DailyVariable.TMIN, day) + daily.at(DailyVariable.TMAX, day));
        boolean frozen = daily.at(DailyVariable.RHIZOME_TEMPERATURE, day) <= FROZEN_GROUND_C && mean < 0.0;
        return new YearDay(
                growthYear,
                date,
                Units.mgHa(grams),
                daily.at(DailyVariable.MOISTURE, day),
                frozen || topsoilWetness(daily, soil, day) <= wetness);
    }

    private static double topsoilWetness(DailyResults daily, SoilProfile soil, int day) {
        double water = 0.0;
        double capacity = 0.0;
        double top = 0.0;
        for (int layer = 0; layer < daily.layers() && top < TRAFFIC_DEPTH_M; layer++) {
            SoilLayer part = soil.layers().get(layer);
            double share = Math.min(1.0, (TRAFFIC_DEPTH_M - top) / part.thicknessM());
            water += share * daily.soilWaterMm(layer, day);
            capacity += share * part.fieldCapacity() * part.thicknessM() * Units.MM_PER_M;
            top += part.thicknessM();
        }
        return water / capacity;
    }

    /** The first and the fifteenth of every month, from the middle of the growth year on. */
    private static List<MonthDay> halfMonths(Site site) {
        LocalDate month = GrowthCalendar.firstDay(site, 2001).plusMonths(6);
        List<MonthDay> days = new ArrayList<>();
        for (int i = 0; i < 12; i++) {
            days.add(MonthDay.of(month.plusMonths(i).getMonth(), 1));
            days.add(MonthDay.of(month.plusMonths(i).getMonth(), 15));
        }
        return days;
    }

    private static LocalDate date(Site site, int growthYear, MonthDay day) {
        LocalDate half = GrowthCalendar.firstDay(site, growthYear).plusMonths(6);
        LocalDate date = day.atYear(half.getYear());
        return date.isBefore(half) ? date.plusYears(1) : date;
    }

    private static List<CutDate> dates(Site site, List<YearDay> days, double moistureLimit) {
        int years = (int) days.stream().map(YearDay::growthYear).distinct().count();
        List<CutDate> dates = new ArrayList<>();
        for (MonthDay day : halfMonths(site)) {
            List<YearDay> same = days.stream()
                    .filter(candidate -> MonthDay.from(candidate.date()).equals(day))
                    .toList();
            if (!same.isEmpty() && same.size() >= NEEDED_SHARE * years) {
                dates.add(cutDate(day, same, moistureLimit));
            }
        }
        return dates;
    }

    private static CutDate cutDate(MonthDay day, List<YearDay> same, double moistureLimit) {
        double n = same.size();
        double dry = same.stream()
                .filter(year -> year.moisturePct() <= moistureLimit)
                .count();
        double carries = same.stream().filter(YearDay::carries).count();
        double ready = same.stream()
                .filter(year -> year.carries() && year.moisturePct() <= moistureLimit)
                .count();
        return new CutDate(
                day,
                same.size(),
                Spread.of(same.stream().mapToDouble(YearDay::harvestedMgHa).toArray()),
                Spread.of(same.stream().mapToDouble(YearDay::moisturePct).toArray()),
                dry / n,
                carries / n,
                ready / n);
    }
}
