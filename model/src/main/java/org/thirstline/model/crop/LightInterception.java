package org.thirstline.model.crop;

import org.thirstline.model.units.Rise;

/**
 * Light interception by Beer-Lambert (Monsi and Saeki 1953, Jpn. J. Bot. 14:22-52) in canopies that cover part of the ground:
 * f = c (1 - exp(-k L / c)). Full cover is the familiar form. Immutable and thread-safe.
 */
public final class LightInterception {

    private final double extinction;

    /**
     * Creates the process.
     *
     * @param extinction extinction coefficient of PAR k
     */
    public LightInterception(double extinction) {
        this.extinction = extinction;
    }

    /**
     * Share of PAR intercepted.
     *
     * @param leafAreaIndex L [m² m⁻²]
     * @param groundCover c, share of the ground under clumps, 0 to 1
     * @return 0 to c
     */
    public double fraction(double leafAreaIndex, double groundCover) {
        if (leafAreaIndex <= 0.0 || groundCover <= 0.0) {
            return 0.0;
        }
        return groundCover * Rise.of(extinction * leafAreaIndex / groundCover);
    }
}
