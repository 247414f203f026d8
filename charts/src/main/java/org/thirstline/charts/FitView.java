package org.thirstline.charts;

import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.thirstline.model.climate.SeasonClass;

/**
 * Observations beside their simulations. Immutable and thread-safe.
 *
 * @param what what was simulated how, e.g. "fitted to these plots" or "each site left out in turn"
 * @param quantity what was measured
 * @param points the observations
 * @param classes dry, middle or wet by growth year, as far as known; shown where there is one site only
 */
public record FitView(String what, Quantity quantity, List<FitPoint> points, Map<Integer, SeasonClass> classes) {

    /** Copies the collections. */
    public FitView {
        points = List.copyOf(points);
        classes = Map.copyOf(classes);
    }

    List<String> sites() {
        return points.stream().map(FitPoint::site).distinct().toList();
    }

    boolean showsSeasons() {
        return sites().size() <= 1;
    }

    @Nullable
    SeasonClass classOf(FitPoint point) {
        return classes.get(point.year());
    }

    Set<SeasonClass> shownClasses() {
        Set<SeasonClass> shown = new HashSet<>();
        for (FitPoint point : points) {
            SeasonClass known = classOf(point);
            if (known != null) {
                shown.add(known);
            }
        }
        return shown;
    }

    /** Returns the root mean square of the residuals. */
    static double miss(List<FitPoint> points) {
        return Math.sqrt(points.stream()
                .mapToDouble(point -> point.residual() * point.residual())
                .average()
                .orElse(0.0));
    }

    /** Returns the mean of simulated less observed. */
    static double tooHigh(List<FitPoint> points) {
        return points.stream().mapToDouble(point -> -point.residual()).average().orElse(0.0);
    }

    void mark(Canvas canvas, double x, double y, double radius, FitPoint point) {
        if (showsSeasons()) {
            canvas.marker(x, y, radius, classOf(point));
        } else {
            Symbols.draw(canvas, x, y, radius, sites().indexOf(point.site()));
        }
    }
}
