package org.thirstline.model.units;

/** The saturating rise 1 - exp(-x) that light, leaf, height and litter share. Stateless and thread-safe. */
public final class Rise {

    private Rise() {}

    /**
     * Returns 1 - exp(-x), to 1e-16 of full saturation. {@link Math#expm1} would be exact in small values too, which no use here asks for, and is
     * several times slower: the virtual machine has its own code for {@link Math#exp} alone.
     *
     * @param x 0 or more
     */
    public static double of(double x) {
        return 1.0 - Math.exp(-x);
    }
}
