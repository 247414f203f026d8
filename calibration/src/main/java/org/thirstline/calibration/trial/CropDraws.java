package org.thirstline.calibration.trial;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.thirstline.io.crop.CropCalibration;
import org.thirstline.io.crop.CropFile;
import org.thirstline.model.crop.CropParameter;
import org.thirstline.model.crop.CropParameters;

/** The crop under each draw that a calibrated crop file holds. Stateless and thread-safe. */
public final class CropDraws {

    private static final Map<String, CropParameter> BY_KEY =
            Arrays.stream(CropParameter.values()).collect(Collectors.toMap(CropParameter::key, Function.identity()));

    private CropDraws() {}

    /** Returns the crop under each draw; what a draw holds beside crop parameters is left as the study has it. Empty without a posterior. */
    public static List<CropParameters> of(CropFile crop) {
        return crop.calibration()
                .map(calibration -> calibration.draws().stream()
                        .map(draw -> with(crop.parameters(), calibration, draw))
                        .toList())
                .orElse(List.of());
    }

    /** Returns what draws hold beside crop parameters, such as factors on soils, and is left alone. */
    public static List<String> leftAlone(CropFile crop) {
        List<String> names = new ArrayList<>();
        crop.calibration()
                .filter(calibration -> !calibration.draws().isEmpty())
                .ifPresent(calibration -> calibration.drawNames().stream()
                        .filter(name -> !BY_KEY.containsKey(name))
                        .forEach(names::add));
        return names;
    }

    private static CropParameters with(CropParameters start, CropCalibration calibration, List<Double> draw) {
        CropParameters crop = start;
        for (int i = 0; i < draw.size(); i++) {
            CropParameter parameter = BY_KEY.get(calibration.drawNames().get(i));
            if (parameter != null) {
                crop = crop.with(parameter, draw.get(i));
            }
        }
        return crop;
    }
}
