package org.thirstline.io.weather;

import java.nio.file.Path;
import java.util.List;
import org.thirstline.io.error.InputError;
import org.thirstline.model.error.InputException;

/** Reads daily weather from any of the known formats, recognised by content and never by file name. */
public final class WeatherReaders {

    /** Lines looked at; the longest legend in front of a table has about 60. */
    private static final int HEAD_LINES = 200;

    private WeatherReaders() {}

    /**
     * Reads a file.
     *
     * @param file where it lies
     * @param options format and station, where they need saying
     * @throws InputException if it cannot be read, with file and line in the message
     */
    public static RawWeather read(Path file, ReadOptions options) {
        try (LineReader lines = new LineReader(file)) {
            return read(lines, file, options);
        }
    }

    private static RawWeather read(LineReader lines, Path file, ReadOptions options) {
        try {
            WeatherFormat format = format(lines.head(HEAD_LINES), options);
            RawWeatherBuilder builder = new RawWeatherBuilder(format);
            reader(format).read(lines, options, builder);
            builder.addSource(new SourceFile(file, lines.sha256()));
            return builder.build();
        } catch (InputException e) {
            throw e.at(lines.place());
        }
    }

    private static WeatherFormat format(List<String> head, ReadOptions options) {
        if (head.stream().allMatch(String::isBlank)) {
            throw new InputException(InputError.FILE_EMPTY);
        }
        if (options.format() != null) {
            return options.format();
        }
        for (WeatherFormat format : WeatherFormat.values()) {
            if (reader(format).recognises(head)) {
                return format;
            }
        }
        String first = head.stream().filter(line -> !line.isBlank()).findFirst().orElse("");
        String start = first.length() > 60 ? first.substring(0, 60) + "..." : first;
        throw new InputException(InputError.FORMAT_UNKNOWN, start, WeatherFormat.allDescriptions());
    }

    private static FormatReader reader(WeatherFormat format) {
        return switch (format) {
            case GHCN_DAILY -> new GhcnDailyReader();
            case GHCN_DAILY_LONG -> new GhcnDailyLongReader();
            case GHCN_DAILY_ACCESS -> new GhcnDailyAccessReader();
            case NASA_POWER -> new NasaPowerReader();
            case DAYMET -> new DaymetReader();
            case KNMI -> new KnmiReader();
            case USCRN -> new UscrnReader();
            case OPEN_METEO -> new OpenMeteoReader();
            case PLAIN -> new PlainReader();
        };
    }
}
