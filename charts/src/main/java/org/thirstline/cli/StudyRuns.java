package org.thirstline.cli;

import java.nio.file.Path;
import java.util.Optional;
import org.thirstline.calibration.bands.ParameterDraws;
import org.thirstline.calibration.bands.StudyBands;
import org.thirstline.calibration.study.StudyOutcome;
import org.thirstline.calibration.study.StudySimulation;
import org.thirstline.calibration.study.StudyWeather;
import org.thirstline.io.study.Study;
import org.thirstline.io.study.StudyReader;
import org.thirstline.io.text.YearSpan;
import org.thirstline.io.weather.WeatherRecord;

/** Reads and simulates a study, as every command begins. Stateless and thread-safe. */
final class StudyRuns {

    private StudyRuns() {}

    /** Simulates a study and, where its crop was calibrated, every zone under every draw of the calibration. */
    static StudyOutcome simulateWithBands(Path file, Optional<YearSpan> years, OutputOptions options, Timings timings) {
        StudyOutcome outcome = simulate(file, years, options.threads, timings);
        Optional<ParameterDraws> draws = ParameterDraws.of(outcome.study().crop(), options.seed);
        if (draws.isEmpty()) {
            return outcome;
        }
        StudyOutcome drawn =
                outcome.with(StudyBands.of(outcome.study(), outcome.drivers(), draws.get(), options.threads));
        timings.step("bands");
        return drawn;
    }

    static StudyOutcome simulate(Path file, Optional<YearSpan> years, int threads, Timings timings) {
        Study read = StudyReader.read(file);
        Study study = years.map(read::withYears).orElse(read);
        timings.step("study");
        WeatherRecord weather = StudyWeather.read(study);
        timings.step("weather");
        StudyOutcome outcome = StudySimulation.run(study, weather, threads);
        timings.step("simulation");
        return outcome;
    }
}
