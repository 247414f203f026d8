package org.thirstline.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.thirstline.calibration.bands.Band;
import org.thirstline.calibration.study.StudyOutcome;
import org.thirstline.calibration.study.ZoneOutcome;
import org.thirstline.calibration.years.FullGrown;
import org.thirstline.calibration.years.RiskBands;
import org.thirstline.calibration.years.YieldRisk;
import org.thirstline.calibration.years.ZoneComparison;
import org.thirstline.charts.ExceedanceChart;
import org.thirstline.charts.LedgersChart;
import org.thirstline.charts.LedgersView;
import org.thirstline.charts.RiskView;
import org.thirstline.charts.ZonesChart;

/** The charts that lay the zones of a field side by side. Stateless and thread-safe. */
final class FieldCharts {

    private FieldCharts() {}

    static List<ZoneCharts.Recipe> recipes(StudyOutcome outcome) {
        List<ZoneCharts.Recipe> recipes = new ArrayList<>();
        if (outcome.zones().size() > 1) {
            ZoneComparison zones = ZoneComparison.of(outcome.zones());
            recipes.add(new ZoneCharts.Recipe("zones", style -> ZonesChart.of(zones, style)));
        }
        recipes.add(exceedance(outcome, OptionalDouble.empty()));
        return recipes;
    }

    static ZoneCharts.Recipe exceedance(StudyOutcome outcome, OptionalDouble targetMgHa) {
        RiskView view = new RiskView(
                outcome.zones().stream().map(zone -> risk(outcome, zone)).toList(), targetMgHa);
        return new ZoneCharts.Recipe("exceedance", style -> ExceedanceChart.of(view, style));
    }

    private static RiskView.ZoneRisk risk(StudyOutcome outcome, ZoneOutcome zone) {
        YieldRisk risk = YieldRisk.of(zone);
        List<Band> bands = outcome.bands()
                .map(all -> RiskBands.of(risk, all.zone(zone.zone().name())).exceedance())
                .orElse(List.of());
        return new RiskView.ZoneRisk(zone.zone().name(), risk, bands);
    }

    /** The mean ledgers of the zones; nothing for a single zone or without full-grown years. */
    static List<ZoneCharts.Recipe> zoneLedgers(StudyOutcome outcome) {
        List<LedgersView.Group> groups = new ArrayList<>();
        for (ZoneOutcome zone : outcome.zones()) {
            if (!FullGrown.ledgers(zone).isEmpty()) {
                groups.add(new LedgersView.Group(zone.zone().name(), null, FullGrown.ledgers(zone)));
            }
        }
        if (groups.size() < 2) {
            return List.of();
        }
        LedgersView view = new LedgersView("", "the full-grown years of each zone", groups);
        return List.of(new ZoneCharts.Recipe("ledger-zones", style -> LedgersChart.of(view, style)));
    }
}
