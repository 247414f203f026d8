package org.thirstline.charts.output;

import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.lang.ref.SoftReference;
import org.thirstline.charts.ChartDocument;
import org.thirstline.charts.theme.ChartSize;

/** Charts as pixels. */
public final class PngOutput {

    private static final double SCREEN_DPI = 96.0;

    /** Six megabytes for a slide, which would be taken and cleared anew for each of a run's charts. */
    private static final ThreadLocal<SoftReference<BufferedImage>> LAST =
            ThreadLocal.withInitial(() -> new SoftReference<>(null));

    private PngOutput() {}

    /**
     * Draws a chart.
     *
     * @param chart the chart
     * @param scale pixels for each pixel of its size
     */
    public static BufferedImage image(ChartDocument chart, int scale) {
        ChartSize size = chart.style().size();
        return painted(chart, scale, blank(size.widthPx() * scale, size.heightPx() * scale));
    }

    private static BufferedImage blank(int width, int height) {
        return new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
    }

    private static BufferedImage painted(ChartDocument chart, int scale, BufferedImage image) {
        Graphics2D graphics = image.createGraphics();
        graphics.scale(scale, scale);
        chart.paint(graphics);
        graphics.dispose();
        return image;
    }

    /** The image of this thread's last chart if it has the right size: a chart paints every pixel anew. */
    private static BufferedImage used(int width, int height) {
        BufferedImage last = LAST.get().get();
        if (last != null && last.getWidth() == width && last.getHeight() == height) {
            return last;
        }
        BufferedImage image = blank(width, height);
        LAST.set(new SoftReference<>(image));
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
            ChartSize size = chart.style().size();
            BufferedImage image = used(size.widthPx() * scale, size.heightPx() * scale);
            return PngEncoder.encode(painted(chart, scale, image), SCREEN_DPI * scale);
        } catch (IOException error) {
            throw new UncheckedIOException(error);
        }
    }
}
