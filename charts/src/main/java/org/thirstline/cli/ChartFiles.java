package org.thirstline.cli;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.concurrent.ForkJoinTask;
import org.thirstline.calibration.study.StudyOutcome;
import org.thirstline.charts.ChartDocument;
import org.thirstline.charts.ChartStyle;
import org.thirstline.charts.output.ChartFormat;
import org.thirstline.charts.output.ChartWriter;
import org.thirstline.charts.theme.ChartSize;
import org.thirstline.charts.theme.ChartTheme;
import org.thirstline.io.tables.ResultFolder;

/** Draws charts at slide size into files, and at page size for a report. Stateless and thread-safe. */
final class ChartFiles {

    private ChartFiles() {}

    /** A file still to be drawn: made on whichever processor is free, written in a fixed order of names. */
    private record Drawing(Path base, ZoneCharts.Recipe recipe, ChartSize size) {}

    static void write(
            List<ZoneCharts.Recipe> recipes, StudyOutcome outcome, OutputOptions options, ResultFolder results) {
        List<Drawing> drawings = drawings(recipes, options.sizes(), results);
        draw(drawings, slide(outcome, options), options.formats());
    }

    static void write(List<ZoneCharts.Recipe> recipes, ChartStyle style, boolean pdf, ResultFolder results) {
        Set<ChartFormat> formats = EnumSet.of(ChartFormat.SVG, ChartFormat.PNG, ChartFormat.CSV);
        if (pdf) {
            formats.add(ChartFormat.PDF);
        }
        draw(drawings(recipes, List.of(ChartSize.SLIDE), results), style, formats);
    }

    private static void draw(List<Drawing> drawings, ChartStyle style, Set<ChartFormat> formats) {
        // one task each: a stream would cut them into a few parts, and a thread come late would leave the others
        // waiting
        ForkJoinTask.invokeAll(drawings.stream()
                .map(drawing -> ForkJoinTask.adapt(() -> draw(drawing, style, formats)))
                .toList());
    }

    static List<ChartDocument> pages(List<ZoneCharts.Recipe> recipes, StudyOutcome outcome, OutputOptions options) {
        return pages(recipes, slide(outcome, options));
    }

    static List<ChartDocument> pages(List<ZoneCharts.Recipe> recipes, ChartStyle slide) {
        ChartStyle page = slide.withSize(ChartSize.COLUMN).withSource("");
        return recipes.stream().map(recipe -> recipe.recipe().apply(page)).toList();
    }

    static ChartStyle slide(StudyOutcome outcome, OutputOptions options) {
        String source = "Thirstline simulation; weather: "
                + outcome.weather().format().description() + ", "
                + outcome.weather().site().name();
        return new ChartStyle(ChartTheme.LIGHT, ChartSize.SLIDE, options.units, source, outcome.invented());
    }

    private static List<Drawing> drawings(
            List<ZoneCharts.Recipe> recipes, List<ChartSize> sizes, ResultFolder results) {
        List<Drawing> drawings = new ArrayList<>();
        Set<String> names = new HashSet<>();
        for (ZoneCharts.Recipe recipe : recipes) {
            String name = recipe.id();
            for (int twin = 2; !names.add(name); twin++) {
                name = recipe.id() + "-" + twin;
            }
            for (ChartSize size : sizes) {
                drawings.add(new Drawing(results.file("charts/" + OutputOptions.fileName(name, size)), recipe, size));
            }
        }
        return drawings;
    }

    private static void draw(Drawing drawing, ChartStyle style, Set<ChartFormat> formats) {
        ChartDocument chart = drawing.recipe().recipe().apply(style.withSize(drawing.size()));
        try {
            for (ChartFormat format : formats) {
                // the folder of results appears as a whole, so its files need not
                Path file = drawing.base().resolveSibling(drawing.base().getFileName() + format.suffix());
                Files.write(file, ChartWriter.bytes(chart, format));
            }
        } catch (IOException failed) {
            throw new UncheckedIOException(failed);
        }
    }
}
