package org.thirstline.charts.slides;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.awt.Dimension;
import java.awt.geom.Rectangle2D;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import javax.imageio.ImageIO;
import org.apache.poi.openxml4j.opc.OPCPackage;
import org.apache.poi.sl.usermodel.Placeholder;
import org.apache.poi.xslf.usermodel.SlideLayout;
import org.apache.poi.xslf.usermodel.XMLSlideShow;
import org.apache.poi.xslf.usermodel.XSLFPictureShape;
import org.apache.poi.xslf.usermodel.XSLFRelation;
import org.apache.poi.xslf.usermodel.XSLFSlide;
import org.apache.poi.xslf.usermodel.XSLFTextShape;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.openxmlformats.schemas.presentationml.x2006.main.CTPicture;
import org.thirstline.charts.ChartDocument;
import org.thirstline.charts.Samples;
import org.thirstline.charts.theme.ChartSize;
import org.thirstline.charts.theme.ChartTheme;
import org.thirstline.model.error.InputException;

class SlideWriterTest {

    private static final String QUESTION = "What did missing rain cost?";
    private static final ChartDocument CHART = Samples.forSlide(ChartTheme.LIGHT, ChartSize.SLIDE_BODY);

    private static final List<Slide> SLIDES = List.of(
            new Slide.Opening("Larkmoor & East", List.of("Invented data."), "Good morning."),
            new Slide.Question(QUESTION, List.of("One field", "Thirty years"), "Ask it."),
            new Slide.Picture(Samples::forSlide, "2012: loss 8.8 Mg/ha"),
            new Slide.Text("What to mind", List.of("A simulation, not a forecast"), "Say so."));

    @TempDir
    private Path folder;

    private static XMLSlideShow open(byte[] deck) throws IOException {
        return new XMLSlideShow(new ByteArrayInputStream(deck));
    }

    private static String notes(XSLFSlide slide) {
        return slide.getNotes().getShapes().stream()
                .filter(XSLFTextShape.class::isInstance)
                .map(XSLFTextShape.class::cast)
                .filter(shape -> shape.getTextType() == Placeholder.BODY)
                .map(XSLFTextShape::getText)
                .findFirst()
                .orElseThrow();
    }

    private static XSLFPictureShape picture(XSLFSlide slide) {
        return slide.getShapes().stream()
                .filter(XSLFPictureShape.class::isInstance)
                .map(XSLFPictureShape.class::cast)
                .findFirst()
                .orElseThrow();
    }

    @Test
    void slidesCarryTitlesWordsAndNotes() throws Exception {
        byte[] deck = SlideWriter.bytes("Larkmoor", SLIDES, null);

        DeckParts.check(deck);
        try (XMLSlideShow show = open(deck)) {
            assertThat(show.getSlides())
                    .extracting(slide -> slide.getPlaceholder(0).getText().replace('\u00A0', ' '))
                    .containsExactly("Larkmoor & East", QUESTION, CHART.words().title(), "What to mind");
            assertThat(show.getSlides())
                    .extracting(SlideWriterTest::notes)
                    .containsExactly("Good morning.", "Ask it.", "2012: loss 8.8 Mg/ha", "Say so.");
            assertThat(SlideLayouts.content(show.getSlides().get(1))
                            .orElseThrow()
                            .getText())
                    .isEqualTo("One field\nThirty years");
            assertThat(show.getProperties().getCoreProperties().getTitle()).isEqualTo("Larkmoor");
        }
    }

    @Test
    void pictureIsVectorWithABitmapAndAnAlternative() throws Exception {
        try (XMLSlideShow show = open(SlideWriter.bytes("Larkmoor", SLIDES, null))) {
            XSLFPictureShape picture = picture(show.getSlides().get(2));
            String svg = new String(picture.getSvgImage().getData(), StandardCharsets.UTF_8);
            var bitmap = ImageIO.read(
                    new ByteArrayInputStream(picture.getPictureData().getData()));

            assertThat(svg).contains("<path", "viewBox=\"0 0 1600 686\"").doesNotContain("<text");
            assertThat(bitmap.getWidth()).isEqualTo(2 * ChartSize.SLIDE_BODY.widthPx());
            assertThat(((CTPicture) picture.getXmlObject())
                            .getNvPicPr()
                            .getCNvPr()
                            .getDescr())
                    .startsWith("Chart: " + CHART.words().title())
                    .contains(CHART.words().subtitle());
            Rectangle2D page = new Rectangle2D.Double(0, 0, 960, 540);
            assertThat(page.contains(picture.getAnchor())).isTrue();
            // As wide to its height as it was drawn; the page is measured in points with decimals.
            assertThat(picture.getAnchor().getWidth() / picture.getAnchor().getHeight())
                    .isCloseTo(1600.0 / 686.0, org.assertj.core.api.Assertions.within(1e-3));
        }
    }

    @Test
    void sameSlidesGiveTheSameBytesWithoutATime() throws Exception {
        byte[] deck = SlideWriter.bytes("Larkmoor", SLIDES, null);

        assertThat(SlideWriter.bytes("Larkmoor", SLIDES, null)).isEqualTo(deck);
        try (ZipInputStream zip = new ZipInputStream(new ByteArrayInputStream(deck))) {
            for (ZipEntry entry = zip.getNextEntry(); entry != null; entry = zip.getNextEntry()) {
                assertThat(entry.getTimeLocal().getYear()).as(entry.getName()).isEqualTo(1980);
                if (entry.getName().startsWith("docProps")) {
                    assertThat(new String(zip.readAllBytes(), StandardCharsets.UTF_8))
                            .contains("Thirstline")
                            .doesNotContain("dcterms:created", "dcterms:modified");
                }
            }
        }
    }

    /** A deck of 4:3 with the library's own layouts, one slide with notes on it. */
    private Path template() throws IOException {
        Path file = folder.resolve("house.pptx");
        try (XMLSlideShow show = new XMLSlideShow();
                OutputStream out = Files.newOutputStream(file)) {
            XSLFSlide slide = show.createSlide(show.findLayout("Title and Content"));
            slide.getPlaceholder(0).setText("Our budget");
            show.getNotesSlide(slide);
            show.write(out);
        }
        return file;
    }

    @Test
    void templateGivesItsLayoutsAndKeepsItsSlides() throws Exception {
        byte[] deck = SlideWriter.bytes("Larkmoor", SLIDES, template());

        DeckParts.check(deck);
        try (XMLSlideShow show = open(deck)) {
            assertThat(show.getPageSize()).isEqualTo(new Dimension(720, 540));
            assertThat(show.getSlides())
                    .extracting(slide -> slide.getSlideLayout().getType())
                    .containsExactly(
                            SlideLayout.TITLE,
                            SlideLayout.SECTION_HEADER,
                            SlideLayout.TITLE_ONLY,
                            SlideLayout.TITLE_AND_CONTENT);
            assertThat(show.getSlides())
                    .extracting(slide -> slide.getPlaceholder(0).getText())
                    .doesNotContain("Our budget");
            XSLFSlide chart = show.getSlides().get(2);
            Rectangle2D title = SlideLayouts.title(chart).orElseThrow().getAnchor();
            Rectangle2D picture = picture(chart).getAnchor();
            assertThat(picture.getY()).isGreaterThanOrEqualTo(title.getMaxY());
            assertThat(new Rectangle2D.Double(0, 0, 720, 540).contains(picture)).isTrue();
            assertThat(new String(picture(chart).getSvgImage().getData(), StandardCharsets.UTF_8))
                    .contains("viewBox=\"0 0 1060 640\"");
        }
    }

    @Test
    void longTitlesAreMadeSmallerUntilTheyFit() throws Exception {
        String title = "A finding of so many words that it would need four lines of the usual size, ".repeat(2);
        List<Slide> slides = List.of(new Slide.Text(title, List.of("One line"), "Notes"));
        try (XMLSlideShow show = open(SlideWriter.bytes("Larkmoor", slides, null))) {
            XSLFTextShape shape = SlideLayouts.title(show.getSlides().get(0)).orElseThrow();
            assertThat(shape.getTextHeight())
                    .isLessThanOrEqualTo(shape.getAnchor().getHeight());
        }
    }

    private SlideError refused(Path template) {
        InputException error =
                catchThrowableOfType(InputException.class, () -> SlideWriter.bytes("Larkmoor", SLIDES, template));
        assertThat(error).hasMessageContaining(String.valueOf(template.getFileName()));
        return (SlideError) error.code();
    }

    @Test
    void whatIsNoDeckIsRefused() throws Exception {
        Path text = Files.writeString(folder.resolve("notes.pptx"), "not a deck");
        Path other = folder.resolve("zip.pptx");
        Files.write(other, StableZip.of(new byte[0]));

        assertThat(refused(folder.resolve("none.pptx"))).isEqualTo(SlideError.TEMPLATE_MISSING);
        assertThat(refused(folder)).isEqualTo(SlideError.TEMPLATE_MISSING);
        assertThat(refused(text)).isEqualTo(SlideError.TEMPLATE_NOT_SLIDES);
        assertThat(refused(other)).isEqualTo(SlideError.TEMPLATE_NOT_SLIDES);
    }

    @Test
    void templateFilesAndDecksWithoutTitlesAreRefused() throws Exception {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (OPCPackage parts = OPCPackage.open(template().toFile())) {
            parts.replaceContentType(
                    XSLFRelation.MAIN.getContentType(),
                    "application/vnd.openxmlformats-officedocument.presentationml.template.main+xml");
            parts.save(bytes);
        }
        Path kind = Files.write(folder.resolve("house.potx"), bytes.toByteArray());
        Path bare = folder.resolve("bare.pptx");
        try (XMLSlideShow show = new XMLSlideShow();
                OutputStream out = Files.newOutputStream(bare)) {
            show.getSlideMasters().forEach(master -> List.of(master.getSlideLayouts())
                    .forEach(layout -> List.copyOf(layout.getShapes()).forEach(layout::removeShape)));
            show.write(out);
        }

        assertThat(refused(kind)).isEqualTo(SlideError.TEMPLATE_KIND);
        assertThat(refused(bare)).isEqualTo(SlideError.TEMPLATE_NO_LAYOUT);
    }
}
