package org.gritwright.core.solution;

import java.util.stream.DoubleStream;
import org.gritwright.core.statistics.MonotoneCurve;

/** How much salt a solution can hold, by temperature. */
final class Saturation {
    private static final double DIGITS = 1e4;

    /**
     * The strongest solution by temperature in °C, from the Salt Institute's table in °F (salt per 100 pounds of brine): from the eutectic
     * on. Up to 32.2 °F what drops out is the dihydrate, beyond it salt.
     */
    static final MonotoneCurve SODIUM_CHLORIDE = MonotoneCurve.cubic(
            DoubleStream.of(-6, 0, 10, 20, 30, 32, 32.2, 40, 50, 60, 70, 80, 100, 125)
                    .map(Celsius::ofFahrenheit)
                    .toArray(),
            new double[] {
                23.31, 23.83, 24.7, 25.53, 26.16, 26.29, 26.31, 26.33, 26.36, 26.395, 26.45, 26.52, 26.68, 26.92
            });

    private Saturation() {}

    /** To the fourth digit, one more than the table has, so that a limit that is said is the limit that is meant. */
    static double percent(MonotoneCurve table, double celsius) {
        return Math.rint(table.at(celsius) * DIGITS) / DIGITS;
    }
}
