package org.thirstline.io.study;

import java.util.Arrays;
import java.util.List;

/**
 * Curve numbers at average wetness by cover and hydrologic soil group: NEH 630 Table 9-1 (TR-55 Table 2-2c). Only covers that a tall
 * grass may be likened to.
 */
enum CurveNumbers {
    // spotless:off — columns A, B, C, D as printed
    MEADOW("meadow", 30, 58, 71, 78),
    PASTURE_GOOD("pasture good", 39, 61, 74, 80),
    PASTURE_FAIR("pasture fair", 49, 69, 79, 84),
    PASTURE_POOR("pasture poor", 68, 79, 86, 89),
    BRUSH_GOOD("brush good", 30, 48, 65, 73),
    BRUSH_FAIR("brush fair", 35, 56, 70, 77),
    BRUSH_POOR("brush poor", 48, 67, 77, 83);
    // spotless:on

    static final List<String> GROUPS = List.of("A", "B", "C", "D");

    private final String cover;
    private final int[] byGroup;

    CurveNumbers(String cover, int... byGroup) {
        this.cover = cover;
        this.byGroup = byGroup;
    }

    static List<String> covers() {
        return Arrays.stream(values()).map(row -> row.cover).toList();
    }

    static double of(String cover, String group) {
        return Arrays.stream(values())
                .filter(row -> row.cover.equals(cover))
                .findFirst()
                .orElseThrow()
                .byGroup[GROUPS.indexOf(group)];
    }
}
