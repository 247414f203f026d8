package org.thirstline.model.result;

/** The daily columns of a run. Soil water by layer follows them, one column a layer. */
public enum DailyVariable {
    /** Minimum temperature. */
    TMIN("tmin_c", "°C", "Daily minimum air temperature"),
    /** Maximum temperature. */
    TMAX("tmax_c", "°C", "Daily maximum air temperature"),
    /** Rain. */
    RAIN("rain_mm", "mm/d", "Precipitation"),
    /** Solar radiation. */
    SOLAR("solar_mj_m2", "MJ m⁻² d⁻¹", "Global solar radiation"),
    /** Reference evapotranspiration. */
    ET0("et0_mm", "mm/d", "FAO-56 reference evapotranspiration"),
    /** Rhizome-zone temperature. */
    RHIZOME_TEMPERATURE("rhizome_temperature_c", "°C", "Temperature of the rhizome zone"),
    /** Snow. */
    SNOW("snow_water_mm", "mm", "Water held in snow"),
    /** Leaf area index. */
    LEAF_AREA_INDEX("leaf_area_index", "m²/m²", "Green leaf area index"),
    /** Intercepted share. */
    INTERCEPTED_FRACTION("intercepted_fraction", "1", "Share of PAR intercepted"),
    /** Height. */
    HEIGHT("height_m", "m", "Height of the stand"),
    /** Green leaf. */
    GREEN_LEAF("green_leaf_g_m2", "g/m²", "Dry matter of green leaf"),
    /** Dead leaf. */
    DEAD_LEAF("dead_leaf_g_m2", "g/m²", "Dry matter of dead leaf still attached"),
    /** Stem. */
    STEM("stem_g_m2", "g/m²", "Dry matter of stems"),
    /** Standing. */
    STANDING("standing_g_m2", "g/m²", "Standing above-ground dry matter"),
    /** Reserve. */
    RESERVE("rhizome_reserve_g_m2", "g/m²", "Rhizome reserve"),
    /** Litter. */
    LITTER("litter_g_m2", "g/m²", "Litter on the ground"),
    /** Growth. */
    GROWTH("growth_g_m2", "g m⁻² d⁻¹", "Dry matter grown, above and below ground"),
    /** Moisture. */
    MOISTURE("moisture_pct", "% wet basis", "Moisture of the standing crop, wet basis"),
    /** Irrigation. */
    IRRIGATION("irrigation_mm", "mm/d", "Irrigation"),
    /** Interception. */
    INTERCEPTION("interception_mm", "mm/d", "Rain evaporated from wet leaves"),
    /** Runoff. */
    RUNOFF("runoff_mm", "mm/d", "Surface runoff"),
    /** Drainage. */
    DRAINAGE("drainage_mm", "mm/d", "Drainage below the profile"),
    /** Soil evaporation. */
    SOIL_EVAPORATION("soil_evaporation_mm", "mm/d", "Evaporation from the soil"),
    /** Potential transpiration. */
    POTENTIAL_TRANSPIRATION("potential_transpiration_mm", "mm/d", "Transpiration with unlimited water"),
    /** Transpiration. */
    TRANSPIRATION("transpiration_mm", "mm/d", "Transpiration"),
    /** Groundwater. */
    GROUNDWATER("groundwater_mm", "mm/d", "Water taken from a standing water table"),
    /** Water factor. */
    WATER_FACTOR("water_factor", "1", "Actual over potential transpiration"),
    /** Leaf expansion factor. */
    LEAF_WATER_FACTOR("leaf_water_factor", "1", "Factor of water stress on leaf expansion"),
    /** Aeration factor. */
    AERATION_FACTOR("aeration_factor", "1", "Factor of poor aeration on growth"),
    /** Temperature factor. */
    TEMPERATURE_FACTOR("temperature_factor", "1", "Factor of temperature on growth"),
    /** Soil water. */
    SOIL_WATER("soil_water_mm", "mm", "Water in the soil profile"),
    /** Available water. */
    ROOT_ZONE_DEPLETION("root_zone_depletion_mm", "mm", "Depletion of the root zone below field capacity");

    private final String column;
    private final String unit;
    private final String meaning;

    DailyVariable(String column, String unit, String meaning) {
        this.column = column;
        this.unit = unit;
        this.meaning = meaning;
    }

    /** Returns the column name, unit included. */
    public String column() {
        return column;
    }

    /** Returns the unit as text. */
    public String unit() {
        return unit;
    }

    /** Returns what the column means. */
    public String meaning() {
        return meaning;
    }
}
