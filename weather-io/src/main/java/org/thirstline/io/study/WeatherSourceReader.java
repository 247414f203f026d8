package org.thirstline.io.study;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import org.thirstline.io.text.InputFileError;
import org.thirstline.io.text.Nearest;
import org.thirstline.io.text.Scalars;
import org.thirstline.io.text.Section;
import org.thirstline.io.weather.MappedColumn;
import org.thirstline.io.weather.RawVariable;
import org.thirstline.io.weather.ReadOptions;
import org.thirstline.io.weather.TableMapping;
import org.thirstline.io.weather.UnitSystem;
import org.thirstline.model.error.InputException;

/** Reads the weather section of a study file. */
final class WeatherSourceReader {

    private static final int DEFAULT_MISSING_RAIN_LIMIT_DAYS = 10;

    /** Finds a file that the study names; refuses one that is not there. */
    private final Function<String, Path> files;

    WeatherSourceReader(Function<String, Path> files) {
        this.files = files;
    }

    WeatherSource read(Section weather) {
        List<SourceReading> sources = new ArrayList<>();
        if (weather.has("sources")) {
            requireNoReading(weather);
            weather.sections("sources").forEach(section -> sources.add(source(section)));
        } else {
            sources.add(reading(weather, List.of()));
        }
        Optional<SourceReading> second = weather.section("second_station").map(this::source);
        OptionalDouble limit = weather.measure("missing_rain_limit");
        return new WeatherSource(
                sources,
                second,
                weather.number("radiation_coefficient"),
                (int) limit.orElse(DEFAULT_MISSING_RAIN_LIMIT_DAYS),
                weather.choice("suspect").orElse("keep"),
                weather.choice("rain_of_several_days").orElse("fill").equals("spread"));
    }

    private static void requireNoReading(Section weather) {
        for (String key :
                List.of("format", "station", "units", "wind_height", "columns", "separator", "decimal", "missing")) {
            if (weather.has(key)) {
                throw weather.refusal(
                        key,
                        InputFileError.CONFLICT,
                        "'sources'",
                        "'" + key + "'",
                        "move it into the source it is for");
            }
        }
    }

    private SourceReading source(Section section) {
        return reading(section, section.values("variables", node -> variable(Scalars.text(node))));
    }

    private static RawVariable variable(String name) {
        for (RawVariable variable : RawVariable.values()) {
            if (variable.shortName().equals(name)) {
                return variable;
            }
        }
        List<String> names = WeatherKeys.variables();
        throw new InputException(InputFileError.NOT_ALLOWED, name, String.join(", ", names), Nearest.hint(name, names));
    }

    private SourceReading reading(Section section, List<RawVariable> variables) {
        List<Path> paths = new ArrayList<>();
        section.text("file").ifPresent(name -> paths.add(section.build("file", () -> files.apply(name))));
        paths.addAll(section.values("files", node -> files.apply(Scalars.text(node))));
        OptionalDouble height = section.measure("wind_height");
        ReadOptions options = new ReadOptions(
                null,
                section.text("station").orElse(null),
                section.choice("units")
                        .map(word -> word.equals("us") ? UnitSystem.US : UnitSystem.METRIC)
                        .orElse(null),
                height.isPresent() ? (Double) height.getAsDouble() : null,
                mapping(section));
        return new SourceReading(paths, section.text("format"), options, variables);
    }

    private static @Nullable TableMapping mapping(Section section) {
        if (!section.has("columns")) {
            for (String key : List.of("separator", "decimal", "missing")) {
                if (section.has(key)) {
                    throw section.refusal(
                            key,
                            InputFileError.INCONSISTENT,
                            "'" + key + "' is for a table of your own; give 'columns'");
                }
            }
            return null;
        }
        List<MappedColumn> columns = new ArrayList<>();
        section.sections("columns").forEach(column -> columns.add(column(column)));
        List<String> missing = section.values("missing", Scalars::text);
        Character separator =
                section.choice("separator").map(WeatherSourceReader::separator).orElse(null);
        boolean comma = section.choice("decimal").orElse("point").equals("comma");
        return section.build("columns", () -> new TableMapping(columns, separator, comma, missing));
    }

    private static Character separator(String word) {
        return switch (word) {
            case "comma" -> ',';
            case "semicolon" -> ';';
            case "tab" -> '\t';
            default -> ' ';
        };
    }

    private static MappedColumn column(Section column) {
        String name = column.required("name", column.text("name"));
        String gives = column.required("gives", column.choice("gives"));
        OptionalDouble height = column.measure("height");
        return column.build(() -> new MappedColumn(
                name,
                gives,
                column.text("unit").orElse(null),
                column.text("pattern").orElse(null),
                height.isPresent() ? (Double) height.getAsDouble() : null));
    }
}
