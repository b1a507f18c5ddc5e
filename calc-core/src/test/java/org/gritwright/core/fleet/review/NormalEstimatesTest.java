package org.gritwright.core.fleet.review;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.hipparchus.distribution.multivariate.MultivariateNormalDistribution;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;
import org.junit.jupiter.api.Test;

class NormalEstimatesTest {
    private static final double[] VALUES = {0.31, 0.28, 0.36, 0.30};
    private static final double[] VARIANCES = {0.0004, 0.0009, 0.0025, 0.0001};
    private static final double TAU = 0.02;
    private static final double MEAN = 0.25;

    /** The joint density of estimates of one number that is itself normal, by their whole covariance. */
    @Test
    void theDensityIsThatOfTheJointNormalDistribution() {
        RealMatrix covariance = MatrixUtils.createRealMatrix(VALUES.length, VALUES.length);
        double[] means = new double[VALUES.length];
        NormalEstimates estimates = new NormalEstimates();
        for (int i = 0; i < VALUES.length; i++) {
            means[i] = MEAN;
            for (int j = 0; j < VALUES.length; j++) {
                covariance.setEntry(i, j, TAU + (i == j ? VARIANCES[i] : 0));
            }
            estimates.add(VALUES[i], VARIANCES[i]);
        }
        double joint = Math.log(new MultivariateNormalDistribution(means, covariance.getData()).density(VALUES));

        assertThat(estimates.logDensityOfSpread()
                        + NormalEstimates.logDensity(estimates.mean() - MEAN, estimates.variance() + TAU))
                .isCloseTo(joint, within(1e-9));
    }

    @Test
    void aSingleEstimateHasNoSpread() {
        NormalEstimates one = new NormalEstimates();
        one.add(0.3, 0.0004);

        assertThat(one.logDensityOfSpread()).isCloseTo(0, within(1e-12));
        assertThat(one.mean()).isCloseTo(0.3, within(1e-15));
        assertThat(one.variance()).isCloseTo(0.0004, within(1e-18));
    }
}
