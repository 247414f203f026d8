package org.thirstline.calibration.influence;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.thirstline.calibration.error.CalibrationError;
import org.thirstline.calibration.study.StudyOutcome;
import org.thirstline.calibration.study.StudySimulation;
import org.thirstline.calibration.study.ZoneOutcome;
import org.thirstline.io.study.Study;
import org.thirstline.model.climate.RainfallDeficit;
import org.thirstline.model.engine.SeasonRuns;
import org.thirstline.model.error.InputException;
import org.thirstline.model.result.SeasonRecord;

/**
 * The growth years that every run is asked about, the same for all: complete with the standard values, and with a harvest inside the weather
 * however late it is. Immutable and thread-safe.
 *
 * @param years full-grown years; years of a young stand where there are no others
 * @param fullGrown whether they are of a full-grown stand
 * @param driest the one with the largest rainfall deficit, if that is known
 * @param first years of stand ages 1 and 2, if both are complete
 */
record ComparedSeasons(Set<Integer> years, boolean fullGrown, Optional<Integer> driest, Set<Integer> first) {

    private static final int FIRST_AGES = 2;

    ComparedSeasons {
        years = Set.copyOf(years);
        first = Set.copyOf(first);
    }

    static ComparedSeasons of(StudyOutcome outcome, ZoneOutcome zone) {
        List<SeasonRecord> complete = zone.stand().seasons().stream()
                .filter(SeasonRecord::isComplete)
                .filter(season -> isCutInside(outcome, season.growthYear()))
                .toList();
        if (complete.isEmpty()) {
            String statuses = zone.stand().seasons().stream()
                    .map(season -> season.status().words())
                    .distinct()
                    .collect(Collectors.joining("; "));
            throw new InputException(
                    CalibrationError.NO_YEAR_TO_VARY, zone.zone().name(), statuses);
        }
        List<SeasonRecord> grown = complete.stream()
                .filter(season -> season.standAge() >= StudySimulation.FULL_GROWN_AGE)
                .toList();
        List<SeasonRecord> used = grown.isEmpty() ? complete : grown;
        Set<Integer> first = years(complete.stream()
                .filter(season -> season.standAge() <= FIRST_AGES)
                .toList());
        return new ComparedSeasons(
                years(used),
                !grown.isEmpty(),
                driest(outcome.deficit(), used),
                first.size() == FIRST_AGES ? first : Set.of());
    }

    /** Returns what can be asked about these years. */
    List<InfluenceOutput> outputs() {
        List<InfluenceOutput> outputs =
                new ArrayList<>(List.of(InfluenceOutput.MEAN_HARVEST, InfluenceOutput.DROUGHT_PENALTY));
        if (driest.isPresent() && years.size() > 1) {
            outputs.add(InfluenceOutput.DRIEST_YEAR_HARVEST);
        }
        if (years.size() > 1) {
            outputs.add(InfluenceOutput.HARVEST_SPREAD);
        }
        if (!first.isEmpty() && fullGrown) {
            outputs.add(InfluenceOutput.FIRST_HARVESTS);
        }
        outputs.add(InfluenceOutput.HARVEST_MOISTURE);
        outputs.add(InfluenceOutput.WATER_USE);
        return List.copyOf(outputs);
    }

    private static Set<Integer> years(List<SeasonRecord> seasons) {
        return seasons.stream().map(SeasonRecord::growthYear).collect(Collectors.toCollection(TreeSet::new));
    }

    private static Optional<Integer> driest(RainfallDeficit deficit, List<SeasonRecord> seasons) {
        return seasons.stream()
                .map(SeasonRecord::growthYear)
                .filter(deficit::isReliable)
                .max(Comparator.comparingDouble(year -> deficit.deficitMm(year).orElse(Double.NEGATIVE_INFINITY)));
    }

    private static boolean isCutInside(StudyOutcome outcome, int year) {
        Study study = outcome.study();
        LocalDate last =
                SeasonRuns.lastHarvestDay(study.site(), year, study.management().harvest());
        return !last.isAfter(outcome.weather().series().end());
    }
}
