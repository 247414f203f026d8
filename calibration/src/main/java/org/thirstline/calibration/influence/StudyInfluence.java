package org.thirstline.calibration.influence;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.concurrent.ConcurrentLinkedQueue;
import org.thirstline.calibration.response.Interval;
import org.thirstline.calibration.sensitivity.ElementaryEffect;
import org.thirstline.calibration.sensitivity.MorrisScreening;
import org.thirstline.calibration.sensitivity.OutputModel;
import org.thirstline.calibration.sensitivity.ProgressListener;
import org.thirstline.calibration.sensitivity.SensitivityInput;
import org.thirstline.calibration.sensitivity.SobolAnalysis;
import org.thirstline.calibration.sensitivity.SobolIndex;
import org.thirstline.calibration.study.StudyOutcome;
import org.thirstline.calibration.study.ZoneOutcome;
import org.thirstline.io.study.Zone;

/**
 * Which parameters matter for a study: all are screened, those that move any output are sampled. Immutable and thread-safe.
 *
 * @param inputs what was varied, and what must be known about it
 * @param options how
 * @param zones an answer for each zone
 */
public record StudyInfluence(VariedInputs inputs, InfluenceOptions options, List<ZoneInfluence> zones) {

    /**
     * A parameter is sampled if it moves any output by more than that share of the largest effect on it (our choice): a smaller effect
     * makes, alone, less than its square, 4 %, of the variance, so that the parameter would not decide.
     */
    private static final double WORTH_SAMPLING = 0.2;

    private static final double TAIL = 0.05;

    /** Copies the list. */
    public StudyInfluence {
        zones = List.copyOf(zones);
    }

    /**
     * Finds out.
     *
     * @param outcome the study, simulated with its standard parameters
     * @param zones those of its zones to answer for
     * @param options how
     * @param listener is told of pairs of runs done, of at most how many
     * @throws org.thirstline.model.error.InputException if there is nothing to vary or no year to compare
     */
    public static StudyInfluence of(
            StudyOutcome outcome, List<Zone> zones, InfluenceOptions options, ProgressListener listener) {
        VariedInputs inputs = VariedInputs.of(outcome.study().crop(), options);
        int most = Math.min(options.mostInputs(), inputs.inputs().size());
        int each = options.trajectories() * (inputs.inputs().size() + 1) + options.samples() * (most + 2);
        List<ZoneInfluence> answers = new ArrayList<>();
        for (ZoneOutcome zone : outcome.zones()) {
            if (zones.contains(zone.zone())) {
                int before = each * answers.size();
                int all = each * zones.size();
                ProgressListener share = (done, total) -> listener.advanced(before + done, all);
                answers.add(of(outcome, zone, inputs, options, share));
            }
        }
        listener.advanced(each * zones.size(), each * zones.size());
        return new StudyInfluence(inputs, options, answers);
    }

    private static ZoneInfluence of(
            StudyOutcome outcome,
            ZoneOutcome zone,
            VariedInputs varied,
            InfluenceOptions options,
            ProgressListener listener) {
        List<VariedInput> inputs = varied.inputs();
        ComparedSeasons compared = ComparedSeasons.of(outcome, zone);
        StandModel model = new StandModel(outcome, zone, compared, inputs);
        List<OutputInfluence> screened = screened(model, compared.outputs(), inputs, options, listener);
        int screening = options.trajectories() * (inputs.size() + 1);
        List<VariedInput> chosen = chosen(inputs, screened, options.mostInputs());
        StandModel fewer = model.varying(chosen);
        ProgressListener later = (done, total) -> listener.advanced(screening + done, screening + total);
        return new ZoneInfluence(
                zone.zone(),
                compared.years().size(),
                compared.fullGrown(),
                chosen.isEmpty() ? screened : sampled(fewer, chosen, screened, options, later),
                chosen.stream().map(VariedInput::key).toList(),
                screening + (chosen.isEmpty() ? 0 : options.samples() * (chosen.size() + 2)),
                model.deaths() + fewer.deaths());
    }

    private static List<OutputInfluence> screened(
            StandModel model,
            List<InfluenceOutput> outputs,
            List<VariedInput> inputs,
            InfluenceOptions options,
            ProgressListener listener) {
        double[] standard = model.standard();
        List<List<ElementaryEffect>> effects = MorrisScreening.screen(
                model,
                sampled(inputs),
                new MorrisScreening.Options(
                        options.trajectories(), InfluenceOptions.LEVELS, options.seed(), options.threads()),
                listener);
        List<OutputInfluence> screened = new ArrayList<>();
        for (int i = 0; i < outputs.size(); i++) {
            Interval none = new Interval(standard[i], standard[i]);
            boolean noticeable = isNoticeable(outputs.get(i), standard[i], standard[0], effects.get(i));
            screened.add(new OutputInfluence(outputs.get(i), standard[i], noticeable, none, effects.get(i), List.of()));
        }
        return screened;
    }

    private static boolean isNoticeable(
            InfluenceOutput output, double standard, double meanHarvest, List<ElementaryEffect> effects) {
        boolean dryMatter = output.unit().equals(InfluenceOutput.MEAN_HARVEST.unit());
        double scale = Math.abs(dryMatter ? meanHarvest : standard);
        double largest = effects.stream()
                .mapToDouble(ElementaryEffect::meanAbsolute)
                .max()
                .orElse(0.0);
        return largest > OutputInfluence.NOTICEABLE * scale;
    }

    private static List<SensitivityInput> sampled(List<VariedInput> inputs) {
        return inputs.stream().map(VariedInput::sampled).toList();
    }

    /** The parameters that matter to any output, at most so many, in the order given. */
    private static List<VariedInput> chosen(List<VariedInput> inputs, List<OutputInfluence> screened, int most) {
        List<VariedInput> strongest = inputs.stream()
                .filter(input -> ZoneInfluence.largest(screened, input.key()) > WORTH_SAMPLING)
                .sorted(Comparator.comparingDouble(input -> -ZoneInfluence.largest(screened, input.key())))
                .limit(most)
                .toList();
        return inputs.stream().filter(strongest::contains).toList();
    }

    private static List<OutputInfluence> sampled(
            StandModel model,
            List<VariedInput> chosen,
            List<OutputInfluence> screened,
            InfluenceOptions options,
            ProgressListener listener) {
        ConcurrentLinkedQueue<double[]> values = new ConcurrentLinkedQueue<>();
        OutputModel noted = point -> {
            double[] outputs = model.outputs(point);
            values.add(outputs);
            return outputs;
        };
        List<List<SobolIndex>> indices = SobolAnalysis.estimate(
                noted,
                sampled(chosen),
                new SobolAnalysis.Options(options.samples(), options.replicates(), options.seed(), options.threads()),
                listener);
        List<OutputInfluence> answers = new ArrayList<>();
        for (int i = 0; i < screened.size(); i++) {
            OutputInfluence before = screened.get(i);
            answers.add(new OutputInfluence(
                    before.output(),
                    before.standard(),
                    before.noticeable(),
                    middle(values, i),
                    before.effects(),
                    indices.get(i)));
        }
        return answers;
    }

    /** Every sampled point, mixed ones too, is spread evenly over the ranges; sorting makes the order of the threads forgotten. */
    private static Interval middle(ConcurrentLinkedQueue<double[]> values, int output) {
        double[] sorted = values.stream().mapToDouble(of -> of[output]).sorted().toArray();
        int below = (int) Math.floor(TAIL * sorted.length);
        double[] ends = Arrays.copyOfRange(sorted, below, sorted.length - below);
        return new Interval(ends[0], ends[ends.length - 1]);
    }
}
