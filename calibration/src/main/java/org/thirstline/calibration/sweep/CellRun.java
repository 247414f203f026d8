package org.thirstline.calibration.sweep;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.thirstline.calibration.error.CalibrationError;
import org.thirstline.calibration.study.StudyWeather;
import org.thirstline.io.study.CellFields;
import org.thirstline.io.study.CellRow;
import org.thirstline.io.study.Study;
import org.thirstline.io.study.WeatherSource;
import org.thirstline.io.weather.SiteInfo;
import org.thirstline.io.weather.WeatherRecord;
import org.thirstline.model.engine.FieldConditions;
import org.thirstline.model.engine.SeasonRuns;
import org.thirstline.model.error.InputException;
import org.thirstline.model.result.SeasonRecord;
import org.thirstline.model.result.SeasonStatus;
import org.thirstline.model.weather.DailyDrivers;

/** Simulates one cell after the other. Thread-safe. */
final class CellRun {

    private final Study study;
    private final CellFields fields;
    private final SweepOptions options;
    private final WeatherCache cache;
    private final FieldConditions usual;
    private final String folder;

    CellRun(Study study, Path table, SweepOptions options) {
        this.study = study;
        this.options = options;
        usual = study.field(study.zones().get(0));
        fields = new CellFields(study, table);
        cache = new WeatherCache(options.weatherDays());
        Path parent = table.getParent();
        folder =
                parent == null ? "" : parent.normalize() + table.getFileSystem().getSeparator();
    }

    /** Returns what becomes of a cell; input that cannot be used is an outcome too. */
    CellOutcome outcome(CellRow row) {
        try {
            List<SeasonRecord> seasons = seasons(row);
            return new CellOutcome(row.name(), seasons, withoutYield(seasons));
        } catch (InputException refused) {
            return new CellOutcome(row.name(), List.of(), Optional.of(reason(row, refused)));
        }
    }

    private List<SeasonRecord> seasons(CellRow row) {
        WeatherSource source = fields.weather(row);
        SiteInfo place = fields.place(row);
        CellWeather weather = cache.get(row.weatherKey(), () -> read(source, place));
        FieldConditions field = fields.field(row, weather.drivers().site());
        SeasonRuns runs = weather.runs();
        List<SeasonRecord> seasons = options.penalty() ? runs.simulateWithPotential(field) : runs.simulate(field);
        if (seasons.isEmpty()) {
            throw new InputException(
                    CalibrationError.NO_SEASON,
                    field.stand().plantingDate(),
                    weather.drivers().weather().start(),
                    weather.drivers().weather().end());
        }
        return seasons.stream()
                .filter(season -> options.years()
                        .or(study::years)
                        .map(years -> years.contains(season.growthYear()))
                        .orElse(true))
                .toList();
    }

    /** Knows nothing of the cell that happened to ask first, so that its slips are not its neighbours'. */
    private CellWeather read(WeatherSource source, SiteInfo place) {
        WeatherRecord record = StudyWeather.read(source, place);
        DailyDrivers drivers = DailyDrivers.of(record.site(), record.series());
        int gaps = study.weather().missingRainLimitDays();
        return new CellWeather(drivers, new SeasonRuns(drivers, usual, gaps));
    }

    /** Years without a yield, by reason. */
    private static Optional<String> withoutYield(List<SeasonRecord> seasons) {
        if (seasons.stream().anyMatch(SeasonRecord::isComplete)) {
            return Optional.empty();
        }
        Map<SeasonStatus, Long> counts = seasons.stream()
                .collect(Collectors.groupingBy(SeasonRecord::status, TreeMap::new, Collectors.counting()));
        String reasons = counts.entrySet().stream()
                .map(entry -> entry.getKey().words() + " (" + entry.getValue() + ")")
                .collect(Collectors.joining("; "));
        return Optional.of(
                "no complete growth year" + (reasons.isEmpty() ? " among the years asked for" : ": " + reasons));
    }

    /** One line that does not depend on where the table lies. */
    private String reason(CellRow row, InputException refused) {
        String message = String.valueOf(refused.getMessage());
        String text = folder.isEmpty() ? message : message.replace(folder, "");
        String place = row.file() + ":" + row.line() + ": ";
        return text.startsWith(place) ? text : place + text;
    }
}
