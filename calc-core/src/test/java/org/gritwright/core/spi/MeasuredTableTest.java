package org.gritwright.core.spi;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.Samples.assertRefused;
import static org.gritwright.core.Samples.inches;
import static org.gritwright.units.SpreadingUnits.METER;
import static org.gritwright.units.SpreadingUnits.ONE;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Length;
import org.gritwright.core.Shipped;
import org.gritwright.units.Amounts;
import org.junit.jupiter.api.Test;

class MeasuredTableTest {
    private static final Parameter<Dimensionless> MARKS = Parameter.of(
                    "marks", Dimensionless.class, Amounts.of(-10, ONE), Amounts.of(10, ONE))
            .asList(2, 9);
    private static final Parameter<Length> HEIGHTS = Parameter.length(
                    "heights", Amounts.of(-9, METER), Amounts.of(9, METER))
            .asList(2, 9);

    private static Parameters given(List<Quantity<Dimensionless>> marks, List<Quantity<Length>> heights) {
        return Parameters.of(List.of(MARKS, HEIGHTS), Map.of("marks", marks, "heights", heights));
    }

    private static List<Quantity<Dimensionless>> marks(double... values) {
        return Arrays.stream(values).mapToObj(v -> Amounts.of(v, ONE)).toList();
    }

    private static List<Quantity<Length>> meters(double... values) {
        return Arrays.stream(values).mapToObj(v -> Amounts.of(v, METER)).toList();
    }

    private static MeasuredTable table(List<Quantity<Dimensionless>> marks, List<Quantity<Length>> heights) {
        return MeasuredTable.of(given(marks, heights), MARKS, HEIGHTS);
    }

    @Test
    void aRowIsWhatWasMeasuredAndBetweenTwoIsAStraightLine() {
        MeasuredTable table = table(marks(1, 2, 4), meters(3, 1, 5));

        assertThat(table.value(1)).isEqualTo(3);
        assertThat(table.value(2)).isEqualTo(1);
        assertThat(table.value(4)).isEqualTo(5);
        assertThat(table.value(1.25)).isCloseTo(2.5, within(1e-15));
        assertThat(table.value(3.5)).isCloseTo(4, within(1e-15));
    }

    @Test
    void valuesAreInSi() {
        assertThat(table(marks(1, 2), List.of(inches(10), inches(20))).values()).containsExactly(0.254, 0.508);
    }

    @Test
    void outsideTheTableNothingIsGuessed() {
        MeasuredTable table = table(marks(1, 2), meters(3, 4));

        assertRefused("value of the table must be within 1.0 to 2.0: 0.999", () -> table.value(0.999));
        assertRefused("value of the table must be within 1.0 to 2.0: 2.001", () -> table.value(2.001));
        assertRefused("value of the table must be within 1.0 to 2.0: NaN", () -> table.value(Double.NaN));
    }

    @Test
    void rowsMayGetOtherValues() {
        MeasuredTable sums = table(marks(1, 2, 4), meters(3, 1, 5)).with((mark, height) -> mark + 2 * height);

        assertThat(sums.values()).containsExactly(7.0, 4.0, 14.0);
        assertThat(sums.value(3)).isCloseTo(9, within(1e-15));
    }

    @Test
    void theFirstFallIsFound() {
        assertThat(table(marks(1, 2, 4), meters(3, 1, 0)).firstFall()).hasValue(1);
        assertThat(table(marks(1, 2, 4), meters(3, 3, 2)).firstFall()).hasValue(2);
        assertThat(table(marks(1, 2, 4), meters(3, 3, 3)).firstFall()).isEmpty();
    }

    @Test
    void columnsGoTogether() {
        assertRefused("heights must be as many as marks, 3: 2", () -> table(marks(1, 2, 4), meters(3, 1)));
        assertRefused("marks must be above the one before, 2: 2", () -> table(marks(1, 2, 2), meters(3, 1, 4)));
        assertRefused("marks must be above the one before, 2: 1", () -> table(marks(2, 1), meters(3, 4)));
    }

    @Test
    void aColumnThatNeverFallsIsCheckedForIt() {
        assertThat(MeasuredTable.neverFalling(given(marks(1, 2, 4), meters(1, 1, 5)), MARKS, HEIGHTS)
                        .value(4))
                .isEqualTo(5);
        assertRefused(
                "heights must be not below the one before, 3 m: 2.5 m",
                () -> MeasuredTable.neverFalling(given(marks(1, 2, 4), meters(1, 3, 2.5)), MARKS, HEIGHTS));
    }

    @Test
    void arrivesAsItWas() {
        assertThat(Shipped.copyOf(table(marks(1, 2), meters(3, 4))).value(1.5)).isEqualTo(3.5);
    }
}
