package org.thirstline.calibration.fit;

/** Where one search started and ended. Immutable and thread-safe. */
public final class SearchResult {

    private final double[] start;
    private final double[] end;
    private final double residualSumOfSquares;
    private final boolean converged;
    private final int evaluations;

    SearchResult(double[] start, double[] end, double residualSumOfSquares, boolean converged, int evaluations) {
        this.start = start.clone();
        this.end = end.clone();
        this.residualSumOfSquares = residualSumOfSquares;
        this.converged = converged;
        this.evaluations = evaluations;
    }

    /** Returns a copy of the starting point. */
    public double[] start() {
        return start.clone();
    }

    /** Returns a copy of the best point found. */
    public double[] end() {
        return end.clone();
    }

    /** Returns the sum of squared residuals at the end; infinite if the model gave none at the start. */
    public double residualSumOfSquares() {
        return residualSumOfSquares;
    }

    /** Returns whether the sum of squares is level at the end in every direction that the bounds leave open. */
    public boolean converged() {
        return converged;
    }

    /** Returns how often the model was asked for residuals. */
    public int evaluations() {
        return evaluations;
    }
}
