package org.thirstline.cli;

import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.thirstline.calibration.bands.Band;
import org.thirstline.calibration.bands.ZoneBands;
import org.thirstline.calibration.study.StudyOutcome;
import org.thirstline.calibration.study.ZoneOutcome;
import org.thirstline.calibration.years.FullGrown;
import org.thirstline.calibration.years.PenaltySplit;
import org.thirstline.charts.ChartDocument;
import org.thirstline.charts.ChartStyle;
import org.thirstline.charts.CompareChart;
import org.thirstline.charts.CompareView;
import org.thirstline.charts.DroughtResponseChart;
import org.thirstline.charts.HarvestWindowChart;
import org.thirstline.charts.HarvestWindowView;
import org.thirstline.charts.LedgerChart;
import org.thirstline.charts.LedgerView;
import org.thirstline.charts.LedgersChart;
import org.thirstline.charts.LedgersView;
import org.thirstline.charts.PenaltySplitChart;
import org.thirstline.charts.PenaltySplitView;
import org.thirstline.charts.ResponseView;
import org.thirstline.charts.SeasonChart;
import org.thirstline.charts.SeasonView;
import org.thirstline.charts.SoilWaterCompareChart;
import org.thirstline.charts.StandAgeChart;
import org.thirstline.charts.StandAgeView;
import org.thirstline.charts.YieldByYear;
import org.thirstline.charts.YieldByYearChart;
import org.thirstline.model.climate.Normals;
import org.thirstline.model.climate.SeasonClass;
import org.thirstline.model.result.SeasonRecord;
import org.thirstline.model.result.SeasonVariable;
import org.thirstline.model.result.YieldLedger;

/** The charts of one zone: which there are, and what each is made from. Immutable and thread-safe. */
final class ZoneCharts {

    private static final DateTimeFormatter DAY_MONTH = DateTimeFormatter.ofPattern("d MMM", Locale.ENGLISH);

    private final StudyOutcome outcome;
    private final ZoneOutcome zone;

    ZoneCharts(StudyOutcome outcome, ZoneOutcome zone) {
        this.outcome = outcome;
        this.zone = zone;
    }

    /**
     * A chart that can be drawn in any style.
     *
     * @param id stem of its file name
     * @param recipe draws it
     */
    record Recipe(String id, Function<ChartStyle, ChartDocument> recipe) {}

    /** Returns the charts that this zone's years can carry, in the order of the report. */
    List<Recipe> recipes() {
        List<Recipe> recipes = new ArrayList<>();
        String name = zone.zone().name();
        String suffix = "-" + slug(name);
        YieldByYear years = new YieldByYear(name, zone.stand().seasons(), outcome.classes(), harvestBands());
        recipes.add(new Recipe("yield-by-year" + suffix, style -> YieldByYearChart.of(years, style)));
        ResponseView response = response();
        recipes.add(new Recipe("drought-response" + suffix, style -> DroughtResponseChart.of(response, style)));
        driest().ifPresent(season -> recipes.add(season("season-driest" + suffix, season)));
        wettest()
                .filter(season -> driest().filter(dry -> dry != season).isPresent())
                .ifPresent(season -> recipes.addAll(compare(suffix, season)));
        List<YieldLedger> ledgers = FullGrown.ledgers(zone);
        if (!ledgers.isEmpty()) {
            LedgerView mean = new LedgerView(name, ledgers);
            recipes.add(new Recipe("ledger" + suffix, style -> LedgerChart.of(mean, style)));
        }
        PenaltySplit split = PenaltySplit.of(zone, outcome.classes());
        if (!split.years().isEmpty()) {
            PenaltySplitView parts = new PenaltySplitView(name, split);
            recipes.add(new Recipe("penalty-split" + suffix, style -> PenaltySplitChart.of(parts, style)));
        }
        classLedgers()
                .ifPresent(view ->
                        recipes.add(new Recipe("ledger-dry-wet" + suffix, style -> LedgersChart.of(view, style))));
        StandAgeView ages =
                new StandAgeView(name, zone.stand().seasons(), zone.stand().ledgers(), outcome.classes());
        recipes.add(new Recipe("stand-age" + suffix, style -> StandAgeChart.of(ages, style)));
        lastComplete().ifPresent(season -> recipes.add(harvest("harvest-window" + suffix, season)));
        return recipes;
    }

    ResponseView response() {
        List<ResponseView.Point> points = zone.responseSeasons().stream()
                .map(season -> new ResponseView.Point(
                        season.growthYear(),
                        season.value(SeasonVariable.RAIN_DEFICIT),
                        season.value(SeasonVariable.DROUGHT_PENALTY),
                        outcome.classes().get(season.growthYear()),
                        bands().map(bands -> bands.penalty(season.growthYear())).orElse(null)))
                .toList();
        Normals normals = outcome.deficit().normals();
        List<Integer> used = normals.yearsUsed();
        String meaning = day(outcome.study().season().from().atYear(2001)) + " to "
                + day(outcome.study().season().until().atYear(2001)) + ", normal of " + used.get(0) + " to "
                + used.get(used.size() - 1);
        return new ResponseView(zone.zone().name(), zone.response(), points, meaning).withSlopes(slopes());
    }

    Optional<ZoneBands> bands() {
        return outcome.bands().map(bands -> bands.zone(zone.zone().name()));
    }

    private Map<Integer, Band> harvestBands() {
        return bands().map(bands -> zone.stand().completeSeasons().stream()
                        .collect(Collectors.toMap(
                                SeasonRecord::growthYear, season -> bands.harvested(season.growthYear()))))
                .orElse(Map.of());
    }

    /** Returns what the draws make of the slope of the straight line, rain being the same in all of them; absent without bands or a line. */
    Optional<Band> slopes() {
        return bands().filter(bands -> zone.response().line().isPresent())
                .map(bands -> bands.slope(
                        zone.responseSeasons().stream()
                                .mapToInt(SeasonRecord::growthYear)
                                .toArray(),
                        zone.responseSeasons().stream()
                                .mapToDouble(season -> season.value(SeasonVariable.RAIN_DEFICIT))
                                .toArray()));
    }

    private static String day(LocalDate date) {
        return DAY_MONTH.format(date);
    }

    SeasonView view(SeasonRecord season) {
        return new SeasonView(
                zone.zone().name(),
                season,
                zone.stand().daily(),
                zone.zone().soil(),
                outcome.classes().get(season.growthYear()));
    }

    private Recipe season(String id, SeasonRecord season) {
        SeasonView view = view(season);
        return new Recipe(id, style -> SeasonChart.of(view, style));
    }

    private List<Recipe> compare(String suffix, SeasonRecord wet) {
        List<SeasonView> views = driest().stream().map(this::view).collect(Collectors.toCollection(ArrayList::new));
        views.add(view(wet));
        CompareView pair = new CompareView(zone.zone().name(), views);
        List<Recipe> recipes = new ArrayList<>();
        recipes.add(new Recipe("dry-against-wet" + suffix, style -> CompareChart.of(pair, style)));
        recipes.addAll(topics(suffix, pair));
        return recipes;
    }

    /** What happened in seasons laid side by side, a chart for each side of it. */
    static List<Recipe> topics(String suffix, CompareView view) {
        return List.of(
                new Recipe("water-so-far" + suffix, style -> CompareChart.water(view, style)),
                new Recipe("soil-water" + suffix, style -> SoilWaterCompareChart.of(view, style)),
                new Recipe("canopy" + suffix, style -> CompareChart.canopy(view, style)),
                new Recipe("growth" + suffix, style -> CompareChart.growth(view, style)));
    }

    private Recipe harvest(String id, SeasonRecord season) {
        HarvestWindowView view = new HarvestWindowView(
                zone.zone().name(),
                season,
                zone.stand().daily(),
                Math.min(20.0, outcome.study().management().harvest().maxMoisturePct()));
        return new Recipe(id, style -> HarvestWindowChart.of(view, style));
    }

    private Optional<SeasonRecord> driest() {
        return zone.responseSeasons().stream()
                .max(Comparator.comparingDouble(season -> season.value(SeasonVariable.RAIN_DEFICIT)));
    }

    private Optional<SeasonRecord> wettest() {
        return zone.responseSeasons().stream()
                .min(Comparator.comparingDouble(season -> season.value(SeasonVariable.RAIN_DEFICIT)));
    }

    private Optional<SeasonRecord> lastComplete() {
        List<SeasonRecord> complete = zone.stand().completeSeasons();
        return complete.isEmpty() ? Optional.empty() : Optional.of(complete.get(complete.size() - 1));
    }

    /** Mean ledgers of dry, middle and wet years, where at least two classes have years. */
    Optional<LedgersView> classLedgers() {
        List<LedgersView.Group> groups = new ArrayList<>();
        for (SeasonClass kind : SeasonClass.values()) {
            List<YieldLedger> ledgers = FullGrown.ledgers(zone).stream()
                    .filter(ledger -> outcome.classes().get(ledger.growthYear()) == kind)
                    .toList();
            if (!ledgers.isEmpty()) {
                groups.add(new LedgersView.Group(kind.word() + " years", kind, ledgers));
            }
        }
        return groups.size() < 2
                ? Optional.empty()
                : Optional.of(new LedgersView(zone.zone().name(), "dry, middle and wet years", groups));
    }

    /** Turns a zone's name into part of a file name. */
    static String slug(String name) {
        String slug =
                name.toLowerCase(Locale.ROOT).replaceAll("[^a-z0-9]+", "-").replaceAll("^-+|-+$", "");
        return slug.isEmpty() ? "zone" : slug;
    }
}
