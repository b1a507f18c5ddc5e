package org.gritwright.units.architecture;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.fields;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;

import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.AccessTarget.CodeUnitCallTarget;
import com.tngtech.archunit.core.domain.JavaAccess;
import com.tngtech.archunit.core.domain.JavaCall;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaField;
import com.tngtech.archunit.core.domain.JavaModifier;
import com.tngtech.archunit.lang.ArchCondition;
import com.tngtech.archunit.lang.ArchRule;
import com.tngtech.archunit.lang.ConditionEvents;
import com.tngtech.archunit.lang.SimpleConditionEvent;
import java.math.BigDecimal;
import java.math.BigInteger;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Pattern;
import javax.measure.Unit;

/** What must hold for every class of the library. */
final class Rules {
    private Rules() {}

    /** Static fields are final and of a type whose values don't change; collections are looked into by a test. */
    static final ArchRule NO_STATIC_MUTABLE_STATE = fields().that()
            .areStatic()
            .and(not("made by the compiler", field -> field.getModifiers().contains(JavaModifier.SYNTHETIC)))
            .should(beAConstant());

    /** Nothing reads the clock, chance, the locale, the time zone, or what the virtual machine was started with. */
    static final ArchRule NOTHING_AMBIENT = noClasses()
            .should()
            .accessTargetWhere(is("something ambient", access -> isAmbient(access)))
            .orShould()
            .callCodeUnitWhere(is("a method that follows the default locale", Rules::followsTheLocale));

    /** The library knows the JDK, JSR 385 and Indriya; the annotations of JSpecify are gone at run time. */
    static final ArchRule FEW_DEPENDENCIES = classes()
            .should()
            .onlyDependOnClassesThat()
            .resideInAnyPackage(
                    "java..",
                    "javax.measure..",
                    "tech.units.indriya..",
                    "org.gritwright.units..",
                    "org.jspecify.annotations..");

    /** Indriya's texts follow the locale and labels that any code in the virtual machine may set. */
    static final ArchRule NO_FORMATS_OF_INDRIYA = noClasses()
            .should()
            .dependOnClassesThat()
            .resideInAnyPackage("tech.units.indriya.format..", "javax.measure.format..");

    /** Converters with a scale write that scale on the shared unit. */
    static final ArchRule NO_CONVERTER_WITH_A_SCALE = noClasses()
            .should()
            .callMethodWhere(is(
                    "getConverterTo(unit, scale)",
                    call -> call.getTarget().getName().startsWith("getConverterTo")
                            && call.getTarget().getRawParameterTypes().size() == 2));

    /** What asks the context class loader depends on the thread; {@code asType} asks it for service providers. */
    static final ArchRule NO_CONTEXT_CLASS_LOADER = noClasses()
            .that()
            .doNotHaveSimpleName("ReferenceImplementation")
            .should()
            .callMethodWhere(is("a method that asks the context class loader", Rules::asksTheContext));

    static final List<ArchRule> ALL = List.of(
            NO_STATIC_MUTABLE_STATE,
            NOTHING_AMBIENT,
            FEW_DEPENDENCIES,
            NO_FORMATS_OF_INDRIYA,
            NO_CONVERTER_WITH_A_SCALE,
            NO_CONTEXT_CLASS_LOADER);

    private static final Set<String> UNCHANGING = Set.of(
            String.class.getName(),
            Class.class.getName(),
            BigDecimal.class.getName(),
            BigInteger.class.getName(),
            Pattern.class.getName(),
            Unit.class.getName(),
            List.class.getName(),
            Map.class.getName(),
            Set.class.getName());

    private static ArchCondition<JavaField> beAConstant() {
        return new ArchCondition<>("be final and of an unchanging type") {
            @Override
            public void check(JavaField field, ConditionEvents events) {
                JavaClass type = field.getRawType();
                boolean isConstant = field.getModifiers().contains(JavaModifier.FINAL)
                        && (type.isPrimitive()
                                || type.isEnum()
                                || type.isRecord()
                                || UNCHANGING.contains(type.getName()));
                events.add(new SimpleConditionEvent(
                        field, isConstant, field.getFullName() + " of type " + type.getName()));
            }
        };
    }

    private static final Set<String> AMBIENT_TYPES = Set.of(
            "java.time.Clock",
            "java.util.Random",
            "java.util.SplittableRandom",
            "java.util.concurrent.ThreadLocalRandom",
            "java.security.SecureRandom",
            "java.util.TimeZone",
            "java.util.Date",
            "java.util.Calendar");

    private static final Set<String> AMBIENT_METHODS = Set.of(
            "java.lang.System.currentTimeMillis",
            "java.lang.System.nanoTime",
            "java.lang.System.getProperty",
            "java.lang.System.getProperties",
            "java.lang.System.getenv",
            "java.lang.System.lineSeparator",
            "java.lang.Boolean.getBoolean",
            "java.lang.Integer.getInteger",
            "java.lang.Long.getLong",
            "java.lang.Math.random",
            "java.util.Locale.getDefault",
            "java.util.UUID.randomUUID",
            "java.time.ZoneId.systemDefault");

    private static boolean isAmbient(JavaAccess<?> access) {
        String owner = access.getTargetOwner().getName();
        String name = access.getTarget().getName();
        return AMBIENT_TYPES.contains(owner)
                || AMBIENT_METHODS.contains(owner + "." + name)
                || (owner.startsWith("java.time.") && name.equals("now"));
    }

    private static final Set<String> LOCALE_METHODS = Set.of("format", "formatted", "toLowerCase", "toUpperCase");

    private static final Set<String> LOCALE_TYPES = Set.of(
            "java.util.Formatter",
            "java.util.Scanner",
            "java.text.NumberFormat",
            "java.text.DecimalFormat",
            "java.text.MessageFormat",
            "java.text.DateFormat",
            "java.text.SimpleDateFormat");

    private static boolean followsTheLocale(JavaCall<?> call) {
        CodeUnitCallTarget target = call.getTarget();
        String owner = target.getOwner().getName();
        boolean givenALocale = target.getRawParameterTypes().stream()
                .anyMatch(type -> type.getName().equals("java.util.Locale"));
        return !givenALocale
                && (LOCALE_TYPES.contains(owner)
                        || (owner.equals("java.lang.String") && LOCALE_METHODS.contains(target.getName())));
    }

    private static final Set<String> CONTEXT_METHODS = Set.of(
            "java.lang.Thread.getContextClassLoader",
            "java.lang.Thread.setContextClassLoader",
            "javax.measure.spi.ServiceProvider.current",
            "javax.measure.spi.ServiceProvider.available",
            "javax.measure.spi.ServiceProvider.of",
            "javax.measure.Unit.asType",
            "javax.measure.Quantity.asType",
            "tech.units.indriya.unit.UnitDimension.of",
            "tech.units.indriya.function.Calculus.currentNumberSystem",
            "tech.units.indriya.function.Calculus.getNumberSystem",
            "tech.units.indriya.function.Calculus.getAvailableNumberSystems");

    private static boolean asksTheContext(JavaCall<?> call) {
        CodeUnitCallTarget target = call.getTarget();
        String method = target.getOwner().getName() + "." + target.getName();
        return CONTEXT_METHODS.contains(method)
                || (method.equals("java.util.ServiceLoader.load")
                        && target.getRawParameterTypes().size() == 1);
    }

    private static <T> DescribedPredicate<T> is(String description, java.util.function.Predicate<T> test) {
        return DescribedPredicate.describe(description, test);
    }

    private static <T> DescribedPredicate<T> not(String description, java.util.function.Predicate<T> test) {
        return DescribedPredicate.describe("not " + description, test.negate());
    }
}
