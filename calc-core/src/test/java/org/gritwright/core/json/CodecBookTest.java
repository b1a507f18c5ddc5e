package org.gritwright.core.json;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.assertThatNullPointerException;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Mass;
import org.gritwright.core.document.DocumentLimits;
import org.gritwright.units.Amounts;
import org.junit.jupiter.api.Test;

class CodecBookTest {
    private enum State {
        IN_USE
    }

    private record Pail(String id, Quantity<Mass> tare) {}

    private record Shelf(boolean locked, State state, Optional<Quantity<Mass>> holds, List<Pail> pails, Pail first) {}

    private static final CodecBook BOOK =
            CodecBook.of(Codecs.TEXT, Codecs.BOOLEAN).with("pail", Pail.class);
    private static final Pail PAIL = new Pail("P-1", Amounts.parse(Mass.class, "4 lb"));

    private static Map<String, JsonNode> fields(ObjectCodec<Shelf> codec, List<Pail> pails) {
        Shelf shelf = new Shelf(true, State.IN_USE, Optional.empty(), pails, PAIL);
        JsonNode.ObjectNode written = (JsonNode.ObjectNode) codec.write(shelf);
        Problems problems = new Problems(DocumentLimits.COMMON);
        assertThat(codec.read(written, Pointer.ROOT, problems)).isEqualTo(shelf);
        return new LinkedHashMap<>(written.fields());
    }

    @Test
    void fieldsFollowFromTheComponentsAndTheirTypes() {
        ObjectCodec<Shelf> codec = BOOK.object("shelf", Shelf.class);
        assertThat(fields(codec, List.of())).containsOnlyKeys("locked", "state", "first");
        assertThat(fields(codec, List.of(PAIL)).keySet()).containsExactly("locked", "state", "pails", "first");
        assertThat(fields(codec, List.of())).containsEntry("state", Schema.text("in-use"));
    }

    @Test
    void aDeclaredFieldStandsInPlaceOfTheOneThatWouldFollow() {
        ObjectCodec<Shelf> codec = BOOK.object(
                "shelf",
                Shelf.class,
                Field.inlined("first"),
                Field.required("pails"),
                Field.required("open", Codecs.BOOLEAN).component("locked"));
        assertThat(fields(codec, List.of()).keySet()).containsExactly("open", "state", "pails", "id", "tare");
    }

    @Test
    void whatBelongsToNoComponentOrHasNoCodecIsNamed() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> BOOK.object("pail", Pail.class, Field.required("weight")))
                .withMessage("org.gritwright.core.json.CodecBookTest$Pail has no components [weight]");
        assertThatNullPointerException()
                .isThrownBy(() -> CodecBook.of().object("pail", Pail.class))
                .withMessage("there is no codec for java.lang.String");
    }
}
