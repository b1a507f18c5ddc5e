package org.gritwright.units.rate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.units.samples.Samples.assertRefused;

import javax.measure.Quantity;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.quantity.BulkDensity;
import org.gritwright.units.quantity.PrewetRate;
import org.junit.jupiter.api.Test;

/** The share of a total dose that is solution, and what keeps it apart from a prewet rate. */
class SolutionShareTest {
    private static final SolutionShare SHARE = SolutionShare.percent(30);
    private static final Quantity<BulkDensity> WATER = Amounts.of(1, SpreadingUnits.KILOGRAM_PER_LITER);

    @Test
    void thirtyPercentOfTwentyGramsAreSixOfSolutionAndFourteenDry() {
        assertThat(SHARE.solutionPart(Amounts.of(20, SpreadingUnits.GRAM_PER_SQUARE_METER)))
                .isEqualTo(Amounts.of(6, SpreadingUnits.GRAM_PER_SQUARE_METER));
        assertThat(SHARE.dryPart(Amounts.of(20, SpreadingUnits.GRAM_PER_SQUARE_METER)))
                .isEqualTo(Amounts.of(14, SpreadingUnits.GRAM_PER_SQUARE_METER));
    }

    @Test
    void eitherPartGivesTheTotal() {
        assertThat(Amounts.in(
                        SHARE.totalFromDryPart(Amounts.of(14, SpreadingUnits.KILOGRAM_PER_LANE_KILOMETER)),
                        SpreadingUnits.KILOGRAM_PER_LANE_KILOMETER))
                .isCloseTo(20, within(1e-14 * 20));
        assertThat(Amounts.in(
                        SHARE.totalFromSolutionPart(Amounts.of(6, SpreadingUnits.POUND_PER_MILE)),
                        SpreadingUnits.POUND_PER_MILE))
                .isCloseTo(20, within(1e-14 * 20));
    }

    /** A unit law: 300 mL of something as heavy as water on 700 g is 30 %; on 1000 g it is 23.1 %. */
    @Test
    void aShareOfTheTotalIsNoShareOfTheDryMaterial() {
        assertThat(Amounts.in(SHARE.prewetRate(WATER), SpreadingUnits.MILLILITER_PER_KILOGRAM))
                .isCloseTo(3000.0 / 7, within(1e-10));
        assertThat(Amounts.in(
                        SolutionShare.fromPrewetRate(Amounts.of(300, SpreadingUnits.MILLILITER_PER_KILOGRAM), WATER)
                                .ofTotal(),
                        SpreadingUnits.PERCENT))
                .isCloseTo(300 / 13.0, within(1e-12));
    }

    @Test
    void theSameShareIsLessVolumeOfAHeavierLiquid() {
        Quantity<BulkDensity> brine = Amounts.of(1.2, SpreadingUnits.KILOGRAM_PER_LITER);
        assertThat(Amounts.in(SHARE.prewetRate(brine), SpreadingUnits.LITER_PER_TONNE))
                .isCloseTo(3000.0 / 7 / 1.2, within(1e-10));
    }

    @Test
    void thePrewetRateIsGivenAsTheDensityWas() {
        Quantity<PrewetRate> rate = SHARE.prewetRate(Amounts.of(9.8, SpreadingUnits.POUND_PER_US_GALLON));
        assertThat(rate.getUnit()).isEqualTo(SpreadingUnits.US_GALLON_PER_SHORT_TON);
        assertThat(rate.getValue().doubleValue()).isCloseTo(2000 * 0.3 / 0.7 / 9.8, within(1e-12));
        assertThat(SHARE.prewetRate(WATER).getUnit()).isEqualTo(SpreadingUnits.LITER_PER_TONNE);
    }

    @Test
    void nothingOrAllMayBeSolution() {
        assertThat(SolutionShare.percent(0).dryPart(Amounts.of(5, SpreadingUnits.POUND)))
                .isEqualTo(Amounts.of(5, SpreadingUnits.POUND));
        assertThat(SolutionShare.percent(100).dryPart(Amounts.of(5, SpreadingUnits.POUND_PER_MINUTE)))
                .isEqualTo(Amounts.of(0, SpreadingUnits.POUND_PER_MINUTE));
        assertThat(SolutionShare.percent(0).prewetRate(WATER).getValue().doubleValue())
                .isZero();
    }

    @Test
    void whatIsAHundredPercentButForRoundingLeavesNothingDry() {
        assertThat(SolutionShare.percent(Math.nextUp(100.0))
                        .dryPart(Amounts.of(5, SpreadingUnits.POUND))
                        .getValue()
                        .doubleValue())
                .isZero();
    }

    @Test
    void whatCannotBeIsRefused() {
        assertRefused("solution share must be within 0 % to 100 %: 101 %", () -> SolutionShare.percent(101));
        assertRefused("solution share must be within 0 % to 100 %: -1 %", () -> SolutionShare.percent(-1));
        assertRefused(
                "solution share must be below 100 %: 100 %",
                () -> SolutionShare.percent(100).prewetRate(WATER));
        assertRefused(
                "solution share must be below 100 %: 100 %",
                () -> SolutionShare.percent(100).totalFromDryPart(Amounts.of(1, SpreadingUnits.POUND)));
        assertRefused(
                "solution share must be greater than 0: 0 %",
                () -> SolutionShare.percent(0).totalFromSolutionPart(Amounts.of(1, SpreadingUnits.POUND)));
        assertRefused(
                "density of the liquid must be greater than 0: 0 kg/L",
                () -> SHARE.prewetRate(Amounts.of(0, SpreadingUnits.KILOGRAM_PER_LITER)));
        assertRefused(
                "prewet rate must be 0 or more: -1 L/t",
                () -> SolutionShare.fromPrewetRate(Amounts.of(-1, SpreadingUnits.LITER_PER_TONNE), WATER));
        assertRefused(
                "density of the liquid must be greater than 0: 0 kg/L",
                () -> SolutionShare.fromPrewetRate(
                        Amounts.of(1, SpreadingUnits.LITER_PER_TONNE),
                        Amounts.of(0, SpreadingUnits.KILOGRAM_PER_LITER)));
        assertRefused("total dose must be 0 or more: -1 lb", () -> SHARE.dryPart(Amounts.of(-1, SpreadingUnits.POUND)));
        assertRefused(
                "total dose must be 0 or more: -1 lb", () -> SHARE.solutionPart(Amounts.of(-1, SpreadingUnits.POUND)));
        assertRefused(
                "dry part must be 0 or more: -1 lb",
                () -> SHARE.totalFromDryPart(Amounts.of(-1, SpreadingUnits.POUND)));
        assertRefused(
                "solution part must be 0 or more: -1 lb",
                () -> SHARE.totalFromSolutionPart(Amounts.of(-1, SpreadingUnits.POUND)));
    }

    @Test
    void aVolumeHasNoPartsByMass() {
        assertRefused(
                "total dose must be a mass, or a mass per distance, lane distance, area or time: 40 gal/lane-mi",
                () -> SHARE.solutionPart(Amounts.of(40, SpreadingUnits.US_GALLON_PER_LANE_MILE)));
    }
}
