package org.thirstline.io.weather;

import java.util.LinkedHashSet;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.thirstline.io.error.InputError;
import org.thirstline.model.error.InputException;

/** Keeps to one station of a file: the one asked for, or the only one there is. Confined to one read. */
final class Stations {

    private static final int MOST_LISTED = 10;

    private final @Nullable String wanted;
    private final Set<String> seen = new LinkedHashSet<>();
    private boolean found;

    Stations(@Nullable String wanted) {
        this.wanted = wanted;
    }

    /** Returns whether a line of this station is to be read; fails early in a file of many when none was asked for. */
    boolean accepts(String station) {
        if (wanted != null) {
            boolean same = station.equalsIgnoreCase(wanted);
            found |= same;
            if (!same && seen.size() < MOST_LISTED) {
                seen.add(station);
            }
            return same;
        }
        if (seen.size() < MOST_LISTED) {
            seen.add(station);
        } else {
            finish();
        }
        return seen.size() == 1;
    }

    /** Returns whether a comma-separated line surely is of another station than the one asked for, without cutting it up. */
    boolean skips(String line) {
        if (wanted == null || line.regionMatches(true, 0, wanted, 0, wanted.length())) {
            return false;
        }
        int comma = line.indexOf(',');
        if (comma > 0 && seen.size() < MOST_LISTED) {
            seen.add(line.substring(0, comma));
        }
        return comma > 0;
    }

    /** At the end of the file: fails if there were several stations and none was asked for, or not the one asked for. */
    void finish() {
        String list = String.join(", ", seen) + (seen.size() == MOST_LISTED ? ", ..." : "");
        if (wanted == null && seen.size() > 1) {
            throw new InputException(InputError.STATION_NEEDED, list);
        }
        if (wanted != null && !found) {
            throw new InputException(InputError.STATION_NOT_FOUND, wanted, seen.isEmpty() ? "none" : list);
        }
    }

    /** Returns the station read, or null if there was none. */
    @Nullable
    String station() {
        return wanted != null ? wanted : seen.isEmpty() ? null : seen.iterator().next();
    }
}
