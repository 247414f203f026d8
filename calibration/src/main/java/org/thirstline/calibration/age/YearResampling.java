package org.thirstline.calibration.age;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.random.RandomGenerator;
import java.util.stream.IntStream;

/**
 * Resampling of whole calendar years, and of plots within them. What a year did to all plots of a site moves as one block to another year;
 * what is left of a plot is drawn among the plots of the same site and source year. Immutable and thread-safe.
 */
final class YearResampling {

    /** Degrees of freedom that intercept, rate and onset take from the years. */
    private static final double FITTED = 3.0;

    private final TrialDesign design;
    private final double[] fitted;
    private final double[] siteYearEffect;
    private final double[] rest;
    private final List<List<Integer>> rowsOfSiteYear;
    private final int[][] siteYearOf;
    private final double yearStretch;
    private final double restStretch;

    /**
     * Takes log yields apart.
     *
     * @param design the trial
     * @param logYield log yields; not modified
     * @param decline expected loss by age; not modified
     */
    YearResampling(TrialDesign design, double[] logYield, double[] decline) {
        this.design = design;
        double[] left = IntStream.range(0, logYield.length)
                .mapToDouble(i -> logYield[i] - decline[i])
                .toArray();
        double[] plotMeans = design.plots().means(left);
        fitted = new double[left.length];
        for (int i = 0; i < left.length; i++) {
            double plotMean = plotMeans[design.plots().of(i)];
            fitted[i] = decline[i] + plotMean;
            left[i] -= plotMean;
        }
        siteYearEffect = design.siteYears().means(left);
        rest = IntStream.range(0, left.length)
                .mapToDouble(i -> left[i] - siteYearEffect[design.siteYears().of(i)])
                .toArray();
        rowsOfSiteYear = rows(design);
        siteYearOf = siteYears(design);
        double years = design.years().count();
        yearStretch = Math.sqrt(years / Math.max(1.0, years - FITTED));
        double freedom = design.size()
                - design.siteYears().count()
                - design.plots().count()
                + design.plantings().count();
        restStretch = Math.sqrt(design.size() / Math.max(1.0, freedom));
    }

    private static List<List<Integer>> rows(TrialDesign design) {
        List<List<Integer>> rows = new ArrayList<>();
        IntStream.range(0, design.siteYears().count()).forEach(group -> rows.add(new ArrayList<>()));
        IntStream.range(0, design.size())
                .forEach(i -> rows.get(design.siteYears().of(i)).add(i));
        return rows;
    }

    /** Returns the site-year of each site in each year, -1 where the site has no yields. */
    private static int[][] siteYears(TrialDesign design) {
        int[][] groups = new int[design.sites().count()][design.years().count()];
        Arrays.stream(groups).forEach(row -> Arrays.fill(row, -1));
        for (int i = 0; i < design.size(); i++) {
            groups[design.sites().of(i)][design.years().of(i)] =
                    design.siteYears().of(i);
        }
        return groups;
    }

    /** Returns one resampled trial. */
    double[] draw(RandomGenerator random) {
        int years = design.years().count();
        int[] source =
                IntStream.range(0, years).map(year -> random.nextInt(years)).toArray();
        int[] sourceOfGroup = new int[design.siteYears().count()];
        Arrays.fill(sourceOfGroup, -1);
        double[] drawn = new double[design.size()];
        for (int i = 0; i < drawn.length; i++) {
            int target = design.siteYears().of(i);
            if (sourceOfGroup[target] < 0) {
                sourceOfGroup[target] =
                        sourceGroup(design.sites().of(i), source[design.years().of(i)], random);
            }
            int group = sourceOfGroup[target];
            List<Integer> candidates = rowsOfSiteYear.get(group);
            int row = candidates.get(random.nextInt(candidates.size()));
            drawn[i] = fitted[i] + yearStretch * siteYearEffect[group] + restStretch * rest[row];
        }
        return drawn;
    }

    /** A site that was not harvested in the year drawn gives one of its own years. */
    private int sourceGroup(int site, int year, RandomGenerator random) {
        int group = siteYearOf[site][year];
        while (group < 0) {
            group = siteYearOf[site][random.nextInt(design.years().count())];
        }
        return group;
    }
}
