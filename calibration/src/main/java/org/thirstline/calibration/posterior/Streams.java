package org.thirstline.calibration.posterior;

import java.util.SplittableRandom;

/** Random streams that depend only on the seed, the chain and the block, so that no thread can change what a chain draws. */
final class Streams {

    private Streams() {}

    static SplittableRandom of(long seed, long chain, long block) {
        return new SplittableRandom(mix(mix(mix(seed) + chain) + block));
    }

    /** Stafford's variant 13 of the MurmurHash3 finalizer, after a step of the golden ratio. */
    private static long mix(long value) {
        long z = value + 0x9e3779b97f4a7c15L;
        z = (z ^ (z >>> 30)) * 0xbf58476d1ce4e5b9L;
        z = (z ^ (z >>> 27)) * 0x94d049bb133111ebL;
        return z ^ (z >>> 31);
    }
}
