package org.gritwright.units.architecture;

import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.lang.ArchRule;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.gritwright.units.architecture.offenders.AmbientReader;
import org.gritwright.units.architecture.offenders.ContextAsker;
import org.gritwright.units.architecture.offenders.ForeignDependant;
import org.gritwright.units.architecture.offenders.IndriyaFormatter;
import org.gritwright.units.architecture.offenders.LocaleFollower;
import org.gritwright.units.architecture.offenders.ScaleWriter;
import org.gritwright.units.architecture.offenders.StaticStateHolder;
import org.junit.jupiter.api.Test;

/** Each rule really catches what it forbids, and nothing else in the same class. */
class RulesCatchOffendersTest {

    private static List<String> violations(ArchRule rule, Class<?> offender) {
        return rule.evaluate(new ClassFileImporter().importClasses(offender))
                .getFailureReport()
                .getDetails();
    }

    private static void assertCaught(ArchRule rule, Class<?> offender, String... culprits) {
        List<String> violations = violations(rule, offender);
        assertThat(violations).hasSize(culprits.length);
        for (String culprit : culprits) {
            assertThat(violations).anyMatch(violation -> violation.contains(culprit));
        }
    }

    @Test
    void staticMutableState() {
        assertCaught(
                Rules.NO_STATIC_MUTABLE_STATE,
                StaticStateHolder.class,
                "StaticStateHolder.counter",
                "StaticStateHolder.ARRAY",
                "StaticStateHolder.GROWING_LIST",
                "StaticStateHolder.ATOMIC",
                "StaticStateHolder.BUILDER",
                "StaticStateHolder.ANYTHING");
    }

    @Test
    void clockChanceAndEnvironment() {
        assertCaught(
                Rules.NOTHING_AMBIENT,
                AmbientReader.class,
                "System.nanoTime",
                "System.currentTimeMillis",
                "System.getProperty",
                "System.getenv",
                "LocalDate.now",
                "Math.random",
                "java.util.Random.<init>",
                "java.util.Random.nextInt",
                "Locale.getDefault",
                "Clock.systemUTC");
    }

    @Test
    void theDefaultLocale() {
        assertCaught(
                Rules.NOTHING_AMBIENT,
                LocaleFollower.class,
                "String.format(java.lang.String, ",
                "String.formatted",
                "String.toLowerCase()",
                "String.toUpperCase()",
                "NumberFormat.getInstance()",
                "NumberFormat.format(double)");
    }

    @Test
    void otherLibraries() {
        assertCaught(Rules.FEW_DEPENDENCIES, ForeignDependant.class, "org.apache.commons.numbers.fraction.BigFraction");
    }

    @Test
    void formatsOfIndriya() {
        assertCaught(
                Rules.NO_FORMATS_OF_INDRIYA,
                IndriyaFormatter.class,
                "SimpleUnitFormat.getInstance()",
                "SimpleUnitFormat.format(");
    }

    @Test
    void convertersWithAScale() {
        assertCaught(
                Rules.NO_CONVERTER_WITH_A_SCALE,
                ScaleWriter.class,
                "getConverterTo(javax.measure.Unit, javax.measure.Quantity$Scale)",
                "getConverterToAny(javax.measure.Unit, javax.measure.Quantity$Scale)");
    }

    @Test
    void theContextClassLoader() {
        assertCaught(
                Rules.NO_CONTEXT_CLASS_LOADER,
                ContextAsker.class,
                "ServiceLoader.load(java.lang.Class)",
                "Thread.getContextClassLoader()",
                "ServiceProvider.current()",
                "Unit.asType(java.lang.Class)",
                "Quantity.asType(java.lang.Class)",
                "Calculus.currentNumberSystem()");
    }

    @Test
    void collectionsThatCanBeChanged() {
        assertThat(ArchitectureTest.isUnmodifiable(new ArrayList<>())).isFalse();
        assertThat(ArchitectureTest.isUnmodifiable(new HashMap<>())).isFalse();
        assertThat(ArchitectureTest.isUnmodifiable(List.of())).isTrue();
        assertThat(ArchitectureTest.isUnmodifiable(Map.of())).isTrue();
    }
}
