package org.thirstline.model.crop;

import org.thirstline.model.units.Bound;

/**
 * Moisture of the standing crop: from the living stand's value towards the equilibrium that the air sets, faster in dry air, wetted again
 * by rain. Inside, moisture is on a dry basis [kg water per kg dry matter]; people get wet basis [%]. Immutable and thread-safe.
 */
public final class DryDown {

    /** Rain beyond this runs off stems [mm/d] (judgement). */
    private static final double WETTING_RAIN_LIMIT_MM = 10.0;

    private final double living;
    private final double rate;
    private final double ratePerMm;
    private final double rewetting;

    /**
     * Creates the process.
     *
     * @param crop the grass
     */
    public DryDown(CropParameters crop) {
        living = dryBasis(crop.get(CropParameter.LIVING_MOISTURE));
        rate = crop.get(CropParameter.DRYING_RATE);
        ratePerMm = crop.get(CropParameter.DRYING_RATE_PER_ET0);
        rewetting = crop.get(CropParameter.REWETTING);
    }

    /**
     * Moisture on a dry basis.
     *
     * @param wetBasisPct [% wet basis], below 100
     * @return [kg/kg]
     */
    public static double dryBasis(double wetBasisPct) {
        return wetBasisPct / (100.0 - wetBasisPct);
    }

    /**
     * Moisture on a wet basis.
     *
     * @param dryBasis [kg/kg]
     * @return [% wet basis]
     */
    public static double wetBasisPct(double dryBasis) {
        return 100.0 * dryBasis / (1.0 + dryBasis);
    }

    /** Returns the moisture of the living stand, dry basis [kg/kg]. */
    public double living() {
        return living;
    }

    /**
     * Equilibrium moisture of dead plant matter in air, Simard (1968, Can. For. Serv. Inf. Rep. FF-X-14), the form used for dead
     * fine fuels; coefficients from memory.
     *
     * @param temperatureC air temperature [°C]
     * @param humidityPct relative humidity h [%]
     * @return dry basis [kg/kg]
     */
    public static double equilibrium(double temperatureC, double humidityPct) {
        double fahrenheit = 1.8 * temperatureC + 32.0;
        double h = Math.max(0.0, Math.min(100.0, humidityPct));
        double percent;
        if (h < 10.0) {
            percent = 0.03229 + 0.281073 * h - 0.000578 * h * fahrenheit;
        } else if (h < 50.0) {
            percent = 2.22749 + 0.160107 * h - 0.014784 * fahrenheit;
        } else {
            percent = 21.0606 + 0.005565 * h * h - 0.00035 * h * fahrenheit - 0.483199 * h;
        }
        return Math.max(0.01, percent / 100.0);
    }

    /**
     * Share of the way to the equilibrium that a day's air takes the crop.
     *
     * @param et0Mm reference evapotranspiration [mm/d]
     * @return 0 to 1
     */
    public double approach(double et0Mm) {
        return -Math.expm1(-(rate + ratePerMm * et0Mm));
    }

    /**
     * Moisture after a day.
     *
     * @param moisture yesterday's, dry basis [kg/kg]
     * @param equilibrium dry basis [kg/kg]
     * @param approach {@link #approach} of the day
     * @param rainMm liquid rain [mm/d]
     * @return dry basis [kg/kg]
     */
    public double tomorrow(double moisture, double equilibrium, double approach, double rainMm) {
        double wetted = rewetting * Bound.atMost(rainMm, WETTING_RAIN_LIMIT_MM);
        return Bound.atMost(moisture + approach * (equilibrium - moisture) + wetted, living);
    }
}
