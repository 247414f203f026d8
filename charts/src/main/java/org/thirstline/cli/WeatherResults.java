package org.thirstline.cli;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.thirstline.charts.report.HtmlReport;
import org.thirstline.io.climate.ClimateTable;
import org.thirstline.io.quality.WeatherReport;
import org.thirstline.io.tables.DataPackage;
import org.thirstline.io.tables.ResultFolder;
import org.thirstline.io.tables.RunManifest;
import org.thirstline.io.weather.WeatherRecord;
import org.thirstline.io.weather.WeatherTable;

/** The files of a reading of weather. Confined to one run. */
final class WeatherResults {

    private final WeatherRecord record;
    private final WeatherClimate climate;
    private final List<Path> inputs;
    private final boolean pdf;
    private final Timings timings;

    WeatherResults(WeatherRecord record, WeatherClimate climate, List<Path> inputs, boolean pdf, Timings timings) {
        this.record = record;
        this.climate = climate;
        this.inputs = List.copyOf(inputs);
        this.pdf = pdf;
        this.timings = timings;
    }

    /** Writes everything into a folder that becomes visible as a whole. */
    void writeTo(ResultFolder results, List<String> options) throws IOException {
        StringBuilder table = new StringBuilder();
        WeatherTable.write(record, table);
        text(results, WeatherTable.FILE, table.toString());
        StringBuilder report = new StringBuilder();
        WeatherReport.write(record, report);
        text(results, WeatherReport.FILE, report.toString());
        Path climateFile = results.file(ClimateTable.FILE);
        ClimateTable.of(climate.summary()).writeTo(climateFile);
        timings.step("tables");
        ChartFiles.write(climate.recipes(), climate.slide(), pdf, results);
        HtmlReport.write(WeatherPage.of(record, climate), results.file("report.html"));
        timings.step("charts and report");
        text(results, RunManifest.FILE, manifest(options).text());
        Path folder = climateFile.getParent();
        if (folder == null) {
            throw new IOException("results have no folder");
        }
        String description = (record.invented() ? "Invented weather. " : "")
                + "Daily weather without gaps, how it was completed, and its climate, by Thirstline.";
        text(
                results,
                DataPackage.FILE,
                DataPackage.descriptor(
                        "Weather of " + record.site().name(),
                        description,
                        List.of(WeatherTable.info(), WeatherReport.info(), ClimateTable.info()),
                        folder));
    }

    private static void text(ResultFolder results, String name, String text) throws IOException {
        Files.write(results.file(name), text.getBytes(StandardCharsets.UTF_8));
    }

    private RunManifest manifest(List<String> options) throws IOException {
        Path base = inputs.get(0).toAbsolutePath().getParent();
        if (base == null) {
            throw new IOException(inputs.get(0) + " has no folder");
        }
        Map<String, String> versions = new LinkedHashMap<>();
        versions.put("thirstline", Version.program());
        versions.put("java", Version.java());
        Map<String, String> chosen = new LinkedHashMap<>();
        options.forEach(option -> {
            int equals = option.indexOf('=');
            chosen.put(option.substring(2, equals), option.substring(equals + 1));
        });
        List<RunManifest.Input> files =
                inputs.stream().map(file -> RunManifest.Input.of(file, base)).toList();
        return new RunManifest("weather", versions, files, chosen, timings.seconds());
    }
}
