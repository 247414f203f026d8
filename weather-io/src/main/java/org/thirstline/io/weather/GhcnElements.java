package org.thirstline.io.weather;

import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * What the elements and flags of GHCN-Daily mean, after its readme of version 3.22 (NOAA NCEI). Wind is taken as measured at 10 m, the
 * usual height of airport anemometers, which the data do not state.
 */
final class GhcnElements {

    static final int MISSING = -9999;

    private static final double WIND_HEIGHT_M = 10.0;

    private record Element(RawVariable variable, DailyUnit unit) {}

    private static final Map<String, Element> ELEMENTS = Map.of(
            "TMIN", new Element(RawVariable.TMIN, DailyUnit.TENTH),
            "TMAX", new Element(RawVariable.TMAX, DailyUnit.TENTH),
            "TAVG", new Element(RawVariable.TMEAN, DailyUnit.TENTH),
            "PRCP", new Element(RawVariable.RAIN, DailyUnit.TENTH),
            "AWND", new Element(RawVariable.WIND, DailyUnit.TENTH),
            "TSUN", new Element(RawVariable.SUNSHINE, DailyUnit.MINUTES),
            "ADPT", new Element(RawVariable.DEW_POINT, DailyUnit.TENTH),
            "RHAV", new Element(RawVariable.HUMIDITY_MEAN, DailyUnit.SAME),
            "RHMN", new Element(RawVariable.HUMIDITY_MIN, DailyUnit.SAME),
            "RHMX", new Element(RawVariable.HUMIDITY_MAX, DailyUnit.SAME));

    private GhcnElements() {}

    /** Returns whether an element is read. */
    static boolean isUsed(String element) {
        return ELEMENTS.containsKey(element);
    }

    /** Returns whether an element is the rain of several days in one sum. */
    static boolean isSumOfDays(String element) {
        return element.equals("MDPR");
    }

    /**
     * Takes one value.
     *
     * @param value as in the file, not the missing code
     * @param measurementFlag blank, or e.g. P for missing presumed zero
     * @param qualityFlag blank, or the check that the value failed
     */
    static void take(
            long epochDay,
            String element,
            double value,
            char measurementFlag,
            char qualityFlag,
            RawWeatherBuilder out) {
        if (isSumOfDays(element)) {
            if (qualityFlag == ' ') {
                noteSum(epochDay, value, out);
            }
            return;
        }
        if (element.equals("DAPR")) {
            out.setRainSumDays(epochDay, (int) Math.max(0.0, Math.min(366.0, value)));
            return;
        }
        Element known = ELEMENTS.get(element);
        if (known == null) {
            return;
        }
        double ours = known.unit().convert(value);
        if (qualityFlag != ' ') {
            out.setOnce(epochDay, known.variable(), Double.NaN);
            out.addIssue(
                    epochDay,
                    known.variable(),
                    IssueKind.FAILED_AT_SOURCE,
                    number(ours),
                    "quality flag " + qualityFlag + " of the source; taken as missing");
            return;
        }
        out.setOnce(epochDay, known.variable(), ours);
        noteMeasurement(epochDay, known.variable(), measurementFlag, ours, out);
    }

    private static void noteSum(long epochDay, double value, RawWeatherBuilder out) {
        out.addRainSum(epochDay, DailyUnit.TENTH.convert(value));
        String action = "a sum of several days up to this one; its days have no values of their own";
        String found = number(DailyUnit.TENTH.convert(value));
        out.addIssue(epochDay, RawVariable.RAIN, IssueKind.SUSPECT, found, action);
    }

    private static void noteMeasurement(
            long epochDay, RawVariable variable, char measurementFlag, double ours, RawWeatherBuilder out) {
        if (variable == RawVariable.WIND) {
            out.setWindHeightM(WIND_HEIGHT_M);
            out.assume(variable, "measured at 10 m; the source does not state the height");
        }
        if (measurementFlag == 'P') {
            out.addIssue(
                    epochDay, variable, IssueKind.SUSPECT, number(ours), "missing, presumed zero by the source; kept");
        }
    }

    private static String number(double value) {
        return Double.toString(Math.rint(value * 1000.0) / 1000.0);
    }

    /** Returns the one character that a flag field may hold, blank if it is empty. */
    static char flag(@Nullable String text) {
        return text == null || text.isBlank() ? ' ' : text.strip().charAt(0);
    }
}
