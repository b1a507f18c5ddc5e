package org.gritwright.units;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.List;
import java.util.SplittableRandom;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Example;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.RandomDistribution;
import net.jqwik.api.Tag;

/** A number is printed by JSON's grammar with the fewest digits that read back. */
@Tag("locale")
class ShortestDecimalTest {

    @Property(tries = 15_000)
    void thePrintedNumberIsJsonAndReadsBackAndNoShorterOneDoes(@ForAll("finite") double value) {
        String text = DecimalText.print(value);
        assertThat(text).matches("-?(0|[1-9][0-9]*)(\\.[0-9]+)?(e-?[1-9][0-9]*)?");
        assertThat(Double.parseDouble(text)).isEqualTo(value);
        assertNoShorterDecimalReadsBack(
                value, new BigDecimal(text).stripTrailingZeros().precision());
    }

    /** With one digit fewer there are two decimals next to the value; neither may read back. */
    private static void assertNoShorterDecimalReadsBack(double value, int digits) {
        if (digits > 1) {
            for (RoundingMode mode : List.of(RoundingMode.FLOOR, RoundingMode.CEILING)) {
                BigDecimal shorter = new BigDecimal(value).round(new MathContext(digits - 1, mode));
                assertThat(Double.parseDouble(shorter.toString())).isNotEqualTo(value);
            }
        }
    }

    @Property(tries = 5_000)
    void theNearestOfTheShortDecimalsIsPrinted(@ForAll("finite") double value) {
        BigDecimal printed = new BigDecimal(DecimalText.print(value)).stripTrailingZeros();
        BigDecimal exact = new BigDecimal(value);
        BigDecimal nearest = exact.round(new MathContext(printed.precision(), RoundingMode.HALF_EVEN));
        if (Double.parseDouble(nearest.toString()) == value) {
            assertThat(printed.subtract(exact).abs())
                    .isEqualByComparingTo(nearest.subtract(exact).abs());
        }
    }

    /** Where doubles lie half as far apart below as above, and where they come to an end. */
    @Example
    void aroundEachPowerOfTwoTheNearestOfTheShortestIsPrinted() {
        for (int exponent = Double.MIN_EXPONENT - 52; exponent <= Double.MAX_EXPONENT; exponent++) {
            double power = Math.scalb(1.0, exponent);
            for (double value : new double[] {Math.nextDown(power), power, Math.nextUp(power)}) {
                if (value > 0) {
                    assertThat(DecimalText.print(value)).isEqualTo(searched(value));
                }
            }
        }
    }

    @Example
    void aroundRoundDecimalsOfAnySizeTheNearestOfTheShortestIsPrinted() {
        for (int exponent = -325; exponent <= 308; exponent++) {
            for (String digits : List.of("1", "5", "9", "99", "4503599627370497", "9007199254740993")) {
                double value = Double.parseDouble(digits + "e" + exponent);
                if (value > 0 && value < Double.MAX_VALUE) {
                    assertThat(DecimalText.print(value)).isEqualTo(searched(value));
                    assertThat(DecimalText.print(Math.nextUp(value))).isEqualTo(searched(Math.nextUp(value)));
                }
            }
        }
    }

    /** The same by trying all numbers of digits. */
    private static String searched(double value) {
        BigDecimal exact = new BigDecimal(value);
        for (int digits = 1; ; digits++) {
            for (RoundingMode mode : List.of(RoundingMode.HALF_EVEN, RoundingMode.UP, RoundingMode.DOWN)) {
                BigDecimal candidate = exact.round(new MathContext(digits, mode));
                if (candidate.doubleValue() == value) {
                    BigDecimal shortest = candidate.stripTrailingZeros();
                    int pointAt = shortest.precision() - shortest.scale();
                    return pointAt <= 21 && pointAt > -7
                            ? shortest.toPlainString()
                            : shortest.scaleByPowerOfTen(1 - pointAt).toPlainString() + "e" + (pointAt - 1);
                }
            }
        }
    }

    @Example
    void numbersOfTheTradePrintAsWritten() {
        SplittableRandom random = new SplittableRandom(20);
        for (int i = 0; i < 20_000; i++) {
            BigDecimal written = BigDecimal.valueOf(random.nextLong(-100_000_000, 100_000_000), random.nextInt(0, 6));
            assertThat(DecimalText.print(written.doubleValue()))
                    .isEqualTo(
                            written.signum() == 0
                                    ? "0"
                                    : written.stripTrailingZeros().toPlainString());
        }
    }

    @Example
    void plainDigitsGoFromOneTenMillionthToTwentyOneDigits() {
        assertThat(DecimalText.print(300)).isEqualTo("300");
        assertThat(DecimalText.print(27.24)).isEqualTo("27.24");
        assertThat(DecimalText.print(-0.0)).isEqualTo("0");
        assertThat(DecimalText.print(1e20)).isEqualTo("100000000000000000000");
        assertThat(DecimalText.print(1e21)).isEqualTo("1e21");
        assertThat(DecimalText.print(-1.5e21)).isEqualTo("-1.5e21");
        assertThat(DecimalText.print(1e-7)).isEqualTo("0.0000001");
        assertThat(DecimalText.print(1.25e-7)).isEqualTo("0.000000125");
        assertThat(DecimalText.print(1e-8)).isEqualTo("1e-8");
        assertThat(DecimalText.print(-1.25e-8)).isEqualTo("-1.25e-8");
        assertThat(DecimalText.print(Double.MAX_VALUE)).isEqualTo("1.7976931348623157e308");
    }

    @Example
    void theLongTextsOfOldJavaAreShortened() {
        // JDK 17 writes 1.9999999999999998E23, 5.6843418860808015E-14 and 4.9E-324 for these.
        assertThat(DecimalText.print(Double.parseDouble("2e23"))).isEqualTo("2e23");
        assertThat(DecimalText.print(0x1p-44)).isEqualTo("5.684341886080802e-14");
        assertThat(DecimalText.print(Double.MIN_VALUE)).isEqualTo("5e-324");
    }

    @Provide
    Arbitrary<Double> finite() {
        return Arbitraries.oneOf(
                        Arbitraries.longs()
                                .withDistribution(RandomDistribution.uniform())
                                .map(Double::longBitsToDouble),
                        Arbitraries.longs().between(0, 1L << 52).map(Double::longBitsToDouble),
                        Arbitraries.integers().between(-1074, 1023).map(exponent -> Math.scalb(1.0, exponent)),
                        Arbitraries.bigDecimals().map(BigDecimal::doubleValue))
                .filter(Double::isFinite);
    }
}
