package org.thirstline.calibration.problem;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.random.RandomGenerator;
import java.util.random.RandomGeneratorFactory;
import org.thirstline.io.study.Study;
import org.thirstline.io.study.StudyReader;

/** Invented sites in a folder, each with its own weather and plots, seeded. */
public final class InventedSites {

    public static final int PLANTED = 2001;

    private InventedSites() {}

    /** Writes and reads a site whose study has a calibration section and whose plots are given. */
    public static StudySource site(Path folder, String name, int years, long seed, String calibration, String plots)
            throws IOException {
        Path place = Files.createDirectories(folder.resolve(name));
        Files.writeString(place.resolve("weather.csv"), weather(years, seed));
        Files.writeString(place.resolve("plots.csv"), plots);
        Files.writeString(place.resolve("study.yaml"), study(name) + calibration);
        return read(place.resolve("study.yaml"));
    }

    public static StudySource read(Path file) {
        Study study = StudyReader.read(file);
        return StudySource.read(study, study.plots().orElseThrow());
    }

    public static String study(String name) {
        return String.join(
                "\n",
                "title: invented",
                "invented: true",
                "site: {name: " + name + ", latitude_deg: 44, elevation_m: 100}",
                "weather: {file: weather.csv}",
                "crop: giant miscanthus",
                "stand: {planted: " + PLANTED + "-04-20, spacing: 75 cm x 75 cm}",
                "zones:",
                "  - {name: deep, soil: {available_water: 170 mm/m, depth: 1.4 m}}",
                "  - {name: thin, soil: {available_water: 120 mm/m, depth: 0.6 m}}",
                "harvest: {date: 03-01}",
                "plots: plots.csv",
                "");
    }

    /** Years of wet and dry spells; winters mild enough for the stand to live. */
    public static String weather(int years, long seed) {
        return weather(0, years, seed);
    }

    /** Weather that starts some years before the one of planting. */
    static String weather(int before, int years, long seed) {
        RandomGenerator random = RandomGeneratorFactory.of("L64X128MixRandom").create(seed);
        StringBuilder text = new StringBuilder("date,tmin_c,tmax_c,rain_mm\n");
        double wetness = 1.0;
        LocalDate end = LocalDate.of(PLANTED + years, 4, 1);
        for (LocalDate date = LocalDate.of(PLANTED - before, 1, 1); date.isBefore(end); date = date.plusDays(1)) {
            if (date.getDayOfYear() == 1) {
                wetness = Math.max(0.15, 0.8 + 0.5 * random.nextGaussian());
            }
            double mean = 11.0 - 11.0 * Math.cos(2.0 * Math.PI * (date.getDayOfYear() - 20) / 365.25);
            double half = 4.0 + 3.0 * random.nextDouble();
            double rain = random.nextDouble() < 0.3 ? 8.0 * wetness * random.nextExponential() : 0.0;
            text.append(String.format(
                    Locale.ROOT, "%s,%.1f,%.1f,%.1f%n", date, mean - half, mean + half, Math.min(150.0, rain)));
        }
        return text.toString().replace("\r", "");
    }

    /** Yields of two plots a zone in every year from the third on; their values are only placeholders. */
    public static String yields(int years) {
        List<String> lines = new ArrayList<>(List.of("zone,plot,planting_year,growth_year,variable,value,unit"));
        for (String zone : List.of("deep", "thin")) {
            for (int plot = 1; plot <= 2; plot++) {
                for (int year = PLANTED + 2; year < PLANTED + years; year++) {
                    lines.add(zone + "," + plot + "," + PLANTED + "," + year + ",yield," + (10 + year % 7) + ",Mg/ha");
                }
            }
        }
        return String.join("\n", lines) + "\n";
    }

    /** Values that the engine gives at a point, with errors as a share of them. */
    public static CalibrationProblem measuredAt(CalibrationProblem problem, double[] truth, double cv, long seed) {
        RandomGenerator random = RandomGeneratorFactory.of("L64X128MixRandom").create(seed);
        double[] values = problem.simulate(truth);
        for (int i = 0; i < values.length; i++) {
            values[i] *= Math.exp(cv * random.nextGaussian());
        }
        return problem.withValues(values);
    }
}
