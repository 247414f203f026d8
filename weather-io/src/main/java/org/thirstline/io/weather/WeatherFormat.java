package org.thirstline.io.weather;

import java.util.Arrays;
import java.util.stream.Collectors;

/** The weather file formats that can be read, in the order in which a file is held against them. */
public enum WeatherFormat {
    /** GHCN-Daily of NOAA, fixed width. */
    GHCN_DAILY("ghcn-daily", "GHCN-Daily, fixed width (.dly)"),
    /** GHCN-Daily as one value a line, by year or by station. */
    GHCN_DAILY_LONG("ghcn-daily-long", "GHCN-Daily, one value a line (by year, by station)"),
    /** GHCN-Daily as a table with attributes, one line a day. */
    GHCN_DAILY_ACCESS("ghcn-daily-access", "GHCN-Daily, one day a line with attributes (access)"),
    /** NASA POWER daily point. */
    NASA_POWER("nasa-power", "NASA POWER daily point CSV"),
    /** Daymet single pixel. */
    DAYMET("daymet", "Daymet single pixel CSV"),
    /** KNMI daily values. */
    KNMI("knmi", "KNMI daily values (etmgeg)"),
    /** U.S. Climate Reference Network, daily01. */
    USCRN("uscrn", "USCRN daily01"),
    /** Open-Meteo daily. */
    OPEN_METEO("open-meteo", "Open-Meteo daily CSV"),
    /** Our own table. */
    PLAIN("plain", "plain table with named units");

    private final String id;
    private final String description;

    WeatherFormat(String id, String description) {
        this.id = id;
        this.description = description;
    }

    /** Returns the name a user gives to force the format. */
    public String id() {
        return id;
    }

    /** Returns the format in words. */
    public String description() {
        return description;
    }

    static String allDescriptions() {
        return Arrays.stream(values()).map(WeatherFormat::description).collect(Collectors.joining("; "));
    }
}
