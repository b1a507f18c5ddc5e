package org.gritwright.core.record;

import java.util.List;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import org.gritwright.core.curve.CurveModel;
import org.gritwright.core.document.ProblemCode;
import org.gritwright.core.fleet.day.BoomEntry;
import org.gritwright.core.fleet.day.CalibrationCatchEntry;
import org.gritwright.core.fleet.day.ChangeEntry;
import org.gritwright.core.fleet.day.DriveEntry;
import org.gritwright.core.fleet.day.FlowMeterEntry;
import org.gritwright.core.fleet.day.InForceEntry;
import org.gritwright.core.fleet.day.MeteringEntry;
import org.gritwright.core.fleet.day.PumpEntry;
import org.gritwright.core.fleet.day.RoadSpeedEntry;
import org.gritwright.core.fleet.day.SpreaderEntry;
import org.gritwright.core.fleet.day.TruckDay;
import org.gritwright.core.fleet.day.TypedEntry;
import org.gritwright.core.fleet.day.VerificationCatchEntry;
import org.gritwright.core.json.Pointer;
import org.gritwright.core.json.Problems;
import org.gritwright.core.metering.OpenLoop;
import org.gritwright.units.quantity.PulsesPerRevolution;
import org.jspecify.annotations.Nullable;

/** A truck's day as it is written: what meters stands on the level of the whole, and its fields say which of the three it is. */
record WrittenTruck(
        String id,
        Optional<TypedEntry> conveyor,
        Optional<TypedEntry> gate,
        Optional<TypedEntry> pump,
        Optional<TypedEntry> flowMeter,
        Optional<Quantity<PulsesPerRevolution>> pulsesPerRevolution,
        Optional<Quantity<Dimensionless>> gearRatio,
        List<OpenLoop.Row> controlSettings,
        Optional<Quantity<?>> gateReading,
        Optional<String> wets,
        Optional<BoomEntry> boom,
        Optional<DriveEntry> drive,
        Optional<CurveModel> curveModel,
        List<InForceEntry> inForce,
        List<ChangeEntry> changes,
        List<CalibrationCatchEntry> calibrationCatches,
        List<VerificationCatchEntry> verificationCatches,
        Optional<RoadSpeedEntry> roadSpeed,
        Optional<String> notes) {
    private static final String CONVEYOR = "a conveyor with its gate, a pump or a flow meter";

    static WrittenTruck of(TruckDay truck) {
        MeteringEntry metering = truck.spreader();
        Optional<SpreaderEntry> spreader = as(SpreaderEntry.class, metering);
        Optional<PumpEntry> pump = as(PumpEntry.class, metering);
        Optional<FlowMeterEntry> meter = as(FlowMeterEntry.class, metering);
        return new WrittenTruck(
                truck.id(),
                spreader.map(SpreaderEntry::conveyor),
                spreader.map(SpreaderEntry::gate),
                pump.map(PumpEntry::pump),
                meter.map(FlowMeterEntry::flowMeter),
                spreader.flatMap(SpreaderEntry::pulsesPerRevolution)
                        .or(() -> pump.flatMap(PumpEntry::pulsesPerRevolution)),
                meter.isPresent() ? Optional.empty() : Optional.of(metering.gearRatio()),
                metering.controlSettings(),
                metering.gateReading(),
                truck.wets(),
                truck.boom(),
                truck.drive(),
                truck.curveModel(),
                truck.inForce(),
                truck.changes(),
                truck.calibrationCatches(),
                truck.verificationCatches(),
                truck.roadSpeed(),
                truck.notes());
    }

    private static <T> Optional<T> as(Class<T> kind, MeteringEntry entry) {
        return Optional.of(entry).filter(kind::isInstance).map(kind::cast);
    }

    /** Says what is missing, and what doesn't belong there. */
    static void check(WrittenTruck written, Pointer pointer, Problems problems) {
        if (written.pump.isEmpty() && written.flowMeter.isEmpty()) {
            written.refuse(written.wets, "wets", "a conveyor", pointer, problems);
            written.refuse(written.boom, "boom", "a conveyor", pointer, problems);
            written.require(written.conveyor, "conveyor", CONVEYOR, pointer, problems);
            written.require(written.gate, "gate", "the gate of the conveyor", pointer, problems);
        } else {
            boolean pumps = written.pump.isPresent();
            String of = pumps ? "a truck with a pump" : "a truck with a flow meter";
            written.refuse(written.conveyor, "conveyor", of, pointer, problems);
            written.refuse(written.gate, "gate", of, pointer, problems);
            written.refuse(written.gateReading, "gateReading", of, pointer, problems);
            if (pumps) {
                written.refuse(written.flowMeter, "flowMeter", of, pointer, problems);
            }
        }
        if (written.flowMeter.isPresent() && written.pump.isEmpty()) {
            String of = "a flow meter, which meters by its own pulses";
            written.refuse(written.pulsesPerRevolution, "pulsesPerRevolution", of, pointer, problems);
            written.refuse(written.gearRatio, "gearRatio", of, pointer, problems);
            written.refuse(written.controlSettings.stream().findFirst(), "controlSettings", of, pointer, problems);
        } else {
            written.require(
                    written.gearRatio,
                    "gearRatio",
                    "a number in quotation marks, for example \"1\"",
                    pointer,
                    problems);
        }
    }

    private void require(Optional<?> given, String field, String accepted, Pointer pointer, Problems problems) {
        if (given.isEmpty()) {
            problems.missing(pointer.at(field), accepted);
        }
    }

    private void refuse(Optional<?> given, String field, String of, Pointer pointer, Problems problems) {
        if (given.isPresent()) {
            problems.add(ProblemCode.NOT_ACCEPTED, pointer.at(field), "no such field beside " + of, "one");
        }
    }

    /** The truck's day; none if {@link #check} has told why. */
    @Nullable
    TruckDay truck() {
        Optional<MeteringEntry> metering = metering();
        return metering.isEmpty()
                ? null
                : new TruckDay(
                        id,
                        metering.get(),
                        wets,
                        boom,
                        drive,
                        curveModel,
                        inForce,
                        changes,
                        calibrationCatches,
                        verificationCatches,
                        roadSpeed,
                        notes);
    }

    private Optional<MeteringEntry> metering() {
        if (conveyor.isPresent() && gate.isPresent() && gearRatio.isPresent()) {
            return Optional.of(new SpreaderEntry(
                    conveyor.get(), gate.get(), pulsesPerRevolution, gearRatio.get(), controlSettings, gateReading));
        }
        if (pump.isPresent() && gearRatio.isPresent()) {
            return Optional.of(new PumpEntry(pump.get(), pulsesPerRevolution, gearRatio.get(), controlSettings));
        }
        return flowMeter.map(FlowMeterEntry::new);
    }
}
