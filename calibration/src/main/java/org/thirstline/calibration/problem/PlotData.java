package org.thirstline.calibration.problem;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.thirstline.calibration.error.CalibrationError;
import org.thirstline.io.plots.PlotObservation;
import org.thirstline.io.plots.PlotVariable;
import org.thirstline.io.plots.PlotYield;
import org.thirstline.io.study.CalibrationPlan.ErrorKind;
import org.thirstline.io.text.YearSpan;
import org.thirstline.model.engine.FieldConditions;
import org.thirstline.model.engine.GrowthCalendar;
import org.thirstline.model.engine.SeasonRuns;
import org.thirstline.model.engine.WatchedRun;
import org.thirstline.model.error.InputException;
import org.thirstline.model.result.SeasonRecord;
import org.thirstline.model.weather.WeatherSeries;

/**
 * What was measured at all sites, divided into what can be fitted to and what cannot. Immutable and thread-safe.
 *
 * @param sources the sites
 * @param used values to fit to
 * @param dropped values that are left out, and why
 * @param notices what a reader must know
 */
public record PlotData(
        List<StudySource> sources, List<Observation> used, List<DroppedValue> dropped, List<String> notices) {

    private static final int[] NO_DAYS = {};

    /** Copies the lists. */
    public PlotData {
        sources = List.copyOf(sources);
        used = List.copyOf(used);
        dropped = List.copyOf(dropped);
        notices = List.copyOf(notices);
    }

    /**
     * Gathers the plots of all sites.
     *
     * @param sources the sites, the first of the study that was asked for
     * @throws InputException if a site has no weather, crops differ, or nothing can be used
     */
    public static PlotData of(List<StudySource> sources) {
        refuseStrangers(sources);
        List<String> notices = new ArrayList<>();
        List<Observation> used = new ArrayList<>();
        List<DroppedValue> dropped = new ArrayList<>();
        for (StudySource source : sources) {
            String place = sources.size() == 1 ? "" : source.site() + ": ";
            source.plots().notices().stream()
                    .filter(notice -> sources.size() == 1 || !notice.startsWith("Rows of other sites"))
                    .forEach(notice -> notices.add(place + notice));
            sort(source, used, dropped);
        }
        if (used.isEmpty()) {
            throw nothingLeft(dropped);
        }
        refuseAlike(used);
        return new PlotData(sources, used, dropped, notices);
    }

    private static void refuseStrangers(List<StudySource> sources) {
        Set<String> sites = new LinkedHashSet<>();
        for (StudySource source : sources) {
            if (!sites.add(source.site())) {
                throw new InputException(CalibrationError.SITE_TWICE, source.site());
            }
            String crop = source.study().crop().name();
            String first = sources.get(0).study().crop().name();
            if (!crop.equals(first)) {
                throw new InputException(
                        CalibrationError.CROPS_DIFFER, source.study().file(), crop, first);
            }
        }
        for (StudySource source : sources) {
            for (String other : source.plots().otherSites()) {
                if (sites.stream().noneMatch(other::equalsIgnoreCase)) {
                    throw new InputException(CalibrationError.SITE_WITHOUT_WEATHER, other)
                            .at(source.plotFile().toString());
                }
            }
        }
    }

    private static InputException nothingLeft(List<DroppedValue> dropped) {
        if (dropped.isEmpty()) {
            return new InputException(CalibrationError.NO_OBSERVATIONS);
        }
        Map<String, Long> reasons = dropped.stream()
                .collect(Collectors.groupingBy(DroppedValue::reason, LinkedHashMap::new, Collectors.counting()));
        return new InputException(
                CalibrationError.NOTHING_LEFT,
                reasons.entrySet().stream()
                        .map(reason -> reason.getKey() + " (" + reason.getValue() + ")")
                        .collect(Collectors.joining("; ")));
    }

    private static void refuseAlike(List<Observation> used) {
        for (PlotVariable variable : PlotVariable.values()) {
            List<Observation> values = used.stream()
                    .filter(observation -> observation.variable() == variable)
                    .toList();
            boolean alike = values.size() > 2
                    && values.stream()
                                    .mapToDouble(Observation::value)
                                    .distinct()
                                    .count()
                            == 1;
            if (alike && variable.timing() != PlotVariable.Timing.DATE) {
                throw new InputException(
                                CalibrationError.ALL_ALIKE,
                                values.size(),
                                variable.key(),
                                values.get(0).value(),
                                variable.unit())
                        .at(values.get(0).file());
            }
        }
    }

    private static void sort(StudySource source, List<Observation> used, List<DroppedValue> dropped) {
        Map<Observation.StandKey, WatchedRun> runs = new LinkedHashMap<>();
        for (Observation observation : observationsOf(source)) {
            Optional<String> outside = outside(source, observation);
            if (outside.isPresent()) {
                dropped.add(new DroppedValue(observation, outside.get()));
                continue;
            }
            WatchedRun run = runs.computeIfAbsent(observation.stand(), key -> baseRun(source, key));
            Optional<String> reason = unsimulated(observation, run);
            if (reason.isPresent()) {
                dropped.add(new DroppedValue(observation, reason.get()));
            } else {
                used.add(observation);
            }
        }
    }

    private static WatchedRun baseRun(StudySource source, Observation.StandKey key) {
        FieldConditions field = source.field(key.zone(), key.plantingYear());
        int limit = source.study().weather().missingRainLimitDays();
        return new SeasonRuns(source.driversFor(key.plantingYear(), List.of()), field, limit).simulate(field, NO_DAYS);
    }

    private static List<Observation> observationsOf(StudySource source) {
        List<Observation> all = new ArrayList<>();
        String file = String.valueOf(source.plotFile().getFileName());
        for (PlotYield yield : source.plots().yields()) {
            all.add(new Observation(
                    source.site(),
                    yield.zone(),
                    yield.plot(),
                    yield.plantingYear(),
                    yield.growthYear(),
                    PlotVariable.YIELD,
                    null,
                    Double.NaN,
                    yield.yieldMgHa(),
                    yield.errorMgHa() > 0.0 ? yield.errorMgHa() : Double.NaN,
                    file,
                    yield.line()));
        }
        for (PlotObservation value : source.plots().observations()) {
            all.add(new Observation(
                    source.site(),
                    value.zone(),
                    value.plot(),
                    value.plantingYear(),
                    value.growthYear(),
                    value.variable(),
                    value.date(),
                    value.depthM(),
                    value.value(),
                    value.error(),
                    file,
                    value.line()));
        }
        return all;
    }

    private static Optional<String> outside(StudySource source, Observation observation) {
        WeatherSeries series = source.weather().series();
        Optional<YearSpan> years = source.study().years();
        if (years.isPresent() && !years.get().contains(observation.growthYear())) {
            return Optional.of("outside the years asked for");
        }
        LocalDate date = observation.date();
        boolean day = observation.variable().timing() == PlotVariable.Timing.DAY;
        if (day && date != null && (date.isBefore(series.start()) || date.isAfter(series.end()))) {
            return Optional.of("its date lies outside the weather");
        }
        LocalDate first = GrowthCalendar.firstDay(source.study().site(), observation.growthYear());
        if (first.isAfter(series.end()) || first.isBefore(series.start())) {
            return Optional.of("the weather does not hold its growth year");
        }
        double soilM = source.zone(observation.zone()).soil().depthM();
        if (observation.depthM() > soilM + 1e-9) {
            return Optional.of("deeper than the soil of its zone");
        }
        return Optional.empty();
    }

    private static Optional<String> unsimulated(Observation observation, WatchedRun run) {
        SeasonRecord season = SimulatedStand.season(run, observation.growthYear());
        if (season == null) {
            return Optional.of("no stand is simulated in its growth year");
        }
        return switch (observation.variable().timing()) {
            case HARVEST ->
                season.isComplete()
                        ? Optional.empty()
                        : Optional.of(season.status().words());
            case DAY -> Optional.empty();
            case DATE -> missing(observation, season);
        };
    }

    private static Optional<String> missing(Observation observation, SeasonRecord season) {
        @Nullable
        LocalDate simulated = observation.variable() == PlotVariable.EMERGENCE
                ? season.dates().emergence()
                : season.dates().canopyEnd();
        return simulated == null ? Optional.of("nothing of the kind is simulated in that year") : Optional.empty();
    }

    /** Returns whether any value is kept of a variable that is compared on the log scale but holds zeros, as a reason to leave them out. */
    PlotData without(PlotVariable variable, ErrorKind kind) {
        List<Observation> kept = new ArrayList<>();
        List<DroppedValue> left = new ArrayList<>(dropped);
        for (Observation observation : used) {
            boolean concerned = observation.variable() == variable;
            if (concerned && kind == ErrorKind.CV && observation.value() <= 0.0) {
                left.add(new DroppedValue(observation, "nothing, which has no share to be off by"));
            } else if (concerned && kind == ErrorKind.STATED && Double.isNaN(observation.statedError())) {
                left.add(new DroppedValue(observation, "no stated error, though others have one"));
            } else {
                kept.add(observation);
            }
        }
        return new PlotData(sources, kept, left, notices);
    }
}
