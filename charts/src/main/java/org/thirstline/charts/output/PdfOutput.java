package org.thirstline.charts.output;

import de.rototor.pdfbox.graphics2d.PdfBoxGraphics2D;
import de.rototor.pdfbox.graphics2d.PdfBoxGraphics2DFontTextDrawer;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.util.Matrix;
import org.thirstline.charts.ChartDocument;
import org.thirstline.charts.theme.ChartFonts;
import org.thirstline.charts.theme.ChartSize;

/** Charts as PDF pages with the font inside. */
public final class PdfOutput {

    private static final float POINTS_PER_PX = 0.75f;
    private static final long FIXED_ID = 1L;

    private PdfOutput() {}

    /**
     * Draws a chart on a page of its size.
     *
     * @param chart the chart
     */
    public static byte[] bytes(ChartDocument chart) {
        ChartSize size = chart.style().size();
        try (PDDocument document = new PDDocument();
                PdfBoxGraphics2DFontTextDrawer fonts = new PdfBoxGraphics2DFontTextDrawer()) {
            document.setDocumentId(FIXED_ID);
            document.getDocumentInformation().setTitle(chart.words().title());
            float width = size.widthPx() * POINTS_PER_PX;
            float height = size.heightPx() * POINTS_PER_PX;
            PDPage page = new PDPage(new PDRectangle(width, height));
            document.addPage(page);
            fonts.registerFont(ChartFonts.regular(1f).getFontName(), ChartFonts.file(false));
            fonts.registerFont(ChartFonts.semiBold(1f).getFontName(), ChartFonts.file(true));
            PdfBoxGraphics2D graphics = new PdfBoxGraphics2D(document, size.widthPx(), size.heightPx());
            graphics.setFontTextDrawer(fonts);
            chart.paint(graphics);
            graphics.dispose();
            try (PDPageContentStream content = new PDPageContentStream(document, page)) {
                content.transform(Matrix.getScaleInstance(POINTS_PER_PX, POINTS_PER_PX));
                content.drawForm(graphics.getXFormObject());
            }
            ByteArrayOutputStream bytes = new ByteArrayOutputStream();
            document.save(bytes);
            return bytes.toByteArray();
        } catch (IOException error) {
            throw new UncheckedIOException(error);
        }
    }
}
