package org.gritwright.core.record;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.tuple;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.gritwright.core.curve.CurveModel;
import org.gritwright.core.document.DocumentLimits;
import org.gritwright.core.document.Problem;
import org.gritwright.core.document.RejectedDocumentException;
import org.gritwright.core.fleet.day.FleetDay;
import org.gritwright.core.fleet.day.SpreaderEntry;
import org.gritwright.core.fleet.day.TruckDay;
import org.gritwright.core.json.DocumentRefusals;
import org.gritwright.units.Amounts;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

@Tag("jackson")
@Tag("locale")
class DocumentRefusalTest {
    private static final String GOOD = Document.FLEET_DAY.toText(FleetDays.small());

    static List<Problem> problems(String text) {
        return problems(text, DocumentLimits.COMMON);
    }

    private static List<Problem> problems(String text, DocumentLimits limits) {
        RejectedDocumentException refused = catchThrowableOfType(
                RejectedDocumentException.class,
                () -> Document.FLEET_DAY.read(new ByteArrayInputStream(text.getBytes(StandardCharsets.UTF_8)), limits));
        assertThat(refused).as("refusal").isNotNull();
        return DocumentRefusals.withoutPlaces(refused);
    }

    /** Puts one text for another, and proves that there was something to replace. */
    private static String good(String part, String replacement) {
        assertThat(GOOD).contains(part);
        return GOOD.replace(part, replacement);
    }

    @Test
    void theUnchangedDocumentIsRead() throws IOException, RejectedDocumentException {
        assertThat(DocumentLawsTest.read(Document.FLEET_DAY, GOOD)).isEqualTo(FleetDays.small());
    }

    @ParameterizedTest(name = "{0} instead of {1}")
    @CsvSource(delimiter = '|', quoteCharacter = '\'', textBlock = """
            "gross": "165.5 lb"      | "gross": 165.5                  | /trucks/0/calibrationCatches/0/containers/0/gross
            "gross": "165.5 lb"      | "gross": "165.5"                | /trucks/0/calibrationCatches/0/containers/0/gross
            "gross": "165.5 lb"      | "gross": "165.5 lb/mi"          | /trucks/0/calibrationCatches/0/containers/0/gross
            "gross": "165.5 lb"      | "gross": "165,5 lb"             | /trucks/0/calibrationCatches/0/containers/0/gross
            "gross": "165.5 lb"      | "gross": "NaN lb"               | /trucks/0/calibrationCatches/0/containers/0/gross
            "gross": "165.5 lb"      | "gross": "1e999 lb"             | /trucks/0/calibrationCatches/0/containers/0/gross
            "gross": "165.5 lb"      | "gross": null                   | /trucks/0/calibrationCatches/0/containers/0/gross
            "gross": "165.5 lb"      | "gross": ""                     | /trucks/0/calibrationCatches/0/containers/0/gross
            "gross": "165.5 lb"      | "gross": {}                     | /trucks/0/calibrationCatches/0/containers/0/gross
            "gross": "165.5 lb"      | "gross": "1 lb", "gross": "2 lb" | /trucks/0/calibrationCatches/0/containers/0/gross
            "gross": "165.5 lb",     | ''                              | /trucks/0/calibrationCatches/0/containers/0/gross
            "tare": "4 lb"           | "tare": "4 lb", "lid": "1 lb"   | /trucks/0/calibrationCatches/0/containers/0/lid
            "container": "pail 1"    | "container": " "                | /trucks/0/calibrationCatches/0/containers/0/container
            "container": "pail 1"    | "container": 1                  | /trucks/0/calibrationCatches/0/containers/0/container
            "primed": true           | "primed": "true"                | /trucks/0/calibrationCatches/0/primed
            "primed": true           | "primed": 1                     | /trucks/0/calibrationCatches/0/primed
            "coasting": "in-both"    | "coasting": "perhaps"           | /trucks/0/calibrationCatches/0/coasting
            "at": "2026-10-19T08:40:00-04:00" | "at": "2026-10-19T08:40:00" | /trucks/0/calibrationCatches/0/at
            "day": "2026-10-19"      | "day": "2026-02-30"             | /day
            "day": "2026-10-19"      | "day": "19.10.2026"             | /day
            "tolerance": "4 %"       | "tolerance": "4 lb"             | /tolerance
            "tolerance": "4 %"       | "tolerance": "4"                | /tolerance
            "tolerance": "4 %"       | "tolerance": "0 %"              | /tolerance
            "tolerance": "4 %"       | "tolerance": "-4 %"             | /tolerance
            "tolerance": "4 %"       | "tolerance": "100 %"            | /tolerance
            "day": "2026-10-19"      | "day": "-999999999-01-01"       | /day
            "day": "2026-10-19"      | "day": "+12345-01-01"           | /day
            "at": "2026-10-19T08:40:00-04:00" | "at": "2026-10-19t08:40z" | /trucks/0/calibrationCatches/0/at
            "version": 1             | "version": 0                    | /trucks/0/conveyor/version
            "version": 1             | "version": 1.0                  | /trucks/0/conveyor/version
            "width": "22 in"         | "width": "22 inches"            | /trucks/0/gate/parameters/width
            "width": "22 in"         | "width": ["22 in", 22]          | /trucks/0/gate/parameters/width/1
            "width": "22 in"         | "width": [["22 in"]]            | /trucks/0/gate/parameters/width/0
            "width": "22 in"         | "width": {"in": "22"}           | /trucks/0/gate/parameters/width
            "setting": "2 in"        | "setting": "2 lb"               | /trucks/0/calibrationCatches/0/setting
            "setting": "2 in"        | "setting": "2 rev"              | /trucks/0/calibrationCatches/0/setting
            "setting": "2 in"        | "setting": 2                    | /trucks/0/calibrationCatches/0/setting
            "setting": "2 in"        | "setting": "two"                | /trucks/0/calibrationCatches/0/setting
            "gearRatio": "1"         | "gearRatio": "1", "curveModel": "spline" | /trucks/0/curveModel
            "gearRatio": "1"         | "gearRatio": "1", "controlSettings": [{"setting": "2"}] | /trucks/0/controlSettings/0/shaftSpeed
            "gearRatio": "1"         | "gearRatio": "1", "controlSettings": [{"setting": "-2", "shaftSpeed": "9 rev/min"}] | /trucks/0/controlSettings/0
            "name": "road salt"      | "name": "road salt", "grainDiameter": "3 kg" | /materials/0/grainDiameter
            "name": "road salt"      | "name": "road salt", "grainDiameter": "0 mm" | /materials/0
            "division": "0.5 lb"     | "division": "0 lb"              | /scales/0
            "scales": [              | "scale": "none", "scales": [    | /scale
            """)
    void oneSlipIsOneProblemAtItsPlace(String part, String replacement, String pointer) {
        String change = replacement == null ? "" : replacement;
        assertThat(problems(good(part, change)))
                .extracting(Problem::pointer)
                .contains(pointer)
                .allMatch(p -> p.equals(pointer) || p.endsWith("/version"));
    }

    @ParameterizedTest(name = "{1} is {2}")
    @CsvSource(delimiter = '|', quoteCharacter = '\'', textBlock = """
            "gross": "165.5 lb"      | "gross": 165.5                  | wrong-type
            "gross": "165.5 lb"      | "gross": "165.5 lb/mi"          | wrong-kind
            "gross": "165.5 lb"      | "gross": "1 lb", "gross": "2 lb" | repeated-name
            "gross": "165.5 lb",     | ''                              | missing-field
            "tare": "4 lb"           | "tare": "4 lb", "lid": "1 lb"   | unknown-field
            "primed": true           | "primed": "true"                | wrong-type
            "primed": true           | "primed": 1                     | wrong-type
            "coasting": "in-both"    | "coasting": "perhaps"           | unknown-word
            "coasting": "in-both"    | "coasting": 2                   | wrong-type
            "day": "2026-10-19"      | "day": "19.10.2026"             | wrong-form
            "tolerance": "4 %"       | "tolerance": "100 %"            | not-accepted
            "division": "0.5 lb"     | "division": "0 lb"              | not-positive
            """)
    void everyProblemHasAStableCode(String part, String replacement, String code) {
        assertThat(problems(good(part, replacement == null ? "" : replacement)))
                .extracting(Problem::code)
                .contains(code);
    }

    @Test
    void aSettingThatIsNoneSaysWhatOneIs() {
        assertThat(problems(good("\"setting\": \"2 in\"", "\"setting\": \"2 lb\"")))
                .containsExactly(new Problem(
                        "not-accepted",
                        "/trucks/0/calibrationCatches/0/setting",
                        "gate setting: a height, the number of a painted mark, or a percentage",
                        "\"2 lb\""));
    }

    @Test
    void aGateIsSetByHeightByAPaintedMarkOrInPercent() throws IOException, RejectedDocumentException {
        for (String opening : List.of("2 in", "50.8 mm", "4", "3.5", "40 %")) {
            FleetDay day = DocumentLawsTest.read(
                    Document.FLEET_DAY, good("\"setting\": \"2 in\"", "\"setting\": \"" + opening + "\""));
            assertThat(day.trucks().get(0).calibrationCatches().get(0).entry().setting())
                    .contains(Amounts.parseAny(opening));
        }
    }

    @Test
    void aParameterMayBeAListEvenOfOne() throws IOException, RejectedDocumentException {
        assertThat(parameters("\"width\": [\"22 in\", \"5 cm\"]"))
                .containsExactly(Map.entry("width", List.of(Amounts.parseAny("22 in"), Amounts.parseAny("5 cm"))));
        assertThat(parameters("\"width\": [\"22 in\"]"))
                .containsExactly(Map.entry("width", List.of(Amounts.parseAny("22 in"))));
        assertThat(parameters("\"width\": []")).containsExactly(Map.entry("width", List.of()));
        assertThat(parameters("\"width\": \"22 in\"")).containsExactly(Map.entry("width", Amounts.parseAny("22 in")));
    }

    private static Map<String, Object> parameters(String width) throws IOException, RejectedDocumentException {
        FleetDay day = DocumentLawsTest.read(Document.FLEET_DAY, good("\"width\": \"22 in\"", width));
        return Map.copyOf(
                ((SpreaderEntry) day.trucks().get(0).spreader()).gate().parameters());
    }

    @Test
    void whatATruckDoesWithoutSensorIsRead() throws IOException, RejectedDocumentException {
        String settings = "\"gearRatio\": \"1\", \"curveModel\": \"dead-opening\", \"controlSettings\": ["
                + "{\"setting\": \"20 %\", \"shaftSpeed\": \"9 rev/min\"},"
                + "{\"setting\": \"40 %\", \"shaftSpeed\": \"18 rev/min\"}]";
        TruckDay truck = DocumentLawsTest.read(Document.FLEET_DAY, good("\"gearRatio\": \"1\"", settings))
                .trucks()
                .get(0);

        assertThat(truck.curveModel()).contains(CurveModel.DEAD_OPENING);
        assertThat(truck.spreader().controlSettings())
                .extracting(row -> Amounts.format(row.setting()), row -> Amounts.format(row.shaftSpeed()))
                .containsExactly(tuple("20 %", "9 rev/min"), tuple("40 %", "18 rev/min"));
    }

    @ParameterizedTest
    @ValueSource(strings = {"5.35 gal", "5.2", "5.2 lb", "5.2 rev", "5.2 lb/mi"})
    void aCalibrationInForceIsInOneOfTheFourForms(String value) {
        String truck = "\"gearRatio\": \"1\",";
        String inForce = "\"inForce\": [{\"value\": \"" + value
                + "\", \"since\": \"2026-10-01\", \"material\": \"road salt\"}],";
        assertThat(problems(good(truck, truck + inForce)))
                .extracting(Problem::pointer)
                .containsExactly("/trucks/0/inForce/0/value");
    }

    @Test
    void aNameTwiceInTheFleetIsAProblemAtTheSecondOne() {
        String truck = GOOD.substring(GOOD.indexOf("\"trucks\": [") + 11, GOOD.lastIndexOf(']'));
        List<Problem> problems = problems(GOOD.replace(truck, truck + "," + truck));
        assertThat(problems)
                .containsExactly(new Problem("repeated-item", "/trucks/1/id", "each truck id once", "\"T-01\" again"));
    }

    @Test
    void allProblemsAreListedNotJustTheFirst() {
        String broken = GOOD.replace("\"165.5 lb\"", "165.5")
                .replace("\"4 lb\"", "\"4 kilos\"")
                .replace("\"in-both\"", "\"perhaps\"")
                .replace("\"2026-11-01\"", "\"soon\"");
        assertThat(problems(broken))
                .extracting(Problem::pointer)
                .containsExactly(
                        "/seasonStart",
                        "/trucks/0/calibrationCatches/0/containers/0/gross",
                        "/trucks/0/calibrationCatches/0/containers/0/tare",
                        "/trucks/0/calibrationCatches/0/coasting");
    }

    @Test
    void aProblemSaysWhatIsExpectedAndWhatStandsThere() {
        assertThat(problems(good("\"165.5 lb\"", "165.5")).get(0))
                .hasToString("/trucks/0/calibrationCatches/0/containers/0/gross: expected mass with its unit, for"
                        + " example \"1 lb\", found 165.5");
    }

    @Test
    void anotherFormatOrVersionIsNotReadAnyFurther() {
        assertThat(problems(good("gritwright/fleet-day", "gritwright/other").replace("165.5 lb", "165.5")))
                .containsExactly(
                        new Problem("wrong-format", "/format", "\"gritwright/fleet-day\"", "\"gritwright/other\""));
        assertThat(problems(good("\"formatVersion\": 2", "\"formatVersion\": 3")))
                .containsExactly(new Problem(
                        "newer-version",
                        "/formatVersion",
                        "version 2 or less",
                        "version 3, which needs a newer version of this library"));
        assertThat(problems(good("\"formatVersion\": 2", "\"formatVersion\": \"2\"")))
                .extracting(Problem::pointer)
                .containsExactly("/formatVersion");
        assertThat(problems("{}")).extracting(Problem::pointer).containsExactly("/format", "/formatVersion");
    }

    @Test
    void whatIsNotOneJsonObjectIsRefused() {
        assertThat(problems("")).extracting(Problem::found).containsExactly("nothing");
        assertThat(problems("{")).extracting(Problem::code).containsExactly("not-json");
        assertThat(problems("   ")).extracting(Problem::found).containsExactly("nothing");
        assertThat(problems("[]")).containsExactly(new Problem("wrong-type", "", "an object", "an array"));
        assertThat(problems("7")).containsExactly(new Problem("wrong-type", "", "an object", "7"));
        assertThat(problems(GOOD + "{}")).extracting(Problem::expected).containsExactly("one JSON document");
        assertThat(problems(GOOD.substring(0, 200)))
                .extracting(Problem::expected)
                .containsExactly("JSON (RFC 8259)");
        assertThat(problems(GOOD.replace("\"day\"", "// a comment\n\"day\"")))
                .extracting(Problem::found)
                .containsExactly("a comment, which JSON doesn't have");
        assertThat(problems(GOOD.replace("true", "NaN"))).hasSize(1);
        assertThat(problems(GOOD.replace("\"day\"", "'day'"))).hasSize(1);
    }

    @Test
    void filesPastTheLimitsAreRefused() {
        int length = GOOD.getBytes(StandardCharsets.UTF_8).length;
        assertThat(problems(GOOD, new DocumentLimits(length - 1, 16, 10_000, 10)))
                .containsExactly(new Problem("too-large", "", "at most " + (length - 1) + " bytes", "more"));
        assertThat(problems(GOOD, new DocumentLimits(length, 3, 10_000, 10))).hasSize(1);
        assertThat(problems(GOOD.replace("T-01", "T".repeat(101)), new DocumentLimits(1 << 20, 16, 100, 10)))
                .extracting(Problem::code, Problem::expected)
                .containsExactly(tuple("too-large", "at most 16 levels and 100 characters a text"));
        String deep = "[".repeat(100_000);
        assertThat(problems(deep)).extracting(Problem::code).containsExactly("too-large");
    }

    @Test
    void aDocumentAtTheLimitIsRead() throws IOException, RejectedDocumentException {
        byte[] bytes = GOOD.getBytes(StandardCharsets.UTF_8);
        assertThat(Document.FLEET_DAY.read(
                        new ByteArrayInputStream(bytes), new DocumentLimits(bytes.length, 16, 100, 1)))
                .isEqualTo(FleetDays.small());
    }

    @Test
    void noMoreProblemsAreListedThanTheLimitAllows() {
        String broken = good("\"165.5 lb\"", "1").replace("\"4 lb\"", "2").replace("\"356 pulse\"", "3");
        assertThat(problems(broken, new DocumentLimits(1 << 20, 16, 100, 2))).hasSize(2);
    }

    private static RejectedDocumentException refusal(String text) {
        return catchThrowableOfType(
                RejectedDocumentException.class,
                () -> Document.FLEET_DAY.read(new ByteArrayInputStream(text.getBytes(StandardCharsets.UTF_8))));
    }

    @Test
    void aLongNameOfAFieldIsRefusedAtOnce() {
        String unknown = "x".repeat(10_000);
        String fields =
                IntStream.range(0, 1001).mapToObj(i -> "\"f" + i + "\": 1").collect(Collectors.joining(", "));
        RejectedDocumentException refused = refusal("{\"" + unknown + "\": {" + fields + "}}");

        assertThat(refused.problems())
                .singleElement()
                .satisfies(problem -> assertThat(problem.code()).isEqualTo("too-large"))
                .satisfies(problem -> assertThat(problem.expected()).isEqualTo("at most 200 characters a name"));
        assertThat(refused.getMessage()).hasSizeLessThan(300);
    }

    /** Unknown fields, each of which is reported at its place under thirteen long names. */
    @Test
    void whatIsWrongIsBoundedInNumberAndSize() {
        String names = IntStream.range(0, 5000)
                .mapToObj(i -> "\"" + "~".repeat(190) + i + "\": 1")
                .collect(Collectors.joining(", "));
        RejectedDocumentException refused = refusal(good("\"gearRatio\": \"1\"", "\"gearRatio\": \"1\", " + names));

        assertThat(refused.problems()).hasSizeLessThanOrEqualTo(DocumentLimits.COMMON.problems());
        assertThat(refused.problems().size() + refused.more()).isEqualTo(5000);
        assertThat(refused.getMessage())
                .endsWith("\nand " + refused.more() + " more")
                .hasSizeLessThan(DocumentLimits.COMMON.problemsLength() + 2000);
    }

    @Test
    void theProblemsAreCutWhereTheirTextsGetLong() {
        DocumentLimits few = new DocumentLimits(1 << 20, 16, 1000, 10_000, 200, 1000, 300);
        String broken = good("\"165.5 lb\"", "1").replace("\"4 lb\"", "2").replace("\"356 pulse\"", "3");
        RejectedDocumentException refused = catchThrowableOfType(
                RejectedDocumentException.class,
                () -> Document.FLEET_DAY.read(new ByteArrayInputStream(broken.getBytes(StandardCharsets.UTF_8)), few));

        assertThat(refused.problems()).isNotEmpty();
        assertThat(refused.more()).isPositive();
        assertThat(refused.problems().stream()
                        .mapToInt(one -> one.toString().length())
                        .sum())
                .isLessThanOrEqualTo(300);
    }

    @Test
    void whatIsFoundIsQuotedShort() {
        assertThat(problems(good("true", "1" + "0".repeat(5000))))
                .singleElement()
                .satisfies(problem -> assertThat(problem.found()).hasSize(61));
        assertThat(problems(good("\"22 in\"", "\"22 " + "i".repeat(5000) + "\"")))
                .allSatisfy(problem -> assertThat(problem.toString()).hasSizeLessThan(1500));
    }

    @Test
    void aDocumentHasNoMoreValuesThanTheLimit() throws IOException, RejectedDocumentException {
        int nodes = 1;
        while (true) {
            try {
                Document.FLEET_DAY.read(
                        new ByteArrayInputStream(GOOD.getBytes(StandardCharsets.UTF_8)),
                        new DocumentLimits(1 << 20, 16, nodes, 100, 200, 10, 1000));
                break;
            } catch (RejectedDocumentException e) {
                String most = "at most " + nodes + " values";
                assertThat(e.problems()).extracting(Problem::expected).containsExactly(most);
                nodes++;
            }
        }
        // Every text, word, list and object: format and version, day and season, ...
        assertThat(nodes).isBetween(40, 100);
    }

    @Test
    void aNameIsShortEnoughToBeRead() throws IOException, RejectedDocumentException {
        assertThat(DocumentLawsTest.read(Document.FLEET_DAY, good("T-01", "T".repeat(200)))
                        .trucks()
                        .get(0)
                        .id())
                .hasSize(200);
        assertThat(problems(good("T-01", "T".repeat(201))))
                .containsExactly(new Problem("too-large", "/trucks/0/id", "at most 200 characters", "201 characters"));
        assertThat(problems(good("pail 1", "T".repeat(9990))))
                .extracting(Problem::pointer)
                .containsExactly("/trucks/0/calibrationCatches/0/containers/0/container");
    }

    @ParameterizedTest
    @ValueSource(strings = {"UTF-16", "UTF-16LE", "UTF-16BE", "UTF-32", "UTF-32LE"})
    void noOtherEncodingThanUtf8IsRead(String encoding) {
        RejectedDocumentException refused = catchThrowableOfType(
                RejectedDocumentException.class,
                () -> Document.FLEET_DAY.read(new ByteArrayInputStream(GOOD.getBytes(Charset.forName(encoding)))));

        assertThat(DocumentRefusals.withoutPlaces(refused))
                .containsExactly(new Problem("not-json", "", "UTF-8", "another encoding"));
    }

    @Test
    void theStreamStaysOpen() throws IOException, RejectedDocumentException {
        InputStream in = new ByteArrayInputStream(GOOD.getBytes(StandardCharsets.UTF_8)) {
            @Override
            public void close() {
                throw new AssertionError("closed");
            }
        };
        assertThat(Document.FLEET_DAY.read(in)).isEqualTo(FleetDays.small());
    }

    @Test
    void aPointerEscapesSlashAndTilde() {
        assertThat(problems(good("\"width\": \"22 in\"", "\"a/b~c\": 1")))
                .extracting(Problem::pointer)
                .containsExactly("/trucks/0/gate/parameters/a~1b~0c");
    }
}
