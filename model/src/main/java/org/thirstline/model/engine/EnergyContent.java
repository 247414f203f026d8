package org.thirstline.model.engine;

import org.thirstline.model.crop.CropParameter;
import org.thirstline.model.crop.CropParameters;

/** Energy in a harvest as it leaves the field. Stateless and thread-safe. */
final class EnergyContent {

    /** Heat that evaporates a kilogram of water at 25 °C [MJ/kg] (ISO 18125 reference temperature). */
    private static final double VAPORISATION_MJ_KG = 2.443;

    private EnergyContent() {}

    /**
     * Lower heating value of a moist harvest.
     *
     * @param crop the grass
     * @param dryMgHa dry matter [Mg/ha]
     * @param freshMgHa fresh mass [Mg/ha]
     * @return [GJ/ha]
     */
    static double gjHa(CropParameters crop, double dryMgHa, double freshMgHa) {
        return dryMgHa * crop.get(CropParameter.HEATING_VALUE) - (freshMgHa - dryMgHa) * VAPORISATION_MJ_KG;
    }
}
