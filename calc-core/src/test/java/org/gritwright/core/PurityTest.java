package org.gritwright.core;

import static com.tngtech.archunit.base.DescribedPredicate.describe;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.domain.JavaAccess;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.domain.JavaField;
import com.tngtech.archunit.core.domain.JavaModifier;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import java.io.PrintStream;
import java.lang.reflect.Field;
import java.nio.charset.Charset;
import java.nio.file.Path;
import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.TimeZone;
import java.util.UUID;
import org.junit.jupiter.api.Test;

/** Nothing reads the clock, the locale, the environment or dice, and nothing is kept between calls. */
class PurityTest {
    private static final JavaClasses MAIN = new ClassFileImporter().importPath(Path.of("target", "classes"));

    /** Owner and name of calls that answer otherwise from run to run or from machine to machine. */
    private static final Set<String> IMPURE_CALLS = Set.of(
            "java.lang.System.currentTimeMillis",
            "java.lang.System.nanoTime",
            "java.lang.System.getenv",
            "java.lang.System.getProperty",
            "java.lang.System.getProperties",
            "java.lang.System.lineSeparator",
            "java.lang.Math.random",
            "java.lang.StrictMath.random",
            "java.lang.Thread.getContextClassLoader",
            Locale.class.getName() + ".getDefault",
            TimeZone.class.getName() + ".getDefault",
            Charset.class.getName() + ".defaultCharset",
            "java.time.ZoneId.systemDefault",
            UUID.class.getName() + ".randomUUID",
            "java.lang.String.formatted");

    /** Calls that take the default locale or charset where none is given. */
    private static final Set<String> CALLS_THAT_NEED_AN_ARGUMENT = Set.of(
            "java.lang.String.toLowerCase()",
            "java.lang.String.toUpperCase()",
            "java.lang.String.getBytes()",
            "java.lang.String.format(java.lang.String, [Ljava.lang.Object;)",
            "java.util.Formatter.<init>()",
            "java.util.Scanner.<init>(java.lang.String)",
            "java.util.Scanner.<init>(java.io.InputStream)",
            "java.lang.String.<init>([B)",
            "java.io.InputStreamReader.<init>(java.io.InputStream)",
            "java.io.OutputStreamWriter.<init>(java.io.OutputStream)",
            "java.text.DecimalFormat.<init>(java.lang.String)");

    private static boolean isImpure(JavaAccess<?> access) {
        String owner = access.getTargetOwner().getName();
        String call = owner + "." + access.getName();
        String signature = access.getTarget().getFullName();
        boolean clock = owner.startsWith("java.time.") && access.getName().equals("now");
        boolean console = access.getTargetOwner().isAssignableTo(PrintStream.class)
                || (owner.equals("java.lang.System")
                        && Set.of("in", "out", "err").contains(access.getName()));
        return clock || console || IMPURE_CALLS.contains(call) || CALLS_THAT_NEED_AN_ARGUMENT.contains(signature);
    }

    @Test
    void nothingAsksClockLocaleEnvironmentOrConsole() {
        noClasses()
                .should()
                .accessTargetWhere(describe("answers depend on time or place", PurityTest::isImpure))
                .check(MAIN);
    }

    @Test
    void nothingThrowsDice() {
        noClasses()
                .should()
                .dependOnClassesThat()
                .areAssignableTo(Random.class)
                .orShould()
                .dependOnClassesThat()
                .areAssignableTo(SplittableRandom.class)
                .check(MAIN);
    }

    @Test
    void theRuleKnowsAnImpureCallWhenItSeesOne() {
        JavaClasses here = new ClassFileImporter().importClasses(Impure.class);

        assertThat(here.get(Impure.class).getAccessesFromSelf().stream().filter(PurityTest::isImpure))
                .extracting(JavaAccess::getName)
                .containsExactlyInAnyOrder("now", "toLowerCase", "format", "getenv");
    }

    /** Everything that must not be done, for the rule to find. */
    private static final class Impure {
        @SuppressWarnings({"DefaultLocale", "StringCaseLocaleUsage", "JavaTimeDefaultTimeZone", "unused"})
        private static String text() {
            return "A".toLowerCase() + String.format("%d", 1) + java.time.LocalDate.now() + System.getenv("HOME");
        }
    }

    @Test
    void staticFieldsAreConstants() throws ReflectiveOperationException {
        List<JavaField> fields = MAIN.stream()
                .flatMap(type -> type.getFields().stream())
                .filter(field -> field.getModifiers().contains(JavaModifier.STATIC))
                .filter(field -> !field.getModifiers().contains(JavaModifier.SYNTHETIC))
                .toList();
        assertThat(fields).hasSizeGreaterThan(20);

        for (JavaField field : fields) {
            assertThat(field.getModifiers()).as(field.getFullName()).contains(JavaModifier.FINAL);
            assertThat(field.getRawType().isArray())
                    .as(field.getFullName() + " is an array")
                    .isFalse();
            assertThat(field.getRawType().getName())
                    .as(field.getFullName())
                    .doesNotStartWith("java.util.concurrent.")
                    .doesNotMatch("java\\.lang\\.(ThreadLocal|StringBuilder|StringBuffer)");
            Field reflected = field.reflect();
            if (Collection.class.isAssignableFrom(reflected.getType())
                    || Map.class.isAssignableFrom(reflected.getType())) {
                reflected.setAccessible(true);
                assertThat(reflected.get(null).getClass().getName())
                        .as(field.getFullName())
                        .containsAnyOf("ImmutableCollections", "Unmodifiable");
            }
        }
    }
}
