package org.gritwright.core.fleet.plan;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import javax.measure.Quantity;
import javax.measure.quantity.Time;
import org.gritwright.core.fleet.day.PlanEntry;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.check.Require;

/**
 * How many days a plan takes. Each crew sets up the yard once a day for each weighing method that it uses that day, and does
 * one truck after the other; a truck is put off to another day rather than left unfinished, unless it takes more than a day by
 * itself. Trucks are given to the first day with room for them, the longest of each method first, which need not be the fewest
 * days that are possible. Immutable, thread-safe, a value.
 *
 * @param trucks how many trucks are done
 * @param work the work of all crews in hours, with what they do once a day
 * @param crewDays how many days it would take one crew
 * @param crews how many crews there are
 */
public record Schedule(int trucks, Quantity<Time> work, long crewDays, int crews) {

    /**
     * Checks the values.
     *
     * @throws org.gritwright.units.InvalidInputException if a number is negative, or there is no crew
     */
    public Schedule {
        Require.that(trucks >= 0, "trucks", "0 or more", trucks);
        Require.notNegative("work", Time.class, work);
        Require.that(crewDays >= 0, "days of a crew", "0 or more", crewDays);
        Require.that(crews >= 1, "crews", "1 or more", crews);
    }

    /** A truck with its weighing method. */
    private record Job(int method, double seconds) {}

    /** What a crew does on one day. */
    private static final class CrewDay {
        private final Set<Integer> methods = new HashSet<>();
        private double seconds;
    }

    static Schedule of(FleetPlan plan, Function<TruckPlan, Optional<Integer>> methodOf) {
        PlanEntry entry = plan.plan();
        double length = MethodPlan.si(entry.lengthOfDay());
        List<Job> jobs = plan.trucks().stream()
                .flatMap(truck -> methodOf
                        .apply(truck)
                        .flatMap(method -> truck.time(method).map(time -> new Job(method, MethodPlan.si(time))))
                        .stream())
                .sorted(Comparator.comparingInt(Job::method)
                        .thenComparing(Comparator.comparingDouble(Job::seconds).reversed()))
                .toList();
        List<CrewDay> days = new ArrayList<>();
        long whole = 0;
        double work = 0;
        for (Job job : jobs) {
            double daily =
                    MethodPlan.si(entry.methods().get(job.method()).times().daily());
            // A truck that takes more than a day fills days of its own, and the rest of it is done on a last one.
            long full = Math.max(0, (long) Math.ceil(job.seconds() / (length - daily)) - 1);
            whole += full;
            work += full * daily;
            double rest = job.seconds() - full * (length - daily);
            CrewDay day = days.stream()
                    .filter(one -> one.seconds + (one.methods.contains(job.method()) ? 0 : daily) + rest <= length)
                    .findFirst()
                    .orElseGet(() -> {
                        CrewDay next = new CrewDay();
                        days.add(next);
                        return next;
                    });
            if (day.methods.add(job.method())) {
                day.seconds += daily;
                work += daily;
            }
            day.seconds += rest;
            work += job.seconds();
        }
        return new Schedule(
                jobs.size(), Amounts.ofSi(work, SpreadingUnits.HOUR), whole + days.size(), entry.howManyCrews());
    }

    /**
     * How many days it takes all crews side by side.
     *
     * @return 0 without a truck
     */
    public long days() {
        return (crewDays + crews - 1) / crews;
    }

    /**
     * How many trucks are done a day, on average.
     *
     * @return 0 without a truck
     */
    public double trucksPerDay() {
        return trucks == 0 ? 0 : (double) trucks / days();
    }
}
