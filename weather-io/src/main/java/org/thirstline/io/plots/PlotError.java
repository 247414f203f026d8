package org.thirstline.io.plots;

import org.thirstline.model.error.ErrorCode;

/** What can be wrong in a file of plot data. File and line stand in front of the message. */
public enum PlotError implements ErrorCode {
    /** Study file. */
    NO_PLOTS("%s names no plot data; add the line 'plots: plots.csv' to it, or give --plots FILE"),
    /** No arguments. */
    NO_YIELDS("the file holds no plot yield"),
    /** Column, its meaning, columns found, hint. */
    COLUMN_MISSING("no column '%s' (%s); the columns are: %s%s"),
    /** Column, nearest known name. */
    COLUMN_UNKNOWN("column '%s' is not known; did you mean '%s'? Rename the column, or remove it"),
    /** Column, line's fields, expected fields. */
    FIELD_COUNT("the line has %s fields, expected %s"),
    /** Column, found, allowed. */
    BAD_FIELD("column %s: found '%s'; allowed is %s"),
    /** Found, allowed, hint. */
    UNKNOWN_ZONE("column zone: found '%s'; the study's zones are: %s%s"),
    /** Found, allowed, hint. */
    UNKNOWN_UNIT("column unit: found '%s'; allowed is %s%s"),
    /** Found, allowed, hint. */
    UNKNOWN_VARIABLE("column variable: found '%s'; allowed is %s%s"),
    /** Column, found, Mg/ha, largest Mg/ha. */
    YIELD_IMPOSSIBLE(
            "column %s: found %s, which is %s Mg/ha; allowed is 0 to %s Mg/ha of dry matter. Is the unit right?"),
    /** Found, variable, allowed, hint. */
    UNIT_OF_VARIABLE("column unit: found '%s', but %s comes in %s%s"),
    /** Found unit. */
    DEPTH_MISSING("a soil water content in '%s' needs its depth; add a column depth_m, or give the water in mm"),
    /** Found, variable, largest, unit. */
    VALUE_IMPOSSIBLE("column value: found %s; allowed for %s is 0 to %s %s. Is the unit right?"),
    /** Growth year stated, harvest date, growth year of that date. */
    YEARS_DISAGREE(
            "column growth_year: found %s, but a harvest on %s belongs to growth year %s; keep one of the two columns"),
    /** Growth year, planting year. */
    BEFORE_PLANTING("growth year %s lies before planting in %s"),
    /** Plot, growth year, first line. */
    TWICE("plot %s has growth year %s twice, first on line %s"),
    /** Plot, what, first line. */
    MEASURED_TWICE("plot %s has %s twice, first on line %s");

    private final String template;

    PlotError(String template) {
        this.template = template;
    }

    @Override
    public String template() {
        return template;
    }
}
