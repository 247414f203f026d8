package org.thirstline.cli;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.IntStream;
import org.thirstline.calibration.study.StudyOutcome;
import org.thirstline.calibration.study.ZoneOutcome;
import org.thirstline.charts.ChartDocument;
import org.thirstline.charts.ChartStyle;
import org.thirstline.charts.output.ChartFormat;
import org.thirstline.charts.output.ChartWriter;
import org.thirstline.charts.report.HtmlReport;
import org.thirstline.charts.theme.ChartSize;
import org.thirstline.charts.theme.ChartTheme;
import org.thirstline.io.tables.ResultFolder;

/** Draws the charts of a run at slide size and puts them, at column size, into the report. Stateless and thread-safe. */
final class RunCharts {

    private RunCharts() {}

    /** A file still to be drawn: made on whichever processor is free, written in a fixed order of names. */
    private record Drawing(Path base, ZoneCharts.Recipe recipe) {}

    static void write(StudyOutcome outcome, CommonOptions options, ResultFolder results) throws IOException {
        ChartStyle slide =
                new ChartStyle(ChartTheme.LIGHT, ChartSize.SLIDE, options.units, source(outcome), outcome.invented());
        Set<ChartFormat> formats = EnumSet.of(ChartFormat.SVG, ChartFormat.PNG, ChartFormat.CSV);
        if (options.pdf) {
            formats.add(ChartFormat.PDF);
        }
        List<Drawing> drawings = drawings(outcome, results);
        IntStream.range(0, drawings.size()).parallel().forEach(i -> draw(drawings.get(i), slide, formats));
        ChartStyle page = slide.withSize(ChartSize.COLUMN).withSource("");
        HtmlReport.write(
                RunReport.of(outcome, options.units, zone -> documents(outcome, zone, page)),
                results.file("report.html"));
    }

    private static String source(StudyOutcome outcome) {
        return "Thirstline simulation; weather: " + outcome.weather().format().description() + ", "
                + outcome.weather().site().name();
    }

    private static List<Drawing> drawings(StudyOutcome outcome, ResultFolder results) throws IOException {
        List<Drawing> drawings = new ArrayList<>();
        Set<String> names = new HashSet<>();
        for (ZoneOutcome zone : outcome.zones()) {
            for (ZoneCharts.Recipe recipe : new ZoneCharts(outcome, zone).recipes()) {
                String name = recipe.id();
                for (int twin = 2; !names.add(name); twin++) {
                    name = recipe.id() + "-" + twin;
                }
                drawings.add(new Drawing(results.file("charts/" + name), recipe));
            }
        }
        return drawings;
    }

    private static void draw(Drawing drawing, ChartStyle style, Set<ChartFormat> formats) {
        try {
            ChartWriter.write(drawing.recipe().recipe().apply(style), drawing.base(), formats);
        } catch (IOException failed) {
            throw new UncheckedIOException(failed);
        }
    }

    private static List<ChartDocument> documents(StudyOutcome outcome, ZoneOutcome zone, ChartStyle style) {
        return new ZoneCharts(outcome, zone)
                .recipes().stream().map(recipe -> recipe.recipe().apply(style)).toList();
    }
}
