package org.thirstline.calibration.trial;

import java.time.LocalDate;
import java.time.MonthDay;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import org.thirstline.io.study.Study;
import org.thirstline.io.study.Zone;
import org.thirstline.model.crop.CropParameter;
import org.thirstline.model.crop.FrostDamage;
import org.thirstline.model.engine.FieldConditions;
import org.thirstline.model.engine.GrowthCalendar;
import org.thirstline.model.engine.PairedRuns;
import org.thirstline.model.engine.SeasonRuns;
import org.thirstline.model.result.DailyResults;
import org.thirstline.model.result.DailyVariable;
import org.thirstline.model.result.SeasonRecord;
import org.thirstline.model.result.SeasonStatus;
import org.thirstline.model.result.SeasonVariable;
import org.thirstline.model.weather.DailyDrivers;
import org.thirstline.model.weather.Origin;
import org.thirstline.model.weather.WeatherVariable;

/**
 * What the first winter leaves of a planting, by planting date and soil temperature, over every planting year that the weather allows. The engine's
 * plants are as hardy whenever they were set; the date shows in the reserve that they take into the winter. Immutable and thread-safe.
 *
 * @param zone zone simulated
 * @param frost survival by the coldest rhizome zone
 * @param halfLethalC rhizome-zone temperature that kills half of the plants in their first winter [°C]
 * @param winters the coldest rhizome zone of each first winter, planted on the study's day
 * @param dates planting dates, earliest first
 */
public record FirstWinter(String zone, FrostDamage frost, double halfLethalC, List<Winter> winters, List<Date> dates) {

    /** Share of living plants under which a planting counts as failed (our choice). */
    public static final double FAILED = 0.5;

    /** First and last month of planting dates in the north; the south is half a year later. */
    private static final int FIRST_MONTH = 3;

    private static final int LAST_MONTH = 7;

    private static final int MID_MONTH = 15;

    private static final int MONTHS = 12;

    private static final int DAYS_AT_PLANTING = 7;

    /** Copies the lists. */
    public FirstWinter {
        winters = List.copyOf(winters);
        dates = List.copyOf(dates);
    }

    /**
     * One first winter.
     *
     * @param plantingYear growth year of planting
     * @param coldestC lowest rhizome-zone temperature between the midsummers [°C]
     * @param survival share of plants that live through it
     */
    public record Winter(int plantingYear, double coldestC, double survival) {}

    /**
     * One planting date over all years.
     *
     * @param day day of the year
     * @param years planting years simulated
     * @param soilTemperatureC mean rhizome-zone temperature of the week from planting on [°C]
     * @param meanSurvival mean share of established plants alive after the winter
     * @param lowestSurvival share in the worst year
     * @param failedShare share of years in which fewer than half live
     * @param reserveGM2 mean rhizome reserve at the end of the first winter, before the dead are taken off [g m⁻²]
     * @param shootsM2 mean shoots of the second year, none where no plant lives [m⁻²]
     */
    public record Date(
            MonthDay day,
            int years,
            double soilTemperatureC,
            double meanSurvival,
            double lowestSurvival,
            double failedShare,
            double reserveGM2,
            double shootsM2) {}

    /** Returns the mean survival of the winters; NaN without any. */
    public double meanSurvival() {
        return winters.stream().mapToDouble(Winter::survival).average().orElse(Double.NaN);
    }

    /** Returns the share of winters in which fewer than half of the plants live; NaN without any. */
    public double failedShare() {
        return winters.stream()
                .mapToDouble(winter -> winter.survival() < FAILED ? 1.0 : 0.0)
                .average()
                .orElse(Double.NaN);
    }

    /**
     * Works out the first winters of a study.
     *
     * @param study the study
     * @param zone zone to simulate
     * @param drivers its weather
     */
    static FirstWinter of(Study study, Zone zone, DailyDrivers drivers) {
        return new Builder(study, zone, drivers).result();
    }

    private static final class Builder {

        private final Study study;
        private final DailyDrivers drivers;
        private final FieldConditions field;
        private final String zoneName;
        private final FrostDamage frost;
        private final DailyResults days;
        private final int firstYear;
        private final int lastYear;

        Builder(Study study, Zone zone, DailyDrivers drivers) {
            this.study = study;
            this.drivers = drivers;
            field = study.field(zone);
            zoneName = zone.name();
            frost = new FrostDamage(field.crop());
            days = PairedRuns.simulate(drivers, field, limit()).daily();
            int first =
                    GrowthCalendar.growthYear(study.site(), drivers.weather().start());
            boolean whole = !GrowthCalendar.firstDay(study.site(), first)
                    .isBefore(drivers.weather().start());
            firstYear = whole ? first : first + 1;
            int last = GrowthCalendar.growthYear(study.site(), drivers.weather().end());
            boolean ends = GrowthCalendar.firstDay(study.site(), last + 1)
                    .minusDays(1)
                    .equals(drivers.weather().end());
            lastYear = (ends ? last : last - 1) - 1;
        }

        private int limit() {
            return study.weather().missingRainLimitDays();
        }

        FirstWinter result() {
            List<Winter> winters = new ArrayList<>();
            for (int year : years()) {
                double coldest = coldest(year);
                winters.add(new Winter(year, coldest, frost.winterSurvival(coldest, true)));
            }
            List<MonthDay> starts = plantingDays();
            List<List<Outcome>> outcomes = new ArrayList<>();
            starts.forEach(start -> outcomes.add(new ArrayList<>()));
            for (int year : years()) {
                simulate(year, starts, outcomes);
            }
            List<Date> dates = new ArrayList<>();
            for (int i = 0; i < starts.size(); i++) {
                if (!outcomes.get(i).isEmpty()) {
                    dates.add(date(starts.get(i), outcomes.get(i)));
                }
            }
            return new FirstWinter(
                    zoneName, frost, field.crop().get(CropParameter.RHIZOME_LT50_FIRST_WINTER), winters, dates);
        }

        /** Planting years whose winter was measured: filled temperatures are means and hide cold. */
        private int[] years() {
            return IntStream.rangeClosed(firstYear, lastYear)
                    .filter(year -> drivers.weather()
                                    .count(
                                            WeatherVariable.TMIN,
                                            Origin.CLIMATOLOGY,
                                            drivers.weather().indexOf(midsummer(year)),
                                            drivers.weather().indexOf(midsummer(year + 1)))
                            <= limit())
                    .toArray();
        }

        private LocalDate midsummer(int year) {
            return GrowthCalendar.firstDay(study.site(), year).plusMonths(MONTHS / 2);
        }

        private double coldest(int year) {
            LocalDate midsummer = midsummer(year);
            int from = drivers.weather().indexOf(midsummer);
            int to = drivers.weather().indexOf(midsummer.plusYears(1));
            double coldest = Double.POSITIVE_INFINITY;
            for (int day = from; day < to; day++) {
                coldest = Math.min(coldest, days.at(DailyVariable.RHIZOME_TEMPERATURE, day));
            }
            return coldest;
        }

        private List<MonthDay> plantingDays() {
            List<MonthDay> starts = new ArrayList<>();
            int shift = study.site().isSouthern() ? MONTHS / 2 : 0;
            for (int month = FIRST_MONTH; month <= LAST_MONTH; month++) {
                int shifted = (month - 1 + shift) % MONTHS + 1;
                starts.add(MonthDay.of(shifted, 1));
                starts.add(MonthDay.of(shifted, MID_MONTH));
            }
            return starts;
        }

        /** Two years of weather are enough to see which plants emerge again, and far quicker than all of them. */
        private void simulate(int year, List<MonthDay> starts, List<List<Outcome>> outcomes) {
            LocalDate from = GrowthCalendar.firstDay(study.site(), year);
            LocalDate to = GrowthCalendar.firstDay(study.site(), year + 2).minusDays(1);
            DailyDrivers window =
                    DailyDrivers.of(study.site(), drivers.weather().between(from, to));
            SeasonRuns runs = new SeasonRuns(window, field, limit());
            for (int i = 0; i < starts.size(); i++) {
                LocalDate planted = GrowthCalendar.dateIn(study.site(), year, starts.get(i));
                for (SeasonRecord season : runs.simulate(UnageingStand.planted(field, planted))) {
                    if (season.growthYear() == year + 1) {
                        add(season, soilTemperature(planted), outcomes.get(i));
                    }
                }
            }
        }

        private double soilTemperature(LocalDate planted) {
            int from = drivers.weather().indexOf(planted);
            double sum = 0.0;
            for (int day = from; day < from + DAYS_AT_PLANTING; day++) {
                sum += days.at(DailyVariable.RHIZOME_TEMPERATURE, day);
            }
            return sum / DAYS_AT_PLANTING;
        }

        private void add(SeasonRecord season, double soilC, List<Outcome> outcomes) {
            double established = field.stand().plantsPerM2() * field.crop().get(CropParameter.ESTABLISHMENT_SURVIVAL);
            double reserve = season.value(SeasonVariable.RESERVE_AT_EMERGENCE);
            if (season.status() == SeasonStatus.WINTER_KILLED) {
                outcomes.add(new Outcome(soilC, 0.0, reserve, 0.0));
            } else if (Double.isFinite(season.value(SeasonVariable.PLANTS))) {
                double living = season.value(SeasonVariable.PLANTS) / established;
                outcomes.add(new Outcome(soilC, living, reserve, season.value(SeasonVariable.SHOOTS)));
            }
        }

        private static Date date(MonthDay day, List<Outcome> outcomes) {
            return new Date(
                    day,
                    outcomes.size(),
                    mean(outcomes.stream().mapToDouble(Outcome::soilC)),
                    mean(outcomes.stream().mapToDouble(Outcome::survival)),
                    outcomes.stream().mapToDouble(Outcome::survival).min().orElse(Double.NaN),
                    mean(outcomes.stream().mapToDouble(outcome -> outcome.survival() < FAILED ? 1.0 : 0.0)),
                    mean(outcomes.stream().mapToDouble(Outcome::reserveGM2)),
                    mean(outcomes.stream().mapToDouble(Outcome::shootsM2)));
        }

        private static double mean(DoubleStream values) {
            return values.average().orElse(Double.NaN);
        }
    }

    private record Outcome(double soilC, double survival, double reserveGM2, double shootsM2) {}
}
