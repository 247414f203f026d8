package org.thirstline.validation.scenario;

import java.time.LocalDate;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.thirstline.model.weather.DailyDrivers;
import org.thirstline.model.weather.Site;
import org.thirstline.model.weather.WeatherSeries;
import org.thirstline.model.weather.WeatherVariable;

/** Thirty invented years in the climate of the invented field station, another thirty for every seed. */
public final class InventedWeather {

    /** The invented place. */
    public static final Site SITE =
            new Site("invented field station", LarkmoorWeather.LATITUDE_DEG, LarkmoorWeather.ELEVATION_M);

    private InventedWeather() {}

    /** Returns the columns of a seed. */
    public static Map<WeatherVariable, double[]> columns(long seed) {
        List<String> lines = new LarkmoorWeather(seed)
                .table()
                .lines()
                .filter(line -> Character.isDigit(line.charAt(0)))
                .toList();
        WeatherVariable[] variables = WeatherVariable.values();
        Map<WeatherVariable, double[]> columns = new EnumMap<>(WeatherVariable.class);
        for (WeatherVariable variable : variables) {
            columns.put(variable, new double[lines.size()]);
        }
        for (int day = 0; day < lines.size(); day++) {
            String[] cells = lines.get(day).split(",");
            for (int i = 0; i < variables.length; i++) {
                columns.get(variables[i])[day] = Double.parseDouble(cells[i + 1]);
            }
        }
        return columns;
    }

    /** Returns the first day of every seed. */
    public static LocalDate start() {
        return LarkmoorWeather.FIRST;
    }

    /** Returns the drivers of a seed. */
    public static DailyDrivers drivers(long seed) {
        return DailyDrivers.of(SITE, WeatherSeries.measured(start(), columns(seed)));
    }
}
