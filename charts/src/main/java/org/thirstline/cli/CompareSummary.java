package org.thirstline.cli;

import java.io.PrintWriter;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Collectors;
import org.thirstline.calibration.study.ZoneOutcome;
import org.thirstline.charts.Numbers;
import org.thirstline.charts.UnitSystem;
import org.thirstline.model.climate.SeasonClass;
import org.thirstline.model.result.SeasonRecord;
import org.thirstline.model.result.SeasonVariable;

/** Compared years on one terminal screen, and in one sentence. Stateless and thread-safe. */
final class CompareSummary {

    private CompareSummary() {}

    static void print(ComparedYears compared, UnitSystem units, PrintWriter out) {
        out.println(compared.outcome().study().title() + (compared.outcome().invented() ? "  [invented data]" : ""));
        for (ZoneOutcome zone : compared.outcome().zones()) {
            out.println();
            out.println(zone.zone().name() + " (" + units.yieldUnit() + ", " + units.waterUnit() + ")");
            out.printf(
                    "%-5s %-7s %11s %11s %11s %9s %9s %10s%n",
                    "year", "class", "season rain", "deficit", "short days", "harvested", "penalty", "carried");
            for (SeasonRecord season : compared.seasons(zone)) {
                line(compared, season, units, out);
            }
            out.println(sentence(compared, zone, units));
        }
        if (compared.outcome().bands().isPresent()) {
            out.println();
            out.println(new BandWords(compared.outcome(), units).meaning());
        }
        compared.outcome().notices().forEach(notice -> out.println("note: " + notice));
    }

    private static void line(ComparedYears compared, SeasonRecord season, UnitSystem units, PrintWriter out) {
        SeasonClass kind = compared.outcome().classes().get(season.growthYear());
        int decimals = units == UnitSystem.SI ? 0 : 1;
        out.printf(
                "%-5d %-7s %11s %11s %11s %9s %9s %10s%s%n",
                season.growthYear(),
                kind == null ? "" : kind.word(),
                Numbers.fixed(units.water(season.value(SeasonVariable.SEASON_RAIN)), decimals),
                Numbers.fixed(units.water(season.value(SeasonVariable.RAIN_DEFICIT)), decimals),
                Numbers.fixed(season.value(SeasonVariable.STRESSED_DAYS), 0),
                dryMatter(season, SeasonVariable.HARVESTED, units),
                dryMatter(season, SeasonVariable.DROUGHT_PENALTY, units),
                dryMatter(season, SeasonVariable.PENALTY_CARRIED_OVER, units),
                season.isComplete() ? "" : "  " + season.status().words());
    }

    private static String dryMatter(SeasonRecord season, SeasonVariable variable, UnitSystem units) {
        return Numbers.fixed(units.dryMatter(season.value(variable)), 1);
    }

    /** Says how far the poorest and the best of the years lie apart, and on how much rain. */
    static String sentence(ComparedYears compared, ZoneOutcome zone, UnitSystem units) {
        List<SeasonRecord> whole = compared.seasons(zone).stream()
                .filter(SeasonRecord::isComplete)
                .sorted(Comparator.comparingDouble(season -> season.value(SeasonVariable.HARVESTED)))
                .toList();
        if (whole.size() < 2) {
            return "Fewer than two of "
                    + compared.years().stream().map(String::valueOf).collect(Collectors.joining(", "))
                    + " have a yield to compare.";
        }
        SeasonRecord low = whole.get(0);
        SeasonRecord high = whole.get(whole.size() - 1);
        double gap = high.value(SeasonVariable.HARVESTED) - low.value(SeasonVariable.HARVESTED);
        double drought = low.value(SeasonVariable.DROUGHT_PENALTY) - high.value(SeasonVariable.DROUGHT_PENALTY);
        String ages = low.standAge() < 3 || high.standAge() < 3 ? " One of them is a young stand." : "";
        return low.growthYear() + " yielded " + units.yieldText(gap) + " less than " + high.growthYear() + "; "
                + cause(gap, drought, units)
                + spread(compared, zone, low.growthYear(), high.growthYear(), units)
                + " Two years are no law." + ages;
    }

    private static String spread(ComparedYears compared, ZoneOutcome zone, int low, int high, UnitSystem units) {
        String spread = new BandWords(compared.outcome(), units).gap(zone, low, high);
        return spread.isEmpty() ? "" : " " + spread;
    }

    private static String cause(double gap, double drought, UnitSystem units) {
        String water = Numbers.fixed(units.dryMatter(drought), 1);
        String rest = Numbers.fixed(units.dryMatter(Math.abs(gap - drought)), 1);
        return drought <= gap
                ? "lack of water accounts for " + water + " of it, light, warmth, harvest and age for the other " + rest
                        + "."
                : "lack of water alone would have made it " + water + "; light, warmth, harvest and age made up " + rest
                        + " of that.";
    }
}
