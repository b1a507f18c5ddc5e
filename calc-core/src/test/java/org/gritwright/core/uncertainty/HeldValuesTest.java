package org.gritwright.core.uncertainty;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatNullPointerException;
import static org.gritwright.core.Samples.assertRefused;
import static org.gritwright.core.Samples.pounds;
import static org.gritwright.core.Shipped.assertIsAValue;
import static org.gritwright.core.uncertainty.Components.a;
import static org.gritwright.core.uncertainty.Components.normal;

import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.Stream;
import javax.measure.quantity.Mass;
import org.assertj.core.api.ThrowableAssert.ThrowingCallable;
import org.gritwright.core.Shipped;
import org.gritwright.core.uncertainty.Component.Evaluation;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** What a user keeps of this package is a value: equal, hashed, printed and serialized as such. */
@Tag("locale")
class HeldValuesTest {
    private static Budget<Mass> budget(double scatter) {
        return Budget.of(
                pounds(60),
                List.of(a("scatter", scatter, 2), normal("span", 0.2).inGroup("S-1"), normal("count", 0.1)),
                List.of(new Correlation("scatter", "count", 0.5)));
    }

    private static MonteCarlo simulated(long seed) {
        return Budget.of(pounds(60), List.of(a("scatter", 0.3, 2))).simulate(1_000, new SplittableRandom(seed));
    }

    private static MonteCarlo.Input input(double value) {
        return new MonteCarlo.Input(value, 0.1, Distribution.ARCSINE, 5);
    }

    private static Arguments value(Object value, Object madeAnew, Object other) {
        return Arguments.of(value, madeAnew, other);
    }

    private static Stream<Arguments> values() {
        return Stream.of(
                value(ComponentKey.of("span", "S-1"), ComponentKey.of("span", "S-1"), ComponentKey.of("span", "S-2")),
                value(ComponentKey.of("span"), ComponentKey.of("span"), ComponentKey.of("span", "S-1")),
                value(a("scatter", 0.3, 2), a("scatter", 0.3, 2), a("scatter", 0.3, 3)),
                value(normal("a", 1).inGroup("g"), normal("a", 1).inGroup("g"), normal("a", 1)),
                value(new Correlation("a", "b", 0.5), new Correlation("a", "b", 0.5), new Correlation("a", "b", 0.4)),
                value(budget(0.3), budget(0.3), budget(0.4)),
                value(
                        Measured.of(pounds(60), pounds(0.1), 2),
                        Measured.of(pounds(60), pounds(0.1), 2),
                        Measured.once(pounds(60))),
                value(Measured.once(pounds(60)), Measured.once(pounds(60)), Measured.once(pounds(61))),
                value(Conformity.of(0, 1, 2, -1, 1), Conformity.of(0, 1, 2, -1, 1), Conformity.of(0, 1, 2, -1, 2)),
                value(new NormalizedError(0.5), new NormalizedError(0.5), new NormalizedError(0.6)),
                value(simulated(1), simulated(1), simulated(2)),
                value(input(1), input(1), input(2)),
                value(new MonteCarlo.Interval(1, 2), new MonteCarlo.Interval(1, 2), new MonteCarlo.Interval(1, 3)));
    }

    @ParameterizedTest
    @MethodSource("values")
    void isAValue(Object value, Object madeAnew, Object other) {
        assertIsAValue(value, madeAnew, other);
        assertThat(other).doesNotHaveSameHashCodeAs(value);
    }

    @Test
    void aBudgetArrivesWithItsResultAndShares() {
        Budget<Mass> sent = budget(0.3);
        Budget<Mass> arrived = Shipped.copyOf(sent);

        assertThat(arrived.result()).isEqualTo(sent.result());
        for (Component<Mass> component : sent.components()) {
            assertThat(arrived.shareOf(component)).isEqualTo(sent.shareOf(component));
        }
    }

    @Test
    void componentsArePrintedInOurSymbols() {
        Component<Mass> gate =
                Component.typeB("gate", Distribution.RECTANGULAR, Amounts.of(0.25, SpreadingUnits.INCH), pounds(-0.5));

        assertThat(gate).hasToString("gate: u 0.25 in, contributes -0.5 lb, ∞ degrees of freedom");
        assertThat(a("scatter", 0.3, 2).inGroup("day 1"))
                .hasToString(
                        "scatter: u 0.3 lb, contributes 0.3 lb, 2 degrees of freedom, one error with others of day 1");
        assertThat(ComponentKey.of("span", "S-1")).hasToString("span of S-1");
        assertThat(ComponentKey.of("span")).hasToString("span");
        assertThat(MonteCarlo.propagate(List.of(), none -> 2, 1_000, new SplittableRandom(1)))
                .hasToString("1000 results, mean 2.0, standard deviation 0.0");
    }

    @Test
    void keysAreNotBlank() {
        assertRefused("key of an uncertainty must be a text that is not blank: \" \"", () -> ComponentKey.of(" "));
        assertRefused("subject of span must be a text that is not blank: \"\"", () -> ComponentKey.of("span", ""));
    }

    private static void assertNamesNull(String parameter, ThrowingCallable call) {
        assertThatNullPointerException().isThrownBy(call).withMessage(parameter);
    }

    @Test
    @SuppressWarnings("NullOptional") // that is what is refused
    void nullIsRefusedByName() {
        assertNamesNull("key of an uncertainty", () -> ComponentKey.of(null));
        assertNamesNull("subject", () -> new ComponentKey("span", null));
        assertNamesNull("key", () -> Component.typeA(null, "scatter", pounds(1), pounds(1), 2));
        assertNamesNull("name", () -> Component.typeA(ComponentKey.of("a"), null, pounds(1), pounds(1), 2));
        assertNamesNull("distribution", () -> Component.typeB("a", null, pounds(1), pounds(1)));
        assertNamesNull("standardUncertainty", () -> Component.typeA("a", null, pounds(1), 2));
        assertNamesNull("contribution", () -> Component.<Mass>typeA("a", pounds(1), null, 2));
        assertNamesNull(
                "evaluation",
                () -> new Component<>(
                        ComponentKey.of("a"), "a", null, Distribution.NORMAL, pounds(1), pounds(1), 1, null));
        assertNamesNull(
                "group",
                () -> new Component<>(
                        ComponentKey.of("a"),
                        "a",
                        Evaluation.TYPE_A,
                        Distribution.NORMAL,
                        pounds(1),
                        pounds(1),
                        1,
                        null));
        assertNamesNull("first", () -> new Correlation(null, ComponentKey.of("b"), 0));
        assertNamesNull("value", () -> Budget.<Mass>of(null, List.of()));
        assertNamesNull("components", () -> Budget.of(pounds(1), null));
        assertNamesNull("correlations", () -> Budget.of(pounds(1), List.of(), null));
        assertNamesNull("keys", () -> budget(1).without(null));
        assertNamesNull("key", () -> budget(1).component(null));
        assertNamesNull("value", () -> Measured.<Mass>once(null));
        assertNamesNull("value", () -> Measured.of(null, pounds(1), 1));
        assertNamesNull("standardUncertainty", () -> Measured.of(pounds(1), null, 1));
        Measured<Mass> known = Measured.of(pounds(1), pounds(1), 1);
        assertNamesNull("a", () -> NormalizedError.between(null, known));
        assertNamesNull("b", () -> WeightedMean.of(known, null));
        assertNamesNull("model", () -> MonteCarlo.propagate(List.of(), null, 1_000, new SplittableRandom(1)));
        assertNamesNull("random", () -> MonteCarlo.propagate(List.of(), none -> 1, 1_000, null));
        assertNamesNull("distribution", () -> new MonteCarlo.Input(1, 1, null, 1));
    }
}
