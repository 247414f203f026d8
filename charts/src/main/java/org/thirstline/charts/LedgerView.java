package org.thirstline.charts;

import java.util.List;
import java.util.function.ToDoubleFunction;
import org.thirstline.model.result.YieldLedger;

/**
 * Where the potential of one year, or of the mean of several, went. Immutable and thread-safe.
 *
 * @param zone name of the zone; may be empty
 * @param ledgers at least one
 */
public record LedgerView(String zone, List<YieldLedger> ledgers) {

    /** Copies the list. */
    public LedgerView {
        ledgers = List.copyOf(ledgers);
    }

    double mean(ToDoubleFunction<YieldLedger> part) {
        return ledgers.stream().mapToDouble(part).average().orElse(0.0);
    }

    String when() {
        if (ledgers.size() == 1) {
            return String.valueOf(ledgers.get(0).growthYear());
        }
        int first = ledgers.stream().mapToInt(YieldLedger::growthYear).min().orElse(0);
        int last = ledgers.stream().mapToInt(YieldLedger::growthYear).max().orElse(0);
        return "mean of " + ledgers.size() + " growth years, " + first + " to " + last;
    }
}
