package org.thirstline.calibration.age;

import java.util.stream.IntStream;
import org.thirstline.model.error.Check;

/**
 * Dry matter by length of stand life, without prices. Immutable and thread-safe.
 *
 * @param cumulativeMgHa dry matter harvested over a stand life of 1, 2, ... years [Mg/ha]
 * @param meanMgHaYear the same per year of land use, gap included [Mg/ha per year]
 * @param bestAge stand age at which replanting gives most dry matter per year
 * @param bestIsLast whether the best age is the last one known, so that the true best may be later
 */
public record StandLife(double[] cumulativeMgHa, double[] meanMgHaYear, int bestAge, boolean bestIsLast) {

    /** Takes copies. */
    public StandLife {
        cumulativeMgHa = cumulativeMgHa.clone();
        meanMgHaYear = meanMgHaYear.clone();
    }

    @Override
    public double[] cumulativeMgHa() {
        return cumulativeMgHa.clone();
    }

    @Override
    public double[] meanMgHaYear() {
        return meanMgHaYear.clone();
    }

    /**
     * Works out stand life.
     *
     * @param yieldByAgeMgHa yield at age 1, 2, ... [Mg/ha]; not modified
     * @param gapYears years without yield between two stands: clearing, fallow [years]
     */
    public static StandLife of(double[] yieldByAgeMgHa, double gapYears) {
        Check.range("ages", yieldByAgeMgHa.length, "years", 1.0, 200.0);
        Check.range("gap between stands", gapYears, "years", 0.0, 20.0);
        double[] cumulative = yieldByAgeMgHa.clone();
        double[] mean = new double[cumulative.length];
        int best = 0;
        for (int i = 0; i < cumulative.length; i++) {
            Check.range("yield at age " + (i + 1), yieldByAgeMgHa[i], "Mg/ha", 0.0, 200.0);
            cumulative[i] += i == 0 ? 0.0 : cumulative[i - 1];
            mean[i] = cumulative[i] / (i + 1 + gapYears);
            best = mean[i] > mean[best] ? i : best;
        }
        return new StandLife(cumulative, mean, best + 1, best == cumulative.length - 1);
    }

    /**
     * Returns a curve of yield by age.
     *
     * @param fullYieldMgHa yield of the established stand [Mg/ha]
     * @param buildUp share of it at ages 1, 2, ... until established; not modified
     * @param onsetAge last age before decline
     * @param declinePerYear fraction lost in each year past it; zero for none
     * @param ages length of the curve [years]
     */
    public static double[] curve(
            double fullYieldMgHa, double[] buildUp, int onsetAge, double declinePerYear, int ages) {
        Check.range("decline", declinePerYear, "per year", -0.5, 0.9);
        return IntStream.rangeClosed(1, ages)
                .mapToDouble(age -> fullYieldMgHa
                        * (age <= buildUp.length ? buildUp[age - 1] : 1.0)
                        * Math.pow(1.0 - declinePerYear, Math.max(0, age - onsetAge)))
                .toArray();
    }
}
