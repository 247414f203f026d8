package org.thirstline.charts;

import java.util.List;

/**
 * Which parameter decides which output. Immutable and thread-safe.
 *
 * @param where zone or site; may be empty
 * @param screened how many parameters were tried
 * @param outputs names of the outputs
 * @param rows a row for each parameter that was sampled
 */
public record InfluenceTableView(String where, int screened, List<String> outputs, List<Row> rows) {

    /** Copies the lists. */
    public InfluenceTableView {
        outputs = List.copyOf(outputs);
        rows = List.copyOf(rows);
    }

    /**
     * One parameter.
     *
     * @param name the parameter in words
     * @param totals its total index for each output, of 1; NaN where an output does not vary
     * @param decides for each output, whether it decides beyond doubt
     */
    public record Row(String name, double[] totals, boolean[] decides) {

        /** Copies the arrays. */
        public Row {
            totals = totals.clone();
            decides = decides.clone();
        }

        int decided() {
            int count = 0;
            for (boolean one : decides) {
                count += one ? 1 : 0;
            }
            return count;
        }
    }
}
