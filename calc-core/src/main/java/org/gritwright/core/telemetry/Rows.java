package org.gritwright.core.telemetry;

import java.util.Objects;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.check.Require;

/**
 * A truck's rows as columns, in the order of time. The arrays are used as they are and not copied, so that buffers can be filled
 * again and again; nobody may write to them while they are evaluated. Columns that a truck doesn't have are empty.
 *
 * @param times milliseconds since 1970-01-01T00:00Z, one a row
 * @param counts readings of the counter, in pulses, one a row
 * @param settings where the gate stood: meters, a mark's number, or a ratio for a percentage, as {@code Setting.si()} has it; NaN where it
 *     isn't known; empty if it never is
 * @param slots the place of the row's slot in the evaluator's list of slots; empty if there is one alone, else refused
 * @param modes a {@link RowMode#code()} a row; empty if all is automatic
 */
@SuppressWarnings("ArrayRecordComponent") // columns are shared on purpose
public record Rows(long[] times, long[] counts, double[] settings, int[] slots, byte[] modes) {
    /**
     * Checks that the columns are as long as each other.
     *
     * @throws InvalidInputException if one has another length than the times, and isn't empty where it may be
     */
    public Rows {
        Require.given(Rows.class, times, counts, settings, slots, modes);
        requireLength("counts", counts.length, times.length);
        requireLengthOrNone("settings", settings.length, times.length);
        requireLengthOrNone("slots", slots.length, times.length);
        requireLengthOrNone("modes", modes.length, times.length);
    }

    /**
     * Rows of a truck with one slot, no gate that is read, and always in automatic.
     *
     * @param times milliseconds since 1970-01-01T00:00Z
     * @param counts readings of the counter
     * @return the rows
     * @throws InvalidInputException if one column is longer than the other
     */
    public static Rows of(long[] times, long[] counts) {
        return new Rows(times, counts, new double[0], new int[0], new byte[0]);
    }

    static void requireLength(String column, int length, int rows) {
        if (length != rows) {
            throw new InvalidInputException(
                    "column of " + column, "as long as the times, " + rows, String.valueOf(length));
        }
    }

    private static void requireLengthOrNone(String column, int length, int rows) {
        if (length > 0) {
            requireLength(column, length, rows);
        }
    }

    /**
     * How many rows there are.
     *
     * @return 0 or more
     */
    public int size() {
        return times.length;
    }

    double setting(int row) {
        return settings.length == 0 ? Double.NaN : settings[row];
    }

    int slot(int row) {
        return slots.length == 0 ? 0 : slots[row];
    }

    int mode(int row) {
        return modes.length == 0 ? 0 : modes[row];
    }

    /** The columns that have to be there for a range of rows. */
    void requireRange(int from, int to) {
        Objects.checkFromToIndex(from, to, size());
    }
}
