package org.thirstline.io.study;

import org.thirstline.model.crop.HarvestRule;
import org.thirstline.model.soil.Irrigation;

/**
 * What people do to the stand, and the air around it. Immutable and thread-safe.
 *
 * @param harvest when it is cut
 * @param stubbleM height of the cut [m]
 * @param pickUpShare share of the cut dry matter that is picked up [1]
 * @param irrigation water given
 * @param co2Ppm CO₂ of the air [ppm]
 */
public record Management(
        HarvestRule harvest, double stubbleM, double pickUpShare, Irrigation irrigation, double co2Ppm) {}
