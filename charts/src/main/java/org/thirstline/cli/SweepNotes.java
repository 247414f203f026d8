package org.thirstline.cli;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.thirstline.calibration.sweep.SweepOptions;
import org.thirstline.io.study.Study;
import org.thirstline.io.tables.DataPackage;
import org.thirstline.io.tables.RunManifest;
import org.thirstline.io.tables.Sha256;
import org.thirstline.io.tables.TableInfo;

/** What lies beside the table of a sweep: how it was made, and what it holds. Confined to one sweep. */
final class SweepNotes {

    private final Study study;
    private final SweepOptions options;
    private final List<RunManifest.Input> inputs = new ArrayList<>();

    SweepNotes(Study study, Path cells, SweepOptions options) {
        this.study = study;
        this.options = options;
        Path base = study.file().toAbsolutePath().getParent();
        List<Path> files = new ArrayList<>(study.inputFiles());
        files.add(cells);
        files.forEach(file -> inputs.add(RunManifest.Input.of(file, base == null ? file : base)));
    }

    private Map<String, String> chosen() {
        Map<String, String> chosen = new LinkedHashMap<>();
        chosen.put("penalty", Boolean.toString(options.penalty()));
        chosen.put("years", RunNotes.years(options.years()));
        return chosen;
    }

    /** Returns a text that is the same only for the same study, table, options and version. Weather files named by the table are not looked into. */
    String key() {
        StringBuilder text = new StringBuilder(Version.program()).append('\n');
        inputs.forEach(input -> text.append(input.sha256()).append('\n'));
        chosen().forEach((name, value) ->
                text.append(name).append('=').append(value).append('\n'));
        return Sha256.of(text.toString().getBytes(StandardCharsets.UTF_8)) + "\n";
    }

    RunManifest manifest(Timings timings) {
        Map<String, String> versions = new LinkedHashMap<>();
        versions.put("thirstline", Version.program());
        versions.put("java", Version.java());
        return new RunManifest("sweep", versions, inputs, chosen(), timings.seconds());
    }

    String descriptor(TableInfo table, Path folder) {
        String description = (study.invented() ? "Invented place, weather and stand. " : "")
                + "Simulated by Thirstline. Simulations are not observations: calibrate them against plots before advice rests on them.";
        return DataPackage.descriptor(study.title(), description, List.of(table), folder);
    }
}
