package org.thirstline.calibration.age;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;

/**
 * One reading of a trial, ready to be fitted. Immutable and thread-safe.
 *
 * @param reading which
 * @param model its mixed model
 * @param rows the plot years it keeps
 */
record ReadingModel(Reading reading, MixedModel model, int[] rows) {

    /** Share of the median year under which a simulated year is poor (our choice). */
    private static final double POOR = 0.8;

    /** Plot years beyond one for each planting: rate, onset, weather and one to scatter. */
    private static final int FEWEST_SPARE = 4;

    /** Returns the readings that a design allows; face value comes first. Empty if no onset can be tried. */
    static List<ReadingModel> of(TrialDesign design, AgeOptions options) {
        int[] all = IntStream.range(0, design.size()).toArray();
        List<ReadingModel> readings = new ArrayList<>();
        boolean tooFew = design.size() < design.plantings().count() + FEWEST_SPARE;
        if (tooFew || design.onsets(options.agesPastOnset()).length == 0) {
            return readings;
        }
        readings.add(faceValue(Reading.FACE_VALUE, design, all, options));
        if (!design.hasSimulation() || !design.weatherVaries()) {
            return readings;
        }
        readings.add(new ReadingModel(
                Reading.RESCALED_WEATHER,
                MixedModel.rescaledWeather(design, design.onsets(options.agesPastOnset())),
                all));
        double[] share = design.shareOfMedianYear();
        int[] kept = Arrays.stream(all).filter(i -> share[i] >= POOR).toArray();
        if (kept.length < all.length) {
            readings.add(faceValue(Reading.WITHOUT_POOR_YEARS, design.only(kept), kept, options));
        }
        return readings;
    }

    private static ReadingModel faceValue(Reading reading, TrialDesign design, int[] rows, AgeOptions options) {
        int[] onsets =
                design.years().count() < AgeAnalysis.FEWEST_YEARS ? new int[0] : design.onsets(options.agesPastOnset());
        return new ReadingModel(reading, MixedModel.faceValue(design, onsets), rows);
    }

    /** Returns the likelihood ratio of the best decline; zero where too little is left to try one. */
    double declineRatio(double[] logYield) {
        return model.profile(selected(logYield)).declineRatio();
    }

    double[] selected(double[] logYield) {
        return rows.length == logYield.length
                ? logYield
                : IntStream.of(rows).mapToDouble(i -> logYield[i]).toArray();
    }
}
