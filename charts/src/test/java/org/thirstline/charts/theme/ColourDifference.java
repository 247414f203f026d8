package org.thirstline.charts.theme;

/**
 * CIEDE2000 (ISO/CIE 11664-6:2014) with all weights one, as set out by Sharma, Wu and Dalal (2005), The CIEDE2000 color-difference formula:
 * implementation notes, supplementary test data, and mathematical observations, Color Research and Application 30:21-30.
 */
final class ColourDifference {

    private static final double POW_25_7 = Math.pow(25.0, 7.0);

    private ColourDifference() {}

    /** Difference of two colours given as L*, a*, b*. */
    static double between(double[] one, double[] other) {
        double meanChroma = (Math.hypot(one[1], one[2]) + Math.hypot(other[1], other[2])) / 2.0;
        double g = 0.5 * (1.0 - Math.sqrt(share7(meanChroma)));
        double a1 = (1.0 + g) * one[1];
        double a2 = (1.0 + g) * other[1];
        double c1 = Math.hypot(a1, one[2]);
        double c2 = Math.hypot(a2, other[2]);
        double h1 = hue(a1, one[2]);
        double h2 = hue(a2, other[2]);
        double turn = turn(h1, h2, c1 * c2);
        double dL = other[0] - one[0];
        double dC = c2 - c1;
        double dH = 2.0 * Math.sqrt(c1 * c2) * Math.sin(Math.toRadians(turn / 2.0));
        double meanL = (one[0] + other[0]) / 2.0;
        double meanC = (c1 + c2) / 2.0;
        double meanH = meanHue(h1, h2, c1 * c2);
        double off = (meanL - 50.0) * (meanL - 50.0);
        double sL = 1.0 + 0.015 * off / Math.sqrt(20.0 + off);
        double sC = 1.0 + 0.045 * meanC;
        double sH = 1.0 + 0.015 * meanC * weight(meanH);
        double l = dL / sL;
        double c = dC / sC;
        double h = dH / sH;
        double rotation = -Math.sin(Math.toRadians(60.0 * Math.exp(-Math.pow((meanH - 275.0) / 25.0, 2.0))))
                * 2.0
                * Math.sqrt(share7(meanC));
        return Math.sqrt(l * l + c * c + h * h + rotation * c * h);
    }

    private static double share7(double chroma) {
        double pow = Math.pow(chroma, 7.0);
        return pow / (pow + POW_25_7);
    }

    private static double hue(double a, double b) {
        double degrees = Math.toDegrees(Math.atan2(b, a));
        return degrees < 0.0 ? degrees + 360.0 : degrees;
    }

    private static double turn(double h1, double h2, double chromas) {
        double turn = h2 - h1;
        if (chromas == 0.0) {
            return 0.0;
        }
        return turn > 180.0 ? turn - 360.0 : turn < -180.0 ? turn + 360.0 : turn;
    }

    private static double meanHue(double h1, double h2, double chromas) {
        double sum = h1 + h2;
        if (chromas == 0.0) {
            return sum;
        }
        if (Math.abs(h1 - h2) <= 180.0) {
            return sum / 2.0;
        }
        return sum < 360.0 ? (sum + 360.0) / 2.0 : (sum - 360.0) / 2.0;
    }

    private static double weight(double hue) {
        return 1.0
                - 0.17 * Math.cos(Math.toRadians(hue - 30.0))
                + 0.24 * Math.cos(Math.toRadians(2.0 * hue))
                + 0.32 * Math.cos(Math.toRadians(3.0 * hue + 6.0))
                - 0.20 * Math.cos(Math.toRadians(4.0 * hue - 63.0));
    }
}
