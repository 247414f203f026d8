package org.thirstline.charts;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.thirstline.calibration.response.ResponseVerdict;
import org.thirstline.charts.theme.ChartSize;
import org.thirstline.charts.theme.ChartTheme;
import org.thirstline.model.result.SeasonVariable;
import org.thirstline.model.result.YieldLedger;

/** Titles say what the numbers say, and no more. */
class ChartWordsTest {

    private static final ChartStyle STYLE = ChartStyle.of(ChartTheme.LIGHT, ChartSize.SLIDE);

    private static String title(ChartDocument chart) {
        return chart.words().title();
    }

    @Test
    void minusZeroIsNoLoss() {
        ChartDocument chart = YieldByYearChart.of(Samples.madeUp("", 12, -0.0, 0), STYLE);

        assertThat(title(chart)).isEqualTo("Drought took nothing in 12 years; the mean harvest was 15.0 Mg/ha");
        assertThat(chart.data().csv()).doesNotContain("-0.0");
    }

    @Test
    void partialYearsAreNamedAndLeftOutOfTheMean() {
        ChartDocument chart = YieldByYearChart.of(Samples.madeUp("West", 9, 2.0, 3), STYLE);

        assertThat(title(chart)).isEqualTo("Drought took 2.0 Mg/ha in an average year");
        assertThat(chart.caption()).contains("2001, 2004, 2007 (too many gaps in the weather)");
        assertThat(chart.data().rows()).hasSize(9);
        assertThat(chart.data().rows().get(0).get(4)).isEmpty();
    }

    @Test
    void noCompleteYearIsSaid() {
        assertThat(title(YieldByYearChart.of(Samples.madeUp("", 3, 2.0, 1), STYLE)))
                .isEqualTo("No growth year with a comparable yield yet");
        assertThat(title(YieldByYearChart.of(new YieldByYear("", List.of(), Map.of()), STYLE)))
                .isEqualTo("No growth year with a comparable yield yet");
    }

    @Test
    void slopeIsToldInTheReadersUnits() {
        ResponseView view = Samples.scatter(24, 0.02, -1e9);
        double slope = view.response().line().orElseThrow().slope();

        String si = title(DroughtResponseChart.of(view, STYLE));
        String us = title(DroughtResponseChart.of(view, STYLE.withUnits(UnitSystem.US)));
        assertThat(si).isEqualTo("Each 100 mm of missing rain cost " + Numbers.fixed(100 * slope, 1) + " Mg/ha");
        // 1 Mg/ha is 0.446090 short ton/acre and 1 in is 25.4 mm (NIST SP 811, Appendix B).
        assertThat(us)
                .isEqualTo("Each inch of missing rain cost " + Numbers.fixed(slope * 25.4 * 0.446090, 2)
                        + " short ton/acre");
    }

    @Test
    void equationIsGivenInBothUnits() {
        String caption =
                DroughtResponseChart.of(Samples.scatter(24, 0.02, -1e9), STYLE).caption();

        assertThat(caption).contains("(Mg/ha, mm)", "(short ton/acre, in)", "95 % interval", "24 years");
    }

    @Test
    void noLineIsClaimedWithoutGrounds() {
        ResponseView few = Samples.response(TestStand.of(2000, 6), 4);
        ResponseView flat = Samples.scatter(9, 0.0, 0.0);

        assertThat(title(DroughtResponseChart.of(few, STYLE))).isEqualTo("Too few years for a line: 4 of the 5 needed");
        assertThat(flat.response().verdict()).isEqualTo(ResponseVerdict.NOT_DISTINGUISHABLE);
        assertThat(title(DroughtResponseChart.of(flat, STYLE))).startsWith("No clear link");
        assertThat(title(DroughtResponseChart.of(Samples.sameDeficit(), STYLE))).contains("no response can be seen");
    }

    @Test
    void ledgerNamesTheLargestLoss() {
        YieldLedger ledger = new YieldLedger(2012, 30.0, 1.0, 9.0, 0.5, -0.2, 4.0, 1.7, 14.0);
        ChartDocument chart = LedgerChart.of(new LedgerView("", List.of(ledger)), STYLE);

        assertThat(title(chart)).isEqualTo("Of 30.0 Mg/ha possible, 14.0 came off the field; drought took most, 9.0");
        assertThat(chart.words().subtitle()).contains("2012");
    }

    @Test
    void partialSeasonSaysWhyItHasNoYield() {
        ChartDocument chart = SeasonChart.of(Samples.last(TestStand.of(2010, 5)), STYLE);

        assertThat(title(chart)).isEqualTo("2014: weather ends before the harvest");
    }

    @Test
    void inventedDataAreMarkedInEverySize() {
        for (ChartSize size : ChartSize.values()) {
            ChartStyle style = Samples.style(ChartTheme.LIGHT, size);
            ChartDocument chart = YieldByYearChart.of(Samples.madeUp("", 3, 1.0, 0), style);

            assertThat(chart.caption()).startsWith("Invented data.");
            assertThat(org.thirstline.charts.output.SvgOutput.standalone(chart)).contains(">Invented data.</text");
        }
    }

    @Test
    void comparisonTellsTheDifference() {
        TestStand stand = TestStand.of(1994, 30);
        CompareView view = Samples.compare(stand);
        double[] harvests = view.seasons().stream()
                .mapToDouble(season -> season.season().value(SeasonVariable.HARVESTED))
                .sorted()
                .toArray();

        assertThat(title(CompareChart.of(view, STYLE)))
                .contains("yielded " + Numbers.fixed(harvests[2] - harvests[0], 1) + " Mg/ha less than");
    }
}
