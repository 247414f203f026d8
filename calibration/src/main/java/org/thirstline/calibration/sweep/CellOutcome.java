package org.thirstline.calibration.sweep;

import java.util.List;
import java.util.Optional;
import org.thirstline.model.result.SeasonRecord;

/**
 * What became of a cell. Immutable and thread-safe.
 *
 * @param cell its name
 * @param seasons its growth years, those without a usable yield too; empty for a cell that could not be simulated
 * @param refusal why it has no usable yield, if it has none
 */
public record CellOutcome(String cell, List<SeasonRecord> seasons, Optional<String> refusal) {

    /** Copies the list. */
    public CellOutcome {
        seasons = List.copyOf(seasons);
    }
}
