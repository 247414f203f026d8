package org.thirstline.io.study;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.time.LocalDate;
import java.time.MonthDay;
import java.util.List;
import java.util.Map;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.thirstline.io.text.YearSpan;
import org.thirstline.model.crop.CropParameter;
import org.thirstline.model.crop.HarvestRule;
import org.thirstline.model.engine.FieldConditions;
import org.thirstline.model.engine.GrowingSeason;
import org.thirstline.model.soil.Irrigation;
import org.thirstline.model.soil.SoilLayer;
import org.thirstline.model.weather.Site;

class StudyReaderTest {

    private static final Offset<Double> ROUNDING = within(1e-12);

    @TempDir
    private Path folder;

    private StudyFolder files;

    @BeforeEach
    void makeFiles() {
        files = new StudyFolder(folder);
    }

    @Test
    void readsTheLeastThereIsToSay() {
        Study study = StudyReader.read(files.copy("small.yaml"));

        assertThat(study.title()).isEqualTo("Larkmoor, the least there is to say");
        assertThat(study.invented()).isFalse();
        assertThat(study.site()).isEqualTo(new Site("Larkmoor field station", 40.05, 213));
        assertThat(study.longitudeDeg()).isEmpty();
        assertThat(study.weather().files()).containsExactly(folder.resolve("weather.csv"));
        assertThat(study.weather().missingRainLimitDays()).isEqualTo(10);
        assertThat(study.crop().name()).isEqualTo("giant miscanthus");
        assertThat(study.stand().plantingDate()).isEqualTo("2009-04-20");
        assertThat(study.stand().plantsPerM2()).isCloseTo(1 / (0.75 * 0.70), ROUNDING);
        assertThat(study.zones()).extracting(Zone::name).containsExactly("field");
        assertThat(study.season()).isEqualTo(new GrowingSeason(MonthDay.of(4, 1), MonthDay.of(9, 30)));
        assertThat(study.normalYears()).isEmpty();
        assertThat(study.years()).isEmpty();
        assertThat(study.classes().isGiven()).isFalse();
        assertThat(study.inputFiles()).containsExactly(folder.resolve("small.yaml"), folder.resolve("weather.csv"));
    }

    @Test
    void whatIsNotSaidComesFromTheCrop() {
        Study study = StudyReader.read(files.copy("small.yaml"));
        FieldConditions field = study.field(study.zones().get(0));

        assertThat(field.harvest()).isEqualTo(new HarvestRule.OnDate(MonthDay.of(3, 1)));
        assertThat(field.stubbleM()).isEqualTo(field.crop().get(CropParameter.STUBBLE_HEIGHT));
        assertThat(field.pickUpShare()).isCloseTo(field.crop().get(CropParameter.PICK_UP_SHARE), ROUNDING);
        assertThat(field.co2Ppm()).isEqualTo(field.crop().get(CropParameter.CO2_REFERENCE));
        assertThat(field.irrigation()).isEqualTo(new Irrigation.None());
        assertThat(field.stand()).isEqualTo(study.stand());
        assertThat(field.soil()).isSameAs(study.zones().get(0).soil());
    }

    @Test
    void bothSpellingsAndJsonSayTheSame() {
        Study yaml = StudyReader.read(files.copy("small.yaml"));
        Study json = StudyReader.read(files.copy("small.json"));

        assertThat(json.site()).isEqualTo(yaml.site());
        assertThat(json.stand()).isEqualTo(yaml.stand());
        assertThat(json.zones().get(0).soil().layers())
                .isEqualTo(yaml.zones().get(0).soil().layers());
        assertThat(json.management().harvest()).isEqualTo(yaml.management().harvest());
        assertThat(json.management().irrigation()).isEqualTo(new Irrigation.OnDepletion(0.5, 30));
    }

    @Test
    void readsEveryKeyAroundTheSoil() {
        Study study = StudyReader.read(files.copy("everything-layers.yaml"));

        assertThat(study.invented()).isTrue();
        assertThat(study.longitudeDeg()).hasValue(-88.37);
        assertThat(study.weather().files()).containsExactly(folder.resolve("weather.csv"), folder.resolve("later.csv"));
        assertThat(study.weather().sources().get(0).format()).contains("plain");
        assertThat(study.weather().sources().get(0).options().station()).isEqualTo("1");
        assertThat(study.weather().radiationCoefficient()).hasValue(0.17);
        assertThat(study.weather().missingRainLimitDays()).isEqualTo(7);
        assertThat(study.crop().name()).isEqualTo("switchgrass");
        assertThat(study.stand().plantsPerM2()).isEqualTo(20);
        Management management = study.management();
        assertThat(management.harvest())
                .isEqualTo(new HarvestRule.InWindow(MonthDay.of(2, 1), MonthDay.of(4, 15), 18, 0.95));
        assertThat(management.stubbleM()).isEqualTo(0.12);
        assertThat(management.pickUpShare()).isCloseTo(0.8, ROUNDING);
        assertThat(management.co2Ppm()).isEqualTo(420);
        assertThat(management.irrigation())
                .isEqualTo(new Irrigation.OnDates(
                        Map.of(LocalDate.of(2012, 7, 10), 30.0, LocalDate.of(2012, 7, 20), 25.4)));
        assertThat(study.season().from()).isEqualTo(MonthDay.of(5, 1));
        assertThat(study.normalYears()).contains(new YearSpan(1991, 2020));
        assertThat(study.years()).contains(new YearSpan(2010, 2015));
        assertThat(study.plots()).contains(folder.resolve("plots.csv"));
        assertThat(study.classes()).isEqualTo(new SeasonClasses(List.of(2012, 2013), List.of(2010)));
        assertThat(study.inputFiles()).hasSize(4);
    }

    @Test
    void readsEveryKeyOfTheSoil() {
        List<Zone> zones =
                StudyReader.read(files.copy("everything-layers.yaml")).zones();

        assertThat(zones).extracting(Zone::name).containsExactly("valley", "slope", "ridge");
        Zone valley = zones.get(0);
        assertThat(valley.areaHa()).hasValue(3);
        assertThat(valley.soil().depthM()).isCloseTo(1.5, ROUNDING);
        assertThat(valley.soil().layers().get(0)).isEqualTo(new SoilLayer(0.1, 0.15, 0.32, 0.47, 0.6));
        assertThat(valley.soil().readilyEvaporableMm()).isEqualTo(9);
        assertThat(valley.soil().curveNumber()).isEqualTo(61);
        assertThat(valley.soil().maxDrainageMmPerDay()).isEqualTo(2);
        assertThat(valley.soil().waterTableM()).isEqualTo(1.2);
        Zone slope = zones.get(1);
        assertThat(slope.areaHa().orElseThrow()).isCloseTo(5 * 0.40468564224, ROUNDING);
        assertThat(slope.soil().availableWaterMm()).isCloseTo(72, within(1e-9));
        assertThat(slope.soil().curveNumber())
                .as("NEH 630 Table 9-1, pasture good, C")
                .isEqualTo(74);
        Zone ridge = zones.get(2);
        assertThat(ridge.areaHa()).isEmpty();
        assertThat(ridge.soil().depthM()).isCloseTo(0.9144, ROUNDING);
        assertThat(ridge.soil().maxDrainageMmPerDay()).isInfinite();
        assertThat(ridge.soil().waterTableM()).isInfinite();
    }

    @Test
    void aCropFileCountsFromTheStudysFolder() {
        files.write("clone.yaml", "name: clone\nbased_on: switchgrass\nparameters:\n  max_height_m: 2.2\n");
        Path file = files.write("study.yaml", StudyFolder.text("small.yaml").replace("giant miscanthus", "clone.yaml"));
        Study study = StudyReader.read(file);

        assertThat(study.crop().parameters().get(CropParameter.MAX_HEIGHT)).isEqualTo(2.2);
        assertThat(study.inputFiles()).contains(folder.resolve("clone.yaml"));
    }

    @Test
    void southernSeasonsCrossTheTurnOfTheYear() {
        String south = StudyFolder.text("small.yaml").replace("40.05 deg", "-35 deg");
        assertThat(StudyReader.read(files.write("a.yaml", south)).season())
                .isEqualTo(new GrowingSeason(MonthDay.of(10, 1), MonthDay.of(3, 31)));
        Path given = files.write("b.yaml", south + "growing_season: 11-01 to 02-28\n");
        assertThat(StudyReader.read(given).season().until()).isEqualTo(MonthDay.of(2, 28));
    }

    @Test
    void weatherOfSeveralSourcesAndOwnTables(@TempDir Path folder) throws java.io.IOException {
        new StudyFolder(folder);
        java.nio.file.Files.writeString(folder.resolve("gauge.csv"), "x\n");
        String text = StudyFolder.text("small.yaml").replaceFirst("(?m)^weather:\\n  file: weather.csv", """
                weather:
                  sources:
                    - file: gauge.csv
                      variables: [rain]
                      separator: semicolon
                      decimal: comma
                      missing: [-99, no data]
                      columns:
                        - {name: Datum, gives: date, pattern: dd.MM.yyyy}
                        - {name: Regen, gives: rain, unit: inch}
                    - {file: weather.csv, wind_height: 10 m, units: us}
                  second_station: {file: weather.csv}
                  suspect: blank
                  rain_of_several_days: spread""");
        Path file = java.nio.file.Files.writeString(folder.resolve("sources.yaml"), text);
        WeatherSource weather = StudyReader.read(file).weather();
        assertThat(weather.sources()).hasSize(2);
        assertThat(weather.sources().get(0).variables()).containsExactly(org.thirstline.io.weather.RawVariable.RAIN);
        org.thirstline.io.weather.TableMapping mapping =
                weather.sources().get(0).options().mapping();
        assertThat(mapping).isNotNull();
        assertThat(mapping.decimalComma()).isTrue();
        assertThat(mapping.missing()).containsExactly("-99", "no data");
        assertThat(weather.sources().get(1).options().windHeightM()).isEqualTo(10.0);
        assertThat(weather.secondStation()).isPresent();
        assertThat(weather.suspect()).isEqualTo("blank");
        assertThat(weather.spreadRainSums()).isTrue();
        for (String wrong : java.util.List.of(
                text.replace("unit: inch", "unit: °F"),
                text.replace("[rain]", "[rainn]"),
                text.replace("gives: date", "gives: dat"),
                text.replace("  suspect: blank", "  units: us"))) {
            java.nio.file.Files.writeString(file, wrong);
            org.assertj.core.api.Assertions.assertThatThrownBy(() -> StudyReader.read(file))
                    .isInstanceOf(org.thirstline.model.error.InputException.class)
                    .hasMessageContaining("sources.yaml:");
        }
    }
}
