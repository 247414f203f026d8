package org.thirstline.calibration.trial;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import java.util.stream.Collectors;
import org.thirstline.calibration.age.DeclineFit;
import org.thirstline.calibration.age.PlotYear;

/** Mean log yield of each plot with the fitted decline taken out. Immutable and thread-safe. */
final class PlotLevels {

    private final Map<String, Double> levels;

    private PlotLevels(Map<String, Double> levels) {
        this.levels = levels;
    }

    /**
     * Works out levels.
     *
     * @param established the years that count
     * @param fit the fitted decline, if any
     * @param log log yield as fitted
     */
    static PlotLevels of(List<PlotYear> established, Optional<DeclineFit> fit, ToDoubleFunction<PlotYear> log) {
        return new PlotLevels(new HashMap<>(established.stream()
                .collect(Collectors.groupingBy(
                        PlotLevels::key,
                        Collectors.averagingDouble(row -> log.applyAsDouble(row)
                                - Math.log(fit.map(decline -> decline.kept(row.standAge()))
                                        .orElse(1.0)))))));
    }

    private static String key(PlotYear row) {
        return row.planting() + '\u0000' + row.plot();
    }

    boolean knows(PlotYear row) {
        return levels.containsKey(key(row));
    }

    double of(PlotYear row) {
        return levels.getOrDefault(key(row), Double.NaN);
    }

    double mean() {
        return levels.values().stream()
                .mapToDouble(Double::doubleValue)
                .sorted()
                .average()
                .orElseThrow();
    }
}
