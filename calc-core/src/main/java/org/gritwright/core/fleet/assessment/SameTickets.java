package org.gritwright.core.fleet.assessment;

import static org.gritwright.core.finding.Argument.name;
import static org.gritwright.core.finding.Argument.time;

import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import javax.measure.Quantity;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Volume;
import org.gritwright.core.finding.Finding;
import org.gritwright.core.finding.FindingCode;
import org.gritwright.core.fleet.day.CatchEntry;
import org.gritwright.core.fleet.day.ReadEntry;
import org.gritwright.core.fleet.day.TruckDay;
import org.gritwright.core.fleet.day.Yard;
import org.gritwright.core.observation.Repeatability;
import org.gritwright.units.Amounts;

/**
 * Catches of a fleet with the same masses in all containers and the same count: a ticket that was probably entered twice, if two
 * catches hardly ever agree so well by chance.
 *
 * <p>Two values of a normal distribution that are rounded to steps d are equal with a chance of about d ÷ (2√π · σ), the density
 * at 0 of their difference times d (derived, no source). It is taken for the mass in each container, all of which share one
 * scatter, and for the count, unless catches of other masses have that count too, as where a controller stops by itself.
 * Verification catches of one truck with different values in force are left out: one discharge may be compared with both.
 */
final class SameTickets {
    /** The greatest chance, for all that a catch could be equal to (common practice, no source). */
    private static final double CHANCE = 0.01;

    /** How catches scatter where nobody says (common practice, no source). */
    private static final double SCATTER = 0.005;

    /** How often two catches of those who note each time are noted under one (common practice, no source). */
    private static final double SAME_TIME = 0.05;

    /**
     * What was written down.
     *
     * @param read gross and tare of each container, or each fill, in SI units
     */
    private record Numbers(List<Double> read, List<Double> count) {
        static Numbers of(CatchEntry entry) {
            return new Numbers(
                    Stream.concat(
                                    entry.containers().stream()
                                            .flatMap(one -> Stream.of(one.gross(), one.tare()))
                                            .map(mass -> Amounts.si(Mass.class, mass)),
                                    entry.read().stream()
                                            .flatMap(read -> read.fills().stream())
                                            .map(fill -> Amounts.si(Volume.class, fill)))
                            .toList(),
                    entry.counted().stream()
                            .flatMap(count ->
                                    Stream.of(count.pulses(), count.start(), count.stop(), count.revolutions()))
                            .flatMap(Optional::stream)
                            .map(number -> number.getValue().doubleValue())
                            .toList());
        }
    }

    /** @param verifies the value in force that it was compared with; none of a calibration catch */
    private record Ticket(int truck, Optional<Quantity<?>> verifies, CatchEntry entry, Numbers numbers) {
        Ticket(int truck, Optional<Quantity<?>> verifies, CatchEntry entry) {
            this(truck, verifies, entry, Numbers.of(entry));
        }

        /** One discharge, compared with two values in force. */
        boolean isComparedAnew(Ticket other) {
            return verifies.isPresent() && other.verifies.isPresent() && !verifies.equals(other.verifies);
        }

        OffsetDateTime at() {
            return entry.at();
        }

        /** What was caught, in SI units. */
        double amount() {
            double net = 0;
            for (int i = 0; i < numbers.read.size(); i++) {
                boolean tare = entry.read().isEmpty() && i % 2 == 1;
                net += (tare ? -1 : 1) * numbers.read.get(i);
            }
            return net;
        }
    }

    private final Yard yard;
    private final double scatter;
    private final List<List<Ticket>> trucks;
    private final int tickets;

    private SameTickets(Yard yard) {
        this.yard = yard;
        this.scatter = yard.day()
                .allowances()
                .repeatability()
                .map(Repeatability::relative)
                .orElse(SCATTER);
        this.trucks = IntStream.range(0, yard.day().trucks().size())
                .mapToObj(i -> tickets(i, yard.day().trucks().get(i)))
                .toList();
        this.tickets = trucks.stream().mapToInt(List::size).sum();
    }

    private static List<Ticket> tickets(int index, TruckDay truck) {
        return Stream.concat(
                        truck.calibrationCatches().stream()
                                .map(one -> new Ticket(index, Optional.empty(), one.entry())),
                        truck.verificationCatches().stream()
                                .map(one -> new Ticket(index, Optional.of(one.inForce()), one.entry())))
                .toList();
    }

    /** What is to be told of each truck, by its place in the day. */
    static Map<Integer, List<Finding>> in(Yard yard) {
        return new SameTickets(yard).findings();
    }

    private Map<Integer, List<Finding>> findings() {
        Map<Numbers, Ticket> seen = new HashMap<>();
        Map<Integer, List<Finding>> findings = new HashMap<>();
        for (Ticket ticket : trucks.stream().flatMap(List::stream).toList()) {
            Ticket first = seen.putIfAbsent(ticket.numbers, ticket);
            if (first == null || !isOneTicket(first, ticket)) {
                continue;
            }
            List<Finding> ofFirst = findings.computeIfAbsent(first.truck, truck -> new ArrayList<>());
            if (first.truck == ticket.truck) {
                ofFirst.add(Finding.of(
                        FindingCode.TICKET_ENTERED_TWICE,
                        Map.of("first", time(first.at()), "second", time(ticket.at()))));
            } else {
                ofFirst.add(onTwoTrucks(first, ticket));
                findings.computeIfAbsent(ticket.truck, truck -> new ArrayList<>())
                        .add(onTwoTrucks(ticket, first));
            }
        }
        return findings;
    }

    private Finding onTwoTrucks(Ticket one, Ticket other) {
        String truck = yard.day().trucks().get(other.truck).id();
        return Finding.of(
                FindingCode.TICKET_OF_TWO_TRUCKS,
                Map.of("at", time(one.at()), "second", time(other.at()), "truck", name(truck)));
    }

    private boolean isOneTicket(Ticket one, Ticket other) {
        boolean sameTruck = one.truck == other.truck;
        OptionalDouble division = division(one.entry);
        if (division.isEmpty() || one.numbers.count.isEmpty() || (sameTruck && one.isComparedAnew(other))) {
            return false;
        }
        double chance = equal(division.getAsDouble(), one.amount()) * countsEqual(one, other);
        if (sameTruck && one.at().isEqual(other.at()) && isEachTimeNoted(trucks.get(one.truck))) {
            // No other was noted under that time, and so none could be equal.
            return chance * SAME_TIME < CHANCE;
        }
        int compared = sameTruck ? trucks.get(one.truck).size() - 1 : tickets;
        return chance * compared < CHANCE;
    }

    /** Of all that was read, in SI units; none where nothing says what it was read on. */
    private OptionalDouble division(CatchEntry entry) {
        if (entry.read().isPresent()) {
            ReadEntry read = entry.read().get();
            return yard.graduates().containsKey(read.container())
                    ? OptionalDouble.of(read.fills().size()
                            * Amounts.si(
                                    Volume.class,
                                    yard.graduate(read.container()).division()))
                    : OptionalDouble.empty();
        }
        return entry.scale().filter(yard.scales()::containsKey).stream()
                .mapToDouble(id -> entry.containers().size()
                        * Amounts.si(Mass.class, yard.scale(id).division()))
                .findFirst();
    }

    private double equal(double step, double value) {
        return value > 0 ? Math.min(1, step / (2 * Math.sqrt(Math.PI) * scatter * value)) : 1;
    }

    private double countsEqual(Ticket one, Ticket other) {
        boolean usual = Stream.of(one, other)
                .flatMap(ticket -> trucks.get(ticket.truck).stream())
                .anyMatch(ticket -> ticket.numbers.count.equals(one.numbers.count)
                        && !ticket.numbers.read.equals(one.numbers.read));
        // A counter that isn't set back never shows the same two readings again.
        boolean readings = one.numbers.count.size() == 2 && one.numbers.count.get(0) > 0;
        return usual ? 1 : readings ? 0 : equal(1, one.numbers.count.get(one.numbers.count.size() - 1));
    }

    private static boolean isEachTimeNoted(List<Ticket> tickets) {
        return tickets.size() > 2 && tickets.stream().map(Ticket::at).distinct().count() == tickets.size() - 1;
    }
}
