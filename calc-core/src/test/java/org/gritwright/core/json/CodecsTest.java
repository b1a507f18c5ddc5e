package org.gritwright.core.json;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.util.List;
import java.util.Map;
import java.util.function.Function;
import org.gritwright.core.document.DocumentLimits;
import org.gritwright.core.document.Problem;
import org.gritwright.core.document.ProblemCode;
import org.gritwright.core.document.RejectedDocumentException;
import org.gritwright.units.InvalidInputException;
import org.junit.jupiter.api.Test;

class CodecsTest {
    private static final DocumentLimits LIMITS = DocumentLimits.COMMON;
    private static final JsonNode WORD = new JsonNode.WordNode("7");

    /** What a codec says of a value that it can't read. */
    private static <T> String told(Codec<T> codec, JsonNode node) {
        Problems problems = new Problems(LIMITS);
        assertThat(codec.read(node, Pointer.of("/a"), problems)).isNull();
        return catchThrowableOfType(RejectedDocumentException.class, problems::throwIfAny)
                .getMessage();
    }

    @Test
    void aListIsAnArrayAndAMapAnObject() {
        assertThat(told(Codecs.listOf(Codecs.TEXT), WORD)).isEqualTo("/a: expected an array, found 7");
        assertThat(told(Codecs.listOf(Codecs.TEXT), new JsonNode.ObjectNode(Map.of())))
                .isEqualTo("/a: expected an array, found an object");
        assertThat(told(Codecs.mapOf(Codecs.TEXT), WORD)).isEqualTo("/a: expected an object, found 7");
        assertThat(told(Codecs.mapOf(Codecs.TEXT), new JsonNode.ArrayNode(List.of())))
                .isEqualTo("/a: expected an object, found an array");
    }

    @Test
    void whatAFactoryRefusesIsTold() {
        Codec<String> picky = Codecs.mapped(
                "picky",
                Codecs.TEXT,
                text -> {
                    throw new InvalidInputException("color", "red", text);
                },
                Function.identity());

        assertThat(told(picky, Schema.text("blue"))).isEqualTo("/a: expected color: red, found blue");
    }

    @Test
    void aNameHasAtMostTwoHundredCharacters() {
        String longest = "n".repeat(200);

        assertThat(Codecs.NAME.write(longest)).isEqualTo(Schema.text(longest));
        assertThatThrownBy(() -> Codecs.NAME.write(longest + "n"))
                .isInstanceOf(InvalidInputException.class)
                .hasMessage("name must be at most 200 characters: 201 characters");
        assertThat(told(Codecs.NAME, Schema.text(longest + "n")))
                .isEqualTo("/a: expected at most 200 characters, found 201 characters");
    }

    @Test
    void longTextsAreShortenedWhereTheyAreTold() {
        String sixty = "n".repeat(60);

        assertThat(new JsonNode.TextNode(sixty).describe()).isEqualTo("\"" + sixty + "\"");
        assertThat(new JsonNode.TextNode(sixty + "n").describe()).isEqualTo("\"" + sixty + "…\"");
    }

    private static List<Problem> told(DocumentLimits limits, String... found) {
        Problems problems = new Problems(limits);
        for (String one : found) {
            problems.add(ProblemCode.WRONG_TYPE, Pointer.ROOT, "a text", one);
        }
        return problems.rejected().problems();
    }

    @Test
    void problemsAreTellableUpToTheLimitOfTheirLength() {
        // "document: expected a text, found x"
        int each = 34;
        DocumentLimits two = new DocumentLimits(1, 1, 1, 1, 1, 10, 2 * each);
        DocumentLimits notTwo = new DocumentLimits(1, 1, 1, 1, 1, 10, 2 * each - 1);

        assertThat(told(two, "x", "y", "z")).hasSize(2);
        assertThat(told(notTwo, "x", "y", "z")).hasSize(1);
    }

    @Test
    void whatIsFoundIsToldInFiveHundredCharacters() {
        String most = "x".repeat(500);

        assertThat(told(LIMITS, most, most + "y")).extracting(Problem::found).containsExactly(most, most + "…");
    }
}
