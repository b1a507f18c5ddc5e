package org.gritwright.examples.fleetmemory;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import java.util.stream.LongStream;

/**
 * Numbers along an edge of a picture.
 *
 * @param low the number at the start
 * @param high the number at the end, above it
 * @param start where the picture has the low one
 * @param end where it has the high one; places grow downward
 */
record Scale(double low, double high, double start, double end) {
    private static final List<Integer> STEPS = List.of(1, 2, 5, 10);

    double at(double number) {
        return start + (number - low) / (high - low) * (end - start);
    }

    boolean holds(double number) {
        return number >= low && number <= high;
    }

    /** Round numbers, so many at most. */
    List<BigDecimal> ticks(int most) {
        double least = (high - low) / most;
        int power = (int) Math.floor(Math.log10(least));
        BigDecimal step = STEPS.stream()
                .map(digit -> BigDecimal.valueOf(digit).scaleByPowerOfTen(power))
                .filter(one -> one.doubleValue() >= least)
                .findFirst()
                .orElseGet(() -> BigDecimal.ONE.scaleByPowerOfTen(power + 1));
        return LongStream.rangeClosed(
                        BigDecimal.valueOf(low)
                                .divide(step, 0, RoundingMode.CEILING)
                                .longValueExact(),
                        BigDecimal.valueOf(high)
                                .divide(step, 0, RoundingMode.FLOOR)
                                .longValueExact())
                .mapToObj(number -> step.multiply(BigDecimal.valueOf(number)))
                .toList();
    }
}
