package org.thirstline.charts;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.thirstline.model.climate.SeasonClass;
import org.thirstline.model.result.YieldLedger;

/**
 * Mean yield ledgers side by side. Immutable and thread-safe.
 *
 * @param zone name of the zone; may be empty
 * @param by what parts the groups, e.g. "dry, middle and wet years"
 * @param groups two or more
 */
public record LedgersView(String zone, String by, List<Group> groups) {

    /** Copies the list. */
    public LedgersView {
        groups = List.copyOf(groups);
    }

    /**
     * One group.
     *
     * @param name its name
     * @param seasonClass its class, null for a group that has none
     * @param ledgers at least one
     */
    public record Group(String name, @Nullable SeasonClass seasonClass, List<YieldLedger> ledgers) {

        /** Copies the list. */
        public Group {
            ledgers = List.copyOf(ledgers);
        }
    }
}
