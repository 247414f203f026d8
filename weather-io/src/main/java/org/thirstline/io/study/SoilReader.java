package org.thirstline.io.study;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Consumer;
import org.thirstline.io.text.InputFileError;
import org.thirstline.io.text.Section;
import org.thirstline.model.error.Check;
import org.thirstline.model.soil.SoilLayer;
import org.thirstline.model.soil.SoilProfile;
import org.thirstline.model.soil.TextureEstimate;

/** Reads a soil in any of its three forms and fills what it leaves open. Confined to one reading. */
final class SoilReader {

    /** Water above field capacity drains in two to three days: common practice, no source. */
    static final double DEFAULT_DRAINAGE_RATE = 0.7;

    /** Drainable pores of a soil of unknown texture [m³ m⁻³]: judgement. */
    static final double DEFAULT_DRAINABLE_PORES = 0.15;

    /** REW over TEW; the middles of FAO-56 Table 19 give 0.39 to 0.52. */
    static final double DEFAULT_READILY_EVAPORABLE_SHARE = 0.45;

    /** Thickest layer of the simulation [m]; a thicker one drains through several reservoirs of this size. */
    private static final double MAX_RESERVOIR_M = 0.30;

    private static final String DEFAULT_GROUP = "B";
    private static final String DEFAULT_COVER = "meadow";

    /** Sand and clay of the surface, where they are known [%]. */
    private record SurfaceTexture(double sandPct, double clayPct) {}

    private final Section soil;
    private final Consumer<Assumption> assumptions;
    private Optional<SurfaceTexture> surface = Optional.empty();

    private SoilReader(Section soil, Consumer<Assumption> assumptions) {
        this.soil = soil;
        this.assumptions = assumptions;
    }

    static SoilProfile read(Section soil, Consumer<Assumption> assumptions) {
        return new SoilReader(soil, assumptions).read();
    }

    private SoilProfile read() {
        List<SoilLayer> layers = layers();
        double evaporable =
                soil.measure("readily_evaporable_water").orElseGet(() -> readilyEvaporableMm(layers.get(0)));
        double curveNumber = curveNumber();
        double drainage = soil.measure("drainage_limit").orElse(Double.POSITIVE_INFINITY);
        double waterTable = soil.measure("water_table_depth").orElse(Double.POSITIVE_INFINITY);
        SoilProfile profile = soil.build(() -> new SoilProfile(layers, evaporable, curveNumber, drainage, waterTable));
        return calibrated(profile);
    }

    private SoilProfile calibrated(SoilProfile profile) {
        OptionalDouble water = soil.number("available_water_factor");
        OptionalDouble depth = soil.number("depth_factor");
        SoilProfile held = water.isEmpty()
                ? profile
                : soil.build("available_water_factor", () -> profile.withAvailableWaterTimes(water.getAsDouble()));
        return depth.isEmpty() ? held : soil.build("depth_factor", () -> held.withDepthTimes(depth.getAsDouble()));
    }

    private List<SoilLayer> layers() {
        if (soil.has("layers")) {
            List<SoilLayer> layers = new ArrayList<>();
            for (Section layer : soil.sections("layers")) {
                layers.add(layer(layer, layers.isEmpty()));
            }
            return layers;
        }
        double depthM = soil.required("depth");
        return List.of(soil.has("texture") ? textureProfile(depthM) : availableWaterProfile(depthM));
    }

    private SoilLayer textureProfile(double depthM) {
        TextureEstimate texture = texture(soil, true).orElseThrow();
        String grounds = "m3/m3, from the texture (Saxton & Rawls 2006)";
        assumed(soil, "wilting_point", texture.wiltingPoint(), grounds);
        assumed(soil, "field_capacity", texture.fieldCapacity(), grounds);
        assumed(soil, "saturation", texture.saturation(), grounds);
        double rate = texture.drainageRatePerDay(MAX_RESERVOIR_M);
        assumed(soil, "drainage_rate", rate, "per day, from the texture's saturated conductivity");
        return soil.build("texture", () -> texture.layer(MAX_RESERVOIR_M)).withThickness(depthM);
    }

    private SoilLayer availableWaterProfile(double depthM) {
        double available = soil.required("available_water") / 1000.0;
        double wiltingPoint = nearestWiltingPoint(soil, available);
        double fieldCapacity = wiltingPoint + available;
        double saturation = defaultSaturation(soil, fieldCapacity);
        assumeDrainage(soil);
        return soil.build(
                "available_water",
                () -> new SoilLayer(depthM, wiltingPoint, fieldCapacity, saturation, DEFAULT_DRAINAGE_RATE));
    }

    private double nearestWiltingPoint(Section section, double available) {
        SoilClass nearest = SoilClass.nearest(available);
        double wiltingPoint = nearest.wiltingPoint();
        assume(
                section,
                "wilting_point",
                "%s m3/m3, of %s, the soil type of FAO-56 Table 19 with the nearest available water"
                        .formatted(rounded(wiltingPoint), nearest.words()));
        return wiltingPoint;
    }

    private SoilLayer availableWaterLayer(Section layer) {
        double thickness = layer.required("thickness");
        double available = layer.required("available_water") / 1000.0;
        double wiltingPoint = layer.measure("wilting_point").orElseGet(() -> nearestWiltingPoint(layer, available));
        double fieldCapacity = wiltingPoint + available;
        double saturation = layer.measure("saturation").orElseGet(() -> defaultSaturation(layer, fieldCapacity));
        double drainage = drainageRate(layer, Optional.empty(), thickness);
        return layer.build(() -> new SoilLayer(thickness, wiltingPoint, fieldCapacity, saturation, drainage));
    }

    private SoilLayer layer(Section layer, boolean top) {
        if (layer.has("available_water")) {
            return availableWaterLayer(layer);
        }
        Optional<TextureEstimate> texture = texture(layer, top);
        if (texture.isEmpty() && !layer.has("wilting_point") && !layer.has("field_capacity")) {
            throw layer.refusal(
                    "wilting_point",
                    InputFileError.MISSING_KEY,
                    "wilting_point",
                    "a layer needs wilting point and field capacity, its available water, or its texture",
                    "wilting_point: 15 %");
        }
        double thickness = layer.required("thickness");
        double wiltingPoint = orTexture(layer, "wilting_point", texture.map(TextureEstimate::wiltingPoint));
        double fieldCapacity = orTexture(layer, "field_capacity", texture.map(TextureEstimate::fieldCapacity));
        layer.build("field_capacity", () -> {
            Check.below("wilting point", wiltingPoint, "field capacity", fieldCapacity, "m3/m3");
            return fieldCapacity;
        });
        double saturation = layer.measure("saturation").orElseGet(() -> texture.map(TextureEstimate::saturation)
                .filter(porosity -> porosity > fieldCapacity)
                .map(porosity ->
                        assumed(layer, "saturation", porosity, "m3/m3, from the texture (Saxton & Rawls 2006)"))
                .orElseGet(() -> defaultSaturation(layer, fieldCapacity)));
        double drainage = drainageRate(layer, texture, thickness);
        return layer.build(() -> new SoilLayer(thickness, wiltingPoint, fieldCapacity, saturation, drainage));
    }

    private double drainageRate(Section layer, Optional<TextureEstimate> texture, double thicknessM) {
        OptionalDouble given = layer.measure("drainage_rate");
        if (given.isPresent()) {
            return given.getAsDouble();
        }
        if (texture.isPresent()) {
            double rate = texture.get().drainageRatePerDay(Math.min(thicknessM, MAX_RESERVOIR_M));
            return assumed(layer, "drainage_rate", rate, "per day, from the texture's saturated conductivity");
        }
        assumeDrainage(layer);
        return DEFAULT_DRAINAGE_RATE;
    }

    private double orTexture(Section layer, String key, Optional<Double> estimate) {
        OptionalDouble given = layer.measure(key);
        if (given.isEmpty() && estimate.isPresent()) {
            return assumed(layer, key, estimate.get(), "m3/m3, from the texture (Saxton & Rawls 2006)");
        }
        return layer.required(key);
    }

    private Optional<TextureEstimate> texture(Section section, boolean top) {
        return section.section("texture").map(texture -> {
            double sand = texture.required("sand");
            double clay = texture.required("clay");
            double organicMatter = texture.required("organic_matter");
            if (top) {
                surface = Optional.of(new SurfaceTexture(sand, clay));
            }
            return texture.build(() -> TextureEstimate.of(sand, clay, organicMatter));
        });
    }

    private double readilyEvaporableMm(SoilLayer top) {
        double evaporatingM = Math.min(top.thicknessM(), SoilProfile.EVAPORATING_DEPTH_M);
        double totalMm = 1000.0 * (top.fieldCapacity() - 0.5 * top.wiltingPoint()) * evaporatingM;
        if (surface.isPresent()) {
            double byTexture = Math.min(totalMm, readilyEvaporableMm(surface.get()));
            return assumed(
                    soil,
                    "readily_evaporable_water",
                    byTexture,
                    "mm, from the texture (Allen et al. 2005, from memory)");
        }
        double byShare = DEFAULT_READILY_EVAPORABLE_SHARE * totalMm;
        return assumed(
                soil,
                "readily_evaporable_water",
                byShare,
                "mm, 0.45 of the total evaporable water (about the middles of FAO-56 Table 19)");
    }

    /** Allen et al. 2005, J. Irrig. Drain. Eng. 131:2, by sand and clay [%]; from memory. */
    private static double readilyEvaporableMm(SurfaceTexture texture) {
        if (texture.sandPct() > 80.0) {
            return 20.0 - 0.15 * texture.sandPct();
        }
        return texture.clayPct() > 50.0 ? 11.0 - 0.06 * texture.clayPct() : 8.0 + 0.08 * texture.clayPct();
    }

    private double curveNumber() {
        OptionalDouble given = soil.number("curve_number");
        if (given.isPresent()) {
            return given.getAsDouble();
        }
        Optional<String> group = soil.choice("hydrologic_group");
        Optional<String> cover = soil.choice("cover");
        String usedGroup = group.orElse(DEFAULT_GROUP);
        String usedCover = cover.orElse(DEFAULT_COVER);
        double curveNumber = CurveNumbers.of(usedCover, usedGroup);
        if (group.isEmpty() || cover.isEmpty()) {
            assume(
                    soil,
                    "curve_number",
                    "%s, of %s on hydrologic group %s (NEH 630 Table 9-1)"
                            .formatted(rounded(curveNumber), usedCover, usedGroup));
        }
        return curveNumber;
    }

    private double defaultSaturation(Section section, double fieldCapacity) {
        double saturation = fieldCapacity + DEFAULT_DRAINABLE_PORES;
        return assumed(section, "saturation", saturation, "m3/m3, field capacity and 0.15 (judgement)");
    }

    private void assumeDrainage(Section section) {
        assumed(section, "drainage_rate", DEFAULT_DRAINAGE_RATE, "per day (drains in 2 to 3 days: common practice)");
    }

    private double assumed(Section section, String key, double value, String grounds) {
        assume(section, key, rounded(value) + " " + grounds);
        return value;
    }

    private void assume(Section section, String key, String text) {
        assumptions.accept(new Assumption(section.join(key), text));
    }

    private static String rounded(double value) {
        return BigDecimal.valueOf(value)
                .setScale(3, RoundingMode.HALF_UP)
                .stripTrailingZeros()
                .toPlainString();
    }
}
