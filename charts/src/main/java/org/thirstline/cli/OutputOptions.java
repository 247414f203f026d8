package org.thirstline.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.thirstline.charts.UnitSystem;
import org.thirstline.charts.output.ChartFormat;
import org.thirstline.charts.theme.ChartSize;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.Option;
import picocli.CommandLine.TypeConversionException;

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

    @Option(names = "--png2x", description = "Write every chart as PNG of twice the pixels too.")
    boolean png2x;

    @Option(
            names = "--chart-size",
            paramLabel = "NAME",
            split = ",",
            converter = Sizes.class,
            description =
                    "Sizes of chart files: slide, half-slide, page, column, thumbnail; any but slide is part of the file's name"
                            + " (default: slide).")
    List<ChartSize> chartSizes = new ArrayList<>();

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

    /** Returns the sizes to draw charts in. */
    List<ChartSize> sizes() {
        return chartSizes.isEmpty() ? List.of(ChartSize.SLIDE) : List.copyOf(new LinkedHashSet<>(chartSizes));
    }

    /** Returns what to write each chart as. */
    Set<ChartFormat> formats() {
        Set<ChartFormat> formats = EnumSet.of(ChartFormat.SVG, ChartFormat.PNG, ChartFormat.CSV);
        if (pdf) {
            formats.add(ChartFormat.PDF);
        }
        if (png2x) {
            formats.add(ChartFormat.PNG_2X);
        }
        return formats;
    }

    /** Returns what the file of a chart is called in a size. */
    static String fileName(String id, ChartSize size) {
        return size == ChartSize.SLIDE ? id : id + "-" + size.words();
    }

    /** Reads the name of a size. */
    static final class Sizes implements ITypeConverter<ChartSize> {

        @Override
        public ChartSize convert(String text) {
            List<ChartSize> sizes = Arrays.stream(ChartSize.values())
                    .filter(ChartSize::hasTitle)
                    .toList();
            return sizes.stream()
                    .filter(size -> size.words().equalsIgnoreCase(text.trim()))
                    .findFirst()
                    .orElseThrow(() -> new TypeConversionException("'" + text + "' is not a size; allowed are "
                            + sizes.stream().map(ChartSize::words).collect(Collectors.joining(", "))));
        }
    }

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
