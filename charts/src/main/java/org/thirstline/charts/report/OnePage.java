package org.thirstline.charts.report;

import java.util.List;
import org.thirstline.charts.theme.ChartFonts;

/** A few tables with a few words on one landscape page to print, as one HTML file that opens without a network. */
public final class OnePage {

    private static final String STYLE = "*{box-sizing:border-box}"
            + "body{margin:2rem auto;max-width:72rem;padding:0 1.5rem;color:#1b2127;background:#fff;"
            + "font:400 1rem/1.45 'IBM Plex Sans','Segoe UI',Arial,sans-serif}"
            + "h1{font-size:1.5rem;line-height:1.2;margin:0 0 .2rem}p{margin:.35rem 0}.subtitle{color:#55606a}"
            + ".wide{overflow-x:auto;margin:.8rem 0}"
            + "table{border-collapse:collapse;width:100%;font-size:.9rem;line-height:1.3}"
            + "caption{text-align:left;font-weight:600;padding:.3rem 0}"
            + "th,td{padding:.25rem .6rem .25rem 0;border-bottom:1px solid #e4e8eb;text-align:left;font-weight:400}"
            + "thead th{font-weight:600;border-bottom:2px solid #55606a;vertical-align:bottom}tbody th{font-weight:600}"
            + ".n{text-align:right;white-space:nowrap;font-variant-numeric:tabular-nums}"
            + ".unit{display:block;font-weight:400;color:#55606a}"
            + "@media print{@page{size:landscape;margin:10mm}body{margin:0;max-width:none;padding:0;font-size:8.5pt}"
            + "h1{font-size:13pt}table{font-size:7.5pt}th,td{padding:.12rem .5rem .12rem 0}.wide{overflow:visible;"
            + "break-inside:avoid;margin:.4rem 0}}";

    private OnePage() {}

    /**
     * Renders the page.
     *
     * @param title the title
     * @param subtitle one line under it
     * @param text paragraphs before the tables
     * @param tables the tables
     */
    public static String render(String title, String subtitle, List<String> text, List<ReportTable> tables) {
        Html html = new Html();
        html.raw("<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n")
                .raw("<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n")
                .raw("<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; "
                        + "style-src 'unsafe-inline'; font-src data:\">\n")
                .element("title", title)
                .raw("<style>\n" + ChartFonts.embeddedCss() + STYLE + "</style>\n</head>\n<body>\n<main>\n")
                .element("h1", title)
                .element("p class=\"subtitle\"", subtitle);
        text.forEach(paragraph -> html.element("p", paragraph));
        tables.forEach(html::table);
        return html.raw("</main>\n</body>\n</html>\n").toString();
    }
}
