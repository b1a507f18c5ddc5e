package org.gritwright.core.planning;

import static org.assertj.core.api.Assertions.assertThat;
import static org.gritwright.core.Samples.assertNamesWhatIsMissing;
import static org.gritwright.core.Samples.assertRefused;
import static org.gritwright.core.planning.LiquidSetups.METER_PULSES;
import static org.gritwright.core.planning.LiquidSetups.PER_PULSE;
import static org.gritwright.core.planning.LiquidSetups.graduate;
import static org.gritwright.core.planning.LiquidSetups.read;
import static org.gritwright.core.planning.LiquidSetups.weighed;
import static org.gritwright.core.planning.Setups.percent;
import static org.gritwright.core.planning.Setups.scatter;

import java.util.List;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Time;
import org.gritwright.core.observation.CatchLimits;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.junit.jupiter.api.Test;

/** Of a scatter of 0.5 % three catches are always enough here, unless marks or density forbid it. */
class MethodComparisonTest {
    private static final CatchMethod PAIL = method("pail", read(graduate(0.05, 0.03), 1, 6), 10, 1, 2);
    /** 2.5 gal, marks right to 0.01 gal, filled twice or three times. */
    private static final CatchMethod MEASURE = method("measure", read(graduate(0.02, 0.01), 3, 2.5), 2, 1, 4);

    private static final CatchMethod SCALE = method("scale", weighed(Setups.scale(0.1, 0.1), 1, 0.02), 15, 1, 2);
    private static final CatchMethod MOLDED = method("molded marks", read(graduate(0.05, 0.2), 1, 6), 0, 0, 0);
    private static final CatchMethod TINY = method("pitcher", read(graduate(0.05, 0.03), 1, 0.5), 0, 0, 0);

    private static Quantity<Time> minutes(double minutes) {
        return Amounts.of(minutes, SpreadingUnits.MINUTE);
    }

    private static CatchMethod method(
            String name, PlannedAmount amount, double once, double perCatch, double perContainer) {
        return new CatchMethod(name, amount, minutes(once), minutes(perCatch), minutes(perContainer));
    }

    private static MethodComparison.Wish wish(double wanted) {
        return new MethodComparison.Wish(
                METER_PULSES,
                PER_PULSE,
                CatchLimits.COMMON.withAllowances(scatter(0.5)),
                3,
                3,
                percent(wanted),
                Optional.of(Amounts.of(5, SpreadingUnits.US_GALLON_PER_MINUTE)));
    }

    private static String time(MethodComparison.Result result) {
        return result.time().map(Amounts::format).orElse("none");
    }

    /**
     * Three catches of 5 gal in the pail, a minute each: 10 + 3 × (1 + 1 + 2) = 22 min. In the measure 2 gal are 100 divisions: 2 +
     * 3 × (1 + 0.4 + 4) = 18.2 min. On the scale 10 lb are 100 divisions, 1225 pulses: 15 + 3 × (3 + 0.2042) = 24.6125 min.
     */
    @Test
    void theQuickestThatReachesItIsFound() {
        MethodComparison all = MethodComparison.of(List.of(PAIL, MEASURE, SCALE, MOLDED, TINY), wish(1.5));

        assertThat(all.results())
                .extracting(MethodComparisonTest::time)
                .containsExactly("22 min", "18.2 min", "24.6125 min", "none", "none");
        assertThat(all.quickest().orElseThrow().method()).isEqualTo(MEASURE);
        assertThat(all.results().get(3).plan())
                .hasValueSatisfying(plan -> assertThat(plan)
                        .isInstanceOfSatisfying(PlanResult.OutOfReach.class, out -> {
                            assertThat(out.isBelowFloor()).isTrue();
                            assertThat(out.mainCause()).isEqualTo(Cause.MARKS);
                        }));
        assertThat(all.results().get(4).plan()).isEmpty();
        assertThat(all.results().get(4).refusal())
                .hasValue(
                        "containers must be able to hold the smallest sensible catch, 6000 pulse or 5 gal: 0.5 gal in all");
        assertThat(all.results().get(0).refusal()).isEmpty();
    }

    @Test
    void whereNoneReachesItNoneIsQuickest() {
        assertThat(MethodComparison.of(List.of(MOLDED, TINY), wish(1.5)).quickest())
                .isEmpty();
        assertThat(MethodComparison.of(List.of(PAIL, MEASURE, SCALE), wish(0.3)).quickest())
                .isEmpty();
    }

    @Test
    void ofEquallyQuickOnesTheFirstIsTaken() {
        CatchMethod twin = method("twin", PAIL.amount(), 10, 1, 2);
        assertThat(MethodComparison.of(List.of(twin, PAIL), wish(1.5))
                        .quickest()
                        .orElseThrow()
                        .method())
                .isEqualTo(twin);
    }

    private static MethodComparison.Wish at(Optional<Quantity<?>> pace) {
        MethodComparison.Wish wish = wish(1.5);
        return new MethodComparison.Wish(wish.count(), wish.expected(), wish.limits(), 3, 3, wish.wanted(), pace);
    }

    /** A flow meter's pulses stand in the place of revolutions. */
    @Test
    void aRunIsTimedByAFlowOrAShaftSpeedOrNotAtAll() {
        assertThat(MethodComparison.of(List.of(PAIL), at(Optional.empty())).results())
                .extracting(MethodComparisonTest::time)
                .containsExactly("19 min");
        assertThat(MethodComparison.of(
                                List.of(PAIL), at(Optional.of(Amounts.of(6000, SpreadingUnits.REVOLUTION_PER_MINUTE))))
                        .results())
                .extracting(MethodComparisonTest::time)
                .containsExactly("22 min");
    }

    @Test
    void grainsHaveNoFlow() {
        CatchSetup grains = Setups.setup(Setups.rightScale(0.5), Setups.pails(4, 60), Setups.SIXTY_PULSES);
        CatchSeries series = CatchPlanner.of(grains).plan(percent(5)).series();

        assertRefused(
                "caught amount must be a volume, as a flow is one per time: " + Amounts.format(series.amountPerCatch()),
                () -> series.runTimeAtFlow(Amounts.of(5, SpreadingUnits.US_GALLON_PER_MINUTE)));
    }

    @Test
    void whatCantBeIsRefused() throws ReflectiveOperationException {
        assertRefused("methods to catch must be one or more: none", () -> MethodComparison.of(List.of(), wish(1)));
        assertRefused(
                "method to catch must be listed once: \"pail\"",
                () -> MethodComparison.of(List.of(PAIL, PAIL), wish(1)));
        assertRefused("wanted uncertainty must be greater than 0: 0 %", () -> wish(0));
        assertRefused(
                "time that pail takes once must be 0 or more: -1 min", () -> method("pail", PAIL.amount(), -1, 0, 0));
        assertRefused(
                "time that pail takes per catch must be 0 or more: -1 min",
                () -> method("pail", PAIL.amount(), 0, -1, 0));
        assertRefused(
                "time that pail takes per container must be 0 or more: -1 min",
                () -> method("pail", PAIL.amount(), 0, 0, -1));
        assertRefused(
                "name of a method to catch must be a text that is not blank: \"\"",
                () -> method("", PAIL.amount(), 0, 0, 0));
        MethodComparison.Wish wish = wish(1.5);
        assertRefused(
                "fewest repeats must be 1 or more: 0",
                () -> new MethodComparison.Wish(
                        wish.count(), wish.expected(), wish.limits(), 0, 3, wish.wanted(), wish.pace()));
        assertRefused(
                "shaft speed must be greater than 0: 0 rev/min",
                () -> new MethodComparison.Wish(
                        wish.count(),
                        wish.expected(),
                        wish.limits(),
                        3,
                        3,
                        wish.wanted(),
                        Optional.of(Amounts.of(0, SpreadingUnits.REVOLUTION_PER_MINUTE))));
        assertRefused(
                "flow must be greater than 0: 0 gal/min",
                () -> at(Optional.of(Amounts.of(0, SpreadingUnits.US_GALLON_PER_MINUTE))));
        assertRefused(
                "pace of the catches must be a shaft speed or a flow: 5 gal",
                () -> at(Optional.of(Amounts.of(5, SpreadingUnits.US_GALLON))));
        CatchSeries series = MethodComparison.of(List.of(PAIL), wish)
                .results()
                .get(0)
                .plan()
                .orElseThrow()
                .series();
        assertRefused(
                "flow must be greater than 0: 0 gal/min",
                () -> series.runTimeAtFlow(Amounts.of(0, SpreadingUnits.US_GALLON_PER_MINUTE)));
        assertRefused("run time must be 0 or more: -1 min", () -> PAIL.time(series, minutes(-1)));
        assertNamesWhatIsMissing(PAIL);
        assertNamesWhatIsMissing(wish);
        MethodComparison comparison = MethodComparison.of(List.of(PAIL), wish);
        assertNamesWhatIsMissing(comparison);
        assertNamesWhatIsMissing(comparison.results().get(0));
    }
}
