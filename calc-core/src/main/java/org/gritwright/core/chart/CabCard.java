package org.gritwright.core.chart;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.gritwright.units.check.Require;

/**
 * A small card for the driver: what this truck can do, what to set, and how long that is true. It stands beside local rules and the
 * maker's manual and replaces neither. Immutable, thread-safe, a value.
 *
 * @param truck the truck's name
 * @param on the day of the calibration that it rests on
 * @param by who answers for it
 * @param validUntil the last day on which it may be used; none if it has no such day
 * @param voidedBy what makes it void before that, such as "gate or drive repaired", 0 to 100 texts
 * @param sections one for each material and gate setting, 1 to 100
 */
public record CabCard(
        String truck,
        LocalDate on,
        String by,
        Optional<LocalDate> validUntil,
        List<String> voidedBy,
        List<CardSection> sections) {
    private static final int MOST = 100;

    /**
     * Checks the values.
     *
     * @throws org.gritwright.units.InvalidInputException if a text is blank, the last day lies before the first, or there are no
     *     sections or too many
     */
    public CabCard {
        Require.given(CabCard.class, truck, on, by, validUntil, voidedBy, sections);
        Require.text("truck", truck);
        Require.text("who answers for the card", by);
        validUntil.ifPresent(last -> Require.that(!last.isBefore(on), "last day of a card", "not before " + on, last));
        voidedBy = List.copyOf(Require.noMoreThan(MOST, "what voids a card", voidedBy));
        voidedBy.forEach(text -> Require.text("what voids a card", text));
        sections = List.copyOf(Require.noMoreThan(MOST, "materials of a card", sections));
        Require.that(!sections.isEmpty(), "materials of a card", "one or more", "none");
    }

    /**
     * Whether the card may be used on a day, if nothing has voided it.
     *
     * @param day the day
     * @return true from the day of the calibration to the last day, both included
     */
    public boolean isValidOn(LocalDate day) {
        return !day.isBefore(on) && validUntil.stream().noneMatch(day::isAfter);
    }
}
