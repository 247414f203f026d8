package org.thirstline.model.climate;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.thirstline.model.error.InputException;
import org.thirstline.model.error.ModelError;

/**
 * Normal rain of a window: the mean over the usable years of a period. Immutable and thread-safe.
 *
 * @param period the period that was asked for
 * @param yearsUsed growth years behind the mean, in order
 * @param yearsLeftOut growth years of the period that the weather holds but that have too many filled rain days
 * @param meanRainMm mean rain of the window [mm]
 */
public record Normals(NormalPeriod period, List<Integer> yearsUsed, List<Integer> yearsLeftOut, double meanRainMm) {

    /** Years that make a climatological normal (WMO-No. 1203, 2017). */
    public static final int STANDARD_YEARS = 30;

    /** Copies the lists. */
    public Normals {
        yearsUsed = List.copyOf(yearsUsed);
        yearsLeftOut = List.copyOf(yearsLeftOut);
    }

    /**
     * Averages rain over the usable years of a period.
     *
     * @param years rain of each growth year
     * @param period which of them may count
     * @throws InputException if no year is usable
     */
    public static Normals of(List<WindowRain> years, NormalPeriod period) {
        List<Integer> used = new ArrayList<>();
        List<Integer> leftOut = new ArrayList<>();
        double sum = 0.0;
        for (WindowRain year : years) {
            if (period.accepts(year)) {
                used.add(year.growthYear());
                sum += year.rainMm();
            } else if (period.contains(year.growthYear())) {
                leftOut.add(year.growthYear());
            }
        }
        if (used.isEmpty()) {
            throw new InputException(
                    ModelError.INCONSISTENT,
                    "no growth year from " + period.firstYear() + " to " + period.lastYear()
                            + " has enough measured rain to say what is normal");
        }
        return new Normals(period, used, leftOut, sum / used.size());
    }

    /** Returns what a reader must know when the normal rests on fewer than {@value #STANDARD_YEARS} years. */
    public Optional<String> notice() {
        if (yearsUsed.size() >= STANDARD_YEARS) {
            return Optional.empty();
        }
        String leftOut = yearsLeftOut.isEmpty()
                ? ""
                : "; left out for missing rain: " + yearsLeftOut.toString().replaceAll("[\\[\\]]", "");
        return Optional.of("The normal rests on " + yearsUsed.size() + (yearsUsed.size() == 1 ? " year" : " years")
                + " between " + yearsUsed.get(0) + " and " + yearsUsed.get(yearsUsed.size() - 1) + " instead of the "
                + STANDARD_YEARS + " that the World Meteorological Organization asks for" + leftOut + ".");
    }
}
