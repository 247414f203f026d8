package org.thirstline.validation.observed;

import java.time.LocalDate;
import java.time.MonthDay;
import java.util.List;
import java.util.Map;
import org.thirstline.io.crop.CropFiles;
import org.thirstline.io.crop.ParameterNote;
import org.thirstline.model.crop.CropParameter;
import org.thirstline.model.crop.CropParameters;
import org.thirstline.model.crop.HarvestRule;
import org.thirstline.model.crop.Stand;
import org.thirstline.model.engine.FieldConditions;
import org.thirstline.model.engine.GrowingSeason;
import org.thirstline.model.soil.Irrigation;
import org.thirstline.model.soil.SoilLayer;
import org.thirstline.model.soil.SoilProfile;

/** Stands as the crop files have them, on stated soils. */
final class Fields {

    static final String MISCANTHUS = "giant miscanthus";
    static final String SWITCHGRASS = "switchgrass";

    private static final GrowingSeason APRIL_TO_OCTOBER = new GrowingSeason(MonthDay.of(4, 1), MonthDay.of(10, 31));

    private static final ThreadLocal<Map<CropParameter, Double>> CHANGES = ThreadLocal.withInitial(Map::of);

    private Fields() {}

    /** What is known about a parameter, with its value. */
    record Published(double value, double low, double high) {}

    /** Returns a parameter's value with the ends of its published range. */
    static Published published(String crop, CropParameter parameter) {
        ParameterNote note = CropFiles.bundled(crop).note(parameter);
        return new Published(usual(crop, parameter), note.low(), note.high());
    }

    /** Returns a parameter's value in the crop file. */
    static double usual(String crop, CropParameter parameter) {
        return CropFiles.bundled(crop).parameters().get(parameter);
    }

    /** Runs something with other values in the crop file of giant miscanthus. */
    static void withMiscanthus(Map<CropParameter, Double> changes, Runnable study) {
        CHANGES.set(changes);
        try {
            study.run();
        } finally {
            CHANGES.remove();
        }
    }

    /** Returns a field with other values of its crop. */
    static FieldConditions with(FieldConditions field, List<CropParameter> which, double[] point) {
        CropParameters crop = field.crop();
        for (int i = 0; i < point.length; i++) {
            crop = crop.with(which.get(i), point[i]);
        }
        return field.withCrop(crop);
    }

    /** Silt loam as in FAO-56 Table 19, curve number of meadow on hydrologic group B. */
    static SoilProfile soil(double depthM, double availableMmPerM) {
        double wilting = 0.15;
        double capacity = wilting + availableMmPerM / 1000.0;
        SoilLayer layer = new SoilLayer(depthM, wilting, capacity, capacity + 0.15, 0.7);
        return new SoilProfile(List.of(layer), 9.0, 58.0, Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY);
    }

    static FieldConditions of(String crop, int plantedIn, SoilProfile soil, MonthDay cut, double pickUpShare) {
        CropParameters parameters = CropFiles.bundled(crop).parameters();
        if (crop.equals(MISCANTHUS)) {
            for (Map.Entry<CropParameter, Double> change : CHANGES.get().entrySet()) {
                parameters = parameters.with(change.getKey(), change.getValue());
            }
        }
        double plants = crop.equals(MISCANTHUS) ? 1.0 / (0.762 * 0.762) : 200.0;
        return new FieldConditions(
                parameters,
                new Stand(LocalDate.of(plantedIn, 5, 15), plants),
                soil,
                new HarvestRule.OnDate(cut),
                parameters.get(CropParameter.STUBBLE_HEIGHT),
                pickUpShare,
                new Irrigation.None(),
                APRIL_TO_OCTOBER,
                parameters.get(CropParameter.CO2_REFERENCE));
    }

    static FieldConditions irrigated(FieldConditions field) {
        return field.withIrrigation(new Irrigation.OnDepletion(0.3, 20.0));
    }
}
