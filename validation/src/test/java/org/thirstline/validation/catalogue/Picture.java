package org.thirstline.validation.catalogue;

import java.util.List;

/**
 * A strip: one dot for each number at its difference from what was published, in units of what is accepted. Inside the band is a pass; dots
 * beyond one and a half are drawn at the edge. Families without a verdict show their correlations.
 */
final class Picture {

    private static final double WIDTH = 640.0;
    private static final double HEIGHT = 96.0;
    private static final double EDGE = 1.5;
    private static final double LEFT = 24.0;
    private static final String PASS = "#0072B2";
    private static final String MISS = "#D55E00";
    private static final double GOLDEN = 0.6180339887498949;

    private Picture() {}

    /** Returns the picture of a family, empty if none of its rows is a number with limits. */
    static String of(Family family) {
        List<CheckRow> numbers = family.rows().stream()
                .filter(CheckRow::isNumber)
                .filter(row -> row.verdict() != Verdict.SHOWN)
                .toList();
        if (numbers.isEmpty()) {
            return correlations(family);
        }
        StringBuilder svg = new StringBuilder(200 + 80 * numbers.size());
        open(svg, family.title() + ": difference from what was published");
        rect(svg, x(-1.0), x(1.0));
        for (double mark : new double[] {-1.0, 0.0, 1.0}) {
            line(svg, x(mark), mark == 0.0);
        }
        for (int i = 0; i < numbers.size(); i++) {
            dot(svg, numbers.get(i), i);
        }
        boolean aroundPublished = family.reproduced() && family.counted();
        String limits = family.reproduced() ? " accepted" : " published";
        label(svg, x(-1.0), aroundPublished ? "− tolerance" : "lowest" + limits);
        label(svg, x(0.0), aroundPublished ? "as published" : "middle");
        label(svg, x(1.0), aroundPublished ? "+ tolerance" : "highest" + limits);
        return svg.append("</svg>\n").toString();
    }

    /** Where nothing was judged: the correlations from 0 to 1; empty if there are none. */
    private static String correlations(Family family) {
        List<CheckRow> rows = family.rows().stream()
                .filter(row -> row.id().endsWith("correlation"))
                .toList();
        if (rows.isEmpty()) {
            return "";
        }
        StringBuilder svg = new StringBuilder(200 + 80 * rows.size());
        open(svg, family.title() + ": correlations");
        rect(svg, x(-1.0), x(1.0));
        for (int i = 0; i < rows.size(); i++) {
            circle(svg, x(2.0 * rows.get(i).computed() - 1.0), i, false);
        }
        label(svg, x(-1.0), "correlation 0");
        label(svg, x(1.0), "1");
        return svg.append("</svg>\n").toString();
    }

    private static void open(StringBuilder svg, String title) {
        svg.append(
                        "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 640 96\" width=\"640\" height=\"96\" role=\"img\">")
                .append("\n<title>")
                .append(Html.escape(title))
                .append("</title>\n<rect width=\"640\" height=\"96\" fill=\"#ffffff\"/>\n");
    }

    private static double x(double relative) {
        double bounded = Math.max(-EDGE, Math.min(EDGE, relative));
        return WIDTH / 2.0 + bounded / EDGE * (WIDTH / 2.0 - LEFT);
    }

    private static void rect(StringBuilder svg, double from, double to) {
        svg.append("<rect x=\"")
                .append(Numbers.coordinate(from))
                .append("\" y=\"8\" width=\"")
                .append(Numbers.coordinate(to - from))
                .append("\" height=\"64\" fill=\"#E6EEF4\"/>\n");
    }

    private static void line(StringBuilder svg, double at, boolean strong) {
        String x = Numbers.coordinate(at);
        svg.append("<line x1=\"%s\" x2=\"%s\" y1=\"8\" y2=\"72\" stroke=\"%s\"/>%n"
                .formatted(x, x, strong ? "#444444" : "#9AA7B1")
                .replace("\r\n", "\n"));
    }

    /** Dots are spread over the height by multiples of the golden ratio, so that they hide each other as little as may be. */
    private static void dot(StringBuilder svg, CheckRow row, int index) {
        double relative = row.high() > row.low() ? row.relativeDifference() : 0.0;
        circle(svg, x(relative), index, row.verdict() == Verdict.MISS);
    }

    private static void circle(StringBuilder svg, double at, int index, boolean miss) {
        double share = (0.5 + GOLDEN * index) % 1.0;
        svg.append("<circle cx=\"")
                .append(Numbers.coordinate(at))
                .append("\" cy=\"")
                .append(Numbers.coordinate(12.0 + 56.0 * share))
                .append(miss ? "\" r=\"3.5\" fill=\"" + MISS : "\" r=\"2\" fill=\"" + PASS)
                .append("\" fill-opacity=\"0.7\"/>\n");
    }

    private static void label(StringBuilder svg, double at, String words) {
        svg.append("<text x=\"")
                .append(Numbers.coordinate(at))
                .append("\" y=\"")
                .append(Numbers.coordinate(HEIGHT - 8.0))
                .append("\" font-family=\"sans-serif\" font-size=\"12\" text-anchor=\"middle\" fill=\"#333333\">")
                .append(words)
                .append("</text>\n");
    }
}
