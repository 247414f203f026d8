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

    static final SectionKeys CROP = SectionKeys.of("crop file")
            .required("name", new ValueKind.Text(), "my clone", "what the crop is called")
            .optional("species", new ValueKind.Text(), "Miscanthus x giganteus", "botanical name")
            .optional(
                    "based_on", new ValueKind.Text(), "giant miscanthus", "crop whose numbers hold where none is given")
            .optional("cautions", new ValueKind.TextList(), "[keep a buffer]", "what to mind when growing it")
            .optional("parameters", new ValueKind.Nested(() -> PARAMETERS), "", "the numbers")
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
