package org.gritwright.core.fuzz;

import static org.gritwright.core.LiquidSamples.BRINE;
import static org.gritwright.core.LiquidSamples.read;
import static org.gritwright.core.Samples.NOON;
import static org.gritwright.core.Samples.SENSOR;
import static org.gritwright.core.Samples.pulses;
import static org.gritwright.units.SpreadingUnits.CUBIC_METER_PER_REVOLUTION;
import static org.gritwright.units.SpreadingUnits.CUBIC_METER_PER_SECOND;
import static org.gritwright.units.SpreadingUnits.LITER_PER_PULSE;
import static org.gritwright.units.SpreadingUnits.PULSE;
import static org.gritwright.units.SpreadingUnits.PULSE_PER_LITER;
import static org.gritwright.units.SpreadingUnits.REVOLUTION_PER_MINUTE;
import static org.gritwright.units.SpreadingUnits.SECOND;
import static org.gritwright.units.SpreadingUnits.US_GALLON_PER_MILE;

import java.util.List;
import javax.measure.Quantity;
import javax.measure.quantity.Speed;
import org.gritwright.core.LiquidSamples;
import org.gritwright.core.calibration.Calibration;
import org.gritwright.core.calibration.CalibrationCatch;
import org.gritwright.core.conformance.Conformance;
import org.gritwright.core.curve.SlipCurve;
import org.gritwright.core.curve.TimedCatch;
import org.gritwright.core.envelope.LiquidEnvelope;
import org.gritwright.core.metering.BuiltInTypes;
import org.gritwright.core.metering.FlowMeter;
import org.gritwright.core.metering.FlowMetering;
import org.gritwright.core.metering.Metering;
import org.gritwright.core.metering.Pump;
import org.gritwright.core.metering.PumpMetering;
import org.gritwright.core.observation.CalibrationPoint;
import org.gritwright.core.observation.Observation;
import org.gritwright.core.range.WorkingRange;
import org.gritwright.core.spi.FillLimits;
import org.gritwright.core.spi.FlowMeterType;
import org.gritwright.core.spi.Parameter;
import org.gritwright.core.spi.Parameters;
import org.gritwright.core.spi.PulseOutput;
import org.gritwright.core.spi.PumpOutput;
import org.gritwright.core.spi.PumpType;
import org.gritwright.core.spi.Setting;
import org.gritwright.core.spi.TypeId;
import org.gritwright.core.spi.TypeRegistry;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.quantity.FlowRate;
import org.gritwright.units.quantity.RotationalSpeed;
import org.gritwright.units.quantity.VolumePerPulse;
import org.gritwright.units.quantity.VolumePerRevolution;

/**
 * Pump and flow-meter types that answer anything at all, and now this, now that: they are left out at their registration, or what they
 * do is refused, or what comes out is a volume. What doesn't ask them is computed.
 */
public final class LiquidTypeFuzz {
    private static final TypeId PUMP = TypeId.of("example.org/moody-pump", 1);
    private static final TypeId METER = TypeId.of("example.org/moody-meter", 1);

    private LiquidTypeFuzz() {}

    /**
     * Reads bytes as choices of what the types answer.
     *
     * @param data the choices
     */
    public static void fuzzerTestOneInput(byte[] data) {
        Moods moods = new Moods(new Choices(data));
        PumpType pump = new MoodyPump(moods);
        FlowMeterType meter = new MoodyMeter(moods);
        TypeRegistry types = BuiltInTypes.registry().with(List.of(), List.of(), List.of(pump), List.of(meter));
        types.rejected().forEach(left -> Check.that(!left.reason().isEmpty(), "a reason"));
        attempt(() -> pumped(Pump.of(types, PUMP, Moods.ENTERED)));
        attempt(() -> metered(FlowMeter.of(types, METER, Moods.ENTERED)));
        Check.that(
                calibrated(LiquidSamples.pump(SENSOR)).equals(calibrated(LiquidSamples.pump(SENSOR))),
                "what is beside them is computed");
        Conformance.check(pump).forEach(violation -> Check.that(!violation.how().isEmpty(), "how it violates"));
        Conformance.check(meter)
                .forEach(violation -> Check.that(!violation.how().isEmpty(), "how it violates"));
    }

    private static void attempt(Runnable work) {
        try {
            work.run();
        } catch (InvalidInputException refused) {
            Check.that(!refused.getMessage().isBlank(), "what is wrong");
        }
    }

    private static void pumped(Pump pump) {
        Check.that(isVolume(pump.cubicMetersPerRevolution()), "a displacement");
        attempt(() -> Check.that(isVolume(pump.cubicMetersPerRevolution(4)), "a volume per revolution"));
        attempt(() -> Check.that(
                isVolume(Amounts.si(FlowRate.class, pump.flow(Amounts.of(240, REVOLUTION_PER_MINUTE)))), "a flow"));
        Metering metering = new PumpMetering(pump, SENSOR);
        attempt(() -> calibrated(metering));
        attempt(() -> driven(metering));
    }

    /** What a type says never changes what catches say. */
    private static void driven(Metering metering) {
        SlipCurve curve = SlipCurve.chosenByTest(List.of(
                timed(metering, 60, 2), timed(metering, 60, 2.1), timed(metering, 15, 5), timed(metering, 15, 5.1)));
        LiquidEnvelope envelope =
                LiquidEnvelope.ofPump(curve, new WorkingRange(curve.lowestSpeed(), curve.highestSpeed()));
        Quantity<Speed> fastest = envelope.speedsFor(Amounts.of(20, US_GALLON_PER_MILE))
                .highest()
                .value()
                .value();
        Check.that(isVolume(Amounts.si(Speed.class, fastest)), "a road speed");
        Check.that(
                isVolume(Amounts.si(
                        VolumePerRevolution.class,
                        curve.volumePerRevolution(curve.lowestSpeed()).value())),
                "a volume by catches");
    }

    /** 10 000 pulses, a hundred revolutions. */
    private static TimedCatch timed(Metering metering, double seconds, double gallons) {
        return new TimedCatch(caught(metering, gallons), Amounts.of(seconds, SECOND));
    }

    private static CalibrationCatch caught(Metering metering, double gallons) {
        return CalibrationCatch.of(
                Observation.of(CalibrationPoint.of(BRINE, metering, Setting.none()), NOON, read(gallons))
                        .counted(pulses(10_000)));
    }

    private static Calibration calibrated(Metering metering) {
        Calibration calibration = Calibration.from(List.of(caught(metering, 5), caught(metering, 5.1)));
        Check.that(
                isVolume(Amounts.si(
                        VolumePerRevolution.class,
                        calibration.volumePerRevolution().orElseThrow().value())),
                "a calibrated volume");
        Check.that(calibration.apparentFill().value() >= 0, "a volumetric efficiency");
        calibration.findings().forEach(finding -> Check.that(!finding.sentence().isBlank(), "a sentence"));
        return calibration;
    }

    private static void metered(FlowMeter meter) {
        Check.that(isVolume(meter.cubicMetersPerPulse()), "a nominal volume");
        attempt(() -> Check.that(isVolume(meter.cubicMetersPerPulse(1e-3)), "a volume per pulse"));
        attempt(() ->
                Check.that(meter.pulsesPerSecond(Amounts.of(1e-3, CUBIC_METER_PER_SECOND)) >= 0, "pulses per second"));
        attempt(() -> {
            double flow = Amounts.si(FlowRate.class, meter.flow(Amounts.of(6000, PULSE), Amounts.of(60, SECOND)));
            Check.that(flow >= 0 && flow < Double.POSITIVE_INFINITY, "a flow by pulses");
        });
        FlowMetering metering = new FlowMetering(meter);
        attempt(() -> calibrated(metering).entered(Amounts.of(1, PULSE_PER_LITER)));
        attempt(() -> Check.that(!metering.toString().isBlank(), "words"));
    }

    /** A number that can be a volume: finite and more than 0. */
    private static boolean isVolume(double si) {
        return si > 0 && si < Double.POSITIVE_INFINITY;
    }

    private record MoodyPump(Moods moods) implements PumpType {
        @Override
        public TypeId id() {
            return moods.id(PUMP.name());
        }

        @Override
        public int spiLevel() {
            return moods.level();
        }

        @Override
        public List<Parameter<?>> parameters() {
            return moods.parameters();
        }

        @Override
        public FillLimits fillLimits() {
            return moods.fill();
        }

        @Override
        public PumpOutput output(Parameters given) {
            double volume = moods.number(given.si(Moods.PITCH) / 300);
            Quantity<VolumePerRevolution> displacement = Amounts.of(volume, CUBIC_METER_PER_REVOLUTION);
            PumpOutput usual = PumpOutput.of(displacement, speed -> moods.number(volume));
            if (!moods.isOdd()) {
                return usual;
            }
            return switch (moods.choices().below(5)) {
                case 0 -> null;
                case 1 -> PumpOutput.of(displacement, null);
                case 2 -> PumpOutput.constant(displacement);
                case 3 -> usual.from(rpm(moods.number(10)));
                default -> usual.within(rpm(moods.number(10)), rpm(moods.number(300)));
            };
        }

        private static Quantity<RotationalSpeed> rpm(double speed) {
            return Amounts.of(speed, REVOLUTION_PER_MINUTE);
        }
    }

    private record MoodyMeter(Moods moods) implements FlowMeterType {
        @Override
        public TypeId id() {
            return moods.id(METER.name());
        }

        @Override
        public int spiLevel() {
            return moods.level();
        }

        @Override
        public List<Parameter<?>> parameters() {
            return moods.parameters();
        }

        @Override
        public FillLimits fillLimits() {
            return moods.fill();
        }

        @Override
        public PulseOutput output(Parameters given) {
            double volume = moods.number(given.si(Moods.PITCH) / 30_000);
            Quantity<VolumePerPulse> nominal = Amounts.of(1000 * volume, LITER_PER_PULSE);
            PulseOutput usual = PulseOutput.of(nominal, flow -> moods.number(volume));
            if (!moods.isOdd()) {
                return usual;
            }
            return switch (moods.choices().below(5)) {
                case 0 -> null;
                case 1 -> PulseOutput.of(nominal, null);
                case 2 -> PulseOutput.constant(nominal);
                case 3 -> usual.from(flow(moods.number(1e-5)));
                default -> usual.within(flow(moods.number(1e-5)), flow(moods.number(1e-2)));
            };
        }

        private static Quantity<FlowRate> flow(double flow) {
            return Amounts.of(flow, CUBIC_METER_PER_SECOND);
        }
    }
}
