package org.thirstline.io.study;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.thirstline.io.text.InputErrors.assertRefused;

import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.thirstline.io.plots.PlotVariable;
import org.thirstline.io.study.CalibrationPlan.ErrorKind;
import org.thirstline.io.study.CalibrationPlan.PlannedParameter;
import org.thirstline.io.study.CalibrationPlan.SoilFactor;
import org.thirstline.io.text.InputFileError;
import org.thirstline.model.crop.CropParameter;

/** The calibration section of a study file. */
class CalibrationPlanTest {

    @TempDir
    private Path folder;

    private Study read(String calibration) {
        StudyFolder files = new StudyFolder(folder);
        return StudyReader.read(files.write("study.yaml", """
                title: test
                site: {name: nowhere, latitude_deg: 45, elevation_m: 100}
                weather: {file: weather.csv}
                crop: giant miscanthus
                stand: {planted: 2001-04-20, spacing: 75 cm x 75 cm}
                zones:
                  - {name: loam, soil: {available_water: 150 mm/m, depth: 1 m}}
                  - {name: slope, soil: {available_water: 150 mm/m, depth: 1 m, available_water_factor: 0.8, depth_factor: 1.5}}
                harvest: {date: 03-01}
                """ + calibration));
    }

    @Test
    void aStudyThatSaysNothingHasNoPlan() {
        assertThat(read("").calibration()).isEqualTo(CalibrationPlan.NONE);
    }

    @Test
    void everythingIsRead() {
        CalibrationPlan plan = read("""
                calibration:
                  parameters:
                    - {name: radiation_use_efficiency_g_mj, low: 1.5, high: 4, prior: lognormal, expected_low: 2, expected_high: 3}
                    - {name: soil_available_water_factor, zone: slope}
                  with_studies: [later.csv]
                  errors:
                    - {variable: yield, cv: 10 %}
                    - {variable: leaf_area_index, sd: 0.4}
                    - {variable: soil_water, sd: estimated}
                    - {variable: standing_dry_matter, sd: stated}
                """).calibration();
        PlannedParameter rue = plan.parameters().get(0);
        assertThat(rue.crop()).contains(CropParameter.RADIATION_USE_EFFICIENCY);
        assertThat(rue.low()).hasValue(1.5);
        assertThat(rue.prior()).contains("lognormal");
        assertThat(rue.expectedHigh()).hasValue(3.0);
        assertThat(plan.parameters().get(1).soil()).contains(SoilFactor.AVAILABLE_WATER);
        assertThat(plan.parameters().get(1).zone()).contains("slope");
        assertThat(plan.withStudies()).hasSize(1);
        assertThat(plan.errors())
                .extracting(CalibrationPlan.PlannedError::kind)
                .containsExactly(ErrorKind.CV, ErrorKind.SD, ErrorKind.SD, ErrorKind.STATED);
        assertThat(plan.errors().get(0).size()).hasValue(0.1);
        assertThat(plan.errors().get(1).variable()).isEqualTo(PlotVariable.LEAF_AREA_INDEX);
        assertThat(plan.errors().get(2).size()).isEmpty();
    }

    /** 150 mm/m over 1 m, times 0.8, times 1.5 of depth: 180 mm, but the evaporating layer keeps its thickness and water. */
    @Test
    void fittedSoilFactorsAreTakenByTheSoil() {
        assertThat(read("").zones().get(1).soil().availableWaterMm()).isCloseTo(180.0, within(1e-9));
        assertThat(read("").zones().get(1).soil().depthM()).isCloseTo(1.5, within(1e-9));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "parameters: [{name: radiation_use_efficiency}] | NOT_ALLOWED  | did you mean 'radiation_use_efficiency_g_mj'",
                "parameters: [{name: leaf_base_c, zone: loam}]  | INCONSISTENT | the same everywhere",
                "parameters: [{name: soil_depth_factor, zone: lome}] | NOT_ALLOWED | did you mean 'loam'",
                "parameters: [{name: leaf_base_c, low: 9, high: 8}] | INCONSISTENT | below",
                "parameters: [{name: leaf_base_c, expected_low: 9}] | INCONSISTENT | together",
                "parameters: [{name: leaf_base_c, prior: flat}] | NOT_ALLOWED  | uniform",
                "parameters: [{nam: leaf_base_c}]               | UNKNOWN_KEY  | name",
                "with_studies: [gone.yaml]                      | FILE_NOT_FOUND | gone.yaml",
                "errors: [{variable: yield, cv: -1}]            | WRONG_KIND   | 10 %",
                "errors: [{variable: yield, sd: much}]          | WRONG_KIND   | Mg/ha",
                "errors: [{variable: emergence, cv: 10 %}]      | INCONSISTENT | give sd",
                "errors: [{variable: yeild, cv: 10 %}]          | NOT_ALLOWED  | yield",
                "errors: [{variable: yield}]                    | MISSING_KEY  | sd"
            })
    void refusals(String line, InputFileError code, String part) {
        assertRefused(() -> read("calibration:\n  " + line + "\n"), code, "study.yaml", part);
    }
}
