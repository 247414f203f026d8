package org.thirstline.charts;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import java.util.function.IntFunction;
import org.jfree.chart.axis.AxisLocation;
import org.jfree.chart.axis.AxisSpace;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.axis.NumberTickUnit;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.XYLineAndShapeRenderer;
import org.jfree.chart.ui.RectangleEdge;
import org.jfree.chart.ui.RectangleInsets;
import org.jfree.data.xy.DefaultXYDataset;

/**
 * One plot in the house style: value axis with its title above it, quiet grid, lines as series. Bars, labels and marks are drawn by the
 * chart at {@link #x} and {@link #y}. Confined to one drawing.
 */
final class Frame {

    private static final int DAYS_A_TIP = 5;

    private final Canvas canvas;
    private final Rectangle2D dataArea;
    private final NumberAxis xAxis;
    private final NumberAxis yAxis;

    private Frame(Canvas canvas, Rectangle2D dataArea, NumberAxis xAxis, NumberAxis yAxis) {
        this.canvas = canvas;
        this.dataArea = dataArea;
        this.xAxis = xAxis;
        this.yAxis = yAxis;
    }

    double x(double value) {
        return xAxis.valueToJava2D(value, dataArea, RectangleEdge.BOTTOM);
    }

    double y(double value) {
        return yAxis.valueToJava2D(value, dataArea, RectangleEdge.LEFT);
    }

    Rectangle2D area() {
        return dataArea;
    }

    Canvas canvas() {
        return canvas;
    }

    /** Notes what a pointer over the strip round each value reads; the values rise. */
    void tips(double[] xs, IntFunction<String> text) {
        for (int i = 0; i < xs.length; i++) {
            double left = i == 0 ? dataArea.getX() : x((xs[i - 1] + xs[i]) / 2);
            double right = i == xs.length - 1 ? dataArea.getMaxX() : x((xs[i] + xs[i + 1]) / 2);
            canvas.tip(
                    new Rectangle2D.Double(left, dataArea.getY(), right - left, dataArea.getHeight()), text.apply(i));
        }
    }

    /** Notes what a pointer reads, a text for every few of a run of days. */
    void dayTips(MonthScale scale, IntFunction<String> textOfPlace) {
        int strips = (scale.days() + DAYS_A_TIP - 1) / DAYS_A_TIP;
        double[] middles = new double[strips];
        for (int i = 0; i < strips; i++) {
            middles[i] = scale.low() + i * DAYS_A_TIP + 0.5 * DAYS_A_TIP;
        }
        tips(middles, i -> textOfPlace.apply(Math.min(scale.days() - 1, i * DAYS_A_TIP + DAYS_A_TIP / 2)));
    }

    /** Returns a path through points; NaN breaks it. */
    Path2D path(double[] xs, double[] ys) {
        Path2D path = new Path2D.Double();
        boolean open = false;
        for (int i = 0; i < xs.length; i++) {
            if (Double.isNaN(ys[i])) {
                open = false;
            } else if (open) {
                path.lineTo(x(xs[i]), y(ys[i]));
            } else {
                path.moveTo(x(xs[i]), y(ys[i]));
                open = true;
            }
        }
        return path;
    }

    /** Returns the area between two lines over the same points. */
    Path2D between(double[] xs, double[] lower, double[] upper) {
        Path2D path = new Path2D.Double();
        for (int i = 0; i < xs.length; i++) {
            if (i == 0) {
                path.moveTo(x(xs[i]), y(upper[i]));
            } else {
                path.lineTo(x(xs[i]), y(upper[i]));
            }
        }
        for (int i = xs.length - 1; i >= 0; i--) {
            path.lineTo(x(xs[i]), y(lower[i]));
        }
        path.closePath();
        return path;
    }

    /** Gathers what a frame shows. */
    static final class Builder {

        private record Line(double[] xs, double[] ys, Color color, double widthPx) {}

        private final Canvas canvas;
        private final Rectangle2D area;
        private final List<Line> lines = new ArrayList<>();
        private final NumberAxis xAxis = new NumberAxis();
        private final NumberAxis yAxis = new NumberAxis();
        private String yTitle = "";
        private String xTitle = "";
        private double leftPx = -1;
        private double rightPx;
        private boolean xLabels = true;
        private boolean yLabels = true;
        private boolean ownLabels;
        private double yStep = 1;
        private double yHigh = 1;
        private double yLow;
        private Consumer<Frame> under = frame -> {};

        Builder(Canvas canvas, Rectangle2D area) {
            this.canvas = canvas;
            this.area = area;
        }

        Builder x(double low, double high, double step) {
            range(xAxis, low, high, step);
            return this;
        }

        Builder y(double low, double high, double step) {
            range(yAxis, low, high, step);
            yStep = step;
            yHigh = high;
            yLow = low;
            return this;
        }

        Builder downward() {
            yAxis.setInverted(true);
            return this;
        }

        Builder titles(String x, String y) {
            xTitle = x;
            yTitle = y;
            return this;
        }

        /** Fixes the space of the value axis, so that panels line up. */
        Builder left(double px) {
            leftPx = px;
            return this;
        }

        Builder right(double px) {
            rightPx = px;
            return this;
        }

        Builder noXLabels() {
            xLabels = false;
            return this;
        }

        /** Leaves out values and grid of a value axis whose height means nothing by itself. */
        Builder noYLabels() {
            yLabels = false;
            return this;
        }

        /** Leaves the space of the labels to the chart, which writes its own. */
        Builder ownXLabels() {
            ownLabels = true;
            return this;
        }

        Builder line(double[] xs, double[] ys, Color color, double widthPx) {
            lines.add(new Line(xs, ys, color, widthPx));
            return this;
        }

        Builder under(Consumer<Frame> painter) {
            under = painter;
            return this;
        }

        private static void range(NumberAxis axis, double low, double high, double step) {
            axis.setRange(low, high);
            axis.setTickUnit(new NumberTickUnit(step, Numbers.ticks(step)));
        }

        static double axisWidth(Canvas canvas, double low, double high, double step) {
            Font font = canvas.small();
            double widest = Math.max(
                    Canvas.width(Numbers.ticks(step).format(high), font),
                    Canvas.width(Numbers.ticks(step).format(low), font));
            return widest + 0.7 * canvas.type().smallPx();
        }

        Frame draw() {
            double titleHeight = yTitle.isEmpty()
                    ? 0.45 * canvas.type().smallPx()
                    : 1.75 * canvas.type().labelPx();
            double left = leftPx >= 0 ? leftPx : axisWidth(canvas, yLow, yHigh, yStep);
            double bottom = xLabels ? 1.7 * canvas.type().smallPx() : 1.0;
            double xTitleHeight = xTitle.isEmpty() ? 0 : 1.45 * canvas.type().labelPx();
            Rectangle2D plotArea = new Rectangle2D.Double(
                    area.getX(),
                    area.getY() + titleHeight,
                    area.getWidth(),
                    area.getHeight() - titleHeight - xTitleHeight);
            Rectangle2D data = new Rectangle2D.Double(
                    plotArea.getX() + left,
                    plotArea.getY(),
                    plotArea.getWidth() - left - rightPx,
                    plotArea.getHeight() - bottom);
            thinOut(data.getHeight());
            Frame frame = new Frame(canvas, data, xAxis, yAxis);
            under.accept(frame);
            XYPlot plot = plot(left, bottom);
            canvas.change(plot);
            plot.draw(canvas.graphics(), plotArea, null, null, null);
            canvas.graphics().setClip(null);
            titles(frame, plotArea.getMaxY() + 1.05 * canvas.type().labelPx());
            return frame;
        }

        /** Low panels have room for fewer numbers than asked for. */
        private void thinOut(double heightPx) {
            double range = yHigh - yLow;
            double least = 1.25 * canvas.type().smallPx() * range / heightPx;
            for (int steps = 4; steps > 0 && yStep < least; steps--) {
                double wider = Numbers.niceStep(range, steps);
                if (wider > yStep) {
                    yStep = wider;
                    yAxis.setTickUnit(new NumberTickUnit(yStep, Numbers.ticks(yStep)));
                }
            }
        }

        private void titles(Frame frame, double xTitleBaseline) {
            Font font = canvas.small();
            Color color = canvas.palette().muted();
            if (!yTitle.isEmpty()) {
                String text = Canvas.fitted(yTitle, font, area.getWidth());
                double baseline = frame.area().getY() - 0.75 * canvas.type().labelPx();
                canvas.text(text, area.getX(), baseline, font, color, Align.LEFT);
            }
            if (!xTitle.isEmpty()) {
                String text = Canvas.fitted(xTitle, font, frame.area().getWidth());
                canvas.text(text, frame.area().getCenterX(), xTitleBaseline, font, color, Align.CENTER);
            }
        }

        private XYPlot plot(double left, double bottom) {
            style(xAxis);
            style(yAxis);
            yAxis.setAxisLineVisible(false);
            yAxis.setTickLabelsVisible(yLabels);
            xAxis.setTickLabelsVisible(xLabels && !ownLabels);
            XYPlot plot = new XYPlot(null, xAxis, yAxis, null);
            plot.setInsets(RectangleInsets.ZERO_INSETS);
            plot.setAxisOffset(RectangleInsets.ZERO_INSETS);
            plot.setOutlineVisible(false);
            plot.setBackgroundPaint(null);
            plot.setDomainGridlinesVisible(false);
            plot.setRangeGridlinesVisible(yLabels);
            plot.setRangeGridlinePaint(canvas.palette().grid());
            plot.setRangeGridlineStroke(new BasicStroke(1f));
            plot.setRangeZeroBaselineVisible(false);
            plot.setDomainAxisLocation(AxisLocation.BOTTOM_OR_LEFT);
            plot.setFixedRangeAxisSpace(space(left, 0, rightPx));
            plot.setFixedDomainAxisSpace(space(0, bottom, 0));
            // Without a renderer the plot draws no grid.
            plot.setRenderer(new XYLineAndShapeRenderer(true, false));
            for (int i = 0; i < lines.size(); i++) {
                addLine(plot, i, lines.get(i));
            }
            return plot;
        }

        private static AxisSpace space(double left, double bottom, double right) {
            AxisSpace space = new AxisSpace();
            space.setLeft(left);
            space.setBottom(bottom);
            space.setRight(right);
            return space;
        }

        private void style(NumberAxis axis) {
            axis.setTickLabelFont(canvas.small());
            axis.setTickLabelPaint(canvas.palette().muted());
            axis.setAxisLinePaint(canvas.palette().axis());
            axis.setAxisLineStroke(new BasicStroke(1.2f));
            axis.setTickMarksVisible(false);
            axis.setTickLabelInsets(
                    new RectangleInsets(3, 0, 1, 0.45 * canvas.type().smallPx()));
        }

        private static void addLine(XYPlot plot, int index, Line line) {
            DefaultXYDataset dataset = new DefaultXYDataset();
            dataset.addSeries("line", new double[][] {line.xs, line.ys});
            XYLineAndShapeRenderer renderer = new XYLineAndShapeRenderer(true, false);
            renderer.setDrawSeriesLineAsPath(true);
            renderer.setSeriesPaint(0, line.color);
            renderer.setSeriesStroke(
                    0, new BasicStroke((float) line.widthPx, BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND));
            plot.setDataset(index, dataset);
            plot.setRenderer(index, renderer);
        }
    }
}
