package org.thirstline.calibration.trial;

import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import org.thirstline.calibration.age.AgeAnalysis;
import org.thirstline.calibration.age.AgeFindings;
import org.thirstline.calibration.age.AgeOptions;
import org.thirstline.calibration.age.AgeVerdict;
import org.thirstline.calibration.age.DeclineFit;
import org.thirstline.calibration.age.Establishment;
import org.thirstline.calibration.age.PlotYear;
import org.thirstline.calibration.age.Reversibility;
import org.thirstline.calibration.age.SettlingPlan;
import org.thirstline.calibration.age.TrialData;
import org.thirstline.calibration.age.VarianceParts;
import org.thirstline.io.plots.PlotTable;
import org.thirstline.io.study.Study;
import org.thirstline.io.weather.WeatherRecord;
import org.thirstline.model.crop.CropParameters;
import org.thirstline.model.weather.DailyDrivers;

/**
 * Age or weather, for the plots of a study: everything that can be said. Immutable and thread-safe.
 *
 * @param trial plots and simulation
 * @param options how it was tested
 * @param findings verdict and fits
 * @param leftIn yield by age as harvested
 * @param takenOut yield by age in the mean weather of the years; absent without a simulation
 * @param shares where the potential of each year went; empty without a simulation
 * @param scatterAssumed whether the scatter behind the powers is assumed, for want of years to find it
 * @param plan what the trial could have found and what would settle it; absent without a simulation
 * @param powers powers against the rate of decline; empty without a simulation
 * @param reversibility whether yield came back in good years; absent without a fit or a simulation
 * @param life dry matter by stand life; absent where nothing could be fitted
 * @param establishment yields by age as harvested
 * @param firstYears the first years of plantings of the study, by zone
 * @param firstWinter what the first winter leaves by planting date, in the first zone
 * @param plantings yield by age of each planting, as harvested and with weather taken out
 * @param overDraws the verdict under other crop parameters that the calibration leaves possible; absent without any, or without a simulation
 */
public record AgeStudy(
        StudyTrial trial,
        AgeOptions options,
        AgeFindings findings,
        AgeCurve leftIn,
        Optional<AgeCurve> takenOut,
        List<YearShares> shares,
        boolean scatterAssumed,
        Optional<SettlingPlan> plan,
        List<PowerCurve> powers,
        Optional<Reversibility> reversibility,
        Optional<LifeLength> life,
        Establishment establishment,
        List<FirstYears> firstYears,
        FirstWinter firstWinter,
        List<PlantingCurve> plantings,
        Optional<VerdictDraws> overDraws) {

    /** Scatter of log yield taken where the trial is too short to show its own: plots 8 %, years 10 %, rest 8 % (our choice). */
    private static final VarianceParts ASSUMED = new VarianceParts(0.08, 0.10, 0.0, 0.08);

    /** Copies the lists. */
    public AgeStudy {
        shares = List.copyOf(shares);
        powers = List.copyOf(powers);
        firstYears = List.copyOf(firstYears);
        plantings = List.copyOf(plantings);
    }

    /** Answers for a study whose crop parameters are taken as they are. */
    public static AgeStudy of(
            Study study, WeatherRecord weather, PlotTable plots, AgeOptions options, Consumer<String> progress) {
        return of(study, weather, plots, List.of(), options, progress);
    }

    /**
     * Answers for a study.
     *
     * @param study the study
     * @param weather its weather
     * @param plots its plot yields
     * @param draws crop parameters that a calibration leaves possible, under which the verdict is repeated; may be empty
     * @param options how decline is tested
     * @param progress told what is being done, in a few words
     */
    public static AgeStudy of(
            Study study,
            WeatherRecord weather,
            PlotTable plots,
            List<CropParameters> draws,
            AgeOptions options,
            Consumer<String> progress) {
        progress.accept("simulating the plots as a stand that never ages");
        StudyTrial trial = StudyTrial.of(study, weather, plots);
        DailyDrivers drivers = DailyDrivers.of(study.site(), weather.series());
        progress.accept("simulating first years and first winters");
        Young young = Young.of(study, drivers);
        progress.accept("fitting and testing declines");
        AgeFindings findings = AgeAnalysis.of(trial.data(), options);
        Optional<VerdictDraws> overDraws = Optional.empty();
        if (!draws.isEmpty() && trial.data().hasSimulation()) {
            progress.accept("repeating the verdict over the calibration");
            overDraws = Optional.of(VerdictDraws.of(study, trial, drivers, draws, options));
        }
        return new Answer(trial, options, findings, young, overDraws, progress).study();
    }

    private record Young(List<FirstYears> years, FirstWinter winter) {

        static Young of(Study study, DailyDrivers drivers) {
            return new Young(
                    study.zones().stream()
                            .map(zone -> FirstYears.of(study, zone, drivers))
                            .toList(),
                    FirstWinter.of(study, study.zones().get(0), drivers));
        }
    }

    /** Returns the fit that the verdict rests on, if any. */
    public Optional<DeclineFit> fair() {
        return findings.withWeatherTakenOut();
    }

    private record Answer(
            StudyTrial trial,
            AgeOptions options,
            AgeFindings findings,
            Young young,
            Optional<VerdictDraws> overDraws,
            Consumer<String> progress) {

        AgeStudy study() {
            TrialData data = trial.data();
            boolean simulated = data.hasSimulation();
            Optional<DeclineFit> fair = findings.withWeatherTakenOut();
            int established = options.establishedAge();
            Optional<AgeCurve> takenOut =
                    simulated ? Optional.of(AgeCurve.weatherTakenOut(data, fair, established)) : Optional.empty();
            VarianceParts scatter = fair.map(DeclineFit::scatter).orElse(ASSUMED);
            progress.accept("working out what this trial could find, and what would settle it");
            Optional<SettlingPlan> plan =
                    simulated ? Optional.of(SettlingPlan.of(data, scatter, options)) : Optional.empty();
            progress.accept("drawing the power curves");
            return new AgeStudy(
                    trial,
                    options,
                    findings,
                    AgeCurve.asHarvested(data, findings.withWeatherLeftIn(), established),
                    takenOut,
                    YearShares.of(trial, fair, findings.verdict() == AgeVerdict.DECLINE_BEYOND_WEATHER, established),
                    fair.isEmpty(),
                    plan,
                    plan.map(of -> PowerCurve.of(data, scatter, of.onsetAge(), options))
                            .orElse(List.of()),
                    reversibility(data),
                    takenOut.filter(curve -> fair.isPresent()).map(this::life),
                    Establishment.of(data),
                    young.years(),
                    young.winter(),
                    PlantingCurve.of(data, findings.withWeatherLeftIn(), fair, established),
                    overDraws);
        }

        private Optional<Reversibility> reversibility(TrialData data) {
            return findings.withWeatherLeftIn()
                    .filter(raw -> data.hasSimulation())
                    .map(raw -> Reversibility.of(data, raw.onsetAge(), options));
        }

        /** Ages before the established one as the simulation has them, for plots are rarely cut that early. */
        private LifeLength life(AgeCurve curve) {
            List<FirstYears.Age> ages = young.years().get(0).ages();
            double full = ages.isEmpty() ? 1.0 : ages.get(ages.size() - 1).meanMgHa();
            double[] buildUp = ages.stream()
                    .limit(options.establishedAge() - 1L)
                    .mapToDouble(age -> Math.min(1.0, age.meanMgHa() / full))
                    .toArray();
            int oldest = trial.data().rows().stream()
                    .mapToInt(PlotYear::standAge)
                    .max()
                    .orElseThrow();
            return LifeLength.of(curve, buildUp, oldest);
        }
    }
}
