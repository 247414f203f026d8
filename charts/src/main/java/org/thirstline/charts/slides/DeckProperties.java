package org.thirstline.charts.slides;

import java.util.Date;
import java.util.Optional;
import org.apache.poi.openxml4j.exceptions.InvalidFormatException;
import org.apache.poi.openxml4j.opc.PackageProperties;
import org.apache.poi.xslf.usermodel.XMLSlideShow;

/** What a deck says of itself: its title and program, and no time, so that the same slides give the same bytes. Stateless. */
final class DeckProperties {

    private static final String PROGRAM = "Thirstline";

    private DeckProperties() {}

    static void set(XMLSlideShow show, String title) {
        try {
            PackageProperties properties = show.getPackage().getPackageProperties();
            properties.setTitleProperty(title);
            properties.setCreatorProperty(PROGRAM);
            properties.setLastModifiedByProperty(PROGRAM);
            properties.setRevisionProperty("1");
            properties.setCreatedProperty(Optional.<Date>empty());
            properties.setModifiedProperty(Optional.<Date>empty());
            show.getProperties().getExtendedProperties().setApplication(PROGRAM);
        } catch (InvalidFormatException impossible) {
            throw new IllegalStateException(impossible);
        }
    }
}
