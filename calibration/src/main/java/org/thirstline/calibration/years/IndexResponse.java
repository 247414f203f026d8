package org.thirstline.calibration.years;

import java.util.ArrayList;
import java.util.List;
import org.thirstline.calibration.response.DroughtResponse;
import org.thirstline.calibration.study.ZoneOutcome;
import org.thirstline.model.result.SeasonRecord;
import org.thirstline.model.result.SeasonVariable;

/**
 * Drought penalty of a zone against one index. Immutable and thread-safe.
 *
 * @param kind the index
 * @param response penalty on dryness: the index itself, or minus the index where it falls as it gets drier
 * @param seasons the seasons behind it, in order
 * @param dryness x of each of them
 */
public record IndexResponse(
        IndexKind kind, DroughtResponse response, List<SeasonRecord> seasons, List<Double> dryness) {

    /** Copies the lists. */
    public IndexResponse {
        seasons = List.copyOf(seasons);
        dryness = List.copyOf(dryness);
    }

    /**
     * Fits the response of a zone.
     *
     * @param zone the zone; the years are those of its drought response as far as they have the index
     * @param indices indices of the years
     * @param kind which index
     */
    public static IndexResponse of(ZoneOutcome zone, YearIndices indices, IndexKind kind) {
        List<SeasonRecord> seasons = new ArrayList<>();
        List<Double> dryness = new ArrayList<>();
        for (SeasonRecord season : zone.responseSeasons()) {
            double value = indices.at(kind, season);
            if (!Double.isNaN(value)) {
                seasons.add(season);
                dryness.add(kind.isSpi() ? -value : value);
            }
        }
        DroughtResponse response = DroughtResponse.fit(
                dryness.stream().mapToDouble(Double::doubleValue).toArray(),
                seasons.stream()
                        .mapToDouble(season -> season.value(SeasonVariable.DROUGHT_PENALTY))
                        .toArray(),
                seasons.stream().mapToInt(SeasonRecord::growthYear).toArray());
        return new IndexResponse(kind, response, seasons, dryness);
    }

    /**
     * Fits the response to every index that at least one year has.
     *
     * @param zone the zone
     * @param indices indices of the years
     */
    public static List<IndexResponse> all(ZoneOutcome zone, YearIndices indices) {
        List<IndexResponse> all = new ArrayList<>();
        for (IndexKind kind : IndexKind.values()) {
            IndexResponse response = of(zone, indices, kind);
            if (!response.seasons().isEmpty()) {
                all.add(response);
            }
        }
        return List.copyOf(all);
    }
}
