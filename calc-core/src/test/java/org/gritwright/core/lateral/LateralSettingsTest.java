package org.gritwright.core.lateral;

import static org.assertj.core.api.Assertions.assertThat;
import static org.gritwright.core.Samples.assertRefused;
import static org.gritwright.core.lateral.LateralSamples.strip;
import static org.gritwright.core.lateral.LateralSamples.touching;

import java.util.Collections;
import java.util.List;
import org.junit.jupiter.api.Test;

class LateralSettingsTest {
    private static final RoadStrip LANE = strip(-1, 1);
    private static final SpinnerSetting SLOW = new SpinnerSetting("slow", touching(0, 0, 1, 4, 4, 1, 0, 0));
    private static final SpinnerSetting FAST = new SpinnerSetting("fast", touching(2, 2, 3, 3, 3, 3, 2, 2));

    @Test
    void theEvenestSettingNeedNotWasteLeast() {
        SpinnerTrial trial = new SpinnerTrial(List.of(SLOW, FAST));

        assertThat(trial.evenest(LANE)).isEqualTo(FAST);
        assertThat(trial.mostInside(LANE)).isEqualTo(SLOW);
    }

    @Test
    void theOrderOfTheSettingsDoesntMatter() {
        SpinnerTrial trial = new SpinnerTrial(List.of(FAST, SLOW));

        assertThat(trial.evenest(LANE)).isEqualTo(FAST);
        assertThat(trial.mostInside(LANE)).isEqualTo(SLOW);
    }

    @Test
    void settingsHaveNamesOfTheirOwn() {
        assertRefused("spinner settings must be one or more: none", () -> new SpinnerTrial(List.of()));
        assertRefused("spinner setting must be named once: slow", () -> new SpinnerTrial(List.of(SLOW, SLOW)));
        assertRefused(
                "spinner setting must be a text that is not blank: \" \"",
                () -> new SpinnerSetting(" ", SLOW.pattern()));
        assertRefused(
                "spinner settings must be at most 1000: more", () -> new SpinnerTrial(Collections.nCopies(1001, SLOW)));
    }
}
