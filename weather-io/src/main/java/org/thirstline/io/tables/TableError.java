package org.thirstline.io.tables;

import org.thirstline.model.error.ErrorCode;

/** What can stand in the way of a table that is written in parts. */
public enum TableError implements ErrorCode {
    /** Partial file, parts in it. */
    UNFINISHED("%s holds an unfinished table (%s cells); give --resume to continue it, or remove it to start anew"),
    /** Partial file. */
    OF_OTHER_INPUT("%s was begun with other input, options or another version; remove it to start anew");

    private final String template;

    TableError(String template) {
        this.template = template;
    }

    @Override
    public String template() {
        return template;
    }
}
