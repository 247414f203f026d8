package org.thirstline.calibration.trial;

import java.time.LocalDate;
import java.time.MonthDay;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.thirstline.io.study.Study;
import org.thirstline.io.study.Zone;
import org.thirstline.model.crop.CropParameter;
import org.thirstline.model.crop.CropParameters;
import org.thirstline.model.crop.Stand;
import org.thirstline.model.engine.FieldConditions;
import org.thirstline.model.engine.GrowthCalendar;
import org.thirstline.model.engine.PairedRuns;
import org.thirstline.model.result.SeasonRecord;
import org.thirstline.model.weather.DailyDrivers;

/** A stand of the study that establishes but never declines, planted in any year. Immutable and thread-safe. */
final class UnageingStand {

    private final Study study;
    private final CropParameters crop;
    private final DailyDrivers drivers;

    UnageingStand(Study study, DailyDrivers drivers) {
        this(study, study.crop().parameters(), drivers);
    }

    /** A stand of another crop than the study's, such as a draw from a posterior. */
    UnageingStand(Study study, CropParameters crop, DailyDrivers drivers) {
        this.study = study;
        this.crop = crop.with(CropParameter.DECLINE_PER_YEAR, 0.0);
        this.drivers = drivers;
    }

    /** Returns the seasons of a planting with what lack of water took, by growth year. */
    Map<Integer, SeasonRecord> paired(Zone zone, int plantingYear) {
        return byYear(
                PairedRuns.simulate(drivers, field(zone, plantingYear), limit()).seasons());
    }

    /** Returns the seasons of a planting as it is, by growth year; faster. */
    Map<Integer, SeasonRecord> actual(Zone zone, int plantingYear) {
        return byYear(PairedRuns.simulateActual(drivers, field(zone, plantingYear), limit()));
    }

    private int limit() {
        return study.weather().missingRainLimitDays();
    }

    private static Map<Integer, SeasonRecord> byYear(List<SeasonRecord> seasons) {
        Map<Integer, SeasonRecord> byYear = new TreeMap<>();
        seasons.forEach(season -> byYear.put(season.growthYear(), season));
        return byYear;
    }

    private FieldConditions field(Zone zone, int plantingYear) {
        FieldConditions field = study.field(zone);
        LocalDate planned = field.stand().plantingDate();
        LocalDate planted = GrowthCalendar.growthYear(study.site(), planned) == plantingYear
                ? planned
                : GrowthCalendar.dateIn(study.site(), plantingYear, MonthDay.from(planned));
        return planted(field, crop, planted);
    }

    /** Returns a field as it is, planted on another day. */
    static FieldConditions planted(FieldConditions field, LocalDate planted) {
        return planted(field, field.crop(), planted);
    }

    private static FieldConditions planted(FieldConditions field, CropParameters crop, LocalDate planted) {
        return field.withCrop(crop).withStand(new Stand(planted, field.stand().plantsPerM2()));
    }
}
