package org.thirstline.validation.published;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.thirstline.calibration.fit.FitOptions;
import org.thirstline.calibration.fit.FitParameter;
import org.thirstline.calibration.fit.FitResult;
import org.thirstline.calibration.fit.LeastSquaresFit;

/** How many certified digits a fit gets right, for every problem and start at hand. */
final class NistTable {

    /** Certified are eleven digits; what lies beyond ten says nothing. */
    private static final int MOST_DIGITS = 10;

    private static final int SIX = 6;

    /** Searches from the far start when one is not enough. */
    private static final int SEVERAL = 30;

    private NistTable() {}

    /**
     * A fit from one start.
     *
     * @param problem name
     * @param start in words
     * @param parameters digits right in the worst parameter
     * @param deviations digits right in the worst standard deviation
     */
    record Row(String problem, String start, int parameters, int deviations) {

        boolean reached() {
            return parameters >= SIX && deviations >= SIX;
        }

        String line() {
            return String.format(
                    Locale.ROOT,
                    "| %s | %s | %d | %d | %s |",
                    problem,
                    start,
                    parameters,
                    deviations,
                    reached() ? "yes" : "**no**");
        }

        static Row parse(String line) {
            String[] cells = line.split("\\|");
            return new Row(
                    cells[1].strip(),
                    cells[2].strip(),
                    Integer.parseInt(cells[3].strip()),
                    Integer.parseInt(cells[4].strip()));
        }
    }

    static List<Row> rows() {
        List<Row> rows = new ArrayList<>();
        Stream<String> names = Stream.concat(NistProblem.CURVES.keySet().stream(), Stream.of(NistProblem.EXACT));
        names.sorted().map(NistProblem::read).forEach(problem -> {
            Row far = row(problem, "far", fit(problem, 0));
            rows.add(far);
            if (far.parameters() < SIX) {
                rows.add(row(problem, "far, and " + (SEVERAL - 1) + " at random", severalStarts(problem)));
            }
            rows.add(row(problem, "near", fit(problem, 1)));
        });
        return rows;
    }

    static FitResult fit(NistProblem problem, int start) {
        double[] from = problem.starts().get(start);
        List<FitParameter> parameters = new ArrayList<>();
        IntStream.range(0, from.length).forEach(i -> parameters.add(FitParameter.free("b" + (i + 1), from[i])));
        return LeastSquaresFit.fit(problem.residuals(), parameters, FitOptions.smooth());
    }

    /** Bounds from zero to ten times the near start. */
    static FitResult severalStarts(NistProblem problem) {
        double[] far = problem.starts().get(0);
        double[] near = problem.starts().get(1);
        List<FitParameter> parameters = new ArrayList<>();
        IntStream.range(0, far.length)
                .forEach(i -> parameters.add(FitParameter.between("b" + (i + 1), far[i], 0.0, 10.0 * near[i])));
        return LeastSquaresFit.fit(
                problem.residuals(), parameters, FitOptions.smooth().withStarts(SEVERAL, 7L));
    }

    private static Row row(NistProblem problem, String start, FitResult fit) {
        int parameters = MOST_DIGITS;
        int deviations = MOST_DIGITS;
        for (int i = 0; i < problem.certified().length; i++) {
            parameters = Math.min(parameters, digits(fit.value(i), problem.certified()[i]));
            deviations = Math.min(deviations, digits(fit.standardError(i), problem.deviations()[i]));
        }
        return new Row(problem.name(), start, parameters, deviations);
    }

    /** Digits of agreement: the base-ten logarithm of the relative difference, downward. */
    private static int digits(double computed, double certified) {
        double difference = Math.abs(computed / certified - 1.0);
        return Double.isFinite(difference)
                ? (int) Math.max(0.0, Math.min(MOST_DIGITS, Math.floor(-Math.log10(difference))))
                : 0;
    }

    static String page() {
        List<Row> rows = rows();
        StringBuilder text = new StringBuilder(String.join(
                "\n",
                "# Least squares beside certified values",
                "",
                "NIST/ITL Statistical Reference Datasets, nonlinear regression: each problem at hand, fitted from the far and from the near start that come with it. Digits are those",
                "of the worst parameter and of the worst standard deviation (base-ten logarithm of the relative difference, downward, ten at most). Reached means six or more of both.",
                "Derivatives are numeric. Written by the build (`NistTableTest`, with `-Dthirstline.regenerate=true`); a test fails when the code does worse.",
                "",
                "| problem | start | digits of parameters | digits of deviations | reached |",
                "|---|---|---|---|---|",
                ""));
        rows.forEach(row -> text.append(row.line()).append('\n'));
        text.append(String.join(
                "\n",
                "",
                "BoxBOD from its far start ends on a plateau, where every exponential has died out and the sum of squares is level; several starts within bounds find the minimum.",
                "",
                "Lanczos1 was generated without errors: its residuals lie at the rounding unit, so that no slope taken by differences gives their deviation. Its parameters are right.",
                "",
                "**Not tried**: the nine other problems of the collection (Misra1c, Misra1d, Gauss1 to 3, Lanczos2 and 3, Nelson, ENSO; names from memory). Their files were not at hand.",
                ""));
        return text.toString();
    }
}
