package org.thirstline.model.crop;

import java.util.Arrays;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;

/**
 * Every number that makes one grass differ from another. The key is the one in crop files; the limits are what the equations can take,
 * not what is plausible (a crop file carries the published range and its source beside each value).
 */
public enum CropParameter {
    // Phenology
    /** Base temperature of emergence. */
    EMERGENCE_BASE(
            "emergence_base_c", "°C", -5, 20, "Rhizome-zone temperature above which shoots move towards the surface"),
    /** Thermal time from the start of the growth year to emergence. */
    EMERGENCE_THERMAL_TIME(
            "emergence_thermal_time_c_d",
            "°C d",
            0,
            2000,
            "Thermal time of the rhizome zone from the start of the growth year to emergence"),
    /** Base temperature of leaf growth. */
    LEAF_BASE("leaf_base_c", "°C", -5, 20, "Air temperature below which leaf area does not grow"),
    /** Upper threshold of leaf growth. */
    LEAF_UPPER("leaf_upper_c", "°C", 15, 60, "Air temperature above which leaf area grows no faster"),
    /** End of leaf growth. */
    LEAF_GROWTH_END_THERMAL_TIME(
            "leaf_growth_end_thermal_time_c_d",
            "°C d",
            0,
            10000,
            "Thermal time from emergence to flowering, after which no leaf area is added"),
    /** Day length that ends leaf growth. */
    LEAF_GROWTH_END_DAY_LENGTH(
            "leaf_growth_end_day_length_h",
            "h",
            0,
            24,
            "Day length below which, after midsummer, no leaf area is added (0: no response)"),
    /** Day length that starts autumn. */
    SENESCENCE_DAY_LENGTH(
            "senescence_day_length_h", "h", 0, 24, "Day length below which, after midsummer, the canopy senesces"),
    /** Autumn leaf loss. */
    AUTUMN_LEAF_LOSS(
            "autumn_leaf_loss_per_d", "d⁻¹", 0, 1, "Share of green leaf area lost a day once the canopy senesces"),
    /** Killing frost of a mature canopy. */
    KILLING_FROST("killing_frost_c", "°C", -20, 5, "Air minimum that ends the canopy in autumn"),
    /** Half-lethal temperature of spring shoots. */
    SHOOT_LT50("shoot_lt50_c", "°C", -20, 5, "Air minimum that kills half of the emerged leaf in spring"),
    /** Half-width of the spring frost ramp. */
    SHOOT_FROST_HALF_RANGE(
            "shoot_frost_half_range_c",
            "°C",
            0.1,
            10,
            "Distance from no to half, and from half to full, spring frost damage"),
    // Winter
    /** Half-lethal rhizome temperature, first winter. */
    RHIZOME_LT50_FIRST_WINTER(
            "rhizome_lt50_first_winter_c",
            "°C",
            -40,
            0,
            "Rhizome-zone temperature that kills half of the plants in their first winter"),
    /** Half-lethal rhizome temperature, later winters. */
    RHIZOME_LT50(
            "rhizome_lt50_c", "°C", -40, 0, "Rhizome-zone temperature that kills half of the plants in later winters"),
    /** Steepness of winter kill. */
    RHIZOME_KILL_WIDTH(
            "rhizome_kill_width_c", "°C", 0.05, 5, "Logistic width of winter kill around the half-lethal temperature"),
    // Stand structure
    /** Establishment survival. */
    ESTABLISHMENT_SURVIVAL(
            "establishment_survival",
            "1",
            0,
            1,
            "Share of planted rhizomes or seeds that become plants before the first winter"),
    /** Shoots per plant, first year. */
    SHOOTS_PER_PLANT_YEAR_1("shoots_per_plant_year_1", "1", 0.1, 500, "Shoots per plant in the first growth year"),
    /** Shoots per plant, second year. */
    SHOOTS_PER_PLANT_YEAR_2("shoots_per_plant_year_2", "1", 0.1, 500, "Shoots per plant in the second growth year"),
    /** Shoots per plant, third year. */
    SHOOTS_PER_PLANT_YEAR_3("shoots_per_plant_year_3", "1", 0.1, 500, "Shoots per plant from the third growth year"),
    /** Mature shoot density. */
    MATURE_SHOOTS("mature_shoots_m2", "m⁻²", 1, 2000, "Shoots per ground area that a full stand does not exceed"),
    /** Clump radius in the first year. */
    CLUMP_RADIUS_YEAR_1(
            "clump_radius_year_1_m",
            "m",
            0.01,
            5,
            "Radius of the ground a plant's canopy covers in its first growth year"),
    /** Clump spread. */
    CLUMP_SPREAD("clump_spread_m_per_year", "m/yr", 0, 2, "Yearly increase of that radius"),
    /** Clump radius limit. */
    CLUMP_RADIUS_MAX("clump_radius_max_m", "m", 0.01, 10, "Largest radius of the ground a plant's canopy covers"),
    /** Onset of stand decline. */
    DECLINE_ONSET_AGE("decline_onset_age", "yr", 1, 200, "Last growth year at full vigour; later years decline"),
    /** Yearly decline. */
    DECLINE_PER_YEAR(
            "decline_per_year",
            "yr⁻¹",
            0,
            1,
            "Share of vigour lost a year after the onset (0: no decline, the default)"),
    /** Shape of the decline. */
    DECLINE_EXPONENTIAL(
            "decline_exponential", "1", 0, 1, "1: the share is lost from what is left; 0: from the full value"),
    /** Floor of the decline. */
    DECLINE_FLOOR("decline_floor", "1", 0, 1, "Vigour that an ageing stand keeps"),
    // Canopy and light
    /** Extinction coefficient. */
    EXTINCTION_COEFFICIENT("extinction_coefficient", "1", 0.1, 1.5, "Beer-Lambert extinction coefficient of PAR"),
    /** Maximum leaf area index. */
    MAX_LEAF_AREA_INDEX("max_leaf_area_index", "m²/m²", 0.1, 20, "Green leaf area index of a full stand"),
    /** Leaf area of an emerging shoot. */
    EMERGING_LEAF_AREA("emerging_leaf_area_m2", "m²", 1e-6, 0.1, "Green leaf area of one shoot at emergence"),
    /** Relative leaf growth. */
    LEAF_GROWTH_RATE(
            "leaf_growth_rate_per_c_d", "(°C d)⁻¹", 0, 0.1, "Relative growth rate of leaf area per thermal time"),
    /** Leaf life span. */
    LEAF_LIFE_SPAN("leaf_life_span_c_d", "°C d", 50, 100000, "Thermal time a leaf lives in the growing canopy"),
    /** Specific leaf area. */
    SPECIFIC_LEAF_AREA("specific_leaf_area_m2_kg", "m²/kg", 1, 60, "Leaf area per leaf dry matter"),
    /** Leaf share of growth. */
    LEAF_SHARE_MAX("leaf_share_max", "1", 0.05, 1, "Largest share of above-ground growth that leaf area can take"),
    /** Saturation of leaf area with shoots. */
    LEAF_AREA_SATURATION(
            "leaf_area_saturation",
            "1",
            0.01,
            20,
            "Curvature of the largest leaf area on shoot density: 0.01 proportional, 5 soon saturated"),
    /** Drought leaf loss. */
    DROUGHT_LEAF_LOSS(
            "drought_leaf_loss_per_d", "d⁻¹", 0, 1, "Share of green leaf area shed a day at full water stress"),
    /** Stress above which leaf is shed. */
    DROUGHT_LEAF_LOSS_ONSET("drought_leaf_loss_onset", "1", 0, 1, "Water factor below which leaf is shed"),
    /** Maximum height. */
    MAX_HEIGHT("max_height_m", "m", 0.1, 10, "Height that tall canopies approach"),
    /** Stem mass at which the height is within 1/e of its maximum. */
    HEIGHT_STEM_MASS(
            "height_stem_mass_g_m2",
            "g m⁻²",
            10,
            10000,
            "Stem mass at which height has reached 1 - 1/e of its maximum"),
    // Growth
    /** Radiation-use efficiency. */
    RADIATION_USE_EFFICIENCY(
            "radiation_use_efficiency_g_mj",
            "g/MJ",
            0.1,
            8,
            "Above-ground dry matter per intercepted PAR, unstressed, mature stand"),
    /** PAR share. */
    PAR_FRACTION("par_fraction", "1", 0.3, 0.6, "PAR in global solar radiation"),
    /** Cold limit of growth. */
    GROWTH_MIN("growth_min_c", "°C", -10, 30, "Daytime temperature at which growth stops"),
    /** Lower optimum. */
    GROWTH_OPTIMUM_LOW("growth_optimum_low_c", "°C", 0, 40, "Daytime temperature from which growth is at its best"),
    /** Upper optimum. */
    GROWTH_OPTIMUM_HIGH("growth_optimum_high_c", "°C", 10, 50, "Daytime temperature up to which growth is at its best"),
    /** Hot limit of growth. */
    GROWTH_MAX("growth_max_c", "°C", 20, 60, "Daytime temperature at which growth stops"),
    /** CO2 response. */
    CO2_RESPONSE(
            "co2_response_per_100_ppm",
            "1",
            -0.1,
            0.5,
            "Relative gain of growth per 100 ppm of CO₂ above the reference"),
    /** CO2 reference. */
    CO2_REFERENCE("co2_reference_ppm", "ppm", 200, 1000, "CO₂ at which the radiation-use efficiency holds"),
    // Rhizome
    /** Share of growth to the rhizome, first year. */
    RHIZOME_SHARE_YEAR_1(
            "rhizome_share_year_1", "1", 0, 0.95, "Share of growth that goes below ground in the first growth year"),
    /** Share of growth to the rhizome, second year. */
    RHIZOME_SHARE_YEAR_2(
            "rhizome_share_year_2", "1", 0, 0.95, "Share of growth that goes below ground in the second growth year"),
    /** Share of growth to the rhizome, mature. */
    RHIZOME_SHARE_MATURE(
            "rhizome_share_mature", "1", 0, 0.95, "Share of growth that goes below ground from the third growth year"),
    /** Reserve capacity. */
    RESERVE_CAPACITY("reserve_capacity_g_m2", "g m⁻²", 1, 10000, "Rhizome reserve of a full stand"),
    /** Planted reserve. */
    PLANTED_RESERVE("planted_reserve_g", "g", 0, 1000, "Rhizome or seed dry matter per plant at planting"),
    /** Share of reserve below which shoots suffer. */
    RESERVE_FOR_FULL_VIGOUR(
            "reserve_for_full_vigour", "1", 0.01, 1, "Share of the reserve capacity that lets all shoots emerge"),
    /** Respiration. */
    RESERVE_RESPIRATION(
            "reserve_respiration_per_d",
            "d⁻¹",
            0,
            0.05,
            "Maintenance respiration of the reserve at 10 °C (doubles every 10 °C)"),
    /** Mobilisation. */
    RESERVE_MOBILISATION(
            "reserve_mobilisation_per_d", "d⁻¹", 0, 0.5, "Share of the reserve that leaf growth can draw a day"),
    /** Leaf area that the reserve pays for. */
    RESERVE_FED_LEAF_AREA(
            "reserve_fed_leaf_area",
            "m²/m²",
            0,
            10,
            "Leaf area index at which the reserve no longer pays for leaf that growth cannot"),
    /** Translocation. */
    LEAF_TRANSLOCATION(
            "leaf_translocation", "1", 0, 0.9, "Share of a senescing leaf's dry matter moved to the rhizome"),
    // Roots and water
    /** Rooting depth, first year. */
    ROOT_DEPTH_YEAR_1("root_depth_year_1_m", "m", 0.05, 5, "Depth of water uptake in the first growth year"),
    /** Rooting depth, second year. */
    ROOT_DEPTH_YEAR_2("root_depth_year_2_m", "m", 0.05, 5, "Depth of water uptake in the second growth year"),
    /** Rooting depth, mature. */
    ROOT_DEPTH_MATURE("root_depth_mature_m", "m", 0.05, 5, "Depth of water uptake from the third growth year"),
    /** Root share of the top. */
    ROOT_SHARE_TOP_30_CM(
            "root_share_top_30_cm",
            "1",
            0.18,
            0.95,
            "Share of a mature root system in the top 0.3 m; sets the exponential decrease with depth"),
    /** Full-cover Kcb. */
    BASAL_CROP_COEFFICIENT_FULL(
            "basal_crop_coefficient_full",
            "1",
            0.3,
            1.8,
            "Basal crop coefficient at full cover in a subhumid climate (FAO-56 K_cb full)"),
    /** Depletion fraction. */
    DEPLETION_FRACTION(
            "depletion_fraction",
            "1",
            0.1,
            0.8,
            "Share of available water used before transpiration falls, at ET_c 5 mm/d (FAO-56 p)"),
    /** Depletion fraction of leaf growth. */
    LEAF_DEPLETION_FRACTION("leaf_depletion_fraction", "1", 0.05, 0.8, "The same for leaf expansion"),
    /** Compensation. */
    UPTAKE_COMPENSATION(
            "uptake_compensation",
            "1",
            0.1,
            1,
            "Weighted stress index above which uptake is fully compensated (Jarvis ω_c; 1: none)"),
    /** Air-filled pores. */
    AERATION_LIMIT(
            "aeration_limit", "m³ m⁻³", 0, 0.3, "Air-filled porosity of the root zone below which roots lack oxygen"),
    /** Days until aeration stress. */
    AERATION_DELAY("aeration_delay_d", "d", 0, 60, "Days of poor aeration until growth is fully affected"),
    /** Growth without air. */
    AERATION_SENSITIVITY("aeration_sensitivity", "1", 0, 1, "Share of growth lost in a fully saturated root zone"),
    /** Interception storage. */
    INTERCEPTION_PER_LAI(
            "interception_mm_per_lai", "mm", 0, 2, "Rain held by one unit of leaf area index (0: no interception)"),
    // After the canopy
    /** Leaf fall. */
    DEAD_LEAF_FALL("dead_leaf_fall_per_d", "d⁻¹", 0, 1, "Share of attached dead leaf that falls a day"),
    /** Stem loss. */
    STEM_LOSS("stem_loss_per_d", "d⁻¹", 0, 0.1, "Share of dead standing stem lost a day"),
    /** Stem loss under snow. */
    STEM_LOSS_SNOW(
            "stem_loss_snow_per_d", "d⁻¹", 0, 0.1, "Further share lost on a day with more than 10 mm of snow water"),
    /** Moisture of the living stand. */
    LIVING_MOISTURE("living_moisture_pct", "% wet basis", 20, 90, "Moisture of the whole shoot when the canopy ends"),
    /** Drying. */
    DRYING_RATE("drying_rate_per_d", "d⁻¹", 0, 1, "Approach of dry-basis moisture to equilibrium in still, damp air"),
    /** Drying by evaporative demand. */
    DRYING_RATE_PER_ET0(
            "drying_rate_per_mm", "mm⁻¹", 0, 1, "Further approach per millimetre of reference evapotranspiration"),
    /** Rewetting. */
    REWETTING(
            "rewetting_per_mm", "kg/kg mm⁻¹", 0, 0.1, "Dry-basis moisture gained per millimetre of rain on dead stems"),
    // Harvest
    /** Stubble. */
    STUBBLE_HEIGHT("stubble_height_m", "m", 0, 1, "Height at which the stand is cut, unless the study says otherwise"),
    /** Pick-up. */
    PICK_UP_SHARE(
            "pick_up_share",
            "1",
            0,
            1,
            "Share of the cut dry matter that the machine picks up, unless the study says otherwise"),
    /** Litter cover. */
    LITTER_COVER_PER_G(
            "litter_cover_per_g_m2", "m² g⁻¹", 0, 0.1, "Ground covered per mass of litter (exponential cover)"),
    /** Litter decay. */
    LITTER_DECAY("litter_decay_per_d", "d⁻¹", 0, 0.1, "Share of litter decayed a day at 10 °C (doubles every 10 °C)"),
    /** Energy. */
    HEATING_VALUE("heating_value_mj_kg", "MJ/kg", 10, 25, "Lower heating value of dry matter"),
    /** Bale density. */
    BALE_DENSITY("bale_density_kg_m3", "kg m⁻³", 50, 400, "Dry matter per bale volume");

    private static final Map<String, CropParameter> BY_KEY =
            Arrays.stream(values()).collect(Collectors.toMap(CropParameter::key, Function.identity()));

    private final String key;
    private final String unit;
    private final double lowest;
    private final double highest;
    private final String meaning;

    CropParameter(String key, String unit, double lowest, double highest, String meaning) {
        this.key = key;
        this.unit = unit;
        this.lowest = lowest;
        this.highest = highest;
        this.meaning = meaning;
    }

    /** Returns the parameter of a key in crop files, if there is one. */
    public static Optional<CropParameter> ofKey(String key) {
        return Optional.ofNullable(BY_KEY.get(key));
    }

    /** Returns the key in crop files, unit included. */
    public String key() {
        return key;
    }

    /** Returns the unit as text, "1" where there is none. */
    public String unit() {
        return unit;
    }

    /** Returns the smallest value the equations can take. */
    public double lowest() {
        return lowest;
    }

    /** Returns the largest value the equations can take. */
    public double highest() {
        return highest;
    }

    /** Returns what the parameter means. */
    public String meaning() {
        return meaning;
    }
}
