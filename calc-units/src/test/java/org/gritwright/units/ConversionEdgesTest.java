package org.gritwright.units;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What a conversion does at the edges of the number line. */
class ConversionEdgesTest {
    private final Conversion toMetric =
            Conversion.between(SpreadingUnits.POUND_PER_MILE, SpreadingUnits.KILOGRAM_PER_KILOMETER);
    private final Conversion toCustomary =
            Conversion.between(SpreadingUnits.KILOGRAM_PER_KILOMETER, SpreadingUnits.POUND_PER_MILE);

    @Test
    void everyPairOfUnitsOfOneKindIsTried() {
        assertThat(UnitPairs.ALL).hasSizeGreaterThan(800);
    }

    @Test
    void zeroKeepsItsSignInEveryConversion() {
        for (UnitPairs.Pair pair : UnitPairs.ALL) {
            assertThat(bits(pair.conversion().convert(0.0))).as("0 of %s", pair).isEqualTo(bits(0.0));
            assertThat(bits(pair.conversion().convert(-0.0)))
                    .as("-0 of %s", pair)
                    .isEqualTo(bits(-0.0));
        }
    }

    @Test
    void aResultThatUnderflowsKeepsItsSign() {
        assertThat(bits(toMetric.convert(-Double.MIN_VALUE))).isEqualTo(bits(-0.0));
        assertThat(bits(toMetric.convert(Double.MIN_VALUE))).isEqualTo(bits(0.0));
    }

    @Test
    void aConversionToTheSameUnitChangesNothing() {
        for (UnitPairs.Pair pair : UnitPairs.ALL) {
            if (pair.from().equals(pair.to())) {
                assertThat(pair.conversion().exactFactor()).isEqualTo(ExactFactor.of(1, 1));
                assertThat(pair.conversion().convert(Double.MIN_VALUE)).isEqualTo(Double.MIN_VALUE);
                assertThat(pair.conversion().convert(-Double.MAX_VALUE)).isEqualTo(-Double.MAX_VALUE);
            }
        }
    }

    @Test
    void thereAndBackIsTheReciprocalFactor() {
        for (UnitPairs.Pair pair : UnitPairs.ALL) {
            ExactFactor back =
                    UnitPairs.between(pair.to().symbol(), pair.from().symbol()).exactFactor();
            assertThat(ExactFactor.of(1, 1).dividedBy(pair.conversion().exactFactor()))
                    .isEqualTo(back);
        }
    }

    @Test
    void anOverflowIsAnErrorThatNamesTheValueAndBothUnits() {
        assertThatThrownBy(() -> toCustomary.convert(1e308))
                .isInstanceOf(InvalidInputException.class)
                .hasMessage("value must be finite after conversion from kg/km to lb/mi: 1.0E308");
    }

    @Test
    void theLargestValueThatFitsIsConverted() {
        double largest = Double.MAX_VALUE * toMetric.convert(1);
        assertThatCode(() -> toCustomary.convert(largest * (1 - 0x1p-50))).doesNotThrowAnyException();
        assertThatThrownBy(() -> toCustomary.convert(largest * (1 + 0x1p-50)))
                .isInstanceOf(InvalidInputException.class);
    }

    @ParameterizedTest
    @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY})
    void aValueThatIsNotFiniteIsAnError(double value) {
        for (Conversion conversion :
                new Conversion[] {toMetric, UnitPairs.between("t", "kg"), UnitPairs.between("s", "s")}) {
            assertThatThrownBy(() -> conversion.convert(value))
                    .isInstanceOf(InvalidInputException.class)
                    .hasMessageContaining(String.valueOf(value));
        }
    }

    @Test
    void aRatioIsCalledOneInMessages() {
        Conversion percent = Conversion.between(SpreadingUnits.PERCENT, SpreadingUnits.ONE);
        assertThat(percent).hasToString("% to one: × 1/100");
        assertThat(toMetric).hasToString("lb/mi to kg/km: × 4123567/14630400");
    }

    @Test
    void conversionsAreEqualBetweenTheSameUnitsOnly() {
        Conversion again = Conversion.between(SpreadingUnits.POUND_PER_MILE, SpreadingUnits.KILOGRAM_PER_KILOMETER);
        assertThat(again).isEqualTo(toMetric).hasSameHashCodeAs(toMetric);
        assertThat(UnitPairs.between("t", "kg")).doesNotHaveSameHashCodeAs(toMetric);
        assertThat(again)
                .isNotEqualTo(Conversion.between(
                        SpreadingUnits.KILOGRAM_PER_KILOMETER, SpreadingUnits.KILOGRAM_PER_KILOMETER))
                .isNotEqualTo(Conversion.between(SpreadingUnits.POUND_PER_MILE, SpreadingUnits.POUND_PER_MILE))
                .isNotEqualTo("lb/mi to kg/km: × 4123567/14630400");
    }

    private static long bits(double value) {
        return Double.doubleToRawLongBits(value);
    }
}
