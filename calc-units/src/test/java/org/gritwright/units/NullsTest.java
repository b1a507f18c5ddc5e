package org.gritwright.units;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowable;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import java.lang.reflect.Constructor;
import java.lang.reflect.Executable;
import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Method;
import java.lang.reflect.Modifier;
import java.lang.reflect.ParameterizedType;
import java.lang.reflect.Type;
import java.math.BigInteger;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;
import javax.measure.Dimension;
import javax.measure.Quantity;
import javax.measure.Unit;
import javax.measure.quantity.Mass;
import org.gritwright.units.rate.LiquidChemical;
import org.gritwright.units.rate.SolutionShare;
import org.junit.jupiter.api.Test;
import tech.units.indriya.unit.UnitDimension;

/** The one rule for null: every public method answers it with a NullPointerException that names the parameter. */
class NullsTest {

    /** The public classes of the packages that every module may use, without plain enums and kinds of quantity. */
    private static final List<Class<?>> TYPES = types();

    private static final Map<Class<?>, Object> SAMPLES = Map.ofEntries(
            Map.entry(Class.class, Mass.class),
            Map.entry(Unit.class, SpreadingUnits.POUND),
            Map.entry(Dimension.class, UnitDimension.MASS),
            Map.entry(String.class, "5 lb"),
            Map.entry(String[].class, new String[0]),
            Map.entry(List.class, List.of()),
            Map.entry(BigInteger.class, BigInteger.TWO),
            Map.entry(double.class, 0.5),
            Map.entry(int.class, 1),
            Map.entry(long.class, 1L),
            Map.entry(double[].class, new double[1]),
            Map.entry(RefusalCode.class, RefusalCode.MISSING),
            Map.entry(TradeSystem.class, TradeSystem.US),
            Map.entry(ExactFactor.class, ExactFactor.of(1, 2)),
            Map.entry(Conversion.class, Conversion.between(SpreadingUnits.POUND, SpreadingUnits.KILOGRAM)),
            Map.entry(SolutionShare.class, SolutionShare.percent(30)),
            Map.entry(
                    LiquidChemical.class,
                    new LiquidChemical(
                            Amounts.of(1.177, SpreadingUnits.KILOGRAM_PER_LITER),
                            Amounts.of(23.3, SpreadingUnits.PERCENT))),
            Map.entry(UnitSymbol.class, UnitSymbol.of(SpreadingUnits.POUND)),
            Map.entry(SpreadingSystemOfUnits.class, new SpreadingSystemOfUnits()),
            Map.entry(InvalidInputException.class, new InvalidInputException("width", "1 in", "2 in")));

    private static List<Class<?>> types() {
        return new ClassFileImporter()
                        .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
                        .importPackages("org.gritwright.units")
                        .stream()
                        .filter(type -> Set.of("org.gritwright.units", "org.gritwright.units.rate")
                                .contains(type.getPackageName()))
                        .<Class<?>>map(JavaClass::reflect)
                        .filter(type -> Modifier.isPublic(type.getModifiers()) && !type.isEnum())
                        .toList();
    }

    private static Object sample(Type type) {
        Class<?> raw = (Class<?>) (type instanceof ParameterizedType generic ? generic.getRawType() : type);
        if (raw != Quantity.class) {
            return SAMPLES.get(raw);
        }
        Type kind = ((ParameterizedType) type).getActualTypeArguments()[0];
        return kind instanceof Class<?> one ? ofKind(one) : Amounts.of(0.5, SpreadingUnits.POUND);
    }

    @SuppressWarnings({"unchecked", "rawtypes"}) // the kind is one of the symbol table
    private static Object ofKind(Class<?> kind) {
        return Amounts.of(0.5, UnitSymbol.tradeUnit((Class) kind, TradeSystem.METRIC));
    }

    private static Stream<Executable> callables(Class<?> type) {
        return Stream.concat(Arrays.stream(type.getConstructors()), Arrays.stream(type.getDeclaredMethods()))
                .filter(callable -> Modifier.isPublic(callable.getModifiers()) && !callable.isSynthetic())
                .filter(callable -> !callable.getName().equals("equals"));
    }

    private static Object call(Executable callable, Object[] arguments) throws Throwable {
        try {
            return callable instanceof Constructor<?> constructor
                    ? constructor.newInstance(arguments)
                    : ((Method) callable).invoke(SAMPLES.get(callable.getDeclaringClass()), arguments);
        } catch (InvocationTargetException e) {
            throw e.getCause();
        }
    }

    @Test
    void everyParameterThatIsNullIsNamed() {
        List<String> tried = new ArrayList<>();
        for (Class<?> type : TYPES) {
            callables(type).forEach(callable -> {
                for (int i = 0; i < callable.getParameterCount(); i++) {
                    if (!callable.getParameterTypes()[i].isPrimitive()) {
                        tried.add(assertNamed(callable, i));
                    }
                }
            });
        }
        assertThat(tried)
                .hasSizeGreaterThan(80)
                .contains(
                        "Amounts.parse: text",
                        "Conversion.convert: results",
                        "Rates.laneRateFromRate: lanes treated",
                        "UnitSymbol.of: unit");
    }

    private static String assertNamed(Executable callable, int which) {
        Object[] arguments = Arrays.stream(callable.getGenericParameterTypes())
                .map(NullsTest::sample)
                .toArray();
        assertThat(arguments).as("samples for " + callable).doesNotContainNull();
        arguments[which] = null;
        Throwable thrown = catchThrowable(() -> call(callable, arguments));
        String called = callable.getDeclaringClass().getSimpleName() + "." + callable.getName();
        assertThat(thrown)
                .as(called + ", parameter " + (which + 1))
                .isInstanceOf(NullPointerException.class)
                .message()
                // Words only: the virtual machine's own messages quote.
                .matches("[a-z][A-Za-z]*( [a-z-]+)*");
        return called + ": " + thrown.getMessage();
    }
}
