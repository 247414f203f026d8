package org.thirstline.charts.report;

import java.util.List;
import org.thirstline.charts.ChartDocument;

/**
 * Everything a report says, apart from the cautions that every report carries. Immutable and thread-safe.
 *
 * @param title name of the study
 * @param subtitle site, period, crop in one line
 * @param invented whether the data are made up, which the report then says
 * @param findings what came out, one sentence each
 * @param sections charts and tables under their headings, in order
 * @param assumptions what was assumed, one sentence each
 * @param estimates what was estimated instead of measured, one sentence each
 * @param weather gaps, estimated and suspect values by variable and year
 * @param parameters name, value, unit, range, source, status
 * @param cautions cautions of this study on top of the general ones
 * @param provenance version and how to repeat the run, in one line
 */
public record ReportModel(
        String title,
        String subtitle,
        boolean invented,
        List<String> findings,
        List<Section> sections,
        List<String> assumptions,
        List<String> estimates,
        List<ReportTable> weather,
        List<ReportTable> parameters,
        List<String> cautions,
        String provenance) {

    /** Copies the lists. */
    public ReportModel {
        findings = List.copyOf(findings);
        sections = List.copyOf(sections);
        assumptions = List.copyOf(assumptions);
        estimates = List.copyOf(estimates);
        weather = List.copyOf(weather);
        parameters = List.copyOf(parameters);
        cautions = List.copyOf(cautions);
    }

    /**
     * A heading with what belongs under it.
     *
     * @param heading the heading
     * @param text paragraphs
     * @param charts drawn in the light theme; the page turns them dark where the reader wants it
     * @param tables after the charts
     */
    public record Section(String heading, List<String> text, List<ChartDocument> charts, List<ReportTable> tables) {

        /** Copies the lists. */
        public Section {
            text = List.copyOf(text);
            charts = List.copyOf(charts);
            tables = List.copyOf(tables);
        }
    }
}
