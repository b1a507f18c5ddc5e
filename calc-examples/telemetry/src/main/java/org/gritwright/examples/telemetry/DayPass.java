package org.gritwright.examples.telemetry;

import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import org.gritwright.core.telemetry.RowState;
import org.gritwright.core.telemetry.RowStatus;
import org.gritwright.core.telemetry.RowSums;

/**
 * One truck's rows to what it laid of each material on each day, as its display indicated: nothing is corrected backwards. What a row counted
 * since the one before is of the row's day. For one thread.
 */
final class DayPass implements RowPass<TruckDays> {
    private static final long MILLIS_PER_DAY = 86_400_000;
    private static final int MILLIS_PER_SECOND = 1000;
    private static final List<RowStatus> ON_ROAD = Arrays.stream(RowStatus.values())
            .filter(status -> status.isCounted() && status.isOnRoad())
            .toList();

    /** The first reading of all is no fault. */
    private static final List<RowStatus> BAD = Arrays.stream(RowStatus.values())
            .filter(status -> !status.isCounted() && status != RowStatus.FIRST)
            .toList();

    /**
     * Makes passes of trucks whose slots' materials are known.
     *
     * @param trucks by their ids
     * @param offset the yard's
     */
    record Maker(Map<String, SlotMaterials> trucks, ZoneOffset offset) implements RowPass.Maker<TruckDays> {
        private static final long serialVersionUID = 1L;

        @Override
        public RowPass<TruckDays> of(TruckSetup setup, Buffers buffers) {
            return new DayPass(setup, Objects.requireNonNull(trucks.get(setup.truck()), "materials"), offset, buffers);
        }
    }

    private final TruckSetup setup;
    private final SlotMaterials materials;
    private final long offsetMillis;
    private final Buffers buffers;
    private final RowState state;
    private final TreeMap<TruckDays.Key, TruckDays.Sums> days = new TreeMap<>();

    /** A slot on a day, or on the part of it before or after the slot got another value. */
    private int slot;

    private long from = Long.MAX_VALUE;
    private long until = Long.MIN_VALUE;
    private int filled;
    private long rows;
    private long badRows;

    private DayPass(TruckSetup setup, SlotMaterials materials, ZoneOffset offset, Buffers buffers) {
        this.setup = setup;
        this.materials = materials;
        this.offsetMillis = (long) offset.getTotalSeconds() * MILLIS_PER_SECOND;
        this.buffers = buffers;
        this.state = setup.shaft().start();
    }

    @Override
    public int road(String name) {
        return TruckPass.NO_ROAD;
    }

    @Override
    public void add(
            long millis,
            long shaftPulses,
            long roadPulses,
            double gateInches,
            int itsSlot,
            int mode,
            int road,
            long liquidPulses) {
        int at = filled++;
        buffers.put(at, millis, shaftPulses, setup.meters(gateInches), itsSlot, mode);
        if (filled == Buffers.SIZE) {
            flush();
        }
    }

    @Override
    public TruckDays finish() {
        flush();
        days.values().removeIf(TruckDays.Sums::isNothing);
        return new TruckDays(setup.truck(), materials.pulsesPerTurn(), days, rows, badRows);
    }

    private void flush() {
        int to = filled;
        int first = 0;
        for (int i = 0; i < to; i++) {
            long millis = buffers.times[i];
            boolean isWithin = buffers.slots[i] == slot && millis >= from && millis < until;
            // What can't be a time is no day either; such a row isn't counted.
            if (!isWithin && materials.canBe(millis)) {
                evaluate(first, i);
                first = i;
                slot = buffers.slots[i];
                from = Math.floorDiv(millis + offsetMillis, MILLIS_PER_DAY) * MILLIS_PER_DAY - offsetMillis;
                until = Math.min(from + MILLIS_PER_DAY, materials.next(slot, millis));
                from = Math.max(from, materials.since(slot, millis));
            }
        }
        evaluate(first, to);
        filled = 0;
    }

    private void evaluate(int first, int to) {
        if (first == to) {
            return;
        }
        RowSums sums = setup.shaft().sums();
        setup.shaft().evaluate(buffers.rows, first, to, state, sums, buffers.amounts, buffers.statuses);
        rows += to - first;
        badRows += BAD.stream().mapToLong(sums::rows).sum();
        if (from == Long.MAX_VALUE) {
            return;
        }
        long pulses = ON_ROAD.stream().mapToLong(sums::counts).sum();
        LocalDate day = LocalDate.ofEpochDay(Math.floorDiv(from + offsetMillis, MILLIS_PER_DAY));
        TruckDays.Sums here = new TruckDays.Sums(sums.laid(), pulses, sums.unattributed());
        String material = materials.material(slot, from);
        if (material != null) {
            days.merge(new TruckDays.Key(day, material), here, TruckDays.Sums::plus);
        } else {
            // Turned in a slot that holds nothing: it may have been any of its materials.
            materials.all().forEach(any -> days.merge(new TruckDays.Key(day, any), here, TruckDays.Sums::plus));
        }
    }
}
