package org.gritwright.core.json;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
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
    public static final Codec<Quantity<?>> ANY_QUANTITY =
            quantity("quantity", "a number and a unit, for example \"27.4 lb/rev\"", row -> true, Amounts::parseAny);

    public static final Codec<Boolean> BOOLEAN = new WordCodec<>(
            Boolean.class.getName(),
            "true or false",
            Map.of(new JsonNode.WordNode("true"), true, new JsonNode.WordNode("false"), false),
            Schema.object(Map.entry("type", Schema.text("boolean"))));

    /** A small whole number without a unit: a version. */
    public static final Codec<Integer> VERSION = new VersionCodec();

    private Codecs() {}

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
        return new TextCodec<>(type, name, expected, regex, parse, print);
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

    /** A quantity of several kinds, named after what it is for. */
    public static Codec<Quantity<?>> quantity(
            String name, String expected, Predicate<UnitSymbol<?>> units, Function<String, Quantity<?>> parse) {
        String regex = form(UnitSymbol.all().stream().filter(units));
        return text(Codec.typeName(Quantity.class, "?"), name, expected, regex, parse, Amounts::format);
    }

    /** A ratio that is always written in per cent: a bare "4" would be 400 %. */
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
        List<String> words = all.stream().map(word).toList();
        Map<JsonNode, E> byNode = all.stream().collect(Collectors.toMap(e -> Schema.text(word.apply(e)), e -> e));
        return new WordCodec<>(
                type.getName(),
                "one of " + words,
                byNode,
                Schema.object(Map.entry(
                        "enum", Schema.array(words.stream().map(Schema::text).toList()))));
    }

    /** A value that is written as another one; what the other can't become is a problem. */
    public static <V, T> Codec<T> mapped(String type, Codec<V> written, Function<V, T> read, Function<T, V> write) {
        return new MappedCodec<>(type, written, read, write);
    }

    static <V> Codec<Optional<V>> optional(Codec<V> codec) {
        return mapped(Codec.typeName(Optional.class, codec.type()), codec, Optional::of, Optional::orElseThrow);
    }

    /** A list, in the document's order. */
    public static <T> Codec<List<T>> listOf(Codec<T> item) {
        return new ListCodec<>(item);
    }

    /**
     * A list whose items have names of their own: the same name twice is a problem at the second one.
     *
     * @param what what the name is, for example "truck id"
     * @param field the field of an item that holds it
     */
    public static <T> Codec<List<T>> uniqueListOf(Codec<T> item, String what, Function<T, String> key, String field) {
        return new ListCodec<>(item) {
            @Override
            public List<T> read(JsonNode node, Pointer pointer, Problems problems) {
                List<T> values = super.read(node, pointer, problems);
                Set<String> seen = new HashSet<>();
                for (int i = 0; values != null && i < values.size(); i++) {
                    String name = key.apply(values.get(i));
                    if (!seen.add(name)) {
                        problems.add(
                                ProblemCode.REPEATED_ITEM,
                                pointer.at(i).at(field),
                                "each " + what + " once",
                                "\"" + name + "\" again");
                    }
                }
                return values;
            }
        };
    }

    /** A map by name, in the order of the names. */
    public static <T> Codec<Map<String, T>> mapOf(Codec<T> value) {
        return new MapCodec<>(value);
    }

    /** One value, or a list of such values. */
    public static <T> Codec<Object> oneOrSeveral(Codec<T> one) {
        return new OneOrSeveralCodec<>(one, listOf(one));
    }

    private record TextCodec<T>(
            String type,
            String name,
            String expected,
            String regex,
            Function<String, T> parse,
            Function<T, String> print)
            implements Codec<T> {
        @Override
        public T read(JsonNode node, Pointer pointer, Problems problems) {
            if (!(node instanceof JsonNode.TextNode text)) {
                problems.add(ProblemCode.WRONG_TYPE, pointer, expected, node);
                return null;
            }
            try {
                return parse.apply(text.text());
            } catch (InvalidInputException e) {
                problems.refused(pointer, e);
                return null;
            } catch (DateTimeException e) {
                problems.add(ProblemCode.WRONG_FORM, pointer, expected, node);
                return null;
            }
        }

        @Override
        public JsonNode write(T value) {
            return Schema.text(print.apply(value));
        }

        @Override
        public JsonNode describe(Schema schema) {
            return schema.reference(name, () -> Schema.textOf(expected, regex));
        }
    }

    private record WordCodec<T>(
            String type, String expected, Map<JsonNode, T> byNode, Map<T, JsonNode> nodes, JsonNode description)
            implements Codec<T> {
        WordCodec(String type, String expected, Map<JsonNode, T> byNode, JsonNode description) {
            this(
                    type,
                    expected,
                    byNode,
                    byNode.entrySet().stream().collect(Collectors.toMap(Map.Entry::getValue, Map.Entry::getKey)),
                    description);
        }

        @Override
        public T read(JsonNode node, Pointer pointer, Problems problems) {
            T value = byNode.get(node);
            if (value != null) {
                return value;
            }
            boolean isWord = node instanceof JsonNode.TextNode
                    && byNode.keySet().iterator().next() instanceof JsonNode.TextNode;
            problems.add(isWord ? ProblemCode.UNKNOWN_WORD : ProblemCode.WRONG_TYPE, pointer, expected, node);
            return null;
        }

        @Override
        public JsonNode write(T value) {
            return nodes.get(value);
        }

        @Override
        public JsonNode describe(Schema schema) {
            return description;
        }
    }

    private record VersionCodec() implements Codec<Integer> {
        @Override
        public String type() {
            return Integer.class.getName();
        }

        @Override
        public Integer read(JsonNode node, Pointer pointer, Problems problems) {
            if (node instanceof JsonNode.WordNode number && number.word().matches("[1-9][0-9]{0,8}")) {
                return Integer.valueOf(number.word());
            }
            problems.add(ProblemCode.WRONG_TYPE, pointer, "a version number, 1 or more", node);
            return null;
        }

        @Override
        public JsonNode write(Integer value) {
            return new JsonNode.WordNode(value.toString());
        }

        @Override
        public JsonNode describe(Schema schema) {
            return Schema.object(
                    Map.entry("type", Schema.text("integer")), Map.entry("minimum", new JsonNode.WordNode("1")));
        }
    }

    private record MappedCodec<V, T>(String type, Codec<V> written, Function<V, T> reader, Function<T, V> writer)
            implements Codec<T> {
        @Override
        public T read(JsonNode node, Pointer pointer, Problems problems) {
            V value = written.read(node, pointer, problems);
            try {
                return value == null ? null : reader.apply(value);
            } catch (InvalidInputException e) {
                problems.refused(pointer, e);
                return null;
            }
        }

        @Override
        public JsonNode write(T value) {
            return written.write(writer.apply(value));
        }

        @Override
        public JsonNode describe(Schema schema) {
            return written.describe(schema);
        }
    }

    private static class ListCodec<T> implements Codec<List<T>> {
        private final Codec<T> item;

        ListCodec(Codec<T> item) {
            this.item = item;
        }

        @Override
        public String type() {
            return Codec.typeName(List.class, item.type());
        }

        @Override
        public List<T> read(JsonNode node, Pointer pointer, Problems problems) {
            if (!(node instanceof JsonNode.ArrayNode array)) {
                problems.add(ProblemCode.WRONG_TYPE, pointer, "an array", node);
                return null;
            }
            List<T> values = new ArrayList<>();
            for (JsonNode one : array.items()) {
                values.add(item.read(one, pointer.at(values.size()), problems));
            }
            return values.contains(null) ? null : values;
        }

        @Override
        public JsonNode write(List<T> value) {
            return new JsonNode.ArrayNode(value.stream().map(item::write).toList());
        }

        @Override
        public JsonNode describe(Schema schema) {
            return Schema.object(Map.entry("type", Schema.text("array")), Map.entry("items", item.describe(schema)));
        }
    }

    private record MapCodec<T>(Codec<T> value) implements Codec<Map<String, T>> {
        @Override
        public String type() {
            return Codec.typeName(Map.class, String.class.getName(), value.type());
        }

        @Override
        public Map<String, T> read(JsonNode node, Pointer pointer, Problems problems) {
            if (!(node instanceof JsonNode.ObjectNode object)) {
                problems.add(ProblemCode.WRONG_TYPE, pointer, "an object", node);
                return null;
            }
            Map<String, T> values = new TreeMap<>();
            object.fields().forEach((name, one) -> values.put(name, value.read(one, pointer.at(name), problems)));
            return values.containsValue(null) ? null : values;
        }

        @Override
        public JsonNode write(Map<String, T> values) {
            Map<String, JsonNode> fields = new TreeMap<>();
            values.forEach((name, one) -> fields.put(name, value.write(one)));
            return new JsonNode.ObjectNode(fields);
        }

        @Override
        public JsonNode describe(Schema schema) {
            return Schema.object(
                    Map.entry("type", Schema.text("object")),
                    Map.entry("additionalProperties", value.describe(schema)));
        }
    }

    private record OneOrSeveralCodec<T>(Codec<T> one, Codec<List<T>> several) implements Codec<Object> {
        @Override
        public String type() {
            return "?";
        }

        @Override
        public Object read(JsonNode node, Pointer pointer, Problems problems) {
            return node instanceof JsonNode.ArrayNode
                    ? several.read(node, pointer, problems)
                    : one.read(node, pointer, problems);
        }

        /** What is written was checked by whoever made the value. */
        @SuppressWarnings("unchecked")
        @Override
        public JsonNode write(Object value) {
            return value instanceof List<?> list ? several.write((List<T>) list) : one.write((T) value);
        }

        @Override
        public JsonNode describe(Schema schema) {
            return Schema.object(
                    Map.entry("anyOf", Schema.array(List.of(one.describe(schema), several.describe(schema)))));
        }
    }
}
