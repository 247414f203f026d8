package org.thirstline.model.engine;

import org.thirstline.model.soil.LayeredStorage;
import org.thirstline.model.soil.SoilProfile;
import org.thirstline.model.units.Units;

/** Keeps what can be measured in the field, on a few days of a run. Written by one run, read-only afterwards. */
final class WatchedDays implements DayObserver {

    final double[] leafAreaIndex;
    final double[] interceptedFraction;
    final double[] standingMgHa;
    private final double[][] layerWaterMm;
    private final double[] bottomM;
    private final int[] days;
    private final double gramsPerLeafArea;
    private int next;

    WatchedDays(int[] days, SoilProfile soil, double gramsPerLeafArea) {
        this.days = days;
        this.gramsPerLeafArea = gramsPerLeafArea;
        bottomM = new LayeredStorage(soil).bottomsM();
        leafAreaIndex = new double[days.length];
        interceptedFraction = new double[days.length];
        standingMgHa = new double[days.length];
        layerWaterMm = new double[days.length][bottomM.length];
    }

    @Override
    public void after(int day, StandState state) {
        while (next < days.length && days[next] == day) {
            leafAreaIndex[next] = state.leafAreaIndex;
            interceptedFraction[next] = state.interceptedFraction;
            standingMgHa[next] = Units.mgHa(state.leafAreaIndex * gramsPerLeafArea + state.deadLeaf + state.stem);
            System.arraycopy(state.soilWater, 0, layerWaterMm[next], 0, bottomM.length);
            next++;
        }
    }

    double soilWaterMm(int watchedDay, double depthM) {
        double sum = 0.0;
        double top = 0.0;
        for (int layer = 0; layer < bottomM.length; layer++) {
            double share =
                    Double.isNaN(depthM) ? 1.0 : Math.max(0.0, Math.min(1.0, (depthM - top) / (bottomM[layer] - top)));
            sum += share * layerWaterMm[watchedDay][layer];
            top = bottomM[layer];
        }
        return sum;
    }
}
