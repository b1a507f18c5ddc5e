package org.gritwright.core.record;

import static org.gritwright.core.json.Field.required;
import static org.gritwright.core.json.Field.withDefault;
import static org.gritwright.core.json.ObjectCodec.object;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import java.util.function.Function;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import org.gritwright.core.document.ProblemCode;
import org.gritwright.core.finding.Argument;
import org.gritwright.core.finding.Finding;
import org.gritwright.core.finding.FindingCode;
import org.gritwright.core.finding.Slip;
import org.gritwright.core.finding.Slot;
import org.gritwright.core.finding.Term;
import org.gritwright.core.json.Codec;
import org.gritwright.core.json.Codecs;
import org.gritwright.core.json.JsonNode;
import org.gritwright.core.json.ObjectCodec;
import org.gritwright.core.json.Pointer;
import org.gritwright.core.json.Problems;
import org.gritwright.core.json.Schema;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.jspecify.annotations.Nullable;

/**
 * A finding in JSON: its code and its arguments, each of the kind that the code declares. Severity and sentence follow
 * from those; they are written for readers who have no library.
 */
final class FindingCodec implements Codec<Finding> {
    private static final String CODE = "code";
    private static final String SEVERITY = "severity";
    private static final String SENTENCE = "sentence";
    private static final String ARGUMENTS = "arguments";
    private static final int LONGEST_SENTENCE = 5000;
    private static final List<String> FIELDS = List.of(CODE, SEVERITY, SENTENCE, ARGUMENTS);

    private static final Quantity<Dimensionless> NO_FACTOR = Amounts.of(1, SpreadingUnits.ONE);

    private static final ObjectCodec<Argument.Refusal> REFUSAL = object(
            "refused-argument",
            Argument.Refusal.class,
            required("field", Codecs.TEXT),
            required("accepted", Codecs.TEXT),
            required("value", Codecs.ANY_TEXT));

    private static final Codec<Argument> PROSE = as(Codecs.TEXT, Argument.Prose::new, a -> ((Argument.Prose) a).text());

    private static final Codec<FindingCode> CODES = Codecs.choice(FindingCode.class, FindingCode::id);

    private final Map<FindingCode, Map<String, Codec<Argument>>> arguments = new EnumMap<>(FindingCode.class);

    FindingCodec() {
        for (FindingCode code : FindingCode.values()) {
            Map<String, Codec<Argument>> slots = new TreeMap<>();
            code.slots().forEach(slot -> slots.put(slot.name(), argument(slot)));
            arguments.put(code, slots);
        }
    }

    @Override
    public String expected() {
        return "an object";
    }

    @Override
    public String type() {
        return Finding.class.getTypeName();
    }

    @Override
    public @Nullable Finding read(JsonNode node, Pointer pointer, Problems problems) {
        if (!(node instanceof JsonNode.ObjectNode object)) {
            problems.add(ProblemCode.WRONG_TYPE, pointer, expected(), node);
            return null;
        }
        boolean complete = hasAllFields(object.fields(), FIELDS, List.of(ARGUMENTS), pointer, problems);
        JsonNode id = object.fields().get(CODE);
        FindingCode code = id == null ? null : CODES.read(id, pointer.at(CODE), problems);
        for (String derived : List.of(SEVERITY, SENTENCE)) {
            JsonNode text = object.fields().get(derived);
            complete &= text == null || Codecs.TEXT.read(text, pointer.at(derived), problems) != null;
        }
        if (code == null) {
            return null;
        }
        Map<String, Argument> given = arguments(code, object.fields().get(ARGUMENTS), pointer.at(ARGUMENTS), problems);
        return complete && given != null ? Finding.of(code, given) : null;
    }

    private @Nullable Map<String, Argument> arguments(
            FindingCode code, @Nullable JsonNode node, Pointer pointer, Problems problems) {
        Map<String, Codec<Argument>> slots = arguments.getOrDefault(code, Map.of());
        Map<String, JsonNode> written = Map.of();
        if (node instanceof JsonNode.ObjectNode object) {
            written = object.fields();
        } else if (node != null) {
            problems.add(ProblemCode.WRONG_TYPE, pointer, expected(), node);
            return null;
        } else if (!slots.isEmpty()) {
            problems.add(ProblemCode.MISSING_FIELD, pointer, "a value", "nothing");
            return null;
        }
        boolean complete = hasAllFields(written, List.copyOf(slots.keySet()), List.of(), pointer, problems);
        Map<String, Argument> read = new TreeMap<>();
        for (Map.Entry<String, Codec<Argument>> slot : slots.entrySet()) {
            JsonNode value = written.get(slot.getKey());
            Argument argument = value == null ? null : slot.getValue().read(value, pointer.at(slot.getKey()), problems);
            complete &= argument != null;
            read.put(slot.getKey(), argument);
        }
        return complete ? read : null;
    }

    /** Reports what is missing and what isn't known. */
    private static boolean hasAllFields(
            Map<String, JsonNode> given,
            List<String> known,
            List<String> optional,
            Pointer pointer,
            Problems problems) {
        boolean complete = true;
        for (String field : known) {
            if (!given.containsKey(field) && !optional.contains(field)) {
                problems.add(ProblemCode.MISSING_FIELD, pointer.at(field), "a value", "nothing");
                complete = false;
            }
        }
        for (String field : given.keySet()) {
            if (!known.contains(field)) {
                problems.unknownField(pointer, field, known);
                complete = false;
            }
        }
        return complete;
    }

    @Override
    public JsonNode write(Finding finding) {
        Map<String, JsonNode> fields = new LinkedHashMap<>();
        fields.put(CODE, CODES.write(finding.code()));
        fields.put(SEVERITY, Schema.text(finding.severity().name().toLowerCase(Locale.ROOT)));
        fields.put(SENTENCE, Schema.text(sentence(finding)));
        Map<String, Codec<Argument>> slots = arguments.getOrDefault(finding.code(), Map.of());
        if (!slots.isEmpty()) {
            Map<String, JsonNode> written = new LinkedHashMap<>();
            slots.forEach((name, codec) -> written.put(
                    name, codec.write(Objects.requireNonNull(finding.arguments().get(name), name))));
            fields.put(ARGUMENTS, new JsonNode.ObjectNode(written));
        }
        return new JsonNode.ObjectNode(fields);
    }

    /** For people, who can do without the end of one that no text holds; the arguments say it all. */
    private static String sentence(Finding finding) {
        String whole = finding.sentence();
        return whole.length() <= LONGEST_SENTENCE ? whole : whole.substring(0, LONGEST_SENTENCE) + "…";
    }

    @Override
    public JsonNode describe(Schema schema) {
        return schema.reference(
                "finding",
                () -> Schema.object(Map.entry(
                        "oneOf",
                        Schema.array(Arrays.stream(FindingCode.values())
                                .map(code -> describe(code, schema))
                                .toList()))));
    }

    private JsonNode describe(FindingCode code, Schema schema) {
        Map<String, Codec<Argument>> slots = arguments.getOrDefault(code, Map.of());
        Map<String, JsonNode> properties = new LinkedHashMap<>();
        properties.put(CODE, Schema.object(Map.entry("const", Schema.text(code.id()))));
        properties.put(SEVERITY, Codecs.TEXT.describe(schema));
        properties.put(SENTENCE, Codecs.TEXT.describe(schema));
        Map<String, JsonNode> named = new LinkedHashMap<>();
        slots.forEach((name, codec) -> named.put(name, codec.describe(schema)));
        properties.put(ARGUMENTS, Schema.closed(named, List.copyOf(slots.keySet())));
        List<String> needed = new ArrayList<>(FIELDS);
        if (slots.isEmpty()) {
            needed.remove(ARGUMENTS);
        }
        return Schema.closed(properties, needed);
    }

    private static Codec<Argument> argument(Slot slot) {
        Codec<Argument> one = switch (slot.kind()) {
            case NUMBER -> as(Codecs.ANY_QUANTITY, Argument::number, a -> ((Argument.Amount) a).quantity());
            case DATE -> as(Codecs.DATE, Argument::date, a -> ((Argument.Date) a).day());
            case TIME -> as(Codecs.DATE_AND_TIME, Argument::time, a -> ((Argument.Moment) a).at());
            case NAME -> as(Codecs.TEXT, Argument::name, a -> ((Argument.Name) a).name());
            case TERM -> as(terms(slot), term -> term, a -> (Term) a);
            case UNKNOWN -> as(unknown(slot), unknown -> unknown, a -> (Argument.Unknown) a);
            case SLIP -> as(slip(slot), slip -> slip, a -> (Slip) a);
            case REFUSAL -> as(REFUSAL, refusal -> refusal, a -> (Argument.Refusal) a);
        };
        Codec<Argument> whole =
                slot.isList() ? as(Codecs.listOf(one), Argument::several, a -> ((Argument.Several) a).items()) : one;
        // A text stands for itself, as a record of version 1 has it.
        return slot.kind().wasProse()
                ? Codecs.either(whole.type(), whole, PROSE, JsonNode.TextNode.class, Argument.Prose.class)
                : whole;
    }

    private static Codec<Term> terms(Slot slot) {
        return Codecs.choice(Term.class, slot.terms(), Term::id);
    }

    private static ObjectCodec<Argument.Unknown> unknown(Slot slot) {
        return object(
                "unknown", Argument.Unknown.class, required("what", terms(slot)), withDefault("of", Codecs.TEXT, ""));
    }

    private static ObjectCodec<Slip> slip(Slot slot) {
        return object(
                "slip",
                Slip.class,
                required("part", terms(slot)),
                required("mistake", Codecs.choice(Slip.Mistake.class)),
                withDefault("factor", Codecs.quantity(Dimensionless.class), NO_FACTOR),
                required("values", Codecs.listOf(Codecs.ANY_QUANTITY)),
                withDefault("of", Codecs.TEXT, ""),
                withDefault("catches", Codecs.listOf(Codecs.DATE_AND_TIME), List.of()));
    }

    private static <T> Codec<Argument> as(Codec<T> codec, Function<T, Argument> argument, Function<Argument, T> value) {
        return Codecs.mapped(Argument.class.getTypeName(), codec, argument, value);
    }
}
