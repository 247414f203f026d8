package org.thirstline.calibration.bands;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import org.thirstline.io.crop.CropCalibration;
import org.thirstline.io.crop.CropCalibration.Fitted;
import org.thirstline.io.crop.CropFile;
import org.thirstline.model.crop.CropParameter;
import org.thirstline.model.crop.CropParameters;

/** Joint draws of the parameters that a crop file was calibrated for. Immutable and thread-safe. */
public final class ParameterDraws {

    /** Draws used at most (our choice): more hardly move a 5 % quantile and cost seconds. */
    public static final int MOST = 200;

    private static final String UNSETTLED =
            "The chains behind the draws of the calibration had not settled, so that the draws may lie wrong: calibrate with more draws"
                    + " (--posterior) before relying on them.";

    private final CropFile crop;
    private final Source source;
    private final int inFile;
    private final List<String> names;
    private final List<String> held;
    private final double[][] draws;

    /** Where draws come from. */
    public enum Source {
        /** A sampled posterior that the crop file carries. */
        POSTERIOR,
        /** The normal distribution of fitted values, standard errors and correlations. */
        NORMAL,
        /** The same where the crop file does not say how the errors hang together. */
        INDEPENDENT
    }

    private ParameterDraws(
            CropFile crop, Source source, int inFile, List<String> names, List<String> held, double[][] draws) {
        this.crop = crop;
        this.source = source;
        this.inFile = inFile;
        this.names = List.copyOf(names);
        this.held = List.copyOf(held);
        this.draws = draws;
    }

    /**
     * Returns the draws of a crop file: of its posterior, evenly spaced ones if there are more than {@link #MOST}; else from the normal
     * distribution that its standard errors stand for; absent where it has neither.
     *
     * @param crop the crop file
     * @param seed of the generator, where draws have to be made
     */
    public static Optional<ParameterDraws> of(CropFile crop, long seed) {
        return ofPosterior(crop).or(() -> crop.calibration().flatMap(calibration -> normal(crop, calibration, seed)));
    }

    /**
     * Returns the draws of the posterior that a crop file carries, evenly spaced ones if there are more than {@link #MOST}; absent where it
     * carries none.
     *
     * @param crop the crop file
     */
    public static Optional<ParameterDraws> ofPosterior(CropFile crop) {
        return crop.calibration()
                .filter(calibration -> !calibration.draws().isEmpty())
                .map(calibration -> posterior(crop, calibration));
    }

    private static ParameterDraws posterior(CropFile crop, CropCalibration calibration) {
        int inFile = calibration.draws().size();
        int count = Math.min(MOST, inFile);
        double[][] draws = IntStream.range(0, count)
                .mapToObj(i -> calibration.draws().get((int) ((long) i * inFile / count)))
                .map(draw -> draw.stream().mapToDouble(Double::doubleValue).toArray())
                .toArray(double[][]::new);
        return new ParameterDraws(crop, Source.POSTERIOR, inFile, calibration.drawNames(), List.of(), draws);
    }

    private static Optional<ParameterDraws> normal(CropFile crop, CropCalibration calibration, long seed) {
        List<Integer> places = new ArrayList<>();
        List<String> held = new ArrayList<>();
        for (int i = 0; i < calibration.fitted().size(); i++) {
            Fitted fitted = calibration.fitted().get(i);
            if (Double.isNaN(fitted.standardError())) {
                held.add(fitted.parameter());
            } else {
                places.add(i);
            }
        }
        if (places.isEmpty()) {
            return Optional.empty();
        }
        List<String> names = places.stream()
                .map(place -> calibration.fitted().get(place).parameter())
                .toList();
        boolean related = !calibration.correlations().isEmpty() || places.size() == 1;
        Source source = related ? Source.NORMAL : Source.INDEPENDENT;
        double[][] draws = NormalDraws.of(crop, places, MOST, seed);
        return Optional.of(new ParameterDraws(crop, source, draws.length, names, held, draws));
    }

    /** Returns how they came about. */
    public CropCalibration calibration() {
        return crop.calibration().orElseThrow();
    }

    /** Returns where they come from. */
    public Source source() {
        return source;
    }

    /** Returns the number of draws. */
    public int size() {
        return draws.length;
    }

    /** Returns the number of draws that there were to choose from. */
    public int inFile() {
        return inFile;
    }

    /** Returns what a draw holds. */
    public List<String> names() {
        return names;
    }

    /** Returns a warning where the draws may lie wrong. */
    public Optional<String> warning() {
        return source == Source.POSTERIOR && calibration().unsettled() ? Optional.of(UNSETTLED) : Optional.empty();
    }

    /** Returns fitted parameters that stay at their values for want of a standard error. */
    public List<String> held() {
        return held;
    }

    /**
     * Returns a value of a draw.
     *
     * @param draw from 0 on
     * @param name its place among {@link #names}
     */
    double value(int draw, int name) {
        return draws[draw][name];
    }

    /** Returns what a draw holds that is neither a parameter of a crop nor a factor on soils. */
    List<String> unknown() {
        return names.stream()
                .filter(name -> !isOfCrop(name) && !SoilDraws.isSoil(name))
                .toList();
    }

    /** Returns the fitted parameters whose value in the crop file is another than the fitted one. */
    List<String> changedSince() {
        return calibration().fitted().stream()
                .filter(fitted -> CropParameter.ofKey(fitted.parameter())
                        .filter(parameter -> crop.parameters().get(parameter) != fitted.value())
                        .isPresent())
                .map(Fitted::parameter)
                .toList();
    }

    /**
     * Returns the crop under a draw.
     *
     * @param draw from 0 on
     */
    CropParameters crop(int draw) {
        return crop(crop.parameters(), names, draws[draw]);
    }

    /** Returns the crop under every draw. */
    public List<CropParameters> crops() {
        return IntStream.range(0, draws.length).mapToObj(this::crop).toList();
    }

    /** Returns what a draw holds beside parameters of the crop, such as factors on soils. */
    public List<String> besideCrop() {
        return names.stream().filter(name -> !isOfCrop(name)).toList();
    }

    private static boolean isOfCrop(String name) {
        return CropParameter.ofKey(name).isPresent();
    }

    static CropParameters crop(CropParameters base, List<String> names, double[] draw) {
        Map<CropParameter, Double> changes = new EnumMap<>(CropParameter.class);
        for (int i = 0; i < draw.length; i++) {
            double value = draw[i];
            CropParameter.ofKey(names.get(i)).ifPresent(parameter -> changes.put(parameter, value));
        }
        return base.with(changes);
    }
}
