package org.thirstline.calibration.bands;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import org.thirstline.calibration.study.StudyOutcome;
import org.thirstline.calibration.study.StudySimulation;
import org.thirstline.calibration.study.StudyWeather;
import org.thirstline.io.study.Study;
import org.thirstline.io.study.StudyReader;

/** An invented study of two zones whose crop file says that it was calibrated. */
final class CalibratedStudy {

    static final String RUE = "radiation_use_efficiency_g_mj";
    static final String LAI = "max_leaf_area_index";
    static final String THIN_WATER = "soil_available_water_factor in thin";

    private static final String STUDY = """
            title: TITLE
            invented: true
            site: {name: nowhere, latitude_deg: 45, elevation_m: 100}
            weather: {file: weather.csv}
            crop: crop.yaml
            stand: {planted: 2001-04-20, spacing: 75 cm x 75 cm}
            zones:
              - {name: deep, area: 4 ha, soil: {available_water: 150 mm/m, depth: 1.2 m}}
              - {name: thin, area: 1 ha, soil: {available_water: 120 mm/m, depth: 0.5 mSOIL}}
            harvest: {date: 03-01}
            """;

    private static final String CROP = """
            name: invented clone, calibrated
            based_on: giant miscanthus
            parameters: {radiation_use_efficiency_g_mj: RUE, max_leaf_area_index: 6.0}
            calibration:
              study: a trial
              date: 2026-03-14
              observations: 40
              invented: true
            """;

    private final Path folder;
    private String title = "a trial";
    private String soil = "";
    private String fitted = "  fitted:\n" + fitted(RUE, 2.8, "") + fitted(LAI, 6.0, "") + fitted(THIN_WATER, 0.9, "");
    private String rest = "";
    private String efficiency = "2.8";

    CalibratedStudy(Path folder) {
        this.folder = folder;
    }

    static String fitted(String name, double value, String more) {
        return "    - {parameter: " + name + ", value: " + value + more + "}\n";
    }

    CalibratedStudy titled(String other) {
        title = other;
        return this;
    }

    /** Writes a factor into the soil of the thin zone. */
    CalibratedStudy withSoilFactor(double factor) {
        soil = ", available_water_factor: " + factor;
        return this;
    }

    /** Gives the crop another radiation-use efficiency, as if it had been fitted so. */
    CalibratedStudy withEfficiency(String value) {
        efficiency = value;
        return this;
    }

    CalibratedStudy fitted(String... entries) {
        fitted = "  fitted:\n" + String.join("", entries);
        return this;
    }

    CalibratedStudy with(String entries) {
        rest += entries;
        return this;
    }

    CalibratedStudy draws(List<String> names, List<String> draws) {
        return with("  draw_names: [" + String.join(", ", names) + "]\n  draws:\n    - \""
                + String.join("\"\n    - \"", draws) + "\"\n");
    }

    StudyOutcome outcome() throws IOException {
        Files.writeString(
                folder.resolve("study.yaml"), STUDY.replace("TITLE", title).replace("SOIL", soil));
        Files.writeString(folder.resolve("crop.yaml"), CROP.replace("RUE", efficiency) + fitted + rest);
        Files.writeString(folder.resolve("weather.csv"), weather());
        Study study = StudyReader.read(folder.resolve("study.yaml"));
        return StudySimulation.run(study, StudyWeather.read(study), 1);
    }

    static StudyBands bands(StudyOutcome outcome, int threads) {
        ParameterDraws draws = ParameterDraws.of(outcome.study().crop(), 1).orElseThrow();
        return StudyBands.of(outcome.study(), outcome.drivers(), draws, threads);
    }

    /** Wetter and drier years in turn. */
    private static String weather() {
        StringBuilder text = new StringBuilder("date,tmin_c,tmax_c,rain_mm\n");
        LocalDate end = LocalDate.of(2009, 4, 1);
        for (LocalDate date = LocalDate.of(2001, 1, 1); date.isBefore(end); date = date.plusDays(1)) {
            double mean = 10.0 - 13.0 * Math.cos(2.0 * Math.PI * date.getDayOfYear() / 365.0);
            double rain = 5.0 + 2.0 * (date.getYear() * 7 % 5);
            text.append(date)
                    .append(',')
                    .append(Math.round(10.0 * (mean - 5.0)) / 10.0)
                    .append(',')
                    .append(Math.round(10.0 * (mean + 5.0)) / 10.0)
                    .append(',')
                    .append(date.getDayOfMonth() % 5 == 0 ? rain : 0.0)
                    .append('\n');
        }
        return text.toString();
    }
}
