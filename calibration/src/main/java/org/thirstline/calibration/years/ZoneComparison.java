package org.thirstline.calibration.years;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.thirstline.calibration.study.ZoneOutcome;
import org.thirstline.model.result.SeasonRecord;
import org.thirstline.model.result.SeasonVariable;

/**
 * The zones of a field side by side over the years that all of them have, and the field they make up. Immutable and thread-safe.
 *
 * @param zones in the order of the study
 * @param years growth years behind every number
 * @param field the whole field, absent unless every zone has an area
 */
public record ZoneComparison(List<Row> zones, List<Integer> years, Optional<Field> field) {

    /** Copies the lists. */
    public ZoneComparison {
        zones = List.copyOf(zones);
        years = List.copyOf(years);
    }

    /**
     * One zone.
     *
     * @param name its name
     * @param areaHa its area, NaN if unknown [ha]
     * @param availableWaterMm available water of its soil [mm]
     * @param harvestedMgHa mean harvest [Mg/ha]
     * @param lowestMgHa harvest of the poorest year [Mg/ha]
     * @param highestMgHa harvest of the best year [Mg/ha]
     * @param droughtPenaltyMgHa mean drought penalty [Mg/ha]
     * @param excessWaterPenaltyMgHa mean penalty of excess water [Mg/ha]
     * @param risk its years
     */
    public record Row(
            String name,
            double areaHa,
            double availableWaterMm,
            double harvestedMgHa,
            double lowestMgHa,
            double highestMgHa,
            double droughtPenaltyMgHa,
            double excessWaterPenaltyMgHa,
            YieldRisk risk) {}

    /**
     * The field, each zone counted by its area.
     *
     * @param areaHa area of all zones [ha]
     * @param meanMg mean harvest of a year [Mg]
     * @param lowestMg poorest year [Mg]
     * @param highestMg best year [Mg]
     * @param harvestedMgHa mean harvest per area [Mg/ha]
     * @param droughtPenaltyMgHa mean drought penalty per area [Mg/ha]
     * @param risk the field's years per area
     */
    public record Field(
            double areaHa,
            double meanMg,
            double lowestMg,
            double highestMg,
            double harvestedMgHa,
            double droughtPenaltyMgHa,
            YieldRisk risk) {}

    /** Compares zones; without a common full-grown year all means are NaN. */
    public static ZoneComparison of(List<ZoneOutcome> zones) {
        List<Integer> years = commonYears(zones);
        List<Row> rows = zones.stream().map(zone -> row(zone, years)).toList();
        boolean areas = rows.stream().noneMatch(row -> Double.isNaN(row.areaHa()));
        return new ZoneComparison(
                rows, years, areas && !years.isEmpty() ? Optional.of(field(rows, years)) : Optional.empty());
    }

    private static List<Integer> commonYears(List<ZoneOutcome> zones) {
        List<Integer> common = new ArrayList<>(FullGrown.seasons(zones.get(0)).stream()
                .map(SeasonRecord::growthYear)
                .toList());
        for (ZoneOutcome zone : zones) {
            common.retainAll(FullGrown.seasons(zone).stream()
                    .map(SeasonRecord::growthYear)
                    .toList());
        }
        return common;
    }

    private static Row row(ZoneOutcome zone, List<Integer> years) {
        List<SeasonRecord> seasons = FullGrown.seasons(zone).stream()
                .filter(season -> years.contains(season.growthYear()))
                .toList();
        YieldRisk risk = new YieldRisk(seasons.stream()
                .map(season -> new YieldRisk.YearYield(season.growthYear(), season.value(SeasonVariable.HARVESTED)))
                .toList());
        return new Row(
                zone.zone().name(),
                zone.zone().areaHa().orElse(Double.NaN),
                zone.zone().soil().availableWaterMm(),
                mean(seasons, SeasonVariable.HARVESTED),
                lowest(risk),
                highest(risk),
                mean(seasons, SeasonVariable.DROUGHT_PENALTY),
                mean(seasons, SeasonVariable.EXCESS_WATER_PENALTY),
                risk);
    }

    private static double mean(List<SeasonRecord> seasons, SeasonVariable variable) {
        return seasons.stream()
                .mapToDouble(season -> season.value(variable))
                .average()
                .orElse(Double.NaN);
    }

    private static double lowest(YieldRisk risk) {
        return risk.years().stream()
                .mapToDouble(YieldRisk.YearYield::harvestedMgHa)
                .min()
                .orElse(Double.NaN);
    }

    private static double highest(YieldRisk risk) {
        return risk.years().stream()
                .mapToDouble(YieldRisk.YearYield::harvestedMgHa)
                .max()
                .orElse(Double.NaN);
    }

    private static Field field(List<Row> rows, List<Integer> years) {
        double area = rows.stream().mapToDouble(Row::areaHa).sum();
        double penalty = rows.stream()
                .mapToDouble(row -> row.areaHa() * row.droughtPenaltyMgHa())
                .sum();
        List<YieldRisk.YearYield> yields = new ArrayList<>();
        for (int i = 0; i < years.size(); i++) {
            double total = 0.0;
            for (Row row : rows) {
                total += row.areaHa() * row.risk().years().get(i).harvestedMgHa();
            }
            yields.add(new YieldRisk.YearYield(years.get(i), total / area));
        }
        YieldRisk risk = new YieldRisk(yields);
        double mean = yields.stream()
                .mapToDouble(YieldRisk.YearYield::harvestedMgHa)
                .average()
                .orElse(Double.NaN);
        return new Field(area, mean * area, lowest(risk) * area, highest(risk) * area, mean, penalty / area, risk);
    }
}
