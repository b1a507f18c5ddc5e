package org.gritwright.core.statistics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.Samples.assertRefused;

import java.util.Arrays;
import java.util.function.DoubleUnaryOperator;
import org.gritwright.units.InvalidInputException;
import org.junit.jupiter.api.Test;

class MonotoneTableTest {
    private static double[] ones(int n) {
        double[] ones = new double[n];
        Arrays.fill(ones, 1);
        return ones;
    }

    private static MonotoneTable table(double... y) {
        double[] x = new double[y.length];
        Arrays.setAll(x, i -> i + 1);
        return MonotoneTable.fit(x, y, ones(y.length));
    }

    private static double[] rows(MonotoneTable table, int n) {
        double[] rows = new double[n];
        Arrays.setAll(rows, i -> table.at(i + 1));
        return rows;
    }

    @Test
    void aRiseStaysAsItIs() {
        assertThat(rows(table(1, 2, 2, 5), 4)).containsExactly(1, 2, 2, 5);
    }

    @Test
    void neighborsThatFallArePooledAtTheirMean() {
        assertThat(rows(table(1, 3, 2, 4), 4)).containsExactly(1, 2.5, 2.5, 4);
    }

    @Test
    void poolingGoesBackUntilNothingFalls() {
        // 6 and 4 make 5; with 2 that falls again: 4; with 3, 5 before: (5 + 6 + 4 + 2)/4 = 4.25, and 3 stays.
        assertThat(rows(table(3, 5, 6, 4, 2, 9), 6)).containsExactly(3, 4.25, 4.25, 4.25, 4.25, 9);
        assertThat(rows(table(5, 4, 3, 2, 1), 5)).containsExactly(3, 3, 3, 3, 3);
    }

    @Test
    void poolingGoesByWeight() {
        MonotoneTable table = MonotoneTable.fit(new double[] {1, 2}, new double[] {3, 2}, new double[] {1, 3});

        assertThat(rows(table, 2)).containsExactly(2.25, 2.25);
    }

    @Test
    void repeatsBecomeTheirWeightedMeanBeforePooling() {
        MonotoneTable table =
                MonotoneTable.fit(new double[] {2, 1, 2, 3}, new double[] {10, 20, 40, 25}, new double[] {1, 1, 2, 1});

        // 20, (10 + 80)/3 = 30 with weight 3, 25: pooled (90 + 25)/4.
        assertThat(table.at(1)).isEqualTo(20);
        assertThat(table.at(2)).isCloseTo(28.75, within(1e-14));
        assertThat(table.at(3)).isCloseTo(28.75, within(1e-14));
    }

    @Test
    void betweenRowsItIsAStraightLine() {
        MonotoneTable table = MonotoneTable.fit(new double[] {1, 3, 4}, new double[] {10, 20, 60}, ones(3));

        assertThat(table.at(1.5)).isEqualTo(12.5);
        assertThat(table.at(2)).isEqualTo(15);
        assertThat(table.at(3.75)).isEqualTo(50);
        assertThat(table.lowest()).isEqualTo(1);
        assertThat(table.highest()).isEqualTo(4);
    }

    @Test
    void withoutRepeatsThereIsNoUncertainty() {
        MonotoneTable table = table(1, 2, 4);

        assertThat(table.degreesOfFreedom()).isZero();
        assertThat(table.uncertaintyAt(2)).isEmpty();
        assertThat(table.uncertaintyAt(1.5)).isEmpty();
    }

    @Test
    void theUncertaintyIsTheScatterOfAllRepeats() {
        // Repeats off by 0.1, 0.05 and 0: s² = (2·0.01 + 2·0.0025)/(5 − 3) = 0.0125.
        MonotoneTable table =
                MonotoneTable.fit(new double[] {1, 1, 2, 2, 4}, new double[] {9, 11, 19, 21, 50}, ones(5));
        double s = Math.sqrt(0.0125);

        assertThat(table.degreesOfFreedom()).isEqualTo(2);
        assertThat(table.uncertaintyAt(1).orElseThrow()).isCloseTo(10 * s / Math.sqrt(2), within(1e-13));
        assertThat(table.uncertaintyAt(2).orElseThrow()).isCloseTo(20 * s / Math.sqrt(2), within(1e-13));
        assertThat(table.uncertaintyAt(4).orElseThrow()).isCloseTo(50 * s, within(1e-13));
        // A quarter of the way from 20 to 50.
        assertThat(table.uncertaintyAt(2.5).orElseThrow())
                .isCloseTo(Math.hypot(0.75 * 20 * s / Math.sqrt(2), 0.25 * 50 * s), within(1e-13));
    }

    @Test
    void oneRepeatIsEnoughForAnUncertainty() {
        // Repeats off by 0.1: s² = 2·0.01/(3 − 2).
        MonotoneTable table = MonotoneTable.fit(new double[] {1, 1, 2}, new double[] {9, 11, 20}, ones(3));

        assertThat(table.uncertaintyAt(1).orElseThrow()).isCloseTo(10 * Math.sqrt(0.02 / 2), within(1e-13));
        assertThat(table.uncertaintyAt(2).orElseThrow()).isCloseTo(20 * Math.sqrt(0.02), within(1e-13));
    }

    @Test
    void rowsThatAreAlikeAreNotPooledSoEachKeepsTheErrorsOfItsOwn() {
        MonotoneTable table = MonotoneTable.fit(new double[] {1, 1, 2}, new double[] {10, 10, 10}, ones(3));
        DoubleUnaryOperator uncertainty = table.relativeUncertainty(new double[] {0.1, 0.1, 0.1});

        assertThat(uncertainty.applyAsDouble(1)).isCloseTo(0.1 / Math.sqrt(2), within(1e-15));
        assertThat(uncertainty.applyAsDouble(2)).isCloseTo(0.1, within(1e-15));
    }

    @Test
    void refusesRepeatsWhoseSumNoDoubleHolds() {
        assertRefused(
                "value of the table must be finite: Infinity",
                () -> MonotoneTable.fit(new double[] {1, 1}, new double[] {1.7e308, 1.7e308}, ones(2)));
    }

    @Test
    void aRowOfMoreWeightIsMoreCertain() {
        // Scaled weights 1/2, 1/2, 3/2, 3/2; s² = (0.5·2·0.01 + 1.5·2·0.0025)/2 = 0.00875; sums of weights 1 and 3.
        MonotoneTable table = MonotoneTable.fit(
                new double[] {1, 1, 2, 2}, new double[] {9, 11, 19, 21}, new double[] {10, 10, 30, 30});

        assertThat(table.uncertaintyAt(1).orElseThrow()).isCloseTo(10 * Math.sqrt(0.00875), within(1e-13));
        assertThat(table.uncertaintyAt(2).orElseThrow()).isCloseTo(20 * Math.sqrt(0.00875 / 3), within(1e-13));
    }

    @Test
    void oneRowIsATableOfOnePlace() {
        MonotoneTable table = MonotoneTable.fit(new double[] {2, 2}, new double[] {9, 11}, ones(2));

        assertThat(table.at(2)).isEqualTo(10);
        assertThat(table.lowest()).isEqualTo(table.highest());
    }

    @Test
    void refusesPlacesOutsideItsRows() {
        MonotoneTable table = table(1, 2, 4);

        assertRefused("x in the table must be within 1.0 to 3.0: 0.99", () -> table.at(0.99));
        assertRefused("x in the table must be within 1.0 to 3.0: 3.01", () -> table.at(3.01));
        assertRefused("x in the table must be within 1.0 to 3.0: NaN", () -> table.at(Double.NaN));
        assertRefused("x in the table must be within 1.0 to 3.0: 4.0", () -> table.uncertaintyAt(4));
    }

    @Test
    void refusesWhatIsNotWholeOrOutOfRange() {
        assertRefused(
                "observations must be one or more, with an x, a y and a weight each: 0 x, 0 y, 0 weights",
                () -> MonotoneTable.fit(new double[0], new double[0], new double[0]));
        assertRefused(
                "y must be greater than 0: 0.0",
                () -> MonotoneTable.fit(new double[] {1}, new double[] {0}, new double[] {1}));
        assertRefused(
                "weight must be finite: NaN",
                () -> MonotoneTable.fit(new double[] {1}, new double[] {1}, new double[] {Double.NaN}));
    }

    @Test
    void numbersAtTheEndOfWhatADoubleHoldsNeverGiveNaN() {
        MonotoneTable wide =
                MonotoneTable.fit(new double[] {-1.7e308, 1.7e308}, new double[] {1, 3}, new double[] {1, 1});
        assertThat(wide.at(0)).isEqualTo(2);
        assertThatExceptionOfType(InvalidInputException.class)
                .isThrownBy(() ->
                        MonotoneTable.fit(new double[] {1, 2}, new double[] {1, 2}, new double[] {1.7e308, 1.7e308}))
                .withMessageContaining("must be finite");
    }
}
