package org.thirstline.charts;

/** Where a text lies relative to its point. */
enum Align {
    LEFT(0.0),
    CENTER(0.5),
    RIGHT(1.0);

    private final double share;

    Align(double share) {
        this.share = share;
    }

    double share() {
        return share;
    }
}
