package org.thirstline.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.thirstline.calibration.calibrate.CalibrationFit;
import org.thirstline.calibration.calibrate.CalibrationOutcome;
import org.thirstline.calibration.calibrate.ChosenValues.Basis;
import org.thirstline.calibration.calibrate.HeldOut;
import org.thirstline.calibration.fit.Profile;
import org.thirstline.calibration.problem.CalibratedParameter;
import org.thirstline.calibration.skill.SkillScores;
import org.thirstline.charts.ChartDocument;
import org.thirstline.charts.report.ReportModel;
import org.thirstline.charts.report.ReportModel.Section;
import org.thirstline.charts.report.ReportTable;
import org.thirstline.charts.report.ReportTable.Column;
import org.thirstline.io.study.Study;

/** What the report of a calibration says. Confined to one run. */
final class CalibrationReport {

    /** Where the values taken stand, behind all that belongs to least squares. */
    private static final int TAKEN = 6;

    private final CalibrationOutcome outcome;
    private final CalibrationFit fit;
    private final CalibrationWording wording;

    CalibrationReport(CalibrationOutcome outcome) {
        this.outcome = outcome;
        fit = outcome.fit();
        wording = new CalibrationWording(outcome);
    }

    ReportModel model(List<ChartDocument> charts) {
        Study study = outcome.data().sources().get(0).study();
        List<Section> sections = new ArrayList<>();
        sections.add(new Section("Parameters", wording.doubts(), List.of(), List.of(parameters())));
        if (!outcome.skill().isEmpty()) {
            List<ReportTable> tables =
                    outcome.skill().stream().map(CalibrationReport::skill).toList();
            sections.add(new Section("Yields that the fit had not seen", wording.skillSentences(), List.of(), tables));
        }
        if (!charts.isEmpty()) {
            sections.add(new Section("Measured and simulated", List.of(), charts, List.of()));
        }
        return new ReportModel(
                study.title() + ": calibration",
                subtitle(),
                outcome.invented(),
                wording.findings(),
                sections,
                assumptions(),
                List.of("What is estimated in the weather is in the report of 'thirstline run'."),
                List.of(),
                List.of(),
                study.crop().cautions(),
                "Thirstline " + Version.program()
                        + "; run.json beside this file lists every input with its checksum and every option");
    }

    private String subtitle() {
        List<String> sites =
                outcome.data().sources().stream().map(source -> source.site()).toList();
        return String.join(", ", sites) + ". "
                + outcome.data().sources().get(0).study().crop().name() + ". "
                + outcome.residuals().size() + " measured values.";
    }

    private List<String> assumptions() {
        List<String> assumptions = new ArrayList<>(wording.leftOut());
        assumptions.addAll(outcome.data().notices());
        assumptions.add(
                "Errors of the values are independent. Plots of one field share its year, so that errors of parameters are"
                        + " rather too small; the years held out show by how much.");
        assumptions.add("Stands do not decline with age unless the crop file says so.");
        for (CalibratedParameter parameter : outcome.parameters()) {
            assumptions.add("Prior of " + parameter.name() + ": " + CalibrationTables.words(parameter.prior()) + ".");
        }
        return assumptions;
    }

    private ReportTable parameters() {
        List<List<String>> rows = new ArrayList<>();
        double[] point = fit.point();
        for (int i = 0; i < point.length; i++) {
            CalibratedParameter parameter = outcome.parameters().get(i);
            Profile profile = fit.profiles().get(i);
            List<String> row = new ArrayList<>(List.of(
                    parameter.name(),
                    parameter.meaning(),
                    CalibrationWording.number(parameter.start()),
                    CalibrationWording.number(point[i]),
                    fit.result().isAtBound(i) ? "at a bound" : CalibrationWording.number(fit.standardError(i)),
                    CalibrationWording.interval(profile),
                    parameter.unit().equals("1") ? "" : parameter.unit()));
            if (hasOtherValues()) {
                row.add(
                        TAKEN,
                        CalibrationWording.number(outcome.chosen().values().get(i)));
            }
            rows.add(row);
        }
        List<Column> columns = new ArrayList<>(List.of(
                Column.text("parameter"),
                Column.text("what it is"),
                Column.number("before", ""),
                Column.number("fitted", hasOtherValues() ? "least squares" : ""),
                Column.number("standard error", ""),
                Column.text("95 % interval"),
                Column.text("unit")));
        if (hasOtherValues()) {
            columns.add(TAKEN, Column.number("value taken", ""));
        }
        return new ReportTable("Fitted parameters", columns, rows);
    }

    /** Whether crop file and soil take other values than those of least squares. */
    private boolean hasOtherValues() {
        return outcome.chosen().basis() != Basis.LEAST_SQUARES;
    }

    private static ReportTable skill(HeldOut heldOut) {
        return new ReportTable(
                "Each " + heldOut.what().word() + " held out",
                List.of(
                        Column.text("predicted by"),
                        Column.number("root mean square error", "Mg/ha"),
                        Column.number("bias", "Mg/ha"),
                        Column.number("Nash-Sutcliffe efficiency", ""),
                        Column.number("refined Willmott index", "")),
                List.of(
                        row(SkillRows.ENGINE, heldOut.model().overall()),
                        row(SkillRows.MEAN, heldOut.mean().overall()),
                        row(SkillRows.RAIN, heldOut.rain().overall())));
    }

    private static List<String> row(String name, SkillScores scores) {
        return List.of(
                name,
                String.format(Locale.ROOT, "%.2f", scores.rootMeanSquareError()),
                String.format(Locale.ROOT, "%.2f", scores.bias()),
                String.format(Locale.ROOT, "%.2f", scores.efficiency()),
                String.format(Locale.ROOT, "%.2f", scores.refinedIndex()));
    }
}
