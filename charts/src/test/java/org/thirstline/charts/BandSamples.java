package org.thirstline.charts;

import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.thirstline.calibration.bands.Band;
import org.thirstline.calibration.years.YieldRisk;
import org.thirstline.model.result.SeasonRecord;
import org.thirstline.model.result.SeasonVariable;

/** Charts with what a calibration leaves possible, on invented bands: ordinary, without width, wider than anything else, of no draw. */
final class BandSamples {

    private static final int DRAWS = 200;

    private BandSamples() {}

    static void addTo(
            Map<String, Function<ChartStyle, ChartDocument>> charts, TestStand sixty, TestStand thirty, TestStand one) {
        charts.put("yield-bands", style -> YieldByYearChart.of(yields(thirty, 1.2), style));
        charts.put("yield-bands-60", style -> YieldByYearChart.of(yields(sixty, 9.0), style));
        charts.put("yield-bands-1", style -> YieldByYearChart.of(yields(one, 0.0), style));
        charts.put("response-bands", style -> DroughtResponseChart.of(response(thirty, 1.0), style));
        charts.put("response-bands-wide", style -> DroughtResponseChart.of(response(sixty, 12.0), style));
        charts.put("response-bands-none", style -> DroughtResponseChart.of(response(thirty, Double.NaN), style));
        charts.put("exceedance-bands", style -> ExceedanceChart.of(risk(3, 1.0), style));
        charts.put("exceedance-bands-wide", style -> ExceedanceChart.of(risk(2, 12.0), style));
    }

    private static Band about(double value, double halfWidth) {
        if (Double.isNaN(halfWidth)) {
            return Band.of(new double[0]);
        }
        return new Band(
                DRAWS,
                value - halfWidth,
                value - 0.4 * halfWidth,
                value + 0.1 * halfWidth,
                value + 0.5 * halfWidth,
                value + 1.1 * halfWidth);
    }

    private static YieldByYear yields(TestStand stand, double halfWidth) {
        YieldByYear plain = Samples.yields(stand, "East field");
        Map<Integer, Band> bands = plain.complete().stream()
                .collect(Collectors.toMap(
                        SeasonRecord::growthYear, season -> about(season.value(SeasonVariable.HARVESTED), halfWidth)));
        return new YieldByYear(plain.zone(), plain.seasons(), plain.classes(), bands);
    }

    private static ResponseView response(TestStand stand, double halfWidth) {
        ResponseView plain = Samples.response(stand, 60);
        return new ResponseView(
                plain.zone(),
                plain.response(),
                plain.points().stream()
                        .map(point -> new ResponseView.Point(
                                point.year(),
                                point.deficitMm(),
                                point.penaltyMgHa(),
                                point.seasonClass(),
                                about(point.penaltyMgHa(), halfWidth)))
                        .toList(),
                plain.deficitMeaning(),
                plain.noun(),
                Optional.of(about(0.02, 0.001 * halfWidth)));
    }

    private static RiskView risk(int zones, double halfWidth) {
        return new RiskView(
                IntStream.range(0, zones)
                        .mapToObj(zone -> {
                            YieldRisk risk = new YieldRisk(IntStream.range(0, 30)
                                    .mapToObj(year -> new YieldRisk.YearYield(
                                            1990 + year, 18.0 - 3.0 * zone + 4.0 * Math.sin(7.0 * year)))
                                    .toList());
                            return new RiskView.ZoneRisk(
                                    zone == 1 ? Samples.LONG_ZONE : "zone " + zone,
                                    risk,
                                    risk.exceedance().stream()
                                            .map(point -> about(point.year().harvestedMgHa(), halfWidth))
                                            .toList());
                        })
                        .toList(),
                OptionalDouble.of(15.0));
    }
}
