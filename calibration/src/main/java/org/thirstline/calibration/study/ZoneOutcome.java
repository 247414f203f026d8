package org.thirstline.calibration.study;

import java.util.List;
import org.thirstline.calibration.response.DroughtResponse;
import org.thirstline.io.study.Zone;
import org.thirstline.model.result.SeasonRecord;
import org.thirstline.model.result.StandResult;

/**
 * What one zone of a study did. Immutable and thread-safe.
 *
 * @param zone the zone
 * @param stand its simulation, rainfall deficits filled in
 * @param response its drought response
 * @param responseSeasons the seasons behind the response: complete, with reliable rain, of a stand that is full-grown
 */
public record ZoneOutcome(Zone zone, StandResult stand, DroughtResponse response, List<SeasonRecord> responseSeasons) {

    /** Copies the list. */
    public ZoneOutcome {
        responseSeasons = List.copyOf(responseSeasons);
    }
}
