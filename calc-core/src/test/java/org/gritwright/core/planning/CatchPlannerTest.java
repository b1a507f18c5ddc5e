package org.gritwright.core.planning;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.Samples.DAY;
import static org.gritwright.core.Samples.SENSOR;
import static org.gritwright.core.Samples.assertNamesWhatIsMissing;
import static org.gritwright.core.Samples.assertRefused;
import static org.gritwright.core.Samples.pounds;
import static org.gritwright.core.planning.Setups.SIXTY_PULSES;
import static org.gritwright.core.planning.Setups.inPercent;
import static org.gritwright.core.planning.Setups.pails;
import static org.gritwright.core.planning.Setups.percent;
import static org.gritwright.core.planning.Setups.rightScale;
import static org.gritwright.core.planning.Setups.scale;
import static org.gritwright.core.planning.Setups.scatter;
import static org.gritwright.core.planning.Setups.setup;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.DoubleStream;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import org.gritwright.core.metering.NoSensor;
import org.gritwright.core.observation.CatchAllowances;
import org.gritwright.core.observation.CatchLimits;
import org.gritwright.core.observation.ErrorSource;
import org.gritwright.core.observation.Moisture;
import org.gritwright.core.observation.Repeatability;
import org.gritwright.core.uncertainty.Component;
import org.gritwright.core.uncertainty.Distribution;
import org.gritwright.core.weighing.AccuracyClass;
import org.gritwright.core.weighing.Scale;
import org.gritwright.core.weighing.ScaleAccuracy;
import org.gritwright.core.weighing.ScaleCheck;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.quantity.RevolutionCount;
import org.hipparchus.distribution.continuous.TDistribution;
import org.junit.jupiter.api.Test;

class CatchPlannerTest {

    private static PlanResult.Reached reached(PlanResult result) {
        assertThat(result).isInstanceOf(PlanResult.Reached.class);
        return (PlanResult.Reached) result;
    }

    private static PlanResult.OutOfReach outOfReach(PlanResult result) {
        assertThat(result).isInstanceOf(PlanResult.OutOfReach.class);
        return (PlanResult.OutOfReach) result;
    }

    /**
     * By hand, of 5 lb/rev with s₀ 1 %, 60 pulses/rev and a division of 0.5 lb in one container: N revolutions are 5 N
     * lb; rounding 0.5 ÷ √12 × √2 ÷ 5 N = 4.08248 % ÷ N; count 1 ÷ (60 √6 N) = 0.680414 % ÷ N. N = 10 is the least with
     * 100 divisions: √(1 + 0.166667 + 0.004630) % × 1.959964 = 2.12119 %.
     */
    @Test
    void oneCatchIsAddedUpRowByRow() {
        CatchPlanner planner = CatchPlanner.of(
                setup(rightScale(0.5), pails(1, 200), SIXTY_PULSES).allowing(scatter(1)));
        CatchSeries ten = reached(planner.plan(percent(2.13))).series();
        assertThat(ten.repeats()).isEqualTo(1);
        assertThat(Amounts.format(ten.revolutions())).isEqualTo("10 rev");
        assertThat(ten.pulses().map(Amounts::format)).hasValue("600 pulse");
        assertThat(Amounts.in(ten.massPerCatch(), SpreadingUnits.POUND)).isCloseTo(50, within(1e-9));
        assertThat(ten.containersToFill()).isEqualTo(1);
        assertThat(inPercent(ten.expandedUncertainty())).isCloseTo(2.12119, within(2e-5));
        assertThat(ten.budget().components())
                .extracting(Component::name)
                .containsExactly(
                        Cause.SCATTER.words(), Cause.ROUNDING.words(), Cause.COUNT.words(), Cause.SPAN.words());
        assertThat(ten.budget().components())
                .extracting(c -> inPercent(c.contribution()))
                .usingComparatorForType(within5Digits(), Double.class)
                .containsExactly(1.0, 0.408248, 0.0680414, 0.000577);
    }

    private static Comparator<Double> within5Digits() {
        return (a, b) -> Math.abs(a - b) < 1e-5 ? 0 : Double.compare(a, b);
    }

    /** One revolution less, 2.0733 % at N = 12 against 2.0569 % at 13, wouldn't do. */
    @Test
    void ofWholeRevolutionsTheFewestAreTaken() {
        CatchPlanner planner = CatchPlanner.of(
                setup(rightScale(0.5), pails(1, 200), SIXTY_PULSES).allowing(scatter(1)), 1, 1);
        assertThat(Amounts.format(reached(planner.plan(percent(2.06))).series().revolutions()))
                .isEqualTo("13 rev");
    }

    /**
     * Pails of 60 lb: 12 revolutions fill one and give 0.7814 %, 13 to 16 start a second and give 0.960 to 0.813 %, 17
     * are 0.7765 %, 18 are 0.7446 %.
     */
    @Test
    void aSecondContainerRoundsAnotherTimeSoALargerCatchMayBeTheWorseOne() {
        CatchPlanner planner = CatchPlanner.of(
                setup(rightScale(0.5), pails(2, 60), SIXTY_PULSES).allowing(scatter(0.2)), 1, 1);
        CatchSeries one = reached(planner.plan(percent(0.8))).series();
        assertThat(Amounts.format(one.revolutions())).isEqualTo("12 rev");
        assertThat(one.containersToFill()).isEqualTo(1);
        CatchSeries two = reached(planner.plan(percent(0.77))).series();
        assertThat(Amounts.format(two.revolutions())).isEqualTo("18 rev");
        assertThat(two.containersToFill()).isEqualTo(2);
        assertThat(inPercent(two.expandedUncertainty())).isCloseTo(0.74455, within(1e-4));
    }

    /** Of n catches of 10 revolutions that scatter by 1 %, of which nobody knew more than with 2 degrees of freedom. */
    private static double ofTenRevolutions(int n) {
        double variance = 1 + 0.408248 * 0.408248 + 0.0680414 * 0.0680414;
        return student((2 + n - 1) * variance * variance) * Math.sqrt(variance / n);
    }

    /** For 95 %, by another library. */
    private static double student(double degreesOfFreedom) {
        return new TDistribution(degreesOfFreedom).inverseCumulativeProbability(0.975);
    }

    /**
     * s₀ 1 % with 2 degrees of freedom: of four catches it will be known with 5, and t for 5, 2.57058, ÷ √4 is 1.285 % with any
     * mass; of five with 6, t 2.44691 ÷ √5 is 1.0943 %, and with the rounding of 10 revolutions 1.11 %.
     */
    @Test
    void theMoreCatchesTheBetterTheirScatterIsKnown() {
        CatchPlanner planner = CatchPlanner.of(setup(rightScale(0.5), pails(1, 200), SIXTY_PULSES), 3, 10);
        CatchSeries five = reached(planner.plan(percent(1.2))).series();
        assertThat(five.repeats()).isEqualTo(5);
        assertThat(Amounts.format(five.revolutions())).isEqualTo("10 rev");
        assertThat(Amounts.in(five.totalMass(), SpreadingUnits.POUND)).isCloseTo(250, within(1e-9));
        assertThat(inPercent(five.expandedUncertainty())).isCloseTo(ofTenRevolutions(5), within(2e-5));
        assertThat(five.budget().components().get(0)).satisfies(row -> {
            assertThat(row.key()).isEqualTo(ErrorSource.SCATTER.key());
            assertThat(row.evaluation()).isEqualTo(Component.Evaluation.TYPE_A);
            assertThat(row.degreesOfFreedom()).isEqualTo(6);
            assertThat(inPercent(row.contribution())).isCloseTo(1 / Math.sqrt(5), within(1e-9));
        });
        assertThat(five.assumptions())
                .anySatisfy(a -> assertThat(a).contains("1 % (common practice, no source)", "will show more"));
    }

    @Test
    void oneCatchRestsOnTheAssumedScatterAndSaysSo() {
        CatchSeries one = reached(CatchPlanner.of(setup(rightScale(0.5), pails(1, 200), SIXTY_PULSES))
                        .plan(percent(4)))
                .series();
        assertThat(one.repeats()).isEqualTo(1);
        assertThat(inPercent(one.expandedUncertainty())).isCloseTo(ofTenRevolutions(1), within(3e-5));
        assertThat(one.budget().components().get(0).key()).isEqualTo(ErrorSource.ASSUMED_SCATTER.key());
        assertThat(one.assumptions()).anySatisfy(a -> assertThat(a).contains("one catch can't show"));
    }

    /** Of a scatter that is simply stated catches show no more, so that t stays 1.96: √1.171296 % × 1.959964 ÷ √2. */
    @Test
    void aScatterThatIsSimplyStatedIsKnownBeforeAnyCatch() {
        CatchPlanner two = CatchPlanner.of(
                setup(rightScale(0.5), pails(1, 200), SIXTY_PULSES).allowing(scatter(1)), 2, 2);
        CatchSeries series = reached(two.plan(percent(1.6))).series();
        assertThat(inPercent(series.expandedUncertainty())).isCloseTo(1.49991, within(2e-5));
        assertThat(series.budget().components().get(0).key()).isEqualTo(ErrorSource.REPEATABILITY.key());
    }

    @Test
    void aScatterFromFewExperiencesWidensTheIntervalOfOneCatch() {
        CatchAllowances known = new CatchAllowances(
                percent(0), percent(0), Optional.empty(), Optional.of(new Repeatability(percent(2), 4)));
        CatchPlanner planner = CatchPlanner.of(
                setup(rightScale(0.01), pails(1, 200), SIXTY_PULSES).allowing(known), 1, 1);
        // t for 4 degrees of freedom, 2.776445, × 2 % is 5.5529 %.
        assertThat(planner.plan(percent(5.5))).isInstanceOf(PlanResult.OutOfReach.class);
        assertThat(reached(planner.plan(percent(5.6))).series().assumptions())
                .anySatisfy(a -> assertThat(a).contains("2 %, as stated"));
    }

    /** A span of ±1 % is 1 ÷ √3 = 0.57735 % in every catch, 1.1316 % expanded: no repeats help. */
    @Test
    void repeatsDontShrinkTheScalesSpan() {
        PlanResult.OutOfReach result = outOfReach(
                CatchPlanner.of(setup(scale(0.1, 1), pails(4, 60), SIXTY_PULSES).allowing(scatter(0.2)))
                        .plan(percent(1)));
        assertThat(result.mainCause()).isEqualTo(Cause.SPAN);
        assertThat(inPercent(result.series().expandedUncertainty())).isBetween(1.1316, 1.2);
    }

    @Test
    void aTestWeightNearTheLoadBoundsTheSpan() {
        Scale tested = scale(0.1, 1).checked(new ScaleCheck(DAY, pounds(50), pounds(50)));
        CatchSetup setup = setup(tested, pails(4, 60), SIXTY_PULSES).allowing(scatter(0.2));
        // (0 + 0.05) ÷ 50 = 0.1 % for what weighs 25 to 100 lb.
        CatchSeries series = reached(CatchPlanner.of(setup).plan(percent(1))).series();
        assertThat(series.budget().components())
                .filteredOn(c -> c.name().equals(Cause.SPAN.words()))
                .singleElement()
                .satisfies(c -> assertThat(inPercent(c.contribution())).isCloseTo(0.1 / Math.sqrt(3), within(1e-9)));
        CatchSetup nextDay = setup.with(new PlannedAmount.Weighed(
                tested, DAY.plusDays(1), ((PlannedAmount.Weighed) setup.amount()).containers()));
        assertThat(outOfReach(CatchPlanner.of(nextDay).plan(percent(1))).mainCause())
                .isEqualTo(Cause.SPAN);
    }

    /** To within 1 %, which is 1 ÷ √3 % of standard uncertainty. */
    @Test
    void aScaleOfUnknownAccuracyIsAssumedToBeCommonAndThatIsSaid() {
        CatchSeries unknown = CatchPlanner.of(setup(scale(0.5), pails(2, 60), SIXTY_PULSES))
                .plan(percent(4))
                .series();
        assertThat(unknown.budget().components())
                .filteredOn(c -> c.name().equals(Cause.SPAN.words()))
                .singleElement()
                .satisfies(c -> assertThat(inPercent(c.contribution())).isCloseTo(1 / Math.sqrt(3), within(1e-9)));
        assertThat(unknown.assumptions())
                .anySatisfy(a -> assertThat(a)
                        .contains(
                                "assumed to be at most 1 % (common practice, no source)", "its accuracy is not known"));
        CatchSeries known = CatchPlanner.of(setup(scale(0.5, 0.1), pails(2, 60), SIXTY_PULSES))
                .plan(percent(4))
                .series();
        assertThat(known.budget().components()).extracting(Component::name).contains(Cause.SPAN.words());
        assertThat(known.assumptions()).noneSatisfy(a -> assertThat(a).contains("accuracy"));
    }

    @Test
    void whatIsTheSameInEveryCatchIsInTheBudget() {
        CatchAllowances allowances = new CatchAllowances(
                percent(1),
                percent(0.8),
                Optional.of(new Moisture(percent(4), percent(0.5), Moisture.Basis.WET_MASS)),
                Optional.of(Repeatability.assumed(percent(0.1))));
        CatchSetup setup = setup(scale(0.1, 0.3), pails(2, 100), SIXTY_PULSES).allowing(allowances);
        PlanResult.OutOfReach result = outOfReach(CatchPlanner.of(setup).plan(percent(0.9)));
        assertThat(result.series().budget().components())
                .filteredOn(c -> c.distribution() == Distribution.RECTANGULAR)
                .extracting(c -> c.name() + " " + Math.rint(1000 * inPercent(c.contribution())) / 1000)
                .containsExactly(
                        // 0.3 % ÷ √3; 0.5 % ÷ √3 × 1 ÷ 0.995; 0.8 % ÷ √3; 0.5 ÷ 96 ÷ √3.
                        Cause.SPAN.words() + " 0.173",
                        Cause.SPILLAGE.words() + " 0.29",
                        Cause.TRANSIENT.words() + " 0.462",
                        Cause.MOISTURE.words() + " 0.301");
        assertThat(result.mainCause()).isEqualTo(Cause.TRANSIENT);
    }

    @Test
    void aCoarseScaleIsToBlame() {
        PlanResult.OutOfReach result = outOfReach(CatchPlanner.of(
                        setup(rightScale(1), pails(3, 40), SIXTY_PULSES).allowing(scatter(0.2)), 3, 5)
                .plan(percent(0.4)));
        assertThat(result.mainCause()).isEqualTo(Cause.ROUNDING);
        assertThat(result.series().repeats()).isEqualTo(5);
    }

    @Test
    void aCoarseSensorIsToBlame() {
        PlannedCount one = new PlannedCount.Pulses(Amounts.of(1, SpreadingUnits.PULSE_PER_REVOLUTION));
        CatchSetup setup = setup(rightScale(0.1), pails(3, 200), one).allowing(scatter(0.1));
        PlanResult.OutOfReach result = outOfReach(CatchPlanner.of(setup, 3, 5).plan(percent(0.3)));
        assertThat(result.mainCause()).isEqualTo(Cause.COUNT);
        assertThat(result.mainCause().help()).contains("more pulses");
    }

    @Test
    void theMachinesOwnScatterIsToBlameWhereNothingElseIs() {
        PlanResult.OutOfReach result = outOfReach(CatchPlanner.of(setup(rightScale(0.1), pails(3, 200), SIXTY_PULSES))
                .plan(percent(0.5)));
        assertThat(result.mainCause()).isEqualTo(Cause.SCATTER);
        // t for 2 + 9 degrees of freedom, 2.200985, × 1 % ÷ √10, and a little for rounding and pulses.
        assertThat(inPercent(result.series().expandedUncertainty())).isBetween(0.69601, 0.6962);
        assertThat(result.wanted()).isEqualTo(percent(0.5));
    }

    /** A count by eye of 0.1 rev, 2 % at most of a count: 5 revolutions. In 12 revolutions 0.1 rev are 0.8333 %. */
    @Test
    void aCountByEyeEntersWithTheStatedUncertainty() {
        PlannedCount byEye = new PlannedCount.ByEye(Amounts.of(0.1, SpreadingUnits.REVOLUTION));
        CatchSetup setup = setup(scale(0.1), pails(1, 60), byEye).allowing(scatter(0.5));
        CatchSeries series = CatchPlanner.of(setup, 1, 1).plan(percent(0.1)).series();
        assertThat(series.pulses()).isEmpty();
        assertThat(series.budget().components())
                .filteredOn(c -> c.name().equals(Cause.COUNT.words()))
                .singleElement()
                .satisfies(c -> assertThat(inPercent(c.contribution())).isCloseTo(100 * 0.1 / 12, within(1e-9)));
    }

    @Test
    void aCountThatNobodyKnowsTheUncertaintyOfIsLeftOutAndThatIsSaid() {
        CatchSeries series = CatchPlanner.of(setup(scale(0.1), pails(1, 60), new PlannedCount.Timed()), 1, 1)
                .plan(percent(4))
                .series();
        assertThat(series.budget().components()).extracting(Component::name).doesNotContain(Cause.COUNT.words());
        assertThat(series.assumptions()).anySatisfy(a -> assertThat(a).contains("nothing counts them"));
    }

    /** 100 divisions of 0.1 lb are 2 rev, 100 pulses of 8 pulse/rev 12.5, and 5 revolutions the least anyway. */
    @Test
    void aPlannedCatchIsLargeEnoughToGetNoFinding() {
        assertThat(fewest(SIXTY_PULSES, 0.1)).isEqualTo("5 rev");
        assertThat(fewest(new PlannedCount.Pulses(Amounts.of(8, SpreadingUnits.PULSE_PER_REVOLUTION)), 0.1))
                .isEqualTo("13 rev");
        assertThat(fewest(SIXTY_PULSES, 0.35)).isEqualTo("7 rev");
        assertThat(fewest(new PlannedCount.ByEye(Amounts.of(0.15, SpreadingUnits.REVOLUTION)), 0.1))
                .isEqualTo("8 rev");
    }

    /** Five turns of the conveyor's own shaft are 26 revolutions of a motor geared 5.2 : 1, and 2.5 of a slower shaft. */
    @Test
    void aGearedSensorAsksForAsManyMoreRevolutions() {
        for (PlannedCount geared : List.of(
                new PlannedCount.Pulses(Amounts.of(64, SpreadingUnits.PULSE_PER_REVOLUTION), ratio(5.2)),
                new PlannedCount.ByEye(Amounts.of(0.01, SpreadingUnits.REVOLUTION), ratio(5.2)),
                new PlannedCount.Timed(ratio(5.2)))) {
            CatchSeries series = CatchPlanner.of(setup(scale(0.1), pails(4, 60), geared))
                    .plan(percent(50))
                    .series();
            assertThat(Amounts.format(series.revolutions())).isEqualTo("26 rev");
            assertThat(Amounts.in(series.conveyorTurns(), SpreadingUnits.REVOLUTION))
                    .isCloseTo(5, within(1e-12));
        }
        assertThat(fewest(
                        new PlannedCount.Pulses(Amounts.of(60, SpreadingUnits.PULSE_PER_REVOLUTION), ratio(0.5)), 0.1))
                .isEqualTo("3 rev");
    }

    @Test
    void aRefusalSaysTheTurnsOfTheConveyorShaft() {
        PlannedCount geared = new PlannedCount.Timed(ratio(5.2));
        assertRefused(
                "containers must be able to hold the smallest sensible catch, 26 rev (5 rev of the conveyor shaft) or 130 lb:"
                        + " 40 lb in all",
                () -> CatchPlanner.of(setup(scale(0.1), pails(1, 40), geared)));
    }

    private static Quantity<Dimensionless> ratio(double value) {
        return Amounts.of(value, SpreadingUnits.ONE);
    }

    private static String fewest(PlannedCount count, double divisionPounds) {
        CatchSetup setup = setup(scale(divisionPounds), pails(4, 60), count);
        return Amounts.format(CatchPlanner.of(setup).plan(percent(50)).series().revolutions());
    }

    /** A scale of 40 lb takes 36 lb in a pail of 4 lb, whatever the pail holds: 2 × 36 lb are 14.4 rev. */
    @Test
    void theScalesCapacityLimitsWhatAContainerIsFilledWith() {
        Scale small = Scale.of("small", pounds(40), pounds(0.1));
        CatchSeries best = outOfReach(CatchPlanner.of(
                                setup(small, pails(2, 60), SIXTY_PULSES).allowing(scatter(1)), 1, 1)
                        .plan(percent(0.1)))
                .series();
        assertThat(Amounts.format(best.revolutions())).isEqualTo("14 rev");
        assertThat(best.containersToFill()).isEqualTo(2);
        CatchSetup heavy = setup(small, new Containers(2, pounds(60), pounds(40)), SIXTY_PULSES);
        assertRefused(
                "tare of a container must be below the capacity of scale small, 40 lb: 40 lb",
                () -> CatchPlanner.of(heavy));
    }

    @Test
    void containersThatCantTakeTheSmallestCatchAreRefused() {
        assertRefused(
                "containers must be able to hold the smallest sensible catch, 10 rev or 50 lb: 40 lb in all",
                () -> CatchPlanner.of(setup(scale(0.5), pails(2, 20), SIXTY_PULSES)));
    }

    /** 5 and 5.4 revolutions: only five are whole. 5.1 and 5.9: none is. */
    @Test
    void revolutionsAreWhole() {
        CatchSetup common = setup(scale(0.1), pails(1, 29.5), SIXTY_PULSES);
        CatchSetup setup = new CatchSetup(common.amount(), common.count(), common.expected(), fromRevolutions(5.1));
        assertRefused(
                "containers must be able to hold a whole number of revolutions, 6 rev or more: 5.9 rev",
                () -> CatchPlanner.of(setup));
    }

    /** Class III by 1 lb in service: ±1 lb up to 500 lb, ±2 lb beyond, so 0.2 % at 500 lb and 0.4 % just above. */
    @Test
    void aScalesClassStepsWithTheLoad() {
        Scale hopper = Scale.of("hopper", pounds(10_000), pounds(1))
                .withAccuracy(new ScaleAccuracy.OfClass(AccuracyClass.HB44_III, AccuracyClass.Stage.IN_SERVICE));
        CatchSetup setup = setup(hopper, new Containers(1, pounds(9000), pounds(0)), SIXTY_PULSES)
                .allowing(scatter(0.05));
        CatchSeries at500 =
                reached(CatchPlanner.of(setup, 1, 1).plan(percent(0.2945))).series();
        assertThat(Amounts.format(at500.revolutions())).isEqualTo("100 rev");
        // 0.2943 % at 100 rev, 0.4855 % at 101, 0.2914 and 0.28995 % at 175 and 176.
        assertThat(Amounts.format(reached(CatchPlanner.of(setup, 1, 1).plan(percent(0.29)))
                        .series()
                        .revolutions()))
                .isEqualTo("176 rev");
    }

    /** As above, up to 600 lb: at 120 rev 2 lb of 600 are 0.333 %, so that nothing comes near the 0.2943 % of 100 rev. */
    @Test
    void whereNoneReachesTheBestIsTakenEvenIfItIsNotTheLargest() {
        Scale hopper = Scale.of("hopper", pounds(10_000), pounds(1))
                .withAccuracy(new ScaleAccuracy.OfClass(AccuracyClass.HB44_III, AccuracyClass.Stage.IN_SERVICE));
        CatchSetup setup = setup(hopper, new Containers(1, pounds(600), pounds(0)), SIXTY_PULSES)
                .allowing(scatter(0.05));
        CatchSeries best =
                outOfReach(CatchPlanner.of(setup, 1, 1).plan(percent(0.29))).series();
        assertThat(Amounts.format(best.revolutions())).isEqualTo("100 rev");
        assertThat(inPercent(best.expandedUncertainty())).isCloseTo(0.2943, within(5e-5));
    }

    /** By the same class ±1 lb of what is weighed: 100 lb in two pails of 4 lb are twice 54 lb. */
    @Test
    void whatIsWeighedIsThePartInOneContainerAndItsTare() {
        Scale platform = Scale.of("platform", pounds(500), pounds(1))
                .withAccuracy(new ScaleAccuracy.OfClass(AccuracyClass.HB44_III, AccuracyClass.Stage.IN_SERVICE));
        CatchSeries series = reached(CatchPlanner.of(setup(platform, pails(2, 60), SIXTY_PULSES), 1, 1)
                        .plan(percent(50)))
                .series();
        assertThat(Amounts.format(series.revolutions())).isEqualTo("20 rev");
        assertThat(series.budget().components())
                .filteredOn(c -> c.name().equals(Cause.SPAN.words()))
                .singleElement()
                .satisfies(c ->
                        assertThat(inPercent(c.contribution())).isCloseTo(100 / 54.0 / Math.sqrt(3), within(1e-9)));
    }

    /**
     * To 1.97 % with s₀ 1 %: the rounding and the count of one catch, 4.13856 % ÷ N, may add √((1.97 ÷ 1.959964)² − 1) % =
     * 0.10133 %, which takes 41 revolutions; two catches of 10, the least, are far better than that.
     */
    @Test
    void twoCatchesMayTakeLessMaterialThanOne() {
        CatchSetup setup = setup(rightScale(0.5), pails(1, 400), SIXTY_PULSES).allowing(scatter(1));
        assertThat(Amounts.format(reached(CatchPlanner.of(setup, 1, 1).plan(percent(1.97)))
                        .series()
                        .revolutions()))
                .isEqualTo("41 rev");
        CatchSeries two =
                reached(CatchPlanner.of(setup, 1, 1000).plan(percent(1.97))).series();
        assertThat(two.repeats()).isEqualTo(2);
        assertThat(Amounts.format(two.revolutions())).isEqualTo("10 rev");
    }

    /** A count is off by less than a pulse, a triangle; the mean of several is nearly normal. */
    @Test
    void thePulsesOfOneCatchAreOffByATriangle() {
        PlannedCount byEye = new PlannedCount.ByEye(Amounts.of(0.1, SpreadingUnits.REVOLUTION));
        assertThat(ofTheCount(SIXTY_PULSES, 1)).isEqualTo(Distribution.TRIANGULAR);
        assertThat(ofTheCount(SIXTY_PULSES, 2)).isEqualTo(Distribution.NORMAL);
        assertThat(ofTheCount(byEye, 1)).isEqualTo(Distribution.NORMAL);
    }

    private static Distribution ofTheCount(PlannedCount count, int repeats) {
        CatchSetup setup = setup(rightScale(0.5), pails(1, 200), count);
        return CatchPlanner.of(setup, repeats, repeats).plan(percent(50)).series().budget().components().stream()
                .filter(c -> c.name().equals(Cause.COUNT.words()))
                .findFirst()
                .orElseThrow()
                .distribution();
    }

    @Test
    void aSensorCountsPulsesAndWithoutOneSomebodyOrNobodyCounts() {
        Quantity<RevolutionCount> byEye = Amounts.of(0.1, SpreadingUnits.REVOLUTION);
        assertThat(PlannedCount.with(SENSOR, Optional.of(byEye)))
                .isEqualTo(new PlannedCount.Pulses(SENSOR.pulsesPerRevolution(), SENSOR.gearRatio()));
        assertThat(PlannedCount.with(NoSensor.onDriveShaft(), Optional.of(byEye)))
                .isEqualTo(new PlannedCount.ByEye(byEye));
        assertThat(PlannedCount.with(NoSensor.onDriveShaft(), Optional.empty())).isEqualTo(new PlannedCount.Timed());
    }

    @Test
    void whatIsMissingIsNamed() throws ReflectiveOperationException {
        CatchSetup setup = setup(rightScale(0.5), pails(1, 200), SIXTY_PULSES);
        PlanResult.Reached reached = reached(CatchPlanner.of(setup).plan(percent(4)));
        assertNamesWhatIsMissing(setup);
        assertNamesWhatIsMissing(reached);
        assertNamesWhatIsMissing(reached.series());
        assertNamesWhatIsMissing(new PlanResult.OutOfReach(percent(1), reached.series(), Cause.SPAN, percent(1)));
    }

    /** The least mass in all, of 3 to 10 catches of 10 to 24 revolutions that fill one pail of 60 lb or two. */
    private static int fewestRepeats(double wantedPercent) {
        double least = Double.POSITIVE_INFINITY;
        int repeats = 0;
        for (int n = 3; n <= 10; n++) {
            for (int rev = 10; rev <= 24; rev++) {
                double rounding = 50 / Math.sqrt(12) * Math.sqrt(rev <= 12 ? 2 : 4) / (5 * rev);
                double count = 100 / (60 * Math.sqrt(6) * rev);
                double variance = 1 + rounding * rounding + count * count;
                double expanded = student((2 + n - 1) * variance * variance) * Math.sqrt(variance / n);
                if (expanded <= wantedPercent && n * rev < least) {
                    least = n * rev;
                    repeats = n;
                }
            }
        }
        return repeats;
    }

    @Test
    void theYardTableHasALineForEachUncertainty() {
        List<PlanResult> table = CatchPlanner.of(setup(rightScale(0.5), pails(2, 60), SIXTY_PULSES), 3, 10)
                .table(CatchPlanner.USUAL);
        assertThat(table).extracting(PlanResult::wanted).isEqualTo(CatchPlanner.USUAL);
        assertThat(table)
                .extracting(
                        row -> row instanceof PlanResult.Reached ? row.series().repeats() : 0)
                .containsExactly(6, 4, 3, 3, 3, 3)
                .isEqualTo(DoubleStream.of(1, 1.5, 2, 3, 4, 5)
                        .mapToObj(CatchPlannerTest::fewestRepeats)
                        .toList());
    }

    @Test
    void runTimeIsRevolutionsByShaftSpeed() {
        CatchSeries series = CatchPlanner.of(setup(scale(0.5), pails(1, 200), SIXTY_PULSES))
                .plan(percent(50))
                .series();
        assertThat(Amounts.format(series.runTime(Amounts.of(40, SpreadingUnits.REVOLUTION_PER_MINUTE))))
                .isEqualTo("15 s");
        assertRefused(
                "shaft speed must be greater than 0: 0 rev/min",
                () -> series.runTime(Amounts.of(0, SpreadingUnits.REVOLUTION_PER_MINUTE)));
    }

    @Test
    void badNumbersAreRefused() {
        CatchSetup setup = setup(scale(0.5), pails(1, 200), SIXTY_PULSES);
        assertRefused(
                "wanted uncertainty must be greater than 0: 0 %",
                () -> CatchPlanner.of(setup).plan(percent(0)));
        assertRefused(
                "wanted uncertainty must be below 100 %: 120 %",
                () -> CatchPlanner.of(setup).plan(percent(120)));
        assertRefused("fewest repeats must be 1 or more: 0", () -> CatchPlanner.of(setup, 0, 3));
        assertRefused("most repeats must be from the fewest, 3, to 1000: 2", () -> CatchPlanner.of(setup, 3, 2));
        assertRefused("most repeats must be from the fewest, 3, to 1000: 1001", () -> CatchPlanner.of(setup, 3, 1001));
        assertRefused("containers must be one or more: 0", () -> pails(0, 20));
        assertRefused("what a container holds must be greater than 0: 0 lb", () -> pails(1, 0));
        assertRefused("tare of a container must be 0 or more: -1 lb", () -> new Containers(1, pounds(20), pounds(-1)));
        assertRefused(
                "expected discharge per revolution must be greater than 0: 0 lb/rev",
                () -> CatchSetup.of(
                        scale(1), DAY, pails(1, 20), SIXTY_PULSES, Amounts.of(0, SpreadingUnits.POUND_PER_REVOLUTION)));
        assertRefused(
                "uncertainty of the count must be 0 or more: -1 rev",
                () -> new PlannedCount.ByEye(Amounts.of(-1, SpreadingUnits.REVOLUTION)));
        assertRefused(
                "pulses per revolution must be greater than 0: 0 pulse/rev",
                () -> new PlannedCount.Pulses(Amounts.of(0, SpreadingUnits.PULSE_PER_REVOLUTION)));
    }

    @Test
    void noMoreThanTwentyThousandNumbersAreTried() {
        assertThat(CatchPlanner.step(20_000)).isEqualTo(1);
        assertThat(CatchPlanner.step(20_001)).isEqualTo(10);
        assertThat(CatchPlanner.step(200_000)).isEqualTo(10);
        assertThat(CatchPlanner.step(200_001)).isEqualTo(100);
    }

    /** 60 000 lb at 0.5 lb/rev are 120 000 rev: tens are tried. */
    @Test
    void aHopperOfManyTonsIsSearchedInSteps() {
        Scale hopper =
                Scale.of("hopper", pounds(60_000), pounds(20)).withAccuracy(new ScaleAccuracy.Stated(percent(0.0001)));
        CatchSetup setup = CatchSetup.of(
                        hopper,
                        DAY,
                        new Containers(1, pounds(60_000), pounds(0)),
                        SIXTY_PULSES,
                        Amounts.of(0.5, SpreadingUnits.POUND_PER_REVOLUTION))
                .allowing(scatter(0.1));
        CatchSeries series =
                reached(CatchPlanner.of(setup, 1, 1).plan(percent(0.25))).series();
        double revolutions = Amounts.in(series.revolutions(), SpreadingUnits.REVOLUTION);
        assertThat(revolutions % 10).isZero();
        // (0.25 ÷ 1.959964)² − 0.1² = 0.0791824² %; 20 ÷ √6 lb = 8.16497 lb are that of 10 311.6 lb, 20 623 rev.
        assertThat(revolutions).isEqualTo(20_630);
        // 1.959964 × 0.1 % can't be reached with all 60 000 lb; 100 divisions are 4000 rev.
        assertThat(Amounts.format(outOfReach(CatchPlanner.of(setup, 1, 1).plan(percent(0.19)))
                        .series()
                        .massPerCatch()))
                .isEqualTo("60000 lb");
        assertThat(Amounts.format(reached(CatchPlanner.of(setup, 1, 1).plan(percent(50)))
                        .series()
                        .revolutions()))
                .isEqualTo("4000 rev");
    }

    /** From 120 001 to 120 005 rev there is no ten. */
    @Test
    void wholeTensAreMissedAsWholeRevolutionsAre() {
        CatchSetup setup = new CatchSetup(
                Scale.of("hopper", pounds(100_000), pounds(20)),
                DAY,
                new Containers(1, pounds(60_002.5), pounds(0)),
                SIXTY_PULSES,
                Amounts.of(0.5, SpreadingUnits.POUND_PER_REVOLUTION),
                fromRevolutions(120_001));
        assertThatThrownBy(() -> CatchPlanner.of(setup))
                .hasMessageStartingWith(
                        "containers must be able to hold a whole number of revolutions, 120010 rev or more: ");
    }

    private static CatchLimits fromRevolutions(double fewest) {
        return new CatchLimits(
                Optional.empty(),
                Amounts.of(0, SpreadingUnits.PULSE),
                Amounts.of(fewest, SpreadingUnits.REVOLUTION),
                0,
                percent(5),
                percent(2),
                CatchAllowances.NONE);
    }
}
