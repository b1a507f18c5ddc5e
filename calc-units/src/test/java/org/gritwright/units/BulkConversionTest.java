package org.gritwright.units;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Arrays;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The bulk forms of a conversion. */
class BulkConversionTest {
    /** A factor that is no double, and one that is. */
    private static final Conversion[] CONVERSIONS = {
        Conversion.between(SpreadingUnits.POUND_PER_MILE, SpreadingUnits.KILOGRAM_PER_KILOMETER),
        Conversion.between(SpreadingUnits.TONNE, SpreadingUnits.KILOGRAM)
    };

    @ParameterizedTest
    @ValueSource(ints = {0, 1, 2, 3, 4, 5, 7, 1023, 1024, 1025, 1027, 2048, 2051, 5000})
    void equalsTheScalarBitForBit(int length) {
        double[] values = values(length);
        for (Conversion conversion : CONVERSIONS) {
            double[] expected = Arrays.stream(values).map(conversion::convert).toArray();
            double[] results = new double[length];
            conversion.convert(values, results);
            assertThat(bits(results)).isEqualTo(bits(expected));
            Arrays.fill(results, 0);
            conversion.convertUnchecked(values, results);
            assertThat(bits(results)).isEqualTo(bits(expected));
        }
    }

    @Test
    void equalsTheScalarForEveryPairOfUnits() {
        double[] values = values(9);
        double[] results = new double[9];
        for (UnitPairs.Pair pair : UnitPairs.ALL) {
            pair.conversion().convert(values, results);
            for (int i = 0; i < values.length; i++) {
                assertThat(results[i])
                        .as("%s", pair)
                        .isEqualTo(pair.conversion().convert(values[i]));
            }
        }
    }

    @Test
    void worksInPlace() {
        for (Conversion conversion : CONVERSIONS) {
            double[] values = values(2500);
            double[] expected = new double[2500];
            conversion.convert(values, expected);
            double[] unchecked = values.clone();
            conversion.convert(values, values);
            conversion.convertUnchecked(unchecked, unchecked);
            assertThat(values).isEqualTo(expected);
            assertThat(unchecked).isEqualTo(expected);
        }
    }

    @ParameterizedTest
    @ValueSource(ints = {0, 1, 2, 3, 4, 5, 6, 7, 8, 1021, 1022, 1023, 1024, 1025, 2047, 2048, 2049, 2050})
    void writesEverythingAndThenNamesTheFirstBadIndex(int badIndex) {
        for (double bad : new double[] {Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY}) {
            for (Conversion conversion : CONVERSIONS) {
                double[] values = values(2051);
                double[] expected = new double[values.length];
                values[badIndex] = bad;
                values[2050] = bad;
                conversion.convertUnchecked(values, expected);
                double[] results = new double[values.length];
                assertThatThrownBy(() -> conversion.convert(values, results))
                        .isInstanceOfSatisfying(InvalidInputException.class, e -> {
                            assertThat(e.field()).isEqualTo("value at index " + badIndex);
                            assertThat(e.value()).isEqualTo(String.valueOf(bad));
                        });
                assertThat(bits(results)).isEqualTo(bits(expected));
            }
        }
    }

    @Test
    void reportsAnOverflow() {
        Conversion toCustomary = Conversion.between(SpreadingUnits.METER, SpreadingUnits.INCH);
        double[] results = new double[2];
        assertThatThrownBy(() -> toCustomary.convert(new double[] {1, -1e308}, results))
                .isInstanceOf(InvalidInputException.class)
                .hasMessage("value at index 1 must be finite after conversion from m to in: -Infinity");
        assertThat(results).containsExactly(toCustomary.convert(1), Double.NEGATIVE_INFINITY);
    }

    @Test
    void theLargestFiniteValuesAreNotMistakenForAnOverflow() {
        double[] values = {Double.MAX_VALUE, Double.MAX_VALUE, -Double.MAX_VALUE, Double.MAX_VALUE, -0.0};
        double[] results = new double[5];
        Conversion.between(SpreadingUnits.METER, SpreadingUnits.KILOMETER).convert(values, results);
        assertThat(results[0]).isEqualTo(Double.MAX_VALUE / 1000);
    }

    @Test
    void uncheckedLetsNonFiniteValuesThrough() {
        for (Conversion conversion : CONVERSIONS) {
            double[] values = {Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY, 1};
            double[] results = new double[4];
            conversion.convertUnchecked(values, results);
            assertThat(results)
                    .containsExactly(
                            Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY, conversion.convert(1));
        }
    }

    @Test
    void lengthsThatDifferAreRefusedBeforeAnythingIsWritten() {
        double[] results = {7};
        assertThatThrownBy(() -> CONVERSIONS[0].convert(new double[] {1, 2}, results))
                .isInstanceOf(InvalidInputException.class)
                .hasMessage("length of the results must be that of the values, 2: 1");
        assertThatThrownBy(() -> CONVERSIONS[0].convertUnchecked(new double[0], results))
                .isInstanceOf(InvalidInputException.class)
                .hasMessage("length of the results must be that of the values, 0: 1");
        assertThat(results).containsExactly(7);
    }

    private static double[] values(int length) {
        return new SplittableRandom(length).doubles(length, -2000, 2000).toArray();
    }

    private static long[] bits(double[] values) {
        return Arrays.stream(values).mapToLong(Double::doubleToRawLongBits).toArray();
    }
}
