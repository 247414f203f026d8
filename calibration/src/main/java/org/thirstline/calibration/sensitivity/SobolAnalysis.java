package org.thirstline.calibration.sensitivity;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.hipparchus.random.SobolSequenceGenerator;
import org.thirstline.model.error.Check;

/**
 * Sobol' indices by the estimators of Saltelli and others (2010), the total index by Jansen's, on a Sobol' sequence shifted at random.
 * Runs needed are samples times inputs plus two. The bootstrap takes the samples as independent, which errs to the safe side for a
 * low-discrepancy sequence.
 *
 * @cite saltelli2010
 * @cite jansen1999
 */
public final class SobolAnalysis {

    private SobolAnalysis() {}

    /**
     * How to sample. Immutable and thread-safe.
     *
     * @param samples points of each of the two samples; a power of 2 makes best use of the sequence
     * @param replicates bootstrap replicates behind the intervals
     * @param seed of the shift and the bootstrap
     * @param threads at most so many are used
     */
    public record Options(int samples, int replicates, long seed, int threads) {

        /** Refuses too few samples. */
        public Options {
            Check.range("number of samples", samples, "", 8.0, 1.0e7);
            Check.range("bootstrap replicates", replicates, "", 100.0, 1.0e6);
        }
    }

    /**
     * Estimates indices.
     *
     * @param model the model
     * @param inputs what varies, independently
     * @param options how
     * @param listener is told of runs done
     * @return for each output, the indices of the inputs in their order
     * @throws org.thirstline.model.error.InputException if an output is not finite
     */
    public static List<List<SobolIndex>> estimate(
            OutputModel model, List<SensitivityInput> inputs, Options options, ProgressListener listener) {
        int dimension = inputs.size();
        double[][] points = points(dimension, options);
        double[][] outputs = Evaluations.run(model, inputs, points, options.threads, listener);
        List<List<SobolIndex>> results = new ArrayList<>();
        for (int output = 0; output < outputs[0].length; output++) {
            SobolEstimator estimator = new SobolEstimator(column(outputs, output), options.samples, dimension);
            results.add(estimator.indices(inputs, options.replicates, new SplittableRandom(options.seed + 1)));
        }
        return List.copyOf(results);
    }

    private static double[] column(double[][] outputs, int column) {
        double[] values = new double[outputs.length];
        for (int i = 0; i < values.length; i++) {
            values[i] = outputs[i][column];
        }
        return values;
    }

    /** Returns sample A, sample B, then for each input A with that input's column from B. */
    private static double[][] points(int dimension, Options options) {
        int samples = options.samples;
        SobolSequenceGenerator sequence = new SobolSequenceGenerator(2 * dimension);
        long[] shift = new SplittableRandom(options.seed).longs(2L * dimension).toArray();
        double[][] points = new double[samples * (dimension + 2)][];
        for (int sample = 0; sample < samples; sample++) {
            double[] both = sequence.nextVector();
            double[] a = new double[dimension];
            double[] b = new double[dimension];
            for (int i = 0; i < dimension; i++) {
                a[i] = shifted(both[i], shift[i]);
                b[i] = shifted(both[dimension + i], shift[dimension + i]);
            }
            points[sample] = a;
            points[samples + sample] = b;
            for (int input = 0; input < dimension; input++) {
                double[] mixed = a.clone();
                mixed[input] = b[input];
                points[samples * (input + 2) + sample] = mixed;
            }
        }
        return points;
    }

    /** Flips binary digits, which keeps the evenness of the sequence, and keeps away from 0 and 1. */
    private static double shifted(double value, long shift) {
        long digits = (long) (value * 0x1.0p52) ^ (shift >>> 12);
        return (digits + 0.5) * 0x1.0p-52;
    }
}
