package org.thirstline.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.SplittableRandom;
import org.apache.poi.xslf.usermodel.XMLSlideShow;
import org.apache.poi.xslf.usermodel.XSLFPictureShape;
import org.apache.poi.xslf.usermodel.XSLFSlide;
import org.apache.poi.xslf.usermodel.XSLFTextShape;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Slides as somebody with a talk tomorrow asks for them. */
class SlidesCommandTest {

    private static final String STUDY = """
            title: two soils
            invented: true
            site: {name: nowhere, latitude_deg: 45, elevation_m: 100}
            weather: {file: weather.csv}
            crop: giant miscanthus
            stand: {planted: 2001-04-20, spacing: 75 cm x 75 cm}
            zones:
              - {name: deep, soil: {available_water: 150 mm/m, depth: 1.5 m}}
              - {name: thin, soil: {available_water: 120 mm/m, depth: 0.5 m}}
            harvest: {date: 03-01}
            """;

    @TempDir
    private Path folder;

    private final StringWriter out = new StringWriter();
    private final StringWriter err = new StringWriter();

    @BeforeEach
    void write() throws IOException {
        Files.writeString(folder.resolve("study.yaml"), STUDY);
        SplittableRandom random = new SplittableRandom(5);
        StringBuilder text = new StringBuilder("date,tmin_c,tmax_c,rain_mm\n");
        LocalDate end = LocalDate.of(2012, 1, 1);
        double wetness = 1.0;
        for (LocalDate date = LocalDate.of(2001, 1, 1); date.isBefore(end); date = date.plusDays(1)) {
            wetness = date.getDayOfYear() == 1 ? 0.4 + 1.2 * random.nextDouble() : wetness;
            double mean = 10.0 - 13.0 * Math.cos(2.0 * Math.PI * date.getDayOfYear() / 365.0);
            double rain = random.nextDouble() < 0.3 ? 14.0 * wetness * random.nextDouble() : 0.0;
            text.append(String.format(Locale.ROOT, "%s,%.1f,%.1f,%.1f%n", date, mean - 5.0, mean + 5.0, rain));
        }
        Files.writeString(folder.resolve("weather.csv"), text.toString());
    }

    private int slides(String... more) {
        List<String> arguments =
                new ArrayList<>(List.of("slides", folder.resolve("study.yaml").toString()));
        arguments.addAll(List.of(more));
        return Thirstline.execute(
                new PrintWriter(out, true), new PrintWriter(err, true), arguments.toArray(String[]::new));
    }

    private XMLSlideShow deck(String name) throws IOException {
        try (InputStream file = Files.newInputStream(folder.resolve(name).resolve("slides.pptx"))) {
            return new XMLSlideShow(file);
        }
    }

    private static long pictures(XMLSlideShow show) {
        return show.getSlides().stream()
                .flatMap(slide -> slide.getShapes().stream())
                .filter(XSLFPictureShape.class::isInstance)
                .count();
    }

    private static String notes(XSLFSlide slide) {
        StringBuilder text = new StringBuilder();
        slide.getNotes().getShapes().stream()
                .filter(XSLFTextShape.class::isInstance)
                .forEach(shape -> text.append(((XSLFTextShape) shape).getText()).append('\n'));
        return text.toString();
    }

    @Test
    void talkHasEveryPartAndSpeaksItsNumbers() throws IOException {
        assertThat(slides()).as(err.toString()).isZero();
        assertThat(out.toString()).contains("[invented data]", "slides.pptx (9)");
        assertThat(folder.resolve("study-slides/run.json")).isNotEmptyFile();
        try (XMLSlideShow show = deck("study-slides")) {
            List<XSLFSlide> all = show.getSlides();
            assertThat(all).hasSize(9);
            assertThat(pictures(show)).isEqualTo(5);
            assertThat(all.get(0).getPlaceholder(0).getText()).isEqualTo("two soils");
            assertThat(all.get(1).getTitle()).isEqualTo("What did missing rain cost this stand?");
            assertThat(all.get(7).getTitle()).isEqualTo("How it was worked out");
            assertThat(all.get(8).getTitle()).isEqualTo("What to mind");
            assertThat(notes(all.get(2)))
                    .contains("rain_deficit_mm; drought_penalty_mg_ha")
                    .containsPattern("\n2009; (dry|middle|wet); -?[0-9.]+; -?[0-9.]+");
            assertThat(notes(all.get(3))).contains("days short of water, harvested");
            assertThat(notes(all.get(5))).contains("Numbers behind the picture (SI units)");
            assertThat(notes(all.get(8))).contains("20 % moisture", "invasive", "licensed practice");
        }
    }

    @Test
    void zonesAndUnitsAreTheReaders() throws IOException {
        String to = folder.resolve("both").toString();
        assertThat(slides(
                        "--zone",
                        "thin",
                        "--zone",
                        "Deep",
                        "--units",
                        "us",
                        "--quiet",
                        "--pdf",
                        "--png2x",
                        "--chart-size",
                        "column,half-slide",
                        "--out",
                        to))
                .as(err.toString())
                .isZero();
        assertThat(out.toString()).isEmpty();
        assertThat(folder.resolve("both/charts/drought-response-thin-column.pdf"))
                .isNotEmptyFile();
        assertThat(folder.resolve("both/charts/ledger-deep-half-slide@2x.png")).isNotEmptyFile();
        assertThat(folder.resolve("both/charts/ledger-deep.png")).doesNotExist();
        try (XMLSlideShow show = deck("both")) {
            assertThat(show.getSlides()).hasSize(13);
            assertThat(show.getSlides().get(6).getTitle()
                            + show.getSlides().get(8).getTitle())
                    .doesNotContain("Mg/ha");
        }
    }

    @Test
    void plotsTakeTheSlideOnStandAge() throws IOException {
        Files.writeString(folder.resolve("study.yaml"), STUDY + "plots: plots.csv\n");
        StringBuilder plots = new StringBuilder("zone,plot,growth_year,variable,value,unit\n");
        for (int year = 2004; year <= 2005; year++) {
            plots.append("deep,1,")
                    .append(year)
                    .append(",yield,")
                    .append(10 + year % 3)
                    .append(",Mg/ha\n");
        }
        Files.writeString(folder.resolve("plots.csv"), plots.toString());
        assertThat(slides("--quiet")).as(err.toString()).isZero();
        try (XMLSlideShow show = deck("study-slides")) {
            assertThat(notes(show.getSlides().get(4))).contains("Can't tell yet");
        }
    }

    @Test
    void mistakesGetOneClearLine() {
        assertThat(slides("--zone", "wet")).isEqualTo(Thirstline.WRONG_INPUT);
        assertThat(err.toString()).contains("'wet' is not in the study; its zones are: deep, thin");
        assertThat(slides("--template", folder.resolve("weather.csv").toString()))
                .isEqualTo(Thirstline.WRONG_INPUT);
        assertThat(err.toString())
                .contains("weather.csv is not a PowerPoint file")
                .doesNotContain("Exception");
        assertThat(slides("--chart-size", "poster")).isEqualTo(Thirstline.WRONG_INPUT);
        assertThat(err.toString()).contains("'poster' is not a size; allowed are slide, half-slide, column, page");
        assertThat(folder.resolve("study-slides")).doesNotExist();
    }

    @Test
    void shortRecordsStillGiveATalk() throws IOException {
        assertThat(slides("--years", "2001-2002", "--quiet")).as(err.toString()).isZero();
        try (XMLSlideShow show = deck("study-slides")) {
            assertThat(show.getSlides().size()).isGreaterThanOrEqualTo(5);
        }
    }
}
