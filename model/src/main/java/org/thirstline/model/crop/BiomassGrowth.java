package org.thirstline.model.crop;

/**
 * Growth = RUE × intercepted PAR × temperature factor × min(water, aeration) × age factor (Monteith 1977, Phil. Trans. R. Soc. B
 * 281:277-294). RUE is above-ground; what goes below ground in a mature stand comes on top, what a young stand invests beyond that is
 * taken from the shoots. Immutable and thread-safe.
 */
public final class BiomassGrowth {

    private final double wholePlantEfficiency;
    private final double parFraction;
    private final double minC;
    private final double lowC;
    private final double highC;
    private final double maxC;
    private final double shareYear1;
    private final double shareYear2;
    private final double shareMature;

    /**
     * Creates the process.
     *
     * @param crop the grass
     * @param co2Ppm CO₂ of the air [ppm]
     */
    public BiomassGrowth(CropParameters crop, double co2Ppm) {
        parFraction = crop.get(CropParameter.PAR_FRACTION);
        minC = crop.get(CropParameter.GROWTH_MIN);
        lowC = crop.get(CropParameter.GROWTH_OPTIMUM_LOW);
        highC = crop.get(CropParameter.GROWTH_OPTIMUM_HIGH);
        maxC = crop.get(CropParameter.GROWTH_MAX);
        shareYear1 = crop.get(CropParameter.RHIZOME_SHARE_YEAR_1);
        shareYear2 = crop.get(CropParameter.RHIZOME_SHARE_YEAR_2);
        shareMature = crop.get(CropParameter.RHIZOME_SHARE_MATURE);
        double hundreds = (co2Ppm - crop.get(CropParameter.CO2_REFERENCE)) / 100.0;
        double co2Factor = Math.max(0.0, 1.0 + crop.get(CropParameter.CO2_RESPONSE) * hundreds);
        wholePlantEfficiency = crop.get(CropParameter.RADIATION_USE_EFFICIENCY) * co2Factor / (1.0 - shareMature);
    }

    /**
     * Daytime temperature, half-way between mean and maximum (common practice, no source).
     *
     * @param tminC daily minimum [°C]
     * @param tmaxC daily maximum [°C]
     * @return [°C]
     */
    public static double daytimeTemperature(double tminC, double tmaxC) {
        return 0.25 * tminC + 0.75 * tmaxC;
    }

    /**
     * Temperature factor: a trapezoid of daytime temperature.
     *
     * @param daytimeC daytime temperature [°C]
     * @return 0 to 1
     */
    public double temperatureFactor(double daytimeC) {
        double rising = (daytimeC - minC) / (lowC - minC);
        double falling = (maxC - daytimeC) / (maxC - highC);
        return Math.max(0.0, Math.min(1.0, Math.min(rising, falling)));
    }

    /**
     * PAR of a day.
     *
     * @param solar R_s [MJ m⁻² d⁻¹]
     * @return [MJ m⁻² d⁻¹]
     */
    public double par(double solar) {
        return parFraction * solar;
    }

    /**
     * Dry matter grown in a day, above and below ground.
     *
     * @param interceptedPar [MJ m⁻² d⁻¹]
     * @param temperatureFactor 0 to 1
     * @param limitation the smaller of water and aeration factor, 0 to 1
     * @param ageFactor 0 to 1
     * @return [g m⁻² d⁻¹]
     */
    public double total(double interceptedPar, double temperatureFactor, double limitation, double ageFactor) {
        return wholePlantEfficiency * interceptedPar * temperatureFactor * limitation * ageFactor;
    }

    /**
     * Share of growth that goes below ground.
     *
     * @param age growth years, planting year = 1
     * @return 0 to 1
     */
    public double rhizomeShare(int age) {
        return age <= 1 ? shareYear1 : age == 2 ? shareYear2 : shareMature;
    }
}
