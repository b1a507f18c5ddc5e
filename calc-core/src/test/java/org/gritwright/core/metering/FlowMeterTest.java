package org.gritwright.core.metering;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.Samples.assertRefused;
import static org.gritwright.units.SpreadingUnits.LITER_PER_MINUTE;
import static org.gritwright.units.SpreadingUnits.MILLILITER_PER_PULSE;
import static org.gritwright.units.SpreadingUnits.PULSE;
import static org.gritwright.units.SpreadingUnits.PULSE_PER_LITER;
import static org.gritwright.units.SpreadingUnits.PULSE_PER_US_GALLON;
import static org.gritwright.units.SpreadingUnits.SECOND;
import static org.gritwright.units.SpreadingUnits.US_GALLON_PER_MINUTE;

import java.util.Arrays;
import java.util.Map;
import java.util.Optional;
import javax.measure.Quantity;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.gritwright.core.Shipped;
import org.gritwright.core.spi.FillLimits;
import org.gritwright.core.spi.Parameters;
import org.gritwright.core.spi.PlainFlowMeter;
import org.gritwright.core.spi.PulseOutput;
import org.gritwright.units.Amounts;
import org.gritwright.units.quantity.FlowRate;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** The flow-meter types of the library. */
class FlowMeterTest {
    /** 1200 pulses per gallon from 2 to 60 gal/min. */
    private static final FlowMeter TURBINE = FlowMeter.of(
            new KFactorMeter(),
            Map.of(
                    "kFactor", Amounts.of(1200, PULSE_PER_US_GALLON),
                    "lowFlowCutoff", Amounts.of(2, US_GALLON_PER_MINUTE),
                    "highestFlow", Amounts.of(60, US_GALLON_PER_MINUTE)));

    /** 6, 60 and 240 L/min give 80, 1000 and 3600 pulses per second. */
    private static final FlowMeter TABLE = table(new double[] {6, 60, 240}, new double[] {800, 1000, 900});

    private static FlowMeter table(double[] flows, double[] factors) {
        return FlowMeter.of(
                new TableFlowMeter(),
                Map.of(
                        "meterFlows",
                                Arrays.stream(flows)
                                        .mapToObj(FlowMeterTest::liters)
                                        .toList(),
                        "kFactors",
                                Arrays.stream(factors)
                                        .mapToObj(factor -> Amounts.of(factor, PULSE_PER_LITER))
                                        .toList()));
    }

    private static Quantity<FlowRate> liters(double perMinute) {
        return Amounts.of(perMinute, LITER_PER_MINUTE);
    }

    private static Quantity<FlowRate> gallons(double perMinute) {
        return Amounts.of(perMinute, US_GALLON_PER_MINUTE);
    }

    private static double flow(FlowMeter meter, double pulses, double seconds) {
        return Amounts.in(
                meter.flow(Amounts.of(pulses, PULSE), Amounts.of(seconds, SECOND)),
                meter.equals(TURBINE) ? US_GALLON_PER_MINUTE : LITER_PER_MINUTE);
    }

    @Test
    void aPulseIsTheReciprocalOfTheKFactor() {
        assertThat(TURBINE.cubicMetersPerPulse()).isCloseTo(3.785411784e-3 / 1200, within(1e-18));
        assertThat(TURBINE.cubicMetersPerPulse(1e-3)).isEqualTo(TURBINE.cubicMetersPerPulse());
        assertThat(TURBINE.pulsesPerSecond(gallons(50))).isCloseTo(1000, within(1e-9));
        assertThat(flow(TURBINE, 1000, 1)).isCloseTo(50, within(1e-12));
        assertThat(flow(TURBINE, 12_000, 20)).isCloseTo(30, within(1e-12));
        assertThat(Amounts.format(TURBINE.nominal())).endsWith(" gal/pulse");
        assertThat(Amounts.format(TURBINE.flow(Amounts.of(900, PULSE), Amounts.of(1, SECOND))))
                .endsWith(" gal/min");
    }

    @Test
    void belowTheCutOffThereAreNoPulses() {
        assertThat(TURBINE.pulsesPerSecond(gallons(1.99))).isZero();
        assertThat(TURBINE.pulsesPerSecond(gallons(0))).isZero();
        assertThat(TURBINE.pulsesPerSecond(gallons(2))).isCloseTo(40, within(1e-11));
        assertThat(TURBINE.pulsesPerSecond(gallons(2 * (1 - 1e-14)))).isCloseTo(40, within(1e-11));
        assertThat(TURBINE.lowestFlow()).isEqualTo(gallons(2));
        assertRefused(
                "flow must be within 2 gal/min to 60 gal/min: 1 gal/min",
                () -> TURBINE.cubicMetersPerPulse(Amounts.si(FlowRate.class, gallons(1))));
        assertRefused("flow must be 0 or more: -1 gal/min", () -> TURBINE.pulsesPerSecond(gallons(-1)));
    }

    @Test
    void aboveTheHighestFlowNothingIsGuessed() {
        assertThat(TURBINE.highestFlow()).isEqualTo(Optional.of(gallons(60)));
        assertRefused(
                "flow must be within 2 gal/min to 60 gal/min: 61 gal/min", () -> TURBINE.pulsesPerSecond(gallons(61)));
    }

    @Test
    void aFrequencyThatNoFlowGivesIsRefused() {
        assertThat(flow(TURBINE, 40, 1)).isCloseTo(2, within(1e-12));
        assertThat(flow(TURBINE, 1200, 1)).isCloseTo(60, within(1e-12));
        assertRefused(
                "pulses per second must be at least " + TURBINE.pulsesPerSecond(gallons(2))
                        + ", those of the lowest flow, 2 gal/min: 39.0",
                () -> flow(TURBINE, 39, 1));
        assertRefused(
                "pulses per second must be at most " + TURBINE.pulsesPerSecond(gallons(60))
                        + ", those of the highest flow, 60 gal/min: 1201.0",
                () -> flow(TURBINE, 1201, 1));
        assertRefused("pulses must be 0 or more: -1 pulse", () -> flow(TURBINE, -1, 1));
        assertRefused("time must be greater than 0: 0 s", () -> flow(TURBINE, 1000, 0));
    }

    @Test
    void withoutACutOffNoPulsesAreNoFlow() {
        FlowMeter plain = FlowMeter.of(new KFactorMeter(), Map.of("kFactor", Amounts.of(10, PULSE_PER_LITER)));

        assertThat(flow(plain, 0, 10)).isZero();
        assertThat(flow(plain, 1, 1000)).isCloseTo(0.006, within(1e-15));
        assertThat(plain.lowestFlow()).isEqualTo(liters(0));
        assertThat(plain.highestFlow()).isEqualTo(Optional.of(liters(5000)));
    }

    @Test
    void aHighestFlowIsAboveTheCutOff() {
        assertRefused(
                "highestFlow must be above lowFlowCutoff, 6 L/min: 6 L/min",
                () -> FlowMeter.of(
                        new KFactorMeter(),
                        Map.of(
                                "kFactor", Amounts.of(10, PULSE_PER_LITER),
                                "lowFlowCutoff", liters(6),
                                "highestFlow", liters(6))));
    }

    @Test
    void aTableGivesItsKFactorsAndAStraightLineOfPulsesBetween() {
        assertThat(TABLE.pulsesPerSecond(liters(6))).isCloseTo(80, within(1e-11));
        assertThat(TABLE.pulsesPerSecond(liters(60))).isCloseTo(1000, within(1e-10));
        assertThat(TABLE.pulsesPerSecond(liters(150))).isCloseTo(2300, within(1e-10));
        assertThat(TABLE.pulsesPerSecond(liters(240))).isCloseTo(3600, within(1e-10));
        assertThat(TABLE.cubicMetersPerPulse(1e-3)).isCloseTo(1e-6, within(1e-20));
        assertThat(table(new double[] {6, 60, 240}, new double[] {800, 1000, 900})
                        .cubicMetersPerPulse())
                .as("the middle of the K-factors, 900 pulses per liter")
                .isCloseTo(1e-3 / 900, within(1e-18));
        assertThat(TABLE.pulsesPerSecond(liters(5))).isZero();
        assertRefused("flow must be within 6 L/min to 240 L/min: 241 L/min", () -> TABLE.pulsesPerSecond(liters(241)));
        assertThat(flow(TABLE, 2300, 1)).isCloseTo(150, within(1e-12));
        assertThat(flow(TABLE, 80, 1)).isCloseTo(6, within(1e-12));
        assertThat(flow(TABLE, 3600, 1)).isCloseTo(240, within(1e-12));
    }

    @Test
    void aTableWhosePulsesFallIsRefused() {
        assertRefused(
                "kFactors must be such that 70 L/min gives no fewer pulses per second than 60 L/min with 1000 pulse/L:"
                        + " 850 pulse/L",
                () -> table(new double[] {6, 60, 70}, new double[] {1000, 1000, 850}));
        assertThat(flow(table(new double[] {6, 60, 120}, new double[] {1000, 1000, 500}), 999.999999, 1))
                .as("the lowest of the flows that give nearly so many")
                .isCloseTo(60, within(1e-6));
        assertRefused(
                "meterFlows must be above the one before, 6 L/min: 6 L/min",
                () -> table(new double[] {6, 6}, new double[] {1000, 1000}));
        assertRefused(
                "kFactors must be as many as meterFlows, 2: 3",
                () -> table(new double[] {6, 7}, new double[] {1000, 1000, 1000}));
    }

    /** A meter that is known at any flow, whose pulses never come faster than 100 a second. */
    private static FlowMeter saturating(double nominal) {
        return FlowMeter.of(
                new PlainFlowMeter("saturating") {
                    @Override
                    public PulseOutput output(Parameters given) {
                        return PulseOutput.of(
                                Amounts.of(nominal, MILLILITER_PER_PULSE), flow -> Math.max(2e-6, flow / 100));
                    }
                },
                Map.of());
    }

    @Test
    void withoutAHighestFlowAFrequencyIsSoughtAsFarAsNumbersGo() {
        FlowMeter plain = FlowMeter.of(new PlainFlowMeter("plain"), Map.of());

        assertThat(flow(plain, 50, 1)).isCloseTo(6, within(1e-12));
        assertThat(plain.highestFlow()).isEmpty();
        assertThat(flow(saturating(2), 50, 1)).isCloseTo(6, within(1e-12));
        assertRefused(
                "pulses per second must be at most 100.0, those of any flow: 150.0", () -> flow(saturating(2), 150, 1));
    }

    @Test
    void ofSeveralFlowsThatGiveSoManyPulsesTheLowestIsMeant() {
        assertThat(flow(saturating(4), 100, 1)).isCloseTo(12, within(1e-12));
    }

    @Test
    void aFlowFarBeyondTheNominalOneIsFound() {
        FlowMeter slipping = FlowMeter.of(
                new PlainFlowMeter("slipping") {
                    @Override
                    public PulseOutput output(Parameters given) {
                        return PulseOutput.of(Amounts.of(2, MILLILITER_PER_PULSE), flow -> 1e-3);
                    }
                },
                Map.of());

        assertThat(flow(slipping, 1, 1)).isCloseTo(60, within(1e-12));
    }

    @Property
    void fromFlowToPulsesAndBack(@ForAll @DoubleRange(min = 6, max = 240) double litersPerMinute) {
        double pulses = TABLE.pulsesPerSecond(liters(litersPerMinute));

        assertThat(flow(TABLE, pulses, 1)).isCloseTo(litersPerMinute, within(1e-10));
    }

    @Property
    void moreFlowNeverGivesFewerPulses(
            @ForAll @DoubleRange(min = 0, max = 240) double one, @ForAll @DoubleRange(min = 0, max = 240) double two) {
        assertThat(TABLE.pulsesPerSecond(liters(Math.max(one, two))))
                .isGreaterThanOrEqualTo(TABLE.pulsesPerSecond(liters(Math.min(one, two))) * (1 - 1e-14));
    }

    @Property
    void theVolumeOfATableStaysBetweenThoseOfItsRows(@ForAll @DoubleRange(min = 6, max = 240) double litersPerMinute) {
        assertThat(TABLE.cubicMetersPerPulse(Amounts.si(FlowRate.class, liters(litersPerMinute))))
                .isBetween(1e-6 * (1 - 1e-12), 1.25e-6 * (1 + 1e-12));
    }

    @Test
    @Tag("locale")
    void arrivesAsItWasAndPrintsAsPeopleWriteIt() {
        FlowMeter arrived = Shipped.copyOf(TABLE);

        assertThat(arrived.cubicMetersPerPulse(2e-3)).isEqualTo(TABLE.cubicMetersPerPulse(2e-3));
        assertThat(arrived.lowestFlow()).isEqualTo(TABLE.lowestFlow());
        Shipped.assertIsAValue(
                TABLE,
                table(new double[] {6, 60, 240}, new double[] {800, 1000, 900}),
                table(new double[] {6, 60, 240}, new double[] {800, 1000, 901}));
        assertThat(TURBINE)
                .hasToString("k-factor, version 1 {highestFlow=60 gal/min, kFactor=1200 pulse/gal, lowFlowCutoff=2"
                        + " gal/min}");
        assertThat(TURBINE.fillLimits()).isEqualTo(FillLimits.FLOW_METER);
        assertThat(TABLE.fillLimits()).isEqualTo(FillLimits.FLOW_METER);
    }
}
