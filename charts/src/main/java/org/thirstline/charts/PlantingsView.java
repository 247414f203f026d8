package org.thirstline.charts;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import org.thirstline.calibration.age.AgeVerdict;
import org.thirstline.calibration.age.DeclineFit;
import org.thirstline.calibration.trial.AgeStudy;
import org.thirstline.calibration.trial.PlantingCurve;
import org.thirstline.model.climate.SeasonClass;

/**
 * The plantings of a trial, each against its own stand age. Immutable and thread-safe.
 *
 * @param verdict age or weather, over all of them
 * @param fit the decline fitted to all of them, weather taken out; absent without one
 * @param simulated whether weather could be taken out
 * @param plantings in the order shown
 * @param classes how wet each year was, as far as known
 */
public record PlantingsView(
        AgeVerdict verdict,
        Optional<DeclineFit> fit,
        boolean simulated,
        List<PlantingCurve> plantings,
        Map<Integer, SeasonClass> classes) {

    /** Copies the collections. */
    public PlantingsView {
        plantings = List.copyOf(plantings);
        classes = Map.copyOf(classes);
    }

    /** Returns the view of a study's answer. */
    public static PlantingsView of(AgeStudy study, Map<Integer, SeasonClass> classes) {
        return new PlantingsView(
                study.findings().verdict(),
                study.fair(),
                study.trial().data().hasSimulation(),
                study.plantings(),
                classes);
    }

    private IntStream ages() {
        return plantings.stream()
                .flatMapToInt(planting -> planting.points().stream().mapToInt(PlantingCurve.Point::standAge));
    }

    int youngest() {
        return ages().min().orElse(1);
    }

    int oldest() {
        return ages().max().orElse(1);
    }

    double largestMgHa() {
        return plantings.stream()
                .flatMap(planting -> planting.points().stream())
                .flatMapToDouble(point -> DoubleStream.of(point.harvestedMgHa(), point.weatherOutMgHa()))
                .filter(Double::isFinite)
                .max()
                .orElse(1.0);
    }
}
