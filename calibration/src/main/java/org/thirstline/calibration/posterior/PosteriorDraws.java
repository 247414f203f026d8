package org.thirstline.calibration.posterior;

import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.thirstline.model.error.Check;

/** Draws from a posterior by chain. Immutable and thread-safe. */
public final class PosteriorDraws {

    private final List<String> names;
    private final double[][][] draws;
    private final double[][] logDensities;

    /** Takes over the arrays: chain, draw, parameter; and chain, draw. */
    PosteriorDraws(List<String> names, double[][][] draws, double[][] logDensities) {
        this.names = List.copyOf(names);
        this.draws = draws;
        this.logDensities = logDensities;
    }

    /** Returns the parameters' names. */
    public List<String> names() {
        return names;
    }

    /** Returns the number of chains. */
    public int chains() {
        return draws.length;
    }

    /** Returns the number of draws of each chain. */
    public int drawsPerChain() {
        return draws[0].length;
    }

    /** Returns the number of all draws. */
    public int size() {
        return chains() * drawsPerChain();
    }

    /**
     * Returns a copy of the draws of one parameter, a row for each chain.
     *
     * @param parameter its index
     */
    public double[][] byChain(int parameter) {
        return Arrays.stream(draws)
                .map(chain -> Arrays.stream(chain)
                        .mapToDouble(draw -> draw[parameter])
                        .toArray())
                .toArray(double[][]::new);
    }

    /**
     * Returns a copy of all draws of one parameter, chain after chain.
     *
     * @param parameter its index
     */
    public double[] pooled(int parameter) {
        return Arrays.stream(draws)
                .flatMap(Arrays::stream)
                .mapToDouble(draw -> draw[parameter])
                .toArray();
    }

    /**
     * Returns a copy of one draw.
     *
     * @param chain its chain
     * @param draw its place in the chain
     */
    public double[] draw(int chain, int draw) {
        return draws[chain][draw].clone();
    }

    /**
     * Returns a copy of evenly spaced draws of all chains.
     *
     * @param count how many; all if there are fewer
     */
    public double[][] thinned(int count) {
        Check.range("number of thinned draws", count, "", 1.0, Integer.MAX_VALUE);
        int wanted = Math.min(count, size());
        return IntStream.range(0, wanted)
                .map(i -> (int) (((2L * i + 1L) * size()) / (2L * wanted)))
                .mapToObj(at -> draw(at % chains(), at / chains()))
                .toArray(double[][]::new);
    }

    /** Returns a copy of the draw with the highest posterior density; the earliest of several. */
    public double[] mostProbable() {
        int best = 0;
        for (int at = 1; at < size(); at++) {
            if (density(at) > density(best)) {
                best = at;
            }
        }
        return draw(best % chains(), best / chains());
    }

    /** Returns the log posterior density that half of the draws exceed, up to a constant. */
    public double medianLogDensity() {
        return SampleQuantiles.of(Arrays.stream(logDensities)
                        .flatMapToDouble(Arrays::stream)
                        .toArray())
                .at(0.5);
    }

    /**
     * Returns a quantile of one parameter over all draws.
     *
     * @param parameter its index
     * @param probability 0 to 1
     */
    public double quantile(int parameter, double probability) {
        return SampleQuantiles.of(pooled(parameter)).at(probability);
    }

    private double density(int at) {
        return logDensities[at % chains()][at / chains()];
    }

    /**
     * Returns the posterior correlation of two parameters.
     *
     * @param first index of a parameter
     * @param second index of a parameter
     */
    public double correlation(int first, int second) {
        double[] x = pooled(first);
        double[] y = pooled(second);
        return Moments.covariance(x, y) / Math.sqrt(Moments.variance(x) * Moments.variance(y));
    }

    /** Returns every parameter's posterior in numbers. */
    public List<ParameterSummary> summaries() {
        return IntStream.range(0, names.size())
                .mapToObj(i -> ParameterSummary.of(names.get(i), byChain(i), pooled(i)))
                .toList();
    }

    /**
     * Returns how the ranks of each chain's draws, among all draws of a parameter, spread over equal bins: alike for all chains that
     * have mixed.
     *
     * @param parameter its index
     * @param bins number of bins
     * @return a row for each chain
     */
    public int[][] rankCounts(int parameter, int bins) {
        double[] values = pooled(parameter);
        Integer[] order = IntStream.range(0, values.length).boxed().toArray(Integer[]::new);
        Arrays.sort(order, (a, b) -> Double.compare(values[a], values[b]));
        int[][] counts = new int[chains()][bins];
        for (int rank = 0; rank < order.length; rank++) {
            counts[order[rank] / drawsPerChain()][(int) ((long) rank * bins / order.length)]++;
        }
        return counts;
    }
}
