package org.gritwright.core.conformance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.gritwright.core.Samples.inches;
import static org.gritwright.units.SpreadingUnits.CELSIUS;
import static org.gritwright.units.SpreadingUnits.FAHRENHEIT;
import static org.gritwright.units.SpreadingUnits.INCH;
import static org.gritwright.units.SpreadingUnits.METER;
import static org.gritwright.units.SpreadingUnits.MILLIMETER;
import static org.gritwright.units.SpreadingUnits.ONE;
import static org.gritwright.units.SpreadingUnits.PERCENT;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Length;
import javax.measure.quantity.Temperature;
import org.gritwright.core.metering.BuiltInTypes;
import org.gritwright.core.spi.Parameter;
import org.gritwright.core.spi.Parameters;
import org.gritwright.core.spi.SpreaderType;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class TrialParametersTest {
    private static final Parameter<Length> WIDTH = Parameter.length("width", inches(2), inches(6));
    private static final Parameter<Dimensionless> TEETH = Parameter.wholeNumber("teeth", 3, 60);

    static Stream<SpreaderType> builtIn() {
        return BuiltInTypes.registry().all().stream();
    }

    @Test
    void everyParameterIsInTheMiddleThenEachAtItsLowestAndItsHighest() {
        assertThat(TrialParameters.of(List.of(WIDTH, TEETH)))
                .containsExactly(
                        Map.of("width", inches(4), "teeth", Amounts.of(32, ONE)),
                        Map.of("width", inches(2), "teeth", Amounts.of(32, ONE)),
                        Map.of("width", inches(6), "teeth", Amounts.of(32, ONE)),
                        Map.of("width", inches(4), "teeth", Amounts.of(3, ONE)),
                        Map.of("width", inches(4), "teeth", Amounts.of(60, ONE)));
    }

    @Test
    void aListOfParametersIsBoundedWhateverSizeItStates() {
        assertThatExceptionOfType(InvalidInputException.class)
                .isThrownBy(() -> TrialParameters.of(Collections.nCopies(Integer.MAX_VALUE, WIDTH)))
                .withMessage("parameters must be at most 1000: more");
        assertThat(TrialParameters.of(Collections.nCopies(1000, WIDTH))).hasSize(2001);
    }

    @Test
    void aDefaultStandsForTheMiddle() {
        assertThat(TrialParameters.of(List.of(WIDTH.withDefault(inches(3)))))
                .extracting(set -> set.get("width"))
                .containsExactly(inches(3), inches(2), inches(6));
    }

    @Test
    void theMiddleIsInTheUnitOfTheLowest() {
        Parameter<Length> mixed = Parameter.length("mixed", Amounts.of(500, MILLIMETER), Amounts.of(1, METER));

        assertThat(TrialParameters.of(List.of(mixed)).get(0)).isEqualTo(Map.of("mixed", Amounts.of(750, MILLIMETER)));
    }

    @Test
    void aListRisesOverTheWholeRange() {
        assertThat(TrialParameters.of(List.of(WIDTH.asList(2, 100))))
                .containsExactly(Map.of("width", List.of(inches(2), inches(3), inches(4), inches(5), inches(6))));
        assertThat(TrialParameters.of(List.of(WIDTH.asList(1, 2))))
                .containsExactly(Map.of("width", List.of(inches(2), inches(6))));
        assertThat((List<?>)
                        TrialParameters.of(List.of(WIDTH.asList(9, 100))).get(0).get("width"))
                .hasSize(9);
    }

    @Test
    void aScaleWithAnotherZeroIsNoObstacle() {
        Parameter<Temperature> warm =
                Parameter.of("warm", Temperature.class, Amounts.of(0, CELSIUS), Amounts.of(212, FAHRENHEIT));

        Object middle = TrialParameters.of(List.of(warm)).get(0).get("warm");

        assertThat(Amounts.format((Quantity<?>) middle)).matches("(50|50\\.0000000\\d*|49\\.9999999\\d*) °C");
    }

    @Test
    void withoutParametersThereIsOneEmptySet() {
        assertThat(TrialParameters.of(List.of())).containsExactly(Map.of());
    }

    @ParameterizedTest
    @MethodSource("builtIn")
    void allAreWithinTheDeclaredLimits(SpreaderType type) {
        for (Map<String, Object> set : TrialParameters.of(type.parameters())) {
            assertThat(Parameters.of(type.parameters(), set).asMap()).hasSameSizeAs(type.parameters());
        }
    }

    @ParameterizedTest
    @MethodSource("builtIn")
    void areAlwaysTheSame(SpreaderType type) {
        assertThat(TrialParameters.of(type.parameters()))
                .isEqualTo(TrialParameters.of(new ArrayList<>(type.parameters())));
    }

    @Test
    void theSetsCanNotBeAddedTo() {
        List<Map<String, Object>> sets = TrialParameters.of(List.of(WIDTH));

        assertThatExceptionOfType(UnsupportedOperationException.class).isThrownBy(sets::clear);
    }

    @Test
    void otherUnitsMeanTheSameAndStayWithinTheLimits() {
        Map<String, Object> others = TrialParameters.inOtherUnits(
                List.of(WIDTH, TEETH), Map.of("width", inches(2), "teeth", Amounts.of(7, ONE)));

        assertThat(others.get("width")).isNotEqualTo(inches(2));
        assertThat(WIDTH.check(length(others.get("width")))).isSameAs(others.get("width"));
        assertThat(Amounts.si(Length.class, length(others.get("width")))).isEqualTo(0.0508);
        assertThat(others.get("teeth")).isEqualTo(Amounts.of(700, PERCENT));
    }

    @Test
    void aListGetsOtherUnitsToo() {
        Map<String, Object> others = TrialParameters.inOtherUnits(
                List.of(WIDTH.asList(1, 9)), Map.of("width", List.of(inches(2), inches(3))));

        assertThat((List<?>) others.get("width"))
                .hasSize(2)
                .allSatisfy(width -> assertThat(((Quantity<?>) width).getUnit()).isNotEqualTo(INCH));
    }

    @SuppressWarnings("unchecked") // a length it is
    private static Quantity<Length> length(Object quantity) {
        return (Quantity<Length>) quantity;
    }

    /** In rising order, so that the first is the lowest and the last the highest. */
    @Test
    void valuesPastTheLimitsAreAHundredthOfTheRangeBeyondAndBetweenWholeNumbers() {
        assertThat(TrialParameters.past(WIDTH)).containsExactly(inches(2 - 0.04), inches(6 + 0.04));
        assertThat(TrialParameters.past(TEETH))
                .containsExactly(Amounts.of(2, ONE), Amounts.of(3.5, ONE), Amounts.of(61, ONE));
    }

    @Test
    void pastTheLimitsIsAHundredthOfTheRangeOrOneOfWhatIsCounted() {
        Parameter<Length> pinned = Parameter.length("pinned", inches(3), inches(3));
        Parameter<Dimensionless> zero =
                Parameter.of("zero", Dimensionless.class, Amounts.of(0, ONE), Amounts.of(0, ONE));
        Parameter<Dimensionless> narrow =
                Parameter.of("narrow", Dimensionless.class, Amounts.of(1e9, ONE), Amounts.of(1e9 + 1, ONE));

        assertThat(TrialParameters.past(WIDTH)).containsExactly(inches(2 - 0.01 * 4), inches(6 + 0.01 * 4));
        assertThat(TrialParameters.past(TEETH))
                .containsExactly(Amounts.of(2, ONE), Amounts.of(3.5, ONE), Amounts.of(61, ONE));
        assertThat(TrialParameters.past(pinned)).containsExactly(inches(3 - 0.01 * 3), inches(3 + 0.01 * 3));
        assertThat(TrialParameters.past(zero)).containsExactly(Amounts.of(-0.01, ONE), Amounts.of(0.01, ONE));
        assertThat(TrialParameters.past(narrow))
                .as("more than rounding")
                .containsExactly(Amounts.of(1e9 - 1e-9 * (1e9 + 1), ONE), Amounts.of(1e9 + 1 + 1e-9 * (1e9 + 1), ONE));
    }

    @Test
    void valuesPastTheLimitsAreRefusedByTheDeclaredAndAcceptedByTheWidened() {
        List<Parameter<?>> declared = List.of(
                WIDTH,
                TEETH,
                Parameter.length("pinned", inches(3), inches(3)),
                Parameter.length("none", inches(0), inches(0)),
                Parameter.of("share", Dimensionless.class, Amounts.of(-5, PERCENT), Amounts.of(0, ONE)),
                Parameter.of("warm", Temperature.class, Amounts.of(-40, CELSIUS), Amounts.of(32, FAHRENHEIT)));
        for (Parameter<?> parameter : declared) {
            assertThat(isRefused(parameter)).as(parameter.name()).isTrue();
        }
    }

    private static <Q extends Quantity<Q>> boolean isRefused(Parameter<Q> parameter) {
        List<Quantity<Q>> past = TrialParameters.past(parameter);
        Parameter<Q> widened = TrialParameters.widened(parameter);
        assertThat(past).as(parameter.name()).isNotEmpty();
        return past.stream().allMatch(value -> {
            assertThat(widened.check(value)).isSameAs(value);
            try {
                parameter.check(value);
                return false;
            } catch (InvalidInputException e) {
                return e.field().equals(parameter.name());
            }
        });
    }
}
