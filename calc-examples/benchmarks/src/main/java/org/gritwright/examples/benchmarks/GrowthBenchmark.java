package org.gritwright.examples.benchmarks;

import static org.gritwright.units.SpreadingUnits.INCH;
import static org.gritwright.units.SpreadingUnits.POUND;
import static org.gritwright.units.SpreadingUnits.PULSE;

import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import org.gritwright.core.document.RejectedDocumentException;
import org.gritwright.core.fleet.assessment.FleetAssessor;
import org.gritwright.core.fleet.day.CalibrationCatchEntry;
import org.gritwright.core.fleet.day.CatchEntry;
import org.gritwright.core.fleet.day.CountEntry;
import org.gritwright.core.fleet.day.DayLimits;
import org.gritwright.core.fleet.day.FleetDay;
import org.gritwright.core.fleet.day.TruckDay;
import org.gritwright.core.fleet.day.VerificationCatchEntry;
import org.gritwright.core.fleet.day.WeighingEntry;
import org.gritwright.core.metering.BuiltInTypes;
import org.gritwright.core.observation.Coasting;
import org.gritwright.core.record.CalibrationRecord;
import org.gritwright.core.record.Document;
import org.gritwright.units.Amounts;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/**
 * How the cost of one truck's day grows with what was written down: assessment and record of 64, 256 and 1 024 verification
 * catches at one point, and of two calibration catches at each of 64, 256 and 1 024 gate openings.
 *
 * <p>From one size to the next, which is four times as large, time and allocation may grow to 1.3 × 4 = 5.2 times. The allocated
 * bytes ({@code gc.alloc.rate.norm}) hardly vary and tell even on a busy machine; times need a quiet one.
 */
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@State(Scope.Benchmark)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 3, time = 1)
@Fork(1)
public class GrowthBenchmark {
    private static final double POUNDS_PER_REVOLUTION_AND_INCH = 2.7;
    private static final double DEAD_OPENING_INCHES = 0.2;
    private static final int COUNTS = 64;

    /** How many catches or openings there are. */
    /** More than the common ones, to show how the cost grows. */
    private static final DayLimits LIMITS = new DayLimits(10, 2000, 20_000, 2000);

    @Param({"64", "256", "1024"})
    int size;

    private FleetDay manyVerifications;
    private FleetDay manyOpenings;

    /** Made by JMH. */
    public GrowthBenchmark() {}

    /**
     * Writes both days from the example's only truck.
     *
     * @throws IOException if the example can't be read
     * @throws RejectedDocumentException if the example can't be used
     */
    @Setup
    public void writeBothDays() throws IOException, RejectedDocumentException {
        try (InputStream in = GrowthBenchmark.class.getResourceAsStream("one-truck.json")) {
            FleetDay day = Document.FLEET_DAY.read(in);
            TruckDay truck = day.trucks().get(0);
            manyVerifications = day.withTrucks(List.of(truck.verificationCatches(
                    verifications(truck.verificationCatches().get(0)))));
            manyOpenings = day.withTrucks(List.of(truck.verificationCatches(List.of())
                    .calibrationCatches(openings(truck.calibrationCatches().get(0)))));
        }
    }

    /** Each with another count or another mass in the first container: none is a copy of another, and all are much alike. */
    private List<VerificationCatchEntry> verifications(VerificationCatchEntry like) {
        List<VerificationCatchEntry> catches = new ArrayList<>();
        for (int i = 0; i < size; i++) {
            List<WeighingEntry> containers = new ArrayList<>(like.entry().containers());
            containers.set(0, heavier(containers.get(0), 0.05 * Math.floorDiv(i, COUNTS)));
            catches.add(new VerificationCatchEntry(
                    entry(like.entry(), i, containers, 5600 + 2 * (i % COUNTS)),
                    like.inForce(),
                    like.slot(),
                    like.target(),
                    like.testSpeed(),
                    like.runTime(),
                    like.testDistance(),
                    like.indicated(),
                    like.indicatedStep()));
        }
        return catches;
    }

    private static WeighingEntry heavier(WeighingEntry one, double pounds) {
        return new WeighingEntry(
                one.container(), Amounts.of(Amounts.in(one.gross(), POUND) + pounds, POUND), one.tare());
    }

    /** From 1.5 in to 5.5 in. */
    private List<CalibrationCatchEntry> openings(CalibrationCatchEntry like) {
        List<CalibrationCatchEntry> catches = new ArrayList<>();
        for (int i = 0; i < 2 * size; i++) {
            double inches = 1.5 + 4.0 * Math.floorDiv(i, 2) / size;
            int pulses = 3000 + i % 7;
            double pounds = pulses
                    / 100.0
                    * POUNDS_PER_REVOLUTION_AND_INCH
                    * (inches - DEAD_OPENING_INCHES)
                    * (1 + 0.002 * (i % 5));
            WeighingEntry tarp =
                    new WeighingEntry("tarp", Amounts.of(Math.rint(2 * pounds) / 2 + 4, POUND), Amounts.of(4, POUND));
            catches.add(new CalibrationCatchEntry(
                    entry(like.entry(), i, List.of(tarp), pulses).at(Amounts.of(inches, INCH)),
                    true,
                    Coasting.IN_BOTH));
        }
        return catches;
    }

    private static CatchEntry entry(CatchEntry like, int index, List<WeighingEntry> containers, int pulses) {
        return new CatchEntry(
                        like.at().plusSeconds(10L * index),
                        like.operator(),
                        like.scale(),
                        containers,
                        Optional.empty(),
                        Optional.empty(),
                        like.counted(),
                        like.setting(),
                        like.material(),
                        like.conditions(),
                        like.notes())
                .counted(CountEntry.ofPulses(Amounts.of(pulses, PULSE)));
    }

    /**
     * Verification catches at one point.
     *
     * @return the record
     */
    @Benchmark
    public CalibrationRecord verificationCatches() {
        return recorded(manyVerifications);
    }

    /**
     * Calibration catches at many gate openings, with the curve through them.
     *
     * @return the record
     */
    @Benchmark
    public CalibrationRecord gateOpenings() {
        return recorded(manyOpenings);
    }

    private static CalibrationRecord recorded(FleetDay day) {
        return CalibrationRecord.of(
                day,
                FleetAssessor.of(BuiltInTypes.registry())
                        .within(LIMITS)
                        .assess(day)
                        .get(0));
    }
}
