package org.thirstline.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import org.thirstline.calibration.bands.Band;
import org.thirstline.calibration.response.Interval;
import org.thirstline.calibration.response.StraightLine;
import org.thirstline.calibration.years.HarvestDates;
import org.thirstline.calibration.years.IndexResponse;
import org.thirstline.calibration.years.RiskBands;
import org.thirstline.calibration.years.ThirstTable;
import org.thirstline.calibration.years.YieldRisk;
import org.thirstline.charts.Numbers;
import org.thirstline.charts.ThirstTableChart;
import org.thirstline.charts.UnitSystem;
import org.thirstline.charts.report.OnePage;
import org.thirstline.charts.report.ReportModel;
import org.thirstline.charts.report.ReportModel.Section;
import org.thirstline.charts.report.ReportTable;
import org.thirstline.charts.report.ReportTable.Column;

/** The report of {@code drought} and the thirst table as a page of its own. Confined to one run. */
final class DroughtReport {

    private final DroughtFindings findings;
    private final OutputOptions options;
    private final UnitSystem units;
    private final DroughtWords words;

    DroughtReport(DroughtFindings findings, OutputOptions options) {
        this.findings = findings;
        this.options = options;
        this.units = options.units;
        this.words = new DroughtWords(findings, units);
    }

    ReportModel model(DroughtCharts charts) {
        List<Section> sections = new ArrayList<>();
        for (DroughtFindings.ZoneFindings zone : findings.zones()) {
            sections.add(zone(zone, charts));
        }
        sections.add(new Section(
                "Thirst table",
                List.of(words.thirst(), thirstMethod()),
                ChartFiles.pages(charts.thirst(), findings.outcome(), options),
                List.of(thirstTable(UnitSystem.SI), thirstTable(UnitSystem.US))));
        sections.add(new Section(
                "Risk and the whole field",
                List.of(riskText()),
                ChartFiles.pages(charts.field(), findings.outcome(), options),
                List.of(riskTable())));
        return ReportFrame.of(findings.outcome(), words.all(), sections);
    }

    private String riskText() {
        String counts =
                "Shares are counts of simulated years. They hold for this weather, this soil and the parameters as they stand; ";
        return counts
                + (findings.outcome().bands().isPresent()
                        ? "the bands beside them, 5 to 95 % of the draws of the calibration, hold the doubt in the fitted parameters."
                        : "the doubt in the parameters is not in them.");
    }

    private Section zone(DroughtFindings.ZoneFindings zone, DroughtCharts charts) {
        List<String> text = new ArrayList<>();
        text.add(words.response(zone));
        String detail = findings.chosen(zone).response().words().detail();
        if (!detail.isBlank()) {
            text.add(detail);
        }
        String strongest = words.strongest(zone);
        if (!strongest.isEmpty()) {
            text.add(strongest);
        }
        return new Section(
                zone.zone().zone().name(),
                text,
                ChartFiles.pages(charts.zone(zone), findings.outcome(), options),
                List.of(indexTable(zone), harvestTable(zone)));
    }

    private ReportTable indexTable(DroughtFindings.ZoneFindings zone) {
        String per = units.yieldUnit() + " per " + units.waterStep() + ", or per 1 SPI";
        List<Column> columns = List.of(
                Column.text("dryness"),
                Column.number("years", ""),
                Column.number("slope", per),
                Column.text("95 % interval"),
                Column.number("Theil-Sen slope", ""),
                Column.text("any year left out"),
                Column.number("R²", ""),
                Column.text("years that pull most"),
                Column.text("verdict"));
        List<List<String>> rows = zone.responses().stream().map(this::indexRow).toList();
        return new ReportTable(
                "Drought penalty against every index of dryness; SPI with its sign turned", columns, rows);
    }

    private List<String> indexRow(IndexResponse found) {
        double factor = found.kind().isSpi() ? units.dryMatter(1.0) : units.slope(1.0);
        Optional<StraightLine> line = found.response().line();
        return List.of(
                found.kind().words(),
                Integer.toString(found.response().n()),
                line.map(fit -> Numbers.fixed(factor * fit.slope(), 2)).orElse(""),
                line.map(fit -> range(fit.slopeInterval(), factor)).orElse(""),
                found.response()
                        .robustLine()
                        .map(fit -> Numbers.fixed(factor * fit.slope(), 2))
                        .orElse(""),
                found.response()
                        .slopeWithoutAnyYear()
                        .map(slopes -> range(slopes, factor))
                        .orElse(""),
                line.map(fit -> Numbers.fixed(fit.rSquared(), 2)).orElse(""),
                found.response().influentialYears().stream()
                        .map(String::valueOf)
                        .collect(Collectors.joining(", ")),
                found.response().verdict().words());
    }

    private static String range(Interval interval, double factor) {
        return Numbers.fixed(factor * interval.lower(), 2) + " to " + Numbers.fixed(factor * interval.upper(), 2);
    }

    private ReportTable harvestTable(DroughtFindings.ZoneFindings zone) {
        List<Column> columns = List.of(
                Column.text("cut on"),
                Column.number("years", ""),
                Column.number("brought in", units.yieldUnit()),
                Column.text("middle eight tenths"),
                Column.number("moisture", "% wet basis"),
                Column.number("dry enough", "% of years"),
                Column.number("ground carries", "% of years"),
                Column.number("both", "% of years"));
        List<List<String>> rows = zone.dates().dates().stream()
                .map((HarvestDates.CutDate cut) -> List.of(
                        cut.day().toString().substring(2),
                        Integer.toString(cut.years()),
                        Numbers.fixed(units.dryMatter(cut.harvested().mean()), 1),
                        Numbers.fixed(units.dryMatter(cut.harvested().low()), 1) + " to "
                                + Numbers.fixed(units.dryMatter(cut.harvested().high()), 1),
                        Numbers.fixed(cut.moisture().mean(), 0),
                        Numbers.fixed(100 * cut.dryShare(), 0),
                        Numbers.fixed(100 * cut.carriesShare(), 0),
                        Numbers.fixed(100 * cut.readyShare(), 0)))
                .toList();
        return new ReportTable("Harvest dates: what a cut on each half month would have brought in", columns, rows);
    }

    private String thirstMethod() {
        return "Method: the study's weather is run again over the soil of "
                + findings.thirst().soilOf()
                + ", cut off below or its lowest layer continued until it holds the water of the column. Each column has its own"
                + " fitted line; a cell is the line at the row's deficit, with the 95 % band of a single year. A dash stands where"
                + " no year was so dry or so wet, or where there are too few years for a line.";
    }

    ReportTable thirstTable(UnitSystem system) {
        ThirstTable thirst = findings.thirst();
        List<Column> columns = new ArrayList<>();
        columns.add(Column.text("missing rain, " + system.waterUnit()));
        int decimals = system == UnitSystem.SI ? 0 : 1;
        for (ThirstTable.Rung rung : thirst.rungs()) {
            columns.add(Column.number(
                    Numbers.fixed(system.water(rung.availableWaterMm()), decimals) + " " + system.waterUnit(),
                    Numbers.fixed(system.depth(rung.depthM()), 1) + " " + system.depthUnit() + " deep"));
        }
        List<List<String>> rows = new ArrayList<>();
        for (double deficit : ThirstTableChart.steps(thirst, system)) {
            List<String> row = new ArrayList<>();
            row.add(deficit == 0.0 ? "normal rain" : Numbers.fixed(system.water(deficit), 0));
            thirst.rungs()
                    .forEach(rung -> row.add(
                            rung.at(deficit).map(cell -> cell(cell, system)).orElse("–")));
            rows.add(row);
        }
        return new ReportTable(
                "Loss to drought in " + system.yieldUnit() + " by missing rain (" + system.waterUnit()
                        + ", negative: more than normal) and available water of the soil: expected, and in brackets where 95 of"
                        + " 100 single years fall",
                columns,
                rows);
    }

    private static String cell(ThirstTable.Cell cell, UnitSystem system) {
        return Numbers.fixed(system.dryMatter(cell.expectedMgHa()), 1) + " ("
                + Numbers.fixed(system.dryMatter(cell.range().lower()), 1) + "–"
                + Numbers.fixed(system.dryMatter(cell.range().upper()), 1) + ")";
    }

    /** The thirst table in both units on one page to print. */
    String thirstPage() {
        List<String> text = new ArrayList<>();
        if (findings.outcome().invented()) {
            text.add("Invented data: site and weather are made up; they describe no real place.");
        }
        text.add(words.thirst());
        text.add(thirstMethod());
        text.add(
                "A simulation of past weather, not a forecast; calibrate against your own plots before advice rests on it.");
        return OnePage.render(
                "Thirst table: " + findings.outcome().study().title(),
                ReportFrame.subtitle(findings.outcome()),
                text,
                List.of(thirstTable(UnitSystem.SI), thirstTable(UnitSystem.US)));
    }

    private ReportTable riskTable() {
        List<Column> columns = new ArrayList<>(List.of(Column.text("zone"), Column.number("years", "")));
        for (int length = 1; length <= YearTables.LONGEST_RUN; length++) {
            columns.add(Column.number("poorest " + (length == 1 ? "year" : length + " in a row"), units.yieldUnit()));
        }
        List<List<String>> rows = new ArrayList<>();
        findings.zones().forEach(zone -> rows.add(riskRow(zone.zone().zone().name(), zone.risk(), zone.riskBands())));
        findings.comparison()
                .field()
                .filter(field -> findings.zones().size() > 1)
                .ifPresent(field -> rows.add(riskRow("whole field", field.risk(), findings.fieldBands())));
        String title = "Worst years and runs of years, mean harvest";
        return new ReportTable(
                findings.outcome().bands().isPresent()
                        ? title + ", in square brackets 5 to 95 % of calibration draws"
                        : title,
                columns,
                rows);
    }

    private List<String> riskRow(String name, YieldRisk risk, Optional<RiskBands> bands) {
        List<String> row = new ArrayList<>(List.of(name, Integer.toString(risk.n())));
        for (int length = 1; length <= YearTables.LONGEST_RUN; length++) {
            String possible = possible(bands, length);
            row.add(risk.worstRun(length)
                    .map(run -> String.format(Locale.ROOT, "%.1f", units.dryMatter(run.meanMgHa())) + possible + " ("
                            + run.firstYear()
                            + (run.firstYear() == run.lastYear() ? "" : "–" + run.lastYear()) + ")")
                    .orElse("–"));
        }
        return row;
    }

    private String possible(Optional<RiskBands> bands, int length) {
        return bands.map(of -> of.worstRun(length))
                .filter(Band::isKnown)
                .map(band -> " [" + Numbers.fixed(units.dryMatter(band.low()), 1) + "–"
                        + Numbers.fixed(units.dryMatter(band.high()), 1) + "]")
                .orElse("");
    }
}
