package org.thirstline.model.evapotranspiration;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;
import org.thirstline.model.solar.SolarGeometry;

/** A few worked examples of FAO-56 (Allen et al. 1998) and ASCE-EWRI (2005), for quick feedback here; the rest is in the module validation. */
class WorkedExamplesTest {

    private static final Offset<Double> TENTH = within(0.05);
    private static final Offset<Double> HUNDREDTH = within(0.005);
    private static final Offset<Double> THOUSANDTH = within(0.0005);

    @Test
    void exampleTwoPressureAndPsychrometricConstant() {
        assertThat(Atmosphere.pressure(1800.0)).isCloseTo(81.8, TENTH);
        assertThat(Atmosphere.psychrometricConstant(Atmosphere.pressure(1800.0)))
                .isCloseTo(0.054, THOUSANDTH);
    }

    @Test
    void examplesThreeToFiveVapourPressure() {
        assertThat(Atmosphere.saturationVapourPressure(24.5)).isCloseTo(3.075, THOUSANDTH);
        assertThat(Atmosphere.meanSaturationVapourPressure(15.0, 24.5)).isCloseTo(2.39, HUNDREDTH);
        assertThat(Atmosphere.vapourPressureFromWetBulb(25.6, 19.5, Atmosphere.pressure(1200.0), 0.000662))
                .isCloseTo(1.91, HUNDREDTH);
        assertThat(Atmosphere.vapourPressureFromHumidity(18.0, 25.0, 54.0, 82.0))
                .isCloseTo(1.70, HUNDREDTH);
        assertThat(Atmosphere.vapourPressureFromMeanHumidity(18.0, 25.0, 68.0)).isCloseTo(1.78, HUNDREDTH);
    }

    @Test
    void exampleFourteenWind() {
        assertThat(Atmosphere.windAtTwoMetres(3.2, 10.0)).isCloseTo(2.4, TENTH);
        assertThat(Atmosphere.usableWind(0.1)).isEqualTo(0.5);
        assertThat(Atmosphere.usableWind(0.7)).isEqualTo(0.7);
    }

    @Test
    void examplesTenToTwelveRadiationAtRio() {
        double latitude = Math.toRadians(-22.9);
        double extraterrestrial = SolarGeometry.extraterrestrialRadiation(latitude, 135);
        double dayLength = SolarGeometry.dayLengthHours(latitude, 135);
        double solar = NetRadiation.solarFromSunshine(220.0 / 31.0, dayLength, extraterrestrial);
        double clearSky = NetRadiation.clearSky(extraterrestrial, 0.0);
        assertThat(extraterrestrial).isCloseTo(25.1, TENTH);
        assertThat(dayLength).isCloseTo(10.9, TENTH);
        assertThat(solar).isCloseTo(14.5, TENTH);
        assertThat(clearSky).isCloseTo(18.8, TENTH);
        assertThat(NetRadiation.netShortwave(solar)).isCloseTo(11.1, TENTH);
        assertThat(NetRadiation.netLongwave(19.1, 25.1, 2.1, solar, clearSky)).isCloseTo(3.5, TENTH);
        assertThat(NetRadiation.blackBody(25.1)).isCloseTo(38.8, TENTH);
    }

    @Test
    void exampleFifteenRadiationFromTheTemperatureRange() {
        double extraterrestrial = SolarGeometry.extraterrestrialRadiation(Math.toRadians(45.0 + 43.0 / 60.0), 196);
        assertThat(NetRadiation.solarFromTemperatureRange(14.8, 26.6, extraterrestrial, 0.16, 200.0))
                .isCloseTo(22.3, TENTH);
        assertThat(NetRadiation.solarFromTemperatureRange(0.0, 40.0, extraterrestrial, 0.19, 200.0))
                .as("not above a clear sky")
                .isEqualTo(NetRadiation.clearSky(extraterrestrial, 200.0));
        assertThat(NetRadiation.solarFromTemperatureRange(20.0, 19.0, extraterrestrial, 0.16, 200.0))
                .isZero();
        assertThat(ReferenceEvapotranspiration.temperatureOnly(14.8, 26.6, extraterrestrial))
                .isCloseTo(5.0, TENTH);
    }

    @Test
    void exampleEighteenReferenceEvapotranspirationAtUccle() {
        double latitude = Math.toRadians(50.8);
        double extraterrestrial = SolarGeometry.extraterrestrialRadiation(latitude, 187);
        double solar =
                NetRadiation.solarFromSunshine(9.25, SolarGeometry.dayLengthHours(latitude, 187), extraterrestrial);
        double clearSky = NetRadiation.clearSky(extraterrestrial, 100.0);
        double vapour = Atmosphere.vapourPressureFromHumidity(12.3, 21.5, 63.0, 84.0);
        double gamma = Atmosphere.psychrometricConstant(Atmosphere.pressure(100.0));
        double wind = Atmosphere.windAtTwoMetres(10.0 / 3.6, 10.0);
        assertThat(Atmosphere.saturationSlope(16.9)).isCloseTo(0.122, THOUSANDTH);
        assertThat(ReferenceEvapotranspiration.penmanMonteith(12.3, 21.5, solar, clearSky, wind, vapour, gamma))
                .isCloseTo(3.88, HUNDREDTH);
    }

    /** ASCE-EWRI (2005) appendix C, Greeley, 2 July 2000; computed there from unrounded measurements. */
    @Test
    void greeleyShortAndTallReference() {
        double clearSky =
                NetRadiation.clearSky(SolarGeometry.extraterrestrialRadiation(Math.toRadians(40.41), 184), 1462.4);
        double gamma = Atmosphere.psychrometricConstant(Atmosphere.pressure(1462.4));
        double wind = Atmosphere.windAtTwoMetres(2.14, 3.0);
        assertThat(ReferenceEvapotranspiration.standardizedNetRadiation(12.2, 33.6, 26.8, clearSky, 1.19))
                .isCloseTo(15.2, within(0.04));
        assertThat(ReferenceEvapotranspiration.standardized(false, 12.2, 33.6, 26.8, clearSky, wind, 1.19, gamma))
                .isCloseTo(6.71, within(0.025));
        assertThat(ReferenceEvapotranspiration.standardized(true, 12.2, 33.6, 26.8, clearSky, wind, 1.19, gamma))
                .isCloseTo(8.68, within(0.03));
    }

    @Test
    void polarNightHasNoSunAndNoNegativeEvaporation() {
        assertThat(NetRadiation.solarFromSunshine(0.0, 0.0, 0.0)).isZero();
        assertThat(NetRadiation.netLongwave(-30.0, -20.0, 0.05, 0.0, 0.0))
                .as("as under a clear sky")
                .isCloseTo(NetRadiation.netLongwave(-30.0, -20.0, 0.05, 5.0, 5.0), within(1.0e-12));
        assertThat(ReferenceEvapotranspiration.penmanMonteith(-30.0, -20.0, 0.0, 0.0, 2.0, 0.05, 0.066))
                .isNotNegative();
    }

    @Test
    void examplesTwentyEightToThirtyTwoCropCoefficients() {
        double climate = CropCoefficient.climateTerm(2.2, 30.0);
        assertThat(CropCoefficient.inClimate(1.10, climate, 0.4)).isCloseTo(1.14, HUNDREDTH);
        assertThat(CropCoefficient.between(0.15, 1.19, 15.0, 25.0)).isCloseTo(0.77, HUNDREDTH);
        assertThat(CropCoefficient.coverFraction(0.9, 0.15, 1.30069, 1.0)).isCloseTo(0.53, HUNDREDTH);
        assertThat(CropCoefficient.coverFraction(1.30069, 0.15, 1.30069, 1.0)).isEqualTo(0.99);
        assertThat(CropCoefficient.coverFraction(0.15, 0.15, 1.15, 2.0)).isCloseTo(1.0e-4, within(1.0e-12));
        assertThat(CropCoefficient.fullCoverByHeight(1.0)).isCloseTo(1.1, within(1.0e-12));
        assertThat(CropCoefficient.fullCoverByHeight(3.0)).isEqualTo(1.2);
    }
}
