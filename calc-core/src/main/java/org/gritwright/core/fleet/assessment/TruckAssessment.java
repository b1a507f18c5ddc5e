package org.gritwright.core.fleet.assessment;

import static java.util.Optional.empty;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.gritwright.core.calibration.CalibrationInForce;
import org.gritwright.core.curve.DischargeCurve;
import org.gritwright.core.finding.Finding;
import org.gritwright.core.fleet.day.TruckDay;
import org.gritwright.core.roadspeed.RoadSpeedCheck;
import org.gritwright.core.verification.Correction;
import org.gritwright.core.verification.Verification;
import org.gritwright.units.check.Require;

/**
 * What a truck's day shows. Immutable, thread-safe, a value.
 *
 * @param truck the day as it was written down
 * @param refusals every reason why the day can't be computed with; none if it can
 * @param points what it shows about each calibration point: those of catches in the order of their first one, then
 *     those that only a value in force names
 * @param curves the discharge curves, one for each material that was caught at several settings
 * @param roadSpeed the check of the road speed
 * @param drive which speeds its shaft holds; none if nobody says anything
 * @param boom what its boom shows; none if nobody says anything
 * @param routes its routes, in the order of the day, and whether it can do them
 * @param prewet of a liquid that wets what another spreader of the day lays, the dry chemical of both together; none where nobody can
 *     tell it
 * @param massProof whether the mass per revolution is proven, at all points that are in use
 * @param roadProof whether the road speed is proven
 * @param toDo what has to be done, most urgent first; empty if there is nothing
 * @param findings everything that a person should know, each once
 */
public record TruckAssessment(
        TruckDay truck,
        List<Refusal> refusals,
        List<PointAssessment> points,
        List<DischargeCurve> curves,
        Optional<RoadSpeedCheck> roadSpeed,
        Optional<DriveAssessment> drive,
        Optional<BoomAssessment> boom,
        List<RouteAssessment> routes,
        Optional<PrewetTotal> prewet,
        MassProof massProof,
        RoadProof roadProof,
        List<ToDo> toDo,
        List<Finding> findings) {

    /** Copies the lists. */
    public TruckAssessment {
        Require.given(
                TruckAssessment.class,
                truck,
                refusals,
                points,
                curves,
                roadSpeed,
                drive,
                boom,
                routes,
                prewet,
                massProof,
                roadProof,
                toDo,
                findings);
        refusals = List.copyOf(refusals);
        points = List.copyOf(points);
        curves = List.copyOf(curves);
        routes = List.copyOf(routes);
        toDo = List.copyOf(toDo);
        findings = List.copyOf(findings);
    }

    /**
     * The assessment of a truck whose day can't be computed with.
     *
     * @param truck the day as it was written down
     * @param reasons why, one or more
     * @return an assessment that says to fix the record
     */
    public static TruckAssessment refused(TruckDay truck, List<Refusal> reasons) {
        return new TruckAssessment(
                truck,
                reasons,
                List.of(),
                List.of(),
                empty(),
                empty(),
                empty(),
                List.of(),
                empty(),
                MassProof.NOT_CHECKED,
                RoadProof.NOT_CHECKED,
                List.of(ToDo.ofTruck(NextStep.FIX_RECORD)),
                List.of());
    }

    /** The same with the dry chemical that it and another spreader lay together, and what is to be said of that. */
    TruckAssessment with(PrewetTotal total, List<Finding> more) {
        return new TruckAssessment(
                truck,
                refusals,
                points,
                curves,
                roadSpeed,
                drive,
                boom,
                routes,
                Optional.of(total),
                massProof,
                roadProof,
                toDo,
                Stream.concat(findings.stream(), more.stream()).toList());
    }

    /**
     * Whether the day can't be computed with.
     *
     * @return true if there are refusals
     */
    public boolean isRefused() {
        return !refusals.isEmpty();
    }

    /**
     * What has to be done next.
     *
     * @return the first of what has to be done, or {@link NextStep#NOTHING}
     */
    public NextStep nextStep() {
        return toDo.isEmpty() ? NextStep.NOTHING : toDo.get(0).step();
    }

    /**
     * The overall verdict in words.
     *
     * @return for example "conveyor right, road speed not checked"
     */
    public String verdict() {
        return "conveyor " + massProof.words() + ", road speed " + roadProof.words();
    }

    /**
     * All verifications of the day.
     *
     * @return of all points, in the order of time
     */
    public List<Verification> verifications() {
        return points.stream()
                .flatMap(point -> point.verifications().stream())
                .sorted(Comparator.comparing(v -> v.source().observation().at()))
                .toList();
    }

    /**
     * The point whose correction needs attention.
     *
     * @return the first whose correction isn't confirmed, else the first with a correction; none if there is none
     */
    public Optional<PointAssessment> toCorrect() {
        return points.stream()
                .filter(point -> point.correction()
                        .filter(c -> c.status() != Correction.Status.CONFIRMED)
                        .isPresent())
                .findFirst()
                .or(() -> points.stream()
                        .filter(point -> point.correction().isPresent())
                        .findFirst());
    }

    /**
     * What the displays hold after the day, as far as the catches show: once a correction is entered, the value as left. So
     * one day's result becomes the next day's calibrations in force.
     *
     * @return the values, point by point
     */
    public List<CalibrationInForce> inForceAfter() {
        return points.stream().flatMap(point -> point.held().stream()).toList();
    }
}
