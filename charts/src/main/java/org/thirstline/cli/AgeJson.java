package org.thirstline.cli;

import java.util.Locale;
import org.thirstline.calibration.age.DeclineFit;
import org.thirstline.calibration.age.Reversibility;
import org.thirstline.calibration.age.SettlingPlan;
import org.thirstline.calibration.age.StandLife;
import org.thirstline.calibration.age.VarianceParts;
import org.thirstline.calibration.response.Interval;
import org.thirstline.calibration.trial.AgeStudy;
import org.thirstline.calibration.trial.FirstWinter;
import org.thirstline.calibration.trial.FirstYears;
import org.thirstline.calibration.trial.PowerCurve;
import org.thirstline.calibration.trial.VerdictDraws;
import org.thirstline.io.text.JsonText;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

/** {@code age.json}: verdict, fits, power, what would settle the question, reversibility, stand life, establishment. */
final class AgeJson {

    static final String FILE = "age.json";
    private static final double PERCENT = 100.0;

    private AgeJson() {}

    static String text(String title, boolean invented, AgeStudy study) {
        ObjectNode root = JsonNodeFactory.instance.objectNode();
        root.put("study", title);
        root.put("invented", invented);
        root.put("verdict", study.findings().verdict().words());
        root.put("sentence", study.findings().sentence());
        root.put("simulated", study.trial().data().hasSimulation());
        root.put("plot_yields", study.trial().data().rows().size());
        root.put("first_established_age", study.options().establishedAge());
        study.findings().withWeatherLeftIn().ifPresent(fit -> fit(fit, root.putObject("weather_left_in")));
        study.fair().ifPresent(fit -> fit(fit, root.putObject("weather_taken_out")));
        study.overDraws().ifPresent(draws -> draws(draws, root.putObject("over_calibration_draws")));
        study.plan().ifPresent(plan -> plan(study, plan, root.putObject("power")));
        study.reversibility().ifPresent(of -> reversibility(of, root.putObject("reversibility")));
        study.life().ifPresent(life -> {
            ObjectNode node = root.putObject("stand_life");
            node.put("gap_years", life.gapYears());
            node.put("oldest_age_seen", life.oldestSeen());
            life(life.declining(), node.putObject("with_fitted_decline"));
            life(life.steady(), node.putObject("without_decline"));
        });
        establishment(study, root.putObject("establishment"));
        ArrayNode notices = root.putArray("notices");
        study.trial().notices().forEach(notices::add);
        return JsonText.of(root);
    }

    private static void fit(DeclineFit fit, ObjectNode node) {
        node.put("years", fit.years());
        node.put("onset_age", fit.onsetAge());
        interval("onset_age_90_pct", fit.onsetInterval(), 1.0, node);
        node.put("decline_pct_per_year", PERCENT * fit.ratePerYear());
        interval("decline_90_pct_pct_per_year", fit.rateInterval(), PERCENT, node);
        node.put("mean_decline_pct_per_year", PERCENT * fit.meanDeclinePerYear());
        interval("mean_decline_90_pct_pct_per_year", fit.meanDeclineInterval(), PERCENT, node);
        finite("aicc_gain", fit.criterionGain(), node);
        ObjectNode chances = node.putObject("chance_without_decline");
        fit.chances().forEach((reading, chance) -> chances.put(reading.words(), chance));
        scatter(fit.scatter(), node.putObject("scatter_of_log_yield"));
    }

    private static void draws(VerdictDraws draws, ObjectNode node) {
        node.put("draws", draws.draws());
        ObjectNode tally = node.putObject("verdicts");
        draws.tally().forEach((verdict, count) -> tally.put(verdict.words(), count));
        draws.meanDeclinePerYear()
                .ifPresent(interval -> interval("mean_decline_90_pct_pct_per_year", interval, PERCENT, node));
    }

    private static void firstWinter(FirstWinter winter, ObjectNode node) {
        node.put("zone", winter.zone());
        node.put("half_lethal_c", winter.halfLethalC());
        finite("mean_survival", rounded(winter.meanSurvival()), node);
        finite("share_of_years_under_half", rounded(winter.failedShare()), node);
        ArrayNode winters = node.putArray("winters");
        winter.winters().forEach(one -> {
            ObjectNode of = winters.addObject();
            of.put("planting_year", one.plantingYear());
            of.put("coldest_soil_c", rounded(one.coldestC()));
            of.put("survival", rounded(one.survival()));
        });
        ArrayNode dates = node.putArray("planting_dates");
        winter.dates().forEach(date -> {
            ObjectNode of = dates.addObject();
            of.put("month_day", date.day().toString().substring(2));
            of.put("years", date.years());
            of.put("soil_at_planting_c", rounded(date.soilTemperatureC()));
            of.put("mean_survival", rounded(date.meanSurvival()));
            of.put("lowest_survival", rounded(date.lowestSurvival()));
            of.put("share_of_years_under_half", rounded(date.failedShare()));
            of.put("reserve_g_m2", rounded(date.reserveGM2()));
            of.put("second_year_shoots_m2", rounded(date.shootsM2()));
        });
    }

    private static void scatter(VarianceParts scatter, ObjectNode node) {
        node.put("between_plots", scatter.plotSd());
        node.put("between_years", scatter.yearSd());
        node.put("between_zones_within_years", scatter.siteYearSd());
        node.put("rest", scatter.residualSd());
    }

    private static void plan(AgeStudy study, SettlingPlan plan, ObjectNode node) {
        node.put("onset_age", plan.onsetAge());
        node.put("scatter_assumed", study.scatterAssumed());
        if (plan.smallestFoundPerYear().isPresent()) {
            node.put(
                    "smallest_decline_found_pct_per_year",
                    PERCENT * plan.smallestFoundPerYear().getAsDouble());
        } else {
            node.putNull("smallest_decline_found_pct_per_year");
        }
        ArrayNode designs = node.putArray("what_would_settle_it");
        for (SettlingPlan.PowerPoint point : plan.powers()) {
            ObjectNode design = designs.addObject();
            design.put("change", point.change().name().toLowerCase(Locale.ROOT));
            design.put("more_years", point.moreYears());
            design.put("plots_times", point.plotsTimes());
            design.put("new_plantings", point.newPlantings());
            design.put("chance_of_finding_2_pct_per_year", point.powerAtSlow());
            design.put("chance_of_finding_5_pct_per_year", point.powerAtFast());
        }
        ArrayNode curves = node.putArray("curves");
        for (PowerCurve curve : study.powers()) {
            ObjectNode one = curves.addObject();
            one.put("design", curve.design());
            numbers("decline_pct_per_year", curve.ratePerYear(), PERCENT, one);
            numbers("chance_of_finding", curve.power(), 1.0, one);
        }
    }

    private static void reversibility(Reversibility of, ObjectNode node) {
        node.put("finding", of.finding().name().toLowerCase(Locale.ROOT).replace('_', ' '));
        node.put("onset_age", of.onsetAge());
        ArrayNode good = node.putArray("good_years");
        of.goodYears().forEach(good::add);
        ArrayNode poor = node.putArray("poor_years");
        of.poorYears().forEach(poor::add);
        finite("missing_in_good_years_pct", PERCENT * of.shortfallInGoodYears(), node);
        finite("missing_in_poor_years_pct", PERCENT * of.shortfallInPoorYears(), node);
        if (Double.isFinite(of.interval().lower())) {
            interval("missing_in_good_years_90_pct_pct", of.interval(), PERCENT, node);
        }
    }

    private static void life(StandLife life, ObjectNode node) {
        node.put("best_replanting_age", life.bestAge());
        node.put("best_is_oldest_tried", life.bestIsLast());
        numbers("cumulative_mg_ha", life.cumulativeMgHa(), 1.0, node);
        numbers("mean_mg_ha_per_year", life.meanMgHaYear(), 1.0, node);
    }

    private static void establishment(AgeStudy study, ObjectNode node) {
        ObjectNode observed = node.putObject("mean_observed_by_age_mg_ha");
        study.establishment()
                .meanByAgeMgHa()
                .forEach((age, mean) -> observed.put(Integer.toString(age), rounded(mean)));
        node.put("peak_age", study.establishment().peakAge());
        firstWinter(study.firstWinter(), node.putObject("first_winter"));
        ArrayNode zones = node.putArray("simulated_first_years");
        for (FirstYears zone : study.firstYears()) {
            ObjectNode one = zones.addObject();
            one.put("zone", zone.zone());
            one.put("planted_m2", rounded(zone.plantedM2()));
            one.put("planting_years", zone.plantings());
            one.put("killed_by_first_winter", zone.winterKilled());
            ArrayNode ages = one.putArray("ages");
            for (FirstYears.Age age : zone.ages()) {
                ObjectNode of = ages.addObject();
                of.put("stand_age", age.standAge());
                of.put("plants_m2", rounded(age.plantsM2()));
                of.put("gap_share", rounded(1.0 - age.plantsM2() / zone.plantedM2()));
                of.put("shoots_m2", rounded(age.shootsM2()));
                of.put("harvested_mg_ha", rounded(age.meanMgHa()));
                interval("harvested_90_pct_mg_ha", age.rangeMgHa(), 1.0, of);
            }
        }
    }

    private static void finite(String name, double value, ObjectNode node) {
        if (Double.isFinite(value)) {
            node.put(name, value);
        } else {
            node.putNull(name);
        }
    }

    private static void numbers(String name, double[] values, double factor, ObjectNode node) {
        ArrayNode array = node.putArray(name);
        for (double value : values) {
            array.add(rounded(factor * value));
        }
    }

    private static double rounded(double value) {
        return Math.rint(1.0e6 * value) / 1.0e6;
    }

    private static void interval(String name, Interval interval, double factor, ObjectNode node) {
        ArrayNode pair = node.putArray(name);
        pair.add(rounded(factor * interval.lower()));
        pair.add(rounded(factor * interval.upper()));
    }
}
