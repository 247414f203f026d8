package org.thirstline.io.quality;

import static org.assertj.core.api.Assertions.assertThat;
import static org.thirstline.io.weather.WeatherSamples.read;
import static org.thirstline.io.weather.WeatherSamples.refused;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.thirstline.io.error.InputError;
import org.thirstline.io.weather.IssueKind;
import org.thirstline.io.weather.SiteInfo;
import org.thirstline.io.weather.WeatherIssue;
import org.thirstline.io.weather.WeatherRecord;
import org.thirstline.model.error.ModelError;
import org.thirstline.model.weather.Origin;
import org.thirstline.model.weather.Site;
import org.thirstline.model.weather.WeatherVariable;

class QualityChecksTest {

    private static final Site SITE = new Site("Larkmoor field station", 50.0, 12.0);
    private static final String HEADER =
            "date,tmin_c,tmax_c,rain_mm,solar_mj_m2,wind_2m_m_s,vapour_pressure_kpa,rh_min_pct,rh_max_pct,dew_point_c\n";
    private static final String GOOD = "2012-07-01,10,20,0,20,2,1.2,40,90,9\n";

    @TempDir
    Path folder;

    /** At 50° N on 2 July extraterrestrial radiation is about 41.3 MJ m⁻² d⁻¹ (FAO-56 Table 2.6 has 41.2 for mid-June to July). */
    @ParameterizedTest
    @CsvSource({
        "'10,9.9,0,20,2,1.2,40,90,9', IMPOSSIBLE, tmin_c",
        "'10,9.9,0,20,2,1.2,40,90,9', IMPOSSIBLE, tmax_c",
        "'-90.1,20,0,20,2,1.2,40,90,9', IMPOSSIBLE, tmin_c",
        "'10,60.1,0,20,2,1.2,40,90,9', IMPOSSIBLE, tmax_c",
        "'10,20,-0.1,20,2,1.2,40,90,9', IMPOSSIBLE, rain_mm",
        "'10,20,-999,20,2,1.2,40,90,9', IMPOSSIBLE, rain_mm",
        "'10,20,601,20,2,1.2,40,90,9', SUSPECT, rain_mm",
        "'10,20,9999,20,2,1.2,40,90,9', IMPOSSIBLE, rain_mm",
        "'10,20,0,-1,2,1.2,40,90,9', IMPOSSIBLE, solar_mj_m2",
        "'10,20,0,0,2,1.2,40,90,9', IMPOSSIBLE, solar_mj_m2",
        "'10,20,0,35,2,1.2,40,90,9', SUSPECT, solar_mj_m2",
        "'10,20,0,43,2,1.2,40,90,9', IMPOSSIBLE, solar_mj_m2",
        "'10,20,0,20,-1,1.2,40,90,9', IMPOSSIBLE, wind_2m_m_s",
        "'10,20,0,20,61,1.2,40,90,9', IMPOSSIBLE, wind_2m_m_s",
        "'10,20,0,20,2,0,40,90,9', IMPOSSIBLE, vapour_pressure_kpa",
        "'10,20,0,20,2,2.7,40,90,9', IMPOSSIBLE, vapour_pressure_kpa",
        "'10,20,0,20,2,1.2,0,90,9', IMPOSSIBLE, rh_min_pct",
        "'10,20,0,20,2,1.2,40,111,9', IMPOSSIBLE, rh_max_pct",
        "'10,20,0,20,2,1.2,91,90,9', IMPOSSIBLE, rh_min_pct",
        "'10,20,0,20,2,1.2,40,90,25', IMPOSSIBLE, dew_point_c",
    })
    void impossibleValuesAreReplacedAndSuspectOnesKept(String values, IssueKind kind, String column) {
        WeatherRecord record = assemble("2012-07-02," + values + "\n");
        List<WeatherIssue> found = record.issues().stream()
                .filter(i -> i.kind() == kind && i.variableName().equals(column))
                .toList();
        assertThat(found).hasSize(1);
        assertThat(found.get(0).found()).isNotEmpty();
        for (WeatherVariable variable : WeatherVariable.values()) {
            if (variable.column().equals(column)) {
                boolean measured = record.series().origin(variable, 1) == Origin.MEASURED;
                assertThat(measured).isEqualTo(kind == IssueKind.SUSPECT);
            }
        }
    }

    @Test
    void goodValuesRaiseNothing() {
        WeatherRecord record = assemble("2012-07-02,10,20,599,30,59,2.3,40,100,9\n");
        assertThat(record.issues()).isEmpty();
        assertThat(record.count(WeatherVariable.SOLAR, Origin.MEASURED)).isEqualTo(3);
    }

    @Test
    void polarNightHasNoRadiationToDoubt() {
        Site arctic = new Site("far north", 80.0, 0.0);
        WeatherRecord record = WeatherAssembly.assemble(
                read(folder, "date,tmin_c,tmax_c,rain_mm,solar_mj_m2\n2012-12-21,-30,-20,0,0\n"),
                arctic,
                AssemblySettings.DEFAULT);
        assertThat(record.series().origin(WeatherVariable.SOLAR, 0)).isEqualTo(Origin.MEASURED);
    }

    @Test
    void placeComesFromTheFileUnlessGiven() {
        String text = "# latitude_deg: 40\n# elevation_m: 100\ndate,tmin_c,tmax_c,rain_mm\n2012-07-01,1,2,3\n";
        WeatherRecord fromFile = WeatherAssembly.assemble(read(folder, text), null, AssemblySettings.DEFAULT);
        assertThat(fromFile.site().latitudeDeg()).isEqualTo(40.0);
        SiteInfo latitudeOnly = new SiteInfo(null, 41.0, null, null);
        WeatherRecord both =
                WeatherAssembly.assemble(List.of(read(folder, text)), latitudeOnly, AssemblySettings.DEFAULT);
        assertThat(both.site().latitudeDeg()).isEqualTo(41.0);
        assertThat(both.site().elevationM()).isEqualTo(100.0);
        refused(InputError.LATITUDE_NEEDED, () -> assembleAnywhere(text.replace("latitude_deg", "remark")));
        refused(InputError.ELEVATION_NEEDED, () -> assembleAnywhere(text.replace("elevation_m", "remark")));
        refused(ModelError.VALUE_OUT_OF_RANGE, () -> assembleAnywhere(text.replace(": 40", ": 140")));
    }

    @Test
    void absentVariablesAreRefused() {
        String place = "# latitude_deg: 40\n# elevation_m: 100\n";
        refused(
                InputError.VARIABLE_ABSENT,
                () -> assembleAnywhere(place + "date,tmin_c,tmax_c,rain_mm\n2012-07-01,1,,3\n"));
        refused(InputError.VARIABLE_ABSENT, () -> assembleAnywhere(place + "date,tmin_c,tmax_c\n2012-07-01,1,2\n"));
        refused(
                InputError.NO_USABLE_DAYS,
                () -> assembleAnywhere(place + "date,tmin_c,tmax_c,rain_mm\n2012-07-01,1,,3\n2012-07-02,,5,3\n"));
    }

    private WeatherRecord assembleAnywhere(String text) {
        return WeatherAssembly.assemble(read(folder, text), null, AssemblySettings.DEFAULT);
    }

    private WeatherRecord assemble(String line) {
        String after = GOOD.replace("07-01", "07-03");
        return WeatherAssembly.assemble(read(folder, HEADER + GOOD + line + after), SITE, AssemblySettings.DEFAULT);
    }
}
