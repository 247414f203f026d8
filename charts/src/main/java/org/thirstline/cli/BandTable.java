package org.thirstline.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.thirstline.calibration.bands.Band;
import org.thirstline.calibration.bands.PlotError;
import org.thirstline.calibration.bands.StudyBands;
import org.thirstline.calibration.bands.ZoneBands;
import org.thirstline.calibration.study.StudyOutcome;
import org.thirstline.calibration.study.ZoneOutcome;
import org.thirstline.io.tables.ColumnInfo;
import org.thirstline.io.tables.CsvTable;
import org.thirstline.io.tables.TableInfo;
import org.thirstline.model.result.SeasonRecord;
import org.thirstline.model.result.SeasonVariable;

/** {@code bands.csv}: what the calibration of the crop leaves possible of each year's yields. Stateless and thread-safe. */
final class BandTable {

    private static final String FILE = "bands.csv";
    private static final int DECIMALS = 3;
    private static final String[] QUANTILES = {"5", "25", "50", "75", "95"};

    private BandTable() {}

    /** Returns the table of a study; none without bands. */
    static Optional<ResultTable> of(StudyOutcome outcome) {
        return outcome.bands().map(bands -> {
            ResultTable result = ResultTable.start(info(bands));
            for (ZoneOutcome zone : outcome.zones()) {
                for (SeasonRecord season : zone.stand().seasons()) {
                    row(result.table(), zone.zone().name(), season, bands);
                }
            }
            return result;
        });
    }

    private static TableInfo info(StudyBands bands) {
        List<ColumnInfo> columns = new ArrayList<>(List.of(
                ColumnInfo.text("zone", "Zone of the field"),
                ColumnInfo.integer("growth_year", "yr", "Calendar year in which the canopy emerges"),
                ColumnInfo.integer("stand_age", "yr", "Age of the stand, 1 in the planting year"),
                ColumnInfo.integer("draws", "1", "Draws of the calibrated parameters in which the year has a yield"),
                ColumnInfo.number("harvested_mg_ha", "Mg/ha", "Harvest with the values of the crop file")));
        columns.addAll(quantiles("harvested", "harvested dry matter"));
        columns.addAll(quantiles("drought_penalty", "drought penalty, both stands of one draw"));
        columns.addAll(quantiles("potential_harvested", "harvested dry matter without lack of water"));
        columns.addAll(quantiles(
                "plot_yield",
                bands.plotError().isPresent()
                        ? "what would be measured on a single plot: the same, and the error that the calibration left over in yields"
                        : "what would be measured on a single plot; empty, for the crop file has no error of yields that holds for"
                                + " other plots"));
        return new TableInfo(
                FILE,
                "Quantiles of yields over draws of the calibrated parameters, by zone and year; weather that these years have not seen is"
                        + " not in them",
                columns);
    }

    private static List<ColumnInfo> quantiles(String name, String meaning) {
        List<ColumnInfo> columns = new ArrayList<>();
        for (String quantile : QUANTILES) {
            columns.add(ColumnInfo.number(
                    name + "_" + quantile + "_pct_mg_ha", "Mg/ha", quantile + " % quantile of " + meaning));
        }
        return columns;
    }

    private static void row(CsvTable table, String zone, SeasonRecord season, StudyBands bands) {
        int year = season.growthYear();
        ZoneBands ofZone = bands.zone(zone);
        Band harvested = ofZone.harvested(year);
        table.text(zone)
                .whole(year)
                .whole(season.standAge())
                .whole(harvested.draws())
                .number(season.value(SeasonVariable.HARVESTED), DECIMALS);
        quantiles(table, harvested);
        quantiles(table, ofZone.penalty(year));
        quantiles(table, ofZone.potential(year));
        Optional<PlotError> error = bands.plotError();
        quantiles(table, error.map(of -> ofZone.measured(year, of)).orElseGet(() -> Band.of(new double[0])));
        table.endRow();
    }

    private static void quantiles(CsvTable table, Band band) {
        for (double quantile : band.quantiles()) {
            table.number(quantile, DECIMALS);
        }
    }
}
