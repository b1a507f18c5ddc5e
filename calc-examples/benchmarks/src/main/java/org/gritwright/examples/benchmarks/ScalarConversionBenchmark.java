package org.gritwright.examples.benchmarks;

import static org.gritwright.units.SpreadingUnits.KILOGRAM_PER_KILOMETER;
import static org.gritwright.units.SpreadingUnits.POUND_PER_MILE;

import java.util.concurrent.TimeUnit;
import javax.measure.Quantity;
import org.gritwright.units.Amounts;
import org.gritwright.units.Conversion;
import org.gritwright.units.quantity.ApplicationRate;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/** One value from lb/mi to kg/km: a bare multiplication, the compiled conversion, and the quantity's own. */
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.NANOSECONDS)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
@Fork(2)
@State(Scope.Benchmark)
public class ScalarConversionBenchmark {
    private static final double FACTOR = 0.45359237 / 1.609344;

    private final Conversion conversion = Conversion.between(POUND_PER_MILE, KILOGRAM_PER_KILOMETER);
    private final Quantity<ApplicationRate> quantity = Amounts.of(300, POUND_PER_MILE);
    private double poundsPerMile = 300;

    /** Made by JMH. */
    public ScalarConversionBenchmark() {}

    /**
     * The baseline: one multiplication, rounded twice.
     *
     * @return kilograms per kilometer
     */
    @Benchmark
    public double bareMultiplication() {
        return poundsPerMile * FACTOR;
    }

    /**
     * The compiled conversion with its check.
     *
     * @return kilograms per kilometer
     */
    @Benchmark
    public double compiledConversion() {
        return conversion.convert(poundsPerMile);
    }

    /**
     * JSR 385's conversion of a quantity.
     *
     * @return the converted quantity
     */
    @Benchmark
    public Quantity<ApplicationRate> quantityTo() {
        return quantity.to(KILOGRAM_PER_KILOMETER);
    }
}
