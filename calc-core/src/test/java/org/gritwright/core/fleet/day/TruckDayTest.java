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
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Length;
import org.gritwright.core.calibration.Change;
import org.gritwright.core.curve.CurveModel;
import org.gritwright.core.metering.OpenLoop;
import org.gritwright.core.range.RangeSource;
import org.gritwright.units.Amounts;
import org.junit.jupiter.api.Test;

class TruckDayTest {
    private static final SpreaderEntry SPREADER = Trucks.spreader(Trucks.gate());
    private static final TruckDay BARE = TruckDay.of("T-01", SPREADER);

    private static final List<OpenLoop.Row> ROWS =
            List.of(new OpenLoop.Row(Amounts.of(1, ONE), Amounts.of(9, REVOLUTION_PER_MINUTE)));
    private static final List<InForceEntry> IN_FORCE = List.of(inForce("5.2 lb/rev", DAY));
    private static final List<ChangeEntry> CHANGES = List.of(new ChangeEntry(DAY, Change.Part.TIRE, Optional.empty()));
    private static final List<CalibrationCatchEntry> CALIBRATIONS = List.of(calibrationCatch(8, 2));
    private static final List<VerificationCatchEntry> VERIFICATIONS =
            List.of(verificationCatch(9, "5.2 lb/rev", 120, 57.7));
    private static final Quantity<Length> GATE_READING = Amounts.of(0.0625, INCH);
    private static final RoadSpeedEntry ROAD_SPEED =
            new RoadSpeedEntry(DAY, Amounts.of(13_000, PULSE_PER_MILE), List.of());

    /** Which spreaders may have one isn't checked here. */
    private static final BoomEntry BOOM = BoomEntry.keptByFlow(List.of());

    private static final DriveEntry DRIVE = DriveEntry.stated(new StatedRangeEntry(
            Amounts.of(2, REVOLUTION_PER_MINUTE),
            Amounts.of(28, REVOLUTION_PER_MINUTE),
            RangeSource.BY_EYE,
            Optional.empty()));

    private static TruckDay full() {
        return TruckDay.of("T-01", SPREADER)
                .boom(BOOM)
                .drive(DRIVE)
                .curveModel(CurveModel.TABLE)
                .inForce(IN_FORCE)
                .changes(CHANGES)
                .calibrationCatches(CALIBRATIONS)
                .verificationCatches(VERIFICATIONS)
                .roadSpeed(ROAD_SPEED)
                .notes("gate sticks");
    }

    @Test
    void beginsWithWhatStandsOnTheTruckAndNothingElse() {
        assertThat(BARE)
                .isEqualTo(new TruckDay(
                        "T-01",
                        SPREADER,
                        Optional.empty(),
                        Optional.empty(),
                        Optional.empty(),
                        Optional.empty(),
                        List.of(),
                        List.of(),
                        List.of(),
                        List.of(),
                        Optional.empty(),
                        Optional.empty()));
    }

    @Test
    void whatIsAddedLeavesTheRestAsItWas() {
        TruckDay inOtherOrder = TruckDay.of("T-01", SPREADER)
                .notes("gate sticks")
                .roadSpeed(ROAD_SPEED)
                .verificationCatches(VERIFICATIONS)
                .calibrationCatches(CALIBRATIONS)
                .changes(CHANGES)
                .inForce(IN_FORCE)
                .curveModel(CurveModel.TABLE)
                .drive(DRIVE)
                .boom(BOOM);

        assertThat(full())
                .isEqualTo(inOtherOrder)
                .isEqualTo(new TruckDay(
                        "T-01",
                        SPREADER,
                        Optional.empty(),
                        Optional.of(BOOM),
                        Optional.of(DRIVE),
                        Optional.of(CurveModel.TABLE),
                        IN_FORCE,
                        CHANGES,
                        CALIBRATIONS,
                        VERIFICATIONS,
                        Optional.of(ROAD_SPEED),
                        Optional.of("gate sticks")));
    }

    @Test
    void anotherDayBeginsWithEverythingOfThisOne() {
        SpreaderEntry read = SPREADER.withGateReading(GATE_READING);

        assertThat(full()).isEqualTo(full());
        assertThat(full().inForce(List.of()).inForce()).isEmpty();
        assertThat(full().id("T-02").spreader(read))
                .isEqualTo(new TruckDay(
                        "T-02",
                        read,
                        Optional.empty(),
                        Optional.of(BOOM),
                        Optional.of(DRIVE),
                        Optional.of(CurveModel.TABLE),
                        IN_FORCE,
                        CHANGES,
                        CALIBRATIONS,
                        VERIFICATIONS,
                        Optional.of(ROAD_SPEED),
                        Optional.of("gate sticks")));
    }

    @Test
    void aSpreaderHasASensorOrIsWatchedAndMayHaveATableAndAGateReading() {
        Quantity<Dimensionless> gearRatio = Amounts.of(5.2, ONE);

        assertThat(SPREADER)
                .isEqualTo(new SpreaderEntry(
                        Trucks.conveyor(),
                        Trucks.gate(),
                        Optional.of(Amounts.of(100, PULSE_PER_REVOLUTION)),
                        gearRatio,
                        List.of(),
                        Optional.empty()));
        assertThat(SpreaderEntry.watched(Trucks.conveyor(), Trucks.gate(), gearRatio)
                        .withControlSettings(ROWS)
                        .withGateReading(GATE_READING))
                .isEqualTo(new SpreaderEntry(
                        Trucks.conveyor(),
                        Trucks.gate(),
                        Optional.empty(),
                        gearRatio,
                        ROWS,
                        Optional.of(GATE_READING)));
    }

    @Test
    void doesNotFollowLaterChangesOfItsLists() {
        List<OpenLoop.Row> rows = new ArrayList<>(ROWS);
        SpreaderEntry spreader = SPREADER.withControlSettings(rows);
        rows.clear();
        List<InForceEntry> entries = new ArrayList<>(IN_FORCE);
        TruckDay truck = BARE.inForce(entries);
        entries.clear();

        assertThat(spreader.controlSettings()).isEqualTo(ROWS);
        assertThat(truck.inForce()).isEqualTo(IN_FORCE);
    }
}
