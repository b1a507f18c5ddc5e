package org.gritwright.examples.fleetday;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.Collectors;
import javax.measure.Quantity;
import javax.measure.quantity.Speed;
import org.gritwright.core.envelope.Bound;
import org.gritwright.core.envelope.Limit;
import org.gritwright.core.finding.FindingCode;
import org.gritwright.core.fleet.assessment.RouteAssessment;
import org.gritwright.core.fleet.assessment.RouteFit;
import org.gritwright.core.fleet.assessment.TruckAssessment;
import org.gritwright.core.fleet.day.RouteEntry;
import org.gritwright.units.Amounts;

/** What to do about routes that ask for more or less than a truck's drive holds. */
final class RouteAdvice {
    private RouteAdvice() {}

    /** For example "On hill road 31 mi/h at most, or calibrate a wider gate opening"; none where no route is beyond. */
    static Optional<String> of(TruckAssessment truck) {
        if (truck.findings().stream().anyMatch(one -> one.code() == FindingCode.ROUTE_BEYOND_MEASURED)) {
            return Optional.of("Measure the drive as far as its routes need it");
        }
        List<String> advice = truck.routes().stream()
                .filter(one -> one.status() == RouteAssessment.Status.NOT_HELD)
                .map(one -> "On " + one.route().name() + " "
                        + one.best()
                                .map(best -> words(one.route(), best) + others(one))
                                .orElse("another rate or speed, or another flow meter"))
                .toList();
        return advice.isEmpty() ? Optional.empty() : Optional.of(String.join("; ", advice));
    }

    /** What other calibrated settings hold of it. */
    private static String others(RouteAssessment route) {
        return route.fits().stream()
                .skip(1)
                .filter(fit -> fit.atSlowest().limit().isEmpty()
                        || fit.atFastest().limit().isEmpty())
                .map(fit -> "; with the gate at " + fit.point().setting() + " "
                        + fit.speeds()
                                .lowest()
                                .map(bound -> whole(bound, route.route().lowestSpeed(), Math::ceil) + " to ")
                                .orElse("up to ")
                        + whole(fit.speeds().highest(), route.route().highestSpeed(), Math::floor))
                .collect(Collectors.joining());
    }

    private static String words(RouteEntry route, RouteFit fit) {
        List<String> speeds = new ArrayList<>();
        boolean isTooSlow = fit.atSlowest()
                .limit()
                .filter(Limit.SLOWEST_STEADY_SHAFT::equals)
                .isPresent();
        boolean isTooFast = fit.atFastest()
                .limit()
                .filter(limit -> limit != Limit.SLOWEST_STEADY_SHAFT)
                .isPresent();
        if (isTooSlow) {
            fit.speeds()
                    .lowest()
                    .ifPresent(bound -> speeds.add(whole(bound, route.lowestSpeed(), Math::ceil) + " at least"));
        }
        if (isTooFast) {
            speeds.add(whole(fit.speeds().highest(), route.highestSpeed(), Math::floor) + " at most");
        }
        boolean isSettable = fit.point().setting().quantity().isPresent();
        return String.join(" and ", speeds)
                + (isSettable && isTooSlow != isTooFast
                        ? ", or calibrate a " + (isTooFast ? "wider" : "narrower") + " gate opening"
                        : ", or another rate");
    }

    /** Inward, in the unit of the route. */
    private static String whole(Bound<Speed> bound, Quantity<Speed> like, DoubleUnaryOperator inward) {
        return Amounts.format(
                Amounts.of(inward.applyAsDouble(Amounts.in(bound.value().value(), like.getUnit())), like.getUnit()));
    }
}
