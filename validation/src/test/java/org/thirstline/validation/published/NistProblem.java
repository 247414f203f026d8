package org.thirstline.validation.published;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.thirstline.calibration.fit.ResidualModel;

/** A nonlinear regression problem of the NIST/ITL Statistical Reference Datasets, read from its file (y before x, data from line 61). */
record NistProblem(
        String name,
        List<double[]> starts,
        double[] certified,
        double[] deviations,
        double residualSumOfSquares,
        double[] x,
        double[] y) {

    private static final int DATA_LINE = 60;
    private static final String NUMBER = "\\s+([-+.\\dEe]+)";
    private static final Pattern PARAMETER =
            Pattern.compile("\\s*b\\d\\s*=" + NUMBER + NUMBER + NUMBER + NUMBER + "\\s*");
    private static final Pattern RESIDUALS = Pattern.compile("Residual Sum of Squares:\\s+(\\S+)\\s*");

    /** Value of a model at x for parameters b. */
    @FunctionalInterface
    interface Curve {
        double at(double x, double[] b);
    }

    static final Map<String, Curve> CURVES = Map.ofEntries(
            Map.entry("Bennett5", (x, b) -> b[0] * Math.pow(b[1] + x, -1.0 / b[2])),
            Map.entry("BoxBOD", (x, b) -> b[0] * -Math.expm1(-b[1] * x)),
            Map.entry("Chwirut1", (x, b) -> Math.exp(-b[0] * x) / (b[1] + b[2] * x)),
            Map.entry("Chwirut2", (x, b) -> Math.exp(-b[0] * x) / (b[1] + b[2] * x)),
            Map.entry("DanWood", (x, b) -> b[0] * Math.pow(x, b[1])),
            Map.entry("Eckerle4", (x, b) -> b[0] / b[1] * Math.exp(-0.5 * (x - b[2]) / b[1] * ((x - b[2]) / b[1]))),
            Map.entry("Hahn1", NistProblem::cubicOverCubic),
            Map.entry("Kirby2", (x, b) -> (b[0] + x * (b[1] + x * b[2])) / (1.0 + x * (b[3] + x * b[4]))),
            Map.entry("MGH09", (x, b) -> b[0] * (x * x + x * b[1]) / (x * x + x * b[2] + b[3])),
            Map.entry("MGH10", (x, b) -> b[0] * Math.exp(b[1] / (x + b[2]))),
            Map.entry("MGH17", (x, b) -> b[0] + b[1] * Math.exp(-x * b[3]) + b[2] * Math.exp(-x * b[4])),
            Map.entry("Misra1a", (x, b) -> b[0] * -Math.expm1(-b[1] * x)),
            Map.entry("Misra1b", (x, b) -> b[0] * (1.0 - Math.pow(1.0 + 0.5 * b[1] * x, -2.0))),
            Map.entry("Rat42", (x, b) -> b[0] / (1.0 + Math.exp(b[1] - b[2] * x))),
            Map.entry("Rat43", (x, b) -> b[0] / Math.pow(1.0 + Math.exp(b[1] - b[2] * x), 1.0 / b[3])),
            Map.entry("Roszman1", (x, b) -> b[0] - b[1] * x - Math.atan(b[2] / (x - b[3])) / Math.PI),
            Map.entry("Thurber", NistProblem::cubicOverCubic));

    /** Generated without errors, so that its deviations lie at the rounding unit: of no use as a check, but in the table of what is reached. */
    static final String EXACT = "Lanczos1";

    private static double threeExponentials(double x, double[] b) {
        return b[0] * Math.exp(-b[1] * x) + b[2] * Math.exp(-b[3] * x) + b[4] * Math.exp(-b[5] * x);
    }

    private static double cubicOverCubic(double x, double[] b) {
        return (b[0] + x * (b[1] + x * (b[2] + x * b[3]))) / (1.0 + x * (b[4] + x * (b[5] + x * b[6])));
    }

    static NistProblem read(String name) {
        List<String> lines = Catalogue.lines("/nist/" + name + ".dat");
        List<double[]> parameters = new ArrayList<>();
        double residualSumOfSquares = Double.NaN;
        for (String line : lines.subList(0, DATA_LINE)) {
            Matcher parameter = PARAMETER.matcher(line);
            if (parameter.matches()) {
                parameters.add(new double[] {
                    number(parameter, 1), number(parameter, 2), number(parameter, 3), number(parameter, 4)
                });
            }
            Matcher residuals = RESIDUALS.matcher(line);
            residualSumOfSquares = residuals.matches() ? number(residuals, 1) : residualSumOfSquares;
        }
        List<double[]> data = lines.subList(DATA_LINE, lines.size()).stream()
                .filter(line -> !line.isBlank())
                .map(line -> line.trim().split("\\s+"))
                .map(cells -> new double[] {Double.parseDouble(cells[0]), Double.parseDouble(cells[1])})
                .toList();
        return new NistProblem(
                name,
                List.of(column(parameters, 0), column(parameters, 1)),
                column(parameters, 2),
                column(parameters, 3),
                residualSumOfSquares,
                column(data, 1),
                column(data, 0));
    }

    private static double number(Matcher matcher, int group) {
        return Double.parseDouble(matcher.group(group));
    }

    private static double[] column(List<double[]> rows, int column) {
        return rows.stream().mapToDouble(row -> row[column]).toArray();
    }

    ResidualModel residuals() {
        Curve curve = name.equals(EXACT) ? NistProblem::threeExponentials : CURVES.get(name);
        return b -> {
            double[] residuals = new double[x.length];
            for (int i = 0; i < x.length; i++) {
                residuals[i] = curve.at(x[i], b) - y[i];
            }
            return residuals;
        };
    }
}
