package org.thirstline.model.soil;

import java.util.ArrayList;
import java.util.List;
import org.thirstline.model.error.Check;
import org.thirstline.model.error.InputException;
import org.thirstline.model.error.ModelError;

/**
 * Layers from the surface down with what bounds them. Layers are split so that the first one is the evaporating layer of FAO-56
 * (Z_e = 0.10 m) and none is thicker than 0.30 m. Immutable and thread-safe.
 */
public final class SoilProfile {

    /** Depth of the evaporating layer Z_e [m], FAO-56 p. 144 (0.10 to 0.15 m). */
    public static final double EVAPORATING_DEPTH_M = 0.10;

    private static final double MAX_LAYER_M = 0.30;
    private static final double SLIVER_M = 0.005;

    private final List<SoilLayer> layers;
    private final double readilyEvaporableMm;
    private final double curveNumber;
    private final double maxDrainageMmPerDay;
    private final double waterTableM;

    /**
     * Creates a profile.
     *
     * @param horizons layers as described, from the surface down; at least one, together at least 0.15 m
     * @param readilyEvaporableMm readily evaporable water REW [mm] (FAO-56 Table 19)
     * @param curveNumber runoff curve number at average wetness CN II (NEH 630 ch. 9), 0 &lt; CN ≤ 100
     * @param maxDrainageMmPerDay what a restricting layer below the profile lets through [mm/d]; infinite for free drainage
     * @param waterTableM depth of a standing water table [m]; infinite for none
     * @throws InputException if a value is outside its limits
     */
    public SoilProfile(
            List<SoilLayer> horizons,
            double readilyEvaporableMm,
            double curveNumber,
            double maxDrainageMmPerDay,
            double waterTableM) {
        if (horizons.isEmpty()) {
            throw new InputException(ModelError.VALUE_MISSING, "soil layer");
        }
        this.layers = List.copyOf(split(horizons));
        Check.range("soil depth", depthM(), "m", 0.15, 10.0);
        SoilLayer top = layers.get(0);
        double totalEvaporable = 1000.0 * (top.fieldCapacity() - 0.5 * top.wiltingPoint()) * top.thicknessM();
        this.readilyEvaporableMm =
                Check.range("readily evaporable water", readilyEvaporableMm, "mm", 0.0, totalEvaporable);
        this.curveNumber = Check.range("curve number", curveNumber, "-", 1.0, 100.0);
        this.maxDrainageMmPerDay =
                Check.range("drainage limit", maxDrainageMmPerDay, "mm/d", 0.0, Double.POSITIVE_INFINITY);
        this.waterTableM = Check.range("water table depth", waterTableM, "m", 0.2, Double.POSITIVE_INFINITY);
    }

    private static List<SoilLayer> split(List<SoilLayer> horizons) {
        List<SoilLayer> parts = new ArrayList<>();
        for (SoilLayer horizon : horizons) {
            double left = horizon.thicknessM();
            if (parts.isEmpty() && left > EVAPORATING_DEPTH_M + SLIVER_M) {
                parts.add(horizon.withThickness(EVAPORATING_DEPTH_M));
                left -= EVAPORATING_DEPTH_M;
            }
            int pieces = Math.max(1, (int) Math.ceil(left / MAX_LAYER_M - 1e-9));
            for (int piece = 0; piece < pieces; piece++) {
                parts.add(horizon.withThickness(left / pieces));
            }
        }
        return parts;
    }

    /** Returns the layers of the simulation, from the surface down. */
    public List<SoilLayer> layers() {
        return layers;
    }

    /** Returns the depth of the profile [m]. */
    public double depthM() {
        return layers.stream().mapToDouble(SoilLayer::thicknessM).sum();
    }

    /** Returns the available water capacity of the profile [mm]. */
    public double availableWaterMm() {
        return layers.stream().mapToDouble(SoilLayer::availableWaterMm).sum();
    }

    /** Returns the readily evaporable water REW [mm]. */
    public double readilyEvaporableMm() {
        return readilyEvaporableMm;
    }

    /** Returns the curve number at average wetness. */
    public double curveNumber() {
        return curveNumber;
    }

    /** Returns what may drain out of the profile in a day [mm/d]. */
    public double maxDrainageMmPerDay() {
        return maxDrainageMmPerDay;
    }

    /** Returns the depth of a standing water table [m], infinite if there is none. */
    public double waterTableM() {
        return waterTableM;
    }
}
