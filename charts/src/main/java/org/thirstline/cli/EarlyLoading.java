package org.thirstline.cli;

import java.util.List;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.concurrent.ForkJoinPool;
import org.thirstline.calibration.years.YieldRisk;
import org.thirstline.calibration.years.YieldRisk.YearYield;
import org.thirstline.charts.ChartStyle;
import org.thirstline.charts.ExceedanceChart;
import org.thirstline.charts.RiskView;
import org.thirstline.charts.output.ChartFormat;
import org.thirstline.charts.output.ChartWriter;
import org.thirstline.charts.theme.ChartSize;
import org.thirstline.charts.theme.ChartTheme;
import org.thirstline.io.crop.CropFiles;

/**
 * Loads the classes and fonts that a command will need, on a processor that would be idle while the command line is parsed and the weather
 * is read. What is read and drawn here is thrown away. Thread-safe.
 */
final class EarlyLoading {

    private static final Set<String> DRAWING = Set.of("run", "drought", "compare", "slides");

    private EarlyLoading() {}

    /** Begins in the background if the command is one that soon draws. */
    static void begin(String... arguments) {
        boolean draws = arguments.length > 1 && DRAWING.contains(arguments[0]);
        if (draws && Runtime.getRuntime().availableProcessors() > 1) {
            ForkJoinPool.commonPool().execute(EarlyLoading::load);
        }
    }

    static void load() {
        CropFiles.bundled(CropFiles.names().get(0));
        var invented = new YieldRisk(List.of(new YearYield(1, 10.0), new YearYield(2, 20.0)));
        var view = new RiskView(List.of(new RiskView.ZoneRisk("zone", invented)), OptionalDouble.of(15.0));
        var chart = ExceedanceChart.of(view, ChartStyle.of(ChartTheme.LIGHT, ChartSize.THUMBNAIL));
        ChartWriter.bytes(chart, ChartFormat.SVG);
        ChartWriter.bytes(chart, ChartFormat.PNG);
    }
}
