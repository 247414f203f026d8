package org.thirstline.cli;

import java.util.Optional;
import org.thirstline.calibration.influence.OutputInfluence;
import org.thirstline.calibration.influence.StudyInfluence;
import org.thirstline.calibration.influence.VariedInput;
import org.thirstline.calibration.influence.ZoneInfluence;
import org.thirstline.calibration.response.Interval;
import org.thirstline.calibration.sensitivity.ElementaryEffect;
import org.thirstline.calibration.sensitivity.SobolIndex;
import org.thirstline.calibration.study.StudyOutcome;
import org.thirstline.charts.UnitSystem;
import org.thirstline.io.text.JsonText;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

/** {@code sensitivity.json}: what was varied how far, and for each zone and output what decides it. */
final class SensitivityJson {

    static final String FILE = "sensitivity.json";
    private static final double DIGITS = 1.0e6;

    private SensitivityJson() {}

    static String text(StudyOutcome outcome, StudyInfluence answer) {
        ObjectNode root = JsonNodeFactory.instance.objectNode();
        root.put("study", outcome.study().title());
        root.put("invented", outcome.invented());
        root.put("crop", outcome.study().crop().name());
        ArrayNode parameters = root.putArray("parameters");
        answer.inputs().inputs().forEach(input -> parameter(input, parameters.addObject()));
        SensitivityWords words = new SensitivityWords(answer, UnitSystem.SI);
        ArrayNode zones = root.putArray("zones");
        answer.zones().forEach(zone -> zone(zone, words, zones.addObject()));
        ArrayNode notices = root.putArray("notices");
        words.notices().forEach(notices::add);
        return JsonText.of(root);
    }

    private static void parameter(VariedInput input, ObjectNode node) {
        node.put("parameter", input.key());
        node.put("unit", input.unit());
        node.put("standard", input.standard());
        node.put("low", input.low());
        node.put("high", input.high());
        node.put("range_published", input.published());
    }

    private static void zone(ZoneInfluence zone, SensitivityWords words, ObjectNode node) {
        node.put("zone", zone.zone().name());
        node.put("years", zone.years());
        node.put("full_grown", zone.fullGrown());
        node.put("pairs_of_runs", zone.runs());
        node.put("runs_with_a_dead_stand", zone.deaths());
        ArrayNode sentences = node.putArray("sentences");
        words.sentences(zone).forEach(sentences::add);
        ArrayNode outputs = node.putArray("outputs");
        for (OutputInfluence output : zone.outputs()) {
            output(output, outputs.addObject());
        }
    }

    private static void output(OutputInfluence output, ObjectNode node) {
        node.put("output", output.output().key());
        node.put("unit", output.output().unit());
        node.put("meaning", output.output().meaning());
        number("standard", output.standard(), node);
        node.put("varies_noticeably", output.noticeable());
        interval("range_90_pct", output.range(), node);
        ArrayNode deciding = node.putArray("deciding");
        output.deciding().forEach(index -> deciding.add(index.name()));
        ArrayNode parameters = node.putArray("parameters");
        for (ElementaryEffect effect : output.effects()) {
            ObjectNode of = parameters.addObject();
            of.put("parameter", effect.name());
            number("mean_effect", effect.mean(), of);
            number("mean_size", effect.meanAbsolute(), of);
            number("mean_size_error", effect.meanAbsoluteError(), of);
            number("effect_deviation", effect.deviation(), of);
            Optional<SobolIndex> index = output.index(effect.name());
            index.ifPresent(share -> index(share, of));
        }
    }

    private static void index(SobolIndex index, ObjectNode node) {
        number("first_index", index.first(), node);
        interval("first_index_95_pct", index.firstInterval(), node);
        number("total_index", index.total(), node);
        interval("total_index_95_pct", index.totalInterval(), node);
    }

    private static void number(String name, double value, ObjectNode node) {
        if (Double.isFinite(value)) {
            node.put(name, rounded(value));
        } else {
            node.putNull(name);
        }
    }

    private static void interval(String name, Interval interval, ObjectNode node) {
        if (Double.isFinite(interval.lower()) && Double.isFinite(interval.upper())) {
            ArrayNode pair = node.putArray(name);
            pair.add(rounded(interval.lower()));
            pair.add(rounded(interval.upper()));
        } else {
            node.putNull(name);
        }
    }

    private static double rounded(double value) {
        return Math.rint(DIGITS * value) / DIGITS;
    }
}
