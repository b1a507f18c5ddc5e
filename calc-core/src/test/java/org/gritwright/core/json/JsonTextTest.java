package org.gritwright.core.json;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import org.gritwright.core.document.DocumentLimits;
import org.gritwright.core.document.Problem;
import org.gritwright.core.document.RejectedDocumentException;
import org.gritwright.units.InvalidInputException;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

@Tag("jackson")
class JsonTextTest {
    private static final JsonNode ONE = new JsonNode.WordNode("1");

    /** At most so many levels, values, characters a text and characters a name. */
    private static DocumentLimits limits(int depth, int nodes, int textLength, int nameLength) {
        return new DocumentLimits(1000, depth, nodes, textLength, nameLength, 10, 10_000);
    }

    private static JsonNode read(String text, DocumentLimits limits) throws IOException, RejectedDocumentException {
        Problems problems = new Problems(limits);
        JsonNode node =
                JsonText.read(new ByteArrayInputStream(text.getBytes(StandardCharsets.UTF_8)), limits, problems);
        problems.throwIfAny();
        return node;
    }

    private static Problem refusal(String text, DocumentLimits limits) {
        return catchThrowableOfType(RejectedDocumentException.class, () -> read(text, limits))
                .problems()
                .get(0);
    }

    private static Problem refusal(String text) {
        return refusal(text, DocumentLimits.COMMON);
    }

    @Test
    void asMuchAsTheLimitsAllowIsRead() throws IOException, RejectedDocumentException {
        assertThat(read("{\"abc\": [1]}", limits(2, 3, 5, 3)))
                .isEqualTo(new JsonNode.ObjectNode(Map.of("abc", new JsonNode.ArrayNode(List.of(ONE)))));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '`', textBlock = """
            [1, 2, 3]        | document (line 1, column 8): expected at most 3 values, found more
            {"abcd": 1}      | document (line 1, column 2): expected at most 3 characters a name, found a name of 4
            """)
    void oneMoreIsRefusedWhereItStands(String text, String told) {
        assertThat(refusal(text, limits(2, 3, 5, 3)).toString()).contains(told);
    }

    /** The parser doesn't tell where. */
    @Test
    void whatIsTooDeepIsRefusedWithoutAPlace() {
        assertThat(refusal("[\n [\n  [1]]]", limits(2, 10, 5, 3)))
                .satisfies(
                        problem -> assertThat(problem.expected()).isEqualTo("at most 2 levels and 5 characters a text"))
                .satisfies(problem -> assertThat(problem.place()).isEmpty());
    }

    private static JsonNode array(JsonNode... items) {
        return new JsonNode.ArrayNode(List.of(items));
    }

    private static JsonNode field(String name, JsonNode value) {
        return new JsonNode.ObjectNode(Map.of(name, value));
    }

    @Test
    void whatIsWrittenMustBeReadableWithinTheLimits() {
        DocumentLimits limits = limits(9, 4, 5, 3);

        for (JsonNode readable :
                List.of(array(ONE, ONE, ONE), field("abc", array(ONE, ONE)), array(new JsonNode.TextNode("abcde")))) {
            assertThatCode(() -> JsonText.requireReadable(readable, limits)).doesNotThrowAnyException();
        }
        Map.of(
                        array(ONE, ONE, ONE, ONE), "document must be at most 4 values: 5 values",
                        field("a", array(ONE, ONE, ONE)), "document must be at most 4 values: 5 values",
                        array(new JsonNode.TextNode("abcdef")),
                                "document must be of at most 5 characters a text: a text of 6",
                        array(field("abcd", ONE)), "document must be of at most 3 characters a name: a name of 4")
                .forEach((node, told) -> assertThatThrownBy(() -> JsonText.requireReadable(node, limits))
                        .isInstanceOf(InvalidInputException.class)
                        .hasMessage(told));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '`', textBlock = """
            {"a": 0,5}        | a name without quotation marks; a number has a point and no comma
            {7: 1}            | a name without quotation marks; a number has a point and no comma
            {"a": 1 "b": 2}   | no comma before this
            {"a": "x" "b": 2} | no comma before this
            [1 -2]            | no comma before this
            [1 [2]]           | no comma before this
            [{} {}]           | no comma before this
            [1, ]             | an extra comma before ]
            / {}              | a comment, which JSON doesn't have
            [1, 2             | the end of the text before what begins at line 1, column 1 is closed
            """)
    void whatIsBrokenIsSaidInWords(String text, String found) {
        assertThat(refusal(text).found()).isEqualTo(found);
        assertThat(refusal(text).expected()).isEqualTo("JSON (RFC 8259)");
    }

    @Test
    void otherwiseItIsTheParsersOwnWords() {
        assertThat(refusal("{\"a\": 1 ! }").found()).startsWith("Unexpected character ('!'");
    }

    /** From the first to the last of the typographic ones. */
    @ParameterizedTest
    @ValueSource(strings = {"\u2018", "\u2019", "\u201c", "\u201d"})
    void anotherKindOfQuotationMarkIsNamed(String quote) {
        assertThat(refusal("{" + quote + "a" + quote + ": 1}").found())
                .isEqualTo("a quotation mark of another kind than \"");
    }

    @ParameterizedTest
    @ValueSource(strings = {"\u2013", "\u2017", "\u201e", "\u2026"})
    void whatLooksLikeOneIsNone(String other) {
        assertThat(refusal("{" + other + "a: 1}").found()).doesNotContain("quotation mark of another kind");
    }

    @Test
    void repeatedNamesBeyondTheLimitOfProblemsAreCounted() {
        DocumentLimits one = new DocumentLimits(1000, 9, 9, 9, 9, 1, 1000);

        assertThat(catchThrowableOfType(
                        RejectedDocumentException.class, () -> read("{\"a\": 1, \"a\": 2, \"a\": 3, \"a\": 4}", one)))
                .satisfies(refused -> assertThat(refused.problems()).hasSize(1))
                .satisfies(refused -> assertThat(refused.more()).isEqualTo(2));
    }
}
