package org.thirstline.validation.scenario;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.SplittableRandom;
import org.thirstline.calibration.study.StudyWeather;
import org.thirstline.io.study.Study;
import org.thirstline.io.study.StudyReader;
import org.thirstline.io.study.Zone;
import org.thirstline.model.crop.CropParameter;
import org.thirstline.model.crop.CropParameters;
import org.thirstline.model.engine.FieldConditions;
import org.thirstline.model.engine.PairedRuns;
import org.thirstline.model.result.SeasonRecord;
import org.thirstline.model.result.SeasonVariable;
import org.thirstline.model.weather.DailyDrivers;

/**
 * Makes the invented plot yields of the invented Larkmoor field station: the study's own simulation of a stand that never ages, times an
 * invented decline, an invented level of the place, and scatter between plots, between years and within. Same seed, same bytes.
 */
final class LarkmoorPlots {

    static final int FIRST_YEAR = 1998;
    static final int LAST_YEAR = 2024;
    static final int ONSET_AGE = 10;
    static final double DECLINE_PER_YEAR = 0.04;

    /** Plots give less than simulated: pests, paths, patchy emergence. */
    private static final double LEVEL = 0.92;

    private static final double PLOT_SD = 0.07;
    private static final double YEAR_SD = 0.08;
    private static final double REST_SD = 0.07;
    private static final Map<String, Integer> PLOTS = Map.of("deep loam", 4, "eroded slope", 2);

    private final SplittableRandom random;

    LarkmoorPlots(long seed) {
        random = new SplittableRandom(seed);
    }

    /** Writes the committed file. First the study file, then the file to write. */
    public static void main(String[] arguments) throws IOException {
        String table = new LarkmoorPlots(LarkmoorPlotsTest.SEED).table(Path.of(arguments[0]));
        Files.writeString(Path.of(arguments[1]), table, StandardCharsets.UTF_8);
    }

    String table(Path studyFile) {
        Study study = StudyReader.read(studyFile);
        DailyDrivers drivers =
                DailyDrivers.of(study.site(), StudyWeather.read(study).series());
        Map<Integer, Double> missed = new HashMap<>();
        for (int year = FIRST_YEAR; year <= LAST_YEAR; year++) {
            missed.put(year, YEAR_SD * gaussian());
        }
        StringBuilder text = new StringBuilder(20_000)
                .append("# Larkmoor field station: invented place, invented plots, invented yields\n")
                .append("# invented: true\n")
                .append("# A decline of 4 % a year past age 10 is built in, with scatter between plots and years.\n")
                .append("zone,plot,planting_year,growth_year,variable,value,unit\n");
        for (Zone zone : study.zones()) {
            plots(study, zone, drivers, missed).forEach(text::append);
        }
        return text.toString();
    }

    private List<String> plots(Study study, Zone zone, DailyDrivers drivers, Map<Integer, Double> missed) {
        List<SeasonRecord> seasons = PairedRuns.simulateActual(
                drivers, unageing(study.field(zone)), study.weather().missingRainLimitDays());
        List<String> rows = new ArrayList<>();
        for (int plot = 1; plot <= PLOTS.getOrDefault(zone.name(), 1); plot++) {
            double plotEffect = PLOT_SD * gaussian();
            for (SeasonRecord season : seasons) {
                int year = season.growthYear();
                if (year >= FIRST_YEAR && year <= LAST_YEAR && season.isComplete()) {
                    double scatter = plotEffect + missed.getOrDefault(year, 0.0) + REST_SD * gaussian();
                    rows.add(row(zone, plot, season, StrictMath.exp(scatter)));
                }
            }
        }
        return rows;
    }

    private static String row(Zone zone, int plot, SeasonRecord season, double scatter) {
        double aged = StrictMath.pow(1.0 - DECLINE_PER_YEAR, Math.max(0, season.standAge() - ONSET_AGE));
        double yield = LEVEL * aged * scatter * season.value(SeasonVariable.HARVESTED);
        String letter = zone.name().startsWith("deep") ? "L" : "S";
        return String.format(
                Locale.ROOT,
                "%s,%s%d,%d,%d,yield,%.2f,Mg/ha\n",
                zone.name(),
                letter,
                plot,
                season.growthYear() - season.standAge() + 1,
                season.growthYear(),
                yield);
    }

    private static FieldConditions unageing(FieldConditions field) {
        CropParameters crop = field.crop().with(CropParameter.DECLINE_PER_YEAR, 0.0);
        return field.withCrop(crop);
    }

    /** Sum of twelve uniforms: near enough to a normal deviate, and the same on every machine. */
    private double gaussian() {
        double sum = -6.0;
        for (int i = 0; i < 12; i++) {
            sum += random.nextDouble();
        }
        return sum;
    }
}
