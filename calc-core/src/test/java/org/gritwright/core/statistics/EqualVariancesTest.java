package org.gritwright.core.statistics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.Samples.assertRefused;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.DoubleStream;
import org.junit.jupiter.api.Test;

class EqualVariancesTest {
    private static Variance of(double... values) {
        Sample sample = Sample.of(values);
        double deviation = sample.deviation().orElseThrow();
        return new Variance(deviation * deviation, values.length - 1.0);
    }

    /**
     * Insects counted under six sprays (G. Beall, Biometrika 32, 1942; the data from memory), with the statistic 25.96 and the chance 9.085e-05
     * that the statistics program R prints for them with 5 degrees of freedom.
     */
    @Test
    void bartlettsStatisticIsAsPublished() {
        EqualVariances all = EqualVariances.of(List.of(
                of(10, 7, 20, 14, 14, 12, 10, 23, 17, 20, 14, 13),
                of(11, 17, 21, 11, 16, 14, 17, 17, 19, 21, 7, 13),
                of(0, 1, 7, 2, 3, 1, 2, 1, 3, 0, 1, 4),
                of(3, 5, 12, 6, 4, 3, 5, 5, 5, 5, 2, 4),
                of(3, 5, 3, 5, 3, 6, 1, 1, 3, 2, 6, 4),
                of(11, 9, 15, 22, 15, 16, 13, 10, 26, 26, 24, 13)));

        assertThat(all.statistic().orElseThrow()).isCloseTo(25.96, within(5e-3));
        assertThat(all.chance().orElseThrow()).isCloseTo(9.085e-5, within(5e-9));
    }

    /** (2·1 + 2·4 + 4·2) ÷ 8. */
    @Test
    void whatIsAlikeIsPooledByDegreesOfFreedom() {
        EqualVariances all = EqualVariances.of(List.of(new Variance(1, 2), new Variance(4, 2), new Variance(2, 4)));

        assertThat(all.pooled()).isEqualTo(new Variance(2.25, 8));
        assertThat(all.odd()).isEmpty();
    }

    @Test
    void oneOddVarianceDoesntSetThePool() {
        List<Variance> fleet = new ArrayList<>();
        for (int i = 0; i < 20; i++) {
            fleet.add(new Variance(1, 2));
        }
        fleet.set(7, new Variance(25, 2));
        EqualVariances all = EqualVariances.of(fleet);

        assertThat(all.odd()).containsExactly(7);
        assertThat(all.pooled()).isEqualTo(new Variance(1, 38));
        assertThat(all.chance().orElseThrow()).isLessThan(0.5);
    }

    @Test
    void severalOddOnesAreFoundOneAfterTheOther() {
        List<Variance> fleet = new ArrayList<>();
        for (int i = 0; i < 20; i++) {
            fleet.add(new Variance(i == 3 ? 900 : i == 12 ? 60 : 1, 2));
        }

        assertThat(EqualVariances.of(fleet).odd()).containsExactly(3, 12);
    }

    @Test
    void whereAVarianceIsZeroOrAloneThereIsNoStatistic() {
        EqualVariances one = EqualVariances.of(List.of(new Variance(3, 2)));
        EqualVariances zero = EqualVariances.of(List.of(new Variance(0, 2), new Variance(0, 2)));

        assertThat(one.statistic()).isEmpty();
        assertThat(one.chance()).isEmpty();
        assertThat(one.pooled()).isEqualTo(new Variance(3, 2));
        assertThat(zero.statistic()).isEmpty();
        assertThat(zero.pooled()).isEqualTo(new Variance(0, 4));
    }

    @Test
    void nothingAndWhatIsInfinitelyWellKnownAreRefused() {
        assertRefused("variances must be one or more: none", () -> EqualVariances.of(List.of()));
        assertRefused(
                "degrees of freedom of a variance to pool must be finite: Infinity",
                () -> EqualVariances.of(List.of(new Variance(1, Double.POSITIVE_INFINITY))));
    }

    /** In 2 000 fleets of 24 trucks alike, 1 in 100 has an odd one: 20 ± 14.7 (3.3 standard deviations). */
    @Test
    void anyTruckOfAFleetInOrderIsOddAtTheStatedRisk() {
        SplittableRandom random = new SplittableRandom(24);
        int odd = 0;
        for (int fleet = 0; fleet < 2000; fleet++) {
            List<Variance> trucks = new ArrayList<>();
            for (int truck = 0; truck < 24; truck++) {
                trucks.add(
                        of(DoubleStream.generate(random::nextGaussian).limit(3).toArray()));
            }
            odd += EqualVariances.of(trucks).odd().isEmpty() ? 0 : 1;
        }

        assertThat(odd).isBetween(5, 35);
    }
}
