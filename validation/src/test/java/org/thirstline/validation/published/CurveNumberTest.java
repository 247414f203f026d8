package org.thirstline.validation.published;

import java.util.Map;
import java.util.function.ToDoubleFunction;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.api.extension.ExtendWith;
import org.thirstline.model.soil.CurveNumberRunoff;
import org.thirstline.model.units.Units;

/** Runoff against the tables of the USDA-NRCS (TR-55 1986; NEH Part 630 chapter 10). */
@ExtendWith(PublishedTally.class)
class CurveNumberTest {

    static final Map<String, ToDoubleFunction<Inputs>> RUNOFF = Map.of("runoff_in", CurveNumberTest::runoffInches);

    static final Map<String, ToDoubleFunction<Inputs>> CONDITIONS = Map.of(
            "dry_condition", in -> CurveNumberRunoff.dryCondition(in.get("curve_number")),
            "wet_condition", in -> CurveNumberRunoff.wetCondition(in.get("curve_number")));

    @TestFactory
    Stream<DynamicTest> tr55Table21Runoff() {
        return Catalogue.read("nrcs-curve-number-runoff.csv").tests(RUNOFF);
    }

    @TestFactory
    Stream<DynamicTest> neh630Table101AntecedentConditions() {
        return Catalogue.read("nrcs-curve-number-condition.csv").tests(CONDITIONS);
    }

    private static double runoffInches(Inputs in) {
        double rainMm = in.get("rain_in") * Units.MM_PER_INCH;
        return CurveNumberRunoff.runoffMm(rainMm, CurveNumberRunoff.retentionMm(in.get("curve_number")))
                / Units.MM_PER_INCH;
    }
}
