package org.thirstline.cli;

import java.util.List;
import org.thirstline.calibration.study.StudyOutcome;
import org.thirstline.calibration.study.ZoneOutcome;
import org.thirstline.model.result.SeasonRecord;

/**
 * Growth years to lay side by side. Immutable and thread-safe.
 *
 * @param outcome the simulated study
 * @param years the years, each in the study; the others are compared with the first
 */
record ComparedYears(StudyOutcome outcome, List<Integer> years) {

    ComparedYears {
        years = List.copyOf(years);
    }

    /** Returns the seasons of a zone in the order of the years. */
    List<SeasonRecord> seasons(ZoneOutcome zone) {
        return years.stream()
                .flatMap(year -> zone.stand().seasons().stream().filter(season -> season.growthYear() == year))
                .toList();
    }
}
