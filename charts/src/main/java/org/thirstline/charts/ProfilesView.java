package org.thirstline.charts;

import java.util.List;

/**
 * Likelihood profiles of fitted parameters. Immutable and thread-safe.
 *
 * @param what what was fitted, e.g. "48 yields of 3 sites"
 * @param level share that the intervals hold, e.g. 0.95
 * @param curves a profile for each parameter
 */
public record ProfilesView(String what, double level, List<Curve> curves) {

    /** Copies the list. */
    public ProfilesView {
        curves = List.copyOf(curves);
    }

    /**
     * The profile of one parameter.
     *
     * @param name the parameter in words
     * @param unit its unit, empty where there is none
     * @param values that the parameter was held at, ascending
     * @param rises by how much twice the negative log-likelihood rises over its least, at each value
     * @param threshold rise that bounds the interval
     * @param estimate best value
     * @param lower lower end of the interval; the lowest value tried if open
     * @param upper upper end; the highest value tried if open
     * @param lowerOpen whether the data rule out no low value
     * @param upperOpen whether the data rule out no high value
     */
    public record Curve(
            String name,
            String unit,
            double[] values,
            double[] rises,
            double threshold,
            double estimate,
            double lower,
            double upper,
            boolean lowerOpen,
            boolean upperOpen) {

        /** Copies the arrays. */
        public Curve {
            values = values.clone();
            rises = rises.clone();
        }

        boolean isDetermined() {
            return !lowerOpen && !upperOpen;
        }

        boolean isFlat() {
            return lowerOpen && upperOpen;
        }

        String axis() {
            return Quantity.withUnit(name, unit);
        }

        String words() {
            if (isFlat()) {
                return "not determined";
            }
            if (lowerOpen) {
                return "at most " + Numbers.significant(upper, 3);
            }
            if (upperOpen) {
                return "at least " + Numbers.significant(lower, 3);
            }
            return Numbers.significant(estimate, 3) + " (" + Numbers.significant(lower, 3) + " to "
                    + Numbers.significant(upper, 3) + ")";
        }
    }
}
