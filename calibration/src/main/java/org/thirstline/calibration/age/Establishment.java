package org.thirstline.calibration.age;

import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.thirstline.calibration.error.CalibrationError;
import org.thirstline.model.error.InputException;

/**
 * How a stand built up and when it peaked, from yields as harvested: weather is in all of it. Immutable and thread-safe.
 *
 * @param meanByAgeMgHa mean yield by stand age, over plots and plantings [Mg/ha]
 * @param peakAge stand age of the highest mean
 * @param lossSincePeak share of the peak missing at the oldest age
 */
public record Establishment(TreeMap<Integer, Double> meanByAgeMgHa, int peakAge, double lossSincePeak) {

    private static final int BUILD_UP_YEARS = 3;

    /** Takes a copy. */
    public Establishment {
        meanByAgeMgHa = new TreeMap<>(meanByAgeMgHa);
    }

    @Override
    public TreeMap<Integer, Double> meanByAgeMgHa() {
        return new TreeMap<>(meanByAgeMgHa);
    }

    /** Summarises a trial. */
    public static Establishment of(TrialData data) {
        TreeMap<Integer, Double> means = data.rows().stream()
                .collect(Collectors.groupingBy(
                        PlotYear::standAge, TreeMap::new, Collectors.averagingDouble(PlotYear::observedMgHa)));
        Map.Entry<Integer, Double> peak = means.firstEntry();
        for (Map.Entry<Integer, Double> mean : means.entrySet()) {
            peak = mean.getValue() > peak.getValue() ? mean : peak;
        }
        return new Establishment(means, peak.getKey(), 1.0 - means.lastEntry().getValue() / peak.getValue());
    }

    /**
     * Returns yields of ages 1 to 3 over that of age 3.
     *
     * @throws InputException if one of the three is missing
     */
    public double[] buildUp() {
        double[] shares = new double[BUILD_UP_YEARS];
        double full = meanAt(BUILD_UP_YEARS);
        for (int age = 1; age <= BUILD_UP_YEARS; age++) {
            shares[age - 1] = meanAt(age) / full;
        }
        return shares;
    }

    private double meanAt(int age) {
        Double mean = meanByAgeMgHa.get(age);
        if (mean == null) {
            throw new InputException(CalibrationError.BUILD_UP_INCOMPLETE, age);
        }
        return mean;
    }
}
