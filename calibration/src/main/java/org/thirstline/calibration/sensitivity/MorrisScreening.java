package org.thirstline.calibration.sensitivity;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.thirstline.model.error.Check;
import org.thirstline.model.error.InputException;
import org.thirstline.model.error.ModelError;

/**
 * Elementary effects: from random starts on a grid, each input is moved once by just over half of its range, one after the other; runs
 * needed are trajectories times inputs plus one. For finding the inputs that do not matter, cheaply.
 *
 * @cite morris1991
 * @cite campolongo2007
 */
public final class MorrisScreening {

    private MorrisScreening() {}

    /**
     * How to screen. Immutable and thread-safe.
     *
     * @param trajectories random starts, at least 2
     * @param levels levels of the grid, even
     * @param seed of the random starts
     * @param threads at most so many are used
     */
    public record Options(int trajectories, int levels, long seed, int threads) {

        /** Refuses an odd grid. */
        public Options {
            Check.range("number of trajectories", trajectories, "", 2.0, 1.0e6);
            Check.range("levels of the grid", levels, "", 2.0, 1000.0);
            if (levels % 2 != 0) {
                throw new InputException(ModelError.INCONSISTENT, "the levels of the grid must be an even number");
            }
        }
    }

    /**
     * Screens a model's inputs.
     *
     * @param model the model
     * @param inputs what varies
     * @param options how
     * @param listener is told of runs done
     * @return for each output, the effects of the inputs in their order
     * @throws InputException if an output is not finite
     */
    public static List<List<ElementaryEffect>> screen(
            OutputModel model, List<SensitivityInput> inputs, Options options, ProgressListener listener) {
        int dimension = inputs.size();
        int length = dimension + 1;
        double[][] points = new double[options.trajectories * length][dimension];
        int[][] orders = new int[options.trajectories][];
        SplittableRandom random = new SplittableRandom(options.seed);
        for (int trajectory = 0; trajectory < options.trajectories; trajectory++) {
            orders[trajectory] = fillTrajectory(points, trajectory * length, options.levels, random);
        }
        double[][] outputs = Evaluations.run(model, inputs, points, options.threads, listener);
        List<List<ElementaryEffect>> results = new ArrayList<>();
        for (int output = 0; output < outputs[0].length; output++) {
            List<ElementaryEffect> effects = new ArrayList<>();
            for (int input = 0; input < dimension; input++) {
                double[] samples = effects(points, outputs, orders, input, output);
                effects.add(ElementaryEffect.of(inputs.get(input).name(), samples));
            }
            results.add(List.copyOf(effects));
        }
        return List.copyOf(results);
    }

    /** Fills one trajectory and returns which input its steps move. */
    private static int[] fillTrajectory(double[][] points, int start, int levels, SplittableRandom random) {
        int dimension = points[start].length;
        double step = levels / (2.0 * (levels - 1.0));
        boolean[] upwards = new boolean[dimension];
        for (int i = 0; i < dimension; i++) {
            double lowStart = random.nextInt(levels / 2) / (levels - 1.0);
            upwards[i] = random.nextBoolean();
            points[start][i] = upwards[i] ? lowStart : lowStart + step;
        }
        int[] order = permutation(dimension, random);
        for (int move = 0; move < dimension; move++) {
            double[] point = points[start + move + 1];
            System.arraycopy(points[start + move], 0, point, 0, dimension);
            int moved = order[move];
            point[moved] += upwards[moved] ? step : -step;
            point[moved] = Math.max(0.0, Math.min(1.0, point[moved]));
        }
        return order;
    }

    private static int[] permutation(int size, SplittableRandom random) {
        int[] order = new int[size];
        for (int i = 0; i < size; i++) {
            int j = random.nextInt(i + 1);
            order[i] = order[j];
            order[j] = i;
        }
        return order;
    }

    private static double[] effects(double[][] points, double[][] outputs, int[][] orders, int input, int output) {
        double[] effects = new double[orders.length];
        for (int trajectory = 0; trajectory < orders.length; trajectory++) {
            int move = 0;
            while (orders[trajectory][move] != input) {
                move++;
            }
            int from = trajectory * (orders[trajectory].length + 1) + move;
            effects[trajectory] = (outputs[from + 1][output] - outputs[from][output])
                    / (points[from + 1][input] - points[from][input]);
        }
        return effects;
    }
}
