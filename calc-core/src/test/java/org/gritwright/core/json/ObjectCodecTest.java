package org.gritwright.core.json;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.gritwright.core.json.Codecs.TEXT;
import static org.gritwright.core.json.Codecs.quantity;
import static org.gritwright.core.json.Field.inlined;
import static org.gritwright.core.json.Field.list;
import static org.gritwright.core.json.Field.optional;
import static org.gritwright.core.json.Field.required;
import static org.gritwright.core.json.Field.withDefault;
import static org.gritwright.core.json.ObjectCodec.object;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import javax.measure.quantity.Mass;
import org.gritwright.core.document.DocumentLimits;
import org.gritwright.core.document.Problem;
import org.gritwright.core.document.RejectedDocumentException;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;

@Tag("jackson")
class ObjectCodecTest {
    private static final Codec<Quantity<Mass>> MASS = quantity(Mass.class);
    private static final Codec<Quantity<Length>> LENGTH = quantity(Length.class);

    private record Pail(String id, Quantity<Mass> tare, Optional<Quantity<Mass>> gross) {
        Pail {
            if (id.equals("none")) {
                throw new InvalidInputException("pail", "a real one", id);
            }
        }
    }

    private record Shelf(boolean locked, Pail first, List<String> labels, int boards) {}

    private static final ObjectCodec<Pail> PAIL = object(
            "pail",
            Pail.class,
            optional("gross", MASS).last(),
            required("emptyMass", MASS).component("tare"),
            required("id", TEXT));

    private static final ObjectCodec<Shelf> SHELF = object(
            "shelf",
            Shelf.class,
            inlined("first", PAIL),
            withDefault("boards", Codecs.COUNT, 2),
            required("locked", Codecs.BOOLEAN),
            list("labels", TEXT));

    private static final Shelf FULL =
            new Shelf(true, new Pail("P-1", mass("4 lb"), Optional.of(mass("165.5 lb"))), List.of("salt", "yard 2"), 3);

    private static final String FULL_TEXT = """
        {
          "emptyMass": "4 lb",
          "id": "P-1",
          "boards": "3",
          "locked": true,
          "labels": [
            "salt",
            "yard 2"
          ],
          "gross": "165.5 lb"
        }
        """;

    private static Quantity<Mass> mass(String text) {
        return Amounts.parse(Mass.class, text);
    }

    private static String write(Shelf shelf) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        JsonText.write(SHELF.write(shelf), out);
        return out.toString(StandardCharsets.UTF_8);
    }

    private static Shelf read(String text) throws IOException, RejectedDocumentException {
        Problems problems = new Problems(DocumentLimits.COMMON);
        JsonNode node = JsonText.read(
                new ByteArrayInputStream(text.getBytes(StandardCharsets.UTF_8)), DocumentLimits.COMMON, problems);
        Shelf shelf = SHELF.read(node, Pointer.ROOT, problems);
        problems.throwIfAny();
        return shelf;
    }

    private static List<Problem> problems(String text) throws IOException {
        try {
            throw new AssertionError(read(text) + " was read");
        } catch (RejectedDocumentException e) {
            return DocumentRefusals.withoutPlaces(e);
        }
    }

    @Test
    void fieldsAreWrittenInTheOrderOfTheTableWhateverTheOrderOfTheComponents() throws IOException {
        assertThat(write(FULL)).isEqualTo(FULL_TEXT);
    }

    @Test
    void everyComponentGetsTheValueOfItsField() throws IOException, RejectedDocumentException {
        assertThat(read(FULL_TEXT)).isEqualTo(FULL);
    }

    @Test
    void whatIsLeftOutMeansItsDefaultAndADefaultIsWrittenByLeavingItOut()
            throws IOException, RejectedDocumentException {
        Shelf plain = new Shelf(false, new Pail("P-2", mass("1 kg"), Optional.empty()), List.of(), 2);
        String text = write(plain);
        assertThat(text).doesNotContain("boards", "labels", "gross").contains("\"locked\": false");
        assertThat(read(text)).isEqualTo(plain);
    }

    @Test
    void whatIsMissingUnknownOrOfAnotherTypeIsAProblemEach() throws IOException {
        assertThat(problems("{\"emptyMass\": 4, \"tare\": \"4 lb\", \"id\": \"P-1\"}"))
                .containsExactly(
                        new Problem("wrong-type", "/emptyMass", "mass with its unit, for example \"1 lb\"", "4"),
                        new Problem("missing-field", "/locked", "true or false", "nothing"),
                        new Problem(
                                "unknown-field",
                                "/tare",
                                "one of the fields emptyMass, id, boards, locked, labels, gross",
                                "\"tare\""));
        assertThat(problems("[]")).containsExactly(new Problem("wrong-type", "", "an object", "an array"));
    }

    @Test
    void aRefusalOfAnInlinedPartStandsAtTheObjectThatHoldsItsFields() throws IOException {
        assertThat(problems(FULL_TEXT.replace("\"P-1\"", "\"none\"")))
                .containsExactly(new Problem("not-accepted", "", "pail: a real one", "none"));
    }

    private static void refusedBecause(String why, Executable declaration) {
        assertThatIllegalArgumentException()
                .isThrownBy(declaration::execute)
                .withMessage("org.gritwright.core.json.ObjectCodecTest$Pail: " + why);
    }

    @Test
    void aFieldOfAnotherTypeThanItsComponentIsNamedWhenItIsDeclared() {
        refusedBecause(
                "tare is read as javax.measure.Quantity<javax.measure.quantity.Length>, but is"
                        + " javax.measure.Quantity<javax.measure.quantity.Mass>",
                () -> object("pail", Pail.class, required("id", TEXT), required("tare", LENGTH)));
        refusedBecause(
                "tare is read as java.util.Optional<javax.measure.Quantity<javax.measure.quantity.Mass>>, but is"
                        + " javax.measure.Quantity<javax.measure.quantity.Mass>",
                () -> object("pail", Pail.class, required("id", TEXT), optional("tare", MASS)));
    }

    @Test
    void aFieldWithoutComponentIsNamedWhenItIsDeclared() {
        refusedBecause(
                "weight stands for \"weight\", which is none of the components [id, tare, gross]",
                () -> object("pail", Pail.class, required("id", TEXT), required("weight", MASS)));
    }

    @Test
    void aComponentWithoutFieldIsNamedWhenTheRecordIsDeclared() {
        refusedBecause(
                "gross has no field", () -> object("pail", Pail.class, required("id", TEXT), required("tare", MASS)));
    }

    @Test
    void aSecondFieldForAComponentOrOfANameIsNamedWhenItIsDeclared() {
        refusedBecause(
                "code is the second field for the component \"id\"",
                () -> object(
                        "pail",
                        Pail.class,
                        required("id", TEXT),
                        required("code", TEXT).component("id")));
        refusedBecause(
                "tare is declared twice",
                () -> object(
                        "pail",
                        Pail.class,
                        required("id", TEXT),
                        required("tare", MASS),
                        optional("tare", MASS).component("gross")));
    }
}
