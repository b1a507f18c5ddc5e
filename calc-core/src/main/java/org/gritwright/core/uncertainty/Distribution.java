package org.gritwright.core.uncertainty;

import java.util.random.RandomGenerator;
import org.gritwright.units.check.Require;

/** The shape of an error's distribution (JCGM 100:2008, the GUM, 4.3 and 4.4). */
public enum Distribution {
    /** Normal; Student's t where its degrees of freedom are finite. */
    NORMAL(Double.NaN),
    /** Equally probable anywhere between two limits, like the rounding of a reading: u = a ÷ √3 (4.3.7). */
    RECTANGULAR(Math.sqrt(1.0 / 3)),
    /** The sum of two equal rectangular errors, like a count of pulses from start to stop: u = a ÷ √6 (4.3.9). */
    TRIANGULAR(Math.sqrt(1.0 / 6)),
    /** More probable near the limits than between them, like something that swings: u = a ÷ √2. */
    ARCSINE(Math.sqrt(1.0 / 2));

    private final double deviationOfOne;

    Distribution(double deviationOfOne) {
        this.deviationOfOne = deviationOfOne;
    }

    /**
     * The standard uncertainty of an error within limits.
     *
     * @param halfWidth half the distance between the limits, 0 or more
     * @return the standard deviation
     * @throws org.gritwright.units.InvalidInputException if the half-width is negative or not finite, or the distribution has no limits
     */
    public double standardUncertainty(double halfWidth) {
        Require.that(this != NORMAL, "distribution of an error within limits", "one with limits", "normal");
        Require.notNegative("half-width", halfWidth);
        return halfWidth * deviationOfOne;
    }

    /** A random error with a standard uncertainty of 1. */
    double draw(double degreesOfFreedom, RandomGenerator random) {
        return switch (this) {
            case NORMAL ->
                Double.isInfinite(degreesOfFreedom) ? random.nextGaussian() : drawStudent(degreesOfFreedom, random);
            case RECTANGULAR -> (2 * random.nextDouble() - 1) / deviationOfOne;
            case TRIANGULAR -> {
                double atStart = random.nextDouble();
                yield (random.nextDouble() - atStart) / deviationOfOne;
            }
            case ARCSINE -> Math.sin(2 * Math.PI * random.nextDouble()) / deviationOfOne;
        };
    }

    /**
     * R. W. Bailey, Polar generation of random variates with the t-distribution, Math. Comp. 62 (206), 1994, 779–781;
     * abstract checked, algorithm from memory.
     */
    private static double drawStudent(double degreesOfFreedom, RandomGenerator random) {
        double u;
        double w;
        do {
            u = 2 * random.nextDouble() - 1;
            double v = 2 * random.nextDouble() - 1;
            w = u * u + v * v;
        } while (!(w > 0 && w <= 1));
        double radius = degreesOfFreedom * (Math.pow(w, -2 / degreesOfFreedom) - 1);
        return u * Math.sqrt(radius / w);
    }
}
