package org.thirstline.charts;

import java.util.List;
import java.util.OptionalDouble;
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
     */
    public record ZoneRisk(String name, YieldRisk risk) {}
}
