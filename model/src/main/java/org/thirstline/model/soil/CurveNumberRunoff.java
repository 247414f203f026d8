package org.thirstline.model.soil;

import org.thirstline.model.units.Bound;

/**
 * Storm runoff by curve number, NEH 630 chapter 10: Q = (P - 0.2 S)² / (P + 0.8 S), S = 25400 / CN - 254 mm. The retention moves with the
 * wetness of the topsoil between the dry and the wet antecedent condition. Immutable and thread-safe.
 */
public final class CurveNumberRunoff {

    private static final double ABSTRACTION_SHARE = 0.2;

    private final double dryCurveNumber;
    private final double curveNumber;
    private final double wetCurveNumber;

    /**
     * Creates the process.
     *
     * @param curveNumber CN at average wetness (antecedent condition II)
     */
    public CurveNumberRunoff(double curveNumber) {
        this.curveNumber = curveNumber;
        this.dryCurveNumber = dryCondition(curveNumber);
        this.wetCurveNumber = wetCondition(curveNumber);
    }

    /**
     * CN of the dry antecedent condition I, fitted to NEH 630 Table 10-1 (Hawkins et al. 1985, J. Irrig. Drain. Eng. 111:330, from
     * memory).
     *
     * @param curveNumber CN II
     * @return CN I
     */
    public static double dryCondition(double curveNumber) {
        return curveNumber / (2.281 - 0.01281 * curveNumber);
    }

    /**
     * CN of the wet antecedent condition III, same source.
     *
     * @param curveNumber CN II
     * @return CN III
     */
    public static double wetCondition(double curveNumber) {
        return curveNumber / (0.427 + 0.00573 * curveNumber);
    }

    /**
     * Potential retention S.
     *
     * @param curveNumber CN, 0 &lt; CN ≤ 100
     * @return S [mm]
     */
    public static double retentionMm(double curveNumber) {
        return 25400.0 / curveNumber - 254.0;
    }

    /**
     * Runoff Q of a storm on a given retention.
     *
     * @param rainMm P [mm]
     * @param retentionMm S [mm]
     * @return Q [mm]
     */
    public static double runoffMm(double rainMm, double retentionMm) {
        double excess = rainMm - ABSTRACTION_SHARE * retentionMm;
        return excess <= 0.0 ? 0.0 : excess * excess / (rainMm + (1.0 - ABSTRACTION_SHARE) * retentionMm);
    }

    /**
     * Runoff of a day.
     *
     * @param rainMm rain and melt that reach the ground [mm/d]
     * @param wetness available water of the topsoil as a share of its capacity, 0 (CN I) over 0.5 (CN II) to 1 (CN III)
     * @return Q [mm/d]
     */
    public double daily(double rainMm, double wetness) {
        if (rainMm <= 0.0) {
            return 0.0;
        }
        double bounded = Bound.share(wetness);
        double today = bounded < 0.5
                ? dryCurveNumber + (curveNumber - dryCurveNumber) * 2.0 * bounded
                : curveNumber + (wetCurveNumber - curveNumber) * (2.0 * bounded - 1.0);
        return runoffMm(rainMm, retentionMm(Bound.atMost(today, 100.0)));
    }
}
