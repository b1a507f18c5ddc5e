package org.gritwright.examples.fleetmemory;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;

/** Rounds numbers so that what is printed adds up: by largest remainders, each to a neighbor of itself. */
final class Shares {
    private Shares() {}

    /**
     * Whole numbers in the place of others.
     *
     * @param sum what they have to add up to: the sum of the numbers, rounded
     */
    static List<Long> of(List<Double> numbers, long sum) {
        List<Long> whole = new ArrayList<>(
                numbers.stream().map(number -> (long) Math.floor(number)).toList());
        long left = sum - whole.stream().mapToLong(Long::longValue).sum();
        if (left < 0 || left > numbers.size()) {
            throw new IllegalArgumentException("numbers that add up to " + sum + ": " + numbers);
        }
        IntStream.range(0, numbers.size())
                .boxed()
                .sorted(Comparator.comparingDouble(i -> Math.floor(numbers.get(i)) - numbers.get(i)))
                .limit(left)
                .forEach(i -> whole.set(i, whole.get(i) + 1));
        return whole;
    }

    static List<Long> of(List<Double> numbers) {
        return of(
                numbers,
                Math.round(numbers.stream().mapToDouble(Double::doubleValue).sum()));
    }
}
