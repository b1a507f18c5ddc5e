package org.gritwright.core.json;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Consumer;
import java.util.function.DoublePredicate;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import org.gritwright.core.document.ProblemCode;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.UnitSymbol;
import org.gritwright.units.check.Require;
import org.jspecify.annotations.Nullable;

/** Codecs of plain values: texts, quantities, dates, words of a fixed choice, lists and maps. */
public final class Codecs {
    private static final String NUMBER = "-?(0|[1-9][0-9]*)(\\.[0-9]+)?([eE][+-]?[0-9]+)?";

    /** A percentage as text, without the borders of a pattern. */
    public static final String PERCENTAGE_FORM = NUMBER + " ?%";

    private static final String COUNT_FORM = "^[1-9][0-9]{0,3}$";
    private static final String DATE_FORM = "^[0-9]{4}-[0-9]{2}-[0-9]{2}$";
    private static final String TIME_FORM =
            "^[0-9]{4}-[0-9]{2}-[0-9]{2}T[0-9]{2}:[0-9]{2}(:[0-9]{2}(\\.[0-9]{1,9})?)?(Z|[+-][0-9]{2}:[0-9]{2})$";

    /** A date, or a time of day on a date with its offset, as a pattern. */
    public static final String DATE_OR_TIME_FORM = DATE_FORM.substring(0, DATE_FORM.length() - 1) + "("
            + TIME_FORM.substring(TIME_FORM.indexOf('T'), TIME_FORM.length() - 1) + ")?$";

    /** A text that may be empty. */
    public static final Codec<String> ANY_TEXT =
            text(String.class.getName(), "any-text", "a text", ".*", Function.identity(), Function.identity());

    public static final Codec<String> TEXT = text(
            String.class.getName(),
            "text",
            "a text that is not blank",
            ".*\\S.*",
            text -> Require.text("text", text),
            Function.identity());

    static final String AN_OBJECT = "an object";
    private static final String AN_ARRAY = "an array";

    private static final int LONGEST_NAME = 200;

    /** A text by which people know something, so that what is said of it stays short enough to be read. */
    public static final Codec<String> NAME = new Functions<>(
            String.class.getName(),
            "a text of at most " + LONGEST_NAME + " characters",
            (node, pointer, problems) -> {
                String text = TEXT.read(node, pointer, problems);
                if (text != null && length(text) > LONGEST_NAME) {
                    problems.add(
                            ProblemCode.TOO_LARGE,
                            pointer,
                            "at most " + LONGEST_NAME + " characters",
                            length(text) + " characters");
                    return null;
                }
                return text;
            },
            text -> {
                Require.that(
                        length(text) <= LONGEST_NAME,
                        "name",
                        "at most " + LONGEST_NAME + " characters",
                        () -> length(text) + " characters");
                return TEXT.write(text);
            },
            schema -> schema.reference("name", () -> Schema.nameOf(LONGEST_NAME)));

    public static final Codec<LocalDate> DATE = text(
            LocalDate.class.getName(),
            "date",
            "a date, for example \"2026-10-19\"",
            DATE_FORM,
            inForm(DATE_FORM, LocalDate::parse),
            LocalDate::toString);

    /** A time of day on a date, with its offset from UTC. */
    public static final Codec<OffsetDateTime> DATE_AND_TIME = text(
            OffsetDateTime.class.getName(),
            "time-of-day",
            "a time with its offset, for example \"2026-10-19T08:40:00-04:00\"",
            TIME_FORM,
            inForm(TIME_FORM, OffsetDateTime::parse),
            Codecs::format);

    /** How many of something. */
    public static final Codec<Integer> COUNT = text(
            Integer.class.getName(),
            "how-many",
            "a whole number from 1 to 9999, for example \"6\"",
            COUNT_FORM,
            inForm(COUNT_FORM, Integer::valueOf),
            Object::toString);

    /** A quantity of whatever kind its unit has. */
    public static final Codec<Quantity<?>> ANY_QUANTITY = anyQuantity("a number and a unit", "2 in");

    /** A quantity of whatever kind its unit has, asked for in other words. */
    public static Codec<Quantity<?>> anyQuantity(String accepted, String example) {
        return quantity("quantity", "quantity", accepted, example, row -> true);
    }

    public static final Codec<Boolean> BOOLEAN = word(
            Boolean.class,
            "true or false",
            "true|false",
            Boolean::valueOf,
            Schema.object(Map.entry("type", Schema.text("boolean"))));

    /** A small whole number without a unit: a version. */
    public static final Codec<Integer> VERSION = word(
            Integer.class,
            "a version number, 1 or more",
            "[1-9][0-9]{0,8}",
            Integer::valueOf,
            Schema.object(Map.entry("type", Schema.text("integer")), Map.entry("minimum", new JsonNode.WordNode("1"))));

    private Codecs() {}

    /** As a schema counts. */
    private static int length(String text) {
        return text.codePointCount(0, text.length());
    }

    private interface Reader<T> {
        @Nullable
        T read(JsonNode node, Pointer pointer, Problems problems);
    }

    private record Functions<T>(
            String type,
            String expected,
            Reader<T> reader,
            Function<T, JsonNode> writer,
            Function<Schema, JsonNode> description)
            implements Codec<T> {
        @Override
        public @Nullable T read(JsonNode node, Pointer pointer, Problems problems) {
            return reader.read(node, pointer, problems);
        }

        @Override
        public JsonNode write(T value) {
            return writer.apply(value);
        }

        @Override
        public JsonNode describe(Schema schema) {
            return description.apply(schema);
        }
    }

    /**
     * A value that is written as a text.
     *
     * @param type the type of value, see {@link Codec#type}
     * @param name the name of its definition in a schema
     * @param expected what is accepted, in words
     * @param regex what is accepted, as the schema says it
     * @param parse reads a text; what it refuses with an {@link InvalidInputException} is a problem
     */
    public static <T> Codec<T> text(
            String type,
            String name,
            String expected,
            String regex,
            Function<String, T> parse,
            Function<T, String> print) {
        Reader<T> reader = (node, pointer, problems) -> {
            try {
                if (node instanceof JsonNode.TextNode text) {
                    return parse.apply(text.text());
                }
                problems.add(ProblemCode.WRONG_TYPE, pointer, expected, node);
            } catch (InvalidInputException e) {
                problems.refused(pointer, e);
            } catch (DateTimeException e) {
                problems.add(ProblemCode.WRONG_FORM, pointer, expected, node);
            }
            return null;
        };
        return new Functions<>(
                type,
                expected,
                reader,
                value -> Schema.text(print.apply(value)),
                schema -> schema.reference(name, () -> Schema.textOf(expected, regex)));
    }

    /** A quantity of one kind. */
    public static <Q extends Quantity<Q>> Codec<Quantity<Q>> quantity(Class<Q> kind) {
        String words = UnitSymbol.kindName(kind);
        List<UnitSymbol<Q>> rows = UnitSymbol.ofKind(kind);
        String example = "\"" + Amounts.format(Amounts.of(1, rows.get(0).unit())) + "\"";
        return text(
                Codec.typeName(Quantity.class, kind.getName()),
                words.replace(' ', '-'),
                words + " with its unit, for example " + example,
                form(rows.stream()),
                text -> Amounts.parse(kind, text),
                Amounts::format);
    }

    /**
     * A quantity of several kinds.
     *
     * @param name the name of its definition in a schema, after what it is for
     * @param field the field's name in the trade's words
     * @param accepted what is accepted, in words
     */
    public static Codec<Quantity<?>> quantity(
            String name, String field, String accepted, String example, Predicate<UnitSymbol<?>> units) {
        Function<String, Quantity<?>> parse = text -> {
            Quantity<?> value = Amounts.parseAny(text);
            boolean isAccepted = units.test(UnitSymbol.of(value.getUnit()));
            Require.that(isAccepted, field, accepted, () -> "\"" + text + "\"");
            return value;
        };
        return text(
                Codec.typeName(Quantity.class, "?"),
                name,
                accepted + ", for example \"" + example + "\"",
                form(UnitSymbol.all().stream().filter(units)),
                parse,
                Amounts::format);
    }

    /** A ratio that is always written in percent: a bare "4" would be 400 %. */
    public static Codec<Quantity<Dimensionless>> percentage(
            String name, String limits, String example, DoublePredicate accepted) {
        return text(
                Codec.typeName(Quantity.class, Dimensionless.class.getName()),
                name,
                "a percentage " + limits + ", for example \"" + example + "\"",
                "^" + PERCENTAGE_FORM + "$",
                text -> parsePercentage(text, limits, accepted),
                Amounts::format);
    }

    public static Quantity<Dimensionless> parsePercentage(String text, String limits, DoublePredicate accepted) {
        Quantity<Dimensionless> value = Amounts.parse(Dimensionless.class, text);
        if (!value.getUnit().equals(SpreadingUnits.PERCENT)
                || !accepted.test(value.getValue().doubleValue())) {
            throw new InvalidInputException("percentage", limits + ", written with %", "\"" + text + "\"");
        }
        return value;
    }

    private static String form(Stream<? extends UnitSymbol<?>> rows) {
        Set<String> spellings = new LinkedHashSet<>();
        rows.forEach(row -> {
            spellings.add(row.symbol());
            spellings.addAll(row.spellings());
        });
        // The bare number has no symbol and takes no space; everything else may.
        String units = spellings.stream().filter(s -> !s.isEmpty()).collect(Collectors.joining("|"));
        return "^" + NUMBER + (spellings.contains("") ? "( ?(" + units + "))?" : " ?(" + units + ")") + "$";
    }

    /** A time of day as it is written. */
    public static String format(OffsetDateTime time) {
        return DateTimeFormatter.ISO_OFFSET_DATE_TIME.format(time);
    }

    /** The JDK's parsers take more than the schema does: years beyond 9999, small letters. */
    public static <T> Function<String, T> inForm(String regex, Function<String, T> parse) {
        Pattern pattern = Pattern.compile(regex);
        return text -> {
            if (!pattern.matcher(text).matches()) {
                throw new DateTimeException("not in the form " + regex);
            }
            return parse.apply(text);
        };
    }

    /** One word of an enum, in lower case with hyphens. */
    public static <E extends Enum<E>> Codec<E> choice(Class<E> type) {
        return choice(type, e -> e.name().toLowerCase(Locale.ROOT).replace('_', '-'));
    }

    /** One word of an enum, in the enum's order. */
    public static <E extends Enum<E>> Codec<E> choice(Class<E> type, Function<E, String> word) {
        return choice(type, List.of(type.getEnumConstants()), word);
    }

    /** One word of some of an enum, in the order given. */
    public static <E extends Enum<E>> Codec<E> choice(Class<E> type, List<E> all, Function<E, String> word) {
        Map<String, E> byWord = new LinkedHashMap<>();
        all.forEach(e -> byWord.put(word.apply(e), e));
        String expected = "one of " + byWord.keySet();
        Reader<E> reader = (node, pointer, problems) -> {
            if (!(node instanceof JsonNode.TextNode text)) {
                problems.add(ProblemCode.WRONG_TYPE, pointer, expected, node);
                return null;
            }
            E value = byWord.get(text.text());
            if (value == null) {
                problems.unknownWord(pointer, byWord.keySet(), text);
            }
            return value;
        };
        List<JsonNode> words = byWord.keySet().stream().map(Schema::text).toList();
        return new Functions<>(
                type.getName(),
                expected,
                reader,
                value -> Schema.text(word.apply(value)),
                schema -> Schema.object(Map.entry("enum", Schema.array(words))));
    }

    /** A word of JSON itself: a number, true or false. */
    private static <T> Codec<T> word(
            Class<T> type, String expected, String regex, Function<String, T> parse, JsonNode description) {
        Pattern pattern = Pattern.compile(regex);
        Reader<T> reader = (node, pointer, problems) -> {
            if (node instanceof JsonNode.WordNode word
                    && pattern.matcher(word.word()).matches()) {
                return parse.apply(word.word());
            }
            problems.add(ProblemCode.WRONG_TYPE, pointer, expected, node);
            return null;
        };
        return new Functions<>(
                type.getName(),
                expected,
                reader,
                value -> new JsonNode.WordNode(value.toString()),
                schema -> description);
    }

    /** A value that is written as another one; what the other can't become is a problem. */
    public static <V, T> Codec<T> mapped(String type, Codec<V> written, Function<V, T> read, Function<T, V> write) {
        Reader<T> reader = (node, pointer, problems) -> {
            V value = written.read(node, pointer, problems);
            try {
                return value == null ? null : read.apply(value);
            } catch (InvalidInputException e) {
                problems.refused(pointer, e);
                return null;
            }
        };
        return new Functions<>(
                type, written.expected(), reader, value -> written.write(write.apply(value)), written::describe);
    }

    static <V> Codec<Optional<V>> optional(Codec<V> codec) {
        return mapped(Codec.typeName(Optional.class, codec.type()), codec, Optional::of, Optional::orElseThrow);
    }

    /** A list, in the document's order. */
    public static <T> Codec<List<T>> listOf(Codec<T> item) {
        Reader<List<T>> reader = (node, pointer, problems) -> {
            if (!(node instanceof JsonNode.ArrayNode array)) {
                problems.add(ProblemCode.WRONG_TYPE, pointer, AN_ARRAY, node);
                return null;
            }
            List<T> values = new ArrayList<>();
            for (JsonNode one : array.items()) {
                values.add(item.read(one, pointer.at(values.size()), problems));
            }
            return values.contains(null) ? null : values;
        };
        return new Functions<>(
                Codec.typeName(List.class, item.type()),
                AN_ARRAY,
                reader,
                values ->
                        new JsonNode.ArrayNode(values.stream().map(item::write).toList()),
                schema -> Schema.object(
                        Map.entry("type", Schema.text("array")), Map.entry("items", item.describe(schema))));
    }

    /**
     * A list whose items have names of their own: the same name twice is a problem at the second one.
     *
     * @param what what the name is, for example "truck id"
     * @param field the field of an item that holds it
     */
    public static <T> Codec<List<T>> uniqueListOf(Codec<T> item, String what, Function<T, String> key, String field) {
        Codec<List<T>> list = listOf(item);
        Reader<List<T>> reader = (node, pointer, problems) -> {
            List<T> values = list.read(node, pointer, problems);
            Set<String> seen = new HashSet<>();
            for (int i = 0; values != null && i < values.size(); i++) {
                String name = key.apply(values.get(i));
                if (!seen.add(name)) {
                    Pointer at = pointer.at(i).at(field);
                    problems.add(ProblemCode.REPEATED_ITEM, at, "each " + what + " once", "\"" + name + "\" again");
                }
            }
            return values;
        };
        return new Functions<>(list.type(), list.expected(), reader, list::write, list::describe);
    }

    /**
     * A value that keeps a rule of the whole that it is part of, so that the rule's breach is told where the value stands.
     *
     * @param require refuses what isn't accepted with an {@link InvalidInputException}
     */
    public static <T> Codec<T> requiring(Codec<T> codec, Consumer<T> require) {
        Reader<T> reader = (node, pointer, problems) -> {
            T value = codec.read(node, pointer, problems);
            if (value == null) {
                return null;
            }
            try {
                require.accept(value);
                return value;
            } catch (InvalidInputException e) {
                problems.refused(pointer, e);
                return null;
            }
        };
        return new Functions<>(codec.type(), codec.expected(), reader, codec::write, codec::describe);
    }

    /**
     * A list that isn't empty.
     *
     * @param accepted what is accepted, in words
     */
    public static <T> Codec<List<T>> notEmpty(Codec<List<T>> list, String accepted) {
        Reader<List<T>> reader = (node, pointer, problems) -> {
            if (node instanceof JsonNode.ArrayNode array && array.items().isEmpty()) {
                problems.add(ProblemCode.NOT_ACCEPTED, pointer, accepted, "none");
                return null;
            }
            return list.read(node, pointer, problems);
        };
        return new Functions<>(list.type(), accepted, reader, list::write, schema -> {
            Map<String, JsonNode> described =
                    new LinkedHashMap<>(((JsonNode.ObjectNode) list.describe(schema)).fields());
            described.put("minItems", new JsonNode.WordNode("1"));
            return new JsonNode.ObjectNode(described);
        });
    }

    /** A map by name, in the order of the names. */
    public static <T> Codec<Map<String, T>> mapOf(Codec<T> value) {
        return mapOf(value, any -> value);
    }

    /**
     * A map by name, in the order of the names.
     *
     * @param value how a value is written and described
     * @param byName how it is read, which may know more of what a name stands for
     */
    public static <T> Codec<Map<String, T>> mapOf(Codec<T> value, Function<String, Codec<T>> byName) {
        Reader<Map<String, T>> reader = (node, pointer, problems) -> {
            if (!(node instanceof JsonNode.ObjectNode object)) {
                problems.add(ProblemCode.WRONG_TYPE, pointer, AN_OBJECT, node);
                return null;
            }
            Map<String, T> values = new TreeMap<>();
            object.fields()
                    .forEach((name, one) -> values.put(name, byName.apply(name).read(one, pointer.at(name), problems)));
            return values.containsValue(null) ? null : values;
        };
        Function<Map<String, T>, JsonNode> writer = values -> {
            Map<String, JsonNode> fields = new TreeMap<>();
            values.forEach((name, one) -> fields.put(name, value.write(one)));
            return new JsonNode.ObjectNode(fields);
        };
        return new Functions<>(
                Codec.typeName(Map.class, String.class.getName(), value.type()),
                AN_OBJECT,
                reader,
                writer,
                schema -> Schema.object(
                        Map.entry("type", Schema.text("object")),
                        Map.entry("additionalProperties", value.describe(schema))));
    }

    /** One value, or a list of such values. */
    @SuppressWarnings("unchecked") // what is written was checked by whoever made it
    public static <T> Codec<Object> oneOrSeveral(Codec<T> one) {
        Codec<?> several = listOf(one);
        return either("?", (Codec<Object>) one, (Codec<Object>) several, JsonNode.ArrayNode.class, List.class);
    }

    /**
     * A value that is written in one of two forms.
     *
     * @param node what stands there in the other form
     * @param value what is written in the other form
     */
    public static <T> Codec<T> either(
            String type, Codec<T> usual, Codec<T> other, Class<? extends JsonNode> node, Class<?> value) {
        return new Functions<>(
                type,
                usual.expected(),
                (read, pointer, problems) -> (node.isInstance(read) ? other : usual).read(read, pointer, problems),
                written -> (value.isInstance(written) ? other : usual).write(written),
                schema -> Schema.object(
                        Map.entry("anyOf", Schema.array(List.of(usual.describe(schema), other.describe(schema))))));
    }
}
