package org.thirstline.cli;

import java.util.List;
import org.thirstline.calibration.calibrate.HeldOut;
import org.thirstline.calibration.calibrate.HeldOut.Prediction;
import org.thirstline.calibration.skill.HeldOutSkill;
import org.thirstline.calibration.skill.SkillScores;
import org.thirstline.io.tables.CsvTable;

/** The rows of {@code skill.csv}. Stateless and thread-safe. */
final class SkillRows {

    static final String ENGINE = "calibrated engine";
    static final String MEAN = "mean of the other plots";
    static final String RAIN = "line on seasonal rain";
    private static final String ALL = "all";
    private static final int DECIMALS = 3;

    private SkillRows() {}

    static void write(List<HeldOut> skill, CsvTable table) {
        for (HeldOut heldOut : skill) {
            rows(heldOut, ENGINE, heldOut.model(), table);
            rows(heldOut, MEAN, heldOut.mean(), table);
            rows(heldOut, RAIN, heldOut.rain(), table);
        }
    }

    private static void rows(HeldOut heldOut, String predictor, HeldOutSkill skill, CsvTable table) {
        boolean engine = predictor.equals(ENGINE);
        row(
                heldOut,
                ALL,
                predictor,
                skill.overall(),
                engine ? heldOut.coverage().share() : Double.NaN,
                table);
        skill.byGroup()
                .forEach((group, scores) ->
                        row(heldOut, group, predictor, scores, engine ? caught(heldOut, group) : Double.NaN, table));
    }

    private static double caught(HeldOut heldOut, String group) {
        return heldOut.predictions().stream()
                .filter(prediction -> prediction.group().equals(group))
                .mapToDouble(SkillRows::inside)
                .average()
                .orElse(Double.NaN);
    }

    private static double inside(Prediction prediction) {
        double value = prediction.observation().value();
        return value >= prediction.lower() && value <= prediction.upper() ? 1.0 : 0.0;
    }

    private static void row(
            HeldOut heldOut, String group, String predictor, SkillScores scores, double share, CsvTable table) {
        table.text(heldOut.what().word())
                .text(group)
                .text(predictor)
                .whole(scores.count())
                .number(scores.rootMeanSquareError(), DECIMALS)
                .number(scores.bias(), DECIMALS)
                .number(scores.efficiency(), DECIMALS)
                .number(scores.refinedIndex(), DECIMALS)
                .number(share, DECIMALS)
                .endRow();
    }
}
