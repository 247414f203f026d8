package org.thirstline.charts.output;

import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.regex.MatchResult;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.apache.batik.dom.GenericDOMImplementation;
import org.apache.batik.svggen.SVGGraphics2D;
import org.thirstline.charts.ChartDocument;
import org.thirstline.charts.Numbers;
import org.thirstline.charts.Tip;
import org.thirstline.charts.theme.ChartFonts;
import org.thirstline.charts.theme.ChartSize;
import org.w3c.dom.Document;

/** Charts as SVG: text as text, a title and a description for screen readers, the same bytes for the same chart. */
public final class SvgOutput {

    private static final String NAMESPACE = "http://www.w3.org/2000/svg";
    private static final String DECLARATION = "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n";
    private static final String END = "</svg>\n";
    private static final int USUAL_LENGTH = 1 << 17;
    private static final int TIP_LENGTH = 160;
    private static final Pattern FAMILY = Pattern.compile("font-family=\"[^\"]*\"");

    /** What Batik takes for granted and does not write on each part; a page round the picture may have other ideas. */
    private static final String DEFAULTS =
            " font-size=\"12\" font-weight=\"400\" font-style=\"normal\" fill=\"black\" stroke=\"black\""
                    + " stroke-width=\"1\" stroke-linecap=\"square\" stroke-linejoin=\"miter\" stroke-miterlimit=\"10\""
                    + " stroke-dasharray=\"none\" stroke-dashoffset=\"0\"";

    /** Letters in their own widths at every scale; else browsers round them and texts touch. */
    private static final String LETTERS = "text{text-rendering:geometricPrecision}";

    private SvgOutput() {}

    /**
     * Returns a file that stands alone, font inside.
     *
     * @param chart the chart
     */
    public static String standalone(ChartDocument chart) {
        ChartSize size = chart.style().size();
        String attributes = " width=\"" + size.widthPx() + "\" height=\"" + size.heightPx() + "\"";
        return whole(
                DECLARATION,
                root(chart, chart.words().id(), attributes),
                "<style>",
                ChartFonts.embeddedCss(),
                LETTERS + "</style>",
                body(chart, chart.words().id(), false));
    }

    /**
     * Returns an element for an HTML page that brings the font itself.
     *
     * @param chart the chart
     * @param idPrefix start of every id, different for every chart of a page
     */
    public static String inline(ChartDocument chart, String idPrefix) {
        return whole(root(chart, idPrefix, ""), body(chart, idPrefix, false));
    }

    /**
     * Returns a file whose letters are outlines, for programs that show pictures without reading their fonts.
     *
     * @param chart the chart
     */
    public static String outlined(ChartDocument chart) {
        ChartSize size = chart.style().size();
        String attributes = " width=\"" + size.widthPx() + "\" height=\"" + size.heightPx() + "\"";
        String prefix = chart.words().id();
        return whole(DECLARATION, root(chart, prefix, attributes), body(chart, prefix, true));
    }

    /** Puts the parts of a picture together. They are long, so none is copied twice. */
    private static String whole(String... parts) {
        int length = END.length();
        for (String part : parts) {
            length += part.length();
        }
        StringBuilder whole = new StringBuilder(length);
        for (String part : parts) {
            whole.append(part);
        }
        return whole.append(END).toString();
    }

    private static String root(ChartDocument chart, String prefix, String attributes) {
        ChartSize size = chart.style().size();
        String title = escape(chart.words().title());
        return "<svg xmlns=\"" + NAMESPACE + "\" xmlns:xlink=\"http://www.w3.org/1999/xlink\" viewBox=\"0 0 "
                + size.widthPx() + " " + size.heightPx() + "\"" + attributes + " role=\"img\" aria-labelledby=\""
                + prefix + "-title " + prefix + "-desc\" font-family=\"" + ChartFonts.STACK + "\"" + DEFAULTS
                + ">\n<title id=\""
                + prefix + "-title\">" + title + "</title>\n<desc id=\"" + prefix + "-desc\">"
                + escape(chart.words().description()) + "</desc>\n";
    }

    private static String body(ChartDocument chart, String prefix, boolean outlined) {
        Document document = GenericDOMImplementation.getDOMImplementation().createDocument(NAMESPACE, "svg", null);
        SVGGraphics2D graphics = new SVGGraphics2D(new SvgContext(document, prefix), outlined);
        List<Tip> tips = chart.paintWithTips(graphics);
        StringWriter writer = new StringWriter(USUAL_LENGTH);
        try {
            graphics.stream(writer, false);
        } catch (IOException error) {
            throw new UncheckedIOException(error);
        }
        graphics.dispose();
        StringBuilder body = new StringBuilder(writer.getBuffer().length() + (outlined ? 0 : TIP_LENGTH * tips.size()));
        tidy(writer.toString(), prefix, body);
        if (!outlined && !tips.isEmpty()) {
            hover(tips, body);
        }
        return body.toString();
    }

    /** Lays unseen areas over the picture whose title a browser shows under the pointer. */
    private static void hover(List<Tip> tips, StringBuilder svg) {
        svg.append("<g fill=\"none\" stroke=\"none\" pointer-events=\"all\">\n");
        for (Tip tip : tips) {
            var area = tip.area();
            svg.append("<rect x=\"").append(tenths(area.getX()));
            svg.append("\" y=\"").append(tenths(area.getY()));
            svg.append("\" width=\"").append(tenths(area.getWidth()));
            svg.append("\" height=\"").append(tenths(area.getHeight()));
            svg.append("\"><title>").append(escape(tip.text())).append("</title></rect>\n");
        }
        svg.append("</g>\n");
    }

    private static String tenths(double px) {
        return Numbers.plain(px, 1);
    }

    /** Keeps what is inside the root, without ids that another chart on the page would have too. */
    private static void tidy(String svg, String prefix, StringBuilder tidy) {
        String inside = svg.substring(svg.indexOf('>', svg.indexOf("<svg")) + 1, svg.lastIndexOf("</svg"))
                .replace("id=\"genericDefs\"", "id=\"" + prefix + "-defs\"")
                .replace("\r\n", "\n")
                .replace("<!---->", "");
        Matcher family = FAMILY.matcher(inside);
        while (family.find()) {
            family.appendReplacement(tidy, weight(family));
        }
        family.appendTail(tidy);
    }

    /** Batik names the family of each weight; browsers know one family and weights. */
    private static String weight(MatchResult family) {
        boolean semiBold = family.group().contains(ChartFonts.semiBoldFamily());
        return semiBold ? "font-weight=\"600\"" : "font-weight=\"400\"";
    }

    private static String escape(String text) {
        return text.replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;");
    }
}
