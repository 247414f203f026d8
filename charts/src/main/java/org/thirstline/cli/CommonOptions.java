package org.thirstline.cli;

import java.nio.file.Path;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.thirstline.charts.UnitSystem;
import org.thirstline.io.text.YearSpan;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.Option;
import picocli.CommandLine.TypeConversionException;

/** Options of every command that runs a study. */
final class CommonOptions {

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

    @Option(
            names = "--years",
            paramLabel = "FIRST-LAST",
            converter = Years.class,
            description = "Growth years to report, e.g. 2005-2020 (default: all).")
    @Nullable
    YearSpan years;

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
        if (out != null) {
            return out;
        }
        Path name = study.getFileName();
        String stem = name == null ? "study" : name.toString().replaceFirst("\\.[^.]*$", "");
        return study.toAbsolutePath().resolveSibling(stem + "-" + kind);
    }

    Optional<YearSpan> years() {
        return Optional.ofNullable(years);
    }

    /** Reads {@code 2005-2020} or {@code 2012}. */
    static final class Years implements ITypeConverter<YearSpan> {

        @Override
        public YearSpan convert(String text) {
            String[] parts = text.split("-", -1);
            try {
                int first = Integer.parseInt(parts[0].trim());
                int last = parts.length > 1 ? Integer.parseInt(parts[1].trim()) : first;
                if (parts.length <= 2 && first <= last) {
                    return new YearSpan(first, last);
                }
            } catch (NumberFormatException notYears) {
                // Falls through to the one message below.
            }
            throw new TypeConversionException("'" + text + "' is not a span of years; write e.g. 2005-2020 or 2012");
        }
    }
}
