package org.gritwright.units;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.math.BigDecimal;
import javax.measure.Quantity;
import javax.measure.Unit;
import javax.measure.quantity.Force;
import javax.measure.quantity.Length;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Speed;
import net.jqwik.api.Example;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.gritwright.units.quantity.ApplicationRate;
import org.gritwright.units.quantity.LaneCount;
import org.gritwright.units.quantity.PulsesPerRevolution;
import tech.units.indriya.quantity.Quantities;
import tech.units.indriya.unit.Units;

/** Making quantities and taking their numbers. */
class AmountsTest {

    @Example
    void aQuantityKeepsValueAndUnitAsGiven() {
        Quantity<ApplicationRate> rate = Amounts.of(300.5, SpreadingUnits.POUND_PER_MILE);
        assertThat(rate.getValue().doubleValue()).isEqualTo(300.5);
        assertThat(rate.getUnit()).isSameAs(SpreadingUnits.POUND_PER_MILE);
        assertThat(rate).isEqualTo(Amounts.of(300.5, SpreadingUnits.POUND_PER_MILE));
        assertThat(rate).isNotEqualTo(Amounts.of(300.25, SpreadingUnits.POUND_PER_MILE));
        assertThat(Amounts.of(1, SpreadingUnits.KILOMETER)).isNotEqualTo(Amounts.of(1000, SpreadingUnits.METER));
    }

    @Example
    void aNumberThatIsNotFiniteMakesNoQuantity() {
        for (double value : new double[] {Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY}) {
            assertThatThrownBy(() -> Amounts.of(value, SpreadingUnits.POUND))
                    .isInstanceOf(InvalidInputException.class)
                    .hasMessage("value must be finite: " + value + " in \"lb\"");
        }
        assertThatThrownBy(() -> Amounts.of(Double.NaN, Units.NEWTON))
                .isInstanceOf(InvalidInputException.class)
                .hasMessage("value must be finite: NaN in a unit of a dimension that no kind has");
    }

    @Example
    void inGivesTheNumberInAnotherUnitAsTheConversionDoes() {
        assertThat(Amounts.in(Amounts.of(5, SpreadingUnits.MILE), SpreadingUnits.FOOT))
                .isEqualTo(26_400);
        assertThat(Amounts.in(Amounts.of(85, SpreadingUnits.KILOGRAM_PER_KILOMETER), SpreadingUnits.POUND_PER_MILE))
                .isEqualTo(UnitPairs.between("kg/km", "lb/mi").convert(85));
    }

    @Property(tries = 2_000)
    void inTheOwnUnitIsTheNumberAsGiven(@ForAll double value) {
        assertThat(Amounts.in(Amounts.of(value, SpreadingUnits.INCH), SpreadingUnits.INCH))
                .isEqualTo(value + 0.0);
    }

    @Example
    void theSiValueOfEveryUnitIsAsAccurateAsAConversionAndGoesBack() {
        for (UnitSymbol<?> row : UnitSymbol.all()) {
            if (UnitPairs.hasFactor(row)) {
                assertSiIsAccurate(row);
            }
        }
    }

    private static <Q extends Quantity<Q>> void assertSiIsAccurate(UnitSymbol<Q> row) {
        ExactFactor factor = SymbolTable.entryOf(row.unit()).factors().toSystem();
        double si = Amounts.si(row.kind(), Amounts.of(12.7, row.unit()));
        assertThat(Ulps.error(12.7, factor, si)).as(row.symbol()).isLessThanOrEqualTo(0.51);
        double back = Amounts.in(Amounts.ofSi(si, row.unit()), row.unit());
        assertThat(Math.abs(back - 12.7)).as(row.symbol()).isLessThanOrEqualTo(2 * Math.ulp(12.7));
    }

    @Property(tries = 5_000)
    void toSiAndBackIsTheSameToTwoUlps(@ForAll @DoubleRange(min = -1e6, max = 1e6) double value) {
        double si = Amounts.si(ApplicationRate.class, Amounts.of(value, SpreadingUnits.POUND_PER_MILE));
        double back = Amounts.in(Amounts.ofSi(si, SpreadingUnits.POUND_PER_MILE), SpreadingUnits.POUND_PER_MILE);
        assertThat(Math.abs(back - value)).isLessThanOrEqualTo(2 * Math.ulp(value));
    }

    @Example
    void siUnitsHaveRevolutionsPulsesAndLanesAsBaseUnits() {
        assertThat(Amounts.si(PulsesPerRevolution.class, Amounts.of(60, SpreadingUnits.PULSE_PER_REVOLUTION)))
                .isEqualTo(60);
        assertThat(Amounts.si(LaneCount.class, Amounts.of(2, SpreadingUnits.LANE)))
                .isEqualTo(2);
        assertThat(Amounts.si(Speed.class, Amounts.of(30, SpreadingUnits.MILE_PER_HOUR)))
                .isEqualTo(13.4112);
    }

    @Example
    void siChecksTheKindEvenForAQuantityOfItsOwnType() {
        assertThatThrownBy(() -> Amounts.si(Force.class, Amounts.of(1, Units.NEWTON)))
                .isInstanceOf(InvalidInputException.class);
        assertThatThrownBy(() -> Amounts.si(Mass.class, raw(Amounts.of(1, SpreadingUnits.FOOT))))
                .isInstanceOf(InvalidInputException.class)
                .hasMessage("unit must be one of mass: \"ft\" is one of length");
    }

    @SuppressWarnings("unchecked")
    private static Quantity<Mass> raw(Quantity<?> quantity) {
        return (Quantity<Mass>) quantity;
    }

    @Example
    void aValueTooLargeInSiIsAnErrorThatShowsTheQuantity() {
        assertThatThrownBy(() -> Amounts.si(Length.class, Amounts.of(1e308, SpreadingUnits.MILE)))
                .isInstanceOf(InvalidInputException.class)
                .hasMessage("length must be finite in SI units: 1e308 mi");
        assertThatThrownBy(() -> Amounts.ofSi(1e308, SpreadingUnits.MILLIMETER))
                .isInstanceOf(InvalidInputException.class)
                .hasMessage("value must be finite: Infinity in \"mm\"");
        assertThatThrownBy(() -> Amounts.ofSi(Double.NaN, SpreadingUnits.METER))
                .isInstanceOf(InvalidInputException.class);
        // Not "NaN", although the low part of this factor is zero and infinity times zero is NaN.
        assertThatThrownBy(() -> Amounts.ofSi(Double.POSITIVE_INFINITY, SpreadingUnits.METER))
                .hasMessage("value must be finite: Infinity in \"m\"");
    }

    @Example
    void aQuantityWhoseNumberIsBeyondDoublesIsRefusedEverywhere() {
        Quantity<Mass> huge = Quantities.getQuantity(new BigDecimal("1e400"), SpreadingUnits.POUND);
        assertThatThrownBy(() -> Amounts.in(huge, SpreadingUnits.POUND)).isInstanceOf(InvalidInputException.class);
        assertThatThrownBy(() -> Amounts.in(huge, SpreadingUnits.KILOGRAM)).isInstanceOf(InvalidInputException.class);
        assertThatThrownBy(() -> Amounts.si(Mass.class, huge)).isInstanceOf(InvalidInputException.class);
    }

    @Example
    @SuppressWarnings("unchecked") // the kind of a product of units is what we say it is
    void aUnitMadeElsewhereFromTheSamePartsIsTheSameUnit() {
        Unit<ApplicationRate> made = (Unit<ApplicationRate>) SpreadingUnits.POUND.divide(SpreadingUnits.MILE);
        assertThat(made).isNotSameAs(SpreadingUnits.POUND_PER_MILE);
        assertThat(Amounts.format(Amounts.of(260, made))).isEqualTo("260 lb/mi");
        assertThat(Amounts.si(ApplicationRate.class, Amounts.of(260, made)))
                .isEqualTo(Amounts.si(ApplicationRate.class, Amounts.of(260, SpreadingUnits.POUND_PER_MILE)));
        assertThat(Conversion.between(made, SpreadingUnits.KILOGRAM_PER_KILOMETER)
                        .exactFactor())
                .isEqualTo(ExactFactor.of(4123567, 14630400));
    }

    @Example
    void aUnitOutsideTheTableHasNoText() {
        assertThatThrownBy(() -> Amounts.format(Amounts.of(1, Units.NEWTON)))
                .isInstanceOf(InvalidInputException.class)
                .hasMessage("unit must be one of the symbol table: a unit of a dimension that no kind has");
        Unit<Mass> stone = SpreadingUnits.POUND.multiply(14);
        assertThatThrownBy(() -> Amounts.format(Amounts.of(1, stone)))
                .isInstanceOf(InvalidInputException.class)
                .hasMessage("unit must be one of the symbol table: another unit with the dimension of mass");
    }
}
