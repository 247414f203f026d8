package org.thirstline.model.error;

import java.util.Locale;

/** Input that cannot be used. The message is written for the person who supplied it; the code is for programs. */
public final class InputException extends RuntimeException {

    private static final long serialVersionUID = 1L;

    private final transient ErrorCode code;

    /**
     * Creates the exception.
     *
     * @param code which error
     * @param arguments values for the code's template
     */
    public InputException(ErrorCode code, Object... arguments) {
        super(String.format(Locale.ROOT, code.template(), arguments));
        this.code = code;
    }

    private InputException(ErrorCode code, String message, Throwable cause) {
        super(message, cause);
        this.code = code;
    }

    /** Returns which error this is. */
    public ErrorCode code() {
        return code;
    }

    /**
     * Returns the same error with the place where the input came from in front of the message.
     *
     * @param place file, line or key, e.g. {@code study.yaml:12: soil.layers[2]}
     */
    public InputException at(String place) {
        return new InputException(code, place + ": " + getMessage(), this);
    }
}
