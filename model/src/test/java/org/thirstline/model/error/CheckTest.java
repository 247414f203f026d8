package org.thirstline.model.error;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.LocalDate;
import java.time.MonthDay;
import java.util.Map;
import org.assertj.core.api.ThrowableAssert.ThrowingCallable;
import org.junit.jupiter.api.Test;
import org.thirstline.model.crop.HarvestRule;
import org.thirstline.model.crop.Stand;
import org.thirstline.model.soil.Irrigation;

/** What is allowed, both ends included, and what a refusal says. */
class CheckTest {

    private static void assertOutOfRange(String said, ThrowingCallable what) {
        assertThatThrownBy(what)
                .isInstanceOfSatisfying(InputException.class, refused -> assertThat(refused.code())
                        .isEqualTo(ModelError.VALUE_OUT_OF_RANGE))
                .hasMessageContaining(said);
    }

    @Test
    void aRangeHoldsBothItsEndsAndNoGap() {
        assertThat(Check.range("depth", 1.0, "m", 1.0, 2.0)).isEqualTo(1.0);
        assertThat(Check.range("depth", 2.0, "m", 1.0, 2.0)).isEqualTo(2.0);
        assertOutOfRange("depth is 0.99 m; allowed is 1.0 to 2.0 m", () -> Check.range("depth", 0.99, "m", 1.0, 2.0));
        assertOutOfRange("depth is 2.01 m", () -> Check.range("depth", 2.01, "m", 1.0, 2.0));
        assertOutOfRange("NaN", () -> Check.range("depth", Double.NaN, "m", 1.0, 2.0));
    }

    @Test
    void belowMeansBelow() {
        Check.below("a", 1.0, "b", 1.1, "m");
        assertThatThrownBy(() -> Check.below("a", 1.0, "b", 1.0, "m")).hasMessage("a (1.0) must be below b (1.0) m");
        assertThatThrownBy(() -> Check.below("a", Double.NaN, "b", 1.0, "m")).isInstanceOf(InputException.class);
    }

    @Test
    void aPlaceGoesInFrontOfTheMessageAndTheCauseStays() {
        InputException inner = new InputException(ModelError.VALUE_MISSING, "site");
        InputException outer = inner.at("study.yaml:3");
        assertThat(outer)
                .hasMessage("study.yaml:3: site is missing or not a number")
                .hasCause(inner);
        assertThat(outer.code()).isEqualTo(ModelError.VALUE_MISSING);
    }

    @Test
    void managementThatCannotBeIsRefused() {
        LocalDate day = LocalDate.of(2001, 5, 1);
        assertThat(Stand.spaced(day, 0.5, 0.4).plantsPerM2()).isEqualTo(5.0);
        assertOutOfRange("row spacing", () -> Stand.spaced(day, 0.001, 0.4));
        assertOutOfRange("in-row spacing", () -> Stand.spaced(day, 0.5, 11.0));
        assertOutOfRange("planting density", () -> new Stand(day, 0.001));
        assertOutOfRange("irrigation on 2001-05-01", () -> new Irrigation.OnDates(Map.of(day, 501.0)));
        assertOutOfRange("irrigation threshold", () -> new Irrigation.OnDepletion(1.1, 20.0));
        assertOutOfRange("irrigation depth", () -> new Irrigation.OnDepletion(0.5, 0.0));
        MonthDay from = MonthDay.of(2, 1);
        MonthDay until = MonthDay.of(4, 1);
        assertOutOfRange("harvest moisture limit", () -> new HarvestRule.InWindow(from, until, 0.5, 1.0));
        assertOutOfRange("topsoil wetness limit", () -> new HarvestRule.InWindow(from, until, 20.0, 11.0));
    }

    /** A date is a window of one day without limits. */
    @Test
    void aHarvestDateIsAWindowOfOneDay() {
        HarvestRule rule = new HarvestRule.OnDate(MonthDay.of(3, 1));
        assertThat(rule.from()).isEqualTo(MonthDay.of(3, 1));
        assertThat(rule.until()).isEqualTo(MonthDay.of(3, 1));
        assertThat(rule.maxMoisturePct()).isEqualTo(100.0);
        assertThat(rule.maxTopsoilWetness()).isGreaterThan(1.0);
    }
}
