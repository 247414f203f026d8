package org.thirstline.calibration.age;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.random.RandomGenerator;
import org.hipparchus.linear.LUDecomposition;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;
import org.junit.jupiter.api.Test;

/** The shortcuts of the mixed model against the same model written out with whole matrices. */
class MixedModelTest {

    private static TrialData staggered() {
        List<PlotYear> rows = new ArrayList<>();
        for (int site = 0; site < 2; site++) {
            for (int planting = 0; planting < 2; planting++) {
                for (int plot = 0; plot < 2; plot++) {
                    for (int year = 2001 + 3 * planting; year <= 2012; year++) {
                        rows.add(PlotYear.simulated(
                                "site " + site,
                                "planting " + site + planting,
                                "plot " + plot,
                                2001 + 3 * planting,
                                year,
                                10.0,
                                10.0 + Math.sin(3.0 * year + site)));
                    }
                }
            }
        }
        return TrialData.of(rows);
    }

    /** Smallest deviance over the grid, with V inverted as a whole. */
    private static double deviance(TrialDesign design, RealMatrix x, double[] y) {
        double best = Double.POSITIVE_INFINITY;
        TrialDesign.Grouping[] groups = VarianceGrid.active(design);
        for (double[] ratios : VarianceGrid.points(design)) {
            RealMatrix v = MatrixUtils.createRealIdentityMatrix(y.length);
            for (int i = 0; i < y.length; i++) {
                for (int j = 0; j < y.length; j++) {
                    for (int g = 0; g < groups.length; g++) {
                        v.addToEntry(i, j, groups[g].of(i) == groups[g].of(j) ? ratios[g] : 0.0);
                    }
                }
            }
            LUDecomposition lu = new LUDecomposition(v);
            RealMatrix inverse = lu.getSolver().getInverse();
            RealMatrix weighted = x.transposeMultiply(inverse);
            double[] b = new LUDecomposition(weighted.multiply(x))
                    .getSolver()
                    .getInverse()
                    .operate(weighted.operate(y));
            double[] left = MatrixUtils.createRealVector(y)
                    .subtract(MatrixUtils.createRealVector(x.operate(b)))
                    .toArray();
            double squares = ModelColumns.dot(left, inverse.operate(left));
            best = Math.min(best, y.length * Math.log(squares / y.length) + Math.log(lu.getDeterminant()));
        }
        return best;
    }

    @Test
    void shortcutsGiveTheLikelihoodOfTheWholeMatrices() {
        TrialDesign design = TrialDesign.of(staggered(), 3);
        int[] onsets = {6};
        RandomGenerator random = SyntheticTrial.random(3);
        double[] y = design.noise(new VarianceParts(0.1, 0.1, 0.05, 0.05), random);
        ModelColumns columns = ModelColumns.of(design, onsets, true);
        RealMatrix base = MatrixUtils.createRealMatrix(columns.base()).transpose();
        RealMatrix full = MatrixUtils.createRealMatrix(design.size(), base.getColumnDimension() + 1);
        full.setSubMatrix(base.getData(), 0, 0);
        full.setColumn(base.getColumnDimension(), columns.declines()[0]);

        double whole = deviance(design, base, y) - deviance(design, full, y);

        Profile profile = MixedModel.rescaledWeather(design, onsets).profile(y);
        double expected = profile.slope(0) > 0.0 ? whole : 0.0;
        assertThat(whole).isPositive();
        assertThat(profile.declineRatio()).isCloseTo(expected, within(1e-8));
    }

    @Test
    void variancesAreRecoveredFromALargeTrial() {
        TrialDesign design = TrialDesign.of(SyntheticTrial.steady(40, 60).draw(1), 3);
        double[] y = design.noise(new VarianceParts(0.08, 0.10, 0.0, 0.08), SyntheticTrial.random(4));

        VarianceParts parts = MixedModel.faceValue(design, new int[] {6}).variancesWithoutDecline(y);

        // Ratios lie on a grid: steps of four for plots, of two for years.
        assertThat(parts.residualSd()).isCloseTo(0.08, within(0.004));
        assertThat(parts.plotSd()).isBetween(0.04, 0.16);
        assertThat(parts.yearSd()).isBetween(0.07, 0.14);
    }
}
