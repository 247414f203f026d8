package org.thirstline.io.weather;

import java.util.Locale;
import org.thirstline.io.error.InputError;
import org.thirstline.model.error.InputException;
import org.thirstline.model.weather.Origin;
import org.thirstline.model.weather.WeatherSeries;
import org.thirstline.model.weather.WeatherVariable;

/** The flags column of the plain format: variables that were not measured and how they were filled, e.g. {@code solar:estimated}. */
final class Flags {

    private static final WeatherVariable[] VARIABLES = WeatherVariable.values();
    private static final Origin[] ORIGINS = Origin.values();

    private Flags() {}

    /** Returns the flags of a day; rain has none where there is no rain. */
    static String of(WeatherSeries series, int day, boolean rainKnown) {
        StringBuilder text = new StringBuilder();
        for (WeatherVariable variable : VARIABLES) {
            Origin origin = series.origin(variable, day);
            boolean shown = variable != WeatherVariable.RAIN || rainKnown;
            if (origin != Origin.MEASURED && shown) {
                text.append(text.isEmpty() ? "" : " ")
                        .append(RawVariable.of(variable).shortName())
                        .append(':')
                        .append(origin.name().toLowerCase(Locale.ROOT));
            }
        }
        return text.toString();
    }

    static void read(String text, RawWeatherBuilder out) {
        int from = 0;
        while (from < text.length()) {
            int end = text.indexOf(' ', from);
            end = end < 0 ? text.length() : end;
            if (end > from) {
                readOne(text.substring(from, end), out);
            }
            from = end + 1;
        }
    }

    private static void readOne(String flag, RawWeatherBuilder out) {
        for (WeatherVariable variable : VARIABLES) {
            String start = RawVariable.of(variable).shortName() + ":";
            for (Origin origin : ORIGINS) {
                if (flag.startsWith(start) && flag.substring(start.length()).equalsIgnoreCase(origin.name())) {
                    out.setOrigin(variable, origin);
                    return;
                }
            }
        }
        throw new InputException(
                InputError.LINE_MALFORMED, flag, "flags as 'solar:estimated rain:climatology', or nothing");
    }
}
