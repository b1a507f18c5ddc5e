package org.gritwright.core.fleet.assessment;

import static org.gritwright.core.finding.Argument.name;
import static org.gritwright.core.finding.Argument.number;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Stream;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Speed;
import org.gritwright.core.envelope.Delivered;
import org.gritwright.core.envelope.Demand;
import org.gritwright.core.envelope.Envelope;
import org.gritwright.core.envelope.GateFit;
import org.gritwright.core.envelope.GatePlanner;
import org.gritwright.core.envelope.Limit;
import org.gritwright.core.finding.Argument;
import org.gritwright.core.finding.Finding;
import org.gritwright.core.finding.FindingCode;
import org.gritwright.core.fleet.day.RouteEntry;
import org.gritwright.core.fleet.day.Yard;
import org.gritwright.core.observation.CalibrationPoint;
import org.gritwright.core.observation.Material;
import org.gritwright.core.range.RangeEnd;
import org.gritwright.core.range.WorkingRange;
import org.gritwright.core.spi.Setting;
import org.gritwright.units.Amounts;
import org.gritwright.units.UnitSymbol;
import org.gritwright.units.quantity.ApplicationRate;
import org.gritwright.units.quantity.DischargePerRevolution;
import org.gritwright.units.quantity.FlowRate;
import org.gritwright.units.quantity.LiquidApplicationRate;

/** Compares what routes ask of a truck with what it holds at each of its calibrated settings. */
final class RouteCheck {
    private final Optional<DriveAssessment> drive;
    private final List<PointAssessment> points;
    private final Yard yard;

    /**
     * A check of one truck's routes.
     *
     * @param drive what the truck's drive holds
     * @param points its calibration points
     * @param yard its tolerance says what may be lost, or laid too much
     */
    RouteCheck(Optional<DriveAssessment> drive, List<PointAssessment> points, Yard yard) {
        this.drive = drive;
        this.points = points;
        this.yard = yard;
    }

    RouteAssessment assess(RouteEntry route) {
        List<PointAssessment> ofMaterial = points.stream()
                .filter(one -> one.point().material().name().equals(route.material()))
                .toList();
        if (ofMaterial.stream().noneMatch(RouteCheck::isCalibrated)) {
            return new RouteAssessment(route, RouteAssessment.Status.NOT_CALIBRATED, List.of());
        }
        Map<Setting, CalibrationPoint> bySetting = new LinkedHashMap<>();
        Map<Setting, Envelope> envelopes = new LinkedHashMap<>();
        ofMaterial.forEach(one -> one.envelope().ifPresent(envelope -> {
            bySetting.put(one.point().setting(), one.point());
            envelopes.put(one.point().setting(), envelope);
        }));
        if (envelopes.isEmpty()) {
            return new RouteAssessment(
                    route,
                    outsideMeter(route).isPresent()
                            ? RouteAssessment.Status.NOT_HELD
                            : RouteAssessment.Status.RANGE_NOT_KNOWN,
                    List.of());
        }
        Demand demand = demand(route);
        List<RouteFit> fits = GatePlanner.compare(envelopes, List.of(demand)).stream()
                .map(fit -> fit(demand, bySetting, envelopes, fit))
                // What is lost within the tolerance is held too.
                .sorted(Comparator.comparing(fit -> !fit.held()))
                .toList();
        return new RouteAssessment(
                route, fits.get(0).held() ? RouteAssessment.Status.HELD : RouteAssessment.Status.NOT_HELD, fits);
    }

    private static boolean isCalibrated(PointAssessment point) {
        return point.calibration().isPresent() || !point.held().isEmpty();
    }

    private RouteFit fit(
            Demand demand, Map<Setting, CalibrationPoint> points, Map<Setting, Envelope> envelopes, GateFit fit) {
        Envelope envelope = Objects.requireNonNull(envelopes.get(fit.setting()), "it was compared");
        Delivered atSlowest = envelope.deliveredAt(demand.rate(), demand.slowest());
        Delivered atFastest = envelope.deliveredAt(demand.rate(), demand.fastest());
        return new RouteFit(
                Objects.requireNonNull(points.get(fit.setting()), "it was compared"),
                envelope,
                envelope.speedsFor(demand.rate()),
                atSlowest,
                atFastest,
                fit.margin(),
                isHeld(atSlowest) && isHeld(atFastest));
    }

    private Stream<PointAssessment> calibrated(RouteEntry route) {
        return points.stream()
                .filter(one -> one.point().material().name().equals(route.material()))
                .filter(RouteCheck::isCalibrated);
    }

    private boolean hasShaft(RouteEntry route) {
        return calibrated(route).allMatch(one -> one.point().metering().hasShaft());
    }

    /** Where nobody says what the drive holds: the first end of the route at which the flow is none that the meter counts rightly. */
    private Optional<Finding> outsideMeter(RouteEntry route) {
        Demand demand = demand(route);
        return calibrated(route)
                .flatMap(one -> Stream.of(demand.slowest(), demand.fastest())
                        .filter(speed -> !isGoodFor(one, flow(one, demand, speed)))
                        .map(speed -> outsideMeter(route, one, demand, speed)))
                .findFirst();
    }

    private static Finding outsideMeter(RouteEntry route, PointAssessment point, Demand demand, Quantity<Speed> speed) {
        return Finding.of(
                FindingCode.ROUTE_OUTSIDE_METER,
                Map.of(
                        "route", name(route.name()),
                        "rate", number(route.target().perDistance()),
                        "speed", number(speed),
                        "flow",
                                number(Amounts.ofSi(
                                        flow(point, demand, speed),
                                        UnitSymbol.tradeUnit(FlowRate.class, demand.rate())))));
    }

    /** Cubic meters per second. */
    private static double flow(PointAssessment point, Demand demand, Quantity<Speed> speed) {
        return Amounts.si(ApplicationRate.class, demand.rate())
                * Amounts.si(Speed.class, speed)
                / point.point().material().kilogramsPerAmount();
    }

    private static boolean isGoodFor(PointAssessment point, double cubicMetersPerSecond) {
        if (!point.point().material().isLiquid()) {
            return true;
        }
        double perTurn = point.calibration()
                        .map(found -> Amounts.si(
                                DischargePerRevolution.class,
                                found.dischargePerRevolution().value()))
                        .orElseGet(() -> point.held().get(0).kilogramsPerRevolution())
                / point.point().material().kilogramsPerAmount();
        return point.point()
                .metering()
                .isGoodFor(cubicMetersPerSecond, cubicMetersPerSecond / perTurn)
                .orElse(true);
    }

    private Demand demand(RouteEntry route) {
        return route.demand(yard.material(route.material()));
    }

    private boolean isHeld(Delivered delivered) {
        return yard.tolerance().acceptsRatio(Amounts.si(Dimensionless.class, delivered.share()) - 1);
    }

    /** What a person should know of a route. */
    List<Finding> findings(RouteAssessment assessed) {
        RouteEntry route = assessed.route();
        return switch (assessed.status()) {
            case NOT_CALIBRATED ->
                List.of(Finding.of(
                        FindingCode.ROUTE_NOT_CALIBRATED,
                        Map.of("route", name(route.name()), "material", name(route.material()))));
            case RANGE_NOT_KNOWN ->
                // A flow meter has no drive of its own that could be measured.
                hasShaft(route)
                        ? List.of(Finding.of(FindingCode.ROUTE_RANGE_NOT_KNOWN, Map.of("route", name(route.name()))))
                        : List.of();
            case NOT_HELD ->
                assessed.best()
                        .map(best -> lost(demand(route), best))
                        .orElseGet(() -> List.of(outsideMeter(route).orElseThrow()));
            case HELD ->
                assessed.fits().stream()
                        .filter(fit -> !fit.held())
                        .findFirst()
                        .map(other -> List.of(
                                otherSetting(demand(route), assessed.best().orElseThrow(), other)))
                        .orElse(List.of());
        };
    }

    private Finding otherSetting(Demand demand, RouteFit best, RouteFit other) {
        boolean slow = !isHeld(other.atSlowest());
        Map<String, Argument> about = about(best, demand, slow ? demand.slowest() : demand.fastest());
        about.put("point", name(best.point().toString()));
        about.put("otherPoint", name(other.point().toString()));
        about.put("delivered", rate(other, (slow ? other.atSlowest() : other.atFastest()).delivered()));
        return Finding.of(FindingCode.ROUTE_NEEDS_SETTING, about);
    }

    /** Of a liquid, people speak of its volume. */
    private static Argument rate(RouteFit fit, Quantity<ApplicationRate> rate) {
        Material material = fit.point().material();
        return number(
                material.isLiquid()
                        ? Amounts.ofSi(
                                Amounts.si(ApplicationRate.class, rate) / material.kilogramsPerAmount(),
                                UnitSymbol.tradeUnit(LiquidApplicationRate.class, rate))
                        : rate);
    }

    private static Map<String, Argument> about(RouteFit fit, Demand demand, Quantity<Speed> speed) {
        Map<String, Argument> about = new LinkedHashMap<>();
        about.put("route", name(demand.name()));
        about.put("rate", rate(fit, demand.rate()));
        about.put("speed", number(speed));
        return about;
    }

    private List<Finding> lost(Demand demand, RouteFit fit) {
        List<Finding> findings = new ArrayList<>();
        if (is(fit.atFastest(), Limit.FASTEST_SHAFT)) {
            findings.add(lost(demand, fit, fit.atFastest(), demand.fastest(), highest()));
        }
        if (is(fit.atSlowest(), Limit.SLOWEST_STEADY_SHAFT)) {
            findings.add(lost(demand, fit, fit.atSlowest(), demand.slowest(), lowest()));
        }
        return findings;
    }

    private boolean is(Delivered delivered, Limit limit) {
        return !isHeld(delivered) && delivered.limit().filter(limit::equals).isPresent();
    }

    private RangeEnd highest() {
        return drive.flatMap(DriveAssessment::highest).orElseThrow();
    }

    private RangeEnd lowest() {
        return drive.flatMap(DriveAssessment::lowest).orElseThrow();
    }

    private Finding lost(Demand demand, RouteFit fit, Delivered delivered, Quantity<Speed> speed, RangeEnd end) {
        Map<String, Argument> about = about(fit, demand, speed);
        about.put("needed", number(delivered.shaftSpeed()));
        about.put("point", name(fit.point().toString()));
        if (!end.proven()) {
            WorkingRange range = fit.envelope().range();
            about.put("lowest", number(range.lowest()));
            about.put("highest", number(range.highest()));
            return Finding.of(FindingCode.ROUTE_BEYOND_MEASURED, about);
        }
        about.put("holds", number(end.speed()));
        about.put("delivered", rate(fit, delivered.delivered()));
        if (delivered.limit().filter(Limit.FASTEST_SHAFT::equals).isPresent()) {
            about.put("upTo", number(fit.speeds().highest().value().value()));
            return Finding.of(FindingCode.ROUTE_ABOVE_RANGE, about);
        }
        about.put("from", number(fit.speeds().lowest().orElseThrow().value().value()));
        return Finding.of(FindingCode.ROUTE_BELOW_RANGE, about);
    }
}
