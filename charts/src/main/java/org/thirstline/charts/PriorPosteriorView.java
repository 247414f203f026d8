package org.thirstline.charts;

import java.util.Arrays;
import java.util.List;

/**
 * What was believed of parameters before and after the data. Immutable and thread-safe.
 *
 * @param what what was fitted, e.g. "48 yields of 3 sites"
 * @param marginals one for each parameter
 */
public record PriorPosteriorView(String what, List<Marginal> marginals) {

    /** Copies the list. */
    public PriorPosteriorView {
        marginals = List.copyOf(marginals);
    }

    /**
     * One parameter before and after.
     *
     * @param name the parameter in words
     * @param unit its unit, empty where there is none
     * @param values ascending, over the whole prior
     * @param priorDensity density of the prior at each value
     * @param draws from the posterior
     */
    public record Marginal(String name, String unit, double[] values, double[] priorDensity, double[] draws) {

        private static final double TAIL = 0.05;

        /** Copies the arrays and sorts the draws. */
        public Marginal {
            values = values.clone();
            priorDensity = priorDensity.clone();
            draws = draws.clone();
            Arrays.sort(draws);
        }

        String axis() {
            return Quantity.withUnit(name, unit);
        }

        double low() {
            return values[0];
        }

        double high() {
            return values[values.length - 1];
        }

        /** Returns the draw below which a share of all draws lies. */
        double quantile(double share) {
            double at = share * (draws.length - 1);
            int below = (int) Math.floor(at);
            int above = Math.min(draws.length - 1, below + 1);
            return draws[below] + (at - below) * (draws[above] - draws[below]);
        }

        /** Returns the width of the middle 90 % of the posterior over that of the prior; NaN without draws. */
        double narrowing() {
            double before = priorQuantile(1.0 - TAIL) - priorQuantile(TAIL);
            return draws.length == 0 || !(before > 0.0) ? Double.NaN : (quantile(1.0 - TAIL) - quantile(TAIL)) / before;
        }

        double priorQuantile(double share) {
            double total = mass(values.length);
            double sum = 0.0;
            for (int i = 1; i < values.length; i++) {
                double part = 0.5 * (priorDensity[i] + priorDensity[i - 1]) * (values[i] - values[i - 1]);
                if (sum + part >= share * total && part > 0.0) {
                    return values[i - 1] + (share * total - sum) / part * (values[i] - values[i - 1]);
                }
                sum += part;
            }
            return high();
        }

        private double mass(int until) {
            double sum = 0.0;
            for (int i = 1; i < until; i++) {
                sum += 0.5 * (priorDensity[i] + priorDensity[i - 1]) * (values[i] - values[i - 1]);
            }
            return sum;
        }

        /** Returns the density of the draws at each value, smoothed by a normal kernel that is mirrored at both ends. */
        double[] posteriorDensity() {
            double[] density = new double[values.length];
            double width = bandwidth();
            for (int i = 0; i < values.length; i++) {
                for (double draw : draws) {
                    density[i] += kernel(values[i] - draw, width)
                            + kernel(values[i] - (2 * low() - draw), width)
                            + kernel(values[i] - (2 * high() - draw), width);
                }
                density[i] /= Math.max(1, draws.length);
            }
            return density;
        }

        private static double kernel(double distance, double width) {
            double scaled = distance / width;
            return Math.abs(scaled) > 6.0 ? 0.0 : Math.exp(-0.5 * scaled * scaled) / (width * Math.sqrt(2.0 * Math.PI));
        }

        /** Silverman's rule of thumb on the smaller of deviation and interquartile range; at least a two-hundredth of the prior. */
        private double bandwidth() {
            double floor = (high() - low()) / 200.0;
            if (draws.length < 2) {
                return floor;
            }
            double mean = Arrays.stream(draws).average().orElse(0.0);
            double square = Arrays.stream(draws)
                    .map(draw -> (draw - mean) * (draw - mean))
                    .sum();
            double deviation = Math.sqrt(square / (draws.length - 1));
            double spread = Math.min(deviation, (quantile(0.75) - quantile(0.25)) / 1.34);
            return Math.max(floor, 0.9 * spread * Math.pow(draws.length, -0.2));
        }
    }
}
