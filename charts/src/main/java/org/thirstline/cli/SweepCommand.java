package org.thirstline.cli;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import org.thirstline.calibration.sweep.CellOutcome;
import org.thirstline.calibration.sweep.Sweep;
import org.thirstline.calibration.sweep.SweepOptions;
import org.thirstline.io.study.CellTable;
import org.thirstline.io.study.Study;
import org.thirstline.io.study.StudyReader;
import org.thirstline.io.tables.DataPackage;
import org.thirstline.io.tables.GrowingTable;
import org.thirstline.io.tables.ResultFolder;
import org.thirstline.io.tables.RunManifest;
import org.thirstline.io.text.YearSpan;
import org.thirstline.model.error.InputException;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Simulates many cells. */
@Command(
        name = "sweep",
        description = {
            "Simulate every cell of a table: places with their own weather, soil and planting; what the table leaves open is the study's."
                    + " One row of yields for each cell, in the order of the table.",
            ""
        },
        mixinStandardHelpOptions = true,
        footer = {
            "",
            "Examples:",
            "  thirstline sweep docs/examples/larkmoor/study.yaml --cells docs/examples/larkmoor/cells.csv",
            "  thirstline sweep region.yaml --cells grid.csv --penalty --by-year --out region",
            "  thirstline sweep region.yaml --cells grid.csv --out region --resume",
            "",
            "Columns of the table: docs/sweep.md. A cell that cannot be simulated has a row that says why."
        })
final class SweepCommand implements Callable<Integer> {

    @Parameters(paramLabel = "STUDY", description = "Study file, YAML or JSON.")
    @SuppressWarnings("NullAway.Init") // set by the command line parser before anything runs
    private Path file;

    @Option(names = "--cells", paramLabel = "FILE", required = true, description = "Table of the cells, CSV.")
    @SuppressWarnings("NullAway.Init") // set by the command line parser before anything runs
    private Path cells;

    @Option(names = "--penalty", description = "Simulate each cell without lack of water too, for its drought penalty.")
    private boolean penalty;

    @Option(names = "--by-year", description = "Write a row for each growth year of each cell.")
    private boolean byYear;

    @Option(
            names = "--years",
            paramLabel = "FIRST-LAST",
            converter = CommonOptions.Years.class,
            description = "Growth years to report, e.g. 2005-2020 (default: all).")
    private @Nullable YearSpan years;

    @Option(
            names = "--resume",
            description =
                    "Continue an interrupted sweep after its last whole cell; the result is that of one without interruption.")
    private boolean resume;

    @Option(
            names = "--threads",
            paramLabel = "N",
            description = "Cells simulated at once (default: one for each processor). Results do not depend on it.")
    private int threads = Runtime.getRuntime().availableProcessors();

    @Option(
            names = "--out",
            paramLabel = "DIR",
            description = "Folder for the results (default: a folder beside the study).")
    private @Nullable Path out;

    @Option(names = "--quiet", description = "Say nothing but errors.")
    private boolean quiet;

    @Spec
    @SuppressWarnings("NullAway.Init") // set by the command line parser before anything runs
    private CommandLine.Model.CommandSpec spec;

    private final Timings timings = new Timings();

    /** Rows of a cell and, if it has no yield, why. */
    private record Made(byte[] rows, Optional<String> refusal) {}

    @Override
    public Integer call() throws IOException {
        if (threads < 1) {
            throw new CommandLine.ParameterException(spec.commandLine(), "--threads must be 1 or more");
        }
        Study study = StudyReader.read(file);
        int all = CellTable.check(cells);
        SweepTable table = new SweepTable(byYear, penalty);
        Path folder = out == null ? OutputOptions.beside(file, "sweep") : out;
        Path place = folder.resolve(table.info().path());
        SweepNotes notes = new SweepNotes(study, cells, options());
        Tally tally;
        int before;
        try (GrowingTable growing = GrowingTable.open(place, notes.key(), table.header(), resume)) {
            before = growing.parts();
            timings.step("reading");
            tally = simulate(study, table, growing, all);
            growing.finish();
        }
        timings.step("cells");
        ResultFolder.write(folder.resolve(DataPackage.FILE), bytes(notes.descriptor(table.info(), folder)));
        ResultFolder.write(
                folder.resolve(RunManifest.FILE), bytes(notes.manifest(timings).text()));
        if (before == 0 && tally.refused == all) {
            throw new InputException(SweepError.NO_CELL_HAS_A_YIELD, all, tally.first.orElse(""));
        }
        if (!quiet) {
            report(study, place, all, before, tally);
        }
        return 0;
    }

    private SweepOptions options() {
        return SweepOptions.within(penalty, Optional.ofNullable(years), threads);
    }

    private Tally simulate(Study study, SweepTable table, GrowingTable growing, int all) {
        PrintWriter err = spec.commandLine().getErr();
        SweepProgress progress = new SweepProgress(err, !quiet && System.console() != null, growing.parts(), all);
        Tally tally = new Tally();
        new Sweep(study, cells, options())
                .run(
                        growing.parts(),
                        outcome -> made(table, outcome),
                        made -> {
                            growing.append(joined(made));
                            made.forEach(tally::count);
                        },
                        progress::cell);
        progress.clear();
        return tally;
    }

    private static Made made(SweepTable table, CellOutcome outcome) {
        return new Made(table.rows(outcome), outcome.refusal());
    }

    private static byte[] joined(List<Made> made) {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        made.forEach(cell -> bytes.writeBytes(cell.rows()));
        return bytes.toByteArray();
    }

    private void report(Study study, Path place, int all, int before, Tally tally) {
        PrintWriter terminal = spec.commandLine().getOut();
        int now = all - before;
        terminal.println((study.invented() ? "[invented data] " : "") + (now - tally.refused) + " of " + now
                + " cells have a yield" + (before == 0 ? "." : "; " + before + " were there already."));
        tally.first.ifPresent(reason -> terminal.println(tally.refused + " have none; the first: " + reason));
        List<String> ignored = ignored();
        if (!ignored.isEmpty()) {
            terminal.println("Columns not read: " + String.join(", ", ignored) + ".");
        }
        terminal.println();
        terminal.println("Results: " + place);
    }

    private List<String> ignored() {
        try (CellTable table = CellTable.open(cells)) {
            return table.ignored();
        }
    }

    private static byte[] bytes(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }

    /** Counts cells without a yield. */
    private static final class Tally {

        private int refused;
        private Optional<String> first = Optional.empty();

        void count(Made made) {
            if (made.refusal().isPresent()) {
                refused++;
                first = first.or(made::refusal);
            }
        }
    }
}
