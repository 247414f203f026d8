package org.thirstline.calibration.years;

import java.util.ArrayList;
import java.util.List;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;
import org.thirstline.calibration.bands.Band;
import org.thirstline.calibration.bands.StudyBands;
import org.thirstline.calibration.bands.ZoneBands;
import org.thirstline.calibration.years.YieldRisk.Exceedance;
import org.thirstline.calibration.years.YieldRisk.YearYield;

/**
 * The risk of the same years under every draw of a calibration. Immutable and thread-safe.
 *
 * @param draws the years under each draw; one that leaves a year without a yield has fewer
 */
public record RiskBands(List<YieldRisk> draws) {

    /** Copies the list. */
    public RiskBands {
        draws = List.copyOf(draws);
    }

    /**
     * Takes the years of a zone.
     *
     * @param risk its years with the values of the crop file
     * @param bands the zone under every draw
     */
    public static RiskBands of(YieldRisk risk, ZoneBands bands) {
        return of(risk, bands.draws(), bands::harvested);
    }

    /**
     * Takes the years of a whole field: in each draw the zones together, weighed by area.
     *
     * @param field the field with the values of the crop file
     * @param zones its zones, with areas
     * @param bands the study under every draw
     */
    public static RiskBands of(ZoneComparison.Field field, List<ZoneComparison.Row> zones, StudyBands bands) {
        List<ZoneBands> ofZones =
                zones.stream().map(zone -> bands.zone(zone.name())).toList();
        return of(field.risk(), bands.draws().size(), (draw, year) -> {
            double sum = 0.0;
            for (int i = 0; i < zones.size(); i++) {
                sum += zones.get(i).areaHa() * ofZones.get(i).harvested(draw, year);
            }
            return sum / field.areaHa();
        });
    }

    private interface Yield {
        double of(int draw, int growthYear);
    }

    private static RiskBands of(YieldRisk risk, int draws, Yield yield) {
        return new RiskBands(IntStream.range(0, draws)
                .mapToObj(draw -> new YieldRisk(risk.years().stream()
                        .map(year -> new YearYield(year.growthYear(), yield.of(draw, year.growthYear())))
                        .filter(year -> !Double.isNaN(year.harvestedMgHa()))
                        .toList()))
                .toList());
    }

    /** Returns the band of the share of years that reach a target. */
    public Band share(double targetMgHa) {
        return over(risk -> risk.probability(targetMgHa));
    }

    /** Returns the band of the mean harvest of the worst years in a row, whichever they are in a draw [Mg/ha]. */
    public Band worstRun(int length) {
        return over(risk -> risk.worstRun(length).map(YieldRisk.Run::meanMgHa).orElse(Double.NaN));
    }

    /** Returns the band of the best year's harvest, of the second best, and so on [Mg/ha]. */
    public List<Band> exceedance() {
        List<List<Exceedance>> curves =
                draws.stream().map(YieldRisk::exceedance).toList();
        int ranks = curves.stream().mapToInt(List::size).max().orElse(0);
        List<Band> bands = new ArrayList<>();
        for (int i = 0; i < ranks; i++) {
            int rank = i;
            bands.add(Band.of(curves.stream()
                    .filter(curve -> curve.size() > rank)
                    .mapToDouble(curve -> curve.get(rank).year().harvestedMgHa())
                    .toArray()));
        }
        return bands;
    }

    private Band over(ToDoubleFunction<YieldRisk> value) {
        return Band.of(draws.stream().mapToDouble(value).toArray());
    }
}
