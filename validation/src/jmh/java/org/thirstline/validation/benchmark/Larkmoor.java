package org.thirstline.validation.benchmark;

import java.nio.file.Files;
import java.nio.file.Path;
import org.thirstline.calibration.study.StudyWeather;
import org.thirstline.io.study.Study;
import org.thirstline.io.study.StudyReader;
import org.thirstline.io.weather.WeatherRecord;
import org.thirstline.model.engine.FieldConditions;
import org.thirstline.model.weather.DailyDrivers;

/** The example that every benchmark runs: thirty years of invented weather, two soils. Immutable and thread-safe. */
final class Larkmoor {

    static final int MAX_FILLED_DAYS = 10;

    final Study study;
    final WeatherRecord weather;
    final DailyDrivers drivers;
    final FieldConditions loam;

    Larkmoor() {
        study = StudyReader.read(file());
        weather = StudyWeather.read(study);
        drivers = DailyDrivers.of(study.site(), weather.series());
        loam = study.field(study.zones().get(0));
    }

    private static Path file() {
        Path beside = Path.of("docs/examples/larkmoor/study.yaml");
        return Files.exists(beside) ? beside : Path.of("..").resolve(beside);
    }
}
