package org.thirstline.io.weather;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.thirstline.io.error.InputError;
import org.thirstline.io.tables.Sha256;
import org.thirstline.model.error.ErrorCode;
import org.thirstline.model.error.InputException;

/**
 * Reads daily weather from any of the known formats, recognised by content and never by file name: plain, gzip or zip, JSON where a
 * provider has it.
 */
public final class WeatherReaders {

    /** Lines looked at; the longest legend in front of a table has about 60. */
    private static final int HEAD_LINES = 200;

    /** What makes a file inside an archive one to pass over. */
    private static final Set<ErrorCode> NOT_MEANT = Set.of(
            InputError.FORMAT_UNKNOWN, InputError.STATION_NOT_FOUND, InputError.FILE_EMPTY, InputError.FILE_NOT_TEXT);

    private WeatherReaders() {}

    /**
     * Reads a file; an archive of several files of one place is joined.
     *
     * @param file where it lies
     * @param options what needs saying
     * @throws InputException if it cannot be read, with file and line in the message
     */
    public static RawWeather read(Path file, ReadOptions options) {
        return WeatherFiles.join(readAll(List.of(file), options));
    }

    /**
     * Reads files, among which may be a provider's list of stations, for the places of the others.
     *
     * @param files where they lie
     * @param options what needs saying; the same for all
     * @return one record for each file of weather
     * @throws InputException if one cannot be read, with file and line in the message
     */
    public static List<RawWeather> readAll(List<Path> files, ReadOptions options) {
        Map<String, SiteInfo> places = new HashMap<>();
        List<RawWeather> read = new ArrayList<>();
        for (Path file : files) {
            if (ZipFiles.isZip(file)) {
                readZip(file, options, places, read);
            } else {
                try (LineReader lines = new LineReader(file)) {
                    read(lines, file, options, places, read);
                }
            }
        }
        if (read.isEmpty()) {
            throw new InputException(InputError.NO_WEATHER, files.get(0));
        }
        return read.stream().map(raw -> placed(raw, places)).toList();
    }

    private static RawWeather placed(RawWeather raw, Map<String, SiteInfo> places) {
        SiteInfo place = raw.station() == null ? null : places.get(raw.station());
        return place == null ? raw : raw.withSite(place.or(raw.site()));
    }

    private static void readZip(Path file, ReadOptions options, Map<String, SiteInfo> places, List<RawWeather> read) {
        int before = read.size();
        List<InputException> passedOver = new ArrayList<>();
        ZipFiles.visit(file, lines -> {
            try {
                read(lines, file, options, places, read);
            } catch (InputException e) {
                if (!NOT_MEANT.contains(e.code())) {
                    throw e;
                }
                passedOver.add(e);
            }
        });
        if (read.size() == before) {
            throw passedOver.isEmpty()
                    ? new InputException(InputError.FILE_UNREADABLE, "the zip archive is empty or damaged")
                            .at(file.toString())
                    : passedOver.get(passedOver.size() - 1);
        }
    }

    private static void read(
            LineReader lines, Path file, ReadOptions options, Map<String, SiteInfo> places, List<RawWeather> read) {
        try {
            RawWeatherBuilder builder;
            if (options.mapping() == null && lines.isJson()) {
                builder = JsonDocuments.read(lines.rest(), options);
            } else {
                List<String> head = lines.head(HEAD_LINES);
                if (options.mapping() == null && options.format() == null && StationList.recognises(head)) {
                    StationList.read(lines).forEach(places::putIfAbsent);
                    return;
                }
                builder = readTable(lines, head, options);
            }
            Double windHeightM = options.windHeightM();
            if (windHeightM != null) {
                builder.stateWindHeightM(windHeightM);
            }
            builder.addSource(new SourceFile(file, lines.isWholeFile() ? lines.sha256() : Sha256.of(file)));
            read.add(builder.build());
        } catch (InputException e) {
            throw e.at(lines.place());
        }
    }

    private static RawWeatherBuilder readTable(LineReader lines, List<String> head, ReadOptions options) {
        if (head.stream().allMatch(String::isBlank)) {
            throw new InputException(InputError.FILE_EMPTY);
        }
        TableMapping mapping = options.mapping();
        if (mapping != null) {
            RawWeatherBuilder builder = new RawWeatherBuilder(WeatherFormat.PLAIN);
            new MappedReader(mapping).read(lines, options, builder);
            return builder;
        }
        WeatherFormat format = format(head, options.format());
        RawWeatherBuilder builder = new RawWeatherBuilder(format);
        reader(format).read(lines, options, builder);
        return builder;
    }

    private static WeatherFormat format(List<String> head, @Nullable WeatherFormat forced) {
        if (forced != null) {
            return forced;
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
            case GHCN_DAILY_WIDE -> new GhcnDailyWideReader();
            case NASA_POWER -> new NasaPowerReader();
            case DAYMET -> new DaymetReader();
            case KNMI -> new KnmiReader();
            case USCRN -> new UscrnReader();
            case OPEN_METEO -> new OpenMeteoReader();
            case DWD -> new DwdReader();
            case MET_EIREANN -> new MetEireannReader();
            case ECAD -> new EcadReader();
            case METEOSWISS -> new MeteoSwissReader();
            case GRIDMET -> new GridmetReader();
            case AGRIMET -> new AgrimetReader();
            case COAGMET -> new CoagmetReader();
            case GEOSPHERE -> new GeosphereReader();
            case PLAIN -> new PlainReader();
        };
    }
}
