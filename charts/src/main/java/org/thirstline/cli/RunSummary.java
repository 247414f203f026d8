package org.thirstline.cli;

import java.io.PrintWriter;
import java.util.List;
import java.util.Locale;
import java.util.SortedMap;
import java.util.TreeMap;
import org.thirstline.calibration.study.StudyOutcome;
import org.thirstline.calibration.study.ZoneOutcome;
import org.thirstline.charts.UnitSystem;
import org.thirstline.model.climate.SeasonClass;
import org.thirstline.model.result.SeasonRecord;
import org.thirstline.model.result.SeasonVariable;

/** A run on one terminal screen: every year's harvest and drought penalty, the drought line of each zone, what to mind. */
final class RunSummary {

    private static final int ZONES_SHOWN = 3;

    private final StudyOutcome outcome;
    private final UnitSystem units;
    private final PrintWriter out;

    private RunSummary(StudyOutcome outcome, UnitSystem units, PrintWriter out) {
        this.outcome = outcome;
        this.units = units;
        this.out = out;
    }

    static void print(StudyOutcome outcome, UnitSystem units, PrintWriter out) {
        new RunSummary(outcome, units, out).print();
    }

    private void print() {
        out.println(outcome.study().title() + (outcome.invented() ? "  [invented data]" : ""));
        out.printf(
                "%s: harvested dry matter and drought penalty in %s, rainfall deficit of %s to %s in %s%n%n",
                outcome.study().crop().name(),
                units.yieldUnit(),
                outcome.study().season().from().toString().substring(2),
                outcome.study().season().until().toString().substring(2),
                units.waterUnit());
        List<ZoneOutcome> shown =
                outcome.zones().subList(0, Math.min(ZONES_SHOWN, outcome.zones().size()));
        printHeader(shown);
        SortedMap<Integer, Integer> years = new TreeMap<>();
        shown.forEach(
                zone -> zone.stand().seasons().forEach(season -> years.put(season.growthYear(), season.standAge())));
        years.forEach((year, age) -> printYear(year, age, shown));
        printMeans(shown);
        if (shown.size() < outcome.zones().size()) {
            out.println("More zones are in seasons.csv and the report.");
        }
        out.println();
        for (ZoneOutcome zone : outcome.zones()) {
            out.println(zone.zone().name() + ": " + zone.response().words().verdict());
            if (!zone.response().words().threshold().isEmpty()) {
                out.println("  " + zone.response().words().threshold());
            }
        }
        printBands();
        printNotices();
    }

    private void printBands() {
        List<String> bands = new BandWords(outcome, units).all();
        if (!bands.isEmpty()) {
            out.println();
            bands.forEach(out::println);
        }
    }

    private void printHeader(List<ZoneOutcome> zones) {
        out.printf("%-5s %4s %8s %-7s", "", "", "", "");
        zones.forEach(zone -> out.printf(" | %-18s", cut(zone.zone().name())));
        out.println();
        out.printf("%-5s %4s %8s %-7s", "year", "age", "deficit", "class");
        zones.forEach(zone -> out.printf(" | %9s %8s", "harvested", "penalty"));
        out.println();
    }

    private static String cut(String name) {
        return name.length() <= 18 ? name : name.substring(0, 17) + "…";
    }

    private void printYear(int year, int age, List<ZoneOutcome> zones) {
        double deficit = outcome.deficit().deficitMm(year).orElse(Double.NaN);
        SeasonClass kind = outcome.classes().get(year);
        out.printf("%-5d %4d %8s %-7s", year, age, water(deficit), kind == null ? "" : kind.word());
        for (ZoneOutcome zone : zones) {
            SeasonRecord season = zone.stand().seasons().stream()
                    .filter(candidate -> candidate.growthYear() == year)
                    .findFirst()
                    .orElse(null);
            if (season == null) {
                out.printf(" | %18s", "");
            } else if (season.isComplete()) {
                out.printf(
                        " | %9s %8s",
                        dryMatter(season.value(SeasonVariable.HARVESTED)),
                        dryMatter(season.value(SeasonVariable.DROUGHT_PENALTY)));
            } else {
                out.printf(" | %18s", "no yield");
            }
        }
        out.println();
    }

    private void printMeans(List<ZoneOutcome> zones) {
        out.printf("%-27s", "mean, age 3 on");
        for (ZoneOutcome zone : zones) {
            out.printf(" | %9s %8s", mean(zone, SeasonVariable.HARVESTED), mean(zone, SeasonVariable.DROUGHT_PENALTY));
        }
        out.println();
    }

    private String mean(ZoneOutcome zone, SeasonVariable variable) {
        return dryMatter(zone.responseSeasons().stream()
                .mapToDouble(season -> season.value(variable))
                .average()
                .orElse(Double.NaN));
    }

    private String dryMatter(double mgHa) {
        return Double.isNaN(mgHa) ? "-" : String.format(Locale.ROOT, "%.1f", units.dryMatter(mgHa) + 0.0);
    }

    private String water(double mm) {
        if (Double.isNaN(mm)) {
            return "-";
        }
        return String.format(Locale.ROOT, units == UnitSystem.SI ? "%+.0f" : "%+.1f", units.water(mm));
    }

    private void printNotices() {
        if (outcome.notices().isEmpty()) {
            return;
        }
        out.println();
        outcome.notices().forEach(notice -> out.println("note: " + notice));
    }
}
