package org.gritwright.units;

import static org.assertj.core.api.Assertions.assertThatThrownBy;

import javax.measure.Quantity;
import javax.measure.Unit;
import javax.measure.quantity.Area;
import javax.measure.quantity.Frequency;
import javax.measure.quantity.Length;
import org.gritwright.units.quantity.ApplicationRate;
import org.gritwright.units.quantity.LaneApplicationRate;
import org.gritwright.units.quantity.LiquidApplicationRate;
import org.gritwright.units.quantity.LiquidArealApplicationRate;
import org.junit.jupiter.api.Test;
import tech.units.indriya.unit.Units;

/** Kinds stay apart at run time even when raw types have silenced the compiler. */
class KindsApartTest {

    /** What a raw type does: the unit keeps what it is, the compiler forgets it. */
    @SuppressWarnings("unchecked")
    private static <Q extends Quantity<Q>> Unit<Q> disguised(Unit<?> unit) {
        return (Unit<Q>) unit;
    }

    private static <Q extends Quantity<Q>> void assertRefused(Unit<Q> from, Unit<?> to, String message) {
        assertThatThrownBy(() -> Conversion.between(from, disguised(to)))
                .isInstanceOf(InvalidInputException.class)
                .hasMessage(message);
        assertThatThrownBy(() -> Amounts.in(Amounts.of(1, from), disguised(to)))
                .isInstanceOf(InvalidInputException.class)
                .hasMessage(message);
    }

    @Test
    void aRatePerMileIsNoRatePerLaneMile() {
        assertRefused(
                SpreadingUnits.POUND_PER_MILE,
                SpreadingUnits.POUND_PER_LANE_MILE,
                "unit must be one of application rate: \"lb/lane-mi\" is one of lane application rate");
        assertRefused(
                SpreadingUnits.US_GALLON_PER_LANE_MILE,
                SpreadingUnits.US_GALLON_PER_MILE,
                "unit must be one of liquid lane application rate: \"gal/mi\" is one of liquid application rate");
    }

    @Test
    void revolutionsPerMinuteAreNoHertz() {
        assertRefused(
                SpreadingUnits.REVOLUTION_PER_MINUTE,
                Units.HERTZ,
                "unit must be one of the symbol table: a unit of a dimension that no kind has");
    }

    @Test
    void litersPerKilometerAreNoArea() {
        assertRefused(
                SpreadingUnits.LITER_PER_KILOMETER,
                SpreadingUnits.SQUARE_METER,
                "unit must be one of liquid application rate: \"m²\" is one of area");
    }

    @Test
    void millilitersPerSquareMeterAreNoLength() {
        assertRefused(
                SpreadingUnits.MILLILITER_PER_SQUARE_METER,
                SpreadingUnits.METER,
                "unit must be one of liquid areal application rate: \"m\" is one of length");
    }

    @Test
    void everyTwoKindsAreApart() {
        for (UnitSymbol<?> from : UnitSymbol.all()) {
            for (UnitSymbol<?> to : UnitSymbol.all()) {
                if (!from.kind().equals(to.kind())) {
                    assertThatThrownBy(() -> Conversion.between(from.unit(), disguised(to.unit())))
                            .as("%s to %s", from.symbol(), to.symbol())
                            .isInstanceOf(InvalidInputException.class);
                }
            }
        }
    }

    @Test
    void theSiValueOfADisguisedQuantityIsRefused() {
        Unit<LaneApplicationRate> perMile = disguised(SpreadingUnits.POUND_PER_MILE);
        assertThatThrownBy(() -> Amounts.si(LaneApplicationRate.class, Amounts.of(300, perMile)))
                .isInstanceOf(InvalidInputException.class)
                .hasMessage("unit must be one of lane application rate: \"lb/mi\" is one of application rate");
        Unit<Area> litersPerKilometer = disguised(SpreadingUnits.LITER_PER_KILOMETER);
        assertThatThrownBy(() -> Amounts.si(Area.class, Amounts.of(1, litersPerKilometer)))
                .isInstanceOf(InvalidInputException.class);
    }

    @Test
    void asTypeOfJsr385DoesNotGetPastTheCheck() {
        Unit<Length> asLength = SpreadingUnits.MILLILITER_PER_SQUARE_METER.asType(Length.class);
        assertThatThrownBy(() -> Amounts.si(Length.class, Amounts.of(1, asLength)))
                .isInstanceOf(InvalidInputException.class)
                .hasMessage("unit must be one of length: \"mL/m²\" is one of liquid areal application rate");
        assertThatThrownBy(() -> Conversion.between(asLength, SpreadingUnits.METER))
                .isInstanceOf(InvalidInputException.class);
    }

    @Test
    void jsr385ItselfRefusesLanesAndRevolutionsByDimension() {
        assertThatThrownBy(() -> SpreadingUnits.POUND_PER_MILE.getConverterToAny(SpreadingUnits.POUND_PER_LANE_MILE))
                .isInstanceOf(javax.measure.IncommensurableException.class);
        assertThatThrownBy(() -> SpreadingUnits.REVOLUTION_PER_MINUTE.getConverterToAny(Units.HERTZ))
                .isInstanceOf(javax.measure.IncommensurableException.class);
        assertThatThrownBy(() -> SpreadingUnits.REVOLUTION_PER_MINUTE.asType(Frequency.class))
                .isInstanceOf(ClassCastException.class);
        assertThatThrownBy(() -> SpreadingUnits.PULSE.getConverterToAny(SpreadingUnits.REVOLUTION))
                .isInstanceOf(javax.measure.IncommensurableException.class);
    }

    @Test
    void textOfAnotherKindIsRefused() {
        assertThatThrownBy(() -> Amounts.parse(ApplicationRate.class, "300 lb/lane-mi"))
                .hasMessage("application rate must be a number and a unit of application rate"
                        + " (at character 5: \"lb/lane-mi\" is a unit of lane application rate; known: \"lb/mi\", \"kg/km\", \"kg/m\","
                        + " \"g/m\", \"t/km\", \"ton/mi\", \"lb/ft\", \"lb/yd\"): \"300 lb/lane-mi\"");
        assertThatThrownBy(() -> Amounts.parse(LiquidApplicationRate.class, "3 m²"))
                .isInstanceOf(InvalidInputException.class);
        assertThatThrownBy(() -> Amounts.parse(LiquidArealApplicationRate.class, "3 m"))
                .isInstanceOf(InvalidInputException.class);
    }
}
