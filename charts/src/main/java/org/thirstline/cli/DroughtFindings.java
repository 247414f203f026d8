package org.thirstline.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import org.thirstline.calibration.study.StudyOutcome;
import org.thirstline.calibration.study.ZoneOutcome;
import org.thirstline.calibration.years.HarvestDates;
import org.thirstline.calibration.years.IndexKind;
import org.thirstline.calibration.years.IndexResponse;
import org.thirstline.calibration.years.IrrigationSweep;
import org.thirstline.calibration.years.PenaltySplit;
import org.thirstline.calibration.years.RiskBands;
import org.thirstline.calibration.years.ThirstTable;
import org.thirstline.calibration.years.YearIndices;
import org.thirstline.calibration.years.YieldRisk;
import org.thirstline.calibration.years.ZoneComparison;
import org.thirstline.charts.UnitSystem;

/**
 * Everything {@code drought} works out. Immutable and thread-safe.
 *
 * @param outcome the simulated study
 * @param indices indices of its years
 * @param index the one the lines are drawn against
 * @param targetMgHa yield to reach, if one is given [Mg/ha]
 * @param worthKgHaMm what a mm of irrigation must gain [kg/ha per mm]
 * @param thirst losses on other soils
 * @param comparison zones side by side
 * @param zones findings of the zones, in the order of the study
 */
record DroughtFindings(
        StudyOutcome outcome,
        YearIndices indices,
        IndexKind index,
        OptionalDouble targetMgHa,
        double worthKgHaMm,
        ThirstTable thirst,
        ZoneComparison comparison,
        List<ZoneFindings> zones) {

    DroughtFindings {
        zones = List.copyOf(zones);
    }

    /**
     * What one zone says.
     *
     * @param zone its simulation
     * @param responses penalty against every index
     * @param split penalty by the season in which it arose
     * @param risk its yields
     * @param riskBands the same under every draw of the crop's calibration, if it has one
     * @param irrigation its yields with water given
     * @param dates its yields on other harvest dates
     */
    record ZoneFindings(
            ZoneOutcome zone,
            List<IndexResponse> responses,
            PenaltySplit split,
            YieldRisk risk,
            Optional<RiskBands> riskBands,
            IrrigationSweep irrigation,
            HarvestDates dates) {

        ZoneFindings {
            responses = List.copyOf(responses);
        }
    }

    /** Works everything out; the extra simulations of zones run side by side. */
    static DroughtFindings of(StudyOutcome outcome, DroughtOptions asked, UnitSystem units) {
        YearIndices indices = YearIndices.of(outcome, asked.window);
        List<ZoneFindings> zones =
                new ArrayList<>(IntStream.range(0, outcome.zones().size())
                        .parallel()
                        .mapToObj(i -> zone(outcome, outcome.zones().get(i), indices))
                        .toList());
        return new DroughtFindings(
                outcome,
                indices,
                asked.index,
                asked.targetMgHa(units),
                asked.worthKgHaMm,
                ThirstTable.of(outcome),
                ZoneComparison.of(outcome.zones()),
                zones);
    }

    private static ZoneFindings zone(StudyOutcome outcome, ZoneOutcome zone, YearIndices indices) {
        YieldRisk risk = YieldRisk.of(zone);
        return new ZoneFindings(
                zone,
                IndexResponse.all(zone, indices),
                PenaltySplit.of(zone, outcome.classes()),
                risk,
                outcome.bands()
                        .map(bands -> RiskBands.of(risk, bands.zone(zone.zone().name()))),
                IrrigationSweep.of(outcome, zone),
                HarvestDates.of(outcome, zone));
    }

    /** Returns the risk of the whole field under every draw, if there are draws and the zones have areas. */
    Optional<RiskBands> fieldBands() {
        return comparison.field().flatMap(field -> outcome.bands()
                .map(bands -> RiskBands.of(field, comparison.zones(), bands)));
    }

    IndexResponse chosen(ZoneFindings zone) {
        return IndexResponse.of(zone.zone(), indices, index);
    }
}
