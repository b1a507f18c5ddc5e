package org.gritwright.examples.telemetry;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.apache.spark.sql.SparkSession;
import org.gritwright.core.calibration.Since;
import org.gritwright.core.record.Document;
import org.gritwright.core.record.WrittenEvent;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;

/**
 * What each truck laid of each material on each day, as indicated, for a fleet's history: a line each, a document of format
 * "gritwright/fleet-event".
 */
final class LaidSums {
    static final String FILE = "laid-sums.jsonl";

    private LaidSums() {}

    static List<TruckDays> of(SparkSession spark, SeasonInput input, ZoneOffset offset)
            throws IOException, BadInputException {
        Map<String, TruckSetup> setups = new TreeMap<>();
        Map<String, SlotMaterials> materials = new TreeMap<>();
        input.plans().forEach((truck, plan) -> {
            TruckSetup setup = plan.asIndicated();
            setups.put(truck, setup);
            materials.put(truck, SlotMaterials.of(plan, setup.shaft().slots()));
        });
        List<FileTotals<TruckDays>> files = new SeasonRows(spark)
                .evaluate(input, setups, new DayPass.Maker(materials, offset))
                .map(file -> new FileTotals<>(file.trucks(), file.unknown()))
                .collect();
        return List.copyOf(FileTotals.byTruck(files).values());
    }

    /** Writes them, and says how many there are. */
    static int write(List<TruckDays> trucks, ZoneOffset offset, Folder folder) throws IOException {
        int lines = 0;
        try (OutputStream out = folder.create(FILE)) {
            for (TruckDays truck : trucks) {
                for (Map.Entry<TruckDays.Key, TruckDays.Sums> day : truck.days().entrySet()) {
                    String line = Document.FLEET_EVENT.toLine(event(truck, day.getKey(), day.getValue(), offset));
                    out.write((line + "\n").getBytes(StandardCharsets.UTF_8));
                    lines++;
                }
            }
        }
        return lines;
    }

    /** A sum says by which offset its day begins: summed again by another, it is seen to be of other hours. */
    static WrittenEvent event(TruckDays truck, TruckDays.Key key, TruckDays.Sums sums, ZoneOffset offset) {
        Since day = Since.of(key.day());
        Since begin = Since.of(key.day().atStartOfDay().atOffset(offset));
        return new WrittenEvent(
                "telemetry " + truck.truck() + " " + key.day() + " " + key.material(),
                day,
                Optional.of(truck.truck()),
                Optional.empty(),
                "telemetry",
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.of(new WrittenEvent.Used(
                        key.material(),
                        Optional.of(begin),
                        Optional.of(Amounts.of(sums.pulses() / truck.pulsesPerTurn(), SpreadingUnits.REVOLUTION)),
                        sums.unattributed() == 0
                                ? Optional.empty()
                                : Optional.of(Amounts.of(
                                        sums.unattributed() / truck.pulsesPerTurn(), SpreadingUnits.REVOLUTION)),
                        Amounts.of(UsUnits.pounds(sums.milligrams()), SpreadingUnits.POUND),
                        Optional.empty())),
                Optional.empty(),
                Optional.empty(),
                Optional.empty());
    }
}
