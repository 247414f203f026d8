package org.thirstline.calibration.years;

import java.util.List;
import org.thirstline.calibration.study.StudySimulation;
import org.thirstline.calibration.study.ZoneOutcome;
import org.thirstline.model.result.SeasonRecord;
import org.thirstline.model.result.YieldLedger;

/** The years of a zone that can be compared: complete, of a stand that is full-grown. */
public final class FullGrown {

    private FullGrown() {}

    /** Returns the seasons, in order. */
    public static List<SeasonRecord> seasons(ZoneOutcome zone) {
        return zone.stand().completeSeasons().stream().filter(FullGrown::is).toList();
    }

    /** Returns the ledgers of these seasons, in order. */
    public static List<YieldLedger> ledgers(ZoneOutcome zone) {
        List<Integer> years =
                seasons(zone).stream().map(SeasonRecord::growthYear).toList();
        return zone.stand().ledgers().stream()
                .filter(ledger -> years.contains(ledger.growthYear()))
                .toList();
    }

    static boolean is(SeasonRecord season) {
        return season.isComplete() && season.standAge() >= StudySimulation.FULL_GROWN_AGE;
    }
}
