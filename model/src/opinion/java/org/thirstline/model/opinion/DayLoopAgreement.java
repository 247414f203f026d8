package org.thirstline.model.opinion;

import org.thirstline.model.result.DailyVariable;
import org.thirstline.model.result.SeasonRecord;
import org.thirstline.model.result.SeasonVariable;
import org.thirstline.model.result.StandResult;

/** Compares the engine with {@link PlainDayLoop}: every column of every day, every layer, every harvest. */
public final class DayLoopAgreement {

    private static final double AGREEMENT = 1.0e-9;

    private DayLoopAgreement() {}

    /** Throws at the first number that is not the same. */
    public static void check(PlainDayLoop plain, StandResult engine) {
        plain.columns.forEach((variable, column) -> agree(variable, column, engine));
        for (int layer = 0; layer < engine.daily().layers(); layer++) {
            for (int day = 0; day < plain.soilWater[layer].length; day++) {
                if (!same(plain.soilWater[layer][day], engine.daily().soilWaterMm(layer, day))) {
                    throw new AssertionError("water of layer %d on %s"
                            .formatted(layer, engine.daily().date(day)));
                }
            }
        }
        for (SeasonRecord season : engine.completeSeasons()) {
            double ours = season.value(SeasonVariable.HARVESTED);
            Double theirs = plain.harvestedMgHa.get(season.growthYear());
            if (theirs == null || !same(theirs, ours)) {
                throw new AssertionError(
                        "harvest of %d: engine %s, plain loop %s".formatted(season.growthYear(), ours, theirs));
            }
        }
    }

    private static void agree(DailyVariable variable, double[] column, StandResult engine) {
        for (int day = 0; day < column.length; day++) {
            double ours = engine.daily().at(variable, day);
            if (!same(column[day], ours)) {
                throw new AssertionError("%s on %s: engine %s, plain loop %s"
                        .formatted(variable.column(), engine.daily().date(day), ours, column[day]));
            }
        }
    }

    private static boolean same(double plain, double engine) {
        return Double.isNaN(engine)
                ? Double.isNaN(plain)
                : Math.abs(plain - engine) <= AGREEMENT * Math.max(1.0, Math.abs(engine));
    }
}
