package org.thirstline.charts;

import java.util.Arrays;
import java.util.stream.IntStream;
import org.thirstline.charts.DrawsView.Draws;

/**
 * How the ranks of each chain's draws, among all draws, fall into equal bins.
 *
 * @param counts a row for each chain
 */
record RankCounts(int[][] counts) {

    static RankCounts of(Draws draws, int bins) {
        int chains = draws.chains().length;
        int size = draws.size();
        double[] values = IntStream.range(0, size).mapToDouble(draws::at).toArray();
        Integer[] order = IntStream.range(0, size).boxed().toArray(Integer[]::new);
        Arrays.sort(order, (a, b) -> Double.compare(values[a], values[b]));
        int[][] counts = new int[chains][bins];
        for (int rank = 0; rank < size; rank++) {
            counts[order[rank] % chains][(int) ((long) rank * bins / size)]++;
        }
        return new RankCounts(counts);
    }

    int bins() {
        return counts[0].length;
    }

    /** Returns the draws in a bin of an even spread. */
    double even() {
        return (double) Arrays.stream(counts[0]).sum() / bins();
    }

    int most() {
        return Arrays.stream(counts).flatMapToInt(Arrays::stream).max().orElse(1);
    }

    /** Returns the chain whose ranks spread least evenly. */
    int farthest() {
        double even = even();
        int worst = 0;
        double most = -1.0;
        for (int chain = 0; chain < counts.length; chain++) {
            double off = Arrays.stream(counts[chain])
                    .mapToDouble(count -> (count - even) * (count - even))
                    .sum();
            if (off > most) {
                most = off;
                worst = chain;
            }
        }
        return worst;
    }
}
