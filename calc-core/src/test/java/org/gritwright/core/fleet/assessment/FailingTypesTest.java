package org.gritwright.core.fleet.assessment;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.gritwright.core.fleet.day.Trucks.calibrationCatch;
import static org.gritwright.core.fleet.day.Trucks.day;
import static org.gritwright.core.fleet.day.Trucks.idle;
import static org.gritwright.core.fleet.day.Trucks.verificationCatch;
import static org.gritwright.core.fleet.day.Trucks.with;
import static org.gritwright.units.SpreadingUnits.INCH;
import static org.gritwright.units.SpreadingUnits.METER;
import static org.gritwright.units.SpreadingUnits.MILE_PER_HOUR;
import static org.gritwright.units.SpreadingUnits.MINUTE;
import static org.gritwright.units.SpreadingUnits.ONE;
import static org.gritwright.units.SpreadingUnits.PERCENT;
import static org.gritwright.units.SpreadingUnits.POUND;
import static org.gritwright.units.SpreadingUnits.POUND_PER_MILE;
import static org.gritwright.units.SpreadingUnits.PULSE_PER_REVOLUTION;

import java.io.IOException;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Supplier;
import java.util.stream.Stream;
import javax.measure.quantity.Length;
import org.gritwright.core.Samples;
import org.gritwright.core.fleet.day.FleetDay;
import org.gritwright.core.fleet.day.PlanEntry;
import org.gritwright.core.fleet.day.SpreaderEntry;
import org.gritwright.core.fleet.day.StepTimes;
import org.gritwright.core.fleet.day.TruckDay;
import org.gritwright.core.fleet.day.TypedEntry;
import org.gritwright.core.fleet.day.WeighingMethodEntry;
import org.gritwright.core.fleet.plan.FleetPlan;
import org.gritwright.core.fleet.plan.FleetPlanner;
import org.gritwright.core.metering.BuiltInTypes;
import org.gritwright.core.metering.Conveyor;
import org.gritwright.core.metering.Gate;
import org.gritwright.core.metering.Spreader;
import org.gritwright.core.planning.Containers;
import org.gritwright.core.spi.ConveyorType;
import org.gritwright.core.spi.FillLimits;
import org.gritwright.core.spi.GateShape;
import org.gritwright.core.spi.GateType;
import org.gritwright.core.spi.Parameter;
import org.gritwright.core.spi.Parameters;
import org.gritwright.core.spi.Setting;
import org.gritwright.core.spi.Spi;
import org.gritwright.core.spi.SweptVolume;
import org.gritwright.core.spi.TypeId;
import org.gritwright.core.spi.TypeRegistry;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.RefusalCode;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;

/** Whatever a type throws, wherever it is asked: its truck is refused, and no other. */
class FailingTypesTest {
    /** Where a type is asked after its registration. */
    private enum Place {
        ID(""),
        CONVEYOR_PARAMETERS("parameters"),
        METERED_BY_GATE("metering by a gate"),
        FILL_LIMITS("fill limits"),
        SWEPT_VOLUME("swept volume"),
        VOLUME("swept volume"),
        GATE_PARAMETERS("parameters"),
        SHAPE("shape"),
        AREA("open area");

        private final String words;

        Place(String words) {
            this.words = words;
        }
    }

    /** What throws at one place, from one call on, once it is lit. */
    private static final class Fuse {
        private final Place place;
        private final int from;
        private final int to;
        private final Supplier<? extends Throwable> thrown;
        private boolean lit;
        private int calls;

        Fuse(Place place, int from, int to, Supplier<? extends Throwable> thrown) {
            this.place = place;
            this.from = from;
            this.to = to;
            this.thrown = thrown;
        }

        void at(Place asked) {
            if (lit && asked == place) {
                calls++;
                if (calls >= from && calls <= to) {
                    FailingTypesTest.<RuntimeException>sneak(thrown.get());
                }
            }
        }
    }

    @SuppressWarnings("unchecked") // that's how checked exceptions get past the compiler
    private static <T extends Throwable> void sneak(Throwable thrown) throws T {
        throw (T) thrown;
    }

    private static StackOverflowError overflow() {
        try {
            return deeper(1);
        } catch (StackOverflowError e) {
            return e;
        }
    }

    private static StackOverflowError deeper(int depth) {
        return depth < 0 ? new StackOverflowError() : deeper(depth % 7 + 1);
    }

    /** An exception that can't even be printed. */
    private static final class Unprintable extends RuntimeException {
        private static final long serialVersionUID = 1L;

        @Override
        public String getMessage() {
            throw new IllegalStateException("no message");
        }
    }

    static Stream<Supplier<Throwable>> throwables() {
        return Stream.of(
                () -> new IllegalStateException("out of order"),
                () -> new ArithmeticException("/ by zero"),
                NullPointerException::new,
                () -> new IOException("checked"),
                Unprintable::new,
                FailingTypesTest::overflow,
                () -> new NoClassDefFoundError("org/example/Missing"),
                () -> new AssertionError("never"),
                () -> new ThreadDeath());
    }

    /** A chain of 7 teeth of 2.25 in. */
    private record Chain(Fuse fuse) implements ConveyorType {
        private static final Parameter<Length> PITCH =
                Parameter.length("pitch", Amounts.of(1, INCH), Amounts.of(1, METER));

        @Override
        public TypeId id() {
            fuse.at(Place.ID);
            return TypeId.of("example.org/chain", 1);
        }

        @Override
        public int spiLevel() {
            return Spi.LEVEL;
        }

        @Override
        public List<Parameter<?>> parameters() {
            fuse.at(Place.CONVEYOR_PARAMETERS);
            return List.of(PITCH);
        }

        @Override
        public boolean meteredByGate() {
            fuse.at(Place.METERED_BY_GATE);
            return true;
        }

        @Override
        public FillLimits fillLimits() {
            fuse.at(Place.FILL_LIMITS);
            return FillLimits.COMMON;
        }

        @Override
        public SweptVolume sweptVolume(Parameters given) {
            fuse.at(Place.SWEPT_VOLUME);
            double meters = 7 * given.si(PITCH);
            return area -> {
                fuse.at(Place.VOLUME);
                return meters * area;
            };
        }
    }

    /** 22 in wide. */
    private record Slide(Fuse fuse) implements GateType {
        @Override
        public TypeId id() {
            fuse.at(Place.ID);
            return TypeId.of("example.org/slide", 1);
        }

        @Override
        public int spiLevel() {
            return Spi.LEVEL;
        }

        @Override
        public List<Parameter<?>> parameters() {
            fuse.at(Place.GATE_PARAMETERS);
            return List.of();
        }

        @Override
        public GateShape shape(Parameters given) {
            fuse.at(Place.SHAPE);
            double width = Amounts.si(Length.class, Amounts.of(22, INCH));
            return GateShape.byOpening(Amounts.of(0, INCH), Amounts.of(12, INCH), height -> {
                fuse.at(Place.AREA);
                return width * height;
            });
        }
    }

    private static TypeRegistry lit(Fuse fuse) {
        TypeRegistry types = BuiltInTypes.registry().with(List.of(new Chain(fuse)), List.of(new Slide(fuse)));
        assertThat(types.rejected()).isEmpty();
        fuse.lit = true;
        return types;
    }

    /** Two openings, so that there is a curve; 6 in place of 5.2 lb/rev, so that slips are looked for. */
    private static TruckDay truck(String id) {
        return with(
                with(
                        idle(id),
                        calibrationCatch(7, 1),
                        calibrationCatch(8, 2),
                        calibrationCatch(9, 3),
                        calibrationCatch(10, 4)),
                verificationCatch(11, "6 lb/rev", 120, 57.7));
    }

    private static FleetDay fleet() {
        SpreaderEntry foreign = SpreaderEntry.sensed(
                new TypedEntry("example.org/chain", 1, Map.of("pitch", Amounts.of(2.25, INCH))),
                new TypedEntry("example.org/slide", 1, Map.of()),
                Amounts.of(100, PULSE_PER_REVOLUTION),
                Amounts.of(5.2, ONE));
        return day(truck("T-1"), with(truck("T-2"), foreign), truck("T-3"));
    }

    private static PlanEntry plan() {
        StepTimes times = new StepTimes(
                Amounts.of(20, MINUTE),
                Amounts.of(5, MINUTE),
                Amounts.of(3, MINUTE),
                Amounts.of(6, MINUTE),
                Amounts.of(10, MINUTE));
        return PlanEntry.of(
                Amounts.of(3, PERCENT),
                List.of(Amounts.of(400, POUND_PER_MILE)),
                List.of(Amounts.of(15, MILE_PER_HOUR)),
                List.of(new WeighingMethodEntry(
                        "tarp", "platform", new Containers(1, Amounts.of(500, POUND), Amounts.of(10, POUND)), times)));
    }

    @ParameterizedTest
    @MethodSource("throwables")
    void whatATypeThrowsRefusesItsTruckAndNoOther(Supplier<Throwable> thrown) {
        for (Place place : Place.values()) {
            List<TruckAssessment> trucks = FleetAssessor.of(lit(new Fuse(place, 1, Integer.MAX_VALUE, thrown)))
                    .assess(fleet());

            assertThat(trucks.get(0).isRefused()).as("%s", place).isFalse();
            assertThat(trucks.get(2).isRefused()).as("%s", place).isFalse();
            if (place == Place.ID) {
                assertThat(trucks.get(1).isRefused())
                        .as("known by the id it was registered with")
                        .isFalse();
            } else {
                assertThat(trucks.get(1).refusals())
                        .as("%s", place)
                        .isNotEmpty()
                        .allSatisfy(refusal -> {
                            assertThat(refusal.pointer()).startsWith("/trucks/1");
                            assertThat(refusal.sentence())
                                    .contains(place.words + " of type example.org/", "must be given by the type: ")
                                    .contains(thrown.get().getClass().getName());
                        });
            }
        }
    }

    @ParameterizedTest
    @MethodSource("throwables")
    void whatATypeThrowsLeavesThePlansOfOtherTrucks(Supplier<Throwable> thrown) {
        for (Place place : Place.values()) {
            FleetPlan plan = FleetPlanner.of(lit(new Fuse(place, 1, Integer.MAX_VALUE, thrown)))
                    .plan(fleet(), plan());

            assertThat(plan.trucks().get(0).refusal()).isEmpty();
            assertThat(plan.trucks().get(2).refusal()).isEmpty();
            if (place == Place.ID) {
                continue;
            }
            assertThat(plan.trucks().get(1).refusal())
                    .as("%s", place)
                    .get()
                    .asString()
                    .contains(
                            place.words + " of type example.org/",
                            thrown.get().getClass().getName());
        }
    }

    /** However late it throws, also where only a trial of what might have been asks it; later calls are much alike. */
    @ParameterizedTest
    @EnumSource(names = {"VOLUME", "AREA", "SWEPT_VOLUME", "SHAPE"})
    void aTypeThatThrowsOnceStopsNoOtherTruckWhenever(Place place) {
        int refused = 0;
        int call = 0;
        Fuse fuse;
        do {
            call += 1 + call / 16;
            fuse = new Fuse(place, call, call, FailingTypesTest::overflow);
            List<TruckAssessment> trucks = FleetAssessor.of(lit(fuse)).assess(fleet());
            assertThat(trucks.get(0).isRefused()).isFalse();
            assertThat(trucks.get(2).isRefused()).isFalse();
            refused += trucks.get(1).isRefused() ? 1 : 0;
        } while (fuse.calls >= call && call < 400);

        assertThat(call).as("calls that were tried").isGreaterThan(place == Place.SHAPE ? 1 : 2);
        assertThat(refused).isPositive();
    }

    @Test
    void anExhaustedHeapIsNoTypesFault() {
        TypeRegistry types = lit(new Fuse(Place.AREA, 1, Integer.MAX_VALUE, OutOfMemoryError::new));

        assertThatExceptionOfType(OutOfMemoryError.class)
                .isThrownBy(() -> FleetAssessor.of(types).assess(fleet()));
    }

    @ParameterizedTest
    @MethodSource("throwables")
    void outsideAFleetTheCallerGetsOneNamedExceptionWithItsCause(Supplier<Throwable> thrown) {
        for (Place place : Place.values()) {
            Throwable cause = thrown.get();
            Fuse fuse = new Fuse(place, 1, Integer.MAX_VALUE, () -> cause);
            fuse.lit = true;

            assertThatExceptionOfType(InvalidInputException.class)
                    .as("%s", place)
                    .isThrownBy(() -> {
                        Conveyor conveyor = Conveyor.of(new Chain(fuse), Map.of("pitch", Amounts.of(2, INCH)));
                        Gate gate = Gate.of(new Slide(fuse), Map.of());
                        new Spreader(conveyor, gate, Samples.SENSOR)
                                .sweptCubicMetersPerRevolution(Setting.height(Amounts.of(2, INCH)));
                    })
                    .satisfies(e -> assertThat(e.code()).isEqualTo(RefusalCode.TYPE_FAILED))
                    .satisfies(e -> assertThat(e.getCause()).isSameAs(cause))
                    .satisfies(e -> assertThat(e.arguments()).hasSize(1));
        }
    }

    @Test
    void aTypeKeepsTheIdItWasRegisteredWith() {
        Fuse never = new Fuse(Place.ID, 0, 0, AssertionError::new);
        AtomicInteger asked = new AtomicInteger();
        ConveyorType changing = new Changing(new Chain(never), asked);
        TypeRegistry types = BuiltInTypes.registry().with(List.of(changing), List.of());
        TypeId registered = TypeId.of("example.org/changing", 1);
        assertThat(types.rejected()).isEmpty();

        for (int i = 0; i < 4; i++) {
            assertThat(Conveyor.of(types, registered, Map.of("pitch", Amounts.of(2, INCH)))
                            .id())
                    .isEqualTo(registered);
        }
        assertThat(asked).as("asked at registration only").hasValue(2);
    }

    /** Its id changes with every second call. */
    private record Changing(Chain chain, AtomicInteger asked) implements ConveyorType {
        @Override
        public TypeId id() {
            return TypeId.of("example.org/changing", 1 + asked.getAndIncrement() / 2);
        }

        @Override
        public int spiLevel() {
            return Spi.LEVEL;
        }

        @Override
        public List<Parameter<?>> parameters() {
            return chain.parameters();
        }

        @Override
        public boolean meteredByGate() {
            return true;
        }

        @Override
        public SweptVolume sweptVolume(Parameters given) {
            return chain.sweptVolume(given);
        }
    }

    /** A type that lists so many parameters that no memory holds them. */
    private record Endless() implements GateType {
        @Override
        public TypeId id() {
            return TypeId.of("example.org/endless", 1);
        }

        @Override
        public int spiLevel() {
            return Spi.LEVEL;
        }

        @Override
        public List<Parameter<?>> parameters() {
            return Collections.nCopies(
                    Integer.MAX_VALUE, Parameter.length("width", Amounts.of(1, INCH), Amounts.of(9, INCH)));
        }

        @Override
        public GateShape shape(Parameters given) {
            return GateShape.none();
        }
    }

    @Test
    void aListOfParametersIsBounded() {
        assertThat(BuiltInTypes.registry()
                        .with(List.of(), List.of(new Endless()))
                        .rejected())
                .singleElement()
                .satisfies(left -> assertThat(left.reason()).isEqualTo("parameters must be at most 1000: more"));
        assertThatExceptionOfType(InvalidInputException.class)
                .isThrownBy(() -> Gate.of(new Endless(), Map.of("width", Amounts.of(5, INCH))))
                .withMessage("parameters of example.org/endless must be at most 1000: more");
    }
}
