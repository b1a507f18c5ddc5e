package org.gritwright.core.record;

import static org.assertj.core.api.Assertions.assertThat;

import com.networknt.schema.InputFormat;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.EdgeCasesMode;
import net.jqwik.api.Example;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.Tag;
import org.gritwright.core.document.DocumentLimits;
import org.gritwright.core.document.Problem;
import org.gritwright.core.document.RejectedDocumentException;
import org.gritwright.core.finding.Argument;
import org.gritwright.core.finding.Finding;
import org.gritwright.core.finding.FindingCode;
import org.gritwright.core.finding.FindingSamples;
import org.gritwright.core.finding.Term;
import org.gritwright.core.json.JsonNode;
import org.gritwright.core.json.JsonText;
import org.gritwright.core.json.Pointer;
import org.gritwright.core.json.Problems;
import org.gritwright.core.json.Schema;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;

/** How a finding stands in a record, of today and of version 1. */
@Tag("jackson")
@Tag("locale")
class FindingCodecTest {
    private final FindingCodec codec = new FindingCodec();

    private static JsonNode tree(String json) {
        try {
            Problems problems = new Problems(DocumentLimits.COMMON);
            JsonNode tree = JsonText.read(
                    new ByteArrayInputStream(json.getBytes(StandardCharsets.UTF_8)), DocumentLimits.COMMON, problems);
            problems.throwIfAny();
            return tree;
        } catch (IOException | RejectedDocumentException e) {
            throw new AssertionError(json, e);
        }
    }

    private Finding read(String json) {
        Problems problems = new Problems(DocumentLimits.COMMON);
        JsonNode tree = tree(json);
        FindingOfVersion1.toToday((JsonNode.ObjectNode) tree);
        Finding finding = codec.read(tree, Pointer.ROOT, problems);
        assertThat(finding).as(problems(json).toString()).isNotNull();
        return finding;
    }

    private List<Problem> problems(String json) {
        Problems problems = new Problems(DocumentLimits.COMMON);
        codec.read(tree(json), Pointer.ROOT, problems);
        try {
            problems.throwIfAny();
            return List.of();
        } catch (RejectedDocumentException e) {
            return e.problems();
        }
    }

    @Provide
    Arbitrary<Finding> findings() {
        return CalibrationRecords.finding();
    }

    @Property(tries = 500, edgeCases = EdgeCasesMode.NONE)
    void readingAWrittenFindingGivesTheSame(@ForAll("findings") Finding finding) {
        Problems problems = new Problems(DocumentLimits.COMMON);
        assertThat(codec.read(codec.write(finding), Pointer.ROOT, problems)).isEqualTo(finding);
    }

    @Example
    void aFindingOfEveryCodeIsReadAsItWasWritten() {
        for (Finding finding : FindingSamples.all()) {
            Problems problems = new Problems(DocumentLimits.COMMON);
            assertThat(codec.read(codec.write(finding), Pointer.ROOT, problems)).isEqualTo(finding);
        }
    }

    @Example
    void argumentsAreWrittenAsWhatTheyAre() {
        assertThat(codec.write(FindingSamples.of(FindingCode.FILL_IMPOSSIBLE))).isEqualTo(tree("""
                {
                  "code": "fill-impossible",
                  "severity": "error",
                  "sentence": "%s",
                  "arguments": {
                    "fill": "161.25 lb",
                    "highest": "161.25 lb",
                    "lowest": "161.25 lb",
                    "slips": [
                      { "part": "gate-setting", "mistake": "too-large", "factor": "25.4", "values": ["2.25 in"] },
                      { "part": "gate-setting", "mistake": "digit-dropped", "values": ["12 in", "20 in"] },
                      { "part": "gear-ratio", "mistake": "too-small", "factor": "2", "values": ["6"] }
                    ]
                  }
                }
                """.formatted(
                        FindingSamples.of(FindingCode.FILL_IMPOSSIBLE).sentence())));
        assertThat(codec.write(FindingSamples.of(FindingCode.UNCERTAINTY_INCOMPLETE)))
                .isEqualTo(tree("""
                {
                  "code": "uncertainty-incomplete",
                  "severity": "note",
                  "sentence": "%s",
                  "arguments": {
                    "unknown": [ { "what": "count" }, { "what": "scale-accuracy", "of": "hanging 4" } ]
                  }
                }
                """.formatted(FindingSamples.of(FindingCode.UNCERTAINTY_INCOMPLETE)
                        .sentence())));
        assertThat(codec.write(FindingSamples.of(FindingCode.CALIBRATION_BEFORE_CHANGE)))
                .isEqualTo(tree("""
                {
                  "code": "calibration-before-change",
                  "severity": "warning",
                  "sentence": "The calibration of 2026-10-19 is older than the hydraulic change of 2026-10-19.",
                  "arguments": { "calibrated": "2026-10-19", "change": "hydraulic", "changed": "2026-10-19" }
                }
                """));
        assertThat(codec.write(FindingSamples.of(FindingCode.CURVE_IMPOSSIBLE))).isEqualTo(tree("""
                {
                  "code": "curve-impossible",
                  "severity": "error",
                  "sentence": "%s",
                  "arguments": {
                    "model": "proportional",
                    "reason": { "field": "gate opening", "accepted": "at most 12 in", "value": "14 in" }
                  }
                }
                """.formatted(
                        FindingSamples.of(FindingCode.CURVE_IMPOSSIBLE).sentence())));
        assertThat(codec.write(Finding.of(FindingCode.CONVEYOR_NOT_PRIMED))).isEqualTo(tree("""
                {
                  "code": "conveyor-not-primed",
                  "severity": "error",
                  "sentence": "The conveyor was not primed: revolutions were counted before material fell."
                }
                """));
    }

    @Example
    void whatIsNoArgumentOfTheCodeIsRefusedWhereItStands() {
        assertThat(problems("""
                { "code": "tolerance-missed", "severity": "warning", "sentence": "x",
                  "arguments": { "error": "6", "tolerance": "6 somethings", "which": "sensor", "more": "1 lb" } }
                """))
                .extracting(Problem::pointer)
                .containsExactlyInAnyOrder(
                        "/arguments/laid",
                        "/arguments/way",
                        "/arguments/tolerance",
                        "/arguments/which",
                        "/arguments/more");
        assertThat(problems("""
                { "code": "tolerance-missed", "severity": "warning", "sentence": "x" }
                """)).extracting(Problem::pointer).containsExactly("/arguments");
        assertThat(problems("""
                { "code": "no-such-thing", "severity": "warning", "sentence": "x" }
                """)).extracting(Problem::pointer).containsExactly("/code");
        assertThat(problems("""
                { "severity": "warning", "sentence": "x" }
                """)).extracting(Problem::pointer).containsExactly("/code");
        assertThat(problems("[]")).extracting(Problem::expected).containsExactly("an object");
    }

    @Example
    void whatIsNotWholeIsNotRead() {
        assertThat(openLoop("\"severity\": \"note\", \"sentence\": \"x\"")).isNotNull();
        assertThat(openLoop("\"severity\": \"note\"")).isNull();
        assertThat(openLoop("\"sentence\": \"x\"")).isNull();
        assertThat(openLoop("\"severity\": 5, \"sentence\": \"x\"")).isNull();
        assertThat(openLoop("\"severity\": \"note\", \"sentence\": \"x\", \"more\": 1"))
                .isNull();
        assertThat(openLoop("\"severity\": \"note\", \"sentence\": \"x\", \"arguments\": \"x\""))
                .isNull();
        assertThat(problems("""
                { "code": "open-loop", "severity": "note", "sentence": "x", "arguments": "x" }
                """))
                .extracting(problem -> problem.pointer() + ": " + problem.expected())
                .containsExactly("/arguments: an object");
    }

    private Finding openLoop(String fields) {
        return codec.read(
                tree("{ \"code\": \"open-loop\", " + fields + " }"), Pointer.ROOT, new Problems(DocumentLimits.COMMON));
    }

    @Example
    void isCalledByTheNameOfTheClass() {
        assertThat(codec.type()).isEqualTo("org.gritwright.core.finding.Finding");
    }

    @Example
    void aSentenceThatNoTextHoldsLosesItsEnd() {
        assertThat(sentence(5000)).hasSize(5000).doesNotContain("…");
        assertThat(sentence(5001)).hasSize(5001).endsWith("…");
        assertThat(sentence(6000)).hasSize(5001).endsWith("…");
    }

    /** As it is written where the whole sentence is so long. */
    private String sentence(int length) {
        int others = scaleNotChecked("x").sentence().length() - 1;
        Finding finding = scaleNotChecked("x".repeat(length - others));
        assertThat(finding.sentence()).hasSize(length);
        JsonNode written = ((JsonNode.ObjectNode) codec.write(finding)).fields().get("sentence");
        return ((JsonNode.TextNode) written).text();
    }

    private static Finding scaleNotChecked(String scale) {
        return Finding.of(FindingCode.SCALE_NOT_CHECKED, Map.of("scale", Argument.name(scale)));
    }

    @Example
    void aRoadSpeedOfVersion1SaysByItsSignWhichWayTheTruckErrs() {
        assertThat(roadSpeedOff("-4.8 %"))
                .containsEntry("effect", Argument.number(Amounts.of(4.8, SpreadingUnits.PERCENT)))
                .containsEntry("way", Term.TOO_LITTLE);
        assertThat(roadSpeedOff("4.8 %"))
                .containsEntry("effect", Argument.number(Amounts.of(4.8, SpreadingUnits.PERCENT)))
                .containsEntry("way", Term.TOO_MUCH);
    }

    private Map<String, Argument> roadSpeedOff(String effect) {
        return read("""
                { "code": "road-speed-off", "severity": "warning", "sentence": "x",
                  "numbers": { "effect": "%s", "error": "5 %%", "inForce": "13650 pulse/mi", "measured": "13000 pulse/mi" } }
                """.formatted(effect)).arguments();
    }

    @Example
    void aDeliveryErrorOfVersion1IsWhatWasLaid() {
        assertThat(toleranceMissed("6 %"))
                .containsEntry("laid", Argument.number(Amounts.of(6, SpreadingUnits.PERCENT)))
                .containsEntry("way", Term.TOO_MUCH);
        assertThat(toleranceMissed("-6 %"))
                .containsEntry("laid", Argument.number(Amounts.of(6, SpreadingUnits.PERCENT)))
                .containsEntry("way", Term.TOO_LITTLE);
    }

    private Map<String, Argument> toleranceMissed(String error) {
        return read("""
                { "code": "tolerance-missed", "severity": "warning", "sentence": "x",
                  "numbers": { "error": "%s", "tolerance": "4 %%" }, "words": { "which": "delivery error" } }
                """.formatted(error)).arguments();
    }

    @Example
    void aFindingOfVersion1IsReadWithItsNumbersNamesDatesAndTerms() {
        double laid = Amounts.ofSi(1 - 1 / (1 + 0.06070250896057328), SpreadingUnits.PERCENT)
                .getValue()
                .doubleValue();
        assertThat(read("""
                { "code": "tolerance-missed", "severity": "warning", "sentence": "x",
                  "numbers": { "error": "6.070250896057328 %", "tolerance": "4 %" },
                  "words": { "which": "calibration error" } }
                """))
                .isEqualTo(Finding.of(
                        FindingCode.TOLERANCE_MISSED,
                        Map.of(
                                "error", Argument.number(Amounts.of(6.070250896057328, SpreadingUnits.PERCENT)),
                                "tolerance", Argument.number(Amounts.of(4, SpreadingUnits.PERCENT)),
                                "which", Term.CALIBRATION_ERROR,
                                // Version 1 left it to the reader which way the truck was off: 1 ÷ 1.0607… − 1.
                                "laid", Argument.number(Amounts.of(laid, SpreadingUnits.PERCENT)),
                                "way", Term.TOO_LITTLE)));
        assertThat(read("""
                { "code": "scale-not-checked", "severity": "warning", "sentence": "x",
                  "words": { "scale": "calibration error" } }
                """))
                .isEqualTo(
                        Finding.of(FindingCode.SCALE_NOT_CHECKED, Map.of("scale", Argument.name("calibration error"))));
        assertThat(read("""
                { "code": "calibration-before-change", "severity": "warning", "sentence": "x",
                  "words": { "calibrated": "2026-09-28", "change": "hydraulic", "changed": "2026-10-08" } }
                """).sentence())
                .isEqualTo("The calibration of 2026-09-28 is older than the hydraulic change of 2026-10-08.");
        assertThat(read("""
                { "code": "open-loop", "severity": "note", "sentence": "x" }
                """)).isEqualTo(Finding.of(FindingCode.OPEN_LOOP));
    }

    @Example
    void everyTermOfVersion1IsKnownByTheEnglishOfThatVersion() {
        assertThat(List.of("caught but not counted", "counted but not caught"))
                .extracting(words -> argument("coasting-mismatch", "coasting", words, ""))
                .containsExactly(Term.CAUGHT_ONLY, Term.COUNTED_ONLY);
        assertThat(List.of("k·g(h)", "k·g(h − h0)", "a rising table"))
                .extracting(words -> argument("model-misfit", "model", words, "\"numbers\": {\"chance\": \"3 %\"}, "))
                .containsExactly(Term.PROPORTIONAL, Term.DEAD_OPENING, Term.TABLE);
        assertThat(List.of("calibration error", "delivery error"))
                .extracting(words -> argument(
                        "tolerance-missed",
                        "which",
                        words,
                        "\"numbers\": {\"error\": \"6 %\", \"tolerance\": \"4 %\"}, "))
                .containsExactly(Term.CALIBRATION_ERROR, Term.DELIVERY_ERROR);
        assertThat(List.of("hydraulic", "sensor", "tyre", "material"))
                .extracting(words -> argument("calibration-before-change", "change", words, ""))
                .containsExactly(Term.HYDRAULIC, Term.SENSOR, Term.TIRE, Term.MATERIAL);
    }

    private Argument argument(String code, String name, String words, String numbers) {
        String dates =
                code.startsWith("calibration") ? "\"calibrated\": \"2026-09-28\", \"changed\": \"2026-10-08\", " : "";
        return read("{ \"code\": \"" + code + "\", \"severity\": \"error\", \"sentence\": \"x\", " + numbers
                        + "\"words\": { " + dates + "\"" + name + "\": \"" + words + "\" } }")
                .arguments()
                .get(name);
    }

    @Example
    void whatWasProseInVersion1StaysProse() {
        Finding incomplete = read("""
                { "code": "uncertainty-incomplete", "severity": "note", "sentence": "x",
                  "words": { "unknown": "the accuracy of scale hanging 4" } }
                """);
        assertThat(incomplete.arguments())
                .containsEntry("unknown", new Argument.Prose("the accuracy of scale hanging 4"));
        Finding fill = read("""
                { "code": "fill-impossible", "severity": "error", "sentence": "x",
                  "numbers": { "fill": "0.0877", "highest": "1.3", "lowest": "0.3" },
                  "words": { "slips": "gate opening ÷ 10 (2 in); gear ratio × 10 (52)" } }
                """);
        assertThat(fill.sentence()).endsWith("gate opening ÷ 10 (2 in); gear ratio × 10 (52).");
        Finding curve = read("""
                { "code": "curve-impossible", "severity": "error", "sentence": "x",
                  "words": { "model": "k·g(h)", "reason": "openings must be two or more: 1" } }
                """);
        assertThat(curve.arguments()).containsEntry("reason", new Argument.Prose("openings must be two or more: 1"));
    }

    private static String text(JsonNode tree) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try {
            JsonText.write(tree, out);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return out.toString(StandardCharsets.UTF_8);
    }

    @Example
    void theSchemaKnowsTheArgumentsOfEachCode() {
        Schema definitions = new Schema(FieldWords.read());
        JsonNode root = codec.describe(definitions);
        com.networknt.schema.Schema schema = SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
                .getSchema(text(definitions.document("finding", root)), InputFormat.JSON);

        for (Finding finding : FindingSamples.all()) {
            String written = text(codec.write(finding));
            assertThat(schema.validate(written, InputFormat.JSON)).as(written).isEmpty();
            for (String name : finding.arguments().keySet()) {
                assertThat(schema.validate(written.replace("\"" + name + "\"", "\"other\""), InputFormat.JSON))
                        .as(name)
                        .isNotEmpty();
            }
        }
        String unknown = text(codec.write(FindingSamples.of(FindingCode.UNCERTAINTY_INCOMPLETE)));
        assertThat(schema.validate(unknown.replace("\"scale-accuracy\"", "\"sensor\""), InputFormat.JSON))
                .isNotEmpty();
    }
}
