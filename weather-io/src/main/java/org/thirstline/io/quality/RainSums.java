package org.thirstline.io.quality;

import org.thirstline.io.weather.RainSum;
import org.thirstline.io.weather.RawVariable;
import org.thirstline.model.weather.Origin;
import org.thirstline.model.weather.WeatherVariable;

/** Spreads rain that was measured for several days at once evenly over them. The amount is right, the days are not. */
final class RainSums {

    /** Where the source does not say how many days, the gap before counts, up to this many. */
    private static final int LONGEST_GAP_DAYS = 31;

    private RainSums() {}

    static void spread(WorkingWeather weather) {
        for (RainSum sum : weather.raw().rainSums()) {
            int last =
                    Math.toIntExact(sum.lastDay().toEpochDay() - weather.date(0).toEpochDay());
            int first = first(weather, sum, last);
            boolean inside = first >= weather.firstDay() && last < weather.endDay() && first <= last;
            if (inside && allMissing(weather, first, last)) {
                double share = sum.mm() / (last - first + 1);
                for (int day = first; day <= last; day++) {
                    weather.fill(
                            WeatherVariable.RAIN,
                            day,
                            share,
                            Origin.ESTIMATED,
                            "sum of several days spread evenly over them");
                }
            }
        }
    }

    private static int first(WorkingWeather weather, RainSum sum, int last) {
        if (sum.days() > 0) {
            return last - sum.days() + 1;
        }
        int first = last;
        while (first > weather.firstDay()
                && last - first < LONGEST_GAP_DAYS - 1
                && weather.isMissing(RawVariable.RAIN, first - 1)) {
            first--;
        }
        return first;
    }

    private static boolean allMissing(WorkingWeather weather, int first, int last) {
        for (int day = first; day <= last; day++) {
            if (!weather.isMissing(RawVariable.RAIN, day)) {
                return false;
            }
        }
        return true;
    }
}
