package org.thirstline.calibration.study;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.thirstline.calibration.bands.StudyBands;
import org.thirstline.io.study.Study;
import org.thirstline.io.weather.WeatherRecord;
import org.thirstline.model.climate.RainfallDeficit;
import org.thirstline.model.climate.SeasonClass;
import org.thirstline.model.weather.DailyDrivers;

/**
 * A simulated study. Immutable and thread-safe.
 *
 * @param study what was asked
 * @param weather its weather
 * @param drivers what follows from it
 * @param deficit rainfall deficit of the growing season by growth year
 * @param classes dry, middle or wet by growth year; a year that cannot be classed is absent
 * @param zones outcomes of the zones, in the order of the study
 * @param bands the zones under every draw of the crop's calibration, if it has one and they were asked for
 * @param notices what a reader must know before using the numbers
 */
public record StudyOutcome(
        Study study,
        WeatherRecord weather,
        DailyDrivers drivers,
        RainfallDeficit deficit,
        Map<Integer, SeasonClass> classes,
        List<ZoneOutcome> zones,
        Optional<StudyBands> bands,
        List<String> notices) {

    /** Copies the collections. */
    public StudyOutcome {
        classes = Map.copyOf(classes);
        zones = List.copyOf(zones);
        notices = List.copyOf(notices);
    }

    /** Takes a study simulated with the values of its crop file alone. */
    public StudyOutcome(
            Study study,
            WeatherRecord weather,
            DailyDrivers drivers,
            RainfallDeficit deficit,
            Map<Integer, SeasonClass> classes,
            List<ZoneOutcome> zones,
            List<String> notices) {
        this(study, weather, drivers, deficit, classes, zones, Optional.empty(), notices);
    }

    /** Returns the same with bands, and with their notices. */
    public StudyOutcome with(StudyBands added) {
        List<String> all = new ArrayList<>(notices);
        all.addAll(added.notices());
        return new StudyOutcome(study, weather, drivers, deficit, classes, zones, Optional.of(added), all);
    }

    /** Returns whether place or weather are made up. */
    public boolean invented() {
        return study.invented() || weather.invented();
    }
}
