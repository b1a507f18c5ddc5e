package org.gritwright.examples.telemetry;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.NoSuchElementException;
import java.util.SplittableRandom;
import java.util.TreeMap;
import org.gritwright.core.telemetry.RowMode;
import org.jspecify.annotations.Nullable;

/**
 * The rows of an invented truck, trip by trip, one a second: it loads, drives out, spreads with stops, hills and crossings until the
 * hopper is empty, drives back and empties what is left in the yard. What truly fell is known, and on which road. The same seed gives the same rows.
 */
final class InventedTrips implements Iterator<List<InventedRow>> {
    private static final long SHAFT_ROLLS_OVER_AT = 65_536;
    private static final long ROAD_ROLLS_OVER_AT = 16_777_216;
    private static final double SECONDS_PER_HOUR = 3600;
    private static final double SECONDS_PER_MINUTE = 60;
    private static final String SPARE_SLOT = "9";

    /** Loading, the way out, the way back and the yard, in seconds. */
    private static final int LOADING = 480;

    private static final int WAY = 540;
    private static final int YARD = 90;

    /** Longer than rows may be apart. */
    private static final int SILENCE = 420;

    private static final long REBOOT_MILLIS = 14_000;
    private static final double POUNDS_PER_TON = 2000;

    /** Above what it was calibrated for. */
    private static final double WIDE_OPEN_INCHES = 4.6;

    private static final double LIQUID_PULSES_PER_REVOLUTION = 30;
    private static final double GALLONS_PER_REVOLUTION = 0.0155;

    private final InventedTruck truck;
    private final List<Instant> starts;
    private final int spreadingSeconds;
    private final double revolutionsUntilWorn;
    private final SplittableRandom random;

    /** Apart, so that roads and gates change nothing else. */
    private final SplittableRandom besides;

    private int trip;

    private double revolutions;
    private double miles;
    private double liquidRevolutions;
    private double wearing;
    private double gate;
    private int gateFor;
    private int roadlessFor;
    private @Nullable String road;
    private double milesSpreading;
    private double speed;
    private long millis;
    private int stopFor;
    private int blastFor;
    private int spareFor;

    /** What fell on the road since the last row that was sent. */
    private double pending;

    private double pendingGallons;
    private double seenGallons;
    private final Map<String, Double> seenByRoad = new TreeMap<>();
    private double seen;
    private double all;
    private boolean lost;

    /**
     * @param starts when it leaves for each trip
     * @param spreadingSeconds how long it spreads in each
     * @param revolutionsUntilWorn how far its shaft turns until its wear is found
     */
    InventedTrips(
            InventedTruck truck, List<Instant> starts, int spreadingSeconds, long seed, double revolutionsUntilWorn) {
        this.truck = truck;
        this.starts = List.copyOf(starts);
        this.spreadingSeconds = spreadingSeconds;
        this.revolutionsUntilWorn = revolutionsUntilWorn;
        this.random = new SplittableRandom(seed);
        this.besides = new SplittableRandom(~seed);
        this.gate = truck.gateInches();
        // Its counters have run before.
        this.revolutions = random.nextInt(1000);
        this.miles = random.nextInt(1000);
    }

    /** What truly fell on the road so far. */
    double poundsLaid() {
        return all;
    }

    /** Of that what fell between rows that can be counted. */
    double poundsSeen() {
        return seen;
    }

    /** The same by the roads that rows name; what fell where none is named isn't in it. */
    Map<String, Double> poundsSeenByRoad() {
        return seenByRoad;
    }

    /** Gallons of brine that ran between rows that can be counted. */
    double gallonsSeen() {
        return seenGallons;
    }

    /** How far the shaft turned until what it wore was found. */
    double revolutionsWearing() {
        return wearing;
    }

    @Override
    public boolean hasNext() {
        return trip < starts.size();
    }

    @Override
    public List<InventedRow> next() {
        if (!hasNext()) {
            throw new NoSuchElementException("no more trips");
        }
        millis = starts.get(trip).toEpochMilli();
        trip++;
        lost = true;
        if (truck.habits().startsAtZero()) {
            startAtZero();
        }
        List<InventedRow> rows = new ArrayList<>();
        drive(rows, LOADING, 0, RowMode.PASS);
        drive(rows, WAY, 34, RowMode.PASS);
        spread(rows);
        drive(rows, WAY, 38, RowMode.PASS);
        for (int i = 0; i < YARD; i++) {
            second(rows, 0, truck.fastestShaft() / 2, RowMode.UNLOADING);
        }
        return rows;
    }

    private void drive(List<InventedRow> rows, int seconds, double wanted, RowMode mode) {
        for (int i = 0; i < seconds; i++) {
            second(rows, wanted, 0, mode);
        }
    }

    private void spread(List<InventedRow> rows) {
        milesSpreading = 0;
        for (int i = 0; i < spreadingSeconds; i++) {
            setRoadAndGate();
            // A hill every ten minutes: slow up, fast down.
            double wanted = stopFor > 0 ? 0 : 26 + 9 * Math.sin(i / 95.0);
            stopFor = stopFor > 0 ? stopFor - 1 : random.nextInt(400) == 0 ? 20 + random.nextInt(40) : 0;
            blastFor = blastFor > 0 ? blastFor - 1 : random.nextInt(900) == 0 ? 8 : 0;
            spareFor =
                    spareFor > 0 ? spareFor - 1 : truck.habits().usesSpareSlot() && random.nextInt(6000) == 0 ? 120 : 0;
            boolean isBlast = blastFor > 0 && speed > 2;
            boolean isEmpty = i > spreadingSeconds - 60;
            double shaft = isBlast ? truck.fastestShaft() : shaftSpeed();
            RowMode mode = isEmpty ? RowMode.EMPTY : isBlast ? RowMode.BLAST : RowMode.AUTOMATIC;
            if (truck.habits().reboots() && i % 5000 == 2600) {
                reboot();
            }
            if (truck.habits().losesRadio() && i % 7000 == 4100) {
                loseRadio(wanted, mode);
            }
            second(rows, wanted, shaft, mode);
        }
        road = null;
    }

    private void setRoadAndGate() {
        roadlessFor = roadlessFor > 0 ? roadlessFor - 1 : besides.nextInt(5000) == 0 ? 30 + besides.nextInt(60) : 0;
        road = roadlessFor > 0 ? null : truck.work().roads().at(milesSpreading);
        List<Double> openings = truck.work().openings();
        if (!openings.isEmpty() && --gateFor < 0) {
            boolean isWideOpen = besides.nextInt(12) == 0;
            gate = isWideOpen ? WIDE_OPEN_INCHES : openings.get(besides.nextInt(openings.size()));
            gateFor = isWideOpen ? 90 : 600 + besides.nextInt(1200);
        }
    }

    /** What the controller asks of the shaft by what its display holds, as far as the oil allows, in rev/min. */
    private double shaftSpeed() {
        double wanted = speed
                / SECONDS_PER_MINUTE
                * truck.poundsPerMile()
                / (truck.spanAt(millis).held() * truck.atOpening(gate));
        double jitter = 1 + 0.02 * random.nextGaussian();
        return Math.min(wanted * jitter, truck.fastestShaft());
    }

    /** The controller is off for a while, spreads nothing, and counts from 0. */
    private void reboot() {
        millis += REBOOT_MILLIS;
        startAtZero();
        lost = true;
    }

    private void startAtZero() {
        revolutions = 0;
        miles = 0;
        liquidRevolutions = 0;
    }

    /** It goes on spreading, and nobody hears of it. */
    private void loseRadio(double wanted, RowMode mode) {
        for (int i = 0; i < SILENCE; i++) {
            move(wanted, shaftSpeed(), mode);
        }
        lost = true;
    }

    private void move(double wanted, double shaftPerMinute, RowMode mode) {
        millis += 1000;
        speed += Math.max(-4, Math.min(2.5, wanted - speed));
        miles += speed / SECONDS_PER_HOUR;
        milesSpreading += speed / SECONDS_PER_HOUR;
        double turned = shaftPerMinute / SECONDS_PER_MINUTE;
        revolutions += turned;
        double worn = 1;
        if (truck.isWearing(millis)) {
            wearing += turned;
            worn += truck.work().wear() * wearing / revolutionsUntilWorn;
        }
        if (mode == RowMode.AUTOMATIC || mode == RowMode.BLAST) {
            double fell = turned * truck.spanAt(millis).fallen() * truck.atOpening(gate) / worn;
            pending += fell;
            all += fell;
            double gallons = fell / POUNDS_PER_TON * truck.work().gallonsPerTon();
            pendingGallons += gallons;
            liquidRevolutions += gallons / GALLONS_PER_REVOLUTION;
        }
    }

    private void second(List<InventedRow> rows, double wanted, double shaftPerMinute, RowMode mode) {
        move(wanted, shaftPerMinute, mode);
        String slot = spareFor > 0 ? SPARE_SLOT : truck.slot();
        InventedRow row = new InventedRow(
                millis,
                (long) (revolutions * truck.pulsesPerRevolution()) % SHAFT_ROLLS_OVER_AT,
                (long) (miles * truck.pulsesPerMile()) % ROAD_ROLLS_OVER_AT,
                gate,
                slot,
                mode.code(),
                road,
                liquidPulses());
        if (!lost && spareFor == 0 && gate != WIDE_OPEN_INCHES) {
            seen += pending;
            if (road != null) {
                seenByRoad.merge(road, pending, Double::sum);
            }
        }
        pending = 0;
        if (lost) {
            pendingGallons = 0;
        }
        // What a row doesn't read the next one does.
        if (row.liquidPulses() != null) {
            seenGallons += pendingGallons;
            pendingGallons = 0;
        }
        lost = false;
        rows.add(row);
        if (truck.habits().swapsRows()) {
            disturb(rows, row);
        }
    }

    private @Nullable Long liquidPulses() {
        boolean isRead = truck.work().gallonsPerTon() > 0 && (lost || besides.nextInt(4000) > 0);
        return isRead ? (long) (liquidRevolutions * LIQUID_PULSES_PER_REVOLUTION) % SHAFT_ROLLS_OVER_AT : null;
    }

    /** None of this loses anything: the next row is counted from the last one in order. */
    private void disturb(List<InventedRow> rows, InventedRow row) {
        int chance = random.nextInt(3000);
        if (chance == 0) {
            rows.add(row);
        } else if (chance == 1 && rows.size() > 2) {
            rows.add(rows.get(rows.size() - 3));
        } else if (chance == 2) {
            rows.add(row.withoutDate());
        }
    }
}
