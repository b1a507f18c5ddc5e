package org.gritwright.core.lateral;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.Samples.assertRefused;
import static org.gritwright.core.lateral.LateralSamples.meters;
import static org.gritwright.core.lateral.LateralSamples.number;
import static org.gritwright.core.lateral.LateralSamples.row;
import static org.gritwright.core.lateral.LateralSamples.strip;
import static org.gritwright.core.lateral.LateralSamples.touching;

import java.util.List;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import org.assertj.core.data.Offset;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.junit.jupiter.api.Test;

class LateralOverlapTest {
    private static final Offset<Double> TINY = within(1e-9);

    /** Falls to the left by steps of 1: 1, 2, 3, 4 g, so 4, 8, 12, 16 g/m² at −0.75 to 0.75 m. */
    private static final SpreadPattern SKEWED = touching(1, 2, 3, 4);

    private static Quantity<Dimensionless> percent(double percent) {
        return Amounts.of(percent, SpreadingUnits.PERCENT);
    }

    private static List<Double> ratesAt(Overlap overlap, double... positions) {
        return IntStream.range(0, positions.length)
                .mapToObj(i -> Math.rint(1e9 * number(overlap.rateAt(meters(positions[i])))) / 1e9)
                .toList();
    }

    @Test
    void inTheSameDirectionALeftSideLiesBesideARightSide() {
        // A meter apart: 12 + 4 and 16 + 8 between the center lines.
        Overlap overlap = SKEWED.overlap(meters(1), Driving.SAME_DIRECTION);

        assertThat(ratesAt(overlap, 0.25, 0.75)).containsExactly(16.0, 24.0);
        assertThat(ratesAt(overlap, -0.75, -0.25, 1.25, 1.75)).containsExactly(4.0, 8.0, 12.0, 16.0);
        assertThat(overlap.between()).isEqualTo(strip(0, 1));
        assertThat(number(overlap.variation())).isCloseTo(20, TINY);
        assertThat(number(overlap.lowest())).isCloseTo(16, TINY);
        assertThat(number(overlap.highest())).isCloseTo(24, TINY);
    }

    @Test
    void backOnTheRightARightSideLiesBesideARightSide() {
        // 12 + 16 and 16 + 12.
        Overlap overlap = SKEWED.overlap(meters(1), Driving.RETURN_ON_RIGHT);

        assertThat(ratesAt(overlap, 0.25, 0.75, 1.25, 1.75)).containsExactly(28.0, 28.0, 8.0, 4.0);
        assertThat(overlap.between()).isEqualTo(strip(0, 1));
        assertThat(number(overlap.variation())).isZero();
    }

    @Test
    void backOnTheLeftALeftSideLiesBesideALeftSide() {
        // 8 + 4 and 4 + 8.
        Overlap overlap = SKEWED.overlap(meters(1), Driving.RETURN_ON_LEFT);

        assertThat(ratesAt(overlap, -0.25, -0.75, -1.25, -1.75)).containsExactly(12.0, 12.0, 12.0, 16.0);
        assertThat(overlap.between()).isEqualTo(strip(-1, 0));
        assertThat(number(overlap.variation())).isZero();
    }

    @Test
    void theRateBetweenPansIsThatOfTheLines() {
        Overlap overlap = SKEWED.overlap(meters(1), Driving.SAME_DIRECTION);

        // At 0.5 m: 14 of the first, 6 of the second.
        assertThat(ratesAt(overlap, 0.5)).containsExactly(20.0);
        // Beyond the first's outer edge, level to the second's; then nothing.
        assertThat(ratesAt(overlap, 1.99, 2.01, -0.99, -1.01)).containsExactly(16.0, 0.0, 4.0, 0.0);
    }

    @Test
    void bothPassesLayTwiceTheMass() {
        for (Driving driving : Driving.values()) {
            assertThat(number(SKEWED.overlap(meters(0.7), driving).massPerDistance()))
                    .isCloseTo(2 * number(SKEWED.massPerDistance()), TINY);
        }
        assertThat(SKEWED.overlap(meters(1), Driving.SAME_DIRECTION)
                        .massPerDistance()
                        .getUnit())
                .isEqualTo(SpreadingUnits.KILOGRAM_PER_KILOMETER);
    }

    @Test
    void aGapBetweenThePassesIsNoneAtAll() {
        Overlap apart = SKEWED.overlap(meters(3), Driving.SAME_DIRECTION);

        assertThat(number(apart.lowest())).isZero();
        // 12, 16 over a meter, none over a meter, 4, 8 over a meter: mean 20/3, squares (144 + 256 + 16 + 64)/6
        assertThat(number(apart.variation())).isCloseTo(100 * Math.sqrt(80 - 400 / 9.0) / (20 / 3.0), TINY);
    }

    @Test
    void aTriangleIsEvenAtItsHalfWidthAndNoWider() {
        // 0 1 2 3 2 1 0 g: two triangles 1.5 m apart are level.
        SpreadPattern triangle = touching(0, 1, 2, 3, 2, 1, 0);

        assertThat(number(triangle.overlap(meters(1.5), Driving.SAME_DIRECTION).variation()))
                .isCloseTo(0, within(1e-6));
        double widest = number(triangle.widestSpacing(Driving.SAME_DIRECTION, percent(10), meters(1))
                .orElseThrow());
        assertThat(widest).isBetween(1.5, 2.0);
        assertThat(number(
                        triangle.overlap(meters(widest), Driving.SAME_DIRECTION).variation()))
                .isCloseTo(10, within(1e-6));
        assertThat(number(triangle.overlap(meters(widest + 1e-6), Driving.SAME_DIRECTION)
                        .variation()))
                .isGreaterThan(10);
    }

    @Test
    void theWidestSpacingIsFoundBeyondANarrowerOneThatFails() {
        // Two humps 2 m apart: uneven where one hump fills no gap, even again where it does.
        SpreadPattern humps = touching(0, 0, 4, 1, 1, 1, 4, 0, 0);
        double widest = number(humps.widestSpacing(Driving.SAME_DIRECTION, percent(70), meters(0.5))
                .orElseThrow());

        assertThat(variation(humps, widest)).isCloseTo(70, within(1e-6));
        assertThat(DoubleStream.iterate(widest + 0.01, wider -> wider < 4.5, wider -> wider + 0.01)
                        .map(wider -> variation(humps, wider)))
                .allMatch(variation -> variation > 70);
        assertThat(DoubleStream.iterate(0.5, narrower -> narrower < widest, narrower -> narrower + 0.01)
                        .map(narrower -> variation(humps, narrower)))
                .anyMatch(variation -> variation > 70);
    }

    private static double variation(SpreadPattern pattern, double spacing) {
        return number(pattern.overlap(meters(spacing), Driving.SAME_DIRECTION).variation());
    }

    @Test
    void noSpacingMayBeEvenEnough() {
        assertThat(touching(0, 9, 0, 0, 0, 9, 0).widestSpacing(Driving.SAME_DIRECTION, percent(1), meters(1.6)))
                .isEmpty();
    }

    @Test
    void aNarrowestSpacingBeyondThePatternLeavesNoChoice() {
        assertThat(touching(1, 1, 1).widestSpacing(Driving.SAME_DIRECTION, percent(99), meters(2)))
                .isEmpty();
    }

    @Test
    void wherePassesStillJoinEvenlyWithoutTouchingThatIsTheWidest() {
        // Level to the outer edge: at 1.5 m the second begins where the first ends.
        assertThat(number(touching(1, 1, 1)
                        .widestSpacing(Driving.SAME_DIRECTION, percent(1), meters(1))
                        .orElseThrow()))
                .isCloseTo(1.5, within(1e-3));
    }

    @Test
    void spacingsAndLimitsAreChecked() {
        assertRefused(
                "spacing of the passes must be greater than 0: 0 m",
                () -> SKEWED.overlap(meters(0), Driving.SAME_DIRECTION));
        assertRefused(
                "limit of the coefficient of variation must be below 100 %: 100 %",
                () -> SKEWED.widestSpacing(Driving.SAME_DIRECTION, percent(100), meters(1)));
        assertRefused(
                "narrowest spacing must be greater than 0: 0 m",
                () -> SKEWED.widestSpacing(Driving.SAME_DIRECTION, percent(10), meters(0)));
    }

    @Test
    void nothingBetweenTheCenterLinesHasNoVariation() {
        SpreadPattern left = SpreadPattern.of(row(-2, 0.5, 1, 2, 1));

        assertRefused(
                "mass between the center lines must be greater than 0: none at a spacing of 0.1 m",
                () -> left.overlap(meters(0.1), Driving.SAME_DIRECTION).variation());
    }

    @Test
    void theOuterEdgesBelongToThePattern() {
        Overlap overlap = SKEWED.overlap(meters(1), Driving.SAME_DIRECTION);

        assertThat(ratesAt(overlap, -1, 2)).containsExactly(4.0, 16.0);
    }

    @Test
    void theNarrowestSpacingIsLookedAtToo() {
        // Level at a meter, and nowhere beyond.
        assertThat(number(SKEWED.widestSpacing(Driving.RETURN_ON_RIGHT, percent(1e-4), meters(1))
                        .orElseThrow()))
                .isCloseTo(1, within(1e-5));
        // The narrowest may be where the passes just touch.
        assertThat(touching(1, 1, 1).widestSpacing(Driving.SAME_DIRECTION, percent(1), meters(1.5)))
                .contains(meters(1.5));
    }
}
