package org.thirstline.calibration.bands;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.thirstline.calibration.bands.CalibratedStudy.LAI;
import static org.thirstline.calibration.bands.CalibratedStudy.RUE;
import static org.thirstline.calibration.bands.CalibratedStudy.THIN_WATER;
import static org.thirstline.calibration.bands.CalibratedStudy.fitted;

import java.io.IOException;
import java.nio.file.Path;
import java.util.stream.IntStream;
import org.hipparchus.stat.StatUtils;
import org.hipparchus.stat.correlation.PearsonsCorrelation;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.thirstline.calibration.error.CalibrationError;
import org.thirstline.io.crop.CropFile;
import org.thirstline.model.error.InputException;

/** Draws from standard errors where a crop file has no posterior. */
class NormalDrawsTest {

    /** Four standard errors of a mean, a deviation and a correlation of 0.8 over 200 draws. */
    private static final double MEAN = 4.0 / Math.sqrt(200.0);

    private static final double DEVIATION = 4.0 / Math.sqrt(2.0 * 200.0);
    private static final double CORRELATION = 4.0 * (1.0 - 0.8 * 0.8) / Math.sqrt(200.0);

    @TempDir
    private Path folder;

    private CropFile crop(String correlations, String... fitted) throws IOException {
        return new CalibratedStudy(folder)
                .fitted(fitted)
                .with(correlations)
                .outcome()
                .study()
                .crop();
    }

    private static double[] column(ParameterDraws draws, int name) {
        return IntStream.range(0, draws.size())
                .mapToDouble(draw -> draws.value(draw, name))
                .toArray();
    }

    @Test
    void theyHaveTheFittedValuesErrorsAndCorrelations() throws IOException {
        CropFile crop = crop(
                "  correlations: [\"1 0.8\", \"0.8 1\"]\n",
                fitted(RUE, 2.8, ", standard_error: 0.05"),
                fitted(LAI, 6.0, ", standard_error: 0.2"));
        ParameterDraws draws = ParameterDraws.of(crop, 1).orElseThrow();
        assertThat(draws.source()).isEqualTo(ParameterDraws.Source.NORMAL);
        double[] rue = column(draws, 0);
        double[] lai = column(draws, 1);
        assertThat(StatUtils.mean(rue)).isCloseTo(2.8, within(0.05 * MEAN));
        assertThat(StatUtils.mean(lai)).isCloseTo(6.0, within(0.2 * MEAN));
        assertThat(Math.sqrt(StatUtils.variance(lai))).isCloseTo(0.2, within(0.2 * DEVIATION));
        assertThat(new PearsonsCorrelation().correlation(rue, lai)).isCloseTo(0.8, within(CORRELATION));
        assertThat(column(ParameterDraws.of(crop, 1).orElseThrow(), 0)).isEqualTo(rue);
        assertThat(column(ParameterDraws.of(crop, 2).orElseThrow(), 0)).isNotEqualTo(rue);
    }

    private CropFile cropOfThree(String correlations) throws IOException {
        return crop(
                "  correlations: " + correlations + "\n",
                fitted(RUE, 2.8, ", standard_error: 0.05"),
                fitted(LAI, 6.0, ", standard_error: 0.2"),
                fitted(THIN_WATER, 0.9, ", standard_error: 0.1"));
    }

    /** With three, the matrix that makes the correlations is no longer the same along and across. */
    @Test
    void threeHaveTheirCorrelationsPairByPair() throws IOException {
        CropFile crop = cropOfThree("[\"1 0.8 -0.5\", \"0.8 1 0\", \"-0.5 0 1\"]");
        ParameterDraws draws = ParameterDraws.of(crop, 1).orElseThrow();
        double[] rue = column(draws, 0);
        double[] lai = column(draws, 1);
        double[] water = column(draws, 2);
        PearsonsCorrelation pearson = new PearsonsCorrelation();
        assertThat(pearson.correlation(rue, lai)).isCloseTo(0.8, within(CORRELATION));
        assertThat(pearson.correlation(rue, water)).isCloseTo(-0.5, within(MEAN));
        assertThat(pearson.correlation(lai, water)).isCloseTo(0.0, within(MEAN));
    }

    @Test
    void theyStayWithinTheBounds() throws IOException {
        CropFile crop = crop("", fitted(RUE, 2.8, ", standard_error: 0.5, lowest: 2.7, highest: 3.0"));
        double[] rue = column(ParameterDraws.of(crop, 1).orElseThrow(), 0);
        assertThat(StatUtils.min(rue)).isBetween(2.7, 2.75);
        assertThat(StatUtils.max(rue)).isBetween(2.95, 3.0);
    }

    @Test
    void withoutCorrelationsTheyAreIndependentAndSaySo() throws IOException {
        CropFile crop = crop("", fitted(RUE, 2.8, ", standard_error: 0.05"), fitted(LAI, 6.0, ", standard_error: 0.2"));
        ParameterDraws draws = ParameterDraws.of(crop, 1).orElseThrow();
        assertThat(draws.source()).isEqualTo(ParameterDraws.Source.INDEPENDENT);
        assertThat(new PearsonsCorrelation().correlation(column(draws, 0), column(draws, 1)))
                .isCloseTo(0.0, within(MEAN));
    }

    @Test
    void whatHasNoErrorStaysWhereItIs() throws IOException {
        CropFile crop = crop(
                "  correlations: [\"1 0\", \"0 1\"]\n",
                fitted(LAI, 6.0, ""),
                fitted(THIN_WATER, 0.9, ", standard_error: 0.1"));
        ParameterDraws draws = ParameterDraws.of(crop, 1).orElseThrow();
        assertThat(draws.names()).containsExactly(THIN_WATER);
        assertThat(draws.held()).containsExactly(LAI);
    }

    @Test
    void correlationsOfNoDistributionAreRefused() throws IOException {
        CropFile crop = cropOfThree("[\"1 0.9 -0.9\", \"0.9 1 0.9\", \"-0.9 0.9 1\"]");
        assertThatThrownBy(() -> ParameterDraws.of(crop, 1))
                .isInstanceOfSatisfying(InputException.class, refused -> assertThat(refused.code())
                        .isEqualTo(CalibrationError.CORRELATIONS_IMPOSSIBLE));
    }

    @Test
    void aFitFarOutsideItsBoundsIsRefused() throws IOException {
        CropFile crop = crop("", fitted(RUE, 2.8, ", standard_error: 0.01, lowest: 3.5, highest: 4.0"));
        assertThatThrownBy(() -> ParameterDraws.of(crop, 1))
                .isInstanceOfSatisfying(InputException.class, refused -> assertThat(refused.code())
                        .isEqualTo(CalibrationError.DRAWS_OUTSIDE));
    }
}
