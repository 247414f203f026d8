package org.thirstline.charts;

import java.util.EnumMap;
import java.util.Locale;
import java.util.Map;
import org.thirstline.model.crop.CropParameter;

/** Short names of parameters, for labels that have no room for the meaning. */
public final class ParameterWords {

    /** Name of the factor on the water that a soil holds. */
    public static final String SOIL_WATER = "available water of the soil";

    /** Name of the factor on the depth of a soil. */
    public static final String SOIL_DEPTH = "depth of the soil";

    private static final Map<CropParameter, String> NAMES = new EnumMap<>(Map.ofEntries(
            Map.entry(CropParameter.EMERGENCE_BASE, "base temperature of emergence"),
            Map.entry(CropParameter.EMERGENCE_THERMAL_TIME, "thermal time to emergence"),
            Map.entry(CropParameter.LEAF_BASE, "base temperature of leaf growth"),
            Map.entry(CropParameter.LEAF_UPPER, "upper temperature of leaf growth"),
            Map.entry(CropParameter.LEAF_GROWTH_END_THERMAL_TIME, "thermal time of leaf growth"),
            Map.entry(CropParameter.LEAF_GROWTH_END_DAY_LENGTH, "day length that ends leaf growth"),
            Map.entry(CropParameter.SENESCENCE_DAY_LENGTH, "day length that starts autumn"),
            Map.entry(CropParameter.SHOOT_LT50, "half-lethal frost of spring shoots"),
            Map.entry(CropParameter.SHOOT_FROST_HALF_RANGE, "half-range of spring frost"),
            Map.entry(CropParameter.RHIZOME_LT50_FIRST_WINTER, "half-lethal cold of the first winter"),
            Map.entry(CropParameter.RHIZOME_LT50, "half-lethal cold of later winters"),
            Map.entry(CropParameter.RHIZOME_KILL_WIDTH, "width of winter kill"),
            Map.entry(CropParameter.SHOOTS_PER_PLANT_YEAR_1, "shoots per plant in year 1"),
            Map.entry(CropParameter.SHOOTS_PER_PLANT_YEAR_2, "shoots per plant in year 2"),
            Map.entry(CropParameter.SHOOTS_PER_PLANT_YEAR_3, "shoots per plant in year 3"),
            Map.entry(CropParameter.MATURE_SHOOTS, "shoots of a full stand"),
            Map.entry(CropParameter.CLUMP_RADIUS_YEAR_1, "clump radius in year 1"),
            Map.entry(CropParameter.CLUMP_RADIUS_MAX, "largest clump radius"),
            Map.entry(CropParameter.DECLINE_ONSET_AGE, "age at which decline starts"),
            Map.entry(CropParameter.DECLINE_PER_YEAR, "yearly decline"),
            Map.entry(CropParameter.DECLINE_FLOOR, "vigour that an old stand keeps"),
            Map.entry(CropParameter.MAX_LEAF_AREA_INDEX, "maximum leaf area index"),
            Map.entry(CropParameter.EMERGING_LEAF_AREA, "leaf area of an emerging shoot"),
            Map.entry(CropParameter.LEAF_SHARE_MAX, "largest leaf share of growth"),
            Map.entry(CropParameter.DROUGHT_LEAF_LOSS_ONSET, "onset of drought leaf loss"),
            Map.entry(CropParameter.MAX_HEIGHT, "maximum height"),
            Map.entry(CropParameter.HEIGHT_STEM_MASS, "stem mass of full height"),
            Map.entry(CropParameter.RADIATION_USE_EFFICIENCY, "radiation-use efficiency"),
            Map.entry(CropParameter.PAR_FRACTION, "PAR share of sunlight"),
            Map.entry(CropParameter.GROWTH_MIN, "cold limit of growth"),
            Map.entry(CropParameter.GROWTH_OPTIMUM_LOW, "lower optimum of growth"),
            Map.entry(CropParameter.GROWTH_OPTIMUM_HIGH, "upper optimum of growth"),
            Map.entry(CropParameter.GROWTH_MAX, "hot limit of growth"),
            Map.entry(CropParameter.CO2_RESPONSE, "response to CO2"),
            Map.entry(CropParameter.CO2_REFERENCE, "reference CO2"),
            Map.entry(CropParameter.RHIZOME_SHARE_YEAR_1, "rhizome share in year 1"),
            Map.entry(CropParameter.RHIZOME_SHARE_YEAR_2, "rhizome share in year 2"),
            Map.entry(CropParameter.RHIZOME_SHARE_MATURE, "rhizome share of a grown stand"),
            Map.entry(CropParameter.ROOT_DEPTH_YEAR_1, "root depth in year 1"),
            Map.entry(CropParameter.ROOT_DEPTH_YEAR_2, "root depth in year 2"),
            Map.entry(CropParameter.ROOT_DEPTH_MATURE, "root depth of a grown stand"),
            Map.entry(CropParameter.ROOT_SHARE_TOP_30_CM, "root share of the top 30 cm"),
            Map.entry(CropParameter.BASAL_CROP_COEFFICIENT_FULL, "full-cover crop coefficient"),
            Map.entry(CropParameter.LEAF_DEPLETION_FRACTION, "depletion fraction of leaf growth"),
            Map.entry(CropParameter.INTERCEPTION_PER_LAI, "rain held by leaves"),
            Map.entry(CropParameter.LIVING_MOISTURE, "moisture of the living stand"),
            Map.entry(CropParameter.DRYING_RATE_PER_ET0, "drying by evaporative demand"),
            Map.entry(CropParameter.LITTER_COVER_PER_G, "ground covered by litter")));

    private ParameterWords() {}

    /** Returns the short name of a parameter. */
    public static String of(CropParameter parameter) {
        return NAMES.getOrDefault(
                parameter, parameter.name().toLowerCase(Locale.ROOT).replace('_', ' '));
    }
}
