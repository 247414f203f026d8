package org.thirstline.cli;

import java.nio.file.Path;
import org.jspecify.annotations.Nullable;
import org.thirstline.charts.UnitSystem;
import picocli.CommandLine.Option;

/** Options of every command that runs a study and writes results. */
class OutputOptions {

    @Option(
            names = "--out",
            paramLabel = "DIR",
            description = "Folder for the results (default: a folder beside the study).")
    @Nullable
    Path out;

    @Option(
            names = "--units",
            paramLabel = "si|us",
            defaultValue = "si",
            description = "Units of charts, report and terminal; tables are always SI (default: ${DEFAULT-VALUE}).")
    UnitSystem units = UnitSystem.SI;

    @Option(names = "--pdf", description = "Write every chart as PDF too.")
    boolean pdf;

    @Option(names = "--quiet", description = "Say nothing but errors.")
    boolean quiet;

    @Option(
            names = "--threads",
            paramLabel = "N",
            description = "Zones simulated at once (default: one for each processor). Results do not depend on it.")
    int threads = Runtime.getRuntime().availableProcessors();

    @Option(
            names = "--seed",
            paramLabel = "N",
            description = "Seed of everything random, noted in run.json (default: ${DEFAULT-VALUE}).")
    long seed = 1;

    /**
     * Returns where results go.
     *
     * @param study the study file
     * @param kind what the folder's name says after the study's
     */
    Path folderFor(Path study, String kind) {
        return out != null ? out : beside(study, kind);
    }

    static Path beside(Path study, String kind) {
        Path name = study.getFileName();
        String stem = name == null ? "study" : name.toString().replaceFirst("\\.[^.]*$", "");
        return study.toAbsolutePath().resolveSibling(stem + "-" + kind);
    }
}
