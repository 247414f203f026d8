package org.thirstline.calibration.age;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Ratios of group variance to residual variance over which the likelihood is profiled (our choice). At one site: steps of two for years (four
 * at the low end) and of four for plots. At several: of four for years and eight for plots, since a third kind of group multiplies the work.
 */
final class VarianceGrid {

    private static final double[] FINE = {0.0078125, 0.03125, 0.0625, 0.125, 0.25, 0.5, 1.0, 2.0, 4.0, 8.0, 16.0, 32.0};

    private static final double[] COARSE = {0.0078125, 0.03125, 0.125, 0.5, 2.0, 8.0, 32.0};

    private static final double[] STEEP = {0.03125, 0.25, 2.0, 16.0};

    private VarianceGrid() {}

    /** Returns the kinds of group that a design can tell from the residual; a year seen on one plot only is residual. */
    static TrialDesign.Grouping[] active(TrialDesign design) {
        return kinds(design).stream().map(Kind::grouping).toArray(TrialDesign.Grouping[]::new);
    }

    /** Returns every combination of ratios. */
    static List<double[]> points(TrialDesign design) {
        List<double[]> points = List.of(new double[0]);
        for (Kind kind : kinds(design)) {
            List<double[]> longer = new ArrayList<>();
            for (double[] point : points) {
                for (double ratio : kind.ratios()) {
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
        boolean manySites = design.sites().count() > 1;
        List<Kind> kinds = new ArrayList<>();
        if (repeats(design.plots(), design)) {
            kinds.add(new Kind(Source.PLOT, design.plots(), manySites ? STEEP : COARSE));
        }
        if (repeats(design.years(), design)) {
            kinds.add(new Kind(Source.YEAR, design.years(), manySites ? COARSE : FINE));
        }
        if (manySites && repeats(design.siteYears(), design)) {
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
