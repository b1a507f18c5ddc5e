package org.gritwright.core.telemetry;

import static org.assertj.core.api.Assertions.assertThat;
import static org.gritwright.core.telemetry.Trucks.COUNTER;
import static org.gritwright.core.telemetry.Trucks.FROM;
import static org.gritwright.core.telemetry.Trucks.START;
import static org.gritwright.core.telemetry.Trucks.T0;
import static org.gritwright.core.telemetry.Trucks.UNTIL;
import static org.gritwright.core.telemetry.Trucks.chain;
import static org.gritwright.core.telemetry.Trucks.evaluated;

import java.time.Instant;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.Stream;
import javax.measure.quantity.Mass;
import org.gritwright.core.spi.Setting;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Seasons of which it is known what was truly laid. The display has 2.5 kg/rev; calibration, scale and verification have errors that are drawn
 * anew for each season; the shaft turns on between pulses.
 */
class SimulatedSeasonTest {
    private static final int SEASONS = 500;
    private static final int ROWS = 300;
    private static final double DISPLAYED = 2.5 / 100;
    private static final double CALIBRATION = 0.006;
    private static final double SCALE = 0.004;
    private static final double VERIFICATION = 0.007;
    private static final Instant FOUND = START.plusSeconds(ROWS);
    private static final Instant CHANGED = START.plusSeconds(ROWS / 3);
    private static final Setting AT = Setting.height(Amounts.of(4, SpreadingUnits.INCH));

    /** What was read, and the kilograms that were truly laid. */
    private record Season(Rows rows, double laid) {}

    /** @param end the true error at the end, and {@code start} the one of the calibration */
    private static Season season(SplittableRandom random, Onset onset, double start, double end) {
        long[] times = new long[ROWS];
        long[] counts = new long[ROWS];
        double[] positions = new double[ROWS];
        positions[0] = random.nextDouble();
        for (int i = 1; i < ROWS; i++) {
            positions[i] = positions[i - 1] + 60 * random.nextDouble();
        }
        double laid = 0;
        for (int i = 0; i < ROWS; i++) {
            times[i] = T0 + 1000L * i;
            counts[i] = (long) positions[i];
            if (i > 0) {
                double share = onset == Onset.Gradually.WITH_TIME
                        ? (i - 0.5) / ROWS
                        : (positions[i] + positions[i - 1]) / 2 / positions[ROWS - 1];
                double error = onset instanceof Onset.AtOnce
                        ? (times[i] >= CHANGED.toEpochMilli() ? end : start)
                        : (1 - share) * start + share * end;
                laid += DISPLAYED / (1 + error) * (positions[i] - positions[i - 1]);
            }
        }
        return new Season(Rows.of(times, counts), laid);
    }

    private static Timeline displayed() {
        return Timeline.of(List.of(chain(START, 4, 2.5)
                .withErrors(List.of(Totals.error("calibration", CALIBRATION), Totals.error("scale", SCALE)))));
    }

    private static AsFound found(double error) {
        return new AsFound(
                "1",
                AT,
                START,
                FOUND,
                Measured.of(
                        Amounts.of(error, SpreadingUnits.ONE),
                        Amounts.of(VERIFICATION, SpreadingUnits.ONE),
                        Double.POSITIVE_INFINITY));
    }

    private static AppliedTotal total(Timeline timeline, Rows rows) {
        RowSums counted = evaluated(RowEvaluator.firstPass(timeline, COUNTER, FROM, UNTIL), rows)
                .sums();
        RowEvaluator second = RowEvaluator.secondPass(timeline, COUNTER, FROM, UNTIL, counted);
        return second.total(evaluated(second, rows).sums());
    }

    private static boolean holds(AppliedTotal total, double kilograms) {
        Measured<Mass> mass = total.mass(SpreadingUnits.KILOGRAM);
        double off = Amounts.si(Mass.class, mass.value()) - kilograms;
        return Math.abs(off)
                <= Amounts.si(Mass.class, mass.expandedUncertainty(0.95).orElseThrow());
    }

    static Stream<Onset> onsets() {
        return Stream.of(
                new Onset.AtOnce(CHANGED),
                Onset.Gradually.WITH_TIME,
                Onset.Gradually.WITH_TURNS,
                Onset.Gradually.WITH_AMOUNT);
    }

    @ParameterizedTest
    @MethodSource("onsets")
    void correctedBackTheIntervalHoldsTheTruthAsOftenAsItSaysAndUncorrectedNever(Onset onset) {
        SplittableRandom random = new SplittableRandom(15);
        int corrected = 0;
        int uncorrected = 0;
        for (int i = 0; i < SEASONS; i++) {
            double start = CALIBRATION * random.nextGaussian() + SCALE * random.nextGaussian();
            double end = 0.12;
            Season season = season(random, onset, start, end);
            Timeline timeline = displayed();
            double read = end + VERIFICATION * random.nextGaussian();
            corrected +=
                    holds(total(timeline.correctedBackBy(found(read), onset), season.rows()), season.laid()) ? 1 : 0;
            uncorrected += holds(total(timeline, season.rows()), season.laid()) ? 1 : 0;
        }

        // Of 500 at 95 %: 475 ± 3 × 4.9.
        assertThat(corrected).isBetween(460, 490);
        assertThat(uncorrected).isLessThan(5);
    }

    @Test
    void theErrorOfAScaleDoesntAverageOutOverTheTrucksThatWereWeighedOnIt() {
        SplittableRandom random = new SplittableRandom(16);
        int trucks = 12;
        int held = 0;
        int heldIfEachHadItsOwn = 0;
        for (int i = 0; i < SEASONS; i++) {
            double scale = SCALE * random.nextGaussian();
            AppliedTotal fleet = null;
            AppliedTotal apart = null;
            double laid = 0;
            for (int truck = 0; truck < trucks; truck++) {
                double error = CALIBRATION * random.nextGaussian() + scale;
                Season season = season(random, Onset.Gradually.WITH_TURNS, error, error);
                laid += season.laid();
                AppliedTotal one = total(of(truck, "scale"), season.rows());
                AppliedTotal other = total(of(truck, "scale " + truck), season.rows());
                fleet = fleet == null ? one : fleet.plus(one);
                apart = apart == null ? other : apart.plus(other);
            }
            held += holds(fleet, laid) ? 1 : 0;
            heldIfEachHadItsOwn += holds(apart, laid) ? 1 : 0;
        }

        assertThat(held).isBetween(460, 490);
        assertThat(heldIfEachHadItsOwn).isLessThan(375);
    }

    private static Timeline of(int truck, String scale) {
        return Timeline.of(List.of(chain(START, 4, 2.5)
                .withErrors(List.of(Totals.error("calibration " + truck, CALIBRATION), Totals.error(scale, SCALE)))));
    }
}
