package org.thirstline.calibration.influence;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Predicate;
import org.thirstline.calibration.sensitivity.OutputModel;
import org.thirstline.calibration.study.StudyOutcome;
import org.thirstline.calibration.study.ZoneOutcome;
import org.thirstline.model.crop.CropParameter;
import org.thirstline.model.engine.FieldConditions;
import org.thirstline.model.engine.SeasonRuns;
import org.thirstline.model.error.InputException;
import org.thirstline.model.result.SeasonRecord;
import org.thirstline.model.result.SeasonStatus;
import org.thirstline.model.result.SeasonVariable;
import org.thirstline.model.soil.SoilProfile;

/**
 * A zone's stand as a function of its varied parameters. Site and weather are prepared once; a point costs the run of the stand and that of
 * its twin which is never short of water. Thread-safe.
 */
final class StandModel implements OutputModel {

    private final SeasonRuns runs;
    private final FieldConditions field;
    private final List<VariedInput> inputs;
    private final ComparedSeasons compared;
    private final List<InfluenceOutput> outputs;
    private final double standardMoisturePct;
    private final AtomicInteger deaths = new AtomicInteger();

    StandModel(StudyOutcome outcome, ZoneOutcome zone, ComparedSeasons compared, List<VariedInput> inputs) {
        this(
                new SeasonRuns(
                        outcome.drivers(),
                        outcome.study().field(zone.zone()),
                        outcome.study().weather().missingRainLimitDays()),
                outcome.study().field(zone.zone()),
                inputs,
                compared,
                mean(zone.stand().seasons(), compared, SeasonVariable.HARVEST_MOISTURE));
    }

    private StandModel(
            SeasonRuns runs,
            FieldConditions field,
            List<VariedInput> inputs,
            ComparedSeasons compared,
            double standardMoisturePct) {
        this.runs = runs;
        this.field = field;
        this.inputs = List.copyOf(inputs);
        this.compared = compared;
        this.outputs = compared.outputs();
        this.standardMoisturePct = standardMoisturePct;
    }

    /** Returns the same stand with only some parameters varied, all others at their standard values. */
    StandModel varying(List<VariedInput> fewer) {
        return new StandModel(runs, field, fewer, compared, standardMoisturePct);
    }

    /** Returns in how many runs the stand was dead, or never emerged, in at least one of the years. */
    int deaths() {
        return deaths.get();
    }

    double[] standard() {
        return outputs(inputs.stream().mapToDouble(VariedInput::standard).toArray());
    }

    @Override
    public double[] outputs(double[] point) {
        List<SeasonRecord> seasons;
        try {
            seasons = runs.simulateWithPotential(changed(point));
        } catch (InputException refused) {
            throw refused.at("with " + words(point));
        }
        if (seasons.stream().anyMatch(season -> compared.years().contains(season.growthYear()) && isDead(season))) {
            deaths.incrementAndGet();
        }
        double[] values = new double[outputs.size()];
        for (int i = 0; i < values.length; i++) {
            values[i] = value(outputs.get(i), seasons);
        }
        return values;
    }

    private String words(double[] point) {
        List<String> parts = new ArrayList<>();
        for (int i = 0; i < point.length; i++) {
            parts.add(inputs.get(i).key() + " = " + point[i]);
        }
        return String.join(", ", parts);
    }

    private static boolean isDead(SeasonRecord season) {
        return season.status() == SeasonStatus.WINTER_KILLED || season.status() == SeasonStatus.NO_CANOPY;
    }

    private FieldConditions changed(double[] point) {
        Map<CropParameter, Double> values = new EnumMap<>(CropParameter.class);
        SoilProfile soil = field.soil();
        for (int i = 0; i < point.length; i++) {
            Optional<CropParameter> parameter = inputs.get(i).parameter();
            if (parameter.isPresent()) {
                values.put(parameter.get(), point[i]);
            } else {
                soil = soil.withAvailableWaterTimes(point[i]);
            }
        }
        return field.withCrop(field.crop().with(values)).withSoil(soil);
    }

    private double value(InfluenceOutput output, List<SeasonRecord> seasons) {
        return switch (output) {
            case MEAN_HARVEST -> mean(seasons, SeasonVariable.HARVESTED);
            case DROUGHT_PENALTY -> mean(seasons, SeasonVariable.DROUGHT_PENALTY);
            case DRIEST_YEAR_HARVEST ->
                sum(seasons, season -> compared.driest()
                        .filter(year -> year == season.growthYear())
                        .isPresent());
            case HARVEST_SPREAD -> spread(seasons);
            case FIRST_HARVESTS -> sum(seasons, season -> compared.first().contains(season.growthYear()));
            case HARVEST_MOISTURE -> {
                double moisture = mean(seasons, compared, SeasonVariable.HARVEST_MOISTURE);
                yield Double.isNaN(moisture) ? standardMoisturePct : moisture;
            }
            case WATER_USE ->
                mean(seasons, SeasonVariable.TRANSPIRATION)
                        + mean(seasons, SeasonVariable.SOIL_EVAPORATION)
                        + mean(seasons, SeasonVariable.INTERCEPTION);
        };
    }

    private static double sum(List<SeasonRecord> seasons, Predicate<SeasonRecord> which) {
        return seasons.stream()
                .filter(which)
                .mapToDouble(season -> orNothing(season.value(SeasonVariable.HARVESTED)))
                .sum();
    }

    private double mean(List<SeasonRecord> seasons, SeasonVariable variable) {
        return seasons.stream()
                        .filter(season -> compared.years().contains(season.growthYear()))
                        .mapToDouble(season -> orNothing(season.value(variable)))
                        .sum()
                / compared.years().size();
    }

    private double spread(List<SeasonRecord> seasons) {
        double mean = mean(seasons, SeasonVariable.HARVESTED);
        double square = 0.0;
        for (SeasonRecord season : seasons) {
            if (compared.years().contains(season.growthYear())) {
                double off = orNothing(season.value(SeasonVariable.HARVESTED)) - mean;
                square += off * off;
            }
        }
        return Math.sqrt(square / (compared.years().size() - 1));
    }

    private static double orNothing(double value) {
        return Double.isNaN(value) ? 0.0 : value;
    }

    /** The mean over years that have the value; NaN if none has. */
    private static double mean(List<SeasonRecord> seasons, ComparedSeasons compared, SeasonVariable variable) {
        return seasons.stream()
                .filter(season -> compared.years().contains(season.growthYear()))
                .mapToDouble(season -> season.value(variable))
                .filter(value -> !Double.isNaN(value))
                .average()
                .orElse(Double.NaN);
    }
}
