package org.gritwright.core.fleet.assessment;

import java.time.Period;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import org.gritwright.core.calibration.CalibrationAge;
import org.gritwright.core.finding.Finding;
import org.gritwright.core.fleet.day.FleetDay;
import org.gritwright.core.fleet.day.Yard;
import org.gritwright.core.fleet.review.FleetReview;
import org.gritwright.core.spi.TypeRegistry;
import org.gritwright.core.statistics.RatioEstimator;
import org.gritwright.core.verification.VerificationLimits;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.check.Require;

/**
 * Assesses a fleet's day, truck by truck, and compares the trucks: one bad truck doesn't stop the others.
 *
 * @param types the conveyor and gate types that are known
 * @param estimator how calibration catches become one ratio; a line with an intercept takes only catches of different
 *     lengths, and then no discharge curve is fitted
 * @param limits thresholds beyond which catches and corrections are flagged
 * @param preparation how long before the season's start a calibration may be made
 */
public record FleetAssessor(
        TypeRegistry types, RatioEstimator estimator, VerificationLimits limits, Period preparation) {

    /** Checks that all are given. */
    public FleetAssessor {
        Require.given(FleetAssessor.class, types, estimator, limits, preparation);
    }

    /**
     * An assessor with the default estimator and the common limits.
     *
     * @param types the conveyor and gate types that are known
     * @return the assessor
     */
    public static FleetAssessor of(TypeRegistry types) {
        return new FleetAssessor(
                types, RatioEstimator.RATIO_OF_SUMS, VerificationLimits.COMMON, CalibrationAge.PREPARATION);
    }

    /**
     * Assesses all trucks.
     *
     * @param day the fleet's day
     * @return one assessment a truck, in the order of the day
     * @throws InvalidInputException if the tolerance is not greater than zero, or two scales or materials share a name
     */
    public List<TruckAssessment> assess(FleetDay day) {
        Yard yard = Yard.of(day);
        Map<Integer, List<Finding>> sameTickets = SameTickets.in(yard);
        List<TruckAssessor> trucks = IntStream.range(0, day.trucks().size())
                .mapToObj(i ->
                        new TruckAssessor(this, yard, day.trucks().get(i), i, sameTickets.getOrDefault(i, List.of())))
                .toList();
        FleetReview fleet = new FleetReview(
                trucks.stream().flatMap(one -> one.comparable().stream()).toList());
        return trucks.stream().map(one -> one.assess(fleet)).toList();
    }
}
