package org.thirstline.validation.observed;

import java.util.List;
import org.thirstline.model.crop.RhizomeZone;
import org.thirstline.model.evapotranspiration.CropCoefficient;
import org.thirstline.model.soil.CurveNumberRunoff;
import org.thirstline.model.soil.LayeredStorage;
import org.thirstline.model.soil.RootUptake;
import org.thirstline.model.soil.Snowpack;
import org.thirstline.model.soil.SoilLayer;
import org.thirstline.model.soil.SoilProfile;
import org.thirstline.model.soil.SurfaceEvaporation;
import org.thirstline.model.weather.DailyDrivers;

/**
 * Soil water under short grass by the engine's soil processes. What a grass cover needs is stated here and the same everywhere: the 0.12 m
 * reference grass of FAO-56 with leaf area 24 h = 2.88 (box 5) and K_cb full 1.0 + 0.1 h (eq. 101), p = 0.60 (Table 22, pasture), roots to
 * 1.0 m with 83 % in the top 0.3 m (temperate grassland, Jackson et al. 1996, Oecologia 108:389, from memory), compensation as in our
 * crop files; it transpires while the soil at 0.1 m is above 5 °C (common practice, no source), and dead or alive it covers 0.9 of the ground
 * (1 - exp(-0.8 x 2.88)).
 */
final class GrassCover {

    private static final double HEIGHT_M = 0.12;
    private static final double LEAF_AREA = 24.0 * HEIGHT_M;
    private static final double ROOTS_M = 1.0;
    private static final double ROOT_SHARE_TOP = 0.83;
    private static final double DEPLETION_FRACTION = 0.60;
    private static final double COMPENSATION = 0.6;
    private static final double GROWING_ABOVE_C = 5.0;
    private static final double COVER = 0.9;

    /** Layer edges that put measuring depths of 5, 10, 20, 50 and 100 cm inside layers. */
    private static final double[] THICKNESS_M = {0.10, 0.20, 0.10, 0.20, 0.25, 0.30, 0.30};

    final double[][] waterMm;
    final double[] drainageMm;
    final double[] evapotranspirationMm;
    final double[] depletionMm;
    final double[] soilTemperatureC;

    private GrassCover(int layers, int days) {
        waterMm = new double[layers][days];
        drainageMm = new double[days];
        evapotranspirationMm = new double[days];
        depletionMm = new double[days];
        soilTemperatureC = new double[days];
    }

    /** Splits one kind of soil into the layers of the comparison. */
    static SoilProfile profile(
            double wilting, double capacity, double saturation, double drainage, double curveNumber) {
        List<SoilLayer> layers = java.util.Arrays.stream(THICKNESS_M)
                .mapToObj(thickness -> new SoilLayer(thickness, wilting, capacity, saturation, drainage))
                .toList();
        double evaporable = 0.45 * 100.0 * (capacity - 0.5 * wilting);
        return new SoilProfile(layers, evaporable, curveNumber, Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY);
    }

    static GrassCover run(DailyDrivers w, SoilProfile soil) {
        LayeredStorage storage = new LayeredStorage(soil);
        RootUptake roots = new RootUptake(storage, RootUptake.decayForShare(ROOT_SHARE_TOP, ROOTS_M), COMPENSATION);
        roots.setDepth(ROOTS_M);
        CurveNumberRunoff runoff = new CurveNumberRunoff(soil.curveNumber());
        SurfaceEvaporation surface = new SurfaceEvaporation(soil);
        double[] water = new double[storage.layers()];
        storage.fillToFieldCapacity(water);
        GrassCover out = new GrassCover(storage.layers(), w.days());
        double snow = 0.0;
        double temperature = w.tmean(0);
        for (int day = 0; day < w.days(); day++) {
            double snowfall = Snowpack.snowfall(w.rain(day), w.tmean(day));
            snow += snowfall;
            double melt = Snowpack.melt(snow, w.tmean(day));
            snow -= melt;
            temperature = RhizomeZone.temperature(temperature, w.tmean(day), snow);
            double arriving = w.rain(day) - snowfall + melt;
            double storm = runoff.daily(arriving, storage.availableShare(water, 0.3));
            out.drainageMm[day] = storage.infiltrateAndDrain(arriving - storm, water);
            storage.perch(water);
            double climate = w.cropCoefficientClimate(day);
            double basal = temperature > GROWING_ABOVE_C ? basal(climate) : 0.0;
            double maximum = SurfaceEvaporation.maximumCoefficient(basal, climate, HEIGHT_M);
            double fromSoil = surface.daily(water[0], maximum, basal, 1.0 - COVER, 0.0, w.et0(day));
            water[0] -= fromSoil;
            double demand = basal * w.et0(day);
            double p = RootUptake.depletionFraction(DEPLETION_FRACTION, demand + fromSoil);
            out.evapotranspirationMm[day] = fromSoil + roots.takeUp(demand, p, water);
            out.note(day, storage, water, temperature);
        }
        return out;
    }

    private void note(int day, LayeredStorage storage, double[] water, double temperature) {
        for (int layer = 0; layer < waterMm.length; layer++) {
            waterMm[layer][day] = water[layer];
        }
        depletionMm[day] = storage.depletionMm(water, ROOTS_M);
        soilTemperatureC[day] = temperature;
    }

    private static double basal(double climate) {
        double full = CropCoefficient.inClimate(CropCoefficient.fullCoverByHeight(HEIGHT_M), climate, HEIGHT_M);
        return CropCoefficient.fromLeafArea(0.0, full, LEAF_AREA);
    }

    /** Water content at the depth of a sensor [m³ m⁻³]: of its layer, or the mean of the two it lies between. */
    double content(int sensor, int day) {
        return switch (sensor) {
            case 5 -> content(0, 0, day);
            case 10 -> content(0, 1, day);
            case 20 -> content(1, 1, day);
            case 50 -> content(3, 3, day);
            case 100 -> content(5, 5, day);
            default -> throw new IllegalArgumentException("no sensor at " + sensor + " cm");
        };
    }

    private double content(int upper, int lower, int day) {
        return 0.5 * (waterMm[upper][day] / THICKNESS_M[upper] + waterMm[lower][day] / THICKNESS_M[lower]) / 1000.0;
    }
}
