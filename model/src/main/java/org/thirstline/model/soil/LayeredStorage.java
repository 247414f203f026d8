package org.thirstline.model.soil;

import java.util.List;
import org.thirstline.model.units.Bound;

/**
 * Water in layers: what infiltrates fills the top, what is above field capacity drains to the next layer as from a linear reservoir, what
 * the bottom cannot pass perches upward, and what the profile cannot take runs off. Layers that reach below a standing water table are
 * kept full by it. A textbook cascade (common practice, no source). Immutable and thread-safe; the water itself is the caller's.
 */
public final class LayeredStorage {

    private final int layers;
    private final double[] thicknessM;
    private final double[] bottomM;
    private final double[] wiltingMm;
    private final double[] fieldCapacityMm;
    private final double[] saturationMm;
    private final double[] drainageRate;
    private final double[] perCapacity;
    private final double maxDrainageMm;
    private final int firstGroundwaterLayer;

    /**
     * Creates the storage of a profile.
     *
     * @param profile the soil
     */
    public LayeredStorage(SoilProfile profile) {
        List<SoilLayer> list = profile.layers();
        layers = list.size();
        thicknessM = new double[layers];
        bottomM = new double[layers];
        wiltingMm = new double[layers];
        fieldCapacityMm = new double[layers];
        saturationMm = new double[layers];
        drainageRate = new double[layers];
        perCapacity = new double[layers];
        double bottom = 0.0;
        int firstFull = layers;
        for (int i = 0; i < layers; i++) {
            SoilLayer layer = list.get(i);
            double depthMm = layer.thicknessM() * 1000.0;
            double middle = bottom + 0.5 * layer.thicknessM();
            bottom += layer.thicknessM();
            thicknessM[i] = layer.thicknessM();
            bottomM[i] = bottom;
            wiltingMm[i] = layer.wiltingPoint() * depthMm;
            fieldCapacityMm[i] = layer.fieldCapacity() * depthMm;
            saturationMm[i] = layer.saturation() * depthMm;
            drainageRate[i] = layer.drainageRate();
            perCapacity[i] = 1.0 / (fieldCapacityMm[i] - wiltingMm[i]);
            firstFull = middle > profile.waterTableM() ? Math.min(firstFull, i) : firstFull;
        }
        maxDrainageMm = profile.maxDrainageMmPerDay();
        firstGroundwaterLayer = firstFull;
    }

    /** Returns the number of layers. */
    public int layers() {
        return layers;
    }

    /** Returns the thickness of a layer [m]. */
    public double thicknessM(int layer) {
        return thicknessM[layer];
    }

    /** Returns the depth of a layer's lower edge [m]. */
    public double bottomM(int layer) {
        return bottomM[layer];
    }

    /** Returns a copy of the depths of the lower edges [m]. */
    public double[] bottomsM() {
        return bottomM.clone();
    }

    /** Returns the water of a layer at the wilting point [mm]. */
    public double wiltingMm(int layer) {
        return wiltingMm[layer];
    }

    /** Returns the water of a layer at field capacity [mm]. */
    public double fieldCapacityMm(int layer) {
        return fieldCapacityMm[layer];
    }

    /** Returns the water of a layer with all pores full [mm]. */
    public double saturationMm(int layer) {
        return saturationMm[layer];
    }

    /**
     * Fills every layer to field capacity.
     *
     * @param water water by layer [mm]. Modified.
     */
    public void fillToFieldCapacity(double[] water) {
        System.arraycopy(fieldCapacityMm, 0, water, 0, layers);
    }

    /**
     * Infiltrates a day's water and lets the profile drain.
     *
     * @param inflowMm water that enters the surface [mm/d]
     * @param water water by layer [mm]. Modified.
     * @return drainage below the profile [mm/d]
     */
    public double infiltrateAndDrain(double inflowMm, double[] water) {
        double flow = inflowMm;
        for (int i = 0; i < firstGroundwaterLayer; i++) {
            double held = water[i] + flow;
            if (held <= fieldCapacityMm[i]) {
                flow = 0.0;
            } else {
                double excess = Bound.notNegative(held - saturationMm[i]);
                double gravity = Bound.atMost(held, saturationMm[i]) - fieldCapacityMm[i];
                flow = excess + drainageRate[i] * gravity;
            }
            water[i] = held - flow;
        }
        for (int i = firstGroundwaterLayer; i < layers; i++) {
            double held = water[i] + flow;
            flow = Bound.notNegative(held - saturationMm[i]);
            water[i] = held - flow;
        }
        if (firstGroundwaterLayer == layers && flow > maxDrainageMm) {
            water[layers - 1] += flow - maxDrainageMm;
            return maxDrainageMm;
        }
        return flow;
    }

    /**
     * Pushes what a layer cannot hold into the one above it. Only a profile whose bottom lets little through ever has such layers.
     *
     * @param water water by layer [mm]. Modified.
     * @return what the profile cannot take, to run off [mm/d]
     */
    public double perch(double[] water) {
        if (maxDrainageMm == Double.POSITIVE_INFINITY) {
            return 0.0;
        }
        for (int i = layers - 1; i > 0; i--) {
            double over = Math.max(0.0, water[i] - saturationMm[i]);
            water[i] -= over;
            water[i - 1] += over;
        }
        double surplus = Math.max(0.0, water[0] - saturationMm[0]);
        water[0] -= surplus;
        return surplus;
    }

    /**
     * Fills the layers below a standing water table.
     *
     * @param water water by layer [mm]. Modified.
     * @return water taken from the water table [mm/d]
     */
    public double fillFromGroundwater(double[] water) {
        double taken = 0.0;
        for (int i = firstGroundwaterLayer; i < layers; i++) {
            double lack = Math.max(0.0, saturationMm[i] - water[i]);
            water[i] += lack;
            taken += lack;
        }
        return taken;
    }

    /**
     * Water in the profile.
     *
     * @param water water by layer [mm]. Not modified.
     * @return [mm]
     */
    public double total(double[] water) {
        double sum = 0.0;
        for (int i = 0; i < layers; i++) {
            sum += water[i];
        }
        return sum;
    }

    /**
     * Available water down to a depth as a share of its capacity.
     *
     * @param water water by layer [mm]. Not modified.
     * @param depthM depth [m]
     * @return 0 at the wilting point, 1 at field capacity, above 1 when wetter
     */
    public double availableShare(double[] water, double depthM) {
        double held = 0.0;
        double capacity = 0.0;
        for (int i = 0; i < layers; i++) {
            double share = shareWithin(i, depthM);
            held += share * (water[i] - wiltingMm[i]);
            capacity += share * (fieldCapacityMm[i] - wiltingMm[i]);
        }
        return held / capacity;
    }

    /**
     * Available water of one layer as a share of its capacity.
     *
     * @param waterMm its water [mm]
     * @param layer which
     * @return 0 at the wilting point, 1 at field capacity
     */
    public double availableShareOfLayer(double waterMm, int layer) {
        return (waterMm - wiltingMm[layer]) * perCapacity[layer];
    }

    /**
     * Water down to a depth as a share of field capacity.
     *
     * @param water water by layer [mm]. Not modified.
     * @param depthM depth [m]
     */
    public double shareOfFieldCapacity(double[] water, double depthM) {
        double held = 0.0;
        double capacity = 0.0;
        for (int i = 0; i < layers; i++) {
            double share = shareWithin(i, depthM);
            held += share * water[i];
            capacity += share * fieldCapacityMm[i];
        }
        return held / capacity;
    }

    /**
     * Depletion D_r of the root zone below field capacity.
     *
     * @param water water by layer [mm]. Not modified.
     * @param depthM rooting depth [m]
     * @return D_r [mm], not below 0
     */
    public double depletionMm(double[] water, double depthM) {
        double sum = 0.0;
        for (int i = 0; i < layers; i++) {
            sum += shareWithin(i, depthM) * Math.max(0.0, fieldCapacityMm[i] - water[i]);
        }
        return sum;
    }

    /** Share of a layer that lies above a depth. */
    double shareWithin(int layer, double depthM) {
        double top = bottomM[layer] - thicknessM[layer];
        return Bound.share((depthM - top) / thicknessM[layer]);
    }
}
