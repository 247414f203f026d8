package org.thirstline.charts.output;

/** What a chart can be written as. */
public enum ChartFormat {
    /** Vector, text as text, font inside. */
    SVG(".svg"),
    /** Pixels, one for each of the size. */
    PNG(".png"),
    /** Pixels, twice as many each way. */
    PNG_2X("@2x.png"),
    /** Vector for print, font inside. */
    PDF(".pdf"),
    /** The numbers behind the chart. */
    CSV(".csv");

    private final String suffix;

    ChartFormat(String suffix) {
        this.suffix = suffix;
    }

    /** Returns the end of the file name. */
    public String suffix() {
        return suffix;
    }
}
