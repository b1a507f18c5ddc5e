package org.gritwright.core.simulation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

/** Joint normal densities against their formula for two numbers. */
class GaussianTest {
    private static final double[][] COVARIANCE = {{4, 1}, {1, 2}};

    @Test
    void twoNumbersByTheClosedForm() {
        double x = 0.7;
        double y = -1.2;
        double determinant = 7;
        double form = (2 * x * x - 2 * x * y + 4 * y * y) / determinant;

        assertThat(new Gaussian(COVARIANCE).logDensity(new double[] {x, y}))
                .isCloseTo(-form / 2 - Math.log(determinant) / 2 - Math.log(2 * Math.PI), within(1e-12));
        assertThat(new Gaussian(COVARIANCE).product(new double[] {x, y}, new double[] {x, y}))
                .isCloseTo(form, within(1e-12));
    }

    @Test
    void independentNumbersAreAddedUp() {
        assertThat(new Gaussian(new double[][] {{9, 0}, {0, 4}}).logDensity(new double[] {1, 2}))
                .isCloseTo(Gaussian.logDensity(1, 3) + Gaussian.logDensity(2, 2), within(1e-12));
    }

    @Test
    void whatIsNoCovarianceIsRefused() {
        assertThatIllegalArgumentException().isThrownBy(() -> new Gaussian(new double[][] {{1, 2}, {2, 1}}));
    }
}
