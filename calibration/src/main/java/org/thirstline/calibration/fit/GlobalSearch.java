package org.thirstline.calibration.fit;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.thirstline.model.error.Check;

/**
 * A global search by differential evolution: a population over the bounds, in which each member is challenged by one made from the
 * differences of others. It needs no slopes and leaves local minima. Deterministic whatever the number of threads.
 *
 * @cite storn1997
 */
public final class GlobalSearch {

    /** Members for each parameter (Storn and Price 1997 advise 5 to 10). */
    private static final int MEMBERS_PER_PARAMETER = 10;

    private static final double CROSSOVER = 0.9;
    private static final double SMALLEST_WEIGHT = 0.5;
    private static final double LARGEST_WEIGHT = 1.0;
    private static final double SPREAD_AT_END = 1.0e-6;

    private final ResidualModel model;
    private final List<FitParameter> parameters;
    private final int generations;
    private final long seed;

    /**
     * Prepares a search.
     *
     * @param model what is fitted; thread-safe if there are several threads
     * @param parameters what may change, all between finite bounds
     * @param generations at most so many
     * @param seed of all random numbers
     */
    public GlobalSearch(ResidualModel model, List<FitParameter> parameters, int generations, long seed) {
        this.model = model;
        this.parameters = List.copyOf(parameters);
        this.generations = generations;
        this.seed = seed;
        parameters.forEach(parameter ->
                Check.range("bounds of " + parameter.name(), parameter.hasFiniteBounds() ? 1.0 : 0.0, "", 1.0, 1.0));
    }

    /**
     * Searches.
     *
     * @param threads points evaluated at once
     * @param count how many of the best members to return
     * @return the best members, best first
     */
    public List<double[]> run(int threads, int count) {
        int size = Math.max(8, MEMBERS_PER_PARAMETER * parameters.size());
        FitOptions options = FitOptions.smooth().withStarts(size, seed);
        List<double[]> members = new ArrayList<>(StartPoints.of(parameters, options));
        List<Double> sums = new ArrayList<>(Parallel.map(members, threads, this::sum));
        SplittableRandom random = new SplittableRandom(seed);
        for (int generation = 0; generation < generations && spread(sums) > SPREAD_AT_END; generation++) {
            List<double[]> trials = new ArrayList<>();
            for (int i = 0; i < size; i++) {
                trials.add(trial(members, i, random));
            }
            List<Double> trialSums = Parallel.map(trials, threads, this::sum);
            for (int i = 0; i < size; i++) {
                if (trialSums.get(i) <= sums.get(i)) {
                    members.set(i, trials.get(i));
                    sums.set(i, trialSums.get(i));
                }
            }
        }
        return IntStream.range(0, size)
                .boxed()
                .sorted((a, b) -> Double.compare(sums.get(a), sums.get(b)))
                .limit(count)
                .map(members::get)
                .toList();
    }

    private double sum(double[] point) {
        double[] residuals = model.residuals(point);
        return NumericJacobian.isFinite(residuals) ? BoundedSearch.sumOfSquares(residuals) : Double.POSITIVE_INFINITY;
    }

    private static double spread(List<Double> sums) {
        double best = sums.stream().mapToDouble(Double::doubleValue).min().orElse(0.0);
        double worst = sums.stream().mapToDouble(Double::doubleValue).max().orElse(0.0);
        return best > 0.0 ? (worst - best) / best : worst;
    }

    private double[] trial(List<double[]> members, int target, SplittableRandom random) {
        int[] others = distinct(members.size(), target, random);
        double weight = SMALLEST_WEIGHT + (LARGEST_WEIGHT - SMALLEST_WEIGHT) * random.nextDouble();
        int always = random.nextInt(parameters.size());
        double[] trial = members.get(target).clone();
        for (int i = 0; i < trial.length; i++) {
            double chance = random.nextDouble();
            double back = random.nextDouble();
            if (i == always || chance < CROSSOVER) {
                double moved =
                        members.get(others[0])[i] + weight * (members.get(others[1])[i] - members.get(others[2])[i]);
                FitParameter parameter = parameters.get(i);
                double bound = parameter.clamp(moved);
                // Beyond a bound: somewhere between the member and the bound.
                trial[i] = bound == moved ? moved : trial[i] + back * (bound - trial[i]);
            }
        }
        return trial;
    }

    private static int[] distinct(int size, int target, SplittableRandom random) {
        int[] chosen = new int[3];
        Arrays.fill(chosen, -1);
        for (int i = 0; i < chosen.length; i++) {
            int candidate = random.nextInt(size);
            while (candidate == target || candidate == chosen[0] || candidate == chosen[1]) {
                candidate = random.nextInt(size);
            }
            chosen[i] = candidate;
        }
        return chosen;
    }
}
