package org.gritwright.core.planning;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.Samples.assertRefused;
import static org.gritwright.core.Samples.height;
import static org.gritwright.core.planning.Setups.SIXTY_PULSES;
import static org.gritwright.core.planning.Setups.inPercent;
import static org.gritwright.core.planning.Setups.pails;
import static org.gritwright.core.planning.Setups.rightScale;
import static org.gritwright.units.SpreadingUnits.MILE_PER_HOUR;
import static org.gritwright.units.SpreadingUnits.ONE;
import static org.gritwright.units.SpreadingUnits.PERCENT;
import static org.gritwright.units.SpreadingUnits.POUND_PER_MILE;
import static org.gritwright.units.SpreadingUnits.POUND_PER_REVOLUTION;
import static org.gritwright.units.SpreadingUnits.REVOLUTION_PER_MINUTE;

import java.util.List;
import java.util.Map;
import javax.measure.Quantity;
import org.gritwright.core.envelope.Demand;
import org.gritwright.core.envelope.Envelope;
import org.gritwright.core.envelope.GateFit;
import org.gritwright.core.envelope.GatePlanner;
import org.gritwright.core.range.WorkingRange;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.Amounts;
import org.gritwright.units.quantity.DischargePerRevolution;
import org.junit.jupiter.api.Test;

/** By hand: from 4 to 6 lb/rev are 5 ± 20 %. */
class PredictedDischargeTest {
    private static final PredictedDischarge FOUR_TO_SIX = new PredictedDischarge(pounds(4), pounds(6));

    /** Five catches at the most, of pails of a well-known scale. */
    private static final CatchPlanner PLANNER =
            CatchPlanner.of(Setups.setup(rightScale(0.5), pails(2, 40), SIXTY_PULSES), 1, 5);

    private static Quantity<DischargePerRevolution> pounds(double perRevolution) {
        return Amounts.of(perRevolution, POUND_PER_REVOLUTION);
    }

    private static GateFit fit(double margin) {
        return new GateFit(height(2), Amounts.of(margin, ONE), List.of());
    }

    @Test
    void theMiddleIsPlannedWithAndAllBetweenTheEndsIsAsLikely() {
        assertThat(Amounts.in(FOUR_TO_SIX.expected(), POUND_PER_REVOLUTION)).isCloseTo(5, within(1e-12));
        assertThat(inPercent(FOUR_TO_SIX.within())).isCloseTo(20, within(1e-11));
        Measured<DischargePerRevolution> measured = FOUR_TO_SIX.measured();
        assertThat(measured.value()).isEqualTo(FOUR_TO_SIX.expected());
        assertThat(Amounts.in(measured.standardUncertainty().orElseThrow(), POUND_PER_REVOLUTION))
                .isCloseTo(1 / Math.sqrt(3), within(1e-12));
        assertThat(measured.degreesOfFreedom()).hasValue(Double.POSITIVE_INFINITY);
    }

    @Test
    void aPredictionThatIsCloserThanTheMarginNeedsNoCatch() {
        // All is served from the predicted ÷ 1.3 to × 1.3, and 20 % is less than 1 − 1 ÷ 1.3 = 23.1 %.
        Confirmation enough = FOUR_TO_SIX.confirmedBy(fit(1.3), PLANNER);

        assertThat(enough.howMany()).contains(0);
        assertThat(enough.catches()).isEmpty();
        assertThat(inPercent(enough.neededWithin())).isCloseTo(100 * (1 - 1 / 1.3), within(1e-11));
        assertThat(enough.predictedWithin()).isEqualTo(FOUR_TO_SIX.within());
        assertThat(enough.setting()).isEqualTo(height(2));
        // At a margin of 1.25 the whole prediction just fits.
        assertThat(FOUR_TO_SIX.confirmedBy(fit(1.25), PLANNER).howMany()).contains(0);
    }

    @Test
    void aSmallerMarginNeedsTheCatchesThatAPlanForItNeeds() {
        Confirmation few = FOUR_TO_SIX.confirmedBy(fit(1.02), PLANNER);

        double needed = 100 * (1 - 1 / 1.02);
        assertThat(few.catches()).contains(PLANNER.plan(few.neededWithin()));
        assertThat(inPercent(few.neededWithin())).isCloseTo(needed, within(1e-11));
        PlanResult plan = few.catches().orElseThrow();
        assertThat(plan).isInstanceOf(PlanResult.Reached.class);
        assertThat(few.howMany()).contains(plan.series().repeats());
        assertThat(plan.series().repeats()).isGreaterThan(1);
        assertThat(inPercent(plan.series().expandedUncertainty())).isLessThanOrEqualTo(needed);
    }

    @Test
    void whatIsPredictedNotToServeIsConfirmedTheSameWay() {
        assertThat(FOUR_TO_SIX.confirmedBy(fit(1 / 1.02), PLANNER).howMany())
                .isEqualTo(FOUR_TO_SIX.confirmedBy(fit(1.02), PLANNER).howMany());
        assertThat(FOUR_TO_SIX.confirmedBy(fit(0.5), PLANNER).howMany()).contains(0);
    }

    @Test
    void aMarginTooSmallForTheScaleCannotBeConfirmed() {
        Confirmation none = FOUR_TO_SIX.confirmedBy(fit(1.0001), PLANNER);

        assertThat(none.howMany()).isEmpty();
        assertThat(none.catches().orElseThrow()).isInstanceOf(PlanResult.OutOfReach.class);
    }

    @Test
    void nothingTellsOnWhichSideOfItsLimitAShaftIsThatIsAtIt() {
        assertRefused(
                "distance of the gate setting from its limit must be greater than 0: 0 %",
                () -> FOUR_TO_SIX.confirmedBy(fit(1), PLANNER));
        assertRefused(
                "margin of the gate setting must be greater than 0: 0", () -> FOUR_TO_SIX.confirmedBy(fit(0), PLANNER));
    }

    @Test
    void theMarginIsThatOfThePlannersComparison() {
        // 5 lb/rev at 2 to 40 rev/min are 10 to 200 lb/min; 300 lb/mi at 36 mi/h are 180, at 10 mi/h 50: margin
        // 200/180.
        WorkingRange range =
                new WorkingRange(Amounts.of(2, REVOLUTION_PER_MINUTE), Amounts.of(40, REVOLUTION_PER_MINUTE));
        Demand road = new Demand(
                "valley road",
                Amounts.of(300, POUND_PER_MILE),
                Amounts.of(10, MILE_PER_HOUR),
                Amounts.of(36, MILE_PER_HOUR));
        GateFit fit = GatePlanner.compare(Map.of(height(2), Envelope.of(FOUR_TO_SIX.measured(), range)), List.of(road))
                .get(0);

        Confirmation confirmation = FOUR_TO_SIX.confirmedBy(fit, PLANNER);
        assertThat(inPercent(confirmation.neededWithin())).isCloseTo(10, within(1e-10));
        // What is within those 10 % serves, and what is a little beyond doesn't.
        assertThat(serves(4.5001, range, road)).isTrue();
        assertThat(serves(4.4999, range, road)).isFalse();
    }

    private static boolean serves(double poundsPerRevolution, WorkingRange range, Demand road) {
        Envelope caught = Envelope.of(Measured.once(pounds(poundsPerRevolution)), range);
        return GatePlanner.compare(Map.of(height(2), caught), List.of(road))
                .get(0)
                .servesAll();
    }

    @Test
    void endsThatAreUpsideDownOrNothingAreRefused() {
        assertRefused(
                "highest predicted discharge must be at least 6 lb/rev: 4 lb/rev",
                () -> new PredictedDischarge(pounds(6), pounds(4)));
        assertRefused(
                "lowest predicted discharge must be greater than 0: 0 lb/rev",
                () -> new PredictedDischarge(pounds(0), pounds(4)));
        assertThat(inPercent(new PredictedDischarge(pounds(5), pounds(5)).within()))
                .isZero();
        assertThat(Amounts.in(FOUR_TO_SIX.within(), PERCENT)).isPositive();
    }
}
