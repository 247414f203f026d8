package org.thirstline.charts;

import java.time.MonthDay;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.stream.IntStream;
import org.thirstline.calibration.age.AgeVerdict;
import org.thirstline.calibration.age.DeclineFit;
import org.thirstline.calibration.age.Reading;
import org.thirstline.calibration.age.VarianceParts;
import org.thirstline.calibration.response.Interval;
import org.thirstline.calibration.trial.AgeCurve;
import org.thirstline.calibration.trial.FirstWinter;
import org.thirstline.calibration.trial.PlantingCurve;
import org.thirstline.calibration.trial.PowerCurve;
import org.thirstline.calibration.trial.YearShares;
import org.thirstline.io.crop.CropFiles;
import org.thirstline.model.climate.SeasonClass;
import org.thirstline.model.crop.FrostDamage;

/** The charts of age or weather on ordinary and on awkward invented data. */
final class AgeSamples {

    private AgeSamples() {}

    static Map<String, Function<ChartStyle, ChartDocument>> all() {
        Map<String, Function<ChartStyle, ChartDocument>> charts = new LinkedHashMap<>();
        charts.put("curve", style -> AgeCurveChart.of(view(AgeVerdict.DECLINE_BEYOND_WEATHER, 25, 0.05), style));
        charts.put("curve-weather", style -> AgeCurveChart.of(view(AgeVerdict.WEATHER_EXPLAINS_IT, 14, 0.01), style));
        charts.put("curve-rising", style -> AgeCurveChart.of(view(AgeVerdict.CANNOT_TELL_YET, 8, -0.03), style));
        charts.put("curve-1", style -> AgeCurveChart.of(one(), style));
        charts.put("curve-alone", style -> AgeCurveChart.of(alone(), style));
        charts.put("shares", style -> YearSharesChart.of(shares(27), true, style));
        charts.put("shares-60", style -> YearSharesChart.of(shares(60), true, style));
        charts.put("shares-1", style -> YearSharesChart.of(shares(1), false, style));
        charts.put("shares-0", style -> YearSharesChart.of(List.of(), false, style));
        charts.put("power", style -> PowerChart.of(power(0.03, OptionalDouble.of(0.046)), style));
        charts.put("power-sure", style -> PowerChart.of(power(0.004, OptionalDouble.of(0.007)), style));
        charts.put("power-none", style -> PowerChart.of(power(5.0, OptionalDouble.empty()), style));
        charts.put(
                "plantings", style -> PlantingsChart.of(plantings(new int[] {1999, 2003, 2007, 2011}, "loam"), style));
        charts.put("plantings-2", style -> PlantingsChart.of(plantings(new int[] {1999, 1999}, "deep loam"), style));
        charts.put("plantings-20", style -> PlantingsChart.of(plantings(years(20), "loam"), style));
        charts.put("plantings-long", style -> PlantingsChart.of(plantings(years(5), Samples.LONG_ZONE), style));
        charts.put("plantings-young", style -> PlantingsChart.of(plantings(new int[] {2024}, "loam"), style));
        charts.put("plantings-alone", style -> PlantingsChart.of(withoutWeather(plantings(years(3), "loam")), style));
        charts.put("first-winter", style -> FirstWinterChart.of(winter(28, -6.0, 1.5), style));
        charts.put("first-winter-mild", style -> FirstWinterChart.of(winter(12, 4.0, 1.0), style));
        charts.put("first-winter-hard", style -> FirstWinterChart.of(winter(60, -15.0, 0.0), style));
        charts.put("first-winter-1", style -> FirstWinterChart.of(winter(1, -3.4, 0.0), style));
        charts.put("first-winter-0", style -> FirstWinterChart.of(winter(0, 0.0, 0.0), style));
        return charts;
    }

    private static int[] years(int count) {
        return IntStream.range(0, count).map(i -> 1995 + i).toArray();
    }

    /** Plantings of one place that end in the same year. */
    private static PlantingsView plantings(int[] plantingYears, String zone) {
        DeclineFit fit = fit(25, 0.04);
        List<PlantingCurve> curves = new ArrayList<>();
        for (int i = 0; i < plantingYears.length; i++) {
            List<PlantingCurve.Point> points = new ArrayList<>();
            double level = 14.0 + i % 3;
            for (int year = plantingYears[i]; year <= 2024; year++) {
                int age = year - plantingYears[i] + 1;
                double out = level * (age < 3 ? 0.4 * age : fit.kept(age)) * (1.0 + 0.06 * Math.cos(2.3 * year));
                double in = out * (1.0 + 0.3 * Math.sin(1.7 * year));
                points.add(new PlantingCurve.Point(year, age, in, out, 4, age >= 3));
            }
            String site = plantingYears[0] == plantingYears[plantingYears.length - 1] ? zone + " " + (i + 1) : zone;
            curves.add(new PlantingCurve(site, plantingYears[i], 4, points, level, Optional.of(fit)));
        }
        return new PlantingsView(AgeVerdict.DECLINE_BEYOND_WEATHER, Optional.of(fit), true, curves, classes());
    }

    private static PlantingsView withoutWeather(PlantingsView view) {
        List<PlantingCurve> curves = view.plantings().stream()
                .map(curve -> new PlantingCurve(
                        curve.site(),
                        curve.plantingYear(),
                        curve.plots(),
                        curve.points().stream()
                                .map(point -> new PlantingCurve.Point(
                                        point.growthYear(),
                                        point.standAge(),
                                        point.harvestedMgHa(),
                                        Double.NaN,
                                        point.plots(),
                                        point.fitted()))
                                .toList(),
                        curve.levelMgHa(),
                        Optional.empty()))
                .toList();
        return new PlantingsView(AgeVerdict.CANNOT_TELL_YET, Optional.empty(), false, curves, Map.of());
    }

    private static FirstWinter winter(int winters, double coldest, double swing) {
        FrostDamage frost =
                new FrostDamage(CropFiles.bundled("giant miscanthus").parameters());
        List<FirstWinter.Winter> years = new ArrayList<>();
        for (int i = 0; i < winters; i++) {
            double soil = coldest + swing * (1.0 + Math.sin(2.0 * i));
            years.add(new FirstWinter.Winter(1995 + i, soil, frost.winterSurvival(soil, true)));
        }
        double alive = years.stream()
                .mapToDouble(FirstWinter.Winter::survival)
                .average()
                .orElse(0.0);
        double failed = years.stream()
                .mapToDouble(year -> year.survival() < 0.5 ? 1.0 : 0.0)
                .average()
                .orElse(0.0);
        List<FirstWinter.Date> dates = new ArrayList<>();
        for (int i = 0; i < (winters == 0 ? 0 : 10); i++) {
            MonthDay day = MonthDay.of(3 + i / 2, i % 2 == 0 ? 1 : 15);
            dates.add(new FirstWinter.Date(
                    day, winters, 3.0 + 2.0 * i, alive, 0.5 * alive, failed, 90 - 8 * i, 44 - 4 * i));
        }
        return new FirstWinter("East field", frost, -3.4, years, dates);
    }

    private static DeclineFit fit(int ages, double rate) {
        SortedMap<Integer, Interval> kept = new TreeMap<>();
        for (int age = 3; age <= ages; age++) {
            int past = Math.max(0, age - 6);
            kept.put(age, new Interval(Math.pow(0.98 - rate, past), Math.pow(Math.min(1.02, 1.02 - rate), past)));
        }
        return new DeclineFit(
                6,
                new Interval(5, 8),
                rate,
                new Interval(rate - 0.02, rate + 0.02),
                0.8 * rate,
                new Interval(rate - 0.01, rate + 0.01),
                kept,
                3.0,
                new EnumMap<>(Map.of(Reading.FACE_VALUE, 0.01)),
                new VarianceParts(0.1, 0.1, 0.0, 0.1),
                ages - 2);
    }

    private static AgeCurve curve(int ages, double rate, double swing) {
        DeclineFit fit = fit(ages, rate);
        List<AgeCurve.Point> points = new ArrayList<>();
        for (int age = 1; age <= ages; age++) {
            double build = age < 3 ? 0.4 * age : 1.0;
            double yield = 15.0 * build * fit.kept(age) * (1.0 + swing * Math.sin(1.7 * age));
            points.add(new AgeCurve.Point("loam, planted 1999", 1998 + age, age, yield, 4, age >= 3));
        }
        return new AgeCurve(points, 15.0, Optional.of(fit));
    }

    private static Map<Integer, SeasonClass> classes() {
        Map<Integer, SeasonClass> classes = new HashMap<>();
        IntStream.range(1990, 2060).forEach(year -> classes.put(year, SeasonClass.values()[year % 3]));
        return classes;
    }

    private static AgeCurveView view(AgeVerdict verdict, int ages, double rate) {
        return new AgeCurveView(
                verdict, curve(ages, rate + 0.01, 0.35), Optional.of(curve(ages, rate, 0.08)), classes());
    }

    private static AgeCurveView one() {
        AgeCurve curve = new AgeCurve(
                List.of(new AgeCurve.Point("loam, planted 2001", 2004, 4, 12.0, 4, true)), 12.0, Optional.empty());
        return new AgeCurveView(AgeVerdict.CANNOT_TELL_YET, curve, Optional.of(curve), Map.of());
    }

    private static AgeCurveView alone() {
        return new AgeCurveView(AgeVerdict.CANNOT_TELL_YET, curve(15, 0.04, 0.2), Optional.empty(), Map.of());
    }

    private static List<YearShares> shares(int years) {
        return IntStream.range(0, years)
                .mapToObj(i -> {
                    double drought = i % 9 == 5 ? 11.0 : 1.5 + Math.cos(i);
                    double age = Math.max(0.0, 0.3 * (i - 8));
                    double other = 2.5 * Math.sin(2.1 * i);
                    return new YearShares(1998 + i, 6, 18.0 - drought - age - other, 18.0, drought, age, other);
                })
                .toList();
    }

    private static PowerView power(double half, OptionalDouble smallest) {
        double[] rates = {0.0, 0.005, 0.01, 0.02, 0.03, 0.04, 0.05, 0.06, 0.08, 0.1};
        String[] designs = {"this trial", "6 more years", "twice the plots", "6 more years and 2 new plantings"};
        List<PowerCurve> curves = new ArrayList<>();
        for (int d = 0; d < designs.length; d++) {
            double middle = half / (1.0 + 0.4 * d);
            double[] power = new double[rates.length];
            for (int i = 0; i < power.length; i++) {
                power[i] = 0.03 + 0.97 * -Math.expm1(-0.7 * Math.pow(rates[i] / middle, 3.0));
            }
            curves.add(new PowerCurve(designs[d], rates, power));
        }
        return new PowerView(6, smallest, !smallest.isPresent(), curves);
    }
}
