package org.thirstline.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.thirstline.calibration.study.StudyOutcome;
import org.thirstline.calibration.study.ZoneOutcome;
import org.thirstline.charts.AgeCurveChart;
import org.thirstline.charts.AgeCurveView;
import org.thirstline.charts.ChartDocument;
import org.thirstline.charts.ChartStyle;
import org.thirstline.charts.slides.Slide;
import org.thirstline.charts.theme.ChartSize;
import org.thirstline.charts.theme.ChartTheme;
import org.thirstline.io.study.Study;
import org.thirstline.model.result.SeasonRecord;

/** What the slides of a study show and what their speaker reads. Confined to one run. */
final class SlideContent {

    private final StudyOutcome outcome;
    private final List<ZoneOutcome> zones;
    private final Optional<SlidesCommand.PlotAnswer> plots;
    private final CommonOptions options;
    private final SlideNotes notes;
    private final List<Slide> slides = new ArrayList<>();
    private final List<ZoneCharts.Recipe> charts = new ArrayList<>();

    SlideContent(
            StudyOutcome outcome,
            List<ZoneOutcome> zones,
            Optional<SlidesCommand.PlotAnswer> plots,
            CommonOptions options) {
        this.outcome = outcome;
        this.zones = zones;
        this.plots = plots;
        this.options = options;
        this.notes = new SlideNotes(outcome, options.units);
        slides.add(opening());
        slides.add(question());
        charts("drought-response-", notes::response);
        charts("dry-against-wet-", notes::dryAgainstWet);
        age();
        charts("ledger-", notes::ledger);
        field();
        slides.add(method());
        slides.add(caveats());
    }

    List<Slide> slides() {
        return List.copyOf(slides);
    }

    /** Returns the charts on the slides. */
    List<ZoneCharts.Recipe> charts() {
        return List.copyOf(charts);
    }

    private boolean invented() {
        return outcome.invented()
                || plots.map(SlidesCommand.PlotAnswer::invented).orElse(false);
    }

    private Slide opening() {
        Study study = outcome.study();
        List<String> lines = new ArrayList<>();
        lines.add(String.format(
                Locale.ROOT,
                "%s at %s, growth years %d to %d",
                capital(study.crop().name()),
                study.site().name(),
                seasons().get(0).growthYear(),
                seasons().get(seasons().size() - 1).growthYear()));
        lines.add(
                invented()
                        ? "Invented data: made up to show how the program works; they describe no real place."
                        : "Simulated by Thirstline from daily weather; simulations are not observations.");
        return new Slide.Opening(study.title(), lines, ReportFrame.subtitle(outcome));
    }

    private static String capital(String text) {
        return text.isEmpty() ? text : text.substring(0, 1).toUpperCase(Locale.ROOT) + text.substring(1);
    }

    private List<SeasonRecord> seasons() {
        return outcome.zones().get(0).stand().seasons();
    }

    private Slide question() {
        Study study = outcome.study();
        List<String> lines = new ArrayList<>();
        lines.add(String.format(
                Locale.ROOT,
                "%s, %.1f°, %.0f m: %s, planted in %d, %d growth years",
                study.site().name(),
                study.site().latitudeDeg(),
                study.site().elevationM(),
                study.crop().name(),
                study.stand().plantingDate().getYear(),
                seasons().size()));
        zones.forEach(zone -> lines.add(capital(notes.soil(zone))));
        lines.add(
                "Each year simulated twice on its own weather: as it was, and never short of water. What lies between the two is"
                        + " the loss to drought.");
        return new Slide.Question("What did missing rain cost this stand?", lines, notes.question(zones));
    }

    /** What a speaker says about a chart of a zone. */
    @FunctionalInterface
    private interface Speech {
        String of(ZoneOutcome zone, ChartDocument chart);
    }

    private void charts(String kind, Speech speech) {
        for (ZoneOutcome zone : zones) {
            String id = kind + ZoneCharts.slug(zone.zone().name());
            new ZoneCharts(outcome, zone)
                    .recipes().stream()
                            .filter(recipe -> recipe.id().equals(id))
                            .findFirst()
                            .ifPresent(recipe -> {
                                ChartDocument chart = draw(recipe, outcome.invented());
                                picture(recipe, speech.of(zone, chart), outcome.invented());
                            });
        }
    }

    private void picture(ZoneCharts.Recipe recipe, String speech, boolean invented) {
        charts.add(recipe);
        slides.add(new Slide.Picture((theme, size) -> draw(recipe, theme, size, invented), speech));
    }

    private ChartDocument draw(ZoneCharts.Recipe recipe, boolean invented) {
        return draw(recipe, ChartTheme.LIGHT, ChartSize.SLIDE_BODY, invented);
    }

    private ChartDocument draw(ZoneCharts.Recipe recipe, ChartTheme theme, ChartSize size, boolean invented) {
        ChartStyle style = ChartFiles.slide(outcome, options);
        return recipe.recipe().apply(new ChartStyle(theme, size, style.units(), style.source(), invented));
    }

    private void age() {
        if (plots.isEmpty()) {
            charts("stand-age-", notes::standAge);
            return;
        }
        SlidesCommand.PlotAnswer answer = plots.get();
        AgeCurveView curves = AgeCurveView.of(answer.study(), outcome.classes());
        ZoneCharts.Recipe recipe = new ZoneCharts.Recipe("yield-by-age", style -> AgeCurveChart.of(curves, style));
        ChartDocument chart = draw(recipe, invented());
        picture(recipe, notes.plots(answer.study(), chart), invented());
    }

    private void field() {
        FieldCharts.recipes(outcome).stream()
                .filter(recipe -> recipe.id().equals("zones"))
                .forEach(
                        recipe -> picture(recipe, notes.numbers(draw(recipe, outcome.invented())), outcome.invented()));
    }

    private Slide method() {
        String parameters = outcome.bands()
                .map(bands -> String.format(
                        Locale.ROOT,
                        "Parameters: fitted to plots, their doubt alone in the whiskers (5 to 95 %% of %d draws), or from"
                                + " published ranges",
                        bands.draws().size()))
                .orElse("Parameters: published ranges with sources, listed in the report");
        return new Slide.Text(
                "How it was worked out",
                List.of(
                        "Day by day: light caught by the canopy, what warmth and age allow, water in the layers of the soil",
                        "Loss to drought: yield of the same stand with all the water it could use, minus the yield as simulated",
                        "Rainfall deficit: normal rain of the growing season minus the rain of the year",
                        "Line: least squares over complete years of the full-grown stand, with 95 % bands, or none where the years"
                                + " cannot tell",
                        parameters),
                notes.method());
    }

    private Slide caveats() {
        List<String> lines = new ArrayList<>();
        if (invented()) {
            lines.add("Invented data: this describes no real place");
        }
        lines.add("A simulation of past weather, not a forecast; not fitted to this field unless the study says so");
        lines.add("Small plots often yield more than whole fields");
        lines.add("Nutrients, pests, weeds and lodging are not simulated");
        lines.add("Bales above about 20 % moisture can heat and catch fire; tall grasses can spread");
        lines.add("Local codes and licensed practice come first");
        return new Slide.Text("What to mind", lines, notes.caveats());
    }
}
