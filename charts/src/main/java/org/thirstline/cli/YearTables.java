package org.thirstline.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.thirstline.calibration.bands.Band;
import org.thirstline.calibration.response.Interval;
import org.thirstline.calibration.years.FullGrown;
import org.thirstline.calibration.years.HarvestDates;
import org.thirstline.calibration.years.IrrigationSweep;
import org.thirstline.calibration.years.RiskBands;
import org.thirstline.calibration.years.YieldRisk;
import org.thirstline.calibration.years.ZoneComparison;
import org.thirstline.io.tables.ColumnInfo;
import org.thirstline.io.tables.CsvTable;
import org.thirstline.io.tables.TableInfo;
import org.thirstline.model.result.YieldLedger;

/** Tables of {@code drought} about yields: ledgers, risk, zones, irrigation, harvest dates. Stateless and thread-safe. */
final class YearTables {

    /** Longest run of poor years told. */
    static final int LONGEST_RUN = 5;

    private static final int DECIMALS = 3;
    private static final ColumnInfo ZONE = ColumnInfo.text("zone", "Zone of the field");

    private static final Band NONE = Band.of(new double[0]);

    private YearTables() {}

    private static ColumnInfo dryMatter(String name, String meaning) {
        return ColumnInfo.number(name, "Mg/ha", meaning);
    }

    private static ColumnInfo share(String name, String meaning) {
        return ColumnInfo.number(name, "1", meaning);
    }

    private static TableInfo ledgersInfo() {
        return new TableInfo(
                "ledgers.csv",
                "From potential to harvest, by zone and full-grown year; losses taken from the potential leave the harvest",
                List.of(
                        ZONE,
                        ColumnInfo.integer("growth_year", "yr", "Calendar year in which the canopy emerges"),
                        dryMatter(
                                "potential_mg_ha",
                                "Peak of a mature stand without lack or excess of water and without frost"),
                        dryMatter("age_mg_ha", "Lost to the age of the stand"),
                        dryMatter("drought_mg_ha", "Lost to lack of water"),
                        dryMatter("excess_water_mg_ha", "Lost to poor aeration"),
                        dryMatter("frost_mg_ha", "Lost to frost and winter kill"),
                        dryMatter("winter_mg_ha", "Lost between peak and cut"),
                        dryMatter("left_on_field_mg_ha", "Stubble and what was not picked up"),
                        dryMatter("harvested_mg_ha", "Harvested")));
    }

    static ResultTable ledgers(DroughtFindings findings) {
        ResultTable result = ResultTable.start(ledgersInfo());
        for (DroughtFindings.ZoneFindings zone : findings.zones()) {
            for (YieldLedger ledger : FullGrown.ledgers(zone.zone())) {
                result.table().text(zone.zone().zone().name()).whole(ledger.growthYear());
                for (double part : new double[] {
                    ledger.potentialMgHa(),
                    ledger.ageMgHa(),
                    ledger.droughtMgHa(),
                    ledger.excessWaterMgHa(),
                    ledger.frostMgHa(),
                    ledger.winterMgHa(),
                    ledger.leftOnFieldMgHa(),
                    ledger.harvestedMgHa()
                }) {
                    result.table().number(part, DECIMALS);
                }
                result.table().endRow();
            }
        }
        return result;
    }

    private static TableInfo riskInfo(boolean bands) {
        List<ColumnInfo> columns = new ArrayList<>(List.of(
                ZONE,
                ColumnInfo.text("what", "Reached the target, or the worst run of so many years"),
                ColumnInfo.integer("years", "1", "Years counted, or years in the run"),
                ColumnInfo.integer("first_year", "yr", "First growth year of the run"),
                ColumnInfo.integer("last_year", "yr", "Last growth year of the run"),
                dryMatter("yield_mg_ha", "Target, or mean harvest of the run"),
                ColumnInfo.integer("reached_years", "1", "Years that reached the target"),
                share("share", "Share of years that reached the target"),
                share("share_low", "Lower limit of its exact binomial interval at 95 %"),
                share("share_high", "Upper limit of its exact binomial interval at 95 %")));
        if (bands) {
            for (String quantile : List.of("5", "50", "95")) {
                columns.add(dryMatter(
                        "yield_" + quantile + "_pct_mg_ha",
                        quantile + " % quantile, over draws of the calibration, of the worst run of so many years"));
            }
            for (String quantile : List.of("5", "50", "95")) {
                columns.add(
                        share(
                                "share_" + quantile + "_pct",
                                quantile
                                        + " % quantile, over draws of the calibration, of the share of years that reached the target"));
            }
        }
        return new TableInfo("risk.csv", "Worst runs of years and how often a target was reached, by zone", columns);
    }

    static ResultTable risk(DroughtFindings findings) {
        ResultTable result =
                ResultTable.start(riskInfo(findings.outcome().bands().isPresent()));
        for (DroughtFindings.ZoneFindings zone : findings.zones()) {
            risk(result.table(), zone.zone().zone().name(), zone.risk(), zone.riskBands(), findings);
        }
        findings.comparison()
                .field()
                .ifPresent(field -> risk(result.table(), "whole field", field.risk(), findings.fieldBands(), findings));
        return result;
    }

    private static void risk(
            CsvTable table, String zone, YieldRisk risk, Optional<RiskBands> bands, DroughtFindings findings) {
        if (findings.targetMgHa().isPresent() && risk.n() > 0) {
            double target = findings.targetMgHa().getAsDouble();
            Interval interval = risk.probabilityInterval(target);
            table.text(zone).text("reached the target").whole(risk.n()).empty().empty();
            table.number(target, DECIMALS)
                    .whole(risk.reached(target))
                    .number(risk.probability(target), DECIMALS)
                    .number(interval.lower(), DECIMALS)
                    .number(interval.upper(), DECIMALS);
            bands.ifPresent(of -> quantiles(quantiles(table, NONE), of.share(target)));
            table.endRow();
        }
        for (int length = 1; length <= LONGEST_RUN; length++) {
            Optional<YieldRisk.Run> run = risk.worstRun(length);
            if (run.isPresent()) {
                table.text(zone).text("worst run").whole(length);
                table.whole(run.get().firstYear())
                        .whole(run.get().lastYear())
                        .number(run.get().meanMgHa(), DECIMALS);
                table.empty().empty().empty().empty();
                int years = length;
                bands.ifPresent(of -> quantiles(quantiles(table, of.worstRun(years)), NONE));
                table.endRow();
            }
        }
    }

    private static CsvTable quantiles(CsvTable table, Band band) {
        return table.number(band.low(), DECIMALS)
                .number(band.median(), DECIMALS)
                .number(band.high(), DECIMALS);
    }

    private static TableInfo zonesInfo() {
        return new TableInfo(
                "zones.csv",
                "Zones side by side over the full-grown years that all of them have, and the whole field",
                List.of(
                        ZONE,
                        ColumnInfo.number("area_ha", "ha", "Area"),
                        ColumnInfo.number("available_water_mm", "mm", "Available water capacity of the soil"),
                        ColumnInfo.integer("years", "1", "Years counted"),
                        dryMatter("harvested_mg_ha", "Mean harvest"),
                        dryMatter("lowest_mg_ha", "Harvest of the poorest year"),
                        dryMatter("highest_mg_ha", "Harvest of the best year"),
                        dryMatter("drought_penalty_mg_ha", "Mean drought penalty"),
                        dryMatter("excess_water_penalty_mg_ha", "Mean penalty of excess water"),
                        ColumnInfo.number("field_total_mg", "Mg", "Mean harvest of the whole area")));
    }

    static ResultTable zones(DroughtFindings findings) {
        ResultTable result = ResultTable.start(zonesInfo());
        ZoneComparison comparison = findings.comparison();
        for (ZoneComparison.Row row : comparison.zones()) {
            result.table()
                    .text(row.name())
                    .number(row.areaHa(), DECIMALS)
                    .number(row.availableWaterMm(), 1)
                    .whole(comparison.years().size())
                    .number(row.harvestedMgHa(), DECIMALS)
                    .number(row.lowestMgHa(), DECIMALS)
                    .number(row.highestMgHa(), DECIMALS)
                    .number(row.droughtPenaltyMgHa(), DECIMALS)
                    .number(row.excessWaterPenaltyMgHa(), DECIMALS)
                    .number(row.areaHa() * row.harvestedMgHa(), DECIMALS)
                    .endRow();
        }
        comparison.field().ifPresent(field -> field(result.table(), field));
        return result;
    }

    private static void field(CsvTable table, ZoneComparison.Field field) {
        table.text("whole field").number(field.areaHa(), DECIMALS).empty();
        table.whole(field.risk().n())
                .number(field.harvestedMgHa(), DECIMALS)
                .number(field.lowestMg() / field.areaHa(), DECIMALS)
                .number(field.highestMg() / field.areaHa(), DECIMALS)
                .number(field.droughtPenaltyMgHa(), DECIMALS);
        table.empty().number(field.meanMg(), DECIMALS).endRow();
    }

    private static TableInfo irrigationInfo() {
        return new TableInfo(
                "irrigation.csv",
                "Yield against irrigation, mean of the full-grown years, by zone and rule; the first row of a zone is rain only",
                List.of(
                        ZONE,
                        ColumnInfo.number("depth_mm", "mm", "Depth given each time"),
                        share("depletion", "Share of available water used when water is given"),
                        ColumnInfo.number("water_mm", "mm", "Water given in the growing-season window of a year"),
                        dryMatter("harvested_mg_ha", "Mean harvest"),
                        dryMatter("gain_mg_ha", "Mean gain over rain only"),
                        dryMatter("least_gain_mg_ha", "Smallest gain of a year"),
                        dryMatter("most_gain_mg_ha", "Largest gain of a year"),
                        ColumnInfo.number(
                                "marginal_kg_ha_mm", "kg/ha per mm", "Gain of a further mm over the rule before")));
    }

    static ResultTable irrigation(DroughtFindings findings) {
        ResultTable result = ResultTable.start(irrigationInfo());
        for (DroughtFindings.ZoneFindings zone : findings.zones()) {
            IrrigationSweep sweep = zone.irrigation();
            for (int i = 0; i < sweep.steps().size(); i++) {
                IrrigationSweep.Step step = sweep.steps().get(i);
                result.table()
                        .text(sweep.zone())
                        .number(sweep.depthMm(), 1)
                        .number(step.depletion(), 2)
                        .number(step.waterMm(), 1)
                        .number(step.harvestedMgHa(), DECIMALS)
                        .number(sweep.gainMgHa(step), DECIMALS)
                        .number(step.leastGainMgHa(), DECIMALS)
                        .number(step.mostGainMgHa(), DECIMALS)
                        .number(sweep.marginalKgHaMm(i), 1)
                        .endRow();
            }
        }
        return result;
    }

    private static TableInfo harvestDatesInfo() {
        return new TableInfo(
                "harvest-dates.csv",
                "A cut on each half month of each full-grown year, by zone",
                List.of(
                        ZONE,
                        ColumnInfo.integer("growth_year", "yr", "Calendar year in which the canopy emerges"),
                        ColumnInfo.date("date", "Day of the cut"),
                        dryMatter("harvested_mg_ha", "Dry matter a cut would have brought in"),
                        ColumnInfo.number("moisture_pct", "% wet basis", "Moisture of the crop"),
                        ColumnInfo.text("dry_enough", "Whether the crop was dry enough to bale (yes or no)"),
                        ColumnInfo.text("ground_carries", "Whether the ground carried a machine (yes or no)")));
    }

    static ResultTable harvestDates(DroughtFindings findings) {
        ResultTable result = ResultTable.start(harvestDatesInfo());
        for (DroughtFindings.ZoneFindings zone : findings.zones()) {
            for (HarvestDates.YearDay day : zone.dates().days()) {
                boolean dry = day.moisturePct() <= zone.dates().moistureLimitPct();
                result.table()
                        .text(zone.dates().zone())
                        .whole(day.growthYear())
                        .date(day.date())
                        .number(day.harvestedMgHa(), DECIMALS)
                        .number(day.moisturePct(), 1)
                        .text(dry ? "yes" : "no")
                        .text(day.carries() ? "yes" : "no")
                        .endRow();
            }
        }
        return result;
    }
}
