package org.gritwright.core.calibration;

import java.io.Serializable;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.Objects;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * Since when a display holds a value: a time with its offset, or only a day where the time was not recorded. A day
 * alone counts as earlier than anything done on it. Immutable, thread-safe, a value.
 */
public final class Since implements Serializable {
    private static final long serialVersionUID = 1L;

    private final LocalDate day;
    /** Null where only the day is known. */
    private final @Nullable OffsetDateTime time;

    private Since(LocalDate day, @Nullable OffsetDateTime time) {
        this.day = day;
        this.time = time;
    }

    /**
     * A day.
     *
     * @param day the day
     * @return since that day
     */
    public static Since of(LocalDate day) {
        return new Since(Objects.requireNonNull(day, "day"), null);
    }

    /**
     * A time.
     *
     * @param time the time
     * @return since that time
     */
    public static Since of(OffsetDateTime time) {
        return new Since(Objects.requireNonNull(time, "time").toLocalDate(), time);
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
     * The day.
     *
     * @return the day, by the offset that was written down
     */
    public LocalDate day() {
        return day;
    }

    /**
     * The time.
     *
     * @return the time; none where only the day is known
     */
    public Optional<OffsetDateTime> time() {
        return Optional.ofNullable(time);
    }

    /**
     * Whether the value was entered only after something was done.
     *
     * @param at when it was done
     * @return true if what was done says nothing about this value
     */
    public boolean isAfter(OffsetDateTime at) {
        return time == null ? day.isAfter(at.toLocalDate()) : time.isAfter(at);
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Since that && day.equals(that.day) && Objects.equals(time, that.time);
    }

    @Override
    public int hashCode() {
        return Objects.hash(day, time);
    }

    /**
     * The day or the time, as ISO 8601.
     *
     * @return for example "2026-10-19" or "2026-10-19T08:40-04:00"
     */
    @Override
    public String toString() {
        return time == null ? day.toString() : time.toString();
    }
}
