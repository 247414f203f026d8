package org.thirstline.cli;

import org.thirstline.calibration.bands.Band;
import org.thirstline.calibration.response.BrokenLine;
import org.thirstline.calibration.response.DroughtResponse;
import org.thirstline.calibration.response.Interval;
import org.thirstline.calibration.response.RobustLine;
import org.thirstline.calibration.response.StraightLine;
import org.thirstline.calibration.study.StudyOutcome;
import org.thirstline.calibration.study.ZoneOutcome;
import org.thirstline.io.text.JsonText;
import org.thirstline.model.climate.Normals;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

/** {@code drought.json}: the drought response of each zone. */
final class DroughtJson {

    static final String FILE = "drought.json";
    private static final double MM_SHOWN = 100.0;

    private DroughtJson() {}

    static String text(StudyOutcome outcome) {
        ObjectNode root = JsonNodeFactory.instance.objectNode();
        root.put("study", outcome.study().title());
        root.put("invented", outcome.invented());
        ObjectNode window = root.putObject("growing_season");
        window.put("from", outcome.study().season().from().toString());
        window.put("until", outcome.study().season().until().toString());
        normals(outcome.deficit().normals(), root.putObject("normal"));
        ArrayNode zones = root.putArray("zones");
        for (ZoneOutcome zone : outcome.zones()) {
            ObjectNode node = zones.addObject();
            zone(zone, node);
            new ZoneCharts(outcome, zone).slopes().filter(Band::isKnown).ifPresent(slopes -> slopes(slopes, node));
        }
        return JsonText.of(root);
    }

    private static void normals(Normals normals, ObjectNode node) {
        node.put("first_year", normals.period().firstYear());
        node.put("last_year", normals.period().lastYear());
        node.put("years_used", normals.yearsUsed().size());
        node.put("rain_mm", normals.meanRainMm());
        normals.notice().ifPresent(notice -> node.put("notice", notice));
    }

    private static void zone(ZoneOutcome zone, ObjectNode node) {
        DroughtResponse response = zone.response();
        node.put("zone", zone.zone().name());
        node.put("years", response.n());
        node.put("verdict", response.words().verdict());
        node.put("detail", response.words().detail());
        response.line().ifPresent(line -> straight(line, node.putObject("line")));
        response.robustLine().ifPresent(line -> robust(line, node.putObject("robust_line")));
        response.brokenLine().ifPresent(line -> broken(line, node.putObject("broken_line")));
        response.slopeWithoutAnyYear()
                .ifPresent(range -> interval("slope_without_any_year_mg_ha_per_100_mm", range, MM_SHOWN, node));
        ArrayNode influential = node.putArray("influential_years");
        response.influentialYears().forEach(influential::add);
    }

    private static void slopes(Band slopes, ObjectNode node) {
        ObjectNode over = node.putObject("line_over_calibration_draws");
        over.put("draws", slopes.draws());
        over.put("slope_5_pct_mg_ha_per_100_mm", MM_SHOWN * slopes.low());
        over.put("slope_50_pct_mg_ha_per_100_mm", MM_SHOWN * slopes.median());
        over.put("slope_95_pct_mg_ha_per_100_mm", MM_SHOWN * slopes.high());
    }

    private static void straight(StraightLine line, ObjectNode node) {
        node.put("slope_mg_ha_per_100_mm", MM_SHOWN * line.slope());
        interval("slope_95_pct_mg_ha_per_100_mm", line.slopeInterval(), MM_SHOWN, node);
        node.put("intercept_mg_ha", line.intercept());
        interval("intercept_95_pct_mg_ha", line.interceptInterval(), 1.0, node);
        node.put("r_squared", line.rSquared());
    }

    private static void robust(RobustLine line, ObjectNode node) {
        node.put("slope_mg_ha_per_100_mm", MM_SHOWN * line.slope());
        interval("slope_95_pct_mg_ha_per_100_mm", line.slopeInterval(), MM_SHOWN, node);
        node.put("intercept_mg_ha", line.intercept());
    }

    private static void broken(BrokenLine line, ObjectNode node) {
        node.put("threshold_mm", line.threshold());
        interval("threshold_95_pct_mm", line.thresholdInterval(), 1.0, node);
        node.put("level_mg_ha", line.level());
        node.put("slope_mg_ha_per_100_mm", MM_SHOWN * line.slope());
    }

    private static void interval(String name, Interval interval, double factor, ObjectNode node) {
        ArrayNode pair = node.putArray(name);
        pair.add(factor * interval.lower());
        pair.add(factor * interval.upper());
    }
}
