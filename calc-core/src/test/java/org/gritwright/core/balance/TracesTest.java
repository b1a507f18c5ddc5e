package org.gritwright.core.balance;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** Candidates are told apart by what they make of numbers without pattern: no two sums of these may agree by chance. */
class TracesTest {
    private static final int MANY = 60;

    private static double[] both() {
        return DoubleStream.concat(
                        Arrays.stream(Traces.patternless(MANY, 1)), Arrays.stream(Traces.patternless(MANY, 2)))
                .toArray();
    }

    private static double closest(double[] numbers) {
        Arrays.sort(numbers);
        return IntStream.range(1, numbers.length)
                .mapToDouble(i -> numbers[i] - numbers[i - 1])
                .min()
                .orElseThrow();
    }

    @Test
    void theNumbersLieFromOneToTwo() {
        assertThat(Arrays.stream(both())).allMatch(number -> number >= 1 && number < 2);
        assertThat(Arrays.stream(Traces.patternless(10_000, 1)).average().orElseThrow())
                .isBetween(1.49, 1.51);
    }

    @Test
    void noTwoNumbersAndNoTwoSumsOfTwoAgree() {
        double[] numbers = both();
        double[] sums = IntStream.range(0, numbers.length)
                .boxed()
                .flatMap(i -> IntStream.range(0, i).mapToObj(j -> numbers[i] + numbers[j]))
                .mapToDouble(Double::doubleValue)
                .toArray();

        // Of so many numbers by chance the closest two of the sums are some 10⁻⁸ apart.
        assertThat(closest(sums)).isGreaterThan(1e-9);
        assertThat(closest(numbers)).isGreaterThan(1e-6);
    }

    @Test
    void farOutTheyFollowNoPatternEither() {
        double[] numbers = Traces.patternless(1_000_000, 2);

        assertThat(IntStream.range(999_000, 999_998)
                        .mapToDouble(i -> Math.abs(numbers[i] - 2 * numbers[i + 1] + numbers[i + 2])))
                .allMatch(bend -> bend > 1e-6);
    }
}
