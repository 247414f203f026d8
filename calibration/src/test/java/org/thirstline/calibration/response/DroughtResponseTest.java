package org.thirstline.calibration.response;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.function.DoubleUnaryOperator;
import java.util.random.RandomGenerator;
import java.util.random.RandomGeneratorFactory;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.thirstline.calibration.error.CalibrationError;
import org.thirstline.model.error.ErrorCode;
import org.thirstline.model.error.InputException;

class DroughtResponseTest {

    private record Sample(double[] deficit, double[] penalty, int[] years) {

        DroughtResponse fit() {
            return DroughtResponse.fit(deficit, penalty, years);
        }
    }

    private static RandomGenerator random(long seed) {
        return RandomGeneratorFactory.of("L64X128MixRandom").create(seed);
    }

    private static Sample sample(int n, double scatter, long seed, DoubleUnaryOperator truth) {
        RandomGenerator random = random(seed);
        double[] deficit = random.doubles(n, -200.0, 300.0).toArray();
        double[] penalty = Arrays.stream(deficit)
                .map(x -> truth.applyAsDouble(x) + scatter * random.nextGaussian())
                .toArray();
        return new Sample(deficit, penalty, IntStream.range(2000, 2000 + n).toArray());
    }

    @Test
    void exactLineIsFoundExactly() {
        DroughtResponse response = sample(8, 0.0, 1, x -> 2.0 + 0.03 * x).fit();
        StraightLine line = response.line().orElseThrow();

        assertThat(line.slope()).isCloseTo(0.03, within(1e-12));
        assertThat(line.intercept()).isCloseTo(2.0, within(1e-10));
        assertThat(line.rSquared()).isCloseTo(1.0, within(1e-12));
        assertThat(response.robustLine().orElseThrow().slope()).isCloseTo(0.03, within(1e-12));
        assertThat(response.verdict()).isEqualTo(ResponseVerdict.LOSS_GROWS);
        assertThat(response.brokenLine()).isEmpty();
    }

    @Test
    void fourYearsGiveNoLine() {
        DroughtResponse response = sample(4, 0.1, 2, x -> 0.03 * x).fit();

        assertThat(response.verdict()).isEqualTo(ResponseVerdict.TOO_FEW_YEARS);
        assertThat(response.line()).isEmpty();
        assertThat(response.robustLine()).isEmpty();
        assertThat(response.influences()).isEmpty();
        assertThat(response.words().slopeSi()).isEqualTo("too few years");
        assertThat(response.words().verdict()).startsWith("Too few years: 4 of the 5");
        assertThat(response.words().detail()).isEmpty();
        assertThat(sample(5, 0.1, 2, x -> 0.03 * x).fit().line()).isPresent();
    }

    @Test
    void equalDeficitsGiveNoLine() {
        DroughtResponse response = DroughtResponse.fit(
                new double[] {50, 50, 50, 50, 50, 50}, new double[] {1, 2, 3, 4, 5, 6}, new int[] {1, 2, 3, 4, 5, 6});

        assertThat(response.verdict()).isEqualTo(ResponseVerdict.NO_SPREAD);
        assertThat(response.line()).isEmpty();
        assertThat(response.slopeWithoutAnyYear()).isEmpty();
    }

    @Test
    void noiseIsCalledIndistinguishableFromZeroNineteenTimesInTwenty() {
        long indistinguishable = IntStream.range(0, 2000)
                .filter(seed -> sample(12, 2.0, seed, x -> 5.0).fit().verdict() == ResponseVerdict.NOT_DISTINGUISHABLE)
                .count();

        // 95 % of 2000 is 1900, standard deviation 9.7
        assertThat(indistinguishable).isBetween(1861L, 1939L);
    }

    @Test
    void intervalsCoverTheTruthAsOftenAsTheySay() {
        int slope = 0;
        int robust = 0;
        int band = 0;
        int prediction = 0;
        for (int seed = 0; seed < 2000; seed++) {
            DroughtResponse response =
                    sample(12, 2.0, seed, x -> 3.0 + 0.02 * x).fit();
            StraightLine line = response.line().orElseThrow();
            double newYear = 3.0 + 0.02 * 150.0 + 2.0 * random(90_000L + seed).nextGaussian();
            slope += line.slopeInterval().contains(0.02) ? 1 : 0;
            robust += response.robustLine().orElseThrow().slopeInterval().contains(0.02) ? 1 : 0;
            band += line.confidenceBand(150.0).contains(6.0) ? 1 : 0;
            prediction += line.predictionBand(150.0).contains(newYear) ? 1 : 0;
        }

        assertThat(slope).isBetween(1861, 1939);
        assertThat(band).isBetween(1861, 1939);
        assertThat(prediction).isBetween(1861, 1939);
        // The rank interval is discrete and a normal approximation: about 95 %, not exactly.
        assertThat(robust).isBetween(1820, 1980);
    }

    @Test
    void predictionBandHoldsTheConfidenceBand() {
        StraightLine line = sample(15, 1.5, 3, x -> 2.0 + 0.02 * x).fit().line().orElseThrow();

        for (double x = -300.0; x <= 400.0; x += 25.0) {
            Interval confidence = line.confidenceBand(x);
            Interval prediction = line.predictionBand(x);
            assertThat(prediction.lower()).isLessThan(confidence.lower());
            assertThat(prediction.upper()).isGreaterThan(confidence.upper());
            assertThat(confidence.contains(line.at(x))).isTrue();
        }
    }

    @Test
    void leavingOutAYearIsTheSameAsFittingWithoutIt() {
        Sample all = sample(9, 1.0, 4, x -> 2.0 + 0.02 * x);
        DroughtResponse response = all.fit();

        for (YearInfluence influence : response.influences()) {
            int left = influence.year() - 2000;
            int[] kept = IntStream.range(0, 9).filter(i -> i != left).toArray();
            StraightLine without = StraightLine.fit(
                    IntStream.of(kept).mapToDouble(i -> all.deficit[i]).toArray(),
                    IntStream.of(kept).mapToDouble(i -> all.penalty[i]).toArray());
            StraightLine line = response.line().orElseThrow();
            double moved = Arrays.stream(all.deficit)
                    .map(x -> Math.pow(line.at(x) - without.at(x), 2))
                    .sum();
            assertThat(influence.slopeWithout()).isCloseTo(without.slope(), within(1e-12));
            assertThat(influence.cooksDistance())
                    .isCloseTo(moved / (2.0 * Math.pow(line.residualDeviation(), 2)), within(1e-9));
        }
        assertThat(response.influences())
                .isSortedAccordingTo((a, b) -> Double.compare(b.cooksDistance(), a.cooksDistance()));
    }

    @Test
    void oneOddYearIsNamedAndHardlyMovesTheRobustSlope() {
        Sample odd = sample(11, 0.1, 5, x -> 2.0 + 0.02 * x);
        int driest = IntStream.range(0, 11)
                .reduce((a, b) -> odd.deficit[a] > odd.deficit[b] ? a : b)
                .orElseThrow();
        odd.penalty[driest] += 30.0;
        DroughtResponse response = odd.fit();

        assertThat(response.influentialYears()).first().isEqualTo(2000 + driest);
        assertThat(response.robustLine().orElseThrow().slope()).isCloseTo(0.02, within(0.003));
        assertThat(response.line().orElseThrow().slope()).isGreaterThan(0.04);
        assertThat(response.words().detail()).contains(String.valueOf(2000 + driest));
    }

    @Test
    void lineThatHangsOnOneYearSaysSo() {
        DroughtResponse response = DroughtResponse.fit(
                new double[] {10, 10, 10, 10, 200}, new double[] {1, 2, 1, 2, 9}, new int[] {1, 2, 3, 4, 5});

        assertThat(response.influences().get(0).year()).isEqualTo(5);
        assertThat(response.influences().get(0).cooksDistance()).isInfinite();
        assertThat(response.influences().get(0).slopeWithout()).isNaN();
        assertThat(response.slopeWithoutAnyYear()).isPresent();
    }

    @Test
    void clearThresholdIsFound() {
        BrokenLine broken = sample(25, 0.3, 6, x -> 1.0 + 0.04 * Math.max(0.0, x - 60.0))
                .fit()
                .brokenLine()
                .orElseThrow();

        assertThat(broken.threshold()).isCloseTo(60.0, within(25.0));
        assertThat(broken.thresholdInterval().contains(60.0)).isTrue();
        assertThat(broken.slope()).isCloseTo(0.04, within(0.008));
        assertThat(broken.level()).isCloseTo(1.0, within(0.3));
        assertThat(broken.at(-500.0)).isEqualTo(broken.level());
    }

    @Test
    void exactBrokenLineIsFoundExactly() {
        BrokenLine broken = sample(12, 0.0, 7, x -> 1.0 + 0.04 * Math.max(0.0, x - 60.0))
                .fit()
                .brokenLine()
                .orElseThrow();

        assertThat(broken.threshold()).isCloseTo(60.0, within(1e-6));
        assertThat(broken.slope()).isCloseTo(0.04, within(1e-9));
        assertThat(broken.level()).isCloseTo(1.0, within(1e-9));
    }

    @Test
    void noThresholdIsABetterFitThanTheBestOne() {
        for (int seed = 0; seed < 200; seed++) {
            Sample any = sample(14, 1.0, seed, x -> 0.02 * Math.max(0.0, x));
            BrokenLine.fit(any.deficit, any.penalty).ifPresent(best -> {
                double lowest =
                        Arrays.stream(any.deficit).sorted().skip(1).findFirst().orElseThrow();
                double highest =
                        Arrays.stream(any.deficit).sorted().skip(11).findFirst().orElseThrow();
                for (int step = 0; step <= 300; step++) {
                    double threshold = lowest + (highest - lowest) * step / 300.0;
                    double[] excess = Arrays.stream(any.deficit)
                            .map(x -> Math.max(0.0, x - threshold))
                            .toArray();
                    assertThat(StraightLine.fit(excess, any.penalty).residualSumOfSquares())
                            .isGreaterThanOrEqualTo(best.residualSumOfSquares() * (1.0 - 1e-9));
                }
            });
        }
    }

    @Test
    void straightDataSeldomLookBroken() {
        long broken = IntStream.range(0, 500)
                .filter(seed -> sample(20, 2.0, seed, x -> 5.0 + 0.02 * x)
                        .fit()
                        .brokenLine()
                        .isPresent())
                .count();

        assertThat(broken).isLessThan(75);
    }

    @Test
    void orderOfYearsDoesNotMatter() {
        Sample one = sample(13, 1.0, 8, x -> 0.02 * x);
        int[] order = IntStream.range(0, 13).map(i -> (5 * i + 3) % 13).toArray();
        Sample other = new Sample(
                IntStream.of(order).mapToDouble(i -> one.deficit[i]).toArray(),
                IntStream.of(order).mapToDouble(i -> one.penalty[i]).toArray(),
                IntStream.of(order).map(i -> one.years[i]).toArray());

        assertThat(other.fit().line().orElseThrow().slope())
                .isCloseTo(one.fit().line().orElseThrow().slope(), within(1e-13));
        assertThat(other.fit().robustLine().orElseThrow().slopeInterval())
                .isEqualTo(one.fit().robustLine().orElseThrow().slopeInterval());
        assertThat(other.fit().influentialYears()).isEqualTo(one.fit().influentialYears());
    }

    @Test
    void slopeIsGivenInBothUnits() {
        ResponseWords words = sample(8, 0.0, 1, x -> 2.0 + 0.03 * x).fit().words();

        // 3 Mg/ha per 100 mm: 3 x 0.44609 short ton/acre per 3.937 inches
        assertThat(words.slopeSi()).isEqualTo("3.00 Mg/ha per 100 mm (95 % interval 3.00 to 3.00)");
        assertThat(words.slopeUs()).isEqualTo("0.340 short ton/acre per inch (95 % interval 0.340 to 0.340)");
        assertThat(words.verdict()).contains("3.00 Mg/ha per 100 mm").contains("0.340 short ton/acre per inch");
    }

    @Test
    void thresholdAndIndifferenceAreSaidPlainly() {
        String broken = sample(25, 0.3, 6, x -> 1.0 + 0.04 * Math.max(0.0, x - 60.0))
                .fit()
                .words()
                .detail();
        String indifferent = sample(12, 2.0, 0, x -> 5.0).fit().words().verdict();
        String shrinking = sample(12, 0.1, 0, x -> 5.0 - 0.02 * x).fit().words().verdict();

        assertThat(broken).contains("no added loss up to a deficit of").contains("Theil-Sen slope");
        assertThat(indifferent).contains("not distinguishable from zero");
        assertThat(shrinking).contains("Look at the data");
    }

    @Test
    void unusableInputIsRefused() {
        int[] years = {1, 2, 3};
        double[] three = {1, 2, 3};

        assertRefused(CalibrationError.LENGTHS_DIFFER, () -> DroughtResponse.fit(new double[2], three, years));
        assertRefused(CalibrationError.LENGTHS_DIFFER, () -> DroughtResponse.fit(three, new double[4], years));
        assertRefused(
                CalibrationError.VALUE_NOT_FINITE,
                () -> DroughtResponse.fit(three, new double[] {1, Double.NaN, 2}, years));
        assertRefused(CalibrationError.YEAR_TWICE, () -> DroughtResponse.fit(three, three, new int[] {1, 2, 1}));
    }

    private static void assertRefused(ErrorCode code, Runnable call) {
        assertThatThrownBy(call::run).isInstanceOfSatisfying(InputException.class, error -> assertThat(error.code())
                .isEqualTo(code));
    }
}
