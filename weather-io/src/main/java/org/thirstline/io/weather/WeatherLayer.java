package org.thirstline.io.weather;

import java.util.List;
import java.util.stream.Collectors;
import org.thirstline.io.error.InputError;
import org.thirstline.model.error.InputException;

/**
 * One of several sources of weather, and what is taken from it. Immutable.
 *
 * @param name what reports call it
 * @param weather its values
 * @param variables the variables to take; all if empty
 */
public record WeatherLayer(String name, RawWeather weather, List<RawVariable> variables) {

    /** Copies the list; refuses a variable of which there is no value. */
    public WeatherLayer {
        variables = List.copyOf(variables);
        for (RawVariable variable : variables) {
            if (!weather.has(variable)) {
                throw new InputException(InputError.VARIABLE_NOT_GIVEN, variable.shortName(), given(weather)).at(name);
            }
        }
    }

    private static String given(RawWeather weather) {
        return weather.given().stream().sorted().map(RawVariable::shortName).collect(Collectors.joining(", "));
    }

    boolean gives(RawVariable variable) {
        return variables.isEmpty() || variables.contains(variable);
    }
}
