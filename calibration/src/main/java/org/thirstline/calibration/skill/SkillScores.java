package org.thirstline.calibration.skill;

import java.util.Arrays;
import org.thirstline.model.error.Check;

/**
 * Agreement of simulated with observed values. Immutable and thread-safe.
 *
 * @param count number of pairs
 * @param rootMeanSquareError root of the mean squared difference, in units of the values
 * @param meanAbsoluteError mean size of the differences
 * @param bias mean of simulated minus observed
 * @param efficiency Nash-Sutcliffe efficiency: 1 is perfect, 0 as good as the mean of the observations; NaN if these are all alike
 * @param refinedIndex refined index of agreement, -1 to 1; NaN if the observations are all alike
 * @cite nash1970
 * @cite willmott2012
 */
public record SkillScores(
        int count,
        double rootMeanSquareError,
        double meanAbsoluteError,
        double bias,
        double efficiency,
        double refinedIndex) {

    /** Willmott and others (2012) weigh the deviations of the observations twice, for simulated and observed ones. */
    private static final double DEVIATION_WEIGHT = 2.0;

    /**
     * Compares values.
     *
     * @param observed at least one finite value; not modified
     * @param simulated as many finite values; not modified
     */
    public static SkillScores of(double[] observed, double[] simulated) {
        Pairs.requireSameLength("observed", observed, "simulated", simulated);
        Check.range("number of pairs", observed.length, "", 1.0, Integer.MAX_VALUE);
        Pairs.requireFinite("an observed value", observed);
        Pairs.requireFinite("a simulated value", simulated);
        double mean = Arrays.stream(observed).average().orElseThrow();
        double bias = 0.0;
        double absolute = 0.0;
        double square = 0.0;
        double absoluteDeviation = 0.0;
        double squareDeviation = 0.0;
        for (int i = 0; i < observed.length; i++) {
            double difference = simulated[i] - observed[i];
            double deviation = observed[i] - mean;
            bias += difference;
            absolute += Math.abs(difference);
            square += difference * difference;
            absoluteDeviation += Math.abs(deviation);
            squareDeviation += deviation * deviation;
        }
        int count = observed.length;
        boolean varies = Arrays.stream(observed).anyMatch(value -> value != observed[0]);
        return new SkillScores(
                count,
                Math.sqrt(square / count),
                absolute / count,
                bias / count,
                varies ? 1.0 - square / squareDeviation : Double.NaN,
                varies ? refined(absolute, DEVIATION_WEIGHT * absoluteDeviation) : Double.NaN);
    }

    private static double refined(double error, double reference) {
        return error <= reference ? 1.0 - error / reference : reference / error - 1.0;
    }
}
