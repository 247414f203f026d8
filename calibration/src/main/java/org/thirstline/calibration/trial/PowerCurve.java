package org.thirstline.calibration.trial;

import java.util.Arrays;
import java.util.List;
import org.thirstline.calibration.age.AgeOptions;
import org.thirstline.calibration.age.DetectionPower;
import org.thirstline.calibration.age.TrialData;
import org.thirstline.calibration.age.TrialPlans;
import org.thirstline.calibration.age.VarianceParts;

/**
 * Chance of finding a decline against its rate, for one design. Immutable and thread-safe.
 *
 * @param design the design in words
 * @param ratePerYear declines tried [fraction per year]
 * @param power share of simulated trials in which each is found
 */
public record PowerCurve(String design, double[] ratePerYear, double[] power) {

    private static final double[] RATES = {0.0, 0.005, 0.01, 0.02, 0.03, 0.04, 0.05, 0.06, 0.08, 0.10};

    private static final int MORE_YEARS = 6;

    private static final int PLANTINGS = 2;

    private static final int YEARS_APART = 3;

    /** Takes copies. */
    public PowerCurve {
        ratePerYear = ratePerYear.clone();
        power = power.clone();
    }

    @Override
    public double[] ratePerYear() {
        return ratePerYear.clone();
    }

    @Override
    public double[] power() {
        return power.clone();
    }

    /** Returns the curves of a trial as it is, with more years, with more plots, and with staggered plantings beside it. */
    static List<PowerCurve> of(TrialData data, VarianceParts scatter, int onset, AgeOptions options) {
        return List.of(
                curve("this trial", data, scatter, onset, options),
                curve(MORE_YEARS + " more years", TrialPlans.continued(data, MORE_YEARS), scatter, onset, options),
                curve("twice the plots", TrialPlans.withPlotsTimes(data, 2), scatter, onset, options),
                curve(
                        MORE_YEARS + " more years and " + PLANTINGS + " new plantings",
                        TrialPlans.withNewPlantings(data, PLANTINGS, YEARS_APART, MORE_YEARS),
                        scatter,
                        onset,
                        options));
    }

    private static PowerCurve curve(
            String design, TrialData data, VarianceParts scatter, int onset, AgeOptions options) {
        DetectionPower power = DetectionPower.of(data, scatter, options);
        return new PowerCurve(
                design,
                RATES,
                Arrays.stream(RATES).map(rate -> power.of(onset, rate)).toArray());
    }
}
