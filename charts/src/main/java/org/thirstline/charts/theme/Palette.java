package org.thirstline.charts.theme;

import java.awt.Color;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.thirstline.model.climate.SeasonClass;

/**
 * Colours by what they mean; no colour has two meanings. Tints are opaque, so that every colour of a chart can be exchanged for its
 * counterpart in the other palette. Immutable and thread-safe.
 *
 * @param background behind everything
 * @param ink titles and fitted lines
 * @param muted subtitles, axis text
 * @param axis axis lines
 * @param grid grid lines
 * @param dry dry seasons and what drought took
 * @param dryTint the same, lost instead of harvested
 * @param middle middle seasons
 * @param middleTint the same, lost
 * @param wet wet seasons and water
 * @param wetTint the same, lost
 * @param crop leaf area, dry matter
 * @param cropTint area under it
 * @param band where the line may run
 * @param wideBand where a single year may fall
 * @param stress days on which the stand is short of water
 * @param soil water in soil from wilting point to field capacity and over, in steps
 */
public record Palette(
        Color background,
        Color ink,
        Color muted,
        Color axis,
        Color grid,
        Color dry,
        Color dryTint,
        Color middle,
        Color middleTint,
        Color wet,
        Color wetTint,
        Color crop,
        Color cropTint,
        Color band,
        Color wideBand,
        Color stress,
        List<Color> soil) {

    /** On white. */
    static final Palette LIGHT = new Palette(
            rgb(0xFFFFFF),
            rgb(0x1B2127),
            rgb(0x55606A),
            rgb(0x98A2AA),
            rgb(0xE4E8EB),
            rgb(0xB8480F),
            rgb(0xF6D9C8),
            rgb(0x8C9399),
            rgb(0xE6E9EC),
            rgb(0x0C4373),
            rgb(0xCFDEEC),
            rgb(0x2F8F5B),
            rgb(0xD3EBDD),
            rgb(0xCDD4DA),
            rgb(0xECEFF2),
            rgb(0xFBEADF),
            ramp(0xF2E3C9, 0xDDD9C2, 0xBCCBC4, 0x93B7C4, 0x669BBC, 0x3F7CAB, 0x215C92, 0x0B3D6C));

    /** On near-black. */
    static final Palette DARK = new Palette(
            rgb(0x12181D),
            rgb(0xF1F4F6),
            rgb(0xA9B4BD),
            rgb(0x6A757E),
            rgb(0x283139),
            rgb(0xFFA468),
            rgb(0x5A3823),
            rgb(0x8F979F),
            rgb(0x343C44),
            rgb(0x2D78BE),
            rgb(0x1B3A57),
            rgb(0x73E3BC),
            rgb(0x1C4030),
            rgb(0x46525C),
            rgb(0x222A31),
            rgb(0x3A2A20),
            ramp(0x5C4A2E, 0x5E5B47, 0x566A66, 0x4A7885, 0x4187A6, 0x4A9AC8, 0x6FB3E3, 0xA8D4F5));

    /** Copies the ramp. */
    public Palette {
        soil = List.copyOf(soil);
    }

    private static Color rgb(int value) {
        return new Color(value);
    }

    private static List<Color> ramp(int... values) {
        return java.util.Arrays.stream(values).mapToObj(Color::new).toList();
    }

    /**
     * Returns the colour of a season.
     *
     * @param seasonClass how wet it was; null where that is not known
     */
    public Color of(@Nullable SeasonClass seasonClass) {
        if (seasonClass == null) {
            return middle;
        }
        return switch (seasonClass) {
            case DRY -> dry;
            case MIDDLE -> middle;
            case WET -> wet;
        };
    }

    /**
     * Returns the colour of what such a season lost.
     *
     * @param seasonClass how wet it was; null where that is not known
     */
    public Color tintOf(@Nullable SeasonClass seasonClass) {
        if (seasonClass == null) {
            return middleTint;
        }
        return switch (seasonClass) {
            case DRY -> dryTint;
            case MIDDLE -> middleTint;
            case WET -> wetTint;
        };
    }

    /**
     * Returns the colour of soil water.
     *
     * @param availableShare 0 at wilting point, 1 at field capacity
     */
    public Color soil(double availableShare) {
        return soil.get(soilStep(availableShare));
    }

    /**
     * Returns the step of soil water.
     *
     * @param availableShare 0 at wilting point, 1 at field capacity
     */
    public int soilStep(double availableShare) {
        return (int) Math.max(0, Math.min(soil.size() - 1L, Math.floor(availableShare * (soil.size() - 1))));
    }

    /** Returns every colour in a fixed order: the same place has the same meaning in every palette. */
    public List<Color> all() {
        List<Color> all = new java.util.ArrayList<>(List.of(
                background,
                ink,
                muted,
                axis,
                grid,
                dry,
                dryTint,
                middle,
                middleTint,
                wet,
                wetTint,
                crop,
                cropTint,
                band,
                wideBand,
                stress));
        all.addAll(soil);
        return List.copyOf(all);
    }
}
