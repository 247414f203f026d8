package org.thirstline.charts;

import java.awt.Graphics2D;
import java.awt.geom.AffineTransform;
import java.awt.geom.Point2D;
import java.awt.geom.Rectangle2D;
import org.jfree.chart.plot.Plot;
import org.jfree.chart.plot.PlotRenderingInfo;
import org.jfree.chart.plot.PlotState;
import org.jspecify.annotations.Nullable;
import org.thirstline.charts.theme.ChartSize;

/** A whole chart as the plot of a JFreeChart: drawn as large as its shape allows in the room that is given. */
final class DocumentPlot extends Plot {

    private static final long serialVersionUID = 1L;

    private final transient ChartDocument document;

    DocumentPlot(ChartDocument document) {
        this.document = document;
    }

    @Override
    public String getPlotType() {
        return document.words().id();
    }

    @Override
    public void draw(
            Graphics2D graphics,
            Rectangle2D area,
            @Nullable Point2D anchor,
            @Nullable PlotState parent,
            @Nullable PlotRenderingInfo info) {
        if (info != null) {
            info.setPlotArea(area);
            info.setDataArea(area);
        }
        ChartSize size = document.style().size();
        double scale = Math.min(area.getWidth() / size.widthPx(), area.getHeight() / size.heightPx());
        AffineTransform before = graphics.getTransform();
        graphics.translate(
                area.getCenterX() - 0.5 * scale * size.widthPx(), area.getCenterY() - 0.5 * scale * size.heightPx());
        graphics.scale(scale, scale);
        document.paint(graphics);
        graphics.setTransform(before);
    }
}
