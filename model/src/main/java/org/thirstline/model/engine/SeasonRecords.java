package org.thirstline.model.engine;

import java.util.ArrayList;
import java.util.List;
import org.thirstline.model.result.SeasonRecord;
import org.thirstline.model.result.SeasonStatus;
import org.thirstline.model.result.SeasonVariable;
import org.thirstline.model.weather.DailyDrivers;
import org.thirstline.model.weather.Origin;
import org.thirstline.model.weather.WeatherSeries;
import org.thirstline.model.weather.WeatherVariable;

/** Makes records of a run's columns and says which years can be compared. Immutable and thread-safe. */
final class SeasonRecords {

    private final DailyDrivers drivers;
    private final YearTable table;
    private final boolean[] tooManyGaps;

    SeasonRecords(DailyDrivers drivers, YearTable table, int maxFilledDays) {
        this.drivers = drivers;
        this.table = table;
        tooManyGaps = new boolean[table.years];
        for (int year = 0; year < table.years; year++) {
            tooManyGaps[year] = filled(year) > maxFilledDays;
        }
    }

    private int filled(int year) {
        int from = table.firstDay[year];
        int to = table.firstDay[year + 1] - 1;
        WeatherSeries weather = drivers.weather();
        int rain = weather.count(WeatherVariable.RAIN, Origin.CLIMATOLOGY, from, to);
        int tmin = weather.count(WeatherVariable.TMIN, Origin.CLIMATOLOGY, from, to);
        int tmax = weather.count(WeatherVariable.TMAX, Origin.CLIMATOLOGY, from, to);
        return Math.max(rain, Math.max(tmin, tmax));
    }

    List<SeasonRecord> of(SeasonColumns columns) {
        List<SeasonRecord> records = new ArrayList<>();
        for (int year = 0; year < table.years; year++) {
            if (columns.planted[year]) {
                SeasonStatus status = status(year, columns);
                blank(year, status, columns);
                records.add(columns.record(year, status, drivers.weather().start()));
            }
        }
        return records;
    }

    SeasonStatus status(int year, SeasonColumns columns) {
        if (!table.startsInside(year)) {
            return SeasonStatus.STARTS_LATE;
        }
        if (columns.winterKilled[year]) {
            return SeasonStatus.WINTER_KILLED;
        }
        boolean harvested = columns.harvestDay[year] != SeasonColumns.NO_DAY;
        if (!harvested && columns.emergenceDay[year] == SeasonColumns.NO_DAY && yearInside(year)) {
            return SeasonStatus.NO_CANOPY;
        }
        if (!harvested) {
            return SeasonStatus.ENDS_EARLY;
        }
        return tooManyGaps[year] ? SeasonStatus.WEATHER_GAPS : SeasonStatus.COMPLETE;
    }

    private boolean yearInside(int year) {
        return table.firstDay[year + 1] <= table.days;
    }

    /** Leaves out what a partial year cannot tell. */
    private static void blank(int year, SeasonStatus status, SeasonColumns columns) {
        if (status == SeasonStatus.COMPLETE) {
            return;
        }
        for (SeasonVariable variable : SeasonVariable.values()) {
            if (variable.isYield()) {
                columns.set(year, variable, Double.NaN);
            }
        }
    }
}
