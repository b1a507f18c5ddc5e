package org.gritwright.core.range;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.Samples.assertRefused;
import static org.gritwright.units.SpreadingUnits.CUBIC_INCH_PER_REVOLUTION;
import static org.gritwright.units.SpreadingUnits.PERCENT;
import static org.gritwright.units.SpreadingUnits.REVOLUTION_PER_MINUTE;
import static org.gritwright.units.SpreadingUnits.US_GALLON_PER_MINUTE;

import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.gritwright.units.Amounts;
import org.gritwright.units.quantity.FlowRate;
import org.gritwright.units.quantity.RotationalSpeed;
import org.gritwright.units.quantity.VolumePerRevolution;
import org.junit.jupiter.api.Test;

/** A gallon is 231 in³: a tight pump of 2.31 in³/rev at 1000 rev/min gives 10 gal/min. */
class OilSupplyTest {
    private static Quantity<VolumePerRevolution> displacement(double cubicInches) {
        return Amounts.of(cubicInches, CUBIC_INCH_PER_REVOLUTION);
    }

    private static Quantity<RotationalSpeed> turns(double perMinute) {
        return Amounts.of(perMinute, REVOLUTION_PER_MINUTE);
    }

    private static Quantity<FlowRate> gallons(double perMinute) {
        return Amounts.of(perMinute, US_GALLON_PER_MINUTE);
    }

    private static Quantity<Dimensionless> percent(double percent) {
        return Amounts.of(percent, PERCENT);
    }

    /** 90 % of the pump's and 95 % of a motor's that takes 23.1 in³ a turn: 10 gal/min ÷ 0.1 gal × 0.855 = 85.5 rev/min. */
    private static final OilSupply WORN =
            new OilSupply(displacement(2.31), percent(90), displacement(23.1), percent(95));

    @Test
    void whatLeaksIsLostTwice() {
        assertThat(Amounts.in(WORN.flow(turns(1000)), US_GALLON_PER_MINUTE)).isCloseTo(9, within(1e-12));
        assertThat(Amounts.in(WORN.motorSpeed(gallons(9)), REVOLUTION_PER_MINUTE))
                .isCloseTo(85.5, within(1e-11));
        assertThat(Amounts.in(WORN.fastestMotor(turns(1000)), REVOLUTION_PER_MINUTE))
                .isCloseTo(85.5, within(1e-11));
        assertThat(WORN.flow(turns(1000)).getUnit()).isEqualTo(US_GALLON_PER_MINUTE);
    }

    @Test
    void aTightPumpAndMotorLoseNothing() {
        assertThat(Amounts.in(
                        OilSupply.tight(displacement(2.31), displacement(23.1)).fastestMotor(turns(1000)),
                        REVOLUTION_PER_MINUTE))
                .isCloseTo(100, within(1e-11));
    }

    @Test
    void theEngineHasToTurnFastEnough() {
        assertThat(Amounts.in(WORN.slowestPump(turns(85.5)), REVOLUTION_PER_MINUTE))
                .isCloseTo(1000, within(1e-10));
        assertThat(Amounts.in(WORN.slowestPump(turns(0)), REVOLUTION_PER_MINUTE))
                .isZero();
    }

    @Test
    void aMeasuredFlowTellsTheEfficiency() {
        assertThat(Amounts.in(OilSupply.volumetricEfficiency(displacement(2.31), turns(1000), gallons(8.5)), PERCENT))
                .isCloseTo(85, within(1e-11));
        assertThat(Amounts.in(OilSupply.volumetricEfficiency(displacement(2.31), turns(1000), gallons(10)), PERCENT))
                .isCloseTo(100, within(1e-11));
        assertRefused(
                "flow of the pump must be no more than displacement × speed, 10 gal/min: 10.1 gal/min",
                () -> OilSupply.volumetricEfficiency(displacement(2.31), turns(1000), gallons(10.1)));
        assertRefused(
                "flow of the pump must be 0 or more: -1 gal/min",
                () -> OilSupply.volumetricEfficiency(displacement(2.31), turns(1000), gallons(-1)));
        assertRefused(
                "displacement of the pump must be greater than 0: 0 in³/rev",
                () -> OilSupply.volumetricEfficiency(displacement(0), turns(1000), gallons(1)));
        assertRefused(
                "pump speed must be greater than 0: 0 rev/min",
                () -> OilSupply.volumetricEfficiency(displacement(2), turns(0), gallons(1)));
    }

    @Test
    void whatNoPumpIsIsRefused() {
        assertRefused(
                "displacement of the pump must be greater than 0: 0 in³/rev",
                () -> OilSupply.tight(displacement(0), displacement(1)));
        assertRefused(
                "displacement of the motor must be greater than 0: 0 in³/rev",
                () -> OilSupply.tight(displacement(1), displacement(0)));
        assertRefused(
                "volumetric efficiency of the pump must be at most 100 %: 101 %",
                () -> new OilSupply(displacement(1), percent(101), displacement(1), percent(100)));
        assertRefused(
                "volumetric efficiency of the motor must be greater than 0: 0 %",
                () -> new OilSupply(displacement(1), percent(100), displacement(1), percent(0)));
        assertRefused("pump speed must be 0 or more: -1 rev/min", () -> WORN.flow(turns(-1)));
        assertRefused("flow to the motor must be 0 or more: -1 gal/min", () -> WORN.motorSpeed(gallons(-1)));
        assertRefused("motor speed must be 0 or more: -1 rev/min", () -> WORN.slowestPump(turns(-1)));
    }

    @Property
    void theSlowestPumpTurnsTheMotorJustAsFastAsWanted(
            @ForAll @DoubleRange(min = 0.1, max = 10) double pump,
            @ForAll @DoubleRange(min = 1, max = 100) double pumpPercent,
            @ForAll @DoubleRange(min = 0.1, max = 50) double motor,
            @ForAll @DoubleRange(min = 1, max = 100) double motorPercent,
            @ForAll @DoubleRange(min = 0, max = 200) double wanted) {
        OilSupply oil =
                new OilSupply(displacement(pump), percent(pumpPercent), displacement(motor), percent(motorPercent));

        assertThat(Amounts.in(oil.fastestMotor(oil.slowestPump(turns(wanted))), REVOLUTION_PER_MINUTE))
                .isCloseTo(wanted, within(1e-12 * wanted + 1e-300));
    }
}
