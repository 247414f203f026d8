package org.thirstline.validation.observed;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

class ObservedWorldTest {

    @Test
    void theResultsKeptAreWhatTheRealFilesGive() throws IOException {
        Assumptions.assumeTrue(
                RealData.isPresent(),
                "skipped: no real files at " + RealData.file("")
                        + "; set -Dthirstline.data or THIRSTLINE_DATA to the folder");
        assertThat(ObservedWorld.calculate())
                .as("results.csv; else run ValidationPageTest with -Dthirstline.regenerate=true")
                .isEqualTo(ObservedWorld.kept());
    }

    @Test
    @Tag("long")
    void theCalibrationsKeptAreWhatTheRealFilesGive() throws IOException {
        Assumptions.assumeTrue(RealData.isPresent(), "skipped: no real files at " + RealData.file(""));
        assertThat(CalibrationStudy.run())
                .as("calibrated.csv; else run ValidationPageTest with -Dthirstline.regenerate=true")
                .isEqualTo(ObservedWorld.calibrated());
    }

    /** No result without an observation beside it, and none hidden. */
    @Test
    void everyResultStandsBesideAFact() throws IOException {
        assertThat(Facts.read().keys())
                .doesNotHaveDuplicates()
                .containsExactlyInAnyOrderElementsOf(ObservedWorld.kept().keySet());
    }
}
