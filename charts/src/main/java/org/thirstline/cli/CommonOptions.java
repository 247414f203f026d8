package org.thirstline.cli;

import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.thirstline.io.text.YearSpan;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.Option;
import picocli.CommandLine.TypeConversionException;

/** Options of every command that runs the years of a study. */
final class CommonOptions extends OutputOptions {

    @Option(
            names = "--years",
            paramLabel = "FIRST-LAST",
            converter = Years.class,
            description = "Growth years to report, e.g. 2005-2020 (default: all).")
    @Nullable
    YearSpan years;

    Optional<YearSpan> years() {
        return Optional.ofNullable(years);
    }

    /** Reads {@code 2005-2020} or {@code 2012}. */
    static final class Years implements ITypeConverter<YearSpan> {

        @Override
        public YearSpan convert(String text) {
            String[] parts = text.split("-", -1);
            try {
                int first = Integer.parseInt(parts[0].trim());
                int last = parts.length > 1 ? Integer.parseInt(parts[1].trim()) : first;
                if (parts.length <= 2 && first <= last) {
                    return new YearSpan(first, last);
                }
            } catch (NumberFormatException notYears) {
                // Falls through to the one message below.
            }
            throw new TypeConversionException("'" + text + "' is not a span of years; write e.g. 2005-2020 or 2012");
        }
    }
}
