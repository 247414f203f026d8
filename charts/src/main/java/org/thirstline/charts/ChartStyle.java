package org.thirstline.charts;

import org.thirstline.charts.theme.ChartSize;
import org.thirstline.charts.theme.ChartTheme;

/**
 * How a chart looks and what stands under it. Immutable and thread-safe.
 *
 * @param theme light or dark
 * @param size named size
 * @param units the reader's units
 * @param source where the data come from and what was assumed, one or two sentences; may be empty
 * @param invented whether the data are made up, which the chart then says
 */
public record ChartStyle(ChartTheme theme, ChartSize size, UnitSystem units, String source, boolean invented) {

    /** Returns a plain style. */
    public static ChartStyle of(ChartTheme theme, ChartSize size) {
        return new ChartStyle(theme, size, UnitSystem.SI, "", false);
    }

    /** Returns this style in another size. */
    public ChartStyle withSize(ChartSize other) {
        return new ChartStyle(theme, other, units, source, invented);
    }

    /** Returns this style in another theme. */
    public ChartStyle withTheme(ChartTheme other) {
        return new ChartStyle(other, size, units, source, invented);
    }

    /** Returns this style in other units. */
    public ChartStyle withUnits(UnitSystem other) {
        return new ChartStyle(theme, size, other, source, invented);
    }

    /** Returns this style with another source line. */
    public ChartStyle withSource(String other) {
        return new ChartStyle(theme, size, units, other, invented);
    }
}
