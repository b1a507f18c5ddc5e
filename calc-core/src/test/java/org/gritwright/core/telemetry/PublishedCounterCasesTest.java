package org.gritwright.core.telemetry;

import static org.assertj.core.api.Assertions.assertThat;
import static org.gritwright.core.telemetry.RowStatus.FIRST;
import static org.gritwright.core.telemetry.RowStatus.LAID;
import static org.gritwright.core.telemetry.RowStatus.NO_CALIBRATION;
import static org.gritwright.core.telemetry.RowStatus.RESTARTED;
import static org.gritwright.core.telemetry.Trucks.COUNTER;
import static org.gritwright.core.telemetry.Trucks.START;
import static org.gritwright.core.telemetry.Trucks.T0;
import static org.gritwright.core.telemetry.Trucks.auger;
import static org.gritwright.core.telemetry.Trucks.chain;
import static org.gritwright.core.telemetry.Trucks.evaluated;
import static org.gritwright.core.telemetry.Trucks.evaluator;
import static org.gritwright.core.telemetry.Trucks.every;

import java.util.Arrays;
import java.util.stream.LongStream;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Counters and look-ups by time against published cases.
 *
 * <p>Restarts: the tests of the Prometheus query language (promqltest/testdata/functions.test, series every 5 min). There a counter that is
 * lower began again at zero, and what it shows is counted. Here that is kept apart, since nobody knows what was turned between the
 * last reading and the restart, nor that it began at zero: what is counted and what is kept apart add up to the published increase,
 * without the extrapolation to the borders of a window, which invents what wasn't read.
 */
class PublishedCounterCasesTest {
    private static final Counter FIVE_MINUTES = COUNTER.withGapsUpTo(Amounts.of(5, SpreadingUnits.MINUTE));

    private static long[] counts(String text) {
        return Arrays.stream(text.split(" ")).mapToLong(Long::parseLong).toArray();
    }

    @ParameterizedTest
    @CsvSource({
        "increase over 50 min, 0 10 20 30 40 50 60 70 80 90 100, 100, 0",
        "increase with a reset, 0 18 36 54 72 90 0 18 36 54 72, 162, 0",
        "reset not to zero, 0 1 2 3 2 3 4, 7, 1",
        "resets, 1 2 3 0 1 0 0 1 2 0, 5, 3",
        "no reset, 1 2 3 4 5 1 2 3 4 5, 9, 1"
    })
    void anIncreaseIsWhatIsCountedAndWhatARestartLeavesOpen(String of, String counts, long increase, long restarts) {
        Trucks.Done done = evaluated(evaluator(FIVE_MINUTES, auger()), every(300, counts(counts)));

        assertThat(done.sums().turned() + done.sums().counts(RESTARTED)).as(of).isEqualTo(increase);
        if (restarts > 0) {
            assertThat(done.sums().rows(RESTARTED)).as(of).isEqualTo(restarts);
        }
    }

    @Test
    void aCounterThatIsReadAtZeroTwiceStands() {
        Trucks.Done done = evaluated(evaluator(FIVE_MINUTES, auger()), every(300, 1, 2, 3, 0, 1, 0, 0, 1, 2, 0));

        assertThat(done.sums().rows(RowStatus.STANDING)).isEqualTo(1);
        assertThat(done.sums().rows(LAID)).isEqualTo(5);
    }

    /**
     * RFC 2578, section 7.1.6: a Counter32 wraps from 2³² − 1 to zero. GÉANT's page on counter wraps: where the second reading is lower, 2³²
     * is added once, as long as it can't wrap twice between two readings.
     */
    @Test
    void thirtyTwoBitsRollOverFromTheirGreatestNumberToZero() {
        Trucks.Done done = evaluated(
                evaluator(Trucks.rollingOverAt(1L << 32), auger()), every(1, 4_294_967_290L, 4_294_967_295L, 0, 5));

        assertThat(done.statuses()).containsExactly(FIRST, LAID, LAID, LAID);
        assertThat(done.sums().turned()).isEqualTo(11);
    }

    /**
     * The documentation of pandas.merge_asof: left 1 5 10, right 1 2 3 6 7, backward: 1 3 7. And DuckDB's guide to as-of joins: rows before the
     * first price have none.
     */
    @Test
    void whatIsInForceIsTheLastEntryAtOrBeforeTheRow() {
        TimelineEntry[] entries = LongStream.of(1, 2, 3, 6, 7)
                .mapToObj(second -> chain(START.plusSeconds(second), 4, (double) second))
                .toArray(TimelineEntry[]::new);
        Rows rows = Rows.of(new long[] {T0, T0 + 500, T0 + 1000, T0 + 5000, T0 + 10_000}, new long[] {0, 1, 2, 3, 4});
        Trucks.Done done = evaluated(evaluator(COUNTER, entries), rows);

        assertThat(done.statuses()).containsExactly(FIRST, NO_CALIBRATION, LAID, LAID, LAID);
        assertThat(done.amounts()).containsExactly(0L, 0L, 10_000L, 30_000L, 70_000L);
    }
}
