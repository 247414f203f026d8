package org.thirstline.charts.report;

import java.awt.Color;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.Base64;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.IntStream;
import org.thirstline.charts.ChartDocument;
import org.thirstline.charts.DataTable;
import org.thirstline.charts.output.SvgOutput;
import org.thirstline.charts.theme.ChartFonts;
import org.thirstline.charts.theme.ChartTheme;
import org.thirstline.charts.theme.Palette;

/** A report as one HTML file: opens without a network, follows light and dark, prints, fits a phone. Thread-safe. */
public final class HtmlReport {

    /** Charts with more numbers than this leave them to their own file. */
    private static final int MAX_ROWS_SHOWN = 80;

    /** Styles and the one script of the page itself, and nothing from anywhere else. */
    private static final String POLICY =
            "default-src 'none'; style-src 'unsafe-inline'; font-src data:; img-src data:; script-src 'sha256-%s'";

    /** What stands before the parts of a colour. */
    private static final String COLOR = "\"rgb(";

    private final ReportModel model;
    private final Html html = new Html();

    private HtmlReport(ReportModel model) {
        this.model = model;
    }

    /**
     * Writes a report to a file, which appears whole or not at all.
     *
     * @param model what it says
     * @param file where to
     */
    public static void write(ReportModel model, Path file) throws IOException {
        Path beside = file.resolveSibling(file.getFileName() + ".part");
        Files.writeString(beside, render(model));
        Files.move(beside, file, StandardCopyOption.REPLACE_EXISTING);
    }

    /**
     * Returns a report as HTML.
     *
     * @param model what it says
     */
    public static String render(ReportModel model) {
        return new HtmlReport(model).page();
    }

    private String page() {
        List<String> charts = charts();
        html.reserve(charts.stream().mapToInt(String::length).sum());
        String script = resource("report.js");
        html.raw("<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n")
                .raw("<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n")
                .raw("<meta name=\"color-scheme\" content=\"light dark\">\n")
                .raw("<meta http-equiv=\"Content-Security-Policy\" content=\"" + POLICY.formatted(sha256(script))
                        + "\">\n")
                .element("title", model.title())
                .raw("<style>\n" + ChartFonts.embeddedCss() + colors() + resource("report.css")
                        + "</style>\n</head>\n<body>\n")
                .raw("<a class=\"skip\" href=\"#content\">Skip to the findings</a>\n");
        header();
        html.raw("<main id=\"content\" tabindex=\"-1\">\n");
        findings();
        int next = 0;
        for (int i = 0; i < model.sections().size(); i++) {
            next = section(i, charts, next);
        }
        assumptions();
        tables("weather", "Weather", model.weather());
        tables("parameters", "Parameters and where they come from", model.parameters());
        cautions();
        html.raw("</main>\n<footer>\n")
                .element("p", model.provenance())
                .raw("</footer>\n<script>" + script + "</script>\n</body>\n</html>\n");
        return html.toString();
    }

    /** Draws all charts side by side on the machine's cores, in order. */
    private List<String> charts() {
        List<ChartDocument> documents = new ArrayList<>();
        model.sections().forEach(section -> documents.addAll(section.charts()));
        return IntStream.range(0, documents.size())
                .parallel()
                .mapToObj(i -> themed(documents.get(i), "c" + (i + 1)))
                .toList();
    }

    /** Draws a chart whose colours are those of the page. */
    private static String themed(ChartDocument chart, String prefix) {
        Map<String, String> names = new HashMap<>();
        List<Color> colors = chart.style().theme().palette().all();
        for (int i = 0; i < colors.size(); i++) {
            Color color = colors.get(i);
            String rgb = color.getRed() + "," + color.getGreen() + "," + color.getBlue() + ")\"";
            names.putIfAbsent(rgb, "var(--c" + i + ")\"");
        }
        String svg = named(SvgOutput.inline(chart, prefix), names);
        // Batik writes pure white by its name.
        return svg.replace("=\"white\"", "=\"var(--c0)\"");
    }

    /** Puts names in the place of colours, all in one pass; a pass for each would write the picture twenty times. */
    private static String named(String svg, Map<String, String> names) {
        StringBuilder page = new StringBuilder(svg.length());
        int copied = 0;
        for (int at = svg.indexOf(COLOR); at >= 0; at = svg.indexOf(COLOR, at + 1)) {
            int start = at + COLOR.length();
            int end = svg.indexOf('"', start) + 1;
            String name = names.get(svg.substring(start, end));
            if (name != null) {
                page.append(svg, copied, at + 1).append(name);
                copied = end;
            }
        }
        return page.append(svg, copied, svg.length()).toString();
    }

    private static String colors() {
        String dark = declarations(ChartTheme.DARK.palette());
        return ":root{" + declarations(ChartTheme.LIGHT.palette()) + "}\n@media screen and (prefers-color-scheme:dark){"
                + ":root{" + dark + "}}\n";
    }

    private static String declarations(Palette palette) {
        StringBuilder css = new StringBuilder();
        List<Color> colors = palette.all();
        for (int i = 0; i < colors.size(); i++) {
            css.append(
                    String.format(Locale.ROOT, "--c%d:#%06x;", i, colors.get(i).getRGB() & 0xFFFFFF));
        }
        return css.append(named(palette)).toString();
    }

    private static String named(Palette palette) {
        return String.format(
                Locale.ROOT,
                "--paper:#%06x;--ink:#%06x;--muted:#%06x;--rule:#%06x;--accent:#%06x;--warn:#%06x;",
                palette.background().getRGB() & 0xFFFFFF,
                palette.ink().getRGB() & 0xFFFFFF,
                palette.muted().getRGB() & 0xFFFFFF,
                palette.grid().getRGB() & 0xFFFFFF,
                palette.dry().getRGB() & 0xFFFFFF,
                palette.stress().getRGB() & 0xFFFFFF);
    }

    private static String sha256(String script) {
        try {
            byte[] digest = MessageDigest.getInstance("SHA-256").digest(script.getBytes(StandardCharsets.UTF_8));
            return Base64.getEncoder().encodeToString(digest);
        } catch (NoSuchAlgorithmException impossible) {
            throw new IllegalStateException(impossible);
        }
    }

    private static String resource(String name) {
        try (InputStream file = HtmlReport.class.getResourceAsStream(name)) {
            if (file == null) {
                throw new IllegalStateException(name + " is missing");
            }
            return new String(file.readAllBytes(), StandardCharsets.UTF_8).replace("\r\n", "\n");
        } catch (IOException error) {
            throw new UncheckedIOException(error);
        }
    }

    private void header() {
        html.raw("<header>\n").element("h1", model.title()).element("p class=\"subtitle\"", model.subtitle());
        if (model.invented()) {
            html.raw("<p class=\"note\"><strong>Invented data.</strong> Site and weather are made up to show how the "
                    + "program works; they describe no real place.</p>\n");
        }
        html.raw("<nav aria-label=\"Contents\"><ul>\n");
        for (int i = 0; i < model.sections().size(); i++) {
            link("s" + (i + 1), model.sections().get(i).heading());
        }
        link("assumptions", "Assumed and estimated");
        if (!model.weather().isEmpty()) {
            link("weather", "Weather");
        }
        if (!model.parameters().isEmpty()) {
            link("parameters", "Parameters");
        }
        link("cautions", "Cautions");
        html.raw("</ul></nav>\n</header>\n");
    }

    private void link(String id, String text) {
        html.raw("<li><a href=\"#" + id + "\">" + Html.escape(text) + "</a></li>\n");
    }

    private void findings() {
        if (!model.findings().isEmpty()) {
            html.raw("<section class=\"findings\">\n").element("h2", "What came out");
            html.list(model.findings()).raw("</section>\n");
        }
    }

    private int section(int index, List<String> charts, int firstChart) {
        ReportModel.Section section = model.sections().get(index);
        html.raw("<section id=\"s" + (index + 1) + "\">\n").element("h2", section.heading());
        section.text().forEach(text -> html.element("p", text));
        int next = firstChart;
        for (ChartDocument chart : section.charts()) {
            html.raw("<figure>\n<div class=\"chart\" tabindex=\"0\" role=\"group\" aria-label=\"")
                    .raw(Html.escape("Chart: " + chart.words().title()))
                    .raw("\">\n" + charts.get(next++) + "</div>\n");
            numbers(chart);
            html.raw("</figure>\n");
        }
        section.tables().forEach(html::table);
        html.raw("</section>\n");
        return next;
    }

    private void numbers(ChartDocument chart) {
        DataTable data = chart.data();
        if (data.rows().isEmpty() || data.rows().size() > MAX_ROWS_SHOWN) {
            return;
        }
        List<ReportTable.Column> columns = data.columns().stream()
                .map(name -> new ReportTable.Column(name, "", !name.endsWith("class") && !name.endsWith("status")))
                .toList();
        html.raw("<details><summary>The numbers behind this chart</summary>\n")
                .table(new ReportTable(chart.words().title(), columns, data.rows()))
                .raw("</details>\n");
    }

    private void assumptions() {
        html.raw("<section id=\"assumptions\">\n").element("h2", "What was assumed and estimated");
        html.list(model.assumptions());
        if (!model.estimates().isEmpty()) {
            html.element("h3", "Estimated instead of measured").list(model.estimates());
        }
        html.raw("</section>\n");
    }

    private void tables(String id, String heading, List<ReportTable> tables) {
        if (!tables.isEmpty()) {
            html.raw("<section id=\"" + id + "\">\n").element("h2", heading);
            tables.forEach(html::table);
            html.raw("</section>\n");
        }
    }

    private void cautions() {
        html.raw("<section id=\"cautions\" class=\"note\">\n").element("h2", "Cautions");
        List<String> all = new ArrayList<>(model.cautions());
        all.addAll(Cautions.GENERAL);
        html.list(all).raw("</section>\n");
    }
}
