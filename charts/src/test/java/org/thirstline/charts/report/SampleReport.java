package org.thirstline.charts.report;

import java.util.List;
import org.thirstline.charts.ChartDocument;
import org.thirstline.charts.report.ReportTable.Column;

/** A report with something in every part. */
public final class SampleReport {

    private SampleReport() {}

    public static ReportModel of(List<ChartDocument> charts) {
        ReportTable seasons = new ReportTable(
                "East field <north>, seasons",
                List.of(
                        Column.number("Growth year", ""),
                        Column.number("Stand age", "years"),
                        Column.text("Season"),
                        Column.number("Rain", "mm"),
                        Column.number("Harvested", "Mg/ha"),
                        Column.number("Lost to drought", "Mg/ha"),
                        Column.number("Moisture", "% wet basis")),
                List.of(
                        List.of("2011", "3", "wet", "612", "18.2", "0.3", "17"),
                        List.of("2012", "4", "dry", "288", "9.1", "8.8", "15")));
        ReportTable parameters = new ReportTable(
                "Crop parameters",
                List.of(
                        Column.text("Parameter"),
                        Column.number("Value", ""),
                        Column.text("Unit"),
                        Column.text("Range"),
                        Column.text("Source"),
                        Column.text("Status")),
                List.of(List.of("Extinction coefficient", "0.60", "1", "0.5 to 0.7", "round figure", "assumed")));
        return new ReportModel(
                "Larkmoor & \"East\" field",
                "Giant miscanthus at the Larkmoor field station, 1994 to 2023",
                true,
                List.of("Drought took 4.0 Mg/ha in an average year and 20.4 in 2006.", "2023 has no harvest yet."),
                List.of(new ReportModel.Section(
                        "Yield and drought", List.of("What each year gave."), charts, List.of(seasons))),
                List.of("Soil 1.8 m deep with 250 mm of available water."),
                List.of("Wind: 2 m/s on every day."),
                List.of(new ReportTable(
                        "Days by origin",
                        List.of(Column.text("Variable"), Column.number("Measured", "days")),
                        List.of(List.of("rain", "10957")))),
                List.of(parameters),
                List.of("Winter kill is likely in the first winter of this site."),
                "Thirstline 0.1.0; run.json beside this file repeats the run.");
    }
}
