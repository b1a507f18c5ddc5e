package org.gritwright.examples.benchmarks;

import java.util.Map;
import java.util.concurrent.TimeUnit;
import org.gritwright.core.metering.BuiltInTypes;
import org.gritwright.core.metering.FlowMeter;
import org.gritwright.core.metering.Pump;
import org.gritwright.core.spi.TypeId;
import org.gritwright.core.spi.TypeRegistry;
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
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/**
 * The rates in 10 000 rows of a truck's log, each of pulses or revolutions, seconds and meters: by a flow meter and by a pump, which
 * are asked in each row for the volume at its flow or speed, against a bare loop with one volume; nanoseconds a row.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.NANOSECONDS)
@OperationsPerInvocation(LiquidRowBenchmark.ROWS)
@Warmup(iterations = 5, time = 1)
@Measurement(iterations = 5, time = 1)
@Fork(2)
public class LiquidRowBenchmark {
    static final int ROWS = 10_000;
    private static final TypeRegistry TYPES = BuiltInTypes.registry();

    private final FlowMeter meter = FlowMeter.of(
            TYPES, TypeId.of("k-factor", 1), Map.of("kFactor", Amounts.of(1200, SpreadingUnits.PULSE_PER_US_GALLON)));
    private final Pump pump = Pump.of(
            TYPES,
            TypeId.of("displacement-pump", 1),
            Map.of("displacement", Amounts.of(3.15, SpreadingUnits.MILLILITER_PER_REVOLUTION)));

    private final double[] counts = new double[ROWS];
    private final double[] seconds = new double[ROWS];
    private final double[] meters = new double[ROWS];
    private final double[] rates = new double[ROWS];
    private final double cubicMeters = meter.cubicMetersPerPulse();

    /** From 100 to 600 counts in a second or two, over 5 to 40 m. */
    public LiquidRowBenchmark() {
        for (int i = 0; i < ROWS; i++) {
            counts[i] = 100 + i % 501;
            seconds[i] = 1 + i % 2;
            meters[i] = 5 + 0.0035 * i;
        }
    }

    /**
     * The bare loop.
     *
     * @return the rates, m³/m
     */
    @Benchmark
    public double[] bareLoop() {
        for (int i = 0; i < ROWS; i++) {
            rates[i] = counts[i] * cubicMeters / meters[i];
        }
        return rates;
    }

    /**
     * By the flow meter: what a pulse means at the row's flow.
     *
     * @return the rates, m³/m
     */
    @Benchmark
    public double[] byFlowMeter() {
        double nominal = meter.cubicMetersPerPulse();
        for (int i = 0; i < ROWS; i++) {
            double perPulse = meter.cubicMetersPerPulse(counts[i] * nominal / seconds[i]);
            rates[i] = counts[i] * perPulse / meters[i];
        }
        return rates;
    }

    /**
     * By the pump: what a revolution gives at the row's shaft speed.
     *
     * @return the rates, m³/m
     */
    @Benchmark
    public double[] byPump() {
        for (int i = 0; i < ROWS; i++) {
            rates[i] = counts[i] * pump.cubicMetersPerRevolution(counts[i] / seconds[i]) / meters[i];
        }
        return rates;
    }
}
