package org.thirstline.cli;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.thirstline.calibration.study.StudyOutcome;
import org.thirstline.calibration.study.ZoneOutcome;
import org.thirstline.calibration.trial.AgeStudy;
import org.thirstline.charts.ChartDocument;
import org.thirstline.charts.DataTable;
import org.thirstline.charts.UnitSystem;
import org.thirstline.charts.report.Cautions;
import org.thirstline.model.result.SeasonRecord;
import org.thirstline.model.result.SeasonVariable;

/** What the speaker of a slide reads: the finding, how sure it is, the numbers behind the picture. Immutable. */
final class SlideNotes {

    /** A picture with more numbers leaves them to the tables of the run. */
    private static final int MOST_ROWS = 70;

    private final StudyOutcome outcome;
    private final UnitSystem units;
    private final BandWords bands;

    SlideNotes(StudyOutcome outcome, UnitSystem units) {
        this.outcome = outcome;
        this.units = units;
        this.bands = new BandWords(outcome, units);
    }

    String soil(ZoneOutcome zone) {
        return String.format(
                Locale.ROOT,
                "%s: %.1f %s deep, holding %s of available water",
                zone.zone().name(),
                units.depth(zone.zone().soil().depthM()),
                units.depthUnit(),
                units.waterText(zone.zone().soil().availableWaterMm()));
    }

    String question(List<ZoneOutcome> zones) {
        List<String> lines = new ArrayList<>();
        lines.add(ReportFrame.subtitle(outcome));
        zones.forEach(zone -> lines.add(zone.zone().name() + ": "
                + zone.responseSeasons().size() + " years with a full-grown stand carry the answer."));
        lines.addAll(outcome.notices());
        return String.join("\n", lines);
    }

    String response(ZoneOutcome zone, ChartDocument chart) {
        var words = zone.response().words();
        return join(List.of(words.verdict(), words.detail(), bands.zone(zone)), chart);
    }

    String dryAgainstWet(ZoneOutcome zone, ChartDocument chart) {
        List<SeasonRecord> both = zone.responseSeasons().stream()
                .sorted(Comparator.comparingDouble(season -> -season.value(SeasonVariable.RAIN_DEFICIT)))
                .toList();
        List<SeasonRecord> ends = List.of(both.get(0), both.get(both.size() - 1));
        List<String> lines = new ArrayList<>();
        for (SeasonRecord season : ends) {
            lines.add(String.format(
                    Locale.ROOT,
                    "%d: rain of the season %s, %.0f days short of water, harvested %s, lost to drought %s.",
                    season.growthYear(),
                    units.waterText(season.value(SeasonVariable.SEASON_RAIN)),
                    season.value(SeasonVariable.STRESSED_DAYS),
                    units.yieldText(season.value(SeasonVariable.HARVESTED)),
                    units.yieldText(season.value(SeasonVariable.DROUGHT_PENALTY))));
        }
        List<SeasonRecord> byYield = ends.stream()
                .sorted(Comparator.comparingDouble(season -> season.value(SeasonVariable.HARVESTED)))
                .toList();
        lines.add(bands.gap(zone, byYield.get(0).growthYear(), byYield.get(1).growthYear()));
        return join(lines, chart);
    }

    String standAge(ZoneOutcome zone, ChartDocument chart) {
        return join(List.of(zone.zone().name() + ": simulated; the study names no plot yields."), chart);
    }

    String plots(AgeStudy study, ChartDocument chart) {
        List<String> lines = new ArrayList<>();
        lines.add(study.findings().sentence());
        lines.addAll(new AgeWording(study, units).sentences());
        return join(lines, chart);
    }

    String ledger(ZoneOutcome zone, ChartDocument chart) {
        return join(List.of(zone.zone().name() + ": the steps from potential to harvest add up exactly."), chart);
    }

    String numbers(ChartDocument chart) {
        return join(List.of(), chart);
    }

    private static String join(List<String> lines, ChartDocument chart) {
        List<String> all = new ArrayList<>();
        all.add(chart.words().title() + ".");
        lines.stream().filter(line -> !line.isBlank()).forEach(all::add);
        DataTable data = chart.data();
        if (data.rows().isEmpty()) {
            return String.join("\n", all);
        }
        if (data.rows().size() > MOST_ROWS) {
            all.add("Day by day: the table beside this chart in the results of 'thirstline run'.");
            return String.join("\n", all);
        }
        all.add("Numbers behind the picture (SI units): " + String.join("; ", data.columns()));
        data.rows().forEach(row -> all.add(String.join("; ", row)));
        return String.join("\n", all);
    }

    String method() {
        List<String> lines = new ArrayList<>();
        lines.add("The soil starts at field capacity on the first day of the weather.");
        outcome.study().assumptions().forEach(assumption -> lines.add(assumption.key() + ": " + assumption.text()));
        lines.add(outcome.zones().stream()
                .map(zone -> zone.zone().name() + ": " + zone.responseSeasons().size() + " years behind the line")
                .collect(Collectors.joining("; ", "", ".")));
        lines.add(bands.meaning());
        lines.removeIf(String::isEmpty);
        return String.join("\n", lines);
    }

    String caveats() {
        List<String> lines = new ArrayList<>(outcome.study().crop().cautions());
        lines.addAll(Cautions.GENERAL);
        return String.join("\n", lines);
    }
}
