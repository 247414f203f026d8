package org.thirstline.model.soil;

import java.time.LocalDate;
import java.util.Map;
import org.thirstline.model.error.Check;

/** Water given by people. Chosen before the day loop. */
public sealed interface Irrigation permits Irrigation.None, Irrigation.OnDates, Irrigation.OnDepletion {

    /** Rain only. */
    record None() implements Irrigation {}

    /**
     * Given depths on given dates.
     *
     * @param depthsMm depth by date [mm]
     */
    record OnDates(Map<LocalDate, Double> depthsMm) implements Irrigation {

        /** Copies the map and refuses depths that are not depths. */
        public OnDates {
            depthsMm = Map.copyOf(depthsMm);
            depthsMm.forEach((date, depth) -> Check.range("irrigation on " + date, depth, "mm", 0.0, 500.0));
        }
    }

    /**
     * A depth whenever the root zone of a growing canopy has lost a share of its available water.
     *
     * @param depletion share of available water used [1]
     * @param depthMm depth given each time [mm]
     */
    record OnDepletion(double depletion, double depthMm) implements Irrigation {

        /** Refuses shares and depths outside their scales. */
        public OnDepletion {
            Check.range("irrigation threshold", depletion, "of available water", 0.01, 1.0);
            Check.range("irrigation depth", depthMm, "mm", 0.1, 500.0);
        }
    }
}
