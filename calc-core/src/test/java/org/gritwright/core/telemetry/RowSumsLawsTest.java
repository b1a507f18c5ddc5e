package org.gritwright.core.telemetry;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.gritwright.core.telemetry.Trucks.START;
import static org.gritwright.core.telemetry.Trucks.T0;
import static org.gritwright.core.telemetry.Trucks.chain;
import static org.gritwright.core.telemetry.Trucks.every;
import static org.gritwright.core.telemetry.Trucks.plain;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import java.util.TreeSet;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;
import org.gritwright.units.InvalidInputException;
import org.junit.jupiter.api.Test;

/** Evaluated as a whole, in parts, row by row: it is the same to the last milligram. */
class RowSumsLawsTest {
    private static final double INCH = 0.0254;

    /** Three values, one of them after a change, and one slot that is emptied. */
    static RowEvaluator evaluator() {
        return Trucks.evaluator(
                Trucks.rollingOverAt(4096),
                chain(START, 2, 1 / 3.0).withErrors(List.of(Totals.error("scale", 0.001), Totals.error("salt", 0.01))),
                chain(START, 4, 2 / 3.0).withErrors(List.of(Totals.error("scale", 0.001))),
                chain(START.plusSeconds(100), 4, 0.7),
                TimelineEntry.nothing(START.plusSeconds(200), "1"),
                chain(START.plusSeconds(220), 4, 0.8));
    }

    private final RowEvaluator evaluator = evaluator();

    /** Starts, stops, leaps, restarts, gaps, changes of all columns; in the order of time or not. */
    static Rows rows(long seed, int size, boolean inOrder) {
        SplittableRandom random = new SplittableRandom(seed);
        long[] times = new long[size];
        long[] counts = new long[size];
        double[] settings = new double[size];
        byte[] modes = new byte[size];
        long time = T0 - 3000;
        long count = random.nextInt(4096);
        double setting = 4 * INCH;
        byte mode = 0;
        for (int i = 0; i < size; i++) {
            int odd = random.nextInt(30);
            time += odd == 0 ? 0 : odd == 1 ? random.nextInt(400_000) : odd == 2 && !inOrder ? -1500 : 1000;
            count = odd == 3
                    ? random.nextInt(5000) - 100
                    : odd == 4 ? 0 : odd == 5 ? count : Math.floorMod(count + random.nextInt(100), 4096);
            setting = odd == 6 ? 2 * INCH : odd == 7 ? 4 * INCH : odd == 8 ? 3 * INCH : setting;
            mode = odd == 9 ? (byte) random.nextInt(-1, 7) : odd < 12 ? 0 : mode;
            times[i] = time;
            counts[i] = count;
            settings[i] = setting;
            modes[i] = mode;
        }
        return new Rows(times, counts, settings, new int[0], modes);
    }

    @Property
    void columnsAndSingleRowsGiveTheSame(
            @ForAll long seed, @ForAll @IntRange(max = 300) int size, @ForAll boolean inOrder) {
        Rows rows = rows(seed, size, inOrder);

        assertThat(Trucks.evaluated(evaluator, rows)).isEqualTo(Trucks.stepped(evaluator, rows));
    }

    @Property
    void countsAndAmountsAreThoseOfTheRows(@ForAll long seed, @ForAll @IntRange(max = 300) int size) {
        Trucks.Done done = Trucks.evaluated(evaluator, rows(seed, size, false));

        long rows = 0;
        for (RowStatus status : RowStatus.values()) {
            long held = 0;
            long of = 0;
            for (int i = 0; i < size; i++) {
                if (done.statuses().get(i) == status) {
                    held += done.amounts().get(i);
                    of++;
                }
            }
            assertThat(done.sums().rows(status)).as("%s", status).isEqualTo(of);
            assertThat(done.sums().amount(status)).as("%s", status).isEqualTo(held);
            rows += of;
        }
        assertThat(rows).isEqualTo(size);
        assertThat(done.amounts()).allSatisfy(amount -> assertThat(amount).isNotNegative());
        assertThat(done.sums().left())
                .isEqualTo(done.amounts().stream().mapToLong(Long::longValue).sum());
    }

    private static List<Integer> borders(int size, List<Integer> cuts) {
        TreeSet<Integer> borders = new TreeSet<>(List.of(0, size));
        cuts.forEach(cut -> borders.add(size == 0 ? 0 : cut % (size + 1)));
        return new ArrayList<>(borders);
    }

    private RowSums part(Rows rows, int from, int to, RowState state) {
        RowSums sums = evaluator.sums();
        evaluator.evaluate(rows, from, to, state, sums, new long[rows.size()], new byte[rows.size()]);
        return sums;
    }

    @Property
    void partsThatAreEvaluatedApartMergeToTheWhole(
            @ForAll long seed,
            @ForAll @IntRange(max = 200) int size,
            @ForAll @Size(max = 6) List<@IntRange(max = 1000) Integer> cuts) {
        Rows rows = rows(seed, size, true);
        List<Integer> borders = borders(size, cuts);
        RowSums merged = evaluator.sums();
        RowSums fromTheEnd = evaluator.sums();
        for (int i = 0; i + 1 < borders.size(); i++) {
            merged = evaluator.merged(merged, part(rows, borders.get(i), borders.get(i + 1), evaluator.start()));
            int last = borders.size() - 1 - i;
            fromTheEnd = evaluator.merged(
                    part(rows, borders.get(last - 1), borders.get(last), evaluator.start()), fromTheEnd);
        }
        RowSums whole = Trucks.evaluated(evaluator, rows).sums();

        assertThat(merged).isEqualTo(whole).hasSameHashCodeAs(whole);
        assertThat(fromTheEnd).isEqualTo(whole);
        assertThat(evaluator.total(merged)).isEqualTo(evaluator.total(whole));
    }

    @Property
    void partsThatAreCountedOnMergeToTheWholeTooAlsoOutOfOrder(
            @ForAll long seed,
            @ForAll @IntRange(max = 200) int size,
            @ForAll @Size(max = 6) List<@IntRange(max = 1000) Integer> cuts) {
        Rows rows = rows(seed, size, false);
        List<Integer> borders = borders(size, cuts);
        RowSums merged = evaluator.sums();
        RowState state = evaluator.start();
        for (int i = 0; i + 1 < borders.size(); i++) {
            merged = evaluator.merged(merged, part(rows, borders.get(i), borders.get(i + 1), state));
            state = state.copy();
        }
        assertThat(merged).isEqualTo(Trucks.evaluated(evaluator, rows).sums());
    }

    @Property
    void plainRowsAddUpToTheRoundedWhole(@ForAll long seed, @ForAll @IntRange(min = 1, max = 300) int size) {
        SplittableRandom random = new SplittableRandom(seed);
        long[] counts = new long[size];
        for (int i = 1; i < size; i++) {
            counts[i] = counts[i - 1] + random.nextInt(100);
        }
        double perCount = 1 + random.nextDouble() * 1e5;
        RowEvaluator evaluator = Trucks.evaluator(Trucks.COUNTER, chain(START, 4, perCount / 1e4));
        Trucks.Done done = Trucks.evaluated(evaluator, every(1, counts));

        double total = counts[size - 1] * (perCount / 1e4 / 100 * 1e6);
        assertThat((double) done.sums().laid()).isBetween(total - 0.5001, total + 0.5001);
        assertThat(done.sums().turned()).isEqualTo(counts[size - 1]);
    }

    @Test
    void partsOutOfOrderAreRefused() {
        RowEvaluator evaluator = plain();
        RowSums early = Trucks.evaluated(evaluator, every(1, 0, 1, 2)).sums();
        Rows later = Rows.of(new long[] {T0 + 5000, T0 + 6000}, new long[] {5, 6});
        RowSums late = Trucks.evaluated(evaluator, later).sums();

        assertThatThrownBy(() -> evaluator.merged(late, early))
                .isInstanceOf(InvalidInputException.class)
                .hasMessageContaining("part that follows must be one that begins no earlier than this one ends");
        RowState state = evaluator.start();
        evaluator.step(state, evaluator.sums(), T0 + 4000, 4, Double.NaN, 0, 0);
        RowSums counted = evaluator.sums();
        evaluator.step(state, counted, T0 + 5000, 5, Double.NaN, 0, 0);
        assertThatThrownBy(() -> evaluator.merged(early, counted))
                .hasMessageContaining("part that follows must be counted on from 2 pulse");
        assertThat(evaluator.merged(early, late).turned()).isEqualTo(6);
    }

    @Test
    void manyTrucksAddUpAlikeInAnyOrder() {
        List<AppliedTotal> trucks = new ArrayList<>();
        for (int i = 0; i < 5; i++) {
            trucks.add(evaluator.total(
                    Trucks.evaluated(evaluator, rows(i, 200, true)).sums()));
        }
        AppliedTotal forwards = trucks.stream().reduce(AppliedTotal::plus).orElseThrow();
        AppliedTotal backwards = Arrays.asList(4, 2, 0, 3, 1).stream()
                .map(trucks::get)
                .reduce(AppliedTotal::plus)
                .orElseThrow();
        assertThat(forwards).isEqualTo(backwards);
    }

    @Test
    void eightThreadsThatShareAnEvaluatorGiveWhatOneDoes() throws Exception {
        Rows rows = rows(8, 20_000, true);
        RowSums whole = Trucks.evaluated(evaluator, rows).sums();
        ExecutorService threads = Executors.newFixedThreadPool(8);
        try {
            List<Future<RowSums>> parts = new ArrayList<>();
            for (int i = 0; i < 8; i++) {
                int from = i * 2500;
                parts.add(threads.submit(() -> part(rows, from, from + 2500, evaluator.start())));
            }
            RowSums merged = evaluator.sums();
            for (Future<RowSums> part : parts) {
                merged = evaluator.merged(merged, part.get());
            }
            assertThat(merged).isEqualTo(whole);
        } finally {
            threads.shutdownNow();
        }
    }
}
