package org.thirstline.calibration.age;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** Ratios of group variance to residual variance over which the likelihood is profiled: steps of two for years, of four for plots (our choice). */
final class VarianceGrid {

    private static final double[] FINE = {0.0078125, 0.03125, 0.0625, 0.125, 0.25, 0.5, 1.0, 2.0, 4.0, 8.0, 16.0, 32.0};

    private static final double[] COARSE = {0.0078125, 0.03125, 0.125, 0.5, 2.0, 8.0, 32.0};

    private static final double[] FEW_FINE = {0.015625, 0.125, 0.5, 2.0, 8.0, 32.0};

    private static final double[] FEW_COARSE = {0.03125, 0.5, 8.0};

    /** With more kinds of group than this, all combinations are too many to simulate thousands of trials with. */
    private static final int KINDS_ON_WHOLE_GRID = 2;

    private VarianceGrid() {}

    /** Returns the kinds of group that a design can tell from the residual; a year seen on one plot only is residual. */
    static TrialDesign.Grouping[] active(TrialDesign design) {
        return kinds(design).stream().map(Kind::grouping).toArray(TrialDesign.Grouping[]::new);
    }

    /** Returns every combination of ratios. */
    static List<double[]> points(TrialDesign design) {
        return combined(kinds(design).stream().map(Kind::ratios).toList());
    }

    /** Returns fewer combinations where there are many; for planned trials, which are all tested alike. */
    static List<double[]> fewPoints(TrialDesign design) {
        List<Kind> kinds = kinds(design);
        return kinds.size() <= KINDS_ON_WHOLE_GRID
                ? points(design)
                : combined(kinds.stream()
                        .map(kind -> kind.source() == Source.YEAR ? FEW_FINE : FEW_COARSE)
                        .toList());
    }

    private static List<double[]> combined(List<double[]> ratiosOfKinds) {
        List<double[]> points = List.of(new double[0]);
        for (double[] ratios : ratiosOfKinds) {
            List<double[]> longer = new ArrayList<>();
            for (double[] point : points) {
                for (double ratio : ratios) {
                    double[] next = Arrays.copyOf(point, point.length + 1);
                    next[point.length] = ratio;
                    longer.add(next);
                }
            }
            points = longer;
        }
        return points;
    }

    /** Returns the variance of each source of scatter, from ratios in the order of the active kinds. */
    static VarianceParts parts(TrialDesign design, double[] ratios, double residualVariance) {
        double[] sd = new double[Source.values().length];
        List<Kind> kinds = kinds(design);
        for (int g = 0; g < ratios.length; g++) {
            sd[kinds.get(g).source().ordinal()] = Math.sqrt(ratios[g] * residualVariance);
        }
        return new VarianceParts(
                sd[Source.PLOT.ordinal()],
                sd[Source.YEAR.ordinal()],
                sd[Source.SITE_YEAR.ordinal()],
                Math.sqrt(residualVariance));
    }

    private static List<Kind> kinds(TrialDesign design) {
        List<Kind> kinds = new ArrayList<>();
        if (repeats(design.plots(), design)) {
            kinds.add(new Kind(Source.PLOT, design.plots(), COARSE));
        }
        if (repeats(design.years(), design)) {
            kinds.add(new Kind(Source.YEAR, design.years(), FINE));
        }
        if (design.sites().count() > 1 && repeats(design.siteYears(), design)) {
            kinds.add(new Kind(Source.SITE_YEAR, design.siteYears(), COARSE));
        }
        return kinds;
    }

    private static boolean repeats(TrialDesign.Grouping grouping, TrialDesign design) {
        return grouping.count() > 1 && grouping.count() < design.size();
    }

    private enum Source {
        PLOT,
        YEAR,
        SITE_YEAR
    }

    private record Kind(Source source, TrialDesign.Grouping grouping, double[] ratios) {}
}
