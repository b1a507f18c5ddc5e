package org.gritwright.core.spreader;

import static org.assertj.core.api.Assertions.assertThat;
import static org.gritwright.core.Samples.AUGER;
import static org.gritwright.core.Samples.CHAIN;
import static org.gritwright.core.Samples.SENSOR;
import static org.gritwright.core.Samples.assertRefused;
import static org.gritwright.core.Samples.inches;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.gritwright.core.spi.ConveyorType;
import org.gritwright.core.spi.FillLimits;
import org.gritwright.core.spi.GateShape;
import org.gritwright.core.spi.GateType;
import org.gritwright.core.spi.Parameter;
import org.gritwright.core.spi.Parameters;
import org.gritwright.core.spi.Spi;
import org.gritwright.core.spi.SweptVolume;
import org.gritwright.core.spi.TypeId;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What a type from outside returns is checked where it is used. */
class SpiBorderTest {
    /** A conveyor type that returns whatever it is told to. */
    private record OddConveyor(SweptVolume volume, FillLimits limits) implements ConveyorType {
        @Override
        public TypeId id() {
            return TypeId.of("example.org/odd", 1);
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
    private record OddGate(GateShape returned) implements GateType {
        @Override
        public TypeId id() {
            return TypeId.of("example.org/odd", 1);
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
            return returned;
        }
    }

    private static Spreader sweeping(double cubicMetresPerRevolution) {
        OddConveyor type = new OddConveyor(openArea -> cubicMetresPerRevolution, FillLimits.COMMON);
        return new Spreader(Conveyor.of(type, Map.of()), AUGER.gate(), SENSOR);
    }

    private static Spreader opening(double squareMetres) {
        GateShape shape = GateShape.byOpening(inches(0), inches(12), openingMetres -> squareMetres);
        return new Spreader(CHAIN.conveyor(), Gate.of(new OddGate(shape), Map.of()), SENSOR);
    }

    @ParameterizedTest
    @ValueSource(doubles = {Double.NaN, -1, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY})
    void aSweptVolumeThatCanNotBeNamesTheType(double volume) {
        assertRefused(
                "swept volume of type example.org/odd, version 1 must be finite and 0 or more: " + volume + " m³/rev",
                () -> sweeping(volume).sweptCubicMetresPerRevolution(Optional.empty()));
    }

    @Test
    void aConveyorThatSweepsNothingNamesTheType() {
        assertRefused(
                "swept volume of type example.org/odd, version 1 must be greater than 0: 0.0 m³/rev",
                () -> sweeping(0).sweptCubicMetresPerRevolution(Optional.empty()));
    }

    @ParameterizedTest
    @ValueSource(doubles = {Double.NaN, -1, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY})
    void anOpenAreaThatCanNotBeNamesTheType(double area) {
        assertRefused(
                "open area of type example.org/odd, version 1 must be finite and 0 or more: " + area + " m²",
                () -> opening(area).sweptCubicMetresPerRevolution(Optional.of(inches(4))));
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
                () -> Gate.of(new OddGate(null), Map.of()));
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
                "parameter must be one of []: \"width\"", () -> Gate.of(new NoGate(), Map.of("width", inches(24))));
        assertRefused("width must be given: nothing", () -> Gate.of(new SlidingGate(), Map.of()));
        assertRefused(
                "width must be within 50 mm to 3 m: 1 in",
                () -> Gate.of(new SlidingGate(), Map.of("width", inches(1))));
        assertRefused("teeth must be given: nothing", () -> Conveyor.of(new DragChain(), Map.of()));
    }
}
