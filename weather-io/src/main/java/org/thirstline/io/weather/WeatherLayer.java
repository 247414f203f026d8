package org.thirstline.io.weather;

import java.util.List;

/**
 * One of several sources of weather, and what is taken from it. Immutable.
 *
 * @param name what reports call it
 * @param weather its values
 * @param variables the variables to take; all if empty
 */
public record WeatherLayer(String name, RawWeather weather, List<RawVariable> variables) {

    /** Copies the list. */
    public WeatherLayer {
        variables = List.copyOf(variables);
    }

    boolean gives(RawVariable variable) {
        return variables.isEmpty() || variables.contains(variable);
    }
}
