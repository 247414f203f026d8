package org.thirstline.io.study;

import java.util.List;
import java.util.function.Supplier;
import org.thirstline.io.plots.PlotVariable;
import org.thirstline.io.text.SectionKeys;
import org.thirstline.io.text.ValueKind;

/** The keys of the calibration section of a study file. */
final class CalibrationKeys {

    static final List<String> PRIORS = List.of("uniform", "normal", "lognormal", "triangular");
    static final String ESTIMATED = "estimated";
    static final String STATED = "stated";

    private static final ValueKind TEXT = new ValueKind.Text();
    private static final ValueKind NUMBER = new ValueKind.Plain(-100_000, 100_000);

    private CalibrationKeys() {}

    static SectionKeys parameter() {
        return SectionKeys.of("calibrated parameter")
                .required(
                        "name",
                        TEXT,
                        "radiation_use_efficiency_g_mj",
                        "key of a crop parameter, as crop files have it, or soil_available_water_factor or soil_depth_factor")
                .optional("zone", TEXT, "valley", "zone whose soil is meant; all zones if not given")
                .optional("site", TEXT, "Larkmoor field station", "site whose soil is meant; all sites if not given")
                .optional(
                        "low", NUMBER, "1.5", "lowest value tried; half a width below the published range if not given")
                .optional("high", NUMBER, "4.5", "highest value tried; half a width above it if not given")
                .optional(
                        "prior",
                        new ValueKind.Choice(PRIORS),
                        "normal",
                        "shape of what is believed before the data; normal where a range is published, else uniform, if not given")
                .optional(
                        "expected_low",
                        NUMBER,
                        "2.0",
                        "lower end of what is expected before the data; of the published range if not given")
                .optional("expected_high", NUMBER, "4.0", "upper end of it")
                .build();
    }

    static SectionKeys error() {
        return SectionKeys.of("plot error")
                .required("variable", new ValueKind.Choice(PlotVariable.keys()), "yield", "variable of the plot data")
                .optional(
                        "sd",
                        TEXT,
                        "1.2",
                        "standard deviation in the unit the variable is kept in (docs/plots.md), or estimated, or stated: as the plot file says")
                .optional("cv", TEXT, "10 %", "error as a share of the value, or estimated")
                .exactlyOneOf("sd", "cv")
                .build();
    }

    static SectionKeys calibration(Supplier<SectionKeys> parameter, Supplier<SectionKeys> error) {
        return SectionKeys.of("calibration")
                .optional(
                        "parameters",
                        new ValueKind.NestedList(parameter),
                        "[{name: radiation_use_efficiency_g_mj}, {name: soil_available_water_factor}]",
                        "what to fit; the usual ones if not given")
                .optional(
                        "with_studies",
                        new ValueKind.TextList(),
                        "[other-site/study.yaml]",
                        "further studies, each complete and of the same crop, whose plots are fitted together with this one's")
                .optional(
                        "errors",
                        new ValueKind.NestedList(error),
                        "[{variable: yield, cv: 10 %}]",
                        "how far off measured values may be; estimated if not given")
                .build();
    }
}
