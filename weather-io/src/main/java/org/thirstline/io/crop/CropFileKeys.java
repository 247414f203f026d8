package org.thirstline.io.crop;

import org.thirstline.io.text.SectionKeys;
import org.thirstline.io.text.ValueKind;
import org.thirstline.model.crop.CropParameter;

/** The keys of a crop file. */
final class CropFileKeys {

    static final ValueKind.Plain ANY_NUMBER = new ValueKind.Plain(-Double.MAX_VALUE, Double.MAX_VALUE);

    private static final SectionKeys PARAMETER = SectionKeys.of("parameter")
            .required("value", ANY_NUMBER, "2.9", "the number, in the unit that ends the key")
            .optional(
                    "unit", new ValueKind.Text(), "g/MJ", "the unit again, for readers; it must be the one of the key")
            .optional("low", ANY_NUMBER, "1.9", "lower end of the published range")
            .optional("high", ANY_NUMBER, "3.7", "upper end of the published range")
            .optional("no_range", new ValueKind.Text(), "no published range found", "why there is no range")
            .optional("source", new ValueKind.Text(), "own trial", "where the number comes from")
            .optional("basis", new ValueKind.Text(), "above-ground", "what the number is on")
            .optional("status", new ValueKind.Choice(Evidence.keys()), "judgement", "how it is known")
            .atMostOneOf("low", "no_range")
            .build();

    private static final SectionKeys PARAMETERS = parameters();

    private static final SectionKeys DATA_FILE = SectionKeys.of("data file")
            .required("file", new ValueKind.Text(), "plots.csv", "path, relative to the study")
            .required("sha256", new ValueKind.Text(), "e3b0c442", "its checksum")
            .build();

    private static final SectionKeys FITTED = SectionKeys.of("fitted parameter")
            .required("parameter", new ValueKind.Text(), "radiation_use_efficiency_g_mj", "its name")
            .required("value", ANY_NUMBER, "2.9", "fitted value")
            .optional("standard_error", new ValueKind.Plain(0, Double.MAX_VALUE), "0.1", "its standard error")
            .optional("low", ANY_NUMBER, "2.7", "lower end of its 95 % interval")
            .optional("high", ANY_NUMBER, "3.1", "upper end of its 95 % interval")
            .optional("lowest", ANY_NUMBER, "1.0", "lower bound of the search")
            .optional("highest", ANY_NUMBER, "4.6", "upper bound of the search")
            .build();

    private static final SectionKeys RESIDUAL_ERROR = SectionKeys.of("residual error")
            .required("variable", new ValueKind.Text(), "yield", "variable of the plot data")
            .required("kind", new ValueKind.Choice(CropCalibrationReader.KINDS), "sd", "in its unit, or as a share")
            .required("size", new ValueKind.Plain(0, Double.MAX_VALUE), "1.2", "standard deviation")
            .required("estimated", new ValueKind.Flag(), "true", "whether it was estimated")
            .build();

    private static final SectionKeys CALIBRATION = SectionKeys.of("calibration of a crop file")
            .required("study", new ValueKind.Text(), "my trial", "title of the study")
            .required("date", new ValueKind.Date(), "2026-03-14", "day of the calibration")
            .required("observations", new ValueKind.Plain(0, 1e9), "60", "number of values fitted to")
            .optional("invented", new ValueKind.Flag(), "true", "whether data or place were made up")
            .optional("data", new ValueKind.NestedList(() -> DATA_FILE), "", "files that were read")
            .optional("fitted", new ValueKind.NestedList(() -> FITTED), "", "the fitted parameters")
            .optional("correlations", new ValueKind.TextList(), "[\"1\"]", "of the fitted values, numbers with blanks")
            .optional("errors", new ValueKind.NestedList(() -> RESIDUAL_ERROR), "", "errors by variable")
            .optional("unsettled", new ValueKind.Flag(), "true", "whether the chains of the draws had not settled")
            .optional("draw_names", new ValueKind.TextList(), "[radiation_use_efficiency_g_mj]", "what draws hold")
            .optional("draws", new ValueKind.TextList(), "[\"2.91\"]", "draws from the posterior, numbers with blanks")
            .build();

    static final SectionKeys CROP = SectionKeys.of("crop file")
            .required("name", new ValueKind.Text(), "my clone", "what the crop is called")
            .optional("species", new ValueKind.Text(), "Miscanthus x giganteus", "botanical name")
            .optional(
                    "based_on", new ValueKind.Text(), "giant miscanthus", "crop whose numbers hold where none is given")
            .optional("cautions", new ValueKind.TextList(), "[keep a buffer]", "what to mind when growing it")
            .optional("parameters", new ValueKind.Nested(() -> PARAMETERS), "", "the numbers")
            .optional("calibration", new ValueKind.Nested(() -> CALIBRATION), "", "how fitted numbers came about")
            .build();

    private CropFileKeys() {}

    private static SectionKeys parameters() {
        SectionKeys.Builder keys = SectionKeys.of("parameters");
        for (CropParameter parameter : CropParameter.values()) {
            keys.optional(parameter.key(), new ValueKind.Nested(() -> PARAMETER), "1", parameter.meaning());
        }
        return keys.build();
    }
}
