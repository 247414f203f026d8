package org.thirstline.validation.published;

import java.util.Map;
import java.util.concurrent.ConcurrentSkipListMap;
import java.util.concurrent.atomic.AtomicIntegerArray;
import org.junit.jupiter.api.extension.BeforeAllCallback;
import org.junit.jupiter.api.extension.ExtensionContext;
import org.junit.jupiter.api.extension.ExtensionContext.Namespace;

/** Counts published numbers and prints the count when all tests have run. */
final class PublishedTally implements BeforeAllCallback {

    private static final int PASSED = 0;
    private static final int TRIED = 1;
    private static final int SKIPPED = 2;
    private static final Map<String, AtomicIntegerArray> COUNTS = new ConcurrentSkipListMap<>();

    static void passed(String title) {
        count(title, PASSED);
    }

    static void tried(String title) {
        count(title, TRIED);
    }

    static void skipped(String title) {
        count(title, SKIPPED);
    }

    private static void count(String title, int what) {
        COUNTS.computeIfAbsent(title, key -> new AtomicIntegerArray(3)).incrementAndGet(what);
    }

    @Override
    public void beforeAll(ExtensionContext context) {
        context.getRoot()
                .getStore(Namespace.create(PublishedTally.class))
                .getOrComputeIfAbsent(Summary.class, key -> new Summary(), Summary.class);
    }

    /** Closed by the test engine after the last test. */
    private static final class Summary implements AutoCloseable {

        @Override
        public void close() {
            int[] sums = new int[3];
            StringBuilder text = new StringBuilder("Published numbers reproduced within their stated tolerance:\n");
            COUNTS.forEach((title, counts) -> {
                text.append("  %5d of %5d%s  %s%n"
                        .formatted(
                                counts.get(PASSED),
                                counts.get(TRIED),
                                counts.get(SKIPPED) > 0 ? ", %d skipped".formatted(counts.get(SKIPPED)) : "",
                                title));
                for (int i = 0; i < sums.length; i++) {
                    sums[i] += counts.get(i);
                }
            });
            text.append("  %5d of %5d, %d skipped  in all%n".formatted(sums[PASSED], sums[TRIED], sums[SKIPPED]));
            System.out.print(text);
        }
    }
}
