package org.thirstline.charts;

import java.awt.Color;
import java.awt.Font;
import java.awt.geom.Rectangle2D;
import java.util.List;

/** The scale of soil-water colours, at the right above its panel. */
final class SoilKey {

    private SoilKey() {}

    static void paint(Canvas canvas, Rectangle2D panel) {
        if (canvas.type().labelPx() < 13) {
            return;
        }
        Font font = canvas.small();
        double size = font.getSize2D();
        List<Color> colors = canvas.palette().soil();
        double baseline = panel.getY() - 0.75 * canvas.type().labelPx();
        String full = "field capacity";
        String empty = "no water for plants";
        double x = panel.getMaxX() - Canvas.width(full, font);
        canvas.text(full, x, baseline, font, canvas.palette().muted(), Align.LEFT);
        double step = 1.1 * size;
        x -= 0.5 * size + step * colors.size();
        for (int i = 0; i < colors.size(); i++) {
            canvas.fill(
                    new Rectangle2D.Double(x + i * step, baseline - 0.72 * size, step + 0.3, 0.72 * size),
                    colors.get(i));
        }
        canvas.text(empty, x - 0.5 * size, baseline, font, canvas.palette().muted(), Align.RIGHT);
    }
}
