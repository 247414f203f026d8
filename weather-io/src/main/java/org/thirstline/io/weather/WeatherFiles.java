package org.thirstline.io.weather;

import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.thirstline.io.error.InputError;
import org.thirstline.model.error.InputException;
import org.thirstline.model.weather.Origin;
import org.thirstline.model.weather.WeatherVariable;

/** Joins files of one place: yearly files one after the other, or files of different variables side by side. */
public final class WeatherFiles {

    private static final double SAME_PLACE_DEG = 0.05;
    private static final double SAME_PLACE_M = 50.0;

    private WeatherFiles() {}

    /**
     * Returns the files as one record.
     *
     * @param files at least one
     * @throws InputException if two files give different values for the same day, or lie in different places
     */
    public static RawWeather join(List<RawWeather> files) {
        if (files.size() == 1) {
            return files.get(0);
        }
        RawWeatherBuilder out = new RawWeatherBuilder(files.get(0).format());
        for (RawWeather file : files) {
            add(file, out);
        }
        return out.build();
    }

    private static void add(RawWeather file, RawWeatherBuilder out) {
        String name = file.sources().isEmpty() ? "" : file.sources().get(0).path() + " ";
        requireSamePlace(name, out.site(), file.site());
        out.setSite(out.site().or(file.site()));
        out.setInvented(out.isInvented() || file.isInvented());
        file.sources().forEach(out::addSource);
        file.notes().forEach(out::note);
        file.rainSums().forEach(out::addRainSum);
        if (file.has(RawVariable.WIND)) {
            if (out.has(RawVariable.WIND) && out.windHeightM() != file.windHeightM()) {
                throw disagree(name + "has wind at " + file.windHeightM() + " m, those before at " + out.windHeightM());
            }
            out.setWindHeightM(file.windHeightM());
        }
        for (WeatherIssue issue : file.issues()) {
            if (issue.kind() != IssueKind.ABSENT_DATE) {
                out.addIssue(issue);
            }
        }
        addDays(file, name, out);
    }

    private static void addDays(RawWeather file, String name, RawWeatherBuilder out) {
        long first = file.start().toEpochDay();
        boolean[] absent = new boolean[file.days()];
        for (WeatherIssue issue : file.issues()) {
            if (issue.kind() == IssueKind.ABSENT_DATE) {
                int from = Math.toIntExact(issue.first().toEpochDay() - first);
                Arrays.fill(absent, from, from + issue.days(), true);
            }
        }
        for (int day = 0; day < file.days(); day++) {
            if (!absent[day]) {
                out.markPresent(first + day);
                addDay(file, day, name, out);
            }
        }
    }

    private static void addDay(RawWeather file, int day, String name, RawWeatherBuilder out) {
        LocalDate date = file.date(day);
        for (RawVariable variable : RawVariable.values()) {
            double value = file.value(variable, day);
            double before = out.value(date.toEpochDay(), variable);
            if (!Double.isNaN(value) && !Double.isNaN(before) && value != before) {
                throw disagree(
                        name + "gives " + value + " for " + variable.words() + " on " + date + ", another " + before);
            }
            out.put(date.toEpochDay(), variable, value);
        }
        for (WeatherVariable variable : WeatherVariable.values()) {
            Origin origin = file.origin(variable, day);
            if (origin != Origin.MEASURED) {
                out.setOrigin(date.toEpochDay(), variable, origin);
            }
        }
    }

    private static void requireSamePlace(String name, SiteInfo before, SiteInfo now) {
        boolean far = differ(before.latitudeDeg(), now.latitudeDeg(), SAME_PLACE_DEG)
                || differ(before.longitudeDeg(), now.longitudeDeg(), SAME_PLACE_DEG)
                || differ(before.elevationM(), now.elevationM(), SAME_PLACE_M);
        if (far) {
            throw disagree(name + "lies elsewhere than those before");
        }
    }

    private static boolean differ(@Nullable Double a, @Nullable Double b, double most) {
        return a != null && b != null && Math.abs(a - b) > most;
    }

    private static InputException disagree(String what) {
        return new InputException(InputError.FILES_DISAGREE, what);
    }
}
