package org.thirstline.calibration.sensitivity;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import org.thirstline.calibration.response.Interval;

/** Indices of one output from its values at the two samples and their mixtures. Immutable and thread-safe. */
final class SobolEstimator {

    private static final double TAIL = 0.025;

    private final double[] values;
    private final int samples;
    private final int dimension;

    /** Values at sample A, at sample B, then at A with one input after the other from B; taken over less their mean. */
    SobolEstimator(double[] values, int samples, int dimension) {
        double mean = Arrays.stream(values, 0, 2 * samples).sum() / (2.0 * samples);
        this.values = Arrays.stream(values).map(value -> value - mean).toArray();
        this.samples = samples;
        this.dimension = dimension;
    }

    List<SobolIndex> indices(List<SensitivityInput> inputs, int replicates, SplittableRandom random) {
        int[] all = new int[samples];
        Arrays.setAll(all, i -> i);
        double[] estimate = estimate(all);
        double[][] resampled = new double[2 * dimension][replicates];
        int[] rows = new int[samples];
        for (int replicate = 0; replicate < replicates; replicate++) {
            Arrays.setAll(rows, i -> random.nextInt(samples));
            double[] again = estimate(rows);
            for (int i = 0; i < again.length; i++) {
                resampled[i][replicate] = again[i];
            }
        }
        List<SobolIndex> indices = new ArrayList<>();
        for (int i = 0; i < dimension; i++) {
            indices.add(new SobolIndex(
                    inputs.get(i).name(),
                    estimate[i],
                    interval(resampled[i]),
                    estimate[dimension + i],
                    interval(resampled[dimension + i])));
        }
        return List.copyOf(indices);
    }

    private static Interval interval(double[] replicates) {
        Arrays.sort(replicates);
        int below = (int) Math.floor(TAIL * replicates.length);
        return new Interval(replicates[below], replicates[replicates.length - 1 - below]);
    }

    /** Returns first indices, then total indices, from the given rows. */
    private double[] estimate(int[] rows) {
        double variance = variance(rows);
        double[] indices = new double[2 * dimension];
        for (int input = 0; input < dimension; input++) {
            double first = 0.0;
            double total = 0.0;
            for (int row : rows) {
                double change = values[(input + 2) * samples + row] - values[row];
                first += values[samples + row] * change;
                total += change * change;
            }
            indices[input] = variance > 0.0 ? first / rows.length / variance : Double.NaN;
            indices[dimension + input] = variance > 0.0 ? 0.5 * total / rows.length / variance : Double.NaN;
        }
        return indices;
    }

    private double variance(int[] rows) {
        double sum = 0.0;
        double square = 0.0;
        for (int row : rows) {
            sum += values[row] + values[samples + row];
            square += values[row] * values[row] + values[samples + row] * values[samples + row];
        }
        double mean = sum / (2.0 * rows.length);
        return square / (2.0 * rows.length) - mean * mean;
    }
}
