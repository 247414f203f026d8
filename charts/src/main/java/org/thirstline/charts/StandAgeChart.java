package org.thirstline.charts;

import java.awt.Font;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.thirstline.charts.theme.Palette;
import org.thirstline.model.climate.SeasonClass;
import org.thirstline.model.result.SeasonRecord;
import org.thirstline.model.result.SeasonVariable;
import org.thirstline.model.result.YieldLedger;

/** Harvests by stand age, and what age alone would leave in average weather with unlimited water. */
public final class StandAgeChart {

    private static final double FULL_SHARE = 0.97;

    /** Shares under this say too little of what a mature stand would yield. */
    private static final double SMALLEST_SHARE = 0.05;

    private final StandAgeView view;
    private final ChartStyle style;
    private final UnitSystem units;
    private final Palette palette;
    private final List<SeasonRecord> complete;
    private final TreeMap<Integer, Double> ageShare = new TreeMap<>();

    private StandAgeChart(StandAgeView view, ChartStyle style) {
        this.view = view;
        this.style = style;
        this.units = style.units();
        this.palette = style.theme().palette();
        this.complete = new YieldByYear(view.zone(), view.seasons(), view.classes()).complete();
        for (SeasonRecord season : complete) {
            YieldLedger ledger = ledger(season);
            if (ledger != null && ledger.potentialMgHa() > 0.0) {
                ageShare.put(season.standAge(), 1.0 - ledger.ageMgHa() / ledger.potentialMgHa());
            }
        }
    }

    private @Nullable YieldLedger ledger(SeasonRecord season) {
        for (YieldLedger ledger : view.ledgers()) {
            if (ledger.growthYear() == season.growthYear()) {
                return ledger;
            }
        }
        return null;
    }

    /**
     * Builds the chart.
     *
     * @param view the seasons
     * @param style look, units, source
     */
    public static ChartDocument of(StandAgeView view, ChartStyle style) {
        return new StandAgeChart(view, style).document();
    }

    private ChartDocument document() {
        String subtitle = Subtitles.sentence(view.zone(), "harvested dry matter against the age of the stand");
        String description = title() + ". " + subtitle + ". "
                + complete.stream()
                        .map(season -> "year " + season.standAge() + ": "
                                + units.yieldText(season.value(SeasonVariable.HARVESTED)))
                        .collect(Collectors.joining("; "));
        var words = new ChartDocument.Words("stand-age", title(), subtitle, note(), description);
        return new ChartDocument(words, style, key(), this::table, this::paint);
    }

    private String note() {
        return "Age alone: the mean harvest with unlimited water of a mature stand, times what age leaves of the potential.";
    }

    private String title() {
        if (ageShare.isEmpty()) {
            return "No growth year with a comparable yield yet";
        }
        int first = ageShare.firstKey();
        String start = ageShare.firstEntry().getValue() >= FULL_SHARE
                ? "No loss to a young stand in the years shown"
                : "A stand of year " + first + " has "
                        + percent(ageShare.firstEntry().getValue()) + " of the potential" + full();
        double last = ageShare.lastEntry().getValue();
        boolean declined = last < FULL_SHARE && ageShare.values().stream().anyMatch(share -> share >= FULL_SHARE);
        return declined ? start + "; by year " + ageShare.lastKey() + " " + percent(last) + " is left" : start;
    }

    private String full() {
        return ageShare.entrySet().stream()
                .filter(entry -> entry.getValue() >= FULL_SHARE)
                .findFirst()
                .map(entry -> ", one of year " + entry.getKey() + " nearly all of it")
                .orElse("");
    }

    private static String percent(double share) {
        return Numbers.fixed(100.0 * share, 0) + " %";
    }

    private List<KeyEntry> key() {
        Set<SeasonClass> shown = EnumSet.noneOf(SeasonClass.class);
        complete.forEach(season -> {
            SeasonClass seasonClass = view.classes().get(season.growthYear());
            if (seasonClass != null) {
                shown.add(seasonClass);
            }
        });
        List<KeyEntry> entries = new ArrayList<>(Subtitles.marks(palette, shown));
        entries.add(KeyEntry.line(palette.crop(), "what age alone leaves"));
        return entries;
    }

    private DataTable table() {
        DataTable.Builder table =
                new DataTable.Builder("growth_year", "stand_age", "season_class", "harvested_mg_ha", "age_share");
        for (SeasonRecord season : view.seasons()) {
            SeasonClass seasonClass = view.classes().get(season.growthYear());
            table.row(
                    season.growthYear(),
                    season.standAge(),
                    seasonClass == null ? null : seasonClass.word(),
                    season.value(SeasonVariable.HARVESTED),
                    ageShare.get(season.standAge()));
        }
        return table.build();
    }

    /** Returns the mean harvest that a mature stand would have with unlimited water [Mg/ha]. */
    private double matureHarvest() {
        double sum = 0.0;
        int count = 0;
        for (SeasonRecord season : complete) {
            double share = ageShare.getOrDefault(season.standAge(), 0.0);
            if (share > SMALLEST_SHARE) {
                sum += season.value(SeasonVariable.POTENTIAL_HARVESTED) / share;
                count++;
            }
        }
        return count == 0 ? 0.0 : sum / count;
    }

    private void paint(Canvas canvas, Rectangle2D area) {
        if (view.seasons().isEmpty()) {
            return;
        }
        int first = view.seasons().get(0).standAge();
        int last = view.seasons().get(view.seasons().size() - 1).standAge();
        double mature = matureHarvest();
        double top = Math.max(0.1, units.dryMatter(mature));
        for (SeasonRecord season : complete) {
            top = Math.max(top, units.dryMatter(season.value(SeasonVariable.HARVESTED)));
        }
        double high = top * 1.12;
        Frame frame = new Frame.Builder(canvas, area)
                .x(first - 0.7, last + 0.7, YieldByYearChart.yearStep(canvas, area.getWidth(), last - first + 1))
                .y(0, high, Numbers.niceStep(high, 5))
                .titles(
                        style.size().isThumbnail() ? "" : "stand age (planting year = 1)",
                        units.yieldUnit() + " dry matter")
                .draw();
        double[] ages =
                ageShare.keySet().stream().mapToDouble(Integer::doubleValue).toArray();
        double[] shares = ageShare.values().stream()
                .mapToDouble(share -> units.dryMatter(share * mature))
                .toArray();
        canvas.outline(frame.path(ages, shares), palette.crop(), canvas.type().strokePx());
        points(canvas, frame, ages, shares);
    }

    private void points(Canvas canvas, Frame frame, double[] ages, double[] shares) {
        LabelPlacer placer = new LabelPlacer(canvas, frame.area());
        for (int i = 1; i < ages.length; i++) {
            placer.blockLine(frame.x(ages[i - 1]), frame.y(shares[i - 1]), frame.x(ages[i]), frame.y(shares[i]));
        }
        double radius = 0.4 * canvas.type().labelPx();
        for (SeasonRecord season : complete) {
            double y = frame.y(units.dryMatter(season.value(SeasonVariable.HARVESTED)));
            placer.block(frame.x(season.standAge()), y, 1.15 * radius);
        }
        Font font = canvas.small();
        for (SeasonRecord season : complete) {
            double x = frame.x(season.standAge());
            double y = frame.y(units.dryMatter(season.value(SeasonVariable.HARVESTED)));
            canvas.marker(x, y, radius, view.classes().get(season.growthYear()));
            canvas.tip(
                    x,
                    y,
                    radius,
                    season.growthYear() + ", age " + season.standAge() + ": "
                            + units.yieldText(season.value(SeasonVariable.HARVESTED)));
            if (!style.size().isThumbnail()) {
                String year = String.valueOf(season.growthYear());
                placer.place(year, x, y, 1.15 * radius + 3.0, font, palette.muted());
            }
        }
    }
}
