package org.thirstline.io.study;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.util.Map;
import java.util.Random;
import java.util.stream.Collectors;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.thirstline.model.error.InputException;
import org.thirstline.model.soil.SoilLayer;
import org.thirstline.model.soil.SoilProfile;
import org.thirstline.model.soil.TextureEstimate;

class SoilReaderTest {

    private static final Offset<Double> ROUNDING = within(1e-12);

    @TempDir
    private Path folder;

    private StudyFolder files;
    private Study study;

    @BeforeEach
    void makeFiles() {
        files = new StudyFolder(folder);
    }

    /** Table 19 middles: loam 0.13-0.18 and wilting point 0.07-0.17, sandy loam 0.11-0.15 and 0.06-0.16, sand 0.05-0.11 and 0.02-0.07. */
    @ParameterizedTest
    @CsvSource({"155, 0.12, loam", "130, 0.11, sandy loam", "40, 0.045, sand", "300, 0.17, silt"})
    void availableWaterTakesTheWiltingPointOfTheNearestSoilType(double mmPerM, double wiltingPoint, String type) {
        SoilProfile soil = soil("available_water: " + mmPerM + " mm/m\n  depth: 1.8 m");

        SoilLayer top = soil.layers().get(0);
        assertThat(top.wiltingPoint()).isCloseTo(wiltingPoint, ROUNDING);
        assertThat(top.fieldCapacity() - top.wiltingPoint()).isCloseTo(mmPerM / 1000, ROUNDING);
        assertThat(soil.availableWaterMm()).isCloseTo(1.8 * mmPerM, within(1e-9));
        assertThat(top.saturation() - top.fieldCapacity()).isCloseTo(0.15, ROUNDING);
        assertThat(top.drainageRate()).isEqualTo(0.7);
        assertThat(assumptions().get("soil.wilting_point")).contains("of " + type + ",", "FAO-56 Table 19");
        assertThat(assumptions())
                .containsKeys(
                        "soil.saturation", "soil.drainage_rate", "soil.readily_evaporable_water", "soil.curve_number");
    }

    /** 2 in/ft is 1/6 of the volume; a foot of it holds 50.8 mm. */
    @ParameterizedTest
    @CsvSource({
        "2 in/ft",
        "0.16666666666666666 in/in",
        "166.66666666666666 mm/m",
        "16.666666666666668 %",
        "16.666666666666668 cm/m"
    })
    void availableWaterInEveryUnit(String available) {
        SoilProfile soil = soil("available_water: " + available + "\n  depth: 1 ft");
        assertThat(soil.availableWaterMm()).isCloseTo(50.8, within(1e-9));
        SoilProfile layered = soil("layers:\n    - {thickness: 6 in, available_water: " + available + "}\n"
                + "    - {thickness: 6 in, available_water: " + available + ", wilting_point: 20 %}");
        assertThat(layered.availableWaterMm()).isCloseTo(50.8, within(1e-9));
        assertThat(layered.layers().get(0).wiltingPoint())
                .isEqualTo(soil.layers().get(0).wiltingPoint());
        SoilLayer below = layered.layers().get(layered.layers().size() - 1);
        assertThat(below.wiltingPoint()).isEqualTo(0.2);
        assertThat(assumptions()).containsKey("soil.layers[1].wilting_point");
    }

    /** What a restricting layer lets through, a water table, and the thinnest soil that is taken. */
    @Test
    void thinSoilOnARestrictingLayer() {
        SoilProfile soil = soil("available_water: 1.5 in/ft\n  depth: 15 cm\n  drainage_limit: 0.1 in/day\n"
                + "  water_table_depth: 4 ft");
        assertThat(soil.depthM()).isCloseTo(0.15, ROUNDING);
        assertThat(soil.maxDrainageMmPerDay()).isCloseTo(2.54, ROUNDING);
        assertThat(soil.waterTableM()).isCloseTo(1.2192, ROUNDING);
    }

    /** Saxton and Rawls (2006) state their regressions for clay up to 60 % and organic matter up to 8 %. */
    @ParameterizedTest
    @CsvSource({
        "'texture: {sand: 20 %, clay: 61 %, organic_matter: 3 %}\n  depth: 1 m', 60",
        "'texture: {sand: 20 %, clay: 30 %, organic_matter: 9 %}\n  depth: 1 m', 8",
        "'texture: {sand: 60 %, clay: 50 %, organic_matter: 3 %}\n  depth: 1 m', 100",
        "'available_water: 2 in\n  depth: 1 m', in/ft",
        "'available_water: 2 in/ft\n  depth: 10 cm', 0.15",
        "'available_water: 9 in/ft\n  depth: 1 m', 400",
    })
    void limitsAreStated(String lines, String stated) {
        assertThatThrownBy(() -> soil(lines)).isInstanceOf(InputException.class).hasMessageContaining(stated);
    }

    @Test
    void readilyEvaporableWaterIsAShareOfTheTotal() {
        SoilProfile soil = soil("available_water: 155 mm/m\n  depth: 1 m");
        assertThat(soil.readilyEvaporableMm()).isCloseTo(0.45 * 1000 * (0.275 - 0.5 * 0.12) * 0.1, ROUNDING);
        SoilProfile thin = soil("layers:\n    - {thickness: 5 cm, wilting_point: 12 %, field_capacity: 27.5 %}\n"
                + "    - {thickness: 50 cm, wilting_point: 12 %, field_capacity: 27.5 %}");
        assertThat(thin.readilyEvaporableMm()).isCloseTo(0.45 * 1000 * (0.275 - 0.5 * 0.12) * 0.05, ROUNDING);
    }

    /** Allen et al. 2005 by hand: 20 - 0.15 * 88, 8 + 0.08 * 20, 11 - 0.06 * 55 (from memory of the paper). */
    @ParameterizedTest
    @CsvSource({"88, 5, 6.8", "40, 20, 9.6", "20, 55, 7.7"})
    void readilyEvaporableWaterFollowsTheTexture(double sand, double clay, double expectedMm) {
        SoilProfile soil = soil(
                "texture: {sand_pct: %s, clay_pct: %s, organic_matter_pct: 2.5}\n  depth: 1 m".formatted(sand, clay));
        assertThat(soil.readilyEvaporableMm()).isCloseTo(expectedMm, ROUNDING);
    }

    @Test
    void textureSoilsAreThoseOfTheRegressions() {
        SoilProfile soil = soil("texture: {sand: 40 %, clay: 20 %, organic_matter: 2.5 %}\n  depth: 1.2 m");
        TextureEstimate loam = TextureEstimate.of(40, 20, 2.5);

        assertThat(soil.depthM()).isCloseTo(1.2, ROUNDING);
        assertThat(soil.layers().get(1))
                .usingRecursiveComparison()
                .ignoringFields("thicknessM")
                .isEqualTo(loam.layer(0.3));
        assertThat(assumptions().get("soil.field_capacity")).contains("Saxton & Rawls");
    }

    @Test
    void aLayersTextureFillsOnlyWhatIsNotGiven() {
        SoilProfile soil = soil("layers:\n    - {thickness: 20 cm, wilting_point: 10 %, field_capacity: 30 %,"
                + " texture: {sand: 40 %, clay: 20 %, organic_matter: 2.5 %}}");
        TextureEstimate loam = TextureEstimate.of(40, 20, 2.5);
        SoilLayer top = soil.layers().get(0);

        assertThat(top.wiltingPoint()).isCloseTo(0.10, ROUNDING);
        assertThat(top.fieldCapacity()).isCloseTo(0.30, ROUNDING);
        assertThat(top.saturation()).isEqualTo(loam.saturation());
        assertThat(top.drainageRate()).isEqualTo(loam.drainageRatePerDay(0.2));
        assertThat(assumptions()).doesNotContainKey("soil.layers[1].wilting_point");
        assertThat(assumptions()).containsKey("soil.layers[1].saturation");
    }

    /** NEH 630 Table 9-1: meadow 30, 58, 71, 78. */
    @ParameterizedTest
    @CsvSource({
        "'', 58",
        "hydrologic_group: A, 30",
        "hydrologic_group: D, 78",
        "cover: pasture poor, 79",
        "curve_number: 66, 66"
    })
    void curveNumberByCoverAndGroup(String line, double expected) {
        SoilProfile soil = soil("available_water: 155 mm/m\n  depth: 1 m\n  " + line);
        assertThat(soil.curveNumber()).isEqualTo(expected);
    }

    @Test
    void curveNumbersRiseFromGroupToGroup() {
        for (String cover : CurveNumbers.covers()) {
            assertThat(CurveNumbers.GROUPS.stream()
                            .mapToDouble(group -> CurveNumbers.of(cover, group))
                            .toArray())
                    .as(cover)
                    .isSorted()
                    .doesNotHaveDuplicates();
        }
    }

    @Test
    void anyAvailableWaterAndDepthGiveASoilThatHoldsIt() {
        Random random = new Random(56);
        for (int trial = 0; trial < 100; trial++) {
            double mmPerM = 10 + 340 * random.nextDouble();
            double depth = 0.15 + 4 * random.nextDouble();
            SoilProfile soil = soil("available_water_mm_per_m: " + mmPerM + "\n  depth_m: " + depth);
            assertThat(soil.availableWaterMm()).isCloseTo(mmPerM * depth, within(1e-8));
        }
    }

    private SoilProfile soil(String lines) {
        String text = StudyFolder.text("small.yaml").replace("available_water: 170 mm/m\n  depth: 1.8 m", lines);
        study = StudyReader.read(files.write("study.yaml", text));
        return study.zones().get(0).soil();
    }

    private Map<String, String> assumptions() {
        return study.assumptions().stream().collect(Collectors.toMap(Assumption::key, Assumption::text));
    }
}
