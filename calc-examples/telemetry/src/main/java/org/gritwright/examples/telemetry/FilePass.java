package org.gritwright.examples.telemetry;

import java.io.Serializable;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.apache.spark.api.java.function.FlatMapFunction;
import org.apache.spark.broadcast.Broadcast;
import org.apache.spark.sql.catalyst.InternalRow;
import org.apache.spark.unsafe.types.UTF8String;
import org.jspecify.annotations.Nullable;

/** One file's rows, truck by truck as they lie there, on a worker. */
final class FilePass<R> implements FlatMapFunction<Iterator<InternalRow>, FilePass.Result<R>> {
    private static final long serialVersionUID = 1L;
    private static final long MICROS_PER_MILLI = 1000;
    private static final int IMPOSSIBLE = -1;

    private final Broadcast<Map<String, TruckSetup>> setups;
    private final RowPass.Maker<R> maker;

    FilePass(Broadcast<Map<String, TruckSetup>> setups, RowPass.Maker<R> maker) {
        this.setups = setups;
        this.maker = maker;
    }

    /**
     * What a file comes to.
     *
     * @param trucks in the order of its rows; one whose rows don't lie together is there twice
     * @param unknown trucks without a record
     */
    record Result<R>(List<R> trucks, List<String> unknown) implements Serializable {
        private static final long serialVersionUID = 1L;
    }

    @Override
    public Iterator<Result<R>> call(Iterator<InternalRow> rows) {
        Buffers buffers = new Buffers();
        List<R> trucks = new ArrayList<>();
        List<String> unknown = new ArrayList<>();
        UTF8String truck = null;
        TruckSetup setup = null;
        RowPass<R> pass = null;
        UTF8String slotName = null;
        UTF8String roadName = null;
        int slot = IMPOSSIBLE;
        int road = TruckPass.NO_ROAD;
        while (rows.hasNext()) {
            InternalRow row = rows.next();
            UTF8String id = row.getUTF8String(RowTable.TRUCK);
            if (truck == null || !truck.equals(id)) {
                finish(pass, trucks);
                truck = id == null ? UTF8String.EMPTY_UTF8 : id.clone();
                setup = setups.value().get(truck.toString());
                pass = setup == null ? null : maker.of(setup, buffers);
                slotName = null;
                roadName = null;
                road = TruckPass.NO_ROAD;
                if (setup == null && !unknown.contains(truck.toString())) {
                    unknown.add(truck.toString());
                }
            }
            if (setup != null && pass != null) {
                UTF8String name = row.getUTF8String(RowTable.SLOT);
                if (slotName == null || !slotName.equals(name)) {
                    slotName = name == null ? UTF8String.EMPTY_UTF8 : name.clone();
                    slot = setup.slot(slotName.toString());
                }
                UTF8String itsRoad = row.isNullAt(RowTable.ROAD_ID) ? null : row.getUTF8String(RowTable.ROAD_ID);
                if (!Objects.equals(roadName, itsRoad)) {
                    roadName = itsRoad == null ? null : itsRoad.clone();
                    road = roadName == null ? TruckPass.NO_ROAD : pass.road(roadName.toString());
                }
                add(pass, row, slot, road);
            }
        }
        finish(pass, trucks);
        return List.of(new Result<>(List.copyOf(trucks), List.copyOf(unknown))).iterator();
    }

    /** What isn't there becomes what can't be, so that the row goes to the side table and not into a sum. */
    private static void add(RowPass<?> pass, InternalRow row, int slot, int road) {
        pass.add(
                row.isNullAt(RowTable.TIME)
                        ? Long.MIN_VALUE
                        : Math.floorDiv(row.getLong(RowTable.TIME), MICROS_PER_MILLI),
                reading(row, RowTable.SHAFT),
                reading(row, RowTable.ROAD),
                row.isNullAt(RowTable.GATE) ? Double.NaN : row.getDouble(RowTable.GATE),
                slot,
                row.isNullAt(RowTable.MODE) ? IMPOSSIBLE : row.getInt(RowTable.MODE),
                road,
                reading(row, RowTable.LIQUID));
    }

    private static long reading(InternalRow row, int column) {
        return row.isNullAt(column) ? BadRow.NO_READING : row.getLong(column);
    }

    private static <R> void finish(@Nullable RowPass<R> pass, List<R> trucks) {
        if (pass != null) {
            trucks.add(pass.finish());
        }
    }
}
