package org.thirstline.calibration.age;

import java.util.Arrays;
import java.util.stream.IntStream;

/**
 * The columns of the mixed model and their inner products. Immutable and thread-safe.
 *
 * @param base intercept of each planting, then simulated weather where its effect may be rescaled
 * @param declines minus the years of age past each onset
 * @param groups the group of each plot year, for each kind of group in the model
 * @param groupSizes number of groups of each kind
 */
record ModelColumns(double[][] base, double[][] declines, int[][] groups, int[] groupSizes) {

    static ModelColumns of(TrialDesign design, int[] onsets, boolean rescaledWeather) {
        int plantings = design.plantings().count();
        double[][] base = new double[plantings + (rescaledWeather ? 1 : 0)][];
        for (int p = 0; p < plantings; p++) {
            int planting = p;
            base[p] = IntStream.range(0, design.size())
                    .mapToDouble(i -> design.plantings().of(i) == planting ? 1.0 : 0.0)
                    .toArray();
        }
        if (rescaledWeather) {
            base[plantings] = design.simulatedWeather();
        }
        double[][] declines = IntStream.of(onsets)
                .mapToObj(onset -> Arrays.stream(design.yearsPast(onset))
                        .map(past -> -past)
                        .toArray())
                .toArray(double[][]::new);
        TrialDesign.Grouping[] active = VarianceGrid.active(design);
        int[][] groups = new int[active.length][];
        int[] sizes = new int[active.length];
        for (int g = 0; g < active.length; g++) {
            groups[g] = active[g].numbers();
            sizes[g] = active[g].count();
        }
        return new ModelColumns(base, declines, groups, sizes);
    }

    int groupColumns() {
        return IntStream.of(groupSizes).sum();
    }

    /** Returns sums of a column over each group, all kinds one after another. */
    double[] groupSums(double[] column) {
        double[] sums = new double[groupColumns()];
        int offset = 0;
        for (int g = 0; g < groups.length; g++) {
            for (int i = 0; i < column.length; i++) {
                sums[offset + groups[g][i]] += column[i];
            }
            offset += groupSizes[g];
        }
        return sums;
    }

    /** Returns inner products of each pair of group columns: how often two groups meet. */
    double[][] groupsGroups() {
        double[][] meet = new double[groupColumns()][groupColumns()];
        int rows = base[0].length;
        for (int i = 0; i < rows; i++) {
            int offsetA = 0;
            for (int a = 0; a < groups.length; a++) {
                int offsetB = 0;
                for (int b = 0; b < groups.length; b++) {
                    meet[offsetA + groups[a][i]][offsetB + groups[b][i]] += 1.0;
                    offsetB += groupSizes[b];
                }
                offsetA += groupSizes[a];
            }
        }
        return meet;
    }

    static double dot(double[] a, double[] b) {
        double sum = 0.0;
        for (int i = 0; i < a.length; i++) {
            sum += a[i] * b[i];
        }
        return sum;
    }
}
