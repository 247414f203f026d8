package org.thirstline.charts.slides;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.apache.poi.openxml4j.exceptions.InvalidFormatException;
import org.apache.poi.openxml4j.opc.OPCPackage;
import org.apache.poi.openxml4j.opc.PackagePart;
import org.apache.poi.openxml4j.opc.PackagePartName;
import org.apache.poi.openxml4j.opc.PackageRelationship;
import org.apache.poi.openxml4j.opc.PackageRelationshipTypes;
import org.apache.poi.openxml4j.opc.PackagingURIHelper;
import org.apache.poi.openxml4j.opc.TargetMode;
import org.apache.poi.xslf.usermodel.XMLSlideShow;
import org.apache.poi.xslf.usermodel.XSLFSlide;
import org.openxmlformats.schemas.presentationml.x2006.main.CTPresentation;

/** Takes the slides out of a deck and everything that spoke of them, so that no program finds a loose end to repair. Used once. */
final class Emptying {

    private final XMLSlideShow show;

    Emptying(XMLSlideShow show) {
        this.show = show;
    }

    void empty() {
        for (XSLFSlide slide : new ArrayList<>(show.getSlides())) {
            if (slide.getNotes() != null) {
                slide.getPackagePart().removeRelationship(slide.getRelationId(slide.getNotes()));
            }
        }
        for (int i = show.getSlides().size() - 1; i >= 0; i--) {
            show.removeSlide(i);
        }
        CTPresentation presentation = show.getCTPresentation();
        if (presentation.isSetCustShowLst()) {
            presentation.unsetCustShowLst();
        }
        // Sections and guides of the slides that are gone.
        if (presentation.isSetExtLst()) {
            presentation.unsetExtLst();
        }
        OPCPackage parts = show.getPackage();
        for (PackageRelationship thumbnail : parts.getRelationshipsByType(PackageRelationshipTypes.THUMBNAIL)) {
            parts.removeRelationship(thumbnail.getId());
        }
        dropUnreachable(parts);
    }

    /** Removing a slide leaves its notes, comments and pictures behind. */
    static void dropUnreachable(OPCPackage parts) {
        try {
            Set<PackagePartName> reached = reached(parts);
            List<PackagePart> loose = parts.getParts().stream()
                    .filter(part -> !part.isRelationshipPart())
                    .filter(part -> !reached.contains(part.getPartName()))
                    .toList();
            for (PackagePart part : loose) {
                parts.removePart(part);
            }
        } catch (InvalidFormatException damaged) {
            throw new IllegalStateException(damaged);
        }
    }

    private static Set<PackagePartName> reached(OPCPackage parts) throws InvalidFormatException {
        Set<PackagePartName> reached = new LinkedHashSet<>();
        Deque<PackageRelationship> open = new ArrayDeque<>();
        parts.getRelationships().forEach(open::add);
        while (!open.isEmpty()) {
            PackageRelationship next = open.remove();
            if (next.getTargetMode() == TargetMode.EXTERNAL) {
                continue;
            }
            PackagePartName name = PackagingURIHelper.createPartName(next.getTargetURI());
            PackagePart part = parts.getPart(name);
            if (part != null && reached.add(name) && !part.isRelationshipPart()) {
                part.getRelationships().forEach(open::add);
            }
        }
        return reached;
    }
}
