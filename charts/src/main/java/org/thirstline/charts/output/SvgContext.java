package org.thirstline.charts.output;

import java.text.DecimalFormat;
import java.text.DecimalFormatSymbols;
import java.text.FieldPosition;
import java.util.Locale;
import org.apache.batik.svggen.DefaultErrorHandler;
import org.apache.batik.svggen.DefaultExtensionHandler;
import org.apache.batik.svggen.DefaultStyleHandler;
import org.apache.batik.svggen.ImageHandlerBase64Encoder;
import org.apache.batik.svggen.SVGGeneratorContext;
import org.apache.batik.svggen.SVGIDGenerator;
import org.thirstline.charts.Numbers;
import org.thirstline.charts.theme.ChartFonts;
import org.w3c.dom.Document;

/** What Batik needs beside the drawing: numbers to a hundredth of a pixel, ids, a font to start from. Confined to one drawing. */
final class SvgContext extends SVGGeneratorContext {

    private static final float DEFAULT_FONT_PX = 12f;

    SvgContext(Document document, String idPrefix) {
        super(document);
        setIDGenerator(new PrefixedIds(idPrefix));
        setExtensionHandler(new DefaultExtensionHandler());
        setImageHandler(new ImageHandlerBase64Encoder());
        setStyleHandler(new DefaultStyleHandler());
        setErrorHandler(new DefaultErrorHandler());
        setComment("");
        setPrecision(Hundredths.DECIMALS);
        // Batik's own format is one for all drawings, which wait for each other at every number.
        decimalFormat = new Hundredths();
        // Batik's default would have Java look through every font of the machine.
        GraphicContextDefaults defaults = new GraphicContextDefaults();
        defaults.setFont(ChartFonts.regular(DEFAULT_FONT_PX));
        setGraphicContextDefaults(defaults);
    }

    /** Numbers ids from one for every chart, after a prefix of the chart's own. */
    private static final class PrefixedIds extends SVGIDGenerator {
        private final String prefix;
        private int next = 1;

        PrefixedIds(String prefix) {
            this.prefix = prefix;
        }

        @Override
        public String generateID(String kind) {
            return prefix + "-" + kind + next++;
        }
    }

    /** Writes what its pattern says, but quickly: a drawing has thousands of coordinates. Halves and large numbers are left to Java. */
    static final class Hundredths extends DecimalFormat {

        static final int DECIMALS = 2;

        private static final long serialVersionUID = 1L;

        private static final DecimalFormatSymbols SYMBOLS = DecimalFormatSymbols.getInstance(Locale.US);

        Hundredths() {
            super("#.##", SYMBOLS);
        }

        @Override
        public StringBuffer format(double number, StringBuffer to, FieldPosition position) {
            int parts = Numbers.scaled(number, DECIMALS);
            return parts == Numbers.UNCERTAIN
                    ? super.format(number, to, position)
                    : append(to, Math.copySign(1.0, number) < 0.0, parts);
        }

        private static StringBuffer append(StringBuffer to, boolean negative, int parts) {
            if (negative) {
                to.append('-');
            }
            to.append(parts / 100);
            int fraction = parts % 100;
            if (fraction > 0) {
                to.append('.').append((char) ('0' + fraction / 10));
                if (fraction % 10 > 0) {
                    to.append((char) ('0' + fraction % 10));
                }
            }
            return to;
        }
    }
}
