package org.thirstline.cli;

import java.time.DateTimeException;
import java.time.MonthDay;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;
import org.thirstline.calibration.years.IndexKind;
import org.thirstline.charts.UnitSystem;
import org.thirstline.model.engine.GrowingSeason;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.Option;
import picocli.CommandLine.TypeConversionException;

/** What {@code drought} can be asked beyond the years of a study. */
final class DroughtOptions {

    @Option(
            names = "--index",
            paramLabel = "NAME",
            converter = Index.class,
            defaultValue = "season",
            description =
                    "Dryness that the drought line is drawn against: season, year-to-date, growth-year, canopy, window, "
                            + "et0-minus-rain or canopy-et0-minus-rain (default: ${DEFAULT-VALUE}). All indices, SPI too, are in the tables.")
    IndexKind index = IndexKind.SEASON;

    @Option(
            names = "--window",
            paramLabel = "MM-DD..MM-DD",
            converter = Window.class,
            description =
                    "A further window of rainfall deficit, inside one growth year, e.g. 06-01..08-31; SPI is then read at its end.")
    @Nullable
    GrowingSeason window;

    @Option(
            names = "--target",
            paramLabel = "YIELD",
            description =
                    "Yield to reach, dry matter in the unit of --units (Mg/ha, or short ton/acre): says how often it was.")
    @Nullable
    Double target;

    @Option(
            names = "--worth",
            paramLabel = "KG",
            defaultValue = "10",
            description =
                    "Dry matter in kg/ha that a further mm of irrigation must gain; below it the response counts as flat"
                            + " (default: ${DEFAULT-VALUE}).")
    double worthKgHaMm = 10.0;

    /** Returns the target in Mg/ha. */
    OptionalDouble targetMgHa(UnitSystem units) {
        return target == null ? OptionalDouble.empty() : OptionalDouble.of(target / units.dryMatter(1.0));
    }

    /** Reads the name of an index that measures water. */
    static final class Index implements ITypeConverter<IndexKind> {

        @Override
        public IndexKind convert(String text) {
            IndexKind kind = IndexKind.of(text)
                    .orElseThrow(() -> new TypeConversionException(
                            "there is no index '" + text + "'; known are " + String.join(", ", IndexKind.ids())));
            if (kind.isSpi()) {
                throw new TypeConversionException("'" + text
                        + "' is no amount of water to draw a line against; its response is in drought-indices.csv");
            }
            return kind;
        }
    }

    /** Reads {@code 06-01..08-31}. */
    static final class Window implements ITypeConverter<GrowingSeason> {

        @Override
        public GrowingSeason convert(String text) {
            String[] parts = text.split("\\.\\.", -1);
            try {
                if (parts.length == 2) {
                    return new GrowingSeason(
                            MonthDay.parse("--" + parts[0].strip()), MonthDay.parse("--" + parts[1].strip()));
                }
            } catch (DateTimeException notDays) {
                // Falls through to the one message below.
            }
            throw new TypeConversionException("'" + text + "' is not a window of days; write e.g. 06-01..08-31");
        }
    }
}
