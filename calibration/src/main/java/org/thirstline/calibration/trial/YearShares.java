package org.thirstline.calibration.trial;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.thirstline.calibration.age.DeclineFit;
import org.thirstline.calibration.age.PlotYear;
import org.thirstline.model.result.SeasonVariable;

/**
 * Where the potential of a year went, as the mean of the plots harvested in it: potential = observed + drought + age + other, exactly. The
 * potential is that of an unageing stand never short of water, brought to the level of each plot. Immutable and thread-safe.
 *
 * @param growthYear growth year
 * @param plots plots harvested
 * @param observedMgHa mean observed yield [Mg/ha]
 * @param potentialMgHa mean potential [Mg/ha]
 * @param droughtMgHa what lack of water took in the simulation [Mg/ha]
 * @param ageMgHa what the called decline took of the rest [Mg/ha]; zero where no decline is called
 * @param otherMgHa what is left over; negative where more was harvested than the other three leave [Mg/ha]
 */
public record YearShares(
        int growthYear,
        int plots,
        double observedMgHa,
        double potentialMgHa,
        double droughtMgHa,
        double ageMgHa,
        double otherMgHa) {

    /**
     * Splits the established years of a trial.
     *
     * @param trial the trial, simulated
     * @param fit fit to observed over simulated, if any
     * @param called whether its decline is called; if not, nothing is put down to age
     * @param establishedAge first established age
     */
    public static List<YearShares> of(StudyTrial trial, Optional<DeclineFit> fit, boolean called, int establishedAge) {
        if (!trial.data().hasSimulation()) {
            return List.of();
        }
        Optional<DeclineFit> decline = called ? fit : Optional.empty();
        Map<Integer, List<PlotYear>> years = new TreeMap<>();
        List<PlotYear> established = trial.data().rows().stream()
                .filter(row -> row.standAge() >= establishedAge)
                .toList();
        established.forEach(row -> years.computeIfAbsent(row.growthYear(), year -> new ArrayList<>())
                .add(row));
        PlotLevels levels =
                PlotLevels.of(established, decline, row -> Math.log(row.observedMgHa() / row.simulatedMgHa()));
        return years.entrySet().stream()
                .map(year -> shares(trial, year.getKey(), year.getValue(), levels, decline))
                .toList();
    }

    private static YearShares shares(
            StudyTrial trial, int year, List<PlotYear> rows, PlotLevels levels, Optional<DeclineFit> decline) {
        double observed = 0.0;
        double potential = 0.0;
        double drought = 0.0;
        double age = 0.0;
        for (PlotYear row : rows) {
            double level = Math.exp(levels.of(row)) / rows.size();
            double penalty = trial.season(row)
                    .map(season -> season.value(SeasonVariable.DROUGHT_PENALTY))
                    .orElse(0.0);
            double kept = decline.map(fit -> fit.kept(row.standAge())).orElse(1.0);
            observed += row.observedMgHa() / rows.size();
            potential += level * (row.simulatedMgHa() + penalty);
            drought += level * penalty;
            age += level * row.simulatedMgHa() * (1.0 - kept);
        }
        return new YearShares(
                year, rows.size(), observed, potential, drought, age, potential - observed - drought - age);
    }
}
