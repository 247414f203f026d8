package org.thirstline.validation.catalogue;

import java.util.List;

/**
 * Checks that belong together.
 *
 * @param slug short name for links and picture files
 * @param title heading
 * @param note what a reader should know first; may be empty
 * @param dataFile where the numbers are, from the root of the repository
 * @param reproduced whether the rows are published results to be reproduced, rather than observations to be compared with
 * @param counted whether the rows count as independent published numbers
 * @param rows the checks
 */
public record Family(
        String slug,
        String title,
        String note,
        String dataFile,
        boolean reproduced,
        boolean counted,
        List<CheckRow> rows) {

    /** Copies the rows. */
    public Family {
        rows = List.copyOf(rows);
    }

    /** Returns how many rows came out so. */
    public long count(Verdict verdict) {
        return rows.stream().filter(row -> row.verdict() == verdict).count();
    }

    /** Returns how many rows could be judged. */
    public long judged() {
        return count(Verdict.PASS) + count(Verdict.MISS);
    }
}
