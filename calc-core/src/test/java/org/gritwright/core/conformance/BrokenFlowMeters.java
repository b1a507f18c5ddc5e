package org.gritwright.core.conformance;

import static org.gritwright.core.conformance.LawfulFlowMeter.CUTOFF;
import static org.gritwright.core.conformance.LawfulFlowMeter.PULSE;
import static org.gritwright.core.conformance.LawfulFlowMeter.output;
import static org.gritwright.core.conformance.LawfulFlowMeter.volume;

import java.io.Serializable;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Function;
import java.util.stream.Stream;
import org.gritwright.core.spi.FillLimits;
import org.gritwright.core.spi.FlowMeterType;
import org.gritwright.core.spi.MeteredVolume;
import org.gritwright.core.spi.Parameter;
import org.gritwright.core.spi.Parameters;
import org.gritwright.core.spi.PulseOutput;
import org.gritwright.core.spi.Spi;
import org.gritwright.core.spi.TypeId;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.quantity.FlowRate;

/** Flow-meter types that break one law each and obey the others. */
final class BrokenFlowMeters {
    /** 240 L/min in m³/s, as the lawful type has it. */
    private static final double HIGHEST = Amounts.si(FlowRate.class, Amounts.of(240, SpreadingUnits.LITER_PER_MINUTE));

    private static final AtomicInteger ASKED = new AtomicInteger();

    private BrokenFlowMeters() {}

    /** A type that breaks a law, and how; the display name of its test. */
    record Broken(Law law, String how, FlowMeterType type) {
        @Override
        public String toString() {
            return law.id() + ": " + how;
        }
    }

    static Stream<Broken> all() {
        return Stream.of(
                new Broken(Law.STABLE_IDENTITY, "another version each time", new RisingVersion()),
                new Broken(Law.STABLE_IDENTITY, "a level of later times", new LaterLevel()),
                new Broken(Law.DESCRIBED_PARAMETERS, "a null in the list", new Gap()),
                new Broken(Law.DESCRIBED_PARAMETERS, "nothing is accepted", of(given -> {
                    throw new InvalidInputException("pulse", "another", Amounts.format(given.get(PULSE)));
                })),
                new Broken(Law.ENFORCED_LIMITS, "a cut-off is taken as it comes", of(BrokenFlowMeters::ofAnyCutoff)),
                new Broken(Law.NAMED_REFUSALS, "no output", of(given -> null)),
                new Broken(Law.NAMED_REFUSALS, "a volume that throws when asked", ofVolume((pulse, cutoff, flow) -> {
                    throw new IllegalStateException("stuck");
                })),
                new Broken(
                        Law.NAMED_REFUSALS, "a flow between the limits is refused", ofVolume((pulse, cutoff, flow) -> {
                            if (flow > 0.001 && flow < 0.002) {
                                throw new InvalidInputException("flow", "another", String.valueOf(flow));
                            }
                            return pulse;
                        })),
                new Broken(
                        Law.FINITE,
                        "infinite at the highest flow",
                        ofVolume((pulse, cutoff, flow) -> flow < HIGHEST ? pulse : Double.POSITIVE_INFINITY)),
                new Broken(Law.FINITE, "no number at all", ofVolume((pulse, cutoff, flow) -> Double.NaN)),
                new Broken(
                        Law.POSITIVE,
                        "endless pulses at the lowest flow",
                        ofVolume((pulse, cutoff, flow) -> flow > cutoff ? pulse : 0)),
                new Broken(
                        Law.POSITIVE,
                        "endless pulses at the highest flow",
                        ofVolume((pulse, cutoff, flow) -> flow < HIGHEST ? pulse : 0)),
                new Broken(Law.POSITIVE, "pulses count down", ofVolume((pulse, cutoff, flow) -> -pulse)),
                new Broken(
                        Law.RISING,
                        "fewer pulses at larger flows",
                        ofVolume((pulse, cutoff, flow) -> flow > 0.002 ? 3 * pulse : pulse)),
                new Broken(
                        Law.UNIT_INVARIANT,
                        "the bare number is taken for mL",
                        of(given -> output(
                                given, volume(given.get(PULSE).getValue().doubleValue() * 1e-6, given.si(CUTOFF))))),
                new Broken(
                        Law.UNIT_INVARIANT, "the nominal volume knows one unit only", of(given -> bare(given, true))),
                new Broken(Law.UNIT_INVARIANT, "the cut-off knows one unit only", of(given -> bare(given, false))),
                new Broken(Law.UNIT_INVARIANT, "the cut-off is off by a little in other units", of(given -> {
                    boolean isOther = !given.get(CUTOFF).getUnit().equals(SpreadingUnits.LITER_PER_MINUTE);
                    double cutoff = given.si(CUTOFF) * (isOther ? 1.001 : 1);
                    return PulseOutput.constant(given.get(PULSE))
                            .within(
                                    Amounts.of(cutoff, SpreadingUnits.CUBIC_METER_PER_SECOND),
                                    Amounts.of(240, SpreadingUnits.LITER_PER_MINUTE));
                })),
                new Broken(Law.DETERMINISTIC, "a little more each time", of(BrokenFlowMeters::growing)),
                new Broken(
                        Law.DETERMINISTIC, "another nominal volume each time", new Changing(BrokenFlowMeters::larger)),
                new Broken(
                        Law.DETERMINISTIC,
                        "another cut-off each time",
                        new Changing((given, asked) -> output(given, volume(given.si(PULSE), given.si(CUTOFF)))
                                .within(
                                        Amounts.of(1 + 0.01 * asked, SpreadingUnits.LITER_PER_MINUTE),
                                        Amounts.of(240, SpreadingUnits.LITER_PER_MINUTE)))),
                new Broken(Law.SERIALIZABLE, "a volume that holds its type", new HoldsItself()),
                new Broken(Law.PLAUSIBLE_FILL, "no limits", new WithFill((FillLimits) null)),
                new Broken(
                        Law.PLAUSIBLE_FILL,
                        "other limits each time",
                        new WithFill(FillLimits.PUMP, FillLimits.FLOW_METER)),
                new Broken(Law.SETTABLE_LIMITS, "the highest flow is refused", of(given -> refusing(given, HIGHEST))),
                new Broken(
                        Law.SETTABLE_LIMITS,
                        "the lowest flow is refused",
                        of(given -> refusing(given, given.si(CUTOFF)))));
    }

    private static FlowMeterType of(Function<Parameters, PulseOutput> output) {
        return new Changing((given, asked) -> output.apply(given));
    }

    /** The volume from volume per pulse, cut-off and flow, all in SI. */
    private interface Volume extends Serializable {
        double of(double pulse, double cutoff, double flow);
    }

    private static FlowMeterType ofVolume(Volume volume) {
        return of(given -> {
            double pulse = given.si(PULSE);
            double cutoff = given.si(CUTOFF);
            return output(given, flow -> volume.of(pulse, cutoff, flow));
        });
    }

    private static PulseOutput ofAnyCutoff(Parameters given) {
        double cutoff =
                Amounts.si(FlowRate.class, given.asMap().get("cutoff").get(0).asType(FlowRate.class));
        return PulseOutput.of(given.get(PULSE), volume(given.si(PULSE), cutoff))
                .within(
                        Amounts.of(Math.max(0, cutoff), SpreadingUnits.CUBIC_METER_PER_SECOND),
                        Amounts.of(240, SpreadingUnits.LITER_PER_MINUTE));
    }

    private static PulseOutput bare(Parameters given, boolean isPulse) {
        PulseOutput lawful = output(given, volume(given.si(PULSE), given.si(CUTOFF)));
        return new PulseOutput(
                isPulse
                        ? Amounts.of(given.get(PULSE).getValue().doubleValue(), SpreadingUnits.MILLILITER_PER_PULSE)
                        : lawful.nominal(),
                isPulse
                        ? lawful.lowestFlow()
                        : Amounts.of(given.get(CUTOFF).getValue().doubleValue(), SpreadingUnits.LITER_PER_MINUTE),
                lawful.highestFlow(),
                lawful.volume());
    }

    private static PulseOutput larger(Parameters given, int asked) {
        double pulse = given.si(PULSE) * (1 + given.si(CUTOFF));
        return PulseOutput.of(Amounts.of(10 + asked, SpreadingUnits.MILLILITER_PER_PULSE), flow -> pulse);
    }

    private static PulseOutput growing(Parameters given) {
        double pulse = given.si(PULSE);
        return output(given, flow -> pulse * (1 + 1e-15 * ASKED.incrementAndGet()));
    }

    private static PulseOutput refusing(Parameters given, double refused) {
        double pulse = given.si(PULSE);
        return output(given, flow -> {
            if (flow == refused) {
                throw new InvalidInputException("flow", "another", String.valueOf(flow));
            }
            return pulse;
        });
    }

    private static final class RisingVersion extends LawfulFlowMeter {
        private final AtomicInteger version = new AtomicInteger();

        @Override
        public TypeId id() {
            return TypeId.of("example.org/rising", version.incrementAndGet());
        }
    }

    private static final class LaterLevel extends LawfulFlowMeter {
        @Override
        public int spiLevel() {
            return Spi.LEVEL + 1;
        }
    }

    private static final class Gap extends LawfulFlowMeter {
        @Override
        public List<Parameter<?>> parameters() {
            return Arrays.asList(PULSE, null, CUTOFF);
        }
    }

    /** The output from the parameters and the number of times that the type was asked. */
    private interface ByCount {
        PulseOutput of(Parameters given, int asked);
    }

    private static final class Changing extends LawfulFlowMeter {
        private final ByCount output;
        private final AtomicInteger asked = new AtomicInteger();

        Changing(ByCount output) {
            this.output = output;
        }

        @Override
        public PulseOutput output(Parameters given) {
            return output.of(given, asked.getAndIncrement());
        }
    }

    private static final class HoldsItself extends LawfulFlowMeter {
        private final double wear = Math.sqrt(1);

        @Override
        public PulseOutput output(Parameters given) {
            double pulse = given.si(PULSE);
            MeteredVolume volume = flow -> pulse * wear;
            return output(given, volume);
        }
    }

    private static final class WithFill extends LawfulFlowMeter {
        private final List<FillLimits> limits;
        private final AtomicInteger asked = new AtomicInteger();

        WithFill(FillLimits... limits) {
            this.limits = Arrays.asList(limits);
        }

        @Override
        public FillLimits fillLimits() {
            return limits.get(asked.getAndIncrement() % limits.size());
        }
    }
}
