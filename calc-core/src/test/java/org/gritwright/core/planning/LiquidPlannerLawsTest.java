package org.gritwright.core.planning;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.LiquidSamples.METER_POINT;
import static org.gritwright.core.LiquidSamples.gallons;
import static org.gritwright.core.LiquidSamples.pumpPoint;
import static org.gritwright.core.Samples.DAY;
import static org.gritwright.core.Samples.NOON;
import static org.gritwright.core.Samples.SENSOR;
import static org.gritwright.core.Samples.pounds;
import static org.gritwright.core.planning.Setups.percent;
import static org.gritwright.core.planning.Setups.scale;

import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import javax.measure.Quantity;
import javax.measure.Unit;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Volume;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.DoubleRange;
import org.gritwright.core.calibration.Calibration;
import org.gritwright.core.calibration.CalibrationCatch;
import org.gritwright.core.calibration.CalibrationFactor;
import org.gritwright.core.calibration.CalibrationInForce;
import org.gritwright.core.judgement.DecisionRule;
import org.gritwright.core.judgement.Tolerance;
import org.gritwright.core.metering.ShaftCount;
import org.gritwright.core.observation.CalibrationPoint;
import org.gritwright.core.observation.CatchAllowances;
import org.gritwright.core.observation.CatchLimits;
import org.gritwright.core.observation.Observation;
import org.gritwright.core.observation.Repeatability;
import org.gritwright.core.statistics.RatioEstimator;
import org.gritwright.core.uncertainty.Budget;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.core.verification.Verification;
import org.gritwright.core.verification.VerificationCatch;
import org.gritwright.core.verification.VerificationLimits;
import org.gritwright.core.weighing.Caught;
import org.gritwright.core.weighing.CaughtMass;
import org.gritwright.core.weighing.Graduate;
import org.gritwright.core.weighing.ReadVolume;
import org.gritwright.core.weighing.WeighedVolume;
import org.gritwright.core.weighing.Weighing;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;

/** A plan against the calibration and the verification that are computed from catches which were made as planned. */
class LiquidPlannerLawsTest {
    private static final double ROUNDING = 1e-9;

    /** What is there, and the point at which it is used. */
    record Yard(CalibrationPoint point, CatchSetup setup) {}

    @Provide
    Arbitrary<PlannedAmount> amounts() {
        Arbitrary<PlannedAmount> read = Combinators.combine(
                        Arbitraries.of(0.02, 0.05, 0.1),
                        Arbitraries.of(0.01, 0.05).optional(),
                        Arbitraries.integers().between(1, 4),
                        Arbitraries.of(5.2, 6.0, 12.0))
                .as((division, tolerance, howMany, holds) -> {
                    Graduate pail = Graduate.of("P-1", gallons(13), gallons(division));
                    return LiquidSetups.read(
                            tolerance.map(t -> pail.within(gallons(t))).orElse(pail), howMany + 1, holds);
                });
        Arbitrary<PlannedAmount> weighed = Combinators.combine(
                        Arbitraries.of(0.01, 0.1, 0.2),
                        Arbitraries.of(0.05, 0.5, 1.0).optional(),
                        Arbitraries.integers().between(1, 4),
                        Arbitraries.of(0.0, 0.02, 0.1))
                .as((division, accuracy, howMany, density) -> LiquidSetups.weighed(
                        accuracy.map(a -> scale(division, a)).orElse(scale(division)), howMany, density));
        return Arbitraries.oneOf(read, weighed);
    }

    private static Arbitrary<CatchAllowances> allowances(Arbitrary<Double> degreesOfFreedom) {
        return Combinators.combine(
                        Arbitraries.of(0.0, 1.0),
                        Arbitraries.of(0.0, 0.5),
                        Arbitraries.of(0.2, 0.5, 1.0),
                        degreesOfFreedom)
                .as((spillage, air, scatter, degrees) -> new CatchAllowances(
                        percent(spillage),
                        percent(air),
                        Optional.empty(),
                        Optional.of(new Repeatability(percent(scatter), degrees))));
    }

    private Arbitrary<Yard> yards(Arbitrary<Double> degreesOfFreedom) {
        Arbitrary<CalibrationPoint> points = Arbitraries.of(METER_POINT, pumpPoint(SENSOR));
        return Combinators.combine(points, amounts(), allowances(degreesOfFreedom))
                .as((point, amount, allowed) -> new Yard(
                        point,
                        CatchSetup.at(
                                point,
                                amount,
                                PlannedCount.with(point.metering().feedback(), Optional.empty()),
                                PredictedDischarge.of(point).expected(),
                                CatchLimits.COMMON.withAllowances(allowed))));
    }

    @Provide
    Arbitrary<Yard> firm() {
        return yards(Arbitraries.just(Double.POSITIVE_INFINITY));
    }

    @Provide
    Arbitrary<Yard> hardlyKnown() {
        return yards(Arbitraries.of(2.0, 5.0));
    }

    /** So much in equal containers or fills. */
    private static Caught caught(PlannedAmount amount, double cubicMeters, int containers) {
        if (amount instanceof PlannedAmount.Read read) {
            return new ReadVolume(
                    read.container(),
                    DAY,
                    Collections.nCopies(containers, Amounts.ofSi(cubicMeters / containers, SpreadingUnits.US_GALLON)));
        }
        PlannedAmount.WeighedLiquid liquid = (PlannedAmount.WeighedLiquid) amount;
        double density = Amounts.in(liquid.density().value(), SpreadingUnits.KILOGRAM_PER_CUBIC_METER);
        Quantity<Mass> tare = liquid.weighed().containers().tare();
        double net = cubicMeters * density / containers;
        Weighing one = new Weighing(
                "pail", Amounts.ofSi(net + Amounts.in(tare, SpreadingUnits.KILOGRAM), SpreadingUnits.POUND), tare);
        return new WeighedVolume(
                new CaughtMass(liquid.weighed().scale(), DAY, Collections.nCopies(containers, one)), liquid.density());
    }

    private static Observation made(Yard yard, CatchSeries series, double factor) {
        double cubicMeters =
                factor * Amounts.in(series.amountPerCatch().asType(Volume.class), SpreadingUnits.CUBIC_METER);
        return Observation.of(yard.point(), NOON, caught(yard.setup().amount(), cubicMeters, series.containersToFill()))
                .counted(new ShaftCount.Pulses(series.pulses().orElseThrow()));
    }

    /** Deviations from the mean whose sample variance is a given one: one up, one down, and the rest of them in the middle. */
    private static double deviation(int i, int n, double sampleDeviation) {
        double each = sampleDeviation * Math.sqrt((n - 1) / 2.0);
        return i == 0 ? each : i == 1 ? -each : 0;
    }

    private static Calibration calibration(Yard yard, CatchSeries series, double sampleDeviation) {
        List<CalibrationCatch> catches = IntStream.range(0, series.repeats())
                .mapToObj(i ->
                        CalibrationCatch.of(made(yard, series, 1 + deviation(i, series.repeats(), sampleDeviation))))
                .toList();
        return Calibration.from(
                catches, RatioEstimator.RATIO_OF_SUMS, yard.setup().limits());
    }

    private static double relative(Calibration calibration) {
        Measured<?> result = calibration.dischargePerRevolution();
        return result.expandedUncertainty(0.95).orElseThrow().getValue().doubleValue()
                / result.value().getValue().doubleValue();
    }

    private static double planned(CatchSeries series) {
        return Amounts.in(series.expandedUncertainty(), SpreadingUnits.ONE);
    }

    private static Map<String, Double> parts(Budget<?> budget, double of) {
        Map<String, Double> parts = new HashMap<>();
        budget.components()
                .forEach(row -> parts.put(
                        row.key().toString(), row.contribution().getValue().doubleValue() / of));
        return parts;
    }

    @Property(tries = 150)
    void aCalibrationFromCatchesAsPlannedHasThePlansBudget(
            @ForAll("firm") Yard yard, @ForAll @DoubleRange(min = 0.3, max = 4) double wanted) {
        PlanResult plan = CatchPlanner.of(yard.setup()).plan(percent(wanted));
        Calibration calibration = calibration(yard, plan.series(), 0);

        Map<String, Double> found = parts(
                calibration.budget(),
                calibration.budget().result().value().getValue().doubleValue());
        Map<String, Double> planned = parts(plan.series().budget(), 100);
        assertThat(found.keySet()).isEqualTo(planned.keySet());
        found.forEach((key, part) -> assertThat(part).describedAs(key).isCloseTo(planned.get(key), within(ROUNDING)));
        assertThat(relative(calibration)).isCloseTo(planned(plan.series()), within(ROUNDING));
        if (plan instanceof PlanResult.Reached) {
            assertThat(relative(calibration)).isLessThanOrEqualTo(wanted / 100 * (1 + ROUNDING));
        }
        assertThat(calibration.findings())
                .extracting(finding -> finding.code().id())
                .doesNotContain("caught-volume-small", "caught-mass-small", "too-few-pulses", "too-few-revolutions");
    }

    /** Catches that scatter as was assumed show it, with the degrees of freedom that the plan reckons with. */
    @Property(tries = 150)
    void catchesThatScatterAsAssumedGiveWhatWasPlanned(
            @ForAll("hardlyKnown") Yard yard, @ForAll @DoubleRange(min = 0.6, max = 4) double wanted) {
        PlanResult plan = CatchPlanner.of(yard.setup(), 2, 10).plan(percent(wanted));
        CatchModel model = new CatchModel(yard.setup());
        CatchModel.Catch one = model.at(Amounts.in(plan.series().revolutions(), SpreadingUnits.REVOLUTION));
        double scatter = Math.hypot(yard.setup().scatter().relative(), Math.hypot(one.rounding(), one.count()));

        assertThat(relative(calibration(yard, plan.series(), scatter)))
                .isCloseTo(planned(plan.series()), within(1e-4 * planned(plan.series())));
        assertThat(relative(calibration(yard, plan.series(), 0))).isLessThanOrEqualTo(planned(plan.series()));
    }

    @Property(tries = 100)
    void aVerificationFromARunAsPlannedIsAsCertainAsPlanned(
            @ForAll("firm") Yard yard, @ForAll @DoubleRange(min = 0.6, max = 4) double wanted) {
        Optional<RunPlan> planned = RunPlanner.of(yard.setup(), Amounts.of(20, SpreadingUnits.US_GALLON_PER_MILE))
                .at(Amounts.of(15, SpreadingUnits.MILE_PER_HOUR), percent(wanted));
        if (planned.isEmpty()) {
            CatchModel model = new CatchModel(yard.setup());
            double gallonsPerSecond = 20 * 15 / 3600.0;
            double inGallons = model.perRevolution()
                    * Amounts.in(Amounts.of(1, SpreadingUnits.CUBIC_METER), SpreadingUnits.US_GALLON)
                    / gallonsPerSecond;
            assertThat(Math.floor(model.most() * inGallons)).isLessThan(model.fewest() * inGallons);
            return;
        }
        RunPlan plan = planned.get();
        CatchSeries series = plan.result().series();
        double kilograms = CatchSetup.at(
                        yard.point(),
                        yard.setup().amount(),
                        yard.setup().count(),
                        PredictedDischarge.of(yard.point()).expected(),
                        yard.setup().limits())
                .expectedSi();
        CalibrationInForce inForce = CalibrationInForce.of(
                yard.point(),
                CalibrationFactor.ofDischarge(
                        kilograms * yard.point().material().kilogramsPerAmount(),
                        yard.point(),
                        SpreadingUnits.PULSE_PER_US_GALLON),
                Optional.empty());
        // What is caught makes the error as large as the spillage by the pulses that are counted, which are whole.
        double revolutions = Amounts.in(series.revolutions(), SpreadingUnits.REVOLUTION);
        double pulsesPlanned =
                revolutions * yard.point().metering().feedback().pulsesPerTurn().orElseThrow();
        double factor = series.pulses().orElseThrow().getValue().doubleValue() / pulsesPlanned;
        Verification verification = VerificationCatch.of(made(yard, series, factor), inForce, plan.run())
                .assess(
                        Tolerance.percent(5),
                        DecisionRule.SIMPLE,
                        new VerificationLimits(yard.setup().limits(), percent(15)),
                        Optional.empty());

        double found = Amounts.in(
                verification
                        .judgement()
                        .budget()
                        .result()
                        .expandedUncertainty(0.95)
                        .orElseThrow(),
                SpreadingUnits.ONE);
        // Half of the spillage is taken for lost, and an error of the caught volume grows with what is indicated.
        double error = Amounts.in(verification.calibrationError().orElseThrow(), SpreadingUnits.ONE);
        assertThat(error).isCloseTo(1 / yard.setup().limits().allowances().spillageFactor() - 1, within(ROUNDING));
        assertThat(found / (1 + error)).isCloseTo(planned(series), within(2e-4 * planned(series)));
        assertThat(Amounts.in(plan.run().expectedAmount().asType(Volume.class), SpreadingUnits.US_GALLON))
                .isCloseTo(
                        Amounts.in(series.amountPerCatch().asType(Volume.class), SpreadingUnits.US_GALLON),
                        within(ROUNDING));
    }

    @Property(tries = 25)
    void whoeverWantsLessCertaintyNeverCatchesMore(
            @ForAll("hardlyKnown") Yard yard,
            @ForAll @DoubleRange(min = 0.5, max = 6) double one,
            @ForAll @DoubleRange(min = 0.5, max = 6) double other) {
        CatchPlanner planner = CatchPlanner.of(yard.setup());
        PlanResult finer = planner.plan(percent(Math.min(one, other)));
        PlanResult coarser = planner.plan(percent(Math.max(one, other)));

        assertThat(volume(finer)).isGreaterThanOrEqualTo(volume(coarser) * (1 - ROUNDING));
        assertThat(fewest(yard, Math.min(one, other))).isGreaterThanOrEqualTo(fewest(yard, Math.max(one, other)));
    }

    /** The fewest catches that reach it, whatever they take. */
    private static int fewest(Yard yard, double wanted) {
        return IntStream.rangeClosed(1, 10)
                .filter(n -> CatchPlanner.of(yard.setup(), n, n).plan(percent(wanted)) instanceof PlanResult.Reached)
                .findFirst()
                .orElse(Integer.MAX_VALUE);
    }

    private static double volume(PlanResult result) {
        return result instanceof PlanResult.Reached
                ? Amounts.in(result.series().totalAmount().asType(Volume.class), SpreadingUnits.LITER)
                : Double.POSITIVE_INFINITY;
    }

    @Property(tries = 100)
    void belowTheFloorAHundredTimesAsManyCatchesDontReach(@ForAll("hardlyKnown") Yard yard) {
        PlanResult result = CatchPlanner.of(yard.setup()).plan(percent(0.01));
        assertThat(result).isInstanceOfSatisfying(PlanResult.OutOfReach.class, out -> {
            double floor = Amounts.in(out.floor(), SpreadingUnits.PERCENT);
            assertThat(out.isBelowFloor()).isEqualTo(floor >= 0.01);
            if (floor > 0) {
                assertThat(CatchPlanner.of(yard.setup(), 1000, 1000).plan(percent(floor)))
                        .isInstanceOf(PlanResult.OutOfReach.class);
            }
        });
    }

    private static <Q extends Quantity<Q>> Quantity<Q> in(Quantity<Q> quantity, Unit<Q> unit) {
        return Amounts.of(Amounts.in(quantity, unit), unit);
    }

    /** Gallons or liters, pounds or kilograms: the plan is the same. */
    @Property(tries = 100)
    void unitsDontMatter(@ForAll("firm") Yard yard, @ForAll @DoubleRange(min = 0.6, max = 4) double wanted) {
        CatchSetup own = yard.setup();
        PlannedAmount metric;
        if (own.amount() instanceof PlannedAmount.Read read) {
            Graduate pail = read.container();
            metric = new PlannedAmount.Read(
                    new Graduate(
                            pail.id(),
                            in(pail.capacity(), SpreadingUnits.LITER),
                            in(pail.division(), SpreadingUnits.LITER),
                            pail.tolerance().map(t -> in(t, SpreadingUnits.LITER))),
                    read.howMany(),
                    in(read.holds(), SpreadingUnits.LITER));
        } else {
            PlannedAmount.WeighedLiquid liquid = (PlannedAmount.WeighedLiquid) own.amount();
            Containers pails = liquid.weighed().containers();
            metric = new PlannedAmount.WeighedLiquid(
                    new PlannedAmount.Weighed(
                            liquid.weighed().scale(),
                            DAY,
                            new Containers(
                                    pails.howMany(),
                                    in(pails.holds(), SpreadingUnits.KILOGRAM),
                                    in(pounds(2), SpreadingUnits.KILOGRAM))),
                    liquid.density());
        }
        CatchSetup other = new CatchSetup(
                metric, own.count(), Amounts.ofSi(own.expectedSi(), SpreadingUnits.LITER_PER_REVOLUTION), own.limits());

        CatchSeries ours = CatchPlanner.of(own).plan(percent(wanted)).series();
        CatchSeries theirs = CatchPlanner.of(other).plan(percent(wanted)).series();
        assertThat(planned(theirs)).isCloseTo(planned(ours), within(1e-3 * planned(ours)));
        assertThat(theirs.amountPerCatch().getUnit()).isEqualTo(SpreadingUnits.LITER);
        assertThat(theirs.repeats()).isEqualTo(ours.repeats());
        assertThat(Amounts.in(theirs.revolutions(), SpreadingUnits.REVOLUTION))
                .isCloseTo(Amounts.in(ours.revolutions(), SpreadingUnits.REVOLUTION), within(1.5));
    }
}
