package org.gritwright.core.telemetry;

import java.io.Serializable;
import java.util.Objects;
import org.gritwright.units.check.Require;

/**
 * Cuts a truck's evaluated rows into pieces. One for each truck, for one thread at a time: it remembers how far the truck went and when its
 * last row was. A row that spans a border is split in proportion to its length or its time; its parts add up to it.
 *
 * <p>A way that can't be, below 0 or longer than a million kilometers, is one of which nobody knows how long it was: as {@link Travel#UNKNOWN}, so that
 * what was laid on it is kept and in no rate.
 */
public final class RoadCutter implements Serializable {
    private static final long serialVersionUID = 1L;

    private final PieceAxis axis;
    private long traveled;

    /** How far it went in rows that were passed over since the last one that wasn't. */
    private long waiting;

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
     * @param amounts what each row holds, 0 or more
     * @param statuses what became of each row
     * @param millimeters how far the truck went in each, or {@link Travel#UNKNOWN}
     * @param from the first row
     * @param to the one after the last
     * @param sums what they are added to
     * @throws org.gritwright.units.InvalidInputException if a column is shorter than the rows, an amount is negative, or a status has no such
     *     number, or the sums are of other pieces; then no row was added
     */
    public void cut(
            long[] times, long[] amounts, byte[] statuses, long[] millimeters, int from, int to, PieceSums sums) {
        Objects.checkFromToIndex(from, to, times.length);
        requireColumns(amounts, statuses, millimeters, from, to);
        sums.requireOf(axis);
        for (int i = from; i < to; i++) {
            RowStatus status = RowStatus.of(statuses[i]);
            if (status.isPassedOver()) {
                // The next row is counted from the one before; its way is this one's too.
                waiting += isKnown(millimeters[i]) ? millimeters[i] : 0;
                continue;
            }
            long begin = hasTime ? time : times[i];
            time = Math.max(begin, times[i]);
            hasTime = true;
            boolean isMeasured = isKnown(millimeters[i]);
            long went = (isMeasured ? millimeters[i] : 0) + waiting;
            waiting = 0;
            Part row = new Part(amount(status, amounts[i]), isMeasured, went, time - begin, status);
            if (!axis.isTime()) {
                alongTheWay(row, sums);
            } else if (status.isCounted()) {
                split(begin, time, row, sums);
            } else {
                add(axis.pieceAt(time), row, sums);
            }
        }
    }

    /**
     * Begins with piece 0 again, as at the beginning of a road whose pieces are counted from there: the next row begins at 0. When the last row
     * was, and how far the truck went in rows that were passed over, isn't forgotten, so that all pieces together stay all rows. In time it
     * changes nothing.
     */
    public void beginAgain() {
        traveled = 0;
    }

    /** What a row, or a part of it, brings to a piece. */
    private record Part(long amount, boolean isMeasured, long millimeters, long millis, RowStatus status) {}

    private static long amount(RowStatus status, long amount) {
        return status.isOnRoad() ? amount : 0;
    }

    private void alongTheWay(Part row, PieceSums sums) {
        long there = traveled;
        traveled += row.millimeters();
        if (row.isMeasured()) {
            split(there, traveled, row, sums);
        } else {
            // It went farther, and nobody knows how far.
            sums.addUnplaced(row.amount());
            split(there, traveled, new Part(0, false, row.millimeters(), 0, RowStatus.GAP), sums);
        }
    }

    /**
     * Adds rows by the ids that they have: a row is all in the piece whose id it has. The way of rows that are passed over is that of the next row,
     * as it is when they are cut; that of the last ones is of unknown place, in the last row's piece. Of a truck's rows in several blocks, the
     * first of each has no time: give them all at once.
     *
     * @param ids the id of each row's piece
     * @param times milliseconds since 1970-01-01T00:00Z
     * @param amounts what each row holds, 0 or more
     * @param statuses what became of each row
     * @param millimeters how far the truck went in each, or {@link Travel#UNKNOWN}
     * @param sums what they are added to
     * @throws org.gritwright.units.InvalidInputException if a column is shorter than the times, an amount is negative, or a status has no
     *     such number, or the sums aren't by ids; then no row was added
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
        requireColumns(amounts, statuses, millimeters, 0, times.length);
        sums.requireOf(PieceAxis.IDS);
        long time = times.length == 0 ? 0 : times[0];
        long waiting = 0;
        for (int i = 0; i < times.length; i++) {
            RowStatus status = RowStatus.of(statuses[i]);
            boolean isMeasured = isKnown(millimeters[i]);
            long went = (isMeasured ? millimeters[i] : 0) + waiting;
            boolean isLast = i == times.length - 1;
            if (status.isPassedOver() && !isLast) {
                waiting = went;
                continue;
            }
            waiting = 0;
            long passed = status.isPassedOver() ? 0 : Math.max(times[i] - time, 0);
            time += passed;
            add(ids[i], new Part(amount(status, amounts[i]), isMeasured, went, passed, status), sums);
        }
    }

    private static void requireColumns(long[] amounts, byte[] statuses, long[] millimeters, int from, int to) {
        Require.that(amounts.length >= to, "column of amounts", "as long as the rows, " + to, amounts.length);
        Require.that(statuses.length >= to, "column of statuses", "as long as the rows, " + to, statuses.length);
        Require.that(
                millimeters.length >= to, "column of millimeters", "as long as the rows, " + to, millimeters.length);
        long odd = 0;
        for (int i = from; i < to; i++) {
            odd |= amounts[i] | statuses[i] | (RowStatus.count() - 1 - statuses[i]);
        }
        for (int i = from; odd < 0 && i < to; i++) {
            Require.that(amounts[i] >= 0, "amount of row " + i, "0 or more", amounts[i]);
            RowStatus.of(statuses[i]);
        }
    }

    private static boolean isKnown(long millimeters) {
        return millimeters >= 0 && millimeters <= PieceAxis.LONGEST_LENGTH;
    }

    private void split(long begin, long end, Part row, PieceSums sums) {
        long there = begin;
        Part before = new Part(0, row.isMeasured(), 0, 0, row.status());
        long border = axis.endOf(there);
        while (border < end) {
            double share = (double) (border - begin) / (end - begin);
            Part upTo = new Part(
                    Math.round(row.amount() * share),
                    row.isMeasured(),
                    Math.round(row.millimeters() * share),
                    Math.round(row.millis() * share),
                    row.status());
            add(axis.pieceAt(there), between(before, upTo), sums);
            before = upTo;
            there = border;
            border = axis.endOf(there);
        }
        add(axis.pieceAt(there), between(before, row), sums);
    }

    private static Part between(Part before, Part upTo) {
        return new Part(
                upTo.amount() - before.amount(),
                upTo.isMeasured(),
                upTo.millimeters() - before.millimeters(),
                upTo.millis() - before.millis(),
                upTo.status());
    }

    /** How long a truck was where in a gap, or before a restart, nobody knows. */
    private static void add(long piece, Part part, PieceSums sums) {
        boolean known = part.status().isOnRoad();
        sums.add(
                piece,
                part.amount(),
                part.isMeasured() ? 0 : part.amount(),
                known ? part.millimeters() : 0,
                known ? 0 : part.millimeters(),
                part.status().isCounted() ? part.millis() : 0);
    }

    /**
     * How far the truck went since it began, or {@link #beginAgain() began again}.
     *
     * @return millimeters, as far as that is known
     */
    public long traveled() {
        return traveled;
    }
}
