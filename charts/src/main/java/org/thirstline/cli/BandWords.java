package org.thirstline.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.thirstline.calibration.bands.Band;
import org.thirstline.calibration.bands.ParameterDraws;
import org.thirstline.calibration.bands.StudyBands;
import org.thirstline.calibration.bands.ZoneBands;
import org.thirstline.calibration.study.StudyOutcome;
import org.thirstline.calibration.study.ZoneOutcome;
import org.thirstline.charts.Numbers;
import org.thirstline.charts.UnitSystem;
import org.thirstline.io.crop.CropCalibration;
import org.thirstline.model.result.SeasonRecord;

/** What bands say, what is in them and what is not. Stateless and thread-safe. */
final class BandWords {

    private final StudyOutcome outcome;
    private final UnitSystem units;

    BandWords(StudyOutcome outcome, UnitSystem units) {
        this.outcome = outcome;
        this.units = units;
    }

    /** Returns the sentences of a run: a finding for each zone, then what is in the bands; none without bands. */
    List<String> all() {
        List<String> all = new ArrayList<>();
        outcome.bands().ifPresent(bands -> {
            outcome.zones().stream()
                    .map(this::zone)
                    .filter(finding -> !finding.isEmpty())
                    .forEach(all::add);
            all.add(meaning());
        });
        return all;
    }

    /** Returns the finding for a zone; empty without bands. */
    String zone(ZoneOutcome zone) {
        return outcome.bands().map(bands -> zone(zone, bands)).orElse("");
    }

    private String zone(ZoneOutcome zone, StudyBands bands) {
        List<Integer> years =
                zone.responseSeasons().stream().map(SeasonRecord::growthYear).toList();
        ZoneBands ofZone = bands.zone(zone.zone().name());
        Band harvested = ofZone.meanHarvested(years);
        if (!harvested.isKnown()) {
            return "";
        }
        int fewest = ofZone.fewestDraws(years);
        return String.format(
                Locale.ROOT,
                "%s: over the calibration's draws the mean harvest of the %d full-grown years is %s and the mean drought penalty %s"
                        + " (5 to 95 %% of draws)%s.",
                zone.zone().name(),
                years.size(),
                range(harvested),
                range(ofZone.meanPenalty(years)),
                fewest < bands.draws().size()
                        ? "; in at least one of the years only " + fewest
                                + " draws have a yield, the others no stand to cut"
                        : "");
    }

    /** Says how the distance of two years of a zone spreads over the draws; empty without bands and where no draw has both. */
    String gap(ZoneOutcome zone, int poorer, int better) {
        return outcome.bands()
                .map(bands -> gap(bands.zone(zone.zone().name()), poorer, better))
                .orElse("");
    }

    private String gap(ZoneBands zone, int poorer, int better) {
        Band harvest = zone.harvestGap(poorer, better);
        if (!harvest.isKnown()) {
            return "";
        }
        String some = harvest.draws() < zone.draws() ? " that have both (" + harvest.draws() + ")" : "";
        return "Over the calibration's draws" + some + " the distance is " + range(harvest)
                + ", that of the drought penalties " + range(zone.penaltyGap(poorer, better))
                + " (5 to 95 % of draws).";
    }

    private String range(Band band) {
        return Numbers.fixed(units.dryMatter(band.low()), 1) + " to " + units.yieldText(band.high());
    }

    /** Says where the draws come from and what they know nothing of; empty without bands. */
    String meaning() {
        return outcome.bands()
                .map(bands -> "Bands: " + source(bands.draws())
                        + ". They hold the doubt in the fitted parameters, as far as the calibration's errors hold. Not in them: parameters"
                        + " that were not fitted, what the engine gets wrong, and weather that these years have not seen. "
                        + plots(bands))
                .orElse("");
    }

    private static String source(ParameterDraws draws) {
        CropCalibration calibration = draws.calibration();
        String of = String.format(
                Locale.ROOT,
                " of the calibration of %s ('%s', %d%s values)",
                calibration.date(),
                calibration.study(),
                calibration.observations(),
                calibration.invented() ? " invented" : "");
        return switch (draws.source()) {
            case POSTERIOR -> draws.size() + " draws from the posterior" + of;
            case NORMAL ->
                draws.size() + " draws from the normal distribution of fitted values, standard errors and correlations,"
                        + " cut off at the bounds," + of
                        + ", which has no posterior; where the data bend that distribution, bands are only roughly right";
            case INDEPENDENT ->
                draws.size() + " draws from normal distributions of fitted values and standard errors, cut off at the"
                        + " bounds," + of
                        + ", which has neither a posterior nor correlations; taking errors as independent usually makes bands too wide";
        };
    }

    private static String plots(StudyBands bands) {
        return bands.plotError().isPresent()
                ? "Nor is the scatter of single plots; with it, where a plot's yield would be measured is in bands.csv as plot_yield."
                : "Nor is the scatter of single plots, for which the crop file has no error.";
    }
}
