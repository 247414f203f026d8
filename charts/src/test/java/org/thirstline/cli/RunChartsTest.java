package org.thirstline.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.thirstline.calibration.study.StudyOutcome;
import org.thirstline.calibration.study.StudySimulation;
import org.thirstline.calibration.study.StudyWeather;
import org.thirstline.io.study.Study;
import org.thirstline.io.study.StudyReader;
import org.thirstline.io.tables.ResultFolder;

/** The report of a run is put together beside its charts, and fails as they do. */
class RunChartsTest {

    private static final Path STUDY = Path.of("..", "docs", "examples", "larkmoor", "study.yaml");

    @TempDir
    private Path folder;

    /** The name the page has until it is complete is taken by a folder. */
    @Test
    void aReportThatCannotBeWrittenFailsTheRunAndLeavesNothing() throws IOException {
        Study study = StudyReader.read(STUDY);
        StudyOutcome outcome = StudySimulation.run(study, StudyWeather.read(study), 1);
        Path target = folder.resolve("results");

        try (ResultFolder results = ResultFolder.open(target)) {
            Files.createDirectories(results.file("report.html.part"));
            assertThatThrownBy(() -> RunCharts.write(outcome, new CommonOptions(), results))
                    .isInstanceOf(UncheckedIOException.class)
                    .hasMessageContaining("report.html.part");
        }

        assertThat(folder).isEmptyDirectory();
    }
}
