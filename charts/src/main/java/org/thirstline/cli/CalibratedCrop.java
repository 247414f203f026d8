package org.thirstline.cli;

import java.math.BigDecimal;
import java.math.MathContext;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;
import org.thirstline.calibration.calibrate.CalibrationFit;
import org.thirstline.calibration.calibrate.CalibrationOutcome;
import org.thirstline.calibration.calibrate.ChosenValues.Basis;
import org.thirstline.calibration.fit.Profile;
import org.thirstline.calibration.posterior.PosteriorDraws;
import org.thirstline.calibration.problem.CalibratedParameter;
import org.thirstline.calibration.problem.StudySource;
import org.thirstline.io.crop.CropCalibration;
import org.thirstline.io.crop.CropCalibration.DataFile;
import org.thirstline.io.crop.CropCalibration.Fitted;
import org.thirstline.io.crop.CropCalibration.ResidualError;
import org.thirstline.io.crop.CropFile;
import org.thirstline.io.crop.CropFileText;
import org.thirstline.io.crop.CropFiles;
import org.thirstline.io.crop.Evidence;
import org.thirstline.io.crop.ParameterNote;
import org.thirstline.io.study.Study;
import org.thirstline.io.tables.RunManifest;
import org.thirstline.model.crop.CropParameter;
import org.thirstline.model.crop.CropParameters;

/** {@code crop.yaml}: the crop with its fitted numbers, their errors, joint draws, and what they were fitted to. */
final class CalibratedCrop {

    static final String FILE = "crop.yaml";

    /** Joint draws that a crop file carries: enough for a band, few enough to read past. */
    private static final int DRAWS = 200;

    /** Share of the intervals that a crop file states. */
    private static final double CONFIDENCE = 0.95;

    /** Digits of a fitted number; its error is larger than the rest. */
    private static final MathContext DIGITS = new MathContext(7);

    private final CalibrationOutcome outcome;
    private final LocalDate date;
    private final Study study;

    CalibratedCrop(CalibrationOutcome outcome, LocalDate date) {
        this.outcome = outcome;
        this.date = date;
        study = outcome.data().sources().get(0).study();
    }

    String text() {
        CropFile base = study.crop();
        CropFile fitted = crop();
        boolean bundled = study.cropPath().isEmpty() && CropFiles.isBundled(base.name());
        return header() + (bundled ? CropFileText.basedOn(base.name(), fitted, changed()) : CropFileText.of(fitted));
    }

    private String header() {
        StringBuilder text = new StringBuilder(
                "# Crop file written by 'thirstline calibrate'; name it in a study as 'crop: " + FILE + "'.\n");
        text.append("# Its values are ")
                .append(outcome.chosen().basis().words())
                .append(sampled() ? "; those of least squares:\n" : ".\n");
        for (int i = 0; sampled() && i < outcome.parameters().size(); i++) {
            text.append(String.format(
                            Locale.ROOT,
                            "#   %s: %.4g%n",
                            outcome.parameters().get(i).name(),
                            outcome.fit().point()[i])
                    .replace("\r", ""));
        }
        for (int i = 0; i < outcome.parameters().size(); i++) {
            CalibratedParameter parameter = outcome.parameters().get(i);
            if (parameter.soil().isPresent()) {
                text.append("# The soil was fitted too; ")
                        .append(advice(parameter, outcome.chosen().values().get(i)))
                        .append(".\n");
            }
        }
        return text.toString();
    }

    /** Says where a fitted soil factor goes, since a crop file cannot hold it. */
    static String advice(CalibratedParameter parameter, double value) {
        String key = parameter.soil().orElseThrow().key().replace("soil_", "");
        String where =
                parameter.zone().map(zone -> "of the zone '" + zone + "'").orElse("of every zone")
                        + parameter.site().map(site -> " at " + site).orElse("");
        return String.format(Locale.ROOT, "write '%s: %.4g' into the soil %s to run with it", key, value, where);
    }

    private Set<CropParameter> changed() {
        Set<CropParameter> changed = new LinkedHashSet<>();
        outcome.parameters().forEach(parameter -> parameter.crop().ifPresent(changed::add));
        return changed;
    }

    CropFile crop() {
        CropFile base = study.crop();
        CropParameters parameters = base.parameters();
        Map<CropParameter, ParameterNote> notes = new EnumMap<>(base.notes());
        double[] point = outcome.chosen().point();
        for (int i = 0; i < point.length; i++) {
            Optional<CropParameter> parameter = outcome.parameters().get(i).crop();
            if (parameter.isPresent()) {
                parameters = parameters.with(parameter.get(), rounded(point[i]));
                notes.put(parameter.get(), note(base.note(parameter.get())));
            }
        }
        return new CropFile(
                base.name() + ", calibrated",
                base.species(),
                parameters,
                notes,
                base.cautions(),
                Optional.of(record()));
    }

    private ParameterNote note(ParameterNote before) {
        String source = "fitted to " + outcome.residuals().size() + (outcome.invented() ? " invented" : "")
                + " measured values of the study '" + study.title() + "' on " + date;
        return new ParameterNote(
                before.low(), before.high(), before.noRange(), source, before.basis(), Evidence.FITTED);
    }

    private CropCalibration record() {
        CalibrationFit fit = outcome.fit();
        List<Fitted> fitted = IntStream.range(0, outcome.parameters().size())
                .mapToObj(i -> outcome.posterior()
                        .filter(sampled -> sampled())
                        .map(sampled -> sampled(i, sampled.draws()))
                        .orElseGet(() -> fitted(i)))
                .toList();
        List<ResidualError> errors = fit.problem().errors().stream()
                .map(error -> new ResidualError(
                        error.variable().key(),
                        error.kind().name().toLowerCase(Locale.ROOT),
                        rounded(error.size()),
                        error.estimated()))
                .toList();
        return new CropCalibration(
                study.title(),
                date.toString(),
                outcome.residuals().size(),
                outcome.invented(),
                files(),
                fitted,
                correlations(),
                errors,
                outcome.posterior().map(sampled -> sampled.draws().names()).orElse(List.of()),
                draws(),
                outcome.posterior().isPresent() && !sampled());
    }

    /** A parameter at a bound has no correlations and gets none. */
    private List<List<Double>> correlations() {
        List<List<Double>> rows = new ArrayList<>();
        for (int i = 0; i < outcome.parameters().size(); i++) {
            List<Double> row = new ArrayList<>();
            for (int j = 0; j < outcome.parameters().size(); j++) {
                double correlation = outcome.fit().result().correlation(i, j);
                double known = Double.isNaN(correlation) ? 0.0 : Math.max(-1.0, Math.min(1.0, correlation));
                row.add(i == j ? 1.0 : rounded(known));
            }
            rows.add(row);
        }
        return rows;
    }

    private boolean sampled() {
        return outcome.chosen().basis() != Basis.LEAST_SQUARES;
    }

    private Fitted fitted(int index) {
        Profile profile = outcome.fit().profiles().get(index);
        return new Fitted(
                outcome.parameters().get(index).name(),
                rounded(outcome.chosen().values().get(index)),
                rounded(outcome.fit().standardError(index)),
                profile.lowerOpen() ? Double.NaN : rounded(profile.lower()),
                profile.upperOpen() ? Double.NaN : rounded(profile.upper()),
                outcome.parameters().get(index).lower(),
                outcome.parameters().get(index).upper());
    }

    private Fitted sampled(int index, PosteriorDraws draws) {
        return new Fitted(
                outcome.parameters().get(index).name(),
                rounded(outcome.chosen().values().get(index)),
                rounded(outcome.summaries().get(index).standardDeviation()),
                rounded(draws.quantile(index, 0.5 - 0.5 * CONFIDENCE)),
                rounded(draws.quantile(index, 0.5 + 0.5 * CONFIDENCE)),
                outcome.parameters().get(index).lower(),
                outcome.parameters().get(index).upper());
    }

    private List<List<Double>> draws() {
        return outcome.posterior()
                .map(sampled -> Arrays.stream(sampled.draws().thinned(DRAWS))
                        .map(draw -> Arrays.stream(draw)
                                .mapToObj(CalibratedCrop::rounded)
                                .toList())
                        .toList())
                .orElse(List.of());
    }

    private List<DataFile> files() {
        return inputs(outcome).stream()
                .map(input -> new DataFile(input.path(), input.sha256()))
                .toList();
    }

    /** Every file that was read, relative to the first study. */
    static List<RunManifest.Input> inputs(CalibrationOutcome outcome) {
        Path base =
                outcome.data().sources().get(0).study().file().toAbsolutePath().getParent();
        Set<Path> files = new LinkedHashSet<>();
        for (StudySource source : outcome.data().sources()) {
            List<Path> own = new ArrayList<>(source.study().inputFiles());
            source.study().plots().ifPresent(own::remove);
            files.addAll(own);
            files.add(source.plotFile());
        }
        Path relativeTo = base == null ? Path.of("") : base;
        return files.stream()
                .map(file -> RunManifest.Input.of(file, relativeTo))
                .toList();
    }

    private static double rounded(double value) {
        return Double.isFinite(value) ? new BigDecimal(value).round(DIGITS).doubleValue() : Double.NaN;
    }
}
