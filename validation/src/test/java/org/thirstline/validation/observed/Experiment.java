package org.thirstline.validation.observed;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;
import org.thirstline.calibration.fit.FitOptions;
import org.thirstline.calibration.fit.FitOptions.Differences;
import org.thirstline.calibration.fit.FitParameter;
import org.thirstline.calibration.fit.FitResult;
import org.thirstline.calibration.fit.LeastSquaresFit;
import org.thirstline.calibration.skill.Fold;
import org.thirstline.calibration.skill.HeldOutSkill;
import org.thirstline.calibration.skill.Predictor;
import org.thirstline.calibration.skill.SkillScores;

/**
 * Observations at several places and a simulation of them that depends on a few parameters.
 *
 * @param name what is compared
 * @param unit of the observations
 * @param items the observations, every place weighing the same in a fit
 * @param parameters what may change, from the defaults, within bounds
 */
record Experiment(String name, String unit, List<Item> items, List<FitParameter> parameters) {

    /** Steps of a hundredth of a parameter's size: the day loop has thresholds, which a finer step would fall between. */
    private static final FitOptions OPTIONS = FitOptions.smooth()
            .withJacobian(1.0e-2, Differences.CENTRAL)
            .withTolerance(1.0e-5)
            .withMaximumEvaluations(30);

    /**
     * One observation.
     *
     * @param place where; the fit weighs places alike
     * @param group what is held out together
     * @param observed value
     * @param simulate value for a point
     */
    record Item(String place, String group, double observed, ToDoubleFunction<double[]> simulate) {}

    Experiment {
        items = List.copyOf(items);
        parameters = List.copyOf(parameters);
    }

    double[] start() {
        return parameters.stream().mapToDouble(FitParameter::start).toArray();
    }

    private double[] observed() {
        return items.stream().mapToDouble(Item::observed).toArray();
    }

    private double[] simulate(List<Integer> which, double[] point) {
        return which.stream()
                .mapToDouble(i -> items.get(i).simulate().applyAsDouble(point))
                .toArray();
    }

    private List<Integer> all() {
        return IntStream.range(0, items.size()).boxed().toList();
    }

    /** Weights of residuals that make every place count the same. */
    private double[] weights(List<Integer> which) {
        Map<String, Integer> counts = new HashMap<>();
        which.forEach(i -> counts.merge(items.get(i).place(), 1, Integer::sum));
        return which.stream()
                .mapToDouble(i -> 1.0 / Math.sqrt(counts.get(items.get(i).place())))
                .toArray();
    }

    /** Fits to some of the observations. */
    private FitResult fit(List<Integer> which) {
        double[] weights = weights(which);
        return LeastSquaresFit.fit(
                point -> {
                    double[] residuals = simulate(which, point);
                    for (int i = 0; i < residuals.length; i++) {
                        residuals[i] = weights[i] * (items.get(which.get(i)).observed() - residuals[i]);
                    }
                    return residuals;
                },
                parameters,
                OPTIONS);
    }

    /** Fits to everything. */
    FitResult fit() {
        return fit(all());
    }

    SkillScores defaults() {
        return SkillScores.of(observed(), simulate(all(), start()));
    }

    /** Each group predicted by a fit to the others. */
    SkillScores heldOut() {
        Predictor fitted = fold -> simulate(fold.heldOut(), fit(fold.training()).values());
        return HeldOutSkill.of(fitted, folds(), observed()).overall();
    }

    /** Each group predicted by the mean of the others: what needs no model. */
    SkillScores meanOfOthers() {
        return HeldOutSkill.of(Predictor.mean(observed()), folds(), observed()).overall();
    }

    private List<Fold> folds() {
        return Fold.leaveOneGroupOut(items.stream().map(Item::group).toList());
    }

    long groups() {
        return items.stream().map(Item::group).distinct().count();
    }

    /** Returns this experiment with other groups. */
    Experiment withGroups(Function<Item, String> group) {
        List<Item> others = new ArrayList<>();
        for (Item item : items) {
            others.add(new Item(item.place(), group.apply(item), item.observed(), item.simulate()));
        }
        return new Experiment(name, unit, others, parameters);
    }
}
