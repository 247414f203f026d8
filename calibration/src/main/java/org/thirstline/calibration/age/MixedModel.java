package org.thirstline.calibration.age;

import java.util.List;

/**
 * The mixed model of log yield for one design: an intercept for each planting, optionally a slope on simulated weather, random plots and
 * years, and a decline from an onset age. All that does not depend on the yields is worked out once. Immutable and thread-safe.
 *
 * <p>y = B b - r max(0, age - onset) + Z u + e, with var(u) = D s^2 and var(e) = s^2. Variance ratios D are profiled over a grid and the
 * onset over integer ages; b, r and s^2 have closed forms (Searle, Casella and McCulloch 1992, Variance Components, ch. 6 and 7).
 */
final class MixedModel {

    private final TrialDesign design;
    private final int[] onsets;
    private final ModelColumns columns;
    private final List<GridPoint> grid;

    private MixedModel(TrialDesign design, int[] onsets, boolean rescaledWeather) {
        this.design = design;
        this.onsets = onsets;
        columns = ModelColumns.of(design, onsets, rescaledWeather);
        double[][] groupsGroups = columns.groupsGroups();
        grid = VarianceGrid.points(design).stream()
                .map(ratios -> new GridPoint(ratios, columns, groupsGroups))
                .toList();
    }

    /** Returns the model that takes simulated weather at its face value. */
    static MixedModel faceValue(TrialDesign design, int[] onsets) {
        return new MixedModel(design, onsets, false);
    }

    /** Returns the model in which the stand may respond to weather more or less strongly than simulated. */
    static MixedModel rescaledWeather(TrialDesign design, int[] onsets) {
        return new MixedModel(design, onsets, true);
    }

    TrialDesign design() {
        return design;
    }

    int[] onsets() {
        return onsets;
    }

    double[] decline(int onset) {
        return columns.declines()[onset];
    }

    /** Returns the likelihood profiled over variance ratios, for no decline and for each onset. */
    Profile profile(double[] logYield) {
        YieldSums sums = YieldSums.of(logYield, columns);
        GridSolution solution = workspace();
        Profile profile = new Profile(onsets.length);
        double n = design.size();
        for (GridPoint point : grid) {
            point.solve(sums, solution);
            profile.offerNull(n * Math.log(solution.nullResidual() / n) + point.logDeterminant());
            for (int k = 0; k < onsets.length; k++) {
                profile.offer(k, n * Math.log(solution.residual(k) / n) + point.logDeterminant(), solution.slope(k));
            }
        }
        return profile;
    }

    private GridSolution workspace() {
        return new GridSolution(columns.groupColumns(), columns.base().length, onsets.length);
    }

    /** Returns the restricted-likelihood estimate of the variances without decline. */
    VarianceParts variancesWithoutDecline(double[] logYield) {
        return restricted(logYield, -1);
    }

    /** Returns the restricted-likelihood estimate of the variances with decline from an onset. */
    VarianceParts variancesWithDecline(double[] logYield, int onset) {
        return restricted(logYield, onset);
    }

    private VarianceParts restricted(double[] logYield, int onset) {
        YieldSums sums = YieldSums.of(logYield, columns);
        GridSolution solution = workspace();
        double freedom = design.size() - columns.base().length - (onset < 0 ? 0.0 : 1.0);
        double best = Double.POSITIVE_INFINITY;
        double[] ratios = grid.get(0).ratios();
        double variance = 0.0;
        for (GridPoint point : grid) {
            point.solve(sums, solution);
            double residual = onset < 0 ? solution.nullResidual() : solution.residual(onset);
            double deviance = freedom * Math.log(residual / freedom)
                    + point.logDeterminant()
                    + point.logBaseDeterminant()
                    + (onset < 0 ? 0.0 : Math.log(point.declineNorm(onset)));
            if (deviance < best) {
                best = deviance;
                ratios = point.ratios();
                variance = residual / freedom;
            }
        }
        return VarianceGrid.parts(design, ratios, variance);
    }
}
