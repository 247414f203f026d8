package org.thirstline.charts;

import java.awt.Color;
import java.awt.geom.Rectangle2D;
import org.thirstline.charts.theme.Palette;

/** What is left over by growth year, beside the square of observed and simulated: with the typical miss as a band. Confined to one chart. */
final class MissesPanel {

    /** Fewer years than this have no course to show. */
    static final int FEWEST_YEARS = 2;

    private static final int BAND_ALPHA = 40;

    private final FitView view;
    private final ChartStyle style;
    private final UnitSystem units;
    private final Palette palette;

    MissesPanel(FitView view, ChartStyle style) {
        this.view = view;
        this.style = style;
        this.units = style.units();
        this.palette = style.theme().palette();
    }

    /** Says whether there are years enough. */
    boolean hasCourse() {
        return view.points().stream().map(FitPoint::year).distinct().count() >= FEWEST_YEARS;
    }

    void draw(Canvas canvas, Rectangle2D area) {
        String unit = view.quantity().unit(units);
        double miss = shown(FitView.miss(view.points()));
        double largest = view.points().stream()
                .mapToDouble(point -> Math.abs(shown(point.residual())))
                .max()
                .orElse(1.0);
        double high = Math.max(1.15 * Math.max(largest, miss), 1e-3);
        double[] range = range();
        double xStep = Math.max(1.0, PanelGrid.step(canvas, range[0], range[1], 0.8 * area.getWidth()));
        int parts = (int)
                Math.max(2, Math.min(6, area.getHeight() / (2.8 * canvas.type().smallPx())));
        Frame frame = new Frame.Builder(canvas, area)
                .x(range[0], range[1], xStep)
                .y(-high, high, Numbers.niceStep(2 * high, parts))
                .right(0.6 * PanelGrid.labelWidth(canvas, range[0], range[1], xStep))
                .titles(
                        "growth year",
                        "observed − simulated" + (unit.isEmpty() ? "" : " (" + unit + ")") + "; band: typical")
                .under(under -> band(under, miss))
                .draw();
        canvas.line(frame.area().getX(), frame.y(0), frame.area().getMaxX(), frame.y(0), palette.axis(), 1.4);
        double radius = (view.points().size() > 80 ? 0.22 : 0.3) * canvas.type().labelPx();
        for (FitPoint point : view.points()) {
            view.mark(canvas, frame.x(point.year()), frame.y(shown(point.residual())), radius, point);
        }
    }

    private void band(Frame frame, double miss) {
        Color ink = palette.muted();
        Rectangle2D band = new Rectangle2D.Double(
                frame.area().getX(), frame.y(miss), frame.area().getWidth(), frame.y(-miss) - frame.y(miss));
        frame.canvas().fill(band, new Color(ink.getRed(), ink.getGreen(), ink.getBlue(), BAND_ALPHA));
    }

    private double shown(double value) {
        return view.quantity().shown(value, units);
    }

    private double[] range() {
        double low = view.points().stream().mapToDouble(FitPoint::year).min().orElse(0.0);
        double high = view.points().stream().mapToDouble(FitPoint::year).max().orElse(1.0);
        return PanelGrid.padded(low, high, 0.06);
    }
}
