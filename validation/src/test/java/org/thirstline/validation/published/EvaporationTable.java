package org.thirstline.validation.published;

import org.thirstline.model.evapotranspiration.CropCoefficient;
import org.thirstline.model.soil.RootUptake;
import org.thirstline.model.soil.SoilLayer;
import org.thirstline.model.soil.SurfaceEvaporation;

/**
 * The ten days of FAO-56 Examples 35 and 38, by the engine's equations and the bookkeeping of the examples: water comes in the morning,
 * before evaporation.
 */
final class EvaporationTable {

    private static final double FIELD_CAPACITY = 0.23;
    private static final double WILTING_POINT = 0.10;
    private static final double EVAPORATING_DEPTH_M = 0.1;

    /** The example's text says about 8 mm; its table follows from 9 mm. */
    private static final double READILY_EVAPORABLE_MM = 9.0;

    private static final double DEPLETION_FRACTION = 0.6;
    private static final double HEIGHT_M = 0.3;

    private static final double[] ET0_MM = {4.5, 5.0, 3.9, 4.2, 4.8, 2.7, 5.8, 5.1, 4.7, 5.2};
    private static final int DAYS = ET0_MM.length;

    private EvaporationTable() {}

    /**
     * One day.
     *
     * @param depletionStart D_e after the morning's water [mm]
     * @param percolation out of the evaporating layer [mm]
     */
    record Day(
            double exposedWetted,
            double basal,
            double depletionStart,
            double reduction,
            double evaporationCoefficient,
            double et0,
            double percolation) {

        double evaporation() {
            return evaporationCoefficient * et0;
        }

        double depletionEnd() {
            return depletionStart + evaporation() / exposedWetted;
        }

        double cropCoefficient() {
            return basal + evaporationCoefficient;
        }

        double cropEt() {
            return cropCoefficient() * et0;
        }
    }

    /** One day of the root zone. */
    record RootDay(
            double readilyAvailable,
            double depletionStart,
            double stress,
            double percolation,
            double depletionEnd,
            Day surface) {}

    /** Calculates Example 35; with irrigation on day 10 too, the surface of Example 38. */
    static Day[] surface(boolean irrigatedOnDayTen) {
        double total = SurfaceEvaporation.totalEvaporable(FIELD_CAPACITY, WILTING_POINT, EVAPORATING_DEPTH_M);
        double climate = CropCoefficient.climateTerm(1.6, 35.0);
        double depletion = total;
        Day[] days = new Day[DAYS];
        for (int i = 0; i < DAYS; i++) {
            boolean lastIrrigation = i == DAYS - 1 && irrigatedOnDayTen;
            double wetted = i < 5 || lastIrrigation ? 0.8 : 1.0;
            double water = rain(i) + irrigation(i, irrigatedOnDayTen) / 0.8;
            double percolation = Math.max(0.0, water - depletion);
            depletion = Math.max(0.0, depletion - water);
            double basal = linear(0.30, 0.40, i);
            double exposedWetted = Math.min(linear(0.92, 0.86, i), wetted);
            double maximum = SurfaceEvaporation.maximumCoefficient(basal, climate, HEIGHT_M);
            double reduction = SurfaceEvaporation.reduction(depletion, READILY_EVAPORABLE_MM, total);
            double ke = SurfaceEvaporation.coefficient(reduction, maximum, basal, exposedWetted);
            days[i] = new Day(exposedWetted, basal, depletion, reduction, ke, ET0_MM[i], percolation);
            depletion = days[i].depletionEnd();
        }
        return days;
    }

    /** Calculates Example 38. */
    static RootDay[] rootZone() {
        Day[] surface = surface(true);
        SoilLayer soil = new SoilLayer(0.30, WILTING_POINT, FIELD_CAPACITY, 0.45, 0.5);
        RootDay[] days = new RootDay[DAYS];
        double depletion = DEPLETION_FRACTION * soil.availableWaterMm();
        for (int i = 0; i < DAYS; i++) {
            double available = soil.withThickness(linear(0.30, 0.35, i)).availableWaterMm();
            double water = rain(i) + irrigation(i, true);
            double percolation = Math.max(0.0, water - depletion);
            double start = Math.max(0.0, depletion - water);
            double stress = RootUptake.waterStressCoefficient(start, available, DEPLETION_FRACTION);
            depletion = start + (stress * surface[i].basal() + surface[i].evaporationCoefficient()) * ET0_MM[i];
            days[i] = new RootDay(DEPLETION_FRACTION * available, start, stress, percolation, depletion, surface[i]);
        }
        return days;
    }

    private static double rain(int day) {
        return day == 5 ? 6.0 : 0.0;
    }

    private static double irrigation(int day, boolean irrigatedOnDayTen) {
        if (day == 0) {
            return 40.0;
        }
        return day == DAYS - 1 && irrigatedOnDayTen ? 27.0 : 0.0;
    }

    private static double linear(double first, double last, int day) {
        return first + (last - first) * day / (DAYS - 1);
    }
}
