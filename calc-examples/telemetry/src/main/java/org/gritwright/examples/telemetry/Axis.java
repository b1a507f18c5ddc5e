package org.gritwright.examples.telemetry;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import java.util.stream.LongStream;

/**
 * Numbers to places of a picture, in proportion.
 *
 * @param from the number at one end
 * @param to the number at the other
 * @param fromPlace the place of one end
 * @param toPlace the place of the other; places grow downward
 */
record Axis(double from, double to, double fromPlace, double toPlace) {
    private static final int FEWEST_STEPS = 5;
    private static final List<Integer> ROUND = List.of(5, 2, 1);

    double at(double number) {
        double within = Math.max(from, Math.min(to, number));
        return fromPlace + (within - from) / (to - from) * (toPlace - fromPlace);
    }

    /** Round numbers between the ends. */
    List<BigDecimal> ticks() {
        BigDecimal step = step();
        long first =
                BigDecimal.valueOf(from).divide(step, 0, RoundingMode.CEILING).longValueExact();
        long last = BigDecimal.valueOf(to).divide(step, 0, RoundingMode.FLOOR).longValueExact();
        return LongStream.rangeClosed(first, last)
                .mapToObj(i -> step.multiply(BigDecimal.valueOf(i)))
                .toList();
    }

    /** The largest of 1, 2 or 5 times a power of ten that goes into the range five times or more. */
    private BigDecimal step() {
        BigDecimal largest = BigDecimal.valueOf(to - from).divide(BigDecimal.valueOf(FEWEST_STEPS));
        int power = largest.precision() - largest.scale() - 1;
        return ROUND.stream()
                .map(digit -> BigDecimal.valueOf(digit).scaleByPowerOfTen(power))
                .filter(one -> one.compareTo(largest) <= 0)
                .findFirst()
                .orElseThrow();
    }
}
