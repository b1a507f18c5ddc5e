package org.gritwright.examples.fleetday;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import javax.measure.Quantity;
import org.gritwright.core.calibration.Calibration;
import org.gritwright.core.calibration.CalibrationFactor;
import org.gritwright.core.calibration.CalibrationInForce;
import org.gritwright.core.chart.ChartSubject;
import org.gritwright.core.chart.ControlSetting;
import org.gritwright.core.chart.FeedbackChart;
import org.gritwright.core.chart.OpenLoopChart;
import org.gritwright.core.chart.RateBasis;
import org.gritwright.core.envelope.Demand;
import org.gritwright.core.envelope.Envelope;
import org.gritwright.core.finding.Finding;
import org.gritwright.core.finding.FindingCode;
import org.gritwright.core.fleet.assessment.DriveAssessment;
import org.gritwright.core.fleet.assessment.NextStep;
import org.gritwright.core.fleet.assessment.PointAssessment;
import org.gritwright.core.fleet.assessment.RouteAssessment;
import org.gritwright.core.fleet.assessment.RouteFit;
import org.gritwright.core.fleet.assessment.ToDo;
import org.gritwright.core.fleet.assessment.TruckAssessment;
import org.gritwright.core.fleet.day.RouteEntry;
import org.gritwright.core.metering.OpenLoop;
import org.gritwright.core.range.AtWork;
import org.gritwright.core.range.Direction;
import org.gritwright.core.range.DriveConditions;
import org.gritwright.core.range.DriveCurve;
import org.gritwright.core.range.DrivePoint;
import org.gritwright.core.range.DriveRun;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.quantity.ApplicationRate;
import org.gritwright.units.quantity.DischargePerRevolution;

/**
 * What a driver may go by at one calibration point. A paper in a cab is believed for a season, so there is none while anything about
 * truck or point is in doubt.
 *
 * @param truck the truck
 * @param point the point
 */
record CabPoint(TruckAssessment truck, PointAssessment point) {
    /** Those of conveyors: what a pump holds is told by its routes. */
    static List<CabPoint> of(TruckAssessment truck) {
        return truck.points().stream()
                .filter(point -> !point.point().material().isLiquid())
                .map(point -> new CabPoint(truck, point))
                .toList();
    }

    String name() {
        return point.point().toString();
    }

    /** Why there is no paper; empty if there may be one. */
    Optional<String> objection() {
        Optional<String> open = truck.toDo().stream()
                .filter(toDo -> toDo.step().needsAttention() && toDo.step() != NextStep.FIT_TO_DRIVE)
                .filter(toDo -> toDo.point()
                        .map(point.point()::equals)
                        // That something else isn't calibrated yet is no doubt about what is.
                        .orElse(toDo.step() != NextStep.CALIBRATE))
                .findFirst()
                .map(ToDo::step)
                .map(NextStep::words);
        if (open.isPresent()) {
            return open;
        }
        if (display().isEmpty()) {
            return Optional.of(
                    point.held().isEmpty()
                            ? "Write down the value that the display holds"
                            : "Find out which of its slots the display works with");
        }
        if (isSetByHand()) {
            return settings().isEmpty()
                    ? Optional.of("For a paper, measure the shaft speeds of its control settings")
                    : Optional.empty();
        }
        if (envelope().isEmpty()) {
            return Optional.of("For a paper, find out which shaft speeds the conveyor holds");
        }
        DriveAssessment drive = truck.drive().orElseThrow();
        if (Stream.of(drive.lowest(), drive.highest()).flatMap(Optional::stream).anyMatch(end -> !end.proven())) {
            return Optional.of("For a paper, measure the drive on, to its slowest and its fastest steady speed");
        }
        return atWork().map(DriveConditions::loaded).filter(AtWork.NO::equals).isPresent()
                ? Optional.of("For a paper, measure the drive with its load")
                : Optional.empty();
    }

    private Optional<DriveConditions> atWork() {
        return truck.drive()
                .flatMap(DriveAssessment::response)
                .map(response -> response.measurement().conditions());
    }

    /** What the drive's range was measured without. */
    Optional<String> caveat() {
        return truck.findings().stream()
                .filter(finding -> finding.code() == FindingCode.DRIVE_NOT_AS_AT_WORK)
                .map(Finding::sentence)
                .findFirst();
    }

    /** What the display holds for the point; of several slots nobody can tell which is meant. */
    Optional<CalibrationFactor> display() {
        List<CalibrationFactor> held =
                point.held().stream().map(CalibrationInForce::factor).distinct().toList();
        return held.size() == 1 ? Optional.of(held.get(0)) : Optional.empty();
    }

    /** What a truck that controls its shaft can do; none for one that a driver sets by hand. */
    Optional<Envelope> envelope() {
        return isSetByHand() ? Optional.empty() : point.envelope();
    }

    boolean isSetByHand() {
        return truck.truck().spreader().pulsesPerRevolution().isEmpty();
    }

    /** The discharge as it is best known; none where neither a calibration nor an envelope has it. */
    Optional<Measured<DischargePerRevolution>> discharge() {
        return point.envelope()
                .map(Envelope::discharge)
                .or(() -> point.calibration().map(Calibration::dischargePerRevolution));
    }

    /** The control settings of a truck that is set by hand: as measured, or else those of its table. */
    List<ControlSetting> settings() {
        if (!isSetByHand() || discharge().isEmpty()) {
            return List.of();
        }
        List<ControlSetting> measured = truck.drive()
                .flatMap(DriveAssessment::response)
                .map(response -> response.curve(Direction.RISING)
                        .map(curve -> measured(
                                curve,
                                response.measurement().runs().stream()
                                        .filter(run -> run.direction() == Direction.RISING)))
                        .orElse(List.of()))
                .orElse(List.of());
        if (!measured.isEmpty()) {
            return measured;
        }
        return truck.truck().spreader().feedback() instanceof OpenLoop table ? ControlSetting.of(table) : List.of();
    }

    private static List<ControlSetting> measured(DriveCurve curve, Stream<DriveRun> runs) {
        return ControlSetting.of(
                curve,
                runs.flatMap(run -> run.points().stream())
                        .filter(DrivePoint::isTurning)
                        .map(DrivePoint::command)
                        .distinct()
                        .filter(command -> curve.speedAt(command).isPresent())
                        .toList());
    }

    /** What routes ask of the truck with this material, and what was verified at the point. */
    List<Demand> asked() {
        List<Demand> asked = new ArrayList<>();
        truck.routes().stream()
                .map(RouteAssessment::route)
                .filter(route ->
                        route.material().equals(point.point().material().name()))
                .forEach(route -> asked.add(demand(route)));
        point.verifications().forEach(verification -> {
            Demand tried = new Demand(
                    "test run",
                    verification.source().run().targetRate().asType(ApplicationRate.class),
                    verification.source().run().testSpeed(),
                    verification.source().run().testSpeed());
            if (!asked.contains(tried)) {
                asked.add(tried);
            }
        });
        return asked;
    }

    private Demand demand(RouteEntry route) {
        return route.demand(point.point().material());
    }

    /** What a driver is asked for: by routes, or where there are none, what was verified. */
    List<Demand> askedOnTheRoad() {
        List<Demand> asked = asked();
        long routes = truck.routes().stream()
                .filter(one ->
                        one.route().material().equals(point.point().material().name()))
                .count();
        return routes > 0 ? asked.subList(0, (int) routes) : asked;
    }

    /** Whether nothing is lost at the point, or no more than the day's tolerance. */
    boolean isDone(Demand asked) {
        return truck.routes().stream()
                .filter(one -> demand(one.route()).equals(asked))
                .flatMap(one -> one.fits().stream())
                .filter(fit -> fit.point().equals(point.point()))
                .allMatch(RouteFit::held);
    }

    private ChartSubject subject() {
        return new ChartSubject(
                PlainText.oneLine(truck.truck().id()),
                PlainText.oneLine(point.point().material().name()),
                point.point().setting());
    }

    private List<Quantity<ApplicationRate>> rates() {
        return asked().stream().map(Demand::rate).toList();
    }

    Optional<FeedbackChart<ApplicationRate>> feedbackChart() {
        return envelope().map(envelope -> {
            CabUnits units = CabUnits.of(envelope.discharge().value());
            return new FeedbackChart<>(
                    subject(), envelope, RateBasis.perDistance(), units.rates(rates()), units.speeds());
        });
    }

    Optional<OpenLoopChart<ApplicationRate>> openLoopChart() {
        List<ControlSetting> settings = settings();
        return discharge().filter(known -> !settings.isEmpty()).map(known -> {
            CabUnits units = CabUnits.of(known.value());
            return new OpenLoopChart<>(
                    subject(), known, settings, units.speeds(), RateBasis.perDistance(), units.rateUnit());
        });
    }
}
