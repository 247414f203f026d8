package org.thirstline.charts;

import java.nio.file.Path;
import java.util.EnumSet;
import java.util.List;
import java.util.function.Function;
import org.thirstline.charts.output.ChartFormat;
import org.thirstline.charts.output.ChartWriter;
import org.thirstline.charts.report.HtmlReport;
import org.thirstline.charts.report.SampleReport;
import org.thirstline.charts.theme.ChartSize;
import org.thirstline.charts.theme.ChartTheme;

/** Writes every chart as pictures to look at: {@code Gallery FOLDER [chart ...]}. */
final class Gallery {

    private Gallery() {}

    public static void main(String[] arguments) throws Exception {
        Path folder = Path.of(arguments[0]);
        List<String> only = List.of(arguments).subList(1, arguments.length);
        HtmlReport.write(SampleReport.of(Samples.forReport()), folder.resolve("report.html"));
        for (var chart : Samples.all().entrySet()) {
            if (!only.isEmpty() && !only.contains(chart.getKey())) {
                continue;
            }
            write(folder, chart.getKey(), chart.getValue());
        }
    }

    private static void write(Path folder, String name, Function<ChartStyle, ChartDocument> chart) throws Exception {
        for (ChartSize size : ChartSize.values()) {
            ChartStyle style = Samples.style(ChartTheme.LIGHT, size);
            ChartWriter.write(
                    chart.apply(style),
                    folder.resolve(name + "-" + size.words()),
                    EnumSet.of(ChartFormat.PNG, ChartFormat.SVG));
        }
        ChartWriter.write(
                chart.apply(Samples.style(ChartTheme.DARK, ChartSize.SLIDE)),
                folder.resolve(name + "-dark"),
                EnumSet.of(ChartFormat.PNG));
        ChartWriter.write(
                chart.apply(Samples.style(ChartTheme.LIGHT, ChartSize.SLIDE).withUnits(UnitSystem.US)),
                folder.resolve(name + "-us"),
                EnumSet.of(ChartFormat.PNG, ChartFormat.CSV));
    }
}
