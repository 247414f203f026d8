package org.thirstline.charts;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.Color;
import java.awt.image.BufferedImage;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.plot.ValueMarker;
import org.jfree.chart.title.TextTitle;
import org.junit.jupiter.api.Test;
import org.thirstline.charts.output.PngOutput;
import org.thirstline.charts.output.SvgOutput;
import org.thirstline.charts.theme.ChartSize;
import org.thirstline.charts.theme.ChartTheme;
import org.thirstline.model.result.StandResult;

/** The example of the page on charts, compiled and run; what stands between the marks is what the page shows. */
class ChartsForOthersTest {

    private static final Path PAGE = Path.of("..", "docs", "charts-api.md");

    private final StandResult result = TestStand.of(1994, 30).result;

    private static ChartDocument yields(StandResult result) {
        // [example: one call
        ChartDocument chart = YieldByYearChart.of(result, ChartStyle.of(ChartTheme.LIGHT, ChartSize.SLIDE));
        // example]
        return chart;
    }

    private static ChartDocument changed(ChartDocument chart) {
        // [example: change the plots
        ChartDocument changed = chart.withPlots(plot -> {
            plot.addRangeMarker(new ValueMarker(12.0, Color.RED, new java.awt.BasicStroke(3f)));
            plot.setRangeGridlinesVisible(false);
        });
        // example]
        return changed;
    }

    private static BufferedImage asJFreeChart(ChartDocument chart) {
        // [example: a JFreeChart
        JFreeChart jfree = chart.toJFreeChart();
        jfree.addSubtitle(new TextTitle("Field day, east field"));
        BufferedImage image = jfree.createBufferedImage(1280, 760);
        // example]
        return image;
    }

    @Test
    void oneCallMakesAChartFromAResult() {
        ChartDocument chart = yields(result);

        assertThat(chart.words().title()).startsWith("Drought took");
        assertThat(SvgOutput.standalone(chart)).contains("2006");
    }

    @Test
    void plotsCanBeChanged() {
        ChartDocument chart = yields(result);
        int red = Color.RED.getRGB();

        assertThat(count(PngOutput.image(chart, 1), red)).isZero();
        // A line three pixels high across 1400 pixels, of which bars hide about three quarters.
        assertThat(count(PngOutput.image(changed(chart), 1), red)).isGreaterThan(500);
    }

    @Test
    void theWholeIsAJFreeChart() {
        BufferedImage image = asJFreeChart(yields(result));

        assertThat(image.getWidth()).isEqualTo(1280);
        assertThat(count(image, ChartTheme.LIGHT.palette().middle().getRGB())).isGreaterThan(1000);
    }

    private static long count(BufferedImage image, int rgb) {
        int width = image.getWidth();
        return Arrays.stream(image.getRGB(0, 0, width, image.getHeight(), null, 0, width))
                .filter(pixel -> pixel == rgb)
                .count();
    }

    @Test
    void pageShowsThisCode() throws Exception {
        String page = Files.readString(PAGE).replaceAll("\\s+", " ");
        String source = Files.readString(Path.of("src/test/java/org/thirstline/charts/ChartsForOthersTest.java"));
        String[] parts = source.split("// \\[example: ", -1);

        assertThat(parts.length).isGreaterThan(3);
        for (int i = 1; i < 4; i++) {
            String code = parts[i].substring(parts[i].indexOf('\n'), parts[i].indexOf("// example]"));
            assertThat(page).contains(code.strip().replaceAll("\\s+", " "));
        }
    }
}
