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
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.gritwright.core.spi.SpreaderType;
import org.jspecify.annotations.NullMarked;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Which package may know which: the arrows, from the ground up. */
class ArchitectureTest {
    private static final String CORE = "org.gritwright.core.";

    private static final JavaClasses MAIN = new ClassFileImporter().importPath(Path.of("target", "classes"));

    /** The floors from the ground up, and the rooms on each: a room may know all that lie before it. */
    private static final List<String> ROOMS = List.of(
            "document",
            "json",
            "statistics",
            "control",
            "balance",
            "uncertainty",
            "finding",
            "spi",
            "conformance",
            "weighing",
            "lateral",
            "solution",
            "metering",
            "observation",
            "blend",
            "budget",
            "plausibility",
            "calibration",
            "curve",
            "judgement",
            "roadspeed",
            "range",
            "envelope",
            "boom",
            "chart",
            "verification",
            "planning",
            "telemetry",
            "history",
            "history.drift",
            "history.due",
            "history.fleet",
            "season",
            "fleet.day",
            "fleet.review",
            "fleet.assessment",
            "fleet.plan",
            "record");

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
        assertThat(packages()).isNotEmpty().hasSameElementsAs(ROOMS);
    }

    @ParameterizedTest
    @MethodSource("packages")
    void aPackageKnowsOnlyWhatLiesBelow(String name) {
        Stream<String> ours = ROOMS.subList(0, ROOMS.indexOf(name) + 1).stream().map(known -> CORE + known);
        Stream<String> others =
                Stream.of("org.gritwright.units..", "javax.measure..", "java..", "org.jspecify.annotations..");
        Stream<String> jackson = name.equals("json") ? Stream.of("com.fasterxml.jackson.core..") : Stream.of();
        Stream<String> statistics =
                Set.of("statistics", "balance").contains(name) ? Stream.of(DISTRIBUTIONS) : Stream.of();
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
    void onlyRecordsAreMadeOfDocuments() {
        noClasses()
                .that()
                .resideOutsideOfPackages(CORE + "document", CORE + "json", CORE + "record")
                .should()
                .dependOnClassesThat()
                .resideInAnyPackage(CORE + "document", CORE + "json", CORE + "record")
                .check(MAIN);
    }

    @Test
    void everyPackageSaysWhatMayBeNull() {
        assertThat(packages().map(name -> CORE + name + ".package-info"))
                .isNotEmpty()
                .allSatisfy(info -> assertThat(MAIN.get(info).isAnnotatedWith(NullMarked.class))
                        .isTrue());
    }

    @Test
    void thereAreNoCycles() {
        slices().matching(CORE + "(**)").should().beFreeOfCycles().check(MAIN);
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
                .filter(type -> type.isAssignableTo(SpreaderType.class))
                .map(JavaClass::getName)
                .collect(Collectors.toSet());
        // Sixteen types: the table gate is two, by opening and by setting.
        assertThat(builtIn).hasSize(15);

        DescribedPredicate<JavaClass> itself =
                DescribedPredicate.describe("the type itself", type -> builtIn.contains(type.getName()));
        ArchRule rule = classes()
                .that(itself)
                .should()
                .onlyDependOnClassesThat(itself.or(resideInAnyPackage(
                        "org.gritwright.core.spi",
                        "org.gritwright.units..",
                        "javax.measure..",
                        "java..",
                        "org.jspecify.annotations..")));
        rule.check(MAIN);
    }
}
