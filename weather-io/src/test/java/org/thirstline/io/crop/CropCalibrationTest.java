package org.thirstline.io.crop;

import static org.assertj.core.api.Assertions.assertThat;
import static org.thirstline.io.text.InputErrors.assertRefused;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.thirstline.io.crop.CropCalibration.DataFile;
import org.thirstline.io.crop.CropCalibration.Fitted;
import org.thirstline.io.crop.CropCalibration.ResidualError;
import org.thirstline.io.text.InputFileError;
import org.thirstline.model.crop.CropParameter;
import org.thirstline.model.error.ModelError;

/** A calibrated crop survives being written and read. */
class CropCalibrationTest {

    @TempDir
    private Path folder;

    private static CropFile calibrated() {
        CropFile base = CropFiles.bundled("giant miscanthus");
        CropParameter rue = CropParameter.RADIATION_USE_EFFICIENCY;
        Map<CropParameter, ParameterNote> notes = new EnumMap<>(base.notes());
        ParameterNote before = base.note(rue);
        notes.put(rue, new ParameterNote(before.low(), before.high(), null, "fitted", before.basis(), Evidence.FITTED));
        CropCalibration calibration = new CropCalibration(
                "a \"trial\"",
                "2026-03-14",
                60,
                true,
                List.of(new DataFile("plots.csv", "00ff"), new DataFile("../weather.csv", "ff00")),
                List.of(
                        new Fitted(rue.key(), 2.871234, 0.05, 2.7, Double.NaN, 1.4, 4.2),
                        new Fitted(
                                "soil_available_water_factor in deep loam",
                                1.1,
                                Double.NaN,
                                Double.NaN,
                                1.3,
                                Double.NaN,
                                Double.NaN)),
                List.of(List.of(1.0, -0.25), List.of(-0.25, 1.0)),
                List.of(new ResidualError("yield", "sd", 1.25, true)),
                List.of(rue.key(), "soil_available_water_factor in deep loam"),
                List.of(List.of(2.87, 1.1), List.of(2.9, 1.0E-4)),
                true);
        return new CropFile(
                base.name() + ", calibrated",
                base.species(),
                base.parameters().with(rue, 2.871234),
                notes,
                base.cautions(),
                Optional.of(calibration));
    }

    private CropFile read(String text) throws IOException {
        return CropFiles.read(Files.writeString(folder.resolve("crop.yaml"), text));
    }

    @Test
    void theWholeFileComesBack() throws IOException {
        CropFile crop = calibrated();
        CropFile back = read(CropFileText.of(crop));
        assertThat(back.calibration()).isEqualTo(crop.calibration());
        assertThat(back.notes()).isEqualTo(crop.notes());
        assertThat(back.parameters().get(CropParameter.RADIATION_USE_EFFICIENCY))
                .isEqualTo(2.871234);
    }

    @Test
    void aFileOfWhatDiffersComesBackWithTheRestOfItsBase() throws IOException {
        CropFile crop = calibrated();
        String text = CropFileText.basedOn("giant miscanthus", crop, Set.of(CropParameter.RADIATION_USE_EFFICIENCY));
        CropFile back = read(text);
        assertThat(back.calibration()).isEqualTo(crop.calibration());
        assertThat(back.notes()).isEqualTo(crop.notes());
        assertThat(back.cautions()).isEqualTo(crop.cautions());
        for (CropParameter parameter : CropParameter.values()) {
            assertThat(back.parameters().get(parameter))
                    .isEqualTo(crop.parameters().get(parameter));
        }
        assertThat(text).doesNotContain(CropParameter.MAX_HEIGHT.key());
    }

    @Test
    void drawsOfAnotherLengthAreRefused() {
        String text = CropFileText.of(calibrated());
        assertRefused(() -> read(text.replace("2.87 1.1", "2.87")), InputFileError.WRONG_KIND, "draws", "1 numbers");
        assertRefused(() -> read(text.replace("2.87 1.1", "2.87 much")), InputFileError.WRONG_KIND, "much");
    }

    @Test
    void drawsThatNoCropCanHaveAreRefusedWithTheirLine() {
        String text = CropFileText.of(calibrated());
        int line = (int) text.substring(0, text.indexOf("2.87 1.1")).lines().count();
        for (String number : List.of("NaN", "Infinity", "-Infinity")) {
            assertRefused(
                    () -> read(text.replace("2.87 1.1", number + " 1.1")),
                    InputFileError.WRONG_KIND,
                    "crop.yaml:" + line + ": calibration.draws[1]",
                    number);
        }
        assertRefused(
                () -> read(text.replace("2.87 1.1", "287 1.1")),
                ModelError.VALUE_OUT_OF_RANGE,
                "crop.yaml:" + line + ": calibration.draws[1]",
                "radiation_use_efficiency_g_mj",
                "287");
    }

    @Test
    void correlationsThatCannotBeAreRefused() {
        String text = CropFileText.of(calibrated());
        assertRefused(() -> read(text.replace("1 -0.25", "1 -1.25")), ModelError.VALUE_OUT_OF_RANGE, "correlations[1]");
        assertRefused(() -> read(text.replace("1 -0.25", "1")), InputFileError.WRONG_KIND, "correlations[1]");
        assertRefused(
                () -> read(text.replace("    - \"-0.25 1\"\n", "")), InputFileError.WRONG_KIND, "1 rows", "2, one for");
    }
}
