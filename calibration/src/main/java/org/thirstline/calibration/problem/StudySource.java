package org.thirstline.calibration.problem;

import java.nio.file.Path;
import java.time.LocalDate;
import java.time.MonthDay;
import java.util.List;
import org.thirstline.calibration.study.StudyWeather;
import org.thirstline.io.plots.PlotTable;
import org.thirstline.io.plots.PlotVariable;
import org.thirstline.io.study.Study;
import org.thirstline.io.study.Zone;
import org.thirstline.io.weather.WeatherRecord;
import org.thirstline.model.crop.Stand;
import org.thirstline.model.engine.FieldConditions;
import org.thirstline.model.engine.GrowthCalendar;
import org.thirstline.model.engine.SeasonRuns;
import org.thirstline.model.weather.DailyDrivers;
import org.thirstline.model.weather.WeatherSeries;

/**
 * One site: its study, weather and plot data, read once. Immutable and thread-safe.
 *
 * @param study the study
 * @param weather its weather
 * @param plots what was measured there
 * @param plotFile where that was read from
 */
public record StudySource(Study study, WeatherRecord weather, PlotTable plots, Path plotFile) {

    /**
     * Whole growth years of weather that are run before the one of planting. A run starts at field capacity; bare soil dries its top layer
     * only, and drains, so that it forgets how it started with the first wet spell. Two winters are one more than that takes (judgement;
     * a test holds the yields to those of a run from the first day of the weather).
     */
    static final int YEARS_BEFORE_PLANTING = 2;

    /**
     * Reads weather and plots of a study.
     *
     * @param study the study
     * @param plotFile its plot data
     */
    public static StudySource read(Study study, Path plotFile) {
        return new StudySource(study, StudyWeather.read(study), PlotTable.readAll(plotFile, study), plotFile);
    }

    /** Returns the name of the site. */
    public String site() {
        return study.site().name();
    }

    Zone zone(String name) {
        return study.zones().stream()
                .filter(zone -> zone.name().equals(name))
                .findFirst()
                .orElseThrow();
    }

    /** The stand of a zone, planted in the year the plot file says, on the day the study says. */
    FieldConditions field(String zone, int plantingYear) {
        FieldConditions field = study.field(zone(zone));
        LocalDate planned = field.stand().plantingDate();
        if (GrowthCalendar.growthYear(study.site(), planned) == plantingYear) {
            return field;
        }
        LocalDate planted = GrowthCalendar.dateIn(study.site(), plantingYear, MonthDay.from(planned));
        return field.withStand(new Stand(planted, field.stand().plantsPerM2()));
    }

    /** The weather from some years before planting until nothing after it can change what was observed. */
    DailyDrivers driversFor(int plantingYear, List<Observation> observations) {
        WeatherSeries series = weather.series();
        LocalDate last = observations.stream()
                .map(this::lastDayFor)
                .max(LocalDate::compareTo)
                .orElse(series.end());
        LocalDate end = last.isBefore(series.end()) ? last : series.end();
        LocalDate enough = GrowthCalendar.firstDay(study.site(), plantingYear - YEARS_BEFORE_PLANTING);
        boolean later = enough.isAfter(series.start()) && enough.isBefore(end);
        return DailyDrivers.of(study.site(), series.between(later ? enough : series.start(), end));
    }

    private LocalDate lastDayFor(Observation observation) {
        LocalDate date = observation.date();
        if (observation.variable().timing() == PlotVariable.Timing.DAY && date != null) {
            return date;
        }
        LocalDate harvest = SeasonRuns.lastHarvestDay(
                study.site(), observation.growthYear(), study.management().harvest());
        LocalDate season = study.season().end(study.site(), observation.growthYear());
        return harvest.isBefore(season) ? season : harvest;
    }

    int dayOf(DailyDrivers drivers, Observation observation) {
        LocalDate date = observation.date();
        if (date == null) {
            throw new IllegalStateException("a value of a day without its date");
        }
        return drivers.weather().indexOf(date);
    }
}
