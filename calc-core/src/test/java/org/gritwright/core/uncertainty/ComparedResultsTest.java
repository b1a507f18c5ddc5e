package org.gritwright.core.uncertainty;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.Samples.assertRefused;
import static org.gritwright.core.Samples.pounds;
import static org.gritwright.core.uncertainty.Components.u;

import javax.measure.quantity.Mass;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Scale;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.junit.jupiter.api.Test;

/** Two results compared, or combined. */
class ComparedResultsTest {
    private static final double INFINITE = Double.POSITIVE_INFINITY;

    private static Measured<Mass> measured(double value, double u, double degrees) {
        return Measured.of(pounds(value), pounds(u), degrees);
    }

    private static double value(Budget<Mass> budget) {
        return budget.result().value().getValue().doubleValue();
    }

    @Test
    void theNormalizedErrorIsTheDifferenceOverBothExpandedUncertainties() {
        // 95 %: 1.959964·0.3 and 2.262157·0.4.
        assertThat(NormalizedError.between(measured(61, 0.3, INFINITE), measured(60, 0.4, 9))
                        .value())
                .isCloseTo(1 / Math.hypot(1.959964 * 0.3, 2.262157 * 0.4), within(1e-6));
    }

    @Test
    void twoResultsAgreeUpToAnErrorOfOneEitherWay() {
        assertThat(new NormalizedError(1).isAgreement()).isTrue();
        assertThat(new NormalizedError(-1).isAgreement()).isTrue();
        assertThat(new NormalizedError(1.0001).isAgreement()).isFalse();
        assertThat(new NormalizedError(-1.0001).isAgreement()).isFalse();
        assertRefused("normalized error must be finite: NaN", () -> new NormalizedError(Double.NaN));
    }

    @Test
    void oneCertainResultIsNoObstacleToAComparisonTwoAre() {
        assertThat(NormalizedError.between(measured(61, 0, INFINITE), measured(60, 1, INFINITE))
                        .value())
                .isCloseTo(1 / 1.959964, within(1e-6));
        assertRefused(
                "uncertainty of the results to compare must be greater than 0: 0",
                () -> NormalizedError.between(measured(61, 0, INFINITE), measured(60, 0, INFINITE)));
        assertRefused(
                "result to compare must be one with an uncertainty: 60 lb",
                () -> NormalizedError.between(measured(61, 1, INFINITE), Measured.once(pounds(60))));
        assertRefused(
                "result to compare must be one with an uncertainty: 60 lb",
                () -> NormalizedError.between(Measured.once(pounds(60)), measured(61, 1, INFINITE)));
    }

    @Property
    void theNormalizedErrorOfTheTwoTheOtherWayRoundIsItsNegative(
            @ForAll @Scale(3) @DoubleRange(min = 1, max = 100) double a,
            @ForAll @Scale(3) @DoubleRange(min = 1, max = 100) double b,
            @ForAll @Scale(3) @DoubleRange(min = 0.001, max = 5) double uOfA,
            @ForAll @Scale(3) @DoubleRange(min = 0.001, max = 5) double uOfB) {
        Measured<Mass> first = measured(a, uOfA, 3);
        Measured<Mass> second = Measured.of(
                Amounts.of(b * 0.45359237, SpreadingUnits.KILOGRAM),
                Amounts.of(uOfB * 0.45359237, SpreadingUnits.KILOGRAM),
                7);
        double forth = NormalizedError.between(first, second).value();

        assertThat(NormalizedError.between(second, first).value())
                .isCloseTo(-forth, within(1e-9 * Math.max(1, Math.abs(forth))));
    }

    @Test
    void theWeightedMeanIsWeightedByTheSquares() {
        // Weights 1/0.09 and 1/0.36, so 4 to 1.
        Budget<Mass> mean = WeightedMean.of(measured(60, 0.3, 2), measured(65, 0.6, INFINITE));

        assertThat(value(mean)).isCloseTo(61, within(1e-12));
        assertThat(u(mean)).isCloseTo(Math.sqrt(0.8 * 0.8 * 0.09 + 0.2 * 0.2 * 0.36), within(1e-12));
        // u⁴ ÷ ((0.8·0.3)⁴/2)
        assertThat(mean.result().degreesOfFreedom().orElseThrow())
                .isCloseTo(0.072 * 0.072 / (Math.pow(0.24, 4) / 2), within(1e-9));
        assertThat(mean.components()).extracting(Component::name).containsExactly("earlier evidence", "new evidence");
    }

    @Test
    void theWeightedMeanIsInTheUnitOfTheFirst() {
        Budget<Mass> mean = WeightedMean.of(
                measured(60, 0.3, 2),
                Measured.of(
                        Amounts.of(65 * 0.45359237, SpreadingUnits.KILOGRAM),
                        Amounts.of(0.6 * 0.45359237, SpreadingUnits.KILOGRAM),
                        3));

        assertThat(mean.result().value().getUnit()).isEqualTo(SpreadingUnits.POUND);
        assertThat(value(mean)).isCloseTo(61, within(1e-9));
    }

    @Test
    void evidenceWithoutWeightIsNotCombined() {
        assertRefused(
                "uncertainty of evidence to combine must be known and greater than 0: 0.0",
                () -> WeightedMean.of(Measured.once(pounds(60)), measured(61, 1, 2)));
        assertRefused(
                "uncertainty of evidence to combine must be known and greater than 0: 0.0",
                () -> WeightedMean.of(measured(61, 1, 2), measured(60, 0, 2)));
        // 1 ÷ u² is 0 in doubles, or infinite.
        for (double u : new double[] {1e200, 1e-200}) {
            assertRefused(
                    "uncertainty of evidence to combine must be known and greater than 0: " + u,
                    () -> WeightedMean.of(measured(61, 1, 2), measured(60, u, 2)));
        }
    }

    @Property
    void theWeightedMeanIsBetweenTheTwoAndMoreCertainThanEither(
            @ForAll @Scale(3) @DoubleRange(min = 1, max = 100) double a,
            @ForAll @Scale(3) @DoubleRange(min = 1, max = 100) double b,
            @ForAll @Scale(3) @DoubleRange(min = 0.01, max = 5) double uOfA,
            @ForAll @Scale(3) @DoubleRange(min = 0.01, max = 5) double uOfB) {
        Budget<Mass> mean = WeightedMean.of(measured(a, uOfA, 2), measured(b, uOfB, 5));

        assertThat(value(mean)).isBetween(Math.min(a, b) - 1e-9, Math.max(a, b) + 1e-9);
        assertThat(u(mean)).isLessThan(Math.min(uOfA, uOfB));
        assertThat(Components.degrees(mean)).isBetween(2 - 1e-9, 7 + 1e-9);
    }
}
