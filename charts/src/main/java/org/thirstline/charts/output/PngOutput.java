package org.thirstline.charts.output;

import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.io.UncheckedIOException;
import org.thirstline.charts.ChartDocument;
import org.thirstline.charts.theme.ChartSize;

/** Charts as pixels. */
public final class PngOutput {

    private static final double SCREEN_DPI = 96.0;

    private PngOutput() {}

    /**
     * Draws a chart.
     *
     * @param chart the chart
     * @param scale pixels for each pixel of its size
     */
    public static BufferedImage image(ChartDocument chart, int scale) {
        ChartSize size = chart.style().size();
        BufferedImage image =
                new BufferedImage(size.widthPx() * scale, size.heightPx() * scale, BufferedImage.TYPE_INT_RGB);
        Graphics2D graphics = image.createGraphics();
        graphics.scale(scale, scale);
        chart.paint(graphics);
        graphics.dispose();
        return image;
    }

    /**
     * Draws a chart and encodes it, its resolution set so that it prints at the same size at every scale.
     *
     * @param chart the chart
     * @param scale pixels for each pixel of its size
     */
    public static byte[] bytes(ChartDocument chart, int scale) {
        try {
            return PngEncoder.encode(image(chart, scale), SCREEN_DPI * scale);
        } catch (IOException error) {
            throw new UncheckedIOException(error);
        }
    }
}
