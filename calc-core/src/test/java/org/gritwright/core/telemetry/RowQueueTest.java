package org.gritwright.core.telemetry;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.gritwright.core.telemetry.Trucks.T0;
import static org.gritwright.core.telemetry.Trucks.every;
import static org.gritwright.core.telemetry.Trucks.plain;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.SpreadingUnits;
import org.junit.jupiter.api.Test;

class RowQueueTest {
    private static RowQueue queue(double seconds, int most) {
        return new RowQueue(Amounts.of(seconds, SpreadingUnits.SECOND), most);
    }

    private static void add(
            RowQueue queue, long second, long count, RowEvaluator evaluator, RowState state, RowSums sums) {
        queue.add(T0 + 1000 * second, count, Double.NaN, 0, 0, evaluator, state, sums);
    }

    /** A row comes as late as its place in the order of coming says, by up to 30 s. */
    @Property(tries = 300)
    void rowsThatComeLateGiveTheSameSums(@ForAll long seed, @ForAll @IntRange(min = 1, max = 120) int size) {
        RowEvaluator evaluator = RowSumsLawsTest.evaluator();
        Rows rows = RowSumsLawsTest.rows(seed, size, true);
        SplittableRandom random = new SplittableRandom(seed);
        long[] comes = new long[size];
        for (int i = 0; i < size; i++) {
            // Rows of one time come in their order.
            boolean twice = i > 0 && rows.times()[i] == rows.times()[i - 1];
            comes[i] = twice ? comes[i - 1] : rows.times()[i] + random.nextInt(30_001);
        }
        List<Integer> order = new ArrayList<>(IntStream.range(0, size).boxed().toList());
        order.sort(Comparator.comparingLong(row -> comes[row]));
        RowQueue queue = queue(30, 1000);
        RowState state = evaluator.start();
        RowSums sums = evaluator.sums();
        for (int row : order) {
            queue.add(
                    rows.times()[row],
                    rows.counts()[row],
                    rows.setting(row),
                    rows.slot(row),
                    rows.mode(row),
                    evaluator,
                    state,
                    sums);
        }
        queue.finish(evaluator, state, sums);

        assertThat(sums).isEqualTo(Trucks.evaluated(evaluator, rows).sums());
        assertThat(queue.waiting()).isZero();
    }

    @Test
    void aRowWaitsUntilOneIsLaterByMoreThanRowsCanBeLate() {
        RowEvaluator evaluator = plain();
        RowState state = evaluator.start();
        RowSums sums = evaluator.sums();
        RowQueue queue = queue(10, 100);
        add(queue, 0, 0, evaluator, state, sums);
        add(queue, 10, 100, evaluator, state, sums);
        assertThat(queue.waiting()).isEqualTo(2);
        assertThat(sums.rows(RowStatus.FIRST)).isZero();
        add(queue, 11, 110, evaluator, state, sums);
        assertThat(queue.waiting()).isEqualTo(2);
        assertThat(sums.rows(RowStatus.FIRST)).isEqualTo(1);
        // Too late: what was evaluated stays, and it is counted over.
        add(queue, 30, 300, evaluator, state, sums);
        add(queue, 5, 50, evaluator, state, sums);
        queue.finish(evaluator, state, sums);
        assertThat(sums.rows(RowStatus.OUT_OF_ORDER)).isEqualTo(1);
        assertThat(sums.turned()).isEqualTo(300);
    }

    @Test
    void aClockOfAnotherYearMakesNoOtherRowDue() {
        RowEvaluator evaluator = plain();
        RowState state = evaluator.start();
        RowSums sums = evaluator.sums();
        RowQueue queue = queue(10, 100);
        add(queue, 0, 0, evaluator, state, sums);
        queue.add(4_000_000_000_000L, 5, Double.NaN, 0, 0, evaluator, state, sums);
        add(queue, 2, 20, evaluator, state, sums);
        add(queue, 1, 10, evaluator, state, sums);
        queue.finish(evaluator, state, sums);

        assertThat(sums.rows(RowStatus.IMPOSSIBLE_TIME)).isEqualTo(1);
        assertThat(sums.rows(RowStatus.OUT_OF_ORDER)).isZero();
        assertThat(sums.turned()).isEqualTo(20);
    }

    @Test
    void ifTooManyWaitTheEarliestIsEvaluated() {
        RowEvaluator evaluator = plain();
        RowState state = evaluator.start();
        RowSums sums = evaluator.sums();
        RowQueue queue = queue(1000, 2);
        for (int i : new int[] {3, 1, 2, 0}) {
            add(queue, i, 10L * i, evaluator, state, sums);
        }
        assertThat(queue.waiting()).isEqualTo(2);
        queue.finish(evaluator, state, sums);
        assertThat(sums.rows(RowStatus.OUT_OF_ORDER)).isEqualTo(1);
        assertThat(sums.turned()).isEqualTo(20);
        assertThat(sums.laid())
                .isEqualTo(
                        Trucks.evaluated(evaluator, every(1, 10, 20, 30)).sums().laid());
    }

    @Test
    void lateRowsHaveTheirLimits() {
        assertThatThrownBy(() -> queue(-1, 2))
                .isInstanceOf(InvalidInputException.class)
                .hasMessageContaining("lateness");
        assertThatThrownBy(() -> queue(1, 0)).hasMessage("number of rows that wait must be 1 to 1000000: 0");
        assertThatThrownBy(() -> queue(1, 1_000_001)).hasMessageContaining("number of rows that wait");
    }
}
