package org.thirstline.io.quality;

import java.time.LocalDate;
import java.time.Year;
import java.util.Arrays;

/** Year, month and date of the year of every day of a record, worked out once. Immutable and thread-safe. */
final class RecordCalendar {

    /** Dates of a leap year; the same date has the same number in every year, 0 on 1 January. */
    static final int DATES = 366;

    static final int MONTHS = 12;

    private static final int FIRST_OF_MARCH = 60;
    private static final int LEAP_YEAR = 2000;
    private static final byte[] MONTH_OF_DATE = monthOfDate();

    private final int[] years;
    private final int[] dates;

    /**
     * Works out the calendar.
     *
     * @param first date of the first day
     * @param days number of days
     */
    RecordCalendar(LocalDate first, int days) {
        years = new int[days];
        dates = new int[days];
        int day = 0;
        int year = first.getYear();
        int from = first.getDayOfYear() - 1;
        while (day < days) {
            int length = Year.isLeap(year) ? DATES : DATES - 1;
            int end = Math.min(days, day + length - from);
            Arrays.fill(years, day, end, year);
            for (int dayOfYear = from; day < end; day++, dayOfYear++) {
                dates[day] = length == DATES || dayOfYear < FIRST_OF_MARCH - 1 ? dayOfYear : dayOfYear + 1;
            }
            year++;
            from = 0;
        }
    }

    private static byte[] monthOfDate() {
        byte[] months = new byte[DATES];
        for (int date = 0; date < DATES; date++) {
            months[date] = (byte) LocalDate.ofYearDay(LEAP_YEAR, date + 1).getMonthValue();
        }
        return months;
    }

    int year(int day) {
        return years[day];
    }

    /** Returns the month, 1 to 12. */
    int month(int day) {
        return MONTH_OF_DATE[dates[day]];
    }

    /** Returns the date of the year, 0 to 365, the same in leap years and others. */
    int date(int day) {
        return dates[day];
    }

    /** Returns the day of the year, 1 on 1 January, 365 or 366 on 31 December. */
    int dayOfYear(int day) {
        boolean afterMissingDay = dates[day] >= FIRST_OF_MARCH && !Year.isLeap(years[day]);
        return afterMissingDay ? dates[day] : dates[day] + 1;
    }
}
