package org.thirstline.charts.theme;

/**
 * Sizes of type and space that belong together. Immutable and thread-safe.
 *
 * @param titlePx finding
 * @param subtitlePx what the data are
 * @param labelPx direct labels and axis titles
 * @param smallPx tick labels
 * @param captionPx source and assumptions
 * @param marginPx space round the chart
 * @param strokePx width of a data line
 */
public record TypeScale(
        float titlePx,
        float subtitlePx,
        float labelPx,
        float smallPx,
        float captionPx,
        float marginPx,
        float strokePx) {}
