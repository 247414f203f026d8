package org.thirstline.charts.slides;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.util.ArrayList;
import java.util.List;
import org.apache.poi.openxml4j.opc.OPCPackage;
import org.apache.poi.openxml4j.opc.PackagePart;
import org.apache.poi.openxml4j.opc.PackagePartName;
import org.apache.poi.openxml4j.opc.PackageRelationship;
import org.apache.poi.openxml4j.opc.PackagingURIHelper;
import org.apache.poi.openxml4j.opc.TargetMode;
import org.apache.poi.xslf.usermodel.XMLSlideShow;
import org.apache.poi.xslf.usermodel.XSLFShape;
import org.apache.poi.xslf.usermodel.XSLFSlide;
import org.apache.xmlbeans.XmlError;
import org.apache.xmlbeans.XmlObject;
import org.apache.xmlbeans.XmlOptions;

/** What a program that opens a deck would have to repair: loose ends between parts, XML against the schema, ids given twice. */
final class DeckParts {

    private DeckParts() {}

    static void check(byte[] deck) throws Exception {
        try (OPCPackage parts = OPCPackage.open(new ByteArrayInputStream(deck))) {
            List<PackagePartName> targets = new ArrayList<>();
            for (PackageRelationship relation : parts.getRelationships()) {
                targets.add(target(parts, relation));
            }
            for (PackagePart part : parts.getParts()) {
                if (!part.isRelationshipPart()) {
                    for (PackageRelationship relation : part.getRelationships()) {
                        targets.add(target(parts, relation));
                    }
                }
            }
            for (PackagePart part : parts.getParts()) {
                assertThat(part.isRelationshipPart() || targets.contains(part.getPartName()))
                        .as("%s is spoken of", part.getPartName())
                        .isTrue();
                assertThat(part.getContentType()).as("%s", part.getPartName()).isNotBlank();
            }
        }
        try (XMLSlideShow show = new XMLSlideShow(new ByteArrayInputStream(deck))) {
            valid("presentation", show.getCTPresentation());
            show.getSlideMasters().forEach(master -> valid("master", master.getXmlObject()));
            valid("notes master", show.getNotesMaster().getXmlObject());
            show.getSlides().forEach(DeckParts::check);
        }
    }

    private static PackagePartName target(OPCPackage parts, PackageRelationship relation) throws Exception {
        assertThat(relation.getTargetMode()).isEqualTo(TargetMode.INTERNAL);
        PackagePartName name = PackagingURIHelper.createPartName(relation.getTargetURI());
        assertThat(parts.containPart(name))
                .as("%s of %s is there", name, relation.getSourceURI())
                .isTrue();
        return name;
    }

    private static void check(XSLFSlide slide) {
        valid("slide " + slide.getSlideNumber(), slide.getXmlObject());
        valid("layout", slide.getSlideLayout().getXmlObject());
        valid("notes", slide.getNotes().getXmlObject());
        assertThat(slide.getShapes()).extracting(XSLFShape::getShapeId).doesNotHaveDuplicates();
    }

    private static void valid(String what, XmlObject xml) {
        List<XmlError> errors = new ArrayList<>();
        xml.validate(new XmlOptions().setErrorListener(errors));
        assertThat(errors).as(what).isEmpty();
    }
}
