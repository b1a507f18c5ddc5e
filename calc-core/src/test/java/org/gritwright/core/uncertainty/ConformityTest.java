package org.gritwright.core.uncertainty;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.Samples.assertRefused;
import static org.gritwright.core.Samples.pounds;
import static org.gritwright.core.uncertainty.Components.a;
import static org.gritwright.core.uncertainty.Components.normal;

import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Scale;
import org.junit.jupiter.api.Test;

class ConformityTest {
    private static final double INFINITE = Double.POSITIVE_INFINITY;

    @Test
    void tellsTheLimitsApart() {
        // Normal: P(below −2 u) = 0.02275, P(above 1 u) = 0.15866.
        Conformity conformity = Conformity.of(10, 0.5, INFINITE, 9, 10.5);

        assertThat(conformity.below()).isCloseTo(0.02275, within(5e-6));
        assertThat(conformity.above()).isCloseTo(0.15866, within(5e-6));
        assertThat(conformity.within()).isCloseTo(1 - 0.02275 - 0.15866, within(1e-5));
    }

    @Test
    void fewDegreesOfFreedomLeaveMoreOutside() {
        // Student's t with 1 degree of freedom: P(above 1) = 1/4.
        Conformity conformity = Conformity.of(0, 1, 1, -1, 1);

        assertThat(conformity.below()).isCloseTo(0.25, within(1e-12));
        assertThat(conformity.within()).isCloseTo(0.5, within(1e-12));
        assertThat(conformity.above()).isCloseTo(0.25, within(1e-12));
    }

    @Test
    void aCertainValueIsWhereItIsAndTheLimitsBelongToTheInside() {
        assertThat(Conformity.of(1, 0, INFINITE, -1, 1)).isEqualTo(new Conformity(0, 1, 0));
        assertThat(Conformity.of(-1, 0, INFINITE, -1, 1)).isEqualTo(new Conformity(0, 1, 0));
        assertThat(Conformity.of(1.1, 0, INFINITE, -1, 1)).isEqualTo(new Conformity(0, 0, 1));
        assertThat(Conformity.of(-1.1, 0, INFINITE, -1, 1)).isEqualTo(new Conformity(1, 0, 0));
    }

    @Test
    void aSmallProbabilityKeepsItsDigits() {
        assertThat(Conformity.of(0, 1, INFINITE, -INFINITE, 10).above()).isCloseTo(7.6198530e-24, within(1e-29));
        assertThat(Conformity.of(0, 1, INFINITE, -10, INFINITE).below()).isCloseTo(7.6198530e-24, within(1e-29));
    }

    /** One error by a few repeats among one that is known: what the simulation of the budget says. */
    @Test
    void agreesWithASimulationOfTheBudget() {
        for (double contribution : new double[] {0, 0.3}) {
            Budget<?> budget = Budget.of(pounds(2), List.of(normal("known", 1), a("repeats", contribution, 9)));
            double u = budget.result()
                    .standardUncertainty()
                    .orElseThrow()
                    .getValue()
                    .doubleValue();
            Conformity conformity =
                    Conformity.of(2, u, budget.result().degreesOfFreedom().orElseThrow(), -1, 3.5);
            MonteCarlo simulated = budget.simulate(200_000, new SplittableRandom(17));
            double[] probabilities = IntStream.range(1, 10_000)
                    .mapToDouble(i -> simulated.quantile(i / 10_000.0))
                    .toArray();
            double below = IntStream.range(0, probabilities.length)
                            .filter(i -> probabilities[i] < -1)
                            .count()
                    / 10_000.0;
            double above = IntStream.range(0, probabilities.length)
                            .filter(i -> probabilities[i] > 3.5)
                            .count()
                    / 10_000.0;

            assertThat(conformity.below()).isCloseTo(below, within(0.005));
            assertThat(conformity.above()).isCloseTo(above, within(0.005));
        }
    }

    @Property
    void theThreeSumToOneAndMirrorEachOther(
            @ForAll @Scale(3) @DoubleRange(min = -10, max = 10) double value,
            @ForAll @Scale(3) @DoubleRange(min = 0, max = 10) double uncertainty,
            @ForAll @Scale(2) @DoubleRange(min = 1, max = 100) double degrees,
            @ForAll @Scale(3) @DoubleRange(min = -10, max = 0) double lower,
            @ForAll @Scale(3) @DoubleRange(min = 0, max = 10) double upper) {
        Conformity conformity = Conformity.of(value, uncertainty, degrees, lower, upper);
        Conformity mirrored = Conformity.of(-value, uncertainty, degrees, -upper, -lower);

        assertThat(conformity.below() + conformity.within() + conformity.above())
                .isCloseTo(1, within(1e-12));
        assertThat(mirrored.below()).isCloseTo(conformity.above(), within(1e-12));
        assertThat(mirrored.above()).isCloseTo(conformity.below(), within(1e-12));
        assertThat(mirrored.within()).isCloseTo(conformity.within(), within(1e-12));
    }

    @Test
    void refusesBadNumbers() {
        assertRefused("value must be finite: NaN", () -> Conformity.of(Double.NaN, 1, 1, -1, 1));
        assertRefused("standard uncertainty must be finite: NaN", () -> Conformity.of(0, Double.NaN, 1, -1, 1));
        assertRefused("standard uncertainty must be 0 or more: -1.0", () -> Conformity.of(0, -1, 1, -1, 1));
        assertRefused(
                "limits must be a lower one not above the upper: 1.0 and -1.0", () -> Conformity.of(0, 1, 1, 1, -1));
        assertRefused(
                "limits must be a lower one not above the upper: NaN and 1.0",
                () -> Conformity.of(0, 1, 1, Double.NaN, 1));
        assertRefused("degrees of freedom must be greater than 0: NaN", () -> Conformity.of(0, 1, Double.NaN, -1, 1));
    }

    @Test
    void refusesProbabilitiesThatAreNone() {
        assertRefused(
                "probabilities of conformity must be 0 to 1, with a sum of 1: 0.5, 0.5, 0.5",
                () -> new Conformity(0.5, 0.5, 0.5));
        assertRefused(
                "probabilities of conformity must be 0 to 1, with a sum of 1: -0.5, 1.0, 0.5",
                () -> new Conformity(-0.5, 1, 0.5));
        assertRefused(
                "probabilities of conformity must be 0 to 1, with a sum of 1: NaN, 1.0, 0.0",
                () -> new Conformity(Double.NaN, 1, 0));
    }
}
