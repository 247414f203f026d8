package org.thirstline.cli;

import java.util.ArrayList;
import java.util.DoubleSummaryStatistics;
import java.util.List;
import java.util.Locale;
import java.util.function.Function;
import org.thirstline.calibration.study.StudyOutcome;
import org.thirstline.calibration.study.ZoneOutcome;
import org.thirstline.charts.ChartDocument;
import org.thirstline.charts.UnitSystem;
import org.thirstline.charts.report.ReportModel;
import org.thirstline.charts.report.ReportModel.Section;
import org.thirstline.model.result.SeasonVariable;

/** What the report of a run says. Confined to one run. */
final class RunReport {

    private final StudyOutcome outcome;
    private final UnitSystem units;

    private RunReport(StudyOutcome outcome, UnitSystem units) {
        this.outcome = outcome;
        this.units = units;
    }

    static ReportModel of(
            StudyOutcome outcome,
            UnitSystem units,
            Function<ZoneOutcome, List<ChartDocument>> charts,
            List<ChartDocument> fieldCharts) {
        return new RunReport(outcome, units).model(charts, fieldCharts);
    }

    private ReportModel model(Function<ZoneOutcome, List<ChartDocument>> charts, List<ChartDocument> fieldCharts) {
        List<Section> sections = new ArrayList<>();
        for (ZoneOutcome zone : outcome.zones()) {
            sections.add(new Section(
                    heading(zone),
                    soilText(zone),
                    charts.apply(zone),
                    List.of(SeasonReportTable.of(outcome, zone, units))));
        }
        sections.add(new Section("Risk and the whole field", List.of(), fieldCharts, List.of()));
        return ReportFrame.of(outcome, findings(), sections);
    }

    private String heading(ZoneOutcome zone) {
        String area = zone.zone().areaHa().isPresent()
                ? String.format(Locale.ROOT, ", %.1f ha", zone.zone().areaHa().getAsDouble())
                : "";
        return zone.zone().name() + area;
    }

    private List<String> soilText(ZoneOutcome zone) {
        String soil = String.format(
                Locale.ROOT,
                "Soil: %.2f %s deep, holding %.1f %s of available water.",
                units.depth(zone.zone().soil().depthM()),
                units.depthUnit(),
                units.water(zone.zone().soil().availableWaterMm()),
                units.waterUnit());
        String detail = zone.response().words().detail();
        return detail.isBlank() ? List.of(soil) : List.of(soil, "Drought line: " + detail);
    }

    private List<String> findings() {
        List<String> findings = new ArrayList<>();
        for (ZoneOutcome zone : outcome.zones()) {
            DoubleSummaryStatistics yields = zone.responseSeasons().stream()
                    .mapToDouble(season -> season.value(SeasonVariable.HARVESTED))
                    .summaryStatistics();
            if (yields.getCount() > 0) {
                findings.add(String.format(
                        Locale.ROOT,
                        "%s: the full-grown stand harvested %.1f %s in the mean of %d years, from %.1f to %.1f; lack of water took"
                                + " %.1f a year.",
                        zone.zone().name(),
                        units.dryMatter(yields.getAverage()),
                        units.yieldUnit(),
                        yields.getCount(),
                        units.dryMatter(yields.getMin()),
                        units.dryMatter(yields.getMax()),
                        units.dryMatter(meanPenalty(zone))));
            }
            findings.add((zone.zone().name() + ": " + zone.response().words().verdict() + " "
                            + zone.response().words().threshold())
                    .strip());
        }
        findings.addAll(new BandWords(outcome, units).all());
        return findings;
    }

    private static double meanPenalty(ZoneOutcome zone) {
        return zone.responseSeasons().stream()
                .mapToDouble(season -> season.value(SeasonVariable.DROUGHT_PENALTY))
                .average()
                .orElse(Double.NaN);
    }
}
