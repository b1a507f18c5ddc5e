package org.gritwright.core.record;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.DoublePredicate;
import java.util.function.Function;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Length;
import org.gritwright.core.calibration.FactorForm;
import org.gritwright.core.metering.OpeningReading;
import org.gritwright.core.weighing.AccuracyClass;
import org.gritwright.core.weighing.ScaleAccuracy;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.UnitSymbol;
import org.gritwright.units.check.Require;

/** Codecs of plain values: texts, quantities, dates, words of a fixed choice, lists and maps. */
final class Codecs {
    private static final String NUMBER = "-?(0|[1-9][0-9]*)(\\.[0-9]+)?([eE][+-]?[0-9]+)?";

    private static final String NEW_SCALE = " new";

    private static final String COUNT_FORM = "^[1-9][0-9]{0,3}$";
    private static final String DATE_FORM = "^[0-9]{4}-[0-9]{2}-[0-9]{2}$";
    private static final String TIME_FORM =
            "^[0-9]{4}-[0-9]{2}-[0-9]{2}T[0-9]{2}:[0-9]{2}(:[0-9]{2}(\\.[0-9]{1,9})?)?(Z|[+-][0-9]{2}:[0-9]{2})$";

    static final Codec<String> TEXT = ofNamedText(
            "text", "a text that is not blank", ".*\\S.*", text -> Require.text("text", text), Function.identity());

    static final Codec<LocalDate> DATE = ofNamedText(
            "date",
            "a date, for example \"2026-10-19\"",
            DATE_FORM,
            inForm(DATE_FORM, LocalDate::parse),
            LocalDate::toString);

    static final Codec<OffsetDateTime> TIME = ofNamedText(
            "time-of-day",
            "a time with its offset, for example \"2026-10-19T08:40:00-04:00\"",
            TIME_FORM,
            inForm(TIME_FORM, OffsetDateTime::parse),
            DateTimeFormatter.ISO_OFFSET_DATE_TIME::format);

    /** A quantity of whatever kind its unit has. */
    static final Codec<Quantity<?>> ANY_QUANTITY = ofNamedText(
            "quantity",
            "a number and a unit, for example \"5.23 lb/rev\"",
            pattern(UnitSymbol.all().stream()),
            Amounts::parseAny,
            Amounts::format);

    /** A calibration in one of the forms that displays keep. */
    static final Codec<Quantity<?>> FACTOR = ofNamedText(
            "calibration-value",
            "a mass per revolution or pulse, or revolutions or pulses per mass, for example \"5.23 lb/rev\"",
            pattern(UnitSymbol.all().stream().filter(row -> isFactor(row.kind()))),
            Codecs::parseFactor,
            Amounts::format);

    /** A gate opening: a measured height, or the setting of a painted mark. */
    static final Codec<Quantity<?>> OPENING = ofNamedText(
            "gate-opening",
            "a length, or a bare number for a setting, for example \"2 in\"",
            pattern(UnitSymbol.all().stream()
                    .filter(row -> row.kind().equals(Length.class) || row.unit().equals(SpreadingUnits.ONE))),
            Codecs::parseOpening,
            Amounts::format);

    /** The parameters of a conveyor or gate: a quantity each, or a list of quantities. */
    static final Codec<Map<String, ?>> PARAMETERS = parameters();

    /** A tolerance, always in per cent: a bare "4" would be 400 %. */
    static final Codec<Quantity<Dimensionless>> TOLERANCE = ofNamedText(
            "tolerance",
            "a percentage above 0 % and below 100 %, for example \"4 %\"",
            "^" + NUMBER + " ?%$",
            text -> percentage(text, "above 0 % and below 100 %", number -> number > 0 && number < 100),
            Amounts::format);

    /** A part of a whole, always in per cent. */
    static final Codec<Quantity<Dimensionless>> PART = ofNamedText(
            "part-of-a-whole",
            "a percentage from 0 % to 100 %, for example \"80 %\"",
            "^" + NUMBER + " ?%$",
            text -> percentage(text, "from 0 % to 100 %", number -> number >= 0 && number <= 100),
            Amounts::format);

    /** How accurate a scale is: a part of its reading, or the class on its plate, in service unless it says new. */
    static final Codec<ScaleAccuracy> SCALE_ACCURACY = ofNamedText(
            "scale-accuracy",
            "a percentage of the reading or an accuracy class, for example \"0.1 %\", \"hb44-iii\" or \"r76-iii new\"",
            "^(" + NUMBER + " ?%|("
                    + Arrays.stream(AccuracyClass.values())
                            .map(AccuracyClass::id)
                            .collect(Collectors.joining("|")) + ")( new)?)$",
            Codecs::parseAccuracy,
            Codecs::printAccuracy);

    static final Codec<Boolean> BOOLEAN = ofWord("true or false", "boolean", Map.of("true", true, "false", false));

    /** A small whole number without a unit: a version. */
    static final Codec<Integer> VERSION = new Codec<>() {
        @Override
        public Integer read(JsonNode node, Pointer pointer, Problems problems) {
            if (node instanceof JsonNode.WordNode number && number.word().matches("[1-9][0-9]{0,8}")) {
                return Integer.valueOf(number.word());
            }
            problems.add(pointer, "a version number, 1 or more", node);
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
    };

    /** How many of something. */
    static final Codec<Integer> COUNT = ofNamedText(
            "how-many",
            "a whole number from 1 to 9999, for example \"6\"",
            COUNT_FORM,
            inForm(COUNT_FORM, Integer::valueOf),
            Object::toString);

    private Codecs() {}

    private static Quantity<Dimensionless> percentage(String text, String limits, DoublePredicate accepted) {
        Quantity<Dimensionless> value = Amounts.parse(Dimensionless.class, text);
        if (!value.getUnit().equals(SpreadingUnits.PERCENT)
                || !accepted.test(value.getValue().doubleValue())) {
            throw new InvalidInputException("percentage", limits + ", written with %", "\"" + text + "\"");
        }
        return value;
    }

    private static ScaleAccuracy parseAccuracy(String text) {
        boolean isNew = text.endsWith(NEW_SCALE);
        String id = isNew ? text.substring(0, text.length() - NEW_SCALE.length()) : text;
        return Arrays.stream(AccuracyClass.values())
                .filter(one -> one.id().equals(id))
                .findFirst()
                .<ScaleAccuracy>map(one -> new ScaleAccuracy.OfClass(
                        one, isNew ? AccuracyClass.Stage.NEW : AccuracyClass.Stage.IN_SERVICE))
                .orElseGet(() -> new ScaleAccuracy.Stated(
                        percentage(text, "above 0 % and below 100 %", number -> number > 0 && number < 100)));
    }

    private static String printAccuracy(ScaleAccuracy accuracy) {
        if (accuracy instanceof ScaleAccuracy.OfClass ofClass) {
            return ofClass.accuracyClass().id() + (ofClass.stage() == AccuracyClass.Stage.NEW ? NEW_SCALE : "");
        }
        return Amounts.format(((ScaleAccuracy.Stated) accuracy).ofReading());
    }

    private static boolean isFactor(Class<?> kind) {
        return Arrays.stream(FactorForm.values()).anyMatch(form -> form.kind().equals(kind));
    }

    private static Quantity<?> parseFactor(String text) {
        Quantity<?> value = Amounts.parseAny(text);
        if (!isFactor(UnitSymbol.of(value.getUnit()).kind())) {
            throw new InvalidInputException(
                    "calibration",
                    "a mass per revolution or pulse, or revolutions or pulses per mass",
                    "\"" + text + "\"");
        }
        return value;
    }

    /** The kind only: a value that can't be set is a matter of its truck. */
    private static Quantity<?> parseOpening(String text) {
        Quantity<?> reading = Amounts.parseAny(text);
        OpeningReading.isLength(reading);
        return reading;
    }

    /** A quantity of one kind. */
    static <Q extends Quantity<Q>> Codec<Quantity<Q>> quantity(Class<Q> kind) {
        String words = UnitSymbol.kindName(kind);
        List<UnitSymbol<Q>> rows = UnitSymbol.ofKind(kind);
        String example = "\"" + Amounts.format(Amounts.of(1, rows.get(0).unit())) + "\"";
        return ofNamedText(
                words.replace(' ', '-'),
                words + " with its unit, for example " + example,
                pattern(rows.stream()),
                text -> Amounts.parse(kind, text),
                Amounts::format);
    }

    private static String pattern(Stream<? extends UnitSymbol<?>> rows) {
        Set<String> spellings = new LinkedHashSet<>();
        rows.forEach(row -> {
            spellings.add(row.symbol());
            spellings.addAll(row.spellings());
        });
        // The bare number has no symbol and takes no space; everything else may.
        String units = spellings.stream().filter(s -> !s.isEmpty()).collect(Collectors.joining("|"));
        return "^" + NUMBER + (spellings.contains("") ? "( ?(" + units + "))?" : " ?(" + units + ")") + "$";
    }

    /** One word of an enum, in lower case with hyphens. */
    static <E extends Enum<E>> Codec<E> choice(Class<E> type) {
        Map<String, E> byWord = Arrays.stream(type.getEnumConstants())
                .collect(Collectors.toMap(
                        e -> e.name().toLowerCase(Locale.ROOT).replace('_', '-'),
                        Function.identity(),
                        (a, b) -> a,
                        LinkedHashMap::new));
        return choice(byWord);
    }

    /** One word of a fixed choice. */
    static <T> Codec<T> choice(Map<String, T> byWord) {
        Map<T, String> words =
                byWord.entrySet().stream().collect(Collectors.toMap(Map.Entry::getValue, Map.Entry::getKey));
        return new Codec<>() {
            @Override
            public T read(JsonNode node, Pointer pointer, Problems problems) {
                T value = node instanceof JsonNode.TextNode text ? byWord.get(text.text()) : null;
                if (value == null) {
                    problems.add(pointer, "one of " + byWord.keySet(), node);
                }
                return value;
            }

            @Override
            public JsonNode write(T value) {
                return new JsonNode.TextNode(words.get(value));
            }

            @Override
            public JsonNode describe(Schema schema) {
                return Schema.object(Map.entry(
                        "enum",
                        Schema.array(byWord.keySet().stream().map(Schema::text).toList())));
            }
        };
    }

    /** A list, in the document's order. */
    static <T> Codec<List<T>> listOf(Codec<T> item) {
        return new Codec<>() {
            @Override
            public List<T> read(JsonNode node, Pointer pointer, Problems problems) {
                if (!(node instanceof JsonNode.ArrayNode array)) {
                    problems.add(pointer, "an array", node);
                    return null;
                }
                List<T> values = new ArrayList<>();
                for (JsonNode one : array.items()) {
                    int index = values.size();
                    values.add(item.read(one, pointer.at(index), problems));
                }
                return values.contains(null) ? null : values;
            }

            @Override
            public JsonNode write(List<T> value) {
                return new JsonNode.ArrayNode(value.stream().map(item::write).toList());
            }

            @Override
            public JsonNode describe(Schema schema) {
                return Schema.object(
                        Map.entry("type", Schema.text("array")), Map.entry("items", item.describe(schema)));
            }
        };
    }

    /** Text to a quantity, an array of texts to a list of quantities. */
    private static Codec<Map<String, ?>> parameters() {
        Codec<List<Quantity<?>>> several = listOf(ANY_QUANTITY);
        Codec<Map<String, Object>> map = mapOf(new Codec<>() {
            @Override
            public Object read(JsonNode node, Pointer pointer, Problems problems) {
                return node instanceof JsonNode.ArrayNode
                        ? several.read(node, pointer, problems)
                        : ANY_QUANTITY.read(node, pointer, problems);
            }

            @Override
            public JsonNode write(Object value) {
                return value instanceof List<?> list
                        ? new JsonNode.ArrayNode(list.stream()
                                .map(item -> ANY_QUANTITY.write((Quantity<?>) item))
                                .toList())
                        : ANY_QUANTITY.write((Quantity<?>) value);
            }

            @Override
            public JsonNode describe(Schema schema) {
                return Schema.object(Map.entry(
                        "anyOf", Schema.array(List.of(ANY_QUANTITY.describe(schema), several.describe(schema)))));
            }
        });
        return new Codec<>() {
            @Override
            public Map<String, ?> read(JsonNode node, Pointer pointer, Problems problems) {
                return map.read(node, pointer, problems);
            }

            @Override
            public JsonNode write(Map<String, ?> value) {
                return map.write(new TreeMap<>(value));
            }

            @Override
            public JsonNode describe(Schema schema) {
                return map.describe(schema);
            }
        };
    }

    /** A map by name, in the order of the names. */
    static <T> Codec<Map<String, T>> mapOf(Codec<T> value) {
        return new Codec<>() {
            @Override
            public Map<String, T> read(JsonNode node, Pointer pointer, Problems problems) {
                if (!(node instanceof JsonNode.ObjectNode object)) {
                    problems.add(pointer, "an object", node);
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
        };
    }

    private static <T> Codec<T> ofWord(String expected, String type, Map<String, T> byWord) {
        Map<T, String> words =
                byWord.entrySet().stream().collect(Collectors.toMap(Map.Entry::getValue, Map.Entry::getKey));
        return new Codec<>() {
            @Override
            public T read(JsonNode node, Pointer pointer, Problems problems) {
                T value = node instanceof JsonNode.WordNode word ? byWord.get(word.word()) : null;
                if (value == null) {
                    problems.add(pointer, expected, node);
                }
                return value;
            }

            @Override
            public JsonNode write(T value) {
                return new JsonNode.WordNode(words.get(value));
            }

            @Override
            public JsonNode describe(Schema schema) {
                return Schema.object(Map.entry("type", Schema.text(type)));
            }
        };
    }

    private static <T> Codec<T> ofNamedText(
            String name, String expected, String pattern, Function<String, T> parse, Function<T, String> print) {
        Codec<T> codec = ofText(expected, pattern, parse, print);
        return new Codec<>() {
            @Override
            public T read(JsonNode node, Pointer pointer, Problems problems) {
                return codec.read(node, pointer, problems);
            }

            @Override
            public JsonNode write(T value) {
                return codec.write(value);
            }

            @Override
            public JsonNode describe(Schema schema) {
                return schema.reference(name, () -> codec.describe(schema));
            }
        };
    }

    /** The JDK's parsers take more than the schema does: years beyond 9999, small letters. */
    private static <T> Function<String, T> inForm(String regex, Function<String, T> parse) {
        Pattern pattern = Pattern.compile(regex);
        return text -> {
            if (!pattern.matcher(text).matches()) {
                throw new DateTimeException("not in the form " + regex);
            }
            return parse.apply(text);
        };
    }

    private static <T> Codec<T> ofText(
            String expected, String regex, Function<String, T> parse, Function<T, String> print) {
        return new Codec<>() {
            @Override
            public T read(JsonNode node, Pointer pointer, Problems problems) {
                if (!(node instanceof JsonNode.TextNode text)) {
                    problems.add(pointer, expected, node);
                    return null;
                }
                try {
                    return parse.apply(text.text());
                } catch (InvalidInputException e) {
                    problems.add(pointer, e.field() + ": " + e.accepted(), e.value());
                    return null;
                } catch (DateTimeException e) {
                    problems.add(pointer, expected, node);
                    return null;
                }
            }

            @Override
            public JsonNode write(T value) {
                return new JsonNode.TextNode(print.apply(value));
            }

            @Override
            public JsonNode describe(Schema schema) {
                return Schema.textOf(expected, regex);
            }
        };
    }
}
