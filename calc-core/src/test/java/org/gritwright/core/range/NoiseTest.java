package org.gritwright.core.range;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.gritwright.core.statistics.MonotoneRegression.Row;
import org.junit.jupiter.api.Test;

class NoiseTest {
    private static final Noise NOISE = new Noise(0.5, 3, 0.1);

    private static List<Row> rows(double... pairs) {
        List<Row> rows = new ArrayList<>();
        for (int i = 0; i < pairs.length; i += 2) {
            rows.add(new Row(pairs[i], 1, pairs[i + 1], 0, 1, pairs[i + 1], rows.size(), 1));
        }
        return rows;
    }

    /** Student's t for 3 degrees of freedom, 5 % to one side: 2.353 (the usual tables, from memory). */
    @Test
    void theMeansOfOneSpeedDifferByScatterAndResolution() {
        assertThat(NOISE.allowance(2, 4, 0.05)).isCloseTo(2.353363 * 0.5 * Math.sqrt(0.75) + 0.1, within(1e-6));
        assertThat(NOISE.isKnown()).isTrue();
    }

    @Test
    void withoutScatterOrRepeatsTheyDifferByTheResolution() {
        assertThat(new Noise(0, 3, 0.1).allowance(2, 4, 0.05)).isEqualTo(0.1);
        assertThat(new Noise(0, 0, 0.1).allowance(2, 4, 0.05)).isEqualTo(0.1);
        assertThat(new Noise(0, 0, 0.1).isKnown()).isFalse();
        assertThat(NOISE.ofResolution()).isCloseTo(0.01 / 12, within(1e-15));
    }

    /** The chance is shared by the three steps: t for 3 degrees of freedom, 2.5 % ÷ 3, is 4.8567; by √2 · 0.5 and 0.1 more, 3.534. */
    @Test
    void aRowIsOnThePlateauIfItIsWithinNoise() {
        assertThat(Knee.of(rows(10, 1, 20, 20, 30, 30, 40, 33.53), NOISE).first())
                .isEqualTo(2);
        assertThat(Knee.of(rows(10, 1, 20, 20, 30, 30, 40, 33.54), NOISE).first())
                .isEqualTo(3);
    }

    /** 30 at 30 and at 40; what is missing by the reading, 0.1, takes 0.2 at a gain of 0.5, of 1.5 and 0.5 the least. */
    @Test
    void theKneeMayBeLaterByWhatTheLeastGainBelowTakes() {
        Noise exact = new Noise(0, 3, 0.1);

        assertThat(Knee.of(rows(0, 10, 10, 15, 20, 30, 30, 30), exact)).isEqualTo(new Knee(1, 2, 20 + 0.1 / 0.5));
        assertThat(Knee.of(rows(0, 10, 10, 25, 20, 30, 30, 30), exact)).isEqualTo(new Knee(1, 2, 20 + 0.1 / 0.5));
        assertThat(Knee.of(rows(0, 10, 10, 15, 20, 30, 30, 29.95), exact).end())
                .isCloseTo(20 + 0.05 / 0.5, within(1e-9));
    }

    /** A reversal below is no gain to go by; nor is there one below the first two. */
    @Test
    void theKneeGoesByTheGainThatThereIs() {
        Noise exact = new Noise(0, 3, 0.1);

        assertThat(Knee.of(rows(0, 20, 10, 15, 20, 30, 30, 30), exact).end()).isCloseTo(20 + 0.1 / 1.5, within(1e-12));
        assertThat(Knee.of(rows(0, 15, 10, 15, 20, 30, 30, 30), exact).end()).isCloseTo(20 + 0.1 / 1.5, within(1e-12));
        assertThat(Knee.of(rows(10, 15, 20, 30, 30, 30), exact)).isEqualTo(new Knee(0, 1, 20 + 0.1 / 1.5));
        assertThat(Knee.of(rows(10, 30, 20, 30, 30, 30), exact)).isEqualTo(new Knee(-1, 0, 10));
        assertThat(Knee.of(rows(10, 30), exact)).isEqualTo(new Knee(-1, 0, 10));
    }
}
