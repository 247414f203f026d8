package org.thirstline.calibration.bands;

import java.util.Arrays;
import java.util.List;
import java.util.OptionalInt;
import java.util.function.IntToDoubleFunction;
import java.util.stream.IntStream;
import org.thirstline.calibration.response.StraightLine;

/** The yields of a zone under every draw. Immutable and thread-safe. */
public final class ZoneBands {

    private static final int LINE_YEARS = 3;

    private final String zone;
    private final int[] years;
    private final double[][] harvested;
    private final double[][] potential;

    /**
     * Takes yields.
     *
     * @param zone name of the zone
     * @param years growth years in order
     * @param harvested harvest by draw and year [Mg/ha], NaN where a draw has none
     * @param potential the same without lack of water
     */
    ZoneBands(String zone, int[] years, double[][] harvested, double[][] potential) {
        this.zone = zone;
        this.years = years;
        this.harvested = harvested;
        this.potential = potential;
    }

    /** Returns the name of the zone. */
    public String zone() {
        return zone;
    }

    /** Returns the number of draws. */
    public int draws() {
        return harvested.length;
    }

    /** Returns a copy of the growth years. */
    public int[] years() {
        return years.clone();
    }

    /**
     * Returns the harvest of a year under one draw [Mg/ha]; NaN where it has none.
     *
     * @param draw from 0 on
     * @param growthYear the year
     */
    public double harvested(int draw, int growthYear) {
        OptionalInt place = place(growthYear);
        return place.isEmpty() ? Double.NaN : harvested[draw][place.getAsInt()];
    }

    private double penalty(int draw, int growthYear) {
        OptionalInt place = place(growthYear);
        return place.isEmpty() ? Double.NaN : potential[draw][place.getAsInt()] - harvested[draw][place.getAsInt()];
    }

    private OptionalInt place(int growthYear) {
        int place = Arrays.binarySearch(years, growthYear);
        return place < 0 ? OptionalInt.empty() : OptionalInt.of(place);
    }

    /** Returns the band of a year's harvest [Mg/ha]. */
    public Band harvested(int growthYear) {
        return Band.of(harvests(growthYear));
    }

    /** Returns the band of a year's drought penalty [Mg/ha]: with and without lack of water in the same draw. */
    public Band penalty(int growthYear) {
        return over(draw -> penalty(draw, growthYear));
    }

    /** Returns the band of a year's harvest without lack of water [Mg/ha]. */
    public Band potential(int growthYear) {
        return over(draw -> harvested(draw, growthYear) + penalty(draw, growthYear));
    }

    /**
     * Returns where the yield of a single plot would be measured [Mg/ha].
     *
     * @param growthYear the year
     * @param error what the calibration left over
     */
    public Band measured(int growthYear, PlotError error) {
        return error.measured(harvests(growthYear));
    }

    private double[] harvests(int growthYear) {
        return IntStream.range(0, draws())
                .mapToDouble(draw -> harvested(draw, growthYear))
                .toArray();
    }

    /** Returns the band of the mean harvest of some years [Mg/ha]; a draw's mean is of those it has. */
    public Band meanHarvested(List<Integer> of) {
        return over(draw -> mean(of, year -> harvested(draw, year)));
    }

    /** Returns the band of the mean drought penalty of some years [Mg/ha]. */
    public Band meanPenalty(List<Integer> of) {
        return over(draw -> mean(of, year -> penalty(draw, year)));
    }

    /** Returns the band of how much less one year yields than another [Mg/ha], both in the same draw. */
    public Band harvestGap(int poorer, int better) {
        return over(draw -> harvested(draw, better) - harvested(draw, poorer));
    }

    /** Returns the band of how much larger one year's drought penalty is than another's [Mg/ha], both in the same draw. */
    public Band penaltyGap(int poorer, int better) {
        return over(draw -> penalty(draw, poorer) - penalty(draw, better));
    }

    /** Returns the smallest number of draws that have a harvest, over some years. */
    public int fewestDraws(List<Integer> of) {
        return of.stream().mapToInt(year -> harvested(year).draws()).min().orElse(0);
    }

    private static double mean(List<Integer> years, IntToDoubleFunction value) {
        return years.stream()
                .mapToDouble(value::applyAsDouble)
                .filter(number -> !Double.isNaN(number))
                .average()
                .orElse(Double.NaN);
    }

    /**
     * Returns the band of the slope of the straight line of drought penalty on dryness [Mg/ha per mm].
     *
     * @param of years of the line; not modified
     * @param drynessMm dryness of each [mm]; not modified
     */
    public Band slope(int[] of, double[] drynessMm) {
        return over(draw -> slope(draw, of, drynessMm));
    }

    private double slope(int draw, int[] of, double[] drynessMm) {
        int[] there = IntStream.range(0, of.length)
                .filter(i -> !Double.isNaN(penalty(draw, of[i])))
                .toArray();
        double[] x = Arrays.stream(there).mapToDouble(i -> drynessMm[i]).toArray();
        double[] y = Arrays.stream(there).mapToDouble(i -> penalty(draw, of[i])).toArray();
        boolean spread = Arrays.stream(x).distinct().count() > 1;
        return there.length < LINE_YEARS || !spread
                ? Double.NaN
                : StraightLine.fit(x, y).slope();
    }

    private Band over(IntToDoubleFunction value) {
        return Band.of(IntStream.range(0, draws()).mapToDouble(value).toArray());
    }
}
