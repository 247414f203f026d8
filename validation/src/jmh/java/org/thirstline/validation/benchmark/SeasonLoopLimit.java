package org.thirstline.validation.benchmark;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.MonthDay;
import java.util.List;
import org.thirstline.calibration.study.StudyWeather;
import org.thirstline.io.study.Study;
import org.thirstline.io.study.StudyReader;
import org.thirstline.model.crop.HarvestRule;
import org.thirstline.model.engine.FieldConditions;
import org.thirstline.model.engine.SeasonRun;
import org.thirstline.model.engine.SeasonRuns;
import org.thirstline.model.result.SeasonVariable;
import org.thirstline.model.weather.DailyDrivers;

/**
 * The engine beside the same season loop in plain C, compiled with gcc -O3 and run in turn with it on the same inputs: prints both times and their
 * ratio, after the season totals of the two have been compared. Fails if they differ.
 */
public final class SeasonLoopLimit {

    private static final double AGREEMENT = 1.0e-9;
    private static final int ROUNDS = 12;
    private static final int REPEATS = 60;

    /** In the order of the C enum; null for what the engine keeps as a date. */
    private static final List<SeasonVariable> TOTALS = List.of(
            SeasonVariable.HARVESTED,
            SeasonVariable.PEAK_BIOMASS,
            SeasonVariable.SEASON_RAIN,
            SeasonVariable.SEASON_ET0,
            SeasonVariable.TRANSPIRATION,
            SeasonVariable.SOIL_EVAPORATION,
            SeasonVariable.RUNOFF,
            SeasonVariable.DRAINAGE,
            SeasonVariable.INTERCEPTION,
            SeasonVariable.INTERCEPTED_PAR,
            SeasonVariable.MEAN_WATER_FACTOR,
            SeasonVariable.STRESSED_DAYS,
            SeasonVariable.MAX_LEAF_AREA_INDEX,
            SeasonVariable.HARVEST_MOISTURE);

    private SeasonLoopLimit() {}

    /** Runs the comparison on every zone of the example. */
    public static void main(String[] args) throws IOException, InterruptedException {
        Path root = Files.exists(Path.of("docs")) ? Path.of("") : Path.of("..");
        Study study = StudyReader.read(root.resolve("docs/examples/larkmoor/study.yaml"));
        DailyDrivers drivers =
                DailyDrivers.of(study.site(), StudyWeather.read(study).series());
        Path work = Files.createTempDirectory("season-loop");
        Path program = work.resolve("season_loop");
        run(List.of(
                "gcc",
                "-O3",
                "-o",
                program.toString(),
                root.resolve("validation/src/jmh/c/season_loop.c").toString(),
                "-lm"));
        for (int zone = 0; zone < study.zones().size(); zone++) {
            FieldConditions field = cutOnDate(study.field(study.zones().get(zone)));
            compare(study.zones().get(zone).name(), drivers, field, program, work);
        }
    }

    private static FieldConditions cutOnDate(FieldConditions f) {
        return f.withHarvest(new HarvestRule.OnDate(MonthDay.of(3, 1)));
    }

    private static void compare(String zone, DailyDrivers drivers, FieldConditions field, Path program, Path work)
            throws IOException, InterruptedException {
        SeasonLoopInputs inputs = new SeasonLoopInputs(drivers, field);
        Path input = work.resolve("input");
        Path output = work.resolve("output");
        inputs.write(input);
        List<String> command =
                List.of(program.toString(), input.toString(), output.toString(), Integer.toString(REPEATS));
        SeasonRun engine = new SeasonRuns(drivers, field, Integer.MAX_VALUE).prepare(field);
        double shortestC = Double.POSITIVE_INFINITY;
        double shortestJava = Double.POSITIVE_INFINITY;
        for (int round = 0; round < ROUNDS; round++) {
            shortestC = Math.min(shortestC, Double.parseDouble(run(command)));
            shortestJava = Math.min(shortestJava, time(engine));
        }
        double difference = largestDifference(engine, output, inputs.years());
        double days = drivers.days();
        System.out.printf(
                "%s: %d days, %d layers; C %.1f ns a day, engine %.1f ns a day, ratio %.3f; totals agree to %.1e%n",
                zone,
                drivers.days(),
                field.soil().layers().size(),
                shortestC / days,
                shortestJava / days,
                shortestJava / shortestC,
                difference);
        if (!(difference <= AGREEMENT)) {
            throw new IllegalStateException("season totals of engine and C differ by " + difference);
        }
    }

    private static double time(SeasonRun engine) {
        long shortest = Long.MAX_VALUE;
        for (int repeat = 0; repeat < REPEATS; repeat++) {
            long start = System.nanoTime();
            engine.run();
            shortest = Math.min(shortest, System.nanoTime() - start);
        }
        return shortest;
    }

    private static double largestDifference(SeasonRun engine, Path output, int years) throws IOException {
        ByteBuffer totals = ByteBuffer.wrap(Files.readAllBytes(output)).order(ByteOrder.nativeOrder());
        int columns = totals.capacity() / 8 / years;
        double largest = 0.0;
        for (int year = 0; year < years; year++) {
            for (int i = 0; i < TOTALS.size(); i++) {
                double ours = engine.value(engine.firstYear() + year, TOTALS.get(i));
                double theirs = totals.getDouble(8 * (year * columns + i));
                if (Double.isNaN(ours) && (Double.isNaN(theirs) || TOTALS.get(i).isYield())) {
                    continue;
                }
                largest = Math.max(largest, Math.abs(ours - theirs) / Math.max(1.0, Math.abs(ours)));
            }
        }
        return largest;
    }

    private static String run(List<String> command) throws IOException, InterruptedException {
        Process process = new ProcessBuilder(command)
                .redirectError(ProcessBuilder.Redirect.INHERIT)
                .start();
        String printed = new String(process.getInputStream().readAllBytes(), java.nio.charset.StandardCharsets.UTF_8);
        if (process.waitFor() != 0) {
            throw new IllegalStateException(command.get(0) + " failed with " + process.exitValue());
        }
        return printed.strip();
    }
}
