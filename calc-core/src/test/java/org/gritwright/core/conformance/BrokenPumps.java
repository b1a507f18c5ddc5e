package org.gritwright.core.conformance;

import static org.gritwright.core.conformance.LawfulPump.SIZE;
import static org.gritwright.core.conformance.LawfulPump.SLIP;
import static org.gritwright.core.conformance.LawfulPump.TOP;
import static org.gritwright.core.conformance.LawfulPump.output;
import static org.gritwright.core.conformance.LawfulPump.volume;

import java.io.Serializable;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Function;
import java.util.stream.Stream;
import org.gritwright.core.spi.FillLimits;
import org.gritwright.core.spi.Parameter;
import org.gritwright.core.spi.Parameters;
import org.gritwright.core.spi.PumpOutput;
import org.gritwright.core.spi.PumpType;
import org.gritwright.core.spi.PumpedVolume;
import org.gritwright.core.spi.Spi;
import org.gritwright.core.spi.TypeId;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.quantity.VolumePerRevolution;

/** Pump types that break one law each and obey the others. */
final class BrokenPumps {

    private BrokenPumps() {}

    /** A type that breaks a law, and how; the display name of its test. */
    record Broken(Law law, String how, PumpType type) {
        @Override
        public String toString() {
            return law.id() + ": " + how;
        }
    }

    static Stream<Broken> all() {
        return Stream.of(
                new Broken(Law.STABLE_IDENTITY, "another version each time", new RisingVersion()),
                new Broken(Law.STABLE_IDENTITY, "a level of later times", new LaterLevel()),
                new Broken(Law.DESCRIBED_PARAMETERS, "a name twice", new NameTwice()),
                new Broken(Law.DESCRIBED_PARAMETERS, "nothing is accepted", of(given -> {
                    throw new InvalidInputException("size", "another", Amounts.format(given.get(SIZE)));
                })),
                new Broken(Law.ENFORCED_LIMITS, "a size is taken as it comes", of(BrokenPumps::ofAnySize)),
                new Broken(
                        Law.ENFORCED_LIMITS,
                        "slip isn't looked at",
                        of(given -> PumpOutput.of(given.get(SIZE), speed -> 1)
                                .within(Amounts.of(1, SpreadingUnits.REVOLUTION_PER_SECOND), given.get(TOP)))),
                new Broken(Law.NAMED_REFUSALS, "no output", of(given -> null)),
                new Broken(Law.NAMED_REFUSALS, "a large size is refused without a name", of(BrokenPumps::stumbling)),
                new Broken(Law.NAMED_REFUSALS, "a volume that throws when asked", ofVolume((size, slip, speed) -> {
                    throw new IllegalStateException("jammed");
                })),
                new Broken(
                        Law.NAMED_REFUSALS, "a speed between the limits is refused", ofVolume((size, slip, speed) -> {
                            if (speed > 1.1 && speed < 1.51) {
                                throw new InvalidInputException("speed", "another", String.valueOf(speed));
                            }
                            return size;
                        })),
                new Broken(
                        Law.FINITE,
                        "infinite at higher speeds",
                        ofVolume((size, slip, speed) -> speed > 1.2 ? Double.POSITIVE_INFINITY : size)),
                new Broken(Law.FINITE, "no number at all", ofVolume((size, slip, speed) -> Double.NaN)),
                new Broken(
                        Law.POSITIVE,
                        "nothing at the lowest speed",
                        ofVolume((size, slip, speed) -> size * (1 - 1 / speed))),
                new Broken(Law.POSITIVE, "backwards", ofVolume((size, slip, speed) -> -size)),
                new Broken(Law.POSITIVE, "nothing at any speed", ofVolume((size, slip, speed) -> 0)),
                new Broken(
                        Law.RISING,
                        "less flow at higher speeds",
                        ofVolume((size, slip, speed) -> speed > 1.3 ? size / 3 / speed : size)),
                new Broken(
                        Law.UNIT_INVARIANT,
                        "the bare number is taken for mL",
                        of(given -> output(
                                given, volume(given.get(SIZE).getValue().doubleValue() * 1e-6, given.si(SLIP))))),
                new Broken(Law.UNIT_INVARIANT, "the displacement knows one unit only", of(BrokenPumps::bareSize)),
                new Broken(
                        Law.UNIT_INVARIANT,
                        "the displacement is off by a little in other units",
                        of(given -> slightly(given, 1e-3, 0))),
                new Broken(
                        Law.UNIT_INVARIANT,
                        "the volume is off by a little in other units",
                        of(given -> slightly(given, 0, 1e-3))),
                new Broken(Law.UNIT_INVARIANT, "the limits know one unit only", of(BrokenPumps::bareLimits)),
                new Broken(Law.DETERMINISTIC, "a little more each time", of(BrokenPumps::growing)),
                new Broken(Law.DETERMINISTIC, "another displacement each time", new Changing(BrokenPumps::larger)),
                new Broken(
                        Law.DETERMINISTIC,
                        "other limits each time",
                        new Changing((given, asked) -> output(given, volume(given.si(SIZE), given.si(SLIP)))
                                .within(
                                        Amounts.of(70, SpreadingUnits.REVOLUTION_PER_MINUTE),
                                        Amounts.of(6000 - asked, SpreadingUnits.REVOLUTION_PER_MINUTE)))),
                new Broken(Law.SERIALIZABLE, "a volume that holds its type", new HoldsItself()),
                new Broken(Law.PLAUSIBLE_FILL, "no limits", new WithFill((FillLimits) null)),
                new Broken(
                        Law.PLAUSIBLE_FILL,
                        "other limits each time",
                        new WithFill(FillLimits.PUMP, FillLimits.FLOW_METER)),
                new Broken(
                        Law.SETTABLE_LIMITS,
                        "the highest speed is refused",
                        of(given -> refusing(given, Amounts.si(TOP.kind(), given.get(TOP))))),
                new Broken(Law.SETTABLE_LIMITS, "the lowest speed is refused", of(given -> refusing(given, 1))));
    }

    private static PumpType of(Function<Parameters, PumpOutput> output) {
        return new Changing((given, asked) -> output.apply(given));
    }

    /** The volume from size, slip and speed, all in SI. */
    private interface Volume extends Serializable {
        double of(double size, double slip, double speed);
    }

    private static PumpType ofVolume(Volume volume) {
        return of(given -> {
            double size = given.si(SIZE);
            double slip = given.si(SLIP);
            return output(given, speed -> volume.of(size, slip, speed));
        });
    }

    private static PumpOutput ofAnySize(Parameters given) {
        double size = Amounts.si(
                VolumePerRevolution.class, given.asMap().get("size").get(0).asType(VolumePerRevolution.class));
        return PumpOutput.of(Amounts.of(size, SpreadingUnits.CUBIC_METER_PER_REVOLUTION), volume(size, given.si(SLIP)))
                .within(Amounts.of(1, SpreadingUnits.REVOLUTION_PER_SECOND), given.get(TOP));
    }

    private static PumpOutput stumbling(Parameters given) {
        if (given.si(SIZE) > 4e-4) {
            throw new ArithmeticException("too large");
        }
        return output(given, volume(given.si(SIZE), given.si(SLIP)));
    }

    private static PumpOutput bareSize(Parameters given) {
        PumpOutput lawful = output(given, volume(given.si(SIZE), given.si(SLIP)));
        return new PumpOutput(
                Amounts.of(given.get(SIZE).getValue().doubleValue(), SpreadingUnits.MILLILITER_PER_REVOLUTION),
                lawful.lowestSpeed(),
                lawful.highestSpeed(),
                lawful.volume());
    }

    /** Off by these parts where the size isn't in mL/rev. */
    private static PumpOutput slightly(Parameters given, double ofDisplacement, double ofVolume) {
        double isOther = given.get(SIZE).getUnit().equals(SpreadingUnits.MILLILITER_PER_REVOLUTION) ? 0 : 1;
        double size = given.si(SIZE);
        PumpOutput lawful = output(given, volume(size * (1 + isOther * ofVolume), given.si(SLIP)));
        return new PumpOutput(
                Amounts.of(size * (1 + isOther * ofDisplacement), SpreadingUnits.CUBIC_METER_PER_REVOLUTION),
                lawful.lowestSpeed(),
                lawful.highestSpeed(),
                lawful.volume());
    }

    private static PumpOutput bareLimits(Parameters given) {
        return output(given, volume(given.si(SIZE), given.si(SLIP)))
                .within(
                        Amounts.of(1, SpreadingUnits.REVOLUTION_PER_SECOND),
                        Amounts.of(
                                1000 + given.get(TOP).getValue().doubleValue(), SpreadingUnits.REVOLUTION_PER_MINUTE));
    }

    private static PumpOutput larger(Parameters given, int asked) {
        double size = given.si(SIZE) * (1 - given.si(SLIP)) * given.si(TOP);
        return PumpOutput.of(Amounts.of(10 + asked, SpreadingUnits.MILLILITER_PER_REVOLUTION), speed -> size);
    }

    private static PumpOutput growing(Parameters given) {
        double size = given.si(SIZE);
        return output(given, speed -> size * (1 + 1e-15 * ASKED.incrementAndGet()));
    }

    private static final AtomicInteger ASKED = new AtomicInteger();

    private static PumpOutput refusing(Parameters given, double refused) {
        double size = given.si(SIZE);
        return output(given, speed -> {
            if (speed == refused) {
                throw new InvalidInputException("speed", "another", String.valueOf(speed));
            }
            return size;
        });
    }

    private static final class RisingVersion extends LawfulPump {
        private final AtomicInteger version = new AtomicInteger();

        @Override
        public TypeId id() {
            return TypeId.of("example.org/rising", version.incrementAndGet());
        }
    }

    private static final class LaterLevel extends LawfulPump {
        @Override
        public int spiLevel() {
            return Spi.LEVEL + 1;
        }
    }

    private static final class NameTwice extends LawfulPump {
        @Override
        public List<Parameter<?>> parameters() {
            return List.of(SIZE, TOP, SLIP, SLIP);
        }
    }

    /** The output from the parameters and the number of times that the type was asked. */
    private interface ByCount {
        PumpOutput of(Parameters given, int asked);
    }

    private static final class Changing extends LawfulPump {
        private final ByCount output;
        private final AtomicInteger asked = new AtomicInteger();

        Changing(ByCount output) {
            this.output = output;
        }

        @Override
        public PumpOutput output(Parameters given) {
            return output.of(given, asked.getAndIncrement());
        }
    }

    private static final class HoldsItself extends LawfulPump {
        private final double wear = Math.sqrt(1);

        @Override
        public PumpOutput output(Parameters given) {
            double size = given.si(SIZE);
            PumpedVolume volume = speed -> size * wear;
            return output(given, volume);
        }
    }

    private static final class WithFill extends LawfulPump {
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
