package org.thirstline.charts.slides;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.apache.poi.ooxml.POIXMLException;
import org.apache.poi.openxml4j.exceptions.OpenXML4JException;
import org.apache.poi.openxml4j.exceptions.OpenXML4JRuntimeException;
import org.apache.poi.openxml4j.opc.OPCPackage;
import org.apache.poi.xslf.usermodel.XMLSlideShow;
import org.apache.poi.xslf.usermodel.XSLFRelation;
import org.thirstline.model.error.InputException;

/** Empty decks to put slides into: our own, or the user's with its slides taken out. Stateless and thread-safe. */
final class SlideTemplate {

    /** Parts of our own deck and the resources they are kept in. */
    private static final Map<String, String> HOUSE = new LinkedHashMap<>();

    static {
        HOUSE.put("[Content_Types].xml", "content-types.xml");
        HOUSE.put("_rels/.rels", "root-rels.xml");
        HOUSE.put("ppt/presentation.xml", "presentation.xml");
        HOUSE.put("ppt/_rels/presentation.xml.rels", "presentation-rels.xml");
        HOUSE.put("ppt/theme/theme1.xml", "theme.xml");
        HOUSE.put("ppt/slideMasters/slideMaster1.xml", "master.xml");
        HOUSE.put("ppt/slideMasters/_rels/slideMaster1.xml.rels", "master-rels.xml");
        HOUSE.put("ppt/slideLayouts/slideLayout1.xml", "layout-title.xml");
        HOUSE.put("ppt/slideLayouts/_rels/slideLayout1.xml.rels", "layout-rels.xml");
        HOUSE.put("ppt/slideLayouts/slideLayout2.xml", "layout-text.xml");
        HOUSE.put("ppt/slideLayouts/_rels/slideLayout2.xml.rels", "layout-rels.xml");
        HOUSE.put("ppt/slideLayouts/slideLayout3.xml", "layout-chart.xml");
        HOUSE.put("ppt/slideLayouts/_rels/slideLayout3.xml.rels", "layout-rels.xml");
        HOUSE.put("ppt/slideLayouts/slideLayout4.xml", "layout-question.xml");
        HOUSE.put("ppt/slideLayouts/_rels/slideLayout4.xml.rels", "layout-rels.xml");
    }

    private SlideTemplate() {}

    static XMLSlideShow house() {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (ZipOutputStream zip = new ZipOutputStream(bytes)) {
            for (Map.Entry<String, String> part : HOUSE.entrySet()) {
                zip.putNextEntry(new ZipEntry(part.getKey()));
                zip.write(resource(part.getValue()));
                zip.closeEntry();
            }
        } catch (IOException error) {
            throw new UncheckedIOException(error);
        }
        try {
            return new XMLSlideShow(new ByteArrayInputStream(bytes.toByteArray()));
        } catch (IOException error) {
            throw new UncheckedIOException(error);
        }
    }

    private static byte[] resource(String name) throws IOException {
        try (InputStream file = SlideTemplate.class.getResourceAsStream(name)) {
            if (file == null) {
                throw new IllegalStateException("slide part " + name + " is missing");
            }
            return file.readAllBytes();
        }
    }

    /** Opens the user's deck without its slides. */
    static XMLSlideShow of(Path file) {
        if (!Files.isRegularFile(file)) {
            throw new InputException(SlideError.TEMPLATE_MISSING, file);
        }
        XMLSlideShow show = open(file);
        boolean slides = show.getPackagePart().getContentType().equals(XSLFRelation.MAIN.getContentType());
        if (!slides) {
            throw new InputException(SlideError.TEMPLATE_KIND, file);
        }
        new Emptying(show).empty();
        return show;
    }

    private static XMLSlideShow open(Path file) {
        try {
            OPCPackage parts = OPCPackage.open(new ByteArrayInputStream(Files.readAllBytes(file)));
            return new XMLSlideShow(parts);
        } catch (IOException
                | OpenXML4JException
                | OpenXML4JRuntimeException
                | POIXMLException
                | IllegalArgumentException
                | ClassCastException notSlides) {
            throw new InputException(SlideError.TEMPLATE_NOT_SLIDES, file);
        }
    }
}
