package org.gritwright.core.fuzz;

import static org.gritwright.core.fleet.day.Trucks.calibrationCatch;
import static org.gritwright.core.fleet.day.Trucks.idle;
import static org.gritwright.core.fleet.day.Trucks.verificationCatch;
import static org.gritwright.core.fleet.day.Trucks.with;
import static org.gritwright.units.SpreadingUnits.ONE;
import static org.gritwright.units.SpreadingUnits.PULSE_PER_REVOLUTION;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
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
import org.gritwright.core.spi.SweptVolume;
import org.gritwright.core.spi.TypeId;
import org.gritwright.core.spi.TypeRegistry;
import org.gritwright.units.Amounts;

/**
 * Conveyor and gate types that answer anything at all, and now this, now that: they are left out at their registration, or what
 * they do refuses their truck. The trucks beside it are computed.
 */
public final class TypeFuzz {
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
                new TypedEntry("example.org/moody-conveyor", 1, Moods.ENTERED),
                new TypedEntry("example.org/moody-gate", 1, Moods.ENTERED),
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
            double meters = moods.number(7 * given.si(Moods.PITCH));
            return moods.isOdd() && moods.choices().once(2) ? null : area -> moods.number(meters * area);
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
