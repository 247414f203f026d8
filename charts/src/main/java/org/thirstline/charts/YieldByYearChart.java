package org.thirstline.charts;

import java.awt.Font;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.thirstline.calibration.bands.Band;
import org.thirstline.charts.theme.Palette;
import org.thirstline.model.climate.SeasonClass;
import org.thirstline.model.result.SeasonRecord;
import org.thirstline.model.result.SeasonStatus;
import org.thirstline.model.result.SeasonVariable;
import org.thirstline.model.result.StandResult;

/** Harvested dry matter by growth year, and on top of it what drought took. */
public final class YieldByYearChart {

    /** Losses below this show as nothing lost [Mg/ha]: half of what the last printed digit can tell. */
    private static final double NOTHING_MG_HA = 0.05;

    private static final double BAR_SHARE = 0.72;

    private final YieldByYear input;
    private final ChartStyle style;
    private final UnitSystem units;
    private final Palette palette;
    private final List<SeasonRecord> complete;

    private YieldByYearChart(YieldByYear input, ChartStyle style) {
        this.input = input;
        this.style = style;
        this.units = style.units();
        this.palette = style.theme().palette();
        this.complete = input.complete();
    }

    /**
     * Builds the chart.
     *
     * @param input the seasons of a zone
     * @param style look, units, source
     */
    public static ChartDocument of(YieldByYear input, ChartStyle style) {
        return new YieldByYearChart(input, style).document();
    }

    /**
     * Builds the chart of a result as it is, without zone and season classes.
     *
     * @param result what a stand did
     * @param style look, units, source
     */
    public static ChartDocument of(StandResult result, ChartStyle style) {
        return of(new YieldByYear("", result.seasons(), Map.of()), style);
    }

    private ChartDocument document() {
        String subtitle = Subtitles.sentence(
                input.zone(),
                "harvested dry matter by growth year, and what the same stand would have yielded with unlimited water");
        String description = title() + ". " + subtitle + ". "
                + complete.stream().map(this::spoken).collect(Collectors.joining("; "));
        var words = new ChartDocument.Words("yield-by-year", title(), subtitle, note(), description);
        return new ChartDocument(words, style, key(), this::table, this::paint);
    }

    private String spoken(SeasonRecord season) {
        return season.growthYear() + ": " + units.yieldText(season.value(SeasonVariable.HARVESTED)) + " harvested, "
                + units.yieldText(YieldByYear.lost(season)) + " lost to drought";
    }

    private String title() {
        if (complete.isEmpty()) {
            return "No growth year with a comparable yield yet";
        }
        double mean = complete.stream().mapToDouble(YieldByYear::lost).average().orElse(0.0);
        SeasonRecord worst = worst();
        if (complete.size() == 1) {
            return worst.growthYear() + ": " + units.yieldText(worst.value(SeasonVariable.HARVESTED)) + " harvested, "
                    + units.yieldText(YieldByYear.lost(worst)) + " lost to drought";
        }
        if (YieldByYear.lost(worst) < NOTHING_MG_HA) {
            double harvest = complete.stream()
                    .mapToDouble(season -> season.value(SeasonVariable.HARVESTED))
                    .average()
                    .orElse(0.0);
            return "Drought took nothing in " + complete.size() + " years; the mean harvest was "
                    + units.yieldText(harvest);
        }
        String average = "Drought took " + units.yieldText(mean) + " in an average year";
        String most = units.yieldText(YieldByYear.lost(worst));
        return most.equals(units.yieldText(mean))
                ? average
                : average + " and " + Numbers.fixed(units.dryMatter(YieldByYear.lost(worst)), 1) + " in "
                        + worst.growthYear();
    }

    private SeasonRecord worst() {
        return complete.stream()
                .max(Comparator.comparingDouble(YieldByYear::lost))
                .orElseThrow();
    }

    private String note() {
        Map<SeasonStatus, List<String>> years = new EnumMap<>(SeasonStatus.class);
        for (SeasonRecord season : input.seasons()) {
            if (!complete.contains(season)) {
                years.computeIfAbsent(season.status(), status -> new ArrayList<>())
                        .add(String.valueOf(season.growthYear()));
            }
        }
        String left = years.entrySet().stream()
                .map(entry -> String.join(", ", entry.getValue()) + " ("
                        + entry.getKey().words() + ")")
                .collect(Collectors.joining("; "));
        String without = left.isEmpty() ? "" : "Without a comparable yield: " + left + ".";
        String bands =
                input.bands().isEmpty() ? "" : Whiskers.note(input.bands().values());
        return (without + " " + bands).strip();
    }

    private List<KeyEntry> key() {
        Set<SeasonClass> shown = EnumSet.noneOf(SeasonClass.class);
        complete.forEach(season -> {
            SeasonClass seasonClass = input.classes().get(season.growthYear());
            if (seasonClass != null) {
                shown.add(seasonClass);
            }
        });
        List<KeyEntry> entries = new ArrayList<>();
        if (shown.isEmpty()) {
            entries.add(KeyEntry.block(palette.middle(), "harvested"));
        }
        for (SeasonClass seasonClass : shown) {
            entries.add(KeyEntry.block(palette.of(seasonClass), "harvested, " + seasonClass.word() + " season"));
        }
        entries.add(KeyEntry.ghost(palette.muted(), palette.middleTint(), "lost to drought"));
        if (!input.bands().isEmpty()) {
            entries.add(Whiskers.key(palette));
        }
        if (complete.size() < input.seasons().size()) {
            entries.add(KeyEntry.hatch(palette.axis(), "no comparable yield"));
        }
        return entries;
    }

    private DataTable table() {
        List<String> columns = new ArrayList<>(List.of(
                "growth_year",
                "stand_age",
                "season_class",
                "status",
                "harvested_mg_ha",
                "drought_penalty_mg_ha",
                "potential_harvested_mg_ha"));
        if (!input.bands().isEmpty()) {
            columns.addAll(Whiskers.columns("harvested", "mg_ha"));
        }
        DataTable.Builder table = new DataTable.Builder(columns.toArray(String[]::new));
        for (SeasonRecord season : input.seasons()) {
            SeasonClass seasonClass = input.classes().get(season.growthYear());
            List<@Nullable Object> cells = new ArrayList<>(Arrays.asList(
                    season.growthYear(),
                    season.standAge(),
                    seasonClass == null ? null : seasonClass.word(),
                    season.status().words(),
                    season.value(SeasonVariable.HARVESTED),
                    season.value(SeasonVariable.DROUGHT_PENALTY),
                    season.value(SeasonVariable.POTENTIAL_HARVESTED)));
            if (!input.bands().isEmpty()) {
                cells.addAll(Whiskers.cells(input.bands().get(season.growthYear())));
            }
            table.row(cells.toArray());
        }
        return table.build();
    }

    private void paint(Canvas canvas, Rectangle2D area) {
        if (input.seasons().isEmpty()) {
            return;
        }
        int first = input.seasons().get(0).growthYear();
        int last = input.seasons().get(input.seasons().size() - 1).growthYear();
        double top = complete.stream().mapToDouble(input::top).max().orElse(1.0);
        double high = Math.max(units.dryMatter(top), 0.1);
        double step = Numbers.niceStep(high, 5);
        Font font = canvas.small();
        double meanWidth = style.size().isThumbnail()
                ? 0
                : Canvas.width("mean", font) + canvas.type().labelPx();
        Frame frame = new Frame.Builder(canvas, area)
                .y(0, headroom(high, step), step)
                .x(first - 0.6, last + 0.6, yearStep(canvas, area.getWidth() - meanWidth, last - first + 1))
                .titles("", units.yieldUnit() + " dry matter")
                .right(meanWidth)
                .draw();
        double barWidth = Math.min(BAR_SHARE * (frame.x(1) - frame.x(0)), 90.0);
        for (SeasonRecord season : input.seasons()) {
            bar(frame, season, barWidth);
        }
        mean(frame);
        labels(frame, barWidth);
    }

    /** Leaves room for a label over the tallest bar. */
    static double headroom(double high, double step) {
        return Math.max(high * 1.08, step * 1.02);
    }

    static double yearStep(Canvas canvas, double width, int years) {
        double needed = 1.45 * Canvas.width("2000", canvas.small());
        int parts = (int) Math.max(1, Math.floor(width / needed));
        return Math.max(1.0, Numbers.niceStep(years, parts));
    }

    private void bar(Frame frame, SeasonRecord season, double width) {
        double left = frame.x(season.growthYear()) - width / 2;
        double ground = frame.y(0);
        Canvas canvas = frame.canvas();
        if (!complete.contains(season)) {
            Rectangle2D slot = new Rectangle2D.Double(
                    left, frame.area().getY() + frame.area().getHeight() * 0.12, width, 0);
            slot.setRect(left, slot.getY(), width, ground - slot.getY());
            canvas.hatch(slot, palette.axis());
            canvas.tip(slot, season.growthYear() + ": " + season.status().words());
            return;
        }
        @Nullable SeasonClass seasonClass = input.classes().get(season.growthYear());
        double harvested = season.value(SeasonVariable.HARVESTED);
        double top = frame.y(units.dryMatter(harvested));
        canvas.fill(new Rectangle2D.Double(left, top, width, ground - top), palette.of(seasonClass));
        double lost = YieldByYear.lost(season);
        if (lost >= NOTHING_MG_HA) {
            double ghostTop = frame.y(units.dryMatter(harvested + lost));
            Rectangle2D ghost = new Rectangle2D.Double(left + 0.6, ghostTop, width - 1.2, top - ghostTop);
            canvas.fill(ghost, palette.tintOf(seasonClass));
            canvas.outline(ghost, palette.of(seasonClass), 1.2);
        }
        double whole = frame.y(units.dryMatter(harvested + lost));
        String kind = seasonClass == null ? "" : ", " + seasonClass.word();
        canvas.tip(
                new Rectangle2D.Double(left, whole, width, ground - whole),
                season.growthYear() + " (age " + season.standAge() + kind + "): " + units.yieldText(harvested)
                        + " harvested" + possible(season) + ", " + Numbers.fixed(units.dryMatter(lost), 1)
                        + " lost to drought");
        if (!style.size().isThumbnail()) {
            Whiskers.draw(frame, left + width / 2, input.bands().get(season.growthYear()), units);
        }
    }

    private String possible(SeasonRecord season) {
        Band band = input.bands().get(season.growthYear());
        return band == null || !band.isKnown()
                ? ""
                : " (draws " + Numbers.fixed(units.dryMatter(band.low()), 1) + " to "
                        + Numbers.fixed(units.dryMatter(band.high()), 1) + ")";
    }

    private void mean(Frame frame) {
        if (complete.size() < 2 || style.size().isThumbnail()) {
            return;
        }
        double mean = complete.stream()
                .mapToDouble(season -> season.value(SeasonVariable.HARVESTED))
                .average()
                .orElse(0.0);
        Canvas canvas = frame.canvas();
        double y = frame.y(units.dryMatter(mean));
        double right = frame.area().getMaxX();
        canvas.dashed(new Line2D.Double(frame.area().getX(), y, right, y), palette.ink(), 1.3);
        double size = canvas.type().smallPx();
        double x = right + 0.35 * size;
        canvas.text("mean", x, y - 0.15 * size, canvas.small(), palette.muted(), Align.LEFT);
        String number = Numbers.fixed(units.dryMatter(mean), 1);
        canvas.text(number, x, y + 1.0 * size, canvas.strongSmall(), palette.ink(), Align.LEFT);
    }

    /** Writes what drought took over every bar if there is room, else over the worst. */
    private void labels(Frame frame, double barWidth) {
        if (complete.isEmpty() || YieldByYear.lost(worst()) < NOTHING_MG_HA) {
            return;
        }
        Font font = frame.canvas().strongSmall();
        double slot = barWidth / BAR_SHARE;
        String widest = "\u2212" + Numbers.fixed(units.dryMatter(YieldByYear.lost(worst())), 1);
        boolean all = !style.size().isThumbnail() && slot > 1.12 * Canvas.width(widest, font);
        for (SeasonRecord season : all ? complete : List.of(worst())) {
            double lost = YieldByYear.lost(season);
            if (lost >= NOTHING_MG_HA) {
                double y = frame.y(units.dryMatter(
                        style.size().isThumbnail()
                                ? season.value(SeasonVariable.HARVESTED) + lost
                                : input.top(season)));
                String text = "\u2212" + Numbers.fixed(units.dryMatter(lost), 1);
                double half = Canvas.width(text, font) / 2;
                double x = Math.max(frame.area().getX() + half, frame.x(season.growthYear()));
                frame.canvas()
                        .text(
                                text,
                                Math.min(x, frame.area().getMaxX() - half),
                                y - 0.35 * font.getSize2D(),
                                font,
                                palette.ink(),
                                Align.CENTER);
            }
        }
    }
}
