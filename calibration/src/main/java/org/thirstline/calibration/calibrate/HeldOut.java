package org.thirstline.calibration.calibrate;

import java.util.List;
import org.thirstline.calibration.problem.Observation;
import org.thirstline.calibration.skill.HeldOutSkill;
import org.thirstline.calibration.skill.IntervalCoverage;

/**
 * Skill on yields that were held out, a group at a time, beside two baselines on the same division. Immutable and thread-safe.
 *
 * @param what what was held out: a site, a plot, a year
 * @param predictions every held-out yield with what the rest of the data predicts
 * @param model skill of the calibrated engine
 * @param mean skill of the mean of the other plots
 * @param rain skill of a straight line on the rain of the season
 * @param coverage how many yields lie within their 90 % prediction intervals
 */
public record HeldOut(
        Group what,
        List<Prediction> predictions,
        HeldOutSkill model,
        HeldOutSkill mean,
        HeldOutSkill rain,
        IntervalCoverage coverage) {

    /** Copies the list. */
    public HeldOut {
        predictions = List.copyOf(predictions);
    }

    /** What is held out at a time. */
    public enum Group {
        /** All plots of a site. */
        SITE("site"),
        /** One plot, where there is one site. */
        PLOT("plot"),
        /** All plots in a growth year. */
        YEAR("year");

        private final String word;

        Group(String word) {
            this.word = word;
        }

        /** Returns the word. */
        public String word() {
            return word;
        }

        String of(Observation observation) {
            return switch (this) {
                case SITE -> observation.site();
                case PLOT -> observation.zone() + " / " + observation.plot() + " / " + observation.plantingYear();
                case YEAR -> Integer.toString(observation.growthYear());
            };
        }
    }

    /**
     * One yield as the rest of the data predicts it.
     *
     * @param observation the yield
     * @param group the group it was held out with
     * @param predicted by the calibrated engine
     * @param lower lower end of its 90 % prediction interval
     * @param upper upper end
     * @param byMean by the mean of the other plots
     * @param byRain by the line on rain
     */
    public record Prediction(
            Observation observation,
            String group,
            double predicted,
            double lower,
            double upper,
            double byMean,
            double byRain) {}
}
