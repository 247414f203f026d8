package org.thirstline.charts.output;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.nio.ByteBuffer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import javax.imageio.ImageIO;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.thirstline.charts.ChartDocument;
import org.thirstline.charts.Samples;

class ChartWriterTest {

    private static final List<ChartDocument> CHARTS = Samples.forReport();
    private static final ChartDocument CHART = CHARTS.get(0);

    @ParameterizedTest
    @EnumSource(ChartFormat.class)
    void sameChartGivesTheSameBytes(ChartFormat format) {
        ChartDocument again = Samples.forReport().get(0);

        assertThat(ChartWriter.bytes(CHART, format)).isNotEmpty().isEqualTo(ChartWriter.bytes(again, format));
    }

    @Test
    void filesAreNamedAndNothingElseIsLeft(@TempDir Path folder) throws Exception {
        Path base = folder.resolve("charts").resolve("yield");
        List<Path> files = ChartWriter.write(CHART, base, EnumSet.allOf(ChartFormat.class));

        assertThat(files)
                .extracting(file -> file.getFileName().toString())
                .containsExactly("yield.svg", "yield.png", "yield@2x.png", "yield.pdf", "yield.csv");
        try (var listed = Files.list(base.getParent())) {
            assertThat(listed).containsExactlyInAnyOrderElementsOf(files);
        }
    }

    @Test
    void pngHoldsThePictureAndItsResolution() throws Exception {
        byte[] bytes = ChartWriter.bytes(CHART, ChartFormat.PNG_2X);
        BufferedImage read = ImageIO.read(new ByteArrayInputStream(bytes));
        BufferedImage drawn = PngOutput.image(CHART, 2);
        int width = drawn.getWidth();
        int height = drawn.getHeight();

        assertThat(read.getWidth()).isEqualTo(2 * CHART.style().size().widthPx());
        assertThat(rgb(read, width, height)).isEqualTo(rgb(drawn, width, height));
        // 192 dots per inch of 0.0254 m.
        assertThat(pixelsPerMetre(bytes)).isEqualTo(7559);
        assertThat(pixelsPerMetre(ChartWriter.bytes(CHART, ChartFormat.PNG))).isEqualTo(3780);
    }

    @Test
    void aChartShowsNothingOfTheOneDrawnBefore() throws Exception {
        for (ChartDocument chart : CHARTS) {
            ChartWriter.bytes(CHART, ChartFormat.PNG);
            BufferedImage read = ImageIO.read(new ByteArrayInputStream(ChartWriter.bytes(chart, ChartFormat.PNG)));
            BufferedImage drawn = PngOutput.image(chart, 1);
            int width = drawn.getWidth();
            int height = drawn.getHeight();
            assertThat(rgb(read, width, height)).isEqualTo(rgb(drawn, width, height));
        }
    }

    private static int[] rgb(BufferedImage image, int width, int height) {
        return Arrays.stream(image.getRGB(0, 0, width, height, null, 0, width))
                .map(pixel -> pixel & 0xFFFFFF)
                .toArray();
    }

    private static int pixelsPerMetre(byte[] png) {
        String latin = new String(png, java.nio.charset.StandardCharsets.ISO_8859_1);
        return ByteBuffer.wrap(png).getInt(latin.indexOf("pHYs") + 4);
    }

    @Test
    void svgKeepsTextAsTextAndNeedsNothingFromOutside() {
        for (ChartDocument chart : CHARTS) {
            String svg = SvgOutput.standalone(chart);

            assertThat(svg).contains("<title id=", "<desc id=", "role=\"img\"", "font-weight=\"600\"");
            assertThat(svg).containsPattern("<text [^>]*>\\s*[A-Z0-9]");
            assertThat(svg.replaceAll("xmlns(:xlink)?=\"[^\"]*\"", "")).doesNotContain("http:", "https:");
        }
    }

    @Test
    void pdfCarriesTheTitleAsText() throws Exception {
        try (PDDocument document = Loader.loadPDF(ChartWriter.bytes(CHART, ChartFormat.PDF))) {
            assertThat(document.getNumberOfPages()).isEqualTo(1);
            assertThat(document.getPage(0).getMediaBox().getWidth())
                    .isEqualTo(CHART.style().size().widthPx() * 0.75f);
            assertThat(new PDFTextStripper().getText(document))
                    .contains(CHART.words().title());
        }
    }
}
