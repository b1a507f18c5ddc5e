package org.gritwright.examples.embedding;

import static org.gritwright.units.SpreadingUnits.INCH;
import static org.gritwright.units.SpreadingUnits.PERCENT;
import static org.gritwright.units.SpreadingUnits.POUND;
import static org.gritwright.units.SpreadingUnits.POUND_PER_CUBIC_FOOT;
import static org.gritwright.units.SpreadingUnits.POUND_PER_REVOLUTION;
import static org.gritwright.units.SpreadingUnits.PULSE;
import static org.gritwright.units.SpreadingUnits.PULSE_PER_REVOLUTION;
import static org.gritwright.units.SpreadingUnits.REVOLUTION_PER_MINUTE;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.format.DateTimeParseException;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import javax.measure.quantity.Mass;
import org.gritwright.core.calibration.CalibrationFactor;
import org.gritwright.core.calibration.CalibrationInForce;
import org.gritwright.core.metering.Auger;
import org.gritwright.core.metering.Conveyor;
import org.gritwright.core.metering.Gate;
import org.gritwright.core.metering.NoGate;
import org.gritwright.core.metering.ShaftSensor;
import org.gritwright.core.metering.Spreader;
import org.gritwright.core.observation.CalibrationPoint;
import org.gritwright.core.observation.Material;
import org.gritwright.core.spi.Setting;
import org.gritwright.core.telemetry.Counter;
import org.gritwright.core.telemetry.RowEvaluator;
import org.gritwright.core.telemetry.RowState;
import org.gritwright.core.telemetry.RowStatus;
import org.gritwright.core.telemetry.RowSums;
import org.gritwright.core.telemetry.SharedError;
import org.gritwright.core.telemetry.Timeline;
import org.gritwright.core.telemetry.TimelineEntry;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.Amounts;
import org.gritwright.units.Rounded;

/** A truck's day from a CSV file with the columns time, shaft_pulse, mode: what it laid, and which rows can't be counted. */
public final class TruckDayCsv {
    private static final String HEADER = "time,shaft_pulse,mode";

    private TruckDayCsv() {}

    /**
     * Prints what the truck laid.
     *
     * @param arguments the file
     * @throws IOException if it can't be read; it says in which line
     */
    public static void main(String[] arguments) throws IOException {
        System.out.println(laid(Path.of(arguments[0])));
    }

    static String laid(Path csv) throws IOException {
        CalibrationPoint point = CalibrationPoint.of(
                Material.of("road salt", Amounts.of(78, POUND_PER_CUBIC_FOOT)),
                new Spreader(
                        Conveyor.of(
                                new Auger(),
                                Map.of(
                                        "screwDiameter", Amounts.of(6, INCH),
                                        "shaftDiameter", Amounts.of(1.5, INCH),
                                        "pitch", Amounts.of(5, INCH))),
                        Gate.of(new NoGate(), Map.of()),
                        ShaftSensor.of(Amounts.of(60, PULSE_PER_REVOLUTION))),
                Setting.none());
        Instant entered = Instant.parse("2026-10-19T15:30:00Z");
        CalibrationInForce value = CalibrationInForce.of(
                point, CalibrationFactor.of(Amounts.of(5.85, POUND_PER_REVOLUTION)), Optional.empty());
        Timeline timeline = Timeline.of(List.of(TimelineEntry.value(entered, value)
                .withErrors(List.of(new SharedError("calibration", Amounts.of(0.6, PERCENT))))));
        Counter counter = Counter.ofShaft(Amounts.of(60, PULSE_PER_REVOLUTION), Amounts.of(60, REVOLUTION_PER_MINUTE))
                .rollingOverAt(Amounts.of(65_536, PULSE));
        RowEvaluator evaluator = RowEvaluator.compile(timeline, counter, entered, entered.plusSeconds(180L * 86_400));

        RowState state = evaluator.start();
        RowSums sums = evaluator.sums();
        List<String> lines = Files.readAllLines(csv);
        // Columns in another order could be read too, and would lay something else.
        if (lines.isEmpty() || !lines.get(0).matches("\\uFEFF?" + HEADER + "(,.*)?")) {
            throw new IOException(csv + ", line 1: must be " + HEADER);
        }
        for (int i = 1; i < lines.size(); i++) {
            String[] cells = lines.get(i).split(",", -1);
            try {
                evaluator.step(
                        state,
                        sums,
                        Instant.parse(cells[0]).toEpochMilli(),
                        Long.parseLong(cells[1]),
                        Double.NaN,
                        0,
                        Integer.parseInt(cells[2]));
            } catch (DateTimeParseException | NumberFormatException | ArrayIndexOutOfBoundsException e) {
                throw new IOException(
                        csv + ", line " + (i + 1) + ": must be like 2026-11-24T11:00:00Z,65200,0: " + lines.get(i), e);
            }
        }
        Measured<Mass> laid = evaluator.total(sums).mass(POUND);
        return "laid " + Rounded.text(laid.value(), 4) + " ± "
                + Rounded.text(laid.expandedUncertainty(0.95).orElseThrow(), 2) + " (95 %); rows: "
                + Stream.of(RowStatus.values())
                        .filter(status -> sums.rows(status) > 0)
                        .map(status -> sums.rows(status) + " " + status.words())
                        .collect(Collectors.joining(", "))
                + "; " + sums.unattributed() + " pulse that nobody can attribute";
    }
}
