package org.thirstline.calibration.bands;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import org.thirstline.io.crop.CropCalibration;
import org.thirstline.io.study.CalibrationPlan.SoilFactor;
import org.thirstline.io.study.Study;
import org.thirstline.io.study.Zone;
import org.thirstline.io.tables.Sha256;
import org.thirstline.model.soil.SoilProfile;

/**
 * Factors on soils that draws hold, put on the soils they were fitted on and on no others. Immutable and thread-safe once built.
 *
 * <p>A factor holds for a soil as its study describes it without factors. A study that has the fitted factor in its soil already is drawn
 * about it; one that has another factor cannot be told apart from one whose description has changed, and is left alone.
 */
final class SoilDraws {

    /** A soil holds neither a tenth nor five times what its description says (our choice, that of the calibration). */
    static final double LOWEST = 0.1;

    static final double HIGHEST = 5.0;

    /** Factors are written into studies with four digits. */
    private static final double WRITTEN = 1.0e-3;

    private final Study study;
    private final ParameterDraws draws;
    private final boolean sameField;
    private final Set<String> used = new LinkedHashSet<>();
    private final List<String> notices = new ArrayList<>();
    private final Map<String, List<String>> unwritten = new LinkedHashMap<>();

    SoilDraws(Study study, ParameterDraws draws) {
        this.study = study;
        this.draws = draws;
        sameField = isOfStudy(study, draws.calibration());
    }

    /**
     * What a draw does to the soil of a zone.
     *
     * @param factor which factor
     * @param places places of its parts among the names of the draws
     * @param divisor what the soil has of it already
     */
    record Change(SoilFactor factor, List<Integer> places, double divisor) {

        SoilProfile on(SoilProfile soil, ParameterDraws draws, int draw) {
            double product = 1.0 / divisor;
            for (int place : places) {
                product *= draws.value(draw, place);
            }
            return factor == SoilFactor.AVAILABLE_WATER
                    ? soil.withAvailableWaterTimes(product)
                    : soil.withDepthTimes(product);
        }
    }

    static boolean isSoil(String name) {
        return Arrays.stream(SoilFactor.values())
                .anyMatch(factor -> name.equals(factor.key()) || name.startsWith(factor.key() + " "));
    }

    /** The study file itself names another crop by now, so that its title or its weather has to tell. */
    private static boolean isOfStudy(Study study, CropCalibration calibration) {
        return calibration.study().equals(study.title())
                || study.weather().files().stream().anyMatch(file -> isAmong(file, calibration));
    }

    private static boolean isAmong(Path file, CropCalibration calibration) {
        String checksum = Sha256.of(file);
        return calibration.data().stream().anyMatch(data -> data.sha256().equals(checksum));
    }

    /** Returns what draws do to the soil of a zone. */
    List<Change> of(Zone zone) {
        List<Change> changes = new ArrayList<>();
        for (SoilFactor factor : SoilFactor.values()) {
            List<Integer> places = new ArrayList<>();
            for (int i = 0; i < draws.names().size(); i++) {
                if (applies(draws.names().get(i), factor, zone)) {
                    places.add(i);
                }
            }
            if (!places.isEmpty()) {
                add(factor, places, zone, changes);
            }
        }
        return changes;
    }

    private boolean applies(String name, SoilFactor factor, Zone zone) {
        String key = factor.key();
        String here = key + " at " + study.site().name();
        String inZone = " in " + zone.name();
        return sameField && (name.equals(key) || name.equals(key + inZone))
                || name.equals(here)
                || name.equals(here + inZone);
    }

    private void add(SoilFactor factor, List<Integer> places, Zone zone, List<Change> changes) {
        double fitted = 1.0;
        for (int place : places) {
            fitted *= fitted(draws.names().get(place));
            used.add(draws.names().get(place));
        }
        double given = factor == SoilFactor.AVAILABLE_WATER ? zone.availableWaterFactor() : zone.depthFactor();
        String key = factor.key().replace("soil_", "");
        if (Math.abs(given / fitted - 1.0) < WRITTEN) {
            changes.add(new Change(factor, places, given));
        } else if (given == 1.0) {
            changes.add(new Change(factor, places, 1.0));
            unwritten
                    .computeIfAbsent(String.format(Locale.ROOT, "%s: %.4g", key, fitted), of -> new ArrayList<>())
                    .add(zone.name());
        } else {
            notices.add(String.format(
                    Locale.ROOT,
                    "Bands of %s leave the doubt in its soil out: it has '%s: %.4g', which is neither 1 nor the fitted %.4g.",
                    zone.name(),
                    key,
                    given,
                    fitted));
        }
    }

    private double fitted(String name) {
        return draws.calibration().fitted().stream()
                .filter(fitted -> fitted.parameter().equals(name))
                .mapToDouble(CropCalibration.Fitted::value)
                .findFirst()
                .orElse(Double.NaN);
    }

    /** Returns what a reader must know, after every zone has been asked for. */
    List<String> notices() {
        List<String> all = new ArrayList<>(notices);
        unwritten.forEach((factor, zones) -> all.add("Bands of " + String.join(", ", zones)
                + " are of the soil as it was fitted, the run itself is of the soil as the study has it; write '"
                + factor
                + "' into the soil for both to be of one soil."));
        List<String> left = draws.names().stream()
                .filter(name -> isSoil(name) && !used.contains(name))
                .toList();
        if (!left.isEmpty()) {
            all.add("Bands leave out what was fitted on soils that this study does not have: " + String.join(", ", left)
                    + ".");
        }
        return all;
    }
}
