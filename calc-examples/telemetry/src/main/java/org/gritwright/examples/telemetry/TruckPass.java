package org.gritwright.examples.telemetry;

import java.time.Instant;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import org.gritwright.core.telemetry.PieceAxis;
import org.gritwright.core.telemetry.PieceSums;
import org.gritwright.core.telemetry.RoadCutter;
import org.gritwright.core.telemetry.RowMode;
import org.gritwright.core.telemetry.RowState;
import org.gritwright.core.telemetry.RowStatus;
import org.gritwright.core.telemetry.RowSums;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;

/**
 * One truck's rows, one after the other, in their order, to what they come to. It knows no engine: what it is given row by row is the
 * same on a cluster and in a loop. For one thread.
 */
final class TruckPass {
    /** Rows farther apart are two trips (common practice, no source). */
    static final long PAUSE_MILLIS = 2 * 3_600_000L;

    /** The next row is counted from the one before such a row. */
    private static final Set<RowStatus> PASSED_OVER = EnumSet.of(
            RowStatus.OUT_OF_ORDER, RowStatus.DUPLICATE, RowStatus.IMPOSSIBLE_READING, RowStatus.IMPOSSIBLE_TIME);

    /** A mode that no column of modes has, for numbers that don't fit. */
    private static final byte NO_MODE = -1;

    private final TruckSetup setup;
    private final PieceAxis axis;
    private final Buffers buffers;
    private final RowState shaftState;
    private final RowState roadState;
    private final RowSums sums;
    private final PieceSums hours = new PieceSums(false);
    private final RoadCutter byHour =
            new RoadCutter(PieceAxis.everyTime(Instant.EPOCH, Amounts.of(1, SpreadingUnits.HOUR)));
    private final List<Trip> trips = new ArrayList<>();
    private final List<BadRow> badRows = new ArrayList<>();

    private RoadCutter all;
    private RoadCutter wanted;
    private long last;
    private boolean hasLast;
    private int filled;
    private long rows;

    /** @param buffers shared with whatever is passed before and afterwards in the same thread */
    TruckPass(TruckSetup setup, PieceAxis axis, Buffers buffers) {
        this.setup = setup;
        this.axis = axis;
        this.buffers = buffers;
        this.shaftState = setup.shaft().start();
        this.roadState = setup.road().start();
        this.sums = setup.shaft().sums();
        this.all = new RoadCutter(axis);
        this.wanted = new RoadCutter(axis);
    }

    /**
     * Takes the next row.
     *
     * @param gateInches NaN where nobody knows
     * @param slot as {@link TruckSetup#slot} has it
     */
    void add(long millis, long shaftPulses, long roadPulses, double gateInches, int slot, int mode) {
        int at = filled++;
        buffers.times[at] = millis;
        buffers.shaft[at] = shaftPulses;
        buffers.road[at] = roadPulses;
        buffers.gates[at] = setup.meters(gateInches);
        buffers.slots[at] = slot;
        buffers.modes[at] = mode == (byte) mode ? (byte) mode : NO_MODE;
        if (filled == Buffers.SIZE) {
            flush();
        }
    }

    TruckSeason finish() {
        flush();
        return new TruckSeason(setup.truck(), setup.target(), rows, sums, hours, trips, badRows);
    }

    private void flush() {
        int to = filled;
        setup.shaft().evaluate(buffers.rows, 0, to, shaftState, sums, buffers.amounts, buffers.statuses);
        setup.road().evaluate(buffers.times, buffers.road, 0, to, roadState, buffers.millimeters, buffers.roadStatuses);
        int from = 0;
        for (int i = 0; i < to; i++) {
            RowStatus status = RowStatus.of(buffers.statuses[i]);
            note(i, status);
            prepare(i, status);
            if (!PASSED_OVER.contains(status)) {
                if (!hasLast || buffers.times[i] - last > PAUSE_MILLIS) {
                    cut(from, i);
                    from = i;
                    begin(buffers.times[i]);
                }
                last = buffers.times[i];
            }
        }
        cut(from, to);
        byHour.cut(buffers.times, buffers.laid, buffers.known, buffers.millimeters, 0, to, hours);
        rows += to;
        filled = 0;
    }

    /**
     * What a cutter takes: where a row is counted it is known what was laid, were it nothing, as of an empty hopper; and where spreading
     * was off, nothing was wanted.
     */
    private void prepare(int row, RowStatus status) {
        byte code = status.isCounted() ? RowStatus.LAID.code() : status.code();
        buffers.laid[row] = status.isOnRoad() ? buffers.amounts[row] : 0;
        buffers.known[row] = code;
        buffers.wanted[row] = status.isCounted() && isOff(buffers.modes[row]) ? RowStatus.PASSED.code() : code;
    }

    private static boolean isOff(byte mode) {
        return mode == RowMode.PASS.code() || mode == RowMode.UNLOADING.code();
    }

    /** Rows that can't be counted go to a side table; the first reading of all is no fault. */
    private void note(int row, RowStatus status) {
        if (!status.isCounted() && status != RowStatus.FIRST) {
            badRows.add(new BadRow(buffers.times[row], BadRow.Counted.SHAFT, buffers.shaft[row], status.words()));
        }
        RowStatus road = RowStatus.of(buffers.roadStatuses[row]);
        if (!road.isCounted() && road != RowStatus.FIRST && road != status) {
            badRows.add(new BadRow(buffers.times[row], BadRow.Counted.ROAD, buffers.road[row], road.words()));
        }
    }

    private void begin(long millis) {
        hasLast = true;
        trips.add(new Trip(millis, new PieceSums(false), new PieceSums(false)));
        all = new RoadCutter(axis);
        wanted = new RoadCutter(axis);
    }

    /** Cuts rows into the pieces of the trip that they are of; what came before the first trip can't be counted anyway. */
    private void cut(int from, int to) {
        if (from == to || trips.isEmpty()) {
            return;
        }
        Trip trip = trips.get(trips.size() - 1);
        all.cut(buffers.times, buffers.laid, buffers.known, buffers.millimeters, from, to, trip.all());
        wanted.cut(buffers.times, buffers.laid, buffers.wanted, buffers.millimeters, from, to, trip.wanted());
    }
}
