package org.thirstline.cli;

import static org.assertj.core.api.Assertions.assertThatCode;

import org.junit.jupiter.api.Test;

/** What is loaded early fails silently in the background, so that only a test sees it. */
class EarlyLoadingTest {

    @Test
    void whatIsLoadedEarlyCanBeLoaded() {
        assertThatCode(EarlyLoading::load).doesNotThrowAnyException();
    }
}
