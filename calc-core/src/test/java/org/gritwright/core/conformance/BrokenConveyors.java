package org.gritwright.core.conformance;

import static org.gritwright.core.conformance.LawfulConveyor.PITCH;
import static org.gritwright.core.conformance.LawfulConveyor.SHARE;
import static org.gritwright.core.conformance.LawfulConveyor.TEETH;
import static org.gritwright.core.conformance.LawfulConveyor.meters;

import java.io.InvalidObjectException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.Stream;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Length;
import org.gritwright.core.spi.ConveyorType;
import org.gritwright.core.spi.FillLimits;
import org.gritwright.core.spi.Parameter;
import org.gritwright.core.spi.Parameters;
import org.gritwright.core.spi.Spi;
import org.gritwright.core.spi.SweptVolume;
import org.gritwright.core.spi.TypeId;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.TradeSystem;
import org.gritwright.units.UnitSymbol;

/** Conveyor types that break one law each and obey the others. */
final class BrokenConveyors {

    private BrokenConveyors() {}

    /** A type that breaks a law, and how; the display name of its test. */
    record Broken(Law law, String how, ConveyorType type) {
        @Override
        public String toString() {
            return law.id() + ": " + how;
        }
    }

    static Stream<Broken> all() {
        return Stream.of(
                new Broken(Law.STABLE_IDENTITY, "another version each time", new RisingVersion()),
                new Broken(Law.STABLE_IDENTITY, "no id", new WithId(null)),
                new Broken(Law.STABLE_IDENTITY, "a level of later times", new WithLevels(Spi.LEVEL + 1, 0)),
                new Broken(Law.STABLE_IDENTITY, "a level below the first", new WithLevels(0, 0)),
                new Broken(Law.STABLE_IDENTITY, "another level each time", new WithLevels(Spi.LEVEL, 1)),
                new Broken(Law.DESCRIBED_PARAMETERS, "other limits each time", new ShrinkingLimits()),
                new Broken(Law.DESCRIBED_PARAMETERS, "no list", new WithParameters(null)),
                new Broken(
                        Law.DESCRIBED_PARAMETERS,
                        "a null in the list",
                        new WithParameters(Arrays.asList(PITCH, null, TEETH, SHARE))),
                new Broken(
                        Law.DESCRIBED_PARAMETERS,
                        "a name twice",
                        new WithParameters(List.of(PITCH, TEETH, SHARE, PITCH))),
                new Broken(Law.DESCRIBED_PARAMETERS, "nothing is accepted", new NeverSatisfied()),
                new Broken(Law.ENFORCED_LIMITS, "values are taken as they come", new TakesAnything()),
                new Broken(Law.ENFORCED_LIMITS, "limits hold for all but one parameter", new ForgetsOneLimit()),
                new Broken(Law.ENFORCED_LIMITS, "values past a limit are set to it", new Clamps()),
                new Broken(Law.ENFORCED_LIMITS, "the refusal has no name", new RefusesWithoutName()),
                new Broken(Law.ENFORCED_LIMITS, "half a tooth will do", new HalfTeeth()),
                new Broken(Law.ENFORCED_LIMITS, "the last of a list is taken as it comes", new FirstOfAList()),
                new Broken(Law.NAMED_REFUSALS, "a long pitch is refused without a name", new Stumbles()),
                new Broken(Law.NAMED_REFUSALS, "no function", new OfVolume((meters, area) -> null)),
                new Broken(Law.NAMED_REFUSALS, "a function that throws", new OfVolume((meters, area) -> {
                    throw new IllegalStateException("jammed");
                })),
                new Broken(
                        Law.NAMED_REFUSALS,
                        "a function that refuses an area, though refusing is for parameters",
                        new OfVolume((meters, area) -> {
                            if (area > 1) {
                                throw new InvalidInputException("area", "at most 1 m²", area + " m²");
                            }
                            return meters * area;
                        })),
                new Broken(
                        Law.FINITE, "0 over 0 at no area", new OfVolume((meters, area) -> meters * area * area / area)),
                new Broken(
                        Law.FINITE,
                        "infinite at the largest area",
                        new OfVolume((meters, area) -> area < 5 ? meters * area : Double.POSITIVE_INFINITY)),
                new Broken(
                        Law.FINITE, "NaN though no gate meters it", new OfVolume(false, (meters, area) -> Double.NaN)),
                new Broken(Law.NOT_NEGATIVE, "an offset below 0", new OfVolume((meters, area) -> meters * area - 1e-6)),
                new Broken(Law.NOT_NEGATIVE, "nothing at all", new OfVolume((meters, area) -> 0.0)),
                new Broken(
                        Law.NOT_NEGATIVE,
                        "negative though no gate meters it",
                        new OfVolume(false, (meters, area) -> -meters)),
                new Broken(
                        Law.NOT_NEGATIVE,
                        "nothing at all though no gate meters it",
                        new OfVolume(false, (meters, area) -> 0.0)),
                new Broken(
                        Law.RISING,
                        "of a small volume one part in ten billion less beyond 1 m²",
                        new OfVolume((meters, area) -> 1e-4 * meters * Math.min(1, area) * (area > 1 ? 1 - 1e-10 : 1))),
                new Broken(
                        Law.RISING,
                        "the area matters by one part in ten billion though no gate meters it",
                        new OfVolume(false, (meters, area) -> 1e-4 * meters * (1 + 1e-10 * area))),
                new Broken(
                        Law.RISING,
                        "less beyond 1 m²",
                        new OfVolume((meters, area) -> meters * (area > 1 ? 0.9 : area))),
                new Broken(
                        Law.RISING,
                        "the area matters though no gate meters it",
                        new OfVolume(false, (meters, area) -> meters * (1 + area))),
                new Broken(Law.UNIT_INVARIANT, "the bare number is taken for millimeters", new BareNumbers()),
                new Broken(Law.UNIT_INVARIANT, "other units are refused", new MillimetersOnly()),
                new Broken(Law.UNIT_INVARIANT, "half as much in other units", new LessInOtherUnits(1, 0.5)),
                new Broken(
                        Law.UNIT_INVARIANT,
                        "of a small volume one part in a million less in other units",
                        new LessInOtherUnits(1e-4, 1 - 1e-6)),
                new Broken(Law.DETERMINISTIC, "a little more each time", new Growing()),
                new Broken(Law.DETERMINISTIC, "the last parameters count", new Forgetful()),
                new Broken(Law.DETERMINISTIC, "a function on its second asking", new WornOut()),
                new Broken(Law.DETERMINISTIC, "another answer to other threads", new ByThread()),
                new Broken(Law.DETERMINISTIC, "another answer of each instance", new ByInstance()),
                new Broken(Law.DETERMINISTIC, "metered now and then", new MeteredNowAndThen()),
                new Broken(Law.SERIALIZABLE, "a function that holds its type", new HoldsItself()),
                new Broken(Law.SERIALIZABLE, "a function that loses its number", new Loses()),
                new Broken(Law.SERIALIZABLE, "a function that can't be read again", new Unreadable()),
                new Broken(Law.SERIALIZABLE, "a function that is another thing afterwards", new Turncoat()),
                new Broken(Law.PLAUSIBLE_FILL, "no limits", new WithFill((FillLimits) null)),
                new Broken(
                        Law.PLAUSIBLE_FILL,
                        "other limits each time",
                        new WithFill(FillLimits.COMMON, new FillLimits(0.1, 0.2, 0.9, 1))));
    }

    private static final class RisingVersion extends LawfulConveyor {
        private final AtomicInteger version = new AtomicInteger();

        @Override
        public TypeId id() {
            return TypeId.of("example.org/rising", version.incrementAndGet());
        }
    }

    private static final class WithId extends LawfulConveyor {
        private final TypeId id;

        WithId(TypeId id) {
            this.id = id;
        }

        @Override
        public TypeId id() {
            return id;
        }
    }

    private static final class WithLevels extends LawfulConveyor {
        private final AtomicInteger level;
        private final int step;

        WithLevels(int level, int step) {
            this.level = new AtomicInteger(level);
            this.step = step;
        }

        @Override
        public int spiLevel() {
            return level.getAndAdd(step);
        }
    }

    private static final class ShrinkingLimits extends LawfulConveyor {
        private final AtomicInteger asked = new AtomicInteger();

        @Override
        public List<Parameter<?>> parameters() {
            return List.of(PITCH, Parameter.wholeNumber("teeth", 3, 60 - asked.getAndIncrement()), SHARE);
        }
    }

    private static final class WithParameters extends LawfulConveyor {
        private final List<Parameter<?>> parameters;

        WithParameters(List<Parameter<?>> parameters) {
            this.parameters = parameters;
        }

        @Override
        public List<Parameter<?>> parameters() {
            return parameters;
        }
    }

    private static final class NeverSatisfied extends LawfulConveyor {
        @Override
        public SweptVolume sweptVolume(Parameters given) {
            throw new InvalidInputException("pitch", "another", Amounts.format(given.get(PITCH)));
        }
    }

    /** The first value of a parameter, past all checks. */
    private static double raw(Parameters given, Parameter<?> parameter) {
        Quantity<?> value = given.asMap().get(parameter.name()).get(0);
        return parameter.kind().equals(Length.class)
                ? Amounts.si(Length.class, value.asType(Length.class))
                : Amounts.si(Dimensionless.class, value.asType(Dimensionless.class));
    }

    private static final class TakesAnything extends LawfulConveyor {
        @Override
        public SweptVolume sweptVolume(Parameters given) {
            double meters = raw(given, TEETH) * raw(given, PITCH) * (1 - raw(given, SHARE));
            return area -> area * meters;
        }
    }

    private static final class ForgetsOneLimit extends LawfulConveyor {
        @Override
        public SweptVolume sweptVolume(Parameters given) {
            double meters = given.si(TEETH) * given.si(PITCH) * (1 - raw(given, SHARE));
            return area -> area * meters;
        }
    }

    private static final class Clamps extends LawfulConveyor {
        @Override
        public SweptVolume sweptVolume(Parameters given) {
            double pitch = Math.max(0.01, Math.min(1, raw(given, PITCH)));
            double meters = given.si(TEETH) * pitch * (1 - given.si(SHARE));
            return area -> area * meters;
        }
    }

    private static final class RefusesWithoutName extends LawfulConveyor {
        @Override
        public SweptVolume sweptVolume(Parameters given) {
            if (raw(given, PITCH) > 1) {
                throw new IllegalArgumentException("too long");
            }
            return super.sweptVolume(given);
        }
    }

    private static final class FirstOfAList extends LawfulConveyor {
        private static final Parameter<Length> STEPS = PITCH.asList(2, 9);

        @Override
        public List<Parameter<?>> parameters() {
            return List.of(STEPS);
        }

        @Override
        public SweptVolume sweptVolume(Parameters given) {
            List<Quantity<?>> steps = given.asMap().get(STEPS.name());
            double meters = Amounts.si(Length.class, PITCH.check(steps.get(0).asType(Length.class)))
                    + Amounts.si(Length.class, steps.get(steps.size() - 1).asType(Length.class));
            return area -> area * meters;
        }
    }

    private static final class HalfTeeth extends LawfulConveyor {
        private static final Parameter<Dimensionless> ANY_TEETH = Parameter.of(
                "teeth", Dimensionless.class, Amounts.of(3, SpreadingUnits.ONE), Amounts.of(60, SpreadingUnits.ONE));

        @Override
        public SweptVolume sweptVolume(Parameters given) {
            double meters = given.si(ANY_TEETH) * given.si(PITCH) * (1 - given.si(SHARE));
            return area -> area * meters;
        }
    }

    private static final class Stumbles extends LawfulConveyor {
        @Override
        public SweptVolume sweptVolume(Parameters given) {
            if (given.si(PITCH) > 0.9) {
                throw new IllegalStateException("too long");
            }
            return super.sweptVolume(given);
        }
    }

    /** Volume from the travel, in m, and the open area, in m²; null for no function. */
    private interface Volume extends java.io.Serializable {
        Double of(double meters, double area);
    }

    private static final class OfVolume extends LawfulConveyor {
        private final boolean metered;
        private final Volume volume;

        OfVolume(Volume volume) {
            this(true, volume);
        }

        OfVolume(boolean metered, Volume volume) {
            this.metered = metered;
            this.volume = volume;
        }

        @Override
        public boolean meteredByGate() {
            return metered;
        }

        @Override
        public SweptVolume sweptVolume(Parameters given) {
            double meters = meters(given);
            Volume asked = volume;
            return isNone(meters) ? null : area -> asked.of(meters, area);
        }

        private boolean isNone(double meters) {
            try {
                return volume.of(meters, 0) == null;
            } catch (RuntimeException e) {
                return false;
            }
        }
    }

    private static final class BareNumbers extends LawfulConveyor {
        @Override
        public SweptVolume sweptVolume(Parameters given) {
            double pitch = given.get(PITCH).getValue().doubleValue();
            double meters = given.si(TEETH) * pitch / 1000 * (1 - given.si(SHARE));
            return area -> area * meters;
        }
    }

    private static final class MillimetersOnly extends LawfulConveyor {
        @Override
        public SweptVolume sweptVolume(Parameters given) {
            SweptVolume volume = super.sweptVolume(given);
            if (given.get(PITCH).getUnit().equals(SpreadingUnits.INCH)) {
                throw new InvalidInputException("pitch", "metric", Amounts.format(given.get(PITCH)));
            }
            return volume;
        }
    }

    private static final class LessInOtherUnits extends LawfulConveyor {
        private final double size;
        private final double less;

        LessInOtherUnits(double size, double less) {
            this.size = size;
            this.less = less;
        }

        @Override
        public SweptVolume sweptVolume(Parameters given) {
            boolean isMetric = UnitSymbol.of(given.get(PITCH).getUnit()).system() == TradeSystem.METRIC;
            double meters = size * meters(given) * (isMetric ? 1 : less);
            return area -> area * meters;
        }
    }

    private static final class Growing extends LawfulConveyor {
        private static final AtomicInteger ASKED = new AtomicInteger();

        @Override
        public SweptVolume sweptVolume(Parameters given) {
            double meters = meters(given);
            return area -> area * meters * (1 + 1e-15 * ASKED.incrementAndGet());
        }
    }

    private static final class Forgetful extends LawfulConveyor {
        private double last;

        @Override
        public SweptVolume sweptVolume(Parameters given) {
            last = meters(given);
            return area -> area * last;
        }
    }

    private static final class WornOut extends LawfulConveyor {
        @Override
        public SweptVolume sweptVolume(Parameters given) {
            double meters = meters(given);
            List<Double> asked = new ArrayList<>();
            return area -> {
                asked.add(area);
                return asked.size() > 11 && area == 5 ? meters * 5.1 : area * meters;
            };
        }
    }

    private static final class ByThread extends LawfulConveyor {
        private static final Thread FIRST = Thread.currentThread();

        @Override
        public SweptVolume sweptVolume(Parameters given) {
            double meters = meters(given);
            return area -> Thread.currentThread().equals(FIRST) ? area * meters : area * meters * 1.01;
        }
    }

    /** Public, with a public constructor: another one can be made. */
    public static final class ByInstance extends LawfulConveyor {
        private static final AtomicInteger MADE = new AtomicInteger();
        private final double wear;

        public ByInstance() {
            wear = 1 + 0.01 * MADE.incrementAndGet();
        }

        @Override
        public SweptVolume sweptVolume(Parameters given) {
            double meters = meters(given) * wear;
            return area -> area * meters;
        }
    }

    private static final class MeteredNowAndThen extends LawfulConveyor {
        private final AtomicInteger asked = new AtomicInteger();

        @Override
        public boolean meteredByGate() {
            return asked.getAndIncrement() % 2 == 0;
        }
    }

    private static final class HoldsItself extends LawfulConveyor {
        private final double wear = Math.sqrt(1);

        @Override
        public SweptVolume sweptVolume(Parameters given) {
            double meters = meters(given);
            return area -> area * meters * wear;
        }
    }

    private static final class Loses extends LawfulConveyor {
        private static final class LostVolume implements SweptVolume {
            private static final long serialVersionUID = 1L;
            private final transient double meters;

            LostVolume(double meters) {
                this.meters = meters;
            }

            @Override
            public double cubicMetersPerRevolution(double area) {
                return area * meters;
            }
        }

        @Override
        public SweptVolume sweptVolume(Parameters given) {
            return new LostVolume(meters(given));
        }
    }

    private static final class Unreadable extends LawfulConveyor {
        private record UnreadVolume(double meters) implements SweptVolume {
            private Object readResolve() throws InvalidObjectException {
                throw new InvalidObjectException("not again");
            }

            @Override
            public double cubicMetersPerRevolution(double area) {
                return area * meters;
            }
        }

        @Override
        public SweptVolume sweptVolume(Parameters given) {
            return new UnreadVolume(meters(given));
        }
    }

    private static final class Turncoat extends LawfulConveyor {
        private record OtherVolume(double meters) implements SweptVolume {
            private Object readResolve() {
                return "a text";
            }

            @Override
            public double cubicMetersPerRevolution(double area) {
                return area * meters;
            }
        }

        @Override
        public SweptVolume sweptVolume(Parameters given) {
            return new OtherVolume(meters(given));
        }
    }

    private static final class WithFill extends LawfulConveyor {
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
