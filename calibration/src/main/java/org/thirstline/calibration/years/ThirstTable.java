package org.thirstline.calibration.years;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.thirstline.calibration.response.DroughtResponse;
import org.thirstline.calibration.response.Interval;
import org.thirstline.calibration.study.StudyOutcome;
import org.thirstline.calibration.study.ZoneOutcome;
import org.thirstline.io.study.Zone;
import org.thirstline.model.crop.CropParameter;
import org.thirstline.model.engine.PairedRuns;
import org.thirstline.model.result.SeasonRecord;
import org.thirstline.model.result.SeasonVariable;
import org.thirstline.model.soil.SoilProfile;

/**
 * Expected loss to drought by rainfall deficit and available water of the soil, from the study's own weather run over one soil cut to a
 * ladder of depths. Immutable and thread-safe.
 *
 * @param soilOf name of the zone whose soil is cut or continued
 * @param rungs soils from the least to the most available water
 * @param rootDepthM depth of the mature stand's roots; water below does not count as available [m]
 */
public record ThirstTable(String soilOf, List<Rung> rungs, double rootDepthM) {

    private static final double LOWEST_MM = 60.0;
    private static final double HIGHEST_MM = 300.0;
    private static final double STEP_MM = 30.0;

    /** Copies the list. */
    public ThirstTable {
        rungs = List.copyOf(rungs);
    }

    /**
     * One soil of the ladder.
     *
     * @param availableWaterMm what it holds for plants [mm]
     * @param depthM its depth [m]
     * @param response penalty on rainfall deficit of the growing season
     * @param wettestMm smallest deficit among the years [mm]; NaN without years
     * @param driestMm largest deficit among the years [mm]; NaN without years
     */
    public record Rung(
            double availableWaterMm, double depthM, DroughtResponse response, double wettestMm, double driestMm) {

        /**
         * Returns what a year of a given deficit loses on this soil; absent without a line, and where no year was so dry or so wet.
         *
         * @param deficitMm rainfall deficit [mm]
         */
        public Optional<Cell> at(double deficitMm) {
            if (!(deficitMm >= wettestMm && deficitMm <= driestMm)) {
                return Optional.empty();
            }
            return response.predictionBand(deficitMm)
                    .map(band -> new Cell(
                            atLeastNothing(response.expected(deficitMm).orElseThrow()),
                            new Interval(atLeastNothing(band.lower()), atLeastNothing(band.upper()))));
        }

        private static double atLeastNothing(double mgHa) {
            return Math.max(0.0, mgHa);
        }
    }

    /**
     * What one year loses.
     *
     * @param expectedMgHa on the line, at least nothing [Mg/ha]
     * @param range where 95 of 100 single years fall, at least nothing [Mg/ha]
     */
    public record Cell(double expectedMgHa, Interval range) {}

    /**
     * Simulates the ladder.
     *
     * @param outcome the study; its first zone gives the soil
     */
    public static ThirstTable of(StudyOutcome outcome) {
        Zone zone = outcome.study().zones().get(0);
        double roots = outcome.study().crop().parameters().get(CropParameter.ROOT_DEPTH_MATURE);
        List<Rung> rungs = new ArrayList<>();
        for (double water = LOWEST_MM; water <= HIGHEST_MM; water += STEP_MM) {
            SoilProfile soil = SoilLadder.holding(zone.soil(), water);
            if (soil.depthM() <= Math.max(roots, zone.soil().depthM())) {
                rungs.add(rung(outcome, new Zone(zone.name(), zone.areaHa(), soil)));
            }
        }
        return new ThirstTable(zone.name(), rungs, roots);
    }

    private static Rung rung(StudyOutcome outcome, Zone zone) {
        List<Integer> years = usedYears(outcome);
        List<SeasonRecord> seasons = PairedRuns.simulate(
                        outcome.drivers(),
                        outcome.study().field(zone),
                        outcome.study().weather().missingRainLimitDays())
                .completeSeasons()
                .stream()
                .filter(season -> FullGrown.is(season) && years.contains(season.growthYear()))
                .toList();
        double[] deficits = seasons.stream()
                .mapToDouble(season ->
                        outcome.deficit().deficitMm(season.growthYear()).orElseThrow())
                .toArray();
        double[] penalties = seasons.stream()
                .mapToDouble(season -> season.value(SeasonVariable.DROUGHT_PENALTY))
                .toArray();
        return new Rung(
                zone.soil().availableWaterMm(),
                zone.soil().depthM(),
                DroughtResponse.fit(
                        deficits,
                        penalties,
                        seasons.stream().mapToInt(SeasonRecord::growthYear).toArray()),
                Arrays.stream(deficits).min().orElse(Double.NaN),
                Arrays.stream(deficits).max().orElse(Double.NaN));
    }

    private static List<Integer> usedYears(StudyOutcome outcome) {
        ZoneOutcome first = outcome.zones().get(0);
        return first.responseSeasons().stream().map(SeasonRecord::growthYear).toList();
    }

    /** Returns whether any rung has a line to read losses from. */
    public boolean hasLines() {
        return rungs.stream().anyMatch(rung -> rung.response().line().isPresent());
    }

    /**
     * Returns deficits to tell the loss at: multiples of a step from the driest that any rung knows down to the wettest.
     *
     * @param stepMm the step [mm]
     */
    public List<Double> deficitsMm(double stepMm) {
        double wettest = rungs.stream().mapToDouble(Rung::wettestMm).min().orElse(Double.NaN);
        double driest = rungs.stream().mapToDouble(Rung::driestMm).max().orElse(Double.NaN);
        List<Double> deficits = new ArrayList<>();
        for (long i = (long) Math.ceil(wettest / stepMm); i * stepMm <= driest; i++) {
            deficits.add(i * stepMm);
        }
        return deficits;
    }
}
