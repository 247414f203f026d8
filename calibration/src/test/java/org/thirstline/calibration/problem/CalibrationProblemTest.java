package org.thirstline.calibration.problem;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.thirstline.calibration.fit.Parallel;
import org.thirstline.calibration.study.StudyOutcome;
import org.thirstline.calibration.study.StudySimulation;
import org.thirstline.calibration.study.ZoneOutcome;
import org.thirstline.io.plots.PlotVariable;
import org.thirstline.io.study.CalibrationPlan.ErrorKind;
import org.thirstline.model.result.DailyVariable;
import org.thirstline.model.result.SeasonRecord;
import org.thirstline.model.result.SeasonVariable;
import org.thirstline.model.result.StandResult;

/** The problem says what a run of the study says, shares what can be shared, and can be asked by many at once. */
class CalibrationProblemTest {

    private static final int YEARS = 7;

    private static final String MEASURED = InventedSites.yields(YEARS)
                    .replace("variable,", "date,depth_m,variable,")
                    .replace(",yield", ",,,yield")
            + "deep,1,2001,,2004-07-10,,leaf_area_index,5,m2/m2\n"
            + "deep,1,2001,,2004-07-10,,intercepted_fraction,0.9,1\n"
            + "thin,1,2001,,2005-08-20,,standing biomass,15,Mg/ha\n"
            + "thin,1,2001,,2005-08-20,0.3,soil_water,60,mm\n"
            + "deep,2,2001,2004,,,harvest_moisture,20,%\n"
            + "deep,2,2001,2004,,,emergence,2004-05-01,date\n"
            + "deep,2,2001,2004,,,canopy_end,2004-10-20,date\n";

    /** Results are written with six decimals at most. */
    private static final double AS_WRITTEN = 1.0e-6;

    @TempDir
    private Path folder;

    private CalibrationProblem problem(String plots) throws IOException {
        StudySource site = InventedSites.site(folder, "here", YEARS, 3, "", plots);
        return ProblemSetup.of(PlotData.of(List.of(site))).problem();
    }

    @Test
    void everyValueIsThatOfARunOfTheStudy() throws IOException {
        CalibrationProblem problem = problem(MEASURED);
        StudySource site = problem.sources().get(0);
        StudyOutcome outcome = StudySimulation.run(site.study(), site.weather(), 1);
        double[] simulated = problem.simulate(problem.start());
        for (int i = 0; i < simulated.length; i++) {
            Observation observation = problem.observations().get(i);
            assertThat(simulated[i]).as(observation.toString()).isCloseTo(expected(outcome, observation), within(1e-9));
        }
        assertThat(problem.observations().stream().map(Observation::variable).distinct())
                .containsExactlyInAnyOrder(PlotVariable.values());
    }

    /**
     * Runs of a calibration start some years before planting, those of a study with the weather. Twenty-five years earlier or not, the soil
     * is what the last winters made it, dry ones too: values differ by less than the last digit that any result is written with.
     */
    @ParameterizedTest
    @ValueSource(doubles = {1.0, 0.2})
    void aLongWeatherBeforePlantingChangesNothing(double rainShare) throws IOException {
        problem(MEASURED + "thin,1,2001,,2001-05-01,0.3,soil_water,40,mm\n");
        Path place = folder.resolve("here");
        Files.writeString(place.resolve("weather.csv"), withRainTimes(rainShare, InventedSites.weather(25, YEARS, 3)));
        StudySource site = InventedSites.read(place.resolve("study.yaml"));
        CalibrationProblem problem = ProblemSetup.of(PlotData.of(List.of(site))).problem();
        StudyOutcome outcome = StudySimulation.run(site.study(), site.weather(), 1);
        double[] simulated = problem.simulate(problem.start());
        assertThat(site.weather().series().start().getYear()).isEqualTo(InventedSites.PLANTED - 25);
        for (int i = 0; i < simulated.length; i++) {
            Observation observation = problem.observations().get(i);
            assertThat(simulated[i])
                    .as(observation.toString())
                    .isCloseTo(expected(outcome, observation), within(AS_WRITTEN));
        }
    }

    private static String withRainTimes(double share, String weather) {
        return weather.lines()
                .map(line -> {
                    int rain = line.lastIndexOf(',') + 1;
                    return line.startsWith("date")
                            ? line
                            : line.substring(0, rain) + share * Double.parseDouble(line.substring(rain));
                })
                .collect(Collectors.joining("\n", "", "\n"));
    }

    private static double expected(StudyOutcome outcome, Observation observation) {
        StandResult stand = outcome.zones().stream()
                .filter(zone -> zone.zone().name().equals(observation.zone()))
                .map(ZoneOutcome::stand)
                .findFirst()
                .orElseThrow();
        SeasonRecord season = stand.seasons().stream()
                .filter(record -> record.growthYear() == observation.growthYear())
                .findFirst()
                .orElseThrow();
        int day = observation.date() == null
                ? 0
                : (int) (observation.date().toEpochDay() - stand.daily().start().toEpochDay());
        return switch (observation.variable()) {
            case YIELD -> season.value(SeasonVariable.HARVESTED);
            case HARVEST_MOISTURE -> season.value(SeasonVariable.HARVEST_MOISTURE);
            case LEAF_AREA_INDEX -> stand.daily().at(DailyVariable.LEAF_AREA_INDEX, day);
            case INTERCEPTED_FRACTION -> stand.daily().at(DailyVariable.INTERCEPTED_FRACTION, day);
            case STANDING -> stand.daily().at(DailyVariable.STANDING, day) / 100.0;
            // Layers of 0.1 m and twice 0.25 m: 0.3 m takes the first and four fifths of the second.
            case SOIL_WATER ->
                stand.daily().soilWaterMm(0, day) + 0.8 * stand.daily().soilWaterMm(1, day);
            case EMERGENCE -> season.dates().emergence().getDayOfYear();
            case CANOPY_END -> season.dates().canopyEnd().getDayOfYear();
        };
    }

    @Test
    void plotsThatShareAStandShareItsRun() throws IOException {
        CalibrationProblem problem = problem(InventedSites.yields(YEARS));
        assertThat(problem.observations()).hasSize(4 * (YEARS - 2));
        assertThat(problem.distinctStands()).isEqualTo(2);
    }

    @Test
    void aPlantingOfAnotherYearIsAnotherStand() throws IOException {
        CalibrationProblem problem = problem(
                InventedSites.yields(YEARS) + "deep,3,2003,2005,yield,9,Mg/ha\ndeep,3,2003,2006,yield,12,Mg/ha\n");
        assertThat(problem.distinctStands()).isEqualTo(3);
        double[] simulated = problem.simulate(problem.start());
        int last = simulated.length - 1;
        Observation young = problem.observations().get(last - 1);
        assertThat(young.standAge()).isEqualTo(3);
        assertThat(simulated[last - 1]).isNotEqualTo(simulated[2]);
    }

    @Test
    void askedByManyAtOnceItSaysTheSame() throws IOException {
        CalibrationProblem problem = problem(MEASURED);
        List<double[]> points = new ArrayList<>();
        for (int i = 0; i < 24; i++) {
            double[] point = problem.start();
            for (int k = 0; k < point.length; k++) {
                CalibratedParameter parameter = problem.parameters().get(k);
                double share = ((i * 7 + k * 5) % 23 + 0.5) / 23.0;
                point[k] = parameter.lower() + share * (parameter.upper() - parameter.lower());
            }
            points.add(point);
        }
        List<double[]> alone = points.stream().map(problem::residuals).toList();
        List<double[]> together = Parallel.map(points, 4, problem::residuals);
        assertThat(together).hasSameSizeAs(alone);
        IntStream.range(0, points.size())
                .forEach(i -> assertThat(together.get(i)).isEqualTo(alone.get(i)));
    }

    @Test
    void aPointThatTheEngineRefusesHasNoResiduals() throws IOException {
        CalibrationProblem problem = problem(InventedSites.yields(YEARS));
        double[] point = problem.start();
        point[0] = -1.0;
        assertThat(problem.residuals(point)).containsOnly(Double.NaN);
        assertThat(problem.logLikelihood(point)).isNaN();
    }

    /** Normal errors of known size: the log likelihood is minus half the sum of squares; of unknown size: minus n/2 log of it. */
    @Test
    void logLikelihoodFollowsTheErrorModel() throws IOException {
        CalibrationProblem problem = problem(InventedSites.yields(YEARS));
        double[] simulated = problem.simulate(problem.start());
        double absolute = 0.0;
        double relative = 0.0;
        for (int i = 0; i < simulated.length; i++) {
            double value = problem.observations().get(i).value();
            absolute += Math.pow((value - simulated[i]) / 1.5, 2);
            relative += Math.pow(Math.log(value / simulated[i]) / 0.1, 2);
        }
        ErrorModel sd = new ErrorModel(PlotVariable.YIELD, ErrorKind.SD, 1.5, false);
        ErrorModel cv = new ErrorModel(PlotVariable.YIELD, ErrorKind.CV, 0.1, false);
        double[] start = problem.start();
        assertThat(problem.withErrors(List.of(sd)).logLikelihood(start)).isCloseTo(-0.5 * absolute, within(1e-9));
        assertThat(problem.withErrors(List.of(cv)).logLikelihood(start)).isCloseTo(-0.5 * relative, within(1e-9));
        ErrorModel estimated = new ErrorModel(PlotVariable.YIELD, ErrorKind.SD, 1.5, true);
        assertThat(problem.withErrors(List.of(estimated)).logLikelihood(start))
                .isCloseTo(-0.5 * simulated.length * Math.log(absolute), within(1e-9));
    }

    @Test
    void soilFactorsReachOnlyTheirZone() throws IOException {
        String plan = "calibration: {parameters: [{name: soil_available_water_factor, zone: thin}]}\n";
        StudySource site = InventedSites.site(folder, "here", YEARS, 3, plan, InventedSites.yields(YEARS));
        CalibrationProblem problem = ProblemSetup.of(PlotData.of(List.of(site))).problem();
        double[] base = problem.simulate(new double[] {1.0});
        double[] more = problem.simulate(new double[] {1.4});
        for (int i = 0; i < base.length; i++) {
            if (problem.observations().get(i).zone().equals("deep")) {
                assertThat(more[i]).isEqualTo(base[i]);
            }
        }
        assertThat(more).isNotEqualTo(base);
    }

    @Test
    void theFingerprintFollowsDataAndWeather() throws IOException {
        CalibrationProblem problem = problem(InventedSites.yields(YEARS));
        String before = problem.fingerprint();
        assertThat(problem(InventedSites.yields(YEARS)).fingerprint()).isEqualTo(before);
        double[] values = problem.simulate(problem.start());
        assertThat(problem.withValues(values).fingerprint()).isNotEqualTo(before);
        Path weather = folder.resolve("here/weather.csv");
        Files.writeString(weather, InventedSites.weather(YEARS, 4));
        assertThat(InventedSites.read(folder.resolve("here/study.yaml"))).isNotNull();
        assertThat(problem.fingerprint()).isNotEqualTo(before);
    }
}
