package org.thirstline.charts;

import java.util.HashSet;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;
import org.thirstline.calibration.age.AgeVerdict;
import org.thirstline.calibration.trial.AgeCurve;
import org.thirstline.calibration.trial.AgeStudy;
import org.thirstline.model.climate.SeasonClass;

/**
 * Yields of a trial against stand age. Immutable and thread-safe.
 *
 * @param verdict age or weather
 * @param leftIn as harvested
 * @param takenOut weather taken out; absent without a simulation
 * @param classes how wet each year was, as far as known
 */
public record AgeCurveView(
        AgeVerdict verdict, AgeCurve leftIn, Optional<AgeCurve> takenOut, Map<Integer, SeasonClass> classes) {

    /** Copies the map. */
    public AgeCurveView {
        classes = Map.copyOf(classes);
    }

    /** Returns the view of a study's answer. */
    public static AgeCurveView of(AgeStudy study, Map<Integer, SeasonClass> classes) {
        return new AgeCurveView(study.findings().verdict(), study.leftIn(), study.takenOut(), classes);
    }

    Set<SeasonClass> shownClasses() {
        Set<SeasonClass> shown = new HashSet<>();
        leftIn.points().stream().filter(AgeCurve.Point::fitted).forEach(point -> {
            SeasonClass seasonClass = classes.get(point.growthYear());
            if (seasonClass != null) {
                shown.add(seasonClass);
            }
        });
        return shown;
    }

    private IntStream ages() {
        return leftIn.points().stream().mapToInt(AgeCurve.Point::standAge);
    }

    int youngest() {
        return ages().min().orElse(1);
    }

    int oldest() {
        return ages().max().orElse(1);
    }
}
