package org.thirstline.cli;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import org.thirstline.calibration.influence.InfluenceOutput;
import org.thirstline.calibration.influence.OutputInfluence;
import org.thirstline.calibration.influence.StudyInfluence;
import org.thirstline.calibration.influence.ZoneInfluence;
import org.thirstline.calibration.sensitivity.SobolIndex;
import org.thirstline.charts.InfluenceTableChart;
import org.thirstline.charts.InfluenceTableView;
import org.thirstline.charts.MorrisChart;
import org.thirstline.charts.MorrisView;
import org.thirstline.charts.SobolChart;
import org.thirstline.charts.SobolView;
import org.thirstline.charts.UnitSystem;

/** The charts of {@code sensitivity}. Immutable and thread-safe. */
final class SensitivityCharts {

    /** Outputs that have charts of their own; all are in the table chart. */
    private static final Set<InfluenceOutput> DRAWN = EnumSet.of(
            InfluenceOutput.MEAN_HARVEST,
            InfluenceOutput.DROUGHT_PENALTY,
            InfluenceOutput.DRIEST_YEAR_HARVEST,
            InfluenceOutput.HARVEST_MOISTURE);

    private final StudyInfluence answer;
    private final SensitivityWords words;

    SensitivityCharts(StudyInfluence answer) {
        this.answer = answer;
        this.words = new SensitivityWords(answer, UnitSystem.SI);
    }

    List<ZoneCharts.Recipe> all() {
        List<ZoneCharts.Recipe> all = new ArrayList<>();
        for (ZoneInfluence zone : answer.zones()) {
            all.addAll(shares(zone));
            all.addAll(screening(zone));
        }
        return all;
    }

    /** What decides what, then the shares output by output. */
    List<ZoneCharts.Recipe> shares(ZoneInfluence zone) {
        List<ZoneCharts.Recipe> recipes = new ArrayList<>();
        InfluenceTableView table = table(zone);
        recipes.add(new ZoneCharts.Recipe(
                "what-decides-what" + suffix(zone), style -> InfluenceTableChart.of(table, style)));
        for (OutputInfluence output : zone.outputs()) {
            if (DRAWN.contains(output.output())
                    && output.noticeable()
                    && !output.indices().isEmpty()) {
                SobolView view = sobol(zone, output);
                recipes.add(new ZoneCharts.Recipe(id("shares", output, zone), style -> SobolChart.of(view, style)));
            }
        }
        return recipes;
    }

    List<ZoneCharts.Recipe> screening(ZoneInfluence zone) {
        List<ZoneCharts.Recipe> recipes = new ArrayList<>();
        for (OutputInfluence output : zone.outputs()) {
            if (DRAWN.contains(output.output())) {
                MorrisView view = morris(zone, output);
                recipes.add(new ZoneCharts.Recipe(id("screening", output, zone), style -> MorrisChart.of(view, style)));
            }
        }
        return recipes;
    }

    private static String id(String kind, OutputInfluence output, ZoneInfluence zone) {
        return kind + "-" + output.output().key().replace('_', '-') + suffix(zone);
    }

    private static String suffix(ZoneInfluence zone) {
        return "-" + ZoneCharts.slug(zone.zone().name());
    }

    private InfluenceTableView table(ZoneInfluence zone) {
        List<InfluenceTableView.Row> rows = zone.sampled().stream()
                .map(key -> new InfluenceTableView.Row(
                        words.name(key),
                        zone.outputs().stream()
                                .mapToDouble(output -> total(output, key))
                                .toArray(),
                        decides(zone, key)))
                .toList();
        List<String> outputs =
                zone.outputs().stream().map(output -> output.output().words()).toList();
        return new InfluenceTableView(
                zone.zone().name(), answer.inputs().inputs().size(), outputs, rows);
    }

    private static double total(OutputInfluence output, String key) {
        return output.noticeable() ? output.index(key).map(SobolIndex::total).orElse(Double.NaN) : Double.NaN;
    }

    private static boolean[] decides(ZoneInfluence zone, String key) {
        boolean[] decides = new boolean[zone.outputs().size()];
        for (int i = 0; i < decides.length; i++) {
            decides[i] = zone.outputs().get(i).deciding().stream()
                    .anyMatch(index -> index.name().equals(key));
        }
        return decides;
    }

    private SobolView sobol(ZoneInfluence zone, OutputInfluence output) {
        List<SobolView.Share> shares = output.indices().stream()
                .map(index -> new SobolView.Share(
                        words.name(index.name()),
                        index.first(),
                        index.firstInterval().lower(),
                        index.firstInterval().upper(),
                        index.total(),
                        index.totalInterval().lower(),
                        index.totalInterval().upper()))
                .toList();
        return new SobolView(
                SensitivityWords.quantity(output),
                zone.zone().name(),
                answer.inputs().inputs().size(),
                shares);
    }

    private MorrisView morris(ZoneInfluence zone, OutputInfluence output) {
        List<MorrisView.Effect> effects = output.effects().stream()
                .map(effect -> new MorrisView.Effect(
                        words.name(effect.name()),
                        effect.mean(),
                        effect.meanAbsolute(),
                        effect.meanAbsoluteError(),
                        effect.deviation()))
                .toList();
        return new MorrisView(SensitivityWords.quantity(output), zone.zone().name(), effects);
    }
}
