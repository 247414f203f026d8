package org.thirstline.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.apache.poi.xslf.usermodel.XMLSlideShow;
import org.apache.poi.xslf.usermodel.XSLFSlide;
import org.apache.poi.xslf.usermodel.XSLFTextShape;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The invented Larkmoor plots calibrated with few draws, and everything that then has bands. */
class BandsCommandTest {

    private static final Path EXAMPLE = Path.of("..", "docs", "examples", "larkmoor");
    private static final int YEARS = 9;
    private static final Pattern GAP = Pattern.compile(
            "yielded (\\S+) Mg/ha less than .* Over the calibration's draws the distance is (\\S+) to (\\S+) Mg/ha");

    @TempDir
    private Path folder;

    private final StringWriter out = new StringWriter();
    private final StringWriter err = new StringWriter();

    private int thirstline(String... arguments) {
        out.getBuffer().setLength(0);
        return Thirstline.execute(new PrintWriter(out, true), new PrintWriter(err, true), arguments);
    }

    private String study() {
        return folder.resolve("study.yaml").toString();
    }

    private void example() throws IOException {
        for (String file : List.of("study.yaml", "weather.csv", "plots.csv")) {
            Files.copy(EXAMPLE.resolve(file), folder.resolve(file));
        }
        shorten();
        Files.writeString(
                folder.resolve("study.yaml"),
                "\ncalibration: {parameters: [{name: radiation_use_efficiency_g_mj}, {name: soil_available_water_factor}]}\n",
                StandardOpenOption.APPEND);
    }

    /** Later years cost time and are not asked for. */
    private void shorten() throws IOException {
        Path weather = folder.resolve("weather.csv");
        String text = Files.readString(weather);
        Files.writeString(weather, text.substring(0, text.indexOf("2007-05-01")));
    }

    private void growing(String crop) throws IOException {
        String text = Files.readString(EXAMPLE.resolve("study.yaml"));
        Files.writeString(folder.resolve("study.yaml"), text.replace("crop: giant miscanthus", "crop: " + crop));
    }

    private List<List<String>> bands(String results) throws IOException {
        return Files.readAllLines(folder.resolve(results).resolve("bands.csv")).stream()
                .map(line -> Arrays.asList(line.split(",", -1)))
                .toList();
    }

    private String report(String results) throws IOException {
        return Files.readString(folder.resolve(results).resolve("report.html"));
    }

    private int run(String command, String to, String... more) {
        List<String> arguments = new ArrayList<>(List.of(
                command,
                study(),
                "--years",
                "1998-2006",
                "--out",
                folder.resolve(to).toString()));
        arguments.addAll(List.of(more));
        return thirstline(arguments.toArray(String[]::new));
    }

    @Test
    void theExampleIsCalibratedAndRunsWithBands() throws IOException {
        example();
        assertThat(run("calibrate", "fitted", "--posterior", "32", "--starts", "1", "--no-skill", "--unclear", "keep"))
                .as(err.toString())
                .isZero();
        growing("fitted/crop.yaml");
        assertThat(run("run", "one", "--threads", "1")).as(err.toString()).isZero();
        assertThat(out.toString())
                .contains("deep loam: over the calibration's draws the mean harvest of the 9 full-grown years is ")
                .contains("32 draws from the posterior of the calibration of ", "54 invented values")
                .contains("weather that these years have not seen");
        assertThat(report("one")).contains("5 to 95 % of calibration draws", "Bands: 32 draws from the posterior");
        assertThat(Files.readString(folder.resolve("one/datapackage.json")))
                .contains("bands.csv", "plot_yield_95_pct_mg_ha");
        assertBands(bands("one"));
        assertThat(run("run", "two", "--threads", "2", "--quiet")).isZero();
        for (String file :
                List.of("bands.csv", "report.html", "charts/yield-by-year-deep-loam.svg", "charts/exceedance.svg")) {
            assertThat(folder.resolve("two").resolve(file))
                    .hasSameBinaryContentAs(folder.resolve("one").resolve(file));
        }
        assertYearsAreCompared();
        assertSlidesSpeakOfBands();
        assertWithoutAPosterior();
    }

    /** The distance without draws lies within that over the draws. */
    private void assertYearsAreCompared() throws IOException {
        assertThat(thirstline("compare", study(), "--years", "2001,2004"))
                .as(err.toString())
                .isZero();
        Matcher sentence = GAP.matcher(out.toString());
        int zones = 0;
        for (; sentence.find(); zones++) {
            double gap = Double.parseDouble(sentence.group(1));
            assertThat(gap).isBetween(Double.parseDouble(sentence.group(2)), Double.parseDouble(sentence.group(3)));
        }
        assertThat(zones).isEqualTo(2);
        assertThat(out.toString()).contains("32 draws from the posterior of the calibration of ");
        assertThat(bands("study-compare").get(0)).contains("plot_yield_5_pct_mg_ha");
        assertThat(Files.readString(folder.resolve("study-compare/datapackage.json")))
                .contains("bands.csv");
        assertThat(report("study-compare")).contains("the distance is ", "Bands: 32 draws from the posterior");
    }

    private void assertSlidesSpeakOfBands() throws IOException {
        // with plots named, stand age would be tested for half a minute
        String study = Files.readString(folder.resolve("study.yaml"));
        Files.writeString(folder.resolve("study.yaml"), study.replace("plots: plots.csv", ""));
        assertThat(run("slides", "talk", "--zone", "deep loam"))
                .as(err.toString())
                .isZero();
        try (InputStream file = Files.newInputStream(folder.resolve("talk/slides.pptx"));
                XMLSlideShow show = new XMLSlideShow(file)) {
            List<String> notes = show.getSlides().stream()
                    .map(slide -> slide.getNotes().getShapes().stream()
                            .filter(XSLFTextShape.class::isInstance)
                            .map(shape -> ((XSLFTextShape) shape).getText())
                            .collect(Collectors.joining("\n")))
                    .toList();
            assertThat(notes.get(2))
                    .contains("over the calibration's draws the mean harvest of the 9 full-grown years is ");
            assertThat(notes.get(3)).contains("\nOver the calibration's draws the distance is ");
            assertThat(notes.get(7)).contains("Bands: 32 draws from the posterior");
            assertThat(texts(show.getSlides().get(7))).contains("whiskers (5 to 95 % of 32 draws)");
        }
    }

    private static String texts(XSLFSlide slide) {
        return slide.getShapes().stream()
                .filter(XSLFTextShape.class::isInstance)
                .map(shape -> ((XSLFTextShape) shape).getText())
                .collect(Collectors.joining("\n"));
    }

    private static void assertBands(List<List<String>> rows) {
        assertThat(rows).hasSize(1 + 2 * YEARS);
        assertThat(rows.get(0)).startsWith("zone", "growth_year", "stand_age", "draws", "harvested_mg_ha");
        int first = rows.get(0).indexOf("harvested_5_pct_mg_ha");
        int plot = rows.get(0).indexOf("plot_yield_5_pct_mg_ha");
        for (List<String> row : rows.subList(1, rows.size())) {
            assertThat(row.get(3)).isEqualTo("32");
            double[] numbers =
                    row.stream().skip(first).mapToDouble(Double::parseDouble).toArray();
            for (int i = 0; i < numbers.length; i++) {
                if (i % 5 > 0) {
                    assertThat(numbers[i]).isGreaterThanOrEqualTo(numbers[i - 1]);
                }
            }
            double plotWidth = numbers[plot - first + 4] - numbers[plot - first];
            assertThat(plotWidth).isGreaterThan(numbers[4] - numbers[0]);
        }
    }

    private void assertWithoutAPosterior() throws IOException {
        String crop = Files.readString(folder.resolve("fitted/crop.yaml"));
        Files.writeString(folder.resolve("errors.yaml"), crop.substring(0, crop.indexOf("  draw_names:")));
        growing("errors.yaml");
        assertThat(run("drought", "drought", "--target", "12"))
                .as(err.toString())
                .isZero();
        assertThat(out.toString())
                .contains("200 draws from the normal distribution of fitted values, standard errors")
                .contains("over 200 draws of the calibration the straight line")
                .contains("over the draws of the calibration 12.0 Mg/ha was reached in ");
        assertThat(Files.readAllLines(folder.resolve("drought/risk.csv")).get(0))
                .endsWith(
                        ",yield_5_pct_mg_ha,yield_50_pct_mg_ha,yield_95_pct_mg_ha,share_5_pct,share_50_pct,share_95_pct");
        assertThat(Files.readString(folder.resolve("drought/drought.json"))).contains("line_over_calibration_draws");
        int line = (int) crop.substring(0, crop.indexOf("  draws:")).lines().count() + 2;
        String draw = crop.lines().skip(line - 1).findFirst().orElseThrow();
        Files.writeString(folder.resolve("damaged.yaml"), crop.replace(draw, draw.replaceFirst("\"[0-9.]+", "\"NaN")));
        growing("damaged.yaml");
        assertThat(run("run", "damaged")).isEqualTo(2);
        assertThat(err.toString().strip().lines())
                .singleElement()
                .asString()
                .contains("damaged.yaml:" + line + ": calibration.draws[1]", "'NaN'");
    }

    @Test
    void aCropThatWasNotCalibratedHasNoBands() throws IOException {
        example();
        assertThat(run("run", "plain")).as(err.toString()).isZero();
        assertThat(out.toString()).doesNotContainIgnoringCase("draws").doesNotContainIgnoringCase("bands");
        assertThat(report("plain")).doesNotContain("draws of the calibration", "calibration draws", "Bands:");
        assertThat(folder.resolve("plain/bands.csv")).doesNotExist();
        assertThat(Files.readString(folder.resolve("plain/datapackage.json"))).doesNotContain("bands.csv");
    }
}
