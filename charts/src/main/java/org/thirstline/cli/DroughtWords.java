package org.thirstline.cli;

import java.time.MonthDay;
import java.time.format.TextStyle;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.thirstline.calibration.bands.Band;
import org.thirstline.calibration.response.Interval;
import org.thirstline.calibration.response.StraightLine;
import org.thirstline.calibration.years.HarvestDates;
import org.thirstline.calibration.years.IndexKind;
import org.thirstline.calibration.years.IndexResponse;
import org.thirstline.calibration.years.IrrigationSweep;
import org.thirstline.calibration.years.PenaltySplit;
import org.thirstline.calibration.years.RiskBands;
import org.thirstline.calibration.years.ThirstTable;
import org.thirstline.calibration.years.YieldRisk;
import org.thirstline.charts.Numbers;
import org.thirstline.charts.UnitSystem;

/** Findings of {@code drought} as plain sentences with their uncertainty. Stateless and thread-safe. */
final class DroughtWords {

    /** Years below which spread is told but nothing is concluded. */
    private static final int FEW_YEARS = 5;

    private static final double NOTHING_MM = 0.5;

    /** NIST SP 811. */
    private static final double MG_PER_SHORT_TON = 0.90718474;

    private final DroughtFindings findings;
    private final UnitSystem units;

    DroughtWords(DroughtFindings findings, UnitSystem units) {
        this.findings = findings;
        this.units = units;
    }

    /** Returns one sentence for each finding, in the order of the report. */
    List<String> all() {
        List<String> all = new ArrayList<>();
        for (DroughtFindings.ZoneFindings zone : findings.zones()) {
            all.add(name(zone) + response(zone));
            slopes(zone).ifPresent(slopes -> all.add(name(zone) + slopes));
        }
        all.add(thirst());
        for (DroughtFindings.ZoneFindings zone : findings.zones()) {
            if (zone.risk().n() > 0) {
                all.add(name(zone) + split(zone.split()));
                all.add(name(zone) + risk(zone.risk()));
                riskBands(zone).ifPresent(bands -> all.add(name(zone) + bands));
                all.add(name(zone) + irrigation(zone.irrigation()));
                all.add(name(zone) + harvest(zone.dates()));
            }
        }
        field().ifPresent(all::add);
        String bands = new BandWords(findings.outcome(), units).meaning();
        if (!bands.isEmpty()) {
            all.add(bands);
        }
        return all;
    }

    private static String name(DroughtFindings.ZoneFindings zone) {
        return zone.zone().zone().name() + ": ";
    }

    /** Says what the chosen index cost. */
    String response(DroughtFindings.ZoneFindings zone) {
        IndexResponse chosen = findings.chosen(zone);
        String words = (chosen.response().words().verdict() + " "
                        + chosen.response().words().threshold())
                .strip();
        return findings.index() == IndexKind.SEASON
                ? words
                : words.replace("rainfall deficit", findings.index().words()).replace("a deficit of ", "");
    }

    /** Says what the draws of a calibration make of the line; the years and their rain are the same in all of them. */
    private Optional<String> slopes(DroughtFindings.ZoneFindings zone) {
        return new ZoneCharts(findings.outcome(), zone.zone())
                .slopes()
                .filter(Band::isKnown)
                .map(band -> "over " + band.draws()
                        + " draws of the calibration the straight line of the penalty on the season's"
                        + " deficit has slopes of " + Numbers.fixed(units.slope(band.low()), 2) + " to "
                        + Numbers.fixed(units.slope(band.high()), 2) + " " + units.yieldUnit() + " per "
                        + units.waterStep() + " (5 to 95 %).");
    }

    /** Says what the draws of a calibration make of the risk. */
    private Optional<String> riskBands(DroughtFindings.ZoneFindings zone) {
        if (zone.riskBands().isEmpty() || zone.risk().n() < FEW_YEARS) {
            return Optional.empty();
        }
        RiskBands bands = zone.riskBands().get();
        String target = "";
        if (findings.targetMgHa().isPresent()) {
            Band share = bands.share(findings.targetMgHa().getAsDouble());
            target = units.yieldText(findings.targetMgHa().getAsDouble()) + " was reached in "
                    + Numbers.fixed(100 * share.low(), 0) + " to " + Numbers.fixed(100 * share.high(), 0)
                    + " % of the years, ";
        }
        Band year = bands.worstRun(1);
        Band three = bands.worstRun(3);
        String runs = three.isKnown()
                ? ", the poorest three in a row " + number(three.low()) + " to " + number(three.high()) + " in the mean"
                : "";
        return Optional.of("over the draws of the calibration " + target + "the poorest year brought "
                + number(year.low()) + " to " + units.yieldText(year.high()) + runs + " (5 to 95 % of draws).");
    }

    /** Says how well each index tells the years apart. */
    String strongest(DroughtFindings.ZoneFindings zone) {
        Optional<IndexResponse> best = zone.responses().stream()
                .filter(response -> !Double.isNaN(explained(response)))
                .max(Comparator.comparingDouble(DroughtWords::explained));
        return best.map(found -> "Of the indices, " + found.kind().words() + " tells the years apart best (R² "
                        + Numbers.fixed(explained(found), 2) + " of a straight line, "
                        + found.response().n()
                        + " years); picking the best of several flatters it.")
                .orElse("");
    }

    private static double explained(IndexResponse response) {
        return response.response().line().map(StraightLine::rSquared).orElse(Double.NaN);
    }

    String thirst() {
        ThirstTable table = findings.thirst();
        List<Double> deficits = table.deficitsMm(units == UnitSystem.SI ? 50.0 : 25.4);
        if (!table.hasLines() || table.rungs().size() < 2 || deficits.isEmpty()) {
            return "Other soils: too few years for a thirst table.";
        }
        ThirstTable.Rung thin = table.rungs().get(0);
        ThirstTable.Rung deep = table.rungs().get(table.rungs().size() - 1);
        for (int i = deficits.size() - 1; i >= 0; i--) {
            Optional<ThirstTable.Cell> low = thin.at(deficits.get(i));
            Optional<ThirstTable.Cell> high = deep.at(deficits.get(i));
            if (low.isPresent() && high.isPresent()) {
                return "Other soils: in a season that misses " + units.waterText(deficits.get(i))
                        + ", a soil that holds "
                        + units.waterText(thin.availableWaterMm()) + " loses " + cell(low.get())
                        + ", one that holds " + units.waterText(deep.availableWaterMm()) + " loses " + cell(high.get())
                        + " (ranges: 95 of 100 single years).";
            }
        }
        return "Other soils: no deficit that every soil of the table has seen.";
    }

    private String cell(ThirstTable.Cell cell) {
        return units.yieldText(cell.expectedMgHa()) + " (" + number(cell.range().lower()) + " to "
                + number(cell.range().upper()) + ")";
    }

    private String number(double mgHa) {
        return Numbers.fixed(units.dryMatter(mgHa), 1);
    }

    String split(PenaltySplit split) {
        double carried = split.meanCarriedOverMgHa();
        String after = Double.isNaN(split.meanAfterDryMgHa())
                ? ""
                : "; " + number(split.meanAfterDryMgHa()) + " in years after a dry one";
        double most = split.years().stream()
                .mapToDouble(PenaltySplit.Year::carriedOverMgHa)
                .max()
                .orElse(Double.NaN);
        return "of the drought penalty " + units.yieldText(carried)
                + " a year was carried over from earlier seasons in the" + " rhizomes (mean of "
                + split.years().size() + " years, at most " + number(most) + after + ").";
    }

    String risk(YieldRisk risk) {
        if (risk.n() < FEW_YEARS) {
            return "only " + risk.n() + " full-grown years; no risk is told from so few.";
        }
        String target = findings.targetMgHa().isPresent()
                ? reached(risk, findings.targetMgHa().getAsDouble())
                : "";
        String runs = risk.worstRun(1)
                .map(run -> "poorest year " + run.firstYear() + " with " + units.yieldText(run.meanMgHa()))
                .orElse("");
        String three = risk.worstRun(3)
                .map(run -> ", poorest three in a row " + run.firstYear() + " to " + run.lastYear() + " with "
                        + number(run.meanMgHa()) + " in the mean")
                .orElse("");
        return target + runs + three + " (" + risk.n() + " years).";
    }

    private String reached(YieldRisk risk, double target) {
        Interval interval = risk.probabilityInterval(target);
        return units.yieldText(target) + " was reached in " + risk.reached(target) + " of " + risk.n()
                + " years (95 % interval of the share " + Numbers.fixed(100 * interval.lower(), 0) + " to "
                + Numbers.fixed(100 * interval.upper(), 0) + " %); ";
    }

    String irrigation(IrrigationSweep sweep) {
        IrrigationSweep.Step most = sweep.steps().get(sweep.steps().size() - 1);
        String worth = Numbers.fixed(findings.worthKgHaMm(), 0) + " kg/ha";
        if (most.waterMm() < NOTHING_MM) {
            return "these years never called for irrigation.";
        }
        return sweep.flattensAt(findings.worthKgHaMm())
                .map(step -> units.waterText(step.waterMm()) + " of irrigation a year gained "
                        + units.yieldText(sweep.gainMgHa(step)) + " (single years "
                        + number(step.leastGainMgHa()) + " to " + number(step.mostGainMgHa()) + ")"
                        + (step.equals(most)
                                ? "; up to there each further mm gained at least " + worth + "."
                                : "; beyond, a further mm gained less than " + worth + "."))
                .orElse("irrigation gained less than " + worth + " for a mm from the first mm on.");
    }

    String harvest(HarvestDates dates) {
        if (dates.dates().isEmpty()) {
            return "no standing crop to cut on other dates.";
        }
        HarvestDates.CutDate first = dates.dates().get(0);
        HarvestDates.CutDate best = dates.dates().stream()
                .max(Comparator.comparingDouble(HarvestDates.CutDate::readyShare))
                .orElseThrow();
        if (best.readyShare() == 0.0) {
            return "on no half month was the crop dry enough (" + Numbers.fixed(dates.moistureLimitPct(), 0)
                    + " %) on ground that carries a machine.";
        }
        return "a cut on " + day(best.day()) + " found the crop dry enough and the ground firm in "
                + Numbers.fixed(100 * best.readyShare(), 0) + " % of " + best.years() + " years and brought in "
                + units.yieldText(best.harvested().mean()) + " (middle eight tenths of years "
                + number(best.harvested().low()) + " to "
                + number(best.harvested().high()) + "), "
                + number(first.harvested().mean() - best.harvested().mean()) + " less than on " + day(first.day())
                + ".";
    }

    private static String day(MonthDay day) {
        return day.getDayOfMonth() + " " + day.getMonth().getDisplayName(TextStyle.FULL, Locale.ENGLISH);
    }

    private Optional<String> field() {
        return findings.comparison()
                .field()
                .filter(field -> findings.zones().size() > 1)
                .map(field -> String.format(
                        Locale.ROOT,
                        "Whole field, %.1f ha: %.0f Mg (%.0f short ton) dry matter in a mean year, from %.0f to %.0f Mg in %d"
                                + " years.",
                        field.areaHa(),
                        field.meanMg(),
                        field.meanMg() / MG_PER_SHORT_TON,
                        field.lowestMg(),
                        field.highestMg(),
                        field.risk().n()));
    }
}
