package org.thirstline.io.quality;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.time.MonthDay;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The calendar of a record against the one of the Java library, day by day, century years and leap days included. */
class RecordCalendarTest {

    private static final int DAYS = 5 * 366;

    @ParameterizedTest
    @ValueSource(
            strings = {"1899-12-31", "1900-02-28", "1904-02-29", "1999-03-01", "2000-01-01", "2096-06-15", "1800-01-15"
            })
    void everyDayIsThatOfTheLibrary(String start) {
        LocalDate first = LocalDate.parse(start);
        RecordCalendar calendar = new RecordCalendar(first, DAYS);

        for (int day = 0; day < DAYS; day++) {
            LocalDate date = first.plusDays(day);
            assertThat(calendar.year(day)).isEqualTo(date.getYear());
            assertThat(calendar.month(day)).isEqualTo(date.getMonthValue());
            assertThat(calendar.dayOfYear(day)).isEqualTo(date.getDayOfYear());
            assertThat(calendar.date(day))
                    .isEqualTo(MonthDay.from(date).atYear(2000).getDayOfYear() - 1);
        }
    }
}
