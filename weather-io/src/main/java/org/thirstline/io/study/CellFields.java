package org.thirstline.io.study;

import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.ConcurrentHashMap;
import org.jspecify.annotations.Nullable;
import org.thirstline.io.crop.CropFiles;
import org.thirstline.io.text.Nearest;
import org.thirstline.io.text.Node;
import org.thirstline.io.text.Scalars;
import org.thirstline.io.text.Section;
import org.thirstline.io.weather.ReadOptions;
import org.thirstline.io.weather.SiteInfo;
import org.thirstline.model.crop.CropParameter;
import org.thirstline.model.crop.CropParameters;
import org.thirstline.model.crop.Stand;
import org.thirstline.model.engine.FieldConditions;
import org.thirstline.model.error.InputException;
import org.thirstline.model.soil.SoilProfile;
import org.thirstline.model.weather.Site;

/** Gives the cells of a table their meaning: what a line says, and the study's where it is silent. Immutable and thread-safe. */
public final class CellFields {

    private final Study study;
    private final Path table;
    private final Map<String, CropParameters> crops = new ConcurrentHashMap<>();

    /**
     * Prepares for a table.
     *
     * @param study what holds where a line is silent
     * @param table the table, where relative paths of its lines start
     */
    public CellFields(Study study, Path table) {
        this.study = study;
        this.table = table;
    }

    private static Section section(CellRow row) {
        return Section.root(row.file(), mapping(row, row.fields()), CellKeys.CELL);
    }

    private static Node.Mapping mapping(CellRow row, Map<String, String> fields) {
        Map<String, Node.Entry> entries = new LinkedHashMap<>();
        fields.forEach((column, text) -> entries.put(
                column, new Node.Entry(row.line(), new Node.Scalar(row.line(), text, Node.ScalarKind.TEXT))));
        return new Node.Mapping(row.line(), entries);
    }

    /**
     * Returns where a cell's weather comes from. The study's way of reading holds for the cell's own file too.
     *
     * @throws InputException if the file is not there
     */
    public WeatherSource weather(CellRow row) {
        Section cell = section(row);
        Optional<String> name = cell.text("weather");
        if (name.isEmpty()) {
            return study.weather();
        }
        Path path = cell.build("weather", () -> existing(name.get()));
        WeatherSource usual = study.weather();
        SourceReading like = usual.sources().get(0);
        ReadOptions read = like.options();
        ReadOptions options = new ReadOptions(
                null, cell.text("station").orElse(null), read.units(), read.windHeightM(), read.mapping());
        Optional<String> format = cell.text("format").or(like::format);
        return new WeatherSource(
                List.of(new SourceReading(List.of(path), format, options, List.of())),
                Optional.empty(),
                usual.radiationCoefficient(),
                usual.missingRainLimitDays(),
                usual.suspect(),
                usual.spreadRainSums());
    }

    private Path existing(String name) {
        try {
            Path path = table.resolveSibling(name).normalize();
            if (Files.isRegularFile(path)) {
                return path;
            }
        } catch (InvalidPathException notPath) {
            // No file can have that name, so there is none.
        }
        throw new InputException(CellError.WEATHER_NOT_FOUND, name);
    }

    /** Returns what line and study say about the place; a weather file of the cell's own fills in the rest. */
    public SiteInfo place(CellRow row) {
        Section cell = section(row);
        OptionalDouble latitude = cell.measure("latitude");
        OptionalDouble elevation = cell.measure("elevation");
        SiteInfo given = new SiteInfo(null, boxed(latitude), null, boxed(elevation));
        return cell.has("weather") ? given : given.or(SiteInfo.of(study.site()));
    }

    private static @Nullable Double boxed(OptionalDouble value) {
        return value.isPresent() ? (Double) value.getAsDouble() : null;
    }

    /**
     * Returns everything about a cell's stand but its weather.
     *
     * @param row the cell
     * @param site where its weather says it is
     * @throws InputException with file, line and column if a field cannot be used
     */
    public FieldConditions field(CellRow row, Site site) {
        Section cell = section(row);
        if (site.isSouthern() != study.site().isSouthern()) {
            throw new InputException(
                            CellError.OTHER_HEMISPHERE,
                            site.latitudeDeg(),
                            study.site().isSouthern() ? "southern" : "northern")
                    .at(cell.place("latitude"));
        }
        CropParameters crop = cell.text("crop")
                .map(name -> cell.build("crop", () -> crop(name)))
                .orElse(study.crop().parameters());
        Management management = study.management();
        Stand stand = stand(cell);
        SoilProfile soil = soil(cell, row);
        return cell.build(() -> new FieldConditions(
                crop,
                stand,
                soil,
                management.harvest(),
                ofCrop(management.stubbleM(), CropParameter.STUBBLE_HEIGHT, crop),
                ofCrop(management.pickUpShare(), CropParameter.PICK_UP_SHARE, crop),
                management.irrigation(),
                study.season(),
                ofCrop(management.co2Ppm(), CropParameter.CO2_REFERENCE, crop)));
    }

    /** What the study took from its own crop, another crop brings along. */
    private double ofCrop(double managed, CropParameter parameter, CropParameters crop) {
        return managed == study.crop().parameters().get(parameter) ? crop.get(parameter) : managed;
    }

    private CropParameters crop(String name) {
        return crops.computeIfAbsent(name, key -> {
            String lower = key.toLowerCase(Locale.ROOT);
            boolean isFile = lower.endsWith(".yaml") || lower.endsWith(".yml") || lower.endsWith(".json");
            return (isFile ? CropFiles.read(table.resolveSibling(key)) : CropFiles.bundled(key)).parameters();
        });
    }

    private Stand stand(Section cell) {
        Stand usual = study.stand();
        OptionalDouble year = cell.number("planting_year");
        LocalDate usualDay = usual.plantingDate();
        LocalDate planted = cell.value("planted", Scalars::date)
                .orElse(year.isPresent() ? usualDay.withYear((int) year.getAsDouble()) : usualDay);
        Optional<double[]> spacing = cell.value("spacing", Scalars::spacing);
        if (spacing.isPresent()) {
            return cell.build("spacing", () -> Stand.spaced(planted, spacing.get()[0], spacing.get()[1]));
        }
        return cell.build(
                "plants", () -> new Stand(planted, cell.measure("plants").orElse(usual.plantsPerM2())));
    }

    private SoilProfile soil(Section cell, CellRow row) {
        Map<String, String> soil = CellSoil.fields(row);
        Optional<String> zone = cell.text("zone");
        if (!soil.isEmpty()) {
            if (zone.isPresent()) {
                throw new InputException(CellError.ZONE_AND_SOIL).at(cell.place("zone"));
            }
            return CellSoil.read(row, soil);
        }
        List<Zone> zones = study.zones();
        String names = String.join(", ", zones.stream().map(Zone::name).toList());
        if (zone.isEmpty()) {
            if (zones.size() > 1) {
                throw new InputException(CellError.ZONE_NEEDED, names).at(cell.place("zone"));
            }
            return zones.get(0).soil();
        }
        return zones.stream()
                .filter(candidate -> candidate.name().equalsIgnoreCase(zone.get()))
                .findFirst()
                .map(Zone::soil)
                .orElseThrow(() -> new InputException(
                                CellError.ZONE_UNKNOWN,
                                zone.get(),
                                names,
                                Nearest.hint(
                                        zone.get(),
                                        zones.stream().map(Zone::name).toList()))
                        .at(cell.place("zone")));
    }
}
