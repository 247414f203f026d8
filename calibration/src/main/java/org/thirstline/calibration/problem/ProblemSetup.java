package org.thirstline.calibration.problem;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.thirstline.calibration.error.CalibrationError;
import org.thirstline.calibration.posterior.Prior;
import org.thirstline.io.crop.CropFile;
import org.thirstline.io.crop.ParameterNote;
import org.thirstline.io.plots.PlotVariable;
import org.thirstline.io.study.CalibrationPlan;
import org.thirstline.io.study.CalibrationPlan.ErrorKind;
import org.thirstline.io.study.CalibrationPlan.PlannedError;
import org.thirstline.io.study.CalibrationPlan.PlannedParameter;
import org.thirstline.io.study.CalibrationPlan.SoilFactor;
import org.thirstline.model.crop.CropParameter;
import org.thirstline.model.error.InputException;

/**
 * Turns plot data and what a study says about its calibration into a problem.
 *
 * @param problem the problem
 * @param data what was used and what not
 * @param chosen whether the study names the parameters; if not, they are the usual ones
 */
public record ProblemSetup(CalibrationProblem problem, PlotData data, boolean chosen) {

    /** Half of the width of the published range lies between it and each bound of the search (our choice). */
    private static final double MARGIN = 0.5;

    /** Without a published range, the search goes from half the value to half as much again (our choice). */
    private static final double WITHOUT_RANGE = 0.5;

    private static final MathContext BOUND_DIGITS = new MathContext(10);

    /** Expected range of soil factors: a soil description is off by a quarter to a third (judgement). */
    private static final double SOIL_LOW = 0.75;

    private static final double SOIL_HIGH = 1.0 / SOIL_LOW;

    /**
     * Sets up the problem of the first study of some plot data.
     *
     * @param data gathered plots
     */
    public static ProblemSetup of(PlotData data) {
        CalibrationPlan plan = data.sources().get(0).study().calibration();
        PlotData usable = data;
        List<ErrorModel> errors = new ArrayList<>();
        for (PlotVariable variable : PlotVariable.values()) {
            if (data.used().stream().anyMatch(observation -> observation.variable() == variable)) {
                ErrorModel error = error(variable, plan, data);
                usable = usable.without(variable, error.kind());
                errors.add(error);
            }
        }
        if (usable.used().isEmpty()) {
            throw new InputException(CalibrationError.NO_OBSERVATIONS);
        }
        List<CalibratedParameter> parameters = parameters(plan, data.sources());
        if (usable.used().size() <= parameters.size()) {
            throw new InputException(
                    CalibrationError.TOO_FEW_VALUES, usable.used().size(), parameters.size());
        }
        return new ProblemSetup(
                new CalibrationProblem(data.sources(), parameters, usable.used(), errors),
                usable,
                !plan.parameters().isEmpty());
    }

    private static ErrorModel error(PlotVariable variable, CalibrationPlan plan, PlotData data) {
        double[] values = data.used().stream()
                .filter(observation -> observation.variable() == variable)
                .mapToDouble(Observation::value)
                .toArray();
        Optional<PlannedError> planned = plan.errors().stream()
                .filter(error -> error.variable() == variable)
                .findFirst();
        if (planned.isPresent()) {
            ErrorKind kind = planned.get().kind();
            boolean estimated = kind != ErrorKind.STATED && planned.get().size().isEmpty();
            double size = planned.get().size().orElse(kind == ErrorKind.SD ? spread(variable, values) : 1.0);
            return new ErrorModel(variable, kind, size, estimated);
        }
        long stated = data.used().stream()
                .filter(observation -> observation.variable() == variable && observation.statedError() > 0.0)
                .count();
        return stated == values.length
                ? new ErrorModel(variable, ErrorKind.STATED, 1.0, true)
                : new ErrorModel(variable, ErrorKind.SD, spread(variable, values), true);
    }

    /** A first guess that only has to be of the right size. */
    private static double spread(PlotVariable variable, double[] values) {
        double mean = Arrays.stream(values).average().orElse(0.0);
        double square = Arrays.stream(values)
                        .map(value -> (value - mean) * (value - mean))
                        .sum()
                / values.length;
        double floor = variable.timing() == PlotVariable.Timing.DATE ? 1.0 : 0.01 * Math.abs(mean);
        return Math.max(Math.max(floor, 1.0e-6), Math.sqrt(square));
    }

    private static List<CalibratedParameter> parameters(CalibrationPlan plan, List<StudySource> sources) {
        CropFile crop = sources.get(0).study().crop();
        List<PlannedParameter> planned = plan.parameters().isEmpty() ? usual() : plan.parameters();
        List<CalibratedParameter> parameters = new ArrayList<>();
        Set<String> names = new LinkedHashSet<>();
        for (PlannedParameter each : planned) {
            CalibratedParameter parameter;
            try {
                requireZone(each, sources);
                parameter = each.crop().isPresent()
                        ? ofCrop(each, each.crop().get(), crop)
                        : ofSoil(each, each.soil().orElseThrow());
                if (!names.add(parameter.name())) {
                    throw new InputException(CalibrationError.PARAMETER_TWICE, parameter.name());
                }
            } catch (InputException refused) {
                throw each.place().isEmpty() ? refused : refused.at(each.place());
            }
            parameters.add(parameter);
        }
        return parameters;
    }

    /** What plots can usually tell: light use, leaf area, when drought begins to hurt, and how much water the soil holds. */
    private static List<PlannedParameter> usual() {
        return List.of(
                planned(Optional.of(CropParameter.RADIATION_USE_EFFICIENCY), Optional.empty()),
                planned(Optional.of(CropParameter.MAX_LEAF_AREA_INDEX), Optional.empty()),
                planned(Optional.of(CropParameter.DEPLETION_FRACTION), Optional.empty()),
                planned(Optional.empty(), Optional.of(SoilFactor.AVAILABLE_WATER)));
    }

    private static PlannedParameter planned(Optional<CropParameter> crop, Optional<SoilFactor> soil) {
        return new PlannedParameter(
                crop,
                soil,
                Optional.empty(),
                Optional.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                Optional.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                "");
    }

    private static void requireZone(PlannedParameter planned, List<StudySource> sources) {
        boolean known = sources.stream()
                .filter(source -> planned.site().map(source.site()::equals).orElse(true))
                .flatMap(source -> source.study().zones().stream())
                .anyMatch(zone -> planned.zone().map(zone.name()::equals).orElse(true));
        if (!known) {
            List<String> zones = sources.stream()
                    .flatMap(source -> source.study().zones().stream().map(zone -> source.site() + ": " + zone.name()))
                    .toList();
            throw new InputException(
                    CalibrationError.SOIL_UNKNOWN,
                    planned.zone().orElse("any"),
                    planned.site().map(site -> " at the site '" + site + "'").orElse(""),
                    String.join("; ", zones));
        }
    }

    private static CalibratedParameter ofCrop(PlannedParameter planned, CropParameter parameter, CropFile crop) {
        ParameterNote note = crop.note(parameter);
        double value = crop.parameters().get(parameter);
        boolean range = note.hasRange() && note.low() < note.high();
        double width = range ? note.high() - note.low() : 0.0;
        if (!range && value == 0.0 && (planned.low().isEmpty() || planned.high().isEmpty())) {
            throw new InputException(CalibrationError.NO_RANGE, parameter.key(), value);
        }
        double reach = WITHOUT_RANGE * Math.abs(value);
        double low = Math.max(
                parameter.lowest(),
                planned.low().orElse(range ? Math.min(value, note.low()) - MARGIN * width : value - reach));
        double high = Math.min(
                parameter.highest(),
                planned.high().orElse(range ? Math.max(value, note.high()) + MARGIN * width : value + reach));
        low = rounded(low);
        high = rounded(high);
        requireWidth(parameter.key(), low, high);
        double expectedLow = planned.expectedLow().orElse(range ? note.low() : Double.NaN);
        double expectedHigh = planned.expectedHigh().orElse(range ? note.high() : Double.NaN);
        Prior prior = prior(planned, Prior.Shape.NORMAL, expectedLow, value, expectedHigh, low, high);
        return new CalibratedParameter(
                parameter.key(),
                Optional.of(parameter),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Math.max(prior.lower(), Math.min(prior.upper(), value)),
                prior);
    }

    /** Rids a bound of what sums of decimals leave behind. */
    private static double rounded(double bound) {
        return new BigDecimal(bound).round(BOUND_DIGITS).doubleValue();
    }

    private static CalibratedParameter ofSoil(PlannedParameter planned, SoilFactor factor) {
        double low = Math.max(0.1, planned.low().orElse(factor.lowest()));
        double high = Math.min(5.0, planned.high().orElse(factor.highest()));
        requireWidth(factor.key(), low, high);
        Prior prior = prior(
                planned,
                Prior.Shape.LOGNORMAL,
                planned.expectedLow().orElse(SOIL_LOW),
                1.0,
                planned.expectedHigh().orElse(SOIL_HIGH),
                low,
                high);
        String where = planned.site().map(site -> " at " + site).orElse("")
                + planned.zone().map(zone -> " in " + zone).orElse("");
        return new CalibratedParameter(
                factor.key() + where,
                Optional.empty(),
                Optional.of(factor),
                planned.site(),
                planned.zone(),
                Math.max(prior.lower(), Math.min(prior.upper(), 1.0)),
                prior);
    }

    private static void requireWidth(String name, double low, double high) {
        if (!(low < high)) {
            throw new InputException(CalibrationError.NO_WIDTH, name, low, high);
        }
    }

    private static Prior prior(
            PlannedParameter planned,
            Prior.Shape usual,
            double expectedLow,
            double best,
            double expectedHigh,
            double low,
            double high) {
        if (Double.isNaN(expectedLow)) {
            return Prior.uniform(low, high);
        }
        Prior.Shape shape = planned.prior()
                .map(word -> Prior.Shape.valueOf(word.toUpperCase(Locale.ROOT)))
                .orElse(usual);
        if (shape == Prior.Shape.UNIFORM) {
            return Prior.uniform(low, high);
        }
        double peak = Math.max(expectedLow, Math.min(expectedHigh, best));
        return Prior.ofPublishedRange(shape, expectedLow, peak, expectedHigh, low, high);
    }
}
