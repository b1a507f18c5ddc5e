package org.gritwright.core.record;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.Optional;
import org.gritwright.core.document.DocumentLimits;
import org.gritwright.core.document.Problem;
import org.gritwright.core.document.Problem.Place;
import org.gritwright.core.document.RejectedDocumentException;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** A problem says where it is as an editor counts, whose truck it is, and what may have been meant. */
@Tag("jackson")
@Tag("locale")
class ProblemPlacesTest {
    /** With a character of several bytes on the line of what goes wrong. */
    private static final String GOOD = """
            { "format": "gritwright/fleet-day", "formatVersion": 2,
              "day": "2026-10-19", "seasonStart": "2026-11-01", "tolerance": "4 %",
              "scales": [ { "id": "platform", "capacity": "1000 lb", "division": "0.5 lb" } ],
              "materials": [ { "name": "salt", "looseBulkDensity": "78 lb/ft³", "grainDiameter": "2 mm" } ],
              "trucks": [ { "id": "T-07",
                  "conveyor": { "type": "drag-chain", "version": 1, "parameters": { "teeth": "7", "chainPitch": "2 in" } },
                  "gate": { "type": "sliding-gate", "version": 1, "parameters": { "width": "22 in" } },
                  "gearRatio": "1",
                  "calibrationCatches": [ { "at": "2026-10-19T08:40:00-05:00", "material": "salt", "setting": "2 in",
                      "scale": "platform",
                      "containers": [ { "container": "tarp", "gross": "165.5 lb", "tare": "4 lb" } ],
                      "counted": { "pulses": "356 pulse" }, "primed": true, "coasting": "in-both" } ] } ] }
            """;

    static RejectedDocumentException refusal(String text) {
        RejectedDocumentException refused = catchThrowableOfType(
                RejectedDocumentException.class,
                () -> Document.FLEET_DAY.read(new ByteArrayInputStream(text.getBytes(StandardCharsets.UTF_8))));
        assertThat(refused).as("refusal of %s", text).isNotNull();
        return refused;
    }

    private static RejectedDocumentException changed(String part, String replacement) {
        assertThat(GOOD).contains(part);
        return refusal(GOOD.replace(part, replacement));
    }

    @Test
    void anUnreadableMassHasATruckALineAndAColumn() {
        assertThat(changed("\"165.5 lb\"", "165.5"))
                .hasMessage("/trucks/0/calibrationCatches/0/containers/0/gross (truck T-07, line 11, column 50):"
                        + " expected mass with its unit, for example \"1 lb\", found 165.5");
    }

    @Test
    void columnsCountCharactersAndNotBytes() {
        assertThat(changed("\"2 mm\"", "2").problems())
                .extracting(Problem::place)
                .containsExactly(Optional.of(new Place("", 4, 69)));
    }

    @Test
    void whatIsMissingIsPlacedWhereItBelongs() {
        assertThat(changed(", \"tare\": \"4 lb\"", ""))
                .hasMessage("/trucks/0/calibrationCatches/0/containers/0/tare (truck T-07, line 11, column 27):"
                        + " missing; expected mass with its unit, for example \"1 lb\"");
    }

    private static Optional<Place> placed(String text, String pointer) throws IOException, RejectedDocumentException {
        return Document.FLEET_DAY
                .readPlaced(new ByteArrayInputStream(text.getBytes(StandardCharsets.UTF_8)), DocumentLimits.COMMON)
                .place(pointer);
    }

    /** What only turns out when it is computed with is found in the text as what can't be read is. */
    @Test
    void aDocumentThatWasReadKnowsWhereEverythingStands() throws IOException, RejectedDocumentException {
        assertThat(placed(GOOD, "/trucks/0/calibrationCatches/0/containers/0/gross"))
                .contains(new Place("truck T-07", 11, 50));
        assertThat(placed(GOOD, "/materials/0/grainDiameter")).contains(new Place("", 4, 69));
        assertThat(placed(GOOD, "/trucks/0")).contains(new Place("truck T-07", 5, 15));
        assertThat(placed(GOOD, "")).contains(new Place("", 1, 1));
    }

    @Test
    void whatIsNotThereIsPlacedInWhatItWouldBeIn() throws IOException, RejectedDocumentException {
        assertThat(placed(GOOD, "/trucks/0/calibrationCatches/0/containers/0/a~1b~0c"))
                .contains(new Place("truck T-07", 11, 27));
        assertThat(placed(GOOD, "/trucks/7/id")).contains(new Place("", 5, 3));
        assertThat(placed(GOOD, "/materials/0/01")).contains(new Place("", 4, 18));
    }

    @Test
    void aLongNameOfATruckIsShortened() throws IOException, RejectedDocumentException {
        String fits = "T".repeat(40);

        assertThat(placed(GOOD.replace("T-07", fits), "/trucks/0"))
                .hasValueSatisfying(place -> assertThat(place.subject()).isEqualTo("truck " + fits));
        assertThat(placed(GOOD.replace("T-07", fits + "T"), "/trucks/0"))
                .hasValueSatisfying(place -> assertThat(place.subject()).isEqualTo("truck " + fits + "…"));
    }

    /** As version 1 called it. */
    @Test
    void aPlaceIsThatOfTheDocumentAsItWasWritten() throws IOException, RejectedDocumentException {
        String old = GOOD.replace("\"formatVersion\": 2", "\"formatVersion\": 1")
                .replace("\"setting\": \"2 in\"", "\"opening\": \"2 in\"");
        assertThat(placed(old, "/trucks/0/calibrationCatches/0/setting"))
                .isEqualTo(placed(GOOD, "/trucks/0/calibrationCatches/0/setting"))
                .contains(new Place("truck T-07", 9, 88));
    }

    @Test
    void aRepeatedFieldIsPlacedAtTheSecond() {
        assertThat(changed("\"gearRatio\": \"1\"", "\"gearRatio\": \"1\",\n\"gearRatio\": \"1\"")
                        .problems())
                .extracting(problem -> problem.place().orElseThrow().line())
                .containsExactly(9);
    }

    @ParameterizedTest
    @ValueSource(strings = {"\n", "\r", "\r\n"})
    void linesEndAsInAnyEditor(String end) {
        assertThat(refusal(GOOD.replace("165.5 lb", "165.5").replace("\n", end)).problems())
                .extracting(problem -> problem.place().orElseThrow())
                .containsExactly(new Place("truck T-07", 11, 50));
    }

    /** A parser reads a piece at a time, and a name may begin in one piece and end in the next. */
    @Test
    void farInALongTextPlacesAreRightToo() {
        String truck = GOOD.substring(GOOD.indexOf("{ \"id\": \"T-07\""), GOOD.lastIndexOf("] }"));
        StringBuilder trucks = new StringBuilder(truck);
        for (int i = 0; i < 200; i++) {
            trucks.append(", ").append(truck.replace("T-07", "T-" + (100 + i)).replace("165.5 lb", "165.5 lb/ft³"));
        }
        String text = GOOD.replace(truck, trucks);
        assertThat(refusal(text).problems()).hasSize(200).allSatisfy(problem -> {
            Place place = problem.place().orElseThrow();
            String line = text.lines().toList().get(place.line() - 1);
            assertThat(line.substring(place.column() - 1)).startsWith("\"gross\": \"165.5 lb/ft³\"");
            assertThat(problem.pointer())
                    .startsWith("/trucks/" + (Integer.parseInt(place.subject().substring(8)) - 99) + "/");
        });
        String broken = text.substring(0, text.lastIndexOf(']')) + ", ]" + text.substring(text.lastIndexOf(']') + 1);
        assertThat(refusal(broken).problems()).extracting(Problem::found).containsExactly("an extra comma before ]");
    }

    @Test
    void aTruckWithoutAnIdIsKnownByItsPlaceOnly() {
        assertThat(changed("\"T-07\"", "7").problems())
                .extracting(problem -> problem.place().orElseThrow().subject())
                .containsExactly("");
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            "scales"   | "scale"          | scales
            "gearRatio" | "gearratio"     | gearRatio
            "in-both"  | "in-boht"        | in-both
            "setting"  | "seting"         | setting
            """)
    void whatMayHaveBeenMeantIsSaid(String part, String replacement, String meant) {
        RejectedDocumentException refused = changed(part, replacement);
        assertThat(refused.problems()).extracting(Problem::nearest).contains(Optional.of(meant));
        assertThat(refused.getMessage()).contains("; did you mean \"" + meant + "\"?");
    }

    @Test
    void nothingIsGuessedAtForWhatIsNearToNothing() {
        assertThat(changed("\"gearRatio\"", "\"color\": 1, \"gearRatio\"").problems())
                .extracting(Problem::nearest)
                .containsExactly(Optional.empty());
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            "teeth": "7"            | "teeth": 6        | a number in quotation marks, for example "8"
            "chainPitch": "2 in"    | "chainPitch": 2   | a length with its unit, for example "2 in"
            "width": "22 in"        | "breadth": 22     | a number and a unit, for example "2 in"
            """)
    void theExampleFitsTheParameter(String part, String replacement, String expected) {
        assertThat(changed(part, replacement).problems())
                .extracting(Problem::expected)
                .containsExactly(expected);
    }

    @Test
    void aDayWithoutTrucksIsNone() {
        String empty = GOOD.substring(0, GOOD.indexOf("{ \"id\": \"T-07\"")) + "] }";
        assertThat(refusal(empty)).hasMessage("/trucks (line 5, column 3): expected one truck or more, found none");
    }

    @Test
    void aTruckOfAnOldDocumentIsNamedToo() {
        String old =
                GOOD.replace("\"formatVersion\": 2", "\"formatVersion\": 1").replace("\"setting\"", "\"opening\"");
        assertThat(refusal(old.replace("\"opening\": \"2 in\"", "\"opening\": 2"))
                        .problems())
                .extracting(Problem::pointer, problem -> problem.place().orElseThrow())
                .containsExactly(org.assertj.core.api.Assertions.tuple(
                        "/trucks/0/calibrationCatches/0/opening", new Place("truck T-07", 9, 88)));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '`', textBlock = """
            "4 lb" } ]          | "4 lb", } ]        | 11 | an extra comma before }
            "22 in" } }         | "22 in" }, }       |  7 | an extra comma before }
            in-both" } ]        | in-both" }, ]      | 12 | an extra comma before ]
            "gearRatio": "1",   | "gearRatio": "1",, |  8 | an extra comma before ,
            [ { "container"     | [, { "container"   | 11 | an extra comma after [
            "gearRatio": "1",   | "gearRatio": "1"   |  9 | no comma before this
            "primed": true,     | "primed": true     | 12 | no comma before this
            "gearRatio": "1",   | "gearRatio": ,     |  8 | a colon without a value after it
            "gearRatio": "1",   | "gearRatio" "1",   |  8 | a name without a colon after it; or is a quotation mark missing?
            "salt", "set        | "salt, "set         |  9 | text outside quotation marks; is one missing?
            g": "2 in",         | g": "2 in,         |  9 | the end of a line inside a text; is a quotation mark missing?
            "4 lb"              | 4 lb"              | 11 | text outside quotation marks; is one missing?
            "4 lb"              | 4,5                | 11 | a name without quotation marks; a number has a point and no comma
            "gearRatio"         | gearRatio          |  8 | text outside quotation marks; is one missing?
            true                | yes                | 12 | yes without quotation marks
            true                | 'yes'              | 12 | a quotation mark of another kind than "
            true                | “yes”              | 12 | a quotation mark of another kind than "
            "salt", "set        | “salt”, "set       |  9 | a quotation mark of another kind than "
            "gearRatio"         | // a "gearRatio"   |  8 | a comment, which JSON doesn't have
            "4 lb" } ],         | "4 lb" },          | 12 | a colon after what is no name; is a bracket or a quotation mark missing before it?
            "4 lb" } ],         | "4 lb" ] ],        | 11 | ] where } is missing
            """)
    void aSlipOfAnyoneWhoTypesJsonIsCalledByItsName(String part, String replacement, int line, String found) {
        assertThat(changed(part, replacement).problems()).singleElement().satisfies(problem -> {
            assertThat(problem.code()).isEqualTo("not-json");
            assertThat(problem.found()).isEqualTo(found);
            assertThat(problem.place().orElseThrow().line()).isEqualTo(line);
        });
    }

    @Test
    void aTextThatEndsTooSoonSaysWhatIsOpen() {
        assertThat(refusal(GOOD.substring(0, GOOD.indexOf("\"gearRatio\""))).problems())
                .extracting(Problem::found)
                .containsExactly("the end of the text before what begins at line 5, column 15 is closed");
    }

    @Test
    void theSchemaThatAnEditorAsksForIsReadOver() throws Exception {
        String named = GOOD.replace("{ \"format\"", "{ \"$schema\": \"fleet-day-2.schema.json\", \"format\"");
        assertThat(DocumentLawsTest.read(Document.FLEET_DAY, named))
                .isEqualTo(DocumentLawsTest.read(Document.FLEET_DAY, GOOD));
        assertThat(changed("{ \"format\"", "{ \"$schema\": 2, \"format\"").problems())
                .extracting(Problem::pointer)
                .containsExactly("/$schema");
    }
}
