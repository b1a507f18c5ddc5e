package org.gritwright.core.planning;

import static org.assertj.core.api.Assertions.assertThat;
import static org.gritwright.core.Samples.DAY;
import static org.gritwright.core.Samples.pounds;
import static org.gritwright.core.planning.Setups.percent;
import static org.gritwright.core.planning.Setups.scale;

import java.util.List;
import java.util.Optional;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import org.gritwright.core.observation.CatchAllowances;
import org.gritwright.core.observation.Moisture;
import org.gritwright.core.observation.Repeatability;
import org.gritwright.core.weighing.Scale;
import org.gritwright.core.weighing.ScaleAccuracy;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;

class CatchPlannerLawsTest {
    private static final double ROUNDING = 1e-9;

    @Provide
    Arbitrary<CatchSetup> setups() {
        Arbitrary<Scale> scales = Combinators.combine(
                        Arbitraries.of(0.01, 0.1, 0.2, 0.5, 1.0),
                        Arbitraries.of(0.05, 0.1, 0.5, 1.0).optional())
                .as((division, accuracy) ->
                        accuracy.map(a -> scale(division, a)).orElse(scale(division)));
        Arbitrary<Containers> containers = Combinators.combine(
                        Arbitraries.integers().between(1, 8),
                        Arbitraries.integers().between(150, 400))
                .as((howMany, holds) -> new Containers(howMany, pounds(holds), pounds(3.5)));
        Arbitrary<PlannedCount> counts = Arbitraries.oneOf(
                Arbitraries.of(4, 30, 100)
                        .map(n -> new PlannedCount.Pulses(Amounts.of(n, SpreadingUnits.PULSE_PER_REVOLUTION))),
                Arbitraries.of(0.02, 0.1).map(u -> new PlannedCount.ByEye(Amounts.of(u, SpreadingUnits.REVOLUTION))),
                Arbitraries.of(new PlannedCount.Timed()));
        Arbitrary<CatchAllowances> allowances = Combinators.combine(
                        Arbitraries.of(0.0, 0.5, 1.0),
                        Arbitraries.of(0.0, 0.5),
                        Arbitraries.of(0.5, 1.0).optional(),
                        Arbitraries.of(0.3, 1.0, 2.0, 3.0))
                .as((spillage, start, moisture, scatter) -> new CatchAllowances(
                        percent(spillage),
                        percent(start),
                        moisture.map(range -> new Moisture(percent(4), percent(range), Moisture.Basis.WET_MASS)),
                        Optional.of(Repeatability.assumed(percent(scatter)))));
        return Combinators.combine(scales, containers, counts, allowances)
                .as((scale, pails, count, allowed) -> CatchSetup.of(
                                scale, DAY, pails, count, Amounts.of(5, SpreadingUnits.POUND_PER_REVOLUTION))
                        .allowing(allowed));
    }

    private static PlannedAmount.Weighed weighed(CatchSetup setup) {
        return (PlannedAmount.Weighed) setup.amount();
    }

    private static CatchSetup with(CatchSetup setup, Scale scale) {
        PlannedAmount.Weighed own = weighed(setup);
        return setup.with(new PlannedAmount.Weighed(scale, own.weighedOn(), own.containers()));
    }

    private static double kilograms(PlanResult result) {
        return result instanceof PlanResult.Reached
                ? Amounts.in(result.series().totalMass(), SpreadingUnits.KILOGRAM)
                : Double.POSITIVE_INFINITY;
    }

    @Property(tries = 200)
    void aFinerUncertaintyNeverTakesLessMaterial(
            @ForAll("setups") CatchSetup setup,
            @ForAll @DoubleRange(min = 0.3, max = 8) double one,
            @ForAll @DoubleRange(min = 0.3, max = 8) double other) {
        CatchPlanner planner = CatchPlanner.of(setup);
        double finer = kilograms(planner.plan(percent(Math.min(one, other))));
        double coarser = kilograms(planner.plan(percent(Math.max(one, other))));
        assertThat(finer).isGreaterThanOrEqualTo(coarser * (1 - ROUNDING));
    }

    @Property(tries = 200)
    void aFinerScaleNeverTakesMoreMaterial(
            @ForAll("setups") CatchSetup setup,
            @ForAll @DoubleRange(min = 0.05, max = 1) double part,
            @ForAll @DoubleRange(min = 0.3, max = 8) double wanted) {
        Scale own = weighed(setup).scale();
        Scale finer = new Scale(
                own.id(),
                own.capacity(),
                Amounts.of(
                        part * own.division().getValue().doubleValue(),
                        own.division().getUnit()),
                own.accuracy(),
                List.of());
        assertThat(kilograms(CatchPlanner.of(with(setup, finer)).plan(percent(wanted))))
                .isLessThanOrEqualTo(kilograms(CatchPlanner.of(setup).plan(percent(wanted))) * (1 + ROUNDING));
    }

    /**
     * For one or two catches. From three on their own scatter counts, with few degrees of freedom; the better the rest is
     * known, the more that weighs, and the law doesn't hold: at 3.68 % and 3 % scatter 340 kg with 0.2 % for 295 kg with 0.8 %.
     */
    @Property(tries = 200)
    void aMoreAccurateScaleNeverTakesMoreMaterialForOneOrTwoCatches(
            @ForAll("setups") CatchSetup setup, @ForAll @DoubleRange(min = 0.3, max = 8) double wanted) {
        CatchSetup rough = with(setup, weighed(setup).scale().withAccuracy(new ScaleAccuracy.Stated(percent(0.8))));
        CatchSetup exact = with(setup, weighed(setup).scale().withAccuracy(new ScaleAccuracy.Stated(percent(0.2))));
        assertThat(kilograms(CatchPlanner.of(exact, 1, 2).plan(percent(wanted))))
                .isLessThanOrEqualTo(kilograms(CatchPlanner.of(rough, 1, 2).plan(percent(wanted))) * (1 + ROUNDING));
    }

    @Property(tries = 300)
    void aPlanMeetsWhatItPromisesByItsOwnBudgetAndOutOfReachIsOutOfReach(
            @ForAll("setups") CatchSetup setup, @ForAll @DoubleRange(min = 0.3, max = 8) double wanted) {
        PlanResult result = CatchPlanner.of(setup).plan(percent(wanted));
        double expanded = Amounts.in(
                result.series().budget().result().expandedUncertainty(0.95).orElseThrow(), SpreadingUnits.PERCENT);
        if (result instanceof PlanResult.Reached) {
            assertThat(expanded).isLessThanOrEqualTo(wanted * (1 + ROUNDING));
        } else {
            assertThat(expanded).isGreaterThan(wanted);
        }
    }

    /** Against the budgets of all plans that could be made, one by one. */
    @Property(tries = 25)
    void noOtherPlanTakesLessMaterialOrIsAnyBetterWhereNoneReaches(
            @ForAll("setups") CatchSetup setup,
            @ForAll @DoubleRange(min = 0.3, max = 8) double wanted,
            @ForAll @IntRange(min = 1, max = 4) int fewest) {
        PlanResult result = CatchPlanner.of(setup, fewest, 5).plan(percent(wanted));
        CatchModel model = new CatchModel(setup);
        double least = Double.POSITIVE_INFINITY;
        double lowest = Double.POSITIVE_INFINITY;
        for (int n = fewest; n <= 5; n++) {
            for (double rev = Math.ceil(model.fewest() - 1e-9); rev <= model.most() + 1e-9; rev++) {
                double expanded = Amounts.in(
                        model.budget(model.at(rev), n)
                                .result()
                                .expandedUncertainty(0.95)
                                .orElseThrow(),
                        SpreadingUnits.PERCENT);
                lowest = Math.min(lowest, expanded);
                least = expanded <= wanted ? Math.min(least, n * rev) : least;
            }
        }
        double planned =
                result.series().repeats() * Amounts.in(result.series().revolutions(), SpreadingUnits.REVOLUTION);
        if (result instanceof PlanResult.Reached) {
            assertThat(planned).isEqualTo(least);
        } else {
            assertThat(least).isInfinite();
            assertThat(Amounts.in(result.series().expandedUncertainty(), SpreadingUnits.PERCENT))
                    .isLessThanOrEqualTo(lowest * (1 + ROUNDING));
        }
    }

    /** The main cause is where the most could be gained: without it the best plan would be at least as good. */
    @Property(tries = 100)
    void whatIsToBlameIsTheLargestRowOfTheBudget(@ForAll("setups") CatchSetup setup) {
        PlanResult result = CatchPlanner.of(setup).plan(percent(0.05));
        assertThat(result).isInstanceOfSatisfying(PlanResult.OutOfReach.class, out -> {
            assertThat(out.mainCause().words())
                    .isEqualTo(out.series().budget().dominant().orElseThrow().name());
        });
    }
}
