package org.thirstline.model.engine;

import org.thirstline.model.crop.CropParameters;
import org.thirstline.model.crop.HarvestRule;
import org.thirstline.model.crop.Stand;
import org.thirstline.model.error.Check;
import org.thirstline.model.soil.Irrigation;
import org.thirstline.model.soil.SoilProfile;

/**
 * Everything about a stand but its weather. Immutable and thread-safe.
 *
 * @param crop the grass
 * @param stand the planting
 * @param soil the soil under it
 * @param harvest when it is cut
 * @param stubbleM height of the cut [m]
 * @param pickUpShare share of the cut dry matter that is picked up [1]
 * @param irrigation water given by people
 * @param season window of seasonal sums
 * @param co2Ppm CO₂ of the air [ppm]; the crop's reference leaves growth as it is
 */
public record FieldConditions(
        CropParameters crop,
        Stand stand,
        SoilProfile soil,
        HarvestRule harvest,
        double stubbleM,
        double pickUpShare,
        Irrigation irrigation,
        GrowingSeason season,
        double co2Ppm) {

    /** Refuses cuts, pick-up shares and air that cannot be. */
    public FieldConditions {
        Check.range("stubble height", stubbleM, "m", 0.0, 1.5);
        Check.range("pick-up share", pickUpShare, "1", 0.0, 1.0);
        Check.range("CO2", co2Ppm, "ppm", 100.0, 2000.0);
    }

    /** Returns the same with another crop. */
    public FieldConditions withCrop(CropParameters other) {
        return new FieldConditions(other, stand, soil, harvest, stubbleM, pickUpShare, irrigation, season, co2Ppm);
    }

    /** Returns the same with another planting. */
    public FieldConditions withStand(Stand other) {
        return new FieldConditions(crop, other, soil, harvest, stubbleM, pickUpShare, irrigation, season, co2Ppm);
    }

    /** Returns the same with another soil. */
    public FieldConditions withSoil(SoilProfile other) {
        return new FieldConditions(crop, stand, other, harvest, stubbleM, pickUpShare, irrigation, season, co2Ppm);
    }

    /** Returns the same with another rule of harvest. */
    public FieldConditions withHarvest(HarvestRule other) {
        return new FieldConditions(crop, stand, soil, other, stubbleM, pickUpShare, irrigation, season, co2Ppm);
    }

    /** Returns the same with other irrigation. */
    public FieldConditions withIrrigation(Irrigation other) {
        return new FieldConditions(crop, stand, soil, harvest, stubbleM, pickUpShare, other, season, co2Ppm);
    }
}
