package org.gritwright.core.record;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.tuple;
import static org.gritwright.core.json.Codecs.TEXT;
import static org.gritwright.core.json.Codecs.listOf;
import static org.gritwright.core.json.Field.optional;
import static org.gritwright.core.json.Field.required;
import static org.gritwright.core.json.ObjectCodec.object;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import javax.measure.Quantity;
import javax.measure.quantity.Mass;
import org.gritwright.core.document.DocumentLimits;
import org.gritwright.core.document.Problem;
import org.gritwright.core.document.RejectedDocumentException;
import org.gritwright.core.json.Codecs;
import org.gritwright.core.json.DocumentRefusals;
import org.gritwright.core.json.JsonNode;
import org.gritwright.core.json.Migrating;
import org.gritwright.core.json.Migration;
import org.gritwright.core.json.ObjectCodec;
import org.gritwright.core.json.Schema;
import org.gritwright.units.Amounts;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Versions and migrations, shown by a small format of which there were two versions before: version 1 had one sender and
 * called a mass "heft", version 2 called it "weight", version 3.1 has several senders and may have a note.
 */
@Tag("jackson")
class DocumentVersionsTest {
    private record Parcel(String name, Quantity<Mass> mass) {}

    private record Parcels(List<String> senders, List<Parcel> parcels, Optional<String> note) {}

    private static final ObjectCodec<Parcel> PARCEL =
            object("parcel", Parcel.class, required("name", TEXT), required("mass", Codecs.quantity(Mass.class)));

    private static final ObjectCodec<Parcels> PARCELS = object(
            "parcels",
            Parcels.class,
            required("senders", listOf(TEXT)),
            required("parcels", listOf(PARCEL)),
            optional("note", TEXT));

    private static final Document<Parcels> FORMAT = new Document<>(
            "test/parcels",
            1,
            PARCELS,
            List.of(
                    Migration.from(
                            "parcels-1",
                            1,
                            (root, migrating) -> migrating
                                    .objects(root, "parcels")
                                    .forEach(parcel -> migrating.rename(parcel, "heft", "weight"))),
                    Migration.from("parcels-2", 0, DocumentVersionsTest::fromTwoToThree)));

    private static void fromTwoToThree(JsonNode.ObjectNode root, Migrating migrating) {
        JsonNode sender = root.fields().remove("sender");
        if (Schema.text("anyone").equals(sender)) {
            migrating.refuse(sender, "a sender by name");
        }
        Stream<JsonNode> senders = Stream.ofNullable(sender);
        root.fields().put("senders", new JsonNode.ArrayNode(new ArrayList<>(senders.toList())));
        migrating.objects(root, "parcels").forEach(parcel -> migrating.rename(parcel, "weight", "mass"));
    }

    private static final Parcels TWO = new Parcels(
            List.of("yard 2"),
            List.of(new Parcel("bolts", mass("4 lb")), new Parcel("chain", mass("11 kg"))),
            Optional.empty());

    private static final String VERSION_1 = """
        {"format": "test/parcels", "formatVersion": 1, "sender": "yard 2",
         "parcels": [{"name": "bolts", "heft": "4 lb"}, {"name": "chain", "heft": "11 kg"}]}\
        """;

    private static final String VERSION_2 = VERSION_1.replace("heft", "weight").replace("n\": 1", "n\": 2");

    private static final String VERSION_3 = VERSION_1
            .replace("heft", "mass")
            .replace("\"sender\": \"yard 2\"", "\"senders\": [\"yard 2\"]")
            .replace("n\": 1", "n\": 3");

    private static Quantity<Mass> mass(String text) {
        return Amounts.parse(Mass.class, text);
    }

    private static Parcels read(String text) throws IOException, RejectedDocumentException {
        return FORMAT.read(new ByteArrayInputStream(text.getBytes(StandardCharsets.UTF_8)), DocumentLimits.COMMON);
    }

    private static List<Problem> problems(String text) {
        RejectedDocumentException refused = catchThrowableOfType(RejectedDocumentException.class, () -> read(text));
        assertThat(refused).as("refusal of %s", text).isNotNull();
        return DocumentRefusals.withoutPlaces(refused);
    }

    private static String changed(String text, String part, String replacement) {
        assertThat(text).contains(part);
        return text.replace(part, replacement);
    }

    @Test
    void everyVersionIsReadAsTheNewest() throws IOException, RejectedDocumentException {
        assertThat(read(VERSION_1)).isEqualTo(TWO);
        assertThat(read(VERSION_2)).isEqualTo(TWO);
        assertThat(read(VERSION_3)).isEqualTo(TWO);
    }

    @Test
    void theNumberOfMigrationsGivesTheVersion() {
        assertThat(FORMAT.version()).isEqualTo(3);
        assertThat(FORMAT.minorVersion()).isEqualTo(1);
    }

    @Test
    void theVersionIsWrittenWithItsMinorVersion() throws IOException, RejectedDocumentException {
        String text = FORMAT.toText(TWO);
        assertThat(text).startsWith("""
            {
              "format": "test/parcels",
              "formatVersion": 3,
              "formatMinor": 1,
              "senders": [
            """);
        assertThat(read(text)).isEqualTo(TWO);
    }

    @Test
    void minorVersionZeroIsWrittenByLeavingItOut() {
        Document<Parcels> first = new Document<>("test/parcels", 0, PARCELS, List.of());
        assertThat(first.toText(TWO)).startsWith("""
            {
              "format": "test/parcels",
              "formatVersion": 1,
              "senders": [
            """);
        assertThat(first.schema()).doesNotContain("formatMinor").contains("\"title\": \"test/parcels, version 1\"");
    }

    @Test
    void theSchemaNamesTheMinorVersionsThatItIsGoodFor() {
        assertThat(FORMAT.schema())
                .contains("\"title\": \"test/parcels, version 3.1\"")
                .contains("""
                        "formatMinor": {
                          "type": "integer",
                          "minimum": 0,
                          "maximum": 1
                        },
                    """);
    }

    @ParameterizedTest
    @CsvSource({"0", "1"})
    void allMinorVersionsUpToTheNewestAreRead(int minor) throws IOException, RejectedDocumentException {
        assertThat(read(changed(VERSION_3, "n\": 3", "n\": 3, \"formatMinor\": " + minor)))
                .isEqualTo(TWO);
        assertThat(read(changed(VERSION_1, "n\": 1", "n\": 1, \"formatMinor\": " + minor)))
                .isEqualTo(TWO);
    }

    @ParameterizedTest
    @CsvSource({
        "3, 2, /formatMinor, version 3.1 or less, version 3.2",
        "4, 0, /formatVersion, version 3.1 or less, version 4",
        "4, 7, /formatVersion, version 3.1 or less, version 4.7",
        "2, 1, /formatMinor, version 2 or less, version 2.1",
        "1, 2, /formatMinor, version 1.1 or less, version 1.2"
    })
    void aNewerDocumentSaysWhichVersionItIsAndThatItNeedsANewerLibrary(
            int version, int minor, String pointer, String expected, String found) {
        String header = "n\": " + version + ", \"formatMinor\": " + minor + ", \"color\": 1";
        assertThat(problems(changed(VERSION_3, "n\": 3", header)))
                .containsExactly(new Problem(
                        "newer-version", pointer, expected, found + ", which needs a newer version of this library"));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
        "test/parcels"                    | "other"                            | wrong-format  | /format
        "format": "test/parcels",         | "formatMinor": 0,                  | missing-field | /format
        , "formatVersion": 3              | , "formatMinor": 0                 | missing-field | /formatVersion
        "formatVersion": 3                | "formatVersion": "3"               | wrong-type    | /formatVersion
        "formatVersion": 3                | "formatVersion": 3.1               | wrong-type    | /formatVersion
        "formatVersion": 3                | "formatVersion": 0                 | wrong-type    | /formatVersion
        "formatVersion": 3                | "formatVersion": 3, "formatMinor": -1   | wrong-type | /formatMinor
        "formatVersion": 3                | "formatVersion": 3, "formatMinor": null | wrong-type | /formatMinor
        """)
    void aHeaderThatCannotBeUsedIsTheOnlyProblem(String part, String replacement, String code, String pointer) {
        assertThat(problems(changed(changed(VERSION_3, part, replacement), "4 lb", "4 in")))
                .extracting(Problem::code, Problem::pointer)
                .containsExactly(tuple(code, pointer));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
        "11 kg"          | 11                | wrong-type    | /parcels/1/heft
        , "heft": "11 kg" | ''               | missing-field | /parcels/1/heft
        "heft": "11 kg"  | "mass": "11 kg"   | unknown-field | /parcels/1/mass
        "sender"         | "note": "x", "sender" | unknown-field | /note
        "yard 2"         | 2                 | wrong-type    | /sender
        "yard 2"         | "anyone"          | not-accepted  | /sender
        {"name": "chain", "heft": "11 kg"} | "chain" | wrong-type | /parcels/1
        """)
    void aProblemOfAnOldDocumentStandsWhereItWasWritten(String part, String replacement, String code, String pointer) {
        assertThat(problems(changed(VERSION_1, part, replacement.equals("''") ? "" : replacement)))
                .extracting(Problem::code, Problem::pointer)
                .contains(tuple(code, pointer))
                .allMatch(problem -> problem.toList().get(1).toString().startsWith(pointer)
                        || problem.toList().get(0).equals("missing-field"));
    }

    @Test
    void anUnknownFieldOfAnOldDocumentIsNamedOnceWithTheFieldsThatItsVersionHad() {
        assertThat(problems(changed(VERSION_1, "\"heft\": \"4 lb\"", "\"heft\": \"4 lb\", \"color\": \"red\"")))
                .containsExactly(
                        new Problem("unknown-field", "/parcels/0/color", "one of the fields name, heft", "\"color\""));
    }

    @Test
    void aMigrationNeedsTheSchemaOfItsVersion() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Migration.from("parcels-9", 0, (root, migrating) -> {}))
                .withMessage("there is no /META-INF/schemas/parcels-9.schema.json");
    }
}
