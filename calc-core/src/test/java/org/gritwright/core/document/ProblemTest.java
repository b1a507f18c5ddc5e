package org.gritwright.core.document;

import static org.assertj.core.api.Assertions.assertThat;
import static org.gritwright.core.Samples.assertNamesWhatIsMissing;

import java.util.Optional;
import org.junit.jupiter.api.Test;

class ProblemTest {
    private static final Problem.Place PLACE = new Problem.Place("truck T-03", 12, 7);

    private static Problem at(Problem.Place place) {
        return new Problem("wrong-type", "/trucks/3/id", Optional.of(place), "a text", "7", Optional.empty());
    }

    @Test
    void aPersonReadsWhereItStandsAndOnWhich() {
        assertThat(at(PLACE)).hasToString("/trucks/3/id (truck T-03, line 12, column 7): expected a text, found 7");
        assertThat(at(new Problem.Place("", 12, 7)))
                .hasToString("/trucks/3/id (line 12, column 7): expected a text, found 7");
    }

    @Test
    void whatIsMissingIsNotFoundToBeAnything() {
        assertThat(new Problem(ProblemCode.MISSING_FIELD.id(), "/trucks/3/id", "a text", "nothing"))
                .hasToString("/trucks/3/id: missing; expected a text");
    }

    @Test
    void whatMayHaveBeenMeantIsAsked() {
        assertThat(new Problem(
                        ProblemCode.UNKNOWN_FIELD.id(),
                        "/trucks/3",
                        Optional.of(PLACE),
                        "a field of a truck",
                        "\"idd\"",
                        Optional.of("id")))
                .hasToString("/trucks/3 (truck T-03, line 12, column 7): expected a field of a truck, found \"idd\";"
                        + " did you mean \"id\"?");
    }

    @Test
    void whatIsMissingInAPlaceIsNamed() throws ReflectiveOperationException {
        assertNamesWhatIsMissing(PLACE);
    }
}
