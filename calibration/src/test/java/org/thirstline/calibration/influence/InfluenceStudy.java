package org.thirstline.calibration.influence;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Locale;
import java.util.random.RandomGenerator;
import java.util.random.RandomGeneratorFactory;
import org.thirstline.calibration.study.StudyOutcome;
import org.thirstline.calibration.study.StudySimulation;
import org.thirstline.calibration.study.StudyWeather;
import org.thirstline.io.study.Study;
import org.thirstline.io.study.StudyReader;

/** An invented study with a crop file of its own, in a folder, seeded. */
final class InfluenceStudy {

    private InfluenceStudy() {}

    /** A stand on thin soil with so many years of weather, of a crop whose file says the given. */
    static StudyOutcome of(Path folder, int years, String... parameters) throws IOException {
        Files.writeString(folder.resolve("crop.yaml"), crop(parameters));
        Files.writeString(
                folder.resolve("study.yaml"),
                String.join(
                        "\n",
                        "title: invented",
                        "invented: true",
                        "site: {name: nowhere, latitude_deg: 44, elevation_m: 100}",
                        "weather: {file: weather.csv}",
                        "crop: crop.yaml",
                        "stand: {planted: 2001-04-20, spacing: 75 cm x 75 cm}",
                        "soil: {available_water: 120 mm/m, depth: 0.7 m}",
                        "harvest: {date: 03-01}",
                        ""));
        Files.writeString(folder.resolve("weather.csv"), weather(2001 + years));
        Study study = StudyReader.read(folder.resolve("study.yaml"));
        return StudySimulation.run(study, StudyWeather.read(study), 1);
    }

    private static String crop(String... parameters) {
        String head = "name: tried grass\nbased_on: giant miscanthus\n";
        return parameters.length == 0 ? head : head + "parameters:\n  " + String.join("\n  ", parameters) + "\n";
    }

    private static String weather(int lastYear) {
        RandomGenerator random = RandomGeneratorFactory.of("L64X128MixRandom").create(5L);
        StringBuilder text = new StringBuilder("date,tmin_c,tmax_c,rain_mm\n");
        LocalDate end = LocalDate.of(lastYear, 5, 31);
        for (LocalDate date = LocalDate.of(2001, 1, 1); date.isBefore(end); date = date.plusDays(1)) {
            double mean = 10.0 - 13.0 * Math.cos(2.0 * Math.PI * date.getDayOfYear() / 365.25);
            double rain = random.nextDouble() < 0.3 ? 6.0 * random.nextExponential() : 0.0;
            text.append(String.format(Locale.ROOT, "%s,%.1f,%.1f,%.1f\n", date, mean - 5.0, mean + 5.0, rain));
        }
        return text.toString();
    }
}
