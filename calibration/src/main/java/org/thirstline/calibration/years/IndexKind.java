package org.thirstline.calibration.years;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/** Ways to say how dry a year was. */
public enum IndexKind {
    /** Normal minus actual rain in the growing-season window. */
    SEASON("season", "rain_deficit_mm", 0, "missing rain of the growing season"),
    /** Normal minus actual rain from the first day of the growth year to the end of the growing-season window. */
    YEAR_TO_DATE("year-to-date", "year_to_date_deficit_mm", 0, "missing rain since the growth year began"),
    /** Normal minus actual rain in the whole growth year. */
    GROWTH_YEAR("growth-year", "growth_year_deficit_mm", 0, "missing rain of the growth year"),
    /** Normal minus actual rain between the dates of emergence and canopy end. */
    CANOPY("canopy", "canopy_deficit_mm", 0, "missing rain from emergence to canopy end"),
    /** Normal minus actual rain in a window the user names. */
    WINDOW("window", "window_deficit_mm", 0, "missing rain of the named window"),
    /** Reference evapotranspiration minus rain in the growing-season window. */
    ET0_MINUS_RAIN("et0-minus-rain", "et0_minus_rain_mm", 0, "ET0 beyond rain in the growing season"),
    /** Reference evapotranspiration minus rain from emergence to canopy end. */
    CANOPY_ET0_MINUS_RAIN(
            "canopy-et0-minus-rain", "canopy_et0_minus_rain_mm", 0, "ET0 beyond rain from emergence to canopy end"),
    /** Standardized Precipitation Index of 1 month. */
    SPI_1("spi-1", "spi_1", 1, "SPI of 1 month"),
    /** Standardized Precipitation Index of 3 months. */
    SPI_3("spi-3", "spi_3", 3, "SPI of 3 months"),
    /** Standardized Precipitation Index of 6 months. */
    SPI_6("spi-6", "spi_6", 6, "SPI of 6 months"),
    /** Standardized Precipitation Index of 12 months. */
    SPI_12("spi-12", "spi_12", 12, "SPI of 12 months"),
    /** Standardized Precipitation Index of 24 months. */
    SPI_24("spi-24", "spi_24", 24, "SPI of 24 months");

    private final String id;
    private final String column;
    private final int spiMonths;
    private final String words;

    IndexKind(String id, String column, int spiMonths, String words) {
        this.id = id;
        this.column = column;
        this.spiMonths = spiMonths;
        this.words = words;
    }

    /** Returns the name for options and tables. */
    public String id() {
        return id;
    }

    /** Returns the column name, unit included. */
    public String column() {
        return column;
    }

    /** Returns what it measures. */
    public String words() {
        return words;
    }

    /** Returns whether it is a Standardized Precipitation Index, which has no unit and falls as it gets drier. */
    public boolean isSpi() {
        return spiMonths > 0;
    }

    /** Returns the months a Standardized Precipitation Index adds up; 0 for other indices. */
    public int spiMonths() {
        return spiMonths;
    }

    /** Returns the names of all, in order. */
    public static List<String> ids() {
        return Arrays.stream(values()).map(IndexKind::id).toList();
    }

    /**
     * Returns the index of a name, absent if there is none.
     *
     * @param id its name
     */
    public static Optional<IndexKind> of(String id) {
        return Arrays.stream(values()).filter(kind -> kind.id.equals(id)).findFirst();
    }
}
