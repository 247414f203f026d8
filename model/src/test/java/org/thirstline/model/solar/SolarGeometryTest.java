package org.thirstline.model.solar;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

/** FAO-56 examples 8, 9 and 19 (Allen et al. 1998), and what must hold at the poles. */
class SolarGeometryTest {

    @Test
    void exampleEight() {
        double latitude = Math.toRadians(-20.0);
        assertThat(SolarGeometry.inverseRelativeDistance(246)).isCloseTo(0.985, within(0.0005));
        assertThat(SolarGeometry.declination(246)).isCloseTo(0.120, within(0.0005));
        assertThat(SolarGeometry.sunsetHourAngle(latitude, SolarGeometry.declination(246)))
                .isCloseTo(1.527, within(0.0005));
        assertThat(SolarGeometry.extraterrestrialRadiation(latitude, 246)).isCloseTo(32.2, within(0.05));
        assertThat(SolarGeometry.dayLengthHours(latitude, 246)).isCloseTo(11.7, within(0.05));
    }

    @Test
    void exampleNineteenHourByHour() {
        double latitude = Math.toRadians(16.0 + 13.0 / 60.0);
        double middle = SolarGeometry.hourAngle(274, 14.5, 16.25, 15.0);
        double halfHour = Math.PI / 24.0;
        assertThat(middle).isCloseTo(0.682, within(0.0005));
        assertThat(SolarGeometry.extraterrestrialRadiation(latitude, 274, middle - halfHour, middle + halfHour))
                .isCloseTo(3.543, within(0.0005));
        double night = SolarGeometry.hourAngle(274, 2.5, 16.25, 15.0);
        assertThat(SolarGeometry.extraterrestrialRadiation(latitude, 274, night - halfHour, night + halfHour))
                .isZero();
    }

    @Test
    void theHoursOfADayAddUpToIt() {
        double latitude = Math.toRadians(50.0);
        double sum = 0.0;
        for (int hour = 0; hour < 24; hour++) {
            double from = Math.PI / 12.0 * (hour - 12);
            sum += SolarGeometry.extraterrestrialRadiation(latitude, 120, from, from + Math.PI / 12.0);
        }
        assertThat(sum).isCloseTo(SolarGeometry.extraterrestrialRadiation(latitude, 120), within(1.0e-9));
    }

    @Test
    void polarDayAndPolarNight() {
        double latitude = Math.toRadians(80.0);
        assertThat(SolarGeometry.dayLengthHours(latitude, 172)).isEqualTo(24.0);
        assertThat(SolarGeometry.dayLengthHours(latitude, 355)).isZero();
        assertThat(SolarGeometry.extraterrestrialRadiation(latitude, 355)).isZero();
        assertThat(SolarGeometry.extraterrestrialRadiation(latitude, 172)).isGreaterThan(40.0);
    }
}
