package org.thirstline.calibration.years;

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

/** Invented studies in a folder, seeded. */
final class InventedStudy {

    private InventedStudy() {}

    /** A study whose stand has so many full-grown years with a yield, on two soils. */
    static StudyOutcome of(Path folder, int fullGrownYears, boolean southern, long seed) throws IOException {
        int last = 1960 + fullGrownYears + 1;
        Files.writeString(folder.resolve("study.yaml"), text(southern));
        Files.writeString(
                folder.resolve("weather.csv"),
                weather(LocalDate.of(1960, 1, 1), LocalDate.of(last + (southern ? 2 : 1), 5, 31), southern, seed));
        Study study = StudyReader.read(folder.resolve("study.yaml"));
        return StudySimulation.run(study, StudyWeather.read(study), 1);
    }

    private static String text(boolean southern) {
        return String.join(
                "\n",
                "title: invented",
                "invented: true",
                "site: {name: nowhere, latitude_deg: " + (southern ? -44 : 44) + ", elevation_m: 100}",
                "weather: {file: weather.csv}",
                "crop: giant miscanthus",
                "stand: {planted: " + (southern ? "1960-10-15" : "1960-04-20") + ", spacing: 75 cm x 75 cm}",
                "zones:",
                "  - {name: deep, area: 8 ha, soil: {available_water: 170 mm/m, depth: 1.6 m}}",
                "  - {name: thin, area: 2 ha, soil: {available_water: 120 mm/m, depth: 0.6 m}}",
                "harvest: {date: " + (southern ? "09-01" : "03-01") + "}",
                "");
    }

    private static String weather(LocalDate start, LocalDate end, boolean southern, long seed) {
        RandomGenerator random = RandomGeneratorFactory.of("L64X128MixRandom").create(seed);
        StringBuilder text = new StringBuilder("date,tmin_c,tmax_c,rain_mm\n");
        double wetness = 1.0;
        for (LocalDate date = start; date.isBefore(end); date = date.plusDays(1)) {
            if (date.getDayOfYear() == (southern ? 182 : 1)) {
                wetness = Math.max(0.3, 1.0 + 0.4 * random.nextGaussian());
            }
            int shift = southern ? 182 : 0;
            double mean = 10.0 - 13.0 * Math.cos(2.0 * Math.PI * (date.getDayOfYear() + shift) / 365.25);
            double half = 4.0 + 3.0 * random.nextDouble();
            double rain = random.nextDouble() < 0.3 ? 8.0 * wetness * random.nextExponential() : 0.0;
            text.append(String.format(
                    Locale.ROOT, "%s,%.1f,%.1f,%.1f%n", date, mean - half, mean + half, Math.min(150.0, rain)));
        }
        return text.toString().replace("\r", "");
    }
}
