package org.gritwright.core.weighing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.gritwright.core.Samples.DAY;
import static org.gritwright.core.Samples.assertRefused;
import static org.gritwright.core.Samples.pounds;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class ScaleTest {
    private static final ScaleCheck CHECK = new ScaleCheck(DAY, pounds(50), pounds(50));

    @Test
    void gathersItsChecks() {
        Scale scale = Scale.of("S-1", pounds(500), pounds(0.5)).checked(CHECK).checked(CHECK);

        assertThat(scale.checks()).containsExactly(CHECK, CHECK);
    }

    @Test
    void doesNotFollowLaterChangesOfItsList() {
        List<ScaleCheck> checks = new ArrayList<>(List.of(CHECK));
        Scale scale = new Scale("S-1", pounds(500), pounds(0.5), Optional.empty(), checks);
        checks.clear();

        assertThat(scale.checks()).containsExactly(CHECK);
        assertThatThrownBy(() -> scale.checks().clear()).isInstanceOf(UnsupportedOperationException.class);
    }

    @Test
    void namesTheScaleInEveryError() {
        assertRefused(
                "division of scale S-1 must be greater than 0: 0 lb", () -> Scale.of("S-1", pounds(500), pounds(0)));
        assertRefused("capacity of scale S-1 must be at least 2 lb: 1 lb", () -> Scale.of("S-1", pounds(1), pounds(2)));
        assertRefused(
                "scale id must be a text that is not blank: \" \"", () -> Scale.of(" ", pounds(500), pounds(0.5)));
    }

    @Test
    void aCheckNeedsATestWeightAndAReading() {
        assertRefused("test weight must be greater than 0: 0 lb", () -> new ScaleCheck(DAY, pounds(0), pounds(0)));
        assertRefused(
                "reading of the test weight must be 0 or more: -1 lb",
                () -> new ScaleCheck(DAY, pounds(50), pounds(-1)));
    }
}
