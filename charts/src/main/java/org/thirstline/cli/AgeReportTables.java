package org.thirstline.cli;

import java.time.format.TextStyle;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.TreeSet;
import org.thirstline.calibration.age.SettlingPlan;
import org.thirstline.calibration.age.SettlingPlan.PowerPoint;
import org.thirstline.calibration.trial.AgeStudy;
import org.thirstline.calibration.trial.FirstWinter;
import org.thirstline.calibration.trial.FirstYears;
import org.thirstline.calibration.trial.LifeLength;
import org.thirstline.charts.Numbers;
import org.thirstline.charts.UnitSystem;
import org.thirstline.charts.report.ReportTable;
import org.thirstline.charts.report.ReportTable.Column;

/** Tables of the report on age or weather. Immutable. */
final class AgeReportTables {

    private static final int[] LIVES = {3, 5, 8, 10, 12, 15, 20, 25, 30};

    private static final double PERCENT = 100.0;

    private final AgeStudy study;
    private final UnitSystem units;

    AgeReportTables(AgeStudy study, UnitSystem units) {
        this.study = study;
        this.units = units;
    }

    /** Returns what would settle the question, and dry matter by stand life, as far as known. */
    List<ReportTable> decision() {
        List<ReportTable> tables = new ArrayList<>();
        study.plan().ifPresent(plan -> tables.add(settling(plan)));
        study.life().ifPresent(life -> tables.add(life(life)));
        return tables;
    }

    private static ReportTable settling(SettlingPlan plan) {
        List<List<String>> rows =
                plan.powers().stream().map(AgeReportTables::design).toList();
        return new ReportTable(
                "Chance of finding a decline past age " + plan.onsetAge() + ", by what is done from now on",
                List.of(
                        Column.text("design"),
                        Column.number("more years", ""),
                        Column.number("plots, times", ""),
                        Column.number("new plantings, 3 years apart", ""),
                        Column.number("2 % a year", "% of trials"),
                        Column.number("5 % a year", "% of trials")),
                rows);
    }

    private static List<String> design(PowerPoint point) {
        return List.of(
                point.change().name().toLowerCase(Locale.ROOT).replace('_', ' '),
                Integer.toString(point.moreYears()),
                Integer.toString(point.plotsTimes()),
                Integer.toString(point.newPlantings()),
                Numbers.fixed(PERCENT * point.powerAtSlow(), 0),
                Numbers.fixed(PERCENT * point.powerAtFast(), 0));
    }

    private ReportTable life(LifeLength life) {
        TreeSet<Integer> ages = new TreeSet<>();
        for (int age : LIVES) {
            ages.add(age);
        }
        ages.add(life.declining().bestAge());
        ages.add(life.steady().bestAge());
        double[] fallen = life.declining().cumulativeMgHa();
        double[] fallenMean = life.declining().meanMgHaYear();
        double[] steady = life.steady().cumulativeMgHa();
        double[] steadyMean = life.steady().meanMgHaYear();
        List<List<String>> rows = ages.stream()
                .map(age -> List.of(
                        Integer.toString(age) + (age == life.declining().bestAge() ? " (most a year)" : ""),
                        mass(fallen[age - 1]),
                        mass(fallenMean[age - 1]),
                        mass(steady[age - 1]),
                        mass(steadyMean[age - 1])))
                .toList();
        String unit = units.yieldUnit();
        return new ReportTable(
                String.format(
                        Locale.ROOT,
                        "Dry matter by the age at which a stand is replanted, %.0f year without yield between stands; past age %d carried"
                                + " forward, not seen",
                        life.gapYears(),
                        life.oldestSeen()),
                List.of(
                        Column.text("replanted after (years)"),
                        Column.number("in all, fitted decline", unit),
                        Column.number("a year, fitted decline", unit),
                        Column.number("in all, no decline", unit),
                        Column.number("a year, no decline", unit)),
                rows);
    }

    private String mass(double mgHa) {
        return Numbers.fixed(units.dryMatter(mgHa), 1);
    }

    /** Returns first years by zone, and first winters by planting date. */
    List<ReportTable> young() {
        List<ReportTable> tables = new ArrayList<>();
        study.firstYears().stream()
                .filter(zone -> !zone.ages().isEmpty())
                .forEach(zone -> tables.add(firstYears(zone)));
        if (!study.firstWinter().dates().isEmpty()) {
            tables.add(firstWinter(study.firstWinter()));
        }
        return tables;
    }

    private ReportTable firstYears(FirstYears zone) {
        String unit = units.yieldUnit();
        List<List<String>> rows = zone.ages().stream()
                .map(age -> List.of(
                        Integer.toString(age.standAge()),
                        Numbers.fixed(age.plantsM2(), 2),
                        Numbers.fixed(PERCENT * (1.0 - age.plantsM2() / zone.plantedM2()), 0),
                        Numbers.fixed(age.shootsM2(), 0),
                        mass(age.meanMgHa()),
                        mass(age.rangeMgHa().lower()),
                        mass(age.rangeMgHa().upper())))
                .toList();
        return new ReportTable(
                zone.zone() + ": the first years of " + zone.plantings() + " simulated plantings of "
                        + Numbers.fixed(zone.plantedM2(), 2) + " plants per m²; means of those that live",
                List.of(
                        Column.number("stand age", ""),
                        Column.number("plants", "per m²"),
                        Column.number("gaps", "% of plants set"),
                        Column.number("shoots", "per m²"),
                        Column.number("harvest", unit),
                        Column.number("lowest of nine in ten", unit),
                        Column.number("highest of nine in ten", unit)),
                rows);
    }

    private static ReportTable firstWinter(FirstWinter winter) {
        List<List<String>> rows = winter.dates().stream()
                .map(date -> List.of(
                        date.day().getDayOfMonth() + " "
                                + date.day().getMonth().getDisplayName(TextStyle.SHORT, Locale.ENGLISH),
                        Integer.toString(date.years()),
                        Numbers.fixed(date.soilTemperatureC(), 1),
                        Numbers.fixed(PERCENT * date.meanSurvival(), 0),
                        Numbers.fixed(PERCENT * date.lowestSurvival(), 0),
                        Numbers.fixed(PERCENT * date.failedShare(), 0),
                        Numbers.fixed(date.reserveGM2(), 0),
                        Numbers.fixed(date.shootsM2(), 0)))
                .toList();
        return new ReportTable(
                winter.zone() + ": the first winter by planting date",
                List.of(
                        Column.text("planted"),
                        Column.number("years", ""),
                        Column.number("soil in the week of planting", "°C"),
                        Column.number("plants alive, mean", "%"),
                        Column.number("in the worst year", "%"),
                        Column.number("years with fewer than half", "%"),
                        Column.number("reserve after winter", "g/m²"),
                        Column.number("shoots in the second year", "per m²")),
                rows);
    }
}
