package org.thirstline.charts;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.IntStream;
import org.thirstline.calibration.response.DroughtResponse;
import org.thirstline.calibration.years.IrrigationSweep;
import org.thirstline.calibration.years.PenaltySplit;
import org.thirstline.model.result.SeasonRecord;
import org.thirstline.model.result.SeasonVariable;
import org.thirstline.model.result.YieldLedger;

/** Charts on data that nobody draws for: the southern half of the globe, one year, huge values, all the same, minus zero. */
final class AwkwardSamples {

    private static final double HUGE = 40_000.0;

    private AwkwardSamples() {}

    static void addTo(Map<String, Function<ChartStyle, ChartDocument>> charts, TestStand thirty, TestStand one) {
        topics(charts, "", Samples.compare(thirty));
        topics(charts, "-6-long", many(thirty));
        topics(charts, "-1", new CompareView("East field", List.of(first(one))));
        stands(charts, "-south", TestStand.southern(1994, 20));
        huge(charts);
        same(charts);
    }

    private static SeasonView first(TestStand stand) {
        return Samples.view(stand, stand.result.seasons().get(0));
    }

    private static CompareView many(TestStand stand) {
        List<SeasonView> views = new ArrayList<>();
        // The last one has no harvest yet.
        for (SeasonRecord season : stand.result.seasons().subList(24, 30)) {
            views.add(Samples.view(stand, season));
        }
        return new CompareView(Samples.LONG_ZONE, views);
    }

    private static void topics(
            Map<String, Function<ChartStyle, ChartDocument>> charts, String suffix, CompareView view) {
        charts.put("water-so-far" + suffix, style -> CompareChart.water(view, style));
        charts.put("growth" + suffix, style -> CompareChart.growth(view, style));
        charts.put("canopy" + suffix, style -> CompareChart.canopy(view, style));
        if (!suffix.isEmpty()) {
            charts.put("compare" + suffix, style -> CompareChart.of(view, style));
            charts.put("soil-water" + suffix, style -> SoilWaterCompareChart.of(view, style));
        }
    }

    private static void stands(
            Map<String, Function<ChartStyle, ChartDocument>> charts, String suffix, TestStand stand) {
        charts.put("yield" + suffix, style -> YieldByYearChart.of(Samples.yields(stand, "Paddock"), style));
        charts.put("season" + suffix, style -> SeasonChart.of(Samples.season(stand, true), style));
        charts.put("response" + suffix, style -> DroughtResponseChart.of(Samples.response(stand, 20), style));
        charts.put("age" + suffix, style -> StandAgeChart.of(Samples.age(stand), style));
        charts.put("harvest" + suffix, style -> HarvestWindowChart.of(Samples.window(stand), style));
        charts.put(
                "ledger" + suffix, style -> LedgerChart.of(new LedgerView("Paddock", stand.result.ledgers()), style));
        topics(charts, suffix, Samples.compare(stand));
    }

    private static void huge(Map<String, Function<ChartStyle, ChartDocument>> charts) {
        charts.put("yield-huge", style -> YieldByYearChart.of(years(HUGE, HUGE / 3.0), style));
        charts.put("age-huge", style -> StandAgeChart.of(ages(HUGE), style));
        charts.put("response-huge", style -> DroughtResponseChart.of(responses(HUGE), style));
        YieldLedger ledger = ledger(HUGE);
        charts.put("ledger-huge", style -> LedgerChart.of(new LedgerView("", List.of(ledger)), style));
        charts.put("ledgers-huge", style -> LedgersChart.of(ledgers(ledger), style));
        charts.put("split-huge", style -> PenaltySplitChart.of(split(HUGE), style));
        charts.put("irrigation-huge", style -> IrrigationChart.of(sweep(HUGE), 10.0, style));
    }

    private static void same(Map<String, Function<ChartStyle, ChartDocument>> charts) {
        charts.put("age-equal", style -> StandAgeChart.of(ages(15.0), style));
        YieldLedger ledger = ledger(-0.0);
        charts.put("ledger-zero", style -> LedgerChart.of(new LedgerView("", List.of(ledger)), style));
        charts.put("ledgers-zero", style -> LedgersChart.of(ledgers(ledger), style));
        charts.put("split-zero", style -> PenaltySplitChart.of(split(-0.0), style));
        charts.put("irrigation-equal", style -> IrrigationChart.of(sweep(-0.0), 10.0, style));
    }

    private static YieldByYear years(double harvested, double penalty) {
        YieldByYear equal = Samples.madeUp(Samples.LONG_ZONE, 12, penalty, 4);
        List<SeasonRecord> seasons = equal.seasons().stream()
                .map(season -> {
                    double[] values = Arrays.stream(SeasonVariable.values())
                            .mapToDouble(season::value)
                            .toArray();
                    int at = SeasonVariable.HARVESTED.ordinal();
                    values[at] = Double.isNaN(values[at]) ? Double.NaN : harvested;
                    return new SeasonRecord(
                            season.growthYear(), season.standAge(), season.status(), season.dates(), values);
                })
                .toList();
        return new YieldByYear(equal.zone(), seasons, equal.classes());
    }

    private static StandAgeView ages(double harvested) {
        YieldByYear years = years(harvested, -0.0);
        List<YieldLedger> ledgers = years.complete().stream()
                .map(season -> ledger(season.growthYear(), harvested))
                .toList();
        return new StandAgeView(years.zone(), years.seasons(), ledgers, years.classes());
    }

    private static ResponseView responses(double factor) {
        List<ResponseView.Point> points = Samples.scatter(24, 0.02, -1e9).points().stream()
                .map(point -> new ResponseView.Point(
                        point.year(), factor * point.deficitMm(), factor * point.penaltyMgHa(), point.seasonClass()))
                .toList();
        DroughtResponse fit = DroughtResponse.fit(
                points.stream().mapToDouble(ResponseView.Point::deficitMm).toArray(),
                points.stream().mapToDouble(ResponseView.Point::penaltyMgHa).toArray(),
                points.stream().mapToInt(ResponseView.Point::year).toArray());
        return new ResponseView(Samples.LONG_ZONE, fit, points, "1 Apr to 30 Sep");
    }

    private static YieldLedger ledger(double size) {
        return ledger(2012, size);
    }

    private static YieldLedger ledger(int year, double size) {
        return new YieldLedger(year, size, 0.1 * size, 0.2 * size, -0.0, 0.0, 0.1 * size, 0.1 * size, 0.5 * size);
    }

    private static LedgersView ledgers(YieldLedger ledger) {
        List<LedgersView.Group> groups = IntStream.range(0, 3)
                .mapToObj(i -> new LedgersView.Group(Samples.LONG_ZONE + " " + i, null, List.of(ledger)))
                .toList();
        return new LedgersView(Samples.LONG_ZONE, "the full-grown years of each zone", groups);
    }

    private static PenaltySplitView split(double size) {
        return new PenaltySplitView(
                Samples.LONG_ZONE,
                new PenaltySplit(IntStream.range(2001, 2013)
                        .mapToObj(year -> new PenaltySplit.Year(year, size, 0.3 * size, year % 2 == 0))
                        .toList()));
    }

    private static IrrigationSweep sweep(double size) {
        List<IrrigationSweep.Step> steps = IntStream.range(0, 8)
                .mapToObj(i -> new IrrigationSweep.Step(
                        i == 0 ? Double.NaN : 1.0 - 0.1 * i, size * i, size * (1.0 + i), size, 2.0 * size))
                .toList();
        return new IrrigationSweep(Samples.LONG_ZONE, 23.0, steps);
    }
}
