package org.thirstline.cli;

import java.util.List;
import java.util.Optional;
import org.thirstline.calibration.influence.OutputInfluence;
import org.thirstline.calibration.influence.StudyInfluence;
import org.thirstline.calibration.influence.VariedInput;
import org.thirstline.calibration.influence.ZoneInfluence;
import org.thirstline.calibration.response.Interval;
import org.thirstline.calibration.sensitivity.ElementaryEffect;
import org.thirstline.calibration.sensitivity.SobolIndex;
import org.thirstline.io.tables.ColumnInfo;
import org.thirstline.io.tables.CsvTable;
import org.thirstline.io.tables.TableInfo;

/** {@code sensitivity.csv}: a row for each zone, output and parameter. */
final class SensitivityTable {

    static final String FILE = "sensitivity.csv";
    private static final int DECIMALS = 4;
    private static final int VALUE_DECIMALS = 6;

    private SensitivityTable() {}

    static TableInfo info() {
        return new TableInfo(
                FILE,
                "What each parameter, moved through its range, does to each output",
                List.of(
                        ColumnInfo.text("zone", "Zone of the field"),
                        ColumnInfo.text("output", "What is asked"),
                        ColumnInfo.text("output_unit", "Unit of the output, and of the four effects"),
                        ColumnInfo.text("parameter", "Parameter by its key in crop files, or factor on the soil"),
                        ColumnInfo.text("parameter_unit", "Unit of the parameter, 1 for none"),
                        ColumnInfo.number("standard", "", "Value of crop file and study, in the parameter's unit"),
                        ColumnInfo.number("low", "", "Lower end of the range, in the parameter's unit"),
                        ColumnInfo.number("high", "", "Upper end of the range, in the parameter's unit"),
                        ColumnInfo.text("range", "published: of the crop file; share: by a percentage of the value"),
                        ColumnInfo.number("mean_effect", "", "Mean effect of a move through the range (Morris)"),
                        ColumnInfo.number("mean_size", "", "Mean size of these effects, mu* (Campolongo)"),
                        ColumnInfo.number("mean_size_error", "", "Standard error of the mean size"),
                        ColumnInfo.number("effect_deviation", "", "Standard deviation of the effects, sigma"),
                        ColumnInfo.number("first_index", "1", "Share of the variance due to the parameter alone"),
                        ColumnInfo.number("first_index_low", "1", "Lower end of its 95 % bootstrap interval"),
                        ColumnInfo.number("first_index_high", "1", "Upper end of its 95 % bootstrap interval"),
                        ColumnInfo.number("total_index", "1", "Share due to it alone and together with others"),
                        ColumnInfo.number("total_index_low", "1", "Lower end of its 95 % bootstrap interval"),
                        ColumnInfo.number("total_index_high", "1", "Upper end of its 95 % bootstrap interval"),
                        ColumnInfo.text(
                                "decides",
                                "yes: the total index is above 0.05 at the lower end of its interval, and the output varies"
                                        + " noticeably; empty: not sampled")));
    }

    static CsvTable of(StudyInfluence answer) {
        CsvTable table = new CsvTable();
        info().header(table);
        for (ZoneInfluence zone : answer.zones()) {
            for (OutputInfluence output : zone.outputs()) {
                answer.inputs().inputs().forEach(input -> row(table, zone, output, input));
            }
        }
        return table;
    }

    private static void row(CsvTable table, ZoneInfluence zone, OutputInfluence output, VariedInput input) {
        ElementaryEffect effect = output.effect(input.key()).orElseThrow();
        Optional<SobolIndex> index = output.index(input.key());
        table.text(zone.zone().name())
                .text(output.output().key())
                .text(output.output().unit())
                .text(input.key())
                .text(input.unit())
                .number(input.standard(), VALUE_DECIMALS)
                .number(input.low(), VALUE_DECIMALS)
                .number(input.high(), VALUE_DECIMALS)
                .text(input.published() ? "published" : "share")
                .number(effect.mean(), DECIMALS)
                .number(effect.meanAbsolute(), DECIMALS)
                .number(effect.meanAbsoluteError(), DECIMALS)
                .number(effect.deviation(), DECIMALS);
        share(table, index.map(SobolIndex::first), index.map(SobolIndex::firstInterval));
        share(table, index.map(SobolIndex::total), index.map(SobolIndex::totalInterval));
        table.text(index.map(of -> of.decides() && output.noticeable() ? "yes" : "no")
                        .orElse(""))
                .endRow();
    }

    private static void share(CsvTable table, Optional<Double> share, Optional<Interval> interval) {
        table.number(share.orElse(Double.NaN), DECIMALS)
                .number(interval.map(Interval::lower).orElse(Double.NaN), DECIMALS)
                .number(interval.map(Interval::upper).orElse(Double.NaN), DECIMALS);
    }
}
