package org.thirstline.charts;

import java.util.List;
import java.util.stream.IntStream;

/**
 * Draws from the posterior of fitted parameters. Immutable and thread-safe.
 *
 * @param what what was fitted, e.g. "48 yields of 3 sites"
 * @param parameters their draws; all with as many chains and draws
 */
public record DrawsView(String what, List<Draws> parameters) {

    /** Copies the list. */
    public DrawsView {
        parameters = List.copyOf(parameters);
    }

    /**
     * The draws of one parameter.
     *
     * @param name the parameter in words
     * @param unit its unit, empty where there is none
     * @param chains draws, a row for each chain, all equally long; not copied, not to be modified
     * @param rHat rank-normalised split-R-hat; NaN if not known
     * @param effectiveDraws independent draws that the middle is worth; NaN if not known
     */
    public record Draws(String name, String unit, double[][] chains, double rHat, double effectiveDraws) {

        String axis() {
            return Quantity.withUnit(name, unit);
        }

        int size() {
            return chains.length == 0 ? 0 : chains.length * chains[0].length;
        }

        /** Returns the draw at a place, counted through the chains in turn. */
        double at(int index) {
            return chains[index % chains.length][index / chains.length];
        }

        double least() {
            return all().min().orElse(0.0);
        }

        double most() {
            return all().max().orElse(1.0);
        }

        double mean() {
            return all().average().orElse(Double.NaN);
        }

        java.util.stream.DoubleStream all() {
            return IntStream.range(0, size()).mapToDouble(this::at);
        }
    }

    /** Returns the correlation of two parameters' draws; NaN if one of them does not vary. */
    static double correlation(Draws first, Draws second) {
        double meanX = first.mean();
        double meanY = second.mean();
        double xx = 0.0;
        double xy = 0.0;
        double yy = 0.0;
        for (int i = 0; i < first.size(); i++) {
            double x = first.at(i) - meanX;
            double y = second.at(i) - meanY;
            xx += x * x;
            xy += x * y;
            yy += y * y;
        }
        double r = xy / Math.sqrt(xx * yy);
        return Double.isFinite(r) ? r : Double.NaN;
    }
}
