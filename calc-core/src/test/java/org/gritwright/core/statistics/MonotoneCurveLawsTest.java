package org.gritwright.core.statistics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.DoubleRange;

class MonotoneCurveLawsTest {
    /** Points by the steps between them; a step of 0 makes a plateau. */
    @Provide
    Arbitrary<List<Integer>> steps() {
        return Arbitraries.integers().between(0, 20).list().ofMinSize(1).ofMaxSize(8);
    }

    @Provide
    Arbitrary<List<Integer>> rises() {
        return Arbitraries.integers().between(1, 20).list().ofMinSize(1).ofMaxSize(8);
    }

    private static double[] x(List<Integer> steps) {
        double[] x = new double[steps.size() + 1];
        for (int i = 0; i < steps.size(); i++) {
            x[i + 1] = x[i] + 1 + steps.get(i) % 3;
        }
        return x;
    }

    private static double[] y(List<Integer> steps) {
        double[] y = new double[steps.size() + 1];
        for (int i = 0; i < steps.size(); i++) {
            y[i + 1] = y[i] + steps.get(i) / 10.0;
        }
        return y;
    }

    private static MonotoneCurve curve(List<Integer> steps) {
        return MonotoneCurve.cubic(x(steps), y(steps));
    }

    @Property
    void itNeverFalls(
            @ForAll("steps") List<Integer> steps,
            @ForAll @DoubleRange(min = 0, max = 1) double one,
            @ForAll @DoubleRange(min = 0, max = 1) double other) {
        MonotoneCurve curve = curve(steps);
        double low = Math.min(one, other) * curve.highest();
        double high = Math.max(one, other) * curve.highest();

        assertThat(curve.at(high)).isGreaterThanOrEqualTo(curve.at(low) * (1 - 1e-14));
    }

    @Property
    void thereAndBackIsTheSameWhereItRises(
            @ForAll("rises") List<Integer> rises, @ForAll @DoubleRange(min = 0, max = 1) double part) {
        MonotoneCurve curve = curve(rises);
        double x = part * curve.highest();
        MonotoneCurve.Interval back = curve.where(curve.at(x)).orElseThrow();

        // Where the slope is 0 at an end, x is only as sure as the cube root of y's rounding.
        assertThat(back.lowest()).isCloseTo(x, within(1e-4));
        assertThat(back.highest()).isCloseTo(x, within(1e-4));
        assertThat(curve.at(back.lowest())).isCloseTo(curve.at(x), within(1e-14 * (1 + curve.at(x))));
    }

    @Property
    void everyYOfAPlateauHasAllOfIt(@ForAll("steps") List<Integer> steps) {
        MonotoneCurve curve = curve(steps);
        double[] x = x(steps);
        double[] y = y(steps);
        for (int i = 0; i < y.length; i++) {
            MonotoneCurve.Interval where = curve.where(y[i]).orElseThrow();
            assertThat(where.lowest()).isLessThanOrEqualTo(x[i]);
            assertThat(where.highest()).isGreaterThanOrEqualTo(x[i]);
            assertThat(curve.at(where.lowest())).isEqualTo(y[i]);
            assertThat(curve.at(where.highest())).isEqualTo(y[i]);
            assertThat(where.lowest() < where.highest())
                    .isEqualTo((i > 0 && y[i - 1] == y[i]) || (i + 1 < y.length && y[i + 1] == y[i]));
        }
    }
}
