package org.gritwright.units;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Mass;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Example;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.RandomDistribution;
import net.jqwik.api.Tag;
import tech.units.indriya.quantity.Quantities;

/** What is printed reads back as the same value and unit. */
@Tag("locale")
class TextRoundTripTest {

    @Property(tries = 20_000)
    void everyFiniteDoubleInEveryUnitReadsBack(@ForAll("finite") double value, @ForAll("rows") UnitSymbol<?> row) {
        assertReadsBack(value, row);
    }

    private static <Q extends Quantity<Q>> void assertReadsBack(double value, UnitSymbol<Q> row) {
        Quantity<Q> quantity = Amounts.of(value, row.unit());
        String text = Amounts.format(quantity);
        Quantity<Q> read = Amounts.parse(row.kind(), text);
        assertThat(read).as(text).isEqualTo(quantity);
        assertThat(read.getUnit()).isSameAs(row.unit());
        // A quantity has no negative zero; adding 0 turns -0.0 into 0.0 and changes nothing else.
        assertThat(Double.doubleToRawLongBits(Amounts.in(read, row.unit())))
                .as(text)
                .isEqualTo(Double.doubleToRawLongBits(value + 0.0));
        assertThat(Amounts.parseAny(text)).isEqualTo(quantity);
        assertThat(Amounts.format(read)).isEqualTo(text);
    }

    @Example
    void theEdgesOfADoubleReadBackInEveryUnit() {
        for (UnitSymbol<?> row : UnitSymbol.all()) {
            for (double value :
                    new double[] {0, 0.1, Double.MIN_VALUE, Double.MIN_NORMAL, Double.MAX_VALUE, 1e21, 1e22}) {
                assertReadsBack(value, row);
                assertReadsBack(-value, row);
            }
        }
    }

    @Example
    void negativeZeroBecomesZero() {
        assertThat(Amounts.format(Amounts.of(-0.0, SpreadingUnits.POUND))).isEqualTo("0 lb");
        assertThat(Amounts.format(Amounts.parse(Mass.class, "-0 lb"))).isEqualTo("0 lb");
        assertThat(Amounts.format(Amounts.parse(Mass.class, "-0.00e5 lb"))).isEqualTo("0 lb");
    }

    @Example
    void aValueWithoutUnitIsARatio() {
        assertThat(Amounts.format(Amounts.of(7, SpreadingUnits.ONE))).isEqualTo("7");
        assertThat(Amounts.parse(Dimensionless.class, "7")).isEqualTo(Amounts.of(7, SpreadingUnits.ONE));
        assertThat(Amounts.parseAny("0.07")).isEqualTo(Amounts.of(0.07, SpreadingUnits.ONE));
    }

    @Example
    void numbersOfOtherTypesPrintAsTheirNearestDouble() {
        assertThat(Amounts.format(Quantities.getQuantity(new java.math.BigDecimal("0.10"), SpreadingUnits.POUND)))
                .isEqualTo("0.1 lb");
        assertThat(Amounts.format(Quantities.getQuantity(Long.MAX_VALUE, SpreadingUnits.POUND)))
                .isEqualTo("9223372036854775807 lb".replace("5807", "6000"));
    }

    @Example
    void aQuantityBeyondTheRangeOfADoubleIsNotPrinted() {
        Quantity<Mass> huge = Quantities.getQuantity(java.math.BigInteger.TEN.pow(400), SpreadingUnits.POUND);
        assertThatThrownBy(() -> Amounts.format(huge))
                .isInstanceOf(InvalidInputException.class)
                .hasMessage("value must be finite: Infinity in \"lb\"");
    }

    @Provide
    Arbitrary<UnitSymbol<?>> rows() {
        return Arbitraries.of(UnitSymbol.all());
    }

    @Provide
    Arbitrary<Double> finite() {
        return Arbitraries.oneOf(
                        Arbitraries.longs()
                                .withDistribution(RandomDistribution.uniform())
                                .map(Double::longBitsToDouble),
                        Arbitraries.longs().map(Double::longBitsToDouble),
                        Arbitraries.bigDecimals().map(java.math.BigDecimal::doubleValue))
                .filter(Double::isFinite);
    }
}
