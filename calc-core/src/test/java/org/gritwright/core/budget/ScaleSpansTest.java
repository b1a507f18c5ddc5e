package org.gritwright.core.budget;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.LiquidSamples.read;
import static org.gritwright.core.LiquidSamples.weighed;

import java.util.List;
import org.gritwright.core.observation.ErrorSource;
import org.junit.jupiter.api.Test;

class ScaleSpansTest {
    /** 0.02 lb/gal of 9.8. */
    private static final double DENSITY = 0.02 / 9.8;

    private static ScaleSpans ofWeighed(double weight) {
        return ScaleSpans.of(List.of(weighed(49, 9.8)), new double[] {weight});
    }

    @Test
    void oneDensityIsWrongInAllCatchesTogether() {
        ScaleSpans spans = ScaleSpans.of(List.of(weighed(49, 9.8), weighed(20, 9.8)), new double[] {0.7, 0.3});

        assertThat(spans.density()).isCloseTo(DENSITY, within(1e-15));
        assertThat(ofWeighed(0.7).plus(ofWeighed(0.3)).density()).isCloseTo(DENSITY, within(1e-15));
    }

    @Test
    void asPartsOfAWholeItIsRelative() {
        assertThat(ofWeighed(20).plus(ofWeighed(30)).over(50).density()).isCloseTo(DENSITY, within(1e-15));
    }

    @Test
    void whatIsReadNeedsNoDensity() {
        ScaleSpans spans = ScaleSpans.of(List.of(weighed(49, 9.8), read(5)), new double[] {0.4, 0.6});

        assertThat(spans.density()).isCloseTo(0.4 * DENSITY, within(1e-15));
        assertThat(spans.limits().get(ErrorSource.spanOf(read(5))).relative()).isCloseTo(0.6 * 0.03 / 5, within(1e-15));
    }

    @Test
    void itsSignIsLost() {
        assertThat(ofWeighed(-0.2).density()).isCloseTo(0.2 * DENSITY, within(1e-15));
    }
}
