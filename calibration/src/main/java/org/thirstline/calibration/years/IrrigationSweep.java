package org.thirstline.calibration.years;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.thirstline.calibration.study.StudyOutcome;
import org.thirstline.calibration.study.ZoneOutcome;
import org.thirstline.io.study.Study;
import org.thirstline.model.engine.PairedRuns;
import org.thirstline.model.result.SeasonRecord;
import org.thirstline.model.result.SeasonVariable;
import org.thirstline.model.soil.Irrigation;

/**
 * What water given by people would have yielded in the same years: the zone without irrigation, and with a depth given whenever the root
 * zone has lost a share of its available water, at a ladder of shares. Without a cap on the season's water. Immutable and thread-safe.
 *
 * @param zone name of the zone
 * @param depthMm depth given each time [mm]
 * @param steps from no water to the most
 */
public record IrrigationSweep(String zone, double depthMm, List<Step> steps) {

    private static final double[] DEPLETIONS = {0.95, 0.9, 0.85, 0.8, 0.7, 0.6, 0.5, 0.4, 0.3};

    /** Largest depth given at once [mm] (common practice, no source). */
    private static final double LARGEST_DEPTH_MM = 25.0;

    /** A single dose must not refill more than this share of what the soil holds (our choice). */
    private static final double DOSE_SHARE = 0.3;

    private static final double KG_PER_MG = 1000.0;

    /** Copies the list. */
    public IrrigationSweep {
        steps = List.copyOf(steps);
    }

    /**
     * One rule, in the mean of the years.
     *
     * @param depletion share of available water used when water is given; NaN for no irrigation [1]
     * @param waterMm water given in the growing-season window of a year [mm]
     * @param harvestedMgHa harvest [Mg/ha]
     * @param leastGainMgHa smallest gain of a year over no irrigation [Mg/ha]
     * @param mostGainMgHa largest gain of a year over no irrigation [Mg/ha]
     */
    public record Step(
            double depletion, double waterMm, double harvestedMgHa, double leastGainMgHa, double mostGainMgHa) {}

    /**
     * Simulates the ladder.
     *
     * @param outcome the study
     * @param zone one of its zones
     */
    public static IrrigationSweep of(StudyOutcome outcome, ZoneOutcome zone) {
        double depth =
                Math.min(LARGEST_DEPTH_MM, DOSE_SHARE * zone.zone().soil().availableWaterMm());
        List<SeasonRecord> dry = seasons(outcome, zone, new Irrigation.None());
        List<Step> steps = new ArrayList<>();
        steps.add(step(Double.NaN, dry, dry));
        for (double depletion : DEPLETIONS) {
            steps.add(step(depletion, dry, seasons(outcome, zone, new Irrigation.OnDepletion(depletion, depth))));
        }
        steps.sort(Comparator.comparingDouble(Step::waterMm));
        return new IrrigationSweep(zone.zone().name(), depth, steps);
    }

    private static List<SeasonRecord> seasons(StudyOutcome outcome, ZoneOutcome zone, Irrigation irrigation) {
        Study study = outcome.study();
        List<Integer> years =
                FullGrown.seasons(zone).stream().map(SeasonRecord::growthYear).toList();
        return PairedRuns.simulateActual(
                        outcome.drivers(),
                        StudyFields.irrigated(study, zone.zone(), irrigation),
                        study.weather().missingRainLimitDays())
                .stream()
                .filter(season -> season.isComplete() && years.contains(season.growthYear()))
                .toList();
    }

    private static Step step(double depletion, List<SeasonRecord> dry, List<SeasonRecord> watered) {
        double water = 0.0;
        double harvested = 0.0;
        double least = Double.NaN;
        double most = Double.NaN;
        for (int i = 0; i < dry.size(); i++) {
            SeasonRecord season = watered.get(i);
            double gain = season.value(SeasonVariable.HARVESTED) - dry.get(i).value(SeasonVariable.HARVESTED);
            water += season.value(SeasonVariable.IRRIGATION) / dry.size();
            harvested += season.value(SeasonVariable.HARVESTED) / dry.size();
            least = i == 0 ? gain : Math.min(least, gain);
            most = i == 0 ? gain : Math.max(most, gain);
        }
        return new Step(depletion, water, harvested, least, most);
    }

    /** Returns the mean gain of a step over no irrigation [Mg/ha]. */
    public double gainMgHa(Step step) {
        return step.harvestedMgHa() - steps.get(0).harvestedMgHa();
    }

    /** Returns what each further mm of a step gained over the step before [kg/ha per mm]; NaN for the first and where no water was added. */
    public double marginalKgHaMm(int index) {
        if (index == 0) {
            return Double.NaN;
        }
        double water = steps.get(index).waterMm() - steps.get(index - 1).waterMm();
        double gain = steps.get(index).harvestedMgHa() - steps.get(index - 1).harvestedMgHa();
        return water > 0.0 ? KG_PER_MG * gain / water : Double.NaN;
    }

    /**
     * Returns the step after which more water gains too little; absent where even the first water does. The last step if none gains too
     * little.
     *
     * @param worthKgHaMm what a mm must gain to be worth it [kg/ha per mm]
     */
    public Optional<Step> flattensAt(double worthKgHaMm) {
        int last = 0;
        while (last + 1 < steps.size() && !(marginalKgHaMm(last + 1) < worthKgHaMm)) {
            last++;
        }
        return last == 0 || steps.get(last).waterMm() <= 0.0 ? Optional.empty() : Optional.of(steps.get(last));
    }
}
