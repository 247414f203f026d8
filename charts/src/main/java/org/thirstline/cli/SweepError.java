package org.thirstline.cli;

import org.thirstline.model.error.ErrorCode;

/** Why a sweep as a whole has no result. */
enum SweepError implements ErrorCode {
    /** Number of cells, reason of the first. */
    NO_CELL_HAS_A_YIELD("none of the %s cells has a usable yield; the first: %s");

    private final String template;

    SweepError(String template) {
        this.template = template;
    }

    @Override
    public String template() {
        return template;
    }
}
