package org.gritwright.examples.fleetday;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.file.Path;
import org.gritwright.core.document.RejectedDocumentException;
import org.gritwright.core.fleet.assessment.Refusal;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Slips in what is written about gates, openings and control settings: the message names the field, what is accepted and
 * what was found.
 */
class BadSpreaderInputTest {
    private static final ObjectMapper JSON = new ObjectMapper();

    @TempDir
    private Path folder;

    /** Puts a value, written as JSON, at a JSON pointer below a truck; nothing removes the field. */
    private static void put(ObjectNode truck, String pointer, String json) throws IOException {
        int cut = pointer.lastIndexOf('/');
        JsonNode parent = truck.at(pointer.substring(0, cut));
        String field = pointer.substring(cut + 1);
        if (parent instanceof ArrayNode array) {
            array.set(Integer.parseInt(field), JSON.readTree(json));
        } else if (json == null) {
            ((ObjectNode) parent).remove(field);
        } else {
            ((ObjectNode) parent).set(field, JSON.readTree(json));
        }
    }

    /** What doesn't go together or can't be computed with is the truck's trouble: the others are assessed all the same. */
    @ParameterizedTest
    @CsvSource(delimiter = '|', nullValues = "nothing", textBlock = """
            T-20 | /gate/parameters/areas/3         | "100 cm²"            | gate: areas must be not below the one before, 125 cm²: 100 cm²
            T-20 | /gate/parameters/settings/3      | "2"                  | gate: settings must be above the one before, 2: 2
            T-20 | /gate/parameters/areas           | ["0 cm²", "60 cm²"]  | gate: areas must be as many as settings, 7: 2
            T-20 | /gate/parameters/areas           | "60 cm²"             | gate: areas of setting-table must be a list of 2 to 100: one value
            T-20 | /gate/parameters/settings        | ["1"]                | gate: settings of setting-table must be a list of 2 to 100: a list of 1
            T-20 | /gate/parameters/areas/6         | "400 m²"             | gate: areas, value 7 of setting-table must be within 0 m² to 5 m²: 400 m²
            T-17 | /gate/parameters/width           | ["18 in", "19 in"]   | gate: width of sliding-gate must be one value: a list of 2
            T-17 | /gate/parameters/highestOpening  | "3 in"               | catch of 09:54: gate setting must be within 0 in to 3 in: 4 in; catch of 10:03: gate setting must be within 0 in to 3 in: 4 in; catch of 10:12: gate setting must be within 0 in to 3 in: 4 in; calibration in force: gate setting must be within 0 in to 3 in: 4 in
            T-17 | /calibrationCatches/0/setting    | "-1 in"              | catch of 09:00: gate setting must be 0 or more: -1 in
            T-17 | /calibrationCatches/0/setting    | "50 in"              | catch of 09:00: gate setting must be within 0 m to 1 m: 50 in
            T-17 | /inForce/0/setting               | "50 in"              | calibration in force: gate setting must be within 0 m to 1 m: 50 in
            T-17 | /calibrationCatches/0/setting    | "0 in"               | catch of 09:00: gate setting must be one at which the conveyor sweeps a volume: 0 in
            T-17 | /calibrationCatches/0/setting    | nothing              | catch of 09:00: gate setting must be given for gate type sliding-gate, version 1: nothing
            T-20 | /calibrationCatches/0/setting    | "7"                  | catch of 12:00: gate setting must be within 0 to 6: 7
            T-18 | /calibrationCatches/0/setting    | "2 in"               | catch of 13:00: gate setting must be left out for gate type no-gate, version 1: 2 in
            T-15 | /controlSettings/1/setting       | "1"                  | control setting must be above the one before, 2: 1
            T-15 | /controlSettings/1/shaftSpeed    | "60 rev/min"         | loaded shaft speed must be not below the one before, 60 rev/min: 47 rev/min
            T-15 | /controlSettings                 | nothing              | catch of 09:10: count must be in a form that needs no table of control settings, as the drive has none: control setting 4; catch of 09:22: count must be in a form that needs no table of control settings, as the drive has none: control setting 4; catch of 09:34: count must be in a form that needs no table of control settings, as the drive has none: control setting 4
            T-15 | /calibrationCatches/0/counted/setting | "7"             | catch of 09:10: control setting must be within 2 to 6: 7
            T-15 | /pulsesPerRevolution             | "60 pulse/rev"       | control settings must be left out for a drive with a shaft sensor: a table
            """)
    void aTruckIsRefused(String id, String pointer, String json, String refusal)
            throws IOException, RejectedDocumentException {
        FleetResult result = DemoDay.result(day -> {
            try {
                put(DemoDay.truck(day, id), pointer, json);
            } catch (IOException e) {
                throw new AssertionError(e);
            }
        });
        assertThat(result.trucks())
                .filteredOn(truck -> truck.assessment().isRefused())
                .extracting(TruckResult::id)
                .containsExactlyInAnyOrder("T-13", id);
        assertThat(result.trucks())
                .filteredOn(truck -> truck.id().equals(id))
                .first()
                .satisfies(truck -> assertThat(truck.assessment().refusals())
                        .extracting(Refusal::sentence)
                        .containsExactly(refusal.split("; ", -1)));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            T-17 | /calibrationCatches/0/setting | "2 lb"      | gate setting: a height, the number of a painted mark, or a percentage, found "2 lb"
            T-20 | /calibrationCatches/0/setting | "3 s"       | gate setting: a height, the number of a painted mark, or a percentage, found "3 s"
            T-17 | /inForce/0/setting            | "2 lb"      | gate setting: a height, the number of a painted mark, or a percentage, found "2 lb"
            T-17 | /calibrationCatches/0/setting | 2           | a height, the number of a painted mark, or a percentage, for example "2 in", found 2
            T-17 | /curveModel                   | "quadratic" | one of [proportional, dead-opening, table], found "quadratic"
            T-20 | /gate/parameters/areas/3      | 190         | an area with its unit, for example "2 in²", found 190
            T-20 | /gate/parameters/areas/3      | ["1 cm²"]   | an area with its unit, for example "2 in²", found an array
            T-15 | /controlSettings/0            | {"setting": "-2", "shaftSpeed": "12 rev/min"} | control setting: 0 or more, found -2
            """)
    void aDocumentIsRefusedAtItsPlace(String id, String pointer, String json, String problem) throws IOException {
        Path input = DemoDay.write(folder.resolve("bad.json"), day -> {
            try {
                put(DemoDay.only(day, id), pointer, json);
            } catch (IOException e) {
                throw new AssertionError(e);
            }
        });
        Run run = Run.of(input, folder.resolve("output"));
        assertThat(run.exitCode()).isEqualTo(2);
        assertThat(run.err()
                        .replaceAll(" \\(truck T-\\d+, line \\d+, column \\d+\\)", "")
                        .lines())
                .containsExactly(
                        "Reading " + input,
                        input + " can't be used: 1 problem",
                        "  /trucks/0" + pointer + ": expected " + problem);
    }
}
