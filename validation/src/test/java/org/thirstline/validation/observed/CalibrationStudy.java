package org.thirstline.validation.observed;

import java.io.IOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.thirstline.calibration.fit.FitParameter;
import org.thirstline.calibration.fit.FitResult;
import org.thirstline.calibration.skill.SkillScores;
import org.thirstline.model.crop.CropParameter;
import org.thirstline.model.weather.DailyDrivers;
import org.thirstline.validation.catalogue.CheckRow;
import org.thirstline.validation.catalogue.Family;
import org.thirstline.validation.catalogue.Numbers;
import org.thirstline.validation.catalogue.TextTable;
import org.thirstline.validation.catalogue.Verdict;
import org.thirstline.validation.observed.SoilWaterStudy.Reading;
import org.thirstline.validation.observed.SoilWaterStudy.Station;

/** What calibrations change: skill on places left out of the fit, the parameters, and every other fact. */
final class CalibrationStudy {

    private static final int DIGITS = 3;

    private final Facts facts;
    private final List<List<String>> skill = new ArrayList<>();
    private final List<List<String>> parameters = new ArrayList<>();

    private CalibrationStudy(Facts facts) {
        this.facts = facts;
    }

    static List<TextTable> run() throws IOException {
        return new CalibrationStudy(Facts.read()).tables();
    }

    private List<TextTable> tables() {
        Experiment yields = YieldExperiment.of(facts);
        skill(yields, "place");
        skill(yields.withGroups(YieldExperiment::region), "region");
        Experiment moisture = MoistureExperiment.of(facts);
        skill(moisture, "place");
        Experiment soil = SoilMoistureExperiment.of();
        skill(soil, "station");
        Map<String, Map<CropParameter, Double>> crops = new LinkedHashMap<>();
        crops.put("fitted to yields", values(yields, YieldExperiment.PARAMETERS));
        crops.put("fitted to water use", values(waterUse(), WATER_USE));
        crops.put("fitted to moisture", values(moisture, MoistureExperiment.PARAMETERS));
        double[] soilValues = fitted(soil);
        return List.of(
                new TextTable(
                        "Skill on what was left out of the fit",
                        List.of(
                                "observations",
                                "number",
                                "held out",
                                "unit",
                                "defaults: root mean square error",
                                "bias",
                                "calibrated, held out: root mean square error",
                                "bias",
                                "mean of the others: root mean square error"),
                        skill),
                new TextTable(
                        "Parameters of the fits to all places",
                        List.of("fitted to", "parameter", "default", "fitted", "bounds", "note"),
                        parameters),
                timing(soil.start(), soilValues),
                facts(crops));
    }

    private void skill(Experiment experiment, String group) {
        SkillScores defaults = experiment.defaults();
        SkillScores heldOut = experiment.heldOut();
        skill.add(List.of(
                experiment.name(),
                Integer.toString(experiment.items().size()),
                "each of %d %ss".formatted(experiment.groups(), group),
                experiment.unit(),
                number(defaults.rootMeanSquareError()),
                bias(defaults),
                number(heldOut.rootMeanSquareError()),
                bias(heldOut),
                number(experiment.meanOfOthers().rootMeanSquareError())));
    }

    /** With as many decimals as the root mean square error has: more would be noise of the fit. */
    private static String bias(SkillScores scores) {
        double unit = Math.pow(10.0, Math.floor(Math.log10(scores.rootMeanSquareError())) - DIGITS + 1);
        return number(Math.round(scores.bias() / unit) * unit);
    }

    private static String number(double value) {
        return Numbers.significant(value, DIGITS);
    }

    private double[] fitted(Experiment experiment) {
        FitResult fit = experiment.fit();
        for (int i = 0; i < experiment.parameters().size(); i++) {
            FitParameter parameter = experiment.parameters().get(i);
            parameters.add(List.of(
                    experiment.name(),
                    parameter.name(),
                    number(parameter.start()),
                    number(fit.value(i)),
                    number(parameter.lower()) + " to " + number(parameter.upper()),
                    fit.isAtBound(i) ? "at its bound" : "standard error " + number(fit.standardError(i))));
        }
        return fit.values();
    }

    private Map<CropParameter, Double> values(Experiment experiment, List<CropParameter> which) {
        double[] values = fitted(experiment);
        Map<CropParameter, Double> changes = new LinkedHashMap<>();
        for (int i = 0; i < which.size(); i++) {
            changes.put(which.get(i), values[i]);
        }
        return changes;
    }

    private static final List<CropParameter> WATER_USE = List.of(CropParameter.BASAL_CROP_COEFFICIENT_FULL);

    /** One place, so nothing can be held out. */
    private Experiment waterUse() {
        String key = "water-use/mxg-et";
        return new Experiment(
                "water use of giant miscanthus",
                "mm",
                List.of(new Experiment.Item(
                        "Michigan",
                        "Michigan",
                        facts.expected(key),
                        point -> SeasonStudy.seasonWaterUse(Fields.with(SeasonStudy.michigan(), WATER_USE, point)))),
                YieldExperiment.parameters(Fields.MISCANTHUS, WATER_USE));
    }

    /** When the soil dries, which was not fitted. */
    private static TextTable timing(double[] defaults, double[] fitted) {
        List<List<String>> lines = new ArrayList<>();
        for (Station station : SoilWaterStudy.STATIONS) {
            if (station.soil() == SoilWaterStudy.SILT_LOAM) {
                DailyDrivers drivers = station.drivers();
                List<Reading> readings = SoilWaterStudy.readings(station, drivers);
                List<String> line = new ArrayList<>(List.of(station.id()));
                for (double[] point : List.of(defaults, fitted)) {
                    GrassCover grass = GrassCover.run(drivers, SoilMoistureExperiment.soil(point));
                    line.add(number(SoilWaterStudy.dryDown(readings, grass)));
                    line.add(number(SoilWaterStudy.correlation(readings, grass)));
                }
                lines.add(line);
            }
        }
        return new TextTable(
                "Timing of soil water at 20 cm, not fitted: median days between simulated and observed half-way to the driest day, and correlation",
                List.of("station", "defaults: days", "correlation", "fitted: days", "correlation"),
                lines);
    }

    /** Every fact about giant miscanthus that a calibration moves, under the defaults and each calibration. */
    private TextTable facts(Map<String, Map<CropParameter, Double>> crops) {
        Map<String, CheckRow> defaults = rows(Map.of());
        List<Map<String, CheckRow>> fitted =
                crops.values().stream().map(this::rows).toList();
        List<List<String>> lines = new ArrayList<>();
        lines.add(counts(defaults, fitted));
        defaults.forEach((key, row) -> {
            boolean moves = fitted.stream()
                    .anyMatch(rows -> !number(rows.get(key).computed()).equals(number(row.computed())));
            if (moves) {
                List<String> line = new ArrayList<>(List.of(
                        key.substring(0, key.indexOf('/')), row.what(), row.expected(), accepted(row), cell(row)));
                fitted.forEach(rows -> line.add(cell(rows.get(key))));
                lines.add(line);
            }
        });
        List<String> header = new ArrayList<>(List.of("family", "what", "published", "accepted", "defaults"));
        header.addAll(crops.keySet());
        return new TextTable("What each fit does to all other facts", header, lines);
    }

    private static List<String> counts(Map<String, CheckRow> defaults, List<Map<String, CheckRow>> fitted) {
        List<String> line = new ArrayList<>(List.of("all", "facts inside their published range", "", ""));
        line.add(count(defaults));
        fitted.forEach(rows -> line.add(count(rows)));
        return line;
    }

    private static String count(Map<String, CheckRow> rows) {
        long passes = rows.values().stream()
                .filter(row -> row.verdict() == Verdict.PASS)
                .count();
        long judged = rows.values().stream()
                .filter(row -> row.verdict() != Verdict.SHOWN)
                .count();
        return passes + " of " + judged;
    }

    private static String accepted(CheckRow row) {
        return row.verdict() == Verdict.SHOWN ? "–" : number(row.low()) + " to " + number(row.high());
    }

    private static String cell(CheckRow row) {
        return number(row.computed())
                + (row.verdict() == Verdict.SHOWN ? "" : " " + row.verdict().words());
    }

    /** Facts by family and id, in the order of the page, with a changed crop. */
    private Map<String, CheckRow> rows(Map<CropParameter, Double> changes) {
        Map<String, Double> results = new TreeMap<>();
        Fields.withMiscanthus(changes, () -> {
            YieldStudy.run(facts, results);
            SeasonStudy.run(results);
        });
        Map<String, CheckRow> rows = new LinkedHashMap<>();
        for (Family family : facts.families(results)) {
            family.rows().forEach(row -> rows.put(family.slug().replace("observed-", "") + "/" + row.id(), row));
        }
        return rows;
    }
}
