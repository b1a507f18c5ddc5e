package org.gritwright.units;

import static org.assertj.core.api.Assertions.assertThat;
import static org.gritwright.units.samples.Samples.pounds;

import java.math.BigDecimal;
import javax.measure.Quantity;
import javax.measure.quantity.Mass;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;

class RoundedLawsTest {
    @Property
    void toResolutionIsIdempotent(
            @ForAll @DoubleRange(min = -1e6, max = 1e6) double number, @ForAll @IntRange(min = 1, max = 999) int step) {
        Quantity<Mass> resolution = pounds(step / 1000.0);
        Quantity<Mass> rounded = Rounded.toResolution(pounds(number), resolution);

        assertThat(Rounded.toResolution(rounded, resolution)).isEqualTo(rounded);
    }

    @Property
    void toResolutionMovesByHalfAStepAtMost(
            @ForAll @DoubleRange(min = -1e6, max = 1e6) double number, @ForAll @IntRange(min = 1, max = 999) int step) {
        Quantity<Mass> resolution = pounds(step / 1000.0);
        Quantity<Mass> rounded = Rounded.toResolution(pounds(number), resolution);

        BigDecimal moved = BigDecimal.valueOf(rounded.getValue().doubleValue())
                .subtract(BigDecimal.valueOf(number))
                .abs();
        assertThat(moved.multiply(BigDecimal.valueOf(2))).isLessThanOrEqualTo(BigDecimal.valueOf(step / 1000.0));
    }
}
