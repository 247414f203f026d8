package org.thirstline.model.units;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

/** Conversions against NIST SP 811, Appendix B.8: short ton 907.1847 kg, acre 4046.873 m² (of the survey foot), inch 25.4 mm. */
class UnitsTest {

    @Test
    void yieldsAndSlopesOnWater() {
        double shortTonPerAcreMgHa = 0.9071847 / 0.4046873;
        assertThat(Units.mgHa(1000.0)).isEqualTo(10.0);
        assertThat(Units.SHORT_TON_ACRE_PER_MG_HA * shortTonPerAcreMgHa).isCloseTo(1.0, within(1.0e-5));
        // 1 short ton per acre and inch is 2.2417 Mg/ha per 25.4 mm.
        assertThat(Units.tonAcrePerInch(shortTonPerAcreMgHa / 25.4)).isCloseTo(1.0, within(1.0e-5));
    }
}
