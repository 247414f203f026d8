package org.thirstline.io.weather;

import java.util.Arrays;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.DoubleStream;

/** Values of one variable by day, growing at either end; NaN where nothing was set. Confined to one read. */
final class DayColumn {

    private long first;
    private double[] values = new double[0];

    void set(long epochDay, double value) {
        if (values.length == 0) {
            first = epochDay;
            values = filled(512);
        }
        if (epochDay < first) {
            growBackward(epochDay);
        } else if (epochDay - first >= values.length) {
            int length = values.length;
            values = Arrays.copyOf(values, (int) Math.max(2L * length, epochDay - first + 1));
            Arrays.fill(values, length, values.length, Double.NaN);
        }
        values[(int) (epochDay - first)] = value;
    }

    private void growBackward(long epochDay) {
        int extra = (int) Math.max(values.length, first - epochDay);
        double[] grown = filled(values.length + extra);
        System.arraycopy(values, 0, grown, extra, values.length);
        values = grown;
        first -= extra;
    }

    double get(long epochDay) {
        long at = epochDay - first;
        return at >= 0 && at < values.length ? values[(int) at] : Double.NaN;
    }

    void replaceAll(DoubleUnaryOperator change) {
        Arrays.setAll(values, i -> Double.isNaN(values[i]) ? Double.NaN : change.applyAsDouble(values[i]));
    }

    /** The values that are there. */
    DoubleStream stream() {
        return Arrays.stream(values).filter(value -> !Double.isNaN(value));
    }

    private static double[] filled(int length) {
        double[] array = new double[length];
        Arrays.fill(array, Double.NaN);
        return array;
    }
}
