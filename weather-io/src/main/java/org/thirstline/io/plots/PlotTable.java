package org.thirstline.io.plots;

import java.nio.file.Path;
import java.util.List;
import org.thirstline.io.study.Study;
import org.thirstline.model.error.InputException;

/**
 * Yields of plots. Immutable and thread-safe.
 *
 * @param yields in the order of the file
 * @param notices what was left out, and why
 * @param invented whether the file says that it is made up
 */
public record PlotTable(List<PlotYield> yields, List<String> notices, boolean invented) {

    /** Copies the lists. */
    public PlotTable {
        yields = List.copyOf(yields);
        notices = List.copyOf(notices);
    }

    /**
     * Reads plot data in either form.
     *
     * @param file the file
     * @param study names the zones, and the planting where the file does not
     * @throws InputException with file, line and column, what was found and what is allowed, if anything in it cannot be used
     */
    public static PlotTable read(Path file, Study study) {
        return new PlotReader(study).read(file);
    }
}
