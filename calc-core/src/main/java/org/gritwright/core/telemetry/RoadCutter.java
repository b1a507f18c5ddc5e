package org.gritwright.core.telemetry;

import java.io.Serializable;
import java.util.Objects;
import org.gritwright.units.check.Require;

/**
 * Cuts a truck's evaluated rows into pieces. One for each truck, for one thread at a time: it remembers how far the truck went and when its
 * last row was. A row that spans a border is split in proportion to its length or its time; its parts add up to it.
 */
public final class RoadCutter implements Serializable {
    private static final long serialVersionUID = 1L;

    private final PieceAxis axis;
    private long travelled;
    private long time;
    private boolean hasTime;

    /**
     * A cutter at the beginning of a truck's rows.
     *
     * @param axis where to cut
     */
    public RoadCutter(PieceAxis axis) {
        this.axis = Objects.requireNonNull(axis, "axis");
    }

    /**
     * Cuts rows.
     *
     * @param times milliseconds since 1970-01-01T00:00Z
     * @param amounts what each row holds
     * @param statuses what became of each row
     * @param millimeters how far the truck went in each, or {@link Travel#UNKNOWN}
     * @param from the first row
     * @param to the one after the last
     * @param sums what they are added to
     * @throws org.gritwright.units.InvalidInputException if a column is shorter than the rows
     */
    public void cut(
            long[] times, long[] amounts, byte[] statuses, long[] millimeters, int from, int to, PieceSums sums) {
        Objects.checkFromToIndex(from, to, times.length);
        requireColumns(amounts, statuses, millimeters, to);
        for (int i = from; i < to; i++) {
            RowStatus status = RowStatus.of(statuses[i]);
            if (status == RowStatus.OUT_OF_ORDER || status == RowStatus.IMPOSSIBLE_TIME) {
                // It says nothing about where the truck is now.
                continue;
            }
            long begin = hasTime ? time : times[i];
            time = Math.max(begin, times[i]);
            hasTime = true;
            long amount = status.isOnRoad() ? amounts[i] : 0;
            if (axis.isTime()) {
                split(begin, time, amount, Math.max(millimeters[i], 0), time - begin, status, sums);
            } else if (millimeters[i] == Travel.UNKNOWN) {
                sums.addUnplaced(amount);
            } else {
                long there = travelled;
                travelled += millimeters[i];
                split(there, travelled, amount, millimeters[i], time - begin, status, sums);
            }
        }
    }

    /**
     * Adds rows by the ids that they have: a row is all in the piece whose id it has.
     *
     * @param ids the id of each row's piece
     * @param times milliseconds since 1970-01-01T00:00Z
     * @param amounts what each row holds
     * @param statuses what became of each row
     * @param millimeters how far the truck went in each, or {@link Travel#UNKNOWN}
     * @param sums what they are added to
     * @throws org.gritwright.units.InvalidInputException if a column is shorter than the times
     */
    public static void byIds(
            long[] ids, long[] times, long[] amounts, byte[] statuses, long[] millimeters, PieceSums sums) {
        Objects.requireNonNull(ids, "ids");
        Objects.requireNonNull(times, "times");
        Objects.requireNonNull(amounts, "amounts");
        Objects.requireNonNull(statuses, "statuses");
        Objects.requireNonNull(millimeters, "millimeters");
        Objects.requireNonNull(sums, "sums");
        Rows.requireLength("ids", ids.length, times.length);
        requireColumns(amounts, statuses, millimeters, times.length);
        for (int i = 0; i < times.length; i++) {
            RowStatus status = RowStatus.of(statuses[i]);
            long passed = i == 0 ? 0 : Math.max(times[i] - times[i - 1], 0);
            add(ids[i], status.isOnRoad() ? amounts[i] : 0, Math.max(millimeters[i], 0), passed, status, sums);
        }
    }

    private static void requireColumns(long[] amounts, byte[] statuses, long[] millimeters, int rows) {
        Require.that(amounts.length >= rows, "column of amounts", "as long as the rows, " + rows, amounts.length);
        Require.that(statuses.length >= rows, "column of statuses", "as long as the rows, " + rows, statuses.length);
        Require.that(
                millimeters.length >= rows,
                "column of millimeters",
                "as long as the rows, " + rows,
                millimeters.length);
    }

    private void split(
            long begin, long end, long amount, long millimeters, long millis, RowStatus status, PieceSums sums) {
        long there = begin;
        long amountBefore = 0;
        long millimetersBefore = 0;
        long millisBefore = 0;
        long border = axis.endOf(there);
        while (border < end) {
            double share = (double) (border - begin) / (end - begin);
            long amountThere = Math.round(amount * share);
            long millimetersThere = Math.round(millimeters * share);
            long millisThere = Math.round(millis * share);
            add(
                    axis.pieceAt(there),
                    amountThere - amountBefore,
                    millimetersThere - millimetersBefore,
                    millisThere - millisBefore,
                    status,
                    sums);
            amountBefore = amountThere;
            millimetersBefore = millimetersThere;
            millisBefore = millisThere;
            there = border;
            border = axis.endOf(there);
        }
        add(
                axis.pieceAt(there),
                amount - amountBefore,
                millimeters - millimetersBefore,
                millis - millisBefore,
                status,
                sums);
    }

    private static void add(long piece, long amount, long millimeters, long millis, RowStatus status, PieceSums sums) {
        boolean known = status.isOnRoad();
        sums.add(piece, amount, known ? millimeters : 0, known ? 0 : millimeters, millis);
    }

    /**
     * How far the truck went.
     *
     * @return millimeters, as far as that is known
     */
    public long travelled() {
        return travelled;
    }
}
