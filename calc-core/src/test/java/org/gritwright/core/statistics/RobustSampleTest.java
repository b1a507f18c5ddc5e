package org.gritwright.core.statistics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.Samples.assertRefused;

import java.util.Arrays;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Size;
import org.hipparchus.stat.descriptive.rank.Median;
import org.junit.jupiter.api.Test;

class RobustSampleTest {
    @Test
    void theMiddleOfAnOddAndOfAnEvenNumber() {
        // By hand: deviations 1, 1, 0, 0, 2, 4, 7 from 2.
        assertThat(RobustSample.of(1, 1, 2, 2, 4, 6, 9)).isEqualTo(new RobustSample(2, 1));
        assertThat(RobustSample.of(4, 1, 2, 3)).isEqualTo(new RobustSample(2.5, 1));
        assertThat(RobustSample.of(7)).isEqualTo(new RobustSample(7, 0));
    }

    @Test
    void ofNothingThereIsNoMiddle() {
        assertRefused("sample must be one number or more: none", () -> RobustSample.of());
    }

    /** Modified Z-scores 0.6745·|x − 2| ÷ 1 beyond 3.5 are outliers: |x − 2| beyond 5.18903. */
    @Test
    void anOutlierIsBeyondThreeAndAHalfModifiedScores() {
        RobustSample sample = new RobustSample(2, 1);

        assertThat(sample.isOutlier(7.1889, 0)).isFalse();
        assertThat(sample.isOutlier(7.1892, 0)).isTrue();
        assertThat(sample.isOutlier(-3.1892, 0)).isTrue();
        assertThat(sample.isOutlier(-3.1889, 0)).isFalse();
    }

    @Test
    void numbersThatHappenToBeAlikeMakeNoOutlierOfASmallDifference() {
        RobustSample alike = RobustSample.of(3, 3, 3, 3);

        assertThat(alike.isOutlier(3.17, 0.05)).isFalse();
        assertThat(alike.isOutlier(3.18, 0.05)).isTrue();
        assertThat(alike.isOutlier(3, 0)).isFalse();
    }

    @Property
    void theMedianIsThatOfHipparchus(
            @ForAll @Size(min = 1, max = 20) List<@DoubleRange(min = -1e6, max = 1e6) Double> numbers) {
        double[] values = numbers.stream().mapToDouble(one -> one).toArray();
        assertThat(RobustSample.of(values).median()).isCloseTo(new Median().evaluate(values), within(1e-6));
    }

    @Property
    void oneWrongNumberAmongFiveMovesNeitherByMuch(@ForAll @DoubleRange(min = -1e9, max = 1e9) double wrong) {
        double[] values = {1, 2, 3, 4, wrong};
        RobustSample sample = RobustSample.of(values);

        assertThat(sample.median()).isBetween(2.0, 3.0);
        assertThat(sample.deviation()).isBetween(0.5, 2.0);
        assertThat(Arrays.stream(values)).contains(sample.median());
    }
}
