package org.thirstline.calibration.response;

import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.thirstline.calibration.error.CalibrationError;
import org.thirstline.model.error.InputException;

/**
 * Drought penalty as a function of rainfall deficit, over years. Immutable and thread-safe. Intervals are at 95 % and treat years as
 * independent.
 */
public final class DroughtResponse {

    /** Years below which no line is drawn (our choice). */
    public static final int MINIMUM_YEARS = 5;

    /** Gain in the information criterion that a broken line must bring (Burnham and Anderson 2002, p. 70: under 2 is no difference). */
    private static final double NEEDED_GAIN = 2.0;

    /** Parameters of each line, the residual variance included. */
    private static final int STRAIGHT_PARAMETERS = 3;

    private static final int BROKEN_PARAMETERS = 4;

    /** Share of the total sum of squares below which scatter is rounding. */
    private static final double ROUNDING = 1.0e-14;

    private final int n;
    private final ResponseVerdict verdict;
    private final @Nullable StraightLine line;
    private final @Nullable RobustLine robustLine;
    private final @Nullable BrokenLine brokenLine;
    private final double brokenLineGain;
    private final List<YearInfluence> influences;
    private final double[] deficits;

    private DroughtResponse(double[] deficit, double[] penalty, int[] years) {
        n = years.length;
        deficits = deficit.clone();
        boolean fitted = n >= MINIMUM_YEARS && hasSpread(deficit);
        line = fitted ? StraightLine.fit(deficit, penalty) : null;
        robustLine = fitted ? RobustLine.fit(deficit, penalty) : null;
        brokenLine = fitted ? BrokenLine.fit(deficit, penalty).orElse(null) : null;
        brokenLineGain = gain(n, line, brokenLine);
        influences = line == null ? List.of() : YearInfluence.of(deficit, penalty, years, line);
        verdict = verdict(n, line);
    }

    /**
     * Fits the response.
     *
     * @param deficitMm rainfall deficit of each year [mm], positive when dry; not modified
     * @param penaltyMgHa drought penalty of each year [Mg/ha], positive when lost; not modified
     * @param years the years, each once; not modified
     * @throws InputException if lengths differ, a value is not finite, or a year appears twice
     */
    public static DroughtResponse fit(double[] deficitMm, double[] penaltyMgHa, int[] years) {
        requireLength("rainfall deficit", deficitMm.length, years.length);
        requireLength("drought penalty", penaltyMgHa.length, years.length);
        Set<Integer> seen = new HashSet<>();
        for (int i = 0; i < years.length; i++) {
            requireFinite("rainfall deficit", years[i], deficitMm[i]);
            requireFinite("drought penalty", years[i], penaltyMgHa[i]);
            if (!seen.add(years[i])) {
                throw new InputException(CalibrationError.YEAR_TWICE, years[i]);
            }
        }
        return new DroughtResponse(deficitMm, penaltyMgHa, years);
    }

    private static void requireLength(String what, int length, int years) {
        if (length != years) {
            throw new InputException(CalibrationError.LENGTHS_DIFFER, what, length, "years", years);
        }
    }

    private static void requireFinite(String what, int year, double value) {
        if (!Double.isFinite(value)) {
            throw new InputException(CalibrationError.VALUE_NOT_FINITE, what, year, value);
        }
    }

    private static boolean hasSpread(double[] values) {
        for (double value : values) {
            if (value != values[0]) {
                return true;
            }
        }
        return false;
    }

    private static ResponseVerdict verdict(int n, @Nullable StraightLine line) {
        if (n < MINIMUM_YEARS) {
            return ResponseVerdict.TOO_FEW_YEARS;
        }
        if (line == null) {
            return ResponseVerdict.NO_SPREAD;
        }
        if (line.slopeInterval().contains(0.0)) {
            return ResponseVerdict.NOT_DISTINGUISHABLE;
        }
        return line.slope() > 0.0 ? ResponseVerdict.LOSS_GROWS : ResponseVerdict.LOSS_SHRINKS;
    }

    /** Returns how much lower the criterion is with the broken line; NaN where it cannot be compared. */
    private static double gain(int n, @Nullable StraightLine line, @Nullable BrokenLine broken) {
        if (line == null || broken == null || n <= BROKEN_PARAMETERS + 1) {
            return Double.NaN;
        }
        double scatter = line.residualSumOfSquares();
        double rounding = ROUNDING * (line.slope() * line.slope() * line.sumSquaresX() + scatter);
        if (scatter <= rounding) {
            return Double.NaN;
        }
        return criterion(n, scatter, STRAIGHT_PARAMETERS)
                - criterion(n, Math.max(rounding, broken.residualSumOfSquares()), BROKEN_PARAMETERS);
    }

    /** AICc of a least-squares fit (Hurvich and Tsai 1989), up to a constant. */
    private static double criterion(int n, double residualSumOfSquares, int parameters) {
        return n * Math.log(residualSumOfSquares / n)
                + 2.0 * parameters
                + 2.0 * parameters * (parameters + 1.0) / (n - parameters - 1.0);
    }

    /** Returns the number of years. */
    public int n() {
        return n;
    }

    /** Returns what the years can say. */
    public ResponseVerdict verdict() {
        return verdict;
    }

    /** Returns the straight line; absent with too few years or no spread in deficit. */
    public Optional<StraightLine> line() {
        return Optional.ofNullable(line);
    }

    /** Returns the Theil-Sen line; absent with too few years or no spread in deficit. */
    public Optional<RobustLine> robustLine() {
        return Optional.ofNullable(robustLine);
    }

    /** Returns the broken line, but only if it describes the years better than the straight one by more than 2 in AICc. */
    public Optional<BrokenLine> brokenLine() {
        return brokenLineGain > NEEDED_GAIN ? Optional.ofNullable(brokenLine) : Optional.empty();
    }

    /**
     * Returns the loss on the line that describes the years best, broken or straight; absent without a line.
     *
     * @param deficitMm rainfall deficit [mm]
     */
    public OptionalDouble expected(double deficitMm) {
        Optional<BrokenLine> broken = brokenLine();
        if (broken.isPresent()) {
            return OptionalDouble.of(broken.get().at(deficitMm));
        }
        return line == null ? OptionalDouble.empty() : OptionalDouble.of(line.at(deficitMm));
    }

    /**
     * Returns the 95 % interval of a single year's loss about {@link #expected}; absent without a line.
     *
     * @param deficitMm rainfall deficit [mm]
     */
    public Optional<Interval> predictionBand(double deficitMm) {
        Optional<BrokenLine> broken = brokenLine();
        return broken.isPresent()
                ? Optional.of(broken.get().predictionBand(deficitMm, deficits))
                : line().map(straight -> straight.predictionBand(deficitMm));
    }

    /** Returns AICc of the straight line minus AICc of the best broken line; NaN where there is nothing to compare. */
    public double brokenLineGain() {
        return brokenLineGain;
    }

    /** Returns what each year does to the straight line, strongest first; empty without a line. */
    public List<YearInfluence> influences() {
        return influences;
    }

    /** Returns the years that pull the line more than 4/n in Cook's distance, strongest first. */
    public List<Integer> influentialYears() {
        return influences.stream()
                .filter(influence -> influence.isStrong(n))
                .map(YearInfluence::year)
                .toList();
    }

    /** Returns smallest and largest slope of the straight line with any one year left out; absent without a line. */
    public Optional<Interval> slopeWithoutAnyYear() {
        double[] slopes = influences.stream()
                .mapToDouble(YearInfluence::slopeWithout)
                .filter(slope -> !Double.isNaN(slope))
                .sorted()
                .toArray();
        return slopes.length == 0 ? Optional.empty() : Optional.of(new Interval(slopes[0], slopes[slopes.length - 1]));
    }

    /** Returns the findings in words. */
    public ResponseWords words() {
        return new ResponseWords(this);
    }
}
