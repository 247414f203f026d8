package org.thirstline.calibration.skill;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.IntStream;
import org.thirstline.calibration.error.CalibrationError;
import org.thirstline.model.error.InputException;

/**
 * One division of observations into those to learn from and those held out. Immutable and thread-safe.
 *
 * @param group what was held out: a site, a year
 * @param training indices of the observations to learn from
 * @param heldOut indices of the observations to predict
 */
public record Fold(String group, List<Integer> training, List<Integer> heldOut) {

    /** Copies the lists. */
    public Fold {
        training = List.copyOf(training);
        heldOut = List.copyOf(heldOut);
    }

    /**
     * Holds out one group after the other, in the order in which they appear.
     *
     * @param groups the group of each observation
     * @throws InputException if there are fewer than two groups
     */
    public static List<Fold> leaveOneGroupOut(List<String> groups) {
        Set<String> distinct = new LinkedHashSet<>(groups);
        if (distinct.size() < 2) {
            throw new InputException(CalibrationError.TOO_FEW_GROUPS, distinct.size());
        }
        return distinct.stream()
                .map(group -> new Fold(group, indices(groups, group, false), indices(groups, group, true)))
                .toList();
    }

    private static List<Integer> indices(List<String> groups, String group, boolean inside) {
        return IntStream.range(0, groups.size())
                .filter(i -> groups.get(i).equals(group) == inside)
                .boxed()
                .toList();
    }

    /**
     * Returns a copy of the values to learn from.
     *
     * @param values of all observations
     */
    public double[] training(double[] values) {
        return training.stream().mapToDouble(i -> values[i]).toArray();
    }

    /**
     * Returns a copy of the values held out.
     *
     * @param values of all observations
     */
    public double[] heldOut(double[] values) {
        return heldOut.stream().mapToDouble(i -> values[i]).toArray();
    }
}
