package org.thirstline.io.weather;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.thirstline.io.weather.WeatherSamples.read;
import static org.thirstline.io.weather.WeatherSamples.refused;

import java.nio.file.Path;
import java.time.LocalDate;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.thirstline.io.error.InputError;
import org.thirstline.model.error.InputException;
import org.thirstline.model.weather.Origin;
import org.thirstline.model.weather.WeatherVariable;

class PlainReaderTest {

    @TempDir
    Path folder;

    @Test
    void valuesPlaceAndInventedAreRead() {
        RawWeather raw = read(folder, WeatherSamples.PLAIN);
        assertThat(raw.start()).isEqualTo(LocalDate.of(2012, 2, 28));
        assertThat(raw.days()).isEqualTo(3);
        assertThat(raw.isInvented()).isTrue();
        assertThat(raw.site()).isEqualTo(new SiteInfo("Larkmoor field station", 52.1, null, 12.0));
        assertThat(raw.column(RawVariable.TMIN)).containsExactly(1.2, -0.5, 2.0);
        assertThat(raw.column(RawVariable.RAIN)).containsExactly(0.4, Double.NaN, 12.7);
        assertThat(raw.missing(RawVariable.WIND)).isEqualTo(1);
        assertThat(raw.windHeightM()).isEqualTo(2.0);
    }

    /** Expected values worked by hand from the definitions of the units. */
    @ParameterizedTest
    @CsvSource({
        "tmean_f, 50, TMEAN, 10",
        "tmean_k, 283.15, TMEAN, 10",
        "rain_in, 2, RAIN, 50.8",
        "solar_w_m2, 100, SOLAR, 8.64",
        "solar_j_cm2, 1500, SOLAR, 15",
        "solar_kwh_m2, 5, SOLAR, 18",
        "solar_cal_cm2, 500, SOLAR, 20.92",
        "wind_2m_km_h, 7.2, WIND, 2",
        "wind_2m_mph, 10, WIND, 4.4704",
        "wind_2m_kn, 36, WIND, 18.52",
        "wind_2m_km_d, 172.8, WIND, 2",
        "vapour_pressure_hpa, 12, VAPOUR_PRESSURE, 1.2",
        "vapour_pressure_pa, 1200, VAPOUR_PRESSURE, 1.2",
        "sunshine_min, 90, SUNSHINE, 1.5",
        "sunshine_s, 5400, SUNSHINE, 1.5",
        "rh_mean_pct, 81, HUMIDITY_MEAN, 81",
        "rh_min_pct, 41, HUMIDITY_MIN, 41",
        "rh_max_pct, 99, HUMIDITY_MAX, 99",
        "dew_point_f, 32, DEW_POINT, 0",
    })
    void namedUnitsAreConverted(String column, double value, RawVariable variable, double expected) {
        String text = "date,tmin_c,tmax_c," + column + "\n2001-07-01,1,2," + value + "\n";
        assertThat(read(folder, text).value(variable, 0)).isCloseTo(expected, within(1e-9));
    }

    @Test
    void windHeightStandsInTheColumnName() {
        RawWeather raw = read(folder, "date,tmin_c,tmax_c,wind_10m_m_s\n2001-07-01,1,2,3\n");
        assertThat(raw.windHeightM()).isEqualTo(10.0);
    }

    @Test
    void columnsOfOurOwnOutputAreAcceptedAndFlagsKept() {
        RawWeather raw = read(
                folder,
                "date,tmin_c,tmax_c,rain_mm,day_length_h,extraterrestrial_mj_m2,et0_mm,flags\n"
                        + "2001-07-01,1,2,3,16,40,2,rain:climatology tmin:interpolated\n2001-07-02,1,2,3,16,40,2,\n");
        assertThat(raw.origin(WeatherVariable.RAIN, 0)).isEqualTo(Origin.CLIMATOLOGY);
        assertThat(raw.origin(WeatherVariable.TMIN, 0)).isEqualTo(Origin.INTERPOLATED);
        assertThat(raw.origin(WeatherVariable.RAIN, 1)).isEqualTo(Origin.MEASURED);
    }

    @Test
    void semicolonsAndDecimalCommasOfOfficeProgramsAreRead() {
        RawWeather raw = read(folder, "date;tmin_c;tmax_c\n2001-07-01;1,5;12,25\n");
        assertThat(raw.value(RawVariable.TMAX, 0)).isEqualTo(12.25);
    }

    @Test
    void absentDatesBecomeMissingDays() {
        RawWeather raw = read(folder, "date,tmin_c,tmax_c\n2004-02-27,1,2\n2004-03-02,3,4\n");
        assertThat(raw.days()).isEqualTo(5);
        assertThat(raw.absentDays()).isEqualTo(3);
        assertThat(raw.missing(RawVariable.TMIN)).isEqualTo(3);
        WeatherIssue issue = raw.issues().get(0);
        assertThat(issue.first()).isEqualTo(LocalDate.of(2004, 2, 28));
        assertThat(issue.last()).isEqualTo(LocalDate.of(2004, 3, 1));
    }

    @Test
    void messageNamesFileLineColumnAndWhatIsAllowed() {
        InputException error = refused(
                InputError.NOT_A_NUMBER,
                () -> read(folder, "date,tmin_c,tmax_c,rain_mm\n2001-07-01,1,2,3\n2001-07-02,1,2,trace\n"));
        assertThat(error.getMessage())
                .startsWith(folder.resolve("file") + ":3:")
                .contains("rain_mm")
                .contains("'trace'")
                .contains("allowed is a number");
    }

    @Test
    void quantityWithoutAKnownUnitIsRefusedWithTheNamesAllowed() {
        InputException error =
                refused(InputError.UNIT_NOT_UNDERSTOOD, () -> read(folder, "date,tmin_c,tmax\n2001-07-01,1,2\n"));
        assertThat(error.getMessage())
                .contains("'tmax'")
                .contains("tmax_c, tmax_f, tmax_k")
                .contains("mean 'tmax_c'");
        refused(InputError.UNIT_NOT_UNDERSTOOD, () -> read(folder, "date,tmin_c,tmax_c,wind_m_s\n2001-07-01,1,2,3\n"));
        refused(InputError.UNIT_NOT_UNDERSTOOD, () -> read(folder, "date,tmin_c,tmax_c,solar_mj\n2001-07-01,1,2,3\n"));
    }

    @Test
    void misspeltColumnIsNotPassedOverInSilence() {
        InputException error = refused(
                InputError.COLUMN_UNKNOWN, () -> read(folder, "date,tmin_c,tmax_c,rian_mm\n2001-07-01,1,2,3\n"));
        assertThat(error.getMessage()).contains("mean 'rain_mm'");
        refused(InputError.COLUMN_UNKNOWN, () -> read(folder, "date,tmni_c,tmax_c\n2001-07-01,1,2\n"));
        assertThat(read(folder, "date,tmin_c,tmax_c,observer,wind_direction_deg\n2001-07-01,1,2,AB,3\n")
                        .days())
                .isEqualTo(1);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "COLUMN_MISSING | date,tmin_c,rain_mm | 2001-07-01,1,2",
                "COLUMN_TWICE | date,tmin_c,tmax_c,tmax_f | 2001-07-01,1,2,3",
                "BAD_DATE | date,tmin_c,tmax_c | 2001-02-30,1,2",
                "BAD_DATE | date,tmin_c,tmax_c | 01/07/2001,1,2",
                "BAD_DATE | date,tmin_c,tmax_c | 0001-07-01,1,2",
                "FIELD_COUNT | date,tmin_c,tmax_c | 2001-07-01,1",
                "FIELD_COUNT | date,tmin_c,tmax_c | 2001-07-01,1,5,12,5",
                "NOT_A_NUMBER | date,tmin_c,tmax_c | 2001-07-01,1,1e999",
                "NOT_A_NUMBER | date,tmin_c,tmax_c | 2001-07-01,1,Infinity",
                "LINE_MALFORMED | date,tmin_c,tmax_c,flags | 2001-07-01,1,2,snow:guessed",
            })
    void badLinesAreRefused(InputError code, String header, String line) {
        refused(code, () -> read(folder, header + "\n" + line + "\n"));
    }

    @Test
    void duplicateAndUnsortedDatesAreRefused() {
        String header = "date,tmin_c,tmax_c\n";
        refused(InputError.DUPLICATE_DATE, () -> read(folder, header + "2001-07-01,1,2\n2001-07-01,1,2\n"));
        InputException error =
                refused(InputError.DATES_UNSORTED, () -> read(folder, header + "2001-07-02,1,2\n2001-07-01,1,2\n"));
        assertThat(error.getMessage()).contains(":3:").contains("2001-07-01 comes after 2001-07-02");
        refused(InputError.NO_USABLE_DAYS, () -> read(folder, header));
    }
}
