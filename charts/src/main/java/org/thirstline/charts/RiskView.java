package org.thirstline.charts;

import java.util.List;
import java.util.OptionalDouble;
import org.thirstline.calibration.bands.Band;
import org.thirstline.calibration.years.YieldRisk;

/**
 * How often the zones of a field reach a yield. Immutable and thread-safe.
 *
 * @param zones one or more
 * @param targetMgHa yield to reach, if one is given [Mg/ha]
 */
public record RiskView(List<ZoneRisk> zones, OptionalDouble targetMgHa) {

    /** Copies the list. */
    public RiskView {
        zones = List.copyOf(zones);
    }

    /**
     * One zone.
     *
     * @param name its name
     * @param risk its years
     * @param bands what a calibration leaves possible of the best year's harvest, the second best, and so on [Mg/ha]; may be empty
     */
    public record ZoneRisk(String name, YieldRisk risk, List<Band> bands) {

        /** Copies the list. */
        public ZoneRisk {
            bands = List.copyOf(bands);
        }

        /** Takes years without bands. */
        public ZoneRisk(String name, YieldRisk risk) {
            this(name, risk, List.of());
        }
    }

    boolean hasBands() {
        return zones.stream().anyMatch(zone -> !zone.bands().isEmpty());
    }
}
