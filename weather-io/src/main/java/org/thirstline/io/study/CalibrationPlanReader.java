package org.thirstline.io.study;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import org.thirstline.io.plots.PlotVariable;
import org.thirstline.io.study.CalibrationPlan.ErrorKind;
import org.thirstline.io.study.CalibrationPlan.PlannedError;
import org.thirstline.io.study.CalibrationPlan.PlannedParameter;
import org.thirstline.io.study.CalibrationPlan.SoilFactor;
import org.thirstline.io.text.InputFileError;
import org.thirstline.io.text.Nearest;
import org.thirstline.io.text.Scalars;
import org.thirstline.io.text.Section;
import org.thirstline.model.crop.CropParameter;

/** Reads the calibration section of a study file. Stateless and thread-safe. */
final class CalibrationPlanReader {

    private static final double PERCENT = 0.01;
    private static final double LARGEST_CV = 2.0;

    private CalibrationPlanReader() {}

    static CalibrationPlan read(Section section, List<Zone> zones, Function<String, Path> files) {
        List<PlannedParameter> parameters = new ArrayList<>();
        section.sections("parameters").forEach(each -> parameters.add(parameter(each, zones)));
        List<Path> studies = section.values("with_studies", node -> files.apply(Scalars.text(node)));
        List<PlannedError> errors = new ArrayList<>();
        section.sections("errors").forEach(each -> errors.add(error(each)));
        return new CalibrationPlan(parameters, studies, errors);
    }

    private static PlannedParameter parameter(Section section, List<Zone> zones) {
        String name = section.required("name", section.text("name"));
        Optional<CropParameter> crop = CropParameter.ofKey(name);
        Optional<SoilFactor> soil = Arrays.stream(SoilFactor.values())
                .filter(factor -> factor.key().equals(name))
                .findFirst();
        if (crop.isEmpty() && soil.isEmpty()) {
            List<String> known = known();
            throw section.refusal(
                    "name",
                    InputFileError.NOT_ALLOWED,
                    name,
                    "a parameter of crop files, soil_available_water_factor, soil_depth_factor",
                    Nearest.hint(name, known));
        }
        Optional<String> zone = section.text("zone");
        Optional<String> site = section.text("site");
        if (soil.isEmpty() && (zone.isPresent() || site.isPresent())) {
            throw section.refusal(
                    zone.isPresent() ? "zone" : "site",
                    InputFileError.INCONSISTENT,
                    name + " is of the crop, which is the same everywhere");
        }
        List<String> names = zones.stream().map(Zone::name).toList();
        if (site.isEmpty() && zone.isPresent() && !names.contains(zone.get())) {
            throw section.refusal(
                    "zone",
                    InputFileError.NOT_ALLOWED,
                    zone.get(),
                    String.join(", ", names) + "; for a zone of another study name its site too",
                    Nearest.hint(zone.get(), names));
        }
        PlannedParameter planned = new PlannedParameter(
                crop,
                soil,
                site,
                zone,
                section.number("low"),
                section.number("high"),
                section.choice("prior"),
                section.number("expected_low"),
                section.number("expected_high"),
                section.place("name"));
        requireOrder(section, "low", planned.low(), "high", planned.high());
        requireOrder(section, "expected_low", planned.expectedLow(), "expected_high", planned.expectedHigh());
        requireTogether(section, planned);
        return planned;
    }

    private static List<String> known() {
        List<String> known = new ArrayList<>();
        Arrays.stream(CropParameter.values()).map(CropParameter::key).forEach(known::add);
        Arrays.stream(SoilFactor.values()).map(SoilFactor::key).forEach(known::add);
        return known;
    }

    private static void requireOrder(
            Section section, String lowKey, OptionalDouble low, String highKey, OptionalDouble high) {
        if (low.isPresent() && high.isPresent() && !(low.getAsDouble() < high.getAsDouble())) {
            throw section.refusal(
                    lowKey,
                    InputFileError.INCONSISTENT,
                    lowKey + " (" + low.getAsDouble() + ") must lie below " + highKey + " (" + high.getAsDouble()
                            + ")");
        }
    }

    private static void requireTogether(Section section, PlannedParameter planned) {
        if (planned.expectedLow().isPresent() != planned.expectedHigh().isPresent()) {
            throw section.refusal(
                    planned.expectedLow().isPresent() ? "expected_low" : "expected_high",
                    InputFileError.INCONSISTENT,
                    "'expected_low' and 'expected_high' are only given together");
        }
    }

    private static PlannedError error(Section section) {
        String key = section.required("variable", section.choice("variable"));
        PlotVariable variable = PlotVariable.of(key).orElseThrow();
        boolean share = section.has("cv");
        if (share && variable.timing() == PlotVariable.Timing.DATE) {
            throw section.refusal("cv", InputFileError.INCONSISTENT, "the error of a date is no share of it; give sd");
        }
        String name = share ? "cv" : "sd";
        String text = section.required(name, section.text(name)).strip();
        ErrorKind kind = share ? ErrorKind.CV : ErrorKind.SD;
        if (text.equalsIgnoreCase(CalibrationKeys.ESTIMATED)) {
            return new PlannedError(variable, kind, OptionalDouble.empty());
        }
        if (!share && text.equalsIgnoreCase(CalibrationKeys.STATED)) {
            return new PlannedError(variable, ErrorKind.STATED, OptionalDouble.empty());
        }
        return new PlannedError(variable, kind, OptionalDouble.of(size(section, name, text, share, variable)));
    }

    private static double size(Section section, String name, String text, boolean share, PlotVariable variable) {
        boolean percent = share && text.endsWith("%");
        double size;
        try {
            size = Double.parseDouble(
                    percent ? text.substring(0, text.length() - 1).strip() : text);
        } catch (NumberFormatException noNumber) {
            size = Double.NaN;
        }
        double scaled = percent ? PERCENT * size : size;
        double highest = share ? LARGEST_CV : variable.highest();
        if (!(scaled > 0.0 && scaled <= highest)) {
            String number = share ? "a share such as 10 % or 0.1" : "a number in " + variable.unit();
            throw section.refusal(
                    name,
                    InputFileError.WRONG_KIND,
                    "'" + text + "'",
                    number + " above 0, or " + CalibrationKeys.ESTIMATED);
        }
        return scaled;
    }
}
