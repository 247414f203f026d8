package org.thirstline.validation.published;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.thirstline.calibration.response.Interval;
import org.thirstline.calibration.sensitivity.OutputModel;
import org.thirstline.calibration.sensitivity.ProgressListener;
import org.thirstline.calibration.sensitivity.SensitivityInput;
import org.thirstline.calibration.sensitivity.SobolAnalysis;
import org.thirstline.calibration.sensitivity.SobolIndex;
import org.thirstline.validation.catalogue.CheckRow;
import org.thirstline.validation.catalogue.Family;
import org.thirstline.validation.catalogue.Numbers;
import org.thirstline.validation.catalogue.Verdict;

/** Sobol indices estimated from samples beside those known in closed form. */
public final class SobolFamily {

    /** Name of the family. */
    public static final String SLUG = "sobol-closed-form";

    private static final SobolAnalysis.Options OPTIONS = new SobolAnalysis.Options(4096, 300, 1L, 2);
    private static final String REASON = "one and a half times the 95 % bootstrap interval, for all indices together";
    private static final double WIDENED = 1.5;

    private static final double ISHIGAMI_A = 7.0;
    private static final double ISHIGAMI_B = 0.1;

    /** Two inputs matter, two little, four hardly. */
    private static final double[] G = {0.0, 1.0, 4.5, 9.0, 99.0, 99.0, 99.0, 99.0};

    private SobolFamily() {}

    /** Calculates the family. */
    public static Family calculate() {
        List<CheckRow> rows = new ArrayList<>();
        add(
                rows,
                "ishigami",
                SobolFamily::ishigami,
                3,
                -Math.PI,
                Math.PI,
                ishigamiIndices(),
                "Ishigami and Homma 1990, a 7, b 0.1, integrated by hand");
        add(
                rows,
                "g",
                SobolFamily::g,
                G.length,
                0.0,
                1.0,
                gIndices(),
                "g function of Saltelli and Sobol 1995, integrated by hand");
        return new Family(
                SLUG,
                "Sobol indices of functions with a closed form: Ishigami and g function",
                "4096 samples, one seed; the tests do the same with five. Estimates from samples have an error of their own, so these numbers"
                        + " are not counted.",
                "validation/src/test/java/org/thirstline/validation/published/SobolFamily.java",
                true,
                false,
                rows);
    }

    private static void add(
            List<CheckRow> rows,
            String name,
            OutputModel model,
            int dimension,
            double lower,
            double upper,
            double[][] expected,
            String source) {
        List<SensitivityInput> inputs = IntStream.rangeClosed(1, dimension)
                .mapToObj(i -> SensitivityInput.between("x" + i, lower, upper))
                .toList();
        List<SobolIndex> indices = SobolAnalysis.estimate(model, inputs, OPTIONS, ProgressListener.NONE)
                .get(0);
        for (int i = 0; i < dimension; i++) {
            SobolIndex index = indices.get(i);
            String input = name + "-" + index.name();
            rows.add(
                    row(input + "-first", "first index", expected[0][i], index.first(), index.firstInterval(), source));
            rows.add(
                    row(input + "-total", "total index", expected[1][i], index.total(), index.totalInterval(), source));
        }
    }

    private static CheckRow row(String id, String what, double exact, double ours, Interval interval, String source) {
        double half = WIDENED * 0.5 * (interval.upper() - interval.lower());
        boolean inside = Math.abs(ours - exact) <= half;
        return new CheckRow(
                id,
                what,
                Numbers.significant(exact, 4),
                exact - half,
                exact + half,
                ours,
                REASON,
                source,
                "derived",
                inside ? Verdict.PASS : Verdict.MISS);
    }

    private static double[] ishigami(double[] x) {
        double sine = Math.sin(x[1]);
        return new double[] {Math.sin(x[0]) + ISHIGAMI_A * sine * sine + ISHIGAMI_B * Math.pow(x[2], 4) * Math.sin(x[0])
        };
    }

    private static double[][] ishigamiIndices() {
        double pi4 = Math.pow(Math.PI, 4);
        double alone1 = 0.5 * Math.pow(1.0 + ISHIGAMI_B * pi4 / 5.0, 2);
        double alone2 = ISHIGAMI_A * ISHIGAMI_A / 8.0;
        double together = ISHIGAMI_B * ISHIGAMI_B * pi4 * pi4 * (1.0 / 18.0 - 1.0 / 50.0);
        double variance = alone1 + alone2 + together;
        return new double[][] {
            {alone1 / variance, alone2 / variance, 0.0},
            {(alone1 + together) / variance, alone2 / variance, together / variance}
        };
    }

    private static double[] g(double[] x) {
        double product = 1.0;
        for (int i = 0; i < x.length; i++) {
            product *= (Math.abs(4.0 * x[i] - 2.0) + G[i]) / (1.0 + G[i]);
        }
        return new double[] {product};
    }

    /** V_i = 1 / (3 (1 + a_i)²), 1 + V = product of (1 + V_i). */
    private static double[][] gIndices() {
        double product = 1.0;
        double[][] indices = new double[2][G.length];
        for (double a : G) {
            product *= 1.0 + 1.0 / (3.0 * Math.pow(1.0 + a, 2));
        }
        for (int i = 0; i < G.length; i++) {
            double part = 1.0 / (3.0 * Math.pow(1.0 + G[i], 2));
            indices[0][i] = part / (product - 1.0);
            indices[1][i] = part * product / (1.0 + part) / (product - 1.0);
        }
        return indices;
    }
}
