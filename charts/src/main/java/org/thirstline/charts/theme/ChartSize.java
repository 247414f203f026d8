package org.thirstline.charts.theme;

/** Named sizes, each with the type that is read at its distance. */
public enum ChartSize {
    /** A whole 16:9 slide. */
    SLIDE("slide", 1600, 900, new TypeScale(40, 23, 20, 18, 16, 52, 3.2f), 2),
    /** Half a slide, beside text or another chart. */
    HALF_SLIDE("half-slide", 800, 900, new TypeScale(31, 20, 18, 16, 14, 36, 2.8f), 3),
    /** A wide slide under its own title, which the chart then does without. */
    SLIDE_BODY("slide-body", 1600, 686, new TypeScale(40, 25, 22, 20, 16, 52, 3.4f), 0),
    /** A slide of 4:3, or a small content area, under its own title. */
    SLIDE_BODY_NARROW("slide-body-narrow", 1060, 640, new TypeScale(31, 20, 18, 16, 14, 24, 2.8f), 0),
    /** A column of a report or paper. */
    COLUMN("column", 760, 560, new TypeScale(23, 15.5f, 14, 13, 12, 20, 2.2f), 2),
    /** The width of a printed page. */
    PAGE("page", 1160, 780, new TypeScale(28, 18, 16, 14.5f, 13, 30, 2.6f), 2),
    /** An index of charts: finding and shape only. */
    THUMBNAIL("thumbnail", 480, 270, new TypeScale(18, 13, 12, 11.5f, 11, 14, 1.8f), 2);

    private final String words;
    private final int widthPx;
    private final int heightPx;
    private final TypeScale type;
    private final int titleLines;

    ChartSize(String words, int widthPx, int heightPx, TypeScale type, int titleLines) {
        this.words = words;
        this.widthPx = widthPx;
        this.heightPx = heightPx;
        this.type = type;
        this.titleLines = titleLines;
    }

    /** Returns the name for options and files. */
    public String words() {
        return words;
    }

    /** Returns the width. */
    public int widthPx() {
        return widthPx;
    }

    /** Returns the height. */
    public int heightPx() {
        return heightPx;
    }

    /** Returns the type. */
    public TypeScale type() {
        return type;
    }

    /** Returns the lines a title may take; none where the title stands outside the chart. */
    public int titleLines() {
        return titleLines;
    }

    /** Returns whether the chart shows its own title. */
    public boolean hasTitle() {
        return titleLines > 0;
    }

    /** Returns whether only finding and shape fit. */
    public boolean isThumbnail() {
        return this == THUMBNAIL;
    }
}
