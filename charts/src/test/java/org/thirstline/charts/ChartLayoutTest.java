package org.thirstline.charts;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.awt.geom.Rectangle2D;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.thirstline.charts.output.SvgOutput;
import org.thirstline.charts.theme.ChartFonts;
import org.thirstline.charts.theme.ChartSize;
import org.thirstline.charts.theme.ChartTheme;

/** No chart, on ordinary or awkward data, cuts off a text or writes one over another. */
class ChartLayoutTest {

    /** Drawn positions are rounded to hundredths of a pixel. */
    private static final double ROUNDING_PX = 0.05;

    private static final Map<String, Function<ChartStyle, ChartDocument>> CHARTS = Samples.all();

    static Stream<String> names() {
        return CHARTS.keySet().stream();
    }

    @ParameterizedTest
    @MethodSource("names")
    void textsStayInsideAndApart(String name) throws Exception {
        for (ChartSize size : ChartSize.values()) {
            for (UnitSystem units : UnitSystem.values()) {
                ChartStyle style = Samples.style(ChartTheme.LIGHT, size).withUnits(units);
                ChartDocument chart = CHARTS.get(name).apply(style);
                List<SvgTexts.Box> boxes =
                        SvgTexts.of(SvgOutput.standalone(chart)).boxes();
                assertThat(boxes).isNotEmpty();
                check(name + " as " + size.words() + " in " + units, boxes, size);
            }
        }
    }

    @Test
    void collisionsAndCutTextsAreFound() throws Exception {
        String svg = "<svg><g font-size=\"20px\"><text x=\"10\" y=\"40\">drought</text>"
                + "<text x=\"%s\" y=\"%s\">penalty</text></g></svg>";

        check("apart", SvgTexts.of(svg.formatted(10, 80)).boxes(), ChartSize.THUMBNAIL);
        assertThatThrownBy(
                        () -> check("over", SvgTexts.of(svg.formatted(60, 45)).boxes(), ChartSize.THUMBNAIL))
                .isInstanceOf(AssertionError.class)
                .hasMessageContaining("'drought' and 'penalty' apart");
        assertThatThrownBy(
                        () -> check("cut", SvgTexts.of(svg.formatted(440, 80)).boxes(), ChartSize.THUMBNAIL))
                .isInstanceOf(AssertionError.class)
                .hasMessageContaining("'penalty' inside");
    }

    private static void check(String what, List<SvgTexts.Box> boxes, ChartSize size) {
        Rectangle2D page = new Rectangle2D.Double(0, 0, size.widthPx(), size.heightPx());
        for (int i = 0; i < boxes.size(); i++) {
            SvgTexts.Box box = boxes.get(i);
            assertThat(ChartFonts.regular(12f).canDisplayUpTo(box.text()))
                    .as("%s: '%s' in letters that the typeface has", what, box.text())
                    .isEqualTo(-1);
            assertThat(page.contains(box.area()))
                    .as("%s: '%s' inside", what, box.text())
                    .isTrue();
            for (int j = i + 1; j < boxes.size(); j++) {
                Rectangle2D shared = box.area().createIntersection(boxes.get(j).area());
                boolean apart = shared.getWidth() <= ROUNDING_PX || shared.getHeight() <= ROUNDING_PX;
                assertThat(apart)
                        .as(
                                "%s: '%s' and '%s' apart",
                                what, box.text(), boxes.get(j).text())
                        .isTrue();
            }
        }
    }
}
