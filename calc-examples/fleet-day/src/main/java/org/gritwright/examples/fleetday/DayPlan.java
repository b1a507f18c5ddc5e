package org.gritwright.examples.fleetday;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import javax.measure.Quantity;
import javax.measure.quantity.Time;
import org.gritwright.core.fleet.day.FleetDay;
import org.gritwright.core.fleet.day.MethodEntry;
import org.gritwright.core.fleet.day.ReadingMethodEntry;
import org.gritwright.core.fleet.day.WeighingMethodEntry;
import org.gritwright.core.fleet.plan.FleetPlan;
import org.gritwright.core.fleet.plan.PointPlan;
import org.gritwright.core.fleet.plan.Schedule;
import org.gritwright.core.fleet.plan.TruckPlan;
import org.gritwright.core.observation.Repeatability;
import org.gritwright.units.Amounts;

/**
 * What is planned for a day, for the page and the console alike.
 *
 * @param day the day as it was written down
 * @param plan its plan
 */
record DayPlan(FleetDay day, FleetPlan plan) {

    List<MethodEntry> methods() {
        return plan.plan().methods();
    }

    List<TruckPlan> planned() {
        return plan.trucks().stream().filter(truck -> truck.refusal().isEmpty()).toList();
    }

    List<TruckPlan> refused() {
        return plan.trucks().stream()
                .filter(truck -> truck.refusal().isPresent())
                .toList();
    }

    /**
     * The weighing method for a truck: the quickest whose scale reads in the truck's own units, so that nobody mixes pounds and
     * kilograms on one sheet; if none of these will do, the quickest of all.
     */
    Optional<Integer> method(TruckPlan truck) {
        if (truck.quickest().isEmpty()) {
            return Optional.empty();
        }
        TruckUnits units = TruckUnits.of(truck);
        return IntStream.range(0, methods().size())
                .filter(truck::isReachedBy)
                .boxed()
                .min(Comparator.<Integer, Boolean>comparing(
                                method -> !units.isOwn(division(methods().get(method))))
                        .thenComparingDouble(method ->
                                Amounts.si(Time.class, truck.time(method).orElseThrow())));
    }

    /** In which steps a method reads; that its scale or container is there was checked when the plan was made. */
    Quantity<?> division(MethodEntry method) {
        if (method instanceof ReadingMethodEntry reading) {
            return day.graduates().stream()
                    .filter(one -> one.id().equals(reading.container()))
                    .findFirst()
                    .orElseThrow()
                    .division();
        }
        return day.scales().stream()
                .filter(scale -> scale.id().equals(((WeighingMethodEntry) method).scale()))
                .findFirst()
                .orElseThrow()
                .division();
    }

    /** The days with each truck's own method. */
    Schedule mix() {
        return plan.schedule(this::method);
    }

    /** What can't be verified as planned, a sentence for each of a truck's points that has such a rate and speed. */
    List<String> notVerified(TruckPlan truck) {
        List<String> sentences = new ArrayList<>();
        for (PointPlan point : truck.points()) {
            method(truck)
                    .map(method -> point.methods().get(method))
                    .filter(method -> method.verifications().size() < runs(truck))
                    .ifPresent(method ->
                            sentences.add(PlanWords.where(truck, point) + PlanWords.notVerified(truck, method)));
        }
        return sentences;
    }

    /** The trucks that have a plan and on which a method could be used at all: a tarp is for grains. */
    List<TruckPlan> meantFor(int method) {
        return planned().stream()
                .filter(truck -> truck.truck().spreader().isForLiquids()
                        == methods().get(method).isForLiquids())
                .toList();
    }

    /** How many verification catches are planned for a point. */
    static int runs(TruckPlan truck) {
        return truck.targetRates().size() * truck.plan().testSpeeds().size();
    }

    /** Trucks that can't be planned, and those that no weighing method makes as certain as wanted. */
    long needAttention() {
        return plan.trucks().stream()
                .filter(truck -> truck.quickest().isEmpty())
                .count();
    }

    /** Whether the day can go as it is planned: every truck as certain as wanted, and verified at every rate and speed. */
    boolean isWhole() {
        return needAttention() == 0
                && planned().stream().allMatch(truck -> notVerified(truck).isEmpty());
    }

    /** How much catches scatter decides how certain a plan is: whether that is known or only assumed. */
    String scatter() {
        return day.allowances()
                .repeatability()
                .map(stated -> "Catches are taken to scatter by " + Amounts.format(stated.relativeDeviation())
                        + ", as the day states.")
                .orElseGet(() -> "The day states no repeatability: catches are assumed to scatter by "
                        + Amounts.format(Repeatability.COMMON.relativeDeviation())
                        + " (common practice, no source).");
    }

    /**
     * For example "20 trucks: 19 have a plan that reaches what is wanted, 1 can't reach it, 0 can't be planned. 3 of them can't
     * be verified at every rate and speed that is planned: T-08, T-17, T-20."
     */
    String summary() {
        long refused = refused().size();
        long outOfReach = needAttention() - refused;
        long reached = plan.trucks().size() - needAttention();
        List<String> notVerified = planned().stream()
                .filter(truck -> !notVerified(truck).isEmpty())
                .map(truck -> truck.truck().id())
                .toList();
        return Words.count(plan.trucks().size(), "truck") + ": " + reached + " "
                + Words.verb(reached, "has", "have") + " a plan that reaches what is wanted, " + outOfReach
                + " can't reach it, " + refused + " can't be planned."
                + (notVerified.isEmpty()
                        ? ""
                        : " " + notVerified.size()
                                + " can't be verified at every rate and speed that is planned: "
                                + String.join(", ", notVerified) + ".");
    }

    /**
     * What is to be done besides, and takes a time that no field of the document states; empty if there is nothing.
     *
     * @return for example "reading 4 tanks; catching the nozzles of A-41, A-43"
     */
    String besides() {
        List<String> tasks = new ArrayList<>();
        if (!day.tanks().isEmpty()) {
            tasks.add("reading " + Words.count(day.tanks().size(), "tank"));
        }
        List<String> booms = planned().stream()
                .filter(truck -> truck.truck().boom().isPresent())
                .map(truck -> truck.truck().id())
                .toList();
        if (!booms.isEmpty()) {
            tasks.add("catching the nozzles of " + String.join(", ", booms));
        }
        return String.join("; ", tasks);
    }

    /** For example "1 crew, 8 h a day". */
    String crews() {
        return Words.count(plan.plan().howManyCrews(), "crew") + ", "
                + Amounts.format(plan.plan().lengthOfDay()) + " a day";
    }
}
