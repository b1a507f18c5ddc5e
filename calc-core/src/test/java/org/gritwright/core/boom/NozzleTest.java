package org.gritwright.core.boom;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.boom.BoomSamples.ONE;
import static org.gritwright.core.boom.BoomSamples.TEN_POUNDS;
import static org.gritwright.core.boom.BoomSamples.WATER;
import static org.gritwright.core.boom.BoomSamples.gallonsPerMinute;
import static org.gritwright.core.boom.BoomSamples.number;
import static org.gritwright.core.boom.BoomSamples.point;
import static org.gritwright.core.boom.BoomSamples.psi;

import java.util.Collections;
import java.util.List;
import javax.measure.Quantity;
import javax.measure.quantity.Speed;
import org.assertj.core.api.ThrowableAssert.ThrowingCallable;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.quantity.LiquidApplicationRate;
import org.junit.jupiter.api.Test;

class NozzleTest {
    private static final Nozzle TABLE =
            Nozzle.table("t", List.of(point(60, 0.5), point(20, 0.28), point(40, 0.4)), WATER);

    static void assertRefused(String message, ThrowingCallable call) {
        assertThatExceptionOfType(InvalidInputException.class).isThrownBy(call).withMessage(message);
    }

    @Test
    void theFlowGoesWithTheRootOfThePressure() {
        Nozzle nozzle = Nozzle.rated("04", psi(40), gallonsPerMinute(0.4), WATER, psi(20), psi(60));
        assertThat(number(nozzle.flow(psi(60), WATER))).isCloseTo(0.489898, within(5e-7));
        assertThat(number(nozzle.flow(psi(40), WATER))).isCloseTo(0.4, within(1e-15));
        assertThat(number(ONE.flow(psi(10), WATER))).isCloseTo(0.5, within(1e-15));
        assertThat(number(ONE.flow(psi(90), WATER))).isCloseTo(1.5, within(1e-15));
        assertThat(ONE.flow(psi(90), WATER).getUnit()).isEqualTo(SpreadingUnits.US_GALLON_PER_MINUTE);
        assertThat(number(ONE.pressure(gallonsPerMinute(1.5), WATER))).isCloseTo(90, within(1e-12));
    }

    @Test
    void aHeavierLiquidFlowsLess() {
        assertThat(number(ONE.flow(psi(40), TEN_POUNDS))).isCloseTo(Math.sqrt(0.834), within(1e-15));
        assertThat(number(ONE.pressure(gallonsPerMinute(1), TEN_POUNDS))).isCloseTo(40 / 0.834, within(1e-12));
        assertThat(ONE.densityFactor(WATER)).isEqualTo(Amounts.of(1, SpreadingUnits.ONE));
        assertThat(number(ONE.densityFactor(TEN_POUNDS))).isCloseTo(Math.sqrt(1 / 0.834), within(1e-15));
    }

    @Test
    void aTableKeepsItsPointsAndIsStraightOverTheRootOfThePressure() {
        double middle = (Math.sqrt(40) + Math.sqrt(60)) / 2;
        assertThat(number(TABLE.flow(psi(40), WATER))).isCloseTo(0.4, within(1e-15));
        assertThat(number(TABLE.flow(psi(20), WATER))).isCloseTo(0.28, within(1e-15));
        assertThat(number(TABLE.flow(psi(60), WATER))).isCloseTo(0.5, within(1e-15));
        assertThat(number(TABLE.flow(psi(middle * middle), WATER))).isCloseTo(0.45, within(1e-14));
        assertThat(number(TABLE.pressure(gallonsPerMinute(0.45), WATER))).isCloseTo(middle * middle, within(1e-11));
        assertThat(number(TABLE.pressure(gallonsPerMinute(0.28), WATER))).isCloseTo(20, within(1e-12));
        assertThat(number(TABLE.flow(psi(40), TEN_POUNDS))).isCloseTo(0.4 * Math.sqrt(0.834), within(1e-15));
        assertThat(TABLE.lowest()).isEqualTo(psi(20));
        assertThat(TABLE.highest()).isEqualTo(psi(60));
        assertThat(TABLE).isEqualTo(Nozzle.table("t", List.of(point(20, 0.28), point(40, 0.4), point(60, 0.5)), WATER));
    }

    @Test
    void theUnitsFollowTheArgument() {
        assertThat(ONE.flow(Amounts.of(300, SpreadingUnits.KILOPASCAL), WATER).getUnit())
                .isEqualTo(SpreadingUnits.LITER_PER_MINUTE);
        assertThat(ONE.pressure(Amounts.of(4, SpreadingUnits.LITER_PER_MINUTE), WATER)
                        .getUnit())
                .isEqualTo(SpreadingUnits.KILOPASCAL);
    }

    @Test
    void nothingIsGuessedOutsideThePressuresThatItIsMadeFor() {
        assertRefused("nozzle pressure must be within 10 psi to 90 psi: 91 psi", () -> ONE.flow(psi(91), WATER));
        assertRefused("nozzle pressure must be within 10 psi to 90 psi: 9 psi", () -> ONE.flow(psi(9), WATER));
        assertThatExceptionOfType(InvalidInputException.class)
                .isThrownBy(() -> ONE.pressure(gallonsPerMinute(1.51), WATER))
                .withMessageStartingWith("flow of nozzle one must be within 0.5");
        assertThatExceptionOfType(InvalidInputException.class)
                .isThrownBy(() -> ONE.pressure(gallonsPerMinute(0.49), WATER));
        assertRefused("nozzle pressure must be within 20 psi to 60 psi: 61 psi", () -> TABLE.flow(psi(61), WATER));
    }

    @Test
    void pointsThatCannotBeAreRefused() {
        assertRefused(
                "points of a nozzle's table must be two or more: 1",
                () -> Nozzle.table("t", List.of(point(20, 1)), WATER));
        assertRefused(
                "points of a nozzle must be one or more: 0", () -> new Nozzle("t", List.of(), WATER, psi(10), psi(20)));
        assertRefused(
                "points of a nozzle must be at most 1000: more",
                () -> Nozzle.table("t", Collections.nCopies(1001, point(20, 1)), WATER));
        assertRefused(
                "nozzle pressure must be stated once, with one flow: 20 psi",
                () -> Nozzle.table("t", List.of(point(20, 1), point(20, 2)), WATER));
        assertRefused(
                "nozzle flow at 40 psi must be greater than the 1 gal/min at 20 psi: 1 gal/min",
                () -> Nozzle.table("t", List.of(point(20, 1), point(40, 1)), WATER));
        assertRefused("nozzle pressure must be greater than 0: 0 psi", () -> point(0, 1));
        assertRefused("nozzle flow must be greater than 0: 0 gal/min", () -> point(20, 0));
    }

    @Test
    void pressuresThatCannotBeAreRefused() {
        assertRefused("name of a nozzle must be a text that is not blank: \" \"", () -> rated(" ", 10, 90));
        assertRefused("lowest nozzle pressure must be greater than 0: 0 psi", () -> rated("n", 0, 90));
        assertRefused("highest nozzle pressure must be at least 20 psi: 10 psi", () -> rated("n", 20, 10));
        assertRefused(
                "lowest nozzle pressure must be at least 20 psi: 10 psi",
                () -> new Nozzle("t", TABLE.points(), WATER, psi(10), psi(50)));
        assertRefused(
                "highest nozzle pressure must be within 20 psi to 60 psi: 70 psi",
                () -> new Nozzle("t", TABLE.points(), WATER, psi(20), psi(70)));
        assertThat(new Nozzle("t", TABLE.points(), WATER, psi(30), psi(50)).highest())
                .isEqualTo(psi(50));
        assertRefused(
                "density of the liquid that the nozzle is rated with must be greater than 0: 0 kg/L",
                () -> Nozzle.table("t", TABLE.points(), Amounts.of(0, SpreadingUnits.KILOGRAM_PER_LITER)));
        assertRefused(
                "density of the liquid must be greater than 0: 0 kg/L",
                () -> ONE.flow(psi(40), Amounts.of(0, SpreadingUnits.KILOGRAM_PER_LITER)));
        assertRefused(
                "density of the liquid must be greater than 0: 0 kg/L",
                () -> ONE.pressure(gallonsPerMinute(1), Amounts.of(0, SpreadingUnits.KILOGRAM_PER_LITER)));
        assertRefused(
                "density of the liquid must be greater than 0: 0 kg/L",
                () -> ONE.densityFactor(Amounts.of(0, SpreadingUnits.KILOGRAM_PER_LITER)));
    }

    private static Nozzle rated(String name, double lowest, double highest) {
        return Nozzle.rated(name, psi(40), gallonsPerMinute(1), WATER, psi(lowest), psi(highest));
    }

    private static final Quantity<LiquidApplicationRate> RATE = Amounts.of(45, SpreadingUnits.US_GALLON_PER_MILE);

    private static Quantity<Speed> mph(double speed) {
        return Amounts.of(speed, SpreadingUnits.MILE_PER_HOUR);
    }

    /** 15 gal/min at 20 mi/h and 22.5 at 30; a nozzle gives 0.5 to 1.5. */
    @Test
    void soManyNozzlesKeepToTheirPressures() {
        assertThat(ONE.countsFor(RATE, mph(20), mph(30), WATER)).isEqualTo(new NozzleCounts(15, 30));
        assertThat(rated("n", 10, 40).countsFor(RATE, mph(20), mph(30), WATER)).isEqualTo(new NozzleCounts(23, 30));
        assertThat(ONE.countsFor(RATE, mph(20), mph(30), WATER).isPossible()).isTrue();
        assertThat(ONE.countsFor(RATE, mph(20), mph(20), WATER)).isEqualTo(new NozzleCounts(10, 30));
        // A nozzle gives 0.457 to 1.370 of it: 16.4 to 32.8 of them.
        assertThat(ONE.countsFor(RATE, mph(20), mph(30), TEN_POUNDS)).isEqualTo(new NozzleCounts(17, 32));
    }

    /** Four times the speed would need sixteen times the pressure. */
    @Test
    void noNumberOfNozzlesServesSpeedsTooFarApart() {
        NozzleCounts counts = rated("n", 20, 40).countsFor(RATE, mph(10), mph(40), WATER);
        assertThat(counts).isEqualTo(new NozzleCounts(30, 10));
        assertThat(counts.isPossible()).isFalse();
        assertThat(new NozzleCounts(3, 3).isPossible()).isTrue();
    }

    @Test
    void countsOfWhatCannotBeAreRefused() {
        assertRefused(
                "rate must be greater than 0: 0 gal/mi",
                () -> ONE.countsFor(Amounts.of(0, SpreadingUnits.US_GALLON_PER_MILE), mph(20), mph(30), WATER));
        assertRefused(
                "lowest road speed must be greater than 0: 0 mi/h", () -> ONE.countsFor(RATE, mph(0), mph(30), WATER));
        assertRefused(
                "highest road speed must be at least 20 mi/h: 10 mi/h",
                () -> ONE.countsFor(RATE, mph(20), mph(10), WATER));
        assertRefused(
                "density of the liquid must be greater than 0: 0 kg/L",
                () -> ONE.countsFor(RATE, mph(20), mph(30), Amounts.of(0, SpreadingUnits.KILOGRAM_PER_LITER)));
        assertRefused(
                "nozzles for this rate must be at most 100000: more",
                () -> ONE.countsFor(Amounts.of(1e9, SpreadingUnits.US_GALLON_PER_MILE), mph(20), mph(30), WATER));
    }
}
