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
    /** GHCN-Daily as a table without attributes, whose units are not stated. */
    GHCN_DAILY_WIDE("ghcn-daily-wide", "GHCN-Daily, one day a line without attributes (orders, copies)"),
    /** NASA POWER daily point. */
    NASA_POWER("nasa-power", "NASA POWER daily point CSV or JSON"),
    /** Daymet single pixel. */
    DAYMET("daymet", "Daymet single pixel CSV"),
    /** KNMI daily values. */
    KNMI("knmi", "KNMI daily values (etmgeg)"),
    /** U.S. Climate Reference Network, daily01. */
    USCRN("uscrn", "USCRN daily01"),
    /** Open-Meteo daily. */
    OPEN_METEO("open-meteo", "Open-Meteo daily CSV or JSON"),
    /** DWD daily climate and radiation. */
    DWD("dwd", "DWD daily station products"),
    /** Met Éireann daily data. */
    MET_EIREANN("met-eireann", "Met Éireann daily data"),
    /** ECA&amp;D series. */
    ECAD("ecad", "ECA&D series of one element"),
    /** MeteoSwiss daily values. */
    METEOSWISS("meteoswiss", "MeteoSwiss daily values"),
    /** gridMET at a point. */
    GRIDMET("gridmet", "gridMET point CSV"),
    /** AgriMet daily values. */
    AGRIMET("agrimet", "AgriMet daily values"),
    /** CoAgMET daily extract. */
    COAGMET("coagmet", "CoAgMET daily extract"),
    /** GeoSphere Austria daily climate. */
    GEOSPHERE("geosphere", "GeoSphere Austria daily climate"),
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
