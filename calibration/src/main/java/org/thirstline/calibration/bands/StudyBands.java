package org.thirstline.calibration.bands;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.IntStream;
import org.thirstline.calibration.fit.Parallel;
import org.thirstline.io.study.Study;
import org.thirstline.io.study.Zone;
import org.thirstline.model.engine.FieldConditions;
import org.thirstline.model.engine.SeasonRuns;
import org.thirstline.model.error.InputException;
import org.thirstline.model.result.SeasonRecord;
import org.thirstline.model.result.SeasonVariable;
import org.thirstline.model.soil.SoilProfile;
import org.thirstline.model.weather.DailyDrivers;

/**
 * A study under every draw of its crop's calibration. Immutable and thread-safe.
 *
 * @param draws the draws
 * @param plotError what the calibration left over in yields of single plots, if it says
 * @param zones yields of the zones, in the order of the study
 * @param notices what a reader must know before using the bands
 */
public record StudyBands(
        ParameterDraws draws, Optional<PlotError> plotError, List<ZoneBands> zones, List<String> notices) {

    /** Copies the lists. */
    public StudyBands {
        zones = List.copyOf(zones);
        notices = List.copyOf(notices);
    }

    /**
     * Simulates every zone under every draw, without daily output.
     *
     * @param study the study
     * @param drivers its weather
     * @param draws the draws of its crop
     * @param threads draws simulated at once; the result does not depend on it
     */
    public static StudyBands of(Study study, DailyDrivers drivers, ParameterDraws draws, int threads) {
        SoilDraws soils = new SoilDraws(study, draws);
        List<List<SoilDraws.Change>> changes =
                study.zones().stream().map(soils::of).toList();
        FieldConditions like = study.field(study.zones().get(0));
        SeasonRuns runs = new SeasonRuns(drivers, like, study.weather().missingRainLimitDays());
        List<List<List<SeasonRecord>>> seasons =
                Parallel.map(IntStream.range(0, draws.size()).boxed().toList(), threads, draw -> new DrawRun(
                                study, draws, changes, runs, draw)
                        .zones());
        List<ZoneBands> zones = new ArrayList<>();
        for (int i = 0; i < study.zones().size(); i++) {
            int place = i;
            List<List<SeasonRecord>> ofZone =
                    seasons.stream().map(draw -> draw.get(place)).toList();
            zones.add(bands(study.zones().get(i).name(), ofZone));
        }
        List<String> notices = new ArrayList<>(soils.notices());
        notices.addAll(notices(draws));
        return new StudyBands(draws, PlotError.of(draws.calibration()), zones, notices);
    }

    private record DrawRun(
            Study study, ParameterDraws draws, List<List<SoilDraws.Change>> changes, SeasonRuns runs, int draw) {

        List<List<SeasonRecord>> zones() {
            List<List<SeasonRecord>> zones = new ArrayList<>();
            for (int i = 0; i < study.zones().size(); i++) {
                Zone zone = study.zones().get(i);
                try {
                    zones.add(seasons(study.field(zone), changes.get(i)));
                } catch (InputException refused) {
                    throw refused.at("draw " + (draw + 1) + " of the calibration, on " + zone.name());
                }
            }
            return zones;
        }

        private List<SeasonRecord> seasons(FieldConditions field, List<SoilDraws.Change> soilChanges) {
            SoilProfile soil = field.soil();
            for (SoilDraws.Change change : soilChanges) {
                soil = change.on(soil, draws, draw);
            }
            FieldConditions drawn = field.withCrop(draws.crop(draw)).withSoil(soil);
            return runs.simulateWithPotential(drawn).stream()
                    .filter(season -> study.years()
                            .map(years -> years.contains(season.growthYear()))
                            .orElse(true))
                    .toList();
        }
    }

    private static ZoneBands bands(String zone, List<List<SeasonRecord>> draws) {
        int[] years = draws.get(0).stream()
                .mapToInt(SeasonRecord::growthYear)
                .sorted()
                .toArray();
        return new ZoneBands(
                zone,
                years,
                column(draws, SeasonVariable.HARVESTED),
                column(draws, SeasonVariable.POTENTIAL_HARVESTED));
    }

    private static double[][] column(List<List<SeasonRecord>> draws, SeasonVariable variable) {
        return draws.stream()
                .map(seasons -> seasons.stream()
                        .mapToDouble(season -> season.value(variable))
                        .toArray())
                .toArray(double[][]::new);
    }

    private static List<String> notices(ParameterDraws draws) {
        List<String> notices = new ArrayList<>();
        draws.warning().ifPresent(notices::add);
        if (draws.inFile() > draws.size()) {
            notices.add(String.format(
                    Locale.ROOT,
                    "Bands use %d evenly spaced ones of the %d draws in the crop file.",
                    draws.size(),
                    draws.inFile()));
        }
        if (!draws.held().isEmpty()) {
            notices.add("Bands hold what was fitted without a standard error at its value: "
                    + String.join(", ", draws.held()) + ".");
        }
        if (!draws.unknown().isEmpty()) {
            notices.add("Bands leave out what the crop file draws but this program does not know: "
                    + String.join(", ", draws.unknown()) + ".");
        }
        if (!draws.changedSince().isEmpty()) {
            notices.add(
                    "The crop file has other values than those that were fitted, so that the bands are not about its own: "
                            + String.join(", ", draws.changedSince()) + ".");
        }
        return notices;
    }

    /**
     * Returns the bands of a zone.
     *
     * @param name of the zone
     */
    public ZoneBands zone(String name) {
        return zones.stream()
                .filter(zone -> zone.zone().equals(name))
                .findFirst()
                .orElseThrow();
    }
}
