package org.thirstline.charts.theme;

import java.awt.Color;

/**
 * How colours look with full loss of one cone type, after Machado, Oliveira and Fernandes (2009), A physiologically-based model for
 * simulation of color vision deficiency, IEEE Transactions on Visualization and Computer Graphics 15:1291-1298 (matrices for severity
 * 1.0 as published by the authors, from memory), and distances in CIELAB (CIE 15:2004, D65, sRGB of IEC 61966-2-1).
 */
enum ColourVision {
    // spotless:off: matrices as printed, rows from top to bottom
    NORMAL(new double[] {
         1.0,       0.0,       0.0,
         0.0,       1.0,       0.0,
         0.0,       0.0,       1.0}),
    PROTANOPIA(new double[] {
         0.152286,  1.052583, -0.204868,
         0.114503,  0.786281,  0.099216,
        -0.003882, -0.048116,  1.051998}),
    DEUTERANOPIA(new double[] {
         0.367322,  0.860646, -0.227968,
         0.280085,  0.672501,  0.047413,
        -0.011820,  0.042940,  0.968881}),
    TRITANOPIA(new double[] {
         1.255528, -0.076749, -0.178779,
        -0.078411,  0.930809,  0.147602,
         0.004733,  0.691367,  0.303900});
    // spotless:on

    private static final double[] WHITE = {0.95047, 1.0, 1.08883};

    private final double[] matrix;

    ColourVision(double[] matrix) {
        this.matrix = matrix;
    }

    /** CIE76 distance of two colours as this eye sees them. */
    double distance(Color one, Color other) {
        double[] a = lab(seen(linear(one)));
        double[] b = lab(seen(linear(other)));
        return Math.sqrt(Math.pow(a[0] - b[0], 2) + Math.pow(a[1] - b[1], 2) + Math.pow(a[2] - b[2], 2));
    }

    /** CIEDE2000 difference of two colours as this eye sees them. */
    double difference(Color one, Color other) {
        return ColourDifference.between(lab(seen(linear(one))), lab(seen(linear(other))));
    }

    /** CIE lightness: what is left in grey print. */
    static double lightness(Color color) {
        return lab(linear(color))[0];
    }

    /** Contrast ratio of WCAG 2.1. */
    static double contrast(Color one, Color other) {
        double a = luminance(linear(one)) + 0.05;
        double b = luminance(linear(other)) + 0.05;
        return Math.max(a, b) / Math.min(a, b);
    }

    private double[] seen(double[] rgb) {
        double[] seen = new double[3];
        for (int row = 0; row < 3; row++) {
            double sum = 0.0;
            for (int column = 0; column < 3; column++) {
                sum += matrix[3 * row + column] * rgb[column];
            }
            seen[row] = Math.max(0.0, Math.min(1.0, sum));
        }
        return seen;
    }

    private static double[] linear(Color color) {
        return new double[] {linear(color.getRed()), linear(color.getGreen()), linear(color.getBlue())};
    }

    private static double linear(int channel) {
        double value = channel / 255.0;
        return value <= 0.04045 ? value / 12.92 : Math.pow((value + 0.055) / 1.055, 2.4);
    }

    private static double luminance(double[] rgb) {
        return 0.2126 * rgb[0] + 0.7152 * rgb[1] + 0.0722 * rgb[2];
    }

    private static double[] lab(double[] rgb) {
        double x = 0.4124564 * rgb[0] + 0.3575761 * rgb[1] + 0.1804375 * rgb[2];
        double y = 0.2126729 * rgb[0] + 0.7151522 * rgb[1] + 0.0721750 * rgb[2];
        double z = 0.0193339 * rgb[0] + 0.1191920 * rgb[1] + 0.9503041 * rgb[2];
        double fx = curve(x / WHITE[0]);
        double fy = curve(y / WHITE[1]);
        double fz = curve(z / WHITE[2]);
        return new double[] {116.0 * fy - 16.0, 500.0 * (fx - fy), 200.0 * (fy - fz)};
    }

    private static double curve(double t) {
        return t > 216.0 / 24389.0 ? Math.cbrt(t) : (24389.0 / 27.0 * t + 16.0) / 116.0;
    }
}
