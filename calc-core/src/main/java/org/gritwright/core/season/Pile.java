package org.gritwright.core.season;

import java.io.Serializable;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Mass;
import org.gritwright.units.check.Require;

/**
 * A pile over a season. Immutable, thread-safe, a value.
 *
 * <p>Surveys divide the season into periods: the first from the opening to the first survey, the last to the closing. In each, what was there and what
 * came equals what was taken, what is unexplained, and what is left.
 *
 * @param id what the yard calls it
 * @param material what lies there
 * @param opening what was there at the beginning
 * @param surveys what was there later, in their order; the last one is the closing
 * @param deliveries what came, by ticket
 * @param otherUses what left otherwise than on trucks
 * @param unexplained how much may be lost, or come, without anybody writing it down: rain, spill, the loader's bucket. A standard deviation
 *     about zero for the whole season; absent where nothing may, so that all that is missing is an error of somebody's numbers
 * @param days the days of the opening and of the surveys, in their order, so that sentences name them; empty where they aren't known
 */
public record Pile(
        String id,
        String material,
        StatedMass opening,
        List<StatedMass> surveys,
        List<Delivery> deliveries,
        List<OtherUse> otherUses,
        Optional<Quantity<Mass>> unexplained,
        List<LocalDate> days)
        implements Serializable {
    private static final long serialVersionUID = 1L;

    /**
     * Checks the values and copies the lists.
     *
     * @throws org.gritwright.units.InvalidInputException if a name is blank, a mass is negative, there is no closing, a delivery or use lies
     *     behind it, the unexplained isn't greater than 0, or days are given and aren't one of the opening and one a survey, each after the one
     *     before; the message names pile and field
     */
    public Pile {
        Require.given(Pile.class, id, material, opening, surveys, deliveries, otherUses, unexplained, days);
        Require.text("id of a pile", id);
        Require.text("material of pile " + id, material);
        opening.requireNotNegative("opening of pile " + id);
        surveys = List.copyOf(surveys);
        deliveries = List.copyOf(deliveries);
        otherUses = List.copyOf(otherUses);
        int periods = surveys.size();
        Require.that(periods >= 1, "surveys of pile " + id, "at least the closing", "none");
        for (StatedMass survey : surveys) {
            survey.requireNotNegative("survey of pile " + id);
        }
        for (Delivery delivery : deliveries) {
            requirePeriod(id, "ticket " + delivery.ticket(), delivery.period(), periods);
        }
        for (OtherUse use : otherUses) {
            requirePeriod(id, use.what(), use.period(), periods);
        }
        unexplained.ifPresent(spread -> Require.positive("unexplained of pile " + id, Mass.class, spread));
        days = List.copyOf(days);
        requireDays(id, days, periods);
    }

    /**
     * A pile of which nobody says on which days it was surveyed.
     *
     * @param id what the yard calls it
     * @param material what lies there
     * @param opening what was there at the beginning
     * @param surveys what was there later, in their order; the last one is the closing
     * @param deliveries what came, by ticket
     * @param otherUses what left otherwise than on trucks
     * @param unexplained how much may be lost, or come, without anybody writing it down; absent where nothing may
     * @throws org.gritwright.units.InvalidInputException as for the full form
     */
    public Pile(
            String id,
            String material,
            StatedMass opening,
            List<StatedMass> surveys,
            List<Delivery> deliveries,
            List<OtherUse> otherUses,
            Optional<Quantity<Mass>> unexplained) {
        this(id, material, opening, surveys, deliveries, otherUses, unexplained, List.of());
    }

    /** An opening is of the beginning of its day, a survey of the end: both may be of one day. */
    private static void requireDays(String id, List<LocalDate> days, int periods) {
        String field = "days of the surveys of pile " + id;
        Require.that(
                days.isEmpty() || days.size() == periods + 1,
                field,
                "none, or the opening's and one for each of " + periods,
                days.size());
        for (int i = 1; i < days.size(); i++) {
            LocalDate before = days.get(i - 1);
            LocalDate day = days.get(i);
            boolean isAfter = day.isAfter(before) || (i == 1 && day.equals(before));
            Require.that(isAfter, field, "each after the one before", () -> before + ", " + day);
        }
    }

    private static void requirePeriod(String id, String what, int period, int periods) {
        Require.that(
                period <= periods,
                "period of " + what + " at pile " + id,
                "at most " + periods + ", the number of its surveys after the opening",
                period);
    }

    /**
     * A pile that was surveyed at the beginning and at the end.
     *
     * @param id what the yard calls it
     * @param material what lies there
     * @param opening what was there at the beginning
     * @param deliveries what came, by ticket
     * @param closing what was there at the end
     * @return the pile, without other uses, where nothing may be unexplained
     * @throws org.gritwright.units.InvalidInputException if a value isn't accepted
     */
    public static Pile of(
            String id, String material, StatedMass opening, List<Delivery> deliveries, StatedMass closing) {
        return new Pile(
                id,
                material,
                opening,
                List.of(Objects.requireNonNull(closing, "closing")),
                deliveries,
                List.of(),
                Optional.empty());
    }

    /**
     * The same pile, from which something else took too.
     *
     * @param use what
     * @return the changed copy
     * @throws org.gritwright.units.InvalidInputException if its period lies behind the closing
     */
    public Pile using(OtherUse use) {
        List<OtherUse> more = new ArrayList<>(otherUses);
        more.add(use);
        return new Pile(id, material, opening, surveys, deliveries, more, unexplained, days);
    }

    /**
     * The same pile, of which something may be lost without being written down.
     *
     * @param spread a standard deviation about zero, for the whole season
     * @return the changed copy
     * @throws org.gritwright.units.InvalidInputException if it isn't greater than 0
     */
    public Pile losing(Quantity<Mass> spread) {
        return new Pile(id, material, opening, surveys, deliveries, otherUses, Optional.of(spread), days);
    }

    /**
     * The same pile, surveyed on known days.
     *
     * @param opening the first day of the season, with whose beginning the opening counts
     * @param on the day of each survey, at whose end it was made
     * @return the changed copy
     * @throws org.gritwright.units.InvalidInputException if it isn't one for each survey, or one isn't after the one before
     */
    public Pile surveyed(LocalDate opening, List<LocalDate> on) {
        List<LocalDate> all = new ArrayList<>(List.of(opening));
        all.addAll(on);
        return new Pile(id, material, this.opening, surveys, deliveries, otherUses, unexplained, all);
    }

    int periods() {
        return surveys.size();
    }

    SurveyPeriod period(int number) {
        return new SurveyPeriod(number, periods(), days.isEmpty() ? days : days.subList(number - 1, number + 1));
    }

    /** The day of a survey after the opening, by its number. */
    Optional<LocalDate> day(int number) {
        return days.isEmpty() ? Optional.empty() : Optional.of(days.get(number));
    }

    /** What was there before a period. */
    StatedMass before(int period) {
        return period == 1 ? opening : surveys.get(period - 2);
    }
}
