package org.gritwright.core.envelope;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.units.SpreadingUnits.KILOGRAM_PER_KILOMETER;
import static org.gritwright.units.SpreadingUnits.KILOGRAM_PER_REVOLUTION;
import static org.gritwright.units.SpreadingUnits.KILOMETER_PER_HOUR;
import static org.gritwright.units.SpreadingUnits.LITER_PER_KILOMETER;
import static org.gritwright.units.SpreadingUnits.LITER_PER_REVOLUTION;
import static org.gritwright.units.SpreadingUnits.MILE_PER_HOUR;
import static org.gritwright.units.SpreadingUnits.REVOLUTION_PER_MINUTE;
import static org.gritwright.units.SpreadingUnits.US_GALLON_PER_MILE;
import static org.gritwright.units.SpreadingUnits.US_GALLON_PER_REVOLUTION;

import javax.measure.Quantity;
import javax.measure.quantity.Speed;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Scale;
import org.gritwright.core.range.WorkingRange;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.Amounts;
import org.gritwright.units.quantity.LiquidApplicationRate;

class LiquidEnvelopeLawsTest {
    private static WorkingRange range(double lowest, double highest) {
        return new WorkingRange(Amounts.of(lowest, REVOLUTION_PER_MINUTE), Amounts.of(highest, REVOLUTION_PER_MINUTE));
    }

    private static void assertSame(Bound<Speed> one, Bound<Speed> other) {
        double speed = Amounts.in(one.value().value(), KILOMETER_PER_HOUR);
        double uncertainty = Amounts.in(one.value().standardUncertainty().orElseThrow(), KILOMETER_PER_HOUR);
        assertThat(Amounts.in(other.value().value(), KILOMETER_PER_HOUR)).isCloseTo(speed, within(1e-12 * speed));
        assertThat(Amounts.in(other.value().standardUncertainty().orElseThrow(), KILOMETER_PER_HOUR))
                .isCloseTo(uncertainty, within(1e-12 * uncertainty));
        assertThat(other.value().degreesOfFreedom()).isEqualTo(one.value().degreesOfFreedom());
    }

    /** At any density: it cancels. */
    @Property
    void byVolumeTheSpeedsAreThoseByMass(
            @ForAll @DoubleRange(min = 0.01, max = 2) double liters,
            @ForAll @Scale(3) @DoubleRange(min = 0.001, max = 0.1) double relative,
            @ForAll @DoubleRange(min = 1, max = 1.4) double density,
            @ForAll @DoubleRange(min = 1, max = 100) double lowest,
            @ForAll @DoubleRange(min = 101, max = 900) double highest,
            @ForAll @DoubleRange(min = 1, max = 300) double litersPerKilometer) {
        Span<Speed> byVolume = LiquidEnvelope.ofPump(
                        Measured.of(
                                Amounts.of(liters, LITER_PER_REVOLUTION),
                                Amounts.of(relative * liters, LITER_PER_REVOLUTION),
                                9),
                        range(lowest, highest))
                .speedsFor(Amounts.of(litersPerKilometer, LITER_PER_KILOMETER));
        Span<Speed> byMass = Envelope.of(
                        Measured.of(
                                Amounts.of(density * liters, KILOGRAM_PER_REVOLUTION),
                                Amounts.of(density * relative * liters, KILOGRAM_PER_REVOLUTION),
                                9),
                        range(lowest, highest))
                .speedsFor(Amounts.of(density * litersPerKilometer, KILOGRAM_PER_KILOMETER));

        assertSame(byMass.lowest().orElseThrow(), byVolume.lowest().orElseThrow());
        assertSame(byMass.highest(), byVolume.highest());
    }

    /** The speeds of a rate and the rates at a speed are two ways to say the same, and units don't matter. */
    @Property
    void aRateHoldsUpToTheSpeedAtWhichItIsTheHighest(
            @ForAll @Scale(3) @DoubleRange(min = 0.001, max = 0.5) double gallons,
            @ForAll @DoubleRange(min = 1, max = 100) double lowest,
            @ForAll @DoubleRange(min = 101, max = 900) double highest,
            @ForAll @DoubleRange(min = 1, max = 200) double gallonsPerMile) {
        LiquidEnvelope pump = LiquidEnvelope.ofPump(
                Measured.once(Amounts.of(gallons, US_GALLON_PER_REVOLUTION)), range(lowest, highest));
        Quantity<LiquidApplicationRate> rate = Amounts.of(gallonsPerMile, US_GALLON_PER_MILE);
        Quantity<Speed> fastest = pump.speedsFor(rate).highest().value().value();

        assertThat(Amounts.in(pump.ratesAt(fastest).highest().value().value(), US_GALLON_PER_MILE))
                .isCloseTo(gallonsPerMile, within(1e-12 * gallonsPerMile));
        assertThat(pump.limitAt(rate, fastest)).isEmpty();
        assertThat(pump.limitAt(rate, fastest.multiply(1 + 1e-6))).contains(Limit.MOST_PUMP_FLOW);
        assertThat(Amounts.in(
                        pump.speedsFor(rate.to(LITER_PER_KILOMETER))
                                .highest()
                                .value()
                                .value(),
                        MILE_PER_HOUR))
                .isCloseTo(Amounts.in(fastest, MILE_PER_HOUR), within(1e-12 * Amounts.in(fastest, MILE_PER_HOUR)));
    }
}
