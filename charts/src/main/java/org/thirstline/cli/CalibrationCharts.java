package org.thirstline.cli;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.IntStream;
import org.thirstline.calibration.calibrate.CalibrationOutcome;
import org.thirstline.calibration.calibrate.CalibrationOutcome.Residual;
import org.thirstline.calibration.calibrate.HeldOut;
import org.thirstline.calibration.calibrate.HeldOut.Prediction;
import org.thirstline.calibration.fit.Profile;
import org.thirstline.calibration.fit.ProfilePoint;
import org.thirstline.calibration.posterior.ParameterSummary;
import org.thirstline.calibration.posterior.PosteriorDraws;
import org.thirstline.calibration.problem.CalibratedParameter;
import org.thirstline.calibration.problem.Observation;
import org.thirstline.charts.ChartDocument;
import org.thirstline.charts.ChartStyle;
import org.thirstline.charts.DrawsView;
import org.thirstline.charts.FitPoint;
import org.thirstline.charts.FitView;
import org.thirstline.charts.ObservedSimulatedChart;
import org.thirstline.charts.ParameterWords;
import org.thirstline.charts.PosteriorPairsChart;
import org.thirstline.charts.PriorPosteriorChart;
import org.thirstline.charts.PriorPosteriorView;
import org.thirstline.charts.ProfilesChart;
import org.thirstline.charts.ProfilesView;
import org.thirstline.charts.Quantity;
import org.thirstline.charts.ResidualsChart;
import org.thirstline.charts.TraceRankChart;
import org.thirstline.io.plots.PlotVariable;
import org.thirstline.io.study.CalibrationPlan.SoilFactor;

/** The charts of a calibration, by file name. Confined to one run. */
final class CalibrationCharts {

    private static final double LEVEL = 0.95;
    private static final int DENSITY_POINTS = 201;

    private final CalibrationOutcome outcome;
    private final String what;

    CalibrationCharts(CalibrationOutcome outcome) {
        this.outcome = outcome;
        int sites = outcome.data().sources().size();
        what = outcome.residuals().size() + " measured values of " + sites + (sites == 1 ? " site" : " sites");
    }

    Map<String, Function<ChartStyle, ChartDocument>> all() {
        Map<String, Function<ChartStyle, ChartDocument>> charts = new LinkedHashMap<>();
        for (PlotVariable variable : PlotVariable.values()) {
            FitView view = fit(variable);
            if (!view.points().isEmpty()) {
                String name = variable == PlotVariable.YIELD
                        ? ""
                        : "-" + variable.key().replace('_', '-');
                charts.put("observed-simulated" + name, style -> ObservedSimulatedChart.of(view, style));
            }
        }
        FitView yields = fit(PlotVariable.YIELD);
        if (!yields.points().isEmpty()) {
            charts.put("residuals", style -> ResidualsChart.of(yields, style));
        }
        for (HeldOut heldOut : outcome.skill()) {
            FitView view = heldOut(heldOut);
            charts.put("held-out-by-" + heldOut.what().word(), style -> ObservedSimulatedChart.of(view, style));
        }
        ProfilesView profiles = profiles();
        charts.put("profiles", style -> ProfilesChart.of(profiles, style));
        outcome.posterior().ifPresent(sampled -> posterior(sampled.draws(), charts));
        return charts;
    }

    private void posterior(PosteriorDraws draws, Map<String, Function<ChartStyle, ChartDocument>> charts) {
        DrawsView view = draws(draws);
        PriorPosteriorView marginals = marginals(draws);
        charts.put("prior-posterior", style -> PriorPosteriorChart.of(marginals, style));
        if (outcome.parameters().size() > 1) {
            charts.put("posterior-pairs", style -> PosteriorPairsChart.of(view, style));
        }
        charts.put("trace-rank", style -> TraceRankChart.of(view, style));
    }

    private FitView fit(PlotVariable variable) {
        List<FitPoint> points = outcome.residuals().stream()
                .filter(residual -> residual.observation().variable() == variable)
                .map(CalibrationCharts::point)
                .toList();
        return new FitView("fitted to these plots", quantity(variable), points, Map.of());
    }

    private static FitPoint point(Residual residual) {
        Observation observation = residual.observation();
        return new FitPoint(
                observation.site(),
                observation.growthYear(),
                observation.standAge(),
                residual.seasonRainMm(),
                observation.value(),
                observation.statedError(),
                residual.simulated(),
                Double.NaN,
                Double.NaN);
    }

    private FitView heldOut(HeldOut heldOut) {
        Map<Observation, Double> rain = new LinkedHashMap<>();
        outcome.residuals().forEach(residual -> rain.put(residual.observation(), residual.seasonRainMm()));
        List<FitPoint> points = heldOut.predictions().stream()
                .map(prediction -> point(prediction, rain))
                .toList();
        return new FitView("each " + heldOut.what().word() + " left out in turn", Quantity.HARVEST, points, Map.of());
    }

    private static FitPoint point(Prediction prediction, Map<Observation, Double> rain) {
        Observation observation = prediction.observation();
        return new FitPoint(
                observation.site(),
                observation.growthYear(),
                observation.standAge(),
                rain.getOrDefault(observation, Double.NaN),
                observation.value(),
                observation.statedError(),
                prediction.predicted(),
                prediction.lower(),
                prediction.upper());
    }

    private static Quantity quantity(PlotVariable variable) {
        return variable == PlotVariable.YIELD
                ? Quantity.HARVEST
                : new Quantity(
                        switch (variable) {
                            case SOIL_WATER -> "water of the soil";
                            case EMERGENCE -> "day of emergence in the growth year";
                            case CANOPY_END -> "day the green canopy ended in the growth year";
                            default -> variable.meaning();
                        },
                        variable.unit());
    }

    /** Rise of twice the negative log-likelihood: the square of the signed root. */
    private ProfilesView profiles() {
        List<ProfilesView.Curve> curves = new ArrayList<>();
        for (int i = 0; i < outcome.parameters().size(); i++) {
            CalibratedParameter parameter = outcome.parameters().get(i);
            Profile profile = outcome.fit().profiles().get(i);
            List<ProfilePoint> points = profile.points().stream()
                    .filter(point -> Double.isFinite(point.residualSumOfSquares()))
                    .toList();
            curves.add(new ProfilesView.Curve(
                    words(parameter),
                    parameter.unit(),
                    points.stream().mapToDouble(ProfilePoint::value).toArray(),
                    points.stream()
                            .mapToDouble(point -> point.signedRoot() * point.signedRoot())
                            .toArray(),
                    profile.limit() * profile.limit(),
                    profile.estimate(),
                    profile.lower(),
                    profile.upper(),
                    profile.lowerOpen(),
                    profile.upperOpen()));
        }
        return new ProfilesView(what, LEVEL, curves);
    }

    private DrawsView draws(PosteriorDraws draws) {
        List<ParameterSummary> summaries = outcome.summaries();
        return new DrawsView(
                what,
                IntStream.range(0, outcome.parameters().size())
                        .mapToObj(i -> new DrawsView.Draws(
                                words(outcome.parameters().get(i)),
                                outcome.parameters().get(i).unit(),
                                draws.byChain(i),
                                summaries.get(i).rHat(),
                                summaries.get(i).bulkEffectiveDraws()))
                        .toList());
    }

    private PriorPosteriorView marginals(PosteriorDraws draws) {
        return new PriorPosteriorView(
                what,
                IntStream.range(0, outcome.parameters().size())
                        .mapToObj(i -> marginal(outcome.parameters().get(i), draws.pooled(i)))
                        .toList());
    }

    private static PriorPosteriorView.Marginal marginal(CalibratedParameter parameter, double[] draws) {
        double width = parameter.upper() - parameter.lower();
        double[] values = IntStream.range(0, DENSITY_POINTS)
                .mapToDouble(i -> parameter.lower() + width * i / (DENSITY_POINTS - 1.0))
                .toArray();
        double[] densities = Arrays.stream(values)
                .map(value -> Math.exp(
                        parameter.prior().logDensity(Math.min(parameter.upper(), Math.max(parameter.lower(), value)))))
                .toArray();
        return new PriorPosteriorView.Marginal(words(parameter), parameter.unit(), values, densities, draws);
    }

    static String words(CalibratedParameter parameter) {
        String name = parameter
                .crop()
                .map(ParameterWords::of)
                .orElseGet(() -> parameter.soil().equals(Optional.of(SoilFactor.AVAILABLE_WATER))
                        ? ParameterWords.SOIL_WATER + ", factor"
                        : ParameterWords.SOIL_DEPTH + ", factor");
        return name
                + parameter.zone().map(zone -> ", " + zone).orElse("")
                + parameter.site().map(site -> ", " + site).orElse("");
    }
}
