package org.thirstline.cli;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import org.thirstline.calibration.study.StudyOutcome;
import org.thirstline.charts.report.ReportModel;
import org.thirstline.charts.report.ReportModel.Section;
import org.thirstline.charts.report.ReportTable;
import org.thirstline.charts.report.ReportTable.Column;
import org.thirstline.io.crop.CropFile;
import org.thirstline.io.crop.ParameterNote;
import org.thirstline.io.quality.WeatherReport;
import org.thirstline.io.study.Study;
import org.thirstline.model.crop.CropParameter;

/** What every report of a study carries around its findings: what was assumed, estimated, with which parameters. Confined to one run. */
final class ReportFrame {

    private final StudyOutcome outcome;

    private ReportFrame(StudyOutcome outcome) {
        this.outcome = outcome;
    }

    static ReportModel of(StudyOutcome outcome, List<String> findings, List<Section> sections) {
        return new ReportFrame(outcome).model(findings, sections);
    }

    private ReportModel model(List<String> findings, List<Section> sections) {
        Study study = outcome.study();
        return new ReportModel(
                study.title(),
                subtitle(outcome),
                outcome.invented(),
                findings,
                sections,
                assumptions(),
                WeatherWords.estimates(outcome.weather()),
                List.of(weatherTable()),
                List.of(parameterTable(study.crop())),
                study.crop().cautions(),
                "Thirstline " + Version.program()
                        + "; run.json beside this file lists every input with its checksum and every option");
    }

    /** Returns site, crop and weather in one line. */
    static String subtitle(StudyOutcome outcome) {
        Study study = outcome.study();
        return String.format(
                Locale.ROOT,
                "%s, %.2f°, %.0f m. %s, planted %s. Weather %s to %s.",
                study.site().name(),
                study.site().latitudeDeg(),
                study.site().elevationM(),
                study.crop().name(),
                study.stand().plantingDate(),
                outcome.weather().series().start(),
                outcome.weather().series().end());
    }

    private List<String> assumptions() {
        List<String> assumptions = new ArrayList<>(outcome.notices());
        outcome.study()
                .assumptions()
                .forEach(assumption -> assumptions.add(assumption.key() + ": " + assumption.text()));
        assumptions.add("The soil starts at field capacity on the first day of the weather.");
        assumptions.add(
                "Drought lines rest on years in which the stand is at least three years old, the season is complete and its rain is"
                        + " measured.");
        return assumptions;
    }

    private ReportTable weatherTable() {
        List<Column> columns = List.of(
                Column.text("variable"),
                Column.number("year", ""),
                Column.text("what"),
                Column.number("days", ""),
                Column.text("first"),
                Column.text("last"),
                Column.text("example"),
                Column.text("done about it"));
        List<List<String>> rows = WeatherReport.rows(outcome.weather()).stream()
                .map(row -> List.of(
                        row.variable(),
                        Integer.toString(row.year()),
                        row.kind().text(),
                        Integer.toString(row.count()),
                        row.first().toString(),
                        row.last().toString(),
                        row.exampleValue(),
                        row.action()))
                .toList();
        return new ReportTable("Gaps, estimated and doubtful values", columns, rows);
    }

    private static ReportTable parameterTable(CropFile crop) {
        List<Column> columns = List.of(
                Column.text("parameter"),
                Column.number("value", ""),
                Column.text("unit"),
                Column.text("published range"),
                Column.text("source"),
                Column.text("on what"),
                Column.text("how known"));
        List<List<String>> rows = Arrays.stream(CropParameter.values())
                .map(parameter -> row(crop, parameter))
                .toList();
        return new ReportTable("Parameters of " + crop.name() + " (" + crop.species() + ")", columns, rows);
    }

    private static List<String> row(CropFile crop, CropParameter parameter) {
        ParameterNote note = crop.note(parameter);
        String range = note.hasRange() ? number(note.low()) + " to " + number(note.high()) : "none found";
        return List.of(
                parameter.meaning(),
                number(crop.parameters().get(parameter)),
                parameter.unit().equals("1") ? "" : parameter.unit(),
                range,
                note.source(),
                note.basis(),
                note.status().words());
    }

    private static String number(double value) {
        return value == Math.rint(value) && Math.abs(value) < 1e9
                ? String.format(Locale.ROOT, "%.0f", value)
                : Double.toString(value);
    }
}
