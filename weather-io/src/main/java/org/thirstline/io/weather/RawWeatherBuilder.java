package org.thirstline.io.weather;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import org.thirstline.io.error.InputError;
import org.thirstline.model.error.InputException;
import org.thirstline.model.weather.Origin;
import org.thirstline.model.weather.WeatherVariable;

/** Collects values in our units while a file is read. Confined to one read. */
final class RawWeatherBuilder {

    private static final long ORIGIN_OF_DAYS = LocalDate.of(1600, 1, 1).toEpochDay();

    private final WeatherFormat format;
    private final Map<RawVariable, DayColumn> columns = new EnumMap<>(RawVariable.class);
    private final Map<WeatherVariable, Map<Long, Origin>> origins = new EnumMap<>(WeatherVariable.class);
    private final Map<RawVariable, BitSet> given = new EnumMap<>(RawVariable.class);
    private final Map<RawVariable, String> notes = new EnumMap<>(RawVariable.class);
    private final Map<RawVariable, String> assumptions = new EnumMap<>(RawVariable.class);
    private final List<WeatherIssue> issues = new ArrayList<>();
    private final List<SourceFile> sources = new ArrayList<>();
    private final Map<Long, Double> rainSums = new TreeMap<>();
    private final Map<Long, Integer> rainSumDays = new HashMap<>();
    private final BitSet present = new BitSet();
    private SiteInfo site = SiteInfo.UNKNOWN;
    private double windHeightM = 2.0;
    private boolean invented;
    private @Nullable String station;
    private long day = Long.MIN_VALUE;

    RawWeatherBuilder(WeatherFormat format) {
        this.format = format;
    }

    /** Starts the line of a day in a file that has one line for each, in order. */
    void beginDay(long epochDay) {
        if (epochDay == day) {
            throw new InputException(InputError.DUPLICATE_DATE, LocalDate.ofEpochDay(epochDay));
        }
        if (epochDay < day) {
            throw new InputException(
                    InputError.DATES_UNSORTED, LocalDate.ofEpochDay(epochDay), LocalDate.ofEpochDay(day));
        }
        day = epochDay;
        markPresent(epochDay);
    }

    /** Starts the line of a day in a file that has one line for each, in any order. */
    void beginAnyDay(long epochDay) {
        if (present.get(index(epochDay))) {
            throw new InputException(InputError.DUPLICATE_DATE, LocalDate.ofEpochDay(epochDay));
        }
        day = epochDay;
        markPresent(epochDay);
    }

    /** Sets a value of the day begun last; NaN leaves it missing. */
    void set(RawVariable variable, double value) {
        put(day, variable, value);
    }

    /** Sets a value in a file that has one line for each value, in any order. */
    void setOnce(long epochDay, RawVariable variable, double value) {
        BitSet seen = given.computeIfAbsent(variable, v -> new BitSet());
        int at = index(epochDay);
        if (seen.get(at)) {
            throw new InputException(
                    InputError.DUPLICATE_DATE, LocalDate.ofEpochDay(epochDay) + " of " + variable.words());
        }
        seen.set(at);
        put(epochDay, variable, value);
    }

    /** Sets a value of any day; NaN leaves what was there. */
    void put(long epochDay, RawVariable variable, double value) {
        if (!Double.isNaN(value)) {
            columns.computeIfAbsent(variable, v -> new DayColumn()).set(epochDay, value);
        }
    }

    /** Sets where a value of the day begun last came from. */
    void setOrigin(WeatherVariable variable, Origin origin) {
        setOrigin(day, variable, origin);
    }

    void setOrigin(long epochDay, WeatherVariable variable, Origin origin) {
        origins.computeIfAbsent(variable, v -> new HashMap<>()).put(epochDay, origin);
    }

    boolean has(RawVariable variable) {
        return columns.containsKey(variable);
    }

    double value(long epochDay, RawVariable variable) {
        DayColumn column = columns.get(variable);
        return column == null ? Double.NaN : column.get(epochDay);
    }

    /** Turns all values of a variable set so far from a unit into ours. */
    void convert(RawVariable variable, DailyUnit unit) {
        DayColumn column = columns.get(variable);
        if (column != null) {
            column.replaceAll(unit::convert);
        }
    }

    /** Returns the mean of the values set so far, NaN if there are none. */
    double mean(RawVariable variable) {
        DayColumn column = columns.get(variable);
        return column == null ? Double.NaN : column.stream().average().orElse(Double.NaN);
    }

    /** Returns the largest of the values set so far, NaN if there are none. */
    double most(RawVariable variable) {
        DayColumn column = columns.get(variable);
        return column == null ? Double.NaN : column.stream().max().orElse(Double.NaN);
    }

    /** Returns the number of values set so far. */
    long count(RawVariable variable) {
        DayColumn column = columns.get(variable);
        return column == null ? 0 : column.stream().count();
    }

    void addIssue(WeatherIssue issue) {
        issues.add(issue);
    }

    void markPresent(long epochDay) {
        present.set(index(epochDay));
    }

    private static int index(long epochDay) {
        return Math.toIntExact(epochDay - ORIGIN_OF_DAYS);
    }

    void addIssue(long epochDay, RawVariable variable, IssueKind kind, String found, String action) {
        issues.add(WeatherIssue.on(LocalDate.ofEpochDay(epochDay), variable, kind, found, action));
    }

    /** Notes an assumption about a variable; it becomes an issue over the whole record. */
    void assume(RawVariable variable, String assumption) {
        assumptions.put(variable, assumption);
    }

    void note(RawVariable variable, String note) {
        notes.putIfAbsent(variable, note);
    }

    void setSite(SiteInfo newSite) {
        site = newSite;
    }

    void setWindHeightM(double newWindHeightM) {
        windHeightM = newWindHeightM;
    }

    /** Takes the height of the wind speeds from the user instead. */
    void stateWindHeightM(double stated) {
        if (has(RawVariable.WIND)) {
            windHeightM = stated;
            assumptions.remove(RawVariable.WIND);
        }
    }

    void setInvented(boolean newInvented) {
        invented = newInvented;
    }

    void addRainSum(long epochDay, double mm) {
        rainSums.put(epochDay, mm);
    }

    void setRainSumDays(long epochDay, int days) {
        rainSumDays.put(epochDay, days);
    }

    void addRainSum(RainSum sum) {
        addRainSum(sum.lastDay().toEpochDay(), sum.mm());
        setRainSumDays(sum.lastDay().toEpochDay(), sum.days());
    }

    List<RainSum> rainSums() {
        return rainSums.entrySet().stream()
                .map(sum -> new RainSum(
                        LocalDate.ofEpochDay(sum.getKey()), rainSumDays.getOrDefault(sum.getKey(), 0), sum.getValue()))
                .toList();
    }

    void setStation(@Nullable String newStation) {
        station = newStation;
    }

    void addSource(SourceFile source) {
        sources.add(source);
    }

    RawWeather build() {
        if (present.isEmpty()) {
            throw new InputException(InputError.NO_USABLE_DAYS);
        }
        int from = present.nextSetBit(0);
        int to = present.length();
        for (int gap = present.nextClearBit(from); gap < to; gap = present.nextClearBit(gap)) {
            int next = present.nextSetBit(gap);
            issues.add(new WeatherIssue(
                    null,
                    date(gap),
                    date(next - 1),
                    IssueKind.ABSENT_DATE,
                    "",
                    "taken as days with every value missing"));
            gap = next;
        }
        assumptions.forEach((variable, text) ->
                issues.add(new WeatherIssue(variable, date(from), date(to - 1), IssueKind.ASSUMED, "", text)));
        return new RawWeather(this, date(from), to - from);
    }

    private static LocalDate date(int index) {
        return LocalDate.ofEpochDay(index + ORIGIN_OF_DAYS);
    }

    Map<RawVariable, double[]> columns(LocalDate start, int days) {
        Map<RawVariable, double[]> dense = new EnumMap<>(RawVariable.class);
        long first = start.toEpochDay();
        columns.forEach((variable, column) -> {
            double[] values = new double[days];
            for (int i = 0; i < days; i++) {
                values[i] = column.get(first + i);
            }
            dense.put(variable, values);
        });
        return dense;
    }

    Map<WeatherVariable, Origin[]> origins(LocalDate start, int days) {
        Map<WeatherVariable, Origin[]> dense = new EnumMap<>(WeatherVariable.class);
        long first = start.toEpochDay();
        origins.forEach((variable, byDay) -> {
            Origin[] values = new Origin[days];
            for (int i = 0; i < days; i++) {
                values[i] = byDay.getOrDefault(first + i, Origin.MEASURED);
            }
            dense.put(variable, values);
        });
        return dense;
    }

    WeatherFormat format() {
        return format;
    }

    SiteInfo site() {
        return site;
    }

    double windHeightM() {
        return windHeightM;
    }

    @Nullable
    String station() {
        return station;
    }

    boolean isInvented() {
        return invented;
    }

    Map<RawVariable, String> notes() {
        return notes;
    }

    List<WeatherIssue> issues() {
        return issues;
    }

    List<SourceFile> sources() {
        return sources;
    }
}
