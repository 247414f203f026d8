package org.thirstline.validation.architecture;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.Architectures.layeredArchitecture;

import com.tngtech.archunit.core.importer.ImportOption.DoNotIncludeTests;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchRule;

/** Modules depend one way, and libraries stay where they belong. */
@AnalyzeClasses(packages = "org.thirstline", importOptions = DoNotIncludeTests.class)
class ModuleArchitectureTest {

    @ArchTest
    static final ArchRule MODULES_DEPEND_ONE_WAY = layeredArchitecture()
            .consideringOnlyDependenciesInLayers()
            .layer("model")
            .definedBy("org.thirstline.model..")
            .optionalLayer("weather-io")
            .definedBy("org.thirstline.io..")
            .layer("calibration")
            .definedBy("org.thirstline.calibration..")
            .optionalLayer("charts")
            .definedBy("org.thirstline.charts..")
            .optionalLayer("cli")
            .definedBy("org.thirstline.cli..")
            .whereLayer("model")
            .mayNotAccessAnyLayer()
            .whereLayer("weather-io")
            .mayOnlyAccessLayers("model")
            .whereLayer("calibration")
            .mayOnlyAccessLayers("model", "weather-io")
            .whereLayer("charts")
            .mayOnlyAccessLayers("model", "weather-io", "calibration")
            .whereLayer("cli")
            .mayNotBeAccessedByAnyLayer();

    @ArchTest
    static final ArchRule ONLY_CHARTS_AND_COMMANDS_DRAW_AND_PARSE_COMMAND_LINES = noClasses()
            .that()
            .resideOutsideOfPackages("org.thirstline.charts..", "org.thirstline.cli..")
            .should()
            .dependOnClassesThat()
            .resideInAnyPackage(
                    "org.jfree..", "org.apache.batik..", "org.apache.poi..", "de.rototor..", "picocli..", "java.awt..");

    @ArchTest
    static final ArchRule SECOND_OPINIONS_STAY_IN_THE_TESTS = noClasses()
            .should()
            .dependOnClassesThat()
            .resideInAnyPackage("org.apache.commons.math3..", "org.junit..", "org.assertj..");

    @ArchTest
    static final ArchRule FITTING_KNOWS_NO_CROP = noClasses()
            .that()
            .resideInAnyPackage(
                    "org.thirstline.calibration.fit..",
                    "org.thirstline.calibration.posterior..",
                    "org.thirstline.calibration.response..",
                    "org.thirstline.calibration.sensitivity..",
                    "org.thirstline.calibration.skill..",
                    "org.thirstline.calibration.age..")
            .should()
            .dependOnClassesThat()
            .resideInAnyPackage(
                    "org.thirstline.model.crop..",
                    "org.thirstline.model.soil..",
                    "org.thirstline.model.engine..",
                    "org.thirstline.io..");
}
