package org.thirstline.cli;

import java.util.List;
import java.util.Optional;
import org.thirstline.calibration.age.DeclineFit;
import org.thirstline.calibration.age.PlotYear;
import org.thirstline.calibration.trial.AgeStudy;
import org.thirstline.io.tables.ColumnInfo;
import org.thirstline.io.tables.CsvTable;
import org.thirstline.io.tables.TableInfo;

/** {@code age.csv}: every plot yield beside what an unageing stand would have given. */
final class AgeTable {

    static final String FILE = "age.csv";
    private static final int YIELD_DECIMALS = 3;
    private static final int RATIO_DECIMALS = 4;

    private AgeTable() {}

    static TableInfo info() {
        return new TableInfo(
                FILE,
                "Plot yields beside the simulation of a stand that never ages",
                List.of(
                        ColumnInfo.text("zone", "Zone of the field"),
                        ColumnInfo.text("plot", "Plot, its block in front if there is one"),
                        ColumnInfo.integer("planting_year", "yr", "Growth year of planting"),
                        ColumnInfo.integer("growth_year", "yr", "Calendar year in which the canopy emerges"),
                        ColumnInfo.integer("stand_age", "yr", "Age of the stand in growth years, planting year = 1"),
                        ColumnInfo.number("observed_mg_ha", "Mg/ha", "Observed harvested dry matter"),
                        ColumnInfo.number(
                                "simulated_mg_ha",
                                "Mg/ha",
                                "Simulated harvest of a stand that establishes but never declines"),
                        ColumnInfo.number("observed_over_simulated", "1", "The first over the second"),
                        ColumnInfo.number(
                                "fitted_age_factor",
                                "1",
                                "Share of the yield that the fitted decline leaves at this age; not proof of a decline")));
    }

    static CsvTable of(AgeStudy study) {
        CsvTable table = new CsvTable();
        info().header(table);
        Optional<DeclineFit> fit = study.fair();
        for (PlotYear row : study.trial().data().rows()) {
            table.text(row.site())
                    .text(row.plot())
                    .whole(row.plantingYear())
                    .whole(row.growthYear())
                    .whole(row.standAge())
                    .number(row.observedMgHa(), YIELD_DECIMALS)
                    .number(row.simulatedMgHa(), YIELD_DECIMALS)
                    .number(row.observedMgHa() / row.simulatedMgHa(), RATIO_DECIMALS)
                    .number(fit.map(decline -> decline.kept(row.standAge())).orElse(Double.NaN), RATIO_DECIMALS)
                    .endRow();
        }
        return table;
    }
}
