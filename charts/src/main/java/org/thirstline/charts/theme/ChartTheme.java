package org.thirstline.charts.theme;

/** Light or dark. */
public enum ChartTheme {
    /** Dark ink on white: reports, print, most rooms. */
    LIGHT(Palette.LIGHT),
    /** Light ink on near-black: dark rooms and screens. */
    DARK(Palette.DARK);

    private final Palette palette;

    ChartTheme(Palette palette) {
        this.palette = palette;
    }

    /** Returns the colours. */
    public Palette palette() {
        return palette;
    }
}
