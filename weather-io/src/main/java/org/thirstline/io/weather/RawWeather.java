package org.thirstline.io.weather;

import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.thirstline.model.weather.Origin;
import org.thirstline.model.weather.WeatherVariable;

/**
 * Weather as the files give it, in our units, on a continuous calendar; NaN where a value is missing. Immutable and thread-safe.
 */
public final class RawWeather {

    private final WeatherFormat format;
    private final LocalDate start;
    private final int days;
    private final Map<RawVariable, double[]> columns;
    private final Map<WeatherVariable, Origin[]> origins;
    private final SiteInfo site;
    private final double windHeightM;
    private final boolean invented;
    private final @Nullable String station;
    private final Map<RawVariable, String> notes;
    private final List<WeatherIssue> issues;
    private final List<SourceFile> sources;
    private final List<RainSum> rainSums;

    RawWeather(RawWeatherBuilder builder, LocalDate start, int days) {
        this.format = builder.format();
        this.start = start;
        this.days = days;
        this.columns = builder.columns(start, days);
        this.origins = builder.origins(start, days);
        this.site = builder.site();
        this.windHeightM = builder.windHeightM();
        this.invented = builder.isInvented();
        this.station = builder.station();
        this.notes = Map.copyOf(builder.notes());
        this.issues = List.copyOf(builder.issues());
        this.sources = List.copyOf(builder.sources());
        this.rainSums = builder.rainSums();
    }

    private RawWeather(RawWeather other, SiteInfo site) {
        this.format = other.format;
        this.start = other.start;
        this.days = other.days;
        this.columns = other.columns;
        this.origins = other.origins;
        this.site = site;
        this.windHeightM = other.windHeightM;
        this.invented = other.invented;
        this.station = other.station;
        this.notes = other.notes;
        this.issues = other.issues;
        this.sources = other.sources;
        this.rainSums = other.rainSums;
    }

    /** Returns the same weather in a place that is known better. */
    RawWeather withSite(SiteInfo better) {
        return new RawWeather(this, better);
    }

    /** Returns the format of the file. */
    public WeatherFormat format() {
        return format;
    }

    /** Returns the first day. */
    public LocalDate start() {
        return start;
    }

    /** Returns the last day. */
    public LocalDate end() {
        return start.plusDays(days - 1L);
    }

    /** Returns the number of days from the first to the last, absent ones included. */
    public int days() {
        return days;
    }

    /** Returns the date of a day, 0 for the first. */
    public LocalDate date(int day) {
        return start.plusDays(day);
    }

    /** Returns a value, NaN if it is missing. */
    public double value(RawVariable variable, int day) {
        double[] column = columns.get(variable);
        return column == null ? Double.NaN : column[day];
    }

    /** Returns a copy of a column; all NaN if the file does not have it. */
    public double[] column(RawVariable variable) {
        double[] column = columns.get(variable);
        if (column != null) {
            return column.clone();
        }
        double[] missing = new double[days];
        Arrays.fill(missing, Double.NaN);
        return missing;
    }

    /** Returns whether the file gives at least one value of a variable. */
    public boolean has(RawVariable variable) {
        return columns.containsKey(variable);
    }

    /** Returns the variables of which the file gives at least one value. */
    Set<RawVariable> given() {
        return columns.keySet();
    }

    /** Returns the number of days that lack a variable. */
    public int missing(RawVariable variable) {
        int missing = 0;
        for (double value : column(variable)) {
            missing += Double.isNaN(value) ? 1 : 0;
        }
        return missing;
    }

    /** Returns where a value came from, as flags in the file say; measured without a flag. */
    public Origin origin(WeatherVariable variable, int day) {
        Origin @Nullable [] flagged = origins.get(variable);
        return flagged == null ? Origin.MEASURED : flagged[day];
    }

    /** Returns the number of days inside the record about which the file says nothing. */
    public int absentDays() {
        return issues.stream()
                .filter(issue -> issue.kind() == IssueKind.ABSENT_DATE)
                .mapToInt(WeatherIssue::days)
                .sum();
    }

    /** Returns what the file says about its place. */
    public SiteInfo site() {
        return site;
    }

    /** Returns the provider's name of the station, or null if the file gives none. */
    public @Nullable String station() {
        return station;
    }

    /** Returns the height of the wind speeds above ground [m]. */
    public double windHeightM() {
        return windHeightM;
    }

    /** Returns whether the file says that its weather is invented. */
    public boolean isInvented() {
        return invented;
    }

    /** Returns remarks on where variables come from, e.g. their column and unit in the file. */
    public Map<RawVariable, String> notes() {
        return notes;
    }

    /** Returns what was noticed while reading. */
    public List<WeatherIssue> issues() {
        return issues;
    }

    /** Returns sums of rain over several days. */
    public List<RainSum> rainSums() {
        return rainSums;
    }

    /** Returns the files that were read. */
    public List<SourceFile> sources() {
        return sources;
    }
}
