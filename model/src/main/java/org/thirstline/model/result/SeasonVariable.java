package org.thirstline.model.result;

/** The numeric columns of a season. Column names, units and meanings of every table and chart come from here. */
public enum SeasonVariable {
    /** Highest green leaf area index. */
    MAX_LEAF_AREA_INDEX("max_leaf_area_index", "m²/m²", "Highest green leaf area index"),
    /** Intercepted PAR. */
    INTERCEPTED_PAR("intercepted_par_mj_m2", "MJ/m²", "PAR intercepted from emergence to the end of the canopy"),
    /** Rain in the growing season. */
    SEASON_RAIN("season_rain_mm", "mm", "Precipitation in the growing-season window"),
    /** Rainfall deficit. */
    RAIN_DEFICIT("rain_deficit_mm", "mm", "Normal minus actual precipitation in the growing-season window"),
    /** Reference evapotranspiration. */
    SEASON_ET0("season_et0_mm", "mm", "FAO-56 reference evapotranspiration in the growing-season window"),
    /** Transpiration. */
    TRANSPIRATION("transpiration_mm", "mm", "Transpiration in the growing-season window"),
    /** Evaporation from the soil. */
    SOIL_EVAPORATION("soil_evaporation_mm", "mm", "Evaporation from the soil in the growing-season window"),
    /** Runoff. */
    RUNOFF("runoff_mm", "mm", "Surface runoff in the growing-season window"),
    /** Drainage. */
    DRAINAGE("drainage_mm", "mm", "Drainage below the profile in the growing-season window"),
    /** Water at the start. */
    SOIL_WATER_START("soil_water_start_mm", "mm", "Water in the profile on the morning of the window's first day"),
    /** Water at the end. */
    SOIL_WATER_END("soil_water_end_mm", "mm", "Water in the profile on the evening of the window's last day"),
    /** Mean water factor. */
    MEAN_WATER_FACTOR(
            "mean_water_factor",
            "1",
            "Mean ratio of actual to potential transpiration from emergence to the end of the canopy"),
    /** Stressed days. */
    STRESSED_DAYS("stressed_days", "d", "Days from emergence to the end of the canopy with a water factor below 0.9"),
    /** Shoots. */
    SHOOTS("shoots_m2", "m⁻²", "Shoots per ground area"),
    /** Height. */
    HEIGHT("height_m", "m", "Height at the end of the canopy"),
    /** Peak biomass. */
    PEAK_BIOMASS("peak_biomass_mg_ha", "Mg/ha", "Highest standing above-ground dry matter"),
    /** Harvested dry matter. */
    HARVESTED("harvested_mg_ha", "Mg/ha", "Harvested dry matter"),
    /** Moisture at harvest. */
    HARVEST_MOISTURE("harvest_moisture_pct", "% wet basis", "Moisture at harvest, wet basis"),
    /** Harvested fresh mass. */
    HARVESTED_FRESH("harvested_fresh_mg_ha", "Mg/ha", "Harvested fresh mass"),
    /** Harvest without any lack of water. */
    POTENTIAL_HARVESTED(
            "potential_harvested_mg_ha", "Mg/ha", "Harvested dry matter of the same stand with unlimited water"),
    /** Drought penalty. */
    DROUGHT_PENALTY(
            "drought_penalty_mg_ha",
            "Mg/ha",
            "Harvest lost to lack of water: potential minus harvested, excess water and harvest timing apart"),
    /** Drought penalty in percent. */
    DROUGHT_PENALTY_PCT("drought_penalty_pct", "%", "Drought penalty as a share of the potential harvest"),
    /** This season's part. */
    PENALTY_THIS_SEASON("penalty_this_season_mg_ha", "Mg/ha", "Part of the drought penalty that arose in this season"),
    /** Carried-over part. */
    PENALTY_CARRIED_OVER(
            "penalty_carried_over_mg_ha",
            "Mg/ha",
            "Part of the drought penalty carried over from earlier seasons in the rhizome reserve"),
    /** Excess water penalty. */
    EXCESS_WATER_PENALTY("excess_water_penalty_mg_ha", "Mg/ha", "Harvest lost to poor aeration of the root zone"),
    /** Standing dry matter on the day of harvest. */
    STANDING_AT_HARVEST("standing_at_harvest_mg_ha", "Mg/ha", "Standing above-ground dry matter just before the cut"),
    /** Plants. */
    PLANTS("plants_m2", "m⁻²", "Living plants per ground area"),
    /** Reserve at emergence. */
    RESERVE_AT_EMERGENCE("reserve_at_emergence_g_m2", "g/m²", "Rhizome reserve when the canopy emerges"),
    /** Interception. */
    INTERCEPTION("interception_mm", "mm", "Rain evaporated from wet leaves in the growing-season window"),
    /** Irrigation. */
    IRRIGATION("irrigation_mm", "mm", "Irrigation in the growing-season window"),
    /** Groundwater. */
    GROUNDWATER(
            "groundwater_mm", "mm", "Water the profile took from a standing water table in the growing-season window"),
    /** Snow. */
    SNOW_CHANGE("snow_change_mm", "mm", "Change of the water held in snow over the growing-season window"),
    /** Bales. */
    BALE_VOLUME("bale_volume_m3_ha", "m³/ha", "Volume of the bales at the crop's stated bale density"),
    /** Energy. */
    ENERGY(
            "energy_gj_ha",
            "GJ/ha",
            "Lower heating value of the harvested dry matter, water's heat of vaporisation taken off");

    private final String column;
    private final String unit;
    private final String meaning;

    SeasonVariable(String column, String unit, String meaning) {
        this.column = column;
        this.unit = unit;
        this.meaning = meaning;
    }

    /** Returns whether the column is a yield or part of one, which only a complete season has. */
    public boolean isYield() {
        return switch (this) {
            case PEAK_BIOMASS,
                    HARVESTED,
                    HARVEST_MOISTURE,
                    HARVESTED_FRESH,
                    POTENTIAL_HARVESTED,
                    DROUGHT_PENALTY,
                    DROUGHT_PENALTY_PCT,
                    PENALTY_THIS_SEASON,
                    PENALTY_CARRIED_OVER,
                    EXCESS_WATER_PENALTY,
                    STANDING_AT_HARVEST,
                    MEAN_WATER_FACTOR,
                    BALE_VOLUME,
                    ENERGY -> true;
            default -> false;
        };
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
