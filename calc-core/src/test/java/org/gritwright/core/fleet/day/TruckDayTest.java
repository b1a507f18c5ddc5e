package org.gritwright.core.fleet.day;

import static org.assertj.core.api.Assertions.assertThat;
import static org.gritwright.core.fleet.day.Trucks.DAY;
import static org.gritwright.core.fleet.day.Trucks.calibrationCatch;
import static org.gritwright.core.fleet.day.Trucks.inForce;
import static org.gritwright.core.fleet.day.Trucks.verificationCatch;
import static org.gritwright.units.SpreadingUnits.INCH;
import static org.gritwright.units.SpreadingUnits.ONE;
import static org.gritwright.units.SpreadingUnits.PULSE_PER_MILE;
import static org.gritwright.units.SpreadingUnits.PULSE_PER_REVOLUTION;
import static org.gritwright.units.SpreadingUnits.REVOLUTION_PER_MINUTE;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import org.gritwright.core.calibration.Change;
import org.gritwright.core.curve.CurveModel;
import org.gritwright.core.metering.OpenLoop;
import org.gritwright.units.Amounts;
import org.junit.jupiter.api.Test;

class TruckDayTest {
    private static final TypedEntry CONVEYOR = new TypedEntry("drag-chain", 1, Map.of("teeth", Amounts.of(7, ONE)));
    private static final TypedEntry GATE = new TypedEntry("no-gate", 1, Map.of());
    private static final TruckDay BARE =
            TruckDay.of("T-01", CONVEYOR, GATE, Optional.of(Amounts.of(100, PULSE_PER_REVOLUTION)), Amounts.of(5, ONE));

    private static final List<OpenLoop.Row> ROWS =
            List.of(new OpenLoop.Row(Amounts.of(1, ONE), Amounts.of(9, REVOLUTION_PER_MINUTE)));
    private static final InForceEntry IN_FORCE = inForce("5.2 lb/rev", DAY);
    private static final List<ChangeEntry> CHANGES = List.of(new ChangeEntry(DAY, Change.Part.TYRE, Optional.empty()));
    private static final List<CalibrationCatchEntry> CALIBRATIONS = List.of(calibrationCatch(8, 2));
    private static final List<VerificationCatchEntry> VERIFICATIONS =
            List.of(verificationCatch(9, "5.2 lb/rev", 120, 57.7));
    private static final Quantity<Length> GATE_READING = Amounts.of(0.0625, INCH);
    private static final RoadSpeedEntry ROAD_SPEED =
            new RoadSpeedEntry(DAY, Amounts.of(13_000, PULSE_PER_MILE), List.of());

    @Test
    void beginsWithWhatStandsOnTheTruckAndNothingElse() {
        assertThat(BARE)
                .isEqualTo(new TruckDay(
                        "T-01",
                        CONVEYOR,
                        GATE,
                        Optional.of(Amounts.of(100, PULSE_PER_REVOLUTION)),
                        Amounts.of(5, ONE),
                        List.of(),
                        Optional.empty(),
                        Optional.empty(),
                        Optional.empty(),
                        List.of(),
                        List.of(),
                        List.of(),
                        Optional.empty(),
                        Optional.empty()));
    }

    @Test
    void whatIsAddedLeavesTheRestAsItWas() {
        TruckDay full = BARE.withControlSettings(ROWS)
                .withGateReading(GATE_READING)
                .withCurveModel(CurveModel.TABLE)
                .withInForce(Optional.of(IN_FORCE))
                .withChanges(CHANGES)
                .withCalibrationCatches(CALIBRATIONS)
                .withVerificationCatches(VERIFICATIONS)
                .withRoadSpeed(ROAD_SPEED)
                .withNotes("gate sticks");
        TruckDay inOtherOrder = BARE.withNotes("gate sticks")
                .withRoadSpeed(ROAD_SPEED)
                .withVerificationCatches(VERIFICATIONS)
                .withCalibrationCatches(CALIBRATIONS)
                .withChanges(CHANGES)
                .withInForce(Optional.of(IN_FORCE))
                .withCurveModel(CurveModel.TABLE)
                .withGateReading(GATE_READING)
                .withControlSettings(ROWS);

        assertThat(full)
                .isEqualTo(inOtherOrder)
                .isEqualTo(new TruckDay(
                        "T-01",
                        CONVEYOR,
                        GATE,
                        Optional.of(Amounts.of(100, PULSE_PER_REVOLUTION)),
                        Amounts.of(5, ONE),
                        ROWS,
                        Optional.of(GATE_READING),
                        Optional.of(CurveModel.TABLE),
                        Optional.of(IN_FORCE),
                        CHANGES,
                        CALIBRATIONS,
                        VERIFICATIONS,
                        Optional.of(ROAD_SPEED),
                        Optional.of("gate sticks")));
        assertThat(full.withInForce(Optional.empty()).inForce()).isEmpty();
    }

    @Test
    void doesNotFollowLaterChangesOfItsLists() {
        List<OpenLoop.Row> rows = new ArrayList<>(ROWS);
        TruckDay truck = BARE.withControlSettings(rows);
        rows.clear();

        assertThat(truck.controlSettings()).isEqualTo(ROWS);
    }
}
