package org.thirstline.calibration.years;

import java.util.ArrayList;
import java.util.List;
import org.thirstline.model.soil.SoilLayer;
import org.thirstline.model.soil.SoilProfile;

/** One soil at other depths: cut off below, or its lowest layer continued, until it holds a given depth of available water. */
public final class SoilLadder {

    private static final double LEAST_LAYER_M = 0.006;

    private SoilLadder() {}

    /**
     * Returns a soil of another available water capacity.
     *
     * @param soil the soil to cut or continue; its layers keep what they hold per depth
     * @param availableWaterMm what the new soil shall hold [mm]
     * @throws org.thirstline.model.error.InputException if the new soil would be thinner than 0.15 m or thicker than 10 m
     */
    public static SoilProfile holding(SoilProfile soil, double availableWaterMm) {
        List<SoilLayer> layers = new ArrayList<>();
        double left = availableWaterMm;
        for (SoilLayer layer : soil.layers()) {
            double water = layer.availableWaterMm();
            if (left < water) {
                double thickness = layer.thicknessM() * left / water;
                if (thickness > LEAST_LAYER_M) {
                    layers.add(layer.withThickness(thickness));
                }
                left = 0.0;
                break;
            }
            layers.add(layer);
            left -= water;
        }
        SoilLayer lowest = soil.layers().get(soil.layers().size() - 1);
        double more = lowest.thicknessM() * left / lowest.availableWaterMm();
        if (more > LEAST_LAYER_M) {
            layers.add(lowest.withThickness(more));
        }
        return new SoilProfile(
                layers, soil.readilyEvaporableMm(), soil.curveNumber(), soil.maxDrainageMmPerDay(), soil.waterTableM());
    }
}
