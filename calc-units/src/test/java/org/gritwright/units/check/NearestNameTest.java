package org.gritwright.units.check;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;

class NearestNameTest {
    @Test
    void ofTwoNamesThatAreNearTheNearerOneIsNamed() {
        assertThat(NearestName.of("pitcher", List.of("pi", "pitcheers", "pitchers")))
                .contains("pitchers");
        assertThat(NearestName.of("pithc", List.of("pitch"))).contains("pitch");
        assertThat(NearestName.of("teht", List.of("teeth")))
                .as("two of five letters")
                .contains("teeth");
        assertThat(NearestName.of("weit", List.of("wide")))
                .as("two of four letters")
                .isEmpty();
    }

    @Test
    void aLongNameIsNearToNone() {
        assertThat(NearestName.of("teeth".repeat(2000), List.of("teeth", "pitch")))
                .isEmpty();
    }

    @Test
    void asManyLettersMayBeMissingAsMayBeWrong() {
        assertThat(NearestName.of("tee", List.of("teeth"))).contains("teeth");
        assertThat(NearestName.of("te", List.of("teeth"))).isEmpty();
    }

    @Test
    void inAShortNameOnlyOneLetterMayBeWrong() {
        assertThat(NearestName.of("wire", List.of("wide"))).contains("wide");
        assertThat(NearestName.of("wabe", List.of("wide"))).isEmpty();
    }
}
