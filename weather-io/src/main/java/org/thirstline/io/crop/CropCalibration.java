package org.thirstline.io.crop;

import java.util.List;

/**
 * How the fitted numbers of a crop file came about, and how sure they are. Immutable and thread-safe.
 *
 * @param study title of the study, of the first if there were several
 * @param date day of the calibration, {@code 2026-03-14}
 * @param observations number of values fitted to
 * @param invented whether the data or the place were made up
 * @param data files that were read, with their checksums
 * @param fitted the fitted parameters, of the crop and of soils
 * @param correlations correlations of the fitted values, a row for each of {@code fitted}; empty if unknown
 * @param errors how far the fitted simulation is off, by variable
 * @param drawNames names of what the draws hold, in order
 * @param draws joint draws of the fitted parameters from their posterior; empty if none was sampled
 * @param unsettled whether the chains that the draws come from had not settled
 */
public record CropCalibration(
        String study,
        String date,
        int observations,
        boolean invented,
        List<DataFile> data,
        List<Fitted> fitted,
        List<List<Double>> correlations,
        List<ResidualError> errors,
        List<String> drawNames,
        List<List<Double>> draws,
        boolean unsettled) {

    /** Copies the lists. */
    public CropCalibration {
        data = List.copyOf(data);
        fitted = List.copyOf(fitted);
        correlations = correlations.stream().map(List::copyOf).toList();
        errors = List.copyOf(errors);
        drawNames = List.copyOf(drawNames);
        draws = draws.stream().map(List::copyOf).toList();
    }

    /**
     * A file that was read.
     *
     * @param file its path, relative to the study
     * @param sha256 its checksum
     */
    public record DataFile(String file, String sha256) {}

    /**
     * A fitted parameter.
     *
     * @param parameter its name: the key of a crop parameter, or a factor on a soil with its zone
     * @param value fitted value
     * @param standardError its standard error, NaN where the data give none
     * @param low lower end of its 95 % interval, NaN where open
     * @param high upper end, NaN where open
     * @param lowest lower bound of the search, NaN where unknown
     * @param highest upper bound of the search, NaN where unknown
     */
    public record Fitted(
            String parameter,
            double value,
            double standardError,
            double low,
            double high,
            double lowest,
            double highest) {}

    /**
     * How far the simulation is off.
     *
     * @param variable variable of the plot data
     * @param kind {@code sd}: in the unit of the variable; {@code cv}: as a share; {@code stated}: as a multiple of the stated errors
     * @param size standard deviation
     * @param estimated whether it was estimated from the residuals
     */
    public record ResidualError(String variable, String kind, double size, boolean estimated) {}
}
