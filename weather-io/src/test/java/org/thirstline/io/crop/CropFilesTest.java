package org.thirstline.io.crop;

import static org.assertj.core.api.Assertions.assertThat;
import static org.thirstline.io.text.InputErrors.assertRefused;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.EnumSet;
import java.util.Set;
import org.assertj.core.api.SoftAssertions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.thirstline.io.text.InputFileError;
import org.thirstline.model.crop.CropParameter;
import org.thirstline.model.error.ErrorCode;
import org.thirstline.model.error.ModelError;

class CropFilesTest {

    @TempDir
    private Path folder;

    @ParameterizedTest
    @ValueSource(strings = {"giant miscanthus", "switchgrass", " Giant Miscanthus "})
    void bundledCropsAreWhole(String name) {
        CropFile crop = CropFiles.bundled(name);

        assertThat(crop.name()).isEqualToIgnoringCase(name.strip());
        assertThat(crop.species()).isNotBlank();
        assertThat(crop.notes()).hasSize(CropParameter.values().length);
        assertThat(crop.cautions())
                .anyMatch(caution -> caution.contains("first winter"))
                .anyMatch(caution -> caution.contains("local weed list"))
                .anyMatch(caution -> caution.contains("small plots"));
    }

    @ParameterizedTest
    @ValueSource(strings = {"giant miscanthus", "switchgrass"})
    void everyBundledNumberSaysWhereItComesFrom(String name) {
        CropFile crop = CropFiles.bundled(name);
        SoftAssertions softly = new SoftAssertions();
        for (CropParameter parameter : CropParameter.values()) {
            ParameterNote note = crop.note(parameter);
            double value = crop.parameters().get(parameter);
            String as = name + " " + parameter.key();
            softly.assertThat(note.source()).as(as).isNotBlank();
            softly.assertThat(note.basis()).as(as).isNotBlank();
            softly.assertThat(note.hasRange()).as(as).isEqualTo(note.noRange() == null);
            softly.assertThat(note.status()).as(as).isNotEqualTo(Evidence.FITTED);
            if (note.hasRange()) {
                softly.assertThat(value).as(as).isBetween(note.low(), note.high());
            }
            if (note.status() == Evidence.READ || note.status() == Evidence.DERIVED) {
                softly.assertThat(note.source())
                        .as(as)
                        .doesNotContainIgnoringCase("judgement")
                        .doesNotStartWith("none");
            }
        }
        softly.assertAll();
    }

    @Test
    void aFileMayHoldOnlyWhatDiffers() {
        CropFile crop = cloneOfMine();
        CropFile base = CropFiles.bundled("giant miscanthus");

        assertThat(crop.name()).isEqualTo("my clone");
        assertThat(crop.parameters().name()).isEqualTo("my clone");
        assertThat(crop.species()).isEqualTo(base.species());
        assertThat(crop.cautions()).containsAll(base.cautions()).endsWith("fenced plots only");
        assertThat(crop.parameters().get(CropParameter.RADIATION_USE_EFFICIENCY))
                .isEqualTo(2.9);
        assertThat(crop.parameters().get(CropParameter.MAX_HEIGHT)).isEqualTo(3.1);
        Set<CropParameter> same = EnumSet.allOf(CropParameter.class);
        same.removeAll(Set.of(CropParameter.RADIATION_USE_EFFICIENCY, CropParameter.MAX_HEIGHT));
        assertThat(same).allSatisfy(parameter -> {
            assertThat(crop.parameters().get(parameter))
                    .isEqualTo(base.parameters().get(parameter));
            assertThat(crop.note(parameter)).isEqualTo(base.note(parameter));
        });
    }

    @Test
    void anOverrideHasItsOwnNote() {
        CropFile crop = cloneOfMine();
        ParameterNote bare = crop.note(CropParameter.RADIATION_USE_EFFICIENCY);
        assertThat(bare.status()).isEqualTo(Evidence.JUDGEMENT);
        assertThat(bare.source()).contains("none given");
        assertThat(bare.low()).isEqualTo(1.9);
        assertThat(crop.note(CropParameter.MAX_HEIGHT))
                .isEqualTo(new ParameterNote(2.5, 3.5, null, "own trial", "tallest stem", Evidence.DERIVED));
    }

    private CropFile cloneOfMine() {
        return CropFiles.read(file("""
                name: my clone
                based_on: giant miscanthus
                cautions: [fenced plots only]
                parameters:
                  radiation_use_efficiency_g_mj: 2.9
                  max_height_m:
                    value: 3.1
                    low: 2.5
                    high: 3.5
                    source: own trial
                    basis: tallest stem
                    status: derived
                """));
    }

    @ParameterizedTest
    @ValueSource(strings = {"giant miscanthus", "switchgrass"})
    void whatIsWrittenReadsBackTheSame(String name) throws IOException {
        CropFile crop = CropFiles.bundled(name);
        CropFile again = CropFiles.read(Files.writeString(folder.resolve("copy.yaml"), CropFileText.of(crop)));

        assertThat(again.notes()).isEqualTo(crop.notes());
        assertThat(again.cautions()).isEqualTo(crop.cautions());
        for (CropParameter parameter : CropParameter.values()) {
            assertThat(again.parameters().get(parameter))
                    .isEqualTo(crop.parameters().get(parameter));
        }
        assertThat(CropFileText.of(again)).isEqualTo(CropFileText.of(crop));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            INPUT:UNKNOWN_KEY   | 4 | radiation_use_eficiency_g_mj | radiation_use_eficiency_g_mj: 2.9 | radiation_use_efficiency_g_mj'?
            INPUT:WRONG_KIND    | 4 | max_height_m                 | max_height_m: tall                | a number
            INPUT:WRONG_KIND    | 4 | max_height_m                 | max_height_m: 3 m                 | a number
            INPUT:WRONG_KIND    | 4 | max_height_m                 | 'max_height_m:'                   | nothing
            INPUT:UNKNOWN_KEY   | 4 | max_height_m.worth           | max_height_m: {worth: 3}          | value
            INPUT:MISSING_KEY   | 4 | max_height_m.value           | max_height_m: {low: 2, high: 4}   | value
            INPUT:WRONG_UNIT    | 4 | max_height_m.unit            | max_height_m: {value: 3, unit: ft} | 'm'
            INPUT:INCONSISTENT  | 4 | max_height_m.low             | max_height_m: {value: 3, low: 4, high: 2} | above
            INPUT:INCONSISTENT  | 4 | max_height_m.low             | max_height_m: {value: 3, low: 2}  | together
            INPUT:NOT_ALLOWED   | 4 | max_height_m.status          | max_height_m: {value: 3, status: guessed} | judgement
            MODEL:VALUE_OUT_OF_RANGE | 4 | max_height_m            | max_height_m: 30                  | 0.1 to 10
            MODEL:VALUES_OUT_OF_ORDER | 3 | parameters             | growth_min_c: 25                  | growth_optimum_low_c
            """)
    void refusesWithFileLineAndKey(String code, int line, String key, String entry, String part) {
        Path file = file("name: x\nbased_on: switchgrass\nparameters:\n  " + entry + "\n");
        assertRefused(() -> CropFiles.read(file), code(code), file + ":" + line + ": ", key, part);
    }

    @Test
    void refusesUnknownCropsAndIncompleteOnes() {
        assertRefused(
                () -> CropFiles.bundled("giant miscantus"),
                InputFileError.NOT_ALLOWED,
                "giant miscantus",
                "switchgrass",
                "did you mean 'giant miscanthus'?");
        Path unknownBase = file("name: x\nbased_on: swichgrass\n");
        assertRefused(
                () -> CropFiles.read(unknownBase),
                InputFileError.NOT_ALLOWED,
                unknownBase + ":2: based_on",
                "switchgrass");
        Path incomplete = file("name: x\nparameters:\n  max_height_m: 3\n");
        assertRefused(
                () -> CropFiles.read(incomplete),
                InputFileError.INCONSISTENT,
                incomplete + ":2: parameters",
                "based_on",
                "radiation_use_efficiency_g_mj");
    }

    private Path file(String text) {
        try {
            return Files.writeString(folder.resolve("crop.yaml"), text);
        } catch (IOException failed) {
            throw new AssertionError(failed);
        }
    }

    private static ErrorCode code(String name) {
        String[] parts = name.split(":", 2);
        return parts[0].equals("MODEL") ? ModelError.valueOf(parts[1]) : InputFileError.valueOf(parts[1]);
    }
}
