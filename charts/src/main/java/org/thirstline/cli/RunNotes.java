package org.thirstline.cli;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.thirstline.calibration.study.StudyOutcome;
import org.thirstline.io.study.Study;
import org.thirstline.io.tables.DataPackage;
import org.thirstline.io.tables.ResultFolder;
import org.thirstline.io.tables.RunManifest;
import org.thirstline.io.tables.TableInfo;
import org.thirstline.io.text.YearSpan;

/** What lies beside the results of a command: how it was made, and what its tables hold. Stateless and thread-safe. */
final class RunNotes {

    private RunNotes() {}

    /** Describes the tables of a result folder. */
    static String descriptor(StudyOutcome outcome, ResultFolder results, List<TableInfo> tables) throws IOException {
        String description = (outcome.invented() ? "Invented place, weather and stand. " : "")
                + "Simulated by Thirstline. Simulations are not observations: calibrate them against plots before advice rests on"
                + " them.";
        Path folder = results.file(DataPackage.FILE).getParent();
        if (folder == null) {
            throw new IOException("results have no folder");
        }
        return DataPackage.descriptor(outcome.study().title(), description, tables, folder);
    }

    /** Notes versions, inputs, options and timings of a command. */
    static RunManifest manifest(
            String command, StudyOutcome outcome, OutputOptions options, Map<String, String> chosen, Timings timings) {
        Study study = outcome.study();
        Path base = parentOf(study.file());
        Map<String, String> versions = new LinkedHashMap<>();
        versions.put("thirstline", Version.program());
        versions.put("java", Version.java());
        Map<String, String> all = new LinkedHashMap<>();
        all.put("units", options.units.name());
        all.putAll(new TreeMap<>(chosen));
        all.put("seed", Long.toString(options.seed));
        List<RunManifest.Input> inputs = study.inputFiles().stream()
                .map(file -> RunManifest.Input.of(file, base))
                .toList();
        return new RunManifest(command, versions, inputs, all, timings.seconds());
    }

    static String years(Optional<YearSpan> years) {
        return years.map(Object::toString).orElse("all");
    }

    private static Path parentOf(Path file) {
        Path parent = file.toAbsolutePath().getParent();
        if (parent == null) {
            throw new UncheckedIOException(new IOException(file + " has no folder"));
        }
        return parent;
    }
}
