package org.thirstline.calibration.problem;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import org.assertj.core.api.ThrowableAssert.ThrowingCallable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.thirstline.calibration.error.CalibrationError;
import org.thirstline.calibration.posterior.Prior;
import org.thirstline.io.plots.PlotVariable;
import org.thirstline.io.study.CalibrationPlan.ErrorKind;
import org.thirstline.model.error.ErrorCode;
import org.thirstline.model.error.InputException;

/** What of the plot data is used, what is not, and what is refused. */
class PlotDataTest {

    private static final int YEARS = 6;
    private static final String HEADER = "zone,plot,planting_year,growth_year,date,variable,value,unit\n";

    @TempDir
    private Path folder;

    private StudySource site(String name, String calibration, String plots) throws IOException {
        return InventedSites.site(folder, name, YEARS, 3, calibration, plots);
    }

    private static void assertRefused(ThrowingCallable call, ErrorCode code, String... parts) {
        InputException refused = catchThrowableOfType(InputException.class, call);
        assertThat(refused).isNotNull();
        assertThat(refused.code()).as(refused.getMessage()).isEqualTo(code);
        assertThat(refused).hasMessageContainingAll(parts);
    }

    @Test
    void whatTheWeatherDoesNotHoldIsLeftOutAndSaid() throws IOException {
        String plots = HEADER
                + "deep,1,2001,2003,,yield,12,Mg/ha\ndeep,1,2001,2004,,yield,13,Mg/ha\n"
                + "deep,1,2001,2015,,yield,12,Mg/ha\n"
                + "deep,1,2001,,2030-07-01,leaf_area_index,5,m2/m2\n"
                + "deep,1,1995,1999,,yield,12,Mg/ha\n";
        PlotData data = PlotData.of(List.of(site("here", "", plots)));
        assertThat(data.used()).hasSize(2);
        assertThat(data.dropped())
                .extracting(DroppedValue::reason)
                .containsExactly(
                        "the weather does not hold its growth year",
                        "the weather does not hold its growth year",
                        "its date lies outside the weather");
        assertThat(data.dropped())
                .extracting(dropped -> dropped.observation().line())
                .containsExactly(4, 6, 5);
    }

    @Test
    void nothingLeftSaysWhy() throws IOException {
        StudySource site = site("here", "", HEADER + "deep,1,2001,2015,,yield,12,Mg/ha\n");
        assertRefused(
                () -> PlotData.of(List.of(site)),
                CalibrationError.NOTHING_LEFT,
                "the weather does not hold its growth year (1)");
        StudySource empty = site("here", "", HEADER + "deep,1,2001,2004,,yield,,Mg/ha\n");
        assertRefused(() -> PlotData.of(List.of(empty)), CalibrationError.NO_OBSERVATIONS, "no measured value");
    }

    @Test
    void valuesThatAreAllAlikeAreRefused() throws IOException {
        StudySource site = site("here", "", InventedSites.yields(YEARS).replaceAll("yield,[0-9]+", "yield,15"));
        assertRefused(() -> PlotData.of(List.of(site)), CalibrationError.ALL_ALIKE, "yield", "15", "plots.csv");
    }

    @Test
    void aSiteWithoutAStudyHasNoWeather() throws IOException {
        String plots = InventedSites.yields(YEARS)
                .replace("zone,", "site,zone,")
                .replace("\ndeep", "\nhere,deep")
                .replace("\nthin", "\nelsewhere,thin");
        StudySource site = site("here", "", plots);
        assertRefused(
                () -> PlotData.of(List.of(site)), CalibrationError.SITE_WITHOUT_WEATHER, "elsewhere", "with_studies");
        StudySource other = site("elsewhere", "", plots);
        PlotData both = PlotData.of(List.of(site, other));
        assertThat(both.used()).extracting(Observation::site).containsOnly("here", "elsewhere");
        assertThat(both.used()).hasSize(4 * (YEARS - 2));
    }

    @Test
    void sitesNeedNamesOfTheirOwnAndTheSameCrop() throws IOException {
        StudySource site = site("here", "", InventedSites.yields(YEARS));
        assertRefused(() -> PlotData.of(List.of(site, site)), CalibrationError.SITE_TWICE, "here");
    }

    @Test
    void errorsAreStatedEstimatedOrGiven() throws IOException {
        String stated =
                InventedSites.yields(YEARS).replace("unit\n", "unit,error\n").replace("Mg/ha", "Mg/ha,1.1");
        assertThat(errorOf("", stated).kind()).isEqualTo(ErrorKind.STATED);
        assertThat(errorOf("", stated).estimated()).isTrue();
        String known = "calibration: {errors: [{variable: yield, sd: stated}]}\n";
        assertThat(errorOf(known, stated).estimated()).isFalse();
        String cv = "calibration: {errors: [{variable: yield, cv: 10 %}]}\n";
        assertThat(errorOf(cv, stated)).isEqualTo(new ErrorModel(PlotVariable.YIELD, ErrorKind.CV, 0.1, false));
        assertThat(errorOf("", InventedSites.yields(YEARS)).kind()).isEqualTo(ErrorKind.SD);
    }

    private ErrorModel errorOf(String calibration, String plots) throws IOException {
        return ProblemSetup.of(PlotData.of(List.of(site("here", calibration, plots))))
                .problem()
                .errors()
                .get(0);
    }

    /** Radiation-use efficiency is published from 1.9 to 3.7 g/MJ: half a width is 0.9. */
    @Test
    void boundsAndPriorsComeFromThePublishedRange() throws IOException {
        ProblemSetup usual = ProblemSetup.of(PlotData.of(List.of(site("here", "", InventedSites.yields(YEARS)))));
        assertThat(usual.chosen()).isFalse();
        CalibratedParameter rue = usual.problem().parameters().get(0);
        assertThat(rue.name()).isEqualTo("radiation_use_efficiency_g_mj");
        assertThat(rue.lower()).isCloseTo(1.0, within(1e-12));
        assertThat(rue.upper()).isCloseTo(4.6, within(1e-12));
        assertThat(rue.prior().shape()).isEqualTo(Prior.Shape.NORMAL);
        String own =
                "calibration: {parameters: [{name: radiation_use_efficiency_g_mj, low: 2, high: 3, prior: uniform},"
                        + " {name: senescence_day_length_h}]}\n";
        ProblemSetup chosen = ProblemSetup.of(PlotData.of(List.of(site("here", own, InventedSites.yields(YEARS)))));
        assertThat(chosen.chosen()).isTrue();
        assertThat(chosen.problem().parameters().get(0).lower()).isEqualTo(2.0);
        assertThat(chosen.problem().parameters().get(0).prior().shape()).isEqualTo(Prior.Shape.UNIFORM);
        assertThat(chosen.problem().parameters().get(1).prior().shape()).isEqualTo(Prior.Shape.UNIFORM);
    }

    @Test
    void parametersThatCannotBeFittedAreRefused() throws IOException {
        assertPlanRefused("{name: leaf_growth_end_day_length_h}", CalibrationError.NO_RANGE, "'low' and 'high'");
        assertPlanRefused(
                "{name: leaf_base_c}, {name: leaf_base_c}",
                CalibrationError.PARAMETER_TWICE,
                "study.yaml",
                "leaf_base_c");
        assertPlanRefused(
                "{name: soil_depth_factor, site: nowhere}", CalibrationError.SOIL_UNKNOWN, "nowhere", "here: deep");
        assertPlanRefused("{name: leaf_base_c, low: 30, high: 40}", CalibrationError.NO_WIDTH, "leaf_base_c");
        StudySource few = site("here", "", HEADER + "deep,1,2001,2003,,yield,12,Mg/ha\n");
        assertRefused(() -> ProblemSetup.of(PlotData.of(List.of(few))), CalibrationError.TOO_FEW_VALUES, "1", "4");
    }

    private void assertPlanRefused(String parameters, ErrorCode code, String... parts) throws IOException {
        StudySource site =
                site("here", "calibration: {parameters: [" + parameters + "]}\n", InventedSites.yields(YEARS));
        assertRefused(() -> ProblemSetup.of(PlotData.of(List.of(site))), code, parts);
    }
}
