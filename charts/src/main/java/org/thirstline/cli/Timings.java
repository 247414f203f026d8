package org.thirstline.cli;

import java.util.LinkedHashMap;
import java.util.Map;

/** Seconds by step of a run. Confined to one run. */
final class Timings {

    private static final double NANOS = 1e-9;

    private final Map<String, Double> seconds = new LinkedHashMap<>();
    private long last = System.nanoTime();

    /** Ends a step. */
    void step(String name) {
        long now = System.nanoTime();
        seconds.merge(name, (now - last) * NANOS, Double::sum);
        last = now;
    }

    Map<String, Double> seconds() {
        return new LinkedHashMap<>(seconds);
    }
}
