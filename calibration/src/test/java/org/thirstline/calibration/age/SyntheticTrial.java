package org.thirstline.calibration.age;

import java.util.ArrayList;
import java.util.List;
import java.util.random.RandomGenerator;
import java.util.random.RandomGeneratorFactory;
import java.util.stream.IntStream;

/**
 * Trials whose truth is known. Scatter of log yield: plots 8 %, years 10 % (common to all plots: what the simulation misses), rest 8 %;
 * ordinary weather moves yield by 15 % from year to year.
 */
record SyntheticTrial(int plots, int years, double declinePerYear, int onset, double[] drought, double captured) {

    static final VarianceParts SCATTER = new VarianceParts(0.08, 0.10, 0.0, 0.08);

    private static final double WEATHER_SD = 0.15;

    private static final double[] BUILD_UP = {0.1, 0.5};

    static SyntheticTrial steady(int plots, int years) {
        return declining(plots, years, 0.0, years);
    }

    static SyntheticTrial declining(int plots, int years, double declinePerYear, int onset) {
        return new SyntheticTrial(plots, years, declinePerYear, onset, new double[0], 1.0);
    }

    /** Adds droughts in the last years, as log yield lost, of which the simulation sees a share only. */
    SyntheticTrial endingInDrought(double capturedShare, double... lost) {
        return new SyntheticTrial(plots, years, declinePerYear, onset, lost, capturedShare);
    }

    static RandomGenerator random(long seed) {
        return RandomGeneratorFactory.of("L64X128MixRandom").create(seed);
    }

    TrialData draw(long seed) {
        RandomGenerator random = random(seed);
        double[] weather = IntStream.range(0, years)
                .mapToDouble(y -> WEATHER_SD * random.nextGaussian())
                .toArray();
        double[] missed = IntStream.range(0, years)
                .mapToDouble(y -> SCATTER.yearSd() * random.nextGaussian())
                .toArray();
        List<PlotYear> rows = new ArrayList<>();
        for (int plot = 0; plot < plots; plot++) {
            double plotEffect = SCATTER.plotSd() * random.nextGaussian();
            for (int year = 0; year < years; year++) {
                double full =
                        Math.log(15.0) + (year < BUILD_UP.length ? Math.log(BUILD_UP[year]) : 0.0) + weather[year];
                int fromEnd = years - drought.length;
                double lost = year >= fromEnd ? drought[year - fromEnd] : 0.0;
                double aged = Math.log1p(-declinePerYear) * Math.max(0, year + 1 - onset);
                double rest = plotEffect + missed[year] + SCATTER.residualSd() * random.nextGaussian();
                rows.add(PlotYear.simulated(
                        "Larkmoor",
                        "old stand",
                        "plot " + plot,
                        2001,
                        2001 + year,
                        Math.exp(full - lost + aged + rest),
                        Math.exp(full - captured * lost)));
            }
        }
        return TrialData.of(rows);
    }
}
