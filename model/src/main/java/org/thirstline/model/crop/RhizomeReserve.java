package org.thirstline.model.crop;

import org.thirstline.model.units.Bound;

/**
 * The reserve that carries a stand over the winter: respires, feeds spring leaf, is refilled by growth and by dying leaves. A year that
 * leaves it low costs shoots in the next. Immutable and thread-safe.
 */
public final class RhizomeReserve {

    /** Temperature at which the respiration rate is given [°C]. */
    private static final double REFERENCE_C = 10.0;

    private final double capacity;
    private final double fullVigour;
    private final double respiration;
    private final double mobilisation;
    private final double plantedPerPlant;

    /**
     * Creates the process.
     *
     * @param crop the grass
     */
    public RhizomeReserve(CropParameters crop) {
        capacity = crop.get(CropParameter.RESERVE_CAPACITY);
        fullVigour = crop.get(CropParameter.RESERVE_FOR_FULL_VIGOUR);
        respiration = crop.get(CropParameter.RESERVE_RESPIRATION);
        mobilisation = crop.get(CropParameter.RESERVE_MOBILISATION);
        plantedPerPlant = crop.get(CropParameter.PLANTED_RESERVE);
    }

    /**
     * Reserve brought in by planting.
     *
     * @param plantsM2 established plants [m⁻²]
     * @return [g m⁻²]
     */
    public double planted(double plantsM2) {
        return Math.min(capacity, plantedPerPlant * plantsM2);
    }

    /** Returns what a full stand can store [g m⁻²]. */
    public double capacity() {
        return capacity;
    }

    /**
     * Share of buds that the reserve can feed.
     *
     * @param reserve [g m⁻²]
     * @param age growth years; the first year lives on its planted rhizomes or seeds
     * @param groundCover share of the ground under clumps; a stand that covers little needs little
     * @return 0 to 1
     */
    public double vigour(double reserve, int age, double groundCover) {
        if (age <= 1) {
            return 1.0;
        }
        return Math.min(1.0, reserve / (fullVigour * capacity * groundCover));
    }

    /**
     * Maintenance respiration of a day.
     *
     * @param reserve [g m⁻²]
     * @param temperatureFactor {@link #factorOfTemperature} of the rhizome zone
     * @return [g m⁻² d⁻¹]
     */
    public double respired(double reserve, double temperatureFactor) {
        return Bound.atMost(reserve * respiration * temperatureFactor, reserve);
    }

    /**
     * Doubling of biological rates every 10 °C from a reference of 10 °C (common practice, no source).
     *
     * @param temperatureC [°C]
     * @return [-]
     */
    public static double factorOfTemperature(double temperatureC) {
        return Math.exp(Math.log(2.0) / 10.0 * (temperatureC - REFERENCE_C));
    }

    /**
     * What leaf growth can draw in a day.
     *
     * @param reserve [g m⁻²]
     * @return [g m⁻² d⁻¹]
     */
    public double available(double reserve) {
        return mobilisation * reserve;
    }
}
