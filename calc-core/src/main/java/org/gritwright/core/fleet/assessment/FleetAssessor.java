package org.gritwright.core.fleet.assessment;

import java.time.Period;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.gritwright.core.calibration.CalibrationAge;
import org.gritwright.core.finding.Finding;
import org.gritwright.core.fleet.day.DayLimits;
import org.gritwright.core.fleet.day.EnteredRanges;
import org.gritwright.core.fleet.day.FleetDay;
import org.gritwright.core.fleet.day.TruckDay;
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
 * @param size how much a day may hold
 */
public record FleetAssessor(
        TypeRegistry types, RatioEstimator estimator, VerificationLimits limits, Period preparation, DayLimits size) {

    /** Checks that all are given. */
    public FleetAssessor {
        Require.given(FleetAssessor.class, types, estimator, limits, preparation, size);
    }

    /**
     * An assessor with the common limits of what a day may hold.
     *
     * @param types the conveyor and gate types that are known
     * @param estimator how calibration catches become one ratio
     * @param limits thresholds beyond which catches and corrections are flagged
     * @param preparation how long before the season's start a calibration may be made
     */
    public FleetAssessor(TypeRegistry types, RatioEstimator estimator, VerificationLimits limits, Period preparation) {
        this(types, estimator, limits, preparation, DayLimits.COMMON);
    }

    /**
     * The same assessor with other limits of what a day may hold.
     *
     * @param other how much a day may hold
     * @return the assessor
     */
    public FleetAssessor within(DayLimits other) {
        return new FleetAssessor(types, estimator, limits, preparation, other);
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
     * @throws InvalidInputException if the tolerance is not greater than zero, two scales, materials or routes share a name, a route
     *     names a material or truck that isn't there, or there are too many trucks or routes
     */
    public List<TruckAssessment> assess(FleetDay day) {
        return assess(day, IntStream::sequential);
    }

    /**
     * Assesses all trucks, several at a time, on the common pool of threads or the one that it is called on: worth it for hundreds of
     * trucks. Trucks, their order and all results are the same.
     *
     * @param day the fleet's day
     * @return one assessment a truck, in the order of the day
     * @throws InvalidInputException as for one after the other
     */
    public List<TruckAssessment> assessInParallel(FleetDay day) {
        return assess(day, IntStream::parallel);
    }

    private List<TruckAssessment> assess(FleetDay day, UnaryOperator<IntStream> way) {
        size.requireFew(day);
        int count = day.trucks().size();
        SharedRefusals shared = SharedRefusals.in(day);
        List<List<Refusal>> unusable = way.apply(IntStream.range(0, count))
                .mapToObj(i -> unusable(day, i, shared))
                .toList();
        // What can't be used says nothing of other trucks either.
        Yard yard = Yard.of(day.withTrucks(IntStream.range(0, count)
                .mapToObj(i -> unusable.get(i).isEmpty()
                        ? day.trucks().get(i)
                        : bare(day.trucks().get(i)))
                .toList()));
        Map<Integer, List<Finding>> sameTickets = SameTickets.in(yard);
        Map<String, TruckDay> byId = yard.day().trucks().stream()
                .collect(Collectors.toMap(TruckDay::id, Function.identity(), (one, other) -> one));
        List<TruckAssessor> trucks = way.apply(IntStream.range(0, count))
                .mapToObj(i -> new TruckAssessor(
                        this,
                        yard,
                        day.trucks().get(i),
                        i,
                        day.trucks().get(i).wets().map(byId::get),
                        sameTickets.getOrDefault(i, List.of()),
                        unusable.get(i)))
                .toList();
        FleetReview fleet = new FleetReview(
                trucks.stream().flatMap(one -> one.comparable().stream()).toList());
        List<TruckAssessment> alone = way.apply(IntStream.range(0, count))
                .mapToObj(i -> trucks.get(i).assess(fleet))
                .toList();
        return PrewetTotals.of(alone, yard);
    }

    /**
     * Assesses the tanks of the yard.
     *
     * @param day the fleet's day
     * @return one assessment a tank, in the order of the day
     * @throws InvalidInputException as for the trucks, or if two tanks share a name, or one names a material that isn't there
     */
    public List<TankAssessment> assessTanks(FleetDay day) {
        size.requireFew(day);
        Yard yard = Yard.of(day);
        return IntStream.range(0, day.tanks().size())
                .mapToObj(i -> new TankAssessor(yard, i).assess())
                .toList();
    }

    /** What a truck has too much of, and numbers that can't be, of its own or of a scale, material or route that is for it. */
    private List<Refusal> unusable(FleetDay day, int index, SharedRefusals shared) {
        TruckDay truck = day.trucks().get(index);
        String root = "/trucks/" + index;
        Optional<InvalidInputException> excess = size.excess(truck);
        if (excess.isPresent()) {
            return List.of(Refusal.of(root, "", excess.get()));
        }
        List<Refusal> refusals = new ArrayList<>();
        EnteredRanges.check(truck, root, (at, why) -> refusals.add(Refusal.of(at, "", why)));
        refusals.addAll(shared.of(truck));
        return refusals;
    }

    private static TruckDay bare(TruckDay truck) {
        return TruckDay.of(truck.id(), truck.spreader());
    }
}
