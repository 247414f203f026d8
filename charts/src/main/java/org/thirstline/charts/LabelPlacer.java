package org.thirstline.charts;

import java.awt.Color;
import java.awt.Font;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;

/** Puts labels beside points where they touch nothing else, or leaves them out. Confined to one drawing. */
final class LabelPlacer {

    /** Positions round a point, best first: share of the label's width and height to its left and above. */
    private static final double[][] POSITIONS = {
        {0.0, 0.5}, {1.0, 0.5}, {0.5, 1.0}, {0.5, 0.0}, {0.0, 1.0}, {1.0, 1.0}, {0.0, 0.0}, {1.0, 0.0}
    };

    private final Canvas canvas;
    private final Rectangle2D bounds;
    private final List<Rectangle2D> taken = new ArrayList<>();

    LabelPlacer(Canvas canvas, Rectangle2D bounds) {
        this.canvas = canvas;
        this.bounds = bounds;
    }

    /** Keeps labels off a rectangle. */
    void block(Rectangle2D area) {
        taken.add(area);
    }

    /** Keeps labels off a point with a mark. */
    void block(double x, double y, double radius) {
        block(new Rectangle2D.Double(x - radius, y - radius, 2 * radius, 2 * radius));
    }

    /** Keeps labels off a straight line. */
    void blockLine(double x1, double y1, double x2, double y2) {
        int steps = (int) Math.max(1, Math.hypot(x2 - x1, y2 - y1) / 6.0);
        for (int i = 0; i <= steps; i++) {
            double share = (double) i / steps;
            block(x1 + share * (x2 - x1), y1 + share * (y2 - y1), 1.5);
        }
    }

    /** Draws a label beside a point and returns whether there was room. */
    boolean place(String text, double x, double y, double gap, Font font, Color color) {
        double width = Canvas.width(text, font);
        double height = 0.78 * font.getSize2D();
        for (double[] position : POSITIONS) {
            double left = x - position[0] * width + gap * (1.0 - 2.0 * position[0]);
            double top = y - position[1] * height + gap * (1.0 - 2.0 * position[1]);
            Rectangle2D box = new Rectangle2D.Double(left - 2, top - 2, width + 4, height + 4);
            if (bounds.contains(box) && taken.stream().noneMatch(box::intersects)) {
                taken.add(box);
                canvas.text(text, left, top + height, font, color, Align.LEFT);
                return true;
            }
        }
        return false;
    }
}
