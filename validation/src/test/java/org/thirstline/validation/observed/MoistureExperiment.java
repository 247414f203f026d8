package org.thirstline.validation.observed;

import java.time.MonthDay;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.ToDoubleFunction;
import org.thirstline.calibration.fit.FitParameter;
import org.thirstline.model.crop.CropParameter;
import org.thirstline.model.engine.FieldConditions;
import org.thirstline.model.engine.PairedRuns;
import org.thirstline.model.result.DailyVariable;
import org.thirstline.model.result.SeasonVariable;
import org.thirstline.model.result.StandResult;
import org.thirstline.model.weather.DailyDrivers;
import org.thirstline.validation.observed.Experiment.Item;

/** Moisture of giant miscanthus by date at the places the page compares. Where a range was published, its middle is fitted. */
final class MoistureExperiment {

    static final List<CropParameter> PARAMETERS = List.of(CropParameter.DRYING_RATE, CropParameter.DRYING_RATE_PER_ET0);

    /** No range is published for either: a third to three times the default, which is judgement. */
    private static final double FACTOR = 3.0;

    private final List<Item> items = new ArrayList<>();

    private MoistureExperiment() {}

    static Experiment of(Facts facts) {
        MoistureExperiment made = new MoistureExperiment();
        Runs wisconsin = new Runs(
                Stations.necedah(),
                Fields.of(Fields.MISCANTHUS, 2008, Fields.soil(1.8, 170.0), MonthDay.of(4, 10), 1.0),
                400);
        for (String date : List.of("1022", "1108", "1208", "0315")) {
            MonthDay day = MonthDay.of(Integer.parseInt(date.substring(0, 2)), Integer.parseInt(date.substring(2)));
            made.add(facts, "moisture/mxg-" + date, "Wisconsin", point -> wisconsin.onDate(point, day));
        }
        Runs deBilt = new Runs(
                Stations.deBilt(),
                Fields.of(Fields.MISCANTHUS, 1980, Fields.soil(1.5, 150.0), MonthDay.of(3, 15), 1.0),
                30);
        made.add(facts, "winter/de-bilt-march-moisture", "De Bilt", deBilt::atHarvest);
        Runs champaign = new Runs(
                Stations.champaign(),
                Fields.of(Fields.MISCANTHUS, 2004, Fields.soil(1.8, 170.0), MonthDay.of(3, 1), 0.85),
                30);
        made.add(facts, "trade/late-winter-moisture", "Illinois", champaign::atHarvest);
        List<FitParameter> parameters = PARAMETERS.stream()
                .map(parameter -> {
                    double usual = Fields.usual(Fields.MISCANTHUS, parameter);
                    return FitParameter.between(parameter.key(), usual, usual / FACTOR, usual * FACTOR);
                })
                .toList();
        return new Experiment("moisture of giant miscanthus", "% wet basis", made.items, parameters);
    }

    private void add(Facts facts, String key, String place, ToDoubleFunction<double[]> simulate) {
        items.add(new Item(place, place, facts.middle(key), simulate));
    }

    /** Runs of one stand, the last point kept. Confined to one thread. */
    private static final class Runs {

        private final DailyDrivers drivers;
        private final FieldConditions field;
        private final int maxFilledDays;
        private double[] last = {};
        private StandResult run;

        Runs(DailyDrivers drivers, FieldConditions field, int maxFilledDays) {
            this.drivers = drivers;
            this.field = field;
            this.maxFilledDays = maxFilledDays;
        }

        double onDate(double[] point, MonthDay day) {
            if (!Arrays.equals(point, last)) {
                run = PairedRuns.simulate(drivers, Fields.with(field, PARAMETERS, point), maxFilledDays);
                last = point.clone();
            }
            return SeasonStudy.onDate(run, DailyVariable.MOISTURE, day, day.getMonthValue() < 7 ? 2011 : 2010);
        }

        double atHarvest(double[] point) {
            return PairedRuns.simulateActual(drivers, Fields.with(field, PARAMETERS, point), maxFilledDays).stream()
                    .filter(season -> season.isComplete() && season.standAge() >= 3)
                    .mapToDouble(season -> season.value(SeasonVariable.HARVEST_MOISTURE))
                    .average()
                    .orElse(Double.NaN);
        }
    }
}
