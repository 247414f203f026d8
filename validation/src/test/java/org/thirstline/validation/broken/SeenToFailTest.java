package org.thirstline.validation.broken;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.util.List;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.thirstline.validation.catalogue.AllFamilies;
import org.thirstline.validation.catalogue.Family;
import org.thirstline.validation.observed.ObservedWorld;

/** A check that cannot fail checks nothing: every family must notice a slip in the code it checks. */
class SeenToFailTest {

    @Test
    void everyFamilyNoticesItsSlip() throws IOException {
        List<Family> families = AllFamilies.calculate();
        var outcomes = SeenToFail.outcomes(families);

        assertThat(outcomes.keySet())
                .containsExactlyElementsOf(families.stream().map(Family::slug).toList());
        assertThat(outcomes)
                .allSatisfy((family, outcome) ->
                        assertThat(outcome.noticed()).as(outcome.cell()).isTrue());
    }

    /** Without a slip, code loaded a second time passes as before: what fails above fails because of the slip. */
    @Test
    void codeLoadedASecondTimeWithoutASlipPasses() throws Exception {
        for (String family : List.of("fao56-table-2-3", "spi-classes", "nist-nonlinear")) {
            Slip none = new Slip(family, "no.such.Class", "none", "1.0", "2.0");
            assertThat(new BrokenCode(none).call(AllFamilies.class.getName(), "passes"))
                    .isEqualTo(AllFamilies.passes(family));
        }
    }

    @Test
    @Tag("long")
    void slipsOfTheObservedWorldAreThoseKept() throws IOException {
        Assumptions.assumeTrue(ObservedWorld.isPresent(), "skipped: no real files at hand");
        assertThat(SeenToFail.observed())
                .as("broken.csv; else run ValidationPageTest with -Dthirstline.regenerate=true")
                .isEqualTo(SeenToFail.kept());
    }
}
