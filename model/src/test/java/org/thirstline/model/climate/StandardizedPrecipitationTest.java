package org.thirstline.model.climate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDate;
import java.time.YearMonth;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.Map;
import java.util.random.RandomGenerator;
import java.util.random.RandomGeneratorFactory;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.thirstline.model.climate.GammaFit.Method;
import org.thirstline.model.error.InputException;
import org.thirstline.model.weather.Origin;
import org.thirstline.model.weather.WeatherSeries;
import org.thirstline.model.weather.WeatherVariable;

class StandardizedPrecipitationTest {

    private static final YearMonth START = YearMonth.of(1961, 1);

    /** Skewed monthly rain with a season, from the sum of two exponentials; a share of months is dry. */
    private static MonthlyRain invented(int months, double dryShare, long seed) {
        RandomGenerator random = RandomGeneratorFactory.of("L64X128MixRandom").create(seed);
        double[] totals = new double[months];
        for (int month = 0; month < months; month++) {
            double mean = 30.0 + 20.0 * Math.sin(2.0 * Math.PI * month / 12.0);
            double wet = mean * (random.nextExponential() + random.nextExponential());
            totals[month] = random.nextDouble() < dryShare ? 0.0 : wet;
        }
        return MonthlyRain.ofTotals(START, totals);
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 3, 6, 12, 24})
    void indexIsNearlyStandardNormalOverItsOwnReference(int scale) {
        StandardizedPrecipitation index =
                StandardizedPrecipitation.of(invented(12 * 200, 0.0, scale), scale, Method.MAXIMUM_LIKELIHOOD);
        double[] values = Arrays.stream(index.values())
                .filter(value -> !Double.isNaN(value))
                .toArray();
        double mean = Arrays.stream(values).average().orElseThrow();
        double square =
                Arrays.stream(values).map(value -> value * value).average().orElseThrow();

        assertThat(values).hasSize(12 * 200 - scale + 1);
        assertThat(mean).isCloseTo(0.0, within(0.01));
        assertThat(square).isCloseTo(1.0, within(0.05));
    }

    @Test
    void moreRainNeverLowersTheIndex() {
        double[] totals = invented(12 * 40, 0.2, 5).totalsMm();
        StandardizedPrecipitation before =
                StandardizedPrecipitation.of(MonthlyRain.ofTotals(START, totals), 1, Method.THOM);

        for (int first = 0; first < 12; first++) {
            for (int a = first; a < totals.length; a += 12) {
                for (int b = first; b < totals.length; b += 12) {
                    if (totals[a] <= totals[b]) {
                        assertThat(before.values()[a]).isLessThanOrEqualTo(before.values()[b]);
                    }
                }
            }
        }
    }

    @Test
    void zeroRainHasTheProbabilityOfTheZeroShare() {
        double[] totals = invented(12 * 40, 0.0, 6).totalsMm();
        for (int year = 0; year < 10; year++) {
            totals[12 * year + 6] = 0.0;
        }
        StandardizedPrecipitation index =
                StandardizedPrecipitation.of(MonthlyRain.ofTotals(START, totals), 1, Method.THOM);

        assertThat(index.at(YearMonth.of(1961, 7)))
                .isCloseTo(StandardizedPrecipitation.index(0.25), within(1e-12))
                .isCloseTo(-0.674490, within(1e-6));
    }

    @Test
    void unitOfRainDoesNotMatter() {
        double[] millimetres = invented(12 * 35, 0.1, 7).totalsMm();
        double[] inches = Arrays.stream(millimetres).map(mm -> mm / 25.4).toArray();
        double[] one = StandardizedPrecipitation.of(MonthlyRain.ofTotals(START, millimetres), 3, Method.THOM)
                .values();
        double[] other = StandardizedPrecipitation.of(MonthlyRain.ofTotals(START, inches), 3, Method.THOM)
                .values();

        assertThat(other).hasSameSizeAs(one);
        for (int month = 2; month < one.length; month++) {
            assertThat(other[month]).isCloseTo(one[month], within(1e-9));
        }
    }

    @Test
    void unknownMonthsAndShortRecordsGiveNoIndex() {
        double[] totals = invented(12 * 40, 0.0, 8).totalsMm();
        totals[100] = Double.NaN;
        StandardizedPrecipitation index =
                StandardizedPrecipitation.of(MonthlyRain.ofTotals(START, totals), 3, Method.THOM);

        assertThat(index.values()[99]).isFinite();
        assertThat(Arrays.copyOfRange(index.values(), 100, 103)).containsOnly(Double.NaN);
        assertThat(index.values()[103]).isFinite();
        assertThat(index.at(YearMonth.of(1960, 12))).isNaN();
        assertThat(index.notice()).isEmpty();

        StandardizedPrecipitation shortIndex = StandardizedPrecipitation.of(invented(12 * 9, 0.0, 9), 1, Method.THOM);
        assertThat(shortIndex.values()).containsOnly(Double.NaN);
        assertThat(shortIndex.notice().orElseThrow()).contains("9 years");
    }

    @Test
    void rainThatNeverVariesHasNoIndex() {
        double[] totals = new double[12 * 40];
        for (int month = 0; month < totals.length; month++) {
            totals[month] = 50.0 + (month < 12 ? 1e-9 : 0.0);
        }

        assertThat(StandardizedPrecipitation.of(MonthlyRain.ofTotals(START, totals), 1, Method.THOM)
                        .values())
                .containsOnly(Double.NaN);
    }

    @Test
    void referencePeriodAloneDecidesTheFit() {
        double[] totals = invented(12 * 60, 0.0, 10).totalsMm();
        double[] changed = totals.clone();
        for (int month = 12 * 30; month < changed.length; month++) {
            changed[month] *= 2.0;
        }
        YearMonth end = YearMonth.of(1990, 12);
        StandardizedPrecipitation one =
                StandardizedPrecipitation.of(MonthlyRain.ofTotals(START, totals), 1, Method.THOM, START, end);
        StandardizedPrecipitation other =
                StandardizedPrecipitation.of(MonthlyRain.ofTotals(START, changed), 1, Method.THOM, START, end);

        assertThat(Arrays.copyOf(other.values(), 360)).containsExactly(Arrays.copyOf(one.values(), 360), within(0.0));
        assertThat(other.values()[500]).isGreaterThan(one.values()[500]);
        assertThat(one.notice()).isEmpty();
    }

    @Test
    void scaleBeyondTwoYearsIsRefused() {
        MonthlyRain rain = invented(480, 0.0, 11);

        assertThatThrownBy(() -> StandardizedPrecipitation.of(rain, 25, Method.THOM))
                .isInstanceOf(InputException.class);
        assertThatThrownBy(() -> StandardizedPrecipitation.of(rain, 0, Method.THOM))
                .isInstanceOf(InputException.class);
    }

    @Test
    void monthsWithGapsInDailyRainAreUnknown() {
        LocalDate start = LocalDate.of(2001, 1, 15);
        int days = 120;
        Map<WeatherVariable, double[]> columns = new EnumMap<>(WeatherVariable.class);
        for (WeatherVariable variable : WeatherVariable.values()) {
            columns.put(variable, new double[days]);
        }
        Arrays.fill(columns.get(WeatherVariable.RAIN), 1.0);
        Origin[] origins = new Origin[days];
        Arrays.fill(origins, Origin.MEASURED);
        Arrays.fill(origins, 50, 53, Origin.CLIMATOLOGY);
        WeatherSeries weather = WeatherSeries.of(start, columns, Map.of(WeatherVariable.RAIN, origins));

        double[] strict = MonthlyRain.of(weather, 2).totalsMm();
        double[] lenient = MonthlyRain.of(weather, 3).totalsMm();
        assertThat(strict).containsExactly(Double.NaN, 28.0, Double.NaN, 30.0, Double.NaN);
        assertThat(lenient).containsExactly(Double.NaN, 28.0, 31.0, 30.0, Double.NaN);
    }

    @Test
    void gammaFitRefusesTotalsThatCannotBeFitted() {
        assertThatThrownBy(() -> GammaFit.of(new double[] {1.0, 0.0, 2.0}, Method.THOM))
                .isInstanceOf(InputException.class);
        assertThatThrownBy(() -> GammaFit.of(new double[] {3.0, 3.0, 3.0}, Method.MAXIMUM_LIKELIHOOD))
                .isInstanceOf(InputException.class);
    }

    @Test
    void likelihoodIsHighestAtTheFit() {
        double[] totals = Arrays.stream(invented(600, 0.0, 12).totalsMm())
                .filter(total -> total > 0.0)
                .toArray();
        GammaFit fit = GammaFit.of(totals, Method.MAXIMUM_LIKELIHOOD);
        double best = logLikelihood(totals, fit);

        for (double factor : new double[] {0.99, 1.01}) {
            assertThat(logLikelihood(totals, new GammaFit(fit.shape() * factor, fit.scale())))
                    .isLessThan(best);
            assertThat(logLikelihood(totals, new GammaFit(fit.shape(), fit.scale() * factor)))
                    .isLessThan(best);
        }
        assertThat(logLikelihood(totals, GammaFit.of(totals, Method.THOM))).isLessThanOrEqualTo(best);
    }

    private static double logLikelihood(double[] totals, GammaFit fit) {
        double constant = org.hipparchus.special.Gamma.logGamma(fit.shape()) + fit.shape() * Math.log(fit.scale());
        return Arrays.stream(totals)
                .map(total -> (fit.shape() - 1.0) * Math.log(total) - total / fit.scale() - constant)
                .sum();
    }
}
