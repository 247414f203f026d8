package org.thirstline.validation.published;

import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.api.extension.ExtendWith;

/** Atmosphere, radiation and reference evapotranspiration against FAO-56 (Allen et al. 1998) and ASCE-EWRI (2005). */
@ExtendWith(PublishedTally.class)
class AtmosphereAndRadiationTest {

    /** The files of this test, in the order of the page. */
    static final List<String> FILES = List.of(
            "fao56-examples-02-16.csv",
            "fao56-examples-17-20.csv",
            "fao56-table-2-1.csv",
            "fao56-table-2-2.csv",
            "fao56-table-2-3.csv",
            "fao56-table-2-4.csv",
            "fao56-table-2-6.csv",
            "fao56-table-2-7.csv",
            "fao56-table-2-8.csv",
            "fao56-table-2-9.csv",
            "asce-ewri-2005-greeley.csv");

    @TestFactory
    Stream<DynamicTest> fao56ExamplesTwoToSixteen() {
        return tests("fao56-examples-02-16.csv");
    }

    @TestFactory
    Stream<DynamicTest> fao56ExamplesSeventeenToTwenty() {
        return tests("fao56-examples-17-20.csv");
    }

    @TestFactory
    Stream<DynamicTest> fao56Table21PressureByElevation() {
        return tests("fao56-table-2-1.csv");
    }

    @TestFactory
    Stream<DynamicTest> fao56Table22PsychrometricConstantByElevation() {
        return tests("fao56-table-2-2.csv");
    }

    @TestFactory
    Stream<DynamicTest> fao56Table23SaturationVapourPressure() {
        return tests("fao56-table-2-3.csv");
    }

    @TestFactory
    Stream<DynamicTest> fao56Table24SlopeOfSaturationVapourPressure() {
        return tests("fao56-table-2-4.csv");
    }

    @TestFactory
    Stream<DynamicTest> fao56Table26ExtraterrestrialRadiation() {
        return tests("fao56-table-2-6.csv");
    }

    @TestFactory
    Stream<DynamicTest> fao56Table27DayLength() {
        return tests("fao56-table-2-7.csv");
    }

    @TestFactory
    Stream<DynamicTest> fao56Table28BlackBodyRadiation() {
        return tests("fao56-table-2-8.csv");
    }

    @TestFactory
    Stream<DynamicTest> fao56Table29WindFactor() {
        return tests("fao56-table-2-9.csv");
    }

    @TestFactory
    Stream<DynamicTest> asceGreeleyJuly2000() {
        return tests("asce-ewri-2005-greeley.csv");
    }

    private static Stream<DynamicTest> tests(String file) {
        return Catalogue.read(file).tests(PublishedDay.QUANTITIES);
    }
}
