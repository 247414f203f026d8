package org.thirstline.charts;

import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.random.RandomGenerator;
import java.util.random.RandomGeneratorFactory;
import java.util.stream.IntStream;
import org.thirstline.calibration.response.DroughtResponse;
import org.thirstline.charts.theme.ChartSize;
import org.thirstline.charts.theme.ChartTheme;
import org.thirstline.model.climate.SeasonClass;
import org.thirstline.model.result.SeasonRecord;
import org.thirstline.model.result.SeasonStatus;
import org.thirstline.model.result.SeasonVariable;

/** Every chart on ordinary and on awkward invented data. */
public final class Samples {

    private static final String SOURCE =
            "Simulated with Thirstline on invented weather of the Larkmoor field station. Soil 1.2 m deep.";

    static final String LONG_ZONE =
            "Lower terrace behind the old railway embankment, sandy loam over gravel with a seasonal water table";

    private Samples() {}

    static ChartStyle style(ChartTheme theme, ChartSize size) {
        return new ChartStyle(theme, size, UnitSystem.SI, SOURCE, true);
    }

    static Map<String, Function<ChartStyle, ChartDocument>> all() {
        TestStand thirty = TestStand.of(1994, 30);
        TestStand sixty = TestStand.of(1961, 60);
        TestStand one = TestStand.of(2020, 2);
        Map<String, Function<ChartStyle, ChartDocument>> charts = new LinkedHashMap<>();
        charts.put("yield", style -> YieldByYearChart.of(yields(thirty, "East field"), style));
        charts.put("yield-60", style -> YieldByYearChart.of(yields(sixty, ""), style));
        charts.put("yield-1", style -> YieldByYearChart.of(yields(one, "East field"), style));
        charts.put("season-dry", style -> SeasonChart.of(season(thirty, true), style));
        charts.put("season-wet", style -> SeasonChart.of(season(thirty, false), style));
        charts.put("season-last", style -> SeasonChart.of(last(thirty), style));
        charts.put("response", style -> DroughtResponseChart.of(response(thirty, 30), style));
        charts.put("response-60", style -> DroughtResponseChart.of(response(sixty, 60), style));
        charts.put("response-few", style -> DroughtResponseChart.of(response(thirty, 4), style));
        charts.put("response-flat", style -> DroughtResponseChart.of(scatter(9, 0.0, 0.0), style));
        charts.put("response-straight", style -> DroughtResponseChart.of(scatter(24, 0.02, -1e9), style));
        charts.put("response-same", style -> DroughtResponseChart.of(sameDeficit(), style));
        charts.put(
                "ledger-mean", style -> LedgerChart.of(new LedgerView("East field", thirty.result.ledgers()), style));
        charts.put("ledger-1", style -> LedgerChart.of(new LedgerView("", one.result.ledgers()), style));
        charts.put("compare", style -> CompareChart.of(compare(thirty), style));
        charts.put("harvest", style -> HarvestWindowChart.of(window(thirty), style));
        charts.put("age", style -> StandAgeChart.of(age(thirty), style));
        charts.put("yield-equal", style -> YieldByYearChart.of(madeUp("", 12, -0.0, 0), style));
        charts.put("yield-gaps", style -> YieldByYearChart.of(madeUp(LONG_ZONE, 9, 2.0, 3), style));
        charts.put("yield-none", style -> YieldByYearChart.of(madeUp(LONG_ZONE, 3, 2.0, 1), style));
        charts.put(
                "response-long",
                style -> DroughtResponseChart.of(
                        new ResponseView(
                                LONG_ZONE,
                                response(thirty, 30).response(),
                                response(thirty, 30).points(),
                                ""),
                        style));
        charts.put(
                "season-one",
                style -> SeasonChart.of(view(one, one.result.seasons().get(0)), style));
        charts.put("age-1", style -> StandAgeChart.of(age(one), style));
        charts.put("age-60", style -> StandAgeChart.of(age(sixty), style));
        charts.put(
                "compare-5",
                style -> CompareChart.of(
                        new CompareView(
                                LONG_ZONE,
                                sixty.result.seasons().subList(10, 15).stream()
                                        .map(season -> view(sixty, season))
                                        .toList()),
                        style));
        YearSamples.addTo(charts, sixty, thirty, one);
        BandSamples.addTo(charts, sixty, thirty, one);
        AwkwardSamples.addTo(charts, thirty, one);
        charts.putAll(ClimateSamples.all());
        AgeSamples.all().forEach((name, chart) -> charts.put("age-or-weather-" + name, chart));
        charts.putAll(CalibrationSamples.all());
        return charts;
    }

    /** The charts of an ordinary report. */
    public static List<ChartDocument> forReport() {
        TestStand stand = TestStand.of(1994, 30);
        ChartStyle style = style(ChartTheme.LIGHT, ChartSize.PAGE);
        return List.of(
                YieldByYearChart.of(yields(stand, "East field"), style),
                DroughtResponseChart.of(response(stand, 30), style),
                LedgerChart.of(new LedgerView("East field", stand.result.ledgers()), style),
                SeasonChart.of(season(stand, true), style));
    }

    /** A chart for a slide. */
    public static ChartDocument forSlide(ChartTheme theme, ChartSize size) {
        return DroughtResponseChart.of(response(TestStand.of(1994, 30), 30), style(theme, size));
    }

    private static SeasonRecord extreme(TestStand stand, boolean dry) {
        Comparator<SeasonRecord> byLoss =
                Comparator.comparingDouble(season -> season.value(SeasonVariable.DROUGHT_PENALTY));
        var old = stand.result.completeSeasons().stream().filter(season -> season.standAge() > 3);
        return dry ? old.max(byLoss).orElseThrow() : old.min(byLoss).orElseThrow();
    }

    static SeasonView season(TestStand stand, boolean dry) {
        return view(stand, extreme(stand, dry));
    }

    static SeasonView last(TestStand stand) {
        return view(stand, stand.result.seasons().get(stand.result.seasons().size() - 1));
    }

    static SeasonView view(TestStand stand, SeasonRecord season) {
        return new SeasonView(
                "East field",
                season,
                stand.result.daily(),
                stand.soil,
                stand.classes().get(season.growthYear()));
    }

    static ResponseView response(TestStand stand, int years) {
        List<ResponseView.Point> points = stand.result.completeSeasons().stream()
                .filter(season -> stand.deficit.deficitMm(season.growthYear()).isPresent())
                .limit(years)
                .map(season -> new ResponseView.Point(
                        season.growthYear(),
                        stand.deficit.deficitMm(season.growthYear()).orElseThrow(),
                        season.value(SeasonVariable.DROUGHT_PENALTY),
                        stand.classes().get(season.growthYear())))
                .toList();
        return response("East field", points);
    }

    static ResponseView scatter(int years, double slope, double threshold) {
        RandomGenerator random = RandomGeneratorFactory.of("L64X128MixRandom").create(7L);
        List<ResponseView.Point> points = IntStream.range(0, years)
                .mapToObj(i -> {
                    double deficit = 120.0 * random.nextGaussian();
                    double loss = 3.0 + slope * Math.max(threshold, deficit) + random.nextGaussian();
                    SeasonClass seasonClass =
                            deficit > 50 ? SeasonClass.DRY : deficit < -50 ? SeasonClass.WET : SeasonClass.MIDDLE;
                    return new ResponseView.Point(2000 + i, deficit, loss, seasonClass);
                })
                .toList();
        return response("", points);
    }

    static ResponseView sameDeficit() {
        return response(
                "West field",
                IntStream.range(0, 6)
                        .mapToObj(i -> new ResponseView.Point(2001 + i, -0.0, -0.0, null))
                        .toList());
    }

    private static ResponseView response(String zone, List<ResponseView.Point> points) {
        DroughtResponse fit = DroughtResponse.fit(
                points.stream().mapToDouble(ResponseView.Point::deficitMm).toArray(),
                points.stream().mapToDouble(ResponseView.Point::penaltyMgHa).toArray(),
                points.stream().mapToInt(ResponseView.Point::year).toArray());
        return new ResponseView(zone, fit, points, "1 Apr to 30 Sep, normal of the whole record");
    }

    static CompareView compare(TestStand stand) {
        return new CompareView(
                "East field",
                List.of(season(stand, true), view(stand, stand.result.seasons().get(14)), season(stand, false)));
    }

    /** Years that all yield the same; every so manieth has no comparable yield. */
    static YieldByYear madeUp(String zone, int years, double penaltyMgHa, int gapEvery) {
        SeasonRecord.Dates none = new SeasonRecord.Dates(null, null, null, null, null);
        List<SeasonRecord> seasons = IntStream.range(0, years)
                .mapToObj(i -> {
                    boolean gap = gapEvery > 0 && i % gapEvery == 0;
                    double[] values = new double[SeasonVariable.values().length];
                    values[SeasonVariable.HARVESTED.ordinal()] = gap ? Double.NaN : 15.0;
                    values[SeasonVariable.DROUGHT_PENALTY.ordinal()] = gap ? Double.NaN : penaltyMgHa;
                    SeasonStatus status = gap ? SeasonStatus.WEATHER_GAPS : SeasonStatus.COMPLETE;
                    return new SeasonRecord(2001 + i, 3 + i, status, none, values);
                })
                .toList();
        return new YieldByYear(zone, seasons, Map.of());
    }

    static HarvestWindowView window(TestStand stand) {
        return new HarvestWindowView("East field", extreme(stand, false), stand.result.daily(), 20.0);
    }

    static StandAgeView age(TestStand stand) {
        return new StandAgeView("East field", stand.result.seasons(), stand.result.ledgers(), stand.classes());
    }

    static YieldByYear yields(TestStand stand, String zone) {
        return new YieldByYear(zone, stand.result.seasons(), stand.classes());
    }
}
