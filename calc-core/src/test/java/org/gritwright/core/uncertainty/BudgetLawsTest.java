package org.gritwright.core.uncertainty;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.Samples.pounds;
import static org.gritwright.core.uncertainty.Components.degrees;
import static org.gritwright.core.uncertainty.Components.normal;
import static org.gritwright.core.uncertainty.Components.u;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import javax.measure.quantity.Mass;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Scale;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.SpreadingUnits;

class BudgetLawsTest {
    private static final double ROUNDING = 1e-9;

    /** Two to six independent components, some by repeats, of either sign. */
    @Provide
    Arbitrary<List<Component<Mass>>> components() {
        Arbitrary<Double> contributions =
                Arbitraries.doubles().between(-10, 10).ofScale(3).filter(c -> c != 0);
        Arbitrary<Double> degrees = Arbitraries.oneOf(
                Arbitraries.doubles().between(1, 50).ofScale(2), Arbitraries.just(Double.POSITIVE_INFINITY));
        return Combinators.combine(contributions, degrees)
                .as((c, df) -> Components.a("?", c, df))
                .list()
                .ofMinSize(2)
                .ofMaxSize(6)
                .map(list -> IntStream.range(0, list.size())
                        .mapToObj(i -> Components.a(
                                "c" + i,
                                list.get(i).contribution().getValue().doubleValue(),
                                list.get(i).degreesOfFreedom()))
                        .toList());
    }

    private static Budget<Mass> of(List<Component<Mass>> components) {
        return Budget.of(pounds(60), components);
    }

    private static void assertSame(Budget<Mass> one, double factor, Budget<Mass> other) {
        assertThat(u(one)).isCloseTo(factor * u(other), within(ROUNDING * factor * u(other)));
        assertSameDegrees(one, other);
    }

    private static void assertSameDegrees(Budget<Mass> one, Budget<Mass> other) {
        // As 1 ÷ ν, which is 0 for infinitely many.
        assertThat(1 / degrees(one)).isCloseTo(1 / degrees(other), within(ROUNDING));
    }

    @Property
    void theOrderDoesNotMatter(@ForAll("components") List<Component<Mass>> components, @ForAll long seed) {
        List<Component<Mass>> shuffled = new ArrayList<>(components);
        Collections.shuffle(shuffled, new Random(seed));

        assertSame(of(shuffled), 1, of(components));
        for (Component<Mass> component : components) {
            assertThat(of(shuffled).shareOf(component)).isCloseTo(of(components).shareOf(component), within(ROUNDING));
        }
    }

    @Property
    void theUnitDoesNotMatter(@ForAll("components") List<Component<Mass>> components) {
        Budget<Mass> mixed = of(IntStream.range(0, components.size())
                .mapToObj(i -> i % 2 == 0 ? components.get(i) : Components.inKilograms(components.get(i)))
                .toList());
        Budget<Mass> inKilograms = Budget.of(Amounts.of(27, SpreadingUnits.KILOGRAM), components);

        assertSame(mixed, 1, of(components));
        assertSame(inKilograms, 0.45359237, of(components));
    }

    @Property
    void allContributionsScaleTheUncertaintyAndNothingElse(
            @ForAll("components") List<Component<Mass>> components,
            @ForAll @Scale(3) @DoubleRange(min = 0.01, max = 1000) double factor) {
        assertSame(of(components.stream().map(c -> Components.times(factor, c)).toList()), factor, of(components));
    }

    @Property
    void sharesSumToOne(
            @ForAll("components") List<Component<Mass>> components,
            @ForAll @Scale(3) @DoubleRange(min = -0.99, max = 0.99) double r) {
        Budget<Mass> correlated = Budget.of(pounds(60), components, List.of(new Correlation("c0", "c1", r)));

        assertThat(components.stream().mapToDouble(of(components)::shareOf).sum())
                .isCloseTo(1, within(ROUNDING));
        assertThat(components.stream().mapToDouble(correlated::shareOf).sum()).isCloseTo(1, within(ROUNDING));
    }

    @Property
    void oneMoreIndependentComponentNeverMakesItMoreCertain(@ForAll("components") List<Component<Mass>> components) {
        assertThat(u(of(components))).isGreaterThanOrEqualTo(u(of(components.subList(1, components.size()))));
    }

    @Property
    void aGroupIsItsLinearSum(@ForAll("components") List<Component<Mass>> components) {
        double sum = components.stream()
                .mapToDouble(c -> c.contribution().getValue().doubleValue())
                .sum();
        List<Component<Mass>> grouped = components.stream()
                .map(c -> normal(c.name(), c.contribution().getValue().doubleValue())
                        .inGroup("one"))
                .toList();

        assertThat(u(of(grouped))).isCloseTo(Math.abs(sum), within(1e-6));
    }

    @Property
    void fullCorrelationIsAGroup(
            @ForAll @Scale(3) @DoubleRange(min = -10, max = 10) double a,
            @ForAll @Scale(3) @DoubleRange(min = -10, max = 10) double b) {
        Budget<Mass> correlated =
                Budget.of(pounds(60), List.of(normal("a", a), normal("b", b)), List.of(new Correlation("a", "b", 1)));
        Budget<Mass> opposed =
                Budget.of(pounds(60), List.of(normal("a", a), normal("b", a)), List.of(new Correlation("a", "b", -1)));

        assertThat(u(correlated))
                .isCloseTo(
                        u(of(List.of(normal("a", a).inGroup("g"), normal("b", b).inGroup("g")))), within(1e-6));
        assertThat(u(opposed)).isCloseTo(0, within(1e-6));
    }

    @Property
    void effectiveDegreesOfFreedomAreFromTheFewestToTheSum(@ForAll("components") List<Component<Mass>> components) {
        double fewest = components.stream()
                .mapToDouble(Component::degreesOfFreedom)
                .min()
                .orElseThrow();
        double sum =
                components.stream().mapToDouble(Component::degreesOfFreedom).sum();

        assertThat(degrees(of(components))).isBetween(fewest * (1 - ROUNDING), sum * (1 + ROUNDING));
    }

    /** Of three, r₂₃ is possible from r₁₂·r₁₃ − √((1 − r₁₂²)·(1 − r₁₃²)) to the same with +. */
    @Property
    void correlationsArePossibleJustWhereTheyAre(
            @ForAll @Scale(3) @DoubleRange(min = -0.95, max = 0.95) double r12,
            @ForAll @Scale(3) @DoubleRange(min = -0.95, max = 0.95) double r13,
            @ForAll @Scale(3) @DoubleRange(min = -1, max = 1) double r23) {
        double room = Math.sqrt((1 - r12 * r12) * (1 - r13 * r13)) - Math.abs(r23 - r12 * r13);
        List<Correlation> correlations =
                List.of(new Correlation("a", "b", r12), new Correlation("a", "c", r13), new Correlation("b", "c", r23));
        boolean accepted;
        try {
            Budget.of(pounds(1), List.of(normal("a", 1), normal("b", 1), normal("c", 1)), correlations);
            accepted = true;
        } catch (InvalidInputException e) {
            accepted = false;
        }

        if (Math.abs(room) > 1e-6) {
            assertThat(accepted).isEqualTo(room > 0);
        }
    }
}
