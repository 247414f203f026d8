package org.thirstline.calibration.skill;

import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Skill on observations that were held out, each predicted once. Immutable and thread-safe. */
public final class HeldOutSkill {

    private final double[] observed;
    private final double[] predicted;
    private final Map<String, SkillScores> byGroup;

    private HeldOutSkill(double[] observed, double[] predicted, Map<String, SkillScores> byGroup) {
        this.observed = observed;
        this.predicted = predicted;
        this.byGroup = byGroup;
    }

    /**
     * Predicts every fold.
     *
     * @param predictor what learns and predicts
     * @param folds divisions whose held-out parts make up all observations; see {@link Fold#leaveOneGroupOut}
     * @param observed all observations; not modified
     */
    public static HeldOutSkill of(Predictor predictor, List<Fold> folds, double[] observed) {
        double[] predicted = new double[observed.length];
        Arrays.fill(predicted, Double.NaN);
        Map<String, SkillScores> byGroup = new LinkedHashMap<>();
        for (Fold fold : folds) {
            double[] predictions = predictor.predict(fold);
            double[] truth = fold.heldOut(observed);
            byGroup.put(fold.group(), SkillScores.of(truth, predictions));
            for (int i = 0; i < predictions.length; i++) {
                predicted[fold.heldOut().get(i)] = predictions[i];
            }
        }
        return new HeldOutSkill(observed.clone(), predicted, byGroup);
    }

    /** Returns the skill over all observations together; the mean in the efficiency is that of all observations. */
    public SkillScores overall() {
        return SkillScores.of(observed, predicted);
    }

    /** Returns the skill on each group while it was held out, in the order of the folds. */
    public Map<String, SkillScores> byGroup() {
        return new LinkedHashMap<>(byGroup);
    }

    /** Returns a copy of the predictions in the order of the observations. */
    public double[] predicted() {
        return predicted.clone();
    }

    /**
     * Returns by how much smaller the root mean square error is than a baseline's, as a share; below 0 where the baseline is better.
     *
     * @param baseline predicted on the same folds
     */
    public double gainOver(HeldOutSkill baseline) {
        return 1.0 - overall().rootMeanSquareError() / baseline.overall().rootMeanSquareError();
    }
}
