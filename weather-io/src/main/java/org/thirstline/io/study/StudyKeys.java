package org.thirstline.io.study;

import java.util.List;
import org.thirstline.io.text.Dimension;
import org.thirstline.io.text.SectionKeys;
import org.thirstline.io.text.ValueKind;

/** The keys of a study file: the one place that names them. Reader, schema, starter study and documentation all come from here. */
public final class StudyKeys {

    private static final ValueKind TEXT = new ValueKind.Text();
    private static final ValueKind DATE = new ValueKind.Date();

    private static final SectionKeys SITE = SectionKeys.of("site")
            .required("name", TEXT, "Larkmoor field station", "what people call the place")
            .required("latitude", measure(Dimension.ANGLE, -90, 90), "40.05 deg", "latitude, north positive")
            .optional("longitude", measure(Dimension.ANGLE, -180, 180), "-88.37 deg", "longitude, east positive")
            .required("elevation", measure(Dimension.LENGTH, -430, 8850), "213 m", "elevation above sea level")
            .build();

    private static final SectionKeys COLUMN = WeatherKeys.column();

    private static final SectionKeys SOURCE = WeatherKeys.source(() -> COLUMN);

    private static final SectionKeys WEATHER = WeatherKeys.weather(() -> COLUMN, () -> SOURCE);

    static final SectionKeys STAND = SectionKeys.of("stand")
            .required("planted", DATE, "2009-04-20", "date of planting or sowing")
            .optional("spacing", new ValueKind.Spacing(), "75 cm x 70 cm", "row distance and distance in the row")
            .optional(
                    "plants",
                    measure(Dimension.PLANT_DENSITY, 0.01, 1000),
                    "1.9 per m2",
                    "rhizomes or viable seeds set per ground area, living or not later on")
            .exactlyOneOf("spacing", "plants")
            .build();

    static final SectionKeys TEXTURE = SectionKeys.of("texture")
            .required("sand", measure(Dimension.PERCENT, 0, 100), "20 %", "sand, by mass of the mineral soil")
            .required(
                    "clay",
                    measure(Dimension.PERCENT, 0, 60),
                    "25 %",
                    "clay, by mass of the mineral soil; at most 60 %")
            .required("organic_matter", measure(Dimension.PERCENT, 0, 8), "3 %", "organic matter, by mass; at most 8 %")
            .build();

    private static final SectionKeys LAYER = SectionKeys.of("soil layer")
            .required("thickness", measure(Dimension.LENGTH, 0.01, 10), "30 cm", "thickness of the layer")
            .optional(
                    "wilting_point",
                    measure(Dimension.WATER_CONTENT, 0, 0.6),
                    "15 %",
                    "water content at -1500 kPa, by volume")
            .optional(
                    "field_capacity",
                    measure(Dimension.WATER_CONTENT, 0.01, 0.9),
                    "32 %",
                    "water content at field capacity, by volume")
            .optional(
                    "available_water",
                    measure(Dimension.AVAILABLE_WATER, 10, 400),
                    "2.1 in/ft",
                    "available water capacity, instead of field capacity or texture; with the wilting point or without it")
            .optional(
                    "saturation",
                    measure(Dimension.WATER_CONTENT, 0.02, 0.95),
                    "47 %",
                    "water content with all pores full; from texture, else field capacity and 15 % if not given")
            .optional(
                    "drainage_rate",
                    measure(Dimension.DAILY_RATE, 0, 1),
                    "0.7 per day",
                    "share of the water above field capacity that drains in a day; from texture, else 0.7 if not given")
            .optional(
                    "texture",
                    new ValueKind.Nested(() -> TEXTURE),
                    "{sand: 20 %, clay: 25 %, organic_matter: 3 %}",
                    "texture, for what is not given")
            .atMostOneOf("available_water", "field_capacity")
            .atMostOneOf("available_water", "texture")
            .build();

    static final SectionKeys SOIL = SectionKeys.of("soil")
            .optional(
                    "layers",
                    new ValueKind.NestedList(() -> LAYER),
                    "[{thickness: 30 cm, wilting_point: 15 %, field_capacity: 32 %}]",
                    "layers from the surface down")
            .optional(
                    "available_water",
                    measure(Dimension.AVAILABLE_WATER, 10, 400),
                    "170 mm/m",
                    "available water capacity of the whole profile; with depth")
            .optional(
                    "texture",
                    new ValueKind.Nested(() -> TEXTURE),
                    "{sand: 20 %, clay: 25 %, organic_matter: 3 %}",
                    "texture of the whole profile; with depth")
            .optional("depth", measure(Dimension.LENGTH, 0.15, 10), "1.8 m", "depth that roots can use")
            .optional(
                    "readily_evaporable_water",
                    measure(Dimension.WATER_DEPTH, 0, 50),
                    "9 mm",
                    "FAO-56 REW; from texture or available water if not given")
            .optional("curve_number", new ValueKind.Plain(1, 100), "61", "runoff curve number at average wetness")
            .optional(
                    "hydrologic_group",
                    new ValueKind.Choice(CurveNumbers.GROUPS),
                    "B",
                    "hydrologic soil group for the curve number, instead of it; B if neither is given")
            .optional(
                    "cover",
                    new ValueKind.Choice(CurveNumbers.covers()),
                    "meadow",
                    "cover for the curve number, NEH 630 Table 9-1; meadow if not given")
            .optional(
                    "drainage_limit",
                    measure(Dimension.WATER_FLUX, 0, 1000),
                    "2 mm/day",
                    "what a restricting layer under the profile lets through; free drainage if not given")
            .optional(
                    "water_table_depth",
                    measure(Dimension.LENGTH, 0.2, 10),
                    "1.2 m",
                    "depth of a standing water table; none if not given")
            .optional(
                    "available_water_factor",
                    new ValueKind.Plain(0.1, 5),
                    "1.12",
                    "what a calibration found the available water of every layer to be multiplied by; 1 if not given")
            .optional(
                    "depth_factor",
                    new ValueKind.Plain(0.1, 5),
                    "0.9",
                    "what a calibration found the depth to be multiplied by; 1 if not given")
            .exactlyOneOf("layers", "available_water", "texture")
            .atMostOneOf("curve_number", "hydrologic_group")
            .atMostOneOf("curve_number", "cover")
            .atMostOneOf("layers", "depth")
            .build();

    private static final SectionKeys ZONE = SectionKeys.of("zone")
            .required("name", TEXT, "valley", "what people call the zone; each name once")
            .optional("area", measure(Dimension.AREA, 1e-6, 1e6), "3 ha", "area of the zone")
            .required("soil", new ValueKind.Nested(() -> SOIL), "{available_water: 170 mm/m, depth: 1.8 m}", "its soil")
            .build();

    private static final SectionKeys HARVEST = SectionKeys.of("harvest")
            .optional("date", new ValueKind.DayOfYear(), "03-01", "day of the cut, every year")
            .optional(
                    "window",
                    new ValueKind.DayWindow(),
                    "02-01 to 04-15",
                    "cut on the first dry enough day in this window, else on its last day")
            .optional(
                    "max_moisture",
                    measure(Dimension.PERCENT, 1, 100),
                    "20 %",
                    "highest moisture of the crop for a cut inside the window, wet basis; 20 % if not given")
            .optional(
                    "max_topsoil_wetness",
                    measure(Dimension.WETNESS, 1, 300),
                    "90 % of field capacity",
                    "wettest topsoil that carries the machine, unless frozen; 90 % of field capacity if not given")
            .exactlyOneOf("date", "window")
            .atMostOneOf("date", "max_moisture")
            .atMostOneOf("date", "max_topsoil_wetness")
            .build();

    private static final SectionKeys NORMAL = SectionKeys.of("normal")
            .required("years", new ValueKind.Years(), "1991-2020", "years the normal rain is the mean of")
            .build();

    private static final SectionKeys WATERING = SectionKeys.of("watering")
            .required("date", DATE, "2012-07-10", "day")
            .required("depth", measure(Dimension.WATER_DEPTH, 0, 500), "30 mm", "water given")
            .build();

    private static final SectionKeys IRRIGATION = SectionKeys.of("irrigation")
            .optional(
                    "schedule",
                    new ValueKind.NestedList(() -> WATERING),
                    "[{date: 2012-07-10, depth: 30 mm}]",
                    "given depths on given dates")
            .optional(
                    "when_depleted",
                    measure(Dimension.PERCENT, 1, 100),
                    "50 %",
                    "share of the root zone's available water used up that starts a watering; with depth")
            .optional("depth", measure(Dimension.WATER_DEPTH, 0.1, 500), "30 mm", "water given each time")
            .exactlyOneOf("schedule", "when_depleted")
            .atMostOneOf("schedule", "depth")
            .build();

    private static final SectionKeys CLASSES = SectionKeys.of("classes")
            .optional("dry", new ValueKind.YearList(), "[2012]", "growth years called dry")
            .optional("wet", new ValueKind.YearList(), "[2010, 2015]", "growth years called wet")
            .build();

    private static final SectionKeys CALIBRATED_PARAMETER = CalibrationKeys.parameter();

    private static final SectionKeys PLOT_ERROR = CalibrationKeys.error();

    private static final SectionKeys CALIBRATION =
            CalibrationKeys.calibration(() -> CALIBRATED_PARAMETER, () -> PLOT_ERROR);

    /** The top level. */
    static final SectionKeys STUDY = SectionKeys.of("study")
            .required("title", TEXT, "Larkmoor, giant miscanthus", "what the study is about")
            .optional(
                    "invented",
                    new ValueKind.Flag(),
                    "true",
                    "whether place and numbers are made up; false if not given")
            .required("site", new ValueKind.Nested(() -> SITE), "", "where the field is")
            .required("weather", new ValueKind.Nested(() -> WEATHER), "", "where the weather comes from")
            .required("crop", TEXT, "giant miscanthus", "giant miscanthus, switchgrass, or a crop file of your own")
            .required("stand", new ValueKind.Nested(() -> STAND), "", "the planting")
            .optional("soil", new ValueKind.Nested(() -> SOIL), "", "the soil, where it is the same all over the field")
            .optional("zones", new ValueKind.NestedList(() -> ZONE), "", "parts of the field with their own soils")
            .required("harvest", new ValueKind.Nested(() -> HARVEST), "", "when the stand is cut")
            .optional(
                    "stubble", measure(Dimension.LENGTH, 0, 1.5), "10 cm", "height of the cut; the crop's if not given")
            .optional(
                    "pick_up",
                    measure(Dimension.PERCENT, 0, 100),
                    "85 %",
                    "share of the cut dry matter that the machine picks up; the crop's if not given")
            .optional(
                    "growing_season",
                    new ValueKind.DayWindow(),
                    "04-01 to 09-30",
                    "window of seasonal sums; April to September in the north, October to March in the south if not given")
            .optional(
                    "normal",
                    new ValueKind.Nested(() -> NORMAL),
                    "",
                    "years of the normal rain; all whole years of the weather, at most the last 30, if not given")
            .optional("years", new ValueKind.Years(), "2010-2020", "growth years to report; all if not given")
            .optional("irrigation", new ValueKind.Nested(() -> IRRIGATION), "", "water given; none if not given")
            .optional(
                    "co2",
                    measure(Dimension.MIXING_RATIO, 100, 2000),
                    "420 ppm",
                    "CO2 of the air; the crop's reference if not given")
            .optional("plots", TEXT, "plots.csv", "plot data, relative to the study file")
            .optional(
                    "classes",
                    new ValueKind.Nested(() -> CLASSES),
                    "",
                    "years called dry or wet; by the rain if not given")
            .optional(
                    "calibration",
                    new ValueKind.Nested(() -> CALIBRATION),
                    "",
                    "what 'calibrate' fits to the plot data; the usual parameters if not given")
            .exactlyOneOf("soil", "zones")
            .build();

    private StudyKeys() {}

    /** Returns the keys of the top level, and through them all others. */
    public static SectionKeys study() {
        return STUDY;
    }

    static ValueKind measure(Dimension dimension, double lowest, double highest) {
        return new ValueKind.Measure(dimension, lowest, highest);
    }

    /** Returns every section, the top level first. */
    static List<SectionKeys> sections() {
        return List.of(
                STUDY,
                SITE,
                WEATHER,
                SOURCE,
                COLUMN,
                STAND,
                SOIL,
                LAYER,
                TEXTURE,
                ZONE,
                HARVEST,
                NORMAL,
                IRRIGATION,
                WATERING,
                CLASSES,
                CALIBRATION,
                CALIBRATED_PARAMETER,
                PLOT_ERROR);
    }
}
