package org.thirstline.validation.age;

import java.util.ArrayList;
import java.util.List;
import java.util.random.RandomGenerator;
import java.util.random.RandomGeneratorFactory;
import org.thirstline.calibration.age.AgeAnalysis;
import org.thirstline.calibration.age.AgeOptions;
import org.thirstline.calibration.age.DeclineFit;
import org.thirstline.calibration.age.Establishment;
import org.thirstline.calibration.age.TrialData;
import org.thirstline.validation.catalogue.CheckRow;
import org.thirstline.validation.catalogue.Family;
import org.thirstline.validation.catalogue.Verdict;

/** What was published about yield and stand age, beside what the age analysis makes of it. */
public final class StandAgeFamily {

    /** Name of the family. */
    public static final String SLUG = "stand-age";

    private static final String EUROPE = "Clifton-Brown et al. 2001, Agronomy Journal 93:1013-1019";
    private static final String DRYAD = "Dryad data set 10.5061/dryad.6m905qg9x (2025), over 200 plantings";
    private static final String READ = "read";
    private static final String DRAWN =
            "even fall drawn from the published share: reading it back is tested, not that it happened";
    private static final String RANGE = "the published age must lie in the range the published declines give";

    private static final AgeOptions OPTIONS = AgeOptions.usual().withReplicates(499, 499, 99);
    private static final int ENGLISH_SERIES = 100;

    private final List<CheckRow> rows = new ArrayList<>();

    private StandAgeFamily() {}

    /** Calculates the family. */
    public static Family calculate() {
        StandAgeFamily family = new StandAgeFamily();
        family.buildUp();
        family.peakAndFall();
        family.courses();
        family.replanting();
        return new Family(
                SLUG,
                "Stand age: published build-up, peak, fall and replanting age",
                "Weather of the sites in those years is not part of what was published, so every series goes the way without weather: it"
                        + " describes a curve and names no cause. Where only a summary was published the series is drawn from it, which the"
                        + " row says; these numbers are therefore not counted. That the analysis refuses to attribute any of these falls to"
                        + " age is tested beside them.",
                "validation/src/test/java/org/thirstline/validation/age/StandAgeSeries.java",
                true,
                false,
                family.rows);
    }

    private void add(
            String id,
            String what,
            String published,
            double low,
            double high,
            double computed,
            String reason,
            String source,
            String seen) {
        Verdict verdict = computed >= low && computed <= high ? Verdict.PASS : Verdict.MISS;
        rows.add(new CheckRow(id, what, published, low, high, computed, reason, source, seen, verdict));
    }

    private void buildUp() {
        double[] buildUp = Establishment.of(StandAgeSeries.europe()).buildUp();
        String reason = "half a unit of the last printed digit";
        add("europe-1", "season 1 over season 3", "0.11", 0.105, 0.115, buildUp[0], reason, EUROPE, READ);
        add("europe-2", "season 2 over season 3", "0.50", 0.495, 0.505, buildUp[1], reason, EUROPE, READ);
    }

    private void peakAndFall() {
        TrialData least = StandAgeSeries.drawnMichiganAndWisconsin(0.14, 7, 5);
        TrialData most = StandAgeSeries.drawnMichiganAndWisconsin(0.40, 6, 4);
        Establishment slow = Establishment.of(least);
        Establishment fast = Establishment.of(most);
        String derived = "derived";
        add("dryad-peak-late", "age of the peak, late", "5", 4.5, 5.5, slow.peakAge(), DRAWN, DRYAD, derived);
        add("dryad-peak-early", "age of the peak, early", "4", 3.5, 4.5, fast.peakAge(), DRAWN, DRYAD, derived);
        add(
                "dryad-loss-least",
                "lost since the peak, least",
                "0.14",
                0.135,
                0.145,
                slow.lossSincePeak(),
                DRAWN,
                DRYAD,
                derived);
        add(
                "dryad-loss-most",
                "lost since the peak, most",
                "0.40",
                0.395,
                0.405,
                fast.lossSincePeak(),
                DRAWN,
                DRYAD,
                derived);
        double rate = fit(most, 4).ratePerYear();
        double published = 1.0 - Math.pow(0.60, 1.0 / 6.0);
        add(
                "dryad-rate",
                "decline a year, from 40 % in 6 years",
                "0.082",
                published - 0.0005,
                published + 0.0005,
                rate,
                DRAWN,
                DRYAD,
                derived);
    }

    private static DeclineFit fit(TrialData data, int establishedAge) {
        return AgeAnalysis.of(data, OPTIONS.withEstablishedAge(establishedAge))
                .withWeatherLeftIn()
                .orElseThrow();
    }

    private void courses() {
        String angelini = "Angelini et al. 2009, as summarised in BioEnergy Research 2015 (10.1007/s12155-015-9598-x)";
        TrialData pisa = StandAgeSeries.pisa();
        Establishment reed = Establishment.of(pisa);
        add("pisa-peak", "giant reed, age of the peak", "3", 2.5, 3.5, reed.peakAge(), "a whole year", angelini, READ);
        add(
                "pisa-loss",
                "giant reed, lost by year 12: 55 to 25",
                "0.545",
                0.535,
                0.556,
                reed.lossSincePeak(),
                "25 ± 0.5 over 55",
                angelini,
                READ);
        interval("pisa-decline", "giant reed, decline a year: 55 to 25 in nine years", "0.084", fit(pisa, 3), angelini);
        interval(
                "yorkshire-decline",
                "commercial field in East Yorkshire, decline a year: none to be seen in nine harvests",
                "0",
                fit(StandAgeSeries.eastYorkshire(), 4),
                "Farm Contractor magazine, 12 ha planted 2012, harvests 2014 to 2022");
        add(
                "england-calls",
                "14 English harvests without decline, drawn 100 times: share called a decline",
                "0",
                0.0,
                AgeOptions.SIZE,
                englishCalls(),
                "the size of the test",
                "Christian, Riche and Yates 2008, Industrial Crops and Products 28:320-327",
                "read (abstract)");
        add(
                "illinois-fall",
                "plantings of seven whose mean fell from 2008 to 2009",
                "7",
                6.5,
                7.5,
                StandAgeSeries.fallFrom2008To2009().values().stream()
                        .filter(fall -> fall > 0.0)
                        .count(),
                "a count",
                "BETYdb extract, LeBauer et al. 2018, GCB Bioenergy 10:61-71 (10.1111/gcbb.12420)",
                READ);
    }

    /** The published decline must lie in our interval: the row shows ours, accepted is what the width of the interval allows. */
    private void interval(String id, String what, String published, DeclineFit fit, String source) {
        double expected = Double.parseDouble(published);
        double ours = fit.meanDeclinePerYear();
        double low = expected - (fit.meanDeclineInterval().upper() - ours);
        double high = expected + (ours - fit.meanDeclineInterval().lower());
        add(id, what, published, low, high, ours, "our own 90 % interval holds the published value", source, READ);
    }

    static double englishCalls() {
        RandomGenerator random = RandomGeneratorFactory.of("L64X128MixRandom").create(1993L);
        AgeOptions quick = OPTIONS.withReplicates(199, 99, 99);
        int called = 0;
        for (int i = 0; i < ENGLISH_SERIES; i++) {
            called += AgeAnalysis.of(StandAgeSeries.drawnEnglish(random), quick)
                            .withWeatherLeftIn()
                            .orElseThrow()
                            .declines()
                    ? 1
                    : 0;
        }
        return (double) called / ENGLISH_SERIES;
    }

    private void replanting() {
        int[] miscanthus = StandAgeSeries.bestYearsAfterPeak(0.14, 0.40);
        int[] switchgrass = StandAgeSeries.bestYearsAfterPeak(0.30, 0.47);
        add(
                "replant-mxg-early",
                "giant miscanthus, earliest best replanting, years after the peak",
                "9",
                0.0,
                9.0,
                miscanthus[0],
                RANGE,
                DRYAD,
                READ);
        add(
                "replant-mxg-late",
                "giant miscanthus, latest best replanting, years after the peak",
                "9",
                9.0,
                60.0,
                miscanthus[1],
                RANGE,
                DRYAD,
                READ);
        add(
                "replant-swg-early",
                "switchgrass, earliest best replanting, years after the peak",
                "5",
                0.0,
                5.0,
                switchgrass[0],
                RANGE,
                DRYAD,
                READ);
        add(
                "replant-swg-late",
                "switchgrass, latest best replanting, years after the peak",
                "5",
                5.0,
                60.0,
                switchgrass[1],
                RANGE,
                DRYAD,
                READ);
    }
}
