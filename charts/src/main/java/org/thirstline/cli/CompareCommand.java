package org.thirstline.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import org.thirstline.calibration.study.StudyOutcome;
import org.thirstline.calibration.study.ZoneOutcome;
import org.thirstline.charts.CompareChart;
import org.thirstline.charts.CompareView;
import org.thirstline.charts.report.HtmlReport;
import org.thirstline.charts.report.ReportModel.Section;
import org.thirstline.io.tables.DataPackage;
import org.thirstline.io.tables.ResultFolder;
import org.thirstline.io.tables.RunManifest;
import org.thirstline.model.result.SeasonRecord;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Lays years of a study side by side through the season. */
@Command(
        name = "compare",
        description =
                "Lay growth years side by side through the season: rain, soil water by depth, canopy, dry matter; daily and "
                        + "monthly tables, charts and a report.",
        mixinStandardHelpOptions = true,
        footer = {"", "Example:", "  thirstline compare my-trial/study.yaml --years 2012,2014"})
final class CompareCommand implements Callable<Integer> {

    private static final int MOST_YEARS = 6;

    @Parameters(paramLabel = "STUDY", description = "Study file, YAML or JSON.")
    @SuppressWarnings("NullAway.Init") // set by the command line parser before anything runs
    private Path file;

    @Option(
            names = "--years",
            paramLabel = "YEAR",
            split = ",",
            required = true,
            description =
                    "Growth years to compare, two to six, e.g. 2012,2014; the others are compared with the first.")
    @SuppressWarnings("NullAway.Init") // set by the command line parser before anything runs
    private List<Integer> years;

    @Mixin
    private final OutputOptions options = new OutputOptions();

    @Spec
    @SuppressWarnings("NullAway.Init") // set by the command line parser before anything runs
    private CommandLine.Model.CommandSpec spec;

    @Override
    public Integer call() {
        List<Integer> wanted = List.copyOf(new LinkedHashSet<>(years));
        if (wanted.size() < 2 || wanted.size() > MOST_YEARS) {
            throw new ParameterException(
                    spec.commandLine(),
                    "--years names " + wanted.size() + " different years; name two to six, e.g. 2012,2014");
        }
        Timings timings = new Timings();
        StudyOutcome outcome = StudyRuns.simulateWithBands(file, Optional.empty(), options, timings);
        requireYears(outcome, wanted);
        Path folder = options.folderFor(file, "compare");
        try (ResultFolder results = ResultFolder.open(folder)) {
            write(new ComparedYears(outcome, wanted), results, timings);
            results.publish();
        } catch (IOException failed) {
            throw new UncheckedIOException(failed);
        }
        if (!options.quiet) {
            PrintWriter out = spec.commandLine().getOut();
            CompareSummary.print(new ComparedYears(outcome, wanted), options.units, out);
            out.println();
            out.println("Results: " + folder.resolve("report.html") + " (and tables and charts beside it)");
        }
        return 0;
    }

    private void requireYears(StudyOutcome outcome, List<Integer> wanted) {
        List<Integer> known = outcome.zones().get(0).stand().seasons().stream()
                .map(SeasonRecord::growthYear)
                .toList();
        for (int year : wanted) {
            if (!known.contains(year)) {
                throw new ParameterException(
                        spec.commandLine(),
                        "growth year " + year + " is not in the study; it has "
                                + known.stream().map(String::valueOf).collect(Collectors.joining(", ")));
            }
        }
    }

    private void write(ComparedYears compared, ResultFolder results, Timings timings) throws IOException {
        StudyOutcome outcome = compared.outcome();
        List<ResultTable> tables =
                new ArrayList<>(List.of(CompareTables.daily(compared), CompareTables.months(compared)));
        BandTable.of(outcome).ifPresent(tables::add);
        for (ResultTable table : tables) {
            table.table().writeTo(results.file(table.info().path()));
        }
        timings.step("tables");
        List<ZoneCharts.Recipe> all = new ArrayList<>();
        List<Section> sections = new ArrayList<>();
        for (ZoneOutcome zone : outcome.zones()) {
            List<ZoneCharts.Recipe> charts = charts(compared, zone);
            all.addAll(charts);
            sections.add(new Section(
                    zone.zone().name(),
                    List.of(CompareSummary.sentence(compared, zone, options.units)),
                    ChartFiles.pages(charts, outcome, options),
                    List.of(CompareTables.monthReport(compared, zone, options.units))));
        }
        ChartFiles.write(all, outcome, options, results);
        List<String> findings = new ArrayList<>();
        outcome.zones()
                .forEach(zone -> findings.add(
                        zone.zone().name() + ": " + CompareSummary.sentence(compared, zone, options.units)));
        if (outcome.bands().isPresent()) {
            findings.add(new BandWords(outcome, options.units).meaning());
        }
        HtmlReport.write(ReportFrame.of(outcome, findings, sections), results.file("report.html"));
        timings.step("charts and report");
        notes(compared, results, tables, timings);
    }

    private void notes(ComparedYears compared, ResultFolder results, List<ResultTable> tables, Timings timings)
            throws IOException {
        StudyOutcome outcome = compared.outcome();
        String named = compared.years().stream().map(String::valueOf).collect(Collectors.joining(","));
        text(
                results,
                RunManifest.FILE,
                RunNotes.manifest("compare", outcome, options, Map.of("years", named), timings)
                        .text());
        text(
                results,
                DataPackage.FILE,
                RunNotes.descriptor(
                        outcome, results, tables.stream().map(ResultTable::info).toList()));
    }

    private static List<ZoneCharts.Recipe> charts(ComparedYears compared, ZoneOutcome zone) {
        ZoneCharts charts = new ZoneCharts(compared.outcome(), zone);
        CompareView view = new CompareView(
                zone.zone().name(),
                compared.seasons(zone).stream().map(charts::view).toList());
        String suffix = "-" + ZoneCharts.slug(zone.zone().name());
        List<ZoneCharts.Recipe> recipes = new ArrayList<>();
        recipes.add(new ZoneCharts.Recipe("compare" + suffix, style -> CompareChart.of(view, style)));
        recipes.addAll(ZoneCharts.topics(suffix, view));
        return recipes;
    }

    private static void text(ResultFolder results, String name, String text) throws IOException {
        Files.write(results.file(name), text.getBytes(StandardCharsets.UTF_8));
    }
}
