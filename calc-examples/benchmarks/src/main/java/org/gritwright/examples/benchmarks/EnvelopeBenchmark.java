package org.gritwright.examples.benchmarks;

import java.util.concurrent.TimeUnit;
import org.gritwright.core.envelope.CompiledEnvelope;
import org.gritwright.core.envelope.Envelope;
import org.gritwright.core.range.WorkingRange;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/** A chart of 100 rates by 100 speeds, against a bare loop of the same arithmetic. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Warmup(iterations = 5, time = 1)
@Measurement(iterations = 5, time = 1)
@Fork(2)
public class EnvelopeBenchmark {
    private static final int CELLS = 100;

    private final Envelope envelope = Envelope.of(
            Measured.once(Amounts.of(6, SpreadingUnits.POUND_PER_REVOLUTION)),
            new WorkingRange(
                    Amounts.of(5, SpreadingUnits.REVOLUTION_PER_MINUTE),
                    Amounts.of(50, SpreadingUnits.REVOLUTION_PER_MINUTE)));

    private final double[] rates = new double[CELLS];
    private final double[] speeds = new double[CELLS];
    private final double[] delivered = new double[CELLS * CELLS];
    private final double least = envelope.compiled().leastFlow();
    private final double greatest = envelope.compiled().greatestFlow();

    /** From 0.01 to 0.25 kg/m and 1 to 30 m/s: cells below, within and beyond the range. */
    public EnvelopeBenchmark() {
        for (int i = 0; i < CELLS; i++) {
            rates[i] = 0.01 + 0.0024 * i;
            speeds[i] = 1 + 0.29 * i;
        }
    }

    /**
     * The bare loop.
     *
     * @return the chart
     */
    @Benchmark
    public double[] bareLoop() {
        int cell = 0;
        for (double rate : rates) {
            for (double speed : speeds) {
                delivered[cell++] = Math.max(least, Math.min(greatest, rate * speed)) / speed;
            }
        }
        return delivered;
    }

    /**
     * Compiled and filled.
     *
     * @return the chart
     */
    @Benchmark
    public double[] compiledEnvelope() {
        CompiledEnvelope compiled = envelope.compiled();
        compiled.fill(rates, speeds, delivered);
        return delivered;
    }
}
