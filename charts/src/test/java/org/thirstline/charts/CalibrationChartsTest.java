package org.thirstline.charts;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.thirstline.charts.theme.ChartSize;
import org.thirstline.charts.theme.ChartTheme;
import org.thirstline.model.crop.CropParameter;

/** What charts of fit, posterior and sensitivity say is what their numbers say. */
class CalibrationChartsTest {

    private static final ChartStyle STYLE = ChartStyle.of(ChartTheme.LIGHT, ChartSize.SLIDE);

    private static String title(ChartDocument chart) {
        return chart.words().title();
    }

    private static FitPoint point(int year, double rain, double observed, double simulated) {
        return new FitPoint("East field", year, 0, rain, observed, Double.NaN, simulated, Double.NaN, Double.NaN);
    }

    private static FitView fit(FitPoint... points) {
        return new FitView("fitted to these plots", Quantity.HARVEST, List.of(points), Map.of());
    }

    @Test
    void missAndBiasAreToldInTheReadersUnits() {
        FitView view = fit(point(2001, 400, 10.0, 13.0), point(2002, 500, 10.0, 11.0));

        // Root of (9 + 1) / 2, and mean of 3 and 1.
        assertThat(title(ObservedSimulatedChart.of(view, STYLE)))
                .isEqualTo("Simulations miss the observations by 2.2 Mg/ha and lie 2.0 too high on average");
        assertThat(title(ObservedSimulatedChart.of(view, STYLE.withUnits(UnitSystem.US))))
                .isEqualTo("Simulations miss the observations by 1.0 short ton/acre and lie 0.9 too high on average");
        FitView even = fit(point(2001, 400, 10.0, 12.0), point(2002, 500, 12.0, 10.0));
        assertThat(title(ObservedSimulatedChart.of(even, STYLE))).endsWith("lie neither too high nor too low");
    }

    @Test
    void residualsThatLeanOnRainAreCalled() {
        FitPoint[] points = IntStream.range(0, 9)
                .mapToObj(i -> point(2001 + (i * 5) % 9, 300 + 50 * i, 10 + 0.5 * i + 0.1 * (i % 2), 10.0))
                .toArray(FitPoint[]::new);

        assertThat(title(ResidualsChart.of(fit(points), STYLE)))
                .isEqualTo(
                        "What is left over rises with season rain, by 4.0 Mg/ha from end to end: the fit misses something");
        assertThat(title(ResidualsChart.of(fit(point(2001, 400, 10, 11)), STYLE)))
                .startsWith("Too few different years");
    }

    @Test
    void manyPlotsOfFewYearsAreFewYears() {
        double[] years = new double[400];
        double[] misses = new double[400];
        for (int i = 0; i < 400; i++) {
            years[i] = 2001 + i % 4;
            misses[i] = i % 4;
        }
        assertThat(Leaning.of(years, misses).isTold()).isFalse();
    }

    @Test
    void lineOfLeaningIsLeastSquares() {
        // Worked by hand: means of x and y 3 and 4.2, sums of squares 10 and of products 9.
        Leaning line = Leaning.of(new double[] {1, 2, 3, 4, 5}, new double[] {2, 4, 5, 4, 6});

        assertThat(line.slope()).isCloseTo(0.8, within(1e-12));
        assertThat(line.intercept()).isCloseTo(1.8, within(1e-12));
        // Residual sum of squares 8.8 - 0.8 * 8 = 2.4 on 3 degrees of freedom; error of the slope sqrt(0.8 / 10).
        assertThat(line.errors()).isCloseTo(0.8 / Math.sqrt(0.08), within(1e-12));
    }

    @Test
    void openProfilesAreNotCalledDetermined() {
        double[] values = {1, 2, 3};
        double[] rises = {5, 0, 5};
        var closed = new ProfilesView.Curve("k", "", values, rises, 3.84, 2, 1.2, 2.8, false, false);
        var open = new ProfilesView.Curve("p", "", values, rises, 3.84, 2, 1.0, 3.0, true, true);

        assertThat(title(ProfilesChart.of(new ProfilesView("", 0.95, List.of(closed, open)), STYLE)))
                .isEqualTo("The data determine 1 of 2 parameters, but not p");
        assertThat(ProfilesChart.of(new ProfilesView("", 0.95, List.of(open)), STYLE)
                        .words()
                        .description())
                .contains("not determined");
    }

    @Test
    void disagreeingChainsAreNeverCalledAgreed() {
        var draws = new DrawsView.Draws("k", "", new double[2][100], 1.02, 50);
        var unknown = new DrawsView.Draws("p", "", new double[2][100], Double.NaN, Double.NaN);

        assertThat(title(TraceRankChart.of(new DrawsView("", List.of(draws)), STYLE)))
                .isEqualTo("The chains do not agree yet: R-hat of k is 1.02");
        assertThat(title(TraceRankChart.of(new DrawsView("", List.of(draws, unknown)), STYLE)))
                .isEqualTo("Whether the chains agree cannot be told for p");
    }

    @Test
    void ranksOfSeparateChainsFillSeparateBins() {
        double[][] chains = {{1, 2, 3, 4}, {5, 6, 7, 8}};

        int[][] counts =
                RankCounts.of(new DrawsView.Draws("k", "", chains, 2.0, 2.0), 4).counts();
        assertThat(counts[0]).containsExactly(2, 2, 0, 0);
        assertThat(counts[1]).containsExactly(0, 0, 2, 2);
    }

    @Test
    void narrowingIsTheRatioOfMiddleNinetyPercents() {
        double[] values = DoubleStream.iterate(0.0, v -> v + 0.01).limit(101).toArray();
        double[] flat = new double[101];
        Arrays.fill(flat, 1.0);
        double[] draws = DoubleStream.iterate(0.4, v -> v + 0.0002).limit(1001).toArray();

        var marginal = new PriorPosteriorView.Marginal("k", "", values, flat, draws);
        // Draws spread evenly from 0.4 to 0.6, the prior from 0 to 1.
        assertThat(marginal.narrowing()).isCloseTo(0.2, within(1e-9));
        double[] density = marginal.posteriorDensity();
        double area = 0.0;
        for (int i = 1; i < density.length; i++) {
            area += 0.5 * (density[i] + density[i - 1]) * 0.01;
        }
        assertThat(area).isCloseTo(1.0, within(0.01));
    }

    @Test
    void parametersThatDecideAreCounted() {
        assertThat(title(SobolChart.of(CalibrationSamples.sobol(Quantity.HARVEST, "", 6, 0.55), STYLE)))
                .isEqualTo(
                        "Of 21 parameters four decide harvested dry matter; radiation-use efficiency alone makes 55 % of"
                                + " its spread");
        assertThat(title(SobolChart.of(CalibrationSamples.sobol(Quantity.HARVEST, "", 6, Double.NaN), STYLE)))
                .isEqualTo("Harvested dry matter does not vary with any parameter tried");
        assertThat(title(MorrisChart.of(CalibrationSamples.morris(Quantity.HARVEST, "", 6, 4.0), STYLE)))
                .isEqualTo("Radiation-use efficiency moves harvested dry matter most: by 4.0 Mg/ha over its range");
    }

    @Test
    void theTableCountsWhatDecides() {
        ChartDocument chart = InfluenceTableChart.of(CalibrationSamples.influence(6), STYLE);

        assertThat(title(chart)).startsWith("Of 21 parameters six decide anything; ");
        assertThat(chart.caption()).contains("15 further parameters").contains("hardly varies");
        assertThat(chart.data().rows()).hasSize(6 * 7);
        assertThat(title(InfluenceTableChart.of(CalibrationSamples.influence(0), STYLE)))
                .isEqualTo("No parameter tried moves anything");
    }

    @Test
    void everyParameterHasAShortNameOfItsOwn() {
        assertThat(Arrays.stream(CropParameter.values()).map(ParameterWords::of))
                .doesNotHaveDuplicates()
                .doesNotContain(ParameterWords.SOIL_WATER)
                .allMatch(name -> name.length() <= 40 && !name.contains("_") && !name.contains(","));
    }

    @ParameterizedTest
    @CsvSource({
        "m\u207b\u00b2, 1/m\u00b2",
        "g m\u207b\u00b2, g/m\u00b2",
        "d\u207b\u00b9, 1/d",
        "(\u00b0C d)\u207b\u00b9, 1/(\u00b0C d)",
        "kg/kg mm\u207b\u00b9, kg/kg/mm",
        "m\u00b3 m\u207b\u00b3, m\u00b3/m\u00b3",
        "% wet basis, % wet basis",
        "m\u00b2/m\u00b2, m\u00b2/m\u00b2",
        "1, ''"
    })
    void unitsAreWrittenWithoutNegativeExponents(String unit, String written) {
        assertThat(Quantity.plain(unit)).isEqualTo(written);
    }
}
