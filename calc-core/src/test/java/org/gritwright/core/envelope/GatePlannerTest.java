package org.gritwright.core.envelope;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.Samples.assertRefused;
import static org.gritwright.core.Samples.height;
import static org.gritwright.core.envelope.EnvelopeTest.RANGE;
import static org.gritwright.core.envelope.EnvelopeTest.rate;
import static org.gritwright.core.envelope.EnvelopeTest.speed;
import static org.gritwright.units.SpreadingUnits.LANE;
import static org.gritwright.units.SpreadingUnits.ONE;
import static org.gritwright.units.SpreadingUnits.POUND_PER_LANE_MILE;
import static org.gritwright.units.SpreadingUnits.POUND_PER_MILE;
import static org.gritwright.units.SpreadingUnits.POUND_PER_REVOLUTION;
import static org.gritwright.units.SpreadingUnits.REVOLUTION_PER_MINUTE;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.gritwright.core.range.WorkingRange;
import org.gritwright.core.spi.Setting;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.Amounts;
import org.junit.jupiter.api.Test;

/** By hand, with a shaft of 5 to 50 rev/min and 4 lb/rev an inch: an opening of h in holds 20 h to 200 h lb/min. */
class GatePlannerTest {
    private static Envelope at(double inches) {
        return Envelope.of(Measured.once(Amounts.of(4 * inches, POUND_PER_REVOLUTION)), RANGE);
    }

    private static Map<Setting, Envelope> openings(double... inches) {
        Map<Setting, Envelope> all = new LinkedHashMap<>();
        for (double one : inches) {
            all.put(height(one), at(one));
        }
        return all;
    }

    /** 75 to 150 lb/min. */
    private static final Demand PLOWING = new Demand("hill road", rate(300), speed(15), speed(30));

    private static double margin(GateFit fit) {
        return Amounts.in(fit.margin(), ONE);
    }

    @Test
    void theOpeningWithTheMostMarginIsFirst() {
        List<GateFit> fits = GatePlanner.compare(openings(1, 1.5, 2, 3), List.of(PLOWING));

        // 1 in: 200/150 above, 75/20 below. 1.5 in: 300/150, 75/30. 2 in: 400/150, 75/40. 3 in: 600/150, 75/60.
        assertThat(fits).extracting(GateFit::setting).containsExactly(height(1.5), height(2), height(1), height(3));
        assertThat(fits).allMatch(GateFit::servesAll);
        assertThat(margin(fits.get(0))).isCloseTo(2, within(1e-12));
        assertThat(margin(fits.get(1))).isCloseTo(1.875, within(1e-12));
        assertThat(margin(fits.get(2))).isCloseTo(4 / 3.0, within(1e-12));
        assertThat(margin(fits.get(3))).isCloseTo(1.25, within(1e-12));
    }

    @Test
    void whatNoOpeningServesIsLostWhereItIsLeast() {
        // 800 lb/mi at 35 mi/h are 466.67 lb/min; 100 lb/mi at 10 mi/h are 16.67.
        Demand much = new Demand("interstate", rate(800), speed(35), speed(35));
        Demand little = new Demand("village", rate(100), speed(10), speed(10));
        List<GateFit> fits = GatePlanner.compare(openings(2, 2.5, 1), List.of(much, little));

        assertThat(fits).noneMatch(GateFit::servesAll);
        assertThat(fits).extracting(GateFit::setting).containsExactly(height(1), height(2), height(2.5));
        GateFit best = fits.get(0);
        // 200 of 466.67 lb/min, and 20 for 16.67; at 2 in 40 for 16.67, which is 2.4 times as much.
        assertThat(best.losses()).hasSize(2);
        assertThat(best.losses().get(0).demand()).isEqualTo(much);
        assertThat(best.losses().get(0).speed()).isEqualTo(speed(35));
        assertThat(best.losses().get(0).delivered().limit()).contains(Limit.FASTEST_SHAFT);
        assertThat(Amounts.in(best.losses().get(0).delivered().delivered(), POUND_PER_MILE))
                .isCloseTo(800 * 200 / (800 * 35 / 60.0), within(1e-9));
        assertThat(best.losses().get(1).delivered().limit()).contains(Limit.SLOWEST_STEADY_SHAFT);
        assertThat(margin(best)).isLessThan(1);
    }

    @Test
    void anOpeningThatServesAllComesBeforeOneThatLosesLittle() {
        List<GateFit> fits = GatePlanner.compare(openings(0.74, 0.9), List.of(PLOWING));

        assertThat(fits).extracting(GateFit::servesAll).containsExactly(true, false);
        assertThat(fits.get(0).setting()).isEqualTo(height(0.9));
        assertThat(fits.get(1).losses()).hasSize(1);
    }

    @Test
    void aShaftThatTurnsAsSlowlyAsYouLikeLosesNothingBelow() {
        Envelope envelope = Envelope.of(
                Measured.once(Amounts.of(40, POUND_PER_REVOLUTION)),
                new WorkingRange(Amounts.of(0, REVOLUTION_PER_MINUTE), Amounts.of(50, REVOLUTION_PER_MINUTE)));
        GateFit fit = GatePlanner.compare(Map.of(height(4), envelope), List.of(PLOWING))
                .get(0);

        assertThat(margin(fit)).isCloseTo(2000 / 150.0, within(1e-9));
    }

    @Test
    void lanesTimesARatePerLaneAreTheRate() {
        assertThat(Demand.onLanes(
                        "hill road", Amounts.of(150, POUND_PER_LANE_MILE), Amounts.of(2, LANE), speed(15), speed(30)))
                .isEqualTo(PLOWING);
    }

    @Test
    void whatCantBeIsRefused() {
        assertRefused(
                "gate settings to choose from must be one or more: none",
                () -> GatePlanner.compare(Map.of(), List.of(PLOWING)));
        assertRefused(
                "demands on a truck must be one or more: none", () -> GatePlanner.compare(openings(1), List.of()));
        assertRefused(
                "highest road speed must be at least 20 mi/h: 10 mi/h",
                () -> new Demand("x", rate(1), speed(20), speed(10)));
        assertRefused("rate must be greater than 0: 0 lb/mi", () -> new Demand("x", rate(0), speed(20), speed(30)));
        assertRefused(
                "lowest road speed must be greater than 0: 0 mi/h",
                () -> new Demand("x", rate(1), speed(0), speed(30)));
    }
}
