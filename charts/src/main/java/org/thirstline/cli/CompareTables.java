package org.thirstline.cli;

import java.time.LocalDate;
import java.time.format.TextStyle;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.thirstline.calibration.study.ZoneOutcome;
import org.thirstline.calibration.years.MonthsOfYears;
import org.thirstline.calibration.years.MonthsOfYears.YearMonthSums;
import org.thirstline.charts.Numbers;
import org.thirstline.charts.UnitSystem;
import org.thirstline.charts.report.ReportTable;
import org.thirstline.charts.report.ReportTable.Column;
import org.thirstline.io.tables.ColumnInfo;
import org.thirstline.io.tables.TableInfo;
import org.thirstline.model.engine.GrowthCalendar;
import org.thirstline.model.result.DailyResults;
import org.thirstline.model.result.DailyVariable;
import org.thirstline.model.result.SeasonRecord;

/** Tables of {@code compare}: every day of each growth year by its place in the year, and the months. Stateless and thread-safe. */
final class CompareTables {

    private static final int DECIMALS = 3;

    private static final List<DailyVariable> DAILY = List.of(
            DailyVariable.RAIN,
            DailyVariable.ET0,
            DailyVariable.SOIL_WATER,
            DailyVariable.ROOT_ZONE_DEPLETION,
            DailyVariable.LEAF_AREA_INDEX,
            DailyVariable.INTERCEPTED_FRACTION,
            DailyVariable.STANDING,
            DailyVariable.TRANSPIRATION,
            DailyVariable.WATER_FACTOR);

    private CompareTables() {}

    static ResultTable daily(ComparedYears compared) {
        List<ColumnInfo> columns = new ArrayList<>(List.of(
                ColumnInfo.text("zone", "Zone of the field"),
                ColumnInfo.integer("growth_year", "yr", "Calendar year in which the canopy emerges"),
                ColumnInfo.integer(
                        "day_of_growth_year", "d", "1 is the first day of the growth year: 1 January or 1 July"),
                ColumnInfo.date("date", "Day"),
                ColumnInfo.number("rain_so_far_mm", "mm", "Rain since the growth year began")));
        DAILY.forEach(
                variable -> columns.add(ColumnInfo.number(variable.column(), variable.unit(), variable.meaning())));
        ResultTable result = ResultTable.start(
                new TableInfo("compare.csv", "Compared growth years day by day, by place in the growth year", columns));
        for (ZoneOutcome zone : compared.outcome().zones()) {
            compared.seasons(zone).forEach(season -> days(result, compared, zone, season));
        }
        return result;
    }

    private static void days(ResultTable result, ComparedYears compared, ZoneOutcome zone, SeasonRecord season) {
        DailyResults daily = zone.stand().daily();
        LocalDate start = GrowthCalendar.firstDay(compared.outcome().study().site(), season.growthYear());
        LocalDate next = GrowthCalendar.firstDay(compared.outcome().study().site(), season.growthYear() + 1);
        double rain = 0.0;
        for (LocalDate date = start; date.isBefore(next); date = date.plusDays(1)) {
            int day = (int) (date.toEpochDay() - daily.start().toEpochDay());
            if (day < 0 || day >= daily.days()) {
                continue;
            }
            rain += daily.at(DailyVariable.RAIN, day);
            result.table()
                    .text(zone.zone().name())
                    .whole(season.growthYear())
                    .whole(date.toEpochDay() - start.toEpochDay() + 1)
                    .date(date)
                    .number(rain, DECIMALS);
            DAILY.forEach(variable -> result.table().number(daily.at(variable, day), DECIMALS));
            result.table().endRow();
        }
    }

    private static List<YearMonthSums> months(ComparedYears compared, ZoneOutcome zone, SeasonRecord season) {
        return MonthsOfYears.of(compared.outcome().study().site(), zone.stand().daily(), season);
    }

    static ResultTable months(ComparedYears compared) {
        ResultTable result = ResultTable.start(new TableInfo(
                "compare-months.csv",
                "Months of the compared growth years; differences are to the first year named",
                List.of(
                        ColumnInfo.text("zone", "Zone of the field"),
                        ColumnInfo.integer("growth_year", "yr", "Calendar year in which the canopy emerges"),
                        ColumnInfo.integer("month", "1", "Calendar month"),
                        ColumnInfo.number("rain_mm", "mm", "Rain"),
                        ColumnInfo.number("et0_mm", "mm", "Reference evapotranspiration"),
                        ColumnInfo.number("transpiration_mm", "mm", "Transpiration"),
                        ColumnInfo.number("soil_water_mm", "mm", "Mean water in the profile"),
                        ColumnInfo.number("leaf_area_index", "m²/m²", "Mean green leaf area index"),
                        ColumnInfo.number("growth_mg_ha", "Mg/ha", "Dry matter grown, above and below ground"),
                        ColumnInfo.number("water_factor", "1", "Mean water factor on days with a green canopy"),
                        ColumnInfo.number("rain_difference_mm", "mm", "Rain minus that of the first year"),
                        ColumnInfo.number(
                                "soil_water_difference_mm", "mm", "Mean soil water minus that of the first year"),
                        ColumnInfo.number("growth_difference_mg_ha", "Mg/ha", "Growth minus that of the first year"))));
        for (ZoneOutcome zone : compared.outcome().zones()) {
            List<YearMonthSums> first =
                    months(compared, zone, compared.seasons(zone).get(0));
            for (SeasonRecord season : compared.seasons(zone)) {
                months(compared, zone, season).forEach(month -> month(result, zone, month, same(first, month)));
            }
        }
        return result;
    }

    private static Optional<YearMonthSums> same(List<YearMonthSums> months, YearMonthSums month) {
        return months.stream()
                .filter(candidate -> candidate.month() == month.month())
                .findFirst();
    }

    private static void month(
            ResultTable result, ZoneOutcome zone, YearMonthSums month, Optional<YearMonthSums> first) {
        result.table()
                .text(zone.zone().name())
                .whole(month.growthYear())
                .whole(month.month().getValue())
                .number(month.rainMm(), 1)
                .number(month.et0Mm(), 1)
                .number(month.transpirationMm(), 1)
                .number(month.soilWaterMm(), 1)
                .number(month.leafAreaIndex(), 2)
                .number(month.growthMgHa(), DECIMALS)
                .number(month.waterFactor(), DECIMALS)
                .number(month.rainMm() - first.map(YearMonthSums::rainMm).orElse(Double.NaN), 1)
                .number(
                        month.soilWaterMm()
                                - first.map(YearMonthSums::soilWaterMm).orElse(Double.NaN),
                        1)
                .number(
                        month.growthMgHa()
                                - first.map(YearMonthSums::growthMgHa).orElse(Double.NaN),
                        DECIMALS)
                .endRow();
    }

    /** Months of a zone with what each year had less or more than the first. */
    static ReportTable monthReport(ComparedYears compared, ZoneOutcome zone, UnitSystem units) {
        List<Column> columns = new ArrayList<>();
        columns.add(Column.text("month"));
        List<List<YearMonthSums>> years = compared.seasons(zone).stream()
                .map(season -> months(compared, zone, season))
                .toList();
        for (int i = 0; i < years.size(); i++) {
            String year = String.valueOf(compared.years().get(i));
            columns.add(Column.number("rain " + year, units.waterUnit()));
            columns.add(Column.number("soil water " + year, units.waterUnit()));
            columns.add(Column.number("grown " + year, units.yieldUnit()));
            columns.add(Column.number("water factor " + year, ""));
        }
        List<List<String>> rows = new ArrayList<>();
        for (YearMonthSums month : years.stream()
                .max(java.util.Comparator.comparingInt(List::size))
                .orElseThrow()) {
            List<String> row = new ArrayList<>();
            row.add(month.month().getDisplayName(TextStyle.FULL, Locale.ENGLISH));
            years.forEach(year -> row.addAll(cells(same(year, month), units)));
            rows.add(row);
        }
        return new ReportTable("Months of " + zone.zone().name(), columns, rows);
    }

    private static List<String> cells(Optional<YearMonthSums> month, UnitSystem units) {
        int decimals = units == UnitSystem.SI ? 0 : 1;
        return month.map(sums -> List.of(
                        Numbers.fixed(units.water(sums.rainMm()), decimals),
                        Numbers.fixed(units.water(sums.soilWaterMm()), decimals),
                        Numbers.fixed(units.dryMatter(sums.growthMgHa()), 1),
                        Double.isNaN(sums.waterFactor()) ? "" : Numbers.fixed(sums.waterFactor(), 2)))
                .orElse(List.of("", "", "", ""));
    }
}
