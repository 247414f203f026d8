package org.thirstline.model.solar;

/**
 * Extraterrestrial radiation and day length, FAO-56 eqs 21 to 34 (Allen et al. 1998, pp. 45-49), defined at polar day and polar night
 * too. Immutable and thread-safe.
 */
public final class SolarGeometry {

    /** Solar constant G_sc [MJ m⁻² min⁻¹], FAO-56 eq. 21. */
    private static final double SOLAR_CONSTANT = 0.0820;

    private static final double MINUTES_PER_DAY = 24.0 * 60.0;

    private SolarGeometry() {}

    /**
     * Inverse relative distance Earth to Sun d_r, FAO-56 eq. 23.
     *
     * @param dayOfYear J, 1 to 366
     * @return d_r [-]
     */
    public static double inverseRelativeDistance(int dayOfYear) {
        return 1.0 + 0.033 * Math.cos(2.0 * Math.PI / 365.0 * dayOfYear);
    }

    /**
     * Solar declination δ, FAO-56 eq. 24.
     *
     * @param dayOfYear J, 1 to 366
     * @return δ [rad]
     */
    public static double declination(int dayOfYear) {
        return 0.409 * Math.sin(2.0 * Math.PI / 365.0 * dayOfYear - 1.39);
    }

    /**
     * Sunset hour angle ω_s, FAO-56 eq. 25; 0 in polar night and π in polar day.
     *
     * @param latitudeRad φ [rad], north positive
     * @param declinationRad δ [rad]
     * @return ω_s [rad]
     */
    public static double sunsetHourAngle(double latitudeRad, double declinationRad) {
        double cosine = -Math.tan(latitudeRad) * Math.tan(declinationRad);
        return Math.acos(Math.max(-1.0, Math.min(1.0, cosine)));
    }

    /**
     * Day length N, FAO-56 eq. 34.
     *
     * @param latitudeRad φ [rad], north positive
     * @param dayOfYear J, 1 to 366
     * @return N [h]
     */
    public static double dayLengthHours(double latitudeRad, int dayOfYear) {
        return 24.0 / Math.PI * sunsetHourAngle(latitudeRad, declination(dayOfYear));
    }

    /**
     * Extraterrestrial radiation R_a over a day, FAO-56 eq. 21.
     *
     * @param latitudeRad φ [rad], north positive
     * @param dayOfYear J, 1 to 366
     * @return R_a [MJ m⁻² d⁻¹]
     */
    public static double extraterrestrialRadiation(double latitudeRad, int dayOfYear) {
        double delta = declination(dayOfYear);
        double omega = sunsetHourAngle(latitudeRad, delta);
        double geometry = omega * Math.sin(latitudeRad) * Math.sin(delta)
                + Math.cos(latitudeRad) * Math.cos(delta) * Math.sin(omega);
        return Math.max(
                0.0, MINUTES_PER_DAY / Math.PI * SOLAR_CONSTANT * inverseRelativeDistance(dayOfYear) * geometry);
    }

    /**
     * Extraterrestrial radiation R_a over part of a day, FAO-56 eqs 28 to 33; the part of the interval below the horizon counts as
     * zero.
     *
     * @param latitudeRad φ [rad], north positive
     * @param dayOfYear J, 1 to 366
     * @param fromHourAngleRad ω_1, hour angle at the start of the interval [rad], 0 at noon
     * @param toHourAngleRad ω_2, hour angle at its end [rad]
     * @return R_a [MJ m⁻²] over the interval
     */
    public static double extraterrestrialRadiation(
            double latitudeRad, int dayOfYear, double fromHourAngleRad, double toHourAngleRad) {
        double delta = declination(dayOfYear);
        double sunset = sunsetHourAngle(latitudeRad, delta);
        double from = Math.max(-sunset, Math.min(sunset, fromHourAngleRad));
        double to = Math.max(-sunset, Math.min(sunset, toHourAngleRad));
        double geometry = (to - from) * Math.sin(latitudeRad) * Math.sin(delta)
                + Math.cos(latitudeRad) * Math.cos(delta) * (Math.sin(to) - Math.sin(from));
        return 12.0 * 60.0 / Math.PI * SOLAR_CONSTANT * inverseRelativeDistance(dayOfYear) * geometry;
    }

    /**
     * Hour angle of the middle of an interval, FAO-56 eqs 31 to 33.
     *
     * @param dayOfYear J, 1 to 366
     * @param clockHour standard clock time at the middle of the interval [h]
     * @param longitudeWestDeg longitude L_m, degrees west of Greenwich
     * @param zoneLongitudeWestDeg longitude L_z of the centre of the time zone, degrees west of Greenwich
     * @return ω [rad], 0 at solar noon
     */
    public static double hourAngle(
            int dayOfYear, double clockHour, double longitudeWestDeg, double zoneLongitudeWestDeg) {
        double b = 2.0 * Math.PI * (dayOfYear - 81) / 364.0;
        double seasonalCorrectionHours = 0.1645 * Math.sin(2.0 * b) - 0.1255 * Math.cos(b) - 0.025 * Math.sin(b);
        double solarHour = clockHour + 0.06667 * (zoneLongitudeWestDeg - longitudeWestDeg) + seasonalCorrectionHours;
        return Math.PI / 12.0 * (solarHour - 12.0);
    }
}
