package org.thirstline.validation.scenario;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Locale;
import java.util.SplittableRandom;
import org.thirstline.model.evapotranspiration.Atmosphere;
import org.thirstline.model.evapotranspiration.NetRadiation;
import org.thirstline.model.solar.SolarGeometry;

/**
 * Makes the invented weather of the invented Larkmoor field station: rain by a two-state Markov chain with exponential depths, the other variables conditional on wet
 * and dry days with day-to-day memory (the scheme of Richardson 1981, Water Resour. Res. 17:182-190), with one severe drought, one
 * milder one and one very wet year laid over it. Same seed, same bytes.
 */
final class LarkmoorWeather {

    static final double LATITUDE_DEG = 44.6;
    static final double ELEVATION_M = 214.0;
    static final LocalDate FIRST = LocalDate.of(1996, 1, 1);
    static final LocalDate LAST = LocalDate.of(2025, 12, 31);
    static final int SEVERE_DROUGHT = 2012;
    static final int MILD_DROUGHT = 2003;
    static final int VERY_WET = 2015;

    private final SplittableRandom random;
    private double spareGaussian = Double.NaN;
    private boolean wet;
    private double warmth;
    private double cloud;

    LarkmoorWeather(long seed) {
        random = new SplittableRandom(seed);
    }

    /** Writes the committed file. Run from the repository root. */
    public static void main(String[] arguments) throws IOException {
        Files.writeString(Path.of(arguments[0]), new LarkmoorWeather(20_260_101L).table(), StandardCharsets.UTF_8);
    }

    String table() {
        StringBuilder text = new StringBuilder(600_000);
        text.append("# name: Larkmoor field station (invented place, invented weather)\n")
                .append("# invented: true\n")
                .append("# latitude_deg: ")
                .append(LATITUDE_DEG)
                .append("\n# elevation_m: ")
                .append(ELEVATION_M)
                .append("\ndate,tmin_c,tmax_c,rain_mm,solar_mj_m2,wind_2m_m_s,vapour_pressure_kpa\n");
        double yearWetness = 1.0;
        for (LocalDate date = FIRST; !date.isAfter(LAST); date = date.plusDays(1)) {
            if (date.getDayOfYear() == 1) {
                yearWetness = StrictMath.exp(0.07 * gaussian());
            }
            text.append(row(date, yearWetness));
        }
        return text.toString();
    }

    private String row(LocalDate date, double yearWetness) {
        double season = -StrictMath.cos(2.0 * Math.PI * (date.getDayOfYear() - 17) / 365.25);
        double wetness = yearWetness * special(date);
        double chance = Math.min(0.9, (wet ? 0.46 : 0.27) * wetness);
        wet = random.nextDouble() < chance;
        double depth = 8.2 + 1.6 * season;
        double rain = wet
                ? Math.max(0.1, -depth * StrictMath.sqrt(wetness) * StrictMath.log(1.0 - random.nextDouble()))
                : 0.0;
        warmth = 0.72 * warmth + 0.69 * gaussian();
        double hot = wetness < 0.6 && season > 0.2 ? 2.2 : 0.0;
        double mean = 10.2 + 11.4 * season + (3.7 - 1.2 * season) * warmth + hot - (wet ? 0.8 * season : 0.0);
        double half = Math.max(1.2, (wet ? 3.9 : 5.9) + 0.7 * season + 1.1 * gaussian());
        double wind = Math.max(0.3, 2.3 - 0.5 * season + 0.8 * gaussian());
        double saturated = Atmosphere.saturationVapourPressure(mean - half);
        double vapour = saturated * Math.min(1.02, (wet ? 1.0 : 0.93) + 0.05 * gaussian());
        return String.format(
                        Locale.ROOT,
                        "%s,%.1f,%.1f,%.1f,%.2f,%.1f,%.3f%n",
                        date,
                        mean - half,
                        mean + half,
                        rain,
                        solar(date),
                        wind,
                        vapour)
                .replace("\r\n", "\n");
    }

    private double solar(LocalDate date) {
        double extraterrestrial =
                SolarGeometry.extraterrestrialRadiation(Math.toRadians(LATITUDE_DEG), date.getDayOfYear());
        cloud = 0.3 * cloud + 0.95 * gaussian();
        double share = (wet ? 0.34 : 0.61) + (wet ? 0.11 : 0.09) * cloud;
        double clear = NetRadiation.clearSky(extraterrestrial, ELEVATION_M) / extraterrestrial;
        return extraterrestrial * Math.max(0.10, Math.min(clear, share));
    }

    /** What the years with a name do to the chance of rain. */
    private static double special(LocalDate date) {
        int month = date.getMonthValue();
        boolean growing = month >= 4 && month <= 9;
        return switch (date.getYear()) {
            case SEVERE_DROUGHT -> growing && month < 9 ? 0.36 : 1.0;
            case MILD_DROUGHT -> month >= 6 && month <= 8 ? 0.55 : 1.0;
            case VERY_WET -> growing ? 1.14 : 1.05;
            default -> 1.0;
        };
    }

    /** Marsaglia's polar method with correctly rounded functions, so that the bytes do not depend on the machine. */
    private double gaussian() {
        if (!Double.isNaN(spareGaussian)) {
            double spare = spareGaussian;
            spareGaussian = Double.NaN;
            return spare;
        }
        double x;
        double y;
        double s;
        do {
            x = 2.0 * random.nextDouble() - 1.0;
            y = 2.0 * random.nextDouble() - 1.0;
            s = x * x + y * y;
        } while (s >= 1.0 || s == 0.0);
        double scale = Math.sqrt(-2.0 * StrictMath.log(s) / s);
        spareGaussian = y * scale;
        return x * scale;
    }
}
