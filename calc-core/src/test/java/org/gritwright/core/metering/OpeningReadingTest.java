package org.gritwright.core.metering;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.Samples.assertRefused;
import static org.gritwright.core.Samples.foreign;
import static org.gritwright.core.Samples.inches;
import static org.gritwright.core.Samples.pounds;
import static org.gritwright.units.SpreadingUnits.CENTIMETRE;
import static org.gritwright.units.SpreadingUnits.INCH;
import static org.gritwright.units.SpreadingUnits.MILLIMETRE;
import static org.gritwright.units.SpreadingUnits.ONE;
import static org.gritwright.units.SpreadingUnits.PERCENT;

import java.util.Optional;
import javax.measure.Quantity;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Scale;
import org.gritwright.units.Amounts;
import org.junit.jupiter.api.Test;

class OpeningReadingTest {
    private static final Quantity<?> MARK = Amounts.of(4, ONE);

    @Test
    void isALengthOrABareNumber() {
        assertThat(OpeningReading.isLength(inches(2))).isTrue();
        assertThat(OpeningReading.isLength(MARK)).isFalse();
    }

    @Test
    void nothingElseIsAReading() {
        String message = "gate opening must be a length, or a bare number for a setting: 2 lb";

        assertRefused(message, () -> OpeningReading.isLength(pounds(2)));
        assertRefused(message, () -> OpeningReading.check(pounds(2)));
        assertRefused(message, () -> OpeningReading.si(pounds(2)));
        assertRefused(message, () -> OpeningReading.position(pounds(2)));
        assertRefused(message, () -> OpeningReading.ofSi(2, pounds(2)));
    }

    /** It would pass for the mark 0.03. */
    @Test
    void aPercentageIsNoPaintedMark() {
        String message = "gate opening must be a length, or a bare number for a setting: 3 %";

        assertRefused(message, () -> OpeningReading.isLength(Amounts.of(3, PERCENT)));
        assertRefused(message, () -> OpeningReading.check(Amounts.of(3, PERCENT)));
        assertRefused(message, () -> OpeningReading.position(Amounts.of(3, PERCENT)));
    }

    @Test
    void isNotNegative() {
        assertThat(OpeningReading.check(inches(0))).isEqualTo(inches(0));
        assertThat(OpeningReading.check(MARK)).isSameAs(MARK);
        assertRefused("gate opening must be 0 or more: -2 in", () -> OpeningReading.check(inches(-2)));
        assertRefused("gate opening must be 0 or more: -4", () -> OpeningReading.check(Amounts.of(-4, ONE)));
        assertRefused(
                "gate opening must be a finite length: NaN in \"in\"",
                () -> OpeningReading.check(foreign(Double.NaN, INCH)));
    }

    @Test
    void isANumberOfMetresOrTheSetting() {
        assertThat(OpeningReading.si(inches(2))).isCloseTo(0.0508, within(1e-17));
        assertThat(OpeningReading.si(MARK)).isEqualTo(4);
    }

    @Test
    void aNumberBecomesAReadingInTheUnitOfAnother() {
        assertThat(OpeningReading.ofSi(0.0508, inches(7))).isEqualTo(inches(2));
        assertThat(OpeningReading.ofSi(3, MARK)).isEqualTo(Amounts.of(3, ONE));
    }

    @Test
    void twoInchesAndFiftyPointEightMillimetresAreOnePosition() {
        assertThat(OpeningReading.position(inches(2)))
                .isEqualTo(OpeningReading.position(Amounts.of(50.8, MILLIMETRE)))
                .isEqualTo(OpeningReading.position(Amounts.of(5.08, CENTIMETRE)))
                .isEqualTo(new OpeningReading.Position(true, 50_800_000));
    }

    @Test
    void aMetreAndTheMarkOneAreTwoPositions() {
        assertThat(OpeningReading.position(Amounts.of(1000, MILLIMETRE)))
                .isNotEqualTo(OpeningReading.position(Amounts.of(1, ONE)));
    }

    @Test
    void readingsAreTheSameWhereTheirPositionsAre() {
        Optional<Quantity<?>> twoInches = Optional.of(inches(2));

        assertThat(OpeningReading.areSame(twoInches, Optional.of(Amounts.of(50.8, MILLIMETRE))))
                .isTrue();
        assertThat(OpeningReading.areSame(twoInches, Optional.of(inches(2.001))))
                .isFalse();
        assertThat(OpeningReading.areSame(twoInches, Optional.of(Amounts.of(0.0508, ONE))))
                .isFalse();
        assertThat(OpeningReading.areSame(twoInches, Optional.empty())).isFalse();
        assertThat(OpeningReading.areSame(Optional.empty(), Optional.empty())).isTrue();
    }

    @Property
    void aReadingSurvivesTheWayThereAndBack(@ForAll @Scale(6) @DoubleRange(min = 0, max = 100) double inches) {
        assertThat(OpeningReading.ofSi(OpeningReading.si(inches(inches)), inches(1))
                        .getValue()
                        .doubleValue())
                .isCloseTo(inches, within(1e-13));
    }

    @Property
    void theUnitOfAReadingIsNoOtherPosition(@ForAll @Scale(6) @DoubleRange(min = 0, max = 2000) double millimetres) {
        assertThat(OpeningReading.position(Amounts.of(Math.rint(millimetres * 1000) / 1000, MILLIMETRE)))
                .isEqualTo(OpeningReading.position(Amounts.of(Math.rint(millimetres * 1000) / 10_000, CENTIMETRE)));
    }
}
