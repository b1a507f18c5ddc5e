package org.gritwright.examples.fleetday;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.file.Path;
import java.util.function.Consumer;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** {@code --mode check}: every problem of a document, and nothing written. */
class CheckCommandTest {
    @TempDir
    Path folder;

    private static Run check(Path input, String... more) {
        String[] arguments = new String[4 + more.length];
        arguments[0] = "--mode";
        arguments[1] = "check";
        arguments[2] = "--input";
        arguments[3] = input.toString();
        System.arraycopy(more, 0, arguments, 4, more.length);
        return Run.of(arguments);
    }

    private Path changed(Consumer<ObjectNode> change) throws IOException {
        return DemoDay.write(folder.resolve("day.json"), change);
    }

    /** What the report would tell to check must not pass here as if nothing were wrong. */
    @Test
    void taresOfZeroAreSomethingToLookAtOnceMore() throws IOException {
        Path input = DemoDay.write(
                folder.resolve("zero.json"),
                day -> DemoDay.only(day, "T-12")
                        .findParents("tare")
                        .forEach(container -> ((ObjectNode) container).put("tare", "0 lb")));

        Run run = Run.of("--mode", "check", "--input", input.toString());

        assertThat(run.exitCode()).isZero();
        assertThat(run.out()).contains("Look at once more:", "All tares at ");
    }

    @Test
    void aDayWithoutProblemsEndsWithZeroAndWritesNothing() throws IOException {
        Path input = changed(day -> DemoDay.only(day, "T-04"));
        Run run = check(input);
        assertThat(run.exitCode()).as(run.err()).isZero();
        assertThat(run.outLines()).containsExactly(input + ": 0 problems, 0 things to look at once more");
        assertThat(Run.names(folder)).containsExactly("day.json");
    }

    @Test
    void whatCantBeReadIsListedWithItsPlace() throws IOException {
        Path input = changed(day -> {
            day.put("tolerance", "4");
            DemoDay.truck(day, "T-04").put("color", "orange");
        });
        Run run = check(input);
        assertThat(run.exitCode()).isEqualTo(2);
        assertThat(run.errLines()).containsExactly("Reading " + input);
        assertThat(run.outLines()).first().isEqualTo(input + " can't be used: 2 problems");
        assertThat(run.out())
                .containsPattern("  /tolerance \\(line \\d+, column \\d+\\): ")
                .containsPattern("  /trucks/3/color \\(truck T-04, line \\d+, column \\d+\\): ");
        assertThat(Run.names(folder)).containsExactly("day.json");
    }

    /** The demo's T-13 has gross and tare swapped, and others slips that the numbers show. */
    @Test
    void whatCantBeComputedIsListedWithItsTruckAndWhatLooksLikeASlipToo() {
        Run run = check(Run.DEMO);
        assertThat(run.exitCode()).isEqualTo(2);
        assertThat(run.out())
                .containsPattern("\n {2}/trucks/12/\\S+ \\(truck T-13, line \\d+, column \\d+\\): catch of 15:42: ")
                .contains(
                        "): catch of 15:42: pail 2: gross 3.5 lb is below its tare 44 lb. Swapped?\n",
                        "Look at once more:\n  truck T-");
    }

    @Test
    void slipsAloneFailOnlyWhenAskedTo() throws IOException {
        Path input = changed(day -> day.withArray("trucks").remove(12));
        Run run = check(input);
        assertThat(run.exitCode()).as(run.out()).isZero();
        assertThat(run.out()).contains(": 0 problems, ").contains("Look at once more:");
        assertThat(check(input, "--fail-on-attention").exitCode()).isEqualTo(1);
    }

    @Test
    void whatCantBePlannedIsAProblem() throws IOException {
        Path input = changed(day -> {
            DemoDay.only(day, "T-04");
            ((ObjectNode) day.get("plan").get("weighingMethods").get(0)).put("scale", "hangin 2");
        });
        Run run = check(input);
        assertThat(run.exitCode()).as(run.out()).isEqualTo(2);
        assertThat(run.out()).contains("hanging 2");
    }

    @Test
    void everyOtherModeNeedsAFolder() {
        Run run = Run.of("--input", Run.DEMO.toString(), "--mode", "plan");
        assertThat(run.exitCode()).isEqualTo(2);
        assertThat(run.err()).contains("Missing required option: '--output=FOLDER'", "Usage: fleet-day");
    }
}
