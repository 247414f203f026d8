package org.thirstline.cli;

import java.time.LocalDate;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.thirstline.calibration.study.StudyOutcome;
import org.thirstline.calibration.study.ZoneOutcome;
import org.thirstline.charts.Numbers;
import org.thirstline.charts.UnitSystem;
import org.thirstline.charts.report.ReportTable;
import org.thirstline.charts.report.ReportTable.Column;
import org.thirstline.model.climate.SeasonClass;
import org.thirstline.model.result.SeasonRecord;
import org.thirstline.model.result.SeasonVariable;

/** The seasons of a zone as the report shows them: what a grower asks first, the rest is in seasons.csv. Stateless and thread-safe. */
final class SeasonReportTable {

    private SeasonReportTable() {}

    static ReportTable of(StudyOutcome outcome, ZoneOutcome zone, UnitSystem units) {
        List<Column> columns = List.of(
                Column.number("growth year", ""),
                Column.number("age", ""),
                Column.text("season"),
                Column.number("rainfall deficit", units.waterUnit()),
                Column.text("emergence"),
                Column.text("canopy end"),
                Column.text("harvest"),
                Column.number("moisture", "% wet basis"),
                Column.number("harvested", units.yieldUnit()),
                Column.number("without drought", units.yieldUnit()),
                Column.number("drought penalty", units.yieldUnit()),
                Column.number("of it carried over", units.yieldUnit()),
                Column.text("remark"));
        List<List<String>> rows = zone.stand().seasons().stream()
                .map(season -> row(outcome, season, units))
                .toList();
        return new ReportTable("Seasons of " + zone.zone().name(), columns, rows);
    }

    private static List<String> row(StudyOutcome outcome, SeasonRecord season, UnitSystem units) {
        SeasonClass kind = outcome.classes().get(season.growthYear());
        return List.of(
                Integer.toString(season.growthYear()),
                Integer.toString(season.standAge()),
                kind == null ? "" : kind.word(),
                number(units.water(season.value(SeasonVariable.RAIN_DEFICIT)), units == UnitSystem.SI ? 0 : 1),
                date(season.dates().emergence()),
                date(season.dates().canopyEnd()),
                date(season.dates().harvest()),
                number(season.value(SeasonVariable.HARVEST_MOISTURE), 0),
                number(units.dryMatter(season.value(SeasonVariable.HARVESTED)), 1),
                number(units.dryMatter(season.value(SeasonVariable.POTENTIAL_HARVESTED)), 1),
                number(units.dryMatter(season.value(SeasonVariable.DROUGHT_PENALTY)), 1),
                number(units.dryMatter(season.value(SeasonVariable.PENALTY_CARRIED_OVER)), 1),
                season.isComplete() ? "" : season.status().words());
    }

    private static String date(@Nullable LocalDate date) {
        return date == null ? "" : date.toString();
    }

    /** Rounds; a value that rounds to nothing has no sign. */
    private static String number(double value, int decimals) {
        return Double.isNaN(value) ? "" : Numbers.plain(value, decimals);
    }
}
