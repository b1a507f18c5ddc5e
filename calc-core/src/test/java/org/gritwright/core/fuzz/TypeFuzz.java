package org.gritwright.core.fuzz;

import static org.gritwright.core.fleet.day.Trucks.calibrationCatch;
import static org.gritwright.core.fleet.day.Trucks.idle;
import static org.gritwright.core.fleet.day.Trucks.verificationCatch;
import static org.gritwright.core.fleet.day.Trucks.with;
import static org.gritwright.units.SpreadingUnits.INCH;
import static org.gritwright.units.SpreadingUnits.METER;
import static org.gritwright.units.SpreadingUnits.ONE;
import static org.gritwright.units.SpreadingUnits.PULSE_PER_REVOLUTION;
import static org.gritwright.units.SpreadingUnits.SQUARE_METER;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.function.Supplier;
import javax.measure.quantity.Length;
import org.gritwright.core.conformance.Conformance;
import org.gritwright.core.document.RejectedDocumentException;
import org.gritwright.core.fleet.assessment.FleetAssessor;
import org.gritwright.core.fleet.assessment.TruckAssessment;
import org.gritwright.core.fleet.day.FleetDay;
import org.gritwright.core.fleet.day.SpreaderEntry;
import org.gritwright.core.fleet.day.TruckDay;
import org.gritwright.core.fleet.day.Trucks;
import org.gritwright.core.fleet.day.TypedEntry;
import org.gritwright.core.metering.BuiltInTypes;
import org.gritwright.core.record.CalibrationRecord;
import org.gritwright.core.record.Document;
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

/**
 * Conveyor and gate types that answer anything at all, and now this, now that: they are left out at their registration, or what
 * they do refuses their truck. The trucks beside it are computed.
 */
public final class TypeFuzz {
    private static final Parameter<Length> PITCH = Parameter.length("pitch", Amounts.of(1, INCH), Amounts.of(1, METER));
    private static final Parameter<Length> LENGTH = Parameter.length(
                    "length", Amounts.of(1, INCH), Amounts.of(1, METER))
            .withDefault(Amounts.of(3, INCH));
    private static final Map<String, ?> ENTERED = Map.of("pitch", Amounts.of(2.25, INCH));

    private TypeFuzz() {}

    /**
     * Reads bytes as choices of what the types answer.
     *
     * @param data the choices
     */
    public static void fuzzerTestOneInput(byte[] data) {
        Moods moods = new Moods(new Choices(data));
        ConveyorType conveyor = new MoodyConveyor(moods);
        GateType gate = new MoodyGate(moods);
        TypeRegistry types = BuiltInTypes.registry().with(List.of(conveyor), List.of(gate));
        types.rejected().forEach(left -> Check.that(!left.reason().isEmpty(), "a reason"));
        FleetDay day = fleet();
        List<TruckAssessment> trucks = FleetAssessor.of(types).assess(day);
        Check.that(!trucks.get(0).isRefused() && !trucks.get(2).isRefused(), "the trucks beside it are computed");
        for (TruckAssessment truck : trucks) {
            readBack(CalibrationRecord.of(day, truck));
        }
        Conformance.check(conveyor)
                .forEach(violation -> Check.that(!violation.how().isEmpty(), "how it violates"));
        Conformance.check(gate).forEach(violation -> Check.that(!violation.how().isEmpty(), "how it violates"));
    }

    private static FleetDay fleet() {
        SpreaderEntry foreign = SpreaderEntry.sensed(
                new TypedEntry("example.org/moody-conveyor", 1, ENTERED),
                new TypedEntry("example.org/moody-gate", 1, ENTERED),
                Amounts.of(100, PULSE_PER_REVOLUTION),
                Amounts.of(5.2, ONE));
        return Trucks.day(truck("T-1"), with(truck("T-2"), foreign), truck("T-3"));
    }

    private static TruckDay truck(String id) {
        return with(
                with(idle(id), calibrationCatch(7, 1), calibrationCatch(8, 2), calibrationCatch(9, 3)),
                verificationCatch(11, "6 lb/rev", 120, 57.7));
    }

    private static void readBack(CalibrationRecord record) {
        String text = Document.CALIBRATION_RECORD.toText(record);
        try {
            Check.equal(
                    "the record read back",
                    Document.CALIBRATION_RECORD.read(new ByteArrayInputStream(text.getBytes(StandardCharsets.UTF_8))),
                    record);
        } catch (IOException | RejectedDocumentException e) {
            throw new AssertionError("what was written is refused", e);
        }
    }

    /** What a type does when it is asked: mostly what it should. */
    private record Moods(Choices choices) {
        private static final List<Supplier<Throwable>> THROWN = List.of(
                () -> new IllegalStateException("out of order"),
                NullPointerException::new,
                () -> new IOException("checked"),
                () -> new NoClassDefFoundError("org/example/Missing"),
                () -> new AssertionError("never"),
                StackOverflowError::new);

        private static final List<Double> NUMBERS = List.of(
                0.0,
                -0.0,
                -1.0,
                Double.NaN,
                Double.POSITIVE_INFINITY,
                Double.NEGATIVE_INFINITY,
                Double.MIN_VALUE,
                Double.MAX_VALUE,
                1e-200,
                1e200,
                1e-9,
                1e9);

        /** Throws now and then. */
        void ask() {
            if (choices.once(24)) {
                Moods.<RuntimeException>sneak(choices.of(THROWN).get());
            }
        }

        @SuppressWarnings("unchecked") // that's how checked exceptions get past the compiler
        private static <T extends Throwable> void sneak(Throwable thrown) throws T {
            throw (T) thrown;
        }

        boolean isOdd() {
            ask();
            return choices.once(8);
        }

        double number(double usual) {
            return isOdd() ? choices.of(NUMBERS) : usual;
        }

        TypeId id(String usual) {
            return isOdd()
                    ? choices.of(Arrays.asList(
                            null, TypeId.of("example.org/other", 1), TypeId.of("drag-chain", 1), TypeId.of(usual, 2)))
                    : TypeId.of(usual, 1);
        }

        int level() {
            return isOdd() ? choices.below(256) - 8 : Spi.LEVEL;
        }

        List<Parameter<?>> parameters() {
            if (!isOdd()) {
                return List.of(PITCH, LENGTH);
            }
            return switch (choices.below(6)) {
                case 0 -> null;
                case 1 -> Arrays.asList(PITCH, null);
                case 2 -> List.of(PITCH, PITCH);
                case 3 -> Collections.nCopies(Integer.MAX_VALUE, PITCH);
                case 4 -> List.of(LENGTH);
                default -> {
                    List<Parameter<?>> many = new ArrayList<>(List.of(PITCH));
                    for (int i = choices.below(4); i > 0; i--) {
                        many.add(Parameter.wholeNumber("n" + i, 0, i).asList(0, i));
                    }
                    yield many;
                }
            };
        }

        GateShape shape(double width) {
            if (!isOdd()) {
                return GateShape.byOpening(Amounts.of(0, INCH), Amounts.of(12, INCH), height -> number(width * height));
            }
            return switch (choices.below(7)) {
                case 0 -> null;
                case 1 -> GateShape.none();
                case 2 -> GateShape.fixed(Amounts.of(number(0.02), SQUARE_METER));
                case 3 -> GateShape.adjustable(Setting.mark(1), Setting.mark(choices.below(20)), this::number);
                case 4 -> GateShape.adjustable(Setting.percent(0), Setting.percent(choices.below(256)), this::number);
                case 5 ->
                    GateShape.byOpening(Amounts.of(0, INCH), Amounts.of(12, INCH), this::number)
                            .closedAt(Amounts.of(choices.below(16), INCH));
                default -> GateShape.byOpening(Amounts.of(number(0), INCH), Amounts.of(number(12), INCH), null);
            };
        }

        FillLimits fill() {
            if (!isOdd()) {
                return FillLimits.COMMON;
            }
            return choices.once(2) ? null : new FillLimits(number(0.3), number(0.5), number(1.15), number(1.3));
        }
    }

    private record MoodyConveyor(Moods moods) implements ConveyorType {
        @Override
        public TypeId id() {
            return moods.id("example.org/moody-conveyor");
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
        public boolean meteredByGate() {
            return !moods.isOdd();
        }

        @Override
        public FillLimits fillLimits() {
            return moods.fill();
        }

        @Override
        public SweptVolume sweptVolume(Parameters given) {
            double meters = moods.number(7 * given.si(PITCH));
            return moods.isOdd() && moods.choices.once(2) ? null : area -> moods.number(meters * area);
        }
    }

    private record MoodyGate(Moods moods) implements GateType {
        @Override
        public TypeId id() {
            return moods.id("example.org/moody-gate");
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
        public GateShape shape(Parameters given) {
            return moods.shape(moods.number(0.56));
        }
    }
}
