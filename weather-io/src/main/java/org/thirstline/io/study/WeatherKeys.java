package org.thirstline.io.study;

import java.util.Arrays;
import java.util.List;
import java.util.function.Supplier;
import org.thirstline.io.text.Dimension;
import org.thirstline.io.text.SectionKeys;
import org.thirstline.io.text.ValueKind;
import org.thirstline.io.weather.MappedColumn;
import org.thirstline.io.weather.RawVariable;

/** The keys of the weather section of a study file. */
final class WeatherKeys {

    static final List<String> SEPARATORS = List.of("comma", "semicolon", "tab", "blanks");
    static final List<String> DECIMALS = List.of("point", "comma");
    static final List<String> UNIT_SYSTEMS = List.of("metric", "us");
    static final List<String> SUSPECT_RULES = List.of("keep", "blank", "stop");
    static final List<String> RAIN_SUM_RULES = List.of("fill", "spread");

    private static final ValueKind TEXT = new ValueKind.Text();
    private static final ValueKind TEXTS = new ValueKind.TextList();

    private WeatherKeys() {}

    static List<String> variables() {
        return Arrays.stream(RawVariable.values()).map(RawVariable::shortName).toList();
    }

    static SectionKeys column() {
        return SectionKeys.of("weather column")
                .required(
                        "name",
                        TEXT,
                        "Tmax",
                        "name in the header; its number, 1 for the first, where there is no header")
                .required(
                        "gives",
                        new ValueKind.Choice(MappedColumn.meanings()),
                        "tmax",
                        "part of the date, station, or variable")
                .optional(
                        "unit",
                        TEXT,
                        "°F",
                        "unit of a variable: °C, °F, K; mm, cm, inch; MJ/m2, W/m2, J/cm2, kWh/m2, langley; m/s, km/h, km/d,"
                                + " mph, knots; kPa, hPa, Pa; h, min, s; %, fraction; kg/kg, g/kg; 0.1 °C and 0.1 mm")
                .optional("pattern", TEXT, "dd.MM.yyyy", "pattern of a date; yyyy-MM-dd if not given")
                .optional(
                        "height",
                        StudyKeys.measure(Dimension.LENGTH, 0.5, 200),
                        "10 m",
                        "height of a wind speed; 2 m if not given")
                .build();
    }

    static SectionKeys source(Supplier<SectionKeys> column) {
        return reading(SectionKeys.of("weather source"), column)
                .optional(
                        "variables",
                        TEXTS,
                        "[rain]",
                        "variables to take from this source; all it has if not given: "
                                + String.join(", ", variables()))
                .exactlyOneOf("file", "files")
                .build();
    }

    static SectionKeys weather(Supplier<SectionKeys> column, Supplier<SectionKeys> source) {
        return reading(SectionKeys.of("weather"), column)
                .optional(
                        "sources",
                        new ValueKind.NestedList(source),
                        "[{file: gauge.csv, variables: [rain]}, {file: station.dly}]",
                        "several sources; each value comes from the first that has it")
                .optional(
                        "second_station",
                        new ValueKind.Nested(source),
                        "{file: neighbour.dly}",
                        "another station, brought to the level of this one where both have values, to fill gaps")
                .optional(
                        "radiation_coefficient",
                        new ValueKind.Plain(0.05, 0.35),
                        "0.16",
                        "FAO-56 k_Rs for radiation from the temperature range, in its usual unit: 0.16 inland, 0.19 at a"
                                + " coast; fitted where a year of radiation was measured, else 0.16, if not given")
                .optional(
                        "missing_rain_limit",
                        StudyKeys.measure(Dimension.DURATION, 0, 366),
                        "10 days",
                        "days with filled-in rain above which a growth year's yield is not used; 10 days if not given")
                .optional(
                        "suspect",
                        new ValueKind.Choice(SUSPECT_RULES),
                        "keep",
                        "what happens to values that are hard to believe: keep, blank (take as missing), or stop; keep if"
                                + " not given")
                .optional(
                        "rain_of_several_days",
                        new ValueKind.Choice(RAIN_SUM_RULES),
                        "spread",
                        "what happens to a sum of several days: spread evenly over them, or fill them as any gap; fill if"
                                + " not given")
                .exactlyOneOf("file", "files", "sources")
                .build();
    }

    private static SectionKeys.Builder reading(SectionKeys.Builder keys, Supplier<SectionKeys> column) {
        return keys.optional("file", TEXT, "weather.csv", "file with the daily weather, relative to the study file")
                .optional(
                        "files",
                        TEXTS,
                        "[north.txt, south.txt]",
                        "several files that make up one series; a provider's list of stations may be among them")
                .optional("format", TEXT, "plain", "name of the file format; recognised if not given")
                .optional("station", TEXT, "USW00003870", "station to take from a file with several")
                .optional(
                        "units",
                        new ValueKind.Choice(UNIT_SYSTEMS),
                        "us",
                        "units of a download that does not state them; told by the size of the values if not given")
                .optional(
                        "wind_height",
                        StudyKeys.measure(Dimension.LENGTH, 0.5, 200),
                        "10 m",
                        "height of the wind speeds; what the file or its format says if not given")
                .optional(
                        "columns",
                        new ValueKind.NestedList(column),
                        "[{name: Datum, gives: date, pattern: dd.MM.yyyy}, {name: Tmax, gives: tmax, unit: °F}]",
                        "what the columns of a table of your own mean")
                .optional(
                        "separator",
                        new ValueKind.Choice(SEPARATORS),
                        "semicolon",
                        "what stands between the fields of a table of your own; told by its header if not given")
                .optional(
                        "decimal",
                        new ValueKind.Choice(DECIMALS),
                        "comma",
                        "decimal sign of a table of your own; point if not given")
                .optional(
                        "missing",
                        TEXTS,
                        "[-99, no data]",
                        "what stands for a missing value in a table of your own, beside nothing, NA and NaN");
    }
}
