package org.gritwright.core.record;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.gritwright.core.Samples.assertRefused;
import static org.gritwright.core.history.Happenings.TWO;
import static org.gritwright.core.history.Happenings.day;
import static org.gritwright.core.history.Happenings.event;
import static org.gritwright.core.history.Happenings.hour;
import static org.gritwright.core.history.Happenings.shown;
import static org.gritwright.core.history.Happenings.value;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.assertj.core.api.InstanceOfAssertFactories;
import org.gritwright.core.Samples;
import org.gritwright.core.calibration.Change;
import org.gritwright.core.document.RejectedDocumentException;
import org.gritwright.core.history.Event;
import org.gritwright.core.history.What;
import org.gritwright.core.observation.Moisture;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

@Tag("jackson")
class WrittenEventTest {
    static Stream<Event> events() {
        Event first = event("1", day("2026-11-20"), new What.Changed(Change.Part.CONVEYOR, Optional.of("new chain")));
        return Stream.of(
                first.by("Avery"),
                event("2", hour("2026-11-20T08:00"), new What.Overwritten("3")),
                event("3", day("2026-11-20"), new What.SetBack()),
                event(
                        "4",
                        day("2026-11-20"),
                        new What.RangeMeasured(
                                Amounts.of(4, SpreadingUnits.REVOLUTION_PER_MINUTE),
                                Amounts.of(58, SpreadingUnits.REVOLUTION_PER_MINUTE))),
                event(
                        "5",
                        day("2026-11-20"),
                        new What.Used(
                                "salt",
                                Optional.of(hour("2026-11-18T22:00")),
                                Optional.of(Amounts.of(5200, SpreadingUnits.REVOLUTION)),
                                Optional.of(Amounts.of(12, SpreadingUnits.REVOLUTION)),
                                Amounts.of(61, SpreadingUnits.SHORT_TON),
                                2)),
                event("6", day("2026-11-20"), What.Used.of("salt", Samples.pounds(0))),
                Event.ofFleet(
                        "7",
                        day("2026-11-03"),
                        new What.Delivered(
                                Samples.SALT,
                                "L-9",
                                Optional.of(new Moisture(
                                        Amounts.of(2, SpreadingUnits.PERCENT),
                                        Amounts.of(1, SpreadingUnits.PERCENT),
                                        Moisture.Basis.WET_MASS))),
                        "tickets"),
                Event.ofFleet("8", day("2026-11-01"), new What.SeasonStarted("2026/27"), "calendar"),
                Event.withdrawing("9", day("2026-11-21"), first, "wrong truck", "workshop"),
                event("10", day("2026-11-20"), new What.Changed(Change.Part.GATE, Optional.empty()))
                        .superseding("1", "it was the gate"));
    }

    private static WrittenEvent read(String text) throws IOException, RejectedDocumentException {
        return Document.FLEET_EVENT.read(new ByteArrayInputStream(text.getBytes(StandardCharsets.UTF_8)));
    }

    @ParameterizedTest
    @MethodSource("events")
    void anEventInOneLineIsTheSame(Event event) throws IOException, RejectedDocumentException {
        WrittenEvent written = WrittenEvent.of(event).orElseThrow();
        String line = Document.FLEET_EVENT.toLine(written);

        assertThat(line)
                .startsWith("{\"format\":\"gritwright/fleet-event\",")
                .endsWith("}")
                .doesNotContain("\n");
        assertThat(read(line)).isEqualTo(written);
    }

    @ParameterizedTest
    @MethodSource("events")
    void anEventThatIsWrittenAndReadIsTheSame(Event event) throws IOException, RejectedDocumentException {
        String text = Document.FLEET_EVENT.toText(WrittenEvent.of(event).orElseThrow());

        assertThat(read(text).event())
                .isEqualTo(event)
                .satisfies(again -> assertThat(again.isSameAs(event)).isTrue());
        assertThat(Document.FLEET_EVENT.toText(read(text))).isEqualTo(text);
        assertThat(SchemaTest.schema(Document.FLEET_EVENT).validate(text, com.networknt.schema.InputFormat.JSON))
                .isEmpty();
    }

    @Test
    void whatARecordTellsIsNotWrittenTwice() {
        assertThat(WrittenEvent.of(shown("1", day("2026-11-20"), value(TWO, 25))))
                .isEmpty();
    }

    @Test
    void anEventSaysOneThing() {
        String two = """
                {"format": "gritwright/fleet-event", "formatVersion": 1, "id": "1", "at": "2026-11-20", "truck": "T-07",
                 "source": "workshop", "changed": {"part": "gate"}, "lost": {}}
                """;
        String none = """
                {"format": "gritwright/fleet-event", "formatVersion": 1, "id": "1", "at": "2026-11-20", "truck": "T-07",
                 "source": "workshop"}
                """;

        assertThatThrownBy(() -> read(two)).hasMessageContaining("2 of them");
        assertThatThrownBy(() -> read(none)).hasMessageContaining("one of changed, lost, drive, used");
    }

    @ParameterizedTest
    @CsvSource({
        "mass, -100 lb, mass that was laid",
        "revolutions, -1 rev, revolutions",
        "unattributed, -1 rev, unattributed revolutions"
    })
    void whatIsNegativeIsToldWhereItStands(String field, String number, String words) {
        Map<String, String> used = new LinkedHashMap<>(Map.of("mass", "100 lb"));
        used.put(field, number);
        String text = """
                {"format": "gritwright/fleet-event", "formatVersion": 1, "id": "1", "at": "2026-11-20", "truck": "T-07",
                 "source": "telemetry", "used": {"material": "salt", %s}}
                """.formatted(used.entrySet().stream()
                .map(one -> "\"" + one.getKey() + "\": \"" + one.getValue() + "\"")
                .collect(Collectors.joining(", ")));

        assertThatThrownBy(() -> read(text))
                .asInstanceOf(InstanceOfAssertFactories.type(RejectedDocumentException.class))
                .satisfies(rejected -> assertThat(rejected.problems())
                        .singleElement()
                        .satisfies(problem -> {
                            assertThat(problem.pointer()).isEqualTo("/used/" + field);
                            assertThat(problem.code()).isEqualTo("negative");
                            assertThat(problem.toString()).contains(words + ": 0 or more, found " + number);
                        }));
    }

    @ParameterizedTest
    @CsvSource({"2026-11-20, 2026-11-21", "2026-11-20T09:00-06:00, 2026-11-20T09:01-06:00"})
    void aSumThatBeginsAfterItsEndIsToldWhereItsBeginningStands(String at, String from) {
        String text = """
                {"format": "gritwright/fleet-event", "formatVersion": 1, "id": "1", "at": "%s", "truck": "T-07",
                 "source": "telemetry", "used": {"material": "salt", "from": "%s", "mass": "100 lb"}}
                """.formatted(at, from);

        assertThatThrownBy(() -> read(text))
                .asInstanceOf(InstanceOfAssertFactories.type(RejectedDocumentException.class))
                .satisfies(rejected -> assertThat(rejected.problems())
                        .singleElement()
                        .satisfies(problem -> {
                            assertThat(problem.pointer()).isEqualTo("/used/from");
                            assertThat(problem.toString())
                                    .contains("beginning of the time that event 1 sums up: not after its end, " + at
                                            + ", found " + from);
                        }));
    }

    @Test
    void aSumThatIsWrittenChecksItself() {
        assertRefused(
                "mass that was laid must be 0 or more: -100 lb",
                () -> new WrittenEvent.Used(
                        "salt",
                        Optional.empty(),
                        Optional.empty(),
                        Optional.empty(),
                        Samples.pounds(-100),
                        Optional.empty()));
    }

    @Test
    void aRepairNamesItsTruckAndASeasonNone() {
        assertRefused(
                "truck of event 1 must be named, as it happened to one: none",
                () -> new WrittenEvent(
                        "1",
                        day("2026-11-20"),
                        Optional.empty(),
                        Optional.empty(),
                        "workshop",
                        Optional.of(new WrittenEvent.Changed(Change.Part.GATE, Optional.empty())),
                        Optional.empty(),
                        Optional.empty(),
                        Optional.empty(),
                        Optional.empty(),
                        Optional.empty(),
                        Optional.empty()));
    }
}
