package org.thirstline.charts;

import java.util.List;
import org.jspecify.annotations.Nullable;
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
 */
public record ResponseView(
        String zone, DroughtResponse response, List<Point> points, String deficitMeaning, String noun) {

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
     */
    public record Point(
            int year,
            double deficitMm,
            double penaltyMgHa,
            @Nullable SeasonClass seasonClass) {}
}
