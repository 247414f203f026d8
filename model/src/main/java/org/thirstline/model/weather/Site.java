package org.thirstline.model.weather;

import org.thirstline.model.error.Check;

/**
 * A place on the ground. Immutable and thread-safe.
 *
 * @param name what people call it
 * @param latitudeDeg latitude, north positive [°], -90 to 90
 * @param elevationM elevation above sea level [m], -430 to 8850
 */
public record Site(String name, double latitudeDeg, double elevationM) {

    /** Refuses places that are not on Earth. */
    public Site {
        Check.range("latitude", latitudeDeg, "degrees", -90.0, 90.0);
        Check.range("elevation", elevationM, "m", -430.0, 8850.0);
    }

    /** Returns whether growth years start on 1 July. */
    public boolean isSouthern() {
        return latitudeDeg < 0.0;
    }

    /** Returns the latitude [rad]. */
    public double latitudeRad() {
        return Math.toRadians(latitudeDeg);
    }
}
