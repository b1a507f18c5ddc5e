package org.gritwright.core.range;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.range.Drives.inRpm;
import static org.gritwright.core.range.Drives.rpm;

import org.junit.jupiter.api.Test;

class StatedRangeTest {
    private static StatedRange stated(RangeSource source) {
        return new StatedRange(new WorkingRange(rpm(2), rpm(30)), source);
    }

    @Test
    void anEndThatWasJudgedByEyeMayBeOffByATenthAnyOtherByATwentieth() {
        assertThat(inRpm(stated(RangeSource.BY_EYE).lowest().allowance())).isCloseTo(0.2, within(1e-12));
        assertThat(inRpm(stated(RangeSource.BY_EYE).highest().allowance())).isCloseTo(3, within(1e-12));
        assertThat(inRpm(stated(RangeSource.FROM_MAKER).lowest().allowance())).isCloseTo(0.1, within(1e-12));
        assertThat(inRpm(stated(RangeSource.FROM_MAKER).highest().allowance())).isCloseTo(1.5, within(1e-12));
        assertThat(inRpm(stated(RangeSource.BY_EYE).highest().speed())).isCloseTo(30, within(1e-12));
        assertThat(stated(RangeSource.BY_EYE).lowest().proven()).isTrue();
    }

    @Test
    void anotherSpeedDiffersFromAnEndThatIsFartherAwayThanItMayBeOff() {
        RangeEnd end = new RangeEnd(rpm(20), rpm(1), true);

        assertThat(end.differsFrom(rpm(20.9))).isFalse();
        assertThat(end.differsFrom(rpm(19.1))).isFalse();
        assertThat(end.differsFrom(rpm(21.1))).isTrue();
        assertThat(end.differsFrom(rpm(18.9))).isTrue();
        assertThat(new RangeEnd(rpm(0), rpm(1), true).differsFrom(rpm(1))).isFalse();
    }
}
