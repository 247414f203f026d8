package org.thirstline.cli;

import java.io.PrintWriter;
import java.time.format.TextStyle;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import org.thirstline.calibration.age.DeclineFit;
import org.thirstline.calibration.age.Reading;
import org.thirstline.calibration.age.Reversibility;
import org.thirstline.calibration.age.SettlingPlan;
import org.thirstline.calibration.age.SettlingPlan.Change;
import org.thirstline.calibration.age.SettlingPlan.PowerPoint;
import org.thirstline.calibration.trial.AgeStudy;
import org.thirstline.calibration.trial.FirstWinter;
import org.thirstline.calibration.trial.FirstYears;
import org.thirstline.calibration.trial.LifeLength;
import org.thirstline.calibration.trial.VerdictDraws;
import org.thirstline.charts.UnitSystem;

/** The answer to age or weather in sentences, for terminal and report. Immutable. */
final class AgeWording {

    private final AgeStudy study;
    private final UnitSystem units;

    AgeWording(AgeStudy study, UnitSystem units) {
        this.study = study;
        this.units = units;
    }

    void print(String title, boolean invented, PrintWriter out) {
        out.println(title + (invented ? "  [invented data]" : ""));
        out.println();
        out.println(study.findings().sentence());
        out.println();
        sentences().forEach(out::println);
        if (!study.trial().notices().isEmpty()) {
            out.println();
            study.trial().notices().forEach(notice -> out.println("note: " + notice));
        }
    }

    /** Returns everything beside the verdict, a sentence each. */
    List<String> sentences() {
        List<String> sentences = new ArrayList<>();
        study.findings().withWeatherLeftIn().ifPresent(fit -> sentences.add(fitted("Weather left in", fit)));
        study.fair().ifPresent(fit -> sentences.add(fitted("Weather taken out", fit)));
        study.fair().ifPresent(fit -> sentences.add(readings(fit)));
        sentences.addAll(overDraws());
        sentences.addAll(settling());
        study.reversibility().ifPresent(reversibility -> sentences.add(reversibility(reversibility)));
        study.life().ifPresent(life -> sentences.add(life(life)));
        return sentences;
    }

    private static String fitted(String what, DeclineFit fit) {
        return format(
                "%s: %.1f %% a year past age %d (90 %% interval %.1f to %.1f; onset %.0f to %.0f), a mean decline of %.1f %% a year (%.1f to %.1f).",
                what,
                100.0 * fit.ratePerYear(),
                fit.onsetAge(),
                100.0 * fit.rateInterval().lower(),
                100.0 * fit.rateInterval().upper(),
                fit.onsetInterval().lower(),
                fit.onsetInterval().upper(),
                100.0 * fit.meanDeclinePerYear(),
                100.0 * fit.meanDeclineInterval().lower(),
                100.0 * fit.meanDeclineInterval().upper());
    }

    private static String readings(DeclineFit fit) {
        return "Chance of such a fall without decline: "
                + fit.chances().entrySet().stream()
                        .map(entry -> format("%.3f %s", entry.getValue(), reading(entry.getKey())))
                        .collect(Collectors.joining(", "))
                + "; each must be at most 0.025.";
    }

    private static String reading(Reading reading) {
        return reading.words();
    }

    /** Returns how far the verdict hangs on the calibration. */
    private List<String> overDraws() {
        if (study.overDraws().isEmpty()) {
            return study.trial().data().hasSimulation()
                    ? List.of(
                            "The crop file holds no posterior of a calibration, so that the verdict was not repeated over other"
                                    + " parameters; 'thirstline calibrate' writes one.")
                    : List.of();
        }
        VerdictDraws draws = study.overDraws().get();
        String verdicts = draws.tally().entrySet().stream()
                .map(entry -> format("%s in %d", entry.getKey().words(), entry.getValue()))
                .collect(Collectors.joining(", "));
        String range = draws.meanDeclinePerYear()
                .map(interval -> format(
                        "; nine in ten of their mean declines lie between %.1f and %.1f %% a year",
                        100.0 * interval.lower(), 100.0 * interval.upper()))
                .orElse("");
        return List.of(format("Repeated over %d draws of the calibration: %s%s.", draws.draws(), verdicts, range));
    }

    /** Returns the risk of the first winter, with the caution that belongs to it. */
    List<String> firstWinter() {
        FirstWinter winter = study.firstWinter();
        if (winter.dates().isEmpty()) {
            return List.of("The weather holds no whole first winter, so that its risk was not worked out.");
        }
        FirstWinter.Date first = winter.dates().get(0);
        FirstWinter.Date last = winter.dates().get(winter.dates().size() - 1);
        return List.of(
                format(
                        "First winter, %d of them: fewer than half of the plants live in %.0f %% of years, on average %.0f %% of plants do; half die at %.1f °C in the rhizome zone.",
                        winter.winters().size(),
                        100.0 * winter.failedShare(),
                        100.0 * winter.meanSurvival(),
                        winter.halfLethalC()),
                "By planting date: " + date(first) + "; " + date(last) + ".",
                "Caution: this is guidance, no forecast. New plantings often lie bare, which freezes deeper than the grass-covered ground"
                        + " that this soil temperature was fitted to, and small or late plants may die sooner than is simulated: take the"
                        + " shares as the least. Ask local growers, advisers and the supplier of the rhizomes before planting.");
    }

    private static String date(FirstWinter.Date date) {
        return format(
                "planted on %d %s (soil %.0f °C) fewer than half live in %.0f %% of years, and the second year has %.0f shoots per m2",
                date.day().getDayOfMonth(),
                date.day().getMonth().getDisplayName(TextStyle.SHORT, Locale.ENGLISH),
                date.soilTemperatureC(),
                100.0 * date.failedShare(),
                date.shootsM2());
    }

    /** Returns what the trial could have found and what would settle the question. */
    List<String> settling() {
        if (study.plan().isEmpty()) {
            return List.of(
                    "Without a simulation of these years neither the power of this trial nor what would settle the"
                            + " question can be worked out; give weather that holds them.");
        }
        SettlingPlan plan = study.plan().get();
        List<String> sentences = new ArrayList<>();
        String smallest = plan.smallestFoundPerYear().isPresent()
                ? format(
                        "The smallest decline past age %d that this trial finds in four cases of five is %.1f %% a year.",
                        plan.onsetAge(), 100.0 * plan.smallestFoundPerYear().getAsDouble())
                : "This trial would find no decline, however fast, in four cases of five.";
        sentences.add(study.scatterAssumed() ? smallest + " (Scatter assumed: too few years to show it.)" : smallest);
        sentences.add("2 % a year would be found by: " + changes(plan, false) + ".");
        sentences.add("5 % a year would be found by: " + changes(plan, true) + ".");
        return sentences;
    }

    private static String changes(SettlingPlan plan, boolean fast) {
        List<String> found = new ArrayList<>();
        for (Change change : Change.values()) {
            plan.smallestThatFinds(change, fast).ifPresent(point -> found.add(change(point, fast)));
            if (change == Change.AS_IS && !found.isEmpty()) {
                break;
            }
        }
        return found.isEmpty() ? "none of the longer and larger trials tried" : String.join("; ", found);
    }

    private static String change(PowerPoint point, boolean fast) {
        String chance = format(" (%.0f %%)", 100.0 * (fast ? point.powerAtFast() : point.powerAtSlow()));
        return switch (point.change()) {
            case AS_IS -> "this trial as it is" + chance;
            case MORE_YEARS -> point.moreYears() + " more years" + chance;
            case MORE_PLOTS -> point.plotsTimes() + " times the plots" + chance;
            case NEW_PLANTINGS ->
                point.newPlantings() + (point.newPlantings() == 1 ? " new planting" : " new plantings, 3 years apart,")
                        + " and " + point.moreYears() + " more years" + chance;
        };
    }

    private static String reversibility(Reversibility of) {
        String head = "After age " + of.onsetAge() + ", where the yields as harvested turn down, ";
        return switch (of.finding()) {
            case NOTHING_TO_COME_BACK_FROM -> head + "they were not lower than before.";
            case NO_GOOD_YEAR_SINCE ->
                head + "no year had good weather, so that nobody can say whether the yield would have come back.";
            case CAME_BACK -> head + "good years gave full yields again, as weather would have it" + losses(of);
            case STAYED_DOWN -> head + "the yield stayed down in good years too, as age would have it" + losses(of);
            case UNCLEAR -> head + "good years do not say whether the yield came back" + losses(of);
        };
    }

    private static String losses(Reversibility of) {
        String poor = of.poorYears().isEmpty()
                ? ""
                : format(
                        ", %.0f %% in %d poor ones",
                        100.0 * of.shortfallInPoorYears(), of.poorYears().size());
        return format(
                ": %.0f %% missing in %d good years (90 %% interval %.0f to %.0f)%s.",
                100.0 * of.shortfallInGoodYears(),
                of.goodYears().size(),
                100.0 * of.interval().lower(),
                100.0 * of.interval().upper(),
                poor);
    }

    private String life(LifeLength life) {
        int best = life.declining().bestAge();
        double mean = life.declining().meanMgHaYear()[best - 1];
        double steady = life.steady().meanMgHaYear()[life.steady().bestAge() - 1];
        String age = life.declining().bestIsLast()
                ? "no replanting age up to " + best + " beats keeping the stand"
                : "replanting after " + best + " years gives most dry matter a year";
        String beyond =
                best > life.oldestSeen() ? format(" (past age %d carried forward, not seen)", life.oldestSeen()) : "";
        return format(
                "With the fitted decline and %.0f year without yield between stands, %s, %s%s; without decline it would be %s.",
                life.gapYears(), age, units.yieldText(mean), beyond, units.yieldText(steady));
    }

    /** Returns what young stands give, a sentence for each zone. */
    List<String> firstYears() {
        return study.firstYears().stream()
                .filter(zone -> !zone.ages().isEmpty())
                .map(this::firstYears)
                .toList();
    }

    private String firstYears(FirstYears zone) {
        String ages = zone.ages().stream()
                .map(age -> format(
                        "year %d %s (nine in ten between %.1f and %.1f; %.0f shoots per m2)",
                        age.standAge(),
                        units.yieldText(age.meanMgHa()),
                        units.dryMatter(age.rangeMgHa().lower()),
                        units.dryMatter(age.rangeMgHa().upper()),
                        age.shootsM2()))
                .collect(Collectors.joining(", "));
        return format(
                "%s, simulated for %d planting years: %s; the first winter killed %d of them.",
                zone.zone(), zone.plantings(), ages, zone.winterKilled());
    }

    /** Returns how yields built up and fell as harvested. */
    String establishment() {
        Optional<Integer> first =
                study.establishment().meanByAgeMgHa().keySet().stream().findFirst();
        return format(
                "As harvested, from age %d on, the mean of all plots was highest at age %d and %.0f %% lower at the oldest age; weather is in all of it.",
                first.orElse(1),
                study.establishment().peakAge(),
                100.0 * study.establishment().lossSincePeak());
    }

    private static String format(String pattern, Object... values) {
        return String.format(Locale.ROOT, pattern, values);
    }
}
