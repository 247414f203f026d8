package org.thirstline.charts.slides;

import org.apache.poi.xslf.usermodel.XSLFSlide;
import org.apache.poi.xslf.usermodel.XSLFTextShape;
import org.openxmlformats.schemas.presentationml.x2006.main.CTShape;

/** Numbers slides where their layout has a place for it; new slides come without. Stateless. */
final class SlideNumbers {

    private SlideNumbers() {}

    static void add(XSLFSlide slide) {
        SlideLayouts.slideNumber(slide.getSlideLayout()).ifPresent(place -> copy(slide, place));
    }

    private static void copy(XSLFSlide slide, XSLFTextShape place) {
        long id = 1
                + slide.getShapes().stream()
                        .mapToLong(shape -> shape.getShapeId())
                        .max()
                        .orElse(1);
        CTShape shape = slide.getXmlObject().getCSld().getSpTree().addNewSp();
        shape.set(place.getXmlObject());
        shape.getNvSpPr().getCNvPr().setId(id);
    }
}
