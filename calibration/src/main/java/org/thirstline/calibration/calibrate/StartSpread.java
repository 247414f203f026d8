package org.thirstline.calibration.calibrate;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.hipparchus.exception.MathRuntimeException;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.CholeskyDecomposition;
import org.hipparchus.linear.RealMatrix;
import org.thirstline.calibration.posterior.Prior;

/** Points around a fit for chains to start from: normal, wider than linear theory says, and from the priors where it says nothing. */
public final class StartSpread {

    /** Standard deviations of the spread over those of linear theory: wide enough for chains that disagree to show it (our choice). */
    private static final double WIDER = 2.0;

    /** Points for each parameter, as the authors of the sampling method advise for its first archive (ter Braak and Vrugt 2008). */
    private static final int POINTS_PER_PARAMETER = 10;

    private static final int TRIES = 100;

    private StartSpread() {}

    /**
     * Draws the points.
     *
     * @param fit a fit
     * @param seed of the draws
     */
    public static List<double[]> of(CalibrationFit fit, long seed) {
        int[] told = IntStream.range(0, fit.point().length)
                .filter(i -> Double.isFinite(fit.standardError(i)))
                .toArray();
        double[][] factor = factor(fit, told);
        SplittableRandom random = new SplittableRandom(seed);
        List<double[]> points = new ArrayList<>();
        for (int i = 0; i < POINTS_PER_PARAMETER * fit.point().length; i++) {
            points.add(point(fit, told, factor, random));
        }
        return points;
    }

    /** Root of the covariance of the parameters that have one; without rows if it has no root. */
    private static double[][] factor(CalibrationFit fit, int[] told) {
        if (told.length == 0) {
            return new double[0][];
        }
        double scale = fit.standardError(told[0]) / fit.result().standardError(told[0]);
        double[][] covariance = new double[told.length][told.length];
        for (int row = 0; row < told.length; row++) {
            for (int column = 0; column < told.length; column++) {
                covariance[row][column] =
                        WIDER * WIDER * scale * scale * fit.result().covariance(told[row], told[column]);
            }
        }
        RealMatrix matrix = new Array2DRowRealMatrix(covariance, false);
        try {
            return new CholeskyDecomposition(matrix, 1.0e-9, 0.0).getL().getData();
        } catch (MathRuntimeException noRoot) {
            return new double[0][];
        }
    }

    private static double[] point(CalibrationFit fit, int[] told, double[][] factor, SplittableRandom random) {
        for (int attempt = 0; attempt < TRIES && factor.length > 0; attempt++) {
            double[] point = ofPriors(fit, random);
            double[] normal = IntStream.range(0, told.length)
                    .mapToDouble(i -> random.nextGaussian())
                    .toArray();
            for (int row = 0; row < told.length; row++) {
                point[told[row]] = fit.point()[told[row]];
                for (int column = 0; column <= row; column++) {
                    point[told[row]] += factor[row][column] * normal[column];
                }
            }
            if (isInside(fit, point)) {
                return point;
            }
        }
        return ofPriors(fit, random);
    }

    private static double[] ofPriors(CalibrationFit fit, SplittableRandom random) {
        return fit.problem().parameters().stream()
                .mapToDouble(parameter -> parameter.prior().quantile(random.nextDouble()))
                .toArray();
    }

    private static boolean isInside(CalibrationFit fit, double[] point) {
        return IntStream.range(0, point.length).allMatch(i -> {
            Prior prior = fit.problem().parameters().get(i).prior();
            return point[i] > prior.lower() && point[i] < prior.upper();
        });
    }
}
