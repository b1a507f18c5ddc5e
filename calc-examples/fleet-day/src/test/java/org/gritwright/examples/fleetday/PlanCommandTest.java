package org.gritwright.examples.fleetday;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.function.Consumer;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class PlanCommandTest {
    @TempDir
    private Path folder;

    private Path output;

    @BeforeEach
    void nameTheOutput() {
        output = folder.resolve("made/on/the/way");
    }

    private Run plan(Path input, String... more) {
        String[] arguments = new String[6 + more.length];
        System.arraycopy(
                new String[] {"--input", input.toString(), "--output", output.toString(), "--mode", "plan"},
                0,
                arguments,
                0,
                6);
        System.arraycopy(more, 0, arguments, 6, more.length);
        return Run.of(arguments);
    }

    private Run planOf(Consumer<ObjectNode> change) throws IOException {
        return plan(DemoDay.write(folder.resolve("changed.json"), change));
    }

    private static ObjectNode method(ObjectNode day, int place) {
        return (ObjectNode) day.get("plan").get("weighingMethods").get(place);
    }

    @Test
    void theDemoFleetsPlanIsOnePageAndASummary() throws IOException {
        Run run = plan(Run.DEMO);
        assertThat(run.exitCode()).as(run.err()).isZero();
        assertThat(Run.names(output))
                .containsExactly(
                        ".lock",
                        "current.json",
                        "run-0001/blank-sheets.html",
                        "run-0001/plan.html",
                        "run-0001/type-in.html");
        assertThat(run.errLines())
                .containsExactly(
                        "Reading src/demo/demo-fleet.json",
                        "Planning 20 trucks",
                        "Writing " + output.resolve("run-0001/plan.html"),
                        "Writing " + output.resolve("run-0001/type-in.html"),
                        "Writing " + output.resolve("run-0001/blank-sheets.html"));
        assertThat(run.outLines())
                .contains(
                        "20 trucks: 20 have a plan that reaches what is wanted, 0 can't reach it, 0 can't be planned. 3 can't",
                        "be verified at every rate and speed that is planned: T-08, T-17, T-20.")
                .endsWith(
                        "Worksheets: " + output.resolve("run-0001/plan.html"),
                        "To type them in: " + output.resolve("run-0001/type-in.html"),
                        "Blank sheets: " + output.resolve("run-0001/blank-sheets.html"));
        assertThat(run.outLines().stream().filter(line -> line.startsWith("T-")))
                .hasSize(20);
        assertThat(run.outLines().stream()
                        .filter(line -> !line.matches("(Worksheets|To type them in|Blank sheets): .*")))
                .allSatisfy(line -> assertThat(line).hasSizeLessThanOrEqualTo(100));
    }

    /** Five turns of 53.3 lb are more than five pails of 35 lb hold, and more than the tarp of 200 lb does. */
    @Test
    void theClearAnswerWhereAWeighingMethodDoesntDo() {
        Run run = plan(Run.DEMO);
        assertThat(run.outLines())
                .anyMatch(line -> line.startsWith("pails on a hanging scale") && line.contains("without T-17"))
                .anyMatch(line -> line.startsWith("tarp and shovel") && line.contains("without T-17"))
                .anyMatch(line -> line.startsWith("hopper scale") && line.contains("for all trucks that have a plan"))
                .anyMatch(line -> line.startsWith("a mix: ") && line.contains("3       6.7"));
    }

    @Test
    void aMethodIsForThoseThatItCouldBeUsedOn() throws IOException {
        List<String> lines = plan(Run.LIQUIDS).outLines();
        assertThat(lines)
                .anyMatch(line -> line.startsWith("tarp and shovel") && line.contains("for all conveyors with a plan"))
                .anyMatch(line -> line.startsWith("measure M-5") && line.contains("pumps and meters with a plan"));

        Path grains = Files.writeString(
                folder.resolve("grains.json"), DemoDay.changed(Run.LIQUIDS, day -> DemoDay.only(day, "T-31")));
        assertThat(plan(grains).outLines())
                .anyMatch(
                        line -> line.startsWith("tarp and shovel") && line.contains("for all trucks that have a plan"))
                .anyMatch(line -> line.startsWith("measure M-5") && line.contains("for no truck of this plan"));
    }

    @Test
    void twoSettingsOfOneFlowAreNamedTogether() throws IOException {
        Path pairs = Files.writeString(folder.resolve("pairs.json"), DemoDay.changed(Run.LIQUIDS, day -> {
            ObjectNode plan = (ObjectNode) day.get("plan");
            plan.putArray("targetRates").add("200 lb/mi").add("400 lb/mi");
            plan.putArray("prewetRates").add("5 gal/ton").add("10 gal/ton");
        }));
        assertThat(plan(pairs).exitCode()).isZero();
        assertThat(Run.text(output.resolve("run-0001/plan.html")))
                .contains("Set 200 lb/mi, 10 gal/ton (the same flow as 400 lb/mi, 5 gal/ton) and 25 mi/h")
                .contains("Set 200 lb/mi, 5 gal/ton and 25 mi/h");
    }

    @Test
    void twoRunsGiveTheSameBytes() throws IOException {
        plan(Run.DEMO);
        String first = Run.text(output.resolve("run-0001/plan.html"));
        String typeIn = Run.text(output.resolve("run-0001/type-in.html"));
        plan(Run.DEMO);
        assertThat(Run.text(output.resolve("run-0002/plan.html"))).isEqualTo(first);
        assertThat(Run.text(output.resolve("run-0002/type-in.html"))).isEqualTo(typeIn);
    }

    @Test
    void withoutAPlanInTheDocumentThereIsNone() throws IOException {
        Run run = planOf(day -> day.remove("plan"));
        assertThat(run.exitCode()).isEqualTo(2);
        assertThat(run.err()).contains("changed.json can't be planned with: it has no \"plan\"");
        assertThat(run.out()).isEmpty();
        assertThat(output).doesNotExist();
    }

    @Test
    void aPlanIsNoTroubleForTheReport() {
        assertThat(Run.of("--input", Run.DEMO.toString(), "--output", output.toString(), "--mode", "report")
                        .exitCode())
                .isZero();
        assertThat(output.resolve("run-0001/report.html")).exists();
        assertThat(output.resolve("run-0001/plan.html")).doesNotExist();
    }

    @Test
    void badPlansAreExplainedByPointerFieldAndValue() throws IOException {
        Run run = planOf(day -> {
            ((ObjectNode) day.get("plan")).put("wantedUncertainty", "0 %").put("mostRepeats", "0");
            method(day, 0).put("containers", "0");
            ((ObjectNode) method(day, 1).get("times")).put("perCatch", "-8 min");
            ((ObjectNode) method(day, 2).get("times")).remove("setUp");
        });
        assertThat(run.exitCode()).isEqualTo(2);
        assertThat(run.err().replaceAll(" \\(line \\d+, column \\d+\\)", ""))
                .contains(
                        "can't be used: 5 problems",
                        "  /plan/wantedUncertainty: expected percentage: above 0 % and below 100 %, written with %,"
                                + " found \"0 %\"",
                        "  /plan/mostRepeats: expected a whole number from 1 to 9999, for example \"6\", found \"0\"",
                        "  /plan/weighingMethods/0/containers: expected a whole number from 1 to 9999, for example"
                                + " \"6\", found \"0\"",
                        "  /plan/weighingMethods/1/times: expected time per catch: 0 or more, found -8 min",
                        "  /plan/weighingMethods/2/times/setUp: missing; expected time with its unit, for example \"1 s\"")
                .doesNotContain("\tat ", "Exception");
        assertThat(output).doesNotExist();
    }

    @Test
    void moreThanAllIsNoUncertainty() throws IOException {
        Run run = planOf(day -> ((ObjectNode) day.get("plan")).put("wantedUncertainty", "120 %"));
        assertThat(run.exitCode()).isEqualTo(2);
        assertThat(run.err()).contains("/plan/wantedUncertainty (line ", "below 100 %", "\"120 %\"");
    }

    @Test
    void anUnknownScaleIsNamed() throws IOException {
        Run run = planOf(day -> method(day, 1).put("scale", "weighbridge"));
        assertThat(run.exitCode()).isEqualTo(2);
        assertThat(run.errLines())
                .last()
                .asString()
                .endsWith(
                        "changed.json can't be used: weighing method \"tarp and shovel\": scale must be one of [hanging"
                                + " 2, hanging 4, hopper 5, platform 1, platform 3]: \"weighbridge\"");
        assertThat(output).doesNotExist();
    }

    @Test
    void aTruckThatCantBePlannedIsListedAndTheOthersGoOn() throws IOException {
        Path input = DemoDay.write(
                folder.resolve("changed.json"),
                day -> DemoDay.truck(day, "T-02").withObject("/gate").put("type", "trapdoor"));
        Run run = plan(input);
        assertThat(run.exitCode()).isZero();
        assertThat(run.out().replaceAll("\\s+", " "))
                .contains("T-02", "Can't be planned", "trapdoor", "19 have a plan", "1 can't be planned.");
        assertThat(plan(input, "--fail-on-attention").exitCode()).isEqualTo(1);
    }

    /** The demo has three trucks that the drives' range keeps from some of the planned rates and speeds. */
    @Test
    void aTruckThatCantBeVerifiedAsPlannedNeedsAttention() throws IOException {
        assertThat(plan(Run.DEMO, "--fail-on-attention").exitCode()).isEqualTo(1);
        Path input = DemoDay.write(folder.resolve("changed.json"), day -> DemoDay.only(day, "T-04"));
        assertThat(plan(input, "--fail-on-attention").exitCode()).isZero();
    }

    @Test
    void whatNoWayReachesSaysTheMainCause() throws IOException {
        Run run = planOf(day -> {
            DemoDay.only(day, "T-01");
            ((ObjectNode) day.get("plan")).put("wantedUncertainty", "0.5 %");
        });
        assertThat(run.exitCode()).isZero();
        assertThat(run.out().replaceAll("\\s+", " "))
                .contains(
                        "No weighing method reaches it.",
                        "Main cause: the scatter of the catches themselves.",
                        "1 can't reach it");
    }

    @Test
    void anUnknownModeIsABadOption() {
        Run run = Run.of("--input", Run.DEMO.toString(), "--output", output.toString(), "--mode", "dance");
        assertThat(run.exitCode()).isEqualTo(2);
        assertThat(run.err()).contains("--mode", "dance");
        assertThat(output).doesNotExist();
    }
}
