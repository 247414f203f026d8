package org.thirstline.charts;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.time.MonthDay;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.thirstline.model.result.DailyResults;
import org.thirstline.model.result.SeasonRecord;
import org.thirstline.model.result.SeasonStatus;
import org.thirstline.model.result.SeasonVariable;
import org.thirstline.model.soil.SoilLayer;
import org.thirstline.model.soil.SoilProfile;

/** Growth years lie over each other date by date, north and south, leap year or not. */
class CommonSeasonTest {

    private static SeasonView season(int growthYear, LocalDate emergence, LocalDate canopyEnd) {
        SeasonRecord record = new SeasonRecord(
                growthYear,
                4,
                SeasonStatus.COMPLETE,
                new SeasonRecord.Dates(emergence, null, canopyEnd, null, null),
                new double[SeasonVariable.values().length]);
        SoilProfile soil = new SoilProfile(
                List.of(new SoilLayer(1.0, 0.12, 0.3, 0.45, 0.5)),
                9.0,
                70.0,
                Double.POSITIVE_INFINITY,
                Double.POSITIVE_INFINITY);
        LocalDate start = LocalDate.of(2001, 1, 1);
        DailyResults daily = new DailyResults(start, 365 * 14, new double[] {1.0});
        return new SeasonView("", record, daily, soil, null);
    }

    private static void assertSameDatesAtEveryPlace(List<SeasonView> seasons) {
        CommonSeason common = new CommonSeason(seasons);
        for (SeasonView season : seasons) {
            LocalDate before = null;
            for (int place = 0; place < common.scale().days(); place++) {
                int day = common.dayOf(season, place);
                MonthDay expected = MonthDay.from(common.scale().from().plusDays(place));
                if (day == CommonSeason.NO_DAY) {
                    assertThat(expected).isEqualTo(MonthDay.of(2, 29));
                    continue;
                }
                LocalDate date = season.daily().date(day);
                assertThat(MonthDay.from(date)).isEqualTo(expected);
                if (before != null) {
                    assertThat(date).isEqualTo(before.plusDays(1));
                }
                before = date;
            }
        }
    }

    @Test
    void northernSeasonsLieOverEachOther() {
        assertSameDatesAtEveryPlace(List.of(
                season(2003, LocalDate.of(2003, 2, 20), LocalDate.of(2003, 10, 1)),
                season(2004, LocalDate.of(2004, 4, 20), LocalDate.of(2004, 11, 5))));
    }

    @Test
    void southernSeasonsLieOverEachOtherByGrowthYearAcrossTheNewYear() {
        List<SeasonView> seasons = List.of(
                season(2003, LocalDate.of(2003, 10, 5), LocalDate.of(2004, 4, 20)),
                season(2004, LocalDate.of(2004, 9, 20), LocalDate.of(2005, 5, 2)));

        assertSameDatesAtEveryPlace(seasons);
        CommonSeason common = new CommonSeason(seasons);
        int january = 0;
        while (common.scale().from().plusDays(january).getMonthValue() != 1) {
            january++;
        }
        assertThat(seasons.get(0).daily().date(common.dayOf(seasons.get(0), january)))
                .isEqualTo(LocalDate.of(2004, 1, 1));
        assertThat(seasons.get(1).daily().date(common.dayOf(seasons.get(1), january)))
                .isEqualTo(LocalDate.of(2005, 1, 1));
    }
}
