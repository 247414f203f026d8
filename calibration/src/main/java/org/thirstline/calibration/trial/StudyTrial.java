package org.thirstline.calibration.trial;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import org.thirstline.calibration.age.PlotYear;
import org.thirstline.calibration.age.TrialData;
import org.thirstline.io.plots.PlotError;
import org.thirstline.io.plots.PlotTable;
import org.thirstline.io.plots.PlotYield;
import org.thirstline.io.study.Study;
import org.thirstline.io.study.Zone;
import org.thirstline.io.text.YearSpan;
import org.thirstline.io.weather.WeatherRecord;
import org.thirstline.model.error.InputException;
import org.thirstline.model.result.SeasonRecord;
import org.thirstline.model.result.SeasonVariable;
import org.thirstline.model.weather.DailyDrivers;

/**
 * Plot yields beside what an unageing stand of the study gives in the same zone and year. Immutable and thread-safe.
 *
 * @param data the trial; without any simulated yield where the weather holds none of its years
 * @param seasons simulated seasons by planting and growth year, for every yield of the trial
 * @param notices what was left out, and why
 */
public record StudyTrial(TrialData data, Map<String, Map<Integer, SeasonRecord>> seasons, List<String> notices) {

    /** Copies the collections. */
    public StudyTrial {
        seasons = Map.copyOf(seasons);
        notices = List.copyOf(notices);
    }

    /**
     * Joins plots to the zones and years of a study. Years without a complete simulation are dropped, unless all are: then the yields are kept
     * alone, and nothing can be attributed.
     *
     * @param study the study
     * @param weather its weather
     * @param plots its plot yields
     * @throws InputException if no yield is left
     */
    public static StudyTrial of(Study study, WeatherRecord weather, PlotTable plots) {
        List<String> notices = new ArrayList<>(plots.notices());
        if (!plots.observations().isEmpty()) {
            notices.add(plots.observations().size()
                    + " plot values that are no yields are not needed here and were not used.");
        }
        List<PlotYield> asked = asked(study, plots.yields(), notices);
        if (asked.isEmpty()) {
            throw new InputException(PlotError.NO_YIELDS);
        }
        UnageingStand stand = new UnageingStand(study, DailyDrivers.of(study.site(), weather.series()));
        Map<String, Map<Integer, SeasonRecord>> seasons = new TreeMap<>();
        for (PlotYield plot : asked) {
            seasons.computeIfAbsent(
                    planting(plot), name -> stand.paired(zone(study, plot.zone()), plot.plantingYear()));
        }
        List<PlotYear> known = new ArrayList<>();
        Map<String, TreeSet<Integer>> without = new TreeMap<>();
        for (PlotYield plot : asked) {
            SeasonRecord season = seasons.getOrDefault(planting(plot), Map.of()).get(plot.growthYear());
            if (season != null && season.isComplete() && isSimulated(season)) {
                known.add(row(plot, season.value(SeasonVariable.HARVESTED)));
            } else {
                without.computeIfAbsent(why(season), reason -> new TreeSet<>()).add(plot.growthYear());
            }
        }
        if (known.isEmpty()) {
            notices.add("The weather (" + weather.series().start() + " to "
                    + weather.series().end()
                    + ") holds no complete growth year of the plot yields, so that nothing can be simulated beside them and no decline can be"
                    + " attributed to age.");
            return new StudyTrial(
                    TrialData.of(
                            asked.stream().map(plot -> row(plot, Double.NaN)).toList()),
                    Map.of(),
                    notices);
        }
        without.forEach((reason, years) -> notices.add("Plot yields of " + list(years) + " left out: " + reason + "."));
        return new StudyTrial(TrialData.of(known), seasons, notices);
    }

    private static boolean isSimulated(SeasonRecord season) {
        return season.value(SeasonVariable.HARVESTED) >= PlotYear.SMALLEST_YIELD;
    }

    private static List<PlotYield> asked(Study study, List<PlotYield> yields, List<String> notices) {
        Optional<YearSpan> span = study.years();
        if (span.isEmpty()) {
            return yields;
        }
        List<PlotYield> asked = yields.stream()
                .filter(plot -> span.get().contains(plot.growthYear()))
                .toList();
        if (asked.size() < yields.size()) {
            notices.add(yields.size() - asked.size() + " plot yields outside the years asked for ("
                    + span.get().first() + " to " + span.get().last() + ") left out.");
        }
        return asked;
    }

    private static String why(@Nullable SeasonRecord season) {
        if (season == null) {
            return "the weather does not hold that growth year";
        }
        return season.isComplete()
                ? "nothing to harvest was simulated"
                : season.status().words();
    }

    private static String list(TreeSet<Integer> years) {
        List<String> spans = new ArrayList<>();
        int first = years.first();
        int last = first;
        for (int year : years.tailSet(first, false)) {
            if (year > last + 1) {
                spans.add(span(first, last));
                first = year;
            }
            last = year;
        }
        spans.add(span(first, last));
        return String.join(", ", spans);
    }

    private static String span(int first, int last) {
        return first == last ? Integer.toString(first) : first + (last == first + 1 ? " and " : " to ") + last;
    }

    private static Zone zone(Study study, String name) {
        return study.zones().stream()
                .filter(zone -> zone.name().equals(name))
                .findFirst()
                .orElseThrow();
    }

    private static String planting(PlotYield plot) {
        return plot.zone() + ", planted " + plot.plantingYear();
    }

    private static PlotYear row(PlotYield plot, double simulatedMgHa) {
        return new PlotYear(
                plot.zone(),
                planting(plot),
                plot.plot(),
                plot.plantingYear(),
                plot.growthYear(),
                plot.yieldMgHa(),
                simulatedMgHa,
                plot.errorMgHa());
    }

    /** Returns the simulated season of a plot yield; empty without a simulation. */
    public Optional<SeasonRecord> season(PlotYear row) {
        return Optional.ofNullable(
                seasons.getOrDefault(row.planting(), Map.of()).get(row.growthYear()));
    }

    /** Returns the trial beside another unageing stand; years in which it has nothing to harvest are left out, and without any the yields stand alone. */
    TrialData simulatedWith(UnageingStand stand, Study study) {
        Map<String, Map<Integer, SeasonRecord>> others = new TreeMap<>();
        List<PlotYear> rows = new ArrayList<>();
        for (PlotYear row : data.rows()) {
            SeasonRecord season = others.computeIfAbsent(
                            row.planting(), name -> stand.actual(zone(study, row.site()), row.plantingYear()))
                    .get(row.growthYear());
            if (season != null && season.isComplete() && isSimulated(season)) {
                rows.add(new PlotYear(
                        row.site(),
                        row.planting(),
                        row.plot(),
                        row.plantingYear(),
                        row.growthYear(),
                        row.observedMgHa(),
                        season.value(SeasonVariable.HARVESTED),
                        row.errorMgHa()));
            }
        }
        return rows.isEmpty() ? data.withoutSimulation() : TrialData.of(rows);
    }
}
