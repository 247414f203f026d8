package org.thirstline.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.thirstline.calibration.bands.ParameterDraws;
import org.thirstline.calibration.study.StudyOutcome;
import org.thirstline.calibration.trial.AgeStudy;
import org.thirstline.charts.ChartDocument;
import org.thirstline.charts.UnitSystem;
import org.thirstline.charts.report.ReportModel;
import org.thirstline.charts.report.ReportModel.Section;
import org.thirstline.io.study.Study;

/** What the report of an answer to age or weather says. Confined to one run. */
final class AgeReport {

    /** Stem of the chart that belongs to establishment. */
    static final String FIRST_WINTER = "first-winter";

    private final StudyOutcome outcome;
    private final AgeStudy answer;
    private final AgeWording wording;
    private final AgeReportTables tables;
    private final boolean invented;

    AgeReport(StudyOutcome outcome, AgeStudy answer, UnitSystem units, boolean invented) {
        this.outcome = outcome;
        this.answer = answer;
        this.wording = new AgeWording(answer, units);
        this.tables = new AgeReportTables(answer, units);
        this.invented = invented;
    }

    ReportModel model(List<ChartDocument> charts) {
        Study study = outcome.study();
        List<String> findings = new ArrayList<>();
        findings.add(answer.findings().sentence());
        findings.addAll(wording.sentences());
        List<String> young = new ArrayList<>(List.of(wording.establishment()));
        young.addAll(wording.firstYears());
        young.addAll(wording.firstWinter());
        return new ReportModel(
                study.title() + ": stand age or weather?",
                subtitle(),
                invented,
                findings,
                List.of(
                        new Section(
                                "Yield by stand age, year by year, and what could be found",
                                List.of(),
                                charts(charts, false),
                                tables.decision()),
                        new Section("Establishment and the first winter", young, charts(charts, true), tables.young())),
                assumptions(),
                List.of("What is estimated in the weather, and every parameter, is in the report of 'thirstline run'."),
                List.of(),
                List.of(),
                study.crop().cautions(),
                "Thirstline " + Version.program()
                        + "; run.json beside this file lists every input with its checksum and every option");
    }

    private static List<ChartDocument> charts(List<ChartDocument> charts, boolean young) {
        return charts.stream()
                .filter(chart -> chart.words().id().equals(FIRST_WINTER) == young)
                .toList();
    }

    private String subtitle() {
        Study study = outcome.study();
        return String.format(
                Locale.ROOT,
                "%s, %.2f°, %.0f m. %s. %d plot yields.",
                study.site().name(),
                study.site().latitudeDeg(),
                study.site().elevationM(),
                study.crop().name(),
                answer.trial().data().rows().size());
    }

    private List<String> assumptions() {
        List<String> assumptions = new ArrayList<>(answer.trial().notices());
        outcome.study()
                .assumptions()
                .forEach(assumption -> assumptions.add(assumption.key() + ": " + assumption.text()));
        Optional<ParameterDraws> draws =
                ParameterDraws.ofPosterior(outcome.study().crop());
        draws.flatMap(ParameterDraws::warning).ifPresent(assumptions::add);
        List<String> alone = draws.map(ParameterDraws::besideCrop).orElse(List.of());
        if (!alone.isEmpty()) {
            assumptions.add("Draws of the calibration change the crop only; left as the study has them: "
                    + String.join(", ", alone) + ".");
        }
        assumptions.add("Stands are fitted from age " + answer.options().establishedAge()
                + " on; each plot has its own level, and years scatter as one for all plots.");
        assumptions.add(
                "Every planting is simulated with the density, soil and management of the study, on its day of the year.");
        assumptions.add(
                "What the simulation gets wrong in the same way every year drops out; what it gets wrong in dry or wet years does"
                        + " not, and is why a decline must stand in every reading.");
        return assumptions;
    }
}
