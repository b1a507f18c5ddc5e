package org.gritwright.core.range;

import java.io.Serializable;
import org.gritwright.core.statistics.MonotoneRegression;
import org.gritwright.core.statistics.Student;

/**
 * How speeds scatter that were read at one command: pooled from the repeats of both directions, but for jerky commands; it is
 * taken to be the same at all others. Beside it a speed is read to a resolution only, which repeats don't average out.
 *
 * @param deviation the standard deviation of one reading, revolutions per second
 * @param degreesOfFreedom of it; 0 without repeats, where nothing is known of the scatter
 * @param resolution the step to which speeds are read, revolutions per second
 */
record Noise(double deviation, int degreesOfFreedom, double resolution) implements Serializable {

    static Noise of(double resolution, Branch... branches) {
        double squares = 0;
        int degrees = 0;
        for (Branch branch : branches) {
            for (MonotoneRegression.Row row : branch.rows) {
                if (!branch.isJerky(row)) {
                    squares += row.squares();
                    degrees += row.size() - 1;
                }
            }
        }
        return new Noise(degrees == 0 ? 0 : Math.sqrt(squares / degrees), degrees, resolution);
    }

    boolean isKnown() {
        return degreesOfFreedom > 0;
    }

    /**
     * By how much the means of two commands of one speed may differ, but for a stated chance to one side. Without repeats, by
     * what the resolution alone lets them.
     */
    double allowance(double weight, double otherWeight, double chance) {
        double scatter = !isKnown() || deviation == 0
                ? 0
                : Student.of(degreesOfFreedom).factorExceededWith(chance)
                        * deviation
                        * Math.sqrt(1 / weight + 1 / otherWeight);
        return scatter + resolution;
    }

    /** The variance of a speed read to the resolution: rectangular. */
    double ofResolution() {
        return resolution * resolution / 12;
    }
}
