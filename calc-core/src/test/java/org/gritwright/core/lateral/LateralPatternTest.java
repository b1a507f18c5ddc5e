package org.gritwright.core.lateral;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.Samples.PATTERN;
import static org.gritwright.core.Samples.assertRefused;
import static org.gritwright.core.Samples.codes;
import static org.gritwright.core.Samples.inches;
import static org.gritwright.core.Samples.only;
import static org.gritwright.core.lateral.LateralSamples.number;
import static org.gritwright.core.lateral.LateralSamples.pan;
import static org.gritwright.core.lateral.LateralSamples.row;
import static org.gritwright.core.lateral.LateralSamples.strip;
import static org.gritwright.core.lateral.LateralSamples.touching;
import static org.gritwright.core.lateral.LateralSamples.uncertainty;

import java.util.List;
import javax.measure.Quantity;
import org.assertj.core.data.Offset;
import org.gritwright.core.finding.FindingCode;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.quantity.ApplicationRate;
import org.junit.jupiter.api.Test;

class LateralPatternTest {
    private static final Offset<Double> TINY = within(1e-9);

    private static Quantity<ApplicationRate> kilogramsPerKilometer(double rate) {
        return Amounts.of(rate, SpreadingUnits.KILOGRAM_PER_KILOMETER);
    }

    @Test
    void aRateIsTheCaughtMassPerAreaAndPass() {
        List<Pan> pans = row(-1, 1, 5, 10, 2.5);

        assertThat(SpreadPattern.of(pans).rates())
                .extracting(LateralSamples::number)
                .containsExactly(20.0, 40.0, 10.0);
        assertThat(new SpreadPattern(pans, 2).rates())
                .extracting(LateralSamples::number)
                .containsExactly(10.0, 20.0, 5.0);
        assertThat(SpreadPattern.of(pans).rates().get(0).value().getUnit())
                .isEqualTo(SpreadingUnits.GRAM_PER_SQUARE_METER);
        assertThat(SpreadPattern.of(pans).rates().get(0).standardUncertainty()).isEmpty();
    }

    @Test
    void poundsGivePoundsPerThousandSquareFeetAndPerMile() {
        assertThat(PATTERN.rates()).extracting(LateralSamples::number).satisfies(rates -> {
            assertThat(rates.get(0)).isCloseTo(1000, TINY);
            assertThat(rates.get(1)).isCloseTo(2000, TINY);
        });
        // 4 lb per foot of road, but for what lies between lines and steps: none here.
        assertThat(number(PATTERN.massPerDistance())).isCloseTo(4 * 5280, within(1e-8));
        assertThat(PATTERN.massPerDistance().value().getUnit()).isEqualTo(SpreadingUnits.POUND_PER_MILE);
        assertThat(PATTERN.offset().value().getUnit()).isEqualTo(SpreadingUnits.INCH);
    }

    @Test
    void massPerDistanceIsTheTrapezoidsAndTheOuterHalves() {
        // 20, 40, 10 g/m² at −1, 0, 2 m: 0.25·20 + 30·1 + 25·2 + 0.25·10
        SpreadPattern pattern = SpreadPattern.of(List.of(pan(-1, 5), pan(0, 10), pan(2, 2.5)));

        assertThat(number(pattern.massPerDistance())).isCloseTo(87.5, TINY);
        assertThat(pattern.massPerDistance().value().getUnit()).isEqualTo(SpreadingUnits.KILOGRAM_PER_KILOMETER);
    }

    @Test
    void theRoundingOfTheScaleGoesThroughEveryResult() {
        // Rates 4, 8, 4 g/m², each ± 0.4; weights 0.5 m, 0.5 m, 0.5 m; mass 8 g/m.
        SpreadPattern pattern = SpreadPattern.of(List.of(pan(-0.5, 1, 0.1), pan(0, 2, 0.1), pan(0.5, 1, 0.1)));

        assertThat(uncertainty(pattern.rates().get(1))).isCloseTo(0.4, TINY);
        assertThat(uncertainty(pattern.massPerDistance())).isCloseTo(0.2 * Math.sqrt(3), TINY);
        assertThat(pattern.massPerDistance().degreesOfFreedom()).hasValue(Double.POSITIVE_INFINITY);
        // Moments per rate: of each outer pan's half 0.25·0.625, of each line 0.5·(2·0.5)/6.
        double moment = 0.25 * 0.625 + 0.5 / 6;
        assertThat(uncertainty(pattern.offset())).isCloseTo(0.4 * moment * Math.sqrt(2) / 8, TINY);
        assertThat(uncertainty(pattern.meanRate(strip(-0.75, 0.75)))).isCloseTo(0.2 * Math.sqrt(3) / 1.5, TINY);
        // Left of 0: 0.5 of the outer pan's weight, a quarter meter of the middle one's.
        Measured<?> left = pattern.shares(strip(0, 1)).left();
        assertThat(number(left)).isCloseTo(50, TINY);
        assertThat(uncertainty(left)).isCloseTo(100 * 0.4 * 0.25 * Math.sqrt(2) / 8, TINY);
    }

    @Test
    void passesTogetherAreWeighedOnce() {
        SpreadPattern pattern = new SpreadPattern(List.of(pan(-0.5, 1, 0.1), pan(0, 2, 0.1), pan(0.5, 1, 0.1)), 4);

        assertThat(uncertainty(pattern.rates().get(1))).isCloseTo(0.1, TINY);
    }

    @Test
    void anUncertaintyNeedsThatOfEveryPan() {
        SpreadPattern pattern = SpreadPattern.of(List.of(pan(-0.5, 1, 0.1), pan(0, 2, 0.1), pan(0.5, 1)));

        assertThat(pattern.massPerDistance().standardUncertainty()).isEmpty();
        assertThat(pattern.shares(strip(-1, 1)).inside().standardUncertainty()).isEmpty();
    }

    @Test
    void aPatternToTheRightHasAPositiveOffset() {
        assertThat(number(touching(1, 2, 1).offset())).isCloseTo(0, TINY);
        // Level 4 g/m² over 1.5 m about 1 m.
        assertThat(number(SpreadPattern.of(row(0.5, 0.5, 1, 1, 1)).offset())).isCloseTo(1, TINY);
        assertThat(number(touching(0, 0, 4).offset())).isPositive();
        assertThat(number(touching(4, 0, 0).offset())).isNegative();
    }

    @Test
    void theOffsetIsTheFirstMomentOfTheLines() {
        // 0 at −1 m, 4 at 1 m and level to 1.25 m; 0 at −2 m.
        SpreadPattern pattern = SpreadPattern.of(List.of(pan(-2, 0), pan(-1, 0), pan(1, 1)));
        // Triangle: mass 4 at 1/3 m; level: mass 1 at 1.125 m.
        assertThat(number(pattern.offset())).isCloseTo((4.0 / 3 + 1.125) / 5, TINY);
    }

    @Test
    void theTreatedWidthEndsWhereHalfOfTheMiddlesRateIsLeft() {
        // Bulletin 817: 4 deep out to 4 ft, 2 deep at 6 ft.
        SpreadPattern pattern = SpreadPattern.of(row(-3.5, 0.5, 0, 1, 2, 3, 4, 4, 4, 4, 4, 4, 4, 3, 2, 1, 0));

        assertThat(number(pattern.treated().left())).isCloseTo(-2.5, TINY);
        assertThat(number(pattern.treated().right())).isCloseTo(2.5, TINY);
    }

    @Test
    void theTreatedWidthEndsBetweenPans() {
        // Middle 8, half 4: from 0 at 1 m to 8 at 0.5 m half-way; the left doesn't fall off at all.
        SpreadPattern pattern = touching(8, 8, 8, 8, 0);

        assertThat(number(pattern.treated().left())).isCloseTo(-1.25, TINY);
        assertThat(number(pattern.treated().right())).isCloseTo(0.75, TINY);
    }

    @Test
    void theMiddleIsThatOfThePatternAndNotOfTheTruck() {
        // All of it lies left: 4 2 4 about −2 m; half of their mean 10/3 is 5/3.
        SpreadPattern pattern = touching(0, 4, 2, 4, 0, 0, 0, 0, 0, 0, 0);

        assertThat(number(pattern.treated().left())).isCloseTo(-2.5 + 0.5 * 5 / 12, TINY);
        assertThat(number(pattern.treated().right())).isCloseTo(-0.5 - 0.5 * 5 / 12, TINY);
    }

    @Test
    void aFourthPanAsNearAsTheThirdCounts() {
        // About 0: 4 at ±0.25 and 2 at ±0.75, mean 3 and half of it 1.5; between 0 at ±1.25 and 2.
        SpreadPattern pattern = touching(0, 2, 4, 4, 2, 0);

        assertThat(number(pattern.treated().right())).isCloseTo(1.25 - 0.5 * 0.75, TINY);
        assertThat(number(pattern.treated().left())).isCloseTo(-1.25 + 0.5 * 0.75, TINY);
    }

    @Test
    void withNothingInTheMiddleTheWholeRowIsTreated() {
        assertThat(touching(4, 0, 0, 0, 4).treated()).isEqualTo(strip(-1.25, 1.25));
    }

    @Test
    void theMeanRateOverAStripIsTheIntegralOverItsWidth() {
        SpreadPattern level = touching(2, 2, 2);

        assertThat(number(level.meanRate(strip(-0.6, 0.7)))).isCloseTo(8, TINY);
        // Half of it lies beyond the pans.
        assertThat(number(level.meanRate(strip(0, 1.5)))).isCloseTo(4, TINY);
        // Along the line from 0 to 8: mean 2 over its first half.
        assertThat(number(touching(0, 2, 0).meanRate(strip(-0.5, -0.25)))).isCloseTo(2, TINY);
    }

    @Test
    void theVariationIsThatOfAPopulation() {
        // 1 2 3 2 1: mean 1.8, squares 2.8/5
        assertThat(number(touching(1, 2, 3, 2, 1).variation(strip(-1.25, 1.25))))
                .isCloseTo(100 * Math.sqrt(0.56) / 1.8, TINY);
        assertThat(number(touching(2, 2, 2).variation(strip(-0.75, 0.75)))).isZero();
    }

    @Test
    void aPanAtTheEdgeCountsByTheWidthInside() {
        // 1 over 0.25 m, 3 over 0.5 m and 1 over 0.25 m: mean 2, deviation 1
        assertThat(number(touching(1, 3, 1).variation(strip(-0.5, 0.5)))).isCloseTo(50, TINY);
    }

    @Test
    void whereThePansDontReachTheRateCountsAsNone() {
        // 2 over half of the strip, 0 over the other: mean 1, deviation 1
        assertThat(number(touching(2, 2, 2).variation(strip(-0.75, 2.25)))).isCloseTo(100, TINY);
    }

    @Test
    void aStripWithoutMassHasNoVariation() {
        assertRefused(
                "mass caught from 1 m to 2 m must be greater than 0: none",
                () -> touching(1, 2, 1).variation(strip(1, 2)));
    }

    @Test
    void sharesAreIntegralsToTheEdgesOfTheLane() {
        LaneShares shares = SpreadPattern.of(row(-1, 1, 1, 1, 3)).shares(strip(-0.75, 1));
        // 4 g/m² from −1.25 to 0, rising to 12 at 1 and level to 1.25: 5 + 8 + 3
        assertThat(number(shares.left())).isCloseTo(100 * 2 / 16.0, TINY);
        assertThat(number(shares.inside())).isCloseTo(100 * 11 / 16.0, TINY);
        assertThat(number(shares.right())).isCloseTo(100 * 3 / 16.0, TINY);
        assertThat(number(shares.outside())).isCloseTo(100 * 5 / 16.0, TINY);
    }

    @Test
    void whatIsRecoveredIsWhatThePansAccountForOfWhatWasAsked() {
        // 2 g a pan: 8 g/m² over 1.5 m, 12 kg/km.
        Recovery recovery = touching(2, 2, 2).recovery(kilogramsPerKilometer(16));

        assertThat(number(recovery.accounted())).isCloseTo(12, TINY);
        assertThat(number(recovery.share())).isCloseTo(75, TINY);
        assertThat(only(FindingCode.PAN_RECOVERY_OFF, recovery.findings()).sentence())
                .isEqualTo(
                        "The pans account for 12 kg/km of 16 kg/km asked for, 75 %: the row is too short, grains bounced"
                                + " in or out, or the rate is off.");
    }

    @Test
    void aTenthMayBeMissingOrTooMuch() {
        SpreadPattern pattern = touching(1.5, 1.5, 1.5); // 9 kg/km

        assertThat(pattern.recovery(kilogramsPerKilometer(10)).findings()).isEmpty();
        assertThat(codes(pattern.recovery(kilogramsPerKilometer(10.1)).findings()))
                .containsExactly(FindingCode.PAN_RECOVERY_OFF);
        assertThat(pattern.recovery(kilogramsPerKilometer(9 / 1.1)).findings()).isEmpty();
        assertThat(codes(pattern.recovery(kilogramsPerKilometer(8)).findings()))
                .containsExactly(FindingCode.PAN_RECOVERY_OFF);
        assertRefused(
                "rate asked for must be greater than 0: 0 kg/km", () -> pattern.recovery(kilogramsPerKilometer(0)));
    }

    @Test
    void resultsAreInTheUnitsOfTheLeftmostPan() {
        SpreadPattern mixed = SpreadPattern.of(List.of(
                pan(0, 1),
                pan(1, 1),
                Pan.of(inches(-30), inches(12), inches(12), Amounts.of(1, SpreadingUnits.OUNCE))));

        assertThat(mixed.offset().value().getUnit()).isEqualTo(SpreadingUnits.INCH);
        assertThat(mixed.massPerDistance().value().getUnit()).isEqualTo(SpreadingUnits.POUND_PER_MILE);
        assertThat(mixed.treated().left().getUnit()).isEqualTo(SpreadingUnits.INCH);
    }

    @Test
    void aPanWithExactlyHalfOfTheMiddlesRateIsTreated() {
        assertThat(touching(2, 4, 4, 4, 2).treated()).isEqualTo(strip(-1.25, 1.25));
        // The outermost of those on the level, not the last.
        assertThat(touching(0, 2, 2, 4, 4, 4, 2, 2, 0).treated()).isEqualTo(strip(-1.5, 1.5));
    }
}
