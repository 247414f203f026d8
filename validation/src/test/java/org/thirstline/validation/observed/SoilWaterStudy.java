package org.thirstline.validation.observed;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.thirstline.model.soil.RootUptake;
import org.thirstline.model.soil.SoilProfile;
import org.thirstline.model.soil.TextureEstimate;
import org.thirstline.model.weather.DailyDrivers;

/** Soil water under grass: five depths at eight stations, a lysimeter, and a national service's deficits. */
final class SoilWaterStudy {

    private static final int[] SENSORS_CM = {5, 10, 20, 50, 100};
    private static final int FIRST_SENSOR_COLUMN = 18;
    private static final int FROM_MONTH = 4;
    private static final int TO_MONTH = 10;

    /** FAO-56 Table 19, middles: silt loam, and sand for the station that says so. */
    static final SoilProfile SILT_LOAM = GrassCover.profile(0.15, 0.31, 0.46, 0.7, 61.0);

    private static final SoilProfile SAND = GrassCover.profile(0.045, 0.125, 0.40, 0.9, 39.0);

    /** A station with what is measured under its grass. */
    record Station(String id, String file, double latitude, double elevation, SoilProfile soil) {

        DailyDrivers drivers() {
            return Stations.uscrn(file, latitude, elevation);
        }
    }

    /** One measured water content [m³ m⁻³]. */
    record Reading(LocalDate date, int day, int sensorCm, double content) {}

    static final List<Station> STATIONS = List.of(
            new Station("champaign", "IL_Champaign_9_SW", 40.05, 213.0, SILT_LOAM),
            new Station("lincoln", "NE_Lincoln_8_ENE", 40.85, 362.0, SILT_LOAM),
            new Station("des-moines", "IA_Des_Moines_17_E", 41.56, 267.0, SILT_LOAM),
            new Station("chillicothe", "MO_Chillicothe_22_ENE", 39.87, 251.0, SILT_LOAM),
            new Station("stillwater", "OK_Stillwater_2_W", 36.12, 272.0, SILT_LOAM),
            new Station("sioux-falls", "SD_Sioux_Falls_14_NNE", 43.73, 486.0, SILT_LOAM),
            new Station("bedford", "IN_Bedford_5_WNW", 38.89, 229.0, SILT_LOAM),
            new Station("necedah", "WI_Necedah_5_WNW", 44.06, 285.0, SAND));

    private final Map<String, Double> results;

    private SoilWaterStudy(Map<String, Double> results) {
        this.results = results;
    }

    static void run(Map<String, Double> results) {
        SoilWaterStudy study = new SoilWaterStudy(results);
        STATIONS.forEach(study::station);
        study.drummondville();
        study.dublin();
    }

    private void station(Station station) {
        DailyDrivers drivers = station.drivers();
        GrassCover grass = GrassCover.run(drivers, station.soil());
        List<Reading> readings = readings(station, drivers);
        for (int sensor : SENSORS_CM) {
            Pairs depth = new Pairs();
            readings.stream()
                    .filter(reading -> reading.sensorCm() == sensor)
                    .forEach(reading -> depth.add(reading.content(), grass.content(sensor, reading.day())));
            String prefix = "soil-moisture/" + station.id() + "-" + sensor;
            if (depth.count() >= 365) {
                results.put(prefix + "-correlation", depth.correlation());
                results.put(prefix + "-bias", depth.bias());
            }
        }
        results.put("soil-moisture/" + station.id() + "-dry-down-days", dryDown(readings, grass));
    }

    /** Readings from April to October that are no sensor faults. */
    static List<Reading> readings(Station station, DailyDrivers drivers) {
        List<Reading> readings = new ArrayList<>();
        for (String line : RealData.lines("uscrn/CRND0103_" + station.file() + ".txt")) {
            String[] cells = line.trim().split("\\s+");
            LocalDate date = LocalDate.of(
                    Integer.parseInt(cells[1].substring(0, 4)),
                    Integer.parseInt(cells[1].substring(4, 6)),
                    Integer.parseInt(cells[1].substring(6, 8)));
            int day = drivers.weather().indexOf(date);
            if (day < 0
                    || day >= drivers.days()
                    || date.getMonthValue() < FROM_MONTH
                    || date.getMonthValue() > TO_MONTH) {
                continue;
            }
            for (int i = 0; i < SENSORS_CM.length; i++) {
                double content = content(cells[FIRST_SENSOR_COLUMN + i]);
                if (Double.isFinite(content)) {
                    readings.add(new Reading(date, day, SENSORS_CM[i], content));
                }
            }
        }
        return readings;
    }

    /** Readings outside 0 to 0.6 are sensor faults. */
    private static double content(String cell) {
        double value = Double.parseDouble(cell);
        return value > 0.0 && value <= 0.60 ? value : Double.NaN;
    }

    /** Mean difference [d] between the days on which the summer is half-way down to its driest at 20 cm, size only. */
    static double dryDown(List<Reading> readings, GrassCover grass) {
        Map<Integer, Map<LocalDate, double[]>> byYear = new HashMap<>();
        for (Reading reading : readings) {
            if (reading.sensorCm() == 20) {
                byYear.computeIfAbsent(reading.date().getYear(), key -> new HashMap<>())
                        .put(reading.date(), new double[] {reading.content(), grass.content(20, reading.day())});
            }
        }
        List<Double> differences = new ArrayList<>();
        byYear.values().stream().filter(year -> year.size() >= 170).forEach(year -> {
            List<LocalDate> dates = year.keySet().stream().sorted().toList();
            LocalDate observed = halfWay(dates, year, 0);
            LocalDate simulated = halfWay(dates, year, 1);
            differences.add((double) Math.abs(ChronoUnit.DAYS.between(observed, simulated)));
        });
        return differences.isEmpty() ? Double.NaN : median(differences);
    }

    /** Correlation of simulated with observed at 20 cm. */
    static double correlation(List<Reading> readings, GrassCover grass) {
        Pairs pairs = new Pairs();
        readings.stream()
                .filter(reading -> reading.sensorCm() == 20)
                .forEach(reading -> pairs.add(reading.content(), grass.content(20, reading.day())));
        return pairs.correlation();
    }

    private static double median(List<Double> values) {
        List<Double> sorted = values.stream().sorted().toList();
        int half = sorted.size() / 2;
        return sorted.size() % 2 == 1 ? sorted.get(half) : 0.5 * (sorted.get(half - 1) + sorted.get(half));
    }

    private static LocalDate halfWay(List<LocalDate> dates, Map<LocalDate, double[]> values, int which) {
        double[] column =
                dates.stream().mapToDouble(date -> values.get(date)[which]).toArray();
        double limit = 0.5
                * (Arrays.stream(column).min().orElseThrow()
                        + Arrays.stream(column).max().orElseThrow());
        int first = 0;
        while (column[first] > limit || dates.get(first).getMonthValue() < FROM_MONTH + 1) {
            first++;
            if (first == column.length - 1) {
                break;
            }
        }
        return dates.get(first);
    }

    private void drummondville() {
        DailyDrivers drivers = Stations.drummondville();
        TextureEstimate texture = TextureEstimate.of(66.0, 8.0, 2.0);
        SoilProfile soil =
                GrassCover.profile(texture.wiltingPoint(), texture.fieldCapacity(), texture.saturation(), 0.9, 61.0);
        GrassCover grass = GrassCover.run(drivers, soil);
        Pairs water = new Pairs();
        for (String line : RealData.lines("soil_moisture/drummondville/state_vars_daily_20180701_20210630.csv")) {
            String[] cells = line.split(",");
            if (line.contains(",E1,First Sensor,Soil Volumetric") && isNumber(cells[4])) {
                int day = drivers.weather().indexOf(LocalDate.parse(cells[0]));
                if (day < drivers.days() && isWarm(cells[0])) {
                    water.add(Double.parseDouble(cells[4]) / 100.0, grass.content(5, day));
                }
            }
        }
        results.put("soil-water-elsewhere/drummondville-vwc-correlation", water.correlation());
        results.put("soil-water-elsewhere/drummondville-vwc-bias", water.bias());
        percolation(drivers, grass);
    }

    private static boolean isWarm(String date) {
        int month = LocalDate.parse(date).getMonthValue();
        return month >= 5 && month <= TO_MONTH;
    }

    private static boolean isNumber(String cell) {
        return !cell.isBlank() && !cell.equals("NaN") && !cell.equals("NA");
    }

    /** Percolation by month and lysimeter, on the days each of them was read. */
    private void percolation(DailyDrivers drivers, GrassCover grass) {
        Map<String, double[]> months = new HashMap<>();
        double observed = 0.0;
        double simulated = 0.0;
        for (String line : RealData.lines("soil_moisture/drummondville/percolation_daily_20180701_20210630.csv")) {
            String[] cells = line.split(",");
            if (!cells[1].equals("E1") || cells.length < 4 || !isNumber(cells[3])) {
                continue;
            }
            int day = drivers.weather().indexOf(LocalDate.parse(cells[0]));
            if (day < drivers.days()) {
                double[] sums = months.computeIfAbsent(cells[2] + cells[0].substring(0, 7), key -> new double[2]);
                sums[0] += Double.parseDouble(cells[3]);
                sums[1] += grass.drainageMm[day];
                observed += Double.parseDouble(cells[3]);
                simulated += grass.drainageMm[day];
            }
        }
        Pairs pairs = new Pairs();
        months.values().forEach(sums -> pairs.add(sums[0], sums[1]));
        results.put("soil-water-elsewhere/drummondville-percolation-ratio", simulated / observed);
        results.put("soil-water-elsewhere/drummondville-percolation-correlation", pairs.correlation());
    }

    private void dublin() {
        List<String[]> rows = Stations.dublinRows(1976);
        DailyDrivers drivers = Stations.dublin(1976);
        GrassCover grass = GrassCover.run(drivers, SILT_LOAM);
        Pairs deficit = new Pairs();
        Pairs formula = new Pairs();
        Pairs reference = new Pairs();
        Pairs soil = new Pairs();
        double bucket = Double.NaN;
        for (int day = 0; day < rows.size(); day++) {
            String[] cells = rows.get(day);
            double evaporated = number(cells[21]);
            double published = number(cells[23]);
            reference.add(evaporated, drivers.et0(day));
            soil.add(number(cells[20]), grass.soilTemperatureC[day]);
            // p = 0 and TAW = 110 mm: a linear fall from field capacity on, as in Schulte et al. (2005).
            double taken = evaporated * RootUptake.waterStressCoefficient(Math.min(110.0, bucket), 110.0, 0.0);
            bucket = Double.isNaN(bucket) ? published : Math.max(0.0, bucket + taken - number(cells[8]));
            formula.add(published, bucket);
            deficit.add(published, grass.depletionMm[day]);
        }
        String prefix = "soil-water-elsewhere/dublin-";
        results.put(prefix + "formula-rmse", formula.rmse());
        results.put(prefix + "deficit-correlation", deficit.correlation());
        results.put(prefix + "deficit-bias", deficit.bias());
        results.put(prefix + "deficit-rmse", deficit.rmse());
        results.put(prefix + "et0-ratio", reference.mean(1) / reference.mean(0));
        results.put(prefix + "et0-correlation", reference.correlation());
        results.put(prefix + "soil-temperature-bias", soil.bias());
        results.put(prefix + "soil-temperature-rmse", soil.rmse());
    }

    private static double number(String cell) {
        return cell.isBlank() ? Double.NaN : Double.parseDouble(cell.trim());
    }
}
