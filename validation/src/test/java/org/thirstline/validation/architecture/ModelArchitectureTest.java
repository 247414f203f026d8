package org.thirstline.validation.architecture;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.fields;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;

import com.tngtech.archunit.core.importer.ImportOption.DoNotIncludeTests;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchRule;
import java.time.Clock;

/** The model is pure: numbers in, numbers out. */
@AnalyzeClasses(packages = "org.thirstline", importOptions = DoNotIncludeTests.class)
class ModelArchitectureTest {

    private static final String MODEL = "org.thirstline.model..";

    @ArchTest
    static final ArchRule MODEL_KNOWS_ONLY_THE_JDK_AND_THE_MATHS = classes()
            .that()
            .resideInAPackage(MODEL)
            .should()
            .onlyDependOnClassesThat()
            .resideInAnyPackage(
                    MODEL,
                    "java.lang..",
                    "java.util..",
                    "java.time..",
                    "java.text..",
                    "org.hipparchus..",
                    "org.jspecify..");

    @ArchTest
    static final ArchRule MODEL_DOES_NOT_LOG = noClasses()
            .that()
            .resideInAPackage(MODEL)
            .should()
            .dependOnClassesThat()
            .resideInAnyPackage("java.util.logging..", "java.util.prefs..", "java.lang.management..");

    @ArchTest
    static final ArchRule MODEL_DOES_NOT_PRINT = noClasses()
            .that()
            .resideInAPackage(MODEL)
            .should()
            .accessField(System.class, "out")
            .orShould()
            .accessField(System.class, "err");

    @ArchTest
    static final ArchRule MODEL_DOES_NOT_LOOK_AT_THE_CLOCK = noClasses()
            .that()
            .resideInAPackage(MODEL)
            .should()
            .dependOnClassesThat()
            .areAssignableTo(Clock.class)
            .orShould()
            .callMethod(System.class, "currentTimeMillis")
            .orShould()
            .callMethod(System.class, "nanoTime")
            .orShould()
            .callMethod(java.time.LocalDate.class, "now");

    @ArchTest
    static final ArchRule MODEL_HAS_NO_STATIC_STATE = fields().that()
            .areDeclaredInClassesThat()
            .resideInAPackage(MODEL)
            .and()
            .areStatic()
            .should()
            .beFinal();

    @ArchTest
    static final ArchRule SOIL_KNOWS_NEITHER_CROP_NOR_ENGINE = siblings("soil", "crop", "engine", "climate");

    @ArchTest
    static final ArchRule CROP_KNOWS_NEITHER_SOIL_NOR_ENGINE = siblings("crop", "soil", "engine", "climate");

    @ArchTest
    static final ArchRule EQUATIONS_OF_THE_AIR_KNOW_NEITHER_STAND_NOR_SOIL =
            siblings("evapotranspiration", "crop", "soil", "engine", "climate", "weather", "result");

    @ArchTest
    static final ArchRule SUN_KNOWS_ONLY_ITSELF =
            siblings("solar", "crop", "soil", "engine", "climate", "weather", "result", "evapotranspiration");

    private static ArchRule siblings(String one, String... others) {
        String[] packages = new String[others.length];
        for (int i = 0; i < others.length; i++) {
            packages[i] = "org.thirstline.model." + others[i] + "..";
        }
        return noClasses()
                .that()
                .resideInAPackage("org.thirstline.model." + one + "..")
                .should()
                .dependOnClassesThat()
                .resideInAnyPackage(packages);
    }
}
