package org.thirstline.validation.catalogue;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** A family as rows of text: all of them, or a summary of a long one and the rows that miss. */
final class Tables {

    /** Tables longer than this are condensed. */
    private static final int LONG = 40;

    private static final List<String> HEADER =
            List.of("id", "what", "published", "computed", "difference", "accepted", "why", "source", "seen", "result");

    private Tables() {}

    static List<String> header() {
        return HEADER;
    }

    static boolean isCondensed(Family family) {
        return family.reproduced() && family.rows().size() > LONG;
    }

    /** Returns the rows to print. */
    static List<List<String>> rows(Family family) {
        List<CheckRow> shown = new ArrayList<>();
        for (CheckRow row : family.rows()) {
            boolean odd = row.verdict() == Verdict.MISS || row.verdict() == Verdict.NOT_MODELLED;
            if (!isCondensed(family) || odd) {
                shown.add(row);
            }
        }
        if (isCondensed(family)) {
            worstPass(family).ifPresent(shown::add);
        }
        return shown.stream().map(Tables::cells).toList();
    }

    private static java.util.Optional<CheckRow> worstPass(Family family) {
        return family.rows().stream()
                .filter(row -> row.verdict() == Verdict.PASS && row.isNumber() && row.high() > row.low())
                .max(Comparator.comparingDouble(row -> Math.abs(row.relativeDifference())));
    }

    /** Returns how a long table came out. */
    static String summary(Family family) {
        StringBuilder text = new StringBuilder();
        text.append(family.count(Verdict.PASS)).append(" of ").append(family.judged());
        text.append(family.reproduced() ? " reproduced within tolerance" : " inside the published range");
        if (family.count(Verdict.MISS) > 0) {
            text.append(", ").append(family.count(Verdict.MISS)).append(" missed");
        }
        if (family.count(Verdict.SHOWN) > 0) {
            text.append("; ").append(family.count(Verdict.SHOWN)).append(" shown without a published error");
        }
        if (family.count(Verdict.NOT_MODELLED) > 0) {
            text.append("; ").append(family.count(Verdict.NOT_MODELLED)).append(" not modelled");
        }
        if (family.reproduced() && !family.counted()) {
            text.append("; not counted as reproduced numbers");
        }
        text.append('.');
        if (isCondensed(family)) {
            text.append(" Below: every miss, and the pass that comes nearest to its tolerance.");
        }
        return text.toString();
    }

    private static List<String> cells(CheckRow row) {
        boolean judged = row.isNumber() && row.verdict() != Verdict.SHOWN;
        double half = 0.5 * (row.high() - row.low());
        return List.of(
                row.id(),
                row.what(),
                row.expected(),
                Numbers.five(row.computed()),
                difference(row, half),
                judged ? accepted(row, half) : "–",
                row.reason(),
                row.source(),
                row.seen(),
                row.verdict().words());
    }

    /** Half-widths where the published number is the middle of what is accepted, else both ends. */
    private static String accepted(CheckRow row, double half) {
        boolean symmetric = Math.abs(Double.parseDouble(row.expected()) - row.middle()) < 1.0e-3 * half;
        return symmetric
                ? "±" + Numbers.significant(half, 2)
                : Numbers.significant(row.low(), 4) + " to " + Numbers.significant(row.high(), 4);
    }

    /** Computed minus published; rounding noise counts as zero. */
    private static String difference(CheckRow row, double half) {
        if (!row.expected().matches("-?[0-9.]+([eE][-+]?[0-9]+)?") || !Double.isFinite(row.computed())) {
            return "–";
        }
        double difference = row.computed() - Double.parseDouble(row.expected());
        return Numbers.significant(Math.abs(difference) < 1.0e-6 * half ? 0.0 : difference, 2);
    }
}
