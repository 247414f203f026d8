package org.thirstline.charts.slides;

import org.thirstline.model.error.ErrorCode;

/** What can be wrong with a template for slides. */
public enum SlideError implements ErrorCode {
    /** File. */
    TEMPLATE_MISSING("%s: there is no such file; --template takes a PowerPoint file (.pptx)"),
    /** File. */
    TEMPLATE_NOT_SLIDES("%s is not a PowerPoint file of slides; --template takes a .pptx file"),
    /** File. */
    TEMPLATE_KIND(
            "%s is a template or macro file (.potx, .pptm); open it in PowerPoint or LibreOffice and save it as .pptx"),
    /** File. */
    TEMPLATE_NO_LAYOUT("%s has no slide layout with a title; add one, or leave --template out");

    private final String template;

    SlideError(String template) {
        this.template = template;
    }

    @Override
    public String template() {
        return template;
    }
}
