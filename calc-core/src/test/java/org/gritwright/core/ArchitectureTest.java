package org.gritwright.core;

import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAnyPackage;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;
import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.lang.ArchRule;
import java.nio.file.Path;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.gritwright.core.spi.ConveyorType;
import org.gritwright.core.spi.GateType;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Which package may know which: the arrows, from the ground up. */
class ArchitectureTest {
    private static final String CORE = "org.gritwright.core.";

    private static final JavaClasses MAIN = new ClassFileImporter().importPath(Path.of("target", "classes"));

    /** Each package with the packages of this module that it may know. */
    private static final Map<String, Set<String>> ARROWS = Map.ofEntries(
            Map.entry("measurement", Set.of()),
            Map.entry("finding", Set.of("measurement")),
            Map.entry("spi", Set.of("measurement")),
            Map.entry("conformance", Set.of("spi")),
            Map.entry("weighing", Set.of("measurement", "finding")),
            Map.entry("spreader", Set.of("measurement", "spi")),
            Map.entry("rate", Set.of("measurement")),
            Map.entry("calibration", Set.of("measurement", "finding", "spi", "weighing", "spreader")),
            Map.entry("verification", Set.of("measurement", "finding", "spi", "weighing", "spreader", "calibration")),
            Map.entry(
                    "planning",
                    Set.of("measurement", "finding", "spi", "weighing", "spreader", "calibration", "verification")),
            Map.entry(
                    "fleet",
                    Set.of(
                            "measurement",
                            "finding",
                            "spi",
                            "weighing",
                            "spreader",
                            "rate",
                            "calibration",
                            "verification",
                            "planning")),
            Map.entry(
                    "record",
                    Set.of(
                            "measurement",
                            "finding",
                            "spi",
                            "conformance",
                            "weighing",
                            "spreader",
                            "rate",
                            "calibration",
                            "verification",
                            "planning",
                            "fleet")));

    /** The one library besides Jackson; only the ground knows it. */
    private static final String DISTRIBUTIONS = "org.apache.commons.statistics.distribution..";

    static Stream<String> packages() {
        return MAIN.stream()
                .map(JavaClass::getPackageName)
                .filter(name -> name.startsWith(CORE))
                .map(name -> name.substring(CORE.length()))
                .distinct()
                .sorted();
    }

    @Test
    void everyPackageHasItsFloor() {
        assertThat(packages()).isNotEmpty().isSubsetOf(ARROWS.keySet());
    }

    @ParameterizedTest
    @MethodSource("packages")
    void aPackageKnowsOnlyWhatLiesBelow(String name) {
        Stream<String> ours =
                Stream.concat(Stream.of(name), ARROWS.get(name).stream()).map(known -> CORE + known);
        Stream<String> others = Stream.of("org.gritwright.units..", "javax.measure..", "java..");
        Stream<String> jackson = name.equals("record") ? Stream.of("com.fasterxml.jackson.core..") : Stream.of();
        Stream<String> statistics = name.equals("measurement") ? Stream.of(DISTRIBUTIONS) : Stream.of();
        String[] allowed = Stream.of(ours, others, jackson, statistics)
                .flatMap(known -> known)
                .toArray(String[]::new);

        classes()
                .that()
                .resideInAPackage(CORE + name)
                .should()
                .onlyDependOnClassesThat()
                .resideInAnyPackage(allowed)
                .check(MAIN);
    }

    @Test
    void thereAreNoCycles() {
        slices().matching(CORE + "(*)..").should().beFreeOfCycles().check(MAIN);
    }

    @Test
    void jsr385IsUsedThroughItsQuantitiesAndUnitsOnly() {
        noClasses()
                .should()
                .dependOnClassesThat()
                .resideInAnyPackage("tech.units..", "javax.measure.format..", "javax.measure.spi..")
                .because("texts are read and written by the symbol table, which knows no locale")
                .check(MAIN);
    }

    @Test
    void builtInTypesUseOnlyWhatAnOutsidersTypeCan() {
        Set<String> builtIn = MAIN.stream()
                .filter(type -> !type.isInterface())
                .filter(type -> type.isAssignableTo(ConveyorType.class) || type.isAssignableTo(GateType.class))
                .map(JavaClass::getName)
                .collect(Collectors.toSet());
        // Eleven types: the table gate is two, by opening and by setting.
        assertThat(builtIn).hasSize(10);

        DescribedPredicate<JavaClass> itself =
                DescribedPredicate.describe("the type itself", type -> builtIn.contains(type.getName()));
        ArchRule rule = classes()
                .that(itself)
                .should()
                .onlyDependOnClassesThat(itself.or(resideInAnyPackage(
                        "org.gritwright.core.spi", "org.gritwright.units..", "javax.measure..", "java..")));
        rule.check(MAIN);
    }
}
