package org.gritwright.core.lateral;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.Samples.SCALE;
import static org.gritwright.core.Samples.assertNamesWhatIsMissing;
import static org.gritwright.core.Samples.assertRefused;
import static org.gritwright.core.Samples.inches;
import static org.gritwright.core.Samples.pounds;
import static org.gritwright.core.lateral.LateralSamples.grams;
import static org.gritwright.core.lateral.LateralSamples.meters;
import static org.gritwright.core.lateral.LateralSamples.number;
import static org.gritwright.core.lateral.LateralSamples.pan;
import static org.gritwright.core.lateral.LateralSamples.row;
import static org.gritwright.core.lateral.LateralSamples.strip;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import org.gritwright.core.weighing.Weighing;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.junit.jupiter.api.Test;

class LateralPanTest {
    @Test
    void aWeighedPanCaughtGrossLessTare() {
        Pan pan = Pan.weighed(inches(0), inches(12), inches(12), SCALE, new Weighing("pan 3", pounds(4.5), pounds(3)));

        assertThat(Amounts.format(pan.caught())).isEqualTo("1.5 lb");
        // Two readings by 0.5 lb: 0.5 ÷ √12 × √2.
        assertThat(number(pan.rounding().orElseThrow())).isCloseTo(0.5 / Math.sqrt(6), within(1e-12));
    }

    @Test
    void aGrossBelowItsTareIsRefused() {
        assertRefused(
                "pan 3: gross 2 lb is below its tare 3 lb. Swapped?",
                () -> new Weighing("pan 3", pounds(2), pounds(3)));
    }

    @Test
    void aPanOfKnownAreaIsAsLongAsItsAreaWants() {
        Pan round = Pan.ofArea(inches(0), inches(12), Amounts.of(0.5, SpreadingUnits.SQUARE_FOOT), pounds(1));

        assertThat(number(round.length())).isCloseTo(6, within(1e-12));
        assertThat(round.rounding()).isEmpty();
    }

    @Test
    void aPanNeedsWidthLengthAreaAndAMassOfZeroOrMore() {
        assertRefused(
                "width of the pan at 1 m must be greater than 0: 0 m",
                () -> Pan.of(meters(1), meters(0), meters(1), grams(1)));
        assertRefused(
                "length of the pan at 1 m must be greater than 0: -1 m",
                () -> Pan.of(meters(1), meters(1), meters(-1), grams(1)));
        assertRefused(
                "mass of the pan at 1 m must be 0 or more: -1 g",
                () -> Pan.of(meters(1), meters(1), meters(1), grams(-1)));
        assertRefused(
                "uncertainty of the mass of the pan at 1 m must be 0 or more: -1 g",
                () -> new Pan(meters(1), meters(1), meters(1), grams(1), Optional.of(grams(-1))));
        assertRefused(
                "area of a pan must be greater than 0: 0 m²",
                () -> Pan.ofArea(meters(1), meters(1), Amounts.of(0, SpreadingUnits.SQUARE_METER), grams(1)));
        assertRefused(
                "width of a pan must be greater than 0: 0 m",
                () -> Pan.ofArea(meters(1), meters(0), Amounts.of(1, SpreadingUnits.SQUARE_METER), grams(1)));
        assertThat(pan(1, 0).caught()).isEqualTo(grams(0));
    }

    @Test
    void threePansAreEnoughAndTwoAreNot() {
        assertThat(SpreadPattern.of(row(0, 1, 1, 2, 1)).pans()).hasSize(3);
        assertRefused("pans across the road must be three or more: 2", () -> SpreadPattern.of(row(0, 1, 1, 2)));
    }

    @Test
    void aThousandPansAreEnough() {
        List<Pan> many = new ArrayList<>(row(0, 1, new double[1000]));
        many.set(0, pan(0, 1));
        assertThat(SpreadPattern.of(many).pans()).hasSize(1000);

        many.add(pan(1000, 1));
        assertRefused("pans must be at most 1000: more", () -> SpreadPattern.of(many));
    }

    @Test
    void pansMayTouchButNotOverlap() {
        assertThat(SpreadPattern.of(row(0, 0.5, 1, 2, 1)).pans()).hasSize(3);
        assertRefused(
                "pan at 0.4 m must be beside the pan at 0 m: over it", () -> SpreadPattern.of(row(0, 0.4, 1, 2, 1)));
        assertRefused(
                "pan at 0 m must be beside the pan at 0 m: over it",
                () -> SpreadPattern.of(List.of(pan(0, 1), pan(0, 1), pan(1, 1))));
    }

    @Test
    void pansStandFromTheLeftToTheRight() {
        List<Pan> pans = new ArrayList<>(row(-1, 1, 1, 2, 3));
        Collections.reverse(pans);

        assertThat(SpreadPattern.of(pans).pans()).containsExactlyElementsOf(row(-1, 1, 1, 2, 3));
    }

    @Test
    void aRowOfEmptyPansSaysNothing() {
        assertRefused("mass caught in all pans must be greater than 0: 0", () -> SpreadPattern.of(row(0, 1, 0, 0, 0)));
    }

    @Test
    void theTruckDroveOverThemOnceOrMoreOften() {
        assertRefused("passes over the pans must be 1 to 1000: 0", () -> new SpreadPattern(row(0, 1, 1, 2, 1), 0));
        assertRefused(
                "passes over the pans must be 1 to 1000: 1001", () -> new SpreadPattern(row(0, 1, 1, 2, 1), 1001));
        assertThat(new SpreadPattern(row(0, 1, 1, 2, 1), 1000).passes()).isEqualTo(1000);
    }

    @Test
    void aStripGoesFromTheLeftToTheRight() {
        assertRefused("right edge must be right of the left edge, 1 m: 1 m", () -> strip(1, 1));
        assertThat(strip(-1, 2).width()).isEqualTo(meters(3));
        assertThat(strip(-1, 2)).hasToString("-1 m to 2 m");
    }

    @Test
    void aLaneLiesEvenlyAboutTheTruck() {
        assertThat(RoadStrip.lane(meters(3.5))).isEqualTo(strip(-1.75, 1.75));
        assertRefused("lane width must be greater than 0: 0 m", () -> RoadStrip.lane(meters(0)));
    }

    @Test
    void whatIsMissingIsNamed() throws ReflectiveOperationException {
        SpreadPattern pattern = SpreadPattern.of(row(0, 1, 1, 2, 1));
        assertNamesWhatIsMissing(pan(1, 2));
        assertNamesWhatIsMissing(strip(0, 1));
        assertNamesWhatIsMissing(pattern);
        assertNamesWhatIsMissing(pattern.shares(strip(0, 1)));
        assertNamesWhatIsMissing(pattern.recovery(Amounts.of(1, SpreadingUnits.KILOGRAM_PER_KILOMETER)));
        assertNamesWhatIsMissing(pattern.overlap(meters(1), Driving.SAME_DIRECTION));
        SpinnerSetting setting = new SpinnerSetting("slow", pattern);
        assertNamesWhatIsMissing(setting);
        assertNamesWhatIsMissing(new SpinnerTrial(List.of(setting)));
    }
}
