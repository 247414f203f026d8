package org.thirstline.model.result;

import java.time.LocalDate;

/**
 * Every daily value of one run: {@code values[variable][day]} and {@code soilWater[layer][day]}. Written by one run while it lasts, read-only
 * afterwards.
 */
public final class DailyResults {

    private final LocalDate start;
    private final int days;
    private final double[][] values;
    private final double[][] soilWaterMm;
    private final double[] layerBottomM;

    /**
     * Creates empty columns.
     *
     * @param start date of the first day
     * @param days number of days
     * @param layerBottomM depth of the lower edge of each soil layer [m]; copied
     */
    public DailyResults(LocalDate start, int days, double[] layerBottomM) {
        this.start = start;
        this.days = days;
        this.values = new double[DailyVariable.values().length][days];
        this.soilWaterMm = new double[layerBottomM.length][days];
        this.layerBottomM = layerBottomM.clone();
    }

    /**
     * Writes one value.
     *
     * @param variable which column
     * @param day index of the day
     * @param value the value
     */
    public void set(DailyVariable variable, int day, double value) {
        values[variable.ordinal()][day] = value;
    }

    /**
     * Writes the water of every layer.
     *
     * @param day index of the day
     * @param layerWaterMm water by layer [mm]. Not modified.
     */
    public void setSoilWater(int day, double[] layerWaterMm) {
        for (int layer = 0; layer < soilWaterMm.length; layer++) {
            soilWaterMm[layer][day] = layerWaterMm[layer];
        }
    }

    /** Returns the date of the first day. */
    public LocalDate start() {
        return start;
    }

    /** Returns the number of days. */
    public int days() {
        return days;
    }

    /**
     * Returns the date of a day.
     *
     * @param day index of the day
     */
    public LocalDate date(int day) {
        return start.plusDays(day);
    }

    /**
     * Returns one value.
     *
     * @param variable which column
     * @param day index of the day
     */
    public double at(DailyVariable variable, int day) {
        return values[variable.ordinal()][day];
    }

    /**
     * Returns a copy of one column.
     *
     * @param variable which column
     */
    public double[] column(DailyVariable variable) {
        return values[variable.ordinal()].clone();
    }

    /** Returns the number of soil layers. */
    public int layers() {
        return soilWaterMm.length;
    }

    /**
     * Returns the depth of the lower edge of a layer [m].
     *
     * @param layer index, 0 at the surface
     */
    public double layerBottomM(int layer) {
        return layerBottomM[layer];
    }

    /**
     * Returns the water in a layer [mm].
     *
     * @param layer index, 0 at the surface
     * @param day index of the day
     */
    public double soilWaterMm(int layer, int day) {
        return soilWaterMm[layer][day];
    }
}
