package org.gritwright.core.envelope;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.Samples.assertRefused;
import static org.gritwright.core.envelope.EnvelopeTest.SIX;
import static org.gritwright.core.envelope.EnvelopeTest.rate;
import static org.gritwright.core.envelope.EnvelopeTest.speed;
import static org.gritwright.units.SpreadingUnits.POUND;
import static org.gritwright.units.SpreadingUnits.SECOND;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import javax.measure.Quantity;
import javax.measure.quantity.Mass;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.junit.jupiter.api.Test;

/** By hand, with 30 to 300 lb/min: 300 lb/mi hold from 6 to 60 mi/h. */
class DriveCycleTest {
    static DriveCycle cycle(double... secondsAndMilesPerHour) {
        return new DriveCycle(IntStream.range(0, secondsAndMilesPerHour.length / 2)
                .mapToObj(i -> new DriveCycle.Point(
                        Amounts.of(secondsAndMilesPerHour[2 * i], SECOND), speed(secondsAndMilesPerHour[2 * i + 1])))
                .toList());
    }

    private static double pounds(Quantity<Mass> mass) {
        return Amounts.in(mass, POUND);
    }

    @Test
    void withinTheRangeWhatWasAskedForIsPutDown() {
        Driven driven = SIX.over(rate(300), cycle(0, 10, 3600, 50));

        assertThat(pounds(driven.asked())).isCloseTo(9000, within(1e-9));
        assertThat(pounds(driven.delivered())).isCloseTo(9000, within(1e-9));
        assertThat(pounds(driven.under())).isZero();
        assertThat(pounds(driven.over())).isZero();
        assertThat(Amounts.in(driven.beyond(), SECOND)).isZero();
        assertThat(Amounts.in(driven.shareUnder(), SpreadingUnits.PERCENT)).isZero();
    }

    /** From 40 to 80 mi/h in an hour: beyond 60 for half of it, 10 mi/h in the middle, 50 lb/min too little. */
    @Test
    void whatIsAskedForBeyondTheFastestShaftIsMissing() {
        Driven driven = SIX.over(rate(300), cycle(0, 40, 3600, 80));

        assertThat(pounds(driven.asked())).isCloseTo(18000, within(1e-8));
        assertThat(pounds(driven.under())).isCloseTo(1500, within(1e-8));
        assertThat(pounds(driven.over())).isZero();
        assertThat(pounds(driven.delivered())).isCloseTo(16500, within(1e-8));
        assertThat(Amounts.in(driven.beyond(), SECOND)).isCloseTo(1800, within(1e-9));
        assertThat(Amounts.in(driven.shareUnder(), SpreadingUnits.PERCENT)).isCloseTo(100 / 12.0, within(1e-9));
    }

    /** From 12 mi/h to a stand in an hour: below 6 for half of it, asked for 15 lb/min in the middle. */
    @Test
    void belowTheSlowestShaftTooMuchIsPutDownOrNothing() {
        DriveCycle slowing = cycle(0, 12, 3600, 0);
        Driven goesOn = SIX.over(rate(300), slowing);
        Driven stops = SIX.with(BelowRange.STOPS).over(rate(300), slowing);

        assertThat(pounds(goesOn.over())).isCloseTo(450, within(1e-9));
        assertThat(pounds(goesOn.under())).isZero();
        assertThat(pounds(goesOn.delivered())).isCloseTo(2250, within(1e-8));
        assertThat(pounds(stops.under())).isCloseTo(450, within(1e-9));
        assertThat(pounds(stops.over())).isZero();
        assertThat(pounds(stops.delivered())).isCloseTo(1350, within(1e-8));
        assertThat(Amounts.in(stops.beyond(), SECOND)).isCloseTo(1800, within(1e-9));
        assertThat(Amounts.in(goesOn.shareOver(), SpreadingUnits.PERCENT)).isCloseTo(25, within(1e-9));
    }

    @Test
    void atAStandNothingIsAskedForAndNothingPutDown() {
        Driven driven = SIX.over(rate(300), cycle(0, 0, 600, 0));

        assertThat(pounds(driven.asked())).isZero();
        assertThat(pounds(driven.delivered())).isZero();
        assertThat(Amounts.in(driven.beyond(), SECOND)).isZero();
        assertThat(Amounts.in(driven.shareOver(), SpreadingUnits.PERCENT)).isZero();
    }

    @Test
    void aSteadySpeedBeyondALimitIsBeyondItAllTheTime() {
        Driven fast = SIX.over(rate(300), cycle(0, 90, 60, 90));
        Driven slow = SIX.over(rate(300), cycle(0, 3, 60, 3));

        assertThat(pounds(fast.under())).isCloseTo(150, within(1e-9));
        assertThat(Amounts.in(fast.beyond(), SECOND)).isCloseTo(60, within(1e-9));
        assertThat(pounds(slow.over())).isCloseTo(15, within(1e-9));
    }

    @Test
    void whereGrainsRunMoreSlowlyThanTheSlowestShaftAStoppingTruckPutsDownNothing() {
        Envelope starved = SIX.withGreatestFlow(Amounts.of(0.1, SpreadingUnits.KILOGRAM_PER_SECOND));
        Driven stops = starved.with(BelowRange.STOPS).over(rate(300), cycle(0, 0, 60, 90));
        Driven goesOn = starved.over(rate(300), cycle(0, 40, 60, 40));

        assertThat(pounds(stops.delivered())).isCloseTo(0, within(1e-9));
        assertThat(Amounts.si(Mass.class, goesOn.delivered())).isCloseTo(6, within(1e-9));
    }

    /** The sums are exact: how finely a cycle is written down doesn't matter. */
    @Test
    void aCycleInManyPiecesComesToTheSame() {
        List<DriveCycle.Point> fine = new ArrayList<>();
        for (int i = 0; i <= 1000; i++) {
            fine.add(new DriveCycle.Point(Amounts.of(i * 3.6, SECOND), speed(i * 0.08)));
        }
        Driven inPieces = SIX.over(rate(300), new DriveCycle(fine));
        Driven whole = SIX.over(rate(300), cycle(0, 0, 3600, 80));

        assertThat(pounds(inPieces.under())).isCloseTo(pounds(whole.under()), within(1e-7));
        assertThat(pounds(inPieces.over())).isCloseTo(pounds(whole.over()), within(1e-7));
        assertThat(pounds(inPieces.delivered())).isCloseTo(pounds(whole.delivered()), within(1e-7));
    }

    @Test
    void itsDistanceIsTheAreaUnderTheSpeed() {
        assertThat(Amounts.in(cycle(0, 0, 1800, 40, 3600, 40).distance(), SpreadingUnits.MILE))
                .isCloseTo(30, within(1e-12));
    }

    @Test
    void whatIsNoCycleIsRefused() {
        assertRefused("points of a drive cycle must be two or more: 1", () -> cycle(0, 10));
        assertRefused(
                "time in a drive cycle must be later than the one before it, 5 s: 5 s",
                () -> cycle(0, 10, 5, 10, 5, 12));
        assertRefused("time in a drive cycle must be 0 or more: -1 s", () -> cycle(-1, 10, 5, 10));
        assertRefused("speed in a drive cycle must be 0 or more: -1 mi/h", () -> cycle(0, -1, 5, 10));
        assertRefused("rate must be 0 or more: -1 lb/mi", () -> SIX.over(rate(-1), cycle(0, 1, 2, 3)));
    }
}
