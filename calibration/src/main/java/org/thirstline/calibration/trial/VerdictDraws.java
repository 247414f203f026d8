package org.thirstline.calibration.trial;

import java.util.Arrays;
import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import org.thirstline.calibration.age.AgeAnalysis;
import org.thirstline.calibration.age.AgeFindings;
import org.thirstline.calibration.age.AgeOptions;
import org.thirstline.calibration.age.AgeVerdict;
import org.thirstline.calibration.age.DeclineFit;
import org.thirstline.calibration.age.TrialData;
import org.thirstline.calibration.response.Interval;
import org.thirstline.io.study.Study;
import org.thirstline.model.crop.CropParameters;
import org.thirstline.model.weather.DailyDrivers;

/**
 * The verdict repeated under several sets of crop parameters that the calibration leaves possible, such as draws from its posterior. Immutable and
 * thread-safe.
 *
 * @param draws parameter sets tried
 * @param tally how many gave each verdict; all three are there
 * @param meanDeclinePerYear middle 90 % of the mean declines found, weather taken out [fraction per year]; absent where nothing could be fitted
 */
public record VerdictDraws(int draws, Map<AgeVerdict, Integer> tally, Optional<Interval> meanDeclinePerYear) {

    /** Parameter sets tried at most: more cost minutes and hardly move a share (our choice). */
    public static final int MOST = 40;

    private static final double SHARE_OUTSIDE = 0.5 * (1.0 - AgeOptions.COVERAGE);

    /** Copies the map. */
    public VerdictDraws {
        tally = Collections.unmodifiableMap(new EnumMap<>(tally));
    }

    /** Returns the share of the draws that gave a verdict. */
    public double share(AgeVerdict verdict) {
        return tally.getOrDefault(verdict, 0) / (double) draws;
    }

    /**
     * Repeats the verdict.
     *
     * @param study the study
     * @param trial its plots, simulated
     * @param drivers its weather
     * @param crops parameter sets; of more than {@link #MOST}, so many evenly spaced ones are taken
     * @param options how decline is tested
     */
    static VerdictDraws of(
            Study study, StudyTrial trial, DailyDrivers drivers, List<CropParameters> crops, AgeOptions options) {
        int count = Math.min(MOST, crops.size());
        List<AgeFindings> findings = IntStream.range(0, count)
                .parallel()
                .mapToObj(i -> crops.get((int) ((long) i * crops.size() / count)))
                .map(crop -> trial.simulatedWith(new UnageingStand(study, crop, drivers), study))
                .filter(TrialData::hasSimulation)
                .map(data -> AgeAnalysis.of(data, options))
                .toList();
        Map<AgeVerdict, Integer> tally = new EnumMap<>(AgeVerdict.class);
        Arrays.stream(AgeVerdict.values()).forEach(verdict -> tally.put(verdict, 0));
        findings.forEach(finding -> tally.merge(finding.verdict(), 1, Integer::sum));
        return new VerdictDraws(findings.size(), tally, middle(findings));
    }

    private static Optional<Interval> middle(List<AgeFindings> findings) {
        double[] declines = findings.stream()
                .flatMap(finding -> finding.withWeatherTakenOut().stream())
                .mapToDouble(DeclineFit::meanDeclinePerYear)
                .sorted()
                .toArray();
        if (declines.length == 0) {
            return Optional.empty();
        }
        int outside = (int) Math.floor(SHARE_OUTSIDE * declines.length);
        return Optional.of(new Interval(declines[outside], declines[declines.length - 1 - outside]));
    }
}
