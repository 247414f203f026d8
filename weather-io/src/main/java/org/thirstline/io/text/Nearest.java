package org.thirstline.io.text;

import java.util.Collection;
import java.util.Locale;
import java.util.Optional;

/** Finds the word somebody probably meant. */
public final class Nearest {

    private Nearest() {}

    /** Returns the candidate with the smallest edit distance, if it is close enough to be meant. */
    public static Optional<String> to(String word, Collection<String> candidates) {
        String best = null;
        int bestDistance = Math.max(2, word.length() / 3) + 1;
        for (String candidate : candidates) {
            int distance = distance(word.toLowerCase(Locale.ROOT), candidate.toLowerCase(Locale.ROOT));
            if (distance < bestDistance) {
                best = candidate;
                bestDistance = distance;
            }
        }
        return Optional.ofNullable(best);
    }

    /** Returns "; did you mean '...'?" or nothing. */
    public static String hint(String word, Collection<String> candidates) {
        return to(word, candidates)
                .map(near -> "; did you mean '" + near + "'?")
                .orElse("");
    }

    /** Insertions, deletions, replacements and swaps of neighbours that turn one word into the other. */
    static int distance(String a, String b) {
        int[][] cost = new int[a.length() + 1][b.length() + 1];
        for (int i = 0; i <= a.length(); i++) {
            for (int j = 0; j <= b.length(); j++) {
                cost[i][j] = i == 0 || j == 0 ? i + j : cheapest(cost, a, b, i, j);
            }
        }
        return cost[a.length()][b.length()];
    }

    private static int cheapest(int[][] cost, String a, String b, int i, int j) {
        int replaced = cost[i - 1][j - 1] + (a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1);
        int least = Math.min(replaced, Math.min(cost[i - 1][j], cost[i][j - 1]) + 1);
        boolean swapped = i > 1 && j > 1 && a.charAt(i - 1) == b.charAt(j - 2) && a.charAt(i - 2) == b.charAt(j - 1);
        return swapped ? Math.min(least, cost[i - 2][j - 2] + 1) : least;
    }
}
