package org.thirstline.io.text;

import org.thirstline.model.error.ErrorCode;

/** What can be wrong in a file that a person wrote. The place is put in front of the message. */
public enum InputFileError implements ErrorCode {
    /** Reason. */
    SYNTAX("cannot be read: %s"),
    /** Reason. */
    UNREADABLE("cannot be read: %s"),
    /** Found key, suggestion, allowed keys. */
    UNKNOWN_KEY("unknown key '%s'%s; allowed here: %s"),
    /** Key, line of the first. */
    DUPLICATE_KEY("key '%s' is given twice, first on line %s"),
    /** Key, meaning, example. */
    MISSING_KEY("'%s' is missing (%s); for example '%s'"),
    /** Found value, first way to write it, second way. */
    MISSING_UNIT("found '%s' without a unit; write '%s' or '%s'"),
    /** Found text, unit, what it should measure, allowed units. */
    WRONG_UNIT("found '%s', but '%s' is not a unit of %s; allowed: %s"),
    /** Found, expected. */
    WRONG_KIND("found %s; expected %s"),
    /** Found, allowed, suggestion. */
    NOT_ALLOWED("found '%s'; allowed: %s%s"),
    /** Found, lowest, highest, unit. */
    OUT_OF_RANGE("found %s; allowed is %s to %s %s"),
    /** Found, expected. */
    BAD_DATE("found '%s'; expected %s"),
    /** Referenced file, where it was looked for. */
    FILE_NOT_FOUND("file '%s' was not found; looked for %s"),
    /** First, second, advice. */
    CONFLICT("%s and %s cannot both be given; %s"),
    /** Name, line of the first. */
    DUPLICATE_NAME("the name '%s' is used twice, first on line %s"),
    /** Reason. */
    INCONSISTENT("%s"),
    /** File. */
    FILE_EXISTS("%s exists already; nothing was written");

    private final String template;

    InputFileError(String template) {
        this.template = template;
    }

    @Override
    public String template() {
        return template;
    }
}
