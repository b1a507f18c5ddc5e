package org.gritwright.core.verification;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import javax.measure.Quantity;
import javax.measure.quantity.Length;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Speed;
import javax.measure.quantity.Time;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.quantity.ApplicationRate;
import org.gritwright.units.quantity.DischargePerRevolution;
import org.gritwright.units.quantity.DischargeRate;
import org.gritwright.units.quantity.RotationalSpeed;
import org.gritwright.units.rate.Rates;

class ConservationOfMassLawsTest {
    @Property
    void rateByDistanceIsDischargeByTimeIsMassPerRevolutionByRevolutions(
            @ForAll @DoubleRange(min = 10, max = 2000) double poundsPerMile,
            @ForAll @DoubleRange(min = 5, max = 60) double milesPerHour,
            @ForAll @DoubleRange(min = 0.5, max = 100) double poundsPerRevolution,
            @ForAll @DoubleRange(min = 1, max = 3600) double seconds) {
        Quantity<ApplicationRate> rate = Amounts.of(poundsPerMile, SpreadingUnits.POUND_PER_MILE);
        Quantity<Speed> speed = Amounts.of(milesPerHour, SpreadingUnits.MILE_PER_HOUR);
        Quantity<Time> time = Amounts.of(seconds, SpreadingUnits.SECOND);
        Quantity<DischargePerRevolution> perRevolution =
                Amounts.of(poundsPerRevolution, SpreadingUnits.POUND_PER_REVOLUTION);
        TestRun run = TestRun.lasting(rate, speed, time);

        double byDistance = poundsPerMile * Amounts.in(run.testDistance(), SpreadingUnits.MILE);
        Quantity<DischargeRate> discharge = Rates.dischargeFromRate(rate, speed);
        double byTime = Amounts.in(discharge, SpreadingUnits.POUND_PER_SECOND) * seconds;
        Quantity<RotationalSpeed> shaft = Rates.shaftSpeedFromRate(rate, speed, perRevolution);
        double byRevolutions = Amounts.in(shaft, SpreadingUnits.REVOLUTION_PER_SECOND) * seconds * poundsPerRevolution;
        double expected = Amounts.in(run.expectedAmount().asType(Mass.class), SpreadingUnits.POUND);

        assertThat(byDistance).isCloseTo(expected, within(1e-12 * expected));
        assertThat(byTime).isCloseTo(expected, within(1e-12 * expected));
        assertThat(byRevolutions).isCloseTo(expected, within(1e-12 * expected));
    }

    @Property
    void whatIsLaidOnAnAreaIsWhatIsLaidOnItsLength(
            @ForAll @DoubleRange(min = 10, max = 2000) double poundsPerMile,
            @ForAll @DoubleRange(min = 3, max = 60) double feetWide,
            @ForAll @DoubleRange(min = 0.01, max = 30) double miles) {
        Quantity<Length> width = Amounts.of(feetWide, SpreadingUnits.FOOT);
        Quantity<ApplicationRate> rate = Amounts.of(poundsPerMile, SpreadingUnits.POUND_PER_MILE);

        double onArea = Amounts.in(Rates.arealRateFromRate(rate, width), SpreadingUnits.POUND_PER_SQUARE_FOOT)
                * feetWide
                * miles
                * 5280;
        assertThat(onArea).isCloseTo(poundsPerMile * miles, within(1e-12 * poundsPerMile * miles));
    }
}
