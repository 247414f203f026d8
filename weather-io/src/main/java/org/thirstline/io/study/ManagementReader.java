package org.thirstline.io.study;

import java.time.LocalDate;
import java.time.MonthDay;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import org.thirstline.io.text.InputFileError;
import org.thirstline.io.text.Scalars;
import org.thirstline.io.text.Section;
import org.thirstline.model.crop.CropParameter;
import org.thirstline.model.crop.CropParameters;
import org.thirstline.model.crop.HarvestRule;
import org.thirstline.model.crop.Stand;
import org.thirstline.model.engine.GrowingSeason;
import org.thirstline.model.soil.Irrigation;
import org.thirstline.model.weather.Site;

/** Reads what people do to the stand. */
final class ManagementReader {

    /** Moisture above which bales heat and mould [% wet basis]. */
    private static final double DEFAULT_MAX_MOISTURE_PCT = 20.0;

    /** Wettest topsoil that carries a machine [% of field capacity]: judgement. */
    private static final double DEFAULT_MAX_WETNESS_PCT = 90.0;

    private ManagementReader() {}

    static Management read(Section study, CropParameters crop) {
        Section harvest = study.section("harvest").orElseThrow();
        return new Management(
                harvestRule(harvest),
                study.measure("stubble").orElse(crop.get(CropParameter.STUBBLE_HEIGHT)),
                study.measure("pick_up").orElse(100.0 * crop.get(CropParameter.PICK_UP_SHARE)) / 100.0,
                study.section("irrigation").map(ManagementReader::irrigation).orElseGet(Irrigation.None::new),
                study.measure("co2").orElse(crop.get(CropParameter.CO2_REFERENCE)));
    }

    private static HarvestRule harvestRule(Section harvest) {
        Optional<MonthDay> date = harvest.value("date", Scalars::dayOfYear);
        if (date.isPresent()) {
            return new HarvestRule.OnDate(date.get());
        }
        MonthDay[] window = harvest.value("window", Scalars::dayWindow).orElseThrow();
        double moisture = harvest.measure("max_moisture").orElse(DEFAULT_MAX_MOISTURE_PCT);
        double wetness = harvest.measure("max_topsoil_wetness").orElse(DEFAULT_MAX_WETNESS_PCT) / 100.0;
        return harvest.build(() -> new HarvestRule.InWindow(window[0], window[1], moisture, wetness));
    }

    private static Irrigation irrigation(Section irrigation) {
        if (!irrigation.has("schedule")) {
            double depleted = irrigation.required("when_depleted") / 100.0;
            double depth = irrigation.required("depth");
            return irrigation.build(() -> new Irrigation.OnDepletion(depleted, depth));
        }
        Map<LocalDate, Double> depths = new LinkedHashMap<>();
        Map<LocalDate, Integer> lines = new LinkedHashMap<>();
        for (Section watering : irrigation.sections("schedule")) {
            LocalDate date = watering.required("date", watering.value("date", Scalars::date));
            Integer before = lines.put(date, watering.line("date"));
            if (before != null) {
                throw watering.refusal("date", InputFileError.DUPLICATE_NAME, date, before);
            }
            depths.put(date, watering.required("depth"));
        }
        return irrigation.build(() -> new Irrigation.OnDates(depths));
    }

    static Stand stand(Section stand) {
        LocalDate planted = stand.required("planted", stand.value("planted", Scalars::date));
        Optional<double[]> spacing = stand.value("spacing", Scalars::spacing);
        if (spacing.isPresent()) {
            return stand.build("spacing", () -> Stand.spaced(planted, spacing.get()[0], spacing.get()[1]));
        }
        double density = stand.required("plants");
        return stand.build("plants", () -> new Stand(planted, density));
    }

    static GrowingSeason season(Section study, Site site) {
        Optional<MonthDay[]> window = study.value("growing_season", Scalars::dayWindow);
        if (window.isEmpty()) {
            return GrowingSeason.defaultFor(site);
        }
        GrowingSeason season = new GrowingSeason(window.get()[0], window.get()[1]);
        int anyYear = 2001;
        if (season.end(site, anyYear).isBefore(season.start(site, anyYear))) {
            String bounds = site.isSouthern() ? "1 July to 30 June" : "1 January to 31 December";
            throw study.refusal(
                    "growing_season",
                    InputFileError.INCONSISTENT,
                    "the window must lie inside one growth year, " + bounds + " here");
        }
        return season;
    }
}
