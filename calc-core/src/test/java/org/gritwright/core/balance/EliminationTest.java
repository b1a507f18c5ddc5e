package org.gritwright.core.balance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Assume;
import net.jqwik.api.Example;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.LUDecomposition;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.SingularValueDecomposition;

/** Sparse symmetric matrices taken apart, against full ones of another hand. */
class EliminationTest {
    /** Pairs of them may have a determinant of nearly 0, and none on the diagonal is common. */
    private static final double[] NUMBERS = {1, -1, 0.05, 20, 0.3, -3, 1 / 3.0};

    @Provide
    Arbitrary<RealMatrix> matrices() {
        return Arbitraries.longs().map(seed -> sparse(new SplittableRandom(seed)));
    }

    @Provide
    Arbitrary<RealMatrix> singular() {
        return Arbitraries.longs().map(seed -> {
            SplittableRandom random = new SplittableRandom(seed);
            RealMatrix core = sparse(random);
            int n = core.getRowDimension();
            RealMatrix wide = new Array2DRowRealMatrix(n + 3, n);
            for (int i = 0; i < n + 3; i++) {
                for (int j = 0; j < n; j++) {
                    wide.setEntry(i, j, random.nextInt(-1, 2));
                }
            }
            RealMatrix matrix = wide.multiply(core).multiplyTransposed(wide);
            return matrix.add(matrix.transpose());
        });
    }

    private static RealMatrix sparse(SplittableRandom random) {
        int n = random.nextInt(1, 10);
        RealMatrix matrix = new Array2DRowRealMatrix(n, n);
        for (int i = 0; i < n; i++) {
            for (int j = 0; j <= i; j++) {
                if (random.nextDouble() < 0.5) {
                    double number = NUMBERS[random.nextInt(NUMBERS.length)];
                    matrix.setEntry(i, j, number);
                    matrix.setEntry(j, i, number);
                }
            }
        }
        return matrix;
    }

    private static List<Pivot> pivots(RealMatrix matrix) {
        int n = matrix.getRowDimension();
        ActiveRow[] rows = new ActiveRow[n];
        for (int i = 0; i < n; i++) {
            int[] node = new int[n];
            double[] number = new double[n];
            int used = 0;
            for (int j = 0; j < n; j++) {
                if (j != i && matrix.getEntry(i, j) != 0) {
                    node[used] = j;
                    number[used++] = matrix.getEntry(i, j);
                }
            }
            rows[i] = new ActiveRow(Arrays.copyOf(node, used), Arrays.copyOf(number, used), matrix.getEntry(i, i));
        }
        return Elimination.of(rows);
    }

    private static boolean isNothing(Pivot pivot) {
        return !pivot.isDouble() && pivot.inverseFirst == 0;
    }

    /** The sum over all steps of L·D·Lᵀ. */
    private static RealMatrix together(List<Pivot> pivots, int n) {
        RealMatrix sum = new Array2DRowRealMatrix(n, n);
        for (Pivot pivot : pivots) {
            if (isNothing(pivot)) {
                continue;
            }
            int size = pivot.isDouble() ? 2 : 1;
            RealMatrix inverse = new Array2DRowRealMatrix(size, size);
            RealMatrix multipliers = new Array2DRowRealMatrix(n, size);
            inverse.setEntry(0, 0, pivot.inverseFirst);
            multipliers.setEntry(pivot.first, 0, 1);
            if (pivot.isDouble()) {
                inverse.setEntry(0, 1, pivot.inverseBoth);
                inverse.setEntry(1, 0, pivot.inverseBoth);
                inverse.setEntry(1, 1, pivot.inverseSecond);
                multipliers.setEntry(pivot.second, 1, 1);
            }
            for (int i = 0; i < pivot.below.length; i++) {
                multipliers.setEntry(pivot.below[i], 0, pivot.byFirst[i]);
                if (pivot.isDouble()) {
                    multipliers.setEntry(pivot.below[i], 1, pivot.bySecond[i]);
                }
            }
            RealMatrix block = new LUDecomposition(inverse, 1e-300).getSolver().getInverse();
            sum = sum.add(multipliers.multiply(block).multiplyTransposed(multipliers));
        }
        return sum;
    }

    private static void assertIsTakenApart(RealMatrix matrix) {
        int n = matrix.getRowDimension();
        List<Pivot> pivots = pivots(matrix);
        boolean[] isGone = new boolean[n];

        for (Pivot pivot : pivots) {
            // Each node goes once, and a step touches only those that are still there.
            assertThat(isGone[pivot.first]).isFalse();
            isGone[pivot.first] = true;
            if (pivot.isDouble()) {
                assertThat(isGone[pivot.second]).isFalse();
                isGone[pivot.second] = true;
            }
            for (int i = 0; i < pivot.below.length; i++) {
                assertThat(isGone[pivot.below[i]]).isFalse();
                assertThat(Math.abs(pivot.byFirst[i])).isLessThanOrEqualTo(20.0001);
                if (pivot.isDouble()) {
                    assertThat(Math.abs(pivot.bySecond[i])).isLessThanOrEqualTo(20.0001);
                }
            }
        }
        assertThat(isGone).doesNotContain(false);
        assertThat(together(pivots, n).subtract(matrix).getNorm1()).isLessThan(1e-10 * (1 + matrix.getNorm1()));
    }

    @Property
    void theStepsTogetherAreTheMatrixAndNoMultiplierIsLarge(@ForAll("matrices") RealMatrix matrix) {
        assertIsTakenApart(matrix);
    }

    @Property
    void asManyStepsDetermineNothingAsTheRankLacks(@ForAll("singular") RealMatrix matrix) {
        assertIsTakenApart(matrix);
        double[] singular = new SingularValueDecomposition(matrix).getSingularValues();
        // What is nearly nothing may count as either.
        Assume.that(Arrays.stream(singular).noneMatch(one -> one > 1e-13 * singular[0] && one < 1e-7 * singular[0]));

        assertThat(pivots(matrix).stream().filter(EliminationTest::isNothing).count())
                .isEqualTo(Arrays.stream(singular)
                        .filter(one -> one <= 1e-13 * singular[0])
                        .count());
    }

    /** Of rank 2: in its first step two large numbers cancel, and what they leave is rounding. */
    @Example
    void whatTwoRowsLeaveOfEachOtherIsNothing() {
        RealMatrix matrix = new Array2DRowRealMatrix(new double[][] {
            {0.10000000000000009, -4.1, -0.10000000000000009, -2.0999999999999996, 0.10000000000000009, 2},
            {-4.1, 8.1, 4.1, 6.1, -4.1, -2},
            {-0.10000000000000009, 4.1, 0.10000000000000009, 2.1, -0.10000000000000009, -2},
            {-2.0999999999999996, 6.1, 2.1, 4.1, -2.1, -2},
            {0.10000000000000009, -4.1, -0.10000000000000009, -2.1, 0.1, 2},
            {2, -2, -2, -2, 2, 0}
        });

        assertThat(pivots(matrix).stream().filter(EliminationTest::isNothing)).hasSize(4);
    }

    private static void assertInverse(RealMatrix matrix) {
        int n = matrix.getRowDimension();
        SingularValueDecomposition values = new SingularValueDecomposition(matrix);
        if (!(values.getConditionNumber() <= 1e6)) {
            return; // not one that has an inverse
        }
        RealMatrix inverse = new LUDecomposition(matrix, 1e-300).getSolver().getInverse();
        List<Pivot> pivots = pivots(matrix);
        SelectedInverse selected = new SelectedInverse(n, pivots);
        double off = 1e-9 * (1 + inverse.getNorm1());
        for (int i = 0; i < n; i++) {
            assertThat(selected.at(i, i)).isCloseTo(inverse.getEntry(i, i), within(off));
            assertThat(selected.size(i)).isGreaterThanOrEqualTo(Math.abs(inverse.getEntry(i, i)) - off);
            for (int j = 0; j < n; j++) {
                double number = selected.at(i, j);
                assertThat(Double.isNaN(number)).isEqualTo(Double.isNaN(selected.at(j, i)));
                // Where the matrix has a number, the inverse's is known.
                assertThat(matrix.getEntry(i, j) != 0 && Double.isNaN(number)).isFalse();
                if (!Double.isNaN(number)) {
                    assertThat(number).isCloseTo(inverse.getEntry(i, j), within(off));
                }
            }
        }
        for (Pivot pivot : pivots) {
            for (int below : pivot.below) {
                assertThat(selected.at(pivot.first, below)).isNotNaN();
            }
        }
    }

    @Property
    void theSelectedNumbersAreThoseOfTheInverse(@ForAll("matrices") RealMatrix matrix) {
        assertInverse(matrix);
    }

    /** (2, 1; 1, 2) has the inverse (2, −1; −1, 2)/3: 2/3 = 1/2 + 1/2·1/3 is a sum of both, nothing cancels. */
    @Example
    void theSizeOfASumWithoutCancellationIsTheSum() {
        RealMatrix matrix = new Array2DRowRealMatrix(new double[][] {{2, 1}, {1, 2}});
        SelectedInverse selected = new SelectedInverse(2, pivots(matrix));

        assertThat(selected.at(0, 0)).isCloseTo(2 / 3.0, within(1e-15));
        assertThat(selected.size(0)).isCloseTo(2 / 3.0, within(1e-15));
        assertThat(selected.size(1)).isCloseTo(2 / 3.0, within(1e-15));
        assertThat(selected.at(0, 1)).isCloseTo(-1 / 3.0, within(1e-15));
    }

    @Example
    void aHubOfManyIsNoObstacle() {
        int n = 150;
        RealMatrix matrix = new Array2DRowRealMatrix(n, n);
        for (int i = 0; i < n; i++) {
            matrix.setEntry(i, i, 2);
            matrix.setEntry(0, i, 1);
            matrix.setEntry(i, 0, 1);
            // Some touch each other too.
            for (int j = 1; j < 80 && i > 0 && i < 80; j++) {
                matrix.setEntry(i, j, i == j ? 20 : 0.1);
            }
        }
        assertIsTakenApart(matrix);
        assertInverse(matrix);
    }

    @Example
    void allThatTouchEachOtherAreNoObstacle() {
        int n = 90;
        RealMatrix matrix = new Array2DRowRealMatrix(n, n);
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < n; j++) {
                matrix.setEntry(i, j, i == j ? 20 : 0.1);
            }
        }
        assertIsTakenApart(matrix);
    }

    /** The first two together, with a determinant of −0.11², would take 21 times the second one's row for the third. */
    @Example
    void aPartnerWithWhichMultipliersWouldBeLargeIsNotTaken() {
        RealMatrix matrix = new Array2DRowRealMatrix(new double[][] {{0.099, 0.11, 1}, {0.11, 0, -1.5}, {1, -1.5, 0}});

        assertIsTakenApart(matrix);
        assertThat(pivots(matrix).get(0).first).isZero();
        assertThat(pivots(matrix).get(0).second).isEqualTo(2);
    }

    @Example
    void whatHasOverflowedIsRefused() {
        RealMatrix matrix = new Array2DRowRealMatrix(new double[][] {{0, Double.NaN}, {Double.NaN, 0}});

        assertThatThrownBy(() -> pivots(matrix)).hasMessageContaining("of sizes that can be computed with together");
    }
}
