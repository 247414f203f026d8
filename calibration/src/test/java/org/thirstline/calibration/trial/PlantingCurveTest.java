package org.thirstline.calibration.trial;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;
import org.thirstline.calibration.age.AgeAnalysis;
import org.thirstline.calibration.age.AgeFindings;
import org.thirstline.calibration.age.AgeOptions;
import org.thirstline.calibration.age.AgeVerdict;
import org.thirstline.calibration.age.PlotYear;
import org.thirstline.calibration.age.TrialData;

/** Staggered plantings of one place whose truth is known: weather that the simulation sees, plots that differ, 6 % a year lost past age 5. */
class PlantingCurveTest {

    private static final Offset<Double> ROUNDING = within(1e-9);

    private static final int ESTABLISHED = 3;

    private static final int LAST_YEAR = 2018;

    private static final double LOST = 0.06;

    private static final int[] PLANTED = {2001, 2004, 2007};

    private static double weather(int year) {
        return 12.0 * (1.0 + 0.3 * Math.sin(1.9 * year));
    }

    private static double kept(int age) {
        return Math.pow(1.0 - LOST, Math.max(0, age - 5));
    }

    private static List<PlotYear> rows() {
        List<PlotYear> rows = new ArrayList<>();
        for (int planted : PLANTED) {
            for (int plot = 1; plot <= 3; plot++) {
                for (int year = planted + ESTABLISHED - 1; year <= LAST_YEAR; year++) {
                    double observed = weather(year) * (0.8 + 0.1 * plot) * kept(year - planted + 1);
                    rows.add(PlotYear.simulated(
                            "loam", "loam, planted " + planted, "" + plot, planted, year, observed, weather(year)));
                }
            }
        }
        return rows;
    }

    private static List<PlantingCurve> curves(TrialData data) {
        AgeFindings findings = AgeAnalysis.of(data, AgeOptions.usual().withReplicates(199, 99, 99));
        assertThat(findings.verdict()).isEqualTo(AgeVerdict.DECLINE_BEYOND_WEATHER);
        return PlantingCurve.of(data, findings.withWeatherLeftIn(), findings.withWeatherTakenOut(), ESTABLISHED);
    }

    @Test
    void onePanelForEachPlantingWithItsOwnStart() {
        List<PlantingCurve> curves = curves(TrialData.of(rows()));
        assertThat(curves).extracting(PlantingCurve::plantingYear).containsExactly(2001, 2004, 2007);
        assertThat(curves).allSatisfy(curve -> {
            assertThat(curve.plots()).isEqualTo(3);
            assertThat(curve.points()).hasSize(LAST_YEAR - curve.plantingYear() - 1);
            assertThat(curve.points()).allSatisfy(point -> assertThat(point.standAge())
                    .isEqualTo(point.growthYear() - curve.plantingYear() + 1));
        });
    }

    @Test
    void weatherTakenOutLeavesTheDeclineAlone() {
        for (PlantingCurve curve : curves(TrialData.of(rows()))) {
            for (PlantingCurve.Point point : curve.points()) {
                assertThat(point.weatherOutMgHa() / curve.levelMgHa()).isCloseTo(kept(point.standAge()), within(1e-3));
                assertThat(curve.at(point.standAge())).isCloseTo(point.weatherOutMgHa(), within(0.02));
                assertThat(point.fitted()).isTrue();
            }
        }
    }

    @Test
    void yieldsAsHarvestedAreTheGeometricMeanOfThePlots() {
        double plots = Math.cbrt(0.9 * 1.0 * 1.1);
        for (PlantingCurve curve : curves(TrialData.of(rows()))) {
            for (PlantingCurve.Point point : curve.points()) {
                assertThat(point.harvestedMgHa())
                        .isCloseTo(weather(point.growthYear()) * plots * kept(point.standAge()), ROUNDING);
            }
        }
    }

    /** The best plot missing in one year must not look like a poor year. */
    @Test
    void aMissingPlotMakesNoDip() {
        List<PlotYear> rows = rows();
        rows.removeIf(row -> row.plot().equals("3") && row.growthYear() == 2012);
        for (PlantingCurve curve : curves(TrialData.of(rows))) {
            PlantingCurve.Point point = curve.points().stream()
                    .filter(one -> one.growthYear() == 2012)
                    .findFirst()
                    .orElseThrow();
            assertThat(point.plots()).isEqualTo(2);
            assertThat(point.weatherOutMgHa() / curve.levelMgHa()).isCloseTo(kept(point.standAge()), within(1e-3));
        }
    }

    @Test
    void withoutSimulationOnlyTheHarvestIsThere() {
        TrialData data = TrialData.of(rows()).withoutSimulation();
        for (PlantingCurve curve : PlantingCurve.of(data, Optional.empty(), Optional.empty(), ESTABLISHED)) {
            assertThat(curve.fit()).isEmpty();
            assertThat(curve.points()).allSatisfy(point -> {
                assertThat(point.weatherOutMgHa()).isNaN();
                assertThat(point.harvestedMgHa()).isPositive();
            });
        }
    }
}
