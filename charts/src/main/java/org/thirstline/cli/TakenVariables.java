package org.thirstline.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import org.thirstline.io.text.Nearest;
import org.thirstline.io.weather.RawVariable;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/**
 * Variables that are taken from a file of their own.
 *
 * @param variables which
 * @param file where from
 */
record TakenVariables(List<RawVariable> variables, Path file) {

    /** Copies the list. */
    TakenVariables {
        variables = List.copyOf(variables);
    }

    /** Reads {@code rain=gauge.csv} or {@code solar,wind=power.csv}. */
    static final class Reader implements ITypeConverter<TakenVariables> {

        @Override
        public TakenVariables convert(String text) {
            int equals = text.indexOf('=');
            if (equals < 1 || equals == text.length() - 1) {
                throw new TypeConversionException(
                        "found '" + text + "'; allowed is variables and a file, e.g. rain=gauge.csv");
            }
            List<RawVariable> variables = new ArrayList<>();
            for (String name : text.substring(0, equals).split(",", -1)) {
                variables.add(variable(name.strip().toLowerCase(Locale.ROOT)));
            }
            return new TakenVariables(variables, Path.of(text.substring(equals + 1)));
        }

        private static RawVariable variable(String name) {
            List<String> names = Arrays.stream(RawVariable.values())
                    .map(RawVariable::shortName)
                    .toList();
            int index = names.indexOf(name);
            if (index < 0) {
                throw new TypeConversionException("'" + name + "' is no variable" + Nearest.hint(name, names)
                        + "; allowed: " + String.join(", ", names));
            }
            return RawVariable.values()[index];
        }
    }
}
