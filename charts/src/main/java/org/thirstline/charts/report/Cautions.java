package org.thirstline.charts.report;

import java.util.List;

/** What every report warns of. Common practice, no source, except where one is named. */
public final class Cautions {

    /** The cautions, one sentence or two each. */
    public static final List<String> GENERAL = List.of(
            "Bales above about 20 % moisture (wet basis) can heat, grow mould and catch fire in storage. Check the "
                    + "moisture of bales, keep stacks apart and watch their temperature.",
            "Tall perennial grasses can spread beyond the field. Before planting, look up whether the species or "
                    + "variety is listed as invasive or restricted where you are, and keep to buffer strips and "
                    + "monitoring where they are asked for.",
            "Yields of small plots are often higher than those of whole fields: edges, care and hand harvest help "
                    + "them. Do not scale plot yields to a farm without allowing for it.",
            "This is a simulation of past weather, not a forecast. Other years, soils and varieties will differ; "
                    + "what is not simulated here (pests, diseases, nutrients, lodging) can cost yield too.",
            "Local codes, labels and regulations come first, and so does the advice of licensed practice on storage, "
                    + "fire safety, planting and machinery.");

    private Cautions() {}
}
