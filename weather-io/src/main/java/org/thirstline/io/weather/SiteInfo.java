package org.thirstline.io.weather;

import org.jspecify.annotations.Nullable;
import org.thirstline.model.weather.Site;

/**
 * What is known about the place of a weather file. Immutable.
 *
 * @param name name or station, or null
 * @param latitudeDeg latitude, north positive [°], or null
 * @param longitudeDeg longitude, east positive [°], or null
 * @param elevationM elevation above sea level [m], or null
 */
public record SiteInfo(
        @Nullable String name,
        @Nullable Double latitudeDeg,
        @Nullable Double longitudeDeg,
        @Nullable Double elevationM) {

    /** Nothing known. */
    public static final SiteInfo UNKNOWN = new SiteInfo(null, null, null, null);

    /** Returns what a site tells. */
    public static SiteInfo of(Site site) {
        return new SiteInfo(site.name(), site.latitudeDeg(), null, site.elevationM());
    }

    /** Returns this, completed by another where this is silent. */
    public SiteInfo or(SiteInfo other) {
        return new SiteInfo(
                name != null ? name : other.name,
                latitudeDeg != null ? latitudeDeg : other.latitudeDeg,
                longitudeDeg != null ? longitudeDeg : other.longitudeDeg,
                elevationM != null ? elevationM : other.elevationM);
    }

    SiteInfo withName(@Nullable String newName) {
        return new SiteInfo(newName, latitudeDeg, longitudeDeg, elevationM);
    }

    SiteInfo withPosition(@Nullable Double newLatitudeDeg, @Nullable Double newLongitudeDeg) {
        return new SiteInfo(name, newLatitudeDeg, newLongitudeDeg, elevationM);
    }

    SiteInfo withElevation(@Nullable Double newElevationM) {
        return new SiteInfo(name, latitudeDeg, longitudeDeg, newElevationM);
    }
}
