package org.gritwright.examples.benchmarks;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.gritwright.core.document.DocumentLimits;
import org.gritwright.core.document.RejectedDocumentException;
import org.gritwright.core.fleet.assessment.FleetAssessor;
import org.gritwright.core.fleet.assessment.TruckAssessment;
import org.gritwright.core.fleet.day.FleetDay;
import org.gritwright.core.fleet.day.TruckDay;
import org.gritwright.core.metering.BuiltInTypes;
import org.gritwright.core.record.Document;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/** A fleet day of 10 000 trucks from JSON to results in memory; the first run of a fresh JVM and later ones. */
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@State(Scope.Benchmark)
public class FleetDayBenchmark {
    private static final int TRUCKS = 10_000;

    /** So many trucks have more values than the common limits allow. */
    private static final DocumentLimits LIMITS =
            new DocumentLimits(256 << 20, 16, 5_000_000, 10_000, 200, 1000, 1_000_000);

    private byte[] json;

    /** Made by JMH. */
    public FleetDayBenchmark() {}

    /**
     * Copies one truck's day, three calibration catches and a verification catch of four containers each, under 10 000
     * names.
     *
     * @throws IOException if the example can't be read
     * @throws RejectedDocumentException if the example can't be used
     */
    @Setup
    public void writeManyTrucks() throws IOException, RejectedDocumentException {
        try (InputStream in = FleetDayBenchmark.class.getResourceAsStream("one-truck.json")) {
            FleetDay day = Document.FLEET_DAY.read(in);
            List<TruckDay> trucks = new ArrayList<>();
            for (int i = 0; i < TRUCKS; i++) {
                trucks.add(day.trucks().get(0).id("T-" + i));
            }
            FleetDay many = day.withTrucks(trucks);
            ByteArrayOutputStream out = new ByteArrayOutputStream();
            Document.FLEET_DAY.write(many, out, LIMITS);
            json = out.toByteArray();
        }
    }

    /**
     * The first run of a fresh JVM, nothing compiled yet.
     *
     * @return the assessments
     * @throws IOException if the bytes can't be read
     * @throws RejectedDocumentException if the document can't be used
     */
    @Benchmark
    @BenchmarkMode(Mode.SingleShotTime)
    @Warmup(iterations = 0)
    @Measurement(iterations = 1)
    @Fork(5)
    public List<TruckAssessment> firstRun() throws IOException, RejectedDocumentException {
        return assess();
    }

    /**
     * A run of a JVM that has been running.
     *
     * @return the assessments
     * @throws IOException if the bytes can't be read
     * @throws RejectedDocumentException if the document can't be used
     */
    @Benchmark
    @BenchmarkMode(Mode.AverageTime)
    @Warmup(iterations = 3, time = 3)
    @Measurement(iterations = 3, time = 3)
    @Fork(1)
    public List<TruckAssessment> laterRun() throws IOException, RejectedDocumentException {
        return assess();
    }

    private List<TruckAssessment> assess() throws IOException, RejectedDocumentException {
        FleetDay day = Document.FLEET_DAY.read(new ByteArrayInputStream(json), LIMITS);
        return FleetAssessor.of(BuiltInTypes.registry()).assess(day);
    }
}
