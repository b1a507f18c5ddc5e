package org.gritwright.examples.telemetry;

import java.io.Serializable;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.apache.spark.sql.catalyst.InternalRow;
import org.apache.spark.unsafe.types.UTF8String;
import org.gritwright.core.telemetry.RowState;
import org.gritwright.core.telemetry.RowStatus;
import org.gritwright.core.telemetry.RowSums;

/** Rows to what each truck laid in each hour, and nothing else: what {@link CostMeasurement} measures. For one thread. */
final class HourPass {
    /** Columns of the measured rows. */
    private static final int TRUCK = 0;

    private static final int TIME = 1;
    private static final int COUNT = 2;
    private static final int GATE = 3;
    private static final int SLOT = 4;
    private static final int MODE = 5;

    private static final long MILLIS_PER_HOUR = 3_600_000;
    private static final long MICROS_PER_MILLI = 1000;

    /** What was laid in an hour, and how many of its rows can't be counted. */
    record Hour(String truck, long hour, long milligrams, long badRows) implements Serializable {
        private static final long serialVersionUID = 1L;
    }

    private final Map<String, TruckSetup> setups;
    private final boolean areReady;
    private final Buffers buffers = new Buffers();
    private final boolean[] isOnRoad = new boolean[RowStatus.values().length];
    private final boolean[] isCounted = new boolean[isOnRoad.length];
    private final List<Hour> hours = new ArrayList<>();

    /** @param areReady whether the rows have what was counted since the row before, and not the counter's reading */
    HourPass(Map<String, TruckSetup> setups, boolean areReady) {
        this.setups = setups;
        this.areReady = areReady;
        for (RowStatus status : RowStatus.values()) {
            isOnRoad[status.code()] = status.isOnRoad();
            isCounted[status.code()] = status.isCounted();
        }
    }

    List<Hour> over(Iterator<InternalRow> rows) {
        UTF8String truck = UTF8String.EMPTY_UTF8;
        UTF8String slotName = UTF8String.EMPTY_UTF8;
        OneTruck one = null;
        int slot = 0;
        while (rows.hasNext()) {
            InternalRow row = rows.next();
            UTF8String id = row.getUTF8String(TRUCK);
            if (one == null || !truck.equals(id)) {
                if (one != null) {
                    one.finish();
                }
                truck = id.clone();
                slotName = UTF8String.EMPTY_UTF8;
                one = new OneTruck(Objects.requireNonNull(setups.get(truck.toString()), "setup"));
            }
            UTF8String name = row.getUTF8String(SLOT);
            if (!slotName.equals(name)) {
                slotName = name.clone();
                slot = one.setup.slot(name.toString());
            }
            one.add(
                    Math.floorDiv(row.getLong(TIME), MICROS_PER_MILLI),
                    row.getLong(COUNT),
                    row.isNullAt(GATE) ? Double.NaN : row.getDouble(GATE),
                    slot,
                    row.getInt(MODE));
        }
        if (one != null) {
            one.finish();
        }
        return hours;
    }

    private final class OneTruck {
        private final TruckSetup setup;
        private final RowState state;
        private final RowSums sums;
        private final Map<Long, long[]> byHour = new HashMap<>();
        private long reading;
        private int filled;

        OneTruck(TruckSetup setup) {
            this.setup = setup;
            this.state = setup.shaft().start();
            this.sums = setup.shaft().sums();
        }

        void add(long millis, long count, double gateInches, int slot, int mode) {
            int at = filled++;
            reading = areReady ? reading + count : count;
            buffers.times[at] = millis;
            buffers.shaft[at] = reading;
            buffers.gates[at] = setup.meters(gateInches);
            buffers.slots[at] = slot;
            buffers.modes[at] = (byte) mode;
            if (filled == Buffers.SIZE) {
                flush();
            }
        }

        private void flush() {
            setup.shaft().evaluate(buffers.rows, 0, filled, state, sums, buffers.amounts, buffers.statuses);
            long hour = Long.MIN_VALUE;
            long[] now = new long[2];
            for (int i = 0; i < filled; i++) {
                long its = Math.floorDiv(buffers.times[i], MILLIS_PER_HOUR);
                if (its != hour) {
                    hour = its;
                    now = byHour.computeIfAbsent(hour, none -> new long[2]);
                }
                byte status = buffers.statuses[i];
                now[0] += isOnRoad[status] ? buffers.amounts[i] : 0;
                now[1] += isCounted[status] ? 0 : 1;
            }
            filled = 0;
        }

        void finish() {
            flush();
            byHour.forEach((hour, laid) -> hours.add(new Hour(setup.truck(), hour, laid[0], laid[1])));
        }
    }
}
