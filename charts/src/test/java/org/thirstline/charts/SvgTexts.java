package org.thirstline.charts;

import java.awt.Font;
import java.awt.geom.Rectangle2D;
import java.io.StringReader;
import java.util.ArrayList;
import java.util.List;
import javax.xml.parsers.DocumentBuilderFactory;
import org.thirstline.charts.theme.ChartFonts;
import org.w3c.dom.Element;
import org.w3c.dom.Node;
import org.xml.sax.InputSource;

/** The texts of an SVG file with the boxes they fill. */
record SvgTexts(List<Box> boxes) {

    private static final double CAP_HEIGHT = 0.70;
    private static final double DESCENT = 0.20;
    private static final float BROWSER_PX = 16f;

    record Box(String text, Rectangle2D area) {}

    static SvgTexts of(String svg) throws Exception {
        DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
        Element root = factory.newDocumentBuilder()
                .parse(new InputSource(new StringReader(svg)))
                .getDocumentElement();
        List<Box> boxes = new ArrayList<>();
        // What a browser takes where the picture says nothing.
        collect(root, BROWSER_PX, "400", boxes);
        return new SvgTexts(List.copyOf(boxes));
    }

    private static void collect(Element element, float inheritedSize, String inheritedWeight, List<Box> boxes) {
        if (!element.getAttribute("transform").isEmpty()) {
            throw new IllegalStateException("a transform would move the boxes: " + element.getAttribute("transform"));
        }
        String own = element.getAttribute("font-size");
        float size = own.isEmpty() ? inheritedSize : Float.parseFloat(own.replace("px", ""));
        String weight =
                element.getAttribute("font-weight").isEmpty() ? inheritedWeight : element.getAttribute("font-weight");
        if (element.getTagName().equals("text")) {
            boxes.add(box(element, size, weight));
        }
        for (Node child = element.getFirstChild(); child != null; child = child.getNextSibling()) {
            if (child instanceof Element inner) {
                collect(inner, size, weight, boxes);
            }
        }
    }

    private static Box box(Element element, float size, String weight) {
        Font font = weight.equals("600") ? ChartFonts.semiBold(size) : ChartFonts.regular(size);
        String text = element.getTextContent().strip();
        double x = Double.parseDouble(element.getAttribute("x"));
        double y = Double.parseDouble(element.getAttribute("y"));
        return new Box(
                text,
                new Rectangle2D.Double(
                        x, y - CAP_HEIGHT * size, Canvas.width(text, font), (CAP_HEIGHT + DESCENT) * size));
    }
}
