package org.gritwright.examples.benchmarks;

import static org.gritwright.units.SpreadingUnits.POUND_PER_MILE;

import java.util.Arrays;
import java.util.concurrent.TimeUnit;
import java.util.stream.IntStream;
import javax.measure.Quantity;
import org.gritwright.units.Amounts;
import org.gritwright.units.quantity.ApplicationRate;
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

/** Computed amounts, which have 16 or 17 digits, as text: by Java, with the unit put behind it, and with the fewest digits that read back. */
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.NANOSECONDS)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
@Fork(2)
@State(Scope.Benchmark)
public class PrintingBenchmark {
    private static final int VALUES = 1000;

    private final double[] values =
            IntStream.rangeClosed(1, VALUES).mapToDouble(i -> 300 + 1.0 / i).toArray();
    private final Quantity<?>[] rates = Arrays.stream(values)
            .<Quantity<ApplicationRate>>mapToObj(value -> Amounts.of(value, POUND_PER_MILE))
            .toArray(Quantity<?>[]::new);

    /** Made by JMH. */
    public PrintingBenchmark() {}

    /**
     * The baseline: Java's own text, which may be longer than it takes.
     *
     * @return all characters
     */
    @Benchmark
    @OperationsPerInvocation(VALUES)
    public int javaToString() {
        int length = 0;
        for (double value : values) {
            length += (value + " lb/mi").length();
        }
        return length;
    }

    /**
     * The amount with its unit's symbol.
     *
     * @return all characters
     */
    @Benchmark
    @OperationsPerInvocation(VALUES)
    public int format() {
        int length = 0;
        for (Quantity<?> rate : rates) {
            length += Amounts.format(rate).length();
        }
        return length;
    }
}
