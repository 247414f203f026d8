package org.thirstline.calibration.influence;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import org.thirstline.calibration.error.CalibrationError;
import org.thirstline.io.crop.CropFile;
import org.thirstline.io.crop.ParameterNote;
import org.thirstline.model.crop.CropParameter;
import org.thirstline.model.error.InputException;

/**
 * What is varied for a crop: parameters with a published range, over that range, and the soil's available water. Where the ranges of two
 * parameters that must be in order overlap, both are cut half way between their standard values, so that every combination can be run.
 * Immutable and thread-safe.
 *
 * @param inputs what is varied
 * @param notices what a reader must know about the ranges
 */
public record VariedInputs(List<VariedInput> inputs, List<String> notices) {

    /** Set by the study, or only converting results: no property of the stand that could be uncertain. */
    private static final Set<CropParameter> NOT_VARIED = EnumSet.of(
            CropParameter.STUBBLE_HEIGHT,
            CropParameter.PICK_UP_SHARE,
            CropParameter.CO2_REFERENCE,
            CropParameter.DECLINE_EXPONENTIAL,
            CropParameter.HEATING_VALUE,
            CropParameter.BALE_DENSITY);

    /** Pairs of which the first must stay below the second. */
    private static final List<List<CropParameter>> ORDERED = List.of(
            List.of(CropParameter.LEAF_BASE, CropParameter.LEAF_UPPER),
            List.of(CropParameter.GROWTH_MIN, CropParameter.GROWTH_OPTIMUM_LOW),
            List.of(CropParameter.GROWTH_OPTIMUM_LOW, CropParameter.GROWTH_OPTIMUM_HIGH),
            List.of(CropParameter.GROWTH_OPTIMUM_HIGH, CropParameter.GROWTH_MAX));

    /** Share of the gap left between two ranges that were cut. */
    private static final double APART = 1.0e-6;

    private static final double PERCENT = 100.0;

    /** Copies the lists. */
    public VariedInputs {
        inputs = List.copyOf(inputs);
        notices = List.copyOf(notices);
    }

    /**
     * Returns what is varied.
     *
     * @param crop the crop with its ranges
     * @param options how far the soil, and parameters without a range, are varied
     * @throws InputException if there is nothing to vary
     */
    public static VariedInputs of(CropFile crop, InfluenceOptions options) {
        List<VariedInput> inputs = new ArrayList<>();
        List<String> notices = new ArrayList<>();
        for (CropParameter parameter : CropParameter.values()) {
            if (!NOT_VARIED.contains(parameter)) {
                input(crop, parameter, options, notices).ifPresent(inputs::add);
            }
        }
        if (inputs.isEmpty()) {
            throw new InputException(CalibrationError.NOTHING_TO_VARY, crop.name());
        }
        ORDERED.forEach(pair -> cut(inputs, pair.get(0), pair.get(1), crop, notices));
        double share = options.soilWaterPct() / PERCENT;
        if (share > 0.0) {
            inputs.add(new VariedInput(
                    VariedInput.SOIL_WATER, "1", 1.0, 1.0 - share, 1.0 + share, false, Optional.empty()));
        }
        return new VariedInputs(inputs, notices);
    }

    private static Optional<VariedInput> input(
            CropFile crop, CropParameter parameter, InfluenceOptions options, List<String> notices) {
        ParameterNote note = crop.note(parameter);
        double standard = crop.parameters().get(parameter);
        boolean published = note.hasRange() && note.low() < note.high();
        double half = Math.abs(standard) * options.unpublishedPct() / PERCENT;
        double low = Math.max(parameter.lowest(), published ? note.low() : standard - half);
        double high = Math.min(parameter.highest(), published ? note.high() : standard + half);
        if (!(low < high)) {
            return Optional.empty();
        }
        if (standard < low || standard > high) {
            notices.add(String.format(
                    Locale.ROOT,
                    "The value of %s, %s, lies outside its published range of %s to %s; it is varied over the range.",
                    parameter.key(),
                    standard,
                    low,
                    high));
        }
        return Optional.of(new VariedInput(
                parameter.key(), parameter.unit(), standard, low, high, published, Optional.of(parameter)));
    }

    private static void cut(
            List<VariedInput> inputs, CropParameter small, CropParameter large, CropFile crop, List<String> notices) {
        int first = indexOf(inputs, small);
        int second = indexOf(inputs, large);
        double smallHigh =
                first < 0 ? crop.parameters().get(small) : inputs.get(first).high();
        double largeLow =
                second < 0 ? crop.parameters().get(large) : inputs.get(second).low();
        if (smallHigh < largeLow) {
            return;
        }
        double smallStandard = crop.parameters().get(small);
        double gap = crop.parameters().get(large) - smallStandard;
        double middle = smallStandard + 0.5 * gap;
        if (first >= 0) {
            VariedInput input = inputs.get(first);
            double end = second < 0 ? smallStandard + (1.0 - APART) * gap : middle - APART * gap;
            inputs.set(first, input.between(Math.min(input.low(), smallStandard), Math.min(input.high(), end)));
        }
        if (second >= 0) {
            VariedInput input = inputs.get(second);
            double end = first < 0 ? smallStandard + APART * gap : middle + APART * gap;
            inputs.set(second, input.between(Math.max(input.low(), end), Math.max(input.high(), smallStandard + gap)));
        }
        notices.add(String.format(
                Locale.ROOT,
                "%s must stay below %s; where their ranges overlap both are cut, so that every combination can be simulated.",
                small.key(),
                large.key()));
    }

    private static int indexOf(List<VariedInput> inputs, CropParameter parameter) {
        for (int i = 0; i < inputs.size(); i++) {
            if (inputs.get(i).parameter().filter(parameter::equals).isPresent()) {
                return i;
            }
        }
        return -1;
    }
}
