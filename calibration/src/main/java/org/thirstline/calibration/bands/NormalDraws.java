package org.thirstline.calibration.bands;

import java.util.List;
import org.hipparchus.linear.EigenDecompositionSymmetric;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.random.RandomGenerator;
import org.hipparchus.random.Well19937c;
import org.thirstline.calibration.error.CalibrationError;
import org.thirstline.io.crop.CropCalibration;
import org.thirstline.io.crop.CropCalibration.Fitted;
import org.thirstline.io.crop.CropFile;
import org.thirstline.model.error.InputException;

/**
 * Draws from the normal distribution of linear theory: fitted values, standard errors and their correlations; what lies outside the bounds is
 * drawn again. Confined to one thread.
 */
final class NormalDraws {

    /** Tries for each draw before the distribution is taken to lie outside its bounds. */
    private static final int TRIES = 2000;

    /** Correlations are written with seven digits; eigenvalues under zero by more than that can make are those of no distribution. */
    private static final double ROUNDING = 1.0e-5;

    private final CropFile crop;
    private final List<Fitted> fitted;
    private final double[][] root;
    private final RandomGenerator random;

    private NormalDraws(CropFile crop, List<Fitted> fitted, double[][] root, long seed) {
        this.crop = crop;
        this.fitted = fitted;
        this.root = root;
        random = new Well19937c(seed);
    }

    /**
     * Draws.
     *
     * @param crop a calibrated crop
     * @param places places of the parameters to draw among the fitted ones
     * @param count how many draws
     * @param seed of the generator
     * @return a row for each draw
     */
    static double[][] of(CropFile crop, List<Integer> places, int count, long seed) {
        CropCalibration calibration = crop.calibration().orElseThrow();
        List<Fitted> fitted = places.stream().map(calibration.fitted()::get).toList();
        NormalDraws draws = new NormalDraws(crop, fitted, root(calibration, places), seed);
        double[][] rows = new double[count][];
        for (int i = 0; i < count; i++) {
            rows[i] = draws.next();
        }
        return rows;
    }

    /** Returns a matrix whose product with its transpose is the matrix of correlations; errors stay apart, for they differ in size. */
    private static double[][] root(CropCalibration calibration, List<Integer> places) {
        int n = places.size();
        RealMatrix correlations = MatrixUtils.createRealIdentityMatrix(n);
        for (int i = 0; i < n && !calibration.correlations().isEmpty(); i++) {
            for (int j = 0; j < i; j++) {
                double value = calibration.correlations().get(places.get(i)).get(places.get(j));
                correlations.setEntry(i, j, value);
                correlations.setEntry(j, i, value);
            }
        }
        EigenDecompositionSymmetric parts = new EigenDecompositionSymmetric(correlations);
        double[][] root = new double[n][n];
        for (int j = 0; j < n; j++) {
            if (parts.getEigenvalue(j) < -ROUNDING) {
                throw new InputException(CalibrationError.CORRELATIONS_IMPOSSIBLE, parts.getEigenvalue(j));
            }
            double length = Math.sqrt(Math.max(0.0, parts.getEigenvalue(j)));
            for (int i = 0; i < n; i++) {
                root[i][j] = length * parts.getV().getEntry(i, j);
            }
        }
        return root;
    }

    private double[] next() {
        for (int attempt = 0; attempt < TRIES; attempt++) {
            double[] draw = any();
            if (isPossible(draw)) {
                return draw;
            }
        }
        throw new InputException(CalibrationError.DRAWS_OUTSIDE, TRIES);
    }

    private double[] any() {
        double[] normal = new double[root.length];
        for (int i = 0; i < normal.length; i++) {
            normal[i] = random.nextGaussian();
        }
        double[] draw = new double[root.length];
        for (int i = 0; i < draw.length; i++) {
            double sum = 0.0;
            for (int j = 0; j < normal.length; j++) {
                sum += root[i][j] * normal[j];
            }
            draw[i] = fitted.get(i).value() + fitted.get(i).standardError() * sum;
        }
        return draw;
    }

    private boolean isPossible(double[] draw) {
        for (int i = 0; i < draw.length; i++) {
            Fitted parameter = fitted.get(i);
            boolean outside = draw[i] < parameter.lowest() || draw[i] > parameter.highest();
            boolean noSoil = SoilDraws.isSoil(parameter.parameter())
                    && !(draw[i] >= SoilDraws.LOWEST && draw[i] <= SoilDraws.HIGHEST);
            if (outside || noSoil) {
                return false;
            }
        }
        try {
            ParameterDraws.crop(
                    crop.parameters(), fitted.stream().map(Fitted::parameter).toList(), draw);
            return true;
        } catch (InputException impossible) {
            return false;
        }
    }
}
