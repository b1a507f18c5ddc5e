package org.gritwright.core.record;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import org.gritwright.core.document.Problem;
import org.gritwright.core.document.ProblemCode;
import org.gritwright.core.document.RejectedDocumentException;
import org.gritwright.core.fleet.day.FleetDay;
import org.gritwright.core.fleet.day.TruckDay;
import org.gritwright.core.metering.Metering;
import org.gritwright.core.observation.Material;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Which of three things meters on a truck, and which of two things a material is, told by their fields. */
class MeteringInDocumentTest {
    private static final String SALT = "{\"name\": \"salt\", \"looseBulkDensity\": \"78 lb/ft³\"}";
    private static final String CONVEYOR = "\"conveyor\": {\"type\": \"auger\", \"version\": 1}";
    private static final String GATE = "\"gate\": {\"type\": \"no-gate\", \"version\": 1}";
    private static final String PUMP = "\"pump\": {\"type\": \"gear-pump\", \"version\": 1}";
    private static final String METER = "\"flowMeter\": {\"type\": \"k-factor\", \"version\": 1}";
    private static final String BOOM = "\"boom\": {\"control\": \"flow\"}";
    private static final String GEAR = "\"gearRatio\": \"1\"";

    private static FleetDay read(String material, String... trucks) throws RejectedDocumentException {
        String text = """
                {"format": "gritwright/fleet-day", "formatVersion": 2, "day": "2026-10-19", "seasonStart": "2026-11-01",
                 "tolerance": "4 %%", "scales": [], "materials": [%s], "trucks": [%s]}""".formatted(material, String.join(", ", trucks));
        try {
            return Document.FLEET_DAY.read(new ByteArrayInputStream(text.getBytes(StandardCharsets.UTF_8)));
        } catch (IOException e) {
            throw new AssertionError(e);
        }
    }

    private static String truck(String id, String... fields) {
        return "{\"id\": \"" + id + "\", " + String.join(", ", fields) + "}";
    }

    private static List<Problem> problems(String material, String... trucks) {
        return catchThrowableOfType(RejectedDocumentException.class, () -> read(material, trucks))
                .problems();
    }

    private static List<String> places(List<Problem> problems, ProblemCode code) {
        return problems.stream()
                .filter(one -> one.code().equals(code.id()))
                .map(Problem::pointer)
                .toList();
    }

    @Test
    void eachOfThreeIsReadAsItself() throws RejectedDocumentException {
        FleetDay day = read(
                SALT, truck("T", CONVEYOR, GATE, GEAR), truck("P", PUMP, GEAR, "\"wets\": \"T\""), truck("M", METER));

        assertThat(day.trucks())
                .extracting(one -> one.spreader().kind())
                .containsExactly(Metering.Kind.CONVEYOR, Metering.Kind.PUMP, Metering.Kind.FLOW_METER);
        assertThat(day.trucks()).extracting(one -> one.wets().orElse("")).containsExactly("", "T", "");
        assertThat(day.trucks().stream()
                        .map(TruckDay::spreader)
                        .map(one -> one.machine().type()))
                .containsExactly("auger", "gear-pump", "k-factor");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            nullValues = "-",
            value = {
                "-                                | -    | -     | /trucks/0/conveyor /trucks/0/gate /trucks/0/gearRatio",
                "conveyor                         | -    | -     | /trucks/0/gate /trucks/0/gearRatio",
                "gate                             | -    | gear  | /trucks/0/conveyor",
                "-                                | pump | -     | /trucks/0/gearRatio"
            })
    void whatIsMissingIsNamed(String spreader, String liquid, String gear, String places) {
        List<String> fields = new ArrayList<>(List.of("\"notes\": \"any\""));
        if ("conveyor".equals(spreader)) {
            fields.add(CONVEYOR);
        }
        if ("gate".equals(spreader)) {
            fields.add(GATE);
        }
        if (liquid != null) {
            fields.add(PUMP);
        }
        if (gear != null) {
            fields.add(GEAR);
        }

        List<Problem> problems = problems(SALT, truck("T", fields.toArray(String[]::new)));

        assertThat(places(problems, ProblemCode.MISSING_FIELD)).containsExactly(places.split(" "));
        assertThat(problems).hasSize(places.split(" ").length);
    }

    @Test
    void whatBelongsToAnotherMachineIsRefusedWhereItStands() {
        assertThat(places(
                        problems(SALT, truck("P", PUMP, METER, CONVEYOR, GATE, GEAR, "\"gateReading\": \"0.1 in\"")),
                        ProblemCode.NOT_ACCEPTED))
                .containsExactlyInAnyOrder(
                        "/trucks/0/conveyor", "/trucks/0/gate", "/trucks/0/gateReading", "/trucks/0/flowMeter");
        assertThat(places(
                        problems(
                                SALT,
                                truck(
                                        "M",
                                        METER,
                                        GEAR,
                                        "\"pulsesPerRevolution\": \"60 pulse/rev\"",
                                        "\"controlSettings\": [{\"setting\": \"3\", \"shaftSpeed\": \"12 rev/min\"}]")),
                        ProblemCode.NOT_ACCEPTED))
                .containsExactlyInAnyOrder(
                        "/trucks/0/pulsesPerRevolution", "/trucks/0/gearRatio", "/trucks/0/controlSettings");
        assertThat(places(
                        problems(SALT, truck("T", CONVEYOR, GATE, GEAR, "\"wets\": \"T\"")), ProblemCode.NOT_ACCEPTED))
                .containsExactly("/trucks/0/wets");
        assertThat(places(problems(SALT, truck("T", CONVEYOR, GATE, GEAR, BOOM)), ProblemCode.NOT_ACCEPTED))
                .containsExactly("/trucks/0/boom");
    }

    @Test
    void aRefusedFieldIsToldBesideWhatItStands() {
        assertThat(problems(SALT, truck("P", PUMP, GEAR, GATE)))
                .extracting(Problem::expected)
                .containsExactly("no such field beside a truck with a pump");
        assertThat(problems(SALT, truck("M", METER, GATE)))
                .extracting(Problem::expected)
                .containsExactly("no such field beside a truck with a flow meter");
    }

    @Test
    void wetsNamesAConveyorOfTheDay() throws RejectedDocumentException {
        assertThat(problems(SALT, truck("T", CONVEYOR, GATE, GEAR), truck("M", METER, "\"wets\": \"M\"")))
                .singleElement()
                .satisfies(one -> assertThat(one.pointer()).isEqualTo("/trucks/1/wets"));
        // Its conveyor has a record of its own.
        assertThat(read(SALT, truck("M", METER, "\"wets\": \"T\"")).trucks()).hasSize(1);
    }

    @Test
    void aMaterialIsGranularOrALiquid() throws RejectedDocumentException {
        Material brine = read(
                        "{\"name\": \"brine\", \"density\": \"9.82 lb/gal\", \"chemical\": \"23.3 %\"}",
                        truck("M", METER))
                .materials()
                .get(0);
        assertThat(brine.isLiquid()).isTrue();
        assertThat(brine.chemical()).isPresent();
        assertThat(read(SALT, truck("M", METER)).materials().get(0).isLiquid()).isFalse();

        assertThat(places(problems("{\"name\": \"brine\"}", truck("M", METER)), ProblemCode.MISSING_FIELD))
                .containsExactly("/materials/0/looseBulkDensity");
        assertThat(problems(
                        "{\"name\": \"brine\", \"density\": \"9.82 lb/gal\", \"looseBulkDensity\": \"78 lb/ft³\"}",
                        truck("M", METER)))
                .singleElement()
                .satisfies(one -> assertThat(one.toString())
                        .contains("/materials/0", "one with looseBulkDensity, or a liquid with density"));
    }
}
