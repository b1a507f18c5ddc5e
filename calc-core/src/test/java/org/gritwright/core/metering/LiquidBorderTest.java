package org.gritwright.core.metering;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatNullPointerException;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.gritwright.core.Samples.assertRefused;
import static org.gritwright.units.SpreadingUnits.LITER_PER_MINUTE;
import static org.gritwright.units.SpreadingUnits.MILLILITER_PER_PULSE;
import static org.gritwright.units.SpreadingUnits.MILLILITER_PER_REVOLUTION;
import static org.gritwright.units.SpreadingUnits.PULSE;
import static org.gritwright.units.SpreadingUnits.REVOLUTION_PER_MINUTE;
import static org.gritwright.units.SpreadingUnits.SECOND;

import java.util.Map;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.IntFunction;
import javax.measure.Quantity;
import org.gritwright.core.spi.FillLimits;
import org.gritwright.core.spi.Parameters;
import org.gritwright.core.spi.PlainFlowMeter;
import org.gritwright.core.spi.PlainPump;
import org.gritwright.core.spi.PulseOutput;
import org.gritwright.core.spi.PumpOutput;
import org.gritwright.core.spi.PumpedVolume;
import org.gritwright.core.spi.TypeId;
import org.gritwright.core.spi.TypeRegistry;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.RefusalCode;
import org.gritwright.units.quantity.FlowRate;
import org.gritwright.units.quantity.RotationalSpeed;
import org.gritwright.units.quantity.VolumePerPulse;
import org.gritwright.units.quantity.VolumePerRevolution;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What a pump or flow-meter type from outside returns is checked where it is used. */
class LiquidBorderTest {
    private static final Quantity<VolumePerRevolution> TEN = Amounts.of(10, MILLILITER_PER_REVOLUTION);
    private static final Quantity<VolumePerPulse> TWO = Amounts.of(2, MILLILITER_PER_PULSE);
    private static final Quantity<RotationalSpeed> SPEED = Amounts.of(60, REVOLUTION_PER_MINUTE);
    private static final Quantity<FlowRate> FLOW = Amounts.of(6, LITER_PER_MINUTE);

    /** A pump type that returns whatever it is told to, by the number of times that it was asked. */
    private static final class OddPump extends PlainPump {
        private final IntFunction<PumpOutput> outputs;
        private final FillLimits limits;
        private int asked;

        OddPump(IntFunction<PumpOutput> outputs, FillLimits limits) {
            super("odd");
            this.outputs = outputs;
            this.limits = limits;
        }

        @Override
        public PumpOutput output(Parameters given) {
            return outputs.apply(asked++);
        }

        @Override
        public FillLimits fillLimits() {
            return limits;
        }
    }

    /** A flow-meter type that returns whatever it is told to, by the number of times that it was asked. */
    private static final class OddMeter extends PlainFlowMeter {
        private final IntFunction<PulseOutput> outputs;
        private final FillLimits limits;
        private int asked;

        OddMeter(IntFunction<PulseOutput> outputs, FillLimits limits) {
            super("odd");
            this.outputs = outputs;
            this.limits = limits;
        }

        @Override
        public PulseOutput output(Parameters given) {
            return outputs.apply(asked++);
        }

        @Override
        public FillLimits fillLimits() {
            return limits;
        }
    }

    private static Pump pump(IntFunction<PumpOutput> outputs) {
        return Pump.of(new OddPump(outputs, FillLimits.PUMP), Map.of());
    }

    private static FlowMeter meter(IntFunction<PulseOutput> outputs) {
        return FlowMeter.of(new OddMeter(outputs, FillLimits.FLOW_METER), Map.of());
    }

    private static void assertTypeFailed(String message, Runnable asked) {
        assertThatThrownBy(asked::run)
                .isInstanceOfSatisfying(
                        InvalidInputException.class, e -> assertThat(e.code()).isEqualTo(RefusalCode.TYPE_FAILED))
                .hasMessage(message);
    }

    @ParameterizedTest
    @ValueSource(doubles = {Double.NaN, -1, 0, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY})
    void aVolumeThatCanNotBeNamesTheType(double volume) {
        Pump pump = pump(asked -> PumpOutput.of(TEN, speed -> volume));
        FlowMeter meter = meter(asked -> PulseOutput.of(TWO, flow -> volume));
        String ofPump = "pumped volume of type example.org/odd, version 1 must be finite and greater than 0: " + volume
                + " m³/rev";
        String ofMeter = "metered volume of type example.org/odd, version 1 must be finite and greater than 0: "
                + volume + " m³/pulse";

        assertTypeFailed(ofPump, () -> pump.cubicMetersPerRevolution(1));
        assertTypeFailed(ofPump, () -> pump.flow(SPEED));
        assertTypeFailed(ofMeter, () -> meter.cubicMetersPerPulse(1));
        assertTypeFailed(ofMeter, () -> meter.pulsesPerSecond(FLOW));
        assertTypeFailed(ofMeter, () -> meter.flow(Amounts.of(1, PULSE), Amounts.of(1, SECOND)));
    }

    @Test
    void aTypeThatReturnsNothingIsNamed() {
        assertTypeFailed(
                "output of type example.org/odd, version 1 must be given by the type: null", () -> pump(asked -> null));
        assertTypeFailed(
                "output of type example.org/odd, version 1 must be given by the type: null",
                () -> meter(asked -> null));
        assertTypeFailed(
                "fill limits of type example.org/odd, version 1 must be given by the type: null",
                () -> Pump.of(new OddPump(asked -> PumpOutput.constant(TEN), null), Map.of()));
        assertTypeFailed(
                "fill limits of type example.org/odd, version 1 must be given by the type: null",
                () -> FlowMeter.of(new OddMeter(asked -> PulseOutput.constant(TWO), null), Map.of()));
    }

    @Test
    void whatATypeThrowsIsTheCause() {
        PumpedVolume jammed = speed -> Math.floorDiv(1, 0);
        Pump pump = pump(asked -> PumpOutput.of(TEN, jammed));
        FlowMeter meter = meter(asked -> PulseOutput.of(TWO, flow -> Math.floorDiv(1, 0)));

        assertThatThrownBy(() -> pump.flow(SPEED))
                .isInstanceOf(InvalidInputException.class)
                .hasCauseInstanceOf(ArithmeticException.class);
        assertThatThrownBy(() -> meter.cubicMetersPerPulse(1e-4))
                .isInstanceOf(InvalidInputException.class)
                .hasCauseInstanceOf(ArithmeticException.class);
        assertThatThrownBy(() -> pump(asked -> {
                    throw new IllegalStateException("no pump");
                }))
                .isInstanceOf(InvalidInputException.class)
                .hasCauseInstanceOf(IllegalStateException.class);
    }

    @Test
    void anOutputThatChangesIsCaught() {
        PumpOutput pump = PumpOutput.constant(TEN);
        PulseOutput meter = PulseOutput.constant(TWO);
        Quantity<RotationalSpeed> top = Amounts.of(600, REVOLUTION_PER_MINUTE);
        Quantity<FlowRate> most = Amounts.of(600, LITER_PER_MINUTE);

        assertChangeIsCaught(pump, PumpOutput.constant(Amounts.of(11, MILLILITER_PER_REVOLUTION)));
        assertChangeIsCaught(pump, pump.within(pump.lowestSpeed(), top));
        assertChangeIsCaught(pump.within(pump.lowestSpeed(), top), pump.within(SPEED, top));
        assertChangeIsCaught(meter, PulseOutput.constant(Amounts.of(3, MILLILITER_PER_PULSE)));
        assertChangeIsCaught(meter, meter.within(meter.lowestFlow(), most));
        assertChangeIsCaught(meter.within(meter.lowestFlow(), most), meter.within(FLOW, most));
        assertThat(pump(asked -> PumpOutput.constant(TEN)).displacement()).isEqualTo(TEN);
        assertThat(meter(asked -> PulseOutput.constant(TWO)).nominal()).isEqualTo(TWO);
    }

    private static final String CHANGED = "output of type example.org/odd, version 1 must be the same whenever asked: a"
            + " different one the second time";

    private static void assertChangeIsCaught(PumpOutput first, PumpOutput second) {
        assertTypeFailed(CHANGED, () -> pump(asked -> asked == 0 ? first : second));
    }

    private static void assertChangeIsCaught(PulseOutput first, PulseOutput second) {
        assertTypeFailed(CHANGED, () -> meter(asked -> asked == 0 ? first : second));
    }

    @Test
    void aFunctionIsAskedOnceForEachAnswerAndNeverOutsideTheLimits() {
        AtomicInteger asked = new AtomicInteger();
        Pump pump = pump(times -> PumpOutput.of(TEN, speed -> {
                    asked.incrementAndGet();
                    return speed < 1 || speed > 10 ? Double.NaN : 1e-5;
                })
                .within(SPEED, Amounts.of(600, REVOLUTION_PER_MINUTE)));

        assertThat(pump.cubicMetersPerRevolution(1 - 1e-14)).isEqualTo(1e-5);
        assertThat(pump.cubicMetersPerRevolution(10 + 1e-12)).isEqualTo(1e-5);
        assertThat(asked).hasValue(2);
        assertRefused(
                "shaft speed must be within 60 rev/min to 600 rev/min: 30 rev/min",
                () -> pump.cubicMetersPerRevolution(0.5));
        assertThat(asked).hasValue(2);
    }

    @Test
    void aRegisteredTypeIsFoundAndRefusalsSayWhatTheyAreAbout() {
        TypeRegistry types = BuiltInTypes.registry();

        assertThat(Pump.of(types, TypeId.of("displacement-pump", 1), Map.of("displacement", TEN)))
                .isEqualTo(Pump.of(new DisplacementPump(), Map.of("displacement", TEN)))
                .isNotEqualTo(Pump.of(
                        new DisplacementPump(), Map.of("displacement", Amounts.of(11, MILLILITER_PER_REVOLUTION))));
        assertRefused(
                "pump: displacement of displacement-pump must be given: nothing",
                () -> Pump.of(types, TypeId.of("displacement-pump", 1), Map.of()));
        assertRefused(
                "flow meter: kFactor of k-factor must be given: nothing",
                () -> FlowMeter.of(types, TypeId.of("k-factor", 1), Map.of()));
        assertThatThrownBy(() -> FlowMeter.of(types, TypeId.of("k-factor", 2), Map.of()))
                .hasMessageStartingWith("flow-meter type must be one of the registry: ");
        assertThatThrownBy(() -> Pump.of(types, TypeId.of("gear-pump", 2), Map.of()))
                .hasMessageStartingWith("pump type must be one of the registry: ");
    }

    @Test
    void parametersAndIdAreGiven() {
        TypeRegistry types = BuiltInTypes.registry();

        assertThatNullPointerException()
                .isThrownBy(() -> Pump.of(types, null, Map.of()))
                .withMessage("id");
        assertThatNullPointerException()
                .isThrownBy(() -> FlowMeter.of(types, TypeId.of("k-factor", 1), null))
                .withMessage("given");
    }

    @Test
    void aTypeMayKnowItsLimitsBetter() {
        FillLimits limits = new FillLimits(0.1, 0.2, 0.6, 0.8);

        assertThat(Pump.of(new OddPump(asked -> PumpOutput.constant(TEN), limits), Map.of())
                        .fillLimits())
                .isSameAs(limits);
        assertThat(FlowMeter.of(new OddMeter(asked -> PulseOutput.constant(TWO), limits), Map.of())
                        .fillLimits())
                .isSameAs(limits);
        assertThat(pump(asked -> PumpOutput.constant(TEN)).fillLimits()).isEqualTo(FillLimits.PUMP);
        assertThat(meter(asked -> PulseOutput.constant(TWO)).fillLimits()).isEqualTo(FillLimits.FLOW_METER);
    }
}
