package org.thirstline.cli;

import java.util.ArrayList;
import java.util.List;
import org.thirstline.calibration.influence.StudyInfluence;
import org.thirstline.calibration.influence.VariedInput;
import org.thirstline.calibration.influence.ZoneInfluence;
import org.thirstline.calibration.study.StudyOutcome;
import org.thirstline.charts.report.ReportModel;
import org.thirstline.charts.report.ReportModel.Section;
import org.thirstline.charts.report.ReportTable;
import org.thirstline.charts.report.ReportTable.Column;

/** What the report of {@code sensitivity} says. Confined to one run. */
final class SensitivityReport {

    private final StudyOutcome outcome;
    private final StudyInfluence answer;
    private final SensitivityCharts charts;
    private final CommonOptions options;
    private final SensitivityWords words;

    SensitivityReport(StudyOutcome outcome, StudyInfluence answer, SensitivityCharts charts, CommonOptions options) {
        this.outcome = outcome;
        this.answer = answer;
        this.charts = charts;
        this.options = options;
        this.words = new SensitivityWords(answer, options.units);
    }

    ReportModel model() {
        List<String> findings = new ArrayList<>();
        List<Section> sections = new ArrayList<>();
        for (ZoneInfluence zone : answer.zones()) {
            String name = zone.zone().name();
            findings.add(name + ": " + words.sentences(zone).get(0));
            sections.add(new Section(
                    "What decides on " + name,
                    words.sentences(zone),
                    ChartFiles.pages(charts.shares(zone), outcome, options),
                    List.of()));
            sections.add(new Section(
                    "Screening of all parameters on " + name,
                    List.of("What moving one parameter through its range does, the others anywhere in theirs."),
                    ChartFiles.pages(charts.screening(zone), outcome, options),
                    List.of()));
        }
        sections.add(new Section("What was varied how far", words.notices(), List.of(), List.of(ranges())));
        return ReportFrame.of(outcome, findings, sections);
    }

    private ReportTable ranges() {
        List<Column> columns = List.of(
                Column.text("parameter"),
                Column.text("key"),
                Column.number("as set", ""),
                Column.number("low", ""),
                Column.number("high", ""),
                Column.text("unit"),
                Column.text("range"));
        List<List<String>> rows =
                answer.inputs().inputs().stream().map(this::row).toList();
        return new ReportTable("Parameters and the ranges they were moved through", columns, rows);
    }

    private List<String> row(VariedInput input) {
        return List.of(
                words.name(input.key()),
                input.key(),
                number(input.standard()),
                number(input.low()),
                number(input.high()),
                input.unit().equals("1") ? "" : input.unit(),
                input.published() ? "crop file" : "share of the value");
    }

    private static String number(double value) {
        return java.math.BigDecimal.valueOf(value)
                .round(new java.math.MathContext(4))
                .stripTrailingZeros()
                .toPlainString();
    }
}
