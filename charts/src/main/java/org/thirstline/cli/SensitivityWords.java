package org.thirstline.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.thirstline.calibration.influence.OutputInfluence;
import org.thirstline.calibration.influence.StudyInfluence;
import org.thirstline.calibration.influence.VariedInput;
import org.thirstline.calibration.influence.ZoneInfluence;
import org.thirstline.calibration.sensitivity.SobolIndex;
import org.thirstline.charts.ParameterWords;
import org.thirstline.charts.Quantity;
import org.thirstline.charts.UnitSystem;

/** The answer in plain words. Immutable and thread-safe. */
final class SensitivityWords {

    private static final double PERCENT = 100.0;

    /** An interval wider than that asks for more samples (our choice). */
    private static final double WIDE = 0.3;

    /** What only several parameters together make is told from that share on (our choice). */
    private static final double TOGETHER = 0.2;

    private final StudyInfluence answer;
    private final UnitSystem units;

    SensitivityWords(StudyInfluence answer, UnitSystem units) {
        this.answer = answer;
        this.units = units;
    }

    /** Returns the short name of a parameter. */
    String name(String key) {
        return answer.inputs().inputs().stream()
                .filter(input -> input.key().equals(key))
                .findFirst()
                .flatMap(VariedInput::parameter)
                .map(ParameterWords::of)
                .orElse(ParameterWords.SOIL_WATER);
    }

    static Quantity quantity(OutputInfluence output) {
        return new Quantity(output.output().words(), output.output().unit());
    }

    /** Returns what decides the outputs of a zone, a sentence each, the count of parameters first. */
    List<String> sentences(ZoneInfluence zone) {
        List<String> sentences = new ArrayList<>();
        List<String> deciding = zone.outputs().stream()
                .flatMap(output -> output.deciding().stream())
                .map(SobolIndex::name)
                .distinct()
                .toList();
        int all = answer.inputs().inputs().size();
        sentences.add(
                deciding.isEmpty()
                        ? "No parameter decides anything beyond doubt; raise --samples to see more."
                        : "Of " + all + " parameters " + count(deciding.size())
                                + (deciding.size() == 1 ? " decides" : " decide") + " something: "
                                + listed(deciding.stream().map(this::name).toList()) + ".");
        zone.outputs().forEach(output -> sentences.add(sentence(output)));
        standing(zone).ifPresent(sentences::add);
        hardly(zone).ifPresent(sentences::add);
        if (zone.deaths() > 0) {
            sentences.add(format(
                    "In %d of %d runs winter killed the stand, or it never emerged, in at least one year; such years count as no harvest.",
                    zone.deaths(), zone.runs()));
        }
        return sentences;
    }

    private String sentence(OutputInfluence output) {
        String head = head(output);
        if (!output.noticeable()) {
            return head + " hardly varies with any of them.";
        }
        List<SobolIndex> deciding = output.deciding();
        if (deciding.isEmpty()) {
            return head + ": none decides it beyond doubt.";
        }
        String parts = listed(IntStream.range(0, deciding.size())
                .mapToObj(i -> name(deciding.get(i).name())
                        + (i == 0 ? " makes " : " ")
                        + percent(deciding.get(i).total())
                        + (i == 0 ? " of its spread" : ""))
                .toList());
        String together = output.together() > TOGETHER
                ? "; " + percent(output.together()) + " is made only by several together"
                : "";
        return head + ": " + parts + together + ".";
    }

    private String head(OutputInfluence output) {
        Quantity quantity = quantity(output);
        String words = output.output().words();
        String head = Character.toUpperCase(words.charAt(0)) + words.substring(1) + " ("
                + quantity.text(output.standard(), units) + " as set";
        if (output.range().lower() < output.range().upper()) {
            head += "; " + quantity.number(output.range().lower(), units) + " to "
                    + quantity.number(output.range().upper(), units) + " in nine runs of ten";
        }
        return head + ")";
    }

    /** The standard values can lie at the favourable, or the unfavourable, ends of their ranges. */
    private static Optional<String> standing(ZoneInfluence zone) {
        OutputInfluence harvest = zone.outputs().get(0);
        boolean above = harvest.standard() > harvest.range().upper();
        boolean below = harvest.standard() < harvest.range().lower();
        if (harvest.indices().isEmpty() || !above && !below) {
            return Optional.empty();
        }
        return Optional.of("The values as set lie on the " + (above ? "favourable" : "unfavourable")
                + " side of their ranges: the mean harvest as set is " + (above ? "above" : "below")
                + " nineteen in twenty of the runs.");
    }

    private Optional<String> hardly(ZoneInfluence zone) {
        List<String> weak = answer.inputs().inputs().stream()
                .map(VariedInput::key)
                .filter(key -> zone.relativeEffect(key) < ZoneInfluence.HARDLY)
                .map(this::name)
                .toList();
        return weak.isEmpty()
                ? Optional.empty()
                : Optional.of(
                        (weak.size() == 1 ? "One parameter hardly matters" : weak.size() + " parameters hardly matter")
                                + " for any of this and may stay as set: " + listed(weak) + ".");
    }

    /** Returns what a reader must know before using the answer. */
    List<String> notices() {
        List<String> notices = new ArrayList<>(answer.inputs().notices());
        long unpublished = answer.inputs().inputs().stream()
                .filter(input -> !input.published())
                .count();
        notices.add(format(
                "Every value of a range counts alike; %d of %d ranges are shares of the value, not published ones.%s",
                unpublished,
                answer.inputs().inputs().size(),
                answer.options().unpublishedPct() > 0.0
                        ? ""
                        : " Parameters without a published range stay as set; --others varies them too."));
        answer.zones().stream()
                .filter(zone -> !zone.fullGrown())
                .forEach(zone -> notices.add(zone.zone().name()
                        + " has no year of a full-grown stand; the answers are for its young years."));
        String wide = answer.zones().stream()
                .flatMap(zone -> zone.outputs().stream()
                        .filter(SensitivityWords::isWide)
                        .map(output -> output.output().words()))
                .distinct()
                .collect(Collectors.joining(", "));
        if (!wide.isEmpty()) {
            notices.add("Intervals of more than 30 points remain for " + wide + "; more --samples narrow them.");
        }
        return notices;
    }

    private static boolean isWide(OutputInfluence output) {
        return output.noticeable()
                && output.indices().stream()
                        .anyMatch(index -> index.totalInterval().upper()
                                        - index.totalInterval().lower()
                                > WIDE);
    }

    private static String percent(double share) {
        return format("%.0f %%", PERCENT * Math.min(1.0, share));
    }

    static String listed(List<String> names) {
        int last = names.size() - 1;
        return last < 1
                ? String.join("", names)
                : String.join(", ", names.subList(0, last)) + " and " + names.get(last);
    }

    private static String count(int n) {
        String[] words = {"none", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten"};
        return n < words.length ? words[n] : Integer.toString(n);
    }

    private static String format(String pattern, Object... values) {
        return String.format(Locale.ROOT, pattern, values);
    }
}
