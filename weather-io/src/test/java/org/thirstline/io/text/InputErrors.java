package org.thirstline.io.text;

import static org.assertj.core.api.Assertions.assertThat;

import org.assertj.core.api.Assertions;
import org.assertj.core.api.ThrowableAssert.ThrowingCallable;
import org.thirstline.model.error.ErrorCode;
import org.thirstline.model.error.InputException;

/** Assertions on refusals: the code is for programs, the message for people. */
public final class InputErrors {

    private InputErrors() {}

    /** Asserts the code and every part of the message. */
    public static void assertRefused(ThrowingCallable call, ErrorCode code, String... parts) {
        InputException refused = Assertions.catchThrowableOfType(InputException.class, call);
        assertThat(refused).as("refusal with %s", code).isNotNull();
        assertThat(refused).hasMessageContainingAll(parts);
        assertThat(refused.code()).as(refused.getMessage()).isEqualTo(code);
        assertThat(refused.getMessage()).doesNotContain("\n");
    }
}
