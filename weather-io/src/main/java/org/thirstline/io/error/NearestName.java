package org.thirstline.io.error;

import java.util.Collection;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/** Finds the name that was probably meant, by the number of letters to change. */
public final class NearestName {

    private NearestName() {}

    /**
     * Returns the known name nearest to a given one.
     *
     * @param name what was found
     * @param known the names there are, at least one
     */
    public static String of(String name, Collection<String> known) {
        String nearest = known.iterator().next();
        int best = Integer.MAX_VALUE;
        for (String candidate : known) {
            int distance = distance(name.toLowerCase(Locale.ROOT), candidate.toLowerCase(Locale.ROOT));
            if (distance < best) {
                best = distance;
                nearest = candidate;
            }
        }
        return nearest;
    }

    /**
     * Returns the known name nearest to a given one if it is near enough to be a slip of the fingers, else null.
     *
     * @param name what was found
     * @param known the names there are
     * @param letters the most letters that may differ
     */
    public static @Nullable String within(String name, Collection<String> known, int letters) {
        if (known.isEmpty()) {
            return null;
        }
        String nearest = of(name, known);
        return distance(name.toLowerCase(Locale.ROOT), nearest.toLowerCase(Locale.ROOT)) <= letters ? nearest : null;
    }

    /** Number of letters to insert, remove or replace (Levenshtein 1966). */
    private static int distance(String a, String b) {
        int[] previous = new int[b.length() + 1];
        int[] current = new int[b.length() + 1];
        for (int j = 0; j <= b.length(); j++) {
            previous[j] = j;
        }
        for (int i = 1; i <= a.length(); i++) {
            current[0] = i;
            for (int j = 1; j <= b.length(); j++) {
                int replace = previous[j - 1] + (a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1);
                current[j] = Math.min(replace, 1 + Math.min(previous[j], current[j - 1]));
            }
            int[] swap = previous;
            previous = current;
            current = swap;
        }
        return previous[b.length()];
    }
}
