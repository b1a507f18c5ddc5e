package org.gritwright.core.metering;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.gritwright.core.Samples.AUGER;
import static org.gritwright.core.Samples.CHAIN;
import static org.gritwright.core.Samples.SENSOR;
import static org.gritwright.core.Samples.assertRefused;
import static org.gritwright.core.Samples.inches;

import java.util.List;
import java.util.Map;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Supplier;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import org.gritwright.core.spi.ConveyorType;
import org.gritwright.core.spi.FillLimits;
import org.gritwright.core.spi.GateShape;
import org.gritwright.core.spi.GateType;
import org.gritwright.core.spi.OpenArea;
import org.gritwright.core.spi.Parameter;
import org.gritwright.core.spi.Parameters;
import org.gritwright.core.spi.PlainConveyor;
import org.gritwright.core.spi.PlainGate;
import org.gritwright.core.spi.Setting;
import org.gritwright.core.spi.Spi;
import org.gritwright.core.spi.SweptVolume;
import org.gritwright.core.spi.TypeId;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.SpreadingUnits;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What a type from outside returns is checked where it is used. */
class SpiBorderTest {
    /** A conveyor type that returns whatever it is told to. */
    private static final class OddConveyor extends PlainConveyor {
        private final SweptVolume volume;
        private final FillLimits limits;

        OddConveyor(SweptVolume volume, FillLimits limits) {
            super("odd");
            this.volume = volume;
            this.limits = limits;
        }

        @Override
        public boolean meteredByGate() {
            return false;
        }

        @Override
        public SweptVolume sweptVolume(Parameters given) {
            return volume;
        }

        @Override
        public FillLimits fillLimits() {
            return limits;
        }
    }

    /** A gate type that returns whatever it is told to. */
    private static final class OddGate extends PlainGate {
        private final Supplier<GateShape> shapes;

        OddGate(Supplier<GateShape> shapes) {
            super("odd");
            this.shapes = shapes;
        }

        @Override
        public GateShape shape(Parameters given) {
            return shapes.get();
        }
    }

    /** A type whose version is the number of times that it was asked. */
    private static final class Restless implements GateType {
        private int asked;

        @Override
        public TypeId id() {
            asked++;
            return TypeId.of("example.org/restless", asked);
        }

        @Override
        public int spiLevel() {
            return Spi.LEVEL;
        }

        @Override
        public List<Parameter<?>> parameters() {
            return List.of();
        }

        @Override
        public GateShape shape(Parameters given) {
            return GateShape.none();
        }
    }

    /** A conveyor type with an id and parameters of any kind, even none. */
    private record Nameless(TypeId id, List<Parameter<?>> parameters) implements ConveyorType {
        @Override
        public int spiLevel() {
            return Spi.LEVEL;
        }

        @Override
        public boolean meteredByGate() {
            return false;
        }

        @Override
        public SweptVolume sweptVolume(Parameters given) {
            return openArea -> 1;
        }
    }

    /** Gives one after the other, and the last again and again. */
    @SafeVarargs
    private static <T> Supplier<T> oneAfterTheOther(T... given) {
        AtomicInteger next = new AtomicInteger();
        return () -> given[Math.min(next.getAndIncrement(), given.length - 1)];
    }

    private static Gate gate(GateShape... shapes) {
        return Gate.of(new OddGate(oneAfterTheOther(shapes)), Map.of());
    }

    private static GateShape upToAFoot(OpenArea area) {
        return GateShape.byOpening(inches(0), inches(12), area);
    }

    private static Spreader sweeping(double cubicMetersPerRevolution) {
        OddConveyor type = new OddConveyor(openArea -> cubicMetersPerRevolution, FillLimits.COMMON);
        return new Spreader(Conveyor.of(type, Map.of()), AUGER.gate(), SENSOR);
    }

    private static Spreader opening(double squareMeters) {
        return new Spreader(CHAIN.conveyor(), gate(upToAFoot(openingMeters -> squareMeters)), SENSOR);
    }

    @ParameterizedTest
    @ValueSource(doubles = {Double.NaN, -1, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY})
    void aSweptVolumeThatCanNotBeNamesTheType(double volume) {
        assertRefused(
                "swept volume of type example.org/odd, version 1 must be finite and 0 or more: " + volume + " m³/rev",
                () -> sweeping(volume).sweptCubicMetersPerRevolution(Setting.none()));
    }

    @Test
    void aConveyorThatSweepsNothingNamesTheType() {
        assertRefused(
                "swept volume of type example.org/odd, version 1 must be greater than 0: 0.0 m³/rev",
                () -> sweeping(0).sweptCubicMetersPerRevolution(Setting.none()));
    }

    @ParameterizedTest
    @ValueSource(doubles = {Double.NaN, -1, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY})
    void anOpenAreaThatCanNotBeNamesTheType(double area) {
        assertRefused(
                "open area of type example.org/odd, version 1 must be finite and 0 or more: " + area + " m²",
                () -> opening(area).sweptCubicMetersPerRevolution(Setting.of(inches(4))));
    }

    @Test
    void aTypeThatReturnsNothingIsNamed() {
        assertRefused(
                "swept volume of type example.org/odd, version 1 must be given by the type: null",
                () -> Conveyor.of(new OddConveyor(null, FillLimits.COMMON), Map.of()));
        assertRefused(
                "fill limits of type example.org/odd, version 1 must be given by the type: null",
                () -> Conveyor.of(new OddConveyor(openArea -> 1, null), Map.of())
                        .fillLimits());
        assertRefused(
                "shape of type example.org/odd, version 1 must be given by the type: null",
                () -> gate((GateShape) null));
        assertRefused(
                "id of type " + Nameless.class.getName() + " must be given by the type: null",
                () -> Conveyor.of(new Nameless(null, List.of()), Map.of()));
        assertRefused(
                "parameters of type example.org/nameless, version 1 must be given by the type: null",
                () -> Conveyor.of(new Nameless(TypeId.of("example.org/nameless", 1), null), Map.of()));
    }

    @Test
    void aTypeThatIsInterruptedLeavesTheThreadInterrupted() {
        Gate gate = gate(upToAFoot(openingMeters -> interrupted()));

        assertThatThrownBy(() -> gate.squareMeters(Setting.of(inches(4))))
                .isInstanceOf(InvalidInputException.class)
                .hasCauseInstanceOf(InterruptedException.class);
        assertThat(Thread.interrupted()).isTrue();
    }

    @Test
    void aTypeThatFailsInAnotherWayDoesNotInterrupt() {
        Gate gate = gate(upToAFoot(openingMeters -> Math.floorDiv(1, 0)));

        assertThatThrownBy(() -> gate.squareMeters(Setting.of(inches(4))))
                .isInstanceOf(InvalidInputException.class)
                .hasCauseInstanceOf(ArithmeticException.class);
        assertThat(Thread.interrupted()).isFalse();
    }

    private static double interrupted() {
        SpiBorderTest.<RuntimeException>sneak(new InterruptedException("stopped"));
        return 1;
    }

    @SuppressWarnings("unchecked") // that's how checked exceptions get past the compiler
    private static <T extends Throwable> void sneak(Throwable thrown) throws T {
        throw (T) thrown;
    }

    @Test
    void aTypeThatChangesItsNameIsCaught() {
        assertRefused(
                "id of type example.org/restless, version 1 must be the same whenever asked:"
                        + " example.org/restless, version 2",
                () -> Gate.of(new Restless(), Map.of()));
    }

    @Test
    void aFunctionIsAskedOnceForEachAnswer() {
        AtomicInteger areas = new AtomicInteger();
        AtomicInteger volumes = new AtomicInteger();
        Gate gate = gate(upToAFoot(openingMeters -> areas.incrementAndGet()));
        SweptVolume counting = openArea -> volumes.incrementAndGet();
        Spreader spreader =
                new Spreader(Conveyor.of(new OddConveyor(counting, FillLimits.COMMON), Map.of()), gate, SENSOR);

        assertThat(spreader.sweptCubicMetersPerRevolution(Setting.height(inches(4))))
                .isEqualTo(1);
        assertThat(areas).hasValue(1);
        assertThat(volumes).hasValue(1);
    }

    @Test
    void anAreaIsNeverAskedForOutsideTheLimitsNotEvenByRounding() {
        double highest = Amounts.si(Length.class, inches(12));
        Gate gate = gate(upToAFoot(openingMeters -> openingMeters > highest ? Double.NaN : openingMeters));
        Quantity<Length> hairAbove = Amounts.of(304.8 * (1 + 1e-13), SpreadingUnits.MILLIMETER);

        assertThat(Amounts.si(Length.class, hairAbove)).isGreaterThan(highest);
        assertThat(gate.squareMeters(Setting.height(hairAbove))).isEqualTo(highest);
    }

    @Test
    void aShapeThatChangesIsCaught() {
        GateShape adjustable = upToAFoot(openingMeters -> openingMeters);
        GateShape fixed = fixed(0.01);

        assertShapeRefused(adjustable, fixed);
        assertShapeRefused(fixed, adjustable);
        assertShapeRefused(GateShape.none(), fixed);
        assertShapeRefused(adjustable, GateShape.none());
        assertShapeRefused(fixed, fixed(0.02));
        assertThat(gate(fixed, fixed(0.01)).squareMeters(Setting.none())).isEqualTo(0.01);
    }

    @Test
    void limitsThatChangeAreCaught() {
        OpenArea area = openingMeters -> openingMeters;
        GateShape.Adjustable shape = GateShape.byOpening(inches(1), inches(12), area);

        assertShapeRefused(shape, GateShape.byOpening(inches(0), inches(12), area));
        assertShapeRefused(shape, GateShape.byOpening(inches(1), inches(11), area));
        assertShapeRefused(shape, shape.closedAt(inches(2)));
        assertShapeRefused(shape.closedAt(inches(3)), shape.closedAt(inches(2)));
        assertShapeRefused(shape, GateShape.adjustable(Setting.mark(0.0254), Setting.mark(0.3048), area));
        assertThat(gate(shape.closedAt(inches(2)), shape.closedAt(inches(2))).accepts(Setting.of(inches(12))))
                .isTrue();
    }

    private static GateShape fixed(double squareMeters) {
        return GateShape.fixed(Amounts.of(squareMeters, SpreadingUnits.SQUARE_METER));
    }

    private static void assertShapeRefused(GateShape first, GateShape second) {
        assertRefused(
                "shape of type example.org/odd, version 1 must be the same whenever asked: a different one the second"
                        + " time",
                () -> gate(first, second));
    }

    @Test
    void aShapeThatIsGoneWhenAskedAgainIsCaught() {
        assertRefused(
                "shape of type example.org/odd, version 1 must be given by the type: null",
                () -> gate(GateShape.none(), null));
    }

    @Test
    void aTypeMayKnowItsFillBetter() {
        FillLimits limits = new FillLimits(0.1, 0.2, 0.6, 0.8);

        assertThat(Conveyor.of(new OddConveyor(openArea -> 1, limits), Map.of()).fillLimits())
                .isSameAs(limits);
    }

    @Test
    void unknownMissingAndImpossibleParametersAreNamed() {
        assertRefused(
                "parameter of no-gate must be left out, as the type has none: \"width\"",
                () -> Gate.of(new NoGate(), Map.of("width", inches(24))));
        assertRefused("width of sliding-gate must be given: nothing", () -> Gate.of(new SlidingGate(), Map.of()));
        assertRefused(
                "width of sliding-gate must be within 50 mm to 3 m: 1 in",
                () -> Gate.of(new SlidingGate(), Map.of("width", inches(1))));
        assertRefused("teeth of drag-chain must be given: nothing", () -> Conveyor.of(new DragChain(), Map.of()));
        assertRefused(
                "teeth of drag-chain must be a quantity from 3 to 60: 7 (Integer)",
                () -> Conveyor.of(new DragChain(), Map.of("teeth", 7, "chainPitch", inches(2))));
        assertRefused(
                "parameter of drag-chain must be one of barShare, chainPitch, teeth; nearest: \"chainPitch\":"
                        + " \"chainPich\"",
                () -> Conveyor.of(
                        new DragChain(), Map.of("teeth", Amounts.of(7, SpreadingUnits.ONE), "chainPich", inches(2))));
    }
}
