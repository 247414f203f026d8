package org.thirstline.charts.theme;

import java.awt.Font;
import java.awt.FontFormatException;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.Base64;
import java.util.Locale;

/** The bundled typeface, IBM Plex Sans (SIL Open Font License 1.1), so that charts are the same on every machine. Thread-safe. */
public final class ChartFonts {

    /** Family to ask for in SVG and HTML, with what to fall back on. */
    public static final String STACK =
            "'IBM Plex Sans', 'Segoe UI', 'Helvetica Neue', Arial, 'Liberation Sans', sans-serif";

    private static final String REGULAR = "IBMPlexSans-Regular";
    private static final String SEMI_BOLD = "IBMPlexSans-SemiBold";

    private ChartFonts() {}

    private static final class Loaded {
        static final Font REGULAR_FONT = load(REGULAR);
        static final Font SEMI_BOLD_FONT = load(SEMI_BOLD);
        static final String SEMI_BOLD_FAMILY = SEMI_BOLD_FONT.getFamily(Locale.ROOT);
    }

    private static final class Embedded {
        static final String CSS = face(REGULAR, 400) + face(SEMI_BOLD, 600);
    }

    /**
     * Returns the regular weight.
     *
     * @param px size
     */
    public static Font regular(float px) {
        return Loaded.REGULAR_FONT.deriveFont(px);
    }

    /**
     * Returns the semi-bold weight.
     *
     * @param px size
     */
    public static Font semiBold(float px) {
        return Loaded.SEMI_BOLD_FONT.deriveFont(px);
    }

    /** Returns the family that Java2D knows the semi-bold weight by. */
    public static String semiBoldFamily() {
        return Loaded.SEMI_BOLD_FAMILY;
    }

    /** Returns CSS that embeds the Latin letters of both weights; others come from the fallback fonts. */
    public static String embeddedCss() {
        return Embedded.CSS;
    }

    /**
     * Opens the font file of a weight.
     *
     * @param semiBold which weight
     */
    public static InputStream file(boolean semiBold) {
        return resource((semiBold ? SEMI_BOLD : REGULAR) + ".ttf");
    }

    private static Font load(String name) {
        try (InputStream file = resource(name + ".ttf")) {
            return Font.createFont(Font.TRUETYPE_FONT, file);
        } catch (IOException error) {
            throw new UncheckedIOException(error);
        } catch (FontFormatException error) {
            throw new IllegalStateException("bundled font " + name + " is damaged", error);
        }
    }

    private static String face(String name, int weight) {
        try (InputStream file = resource(name + "-Latin1.woff2")) {
            return "@font-face{font-family:'IBM Plex Sans';font-weight:" + weight
                    + ";src:url(data:font/woff2;base64,"
                    + Base64.getEncoder().encodeToString(file.readAllBytes()) + ") format('woff2')}\n";
        } catch (IOException error) {
            throw new UncheckedIOException(error);
        }
    }

    private static InputStream resource(String file) {
        InputStream stream = ChartFonts.class.getResourceAsStream("/org/thirstline/charts/font/" + file);
        if (stream == null) {
            throw new IllegalStateException("bundled font " + file + " is missing");
        }
        return stream;
    }
}
