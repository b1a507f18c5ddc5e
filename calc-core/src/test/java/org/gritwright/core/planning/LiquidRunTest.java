package org.gritwright.core.planning;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.LiquidSamples.METER;
import static org.gritwright.core.Samples.AUGER;
import static org.gritwright.core.Samples.SENSOR;
import static org.gritwright.core.Samples.assertNamesWhatIsMissing;
import static org.gritwright.core.Samples.assertRefused;
import static org.gritwright.core.planning.LiquidSetups.counted;
import static org.gritwright.core.planning.LiquidSetups.graduate;
import static org.gritwright.core.planning.LiquidSetups.meter;
import static org.gritwright.core.planning.LiquidSetups.read;
import static org.gritwright.core.planning.Setups.inPercent;
import static org.gritwright.core.planning.Setups.pails;
import static org.gritwright.core.planning.Setups.percent;
import static org.gritwright.core.planning.Setups.rightScale;
import static org.gritwright.core.planning.Setups.scatter;

import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Speed;
import javax.measure.quantity.Volume;
import org.gritwright.core.LiquidSamples;
import org.gritwright.core.metering.PumpMetering;
import org.gritwright.core.metering.ShaftSensor;
import org.gritwright.core.range.WorkingRange;
import org.gritwright.core.verification.TestRun;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.quantity.LiquidApplicationRate;
import org.junit.jupiter.api.Test;

/** 20 gal/mi at 15 mi/h are 5 gal/min: 5 gal a minute, a pail of 6 gal in 72 s. Derived by hand, as nobody publishes such runs. */
class LiquidRunTest {
    private static final Quantity<LiquidApplicationRate> RATE = gallonsPerMile(20);
    private static final PlannedAmount PAIL = read(graduate(0.02, 0.03), 1, 5.5);
    private static final CatchSetup METERED = meter(PAIL).allowing(scatter(0.5));

    private static Quantity<LiquidApplicationRate> gallonsPerMile(double rate) {
        return Amounts.of(rate, SpreadingUnits.US_GALLON_PER_MILE);
    }

    private static Quantity<Speed> milesPerHour(double speed) {
        return Amounts.of(speed, SpreadingUnits.MILE_PER_HOUR);
    }

    /**
     * 24 s are 2 gal, 100 divisions of 0.02 gal. Of V gal √(0.5² + (0.577350 ÷ V)² + (1.732051 ÷ V)²) % × 1.959964: 1.4 % takes 3.5
     * gal or more: 3.5833 gal in 43 s give 1.3993 % with the count, 3.5 gal in 42 s 1.4163 %.
     */
    @Test
    void theShortestRunThatTellsTheErrorWellEnough() {
        RunPlan plan =
                RunPlanner.of(METERED, RATE).at(milesPerHour(15), percent(1.4)).orElseThrow();

        assertThat(plan.result()).isInstanceOf(PlanResult.Reached.class);
        assertThat(plan.run())
                .isEqualTo(TestRun.pumping(RATE, milesPerHour(15), Amounts.of(43, SpreadingUnits.SECOND)));
        assertThat(Amounts.format(plan.runTime())).isEqualTo("43 s");
        assertThat(plan.testSpeed()).isEqualTo(milesPerHour(15));
        assertThat(inPercent(plan.result().series().expandedUncertainty())).isCloseTo(1.39927, within(1e-5));
        assertThat(Amounts.in(plan.flow().orElseThrow(), SpreadingUnits.US_GALLON_PER_MINUTE))
                .isCloseTo(5, within(1e-12));
        assertThat(plan.withinRange()).isEmpty();
        assertThat(Amounts.in(plan.run().testDistance(), SpreadingUnits.MILE))
                .isCloseTo(43 * 15 / 3600.0, within(1e-12));
        assertRefused("target rate must be a mass per distance: 20 gal/mi", plan::targetRate);
    }

    /** 5.5 gal are 66 s, though the pail has marks up to 6: √(0.25 + 0.0110193 + 0.0991736 + 0.0000383) % × 1.959964 = 1.176356 %. */
    @Test
    void noRunFillsTheContainerBeyondWhatItMayHold() {
        RunPlan plan =
                RunPlanner.of(METERED, RATE).at(milesPerHour(15), percent(0.5)).orElseThrow();

        assertThat(Amounts.format(plan.runTime())).isEqualTo("66 s");
        assertThat(plan.result()).isInstanceOfSatisfying(PlanResult.OutOfReach.class, out -> {
            assertThat(out.mainCause()).isEqualTo(Cause.SCATTER);
            assertThat(inPercent(out.series().expandedUncertainty())).isCloseTo(1.176356, within(1e-6));
            // 0.03 ÷ 5.5 ÷ √3 × 1.959964
            assertThat(inPercent(out.floor())).isCloseTo(0.617229, within(1e-6));
            assertThat(out.isBelowFloor()).isTrue();
        });
    }

    /** 2 gal are 24 s at 5 gal/min; at 400 gal/min 5.5 gal are 0.8 s. */
    @Test
    void whereTheContainerIsFullInLessThanASecondThereIsNoRun() {
        assertThat(RunPlanner.of(METERED, gallonsPerMile(1600)).at(milesPerHour(15), percent(4)))
                .isEmpty();
        assertThat(RunPlanner.of(METERED, gallonsPerMile(1600)).at(milesPerHour(12), percent(4)))
                .isPresent();
    }

    /** The flow meter is good for 0.5 to 50 gal/min. */
    @Test
    void theFlowIsComparedWithWhatTheMeterIsGoodFor() {
        RunPlanner planner = RunPlanner.of(METERED, RATE).through(METER);
        assertThat(planner.at(milesPerHour(15), percent(4)).orElseThrow().withinRange())
                .hasValue(true);
        assertThat(planner.at(milesPerHour(1.5), percent(4)).orElseThrow().withinRange())
                .hasValue(true);
        assertThat(planner.at(milesPerHour(1.4), percent(4)).orElseThrow().withinRange())
                .hasValue(false);
        RunPlanner fast = RunPlanner.of(METERED, gallonsPerMile(100)).through(METER);
        assertThat(fast.at(milesPerHour(30), percent(4)).orElseThrow().withinRange())
                .hasValue(true);
        assertThat(fast.at(milesPerHour(31), percent(4)).orElseThrow().withinRange())
                .hasValue(false);
    }

    /** 5 gal/min are 100 turns a minute of 0.05 gal; of a shaft that is geared 2 : 1, 200 at the sensor. */
    @Test
    void thePumpsTurnsAreComparedWithTheDrivesRangeAndThePumpsOwn() {
        ShaftSensor geared = new ShaftSensor(SENSOR.pulsesPerRevolution(), Amounts.of(2, SpreadingUnits.ONE));
        PumpMetering pump = new PumpMetering(LiquidSamples.tablePump(50, 150), geared);
        CatchSetup setup = CatchSetup.of(
                        PAIL, counted(geared), Amounts.of(0.025, SpreadingUnits.US_GALLON_PER_REVOLUTION))
                .allowing(scatter(0.5));
        RunPlanner drive = new RunPlanner(
                setup,
                RATE,
                Optional.of(new WorkingRange(
                        Amounts.of(150, SpreadingUnits.REVOLUTION_PER_MINUTE),
                        Amounts.of(400, SpreadingUnits.REVOLUTION_PER_MINUTE))),
                Optional.empty(),
                Optional.empty());

        RunPlan plan = drive.at(milesPerHour(15), percent(4)).orElseThrow();
        assertThat(Amounts.in(plan.shaftSpeed(), SpreadingUnits.REVOLUTION_PER_MINUTE))
                .isCloseTo(200, within(1e-9));
        assertThat(plan.withinRange()).hasValue(true);
        assertThat(drive.at(milesPerHour(10), percent(4)).orElseThrow().withinRange())
                .hasValue(false);
        assertThat(drive.at(milesPerHour(30), percent(4)).orElseThrow().withinRange())
                .hasValue(true);
        RunPlanner both = drive.through(pump);
        assertThat(both.at(milesPerHour(15), percent(4)).orElseThrow().withinRange())
                .hasValue(true);
        assertThat(both.at(milesPerHour(10), percent(4)).orElseThrow().withinRange())
                .hasValue(false);
        assertThat(both.at(milesPerHour(30), percent(4)).orElseThrow().withinRange())
                .hasValue(false);
        RunPlanner own = RunPlanner.of(setup, RATE).through(pump);
        assertThat(own.at(milesPerHour(7.5), percent(4)).orElseThrow().withinRange())
                .hasValue(true);
        assertThat(own.at(milesPerHour(7.4), percent(4)).orElseThrow().withinRange())
                .hasValue(false);
        assertThat(own.at(milesPerHour(22.5), percent(4)).orElseThrow().withinRange())
                .hasValue(true);
        assertThat(own.at(milesPerHour(23), percent(4)).orElseThrow().withinRange())
                .hasValue(false);
        assertThat(RunPlanner.of(setup, RATE)
                        .through(LiquidSamples.pump(geared))
                        .at(milesPerHour(30), percent(4))
                        .orElseThrow()
                        .withinRange())
                .hasValue(true);
    }

    /** τ 0.8 s costs 5 gal/min × 0.8 s. */
    @Test
    void aPumpComesUpToSpeedLikeAConveyor() {
        RunPlan plan = new RunPlanner(
                        METERED,
                        RATE,
                        Optional.empty(),
                        Optional.of(new FirstOrderStart(Amounts.of(0.8, SpreadingUnits.SECOND))),
                        Optional.empty())
                .at(milesPerHour(15), percent(1.4))
                .orElseThrow();

        assertThat(Amounts.format(plan.runTime())).isEqualTo("44 s");
        assertThat(Amounts.in(plan.result().series().amountPerCatch().asType(Volume.class), SpreadingUnits.US_GALLON))
                .isCloseTo(43.2 / 12, within(1e-9));
    }

    @Test
    void aMassIsNoVolumeAndAConveyorNoPump() throws ReflectiveOperationException {
        assertRefused(
                "target rate must be a volume per distance, as a liquid is caught: 400 lb/mi",
                () -> RunPlanner.of(METERED, Amounts.of(400, SpreadingUnits.POUND_PER_MILE)));
        CatchSetup grains = Setups.setup(rightScale(0.5), pails(4, 60), Setups.SIXTY_PULSES);
        assertRefused(
                "target rate must be a mass per distance, as grains are caught: 20 gal/mi",
                () -> RunPlanner.of(grains, RATE));
        assertRefused("target rate must be greater than 0: 0 gal/mi", () -> RunPlanner.of(METERED, gallonsPerMile(0)));
        assertRefused(
                "metering must be a conveyor, as grains are caught: " + METER,
                () -> RunPlanner.of(grains, Amounts.of(400, SpreadingUnits.POUND_PER_MILE))
                        .through(METER));
        assertRefused(
                "metering must be a pump or a flow meter, as a liquid is caught: " + AUGER,
                () -> RunPlanner.of(METERED, RATE).through(AUGER));
        assertNamesWhatIsMissing(RunPlanner.of(METERED, RATE));
        RunPlan granular = RunPlanner.of(grains, Amounts.of(400, SpreadingUnits.POUND_PER_MILE))
                .through(AUGER)
                .at(milesPerHour(22.5), percent(10))
                .orElseThrow();
        assertThat(granular.withinRange()).isEmpty();
        assertThat(granular.flow()).isEmpty();
        assertThat(granular.targetRate()).isEqualTo(Amounts.of(400, SpreadingUnits.POUND_PER_MILE));
    }
}
