package org.gritwright.core.calibration;

import java.io.Serializable;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.Objects;
import java.util.Optional;
import org.gritwright.units.check.Require;
import org.gritwright.units.check.SerialForm;

/**
 * Since when a display holds a value: a time with its offset, or only a day where the time was not recorded. A day
 * alone counts as earlier than anything done on it. Immutable, thread-safe, a value.
 *
 * @param day the day, by the offset that was written down
 * @param time the time; none where only the day is known
 */
public record Since(LocalDate day, Optional<OffsetDateTime> time) implements Serializable {
    /**
     * Checks that the time is of the day.
     *
     * @throws org.gritwright.units.InvalidInputException if it is of another
     */
    public Since {
        Require.given(Since.class, day, time);
        time.ifPresent(at -> Require.that(at.toLocalDate().equals(day), "day of a time", "its own", day));
    }

    /**
     * A day.
     *
     * @param day the day
     * @return since that day
     */
    public static Since of(LocalDate day) {
        return new Since(day, Optional.empty());
    }

    /**
     * A time.
     *
     * @param time the time
     * @return since that time
     */
    public static Since of(OffsetDateTime time) {
        return new Since(Objects.requireNonNull(time, "time").toLocalDate(), Optional.of(time));
    }

    /**
     * Reads what {@link #toString} writes.
     *
     * @param text a date, or a time with its offset (ISO 8601)
     * @return since then
     * @throws java.time.DateTimeException if it is neither
     */
    public static Since parse(String text) {
        return text.indexOf('T') < 0 ? of(LocalDate.parse(text)) : of(OffsetDateTime.parse(text));
    }

    /**
     * Whether the value was entered only after something was done.
     *
     * @param at when it was done
     * @return true if what was done says nothing about this value
     */
    public boolean isAfter(OffsetDateTime at) {
        return time.map(entered -> entered.isAfter(at)).orElseGet(() -> day.isAfter(at.toLocalDate()));
    }

    private Object writeReplace() {
        return SerialForm.of(this);
    }

    /**
     * The day or the time, as ISO 8601.
     *
     * @return for example "2026-10-19" or "2026-10-19T08:40-04:00"
     */
    @Override
    public String toString() {
        return time.map(OffsetDateTime::toString).orElseGet(day::toString);
    }
}
