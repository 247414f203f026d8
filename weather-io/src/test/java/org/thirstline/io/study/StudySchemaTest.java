package org.thirstline.io.study;

import static org.assertj.core.api.Assertions.assertThat;

import com.networknt.schema.Error;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.thirstline.io.text.SectionKeys;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.dataformat.yaml.YAMLMapper;

/** The schema, its two copies, the reader's keys and the examples agree. */
class StudySchemaTest {

    private static final Path REPOSITORY = Path.of("").toAbsolutePath().getParent();
    private static final Path DOCS = REPOSITORY.resolve("docs");

    /** Rewrites the two copies and the reference page instead of comparing them. */
    private static final boolean REGENERATE = Boolean.getBoolean("thirstline.regenerate");

    private static final Schema SCHEMA = SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
            .getSchema(StudySchema.text());

    @Test
    void copiesAreUpToDate() throws IOException {
        sameText(DOCS.resolve(StudySchema.RESOURCE), StudySchema.text());
        sameText(
                REPOSITORY.resolve("weather-io/src/main/resources/org/thirstline/io/study/" + StudySchema.RESOURCE),
                StudySchema.text());
        sameText(DOCS.resolve("study-file.md"), StudyReference.markdown());
    }

    @Test
    void schemaHasExactlyTheKeysOfTheReader() {
        JsonNode schema = new JsonMapper().readTree(StudySchema.text());
        assertThat(properties(schema))
                .containsExactlyInAnyOrderElementsOf(StudyKeys.study().spellings());
        JsonNode definitions = schema.get("$defs");
        Set<String> names = new HashSet<>();
        for (SectionKeys section :
                StudyKeys.sections().subList(1, StudyKeys.sections().size())) {
            String name = section.name().replace(' ', '-');
            names.add(name);
            assertThat(properties(definitions.get(name)))
                    .as(name)
                    .containsExactlyInAnyOrderElementsOf(section.spellings());
        }
        assertThat(definitions.propertyNames()).containsExactlyInAnyOrderElementsOf(names);
    }

    @ParameterizedTest
    @ValueSource(strings = {"small.yaml", "small.json", "everything-layers.yaml", "starter-study.yaml"})
    void ownStudiesAreValid(String resource) {
        assertThat(validate(resource, StudyFolder.text(resource))).isEmpty();
    }

    @ParameterizedTest
    @MethodSource("examples")
    void exampleStudiesAreValid(Path example) throws IOException {
        String text = Files.readString(example);
        assertThat(validate(example.toString(), text)).as(example.toString()).isEmpty();
        if (example.startsWith(DOCS)) {
            assertThat(StudyReader.read(example).zones()).isNotEmpty();
        }
    }

    static List<Path> examples() throws IOException {
        List<Path> examples = new ArrayList<>();
        if (Files.isDirectory(DOCS.resolve("examples"))) {
            try (Stream<Path> files = Files.walk(DOCS.resolve("examples"))) {
                files.filter(file -> file.getFileName().toString().matches("study.*\\.(ya?ml|json)"))
                        .forEach(examples::add);
            }
        }
        // Until there are examples, the starter study stands in for them.
        return examples.isEmpty()
                ? List.of(
                        REPOSITORY.resolve("weather-io/src/main/resources/org/thirstline/io/study/starter-study.yaml"))
                : examples;
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "latitude: 95",
                "latitude: 40.05",
                "latitude_deg: 95",
                "latitude_deg: 40 deg",
                "latitud: 40 deg",
                "elevation: 5 ft",
                "name: [a]"
            })
    void whatTheReaderRefusesTheSchemaRefuses(String line) {
        String text = StudyFolder.text("small.yaml").replace("latitude: 40.05 deg", line);
        assertThat(validate("small.yaml", text)).as(line).isNotEmpty();
    }

    @Test
    void alternativesExcludeEachOther() {
        String small = StudyFolder.text("small.yaml");
        assertThat(validate("a.yaml", small.replace("  spacing: 75 cm x 70 cm\n", "")))
                .isNotEmpty();
        assertThat(validate("a.yaml", small.replace("  spacing:", "  plants_per_m2: 2\n  spacing:")))
                .isNotEmpty();
        assertThat(validate("a.yaml", small.replace("  date: 03-01", "  date: 03-01\n  max_moisture: 20 %")))
                .isNotEmpty();
        assertThat(validate(
                        "a.yaml",
                        small.replace("  depth:", "  texture: {sand: 1 %, clay: 1 %, organic_matter: 1 %}\n  depth:")))
                .isNotEmpty();
        assertThat(validate("a.yaml", small + "zones: [{name: a, soil: {available_water: 1 mm/m, depth: 1 m}}]\n"))
                .isNotEmpty();
    }

    private static List<Error> validate(String name, String text) {
        JsonNode node = name.endsWith(".json") ? new JsonMapper().readTree(text) : new YAMLMapper().readTree(text);
        return SCHEMA.validate(node);
    }

    private static List<String> properties(JsonNode schema) {
        return List.copyOf(schema.get("properties").propertyNames());
    }

    private static void sameText(Path file, String expected) throws IOException {
        if (REGENERATE) {
            Files.createDirectories(file.getParent());
            Files.writeString(file, expected);
        }
        String found = Files.exists(file) ? Files.readString(file, StandardCharsets.UTF_8) : "";
        assertThat(found)
                .as("%s; run this test with -Dthirstline.regenerate=true to renew it", REPOSITORY.relativize(file))
                .isEqualTo(expected);
    }
}
