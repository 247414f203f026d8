package org.thirstline.charts.slides;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import org.apache.poi.ooxml.POIXMLDocumentPart.RelationPart;
import org.apache.poi.sl.usermodel.Placeholder;
import org.apache.poi.xslf.usermodel.XMLSlideShow;
import org.apache.poi.xslf.usermodel.XSLFNotes;
import org.apache.poi.xslf.usermodel.XSLFRelation;
import org.apache.poi.xslf.usermodel.XSLFSlide;
import org.apache.poi.xslf.usermodel.XSLFSlideMaster;
import org.apache.poi.xslf.usermodel.XSLFTextShape;

/** What a speaker reads, on the notes page of a slide. Confined to one deck. */
final class NotesPages {

    /** The library copies the fields in them as plain text with the attributes of a field, which the schema forbids. */
    private static final Set<Placeholder> FIELDS =
            EnumSet.of(Placeholder.DATETIME, Placeholder.SLIDE_NUMBER, Placeholder.HEADER, Placeholder.FOOTER);

    private final XMLSlideShow show;

    NotesPages(XMLSlideShow show) {
        this.show = show;
    }

    void add(XSLFSlide slide, String text) {
        if (text.isBlank()) {
            return;
        }
        if (show.getNotesMaster() == null) {
            createMaster();
        }
        XSLFNotes notes = show.getNotesSlide(slide);
        for (XSLFTextShape shape : notes.getPlaceholders()) {
            if (shape.getTextType() == Placeholder.BODY) {
                shape.setText(text);
            } else if (FIELDS.contains(shape.getTextType())) {
                notes.removeShape(shape);
            }
        }
    }

    /**
     * The library names the theme of the notes after the themes that the deck itself points to and so hits upon the names of those of its
     * slide masters; while the notes are made, the deck points to all of them.
     */
    private void createMaster() {
        List<String> added = new ArrayList<>();
        for (XSLFSlideMaster master : show.getSlideMasters()) {
            RelationPart relation = show.addRelation(null, XSLFRelation.THEME, master.getTheme());
            added.add(relation.getRelationship().getId());
        }
        show.createNotesMaster();
        added.forEach(show.getPackagePart()::removeRelationship);
    }
}
