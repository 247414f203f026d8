package org.thirstline.validation.observed;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.time.format.DateTimeFormatterBuilder;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import org.thirstline.io.quality.AssemblySettings;
import org.thirstline.io.quality.WeatherAssembly;
import org.thirstline.io.weather.ReadOptions;
import org.thirstline.io.weather.WeatherReaders;
import org.thirstline.model.evapotranspiration.Atmosphere;
import org.thirstline.model.weather.DailyDrivers;
import org.thirstline.model.weather.Site;

/** Weather of real stations, read and completed as a study would. */
final class Stations {

    static final Site DE_BILT = new Site("De Bilt", 52.10, 1.9);
    static final Site DUBLIN = new Site("Dublin Airport", 53.428, 71.0);
    static final Site DRUMMONDVILLE = new Site("Drummondville", 45.82, 90.0);

    private static final DateTimeFormatter DUBLIN_DATE = new DateTimeFormatterBuilder()
            .parseCaseInsensitive()
            .appendPattern("dd-MMM-uuuu")
            .toFormatter(Locale.ENGLISH);

    /** Stations are asked for by several studies. */
    private static final Map<String, DailyDrivers> READ = new ConcurrentHashMap<>();

    private Stations() {}

    /** A station of the U.S. Climate Reference Network. */
    static DailyDrivers uscrn(String name, double latitude, double elevation) {
        return READ.computeIfAbsent(
                name,
                key -> drivers(RealData.file("uscrn/CRND0103_" + name + ".txt"), new Site(name, latitude, elevation)));
    }

    static DailyDrivers champaign() {
        return uscrn("IL_Champaign_9_SW", 40.05, 213.0);
    }

    static DailyDrivers lincoln() {
        return uscrn("NE_Lincoln_8_ENE", 40.85, 362.0);
    }

    static DailyDrivers necedah() {
        return uscrn("WI_Necedah_5_WNW", 44.06, 285.0);
    }

    static DailyDrivers deBilt() {
        return READ.computeIfAbsent("De Bilt", key -> drivers(RealData.file("knmi/etmgeg_260_1980-2019.txt"), DE_BILT));
    }

    static DailyDrivers drivers(Path file, Site site) {
        try {
            var raw = WeatherReaders.read(file, ReadOptions.DEFAULT);
            var record = WeatherAssembly.assemble(raw, site, AssemblySettings.DEFAULT);
            return DailyDrivers.of(record.site(), record.series());
        } catch (RuntimeException e) {
            throw new IllegalStateException("cannot use " + file, e);
        }
    }

    /** Rows of the Dublin file from a year on, split into cells. */
    static List<String[]> dublinRows(int fromYear) {
        return RealData.lines("met_eireann/dly532_dublin_airport_1942-2020.csv").stream()
                .filter(line -> line.matches("\\d\\d-[A-Za-z]{3}-\\d{4},.*"))
                .map(line -> line.split(",", -1))
                .filter(cells -> dublinDate(cells).getYear() >= fromYear)
                .toList();
    }

    static LocalDate dublinDate(String[] cells) {
        return LocalDate.parse(cells[0], DUBLIN_DATE);
    }

    /** Dublin in our plain form: wind from knots at 10 m, radiation from J/cm²; vapour pressure is left to be estimated. */
    static DailyDrivers dublin(int fromYear) {
        return READ.computeIfAbsent("Dublin " + fromYear, key -> readDublin(fromYear));
    }

    private static DailyDrivers readDublin(int fromYear) {
        StringBuilder text = new StringBuilder("date,tmin_c,tmax_c,rain_mm,solar_mj_m2,wind_2m_m_s\n");
        for (String[] cells : dublinRows(fromYear)) {
            String solar = cells[19].isBlank()
                    ? ""
                    : String.format(Locale.ROOT, "%.2f", 0.01 * Double.parseDouble(cells[19].trim()));
            double wind = Atmosphere.windAtTwoMetres(0.514444 * Double.parseDouble(cells[10].trim()), 10.0);
            text.append(String.format(
                    Locale.ROOT,
                    "%s,%s,%s,%s,%s,%.3f%n",
                    dublinDate(cells),
                    cells[4].trim(),
                    cells[2].trim(),
                    cells[8].trim(),
                    solar,
                    wind));
        }
        return plain(text, DUBLIN);
    }

    /** Drummondville: the file has the daily mean temperature only; its extremes are taken 5 °C below and above it. */
    static DailyDrivers drummondville() {
        StringBuilder text =
                new StringBuilder("date,tmin_c,tmax_c,rain_mm,solar_mj_m2,wind_2m_m_s,vapour_pressure_kpa\n");
        for (String line : RealData.lines("soil_moisture/drummondville/daily_meteo.csv")) {
            if (!Character.isDigit(line.charAt(0))) {
                continue;
            }
            String[] cells = line.split(",");
            double mean = Double.parseDouble(cells[1]);
            double vapour = 0.01 * Double.parseDouble(cells[7]) * Atmosphere.saturationVapourPressure(mean);
            text.append(String.format(
                    Locale.ROOT,
                    "%s,%.2f,%.2f,%s,%.3f,%s,%.4f%n",
                    cells[0],
                    mean - 5.0,
                    mean + 5.0,
                    cells[8],
                    0.0864 * Double.parseDouble(cells[4]),
                    cells[11],
                    vapour));
        }
        return plain(text, DRUMMONDVILLE);
    }

    private static DailyDrivers plain(StringBuilder text, Site site) {
        try {
            Path file = Files.createTempFile("station", ".csv");
            try {
                Files.writeString(file, text.toString().replace("\r\n", "\n"));
                return drivers(file, site);
            } finally {
                Files.delete(file);
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
