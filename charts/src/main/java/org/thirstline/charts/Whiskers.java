package org.thirstline.charts;

import java.awt.geom.Line2D;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.thirstline.calibration.bands.Band;
import org.thirstline.charts.theme.Palette;

/** What the draws of a calibration leave possible, as a line from 5 to 95 % with its middle half thick. Stateless and thread-safe. */
final class Whiskers {

    private static final String[] QUANTILES = {"5", "25", "50", "75", "95"};

    private Whiskers() {}

    static KeyEntry key(Palette palette) {
        return KeyEntry.whisker(palette.ink(), "5 to 95 % of calibration draws (thick: middle half)");
    }

    /** Says what a whisker holds and what not. */
    static String note(Collection<Band> bands) {
        int draws = bands.stream().mapToInt(Band::draws).max().orElse(0);
        return "Whiskers: " + draws
                + " draws of the calibrated parameters, without weather not seen and without scatter of plots.";
    }

    static void draw(Frame frame, double x, @Nullable Band band, UnitSystem units) {
        if (band == null || !band.isKnown()) {
            return;
        }
        Canvas canvas = frame.canvas();
        double thin = 0.55 * canvas.type().strokePx();
        double thick = 1.5 * canvas.type().strokePx();
        double low = frame.y(units.dryMatter(band.low()));
        double high = frame.y(units.dryMatter(band.high()));
        double lowerQuarter = frame.y(units.dryMatter(band.lowerQuarter()));
        double upperQuarter = frame.y(units.dryMatter(band.upperQuarter()));
        paint(canvas, x, low, high, lowerQuarter, upperQuarter, thin, thick);
    }

    /** Every part lies in a rim of the background, so that it shows on bars of any colour. */
    static void paint(
            Canvas canvas,
            double x,
            double low,
            double high,
            double lowerQuarter,
            double upperQuarter,
            double thin,
            double thick) {
        double rim = thin;
        canvas.outline(new Line2D.Double(x, low, x, high), canvas.palette().background(), thin + 2 * rim);
        canvas.outline(
                new Line2D.Double(x, lowerQuarter, x, upperQuarter),
                canvas.palette().background(),
                thick + 2 * rim);
        canvas.outline(new Line2D.Double(x, low, x, high), canvas.palette().ink(), thin);
        canvas.outline(
                new Line2D.Double(x, lowerQuarter, x, upperQuarter),
                canvas.palette().ink(),
                thick);
    }

    /** Returns the columns of a table for a value and its band. */
    static List<String> columns(String value, String unit) {
        List<String> columns = new ArrayList<>();
        for (String quantile : QUANTILES) {
            columns.add(value + "_" + quantile + "_pct_" + unit);
        }
        return columns;
    }

    /** Returns the cells under these columns. */
    static List<@Nullable Object> cells(@Nullable Band band) {
        List<@Nullable Object> cells = new ArrayList<>();
        for (int i = 0; i < QUANTILES.length; i++) {
            cells.add(band == null ? null : band.quantiles()[i]);
        }
        return cells;
    }
}
