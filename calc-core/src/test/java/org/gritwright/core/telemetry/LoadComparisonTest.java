package org.gritwright.core.telemetry;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.telemetry.Trucks.COUNTER;
import static org.gritwright.core.telemetry.Trucks.START;
import static org.gritwright.core.telemetry.Trucks.chain;
import static org.gritwright.core.telemetry.Trucks.evaluated;
import static org.gritwright.core.telemetry.Trucks.evaluator;
import static org.gritwright.core.telemetry.Trucks.every;

import java.util.List;
import java.util.stream.DoubleStream;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Mass;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.SpreadingUnits;
import org.junit.jupiter.api.Test;

/** 40 000 pulses of 25 g: 1000 kg by the rows. */
class LoadComparisonTest {
    private final RowEvaluator evaluator = evaluator(
            COUNTER.withGapsUpTo(Amounts.of(1000, SpreadingUnits.SECOND)),
            chain(START, 4, 2.5).withErrors(List.of(Totals.error("calibration", 0.006), Totals.error("scale", 0.004))));

    private final RowSums load =
            evaluated(evaluator, every(400, 0, 20_000, 40_000)).sums();
    private static final Measured<Mass> EMPTY = Measured.once(kilograms(0));

    private static Quantity<Mass> kilograms(double kilograms) {
        return Amounts.of(kilograms, SpreadingUnits.KILOGRAM);
    }

    private static Ticket ticket(double loaded, double uncertainty, SharedError... errors) {
        return new Ticket(kilograms(loaded), kilograms(uncertainty), List.of(errors));
    }

    private static double of(Measured<Dimensionless> error) {
        return Amounts.si(Dimensionless.class, error.value());
    }

    private static double uncertainty(Measured<Dimensionless> error) {
        return Amounts.si(Dimensionless.class, error.standardUncertainty().orElseThrow());
    }

    @Test
    void whatLeftTheHopperIsWhatWasInItLessWhatIsLeft() {
        LoadComparison comparison = LoadComparison.of(
                evaluator,
                load,
                ticket(1100, 3),
                Measured.of(kilograms(200), kilograms(4), Double.POSITIVE_INFINITY),
                Measured.of(kilograms(500), kilograms(12), Double.POSITIVE_INFINITY));

        assertThat(Amounts.si(Mass.class, comparison.indicated().value())).isCloseTo(1000, within(1e-6));
        assertThat(Amounts.si(Mass.class, comparison.weighed().value())).isCloseTo(800, within(1e-9));
        assertThat(Amounts.si(
                        Mass.class, comparison.weighed().standardUncertainty().orElseThrow()))
                .isCloseTo(13, within(1e-9));
        assertThat(of(comparison.error())).isCloseTo(0.25, within(1e-9));
        // 1000 kg to 0.72 %, which are 7.2 kg, and 1.25 × 13 kg, of 800 kg.
        assertThat(uncertainty(comparison.error()))
                .isCloseTo(Math.hypot(1000 * Math.hypot(0.006, 0.004), 1.25 * 13) / 800, within(1e-6));
        assertThat(comparison.isShown()).isTrue();
    }

    @Test
    void aScaleThatBothWereWeighedOnCancels() {
        LoadComparison apart =
                LoadComparison.of(evaluator, load, ticket(1000, 1, Totals.error("loader", 0.004)), EMPTY, EMPTY);
        LoadComparison same =
                LoadComparison.of(evaluator, load, ticket(1000, 1, Totals.error("scale", 0.004)), EMPTY, EMPTY);

        assertThat(uncertainty(apart.error())).isCloseTo(Math.sqrt(36 + 16 + 16 + 1) / 1000, within(1e-6));
        assertThat(uncertainty(same.error())).isCloseTo(Math.sqrt(36 + 1) / 1000, within(1e-6));
        assertThat(apart.weighed()).isEqualTo(same.weighed());
    }

    @Test
    void aDifferenceIsShownWhereItsIntervalLeavesZeroOut() {
        // u = 7.3 kg: 1.96 u = 1.43 %.
        assertThat(LoadComparison.of(evaluator, load, ticket(987, 1), EMPTY, EMPTY)
                        .isShown())
                .isFalse();
        assertThat(LoadComparison.of(evaluator, load, ticket(984, 1), EMPTY, EMPTY)
                        .isShown())
                .isTrue();
        assertThat(LoadComparison.of(evaluator, load, ticket(1016, 1), EMPTY, EMPTY)
                        .isShown())
                .isTrue();
    }

    @Test
    void whatWasUnloadedLeftTheHopperToo() {
        Rows rows = every(400, 0, 20_000, 40_000);
        Rows unloading = new Rows(rows.times(), rows.counts(), new double[0], new int[0], new byte[] {
            0, 0, (byte) RowMode.UNLOADING.code()
        });
        RowSums sums = evaluated(evaluator, unloading).sums();

        assertThat(sums.laid()).isEqualTo(500_000_000);
        assertThat(evaluator.left(sums)).isEqualTo(evaluator.total(load));
        assertThat(LoadComparison.of(evaluator, sums, ticket(1000, 1), EMPTY, EMPTY))
                .isEqualTo(LoadComparison.of(evaluator, load, ticket(1000, 1), EMPTY, EMPTY));
    }

    @Test
    void whereTurnsCouldntBeCountedNothingIsShown() {
        RowSums sums = evaluated(evaluator, every(400, 0, 20_000, 40_000, 30)).sums();
        LoadComparison comparison = LoadComparison.of(evaluator, sums, ticket(1500, 1), EMPTY, EMPTY);

        assertThat(comparison.unattributed()).isEqualTo(30);
        assertThat(comparison.isComplete()).isFalse();
        assertThat(comparison.isShown()).isFalse();
        assertThat(LoadComparison.of(evaluator, load, ticket(1500, 1), EMPTY, EMPTY)
                        .isComplete())
                .isTrue();
    }

    /** A controller back at zero lost what it had counted since the row before, whether it says so in pulses or not. */
    @Test
    void whereMoreMayHaveTurnedThanReadingsTellNothingIsShown() {
        RowSums restarted =
                evaluated(evaluator, every(400, 0, 20_000, 40_000, 0)).sums();
        LoadComparison comparison = LoadComparison.of(evaluator, restarted, ticket(1500, 1), EMPTY, EMPTY);
        assertThat(comparison.unattributed()).isZero();
        assertThat(comparison.untold()).isEqualTo(1);
        assertThat(comparison.isComplete()).isFalse();
        assertThat(comparison.isShown()).isFalse();

        RowEvaluator rollingOver = evaluator(Trucks.rollingOverAt(65_536), chain(START, 4, 2.5));
        RowSums either = evaluated(rollingOver, every(400, 65_500, 0)).sums();
        assertThat(either.rows(RowStatus.GAP)).isEqualTo(1);
        assertThat(untold(rollingOver, either)).isEqualTo(1);
        RowSums ambiguous = evaluated(rollingOver, every(20, 65_500, 0)).sums();
        assertThat(ambiguous.rows(RowStatus.ROLLED_OVER_OR_RESTARTED)).isEqualTo(1);
        assertThat(untold(rollingOver, ambiguous)).isEqualTo(1);
        // One that doesn't roll over and reads the same after a gap didn't turn.
        RowSums stood = evaluated(evaluator, every(1001, 500, 500)).sums();
        assertThat(stood.rows(RowStatus.GAP)).isEqualTo(1);
        assertThat(untold(evaluator, stood)).isZero();
    }

    /** What turned after the last row that was counted from is in no sum. */
    @Test
    void whereTheLastRowsArentCountedNothingIsShown() {
        // 16 bits stated, and there are 32.
        RowEvaluator narrow = evaluator(
                Trucks.rollingOverAt(65_536).withGapsUpTo(Amounts.of(500, SpreadingUnits.SECOND)),
                chain(START, 4, 2.5));
        RowSums beyond =
                evaluated(narrow, every(400, 40_000, 65_000, 70_000, 75_000)).sums();
        assertThat(beyond.rows(RowStatus.IMPOSSIBLE_READING)).isEqualTo(2);
        assertThat(untold(narrow, beyond)).isEqualTo(2);
        assertThat(LoadComparison.of(narrow, beyond, ticket(1500, 1), EMPTY, EMPTY)
                        .isShown())
                .isFalse();
        // A clock that falls back to 1970, and one that was ahead for a moment while the truck stood.
        long[] counts = {0, 20_000, 40_000, 60_000};
        assertThat(untold(evaluator, at(counts, 0, 400, -1e9, -1e9 + 400))).isEqualTo(2);
        assertThat(untold(evaluator, at(new long[] {0, 20_000, 20_000, 40_000, 60_000}, 0, 400, 90_000, 800, 1200)))
                .isEqualTo(2);
    }

    @Test
    void rowsThatTellNothingMoreDontMatterAtTheEnd() {
        long[] late = {0, 20_000, 40_000, 20_000, 10_000, 40_000};
        assertThat(untold(evaluator, at(late, 0, 400, 800, 400, 200, 800))).isZero();
        assertThat(untold(evaluator, at(new long[] {0, 40_000, 40_000}, 0, 800, 600)))
                .isZero();
        // Nor does what is followed by a row that is counted from.
        long[] middle = {0, -1, 20_000, 30_000, 40_000};
        RowSums glitches = at(middle, 0, 1, 400, -1e9, 800);
        assertThat(untold(evaluator, glitches)).isZero();
        assertThat(untold(evaluator, evaluator.merged(at(new long[] {0, -1}, 0, 1), at(new long[] {9}, 2))))
                .isZero();
        assertThat(untold(evaluator, evaluator.merged(at(new long[] {0, -1}, 0, 1), at(new long[] {-1}, 2))))
                .isEqualTo(2);
        assertThat(untold(evaluator, evaluator.merged(at(new long[] {-1}, 1), at(new long[] {0, 9}, 2, 3))))
                .isZero();
    }

    @Test
    void sumsDifferInWhereARowIsThatIsntCounted() {
        assertThat(at(new long[] {0, -1}, 0, 1)).isNotEqualTo(at(new long[] {-1, 0}, -1, 0));
    }

    /** It would count twice. */
    @Test
    void aTicketHasEachErrorOnce() {
        assertThatThrownBy(() -> ticket(1000, 1, Totals.error("scale", 0.004), Totals.error("scale", 0.004)))
                .isInstanceOf(InvalidInputException.class)
                .hasMessage("shared errors must be each id once: [scale, scale]");
    }

    private RowSums at(long[] counts, double... seconds) {
        long[] times = DoubleStream.of(seconds)
                .mapToLong(second -> Trucks.T0 + Math.round(1000 * second))
                .toArray();
        return evaluated(evaluator, Rows.of(times, counts)).sums();
    }

    private static long untold(RowEvaluator by, RowSums sums) {
        return LoadComparison.of(by, sums, ticket(1500, 1), EMPTY, EMPTY).untold();
    }

    @Test
    void whatCantBeIsRefused() {
        assertThatThrownBy(() -> LoadComparison.of(evaluator, evaluator.sums(), ticket(1500, 1), EMPTY, EMPTY))
                .isInstanceOf(InvalidInputException.class)
                .hasMessage("rows between the loadings must be some with a reading: none");
        assertThatThrownBy(
                        () -> LoadComparison.of(evaluator, load, ticket(100, 1), EMPTY, Measured.once(kilograms(100))))
                .isInstanceOf(InvalidInputException.class)
                .hasMessageContaining("mass that left the hopper by the ticket must be greater than 0");
        assertThatThrownBy(
                        () -> LoadComparison.of(evaluator, load, ticket(100, 1), Measured.once(kilograms(-1)), EMPTY))
                .hasMessageContaining("hopper before loading");
        assertThatThrownBy(
                        () -> LoadComparison.of(evaluator, load, ticket(100, 1), EMPTY, Measured.once(kilograms(-1))))
                .hasMessageContaining("hopper before the next loading");
        assertThatThrownBy(() -> ticket(0, 1)).hasMessageContaining("mass loaded must be greater than 0");
        assertThatThrownBy(() -> ticket(1, -1)).hasMessageContaining("standard uncertainty of the mass loaded");
        assertThatThrownBy(() -> new LoadComparison(
                        EMPTY,
                        EMPTY,
                        LoadComparison.of(evaluator, load, ticket(1000, 1), EMPTY, EMPTY)
                                .error(),
                        -1,
                        0))
                .hasMessageContaining("pulses unattributed must be 0 or more: -1");
        assertThatThrownBy(() -> new LoadComparison(
                        EMPTY,
                        EMPTY,
                        LoadComparison.of(evaluator, load, ticket(1000, 1), EMPTY, EMPTY)
                                .error(),
                        0,
                        -1))
                .hasMessageContaining("rows untold must be 0 or more: -1");
    }
}
