package org.gritwright.examples.telemetry;

import java.time.Instant;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
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
final class TruckPass implements RowPass<TruckSeason> {
    /** Rows farther apart are two trips (common practice, no source). */
    static final long PAUSE_MILLIS = 2 * 3_600_000L;

    /** A row's road where none is named. */
    static final int NO_ROAD = -1;

    /** The next row is counted from the one before such a row. */
    private static final Set<RowStatus> PASSED_OVER = EnumSet.of(
            RowStatus.OUT_OF_ORDER, RowStatus.DUPLICATE, RowStatus.IMPOSSIBLE_READING, RowStatus.IMPOSSIBLE_TIME);

    private final TruckSetup setup;
    private final Buffers buffers;
    private final RowState shaftState;
    private final RowState roadState;
    private final LiquidPass liquid;
    private final PieceSums hours = new PieceSums(false);
    private final RoadCutter byHour =
            new RoadCutter(PieceAxis.everyTime(Instant.EPOCH, Amounts.of(1, SpreadingUnits.HOUR)));
    private final List<Trip> trips = new ArrayList<>();
    private final List<BadRow> badRows = new ArrayList<>();
    private final RoadCutter all;
    private final RoadCutter wanted;
    private final RoadCutter allOfRoad;
    private final RoadCutter wantedOfRoad;
    private final Map<String, Integer> roadNumbers = new HashMap<>();
    private final List<String> roadNames = new ArrayList<>();

    /** By its name; by nothing where none is named. */
    private final SortedMap<String, RoadTotals> roads = new TreeMap<>();

    private RowSums sums;
    private Visit visit;

    /** When it first laid something in the rows at hand, if those name no road. */
    private long roadlessSince = BadRow.NO_READING;

    private long last;
    private boolean hasLast;
    private int filled;
    private long rows;

    TruckPass(TruckSetup setup, PieceAxis axis, Buffers buffers) {
        this.setup = setup;
        this.buffers = buffers;
        this.shaftState = setup.shaft().start();
        this.roadState = setup.road().start();
        this.liquid = new LiquidPass(setup, buffers, badRows);
        this.sums = setup.shaft().sums();
        this.all = new RoadCutter(axis);
        this.wanted = new RoadCutter(axis);
        this.allOfRoad = new RoadCutter(axis);
        this.wantedOfRoad = new RoadCutter(axis);
        this.visit = visit(NO_ROAD, "");
    }

    /** Of a blank name that of none. */
    @Override
    public int road(String name) {
        return name.isBlank()
                ? NO_ROAD
                : roadNumbers.computeIfAbsent(name, none -> {
                    roadNames.add(name);
                    return roadNumbers.size();
                });
    }

    @Override
    public void add(
            long millis,
            long shaftPulses,
            long roadPulses,
            double gateInches,
            int slot,
            int mode,
            int road,
            long liquidPulses) {
        int at = filled++;
        buffers.put(at, millis, shaftPulses, setup.meters(gateInches), slot, mode);
        buffers.road[at] = roadPulses;
        buffers.roads[at] = road;
        buffers.liquid[at] = liquidPulses;
        if (filled == Buffers.SIZE) {
            flush();
        }
    }

    @Override
    public TruckSeason finish() {
        flush();
        leaveRoad();
        Wetting.Sums wetted =
                roads.values().stream().map(RoadTotals::wetted).reduce(Wetting.Sums.NONE, Wetting.Sums::plus);
        Liquid liquids = new Liquid(setup.liquid().isPresent(), liquid.total(), wetted);
        return new TruckSeason(setup.truck(), setup.target(), rows, sums, liquids, hours, trips, roads(), badRows);
    }

    private void flush() {
        int to = filled;
        evaluateByRoads(to);
        int from = 0;
        for (int i = 0; i < to; i++) {
            if (!isPassedOver(RowStatus.of(buffers.statuses[i]))) {
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

    static boolean isPassedOver(RowStatus status) {
        return PASSED_OVER.contains(status);
    }

    private void evaluateByRoads(int to) {
        int from = 0;
        for (int i = 0; i < to; i++) {
            if (buffers.roads[i] != visit.road()) {
                evaluate(from, i);
                from = i;
                leaveRoad();
                visit = visit(buffers.roads[i], name(buffers.roads[i]));
            }
        }
        evaluate(from, to);
    }

    private String name(int road) {
        return road == NO_ROAD ? "" : roadNames.get(road);
    }

    /** Rows of one road. */
    private void evaluate(int from, int to) {
        setup.shaft().evaluate(buffers.rows, from, to, shaftState, visit.sums(), buffers.amounts, buffers.statuses);
        setup.road()
                .evaluate(buffers.times, buffers.road, from, to, roadState, buffers.millimeters, buffers.roadStatuses);
        for (int i = from; i < to; i++) {
            RowStatus status = RowStatus.of(buffers.statuses[i]);
            note(i, status);
            prepare(i, status);
            if (visit.road() == NO_ROAD && roadlessSince == BadRow.NO_READING && buffers.laid[i] > 0) {
                roadlessSince = buffers.times[i];
            }
        }
        liquid.evaluate(from, to);
        // Where no road was ever named all of the way is without one, and needn't be cut twice.
        if (!roadNumbers.isEmpty()) {
            allOfRoad.cut(buffers.times, buffers.laid, buffers.known, buffers.millimeters, from, to, visit.all());
            wantedOfRoad.cut(
                    buffers.times, buffers.laid, buffers.wanted, buffers.millimeters, from, to, visit.wanted());
        }
    }

    private Visit visit(int road, String name) {
        allOfRoad.beginAgain();
        wantedOfRoad.beginAgain();
        liquid.enterRoad();
        return new Visit(road, name, setup.shaft().sums(), new PieceSums(false), new PieceSums(false));
    }

    private void leaveRoad() {
        sums = setup.shaft().merged(sums, visit.sums());
        if (roadlessSince != BadRow.NO_READING) {
            badRows.add(
                    new BadRow(roadlessSince, BadRow.About.ROAD_ID, BadRow.NO_READING, "laid where no road is named"));
            roadlessSince = BadRow.NO_READING;
        }
        RoadTotals totals =
                visit.totals(setup.shaft().total(visit.sums()), liquid.leaveRoad(), liquid.wetted(), setup.target());
        roads.merge(visit.name(), totals, RoadTotals::plus);
    }

    /** Where none is named, the way is what is left of it. */
    private SortedMap<String, RoadTotals> roads() {
        Way left = Way.NONE;
        for (Trip trip : trips) {
            left = left.plus(trip.way());
        }
        for (Map.Entry<String, RoadTotals> road : roads.entrySet()) {
            left = road.getKey().isEmpty() ? left : left.minus(road.getValue().way());
        }
        Way ofNone = left;
        roads.computeIfPresent("", (none, totals) -> totals.nowhere(ofNone));
        return roads;
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
            badRows.add(BadRow.of(buffers.times[row], BadRow.About.SHAFT, buffers.shaft[row], status));
        }
        RowStatus road = RowStatus.of(buffers.roadStatuses[row]);
        if (!road.isCounted() && road != RowStatus.FIRST && road != status) {
            badRows.add(BadRow.of(buffers.times[row], BadRow.About.ROAD, buffers.road[row], road));
        }
    }

    private void begin(long millis) {
        hasLast = true;
        trips.add(new Trip(millis, new PieceSums(false), new PieceSums(false)));
        all.beginAgain();
        wanted.beginAgain();
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
