package org.thirstline.validation.catalogue;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.thirstline.validation.behaviour.ResponseCurves;
import org.thirstline.validation.broken.SeenToFail.Outcome;

/** Everything that is published about validation: pages and pictures by their path under docs. */
final class Page {

    private static final String TITLE = "Validation";
    private static final String CURVES = "images/validation/response-curves.svg";
    private static final String CURVES_WORDS =
            "Mean harvest of full-grown giant miscanthus [Mg/ha] on one input at a time, on invented weather. Sign, monotony and limits of every"
                    + " curve are tests; so are the energy and the water a season can use.";

    private final List<Family> families;
    private final Map<String, Outcome> seenToFail;
    private final List<TextTable> calibrated;
    private final Map<String, String> words;

    /**
     * Makes the pages.
     *
     * @param families what was checked
     * @param seenToFail what families made of code that was wrong on purpose, by name
     * @param calibrated what calibrations change
     * @param words texts written by hand: introduction, mutation, calibration, not-validated
     */
    Page(
            List<Family> families,
            Map<String, Outcome> seenToFail,
            List<TextTable> calibrated,
            Map<String, String> words) {
        this.families = List.copyOf(families);
        this.seenToFail = Map.copyOf(seenToFail);
        this.calibrated = List.copyOf(calibrated);
        this.words = Map.copyOf(words);
    }

    /** Returns the text of every file by its path under docs. */
    Map<String, String> files() {
        Map<String, String> files = new LinkedHashMap<>();
        files.put("validation.md", markdown());
        files.put("validation.html", html());
        for (Family family : families) {
            String picture = Picture.of(family);
            if (!picture.isEmpty()) {
                files.put(picturePath(family), picture);
            }
        }
        files.put(CURVES, CurvesPicture.of(ResponseCurves.all()));
        return files;
    }

    private static String picturePath(Family family) {
        return "images/validation/" + family.slug() + ".svg";
    }

    private String words(String name) {
        return words.getOrDefault(name, "");
    }

    /** What the family made of code that was wrong on purpose. */
    private String seen(Family family) {
        Outcome outcome = seenToFail.get(family.slug());
        return outcome == null ? "" : outcome.cell();
    }

    private long reproduced(Verdict verdict) {
        return families.stream()
                .filter(family -> family.reproduced() && family.counted())
                .mapToLong(family -> family.count(verdict))
                .sum();
    }

    private long observed(Verdict verdict) {
        return families.stream()
                .filter(family -> !family.reproduced())
                .mapToLong(family -> family.count(verdict))
                .sum();
    }

    /** Returns the one sentence others may quote. */
    String sentence() {
        long judged = reproduced(Verdict.PASS) + reproduced(Verdict.MISS);
        long facts = observed(Verdict.PASS) + observed(Verdict.MISS);
        return "%d of %d published numbers are reproduced within their stated rounding (misses: %d, each explained), and %d of %d"
                        .formatted(
                                reproduced(Verdict.PASS),
                                judged,
                                reproduced(Verdict.MISS),
                                observed(Verdict.PASS),
                                facts)
                + " observed facts lie inside their published range with untuned defaults (%d do not)."
                        .formatted(observed(Verdict.MISS));
    }

    private String markdown() {
        StringBuilder text = new StringBuilder(60_000);
        text.append("# ")
                .append(TITLE)
                .append("\n\n")
                .append(sentence())
                .append("\n\n")
                .append(words("introduction"));
        text.append(
                "\n## In one table\n\n| family | pass | miss | shown | not modelled | seen to fail when |\n|---|---|---|---|---|---|\n");
        for (Family family : families) {
            text.append("| [%s](#%s) | %d | %d | %d | %d | %s |%n"
                    .formatted(
                            family.title(),
                            family.slug(),
                            family.count(Verdict.PASS),
                            family.count(Verdict.MISS),
                            family.count(Verdict.SHOWN),
                            family.count(Verdict.NOT_MODELLED),
                            seen(family))
                    .replace("\r\n", "\n"));
        }
        for (Family family : families) {
            markdown(family, text);
        }
        text.append("\n## What a calibration changes\n\n").append(words("calibration"));
        calibrated.forEach(table -> table.markdown(text));
        text.append("\n## Broken on purpose\n\n").append(words("mutation"));
        return text.append("\n## What is not validated\n\n")
                .append(words("not-validated"))
                .toString();
    }

    private static void markdown(Family family, StringBuilder text) {
        text.append("\n<a id=\"")
                .append(family.slug())
                .append("\"></a>\n\n## ")
                .append(family.title())
                .append("\n\n");
        text.append(Tables.summary(family))
                .append(" Data: [")
                .append(family.dataFile())
                .append("](../")
                .append(family.dataFile())
                .append(").\n");
        if (!family.note().isEmpty()) {
            text.append('\n').append(family.note()).append('\n');
        }
        if (!Picture.of(family).isEmpty()) {
            text.append("\n![Differences from what was published](")
                    .append(picturePath(family))
                    .append(")\n");
        }
        List<List<String>> rows = Tables.rows(family);
        if (rows.isEmpty()) {
            return;
        }
        text.append("\n| ").append(String.join(" | ", Tables.header())).append(" |\n|");
        text.append("---|".repeat(Tables.header().size())).append('\n');
        for (List<String> row : rows) {
            text.append("| ")
                    .append(String.join(" | ", row.stream().map(Html::cell).toList()))
                    .append(" |\n");
        }
    }

    private String html() {
        StringBuilder text = new StringBuilder(200_000);
        text.append("<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n")
                .append("<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n<title>Thirstline: ")
                .append(TITLE)
                .append("</title>\n<style>\n")
                .append(
                        "body{font-family:sans-serif;color:#222;max-width:76rem;margin:0 auto;padding:1rem;line-height:1.45}\n")
                .append(
                        "table{border-collapse:collapse;font-size:.85rem;margin:.8rem 0;display:block;overflow-x:auto}\n")
                .append("th,td{border:1px solid #CCD5DC;padding:.25rem .5rem;text-align:left;vertical-align:top}\n")
                .append("th{background:#E6EEF4}\ntr.miss td{background:#FBE9DC}\nsvg{max-width:100%;height:auto}\n")
                .append("</style>\n</head>\n<body>\n<h1>")
                .append(TITLE)
                .append("</h1>\n<p><strong>")
                .append(Html.escape(sentence()))
                .append("</strong></p>\n");
        paragraphs(words("introduction"), text);
        text.append("<h2>In one table</h2>\n<table>\n<tr><th>family</th><th>pass</th><th>miss</th><th>shown</th>")
                .append("<th>not modelled</th><th>seen to fail when</th></tr>\n");
        for (Family family : families) {
            text.append("<tr><td><a href=\"#")
                    .append(family.slug())
                    .append("\">")
                    .append(Html.escape(family.title()));
            text.append("</a></td>");
            for (Verdict verdict : Verdict.values()) {
                text.append("<td>").append(family.count(verdict)).append("</td>");
            }
            text.append("<td>").append(Html.inline(seen(family))).append("</td></tr>\n");
        }
        text.append("</table>\n");
        families.forEach(family -> html(family, text));
        text.append("<h2>Response curves</h2>\n<p>").append(CURVES_WORDS).append("</p>\n");
        text.append(CurvesPicture.of(ResponseCurves.all()));
        text.append("<h2 id=\"what-a-calibration-changes\">What a calibration changes</h2>\n");
        paragraphs(words("calibration"), text);
        calibrated.forEach(table -> table.html(text));
        text.append("<h2>Broken on purpose</h2>\n");
        paragraphs(words("mutation"), text);
        text.append("<h2>What is not validated</h2>\n");
        paragraphs(words("not-validated"), text);
        return text.append("</body>\n</html>\n").toString();
    }

    private static void html(Family family, StringBuilder text) {
        text.append("<h2 id=\"")
                .append(family.slug())
                .append("\">")
                .append(Html.escape(family.title()))
                .append("</h2>\n<p>");
        text.append(Html.escape(Tables.summary(family)))
                .append(" Data: <a href=\"../")
                .append(family.dataFile());
        text.append("\">").append(family.dataFile()).append("</a>.</p>\n");
        if (!family.note().isEmpty()) {
            paragraphs(family.note(), text);
        }
        text.append(Picture.of(family));
        List<List<String>> rows = Tables.rows(family);
        if (rows.isEmpty()) {
            return;
        }
        text.append("<table>\n<tr>");
        Tables.header().forEach(head -> text.append("<th>").append(head).append("</th>"));
        text.append("</tr>\n");
        for (List<String> row : rows) {
            boolean miss = row.get(row.size() - 1).equals(Verdict.MISS.words());
            text.append(miss ? "<tr class=\"miss\">" : "<tr>");
            row.forEach(cell -> text.append("<td>").append(Html.escape(cell)).append("</td>"));
            text.append("</tr>\n");
        }
        text.append("</table>\n");
    }

    /** Blocks of text between blank lines; lines that start with a dash are a list. */
    private static void paragraphs(String text, StringBuilder out) {
        for (String block : text.strip().split("\n\n")) {
            if (block.startsWith("- ")) {
                out.append("<ul>\n");
                for (String item : block.substring(2).split("\n- ")) {
                    out.append("<li>")
                            .append(Html.inline(item.replace('\n', ' ')))
                            .append("</li>\n");
                }
                out.append("</ul>\n");
            } else {
                out.append("<p>").append(Html.inline(block.replace('\n', ' '))).append("</p>\n");
            }
        }
    }
}
