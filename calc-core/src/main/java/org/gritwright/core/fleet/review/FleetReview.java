package org.gritwright.core.fleet.review;

import static org.gritwright.core.finding.Argument.number;

import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.gritwright.core.finding.Finding;
import org.gritwright.core.finding.FindingCode;
import org.gritwright.core.finding.Slip;
import org.gritwright.core.finding.Slip.Mistake;
import org.gritwright.core.finding.Term;
import org.gritwright.core.statistics.RobustSample;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;

/**
 * What the trucks of a fleet say of each other: tickets that fit another truck, and fills unlike those of the others of their
 * type with their material. Costs n·log n for n trucks. Immutable, thread-safe.
 */
public final class FleetReview {
    /** Fewer trucks say nothing of what is usual among them (common practice, no source). */
    private static final int FEWEST_TRUCKS = 5;

    /** However alike the others are, fills may differ by so much, as a standard deviation of the logarithm. */
    private static final double LEAST_SPREAD = 0.05;

    /** A ticket that is off by so many standard deviations may be another truck's. */
    private static final double SUSPECT = 3;

    private static final double EXPLAINED = 2.5;

    /** Two tickets that were swapped make both trucks so many times more likely. */
    private static final double SHOWN = Math.log(100);

    private final Map<String, List<Slip>> swapped = new HashMap<>();
    private final Map<String, Finding> unlike = new HashMap<>();

    /**
     * A truck.
     *
     * @param id its name
     * @param group trucks of one group are alike: conveyor type and material
     * @param sketch its day
     */
    public record Truck(String id, String group, Sketch sketch) {}

    /** The middle one of a truck's fills. */
    private record Filled(String truck, double logFill) {}

    private record Suspect(Truck truck, Sketch.Expected ticket) {
        private double off(double logKilograms) {
            return (logKilograms - ticket.logKilograms()) / ticket.deviation();
        }

        private double own() {
            return Math.log(ticket.of().kilograms());
        }
    }

    /**
     * Compares trucks.
     *
     * @param trucks those that can be computed with
     */
    public FleetReview(List<Truck> trucks) {
        Map<String, List<Truck>> groups = new LinkedHashMap<>();
        trucks.forEach(one ->
                groups.computeIfAbsent(one.group(), group -> new ArrayList<>()).add(one));
        groups.values().forEach(this::compareFills);
        compareTickets(trucks);
    }

    /**
     * The slip by which a ticket came to a truck.
     *
     * @param truck the truck's name
     * @return the slips, possibly none
     */
    public List<Slip> swapped(String truck) {
        return swapped.getOrDefault(truck, List.of());
    }

    /**
     * What is unusual about a truck's fill.
     *
     * @param truck the truck's name
     * @return one finding if it is unlike those of the others
     */
    public Optional<Finding> unlikeOthers(String truck) {
        return Optional.ofNullable(unlike.get(truck));
    }

    private void compareFills(List<Truck> group) {
        List<Filled> fills = new ArrayList<>();
        group.forEach(one -> one.sketch().medianLogFill().ifPresent(fill -> fills.add(new Filled(one.id(), fill))));
        if (fills.size() < FEWEST_TRUCKS) {
            return;
        }
        RobustSample all =
                RobustSample.of(fills.stream().mapToDouble(Filled::logFill).toArray());
        for (Filled one : fills) {
            if (all.isOutlier(one.logFill(), LEAST_SPREAD)) {
                unlike.put(
                        one.truck(),
                        Finding.of(
                                FindingCode.FILL_UNLIKE_FLEET,
                                Map.of(
                                        "fill", number(Amounts.of(Math.exp(one.logFill()), SpreadingUnits.ONE)),
                                        "median", number(Amounts.of(Math.exp(all.median()), SpreadingUnits.ONE)),
                                        "trucks", number(Amounts.of(fills.size(), SpreadingUnits.ONE)))));
            }
        }
    }

    private void compareTickets(List<Truck> trucks) {
        TreeMap<Double, List<Suspect>> byMass = new TreeMap<>();
        List<Suspect> suspects = new ArrayList<>();
        for (Truck truck : trucks) {
            for (Sketch.Expected ticket : truck.sketch().expectedMasses()) {
                Suspect suspect = new Suspect(truck, ticket);
                if (Math.abs(suspect.off(suspect.own())) > SUSPECT) {
                    suspects.add(suspect);
                    byMass.computeIfAbsent(suspect.own(), mass -> new ArrayList<>())
                            .add(suspect);
                }
            }
        }
        for (Suspect one : suspects) {
            double reach = EXPLAINED * one.ticket().deviation();
            double expected = one.ticket().logKilograms();
            byMass.subMap(expected - reach, true, expected + reach, true).values().stream()
                    .flatMap(List::stream)
                    .filter(other -> isOfAnotherTruck(other, one))
                    .filter(other -> gain(one, other) > SHOWN + 2 * Math.log(trucks.size()))
                    .max(Comparator.comparingDouble(other -> gain(one, other)))
                    .ifPresent(other -> swapped.computeIfAbsent(one.truck().id(), truck -> new ArrayList<>())
                            .add(Slip.of(Term.TICKET, Mistake.SWAPPED_WITH_TRUCK, List.of())
                                    .of(other.truck().id())
                                    .in(List.of(at(one), at(other)))));
        }
    }

    /** Two trucks may be equal in all that is written down of them. */
    @SuppressWarnings("ReferenceEquality")
    private static boolean isOfAnotherTruck(Suspect other, Suspect one) {
        return other.truck() != one.truck();
    }

    private static OffsetDateTime at(Suspect one) {
        return one.ticket().of().at();
    }

    /** How much more likely both trucks are if the two tickets change places, as a logarithm. */
    private static double gain(Suspect one, Suspect other) {
        return (square(one.off(one.own()))
                        + square(other.off(other.own()))
                        - square(one.off(other.own()))
                        - square(other.off(one.own())))
                / 2;
    }

    private static double square(double number) {
        return number * number;
    }
}
