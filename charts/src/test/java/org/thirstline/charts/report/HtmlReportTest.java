package org.thirstline.charts.report;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.util.Base64;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.thirstline.charts.ChartDocument;
import org.thirstline.charts.Samples;

class HtmlReportTest {

    private static final List<ChartDocument> CHARTS = Samples.forReport();
    private static final String HTML = HtmlReport.render(SampleReport.of(CHARTS));

    private static Stream<String> all(String pattern) {
        Matcher matcher = Pattern.compile(pattern).matcher(HTML);
        return matcher.results().map(result -> result.group(1));
    }

    @Test
    void nothingIsFetched() {
        String withoutNamespaces = HTML.replaceAll("xmlns(:xlink)?=\"[^\"]*\"", "");

        assertThat(withoutNamespaces).doesNotContain("http://", "https://", "<script src", "<link", "@import");
        assertThat(all("url\\(([^)]*)\\)")).allMatch(url -> url.startsWith("data:") || url.startsWith("#"));
    }

    /** A browser runs the script only if its digest is the one that the page's policy names. */
    @Test
    void oneScriptRunsAndThePolicyNamesIt() throws Exception {
        List<String> scripts = all("(?s)<script>(.*?)</script>").toList();

        assertThat(scripts).hasSize(1);
        byte[] digest =
                MessageDigest.getInstance("SHA-256").digest(scripts.get(0).getBytes(StandardCharsets.UTF_8));
        assertThat(HTML).contains("script-src 'sha256-" + Base64.getEncoder().encodeToString(digest) + "'");
    }

    @Test
    void partsOfChartsSayTheirValues() {
        assertThat(all("<rect[^>]*><title>([^<]*)</title>"))
                .anyMatch(text ->
                        text.matches("2006 \\(age 13, [a-z]+\\): [0-9.]+ Mg/ha harvested, [0-9.]+ lost to drought"));
    }

    @Test
    void firstLinkLeadsPastTheHead() {
        assertThat(HTML).containsSubsequence("<body>", "href=\"#content\"", "<header>", "<main id=\"content\"");
    }

    @Test
    void idsAreUniqueAndEveryReferenceIsThere() {
        List<String> ids = all(" id=\"([^\"]*)\"").toList();

        assertThat(ids).doesNotHaveDuplicates();
        assertThat(all("(?:href=\"|url\\()#([^\")]*)")).isNotEmpty().allMatch(ids::contains);
        assertThat(all("aria-labelledby=\"([^\"]*)\"").flatMap(both -> Stream.of(both.split(" "))))
                .hasSize(2 * CHARTS.size())
                .allMatch(ids::contains);
    }

    @Test
    void textIsEscaped() {
        assertThat(HTML)
                .contains("<h1>Larkmoor &amp; &quot;East&quot; field</h1>", "East field &lt;north&gt;")
                .doesNotContain("<north>");
    }

    @Test
    void chartsTakeTheColoursOfThePage() {
        assertThat(HTML).doesNotContain("rgb(", "=\"white\"", "=\"black\" stroke=\"none\"");
        assertThat(all("var\\(--(c[0-9]+)\\)").distinct())
                .isNotEmpty()
                .allMatch(name -> HTML.contains("--" + name + ":#"));
    }

    @Test
    void cautionsAreInEveryReport() {
        assertThat(HTML)
                .contains(
                        "20 % moisture",
                        "invasive", "small plots", "not a forecast", "Local codes", "licensed practice")
                .contains("Invented data.", "Winter kill is likely");
    }

    @Test
    void sameModelGivesTheSameBytes() {
        assertThat(HtmlReport.render(SampleReport.of(Samples.forReport()))).isEqualTo(HTML);
    }

    @Test
    void rowsOfAnotherLengthAreRefused() {
        assertThatThrownBy(() -> new ReportTable(
                        "Rain", List.of(ReportTable.Column.text("Month")), List.of(List.of("May", "60"))))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("2 cells for 1 columns");
    }
}
