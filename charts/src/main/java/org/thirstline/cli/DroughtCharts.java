package org.thirstline.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.thirstline.calibration.years.IndexKind;
import org.thirstline.calibration.years.IndexResponse;
import org.thirstline.charts.DroughtResponseChart;
import org.thirstline.charts.HarvestDatesChart;
import org.thirstline.charts.IrrigationChart;
import org.thirstline.charts.LedgersChart;
import org.thirstline.charts.PenaltySplitChart;
import org.thirstline.charts.PenaltySplitView;
import org.thirstline.charts.ResponseView;
import org.thirstline.charts.ThirstTableChart;
import org.thirstline.charts.ZonesChart;
import org.thirstline.model.result.SeasonRecord;
import org.thirstline.model.result.SeasonVariable;

/** The charts of {@code drought}. Immutable and thread-safe. */
final class DroughtCharts {

    private final DroughtFindings findings;

    DroughtCharts(DroughtFindings findings) {
        this.findings = findings;
    }

    List<ZoneCharts.Recipe> all() {
        List<ZoneCharts.Recipe> all = new ArrayList<>();
        findings.zones().forEach(zone -> all.addAll(zone(zone)));
        all.addAll(thirst());
        all.addAll(field());
        return all;
    }

    List<ZoneCharts.Recipe> thirst() {
        return List.of(new ZoneCharts.Recipe("thirst-table", style -> ThirstTableChart.of(findings.thirst(), style)));
    }

    List<ZoneCharts.Recipe> field() {
        List<ZoneCharts.Recipe> charts = new ArrayList<>();
        if (findings.zones().size() > 1) {
            charts.add(new ZoneCharts.Recipe("zones", style -> ZonesChart.of(findings.comparison(), style)));
        }
        charts.addAll(FieldCharts.zoneLedgers(findings.outcome()));
        charts.add(FieldCharts.exceedance(findings.outcome(), findings.targetMgHa()));
        return charts;
    }

    List<ZoneCharts.Recipe> zone(DroughtFindings.ZoneFindings zone) {
        String name = zone.zone().zone().name();
        String suffix = "-" + ZoneCharts.slug(name);
        List<ZoneCharts.Recipe> charts = new ArrayList<>();
        ResponseView response = response(zone);
        charts.add(
                new ZoneCharts.Recipe("drought-response" + suffix, style -> DroughtResponseChart.of(response, style)));
        if (zone.risk().n() == 0) {
            return charts;
        }
        PenaltySplitView split = new PenaltySplitView(name, zone.split());
        charts.add(new ZoneCharts.Recipe("penalty-split" + suffix, style -> PenaltySplitChart.of(split, style)));
        new ZoneCharts(findings.outcome(), zone.zone())
                .classLedgers()
                .ifPresent(view -> charts.add(
                        new ZoneCharts.Recipe("ledger-dry-wet" + suffix, style -> LedgersChart.of(view, style))));
        charts.add(new ZoneCharts.Recipe(
                "irrigation" + suffix, style -> IrrigationChart.of(zone.irrigation(), findings.worthKgHaMm(), style)));
        charts.add(new ZoneCharts.Recipe("harvest-dates" + suffix, style -> HarvestDatesChart.of(zone.dates(), style)));
        return charts;
    }

    private ResponseView response(DroughtFindings.ZoneFindings zone) {
        ZoneCharts charts = new ZoneCharts(findings.outcome(), zone.zone());
        if (findings.index() == IndexKind.SEASON) {
            return charts.response();
        }
        IndexResponse chosen = findings.chosen(zone);
        List<ResponseView.Point> points = IntStream.range(0, chosen.seasons().size())
                .mapToObj(i ->
                        point(charts, chosen.seasons().get(i), chosen.dryness().get(i)))
                .toList();
        boolean beyondRain =
                findings.index() == IndexKind.ET0_MINUS_RAIN || findings.index() == IndexKind.CANOPY_ET0_MINUS_RAIN;
        String zoneName = zone.zone().zone().name();
        return beyondRain
                ? new ResponseView(
                        zoneName,
                        chosen.response(),
                        points,
                        "",
                        findings.index().words())
                : new ResponseView(
                        zoneName, chosen.response(), points, findings.index().words());
    }

    private ResponseView.Point point(ZoneCharts charts, SeasonRecord season, double dryness) {
        return new ResponseView.Point(
                season.growthYear(),
                dryness,
                season.value(SeasonVariable.DROUGHT_PENALTY),
                findings.outcome().classes().get(season.growthYear()),
                charts.bands().map(bands -> bands.penalty(season.growthYear())).orElse(null));
    }
}
