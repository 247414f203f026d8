package org.thirstline.charts;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.thirstline.calibration.bands.Band;
import org.thirstline.calibration.response.DroughtResponse;
import org.thirstline.model.climate.SeasonClass;

/**
 * Drought response of one zone. Immutable and thread-safe.
 *
 * @param zone name of the zone; may be empty
 * @param response the fit
 * @param points the years it was fitted to
 * @param deficitMeaning window and normal period of the deficit, e.g. "1 Apr to 30 Sep, normal of 1991 to 2020"
 * @param noun what the deficit is an amount of, "missing rain" unless normal rain plays no part
 * @param slopes what a calibration leaves possible of the straight line's slope [Mg/ha per mm], if that is known
 */
public record ResponseView(
        String zone,
        DroughtResponse response,
        List<Point> points,
        String deficitMeaning,
        String noun,
        Optional<Band> slopes) {

    /** What the deficit is called unless it is something else. */
    static final String MISSING_RAIN = "missing rain";

    /** Copies the list. */
    public ResponseView {
        points = List.copyOf(points);
    }

    /** Takes a rainfall deficit against a normal. */
    public ResponseView(String zone, DroughtResponse response, List<Point> points, String deficitMeaning) {
        this(zone, response, points, deficitMeaning, MISSING_RAIN);
    }

    /** Takes a response without bands. */
    public ResponseView(String zone, DroughtResponse response, List<Point> points, String deficitMeaning, String noun) {
        this(zone, response, points, deficitMeaning, noun, Optional.empty());
    }

    /** Returns the same with the slopes that a calibration leaves possible. */
    public ResponseView withSlopes(Optional<Band> possible) {
        return new ResponseView(zone, response, points, deficitMeaning, noun, possible);
    }

    List<Band> bands() {
        return points.stream().map(Point::band).flatMap(Stream::ofNullable).toList();
    }

    boolean isAgainstNormal() {
        return noun.equals(MISSING_RAIN);
    }

    /**
     * One year.
     *
     * @param year growth year
     * @param deficitMm rainfall deficit [mm], positive when dry
     * @param penaltyMgHa drought penalty [Mg/ha]
     * @param seasonClass how wet it was, if known
     * @param band what a calibration leaves possible of the penalty [Mg/ha], if that is known
     */
    public record Point(
            int year,
            double deficitMm,
            double penaltyMgHa,
            @Nullable SeasonClass seasonClass,
            @Nullable Band band) {

        /** Takes a year without a band. */
        public Point(int year, double deficitMm, double penaltyMgHa, @Nullable SeasonClass seasonClass) {
            this(year, deficitMm, penaltyMgHa, seasonClass, null);
        }
    }
}
