package org.thirstline.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.function.Function;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The weather command as an agronomist with a folder of files uses it. */
class WeatherCommandTest {

    private static final String HEADER = "date,tmin_c,tmax_c,rain_mm";

    @TempDir
    private Path folder;

    private final StringWriter out = new StringWriter();
    private final StringWriter err = new StringWriter();

    private static long mean(LocalDate date) {
        return Math.round(10.0 - 13.0 * Math.cos(2.0 * Math.PI * date.getDayOfYear() / 365.0));
    }

    private static String day(LocalDate date) {
        long mean = mean(date);
        return date + "," + (mean - 5) + "." + date.getDayOfMonth() % 10 + "," + (mean + 5) + "."
                + date.getDayOfMonth() % 9 + ","
                + (date.getDayOfMonth() % 4 == 0 ? date.getDayOfMonth() + date.getYear() % 7 : 0);
    }

    private Path table(String name, String header, int years, Function<LocalDate, String> line) throws IOException {
        List<String> lines = new ArrayList<>(List.of(header));
        LocalDate end = LocalDate.of(2001 + years, 1, 1);
        for (LocalDate date = LocalDate.of(2001, 1, 1); date.isBefore(end); date = date.plusDays(1)) {
            lines.add(line.apply(date));
        }
        return Files.write(folder.resolve(name), lines);
    }

    private Path weather(int years) throws IOException {
        return table("weather.csv", HEADER, years, WeatherCommandTest::day);
    }

    private int run(Object... arguments) {
        List<String> all = new ArrayList<>(List.of("weather"));
        Arrays.stream(arguments).map(Object::toString).forEach(all::add);
        return Thirstline.execute(new PrintWriter(out, true), new PrintWriter(err, true), all.toArray(new String[0]));
    }

    private int runAtPlace(Object... arguments) {
        List<Object> all = new ArrayList<>(Arrays.asList(arguments));
        all.addAll(List.of("--latitude", 45, "--elevation", 100));
        return run(all.toArray());
    }

    private String result(String name) throws IOException {
        return Files.readString(folder.resolve("weather-weather").resolve(name));
    }

    private String report() throws IOException {
        return result("weather-report.csv");
    }

    @Test
    void everyResultIsWritten() throws IOException {
        assertThat(runAtPlace(weather(12), "--name", "Larkmoor"))
                .as(err.toString())
                .isZero();
        for (String name : List.of(
                "weather.csv",
                "weather-report.csv",
                "climate.csv",
                "report.html",
                "run.json",
                "datapackage.json",
                "charts/climate-normals.svg",
                "charts/frost-dates.png",
                "charts/growing-season.csv",
                "charts/precipitation-index.svg")) {
            assertThat(folder.resolve("weather-weather").resolve(name)).as(name).isNotEmptyFile();
        }
        assertThat(result("weather.csv"))
                .startsWith("date,tmin_c,tmax_c,rain_mm,solar_mj_m2,wind_2m_m_s,vapour_pressure_kpa,day_length_h,"
                        + "extraterrestrial_mj_m2,et0_mm,flags\n2001-01-01,");
        assertThat(report()).startsWith("variable,year,kind,count,first_date,last_date,example_value,action\n");
        assertThat(result("climate.csv"))
                .startsWith("what,period,value,unit,date,first_year,last_year,years,measured_pct\ntmin,01,")
                .contains("precipitation_index_3_months,2012-12,");
        assertThat(result("report.html")).contains("Weather of Larkmoor").contains("Climate at a glance");
        assertThat(result("run.json")).contains("\"latitude\" : \"45\"").contains("weather.csv");
        assertThat(out.toString())
                .contains("Larkmoor, 45.0000°, 100 m")
                .contains("days without frost in an average year")
                .contains("report.html");
    }

    @Test
    void theSameInputGivesTheSameBytesAndWhatIsWrittenReadsBack() throws IOException {
        Path weather = weather(2);
        assertThat(runAtPlace(weather)).isZero();
        String first = result("weather.csv");
        String page = result("report.html");
        assertThat(runAtPlace(weather)).isZero();
        assertThat(result("weather.csv")).isEqualTo(first);
        assertThat(result("report.html")).isEqualTo(page);
        Path again = folder.resolve("weather-weather/weather.csv");
        assertThat(runAtPlace(again, "--out", folder.resolve("again")))
                .as(err.toString())
                .isZero();
        assertThat(folder.resolve("again/weather.csv")).hasContent(first);
    }

    @Test
    void variablesAreTakenFromFilesOfTheirOwn() throws IOException {
        Path gauge = table("gauge.csv", HEADER, 1, date -> date + ",,," + (date.getMonthValue() == 7 ? "" : "1.5"));
        assertThat(runAtPlace(weather(2), "--take", "rain=" + gauge))
                .as(err.toString())
                .isZero();
        assertThat(report())
                .contains("rain_mm,2001,source,334,2001-01-01,2001-12-31,,from gauge.csv")
                .contains("rain_mm,2001,source,31,2001-07-01,2001-07-31,,from weather.csv")
                .contains("rain_mm,2002,source,365,2002-01-01,2002-12-31,,from weather.csv");
        assertThat(result("run.json")).contains("gauge.csv");
    }

    @Test
    void aSecondStationFillsGaps() throws IOException {
        Path holes = table(
                "weather.csv",
                HEADER,
                2,
                date -> date.getYear() == 2002 && date.getMonthValue() == 5 ? date + ",,," : day(date));
        Path other = table("other.csv", HEADER, 2, WeatherCommandTest::day);
        assertThat(runAtPlace(holes, "--second-station", other))
                .as(err.toString())
                .isZero();
        assertThat(report()).contains("tmin_c,2002,second station,31,2002-05-01,2002-05-31");
    }

    @Test
    void suspectValuesAreKeptBlankedOrStop() throws IOException {
        LocalDate odd = LocalDate.of(2001, 7, 15);
        Path weather = table("weather.csv", HEADER, 1, date -> date.equals(odd) ? date + ",-30,31,0" : day(date));
        assertThat(runAtPlace(weather)).isZero();
        assertThat(report()).contains("tmin_c,2001,suspect,1,2001-07-15").contains("; kept");
        assertThat(runAtPlace(weather, "--suspect", "blank")).isZero();
        assertThat(report()).contains("; taken as missing").contains("tmin_c,2001,interpolated,1,2001-07-15");
        assertThat(runAtPlace(weather, "--suspect", "stop")).isEqualTo(2);
        assertThat(err.toString()).contains("suspect values").contains("2001-07-15");
    }

    @Test
    void stationHeightUnitsAndRainSumsAreTold() throws IOException {
        List<String> lines = new ArrayList<>();
        for (String id : List.of("USW00000001", "USW00000002")) {
            for (int day = 1; day <= 28; day++) {
                String date = String.format(Locale.ROOT, "200107%02d", day);
                lines.add(id + "," + date + ",TMAX,250,,,W,");
                lines.add(id + "," + date + ",TMIN,120,,,W,");
                lines.add(id + "," + date + ",AWND,40,,,W,");
                if (day != 14 && day != 15) {
                    lines.add(id + "," + date + ",PRCP,0,,,W,");
                }
            }
            lines.add(id + ",20010715,MDPR,100,,,W,");
            lines.add(id + ",20010715,DAPR,2,,,W,");
        }
        Path year = Files.write(folder.resolve("weather.csv"), lines);
        assertThat(runAtPlace(year)).isEqualTo(2);
        assertThat(err.toString()).contains("USW00000001").contains("name the one to read");
        assertThat(runAtPlace(year, "--station", "USW00000002", "--wind-height", 3, "--rain-sums", "spread"))
                .as(err.toString())
                .isZero();
        assertThat(result("weather.csv")).contains("2001-07-14,12.00,25.00,5.00,");
        assertThat(report()).contains("brought from 3.0 m to 2 m").contains("sum of several days spread");
    }

    @Test
    void aStudyGivesItsWeather() throws IOException {
        weather(2);
        Path study = Files.writeString(folder.resolve("study.yaml"), """
                title: test
                site: {name: nowhere, latitude_deg: 45, elevation_m: 100}
                weather: {file: weather.csv, suspect: blank}
                crop: giant miscanthus
                stand: {planted: 2001-04-20, spacing: 75 cm x 75 cm}
                soil: {available_water: 150 mm/m, depth: 1 m}
                harvest: {date: 03-01}
                """);
        assertThat(run(study)).as(err.toString()).isZero();
        assertThat(folder.resolve("study-weather/weather.csv")).isNotEmptyFile();
        assertThat(out.toString()).contains("nowhere, 45.0000°");
        assertThat(run(study, "--suspect", "keep")).isEqualTo(2);
        assertThat(err.toString()).contains("leave the options out");
    }

    @Test
    void normalsOfAPeriod() throws IOException {
        assertThat(runAtPlace(weather(4), "--normal", "2002-2003", "--units", "us"))
                .isZero();
        assertThat(result("climate.csv")).contains(",2002,2003,2,100.0\n");
        assertThat(result("report.html")).contains("°F");
    }

    @Test
    void withoutRainTheRestIsStillWritten() throws IOException {
        Path dry =
                table("weather.csv", "date,tmin_c,tmax_c", 1, date -> day(date).replaceFirst(",[^,]*$", ""));
        assertThat(runAtPlace(dry)).as(err.toString()).isZero();
        assertThat(out.toString()).contains("none in the file");
        assertThat(result("report.html")).contains("no rain in the file");
    }

    /** Mistakes of tired people: the message says what is wrong, exit code 2, no stack trace, no results. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "weather.csv                                          | the latitude is needed",
                "weather.csv --latitude 45                            | the elevation is needed",
                "weather.csv --latitude 95 --elevation 100            | latitude",
                "weathre.csv                                          | no such file",
                "empty.csv                                            | holds no lines",
                ".                                                    | it is a folder",
                "sheet.xlsx                                           | export the sheet as CSV",
                "picture.png                                          | not a text file",
                "notes.txt                                            | no known weather format",
                "column.csv                                           | tmin",
                "weather.csv --format nasa-powr                       | nasa-power",
                "weather.csv --format knmi                            | this is no KNMI",
                "weather.csv --take rain                              | rain=gauge.csv",
                "weather.csv --take rian=weather.csv                  | did you mean 'rain'",
                "weather.csv --take solar=weather.csv                 | gives only tmin, tmax, rain",
                "weather.csv --take rain=gauge.csv                    | no such file",
                "weather.csv --suspect maybe                          | --suspect",
                "weather.csv --wind-height high                       | --wind-height",
                "weather.csv --radiation-coefficient 16               | 0.05",
                "weather.csv study.yaml                               | A study stands alone",
            })
    void mistakesAreToldInALine(String arguments, String message) throws IOException {
        weather(1);
        Files.writeString(folder.resolve("empty.csv"), "");
        Files.writeString(folder.resolve("notes.txt"), "Dear Sam,\nthe rain gauge was full.\n");
        Files.writeString(folder.resolve("column.csv"), "date,tmin_x,tmax_c\n2001-01-01,1,2\n");
        Files.write(folder.resolve("picture.png"), new byte[] {(byte) 0x89, 'P', 'N', 'G', 0, 0, 0, 13});
        try (ZipOutputStream zip = new ZipOutputStream(Files.newOutputStream(folder.resolve("sheet.xlsx")))) {
            zip.putNextEntry(new ZipEntry("[Content_Types].xml"));
            zip.write("<Types/>".getBytes(StandardCharsets.UTF_8));
        }
        List<Object> all = new ArrayList<>();
        for (String argument : arguments.strip().split(" +")) {
            boolean named = argument.contains("=");
            boolean file = argument.matches("\\.|.*\\.(csv|txt|png|xlsx|yaml)");
            String path = named ? argument.substring(argument.indexOf('=') + 1) : argument;
            String resolved = folder.resolve(path).normalize().toString();
            all.add(!file ? argument : named ? argument.replaceFirst("=.*", "=") + resolved : resolved);
        }
        if (!arguments.contains("--latitude") && !message.contains("latitude")) {
            all.addAll(List.of("--latitude", 45, "--elevation", 100));
        }
        assertThat(run(all.toArray())).isEqualTo(2);
        assertThat(err.toString()).contains(message).doesNotContain("\tat ").doesNotContain("Exception");
        assertThat(folder.resolve("weather-weather")).doesNotExist();
    }
}
