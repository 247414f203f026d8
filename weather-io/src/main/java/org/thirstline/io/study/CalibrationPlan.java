package org.thirstline.io.study;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.thirstline.io.plots.PlotVariable;
import org.thirstline.model.crop.CropParameter;

/**
 * What a study says about its calibration. Immutable and thread-safe.
 *
 * @param parameters what to fit; empty for the usual ones
 * @param withStudies further studies whose plots are fitted with this one's
 * @param errors how far off values may be, by variable; what is absent is estimated
 */
public record CalibrationPlan(List<PlannedParameter> parameters, List<Path> withStudies, List<PlannedError> errors) {

    /** The plan of a study that says nothing. */
    public static final CalibrationPlan NONE = new CalibrationPlan(List.of(), List.of(), List.of());

    /** Copies the lists. */
    public CalibrationPlan {
        parameters = List.copyOf(parameters);
        withStudies = List.copyOf(withStudies);
        errors = List.copyOf(errors);
    }

    /** Properties of a soil that can be fitted, as factors on what the study says. */
    public enum SoilFactor {
        /** On the available water of every layer. */
        AVAILABLE_WATER(
                "soil_available_water_factor", "Available water of the soil over what the study says", 0.4, 2.0),
        /** On the depth of the profile. */
        DEPTH("soil_depth_factor", "Depth of the soil over what the study says", 0.4, 2.5);

        private final String key;
        private final String meaning;
        private final double lowest;
        private final double highest;

        SoilFactor(String key, String meaning, double lowest, double highest) {
            this.key = key;
            this.meaning = meaning;
            this.lowest = lowest;
            this.highest = highest;
        }

        /** Returns the word in studies. */
        public String key() {
            return key;
        }

        /** Returns what it is. */
        public String meaning() {
            return meaning;
        }

        /** Returns the smallest factor tried (our choice). */
        public double lowest() {
            return lowest;
        }

        /** Returns the largest factor tried (our choice). */
        public double highest() {
            return highest;
        }
    }

    /**
     * One parameter to fit: of the crop or, failing that, of the soil.
     *
     * @param crop the parameter of the crop, if it is one
     * @param soil the factor on the soil, if it is one
     * @param site the site whose soil is meant; all if not given
     * @param zone the zone whose soil is meant; all if not given
     * @param low lower bound
     * @param high upper bound
     * @param prior shape of the prior
     * @param expectedLow lower end of what is expected before the data
     * @param expectedHigh upper end
     * @param place file, line and key, for messages
     */
    public record PlannedParameter(
            Optional<CropParameter> crop,
            Optional<SoilFactor> soil,
            Optional<String> site,
            Optional<String> zone,
            OptionalDouble low,
            OptionalDouble high,
            Optional<String> prior,
            OptionalDouble expectedLow,
            OptionalDouble expectedHigh,
            String place) {}

    /** How the error of a value depends on it. */
    public enum ErrorKind {
        /** The same for every value. */
        SD,
        /** A share of the value. */
        CV,
        /** As the plot file says for each value. */
        STATED
    }

    /**
     * How far off the values of a variable may be.
     *
     * @param variable the variable
     * @param kind how it depends on the value
     * @param size its size in the unit of the variable, or as a share; estimated if not given
     */
    public record PlannedError(PlotVariable variable, ErrorKind kind, OptionalDouble size) {}
}
