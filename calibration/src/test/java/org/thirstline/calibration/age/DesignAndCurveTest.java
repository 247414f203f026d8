package org.thirstline.calibration.age;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class DesignAndCurveTest {

    private static final AgeOptions OPTIONS = AgeOptions.usual().withReplicates(199, 199, 199);

    @Test
    void powerGrowsWithDeclineAndWithYears() {
        DetectionPower ten = DetectionPower.of(
                TrialPlans.fresh(4, 10, 1, 0, 0.15, SyntheticTrial.random(1)), SyntheticTrial.SCATTER, OPTIONS);
        DetectionPower twenty = DetectionPower.of(
                TrialPlans.fresh(4, 20, 1, 0, 0.15, SyntheticTrial.random(1)), SyntheticTrial.SCATTER, OPTIONS);

        assertThat(ten.of(6, 0.0)).isLessThanOrEqualTo(0.05);
        assertThat(ten.of(6, 0.05)).isLessThan(ten.of(6, 0.15));
        assertThat(twenty.of(6, 0.05)).isGreaterThan(ten.of(6, 0.05) + 0.2);
        double smallest = twenty.smallestFound(6).orElseThrow();
        assertThat(twenty.of(6, smallest)).isGreaterThanOrEqualTo(AgeOptions.WANTED_POWER);
        assertThat(smallest).isLessThan(ten.smallestFound(6).orElse(1.0));
    }

    @Test
    void yearsNotPlotsAreTheSample() {
        TrialData data = TrialPlans.fresh(4, 10, 1, 0, 0.15, SyntheticTrial.random(1));
        double asIs = DetectionPower.of(data, SyntheticTrial.SCATTER, OPTIONS).of(6, 0.08);
        double plots = DetectionPower.of(TrialPlans.withPlotsTimes(data, 4), SyntheticTrial.SCATTER, OPTIONS)
                .of(6, 0.08);
        double years = DetectionPower.of(TrialPlans.continued(data, 6), SyntheticTrial.SCATTER, OPTIONS)
                .of(6, 0.08);

        assertThat(plots - asIs).isLessThan(0.15);
        assertThat(years - asIs).isGreaterThan(0.3);
    }

    @Test
    void planNamesWhatWouldSettleIt() {
        TrialData data = SyntheticTrial.steady(4, 8).draw(2);
        SettlingPlan plan =
                SettlingPlan.of(data, SyntheticTrial.SCATTER, AgeOptions.usual().withReplicates(99, 99, 99));

        assertThat(plan.powers()).hasSize(15);
        assertThat(plan.onsetAge()).isEqualTo(5);
        assertThat(plan.powers().get(0).powerAtFast()).isLessThan(0.5);
        SettlingPlan.PowerPoint enough =
                plan.smallestThatFinds(SettlingPlan.Change.MORE_YEARS, true).orElseThrow();
        assertThat(enough.moreYears()).isBetween(4, 15);
        assertThat(plan.smallestFoundPerYear().orElseThrow()).isGreaterThan(0.05);
    }

    @Test
    void plansKeepTheTrialAndAddToIt() {
        TrialData data = SyntheticTrial.steady(3, 9).draw(2);

        assertThat(TrialPlans.continued(data, 4).rows()).hasSize(3 * 13).containsAll(data.rows());
        assertThat(TrialPlans.withPlotsTimes(data, 3).rows()).hasSize(3 * 27);
        TrialData beside = TrialPlans.withNewPlantings(data, 2, 3, 6);
        assertThat(beside.rows()).hasSize(3 * 15 + 3 * 6 + 3 * 3);
        assertThat(beside.rows().stream().mapToInt(PlotYear::standAge)).allMatch(age -> age >= 1);
    }

    private static TrialData dryThenWet(double ageFactor) {
        double[] weather = {1, 1.05, 0.95, 1, 1.02, 0.98, 0.6, 0.55, 0.62, 1.03, 1.05, 0.5, 1.02};
        List<PlotYear> rows = new ArrayList<>();
        for (int i = 0; i < weather.length; i++) {
            double wobble = 1.0 + 0.03 * Math.sin(9.0 * i);
            double observed = 14.0 * weather[i] * (i > 5 ? ageFactor : 1.0) * wobble;
            rows.add(PlotYear.simulated("s", "p", "1", 2001, 2003 + i, observed, 15.0 * weather[i]));
        }
        return TrialData.of(rows);
    }

    @Test
    void droughtComesBackAndAgeDoesNot() {
        Reversibility weather = Reversibility.of(dryThenWet(1.0), 8, OPTIONS);
        Reversibility age = Reversibility.of(dryThenWet(0.7), 8, OPTIONS);

        assertThat(weather.finding()).isEqualTo(Reversibility.Finding.CAME_BACK);
        assertThat(weather.goodYears()).containsExactly(2012, 2013, 2015);
        assertThat(weather.poorYears()).containsExactly(2009, 2010, 2011, 2014);
        assertThat(age.finding()).isEqualTo(Reversibility.Finding.STAYED_DOWN);
        assertThat(age.shortfallInGoodYears()).isCloseTo(0.28, within(0.05));
        assertThat(age.interval().contains(age.shortfallInGoodYears())).isTrue();
    }

    @Test
    void withoutGoodYearsNothingCanComeBack() {
        List<PlotYear> rows = dryThenWet(1.0).rows().stream()
                .filter(row -> row.growthYear() <= 2011)
                .toList();

        assertThat(Reversibility.of(TrialData.of(rows), 8, OPTIONS).finding())
                .isEqualTo(Reversibility.Finding.NO_GOOD_YEAR_SINCE);
        assertThat(Reversibility.of(dryThenWet(1.0), 14, OPTIONS).finding())
                .isEqualTo(Reversibility.Finding.NOTHING_TO_COME_BACK_FROM);
    }

    @Test
    void standLifeAddsUp() {
        StandLife life = StandLife.of(new double[] {0.0, 6.0, 12.0, 12.0, 3.0}, 1.0);

        assertThat(life.cumulativeMgHa()).containsExactly(0.0, 6.0, 18.0, 30.0, 33.0);
        assertThat(life.meanMgHaYear()).containsExactly(0.0, 2.0, 4.5, 6.0, 5.5);
        assertThat(life.bestAge()).isEqualTo(4);
        assertThat(life.bestIsLast()).isFalse();
    }

    @Test
    void bestAgeIsWhereTheYieldFallsUnderTheMean() {
        double[] curve = StandLife.curve(15.0, new double[] {0.1, 0.5}, 6, 0.05, 40);
        StandLife life = StandLife.of(curve, 1.0);
        int best = life.bestAge();

        assertThat(curve[best - 1]).isGreaterThanOrEqualTo(life.meanMgHaYear()[best - 1]);
        assertThat(curve[best]).isLessThan(life.meanMgHaYear()[best - 1]);
        assertThat(StandLife.of(curve, 3.0).bestAge()).isGreaterThan(best);
        assertThat(StandLife.of(StandLife.curve(15.0, new double[] {0.1, 0.5}, 6, 0.0, 40), 1.0)
                        .bestIsLast())
                .isTrue();
    }
}
