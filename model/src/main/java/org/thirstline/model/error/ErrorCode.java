package org.thirstline.model.error;

/** What went wrong, independent of the wording of the message. Implemented by the enums that list the errors of a module. */
public interface ErrorCode {

    /** Returns the constant's name, the stable identifier of the error. */
    String name();

    /** Returns the message pattern, with {@link String#format} placeholders. */
    String template();
}
