package org.thirstline.calibration.problem;

import java.util.Optional;
import org.thirstline.calibration.fit.FitParameter;
import org.thirstline.calibration.posterior.Prior;
import org.thirstline.calibration.posterior.SampledParameter;
import org.thirstline.io.study.CalibrationPlan.SoilFactor;
import org.thirstline.model.crop.CropParameter;
import org.thirstline.model.crop.CropParameters;

/**
 * A parameter to calibrate: of the crop or, failing that, a factor on soils. Immutable and thread-safe.
 *
 * @param name its key, with the site and zone it is for
 * @param crop the parameter of the crop, if it is one
 * @param soil the factor on soils, if it is one
 * @param site the site whose soil is meant; all if empty
 * @param zone the zone whose soil is meant; all if empty
 * @param start value before the calibration
 * @param prior what is believed before the data; its bounds are those of the search
 */
public record CalibratedParameter(
        String name,
        Optional<CropParameter> crop,
        Optional<SoilFactor> soil,
        Optional<String> site,
        Optional<String> zone,
        double start,
        Prior prior) {

    /** Returns the lower bound. */
    public double lower() {
        return prior.lower();
    }

    /** Returns the upper bound. */
    public double upper() {
        return prior.upper();
    }

    /** Returns the unit as text, "1" where there is none. */
    public String unit() {
        return crop.map(CropParameter::unit).orElse("1");
    }

    /** Returns what it means. */
    public String meaning() {
        return crop.map(CropParameter::meaning)
                .orElseGet(() -> soil.map(SoilFactor::meaning).orElse(""));
    }

    /**
     * Returns the value that holds where it is not fitted.
     *
     * @param base the crop before the calibration
     */
    public double unfitted(CropParameters base) {
        return crop.map(base::get).orElse(1.0);
    }

    /** Returns whether it changes the soil of a zone. */
    boolean isOfSoil(String ofSite, String ofZone) {
        return soil.isPresent()
                && site.map(ofSite::equals).orElse(true)
                && zone.map(ofZone::equals).orElse(true);
    }

    /** Returns it as least squares take it. */
    public FitParameter forFit() {
        return FitParameter.between(name, start, lower(), upper());
    }

    /** Returns it as the sampler takes it. */
    public SampledParameter forSampling() {
        return new SampledParameter(name, prior);
    }
}
