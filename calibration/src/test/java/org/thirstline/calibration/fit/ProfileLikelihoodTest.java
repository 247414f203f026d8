package org.thirstline.calibration.fit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.random.RandomGenerator;
import java.util.random.RandomGeneratorFactory;
import org.hipparchus.distribution.continuous.NormalDistribution;
import org.hipparchus.distribution.continuous.TDistribution;
import org.junit.jupiter.api.Test;
import org.thirstline.model.error.InputException;
import org.thirstline.model.error.ModelError;

class ProfileLikelihoodTest {

    private static final ProfileLikelihood.Options STANDARD = ProfileLikelihood.Options.standard();

    /** Reaction rate by substrate concentration, treated cells: Bates and Watts (1988), table A1.3, as in R's data set. */
    private static final double[] CONCENTRATION = {
        0.02, 0.02, 0.06, 0.06, 0.11, 0.11, 0.22, 0.22, 0.56, 0.56, 1.10, 1.10
    };

    private static final double[] RATE = {76, 47, 97, 107, 123, 139, 159, 152, 191, 201, 207, 200};

    private static double[] saturating(double[] parameters) {
        double[] residuals = new double[RATE.length];
        for (int i = 0; i < RATE.length; i++) {
            residuals[i] = parameters[0] * CONCENTRATION[i] / (parameters[1] + CONCENTRATION[i]) - RATE[i];
        }
        return residuals;
    }

    private static ResidualModel line() {
        RandomGenerator random = RandomGeneratorFactory.of("L64X128MixRandom").create(4);
        double[] noise = random.doubles(15).toArray();
        return parameters -> {
            double[] residuals = new double[15];
            for (int i = 0; i < 15; i++) {
                residuals[i] = parameters[0] + parameters[1] * i - (3.0 + 0.5 * i + noise[i]);
            }
            return residuals;
        };
    }

    private static Profile profile(
            ResidualModel model, List<FitParameter> parameters, int index, ProfileLikelihood.Options options) {
        FitResult fit = LeastSquaresFit.fit(model, parameters, FitOptions.smooth());
        return new ProfileLikelihood(model, fit, FitOptions.smooth(), options).of(index);
    }

    /** Ends found once with R 4.2.2: uniroot on the root of the rise, the other parameter by optimize or in closed form. */
    @Test
    void intervalsOfTheSaturatingCurveAgreeWithR() {
        List<FitParameter> parameters = List.of(FitParameter.free("vm", 200.0), FitParameter.free("k", 0.05));
        Profile vm = profile(ProfileLikelihoodTest::saturating, parameters, 0, STANDARD);
        Profile k = profile(ProfileLikelihoodTest::saturating, parameters, 1, STANDARD);

        // The ends are found to 1e-4 of the limit.
        assertThat(vm.lower()).isCloseTo(197.301932900, within(0.003));
        assertThat(vm.upper()).isCloseTo(229.289055055, within(0.003));
        assertThat(k.lower()).isCloseTo(0.0469203420352, within(5.0e-6));
        assertThat(k.upper()).isCloseTo(0.0861569134271, within(5.0e-6));
        assertThat(k.verdict()).isEqualTo(Profile.Verdict.DETERMINED);
        assertThat(k.foundBetterFit()).isFalse();
        assertThat(k.words()).isEqualTo("k is determined: 0.06412 (0.04692 to 0.08616)");
    }

    @Test
    void aStraightLineHasTheIntervalsOfLinearTheoryAndAStraightRoot() {
        List<FitParameter> parameters = List.of(FitParameter.free("a", 1.0), FitParameter.free("b", 1.0));
        FitResult fit = LeastSquaresFit.fit(line(), parameters, FitOptions.smooth());
        double t = new TDistribution(13).inverseCumulativeProbability(0.975);
        Profile slope = new ProfileLikelihood(line(), fit, FitOptions.smooth(), STANDARD).of(1);

        assertThat(slope.lower()).isCloseTo(fit.value(1) - t * fit.standardError(1), within(1.0e-5));
        assertThat(slope.upper()).isCloseTo(fit.value(1) + t * fit.standardError(1), within(1.0e-5));
        // Far from the minimum the root is a straight line; close to it rounding of the sum of squares shows.
        assertThat(slope.points())
                .filteredOn(point -> point.value() != fit.value(1))
                .allSatisfy(point -> assertThat(point.signedRoot())
                        .isCloseTo((point.value() - fit.value(1)) / fit.standardError(1), within(1.0e-4)));
    }

    @Test
    void knownErrorsUseTheNormalDistribution() {
        List<FitParameter> parameters = List.of(FitParameter.free("a", 1.0), FitParameter.free("b", 1.0));
        FitResult fit = LeastSquaresFit.fit(line(), parameters, FitOptions.smooth());
        Profile slope = new ProfileLikelihood(
                        line(), fit, FitOptions.smooth(), new ProfileLikelihood.Options(0.9, 40, true))
                .of(1);
        double error = fit.standardError(1) / fit.residualDeviation();
        double z = new NormalDistribution().inverseCumulativeProbability(0.95);

        assertThat(slope.upper()).isCloseTo(fit.value(1) + z * error, within(1.0e-5));
    }

    @Test
    void aParameterThatOthersMakeUpForHasAFlatProfile() {
        ResidualModel product =
                parameters -> line().residuals(new double[] {parameters[2], parameters[0] * parameters[1]});
        List<FitParameter> parameters = List.of(
                FitParameter.between("a", 0.5, 0.1, 2.0),
                FitParameter.between("b", 0.5, 0.01, 20.0),
                FitParameter.between("c", 3.0, 0.0, 10.0));
        Profile flat = profile(product, parameters, 0, STANDARD);

        assertThat(flat.verdict()).isEqualTo(Profile.Verdict.FLAT);
        assertThat(flat.lower()).isEqualTo(0.1);
        assertThat(flat.upper()).isEqualTo(2.0);
        assertThat(flat.words()).contains("a is not determined", "0.1000 to 2.000", "fix it");
        assertThat(profile(product, parameters, 2, STANDARD).verdict()).isEqualTo(Profile.Verdict.DETERMINED);
    }

    /** A rate of decay so fast that the data see only its end: larger values fit as well, small ones do not. */
    @Test
    void aParameterRuledOutOnOneSideSaysSo() {
        double[] seen = {10.0, 0.1, -0.1, 0.05, -0.05, 0.0};
        ResidualModel decay = parameters -> {
            double[] residuals = new double[seen.length];
            for (int i = 0; i < seen.length; i++) {
                residuals[i] = parameters[0] * Math.exp(-parameters[1] * i) - seen[i];
            }
            return residuals;
        };
        List<FitParameter> parameters =
                List.of(FitParameter.between("start", 5.0, 0.0, 50.0), FitParameter.between("rate", 4.0, 0.0, 30.0));
        Profile rate = profile(decay, parameters, 1, STANDARD);

        assertThat(rate.verdict()).isEqualTo(Profile.Verdict.ONE_SIDED);
        assertThat(rate.upperOpen()).isTrue();
        assertThat(rate.upper()).isEqualTo(30.0);
        assertThat(rate.lower()).isBetween(2.0, 5.0);
        assertThat(rate.words()).startsWith("rate is bounded from below only: values below");
    }

    @Test
    void aFitThatStoppedShortOfTheMinimumIsNoticed() {
        List<FitParameter> parameters =
                List.of(FitParameter.between("vm", 100.0, 0.0, 500.0), FitParameter.between("k", 0.5, 0.001, 1.0));
        FitOptions hasty = new FitOptions(1, 1L, 1, 1.0e-6, FitOptions.Differences.CENTRAL);
        FitResult fit = LeastSquaresFit.fit(ProfileLikelihoodTest::saturating, parameters, hasty);
        Profile profile =
                new ProfileLikelihood(ProfileLikelihoodTest::saturating, fit, FitOptions.smooth(), STANDARD).of(0);

        assertThat(fit.converged()).isFalse();
        assertThat(profile.foundBetterFit()).isTrue();
    }

    @Test
    void aPerfectFitNeedsKnownErrors() {
        ResidualModel perfect = parameters -> new double[] {parameters[0], 2.0 * parameters[0]};
        List<FitParameter> parameters = List.of(FitParameter.between("x", 0.0, -1.0, 1.0));

        assertThatThrownBy(() -> profile(perfect, parameters, 0, STANDARD))
                .isInstanceOfSatisfying(
                        InputException.class, e -> assertThat(e.code()).isEqualTo(ModelError.VALUE_OUT_OF_RANGE));
        assertThat(profile(perfect, parameters, 0, new ProfileLikelihood.Options(0.95, 40, true))
                        .upper())
                .isCloseTo(1.959963984540054 / Math.sqrt(5.0), within(1.0e-4));
    }
}
