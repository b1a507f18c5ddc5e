package org.gritwright.examples.benchmarks;

import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.concurrent.TimeUnit;
import java.util.stream.DoubleStream;
import org.gritwright.core.calibration.CalibrationCatch;
import org.gritwright.core.calibration.CalibrationFactor;
import org.gritwright.core.calibration.CalibrationInForce;
import org.gritwright.core.curve.CurveModel;
import org.gritwright.core.curve.DischargeCurve;
import org.gritwright.core.metering.Auger;
import org.gritwright.core.metering.BuiltInTypes;
import org.gritwright.core.metering.Conveyor;
import org.gritwright.core.metering.DragChain;
import org.gritwright.core.metering.FlowMeter;
import org.gritwright.core.metering.FlowMetering;
import org.gritwright.core.metering.Gate;
import org.gritwright.core.metering.NoGate;
import org.gritwright.core.metering.ShaftCount;
import org.gritwright.core.metering.ShaftSensor;
import org.gritwright.core.metering.SlidingGate;
import org.gritwright.core.metering.Spreader;
import org.gritwright.core.observation.CalibrationPoint;
import org.gritwright.core.observation.Material;
import org.gritwright.core.observation.Observation;
import org.gritwright.core.spi.Setting;
import org.gritwright.core.spi.TypeId;
import org.gritwright.core.telemetry.Counter;
import org.gritwright.core.telemetry.RowEvaluator;
import org.gritwright.core.telemetry.RowState;
import org.gritwright.core.telemetry.RowSums;
import org.gritwright.core.telemetry.Rows;
import org.gritwright.core.telemetry.Timeline;
import org.gritwright.core.telemetry.TimelineEntry;
import org.gritwright.core.weighing.CaughtMass;
import org.gritwright.core.weighing.Scale;
import org.gritwright.core.weighing.Weighing;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OperationsPerInvocation;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/**
 * 10 000 rows of a truck's counter, a second apart, to whole milligrams: by a bare loop that rounds and subtracts and looks at
 * nothing, by the evaluator with and without all columns, and row by row; nanoseconds a row.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.NANOSECONDS)
@OperationsPerInvocation(TelemetryRowBenchmark.ROWS)
@Warmup(iterations = 5, time = 1)
@Measurement(iterations = 5, time = 1)
@Fork(2)
public class TelemetryRowBenchmark {
    static final int ROWS = 10_000;
    private static final double MILLIGRAMS = 25_000;
    /** A gate is moved so many rows after the last time, on average. */
    private static final int ROWS_BETWEEN_MOVES = 30;

    private static final int TIMES_MET = 200;
    private static final int TABLE_STEPS = 256;
    private static final double LOWEST = 0.05;
    private static final double HIGHEST = 0.1;
    private static final Instant START = Instant.parse("2026-11-01T12:00:00Z");

    private final RowEvaluator evaluator = evaluator(inForce());
    private final RowEvaluator liquids = evaluator(liquidInForce());
    private final RowEvaluator curve = compiled(TimelineEntry.curve(START, "1", curve()));
    private final Rows plain;
    private final Rows whole;
    private final Rows moving;
    private final Rows movedAtTimes;
    private final double[] table = new double[TABLE_STEPS + 2];
    private final long[] milligrams = new long[ROWS];
    private final byte[] statuses = new byte[ROWS];

    /** Up to 90 pulses a second. */
    public TelemetryRowBenchmark() {
        SplittableRandom random = new SplittableRandom(1);
        long[] times = new long[ROWS];
        long[] counts = new long[ROWS];
        double[] settings = new double[ROWS];
        for (int i = 0; i < ROWS; i++) {
            times[i] = START.toEpochMilli() + 1000L * i;
            counts[i] = i == 0 ? 0 : counts[i - 1] + random.nextInt(90);
            settings[i] = Double.NaN;
        }
        plain = Rows.of(times, counts);
        whole = new Rows(times, counts, settings, new int[ROWS], new byte[ROWS]);
        double[] openings = new double[ROWS];
        double[] stays = new double[ROWS];
        for (int i = 0; i < ROWS; i++) {
            openings[i] = LOWEST + (HIGHEST - LOWEST) * random.nextDouble();
            stays[i] = i == 0 || random.nextInt(ROWS_BETWEEN_MOVES) == 0 ? openings[i] : stays[i - 1];
        }
        moving = new Rows(times, counts, openings, new int[ROWS], new byte[ROWS]);
        movedAtTimes = new Rows(times, counts, stays, new int[ROWS], new byte[ROWS]);
        for (int i = 0; i < table.length; i++) {
            table[i] = MILLIGRAMS * (0.4 + 0.6 * i / TABLE_STEPS);
        }
    }

    /** A program meets rows of all kinds; what was compiled for one alone is faster. */
    @Setup
    public void meetAllKinds() {
        for (int i = 0; i < TIMES_MET; i++) {
            liquid();
            allColumns();
            movingGate();
            gateMovedAtTimes();
            rowByRow();
        }
    }

    private static CalibrationInForce inForce() {
        Spreader spreader = new Spreader(
                Conveyor.of(
                        new Auger(),
                        Map.of(
                                "screwDiameter", Amounts.of(6, SpreadingUnits.INCH),
                                "shaftDiameter", Amounts.of(1.5, SpreadingUnits.INCH),
                                "pitch", Amounts.of(5, SpreadingUnits.INCH))),
                Gate.of(new NoGate(), Map.of()),
                ShaftSensor.of(Amounts.of(100, SpreadingUnits.PULSE_PER_REVOLUTION)));
        return CalibrationInForce.of(
                CalibrationPoint.of(
                        Material.of("salt", Amounts.of(1250, SpreadingUnits.KILOGRAM_PER_CUBIC_METER)),
                        spreader,
                        Setting.none()),
                CalibrationFactor.of(Amounts.of(MILLIGRAMS / 1e4, SpreadingUnits.KILOGRAM_PER_REVOLUTION)),
                Optional.empty());
    }

    private static CalibrationInForce liquidInForce() {
        FlowMetering meter = new FlowMetering(FlowMeter.of(
                BuiltInTypes.registry(),
                TypeId.of("k-factor", 1),
                Map.of("kFactor", Amounts.of(600, SpreadingUnits.PULSE_PER_US_GALLON))));
        return CalibrationInForce.of(
                CalibrationPoint.of(
                        Material.liquid("brine", Amounts.of(1177, SpreadingUnits.KILOGRAM_PER_CUBIC_METER)),
                        meter,
                        Setting.none()),
                CalibrationFactor.of(Amounts.of(600, SpreadingUnits.PULSE_PER_US_GALLON)),
                Optional.empty());
    }

    /** Caught at 5, 7.5 and 10 cm, with a dead opening. */
    private static DischargeCurve curve() {
        Spreader spreader = new Spreader(
                Conveyor.of(
                        new DragChain(),
                        Map.of(
                                "teeth", Amounts.of(7, SpreadingUnits.ONE),
                                "chainPitch", Amounts.of(2.25, SpreadingUnits.INCH))),
                Gate.of(new SlidingGate(), Map.of("width", Amounts.of(22, SpreadingUnits.INCH))),
                ShaftSensor.of(Amounts.of(100, SpreadingUnits.PULSE_PER_REVOLUTION)));
        Material salt = Material.of("salt", Amounts.of(1250, SpreadingUnits.KILOGRAM_PER_CUBIC_METER));
        return DischargeCurve.fit(
                DoubleStream.of(5, 5, 7.5, 7.5, 10, 10)
                        .mapToObj(opening -> caught(
                                CalibrationPoint.of(
                                        salt, spreader, Setting.height(Amounts.of(opening, SpreadingUnits.CENTIMETER))),
                                40 * opening - 20))
                        .toList(),
                CurveModel.DEAD_OPENING);
    }

    private static CalibrationCatch caught(CalibrationPoint point, double kilograms) {
        OffsetDateTime at = START.atOffset(ZoneOffset.UTC);
        Scale scale = Scale.of(
                "platform", Amounts.of(1000, SpreadingUnits.KILOGRAM), Amounts.of(0.2, SpreadingUnits.KILOGRAM));
        Weighing tarp = new Weighing(
                "tarp", Amounts.of(kilograms + 2, SpreadingUnits.KILOGRAM), Amounts.of(2, SpreadingUnits.KILOGRAM));
        return CalibrationCatch.of(Observation.of(point, at, CaughtMass.of(scale, at.toLocalDate(), tarp))
                .counted(new ShaftCount.Pulses(Amounts.of(3000, SpreadingUnits.PULSE))));
    }

    private static RowEvaluator evaluator(CalibrationInForce value) {
        return compiled(TimelineEntry.value(START, value));
    }

    private static RowEvaluator compiled(TimelineEntry entry) {
        return RowEvaluator.compile(
                Timeline.of(List.of(entry)),
                Counter.ofShaft(
                        Amounts.of(100, SpreadingUnits.PULSE_PER_REVOLUTION),
                        Amounts.of(60, SpreadingUnits.REVOLUTION_PER_MINUTE)),
                START,
                START.plusSeconds(ROWS));
    }

    /**
     * The bare loop.
     *
     * @return the sum
     */
    @Benchmark
    public long bareLoop() {
        long[] counts = plain.counts();
        long before = (long) Math.rint(MILLIGRAMS * counts[0]);
        long sum = 0;
        for (int i = 1; i < ROWS; i++) {
            long now = (long) Math.rint(MILLIGRAMS * counts[i]);
            milligrams[i] = now - before;
            sum += now - before;
            before = now;
        }
        return sum;
    }

    /**
     * Times and counts.
     *
     * @return the sum
     */
    @Benchmark
    public long plain() {
        return evaluated(evaluator, plain);
    }

    /**
     * Times and counts of a flow meter, to microliters.
     *
     * @return the sum
     */
    @Benchmark
    public long liquid() {
        return evaluated(liquids, plain);
    }

    /**
     * All columns.
     *
     * @return the sum
     */
    @Benchmark
    public long allColumns() {
        return evaluated(evaluator, whole);
    }

    private long evaluated(RowEvaluator by, Rows rows) {
        RowSums sums = by.sums();
        by.evaluate(rows, 0, ROWS, by.start(), sums, milligrams, statuses);
        return sums.laid();
    }

    /**
     * All columns, the gate somewhere else in each row, by a curve that is interpolated.
     *
     * @return the sum
     */
    @Benchmark
    public long movingGate() {
        return evaluated(curve, moving);
    }

    /**
     * All columns, the gate somewhere else after half a minute or so, by a curve that is interpolated.
     *
     * @return the sum
     */
    @Benchmark
    public long gateMovedAtTimes() {
        return evaluated(curve, movedAtTimes);
    }

    /**
     * A bare loop for a gate that moves in each row: it interpolates, rounds and subtracts, and looks at nothing.
     *
     * @return the sum
     */
    @Benchmark
    public long bareMovingGate() {
        long[] counts = moving.counts();
        double[] settings = moving.settings();
        double perSetting = TABLE_STEPS / (HIGHEST - LOWEST);
        long sum = 0;
        for (int i = 1; i < ROWS; i++) {
            double at = (settings[i] - LOWEST) * perSetting;
            int place = (int) at;
            double each = table[place] + (at - place) * (table[place + 1] - table[place]);
            long held = (long) Math.rint(each * counts[i]) - (long) Math.rint(each * counts[i - 1]);
            milligrams[i] = held;
            sum += held;
        }
        return sum;
    }

    /**
     * One row after the other, as a source without columns gives them.
     *
     * @return the sum
     */
    @Benchmark
    public long rowByRow() {
        RowSums sums = evaluator.sums();
        RowState state = evaluator.start();
        long[] times = plain.times();
        long[] counts = plain.counts();
        for (int i = 0; i < ROWS; i++) {
            evaluator.step(state, sums, times[i], counts[i], Double.NaN, 0, 0);
            milligrams[i] = state.amount();
        }
        return sums.laid();
    }
}
