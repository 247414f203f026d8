package org.thirstline.charts.slides;

import java.awt.Color;
import java.awt.Dimension;
import java.awt.geom.Rectangle2D;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.apache.poi.sl.usermodel.Placeholder;
import org.apache.poi.xslf.usermodel.SlideLayout;
import org.apache.poi.xslf.usermodel.XMLSlideShow;
import org.apache.poi.xslf.usermodel.XSLFBackground;
import org.apache.poi.xslf.usermodel.XSLFShape;
import org.apache.poi.xslf.usermodel.XSLFSheet;
import org.apache.poi.xslf.usermodel.XSLFSlideLayout;
import org.apache.poi.xslf.usermodel.XSLFTextShape;
import org.thirstline.charts.theme.ChartTheme;

/** Finds the layouts of a deck that fit our slides, and the room they leave. Confined to one deck. */
final class SlideLayouts {

    private static final Set<Placeholder> TITLES = EnumSet.of(Placeholder.TITLE, Placeholder.CENTERED_TITLE);

    private static final Set<Placeholder> CONTENT =
            EnumSet.of(Placeholder.BODY, Placeholder.CONTENT, Placeholder.PICTURE, Placeholder.CHART);

    private static final Set<Placeholder> FOOTERS =
            EnumSet.of(Placeholder.FOOTER, Placeholder.DATETIME, Placeholder.SLIDE_NUMBER);

    private static final double EDGE = 0.04;

    private final List<XSLFSlideLayout> layouts;
    private final Dimension page;

    SlideLayouts(XMLSlideShow show) {
        layouts = show.getSlideMasters().stream()
                .flatMap(master -> List.of(master.getSlideLayouts()).stream())
                .toList();
        page = show.getPageSize();
    }

    Optional<XSLFSlideLayout> opening() {
        return ofType(SlideLayout.TITLE).or(this::text);
    }

    Optional<XSLFSlideLayout> question() {
        return ofType(SlideLayout.SECTION_HEADER)
                .filter(layout -> content(layout).isPresent())
                .or(this::text);
    }

    Optional<XSLFSlideLayout> text() {
        return ofType(SlideLayout.TITLE_AND_CONTENT)
                .or(() -> ofType(SlideLayout.TEXT))
                .or(() -> layouts.stream()
                        .filter(layout -> hasTitle(layout) && content(layout).isPresent())
                        .findFirst())
                .or(this::anyWithTitle);
    }

    /** A layout for a picture first, then a title alone, then a title over anything. */
    Optional<XSLFSlideLayout> chart() {
        return layouts.stream()
                .filter(layout -> layout.getName().equalsIgnoreCase("Chart") && hasTitle(layout))
                .findFirst()
                .or(() -> ofType(SlideLayout.TITLE_ONLY))
                .or(this::text);
    }

    private Optional<XSLFSlideLayout> ofType(SlideLayout type) {
        return layouts.stream()
                .filter(layout -> layout.getType() == type && hasTitle(layout))
                .findFirst();
    }

    private Optional<XSLFSlideLayout> anyWithTitle() {
        return layouts.stream().filter(SlideLayouts::hasTitle).findFirst();
    }

    private static boolean hasTitle(XSLFSlideLayout layout) {
        return title(layout).isPresent();
    }

    static Optional<XSLFTextShape> title(XSLFSheet sheet) {
        return placeholders(sheet, TITLES).findFirst();
    }

    /** Returns the largest place for content. */
    static Optional<XSLFTextShape> content(XSLFSheet sheet) {
        return placeholders(sheet, CONTENT).max(Comparator.comparingDouble(SlideLayouts::area));
    }

    static Optional<XSLFTextShape> subtitle(XSLFSheet sheet) {
        return placeholders(sheet, EnumSet.of(Placeholder.SUBTITLE)).findFirst().or(() -> content(sheet));
    }

    static Optional<XSLFTextShape> slideNumber(XSLFSheet sheet) {
        return placeholders(sheet, EnumSet.of(Placeholder.SLIDE_NUMBER)).findFirst();
    }

    private static Stream<XSLFTextShape> placeholders(XSLFSheet sheet, Set<Placeholder> kinds) {
        return sheet.getShapes().stream()
                .filter(XSLFTextShape.class::isInstance)
                .map(XSLFTextShape.class::cast)
                .filter(shape -> shape.getPlaceholder() != null && kinds.contains(shape.getPlaceholder()))
                .filter(shape -> shape.getAnchor() != null);
    }

    private static double area(XSLFShape shape) {
        Rectangle2D anchor = shape.getAnchor();
        return anchor == null ? 0.0 : anchor.getWidth() * anchor.getHeight();
    }

    /** Returns whether the charts of a layout need dark or light ink. */
    static ChartTheme theme(XSLFSlideLayout layout) {
        XSLFBackground background = layout.getBackground();
        Color color = background == null ? null : background.getFillColor();
        return color != null && brightness(color) < 0.4 ? ChartTheme.DARK : ChartTheme.LIGHT;
    }

    /** Weights of ITU-R BT.601, from memory. */
    private static double brightness(Color color) {
        return (0.299 * color.getRed() + 0.587 * color.getGreen() + 0.114 * color.getBlue()) / 255.0;
    }

    /** Returns where a chart goes on a slide of a layout: in the place for content, else between title and footers. */
    Rectangle2D chartArea(XSLFSlideLayout layout) {
        Optional<XSLFTextShape> place = content(layout);
        if (place.isPresent()) {
            return place.get().getAnchor();
        }
        double edge = EDGE * page.getWidth();
        double top = title(layout).map(title -> title.getAnchor().getMaxY()).orElse(edge) + 0.25 * edge;
        double bottom = placeholders(layout, FOOTERS)
                .mapToDouble(footer -> footer.getAnchor().getY())
                .filter(y -> y > 0.5 * page.getHeight())
                .min()
                .orElse(page.getHeight() - 0.5 * edge);
        return new Rectangle2D.Double(
                edge, top, page.getWidth() - 2 * edge, Math.max(page.getHeight() / 3.0, bottom - top));
    }
}
