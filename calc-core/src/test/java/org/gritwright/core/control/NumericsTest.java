package org.gritwright.core.control;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.SplittableRandom;
import org.hipparchus.analysis.integration.gauss.GaussIntegrator;
import org.hipparchus.analysis.integration.gauss.GaussIntegratorFactory;
import org.hipparchus.linear.LUDecomposition;
import org.hipparchus.linear.MatrixUtils;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The small numerics against those of another hand. */
class NumericsTest {
    @ParameterizedTest
    @ValueSource(ints = {1, 2, 3, 7, 30, 61})
    void nodesAndWeightsAreThoseOfAnotherHand(int n) {
        GaussIntegrator other = new GaussIntegratorFactory().legendre(n);
        GaussLegendre rule = GaussLegendre.of(n);

        assertThat(rule.size()).isEqualTo(n);
        for (int i = 0; i < n; i++) {
            assertThat(rule.node(i)).isCloseTo(other.getPoint(i), within(1e-14));
            assertThat(rule.weight(i)).isCloseTo(other.getWeight(i), within(1e-13));
        }
    }

    @Test
    void partialWeightsIntegrateAPolynomialToEachNode() {
        GaussLegendre rule = GaussLegendre.of(6);
        double[][] partial = rule.partialWeights();

        for (int j = 0; j < 6; j++) {
            double sum = 0;
            for (int i = 0; i < 6; i++) {
                sum += partial[j][i] * (1 + 5 * Math.pow(rule.node(i), 4));
            }
            double x = rule.node(j);
            assertThat(sum).isCloseTo(x + Math.pow(x, 5) + 2, within(1e-14));
        }
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 2, 5, 40})
    void equationsAreSolvedAsByAnotherHand(int n) {
        SplittableRandom random = new SplittableRandom(n);
        double[][] matrix = new double[n][n];
        double[] right = new double[n];
        for (int i = 0; i < n; i++) {
            Arrays.setAll(matrix[i], j -> random.nextGaussian());
            right[i] = random.nextGaussian();
        }
        double[] other = new LUDecomposition(MatrixUtils.createRealMatrix(matrix))
                .getSolver()
                .solve(MatrixUtils.createRealVector(right))
                .toArray();

        assertThat(LinearEquations.solve(matrix, right)).containsExactly(other, within(1e-10));
    }

    @Test
    void aZeroOnTheDiagonalIsNoObstacle() {
        assertThat(LinearEquations.solve(new double[][] {{0, 2}, {4, 0}}, new double[] {6, 8}))
                .containsExactly(2, 3);
    }

    @Test
    void theRootOfARisingFunctionIsFoundInFewSteps() {
        int[] calls = {0};
        double root = Root.between(
                x -> {
                    calls[0]++;
                    return Math.exp(x) - 2;
                },
                0,
                4);

        assertThat(root).isCloseTo(Math.log(2), within(1e-9));
        assertThat(calls[0]).isLessThan(14);
    }

    @Test
    void anInfiniteFunctionIsHalved() {
        assertThat(Root.between(x -> x < 1 ? Double.NEGATIVE_INFINITY : x > 3 ? Double.POSITIVE_INFINITY : x - 2, 0, 9))
                .isCloseTo(2, within(1e-8));
    }

    @Test
    void aJumpIsFoundByHalving() {
        assertThat(Root.between(x -> x < 1.25 ? -1 : 5, 0, 9)).isCloseTo(1.25, within(1e-8));
    }

    @Test
    void probabilitiesFarOutKeepTheirDigits() {
        assertThat(Normal.between(8, 9) / 6.2198e-16).isCloseTo(1, within(1e-3));
        assertThat(Normal.between(-9, -8)).isEqualTo(Normal.between(8, 9));
        assertThat(Normal.between(-1, 1)).isCloseTo(0.682689492137, within(1e-11));
        assertThat(Normal.between(1, Double.POSITIVE_INFINITY)).isCloseTo(0.158655253931, within(1e-11));
        assertThat(Normal.density(1)).isCloseTo(0.241970724519, within(1e-12));
    }
}
