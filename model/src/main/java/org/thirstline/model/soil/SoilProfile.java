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

    /**
     * Returns this profile with more or less available water: field capacity and saturation of every layer move together, so that the
     * pores that drain stay as they are.
     *
     * @param factor what the available water of every layer is multiplied by
     * @throws InputException if a layer cannot hold so much
     */
    public SoilProfile withAvailableWaterTimes(double factor) {
        Check.range("available water factor", factor, "1", 0.05, 10.0);
        List<SoilLayer> changed = layers.stream()
                .map(layer -> {
                    double gain = (factor - 1.0) * (layer.fieldCapacity() - layer.wiltingPoint());
                    return new SoilLayer(
                            layer.thicknessM(),
                            layer.wiltingPoint(),
                            layer.fieldCapacity() + gain,
                            layer.saturation() + gain,
                            layer.drainageRate());
                })
                .toList();
        return with(changed);
    }

    /**
     * Returns this profile deeper or shallower: every layer below the evaporating one is stretched alike.
     *
     * @param factor what the depth is multiplied by
     * @throws InputException if nothing would be left below the evaporating layer, or the profile would be too deep
     */
    public SoilProfile withDepthTimes(double factor) {
        double top = layers.get(0).thicknessM();
        double stretch = (factor * depthM() - top) / (depthM() - top);
        List<SoilLayer> changed = new ArrayList<>();
        for (SoilLayer layer : layers) {
            changed.add(changed.isEmpty() ? layer : layer.withThickness(stretch * layer.thicknessM()));
        }
        return with(changed);
    }

    /** Evaporation from a top that holds less cannot take more than it holds. */
    private SoilProfile with(List<SoilLayer> changed) {
        SoilLayer top = changed.get(0);
        double evaporable = 1000.0 * (top.fieldCapacity() - 0.5 * top.wiltingPoint()) * top.thicknessM();
        return new SoilProfile(
                changed, Math.min(readilyEvaporableMm, evaporable), curveNumber, maxDrainageMmPerDay, waterTableM);
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
