package org.thirstline.calibration.sensitivity;

import java.util.ArrayList;
import java.util.List;

/** Functions whose indices are known in closed form. */
final class TestFunctions {

    /** Ishigami and Homma (1990), a = 7, b = 0.1. */
    static final double ISHIGAMI_A = 7.0;

    static final double ISHIGAMI_B = 0.1;

    /** Coefficients of the g function as Saltelli and others use them: two inputs matter, two little, four hardly. */
    static final double[] G_COEFFICIENTS = {0.0, 1.0, 4.5, 9.0, 99.0, 99.0, 99.0, 99.0};

    private TestFunctions() {}

    static double ishigami(double[] x) {
        double sine = Math.sin(x[1]);
        return Math.sin(x[0]) + ISHIGAMI_A * sine * sine + ISHIGAMI_B * Math.pow(x[2], 4) * Math.sin(x[0]);
    }

    static List<SensitivityInput> ishigamiInputs() {
        return inputs(3, -Math.PI, Math.PI);
    }

    /** First indices, then total indices, by integration. */
    static double[][] ishigamiIndices() {
        double b = ISHIGAMI_B;
        double pi4 = Math.pow(Math.PI, 4);
        double alone1 = 0.5 * Math.pow(1.0 + b * pi4 / 5.0, 2);
        double alone2 = ISHIGAMI_A * ISHIGAMI_A / 8.0;
        double together13 = b * b * pi4 * pi4 * (1.0 / 18.0 - 1.0 / 50.0);
        double variance = alone1 + alone2 + together13;
        return new double[][] {
            {alone1 / variance, alone2 / variance, 0.0},
            {(alone1 + together13) / variance, alone2 / variance, together13 / variance}
        };
    }

    static double g(double[] x) {
        double product = 1.0;
        for (int i = 0; i < x.length; i++) {
            product *= (Math.abs(4.0 * x[i] - 2.0) + G_COEFFICIENTS[i]) / (1.0 + G_COEFFICIENTS[i]);
        }
        return product;
    }

    /** First indices, then total indices: V_i = 1 / (3 (1 + a_i)²), 1 + V = product of (1 + V_i). */
    static double[][] gIndices() {
        int dimension = G_COEFFICIENTS.length;
        double[] parts = new double[dimension];
        double product = 1.0;
        for (int i = 0; i < dimension; i++) {
            parts[i] = 1.0 / (3.0 * Math.pow(1.0 + G_COEFFICIENTS[i], 2));
            product *= 1.0 + parts[i];
        }
        double[][] indices = new double[2][dimension];
        for (int i = 0; i < dimension; i++) {
            indices[0][i] = parts[i] / (product - 1.0);
            indices[1][i] = parts[i] * product / (1.0 + parts[i]) / (product - 1.0);
        }
        return indices;
    }

    static List<SensitivityInput> inputs(int dimension, double lower, double upper) {
        List<SensitivityInput> inputs = new ArrayList<>();
        for (int i = 0; i < dimension; i++) {
            inputs.add(SensitivityInput.between("x" + (i + 1), lower, upper));
        }
        return inputs;
    }
}
