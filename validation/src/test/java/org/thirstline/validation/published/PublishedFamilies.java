package org.thirstline.validation.published;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Supplier;
import java.util.function.ToDoubleFunction;
import org.thirstline.validation.catalogue.CheckRow;
import org.thirstline.validation.catalogue.Family;
import org.thirstline.validation.catalogue.Verdict;

/** Every file of published numbers with what our code makes of it. */
public final class PublishedFamilies {

    private static final String FOLDER = "validation/src/test/resources/";

    private PublishedFamilies() {}

    private record FileChecks(String file, Map<String, ToDoubleFunction<Inputs>> quantities) {

        String slug() {
            return file.replace(".csv", "");
        }
    }

    private static List<FileChecks> files() {
        List<FileChecks> files = new ArrayList<>();
        for (String name : AtmosphereAndRadiationTest.FILES) {
            files.add(new FileChecks(name, PublishedDay.QUANTITIES));
        }
        files.add(new FileChecks("fao56-examples-28-44.csv", CropWaterTest.COEFFICIENTS));
        files.add(new FileChecks("fao56-example-36.csv", CropWaterTest.COEFFICIENTS));
        files.add(new FileChecks("fao56-example-35.csv", CropWaterTest.surfaceQuantities()));
        files.add(new FileChecks("fao56-example-38.csv", CropWaterTest.rootZoneQuantities()));
        files.add(new FileChecks("nrcs-curve-number-runoff.csv", CurveNumberTest.RUNOFF));
        files.add(new FileChecks("nrcs-curve-number-condition.csv", CurveNumberTest.CONDITIONS));
        files.add(new FileChecks("saxton-rawls-table-3.csv", SoilTextureTest.QUANTITIES));
        files.add(new FileChecks("neh630-snow-melt.csv", SnowMeltTest.QUANTITIES));
        files.add(new FileChecks("spi.csv", PrecipitationIndexTest.QUANTITIES));
        return files;
    }

    /** Returns what calculates each family, by its name, in the order of the page. */
    public static Map<String, Supplier<Family>> makers() {
        Map<String, Supplier<Family>> makers = new LinkedHashMap<>();
        for (FileChecks checks : files()) {
            makers.put(checks.slug(), () -> family(checks));
        }
        makers.put("spi-classes", PublishedFamilies::precipitationClasses);
        makers.put("nist-nonlinear", PublishedFamilies::certifiedRegression);
        makers.put(SobolFamily.SLUG, SobolFamily::calculate);
        return makers;
    }

    private static Family family(FileChecks checks) {
        Catalogue catalogue = Catalogue.read(checks.file());
        List<CheckRow> rows = catalogue.numbers().stream()
                .map(number -> row(number, checks.quantities().get(number.quantity())))
                .toList();
        return new Family(
                checks.slug(),
                catalogue.title(),
                catalogue.note(),
                FOLDER + "published/" + checks.file(),
                true,
                catalogue.counted(),
                rows);
    }

    private static CheckRow row(PublishedNumber number, ToDoubleFunction<Inputs> quantity) {
        if (quantity == null) {
            return new CheckRow(
                    number.id(),
                    number.words(),
                    "–",
                    Double.NaN,
                    Double.NaN,
                    Double.NaN,
                    number.reason(),
                    number.source(),
                    number.seen(),
                    Verdict.NOT_MODELLED);
        }
        double expected = Double.parseDouble(number.expected());
        double computed = quantity.applyAsDouble(number.inputs());
        double tolerance = number.isSkipped() ? halfUnit(number.expected()) : Double.parseDouble(number.tolerance());
        return new CheckRow(
                number.id(),
                number.words(),
                number.expected(),
                expected - tolerance,
                expected + tolerance,
                computed,
                number.reason(),
                number.source(),
                number.seen(),
                number.accepts(computed, tolerance) ? Verdict.PASS : Verdict.MISS);
    }

    /** Half a unit of the last printed digit. */
    private static double halfUnit(String printed) {
        int point = printed.indexOf('.');
        return 0.5 * Math.pow(10.0, point < 0 ? 0.0 : point + 1.0 - printed.length());
    }

    private static Family precipitationClasses() {
        List<CheckRow> rows = new ArrayList<>();
        for (String[] cells : PrecipitationIndexTest.classes()) {
            boolean same = PrecipitationIndexTest.classOf(cells[0]).equals(cells[1]);
            rows.add(new CheckRow(
                    "SPI " + cells[0],
                    "class: ours is " + PrecipitationIndexTest.classOf(cells[0]),
                    cells[1],
                    Double.NaN,
                    Double.NaN,
                    Double.NaN,
                    "the same words",
                    "WMO-No. 1090 (2012), Table 1",
                    "read",
                    same ? Verdict.PASS : Verdict.MISS));
        }
        return new Family(
                "spi-classes",
                "WMO-No. 1090 Table 1: classes of the index",
                "",
                FOLDER + "samples/spi-classes.csv",
                true,
                true,
                rows);
    }

    private static Family certifiedRegression() {
        List<CheckRow> rows = NonlinearRegressionTest.certified().stream()
                .map(number -> row(number.published(), in -> number.computed()))
                .toList();
        return new Family(
                "nist-nonlinear",
                NonlinearRegressionTest.TITLE,
                "Fits start from the nearer of the two published starting points; the tests fit from the farther one too."
                        + " There one of the seventeen (BoxBOD) needs several starting points: one step from (1, 1) leads"
                        + " onto a plateau.",
                FOLDER + "nist",
                true,
                true,
                rows);
    }
}
