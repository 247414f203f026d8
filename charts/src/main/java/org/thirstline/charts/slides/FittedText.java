package org.thirstline.charts.slides;

import java.awt.geom.Rectangle2D;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import org.apache.poi.xslf.usermodel.XSLFSheet;
import org.apache.poi.xslf.usermodel.XSLFSlide;
import org.apache.poi.xslf.usermodel.XSLFTextParagraph;
import org.apache.poi.xslf.usermodel.XSLFTextRun;
import org.apache.poi.xslf.usermodel.XSLFTextShape;
import org.openxmlformats.schemas.drawingml.x2006.main.CTTextCharacterProperties;
import org.openxmlformats.schemas.drawingml.x2006.main.CTTextParagraph;

/**
 * Puts text into a place of a slide, smaller where the place would overflow: programs shrink text only when somebody types. Stateless and
 * thread-safe.
 */
final class FittedText {

    /** Mean width of a letter and height of a line in sizes of the type; for usual typefaces, on the safe side. */
    private static final double LETTER = 0.54;

    private static final double LINE = 1.2;
    private static final double GAP = 0.6;

    private static final double SMALLEST_PT = 12.0;
    private static final double USUAL_PT = 18.0;

    /** A number and its unit stay on one line. */
    private static final Pattern UNIT = Pattern.compile("(?<=\\d) (?=%|(?:Mg/ha|mm|in|short ton/acre)\\b)");

    private FittedText() {}

    static void title(XSLFTextShape shape, String text) {
        lines(shape, List.of(UNIT.matcher(text).replaceAll("\u00A0")));
    }

    static void lines(XSLFTextShape shape, List<String> lines) {
        // What the placeholder says of size and colour is gone once its text is cleared.
        Optional<CTTextCharacterProperties> prompt = prompt(shape);
        shape.clearText();
        for (String line : lines) {
            shape.addNewTextParagraph().addNewTextRun().setText(line);
        }
        List<XSLFTextRun> runs = shape.getTextParagraphs().stream()
                .map(XSLFTextParagraph::getTextRuns)
                .filter(list -> !list.isEmpty())
                .map(list -> list.get(0))
                .toList();
        if (runs.isEmpty()) {
            return;
        }
        double inherited = size(runs.get(0));
        double usual = prompt.filter(CTTextCharacterProperties::isSetSz)
                .map(look -> look.getSz() / 100.0)
                .orElse(inherited);
        double fits = fitting(shape, lines, usual);
        for (XSLFTextRun run : runs) {
            if (fits != inherited) {
                run.setFontSize(fits);
            }
            prompt.filter(CTTextCharacterProperties::isSetSolidFill)
                    .ifPresent(look -> properties(run).setSolidFill(look.getSolidFill()));
        }
    }

    /** Some programs keep the look of a layout in its prompt instead of its styles. */
    private static Optional<CTTextCharacterProperties> prompt(XSLFTextShape shape) {
        XSLFSheet sheet = shape.getSheet();
        if (!(sheet instanceof XSLFSlide slide)) {
            return Optional.empty();
        }
        Rectangle2D place = shape.getAnchor();
        return slide.getSlideLayout().getShapes().stream()
                .filter(XSLFTextShape.class::isInstance)
                .map(XSLFTextShape.class::cast)
                .filter(original -> original.getPlaceholder() == shape.getPlaceholder())
                .filter(original -> place.equals(original.getAnchor()))
                .flatMap(original -> original.getTextParagraphs().stream())
                .map(XSLFTextParagraph::getXmlObject)
                .flatMap(paragraph -> look(paragraph).stream())
                .findFirst();
    }

    private static Optional<CTTextCharacterProperties> look(CTTextParagraph paragraph) {
        if (paragraph.sizeOfRArray() > 0 && paragraph.getRArray(0).isSetRPr()) {
            return Optional.of(paragraph.getRArray(0).getRPr());
        }
        return Optional.ofNullable(paragraph.getEndParaRPr());
    }

    private static CTTextCharacterProperties properties(XSLFTextRun run) {
        var text = (org.openxmlformats.schemas.drawingml.x2006.main.CTRegularTextRun) run.getXmlObject();
        return text.isSetRPr() ? text.getRPr() : text.addNewRPr();
    }

    private static double size(XSLFTextRun run) {
        Double size = run.getFontSize();
        return size == null ? USUAL_PT : size;
    }

    /** Returns the largest size up to the usual one at which the lines fit. */
    private static double fitting(XSLFTextShape shape, List<String> lines, double usual) {
        double width = shape.getAnchor().getWidth() - shape.getLeftInset() - shape.getRightInset();
        double height = shape.getAnchor().getHeight() - shape.getTopInset() - shape.getBottomInset();
        double size = usual;
        while (size > SMALLEST_PT && height(lines, width, size) > height) {
            size -= 1.0;
        }
        return Math.max(Math.min(usual, SMALLEST_PT), size);
    }

    private static double height(List<String> lines, double width, double size) {
        double letters = Math.max(1.0, width / (LETTER * size));
        double rows = 0.0;
        for (String line : lines) {
            rows += Math.ceil(line.length() / letters);
        }
        return size * (LINE * rows + GAP * (lines.size() - 1));
    }
}
