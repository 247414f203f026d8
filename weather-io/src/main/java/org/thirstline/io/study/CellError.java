package org.thirstline.io.study;

import org.thirstline.model.error.ErrorCode;

/** What can be wrong in a table of cells. File and line stand in front of the message. */
public enum CellError implements ErrorCode {
    /** No arguments. */
    NO_CELLS("the table holds no cell; it needs a header and a line for each cell"),
    /** Column, its meaning, columns found, hint. */
    COLUMN_MISSING("no column '%s' (%s); the columns are: %s%s"),
    /** Column, nearest known name. */
    COLUMN_UNKNOWN("column '%s' is not known; did you mean '%s'? Rename the column, or remove it"),
    /** Column. */
    COLUMN_TWICE("two columns are named '%s'; keep one"),
    /** Fields of the line, expected fields. */
    FIELD_COUNT("the line has %s fields, expected %s"),
    /** Name, line of the first. */
    NAME_TWICE("cell: the name '%s' is used twice, first on line %s"),
    /** No arguments. */
    NAME_MISSING("cell: the name is missing"),
    /** What is given. */
    SOIL_INCOMPLETE(
            "the soil has only %s; it needs depth_m, and available_water_mm_per_m or the three columns sand_pct, clay_pct and"
                    + " organic_matter_pct"),
    /** Zones of the study. */
    ZONE_NEEDED(
            "the cell has no soil and the study has several zones; fill column zone with one of %s, or give columns of the soil"),
    /** Found, zones of the study, hint. */
    ZONE_UNKNOWN("found '%s'; the study's zones are: %s%s"),
    /** No arguments. */
    ZONE_AND_SOIL("a zone and columns of the soil cannot both be given; keep one"),
    /** File as the table names it. */
    WEATHER_NOT_FOUND("there is no file '%s'; paths count from the folder of the table"),
    /** Latitude, hemisphere of the study. */
    OTHER_HEMISPHERE(
            "latitude %s is not on the study's half of the globe, the %s; harvest and growing season are dates of the study, so give"
                    + " each half a study of its own");

    private final String template;

    CellError(String template) {
        this.template = template;
    }

    @Override
    public String template() {
        return template;
    }
}
