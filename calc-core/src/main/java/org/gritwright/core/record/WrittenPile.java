package org.gritwright.core.record;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Mass;
import org.gritwright.core.season.Delivery;
import org.gritwright.core.season.OtherUse;
import org.gritwright.core.season.Pile;
import org.gritwright.core.season.StatedMass;
import org.gritwright.units.check.Require;

/**
 * A pile of a season's account, by days. A survey is made at the end of its day: what is dated on that day happened before it. Immutable,
 * thread-safe, a value.
 *
 * <p>What its parts say about each other, such as the order of its surveys, is checked by the {@link WrittenSeason} that it is in.
 *
 * @param id what the yard calls it
 * @param material what lies there
 * @param opening what was there at the beginning of the season's first day
 * @param surveys what was there later, in the order of their days, at least one; the last is the closing
 * @param deliveries what came, by ticket
 * @param otherUses what left otherwise than on the trucks of the season
 * @param unexplained how much may be lost, or come, without anybody writing it down; a standard deviation about zero for the whole season,
 *     greater than 0; absent where nothing may
 */
public record WrittenPile(
        String id,
        String material,
        StatedMass opening,
        List<Survey> surveys,
        List<Ticket> deliveries,
        List<Use> otherUses,
        Optional<Quantity<Mass>> unexplained) {

    /**
     * What was there at the end of a day.
     *
     * @param on the day
     * @param mass what was there, 0 or more
     */
    public record Survey(LocalDate on, StatedMass mass) {
        /**
         * Checks the mass.
         *
         * @throws org.gritwright.units.InvalidInputException if it is negative
         */
        public Survey {
            Require.given(Survey.class, on, mass);
            Require.notNegative("survey of " + on, Mass.class, mass.mass());
        }
    }

    /**
     * A delivery, by its ticket.
     *
     * @param ticket the ticket's number, which no other delivery of the season has
     * @param on the day that it came
     * @param mass as the ticket says, 0 or more
     */
    public record Ticket(String ticket, LocalDate on, StatedMass mass) {
        /**
         * Checks the values.
         *
         * @throws org.gritwright.units.InvalidInputException if the ticket is blank or the mass negative
         */
        public Ticket {
            Require.given(Ticket.class, ticket, on, mass);
            Delivery.of(ticket, mass);
        }
    }

    /**
     * What left otherwise than on the trucks of the season.
     *
     * @param what for what
     * @param on the day
     * @param mass as it was written down, 0 or more
     */
    public record Use(String what, LocalDate on, StatedMass mass) {
        /**
         * Checks the values.
         *
         * @throws org.gritwright.units.InvalidInputException if the text is blank or the mass negative
         */
        public Use {
            Require.given(Use.class, what, on, mass);
            new OtherUse(what, 1, mass);
        }
    }

    /**
     * Checks the values and copies the lists.
     *
     * @throws org.gritwright.units.InvalidInputException if a name is blank, the opening is negative or the unexplained isn't greater than 0
     */
    public WrittenPile {
        Require.given(WrittenPile.class, id, material, opening, surveys, deliveries, otherUses, unexplained);
        surveys = List.copyOf(surveys);
        deliveries = List.copyOf(deliveries);
        otherUses = List.copyOf(otherUses);
        new Pile(id, material, opening, List.of(opening), List.of(), List.of(), unexplained);
    }

    /** Between which surveys a day lies: 1 up to the first survey's day; one more than there are surveys behind the last. */
    int period(LocalDate day) {
        return 1 + (int) surveys.stream().filter(one -> one.on().isBefore(day)).count();
    }

    /** @param from the season's first day */
    Pile pile(LocalDate from) {
        Pile pile = new Pile(
                id,
                material,
                opening,
                surveys.stream().map(Survey::mass).toList(),
                deliveries.stream()
                        .map(one -> new Delivery(one.ticket, period(one.on), one.mass))
                        .toList(),
                otherUses.stream()
                        .map(one -> new OtherUse(one.what, period(one.on), one.mass))
                        .toList(),
                unexplained);
        return pile.surveyed(from, surveys.stream().map(Survey::on).toList());
    }
}
