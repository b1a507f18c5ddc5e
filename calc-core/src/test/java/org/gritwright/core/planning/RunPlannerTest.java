package org.gritwright.core.planning;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.Samples.assertNamesWhatIsMissing;
import static org.gritwright.core.Samples.assertRefused;
import static org.gritwright.core.Samples.pounds;
import static org.gritwright.core.planning.Setups.SIXTY_PULSES;
import static org.gritwright.core.planning.Setups.inPercent;
import static org.gritwright.core.planning.Setups.pails;
import static org.gritwright.core.planning.Setups.percent;
import static org.gritwright.core.planning.Setups.rightScale;
import static org.gritwright.core.planning.Setups.scatter;
import static org.gritwright.core.planning.Setups.setup;

import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Speed;
import org.gritwright.core.range.WorkingRange;
import org.gritwright.core.weighing.AccuracyClass;
import org.gritwright.core.weighing.Scale;
import org.gritwright.core.weighing.ScaleAccuracy;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.quantity.ApplicationRate;
import org.junit.jupiter.api.Test;

/** 400 lb/mi at 22.5 mi/h are 2.5 lb/s; at 5 lb/rev 0.5 rev/s, 30 rev/min. */
class RunPlannerTest {
    private static final Quantity<ApplicationRate> RATE = Amounts.of(400, SpreadingUnits.POUND_PER_MILE);
    private static final CatchSetup SETUP =
            setup(rightScale(0.5), pails(4, 60), SIXTY_PULSES).allowing(scatter(1));

    private static Quantity<Speed> milesPerHour(double speed) {
        return Amounts.of(speed, SpreadingUnits.MILE_PER_HOUR);
    }

    private static Optional<WorkingRange> range(double lowest, double highest) {
        return Optional.of(new WorkingRange(
                Amounts.of(lowest, SpreadingUnits.REVOLUTION_PER_MINUTE),
                Amounts.of(highest, SpreadingUnits.REVOLUTION_PER_MINUTE)));
    }

    /** 24 s fill one pail with 60 lb, 12 rev, U 2.0733 %; 23 s are 57.5 lb, 11.5 rev, U 2.0831 %. */
    @Test
    void theShortestRunThatTellsTheErrorWellEnough() {
        RunPlan plan =
                RunPlanner.of(SETUP, RATE).at(milesPerHour(22.5), percent(2.08)).orElseThrow();
        assertThat(plan.result()).isInstanceOf(PlanResult.Reached.class);
        assertThat(Amounts.format(plan.runTime())).isEqualTo("24 s");
        CatchSeries one = plan.result().series();
        assertThat(one.repeats()).isEqualTo(1);
        assertThat(Amounts.in(one.massPerCatch(), SpreadingUnits.POUND)).isCloseTo(60, within(1e-9));
        assertThat(one.pulses().map(Amounts::format)).hasValue("720 pulse");
        assertThat(one.containersToFill()).isEqualTo(1);
        assertThat(inPercent(one.expandedUncertainty())).isCloseTo(2.07326, within(1e-5));
        assertThat(Amounts.in(plan.shaftSpeed(), SpreadingUnits.REVOLUTION_PER_MINUTE))
                .isCloseTo(30, within(1e-9));
        assertThat(plan.withinRange()).isEmpty();
        assertThat(plan.lostByStart()).isEmpty();
        assertThat(plan.shortestForStart()).isEmpty();
    }

    /** One catch scatters by 1 %: 1.96 % and no less. 240 lb are 96 s. */
    @Test
    void oneCatchIsNoSurerThanItsOwnScatter() {
        RunPlan plan =
                RunPlanner.of(SETUP, RATE).at(milesPerHour(22.5), percent(1.9)).orElseThrow();
        assertThat(plan.result())
                .isInstanceOfSatisfying(
                        PlanResult.OutOfReach.class,
                        out -> assertThat(out.mainCause()).isEqualTo(Cause.SCATTER));
        assertThat(Amounts.format(plan.runTime())).isEqualTo("96 s");
        assertThat(plan.result().series().containersToFill()).isEqualTo(4);
    }

    @Test
    void theShaftSpeedIsHeldAgainstTheWorkingRange() {
        RunPlanner planner = new RunPlanner(SETUP, RATE, range(20, 30), Optional.empty(), Optional.empty());
        assertThat(planner.at(milesPerHour(22.5), percent(4)).orElseThrow().withinRange())
                .hasValue(true);
        assertThat(planner.at(milesPerHour(15), percent(4)).orElseThrow().withinRange())
                .hasValue(true);
        assertThat(planner.at(milesPerHour(11.25), percent(4)).orElseThrow().withinRange())
                .hasValue(false);
        assertThat(planner.at(milesPerHour(30), percent(4)).orElseThrow().withinRange())
                .hasValue(false);
    }

    /** τ 0.8 s: of 2.5 lb/s × 25 s 2 lb are missing: 60.5 lb, the second pail is begun; at 24 s 58 lb. */
    @Test
    void aStartCostsMassAndThatIsSaid() {
        FirstOrderStart start = new FirstOrderStart(Amounts.of(0.8, SpreadingUnits.SECOND));
        RunPlanner planner = new RunPlanner(SETUP, RATE, Optional.empty(), Optional.of(start), Optional.empty());
        RunPlan plan = planner.at(milesPerHour(22.5), percent(2.082)).orElseThrow();
        assertThat(Amounts.format(plan.runTime())).isEqualTo("24 s");
        assertThat(Amounts.in(plan.result().series().massPerCatch(), SpreadingUnits.POUND))
                .isCloseTo(58, within(1e-6));
        assertThat(inPercent(plan.lostByStart().orElseThrow())).isCloseTo(100 * 0.8 / 24, within(1e-9));
    }

    /** 2 % of τ 0.8 s take 40 s; 1 % 80 s; 0.5 % 160 s, and after 96.8 s the pails are full. */
    @Test
    void aRunIsLongEnoughForItsStartToCostLittle() {
        Optional<FirstOrderStart> start = Optional.of(new FirstOrderStart(Amounts.of(0.8, SpreadingUnits.SECOND)));
        RunPlan two = new RunPlanner(SETUP, RATE, Optional.empty(), start, Optional.of(percent(2)))
                .at(milesPerHour(22.5), percent(3))
                .orElseThrow();
        assertThat(Amounts.format(two.runTime())).isEqualTo("40 s");
        assertThat(Amounts.in(two.shortestForStart().orElseThrow(), SpreadingUnits.SECOND))
                .isCloseTo(40, within(1e-9));
        RunPlan half = new RunPlanner(SETUP, RATE, Optional.empty(), start, Optional.of(percent(0.5)))
                .at(milesPerHour(22.5), percent(3))
                .orElseThrow();
        assertThat(half.result())
                .isInstanceOfSatisfying(
                        PlanResult.OutOfReach.class,
                        out -> assertThat(out.mainCause()).isEqualTo(Cause.START));
        assertThat(Amounts.in(half.shortestForStart().orElseThrow(), SpreadingUnits.SECOND))
                .isCloseTo(160, within(1e-9));
    }

    /** ±1 lb of up to 500 lb, ±2 lb beyond. */
    private static CatchSetup byClass(double holdsPounds) {
        Scale hopper = Scale.of("hopper", pounds(10_000), pounds(1))
                .withAccuracy(new ScaleAccuracy.OfClass(AccuracyClass.HB44_III, AccuracyClass.Stage.IN_SERVICE));
        return setup(hopper, new Containers(1, pounds(holdsPounds), pounds(0)), SIXTY_PULSES)
                .allowing(scatter(0.05));
    }

    /** 600 lb are 240 s; but beyond 500 lb, 200 s, the scale may be off by twice as much. */
    @Test
    void whereNoneReachesTheSurestIsTakenEvenIfItIsNotTheLongest() {
        RunPlan plan = RunPlanner.of(byClass(600), RATE)
                .at(milesPerHour(22.5), percent(0.29))
                .orElseThrow();
        assertThat(plan.result()).isInstanceOf(PlanResult.OutOfReach.class);
        assertThat(Amounts.format(plan.runTime())).isEqualTo("200 s");
    }

    /** Of τ 0.8 s 0.399 % are 200.5 s: from 201 s, 500.5 lb, on the start is cheap, though less sure. 505 lb are 202.8 s. */
    @Test
    void aRunWhoseStartCostsLittleIsTakenBeforeASurerOne() {
        RunPlan plan = new RunPlanner(
                        byClass(505),
                        RATE,
                        Optional.empty(),
                        Optional.of(new FirstOrderStart(Amounts.of(0.8, SpreadingUnits.SECOND))),
                        Optional.of(percent(0.399)))
                .at(milesPerHour(22.5), percent(0.29))
                .orElseThrow();
        assertThat(plan.result())
                .isInstanceOfSatisfying(
                        PlanResult.OutOfReach.class,
                        out -> assertThat(out.mainCause()).isEqualTo(Cause.SPAN));
        assertThat(Amounts.format(plan.runTime())).isEqualTo("202 s");
    }

    /** 60 012.5 lb are 24 005 s, more than 20 000, so that tens are tried. */
    @Test
    void aRunOfHoursIsSearchedInSteps() {
        CatchSetup setup = setup(
                        Scale.of("hopper", pounds(100_000), pounds(20))
                                .withAccuracy(new ScaleAccuracy.Stated(percent(0.001))),
                        new Containers(1, pounds(60_012.5), pounds(0)),
                        SIXTY_PULSES)
                .allowing(scatter(1));
        RunPlan plan =
                RunPlanner.of(setup, RATE).at(milesPerHour(22.5), percent(1)).orElseThrow();
        assertThat(Amounts.format(plan.runTime())).isEqualTo("24000 s");
    }

    @Test
    void whatIsMissingIsNamed() throws ReflectiveOperationException {
        assertNamesWhatIsMissing(RunPlanner.of(SETUP, RATE));
        assertNamesWhatIsMissing(
                RunPlanner.of(SETUP, RATE).at(milesPerHour(22.5), percent(4)).orElseThrow());
    }

    @Test
    void badNumbersAreRefused() {
        RunPlanner planner = RunPlanner.of(SETUP, RATE);
        assertRefused("test speed must be greater than 0: 0 mi/h", () -> planner.at(milesPerHour(0), percent(2)));
        assertThat(planner.at(milesPerHour(10_000), percent(2))).isEmpty();
        assertRefused(
                "wanted uncertainty must be greater than 0: 0 %", () -> planner.at(milesPerHour(22.5), percent(0)));
        assertRefused(
                "target rate must be greater than 0: 0 lb/mi",
                () -> RunPlanner.of(SETUP, Amounts.of(0, SpreadingUnits.POUND_PER_MILE)));
        assertRefused(
                "part lost by the start must be given with the time constant of the start: 1 %",
                () -> new RunPlanner(SETUP, RATE, Optional.empty(), Optional.empty(), Optional.of(percent(1))));
        assertRefused("highest steady shaft speed must be at least 30 rev/min: 20 rev/min", () -> range(30, 20));
        assertRefused("lowest steady shaft speed must be 0 or more: -1 rev/min", () -> range(-1, 20));
    }

    /** A start that takes a day and a flow of hardly anything must not be waited for step by step. */
    @Test
    void anAbsurdlySlowStartIsSearchedInStepsToo() {
        FirstOrderStart slow = new FirstOrderStart(Amounts.of(1e12, SpreadingUnits.SECOND));
        RunPlanner planner = new RunPlanner(SETUP, RATE, Optional.empty(), Optional.of(slow), Optional.empty());
        assertThat(planner.at(milesPerHour(22.5), percent(2))).isEmpty();
    }
}
