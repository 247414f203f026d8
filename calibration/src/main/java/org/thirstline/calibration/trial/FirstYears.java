package org.thirstline.calibration.trial;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.thirstline.calibration.response.Interval;
import org.thirstline.io.study.Study;
import org.thirstline.io.study.Zone;
import org.thirstline.model.engine.GrowthCalendar;
import org.thirstline.model.result.SeasonRecord;
import org.thirstline.model.result.SeasonStatus;
import org.thirstline.model.result.SeasonVariable;
import org.thirstline.model.weather.DailyDrivers;
import org.thirstline.model.weather.WeatherSeries;

/**
 * The first years of a planting as simulated for every planting year that the weather allows. Immutable and thread-safe.
 *
 * @param zone zone of the study
 * @param plantedM2 plants set [m⁻²]
 * @param plantings planting years simulated
 * @param winterKilled plantings of which no plant outlived the first winter
 * @param ages what ages 1 to 3 give
 */
public record FirstYears(String zone, double plantedM2, int plantings, int winterKilled, List<Age> ages) {

    private static final int LAST_AGE = 3;

    private static final double SHARE_OUTSIDE = 0.05;

    /** Copies the list. */
    public FirstYears {
        ages = List.copyOf(ages);
    }

    /**
     * One age.
     *
     * @param standAge planting year = 1
     * @param shootsM2 mean shoots per ground area [m⁻²]
     * @param plantsM2 mean living plants per ground area [m⁻²]
     * @param meanMgHa mean harvest [Mg/ha]
     * @param rangeMgHa range of nine plantings in ten [Mg/ha]
     */
    public record Age(int standAge, double shootsM2, double plantsM2, double meanMgHa, Interval rangeMgHa) {}

    static FirstYears of(Study study, Zone zone, DailyDrivers drivers) {
        WeatherSeries weather = drivers.weather();
        UnageingStand stand = new UnageingStand(study, drivers);
        int first = GrowthCalendar.growthYear(study.site(), weather.start());
        int last = GrowthCalendar.growthYear(study.site(), weather.end()) - LAST_AGE;
        int killed = 0;
        List<List<SeasonRecord>> byAge = new ArrayList<>();
        for (int age = 1; age <= LAST_AGE; age++) {
            byAge.add(new ArrayList<>());
        }
        int plantings = 0;
        for (int year = first; year <= last; year++) {
            Map<Integer, SeasonRecord> seasons = stand.actual(zone, year);
            plantings++;
            SeasonRecord second = seasons.get(year + 1);
            killed += second != null && second.status() == SeasonStatus.WINTER_KILLED ? 1 : 0;
            for (int age = 1; age <= LAST_AGE; age++) {
                SeasonRecord season = seasons.get(year + age - 1);
                if (season != null && season.isComplete()) {
                    byAge.get(age - 1).add(season);
                }
            }
        }
        List<Age> ages = new ArrayList<>();
        for (int age = 1; age <= LAST_AGE; age++) {
            if (!byAge.get(age - 1).isEmpty()) {
                ages.add(age(age, byAge.get(age - 1)));
            }
        }
        return new FirstYears(zone.name(), study.stand().plantsPerM2(), plantings, killed, ages);
    }

    private static Age age(int age, List<SeasonRecord> seasons) {
        double[] sorted = seasons.stream()
                .mapToDouble(season -> season.value(SeasonVariable.HARVESTED))
                .sorted()
                .toArray();
        int outside = (int) Math.floor(SHARE_OUTSIDE * sorted.length);
        return new Age(
                age,
                mean(seasons, SeasonVariable.SHOOTS),
                mean(seasons, SeasonVariable.PLANTS),
                mean(seasons, SeasonVariable.HARVESTED),
                new Interval(sorted[outside], sorted[sorted.length - 1 - outside]));
    }

    private static double mean(List<SeasonRecord> seasons, SeasonVariable variable) {
        return seasons.stream()
                .mapToDouble(season -> season.value(variable))
                .average()
                .orElse(Double.NaN);
    }
}
