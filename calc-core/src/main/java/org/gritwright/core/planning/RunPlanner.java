package org.gritwright.core.planning;

import java.util.Objects;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Speed;
import javax.measure.quantity.Time;
import org.gritwright.core.metering.Metering;
import org.gritwright.core.range.WorkingRange;
import org.gritwright.core.verification.TestRun;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.UnitSymbol;
import org.gritwright.units.check.Comparison;
import org.gritwright.units.check.Require;
import org.gritwright.units.quantity.ApplicationRate;
import org.gritwright.units.quantity.LiquidApplicationRate;
import org.gritwright.units.quantity.RotationalSpeed;

/**
 * Plans verification catches: the run time at a test speed that fits the containers and makes one catch's calibration
 * error as certain as wanted.
 *
 * <p>The expected amount is target rate × test speed × run time, less what a start from rest costs where that is known. One
 * catch can't be more certain than its own scatter. Whole seconds are tried, from the shortest; where more than
 * {@value CatchPlanner#MOST_TRIED} would have to be, only multiples of 10, 100, … are. Immutable, thread-safe, a value.
 *
 * @param setup what is there; for a catch after calibration catches {@link CatchSetup#afterCalibration}
 * @param targetRate the target rate, greater than zero: a mass or, where a liquid is caught, a volume per distance
 * @param range the steady speeds that the drive can hold, if known
 * @param start how the conveyor comes up to speed, if known
 * @param greatestStartLoss the part of the expected amount that the start may cost, if that matters; only with a start
 * @param metering what doses, whose own limits a run has to keep: a pump's speeds, a flow meter's flows; none where nobody asks
 */
public record RunPlanner(
        CatchSetup setup,
        Quantity<?> targetRate,
        Optional<WorkingRange> range,
        Optional<FirstOrderStart> start,
        Optional<Quantity<Dimensionless>> greatestStartLoss,
        Optional<Metering> metering) {
    /**
     * Checks the values.
     *
     * @throws InvalidInputException if one is out of its range, a loss is given without a start, or the target rate is a mass
     *     where a liquid is caught or the other way round
     */
    public RunPlanner {
        Require.given(RunPlanner.class, setup, targetRate, range, start, greatestStartLoss, metering);
        boolean isLiquid = setup.amount().isOfLiquid();
        Require.that(
                UnitSymbol.of(targetRate.getUnit())
                        .kind()
                        .equals(isLiquid ? LiquidApplicationRate.class : ApplicationRate.class),
                "target rate",
                isLiquid ? "a volume per distance, as a liquid is caught" : "a mass per distance, as grains are caught",
                targetRate);
        double perMeter = siPerMeter(targetRate);
        Require.that(perMeter > 0 && Double.isFinite(perMeter), "target rate", "greater than 0", targetRate);
        metering.ifPresent(one -> Require.that(
                one.isForLiquids() == isLiquid,
                "metering",
                isLiquid ? "a pump or a flow meter, as a liquid is caught" : "a conveyor, as grains are caught",
                one));
        greatestStartLoss.ifPresent(loss -> {
            Require.fraction("part lost by the start", loss);
            Require.that(
                    start.isPresent(), "part lost by the start", "given with the time constant of the start", loss);
        });
    }

    /**
     * A planner that asks for no limits of the metering.
     *
     * @param setup what is there
     * @param targetRate the target rate
     * @param range the steady speeds that the drive can hold, if known
     * @param start how the conveyor comes up to speed, if known
     * @param greatestStartLoss as of the record
     * @throws InvalidInputException as for the record
     */
    public RunPlanner(
            CatchSetup setup,
            Quantity<?> targetRate,
            Optional<WorkingRange> range,
            Optional<FirstOrderStart> start,
            Optional<Quantity<Dimensionless>> greatestStartLoss) {
        this(setup, targetRate, range, start, greatestStartLoss, Optional.empty());
    }

    /**
     * A planner that knows neither the drive's range nor its start.
     *
     * @param setup what is there
     * @param targetRate the target rate
     * @return the planner
     */
    public static RunPlanner of(CatchSetup setup, Quantity<?> targetRate) {
        return new RunPlanner(setup, targetRate, Optional.empty(), Optional.empty(), Optional.empty());
    }

    /**
     * The same for a metering whose own limits a run has to keep.
     *
     * @param known a pump or a flow meter; a conveyor has none
     * @return the planner
     * @throws InvalidInputException if it is for liquids and grains are caught, or the other way round
     */
    public RunPlanner through(Metering known) {
        return new RunPlanner(
                setup,
                targetRate,
                range,
                start,
                greatestStartLoss,
                Optional.of(Objects.requireNonNull(known, "known")));
    }

    /** Kilograms or cubic meters per meter; of a kind that was checked. */
    static double siPerMeter(Quantity<?> rate) {
        return UnitSymbol.of(rate.getUnit()).kind().equals(LiquidApplicationRate.class)
                ? Amounts.si(LiquidApplicationRate.class, rate.asType(LiquidApplicationRate.class))
                : Amounts.si(ApplicationRate.class, rate.asType(ApplicationRate.class));
    }

    /**
     * Plans a run.
     *
     * @param testSpeed the road speed to feed to the truck, greater than zero
     * @param wanted the relative expanded uncertainty (95 %) of the calibration error of this one catch, greater than
     *     zero and below 100 %
     * @return the shortest run that reaches it, or the one that comes closest, with the main cause; none where flow and
     *     containers leave no whole second for a sensible catch
     * @throws InvalidInputException if a value is out of its range, or the containers or the scale can't take even the
     *     smallest sensible catch
     */
    public Optional<RunPlan> at(Quantity<Speed> testSpeed, Quantity<Dimensionless> wanted) {
        double speed = Amounts.si(Speed.class, Require.positive("test speed", Speed.class, testSpeed));
        double limit = Amounts.si(Dimensionless.class, Require.fraction("wanted uncertainty", wanted));
        CatchModel model = new CatchModel(setup);
        double revolutionsPerSecond = siPerMeter(targetRate) * speed / model.perRevolution();
        double longest = Require.finite(
                "run time that fills the containers",
                model.most() / revolutionsPerSecond
                        + start.map(s -> Amounts.si(Time.class, s.timeConstant()))
                                .orElse(0.0));
        double step = CatchPlanner.step(longest);
        CatchModel.Catch best = null;
        double bestSeconds = 0;
        double least = Double.POSITIVE_INFINITY;
        boolean bestIsCheap = false;
        boolean reached = false;
        double floor = Double.POSITIVE_INFINITY;
        for (double seconds = step; !reached; seconds += step) {
            double revolutions = revolutionsPerSecond * steadySeconds(seconds);
            if (Comparison.isAbove(revolutions, model.most())) {
                break;
            }
            if (Comparison.isAbove(model.fewest(), revolutions)) {
                continue;
            }
            CatchModel.Catch one = model.at(revolutions);
            double expanded = model.expanded(one, 1);
            floor = Math.min(floor, model.floor(one));
            boolean isCheap = isStartCheap(seconds);
            reached = isCheap && !Comparison.isAbove(expanded, limit);
            // The first with a cheap start is better than any before it.
            if (expanded < least || isCheap != bestIsCheap) {
                best = one;
                bestSeconds = seconds;
                bestIsCheap = isCheap;
                least = expanded;
            }
        }
        return best == null
                ? Optional.empty()
                : Optional.of(plan(testSpeed, wanted, revolutionsPerSecond, model, best, bestSeconds, reached, floor));
    }

    private RunPlan plan(
            Quantity<Speed> testSpeed,
            Quantity<Dimensionless> wanted,
            double revolutionsPerSecond,
            CatchModel model,
            CatchModel.Catch one,
            double seconds,
            boolean reached,
            double floor) {
        CatchSeries series = model.series(one, 1);
        Quantity<RotationalSpeed> shaftSpeed = Amounts.ofSi(revolutionsPerSecond, SpreadingUnits.REVOLUTION_PER_MINUTE);
        Quantity<Time> runTime = Amounts.of(seconds, SpreadingUnits.SECOND);
        return new RunPlan(
                new TestRun(targetRate, testSpeed, Optional.of(runTime), Optional.empty()),
                reached
                        ? new PlanResult.Reached(wanted, series)
                        : new PlanResult.OutOfReach(
                                wanted,
                                series,
                                isStartCheap(seconds) ? model.mainCause(one, 1) : Cause.START,
                                CatchModel.percent(floor)),
                shaftSpeed,
                withinRange(shaftSpeed, revolutionsPerSecond * model.perRevolution()),
                start.map(s -> s.lostPart(runTime)),
                greatestStartLoss.map(loss -> start.orElseThrow().shortestRun(loss)));
    }

    private Optional<Boolean> withinRange(Quantity<RotationalSpeed> shaftSpeed, double perSecond) {
        boolean isHeld = range.map(held -> held.contains(shaftSpeed)).orElse(true);
        Optional<Boolean> isMetered =
                metering.flatMap(one -> one.isGoodFor(perSecond, Amounts.si(RotationalSpeed.class, shaftSpeed)));
        return range.isPresent() || isMetered.isPresent()
                ? Optional.of(isHeld && isMetered.orElse(true))
                : Optional.empty();
    }

    private double steadySeconds(double seconds) {
        return start.map(s -> s.steadySeconds(seconds)).orElse(seconds);
    }

    private boolean isStartCheap(double seconds) {
        return greatestStartLoss.isEmpty()
                || !Comparison.isAbove(
                        start.orElseThrow().lostPart(seconds),
                        Amounts.si(Dimensionless.class, greatestStartLoss.get()));
    }
}
