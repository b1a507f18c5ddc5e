package org.gritwright.core.lateral;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.Samples.codes;
import static org.gritwright.core.Samples.numbers;
import static org.gritwright.core.Samples.only;
import static org.gritwright.core.lateral.LateralSamples.number;
import static org.gritwright.core.lateral.LateralSamples.pan;
import static org.gritwright.core.lateral.LateralSamples.row;
import static org.gritwright.core.lateral.LateralSamples.strip;
import static org.gritwright.core.lateral.LateralSamples.touching;

import java.util.ArrayList;
import java.util.List;
import org.gritwright.core.finding.Finding;
import org.gritwright.core.finding.FindingCode;
import org.junit.jupiter.api.Test;

class LateralFindingsTest {
    private static final RoadStrip LANE = strip(-1.5, 1.5);

    /** Twelve pans over 6 m; nothing is wrong with them. */
    private static SpreadPattern good() {
        return touching(0, 2, 5, 8, 9, 10, 10, 9, 8, 5, 2, 0);
    }

    @Test
    void aGoodRowHasNoFinding() {
        assertThat(good().findings(LANE)).isEmpty();
        // The lane may end where the row does.
        assertThat(good().findings(strip(-3, 3))).isEmpty();
    }

    @Test
    void aRowThatEndsInTheLaneIsFound() {
        Finding right = only(FindingCode.PANS_SHORT_OF_LANE, good().findings(strip(-3, 3.1)));

        assertThat(right.sentence())
                .isEqualTo("The pans lie from -3 m to 3 m, but the lane from -3 m to 3.1 m: lay pans over all of it.");
        assertThat(codes(good().findings(strip(-3.1, 3)))).containsExactly(FindingCode.PANS_SHORT_OF_LANE);
    }

    @Test
    void aPatternWiderThanTheRowIsFoundAtTheOuterPan() {
        Finding wide = only(
                FindingCode.PATTERN_BEYOND_PANS,
                touching(0, 2, 5, 8, 9, 10, 10, 9, 8, 5, 2, 1.1).findings(LANE));

        assertThat(number(numbers(wide).get("position"))).isEqualTo(2.75);
        assertThat(number(numbers(wide).get("rate"))).isEqualTo(4.4);
        assertThat(number(numbers(wide).get("highest"))).isEqualTo(40);
        assertThat(codes(touching(1.1, 2, 5, 8, 9, 10, 10, 9, 8, 5, 2, 1).findings(LANE)))
                .containsExactly(FindingCode.PATTERN_BEYOND_PANS);
        assertThat(touching(1, 2, 5, 8, 9, 10, 10, 9, 8, 5, 2, 1).findings(LANE))
                .isEmpty();
    }

    @Test
    void theOuterPanThatCaughtMoreIsNamed() {
        Finding left = only(
                FindingCode.PATTERN_BEYOND_PANS,
                touching(3, 2, 5, 8, 9, 10, 10, 9, 8, 5, 2, 2).findings(LANE));

        assertThat(number(numbers(left).get("position"))).isEqualTo(-2.75);
    }

    @Test
    void aPanThatStandsOutIsFoundAndNotItsNeighbors() {
        Finding out = only(
                FindingCode.PAN_STANDS_OUT,
                touching(0, 2, 5, 8, 9, 3, 10, 9, 8, 5, 2, 0).findings(LANE));

        assertThat(number(numbers(out).get("position"))).isEqualTo(-0.25);
        assertThat(number(numbers(out).get("rate"))).isEqualTo(12);
        assertThat(number(numbers(out).get("neighbors"))).isEqualTo(38);
    }

    @Test
    void aPanThatCaughtTooMuchStandsOutToo() {
        Finding out = only(
                FindingCode.PAN_STANDS_OUT,
                touching(0, 2, 5, 14, 9, 10, 10, 9, 8, 5, 2, 0).findings(LANE));

        assertThat(number(numbers(out).get("position"))).isEqualTo(-1.25);
    }

    @Test
    void smallDifferencesDontStandOut() {
        // 1.7 of 10 is within 3.5 × 5 % of the highest, however smooth the rest is.
        assertThat(touching(0, 2, 4, 6, 8, 10, 10, 10, 10, 8.3, 10, 10, 10, 10, 8, 6, 4, 2, 0)
                        .findings(LANE))
                .isEmpty();
        assertThat(codes(touching(0, 2, 4, 6, 8, 10, 10, 10, 10, 8.2, 10, 10, 10, 10, 8, 6, 4, 2, 0)
                        .findings(LANE)))
                .containsExactly(FindingCode.PAN_STANDS_OUT);
    }

    @Test
    void withoutSevenPansBetweenOthersNoneStandsOut() {
        assertThat(codes(touching(1, 9, 1, 1, 1, 1, 1, 1).findings(LANE))).doesNotContain(FindingCode.PAN_STANDS_OUT);
        assertThat(codes(touching(1, 9, 1, 1, 1, 1, 1, 1, 1).findings(LANE))).contains(FindingCode.PAN_STANDS_OUT);
    }

    @Test
    void fewPansWithinTheTreatedWidthAreFound() {
        Finding few = only(
                FindingCode.FEW_PANS,
                touching(0, 2, 5, 10, 10, 10, 10, 10, 5, 2, 0).findings(strip(-1, 1)));

        assertThat(few.sentence())
                .isEqualTo(
                        "Only 7 pans lie within the treated width of 3 m, fewer than 8: width and evenness are rough.");
        assertThat(touching(0, 2, 5, 10, 10, 10, 10, 10, 10, 5, 2, 0).findings(LANE))
                .isEmpty();
    }

    @Test
    void ofTwoThatAreEquallyFarOffTheLeftOneIsNamed() {
        Finding out = only(
                FindingCode.PAN_STANDS_OUT,
                touching(1, 9, 1, 1, 1, 1, 1, 1, 1, 9, 1).findings(LANE));
        Finding wide = only(
                FindingCode.PATTERN_BEYOND_PANS,
                touching(9, 9, 9, 9, 9, 9, 9, 9).findings(LANE));

        assertThat(number(numbers(out).get("position"))).isEqualTo(-2);
        assertThat(number(numbers(wide).get("position"))).isEqualTo(-1.75);
    }

    @Test
    void neighborsCountByTheirDistance() {
        // From 10 at 3 m to 2 at 5 m: 8 at 3.5 m, where 1 was caught.
        List<Pan> pans = new ArrayList<>(row(-4, 1, 10, 10, 10, 10, 10, 10, 10, 10));
        pans.add(pan(3.5, 1));
        pans.add(pan(5, 2));
        Finding out = only(FindingCode.PAN_STANDS_OUT, SpreadPattern.of(pans).findings(LANE));

        assertThat(number(numbers(out).get("position"))).isEqualTo(3.5);
        assertThat(number(numbers(out).get("neighbors"))).isCloseTo(32, within(1e-9));
    }
}
