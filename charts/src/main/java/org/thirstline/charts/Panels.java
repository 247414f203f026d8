package org.thirstline.charts;

import java.awt.geom.Rectangle2D;

/** Rows of a chart with several panels. Immutable and thread-safe. */
final class Panels {

    private final Rectangle2D area;
    private final double gap;
    private final double[] weights;
    private final double total;

    Panels(Rectangle2D area, double gap, double... weights) {
        this.area = area;
        this.gap = gap;
        this.weights = weights.clone();
        double sum = 0.0;
        for (double weight : weights) {
            sum += weight;
        }
        this.total = sum;
    }

    Rectangle2D row(int index) {
        double usable = area.getHeight() - gap * (weights.length - 1);
        double top = area.getY();
        for (int i = 0; i < index; i++) {
            top += usable * weights[i] / total + gap;
        }
        return new Rectangle2D.Double(area.getX(), top, area.getWidth(), usable * weights[index] / total);
    }
}
