package org.thirstline.io.plots;

import java.nio.file.Path;
import java.util.List;
import org.thirstline.io.study.Study;
import org.thirstline.model.error.InputException;

/**
 * What was measured on plots. Immutable and thread-safe.
 *
 * @param yields harvested dry matter, in the order of the file
 * @param observations everything else, in the order of the file
 * @param otherSites sites in the file that are not the study's; their rows were left out
 * @param notices what was left out, and why
 * @param invented whether the file says that it is made up
 */
public record PlotTable(
        List<PlotYield> yields,
        List<PlotObservation> observations,
        List<String> otherSites,
        List<String> notices,
        boolean invented) {

    /** Copies the lists. */
    public PlotTable {
        yields = List.copyOf(yields);
        observations = List.copyOf(observations);
        otherSites = List.copyOf(otherSites);
        notices = List.copyOf(notices);
    }

    /**
     * Reads plot yields in either form, with whatever else was measured beside them.
     *
     * @param file the file
     * @param study names site and zones, and the planting where the file does not
     * @throws InputException with file, line and column, what was found and what is allowed, if anything in it cannot be used, or if there
     *     is no yield
     */
    public static PlotTable read(Path file, Study study) {
        PlotTable table = readAll(file, study);
        if (table.yields.isEmpty()) {
            throw new InputException(PlotError.NO_YIELDS).at(file.toString());
        }
        return table;
    }

    /**
     * Reads everything measured, with or without yields, also if nothing is of the study's site.
     *
     * @param file the file
     * @param study names site and zones, and the planting where the file does not
     */
    public static PlotTable readAll(Path file, Study study) {
        return new PlotReader(study).read(file);
    }
}
