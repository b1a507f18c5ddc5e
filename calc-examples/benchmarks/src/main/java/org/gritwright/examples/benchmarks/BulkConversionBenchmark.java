package org.gritwright.examples.benchmarks;

import static org.gritwright.units.SpreadingUnits.KILOGRAM_PER_KILOMETER;
import static org.gritwright.units.SpreadingUnits.POUND_PER_MILE;

import java.util.concurrent.TimeUnit;
import org.gritwright.units.Conversion;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OperationsPerInvocation;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/** A million values from lb/mi to kg/km, array to array; nanoseconds a value. */
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.NANOSECONDS)
@OperationsPerInvocation(BulkConversionBenchmark.VALUES)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
@Fork(2)
@State(Scope.Benchmark)
public class BulkConversionBenchmark {
    static final int VALUES = 1_000_000;
    private static final double FACTOR = 0.45359237 / 1.609344;

    private final Conversion conversion = Conversion.between(POUND_PER_MILE, KILOGRAM_PER_KILOMETER);
    private final double[] poundsPerMile = new double[VALUES];
    private final double[] kilogramsPerKilometer = new double[VALUES];

    /** Made by JMH. */
    public BulkConversionBenchmark() {
        for (int i = 0; i < VALUES; i++) {
            poundsPerMile[i] = 100 + i * 0.0007;
        }
    }

    /**
     * The baseline: one multiplication a value, rounded twice.
     *
     * @return the results
     */
    @Benchmark
    public double[] bareMultiplication() {
        for (int i = 0; i < VALUES; i++) {
            kilogramsPerKilometer[i] = poundsPerMile[i] * FACTOR;
        }
        return kilogramsPerKilometer;
    }

    /**
     * The compiled conversion without a look at the results.
     *
     * @return the results
     */
    @Benchmark
    public double[] compiledUnchecked() {
        conversion.convertUnchecked(poundsPerMile, kilogramsPerKilometer);
        return kilogramsPerKilometer;
    }

    /**
     * The compiled conversion with the report of results that are not finite.
     *
     * @return the results
     */
    @Benchmark
    public double[] compiledWithReport() {
        conversion.convert(poundsPerMile, kilogramsPerKilometer);
        return kilogramsPerKilometer;
    }
}
