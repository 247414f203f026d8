package org.thirstline.calibration.sweep;

import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.FutureTask;
import java.util.function.Supplier;
import org.thirstline.model.error.InputException;

/** Keeps the weather used last, up to a number of days, and reads each only once however many threads ask for it. Thread-safe. */
final class WeatherCache {

    private final long mostDays;
    private final Map<String, Entry> entries = new LinkedHashMap<>(16, 0.75f, true);
    private long days;

    private static final class Entry {

        private final FutureTask<CellWeather> task;
        private int days;

        Entry(Supplier<CellWeather> reader) {
            task = new FutureTask<>(reader::get);
        }
    }

    WeatherCache(long mostDays) {
        this.mostDays = mostDays;
    }

    /**
     * Returns the weather of a key.
     *
     * @throws InputException if it cannot be read; it is then refused to every cell that asks
     */
    CellWeather get(String key, Supplier<CellWeather> reader) {
        Entry entry;
        synchronized (entries) {
            entry = entries.computeIfAbsent(key, unknown -> new Entry(reader));
        }
        entry.task.run();
        CellWeather weather = result(entry.task);
        note(entry, weather.drivers().days());
        return weather;
    }

    private static CellWeather result(FutureTask<CellWeather> task) {
        try {
            return task.get();
        } catch (ExecutionException failed) {
            if (failed.getCause() instanceof InputException refused) {
                throw refused;
            }
            throw new IllegalStateException(failed.getCause());
        } catch (InterruptedException interrupted) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException(interrupted);
        }
    }

    private void note(Entry entry, int daysOfEntry) {
        synchronized (entries) {
            if (entry.days > 0) {
                return;
            }
            entry.days = daysOfEntry;
            days += daysOfEntry;
            Iterator<Entry> oldest = entries.values().iterator();
            while (days > mostDays && oldest.hasNext()) {
                Entry candidate = oldest.next();
                if (candidate != entry && candidate.days > 0) {
                    days -= candidate.days;
                    oldest.remove();
                }
            }
        }
    }
}
