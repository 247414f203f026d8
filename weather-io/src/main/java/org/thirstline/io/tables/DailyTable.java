package org.thirstline.io.tables;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.SortedSet;
import java.util.TreeSet;
import org.thirstline.model.result.DailyResults;
import org.thirstline.model.result.DailyVariable;

/**
 * The table of days: one row for each zone and day. Soil water has a column for each layer of any zone, named for the
 * depth of its lower edge and empty where a zone has no layer that ends there.
 */
public final class DailyTable {

    /** File name inside the result folder. */
    public static final String FILE = "daily.csv";

    private static final int ROWS_AT_ONCE = 256;
    private static final int WATER_DECIMALS = Decimals.of("mm");
    private static final DailyVariable[] VARIABLES = DailyVariable.values();

    private DailyTable() {}

    /**
     * The days of a zone.
     *
     * @param zone its name
     * @param days its days
     */
    public record ZoneDays(String zone, DailyResults days) {}

    /** Returns what the table of these zones holds. */
    public static TableInfo info(List<ZoneDays> zones) {
        List<ColumnInfo> columns = new ArrayList<>();
        columns.add(ColumnInfo.text("zone", "Zone of the field"));
        columns.add(ColumnInfo.date("date", "Day"));
        for (DailyVariable variable : VARIABLES) {
            columns.add(ColumnInfo.number(variable.column(), variable.unit(), variable.meaning()));
        }
        for (int bottomCm : bottomsCm(zones)) {
            columns.add(ColumnInfo.number(
                    "soil_water_" + bottomCm + "cm_mm",
                    "mm",
                    "Water in the soil layer whose lower edge is at " + bottomCm + " cm"));
        }
        return new TableInfo(FILE, "Days by zone", columns);
    }

    /** Writes the table to a new or emptied file, some rows at a time: the whole would fill more memory than all else of a run. */
    public static void write(List<ZoneDays> zones, Path file) throws IOException {
        try (OutputStream out = Files.newOutputStream(file)) {
            CsvTable table = new CsvTable();
            info(zones).header(table);
            List<Integer> bottoms = bottomsCm(zones);
            for (ZoneDays zone : zones) {
                rows(table, zone, layerOfColumn(zone.days(), bottoms), out);
            }
            table.moveTo(out);
        }
    }

    private static void rows(CsvTable table, ZoneDays zone, int[] layerOfColumn, OutputStream out) throws IOException {
        DailyResults days = zone.days();
        int[] decimals = new int[VARIABLES.length];
        for (DailyVariable variable : VARIABLES) {
            decimals[variable.ordinal()] = Decimals.of(variable.unit());
        }
        LocalDate date = days.start();
        for (int day = 0; day < days.days(); day++) {
            table.text(zone.zone()).date(date);
            for (int i = 0; i < VARIABLES.length; i++) {
                table.number(days.at(VARIABLES[i], day), decimals[i]);
            }
            for (int layer : layerOfColumn) {
                table.number(layer < 0 ? Double.NaN : days.soilWaterMm(layer, day), WATER_DECIMALS);
            }
            table.endRow();
            date = date.plusDays(1);
            if (day % ROWS_AT_ONCE == ROWS_AT_ONCE - 1) {
                table.moveTo(out);
            }
        }
    }

    /** Lower edges of the layers of all zones, from the surface down. */
    private static List<Integer> bottomsCm(List<ZoneDays> zones) {
        SortedSet<Integer> bottoms = new TreeSet<>();
        for (ZoneDays zone : zones) {
            for (int layer = 0; layer < zone.days().layers(); layer++) {
                bottoms.add(bottomCm(zone.days(), layer));
            }
        }
        return List.copyOf(bottoms);
    }

    private static int[] layerOfColumn(DailyResults days, List<Integer> bottoms) {
        int[] layers = new int[bottoms.size()];
        Arrays.fill(layers, -1);
        for (int layer = 0; layer < days.layers(); layer++) {
            layers[bottoms.indexOf(bottomCm(days, layer))] = layer;
        }
        return layers;
    }

    private static int bottomCm(DailyResults days, int layer) {
        return (int) Math.round(100.0 * days.layerBottomM(layer));
    }
}
