package org.thirstline.calibration.error;

import org.thirstline.model.error.ErrorCode;

/** Errors raised by fitting and by the statistics of seasons. */
public enum CalibrationError implements ErrorCode {
    /** What, its length, what else, its length. */
    LENGTHS_DIFFER("%s has %d values but %s has %d"),
    /** What, year, value. */
    VALUE_NOT_FINITE("%s of %d is %s; leave the year out"),
    /** Year. */
    YEAR_TWICE("year %d appears twice"),
    /** Name, lower, start, upper. */
    START_OUTSIDE_BOUNDS("parameter %s must start inside its bounds: %s <= %s <= %s"),
    /** Number of residuals, number of parameters. */
    TOO_FEW_RESIDUALS("%d residuals cannot fit %d parameters"),
    /** Kind, lower, upper. */
    PRIOR_WITHOUT_MASS("a %s prior has next to no probability between its bounds %s and %s"),
    /** Number of tries. */
    NO_FINITE_DENSITY("the posterior density was zero or not a number at %d points drawn from the priors"),
    /** Why. */
    SAMPLER_STATE_UNREADABLE("the saved sampler state cannot be read: %s; start the sampling anew"),
    /** What differs. */
    SAMPLER_STATE_OF_ANOTHER_PROBLEM("the saved sampler state belongs to another problem: %s"),
    /** Number of draws of each chain, fewest allowed. */
    TOO_FEW_DRAWS("%d draws of each chain are too few to judge convergence; at least %d are needed"),
    /** Number, value, inputs. */
    OUTPUT_NOT_FINITE("output %d of the model is %s at %s; narrow the ranges"),
    /** Number of groups. */
    TOO_FEW_GROUPS("holding out one group at a time needs at least 2 groups, but there is %d"),
    /** Planting date, first and last day of the weather. */
    NO_SEASON("the stand was planted on %s, but the weather runs from %s to %s: no growth year to simulate"),
    /** First and last day of the weather, first and last day of the window. */
    NO_WINDOW(
            "the weather from %s to %s holds no whole growing season (%s to %s); give a longer record, or another growing_season"),
    /** Format named, known formats. */
    FORMAT_UNKNOWN("there is no weather format '%s'; known are %s"),
    /** No arguments. */
    NO_PLOT_YEARS("there are no plot yields"),
    /** Plot, planting, growth year. */
    PLOT_YEAR_TWICE("plot %s of planting %s has year %d twice"),
    /** Planting. */
    PLANTING_DIFFERS("planting %s has more than one site or planting year; give each planting its own name"),
    /** Plot, planting, growth year. */
    SIMULATION_INCOMPLETE(
            "plot %s of planting %s has no simulated yield in %d though other years have; simulate all years or none"),
    /** Zone, statuses of its years. */
    NO_YEAR_TO_VARY("no growth year of %s has a comparable yield with the crop file's defaults (%s): nothing to vary"),
    /** Crop. */
    NOTHING_TO_VARY(
            "no parameter of %s has a published range in its crop file; give low and high there, or vary the others too"),
    /** Age. */
    BUILD_UP_INCOMPLETE("the build-up needs the yields of stand ages 1 to 3; age %d is missing"),
    /** Free text. */
    NO_FINITE_START("the residuals are not finite at any starting point"),
    /** No arguments. */
    NO_OBSERVATIONS("there is no measured value to fit to"),
    /** Reasons. */
    NOTHING_LEFT("none of the measured values can be used: %s"),
    /** Site. */
    SITE_WITHOUT_WEATHER(
            "the plot data hold values of site '%s', but no study of it is given, so that there is no weather for them; add its study to"
                    + " 'with_studies'"),
    /** Site. */
    SITE_TWICE("two studies are of the site '%s'; give each its own name"),
    /** Study, crop, other crop. */
    CROPS_DIFFER("%s grows %s, but the first study %s; one calibration is of one crop"),
    /** Count, variable, value, unit. */
    ALL_ALIKE(
            "all %d values of %s are %s %s; measured values never are all alike, so that something went wrong when the table was made"),
    /** Site, zone, known. */
    SOIL_UNKNOWN("no study has a zone '%s'%s; the zones are: %s"),
    /** Parameter, value. */
    NO_RANGE(
            "%s has no published range and its value is %s, so that there is nothing to take bounds from; give 'low' and 'high'"),
    /** Parameter, low, high. */
    NO_WIDTH("the bounds of %s leave nothing to fit between %s and %s; give other bounds"),
    /** Name. */
    PARAMETER_TWICE("the parameter %s is to be fitted twice"),
    /** Advice. */
    NOT_TOLD(
            "the data cannot tell all of these parameters. %s Take them out of 'parameters', or let --unclear=fix do it, or keep them with"
                    + " --unclear=keep"),
    /** Eigenvalue. */
    CORRELATIONS_IMPOSSIBLE(
            "the correlations in the crop file are those of no distribution (an eigenvalue is %.3g); write the file anew with 'calibrate'"),
    /** Tries. */
    DRAWS_OUTSIDE(
            "%d draws about the fitted values lie outside the bounds; calibrate anew, or take 'standard_error' out of the crop file"),
    /** Values, parameters. */
    TOO_FEW_VALUES("%d measured values cannot fit %d parameters; fit fewer, or add data");

    private final String template;

    CalibrationError(String template) {
        this.template = template;
    }

    @Override
    public String template() {
        return template;
    }
}
