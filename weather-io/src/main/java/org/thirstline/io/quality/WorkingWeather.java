package org.thirstline.io.quality;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.thirstline.io.error.InputError;
import org.thirstline.io.weather.IssueKind;
import org.thirstline.io.weather.RawVariable;
import org.thirstline.io.weather.RawWeather;
import org.thirstline.io.weather.WeatherIssue;
import org.thirstline.io.weather.WeatherTable;
import org.thirstline.model.error.InputException;
import org.thirstline.model.solar.SolarGeometry;
import org.thirstline.model.weather.Origin;
import org.thirstline.model.weather.Site;
import org.thirstline.model.weather.WeatherSeries;
import org.thirstline.model.weather.WeatherVariable;

/** Weather while it is checked and filled. Confined to one assembly. */
final class WorkingWeather {

    /** Days filled in the same way, one after the other. */
    private record Method(WeatherVariable variable, Origin origin, String action) {}

    private final RawWeather raw;
    private final Site site;
    private final double[][] columns = new double[RawVariable.values().length][];
    private final Origin[][] origins = new Origin[WeatherVariable.values().length][];
    private final List<WeatherIssue> issues;
    private final SuspectRule rule;
    private int suspects;
    private String firstSuspect = "";
    private final Map<Method, int[]> openSpans = new LinkedHashMap<>();
    private final RecordCalendar calendar;
    private final double[] extraterrestrial;
    private final double[] dayLength;
    private int firstDay;
    private int endDay;

    WorkingWeather(RawWeather raw, Site site, SuspectRule rule) {
        this.rule = rule;
        this.raw = raw;
        this.site = site;
        issues = new ArrayList<>(raw.issues());
        endDay = raw.days();
        calendar = new RecordCalendar(raw.start(), endDay);
        extraterrestrial = new double[endDay];
        dayLength = new double[endDay];
        double[] radiation = new double[RecordCalendar.DATES + 1];
        double[] hours = new double[RecordCalendar.DATES + 1];
        for (int dayOfYear = 1; dayOfYear <= RecordCalendar.DATES; dayOfYear++) {
            radiation[dayOfYear] = SolarGeometry.extraterrestrialRadiation(site.latitudeRad(), dayOfYear);
            hours[dayOfYear] = SolarGeometry.dayLengthHours(site.latitudeRad(), dayOfYear);
        }
        for (int day = 0; day < endDay; day++) {
            int dayOfYear = calendar.dayOfYear(day);
            extraterrestrial[day] = radiation[dayOfYear];
            dayLength[day] = hours[dayOfYear];
        }
        for (RawVariable variable : RawVariable.values()) {
            columns[variable.ordinal()] = raw.column(variable);
        }
        for (WeatherVariable variable : WeatherVariable.values()) {
            takeOrigins(variable);
        }
    }

    private void takeOrigins(WeatherVariable variable) {
        Origin[] column = new Origin[endDay];
        double[] values = column(RawVariable.of(variable));
        for (int day = 0; day < endDay; day++) {
            values[day] = WeatherTable.round(variable, values[day]);
            column[day] = Double.isNaN(values[day]) ? Origin.MEASURED : raw.origin(variable, day);
        }
        origins[variable.ordinal()] = column;
        for (int day = 0; day < endDay; day++) {
            if (column[day] != Origin.MEASURED) {
                log(variable, day, column[day], "as flagged in the file");
            }
        }
    }

    Site site() {
        return site;
    }

    LocalDate date(int day) {
        return raw.date(day);
    }

    /** The calendar of all days, also those that are not kept. */
    RecordCalendar calendar() {
        return calendar;
    }

    double windHeightM() {
        return raw.windHeightM();
    }

    /** First day of the part that is kept. */
    int firstDay() {
        return firstDay;
    }

    /** One after the last day of the part that is kept. */
    int endDay() {
        return endDay;
    }

    /** The live column. */
    double[] column(RawVariable variable) {
        return columns[variable.ordinal()];
    }

    double value(RawVariable variable, int day) {
        return column(variable)[day];
    }

    boolean isMissing(RawVariable variable, int day) {
        return Double.isNaN(value(variable, day));
    }

    boolean isMeasured(WeatherVariable variable, int day) {
        return origins(variable)[day] == Origin.MEASURED;
    }

    private Origin[] origins(WeatherVariable variable) {
        return origins[variable.ordinal()];
    }

    double extraterrestrial(int day) {
        return extraterrestrial[day];
    }

    double dayLength(int day) {
        return dayLength[day];
    }

    /** Takes a value as missing and says why. */
    void blank(RawVariable variable, int day, String reason) {
        String found = text(value(variable, day));
        issues.add(new WeatherIssue(
                variable, date(day), date(day), IssueKind.IMPOSSIBLE, found, reason + "; taken as missing"));
        column(variable)[day] = Double.NaN;
    }

    /** Says what is odd about a value, and keeps it or takes it as missing as the rule has it. */
    void suspect(RawVariable variable, int day, String reason) {
        suspect(variable, day, day, reason);
    }

    /** Says what is odd about the values of some days one after the other. */
    void suspect(RawVariable variable, int from, int to, String reason) {
        String found = from == to ? text(value(variable, from)) : "";
        boolean blank = rule == SuspectRule.BLANK;
        String action = reason + (blank ? "; taken as missing" : "; kept");
        issues.add(new WeatherIssue(variable, date(from), date(to), IssueKind.SUSPECT, found, action));
        count(variable, from, reason);
        for (int day = from; blank && day <= to; day++) {
            column(variable)[day] = Double.NaN;
        }
    }

    /** Says what is odd about days as a whole; values stay whatever the rule, for which of them is wrong is not known. */
    void remark(RawVariable variable, int from, int to, String reason) {
        issues.add(new WeatherIssue(
                variable, date(from), date(to), IssueKind.SUSPECT, "", reason + "; kept, look at the source"));
        count(variable, from, reason);
    }

    private void count(RawVariable variable, int day, String reason) {
        suspects++;
        if (suspects == 1) {
            firstSuspect = variable.words() + " on " + date(day) + ", " + reason;
        }
    }

    /** Refuses the record if there are suspects and the rule is to stop. */
    void stopAtSuspects() {
        if (rule == SuspectRule.STOP && suspects > 0) {
            throw new InputException(InputError.SUSPECT_VALUES, suspects, firstSuspect);
        }
    }

    RawWeather raw() {
        return raw;
    }

    private static String text(double value) {
        return Double.toString(Math.rint(value * 1.0e4) / 1.0e4);
    }

    void addIssue(WeatherIssue issue) {
        issues.add(issue);
    }

    /** Fills a value and logs how. */
    void fill(WeatherVariable variable, int day, double value, Origin origin, String action) {
        column(RawVariable.of(variable))[day] = WeatherTable.round(variable, value);
        origins(variable)[day] = origin;
        log(variable, day, origin, action);
    }

    /** Corrects a value that was filled before, keeping its origin. */
    void correct(WeatherVariable variable, int day, double value) {
        column(RawVariable.of(variable))[day] = value;
    }

    private void log(WeatherVariable variable, int day, Origin origin, String action) {
        Method method = new Method(variable, origin, action);
        int[] span = openSpans.get(method);
        if (span != null && span[1] == day - 1) {
            span[1] = day;
            return;
        }
        if (span != null) {
            issues.add(issue(method, span));
        }
        openSpans.put(method, new int[] {day, day});
    }

    private WeatherIssue issue(Method method, int[] span) {
        IssueKind kind =
                switch (method.origin) {
                    case INTERPOLATED -> IssueKind.INTERPOLATED;
                    case CLIMATOLOGY -> IssueKind.CLIMATOLOGY;
                    case SECOND_STATION -> IssueKind.SECOND_STATION;
                    case ESTIMATED, MEASURED -> IssueKind.ESTIMATED;
                };
        return new WeatherIssue(RawVariable.of(method.variable), date(span[0]), date(span[1]), kind, "", method.action);
    }

    /** Leaves out the days before one and from another on. */
    void cut(int newFirstDay, int newEndDay) {
        cutOff(firstDay, newFirstDay - 1);
        cutOff(newEndDay, endDay - 1);
        firstDay = newFirstDay;
        endDay = newEndDay;
    }

    private void cutOff(int from, int to) {
        if (from <= to) {
            issues.add(new WeatherIssue(
                    null, date(from), date(to), IssueKind.CUT_OFF, "", "left out: no temperatures at this end"));
        }
    }

    /** Returns the issues, days that were filled in the same way put together. */
    List<WeatherIssue> issues() {
        openSpans.forEach((method, span) -> issues.add(issue(method, span)));
        openSpans.clear();
        return issues;
    }

    /** Returns the part that is kept; every value must be there by now. */
    WeatherSeries series() {
        Map<WeatherVariable, double[]> kept = new EnumMap<>(WeatherVariable.class);
        Map<WeatherVariable, Origin[]> keptOrigins = new EnumMap<>(WeatherVariable.class);
        for (WeatherVariable variable : WeatherVariable.values()) {
            kept.put(variable, Arrays.copyOfRange(column(RawVariable.of(variable)), firstDay, endDay));
            keptOrigins.put(variable, Arrays.copyOfRange(origins(variable), firstDay, endDay));
        }
        return WeatherSeries.of(date(firstDay), kept, keptOrigins);
    }
}
