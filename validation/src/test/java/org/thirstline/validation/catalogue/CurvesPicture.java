package org.thirstline.validation.catalogue;

import java.util.Arrays;
import java.util.List;
import org.thirstline.validation.behaviour.ResponseCurves.Curve;

/** Small multiples of the response curves, all on one yield axis from zero. */
final class CurvesPicture {

    private static final double CELL_WIDTH = 240.0;
    private static final double CELL_HEIGHT = 150.0;
    private static final int COLUMNS = 4;

    private CurvesPicture() {}

    static String of(List<Curve> curves) {
        double top = curves.stream()
                .flatMapToDouble(curve -> Arrays.stream(curve.harvested()))
                .max()
                .orElse(1.0);
        int rows = (curves.size() + COLUMNS - 1) / COLUMNS;
        int width = (int) (COLUMNS * CELL_WIDTH);
        int height = (int) (rows * CELL_HEIGHT);
        StringBuilder svg = new StringBuilder(6000);
        svg.append("<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 ")
                .append(width)
                .append(' ')
                .append(height);
        svg.append("\" width=\"")
                .append(width)
                .append("\" height=\"")
                .append(height)
                .append("\" role=\"img\">\n");
        svg.append("<title>Response curves</title>\n<rect width=\"")
                .append(width)
                .append("\" height=\"")
                .append(height);
        svg.append("\" fill=\"#ffffff\"/>\n");
        for (int i = 0; i < curves.size(); i++) {
            cell(svg, curves.get(i), CELL_WIDTH * (i % COLUMNS), CELL_HEIGHT * (i / COLUMNS), top);
        }
        return svg.append("</svg>\n").toString();
    }

    private static void cell(StringBuilder svg, Curve curve, double left, double upper, double top) {
        double x0 = left + 30.0;
        double y0 = upper + CELL_HEIGHT - 44.0;
        double width = CELL_WIDTH - 50.0;
        double height = CELL_HEIGHT - 60.0;
        double from = curve.x()[0];
        double to = curve.x()[curve.x().length - 1];
        StringBuilder points = new StringBuilder();
        for (int i = 0; i < curve.x().length; i++) {
            points.append(Numbers.coordinate(x0 + width * (curve.x()[i] - from) / (to - from)))
                    .append(',');
            points.append(Numbers.coordinate(y0 - height * curve.harvested()[i] / top))
                    .append(' ');
        }
        svg.append("<path d=\"M").append(Numbers.coordinate(x0)).append(' ').append(Numbers.coordinate(y0 - height));
        svg.append("V").append(Numbers.coordinate(y0)).append("H").append(Numbers.coordinate(x0 + width));
        svg.append("\" fill=\"none\" stroke=\"#9AA7B1\"/>\n<polyline points=\"")
                .append(points.toString().trim());
        svg.append("\" fill=\"none\" stroke=\"#0072B2\" stroke-width=\"2\"/>\n");
        text(svg, x0 - 4.0, y0, "end", "0");
        text(svg, x0 - 4.0, y0 - height + 8.0, "end", Numbers.significant(top, 2));
        text(svg, x0, y0 + 16.0, "start", Numbers.significant(from, 3));
        text(svg, x0 + width, y0 + 16.0, "end", Numbers.significant(to, 3));
        text(svg, x0 + width / 2.0, y0 + 34.0, "middle", curve.input());
    }

    private static void text(StringBuilder svg, double x, double y, String anchor, String words) {
        svg.append("<text x=\"").append(Numbers.coordinate(x)).append("\" y=\"").append(Numbers.coordinate(y));
        svg.append("\" font-family=\"sans-serif\" font-size=\"11\" fill=\"#333333\" text-anchor=\"")
                .append(anchor);
        svg.append("\">").append(Html.escape(words)).append("</text>\n");
    }
}
