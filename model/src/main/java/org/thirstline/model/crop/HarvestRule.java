package org.thirstline.model.crop;

import java.time.MonthDay;
import org.thirstline.model.error.Check;

/** When the stand is cut. New shoots end every window: a stand is always cut before it emerges again. */
public sealed interface HarvestRule permits HarvestRule.OnDate, HarvestRule.InWindow {

    /** Returns the first day of the year on which the rule may cut. */
    MonthDay from();

    /** Returns the day of the year on which the rule cuts at the latest. */
    MonthDay until();

    /** Returns the highest moisture at which the rule cuts before its last day [% wet basis]. */
    double maxMoisturePct();

    /** Returns the wettest topsoil that carries a machine [share of field capacity]. */
    double maxTopsoilWetness();

    /**
     * A fixed day.
     *
     * @param date the day of the year
     */
    record OnDate(MonthDay date) implements HarvestRule {

        @Override
        public MonthDay from() {
            return date;
        }

        @Override
        public MonthDay until() {
            return date;
        }

        @Override
        public double maxMoisturePct() {
            return 100.0;
        }

        @Override
        public double maxTopsoilWetness() {
            return 10.0;
        }
    }

    /**
     * The first day in a window on which the crop is dry enough and the ground carries a machine (frozen, or topsoil not too wet); else
     * the window's last day.
     *
     * @param from first day of the window
     * @param until last day of the window
     * @param maxMoisturePct highest moisture [% wet basis]
     * @param maxTopsoilWetness wettest topsoil (0 to 0.2 m) that carries a machine [share of field capacity]
     */
    record InWindow(MonthDay from, MonthDay until, double maxMoisturePct, double maxTopsoilWetness)
            implements HarvestRule {

        /** Refuses moistures and wetnesses outside their scales. */
        public InWindow {
            Check.range("harvest moisture limit", maxMoisturePct, "% wet basis", 1.0, 100.0);
            Check.range("topsoil wetness limit", maxTopsoilWetness, "of field capacity", 0.0, 10.0);
        }
    }
}
