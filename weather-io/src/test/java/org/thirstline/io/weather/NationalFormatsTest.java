package org.thirstline.io.weather;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.thirstline.io.weather.WeatherSamples.read;
import static org.thirstline.io.weather.WeatherSamples.refused;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.thirstline.io.error.InputError;

/** Formats of national services: values reckoned by hand from the samples. */
class NationalFormatsTest {

    private static final Offset<Double> EXACT = within(1e-9);

    @TempDir
    Path folder;

    private static void has(RawWeather raw, RawVariable variable, double... values) {
        for (int day = 0; day < values.length; day++) {
            if (Double.isNaN(values[day])) {
                assertThat(raw.value(variable, day)).as(variable + " " + day).isNaN();
            } else {
                assertThat(raw.value(variable, day)).as(variable + " " + day).isCloseTo(values[day], EXACT);
            }
        }
    }

    @Test
    void dwdInBothLayoutsAndItsRadiation() {
        RawWeather raw = read(folder, WeatherSamples.DWD);
        assertThat(raw.absentDays()).isEqualTo(1);
        has(raw, RawVariable.TMAX, 19.4, 20.4, Double.NaN, 19.4);
        has(raw, RawVariable.TMIN, 8.0, 9.0, Double.NaN, -0.5);
        has(raw, RawVariable.RAIN, 2.5, 0.0, Double.NaN, Double.NaN);
        has(raw, RawVariable.VAPOUR_PRESSURE, 0.72, 0.82);
        has(raw, RawVariable.WIND, 4.5, Double.NaN);
        has(raw, RawVariable.SUNSHINE, 8.25, Double.NaN);
        assertThat(raw.windHeightM()).isEqualTo(10.0);
        RawWeather old = read(folder, """
                STATIONS_ID; MESS_DATUM; QUALITAETS_NIVEAU; LUFTTEMPERATUR;DAMPFDRUCK; LUFTTEMPERATUR_MINIMUM;LUFTTEMPERATUR_MAXIMUM; NIEDERSCHLAGSHOEHE;eor
                     3987;20150729;   3;   15.8;  11.1;  12.4; 21.4; 0.1;eor
                """);
        has(old, RawVariable.TMAX, 21.4);
        has(old, RawVariable.VAPOUR_PRESSURE, 1.11);
        RawWeather radiation = read(folder, """
                STATIONS_ID;MESS_DATUM;QN_592;ATMO_STRAHL;FD_STRAHL;FG_STRAHL;SD_STRAHL;eor
                       3987;20150729;    1;2900.00;1000.00;2123.00;  12.00;eor
                """);
        has(radiation, RawVariable.SOLAR, 21.23);
    }

    @Test
    void metEireannHasKnotsAndColumnsOfTheSameName() {
        RawWeather raw = read(folder, WeatherSamples.MET_EIREANN);
        assertThat(raw.site()).isEqualTo(new SiteInfo("LARKMOOR", 53.428, -6.241, 71.0));
        assertThat(raw.start()).isEqualTo(LocalDate.of(2024, 1, 29));
        has(raw, RawVariable.TMAX, 8.2, 9.2, Double.NaN, 7.0);
        has(raw, RawVariable.WIND, 4.0 * 1852 / 3600, 10.0 * 1852 / 3600, Double.NaN, Double.NaN);
        has(raw, RawVariable.SOLAR, 1.96, Double.NaN, Double.NaN, 2.5);
        has(raw, RawVariable.RAIN, 3.2, 0.0, Double.NaN, Double.NaN);
        RawWeather rainOnly = read(folder, "date,ind,rain\n29-feb-2016 00:00:00,0,4.5\n");
        has(rainOnly, RawVariable.RAIN, 4.5);
        refused(InputError.BAD_DATE, () -> read(folder, "date,ind,rain\n29-feb-2015,0,4.5\n"));
        refused(InputError.BAD_DATE, () -> read(folder, "date,ind,rain\n29-anf-2015,0,4.5\n"));
    }

    @Test
    void ecadKeepsWhatTheSourceSuspectsAndSaysSo() {
        RawWeather raw = read(folder, WeatherSamples.ECAD);
        has(raw, RawVariable.TMAX, 25.1, 30.5, Double.NaN, -1.2);
        assertThat(raw.absentDays()).isZero();
        assertThat(raw.issues()).extracting(WeatherIssue::kind).containsExactly(IssueKind.SUSPECT);
        assertThat(raw.station()).isEqualTo("241");
        String single = WeatherSamples.ECAD
                .replace(" SOUID,", "STAID, SOUID,")
                .replace("\n209948", "\n241,209948")
                .replace("TX", "QQ");
        has(read(folder, single), RawVariable.SOLAR, 251 * 0.0864);
        refused(InputError.FORMAT_MISMATCH, () -> read(folder, WeatherSamples.ECAD.replace("TX", "SD")));
    }

    @Test
    void stationListsGiveThePlace() throws IOException {
        Path tmax = Files.writeString(folder.resolve("a"), WeatherSamples.ECAD);
        String minimum = WeatherSamples.ECAD.replace("TX", "TN").replace("305", "105");
        Path tmin = Files.writeString(folder.resolve("b"), minimum);
        Path list = Files.writeString(folder.resolve("c"), """
                STAID,STANAME                                 ,CN,      LAT,       LON,HGHT
                  240,GENEVE COINTRIN                         ,CH,+46:15:00,+006:08:00, 420
                  241,GENEVE OBSERVATOIRE                     ,CH,-46:12:36,-006:09:00, 405
                """);
        RawWeather raw = WeatherFiles.join(WeatherReaders.readAll(List.of(list, tmax, tmin), ReadOptions.DEFAULT));
        assertThat(raw.site().latitudeDeg()).isCloseTo(-46.21, EXACT);
        assertThat(raw.site().longitudeDeg()).isCloseTo(-6.15, EXACT);
        has(raw, RawVariable.TMIN, 25.1, 10.5);
        refused(InputError.NO_WEATHER, () -> WeatherReaders.read(list, ReadOptions.DEFAULT));
        Path dly = Files.writeString(folder.resolve("d"), WeatherSamples.ghcnDaily());
        Path ghcn = Files.writeString(
                folder.resolve("e"),
                "USW00003870  34.8831  -82.2203  286.5 SC GREER                          HCN 72312\n");
        RawWeather greer =
                WeatherReaders.readAll(List.of(dly, ghcn), ReadOptions.DEFAULT).get(0);
        assertThat(greer.site()).isEqualTo(new SiteInfo("GREER", 34.8831, -82.2203, 286.5));
    }

    @Test
    void zipIsReadAsItLies() throws IOException {
        Path zip = zip(Map.of(
                "Metadaten_Geographie_01358.txt",
                "Stations_id;Stationshoehe;Geogr.Breite;Geogr.Laenge;von_datum;bis_datum;Stationsname\n"
                        + "1358;1213.00;50.4283;12.9535;19900101;        ;Fichtelberg\n",
                "notes.html",
                "<html>\n",
                "produkt_klima_tag.txt",
                WeatherSamples.DWD));
        RawWeather raw = WeatherReaders.read(zip, ReadOptions.DEFAULT);
        has(raw, RawVariable.TMAX, 19.4, 20.4);
        assertThat(raw.site()).isEqualTo(new SiteInfo("Fichtelberg", 50.4283, 12.9535, 1213.0));
        refused(
                InputError.FORMAT_UNKNOWN,
                () -> WeatherReaders.read(zip(Map.of("a.txt", "nothing\n")), ReadOptions.DEFAULT));
        refused(
                InputError.FILE_NOT_TEXT,
                () -> WeatherReaders.read(zip(Map.of("[Content_Types].xml", "<x>\n")), ReadOptions.DEFAULT));
        refused(
                InputError.NOT_A_NUMBER,
                () -> WeatherReaders.read(
                        zip(Map.of("a", WeatherSamples.DWD.replace("19.4", "hot"))), ReadOptions.DEFAULT));
    }

    private Path zip(Map<String, String> files) throws IOException {
        Path path = folder.resolve("archive");
        try (OutputStream out = Files.newOutputStream(path);
                ZipOutputStream zip = new ZipOutputStream(out)) {
            for (Map.Entry<String, String> file : files.entrySet()) {
                zip.putNextEntry(new ZipEntry(file.getKey()));
                zip.write(file.getValue().getBytes(StandardCharsets.UTF_8));
            }
        }
        return path;
    }

    @Test
    void meteoSwissOldAndNew() {
        RawWeather raw = read(folder, WeatherSamples.METEOSWISS);
        has(raw, RawVariable.SOLAR, 35 * 0.0864, Double.NaN, 8.64);
        has(raw, RawVariable.SUNSHINE, 32.0 / 60.0, Double.NaN, 1.0);
        has(raw, RawVariable.RAIN, 1.5, 0.0, Double.NaN);
        has(raw, RawVariable.TMIN, -3.0, -4.5, -3.25);
        RawWeather open = read(folder, """
                station_abbr;reference_timestamp;tre200d0;tre200dx;tre200dn;rka150d0;gre000d0;fkl010d0;pva200d0
                SIO;01.12.2024 00:00;1.5;5.5;-2.5;;45;2.1;6.5
                """);
        has(open, RawVariable.TMIN, -2.5);
        has(open, RawVariable.RAIN, Double.NaN);
        has(open, RawVariable.VAPOUR_PRESSURE, 0.65);
    }

    @Test
    void gridmetUnitsAreToldBySizeOrByTheHeader() {
        RawWeather raw = read(folder, WeatherSamples.GRIDMET);
        has(raw, RawVariable.TMIN, 20.0, 21.0, 22.0);
        has(raw, RawVariable.SOLAR, 250.5 * 0.0864, 300 * 0.0864, 8.64);
        assertThat(raw.site().latitudeDeg()).isEqualTo(38.88);
        assertThat(raw.issues()).extracting(WeatherIssue::kind).containsOnly(IssueKind.ASSUMED);
        RawWeather stated = read(folder, """
                # point
                yyyy-mm-dd,pr(mm),srad(Wm-2),tmmn(K),tmmx(K),vs(m/s)
                2012-12-21,0.0,35.0,253.15,263.15,3.5
                """);
        has(stated, RawVariable.SOLAR, 35.0 * 0.0864);
        has(stated, RawVariable.TMAX, -10.0);
        assertThat(stated.issues()).isEmpty();
    }

    @Test
    void agrimetInBothDateForms() {
        RawWeather raw = read(folder, WeatherSamples.AGRIMET);
        has(raw, RawVariable.TMIN, 10.0, 11.0, 12.0);
        has(raw, RawVariable.SOLAR, 600 * 0.04184, Double.NaN, 500 * 0.04184);
        has(raw, RawVariable.WIND, 4.4704, Double.NaN, 2.2352);
        has(raw, RawVariable.DEW_POINT, 5.0, 6.0, Double.NaN);
        has(raw, RawVariable.RAIN, 2.54, 0.0, 0.0);
        RawWeather parts = read(folder, "YEAR,MONTH,DAY,MX,MN,SR\n2015,01,31,32,14,100\n");
        has(parts, RawVariable.TMAX, 0.0);
        Path file = WeatherSamples.file(folder, WeatherSamples.AGRIMET);
        RawWeather atThree = WeatherReaders.read(file, ReadOptions.DEFAULT.withWindHeight(3.0));
        assertThat(atThree.windHeightM()).isEqualTo(3.0);
        assertThat(atThree.issues()).isEmpty();
    }

    @Test
    void coagmetAndGeosphere() {
        RawWeather coagmet = read(folder, WeatherSamples.COAGMET);
        has(coagmet, RawVariable.HUMIDITY_MAX, 92.9, 102.1, 80.0);
        has(coagmet, RawVariable.WIND, 203.1 / 86.4, 314.7 / 86.4, Double.NaN);
        has(coagmet, RawVariable.SOLAR, 263.1 * 0.0864, 307.4 * 0.0864, Double.NaN);
        RawWeather geosphere = read(folder, WeatherSamples.GEOSPHERE);
        has(geosphere, RawVariable.RAIN, 0.0, 12.4, 0.0);
        has(geosphere, RawVariable.SOLAR, 23.0, 24.0, 18.0);
        RawWeather before =
                read(folder, "station,time,strahl,rel,t,tmax,tmin,vv\n16412,2000-01-01,300,80,-2.7,0.5,-5.8,1\n");
        has(before, RawVariable.TMIN, -5.8);
    }

    @Test
    void ghcnWideTellsItsUnitsOrAsks() {
        RawWeather raw = read(folder, WeatherSamples.GHCN_WIDE);
        has(raw, RawVariable.TMAX, (100 - 32) / 1.8, (103 - 32) / 1.8, 35.0);
        has(raw, RawVariable.RAIN, 0.0, Double.NaN, 2.54);
        String cold = WeatherSamples.GHCN_WIDE
                .replace("\"100\"", "\"30\"")
                .replace("\"103\"", "\"31\"")
                .replace("\"95\"", "\"28\"");
        refused(InputError.UNIT_NOT_STATED, () -> read(folder, cold));
        Path file = WeatherSamples.file(folder, cold);
        RawWeather metric = WeatherReaders.read(file, ReadOptions.DEFAULT.withUnits(UnitSystem.METRIC));
        has(metric, RawVariable.TMAX, 30.0, 31.0, 28.0);
    }

    @ParameterizedTest
    @ValueSource(strings = {"", " \n", "\ufeff"})
    void jsonGivesWhatCsvGives(String front) {
        same(read(folder, front + WeatherSamples.NASA_POWER_JSON), read(folder, WeatherSamples.NASA_POWER));
        RawWeather csv = read(folder, WeatherSamples.OPEN_METEO);
        same(read(folder, front + WeatherSamples.OPEN_METEO_JSON), csv);
    }

    private static void same(RawWeather json, RawWeather csv) {
        assertThat(json.format()).isEqualTo(csv.format());
        assertThat(json.site()).isEqualTo(csv.site());
        assertThat(json.windHeightM()).isEqualTo(csv.windHeightM());
        for (RawVariable variable : RawVariable.values()) {
            assertThat(json.column(variable)).as(variable.words()).isEqualTo(csv.column(variable));
        }
    }
}
