package org.thirstline.validation.age;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.random.RandomGenerator;
import org.thirstline.calibration.age.PlotYear;
import org.thirstline.calibration.age.StandLife;
import org.thirstline.calibration.age.TrialData;

/** Published yields by stand age, and series drawn to meet what was published where the yearly values were not. */
final class StandAgeSeries {

    private StandAgeSeries() {}

    static TrialData of(String site, int plantingYear, int firstAge, double... yieldMgHa) {
        List<PlotYear> rows = new ArrayList<>();
        for (int i = 0; i < yieldMgHa.length; i++) {
            int growthYear = plantingYear + firstAge - 1 + i;
            rows.add(PlotYear.yieldOnly(site, site, "mean", plantingYear, growthYear, yieldMgHa[i]));
        }
        return TrialData.of(rows);
    }

    /** Mean of 15 genotypes at five European sites. */
    static TrialData europe() {
        return of("five European sites", 1997, 1, 2.0, 9.0, 18.0);
    }

    /** Giant reed, rounded means of phases. */
    static TrialData pisa() {
        return of("Pisa", 1, 3, 55.0, 40.0, 40.0, 40.0, 40.0, 40.0, 25.0, 25.0, 25.0, 25.0);
    }

    static TrialData eastYorkshire() {
        return of("East Yorkshire", 2012, 2, 0.81, 8.36, 11.93, 13.08, 11.62, 12.74, 13.24, 11.18, 12.81);
    }

    /** An even fall by a share in some years after a peak, with the European build-up in front. */
    static TrialData drawnMichiganAndWisconsin(double lost, int years, int peak) {
        double[] yields = new double[peak + years];
        double kept = Math.pow(1.0 - lost, 1.0 / years);
        for (int age = 1; age <= yields.length; age++) {
            double buildUp = age < peak ? new double[] {0.08, 0.45, 0.75, 0.95}[age - 1] : 1.0;
            yields[age - 1] = 25.0 * buildUp * Math.pow(kept, Math.max(0, age - peak));
        }
        return of("Michigan and Wisconsin", 2008, 1, yields);
    }

    /** Fourteen harvests that meet the English facts, the last four on average no lower than the seven before them. */
    static TrialData drawnEnglish(RandomGenerator random) {
        double[] yields = englishSeries(random);
        while (mean(yields, 10, 14) < mean(yields, 3, 10)) {
            yields = englishSeries(random);
        }
        return of("England", 1993, 1, yields);
    }

    private static double mean(double[] values, int from, int to) {
        return Arrays.stream(values, from, to).average().orElseThrow();
    }

    /** Fourteen harvests at random among those that meet what was published. */
    private static double[] englishSeries(RandomGenerator random) {
        while (true) {
            double[] yields = new double[14];
            for (int i = 0; i < yields.length; i++) {
                yields[i] = random.nextDouble(1.0, 17.7);
            }
            Arrays.sort(yields, 0, 6);
            yields[9] = 17.7;
            boolean dips = yields[6] < yields[5] && yields[7] < yields[5] && yields[8] > yields[7];
            if (dips && Math.abs(Arrays.stream(yields).sum() - 178.9) < 0.5) {
                return yields;
            }
        }
    }

    /** Share lost by the mean of each planting in Illinois. */
    static Map<String, Double> fallFrom2008To2009() {
        TrialData illinois = illinois();
        Map<String, Double> change = new TreeMap<>();
        for (String planting : plantings(illinois)) {
            change.put(planting, 1.0 - mean(illinois, planting, 2009) / mean(illinois, planting, 2008));
        }
        return change;
    }

    private static List<String> plantings(TrialData data) {
        return data.rows().stream().map(PlotYear::planting).distinct().toList();
    }

    private static double mean(TrialData data, String planting, int year) {
        return data.rows().stream()
                .filter(row -> row.planting().equals(planting) && row.growthYear() == year)
                .mapToDouble(PlotYear::observedMgHa)
                .average()
                .orElseThrow();
    }

    static TrialData illinois() {
        try (InputStream file = StandAgeSeries.class.getResourceAsStream("/published/illinois-stand-age.csv")) {
            List<PlotYear> rows = new String(file.readAllBytes(), StandardCharsets.UTF_8)
                    .lines()
                    .filter(line -> !line.startsWith("#") && !line.startsWith("site,"))
                    .map(line -> line.split(","))
                    .map(cells -> PlotYear.yieldOnly(
                            cells[0],
                            cells[0] + " " + cells[1],
                            cells[3],
                            Integer.parseInt(cells[1]),
                            Integer.parseInt(cells[2]),
                            Double.parseDouble(cells[4])))
                    .toList();
            return TrialData.of(rows);
        } catch (IOException failed) {
            throw new UncheckedIOException(failed);
        }
    }

    /** Earliest and latest best replanting age, in years after the peak. */
    static int[] bestYearsAfterPeak(double leastLost, double mostLost) {
        int[] range = {Integer.MAX_VALUE, Integer.MIN_VALUE};
        for (double lost : new double[] {leastLost, mostLost}) {
            for (int years : new int[] {6, 7}) {
                for (int peak : new int[] {4, 5}) {
                    double rate = 1.0 - Math.pow(1.0 - lost, 1.0 / years);
                    double[] curve = StandLife.curve(20.0, new double[] {0.11, 0.5}, peak, rate, 60);
                    for (int gap : new int[] {0, 1}) {
                        int best = StandLife.of(curve, gap).bestAge() - peak;
                        range[0] = Math.min(range[0], best);
                        range[1] = Math.max(range[1], best);
                    }
                }
            }
        }
        return range;
    }
}
