package org.gritwright.examples.fleetday;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What the README shows of the demo is what the demo prints. */
class ReadmeDemoTest {
    private static final String BEGIN = "<!-- demo -->";
    private static final String END = "<!-- /demo -->";

    private static String shown() throws IOException {
        String readme = Run.text(Path.of("..", "..", "README.md"));
        assertThat(readme).contains(BEGIN, END);
        return readme.substring(readme.indexOf(BEGIN) + BEGIN.length(), readme.indexOf(END))
                .strip()
                .lines()
                .filter(line -> !line.startsWith("```"))
                .collect(Collectors.joining("\n"));
    }

    @Test
    void eachPartOfTheReadmesOutputIsPrintedInThatOrder(@TempDir Path folder) throws IOException {
        String printed = String.join("\n", Run.of(Run.DEMO, folder).outLines());
        int from = 0;
        for (String part : shown().split("\n\\.\\.\\.\n", -1)) {
            int at = printed.indexOf(part, from);
            assertThat(at)
                    .as(
                            "README.md between %s and %s shows%n%s%nbut after the part before it the demo prints%n%s",
                            BEGIN, END, part, printed.substring(from))
                    .isNotNegative();
            from = at + part.length();
        }
    }
}
