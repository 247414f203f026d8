package org.thirstline.validation.catalogue;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.thirstline.validation.broken.SeenToFail;
import org.thirstline.validation.observed.ObservedWorld;

/**
 * The pages of validation are made here: {@code mvn -pl validation -am test -Dtest=ValidationPageTest
 * -Dsurefire.failIfNoSpecifiedTests=false -Dthirstline.regenerate=true} writes them, without the property this test fails when what is
 * committed is no longer what would be written. What needs real files is taken from the committed results; with the property and the
 * files at hand it is calculated anew.
 */
class ValidationPageTest {

    private static final Path DOCS = Path.of("../docs");
    private static final Path WORDS = Path.of("src/test/resources/validation-page");
    private static final boolean REGENERATE = Boolean.getBoolean("thirstline.regenerate");
    private static final Path README = Path.of("../README.md");
    private static final long ASKED_FOR = 150;

    private static List<Family> families = List.of();
    private static Page page = new Page(List.of(), Map.of(), List.of(), Map.of());

    /** Made once for all tests here. */
    @BeforeAll
    static void make() throws IOException {
        if (REGENERATE) {
            ObservedWorld.recordIfPresent();
            SeenToFail.recordIfPresent();
        }
        families = AllFamilies.calculate();
        Map<String, String> words = new HashMap<>();
        for (String name : List.of("introduction", "calibration", "mutation", "not-validated")) {
            words.put(name, Files.readString(WORDS.resolve(name + ".md")));
        }
        page = new Page(families, SeenToFail.outcomes(families), ObservedWorld.calibrated(), words);
    }

    @Test
    void theCommittedPagesAreUpToDate() throws IOException {
        for (Map.Entry<String, String> file : page.files().entrySet()) {
            Path path = DOCS.resolve(file.getKey());
            if (REGENERATE) {
                Files.createDirectories(path.getParent());
                Files.writeString(path, file.getValue());
            }
            assertThat(Files.exists(path) && Files.readString(path).equals(file.getValue()))
                    .as("%s is what the generator writes; else run this test with -Dthirstline.regenerate=true", path)
                    .isTrue();
        }
    }

    @Test
    void noPictureIsLeftOver() throws IOException {
        List<Path> known = page.files().keySet().stream().map(DOCS::resolve).toList();
        try (var pictures = Files.list(DOCS.resolve("images/validation"))) {
            assertThat(pictures).allSatisfy(picture -> assertThat(known).contains(picture));
        }
    }

    @Test
    void thePageHoldsEnoughIndependentNumbersAndSaysWhatMisses() throws IOException {
        long passes = families.stream()
                .filter(family -> family.reproduced() && family.counted())
                .mapToLong(family -> family.count(Verdict.PASS))
                .sum();
        assertThat(passes).isGreaterThanOrEqualTo(ASKED_FOR);
        for (Family family : families) {
            assertThat(family.rows()).allSatisfy(row -> assertThat(row.source()).isNotBlank());
            assertThat(family.rows()).allSatisfy(row -> assertThat(row.seen()).isNotBlank());
            assertThat(family.rows())
                    .filteredOn(row -> row.verdict() != Verdict.PASS && row.verdict() != Verdict.SHOWN)
                    .allSatisfy(row -> assertThat(row.reason()).isNotBlank());
        }
    }

    @Test
    void theReadmeLinksHereWithTheCountAndTheMisses() throws IOException {
        assertThat(Files.readString(README).replaceAll("\\s+", " "))
                .contains("](docs/validation.md)")
                .contains(page.sentence());
    }

    /** The picture and the verdict say the same. */
    @Test
    void aMissIsDrawnOutsideTheBand() {
        CheckRow miss = new CheckRow("a", "a", "1", 0.9, 1.1, 1.2, "invented", "none", "none", Verdict.MISS);
        CheckRow pass = new CheckRow("b", "b", "1", 0.9, 1.1, 1.0, "invented", "none", "none", Verdict.PASS);
        Family family = new Family("x", "x", "", "x", true, true, List.of(miss, pass));
        assertThat(Picture.of(family)).contains("#D55E00").contains("#0072B2");
        assertThat(miss.relativeDifference()).isGreaterThan(1.0);
        assertThat(new Page(List.of(family), Map.of(), List.of(), Map.of()).sentence())
                .contains("1 of 2", "misses: 1");
    }
}
