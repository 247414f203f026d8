package org.thirstline.validation.recovery;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.random.RandomGenerator;
import java.util.random.RandomGeneratorFactory;
import java.util.stream.Collectors;
import org.thirstline.calibration.problem.CalibrationProblem;
import org.thirstline.calibration.problem.PlotData;
import org.thirstline.calibration.problem.ProblemSetup;
import org.thirstline.calibration.problem.StudySource;
import org.thirstline.io.study.Study;
import org.thirstline.io.study.StudyReader;

/**
 * An invented trial whose truth is known: one stand of giant miscanthus at each of up to six sites in contrasting climates, on deep and thin
 * soils by turns, planted in 2001 and measured in every growth year from the second on. Measured are the yield, green leaf area on
 * 10 July, and the water of the whole soil on 10 April, when a winter has filled it, and on 31 August. Weather is drawn day by day from
 * fixed seeds.
 */
public final class SyntheticTrial {

    /** Number of sites there are. */
    public static final int SITES = Climate.values().length;

    /** Seed of the invented weather; each site adds its place in the list. */
    private static final long WEATHER_SEED = 1;

    private static final int PLANTED = 2001;

    private static final String GENERATOR = "L64X128MixRandom";

    /** What is believed of the parameters before the data. */
    public enum Beliefs {
        /** Nothing: every value between wide bounds alike. */
        NONE("""
                - {name: radiation_use_efficiency_g_mj, low: 1.4, high: 4.6, prior: uniform}
                - {name: max_leaf_area_index, low: 3, high: 10, prior: uniform}
                - {name: depletion_fraction, low: 0.2, high: 0.8, prior: uniform}
                - {name: soil_available_water_factor, low: 0.5, high: 1.6, prior: uniform}
            """),
        /** Normal and lognormal, of the width that a handbook range has. */
        HANDBOOK("""
                - {name: radiation_use_efficiency_g_mj, expected_low: 2.4, expected_high: 3.4, low: 1.4, high: 4.6}
                - {name: max_leaf_area_index, expected_low: 5, expected_high: 8, low: 3, high: 10}
                - {name: depletion_fraction, expected_low: 0.35, expected_high: 0.65, low: 0.2, high: 0.8}
                - {name: soil_available_water_factor, expected_low: 0.75, expected_high: 1.25, low: 0.5, high: 1.6}
            """);

        private final String parameters;

        Beliefs(String parameters) {
            this.parameters = parameters;
        }

        String calibration(String error) {
            return "calibration:\n  parameters:\n" + parameters + "  errors:\n"
                    + List.of("yield", "leaf_area_index", "soil_water").stream()
                            .map(variable -> "    - {variable: " + variable + ", cv: " + error + "}\n")
                            .collect(Collectors.joining());
        }
    }

    /** Mean, half the yearly swing, chance of rain in winter and summer, depth of a wet day, soil. */
    private enum Climate {
        COOL_MARITIME(53, 10.5, 6.5, 0.50, 0.45, 5.5, true),
        MILD_OCEANIC(48, 11.5, 7.5, 0.42, 0.33, 5.0, false),
        DRY_CONTINENTAL(45, 11.5, 11.0, 0.22, 0.28, 6.0, false),
        DRY_SUMMER(42, 13.5, 9.5, 0.38, 0.20, 8.0, true),
        DRY_PLAIN(46, 11.5, 10.5, 0.24, 0.26, 7.0, true),
        WET_WARM(44, 13.0, 9.0, 0.34, 0.36, 9.0, false);

        private final double latitude;
        private final double mean;
        private final double swing;
        private final double winterRain;
        private final double summerRain;
        private final double depthMm;
        private final boolean thin;

        Climate(
                double latitude,
                double mean,
                double swing,
                double winterRain,
                double summerRain,
                double depthMm,
                boolean thin) {
            this.latitude = latitude;
            this.mean = mean;
            this.swing = swing;
            this.winterRain = winterRain;
            this.summerRain = summerRain;
            this.depthMm = depthMm;
            this.thin = thin;
        }

        String site() {
            return "Larkmoor " + name().toLowerCase(Locale.ROOT).replace('_', ' ');
        }
    }

    private SyntheticTrial() {}

    /**
     * Writes a trial as a user would, and reads it as the program does.
     *
     * @param folder where to
     * @param sites number of sites
     * @param years measured growth years
     * @param beliefs what is believed of the parameters
     * @param error what the analysis says of the errors: {@code estimated} or a size such as {@code 10 %}
     * @return the problem; its values are only placeholders
     */
    public static CalibrationProblem problem(Path folder, int sites, int years, Beliefs beliefs, String error)
            throws IOException {
        List<StudySource> sources = new ArrayList<>();
        for (int i = 0; i < sites; i++) {
            Climate climate = Climate.values()[i];
            Path place = Files.createDirectories(folder.resolve("site-" + (i + 1)));
            Files.writeString(place.resolve("weather.csv"), weather(climate, years, WEATHER_SEED + i));
            Files.writeString(place.resolve("plots.csv"), plots(years));
            Files.writeString(place.resolve("study.yaml"), study(climate) + beliefs.calibration(error));
            Study study = StudyReader.read(place.resolve("study.yaml"));
            sources.add(StudySource.read(study, study.plots().orElseThrow()));
        }
        return ProblemSetup.of(PlotData.of(sources)).problem();
    }

    private static String study(Climate climate) {
        String soil = climate.thin
                ? "{available_water: 150 mm/m, depth: 0.9 m}"
                : "{available_water: 160 mm/m, depth: 1.6 m}";
        return String.join(
                "\n",
                "title: invented trial",
                "invented: true",
                "site: {name: " + climate.site() + ", latitude_deg: " + climate.latitude + ", elevation_m: 100}",
                "weather: {file: weather.csv}",
                "crop: giant miscanthus",
                "stand: {planted: " + PLANTED + "-04-20, spacing: 75 cm x 75 cm}",
                "zones: [{name: field, soil: " + soil + "}]",
                "harvest: {date: 03-01}",
                "plots: plots.csv",
                "");
    }

    private static String plots(int years) {
        List<String> lines =
                new ArrayList<>(List.of("# invented: true", "plot,planting_year,growth_year,date,variable,value,unit"));
        String plot = "1," + PLANTED + ",";
        for (int year = PLANTED + 1; year <= PLANTED + years; year++) {
            lines.add(plot + year + ",,yield," + (10 + year % 7) + ",Mg/ha");
            lines.add(plot + "," + year + "-07-10,leaf_area_index," + (3 + year % 3) + ",m2/m2");
            lines.add(plot + "," + year + "-04-10,soil_water," + (120 + year % 3) + ",mm");
            lines.add(plot + "," + year + "-08-31,soil_water," + (80 + year % 3) + ",mm");
        }
        return String.join("\n", lines) + "\n";
    }

    private static String weather(Climate climate, int years, long seed) {
        RandomGenerator random = RandomGeneratorFactory.of(GENERATOR).create(seed);
        StringBuilder text = new StringBuilder("date,tmin_c,tmax_c,rain_mm\n");
        LocalDate end = LocalDate.of(PLANTED + years + 1, 4, 1);
        double warmth = 0.0;
        double wetness = 1.0;
        for (LocalDate date = LocalDate.of(PLANTED, 1, 1); date.isBefore(end); date = date.plusDays(1)) {
            if (date.getDayOfYear() == 1) {
                wetness = Math.max(0.4, 1.0 + 0.3 * random.nextGaussian());
            }
            double season = -Math.cos(2.0 * Math.PI * (date.getDayOfYear() - 20) / 365.25);
            warmth = 0.7 * warmth + 1.5 * random.nextGaussian();
            double summer = 0.5 * (1.0 + season);
            double chance = wetness * (climate.winterRain + summer * (climate.summerRain - climate.winterRain));
            boolean wet = random.nextDouble() < Math.min(0.9, chance);
            double rain = wet ? climate.depthMm * random.nextExponential() : 0.0;
            double mean = climate.mean + climate.swing * season + warmth;
            double half = (wet ? 3.0 : 5.0) + 1.5 * random.nextDouble() + summer;
            text.append(String.format(
                    Locale.ROOT, "%s,%.1f,%.1f,%.1f%n", date, mean - half, mean + half, Math.min(120.0, rain)));
        }
        return text.toString().replace("\r", "");
    }

    /** How errors are drawn. */
    public enum Errors {
        /** Normal in the logarithm, as the analysis with a coefficient of variation has it. */
        OF_LOGARITHM,
        /** Normal with a share of the true value as standard deviation; the analysis compares logarithms all the same. */
        OF_VALUE
    }

    /**
     * Measures once more.
     *
     * @param problem whose values are replaced
     * @param simulated what would be measured without errors
     * @param size standard deviation of the errors as a share, independent
     * @param errors how they are drawn
     * @param random goes on with every value
     */
    public static CalibrationProblem measured(
            CalibrationProblem problem, double[] simulated, double size, Errors errors, RandomGenerator random) {
        double[] values = simulated.clone();
        for (int i = 0; i < values.length; i++) {
            double error = size * random.nextGaussian();
            values[i] *= errors == Errors.OF_LOGARITHM ? Math.exp(error) : 1.0 + error;
        }
        return problem.withValues(values);
    }

    /** Returns the generator of a seed. */
    public static RandomGenerator random(long seed) {
        return RandomGeneratorFactory.of(GENERATOR).create(seed);
    }
}
