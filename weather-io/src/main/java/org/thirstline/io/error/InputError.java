package org.thirstline.io.error;

import org.thirstline.model.error.ErrorCode;

/** Errors of input files, weather files above all. The place (file and line) stands in front of the message. */
public enum InputError implements ErrorCode {
    /** Path. */
    FILE_NOT_FOUND("no such file: %s; check the path"),
    /** Reason. */
    FILE_UNREADABLE("the file cannot be read: %s"),
    /** No arguments. */
    FILE_EMPTY("the file holds no lines; a weather file is needed"),
    /** What it is instead, what to do. */
    FILE_NOT_TEXT("this is not a text file but %s; %s"),
    /** First line, formats. */
    FORMAT_UNKNOWN("no known weather format; the file starts with '%s'. Known are: %s. A table of your own needs the "
            + "columns date, tmin_c, tmax_c and may have rain_mm, solar_mj_m2, wind_2m_m_s, vapour_pressure_kpa"),
    /** Forced format, what is lacking. */
    FORMAT_MISMATCH("this is no %s file: %s"),
    /** What is missing, columns found, hint. */
    COLUMN_MISSING("no column for %s; the columns are: %s%s"),
    /** Quantity, first column, second column. */
    COLUMN_TWICE("two columns give %s: %s and %s; keep one"),
    /** Column, nearest known name, all names of that kind. */
    COLUMN_UNKNOWN("column '%s' is not known; did you mean '%s'? Allowed: %s. Rename the column, or remove it"),
    /** Column, quantity, allowed names, nearest. */
    UNIT_NOT_UNDERSTOOD("column '%s' gives %s but not its unit in a known way; allowed: %s. Did you mean '%s'?"),
    /** What, what to do. */
    UNIT_NOT_STATED("the file does not state the unit of %s; %s"),
    /** Column, found. */
    NOT_A_NUMBER("column %s: found '%s'; allowed is a number, or nothing where the value is missing"),
    /** Found, allowed form. */
    BAD_DATE("found '%s' as the date; allowed is %s"),
    /** Date. */
    DUPLICATE_DATE("the date %s is there twice; keep one line for each day"),
    /** Date, date before it. */
    DATES_UNSORTED("the date %s comes after %s; sort the lines by date"),
    /** Fields found, fields expected, hint. */
    FIELD_COUNT("the line has %s fields, expected %s; %s"),
    /** What was found, what was expected. */
    LINE_MALFORMED("found '%s'; expected %s"),
    /** Stations found. */
    STATION_NEEDED("the file holds several stations (%s); name the one to read"),
    /** Wanted station, stations found. */
    STATION_NOT_FOUND("station %s is not in the file; it holds %s"),
    /** Format. */
    LATITUDE_NEEDED("the latitude is needed and the file (%s) does not give it; state it in degrees, north positive"),
    /** Format. */
    ELEVATION_NEEDED("the elevation is needed and the file (%s) does not give it; state it in metres above sea level"),
    /** What is wrong with the place. */
    SITE_IMPOSSIBLE("the place in the file cannot be: %s"),
    /** Variable, column. */
    VARIABLE_ABSENT("the file gives no %s at all (column %s in our own format); it is needed and is not estimated"),
    /** Variable, variables given. */
    VARIABLE_NOT_GIVEN("%s is to be taken from this file, but it gives only %s"),
    /** No arguments. */
    NO_USABLE_DAYS("no day has both a minimum and a maximum temperature"),
    /** File. */
    NO_WEATHER("%s is a list of stations without weather; give the weather files beside it"),
    /** How many, the first of them. */
    SUSPECT_VALUES("%s suspect values, and they are to stop the reading; the first: %s"),
    /** Variable, what its values look like. */
    UNIT_IMPLAUSIBLE("%s cannot be in the unit it is said to be in: %s"),
    /** What differs between the files. */
    FILES_DISAGREE("the files do not belong together: %s");

    private final String template;

    InputError(String template) {
        this.template = template;
    }

    @Override
    public String template() {
        return template;
    }
}
