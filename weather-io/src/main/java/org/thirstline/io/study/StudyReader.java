package org.thirstline.io.study;

import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.thirstline.io.crop.CropFile;
import org.thirstline.io.crop.CropFiles;
import org.thirstline.io.text.DocumentReader;
import org.thirstline.io.text.InputFileError;
import org.thirstline.io.text.Nearest;
import org.thirstline.io.text.Scalars;
import org.thirstline.io.text.Section;
import org.thirstline.model.crop.Stand;
import org.thirstline.model.error.InputException;
import org.thirstline.model.weather.Site;

/** Reads a study file, YAML or JSON. Confined to one reading. */
public final class StudyReader {

    private static final String WHOLE_FIELD = "field";

    private final Path file;
    private final Section root;
    private final List<Assumption> assumptions = new ArrayList<>();

    private StudyReader(Path file, Section root) {
        this.file = file;
        this.root = root;
    }

    /**
     * Reads a study. Relative paths in it count from its own folder.
     *
     * @throws InputException with file, line and key, what was found and what is allowed, if anything in it cannot be used
     */
    public static Study read(Path file) {
        Section root = Section.root(file.toString(), DocumentReader.read(file), StudyKeys.STUDY);
        return new StudyReader(file, root).read();
    }

    private Study read() {
        String title = root.required("title", root.text("title"));
        Section place = section("site");
        Site site = site(place);
        WeatherSource weather = new WeatherSourceReader(this::resolved).read(section("weather"));
        Optional<Path> cropPath = cropPath();
        CropFile crop = cropPath.map(CropFiles::read).orElseGet(() -> bundledCrop());
        Stand stand = ManagementReader.stand(section("stand"));
        List<Zone> zones = zones();
        return new Study(
                file,
                title,
                root.flag("invented").orElse(false),
                site,
                place.measure("longitude"),
                weather,
                crop,
                cropPath,
                stand,
                zones,
                ManagementReader.read(root, crop.parameters()),
                ManagementReader.season(root, site),
                root.section("normal").flatMap(normal -> normal.value("years", Scalars::years)),
                root.value("years", Scalars::years),
                root.text("plots").map(plots -> existing(root, "plots", plots)),
                root.section("classes")
                        .map(StudyReader::classes)
                        .orElseGet(() -> new SeasonClasses(List.of(), List.of())),
                root.section("calibration")
                        .map(section -> CalibrationPlanReader.read(section, zones, this::resolved))
                        .orElse(CalibrationPlan.NONE),
                assumptions);
    }

    private Section section(String name) {
        return root.required(name, root.section(name));
    }

    private static Site site(Section site) {
        String name = site.required("name", site.text("name"));
        double latitude = site.required("latitude");
        double elevation = site.required("elevation");
        return site.build(() -> new Site(name, latitude, elevation));
    }

    private Optional<Path> cropPath() {
        String crop = root.required("crop", root.text("crop"));
        String lower = crop.toLowerCase(Locale.ROOT);
        boolean isFile = lower.endsWith(".yaml") || lower.endsWith(".yml") || lower.endsWith(".json");
        return isFile ? Optional.of(existing(root, "crop", crop)) : Optional.empty();
    }

    private CropFile bundledCrop() {
        String name = root.required("crop", root.text("crop"));
        if (!CropFiles.isBundled(name)) {
            throw root.refusal(
                    "crop",
                    InputFileError.NOT_ALLOWED,
                    name,
                    String.join(", ", CropFiles.names()) + ", or a crop file ending in .yaml, .yml or .json",
                    Nearest.hint(name, CropFiles.names()));
        }
        return CropFiles.bundled(name);
    }

    private List<Zone> zones() {
        Optional<Section> soil = root.section("soil");
        if (soil.isPresent()) {
            return List.of(zone(WHOLE_FIELD, OptionalDouble.empty(), soil.get()));
        }
        List<Zone> zones = new ArrayList<>();
        Map<String, Integer> lines = new LinkedHashMap<>();
        for (Section zone : root.sections("zones")) {
            String name = zone.required("name", zone.text("name"));
            Integer before = lines.put(name, zone.line("name"));
            if (before != null) {
                throw zone.refusal("name", InputFileError.DUPLICATE_NAME, name, before);
            }
            Section zoneSoil = zone.required("soil", zone.section("soil"));
            zones.add(zone(name, zone.measure("area"), zoneSoil));
        }
        return zones;
    }

    private Zone zone(String name, OptionalDouble areaHa, Section soil) {
        return new Zone(
                name,
                areaHa,
                SoilReader.read(soil, assumptions::add),
                soil.number("available_water_factor").orElse(1.0),
                soil.number("depth_factor").orElse(1.0));
    }

    private static SeasonClasses classes(Section classes) {
        List<Integer> dry = classes.values("dry", Scalars::year);
        List<Integer> wet = classes.values("wet", Scalars::year);
        for (int year : wet) {
            if (dry.contains(year)) {
                throw classes.refusal("wet", InputFileError.CONFLICT, "dry " + year, "wet " + year, "keep one of them");
            }
        }
        return new SeasonClasses(dry, wet);
    }

    private Path existing(Section section, String key, String name) {
        return section.build(key, () -> resolved(name));
    }

    private Path resolved(String name) {
        Path path;
        try {
            path = file.resolveSibling(name).normalize();
        } catch (InvalidPathException bad) {
            throw new InputException(InputFileError.WRONG_KIND, "'" + name + "'", "a file name");
        }
        if (!Files.isRegularFile(path)) {
            throw new InputException(InputFileError.FILE_NOT_FOUND, name, path.toAbsolutePath());
        }
        return path;
    }
}
