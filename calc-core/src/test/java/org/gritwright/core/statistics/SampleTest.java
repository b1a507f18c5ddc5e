package org.gritwright.core.statistics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.Samples.assertRefused;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Size;
import org.gritwright.core.Strd;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SampleTest {
    /**
     * Certified values of the NIST Statistical Reference Datasets, but for the deviations of NumAcc3, NumAcc4, Mavro and
     * Michelso: what is certified is that of the decimal numbers; these are exact for the doubles next to them (derived).
     */
    @ParameterizedTest
    @CsvSource({
        "numacc1, 10000002, 1",
        "numacc2, 1.2, 0.1",
        "numacc3, 1000000.2, 0.1000000000349246",
        "numacc4, 10000000.2, 0.10000000055879354",
        "lew, -177.435, 277.332168044316",
        "mavro, 2.001856, 0.00042912345400308541",
        "michelso, 299.8524, 0.07901054781905066715"
    })
    void meanAndDeviationOfTheReferenceSetsComeOutToFourteenDigits(String set, double mean, double deviation) {
        Sample sample = Sample.of(Strd.column(set, "y"));

        assertThat(sample.mean()).isCloseTo(mean, within(Math.abs(mean) * 1e-15));
        assertThat(sample.deviation().orElseThrow()).isCloseTo(deviation, within(deviation * 1e-14));
    }

    @Test
    void ofOneNumberTheDeviationIsAbsentAndNotZero() {
        assertThat(Sample.of(5)).isEqualTo(new Sample(1, 5, OptionalDouble.empty()));
    }

    @Test
    void ofEqualNumbersTheDeviationIsZeroAndThere() {
        assertThat(Sample.of(5, 5)).isEqualTo(new Sample(2, 5, OptionalDouble.of(0)));
    }

    @Property(tries = 200, seed = "1")
    void aFarOriginCostsNoMoreThanTheDoublesThemselves(
            @ForAll @Size(min = 2, max = 20) List<@DoubleRange(min = 0, max = 1) Double> near) {
        double[] values = near.stream().mapToDouble(value -> 1e7 + value).toArray();
        MathContext digits = MathContext.DECIMAL128;
        BigDecimal n = BigDecimal.valueOf(values.length);
        BigDecimal mean = Arrays.stream(values)
                .mapToObj(BigDecimal::new)
                .reduce(BigDecimal.ZERO, BigDecimal::add)
                .divide(n, digits);
        double deviation = Arrays.stream(values)
                .mapToObj(value -> new BigDecimal(value).subtract(mean).pow(2))
                .reduce(BigDecimal.ZERO, BigDecimal::add)
                .divide(n.subtract(BigDecimal.ONE), digits)
                .sqrt(digits)
                .doubleValue();

        assertThat(Sample.of(values).mean()).isCloseTo(mean.doubleValue(), within(2e-9));
        assertThat(Sample.of(values).deviation().orElseThrow()).isCloseTo(deviation, within(deviation * 1e-13));
    }

    @Test
    void refusesWhatIsNoSample() {
        assertRefused("sample must be one number or more: none", Sample::of);
        assertRefused("number of a sample must be finite: NaN", () -> Sample.of(1, Double.NaN));
        assertRefused("mean must be finite: NaN", () -> Sample.of(Double.MAX_VALUE, Double.MAX_VALUE));
        assertRefused("sample deviation must be finite: Infinity", () -> Sample.of(1e200, -1e200));
    }

    @Test
    void aSampleHoldsTogether() {
        assertRefused(
                "sample must be one number without a deviation, or more with a deviation of 0 or more: 0 numbers,"
                        + " deviation none",
                () -> new Sample(0, 1, OptionalDouble.empty()));
        assertRefused(
                "sample must be one number without a deviation, or more with a deviation of 0 or more: 2 numbers,"
                        + " deviation none",
                () -> new Sample(2, 1, OptionalDouble.empty()));
        assertRefused(
                "sample must be one number without a deviation, or more with a deviation of 0 or more: 1 numbers,"
                        + " deviation 0.0",
                () -> new Sample(1, 1, OptionalDouble.of(0)));
        assertRefused(
                "sample must be one number without a deviation, or more with a deviation of 0 or more: 2 numbers,"
                        + " deviation -1.0",
                () -> new Sample(2, 1, OptionalDouble.of(-1)));
    }

    /** Upper critical values of χ² at 0.01: 6.635, 9.210 and 13.277 for 1, 2 and 4 (NIST/SEMATECH e-Handbook, 1.3.6.7.4). */
    @Test
    void aDeviationMayComeOutLargerByTheQuantileOfChiSquare() {
        assertThat(Sample.deviationFactor(1, 0.01)).isCloseTo(Math.sqrt(6.635), within(1e-4));
        assertThat(Sample.deviationFactor(2, 0.01)).isCloseTo(Math.sqrt(9.210 / 2), within(1e-4));
        assertThat(Sample.deviationFactor(4, 0.01)).isCloseTo(Math.sqrt(13.277 / 4), within(1e-4));
        assertThatThrownBy(() -> Sample.deviationFactor(0, 0.01)).hasMessage("degrees of freedom must be 1 or more: 0");
        assertThatThrownBy(() -> Sample.deviationFactor(2, 1))
                .hasMessage("risk must be greater than 0 and below 1: 1.0");
    }
}
