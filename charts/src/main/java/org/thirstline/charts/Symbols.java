package org.thirstline.charts;

import java.awt.Shape;
import java.awt.geom.AffineTransform;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;

/** Marks that tell groups apart by shape and filling alone, where every colour is taken by another meaning. */
final class Symbols {

    /** How many there are; further groups share the last one. */
    static final int COUNT = 8;

    private static final int SHAPES = 4;
    private static final double OUTLINE_PX = 1.5;

    private Symbols() {}

    /** Draws a mark: the first four filled, the next four open. */
    static void draw(Canvas canvas, double x, double y, double radius, int symbol) {
        int index = Math.min(symbol, COUNT - 1);
        Shape shape = shape(index % SHAPES, x, y, radius);
        boolean filled = index < SHAPES;
        canvas.fill(shape, filled ? canvas.palette().ink() : canvas.palette().background());
        canvas.outline(
                shape, filled ? canvas.palette().background() : canvas.palette().ink(), filled ? 1.0 : OUTLINE_PX);
    }

    private static Shape shape(int kind, double x, double y, double radius) {
        Rectangle2D square = new Rectangle2D.Double(x - 0.88 * radius, y - 0.88 * radius, 1.76 * radius, 1.76 * radius);
        return switch (kind) {
            case 0 -> new Ellipse2D.Double(x - radius, y - radius, 2 * radius, 2 * radius);
            case 1 -> square;
            case 2 -> triangle(x, y, radius);
            default -> AffineTransform.getRotateInstance(Math.PI / 4, x, y).createTransformedShape(square);
        };
    }

    private static Shape triangle(double x, double y, double radius) {
        Path2D triangle = new Path2D.Double();
        triangle.moveTo(x, y - 1.2 * radius);
        triangle.lineTo(x + 1.15 * radius, y + 0.85 * radius);
        triangle.lineTo(x - 1.15 * radius, y + 0.85 * radius);
        triangle.closePath();
        return triangle;
    }
}
