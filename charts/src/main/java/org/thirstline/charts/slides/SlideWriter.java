package org.thirstline.charts.slides;

import java.awt.geom.Rectangle2D;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import org.apache.poi.sl.usermodel.PictureData.PictureType;
import org.apache.poi.xslf.usermodel.XMLSlideShow;
import org.apache.poi.xslf.usermodel.XSLFPictureData;
import org.apache.poi.xslf.usermodel.XSLFPictureShape;
import org.apache.poi.xslf.usermodel.XSLFShape;
import org.apache.poi.xslf.usermodel.XSLFSlide;
import org.apache.poi.xslf.usermodel.XSLFSlideLayout;
import org.apache.poi.xslf.usermodel.XSLFTextShape;
import org.jspecify.annotations.Nullable;
import org.openxmlformats.schemas.presentationml.x2006.main.CTPicture;
import org.thirstline.charts.ChartDocument;
import org.thirstline.charts.output.PngOutput;
import org.thirstline.charts.output.SvgOutput;
import org.thirstline.charts.theme.ChartSize;
import org.thirstline.model.error.InputException;

/**
 * Writes slides as a PowerPoint file: the finding as title, the chart as vector picture with a bitmap for programs that show none, its text
 * alternative, speaker notes. The same slides give the same bytes. Used once.
 */
public final class SlideWriter {

    private static final int PIXELS_FOR_ONE = 2;

    private final XMLSlideShow show;
    private final SlideLayouts layouts;
    private final NotesPages notes;
    private final Supplier<RuntimeException> noLayout;

    private SlideWriter(XMLSlideShow show, Supplier<RuntimeException> noLayout) {
        this.show = show;
        this.layouts = new SlideLayouts(show);
        this.notes = new NotesPages(show);
        this.noLayout = noLayout;
    }

    /**
     * Returns slides as the bytes of a .pptx file.
     *
     * @param title title of the document
     * @param slides the slides, in order
     * @param template the user's deck, whose look and layouts are used and whose slides are not; null for ours
     * @throws InputException if the template is missing, no deck of slides, or has no layout with a title
     */
    public static byte[] bytes(String title, List<Slide> slides, @Nullable Path template) {
        try (XMLSlideShow show = template == null ? SlideTemplate.house() : SlideTemplate.of(template)) {
            Supplier<RuntimeException> noLayout = template == null
                    ? () -> new IllegalStateException("our own deck has no layout with a title")
                    : () -> new InputException(SlideError.TEMPLATE_NO_LAYOUT, template);
            SlideWriter writer = new SlideWriter(show, noLayout);
            slides.forEach(writer::add);
            DeckProperties.set(show, title);
            ByteArrayOutputStream bytes = new ByteArrayOutputStream();
            show.write(bytes);
            return StableZip.of(bytes.toByteArray());
        } catch (IOException error) {
            throw new UncheckedIOException(error);
        }
    }

    private void add(Slide slide) {
        XSLFSlide made;
        if (slide instanceof Slide.Opening opening) {
            made = slide(layouts.opening());
            words(made, opening.title(), opening.lines(), SlideLayouts.subtitle(made));
        } else if (slide instanceof Slide.Question question) {
            made = slide(layouts.question());
            words(made, question.title(), question.lines(), SlideLayouts.content(made));
        } else if (slide instanceof Slide.Text text) {
            made = slide(layouts.text());
            words(made, text.title(), text.lines(), SlideLayouts.content(made));
        } else {
            made = picture((Slide.Picture) slide);
        }
        SlideNumbers.add(made);
        notes.add(made, slide.notes());
    }

    private XSLFSlide slide(Optional<XSLFSlideLayout> layout) {
        return show.createSlide(layout.orElseThrow(noLayout));
    }

    private void words(XSLFSlide slide, String title, List<String> lines, Optional<XSLFTextShape> place) {
        title(slide, title);
        FittedText.lines(place.orElseGet(() -> textBox(slide)), lines);
        dropEmpty(slide);
    }

    private XSLFTextShape textBox(XSLFSlide slide) {
        XSLFTextShape box = slide.createTextBox();
        box.setAnchor(layouts.chartArea(slide.getSlideLayout()));
        return box;
    }

    private static void title(XSLFSlide slide, String title) {
        SlideLayouts.title(slide).ifPresent(shape -> FittedText.title(shape, title));
    }

    /** Programs show a hint to click in every place that is left empty. */
    private static void dropEmpty(XSLFSlide slide) {
        List<XSLFShape> empty = slide.getShapes().stream()
                .filter(shape -> shape instanceof XSLFTextShape text
                        && text.isPlaceholder()
                        && text.getText().isBlank())
                .toList();
        empty.forEach(slide::removeShape);
    }

    private XSLFSlide picture(Slide.Picture picture) {
        XSLFSlideLayout layout = layouts.chart().orElseThrow(noLayout);
        Rectangle2D area = layouts.chartArea(layout);
        ChartDocument chart = picture.chart().in(SlideLayouts.theme(layout), size(area));
        XSLFSlide slide = show.createSlide(layout);
        title(slide, chart.words().title());
        SlideLayouts.content(slide).ifPresent(slide::removeShape);
        dropEmpty(slide);
        XSLFPictureData bitmap = show.addPicture(PngOutput.bytes(chart, PIXELS_FOR_ONE), PictureType.PNG);
        XSLFPictureData vector =
                show.addPicture(SvgOutput.outlined(chart).getBytes(StandardCharsets.UTF_8), PictureType.SVG);
        XSLFPictureShape shape = slide.createPicture(bitmap);
        shape.setSvgImage(vector);
        shape.setAnchor(fitted(chart.style().size(), area));
        var properties = ((CTPicture) shape.getXmlObject()).getNvPicPr().getCNvPr();
        properties.setName("Chart " + chart.words().id());
        properties.setDescr(alternative(chart));
        return slide;
    }

    /** Returns the picture in words; the numbers are in the notes. */
    private static String alternative(ChartDocument chart) {
        String note = chart.words().note();
        String text = "Chart: " + chart.words().title() + ". " + chart.words().subtitle() + ".";
        return (note.isBlank() ? text : text + " " + note) + " The numbers are in the notes of this slide.";
    }

    private static ChartSize size(Rectangle2D area) {
        double shape = area.getWidth() / area.getHeight();
        double wide = Math.abs(Math.log(shape / ratio(ChartSize.SLIDE_BODY)));
        double narrow = Math.abs(Math.log(shape / ratio(ChartSize.SLIDE_BODY_NARROW)));
        return wide <= narrow ? ChartSize.SLIDE_BODY : ChartSize.SLIDE_BODY_NARROW;
    }

    private static double ratio(ChartSize size) {
        return (double) size.widthPx() / size.heightPx();
    }

    /** Returns the largest box of the chart's shape inside an area. */
    private static Rectangle2D fitted(ChartSize size, Rectangle2D area) {
        double scale = Math.min(area.getWidth() / size.widthPx(), area.getHeight() / size.heightPx());
        double width = scale * size.widthPx();
        double height = scale * size.heightPx();
        return new Rectangle2D.Double(
                area.getX() + (area.getWidth() - width) / 2,
                area.getY() + (area.getHeight() - height) / 2,
                width,
                height);
    }
}
