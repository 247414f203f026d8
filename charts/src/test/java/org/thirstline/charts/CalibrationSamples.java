package org.thirstline.charts;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.random.RandomGenerator;
import java.util.random.RandomGeneratorFactory;
import java.util.stream.IntStream;
import org.thirstline.model.climate.SeasonClass;

/** The charts of fit, posterior and sensitivity on ordinary and on awkward invented data. */
final class CalibrationSamples {

    private static final List<String> NAMES = List.of(
            "radiation-use efficiency",
            "max leaf area index",
            "depletion fraction",
            "available water of the soil",
            "extinction coefficient",
            "mature shoots",
            "emergence thermal time",
            "leaf base temperature",
            "specific leaf area",
            "full-cover crop coefficient",
            "share of the growth that goes below ground from the third growth year",
            "moisture of the living stand",
            "stem loss");

    private static final List<String> UNITS = List.of("g/MJ", "m²/m²", "", "", "", "m⁻²", "°C d", "°C");

    private CalibrationSamples() {}

    static Map<String, Function<ChartStyle, ChartDocument>> all() {
        Map<String, Function<ChartStyle, ChartDocument>> charts = new LinkedHashMap<>();
        fits(charts);
        profiles(charts);
        draws(charts);
        sensitivity(charts);
        return charts;
    }

    private static RandomGenerator random(long seed) {
        return RandomGeneratorFactory.of("L64X128MixRandom").create(seed);
    }

    private static void fits(Map<String, Function<ChartStyle, ChartDocument>> charts) {
        Map<String, FitView> views = new LinkedHashMap<>();
        views.put("", fit(3, 9, 0.4, 0.0));
        views.put("-one-site", fit(1, 14, 0.0, 0.0));
        views.put("-leaning", fit(4, 12, -1.2, 0.012));
        views.put("-12-sites", fit(12, 10, 0.0, 0.0));
        views.put("-1", fit(1, 1, 2.0, 0.0));
        views.put("-2", fit(2, 1, 0.0, 0.0));
        views.put("-0", new FitView("fitted to nothing", Quantity.HARVEST, List.of(), Map.of()));
        views.put("-moisture", moisture());
        views.forEach((name, view) -> {
            charts.put("observed" + name, style -> ObservedSimulatedChart.of(view, style));
            charts.put("residuals" + name, style -> ResidualsChart.of(view, style));
        });
    }

    private static String site(int index) {
        return index == 0 ? Samples.LONG_ZONE : "site " + (char) ('A' + index);
    }

    static FitView fit(int sites, int years, double bias, double perMm) {
        RandomGenerator random = random(3L);
        List<FitPoint> points = new ArrayList<>();
        Map<Integer, SeasonClass> classes = new HashMap<>();
        for (int site = 0; site < sites; site++) {
            for (int i = 0; i < years; i++) {
                double rain = 450.0 + 130.0 * random.nextGaussian();
                double simulated = Math.max(2.0, 14.0 + 0.012 * (rain - 450.0) + 2.0 * random.nextGaussian());
                double observed =
                        Math.max(0.5, simulated + bias + perMm * (rain - 450.0) + 1.1 * random.nextGaussian());
                points.add(new FitPoint(
                        site(site), 2001 + i, i + 1, rain, observed, 0.8, simulated, simulated - 1.5, simulated + 1.5));
                classes.put(2001 + i, SeasonClass.values()[i % 3]);
            }
        }
        return new FitView("fitted to these plots", Quantity.HARVEST, points, classes);
    }

    /** Neither age nor rain nor errors known; all in one year. */
    private static FitView moisture() {
        List<FitPoint> points = IntStream.range(0, 3)
                .mapToObj(i -> new FitPoint(
                        "East field", 2012, 0, Double.NaN, 20.0 + i, Double.NaN, 20.0, Double.NaN, Double.NaN))
                .toList();
        return new FitView("fitted to these plots", new Quantity("moisture at harvest", "%"), points, Map.of());
    }

    private static String unit(int index) {
        return index < UNITS.size() ? UNITS.get(index) : "";
    }

    private static void profiles(Map<String, Function<ChartStyle, ChartDocument>> charts) {
        for (int count : new int[] {0, 1, 4, 13}) {
            ProfilesView view = new ProfilesView(
                    "48 invented yields of 3 sites",
                    0.95,
                    IntStream.range(0, count)
                            .mapToObj(CalibrationSamples::curve)
                            .toList());
            charts.put("profiles-" + count, style -> ProfilesChart.of(view, style));
        }
    }

    private static ProfilesView.Curve curve(int index) {
        double middle = index == 12 ? 0.0014 : 2.0 + 60.0 * (index % 3);
        double width = index % 5 == 4 ? 3.0 * middle : 0.1 * middle;
        boolean flat = index % 5 == 4;
        boolean oneSided = index % 5 == 3;
        double[] values = new double[21];
        double[] rises = new double[21];
        for (int i = 0; i < 21; i++) {
            double shift = (i - 10) / 4.0;
            values[i] = middle + shift * 0.1 * middle;
            double root = (values[i] - middle) / width;
            rises[i] = oneSided && shift < 0 ? 0.2 * root * root : root * root;
        }
        boolean low = flat || oneSided;
        return new ProfilesView.Curve(
                NAMES.get(index),
                unit(index),
                values,
                rises,
                3.84,
                middle,
                low ? values[0] : middle - 1.96 * width,
                flat ? values[20] : middle + 1.96 * width,
                low,
                flat);
    }

    private static void draws(Map<String, Function<ChartStyle, ChartDocument>> charts) {
        Map<String, DrawsView> views = new LinkedHashMap<>();
        views.put("0", draws(0, 4, 500, 0.0, 0.0));
        views.put("1", draws(1, 4, 500, 0.0, 0.0));
        views.put("4", draws(4, 4, 1000, 0.85, 0.0));
        views.put("apart", draws(4, 3, 600, 0.3, 1.2));
        views.put("13", draws(13, 8, 200, -0.9, 0.0));
        views.put("same", same());
        views.put("none", draws(2, 0, 0, 0.0, 0.0));
        views.forEach((name, view) -> {
            charts.put("pairs-" + name, style -> PosteriorPairsChart.of(view, style));
            charts.put("traces-" + name, style -> TraceRankChart.of(view, style));
            PriorPosteriorView beliefs = beliefs(view);
            charts.put("prior-posterior-" + name, style -> PriorPosteriorChart.of(beliefs, style));
        });
    }

    private static DrawsView draws(int count, int chains, int length, double tie, double apart) {
        RandomGenerator random = random(11L);
        double[][] shared = new double[chains][length];
        for (double[] chain : shared) {
            java.util.Arrays.setAll(chain, i -> random.nextGaussian());
        }
        List<DrawsView.Draws> parameters = new ArrayList<>();
        for (int p = 0; p < count; p++) {
            double scale = p == 12 ? 1.0e-4 : 0.3 * Math.pow(10.0, p % 4);
            double own = Math.sqrt(1.0 - tie * tie);
            double[][] values = new double[chains][length];
            for (int c = 0; c < chains; c++) {
                for (int i = 0; i < length; i++) {
                    double tied = (p % 2 == 0 ? 1.0 : Math.signum(tie)) * Math.abs(tie) * shared[c][i];
                    double shift = c == 1 ? apart : 0.0;
                    values[c][i] = scale * (8.0 + tied + own * random.nextGaussian() + shift);
                }
            }
            double rHat = apart > 0.0 ? 1.2 + 0.01 * p : 1.0 + 0.001 * p / 2;
            parameters.add(new DrawsView.Draws(NAMES.get(p), unit(p), values, rHat, 0.4 * chains * length));
        }
        return new DrawsView("48 invented yields of 3 sites", parameters);
    }

    private static DrawsView same() {
        double[][] chains = new double[4][50];
        for (double[] chain : chains) {
            java.util.Arrays.fill(chain, 0.65);
        }
        DrawsView.Draws draws = new DrawsView.Draws("depletion fraction", "", chains, Double.NaN, Double.NaN);
        return new DrawsView("one value only", List.of(draws, draws));
    }

    private static PriorPosteriorView beliefs(DrawsView view) {
        List<PriorPosteriorView.Marginal> marginals = new ArrayList<>();
        for (DrawsView.Draws draws : view.parameters()) {
            double[] pooled = draws.all().toArray();
            double middle = pooled.length == 0 ? 1.0 : draws.mean();
            double half = Math.max(0.6 * Math.abs(middle), 1e-6);
            double[] values = new double[101];
            double[] density = new double[101];
            for (int i = 0; i < values.length; i++) {
                values[i] = middle - half + 2.0 * half * i / (values.length - 1.0);
                density[i] = 0.5 / half;
            }
            marginals.add(new PriorPosteriorView.Marginal(draws.name(), draws.unit(), values, density, pooled));
        }
        return new PriorPosteriorView(view.what(), marginals);
    }

    private static void sensitivity(Map<String, Function<ChartStyle, ChartDocument>> charts) {
        Quantity moisture = new Quantity("moisture at harvest", "% wet basis");
        for (int count : new int[] {0, 1, 4, 13}) {
            charts.put(
                    "screening-" + count,
                    style -> MorrisChart.of(morris(Quantity.HARVEST, "deep loam", count, 6.0), style));
            charts.put(
                    "shares-" + count,
                    style -> SobolChart.of(sobol(Quantity.HARVEST, "deep loam", count, 0.55), style));
        }
        for (int count : new int[] {0, 1, 6, 13}) {
            charts.put("influence-" + count, style -> InfluenceTableChart.of(influence(count), style));
        }
        charts.put("screening-flat", style -> MorrisChart.of(morris(moisture, Samples.LONG_ZONE, 5, 0.0), style));
        charts.put("screening-tiny", style -> MorrisChart.of(morris(moisture, "", 5, 1e-7), style));
        charts.put("shares-flat", style -> SobolChart.of(sobol(moisture, Samples.LONG_ZONE, 5, Double.NaN), style));
        charts.put("shares-noise", style -> SobolChart.of(sobol(moisture, "", 5, 0.01), style));
        charts.put("shares-wide", style -> SobolChart.of(sobol(moisture, "", 6, 1.3), style));
    }

    static MorrisView morris(Quantity output, String where, int count, double largest) {
        List<MorrisView.Effect> effects = IntStream.range(0, count)
                .mapToObj(i -> {
                    double size = largest * Math.pow(0.62, i);
                    double mean = i % 3 == 0 ? size : i % 3 == 1 ? -0.97 * size : 0.2 * size;
                    return new MorrisView.Effect(
                            NAMES.get(i), mean, size, 0.12 * size, (i % 3 == 2 ? 1.3 : 0.3) * size);
                })
                .toList();
        return new MorrisView(output, where, effects);
    }

    static SobolView sobol(Quantity output, String where, int count, double largest) {
        List<SobolView.Share> shares = IntStream.range(0, count)
                .mapToObj(i -> {
                    double first = largest * Math.pow(0.5, i);
                    double total = first + 0.04;
                    return new SobolView.Share(
                            NAMES.get(i), first, first - 0.05, first + 0.05, total, total - 0.04, total + 0.06);
                })
                .toList();
        return new SobolView(output, where, 21, shares);
    }

    static InfluenceTableView influence(int count) {
        List<String> outputs = List.of(
                "mean harvest",
                "mean drought penalty",
                "harvest of the driest year",
                "spread between years",
                "harvest of the first two years",
                "moisture at harvest",
                "water use of the season");
        List<InfluenceTableView.Row> rows = IntStream.range(0, count)
                .mapToObj(i -> {
                    double[] totals = new double[outputs.size()];
                    boolean[] decides = new boolean[outputs.size()];
                    for (int j = 0; j < totals.length; j++) {
                        totals[j] = j == 5 ? Double.NaN : 0.9 * Math.pow(0.55, (i + 2 * j) % 7);
                        decides[j] = totals[j] > 0.1;
                    }
                    return new InfluenceTableView.Row(NAMES.get(i), totals, decides);
                })
                .toList();
        return new InfluenceTableView(count == 1 ? "" : Samples.LONG_ZONE, 21, outputs, rows);
    }
}
