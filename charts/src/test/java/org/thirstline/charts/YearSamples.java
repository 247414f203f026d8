package org.thirstline.charts;

import java.time.MonthDay;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import org.thirstline.calibration.response.DroughtResponse;
import org.thirstline.calibration.years.HarvestDates;
import org.thirstline.calibration.years.IrrigationSweep;
import org.thirstline.calibration.years.PenaltySplit;
import org.thirstline.calibration.years.ThirstTable;
import org.thirstline.calibration.years.YieldRisk;
import org.thirstline.calibration.years.ZoneComparison;
import org.thirstline.model.climate.SeasonClass;
import org.thirstline.model.result.SeasonVariable;
import org.thirstline.model.result.YieldLedger;

/** Charts about many years, on ordinary and on awkward invented data. */
final class YearSamples {

    private YearSamples() {}

    static void addTo(
            Map<String, Function<ChartStyle, ChartDocument>> charts, TestStand sixty, TestStand thirty, TestStand one) {
        charts.put("split", style -> PenaltySplitChart.of(new PenaltySplitView("East field", split(thirty)), style));
        charts.put("split-60", style -> PenaltySplitChart.of(new PenaltySplitView("", split(sixty)), style));
        charts.put("split-1", style -> PenaltySplitChart.of(new PenaltySplitView("East", split(one)), style));
        charts.put("split-gain", style -> PenaltySplitChart.of(new PenaltySplitView("East", gains()), style));
        charts.put(
                "split-none",
                style -> PenaltySplitChart.of(new PenaltySplitView("", new PenaltySplit(List.of())), style));
        charts.put("ledgers", style -> LedgersChart.of(ledgers(thirty, 3), style));
        charts.put("ledgers-5", style -> LedgersChart.of(ledgers(sixty, 5), style));
        charts.put("thirst", style -> ThirstTableChart.of(thirst(24, 9), style));
        charts.put("thirst-few", style -> ThirstTableChart.of(thirst(4, 9), style));
        charts.put("thirst-narrow", style -> ThirstTableChart.of(thirst(24, 2), style));
        charts.put("soil-water", style -> SoilWaterCompareChart.of(Samples.compare(thirty), style));
        charts.put(
                "soil-water-5",
                style -> SoilWaterCompareChart.of(
                        new CompareView(
                                Samples.LONG_ZONE,
                                sixty.result.seasons().subList(10, 15).stream()
                                        .map(season -> Samples.view(sixty, season))
                                        .toList()),
                        style));
        charts.put("risk", style -> ExceedanceChart.of(risk(2, 27, OptionalDouble.of(14.0)), style));
        charts.put("risk-4", style -> ExceedanceChart.of(risk(4, 60, OptionalDouble.empty()), style));
        charts.put("risk-1", style -> ExceedanceChart.of(risk(1, 1, OptionalDouble.of(40.0)), style));
        charts.put("risk-0", style -> ExceedanceChart.of(risk(1, 0, OptionalDouble.empty()), style));
        charts.put("zones", style -> ZonesChart.of(zones(2), style));
        charts.put("zones-6", style -> ZonesChart.of(zones(6), style));
        charts.put("irrigation", style -> IrrigationChart.of(irrigation(30.0), 10.0, style));
        charts.put("irrigation-never", style -> IrrigationChart.of(irrigation(0.0), 10.0, style));
        charts.put("irrigation-scant", style -> IrrigationChart.of(irrigation(1.0), 10.0, style));
        charts.put("harvest-dates", style -> HarvestDatesChart.of(dates(13), style));
        charts.put("harvest-dates-1", style -> HarvestDatesChart.of(dates(1), style));
        charts.put("harvest-dates-0", style -> HarvestDatesChart.of(dates(0), style));
        charts.put("response-et0", style -> DroughtResponseChart.of(beyondRain(), style));
    }

    private static PenaltySplit split(TestStand stand) {
        return new PenaltySplit(stand.result.completeSeasons().stream()
                .map(season -> new PenaltySplit.Year(
                        season.growthYear(),
                        season.value(SeasonVariable.PENALTY_THIS_SEASON),
                        season.value(SeasonVariable.PENALTY_CARRIED_OVER),
                        stand.classes().get(season.growthYear() - 1) == SeasonClass.DRY))
                .toList());
    }

    private static PenaltySplit gains() {
        return new PenaltySplit(List.of(
                new PenaltySplit.Year(2001, 4.0, -1.0, true),
                new PenaltySplit.Year(2002, -2.0, -1.0, false),
                new PenaltySplit.Year(2003, 3.0, 2.0, false)));
    }

    private static LedgersView ledgers(TestStand stand, int groups) {
        List<YieldLedger> all = stand.result.ledgers();
        List<LedgersView.Group> parts = new ArrayList<>();
        for (int i = 0; i < groups; i++) {
            SeasonClass kind = groups == 3 ? SeasonClass.values()[i] : null;
            String name = kind == null ? "A long name of a zone " + i : kind.word() + " years";
            int size = all.size() / groups;
            parts.add(new LedgersView.Group(name, kind, all.subList(i * size, (i + 1) * size)));
        }
        return new LedgersView(groups == 3 ? "East field" : "", "the years of each", parts);
    }

    private static ThirstTable thirst(int years, int rungs) {
        List<ThirstTable.Rung> ladder = new ArrayList<>();
        for (int i = 0; i < rungs; i++) {
            ResponseView view = Samples.scatter(years, 0.05 - 0.004 * i, -20.0 + 10.0 * i);
            double wettest = view.points().stream()
                    .mapToDouble(ResponseView.Point::deficitMm)
                    .min()
                    .orElseThrow();
            double driest = view.points().stream()
                    .mapToDouble(ResponseView.Point::deficitMm)
                    .max()
                    .orElseThrow();
            ladder.add(
                    new ThirstTable.Rung(60.0 + 30.0 * i, 0.4 + 0.2 * i, view.response(), wettest, driest - 40.0 * i));
        }
        return new ThirstTable("East field", ladder, 1.8);
    }

    private static RiskView risk(int zones, int years, OptionalDouble target) {
        List<RiskView.ZoneRisk> list = new ArrayList<>();
        for (int zone = 0; zone < zones; zone++) {
            List<YieldRisk.YearYield> yields = new ArrayList<>();
            for (int year = 0; year < years; year++) {
                yields.add(new YieldRisk.YearYield(1960 + year, 18.0 - 3.0 * zone + 4.0 * Math.sin(7.0 * year)));
            }
            String name = zone == 3 ? Samples.LONG_ZONE : "zone " + zone;
            list.add(new RiskView.ZoneRisk(name, new YieldRisk(yields)));
        }
        return new RiskView(list, target);
    }

    private static ZoneComparison zones(int count) {
        List<ZoneComparison.Row> rows = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            String name = i == 1 ? Samples.LONG_ZONE : "zone " + i;
            rows.add(new ZoneComparison.Row(
                    name,
                    2.0,
                    90.0,
                    17.0 - 2.0 * i,
                    9.0 - i,
                    22.0 - i,
                    1.0 + i,
                    i == 2 ? 2.5 : 0.0,
                    new YieldRisk(List.of())));
        }
        return new ZoneComparison(rows, List.of(2001, 2002, 2003), Optional.empty());
    }

    private static IrrigationSweep irrigation(double waterMm) {
        double[] depletions = {Double.NaN, 0.95, 0.9, 0.85, 0.8, 0.7, 0.6, 0.5, 0.4, 0.3};
        List<IrrigationSweep.Step> steps = new ArrayList<>();
        for (int i = 0; i < depletions.length; i++) {
            double gain = waterMm == 0.0 ? 0.0 : 6.0 * (1.0 - Math.exp(-0.5 * i));
            steps.add(new IrrigationSweep.Step(depletions[i], waterMm * i, 11.0 + gain, 0.2 * gain, 2.0 * gain));
        }
        return new IrrigationSweep("East field", 23.0, steps);
    }

    private static HarvestDates dates(int count) {
        List<HarvestDates.CutDate> dates = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            MonthDay day = MonthDay.of((9 + i / 2) % 12 + 1, i % 2 == 0 ? 1 : 15);
            double mass = 15.0 - 0.3 * i;
            double moist = 14.0 + 50.0 * Math.exp(-0.2 * i);
            dates.add(new HarvestDates.CutDate(
                    day,
                    27,
                    new HarvestDates.Spread(mass, mass - 4.0, mass + 4.0),
                    new HarvestDates.Spread(moist, moist - 6.0, moist + 9.0),
                    i / 13.0,
                    0.8,
                    0.8 * i / 13.0));
        }
        return new HarvestDates("East field", 20.0, 0.95, dates, List.of());
    }

    private static ResponseView beyondRain() {
        List<ResponseView.Point> points = Samples.scatter(24, 0.02, -1e9).points().stream()
                .map(point -> new ResponseView.Point(
                        point.year(), point.deficitMm() + 600.0, point.penaltyMgHa(), point.seasonClass()))
                .toList();
        DroughtResponse fit = DroughtResponse.fit(
                points.stream().mapToDouble(ResponseView.Point::deficitMm).toArray(),
                points.stream().mapToDouble(ResponseView.Point::penaltyMgHa).toArray(),
                points.stream().mapToInt(ResponseView.Point::year).toArray());
        return new ResponseView("East field", fit, points, "", "ET0 beyond rain in the growing season");
    }
}
