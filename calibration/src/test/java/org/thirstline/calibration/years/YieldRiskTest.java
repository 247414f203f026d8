package org.thirstline.calibration.years;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;
import org.thirstline.calibration.response.Interval;

class YieldRiskTest {

    private static final Offset<Double> ROUNDING = within(1e-12);

    /** Quantiles of the beta distribution are found by iteration. */
    private static final Offset<Double> ITERATION = within(1e-9);

    private static YieldRisk risk(int firstYear, double... yields) {
        List<YieldRisk.YearYield> years = new ArrayList<>();
        for (int i = 0; i < yields.length; i++) {
            years.add(new YieldRisk.YearYield(firstYear + i, yields[i]));
        }
        return new YieldRisk(years);
    }

    @Test
    void exceedanceRanksYearsByWeibullPlottingPositions() {
        List<YieldRisk.Exceedance> curve = risk(2001, 5, 9, 7, 1).exceedance();

        assertThat(curve).extracting(point -> point.year().growthYear()).containsExactly(2002, 2003, 2001, 2004);
        assertThat(curve).extracting(YieldRisk.Exceedance::probability).containsExactly(0.2, 0.4, 0.6, 0.8);
    }

    @Test
    void reachingCountsEqualYields() {
        YieldRisk risk = risk(2001, 5, 9, 7, 1);

        assertThat(risk.reached(7.0)).isEqualTo(2);
        assertThat(risk.probability(7.0)).isCloseTo(0.5, ROUNDING);
        assertThat(risk(2001).probability(7.0)).isNaN();
    }

    /** With no hit in n, the exact upper limit is 1 - 0.025^(1/n); with n hits the lower one is 0.025^(1/n). */
    @Test
    void intervalOfNoneAndAllIsTheClosedForm() {
        Interval none = risk(2001, 1, 1, 1, 1).probabilityInterval(2.0);
        Interval all = risk(2001, 1, 1, 1, 1).probabilityInterval(1.0);

        assertThat(none.lower()).isZero();
        assertThat(none.upper()).isCloseTo(1.0 - Math.pow(0.025, 0.25), ITERATION);
        assertThat(all.lower()).isCloseTo(Math.pow(0.025, 0.25), ITERATION);
        assertThat(all.upper()).isEqualTo(1.0);
    }

    @Test
    void worstRunsAreOfConsecutiveYears() {
        YieldRisk risk = risk(2001, 5, 9, 3, 4);

        assertThat(risk.worstRun(1)).contains(new YieldRisk.Run(2003, 2003, 3.0));
        assertThat(risk.worstRun(2)).contains(new YieldRisk.Run(2003, 2004, 3.5));
        assertThat(risk.worstRun(5)).isEmpty();
    }

    @Test
    void aGapBreaksARun() {
        YieldRisk risk = new YieldRisk(List.of(
                new YieldRisk.YearYield(2001, 1.0),
                new YieldRisk.YearYield(2003, 2.0),
                new YieldRisk.YearYield(2004, 9.0)));

        assertThat(risk.worstRun(2)).contains(new YieldRisk.Run(2003, 2004, 5.5));
        assertThat(risk.worstRun(3)).isEmpty();
    }
}
