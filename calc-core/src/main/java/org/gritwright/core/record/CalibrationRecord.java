package org.gritwright.core.record;

import java.util.List;
import java.util.Optional;
import org.gritwright.core.calibration.CalibrationInForce;
import org.gritwright.core.calibration.Since;
import org.gritwright.core.finding.Finding;
import org.gritwright.core.fleet.assessment.FleetAssessor;
import org.gritwright.core.fleet.assessment.MassProof;
import org.gritwright.core.fleet.assessment.Refusal;
import org.gritwright.core.fleet.assessment.RoadProof;
import org.gritwright.core.fleet.assessment.TruckAssessment;
import org.gritwright.core.fleet.day.DriveEntry;
import org.gritwright.core.fleet.day.FleetDay;
import org.gritwright.core.fleet.day.InForceEntry;
import org.gritwright.core.fleet.day.StatedRangeEntry;
import org.gritwright.core.fleet.day.TruckDay;
import org.gritwright.core.history.Event;
import org.gritwright.core.range.DriveResponse;
import org.gritwright.core.range.RangeSource;
import org.gritwright.core.spi.TypeRegistry;
import org.gritwright.units.check.Require;

/**
 * One truck's calibration record: what was written down that day, so that anyone can compute it again, what came out,
 * and who signed it off. Immutable, thread-safe, a value.
 *
 * @param entered the day with this truck only
 * @param refusals every reason why the day can't be computed with; pointers lead into the day's own document
 * @param points what the day showed about each calibration point
 * @param curves the discharge curves over several settings
 * @param roadSpeed the check of the road speed
 * @param boom what its boom showed; none if it has none, and in older records
 * @param massProof whether the mass per revolution is proven
 * @param roadProof whether the road speed is proven
 * @param toDo what has to be done, most urgent first
 * @param findings everything that a person should know
 * @param signOff who signed; none until then
 */
public record CalibrationRecord(
        FleetDay entered,
        List<Refusal> refusals,
        List<PointOutcome> points,
        List<CurveOutcome> curves,
        Optional<RoadSpeedOutcome> roadSpeed,
        Optional<BoomOutcome> boom,
        MassProof massProof,
        RoadProof roadProof,
        List<ToDoOutcome> toDo,
        List<Finding> findings,
        Optional<SignOff> signOff) {
    /**
     * Copies the lists.
     *
     * @throws org.gritwright.units.InvalidInputException if the day doesn't hold exactly one truck
     */
    public CalibrationRecord {
        Require.given(
                CalibrationRecord.class,
                entered,
                refusals,
                points,
                curves,
                roadSpeed,
                boom,
                massProof,
                roadProof,
                toDo,
                findings,
                signOff);
        Require.that(
                entered.trucks().size() == 1,
                "trucks of a calibration record",
                "exactly one",
                entered.trucks().size());
        refusals = List.copyOf(refusals);
        points = List.copyOf(points);
        curves = List.copyOf(curves);
        toDo = List.copyOf(toDo);
        findings = List.copyOf(findings);
    }

    /**
     * The record of an assessment, not yet signed.
     *
     * @param day the fleet's day
     * @param assessment one truck's assessment
     * @return the record
     */
    public static CalibrationRecord of(FleetDay day, TruckAssessment assessment) {
        return new CalibrationRecord(
                day.withOnly(assessment.truck()),
                assessment.refusals(),
                assessment.points().stream()
                        .map(point -> PointOutcome.of(point, Since.of(day.day())))
                        .toList(),
                assessment.curves().stream().map(CurveOutcome::of).toList(),
                assessment.roadSpeed().map(RoadSpeedOutcome::of),
                assessment.boom().map(BoomOutcome::of),
                assessment.massProof(),
                assessment.roadProof(),
                assessment.toDo().stream().map(ToDoOutcome::of).toList(),
                assessment.findings(),
                Optional.empty());
    }

    /**
     * What the displays held after the day, as far as its catches show: once a correction is entered, the value as left. It
     * is computed from what was entered, so that a record of any version answers.
     *
     * @param types the conveyor and gate types that are known
     * @return the calibrations in force, point by point; empty if the day can't be computed with
     */
    public List<CalibrationInForce> inForceAfter(TypeRegistry types) {
        return FleetAssessor.of(types).assess(entered).get(0).inForceAfter();
    }

    /**
     * What the record tells a fleet's history: the season, changes, what the displays were seen to hold, calibrations, verifications that nothing
     * speaks against, what was entered and corrected. It is computed from what was entered, so that a record of any version answers, and
     * always the same for the same record and source.
     *
     * @param source what the record is known by, the same whenever it is read; ids of events begin with it
     * @param types the conveyor, gate, pump and meter types that are known
     * @return the events
     * @throws org.gritwright.units.InvalidInputException if the day can't be computed with, or the source is blank
     */
    public List<Event> events(String source, TypeRegistry types) {
        Require.text("source of events", source);
        TruckAssessment assessed = FleetAssessor.of(types).assess(entered).get(0);
        Require.that(
                !assessed.isRefused(),
                "calibration record of " + assessed.truck().id() + ", " + entered.day(),
                "one that can be computed with",
                () -> assessed.refusals().get(0));
        return RecordedEvents.of(source, entered, assessed);
    }

    /**
     * The same truck on another day, with what its displays held after this one, the range of its drive, its boom without
     * the nozzles' catches, and nothing done yet.
     *
     * @param types the conveyor and gate types that are known
     * @return the truck's next day
     */
    public TruckDay nextDay(TypeRegistry types) {
        TruckDay truck = entered.trucks().get(0);
        TruckDay next = TruckDay.of(truck.id(), truck.spreader())
                .inForce(inForceAfter(types).stream()
                        .map(held -> InForceEntry.of(held, Since.of(entered.day())))
                        .toList());
        TruckDay fitted =
                truck.boom().map(boom -> next.boom(boom.withoutNozzles())).orElse(next);
        TruckDay modeled = truck.curveModel().map(fitted::curveModel).orElse(fitted);
        return driveAfter(truck).map(modeled::drive).orElse(modeled);
    }

    /** What was measured of the drive that day is what it is compared with on the next. */
    private Optional<DriveEntry> driveAfter(TruckDay truck) {
        if (!refusals.isEmpty()) {
            return Optional.empty();
        }
        Optional<StatedRangeEntry> measured = truck.drive()
                .flatMap(DriveEntry::response)
                .flatMap(DriveResponse::workingRange)
                .map(range -> new StatedRangeEntry(
                        range.lowest(), range.highest(), RangeSource.MEASURED, Optional.of(entered.day())));
        return measured.or(() -> truck.drive().flatMap(DriveEntry::statedRange)).map(DriveEntry::stated);
    }

    /**
     * The same record with a signature.
     *
     * @param who who signs off
     * @return the signed record
     */
    public CalibrationRecord signedBy(SignOff who) {
        return new CalibrationRecord(
                entered,
                refusals,
                points,
                curves,
                roadSpeed,
                boom,
                massProof,
                roadProof,
                toDo,
                findings,
                Optional.of(who));
    }
}
