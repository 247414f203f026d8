package org.thirstline.calibration.age;

import java.util.List;
import java.util.SplittableRandom;
import java.util.function.Function;
import java.util.random.RandomGenerator;
import java.util.stream.IntStream;

/** Replicates that depend on the seed and their own number only, never on threads. */
final class Replicates {

    private static final long STREAM_STEP = 0xD1B54A32D192ED03L;

    private static final long INDEX_STEP = 0x9E3779B97F4A7C15L;

    private Replicates() {}

    static <T> List<T> of(int count, long seed, long stream, Function<RandomGenerator, T> replicate) {
        return IntStream.range(0, count)
                .parallel()
                .mapToObj(index -> replicate.apply(generator(seed, stream, index)))
                .toList();
    }

    static RandomGenerator generator(long seed, long stream, int index) {
        return new SplittableRandom(mix(mix(seed + STREAM_STEP * stream) + INDEX_STEP * index));
    }

    /** Finaliser of a 64-bit hash: neighbouring seeds become unrelated ones. (Steele, Lea and Flood 2014, OOPSLA, p. 453). */
    private static long mix(long value) {
        long mixed = (value ^ (value >>> 30)) * 0xBF58476D1CE4E5B9L;
        mixed = (mixed ^ (mixed >>> 27)) * 0x94D049BB133111EBL;
        return mixed ^ (mixed >>> 31);
    }
}
