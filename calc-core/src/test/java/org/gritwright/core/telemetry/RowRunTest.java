package org.gritwright.core.telemetry;

import static org.assertj.core.api.Assertions.assertThat;
import static org.gritwright.core.telemetry.Trucks.START;
import static org.gritwright.core.telemetry.Trucks.T0;
import static org.gritwright.core.telemetry.Trucks.chain;

import java.util.Arrays;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** How far many rows are taken at a time: what is odd, and only that, ends it. Row by row gives the same, slower. */
class RowRunTest {
    private static final int ROWS = 600;

    /** Up to 10 s and 0.1 pulse a millisecond after a reading of 1000 pulse at T0, and 5 pulses with no time between. */
    private static final RowRun.Limits LIMITS = new RowRun.Limits(T0, T0 + 700_000, 10_000, 0.1, 5, 1_000_000);

    private final long[] times =
            LongStream.rangeClosed(1, ROWS).map(i -> T0 + 1000 * i).toArray();
    private final long[] counts =
            LongStream.rangeClosed(1, ROWS).map(i -> 1000 + 50 * i).toArray();
    private final double[] settings = new double[ROWS];
    private final int[] slots = new int[ROWS];
    private final byte[] modes = new byte[ROWS];
    private final long[] amounts = new long[ROWS];
    private final byte[] statuses = new byte[ROWS];

    RowRunTest() {
        Arrays.fill(settings, 0.1);
        Arrays.fill(slots, 2);
    }

    private static RowState state() {
        RowState state = new RowState(0);
        state.hasReading = true;
        state.time = T0;
        state.count = 1000;
        state.slot = 2;
        state.setting = 0.1;
        state.perCount = 2.5;
        return state;
    }

    private int taken() {
        return taken(state());
    }

    private int taken(RowState state) {
        return new PlainRows(LIMITS, state)
                .fill(new Rows(times, counts, settings, slots, modes), 0, ROWS, amounts, statuses);
    }

    @Test
    void rowsAboutWhichNothingIsOddAreTakenAtOnce() {
        assertThat(taken()).isEqualTo(ROWS);
        assertThat(amounts).containsOnly(125);
        assertThat(statuses).containsOnly(RowStatus.LAID.code());
    }

    @Test
    void onlyTheRowsThatAreAskedForAreTaken() {
        Rows rows = new Rows(times, counts, settings, slots, modes);
        RowState state = state();
        state.time = times[299];
        state.count = counts[299];

        assertThat(new PlainRows(LIMITS, state).fill(rows, 300, 302, amounts, statuses))
                .isEqualTo(302);
        assertThat(amounts[300]).isEqualTo(125);
        assertThat(amounts[302]).isZero();
        assertThat(amounts[299]).isZero();
    }

    @Test
    void columnsThatATruckDoesntHaveAreNotOdd() {
        assertThat(new PlainRows(LIMITS, state()).fill(Rows.of(times, counts), 0, ROWS, amounts, statuses))
                .isEqualTo(ROWS);
    }

    /** In the first block, at its end, at the beginning of another, within it, and last. */
    @ParameterizedTest
    @ValueSource(ints = {0, 3, 7, 8, 23, 24, 25, 300, 503, 504, 599})
    void whatIsOddEndsItWhereverItIs(int at) {
        long time = times[at];
        times[at] = at == 0 ? T0 : times[at - 1];
        assertThat(taken()).as("no time passed").isEqualTo(at);
        times[at] = (at == 0 ? T0 : times[at - 1]) + 10_001;
        assertThat(taken()).as("a gap").isEqualTo(at);
        times[at] = time;
        long count = counts[at];
        counts[at] = (at == 0 ? 1000 : counts[at - 1]) - 1;
        assertThat(taken()).as("fewer").isEqualTo(at);
        counts[at] = count + 56;
        assertThat(taken()).as("more than can be").isEqualTo(at);
        counts[at] = count;
        settings[at] = 0.2;
        assertThat(taken()).as("another setting").isEqualTo(at);
        settings[at] = 0.1;
        slots[at] = 1;
        assertThat(taken()).as("another slot").isEqualTo(at);
        slots[at] = 2;
        modes[at] = 1;
        assertThat(taken()).as("by hand").isEqualTo(at);
        modes[at] = 0;
        assertThat(taken()).isEqualTo(ROWS);
    }

    @Test
    void theMostThatCanBeIsNotOdd() {
        // In 1 s 100 pulses, and 5 for the clock; less what two to the power of −20 leaves of them.
        counts[0] = 1104;
        Arrays.setAll(counts, i -> i == 0 ? 1104 : 1104 + 50L * i);
        assertThat(taken()).isEqualTo(ROWS);
        counts[0] = 1000;
        for (int i = 0; i < ROWS; i++) {
            counts[i] = 1000;
        }
        assertThat(taken()).isEqualTo(ROWS);
        assertThat(statuses).containsOnly(RowStatus.STANDING.code());
        times[0] = T0 + 1;
        for (int i = 1; i < ROWS; i++) {
            times[i] = T0 + 1 + 1000L * i;
        }
        assertThat(taken()).isEqualTo(ROWS);
    }

    @Test
    void aBlockOfRowsBeforeTheEarliestTimeOrAtAnotherSettingIsNotTaken() {
        RowRun.Limits late = new RowRun.Limits(T0 + 2000, T0 + 700_000, 10_000, 0.1, 5, 1_000_000);
        assertThat(new PlainRows(late, state()).fill(Rows.of(times, counts), 0, ROWS, amounts, statuses))
                .isZero();
        Arrays.fill(settings, 0);
        assertThat(taken()).isZero();
    }

    /** Numbers have two zeros. */
    @Test
    void aCurveTakesRowsUpToItsEndsAndAShutGateHasNoSign() {
        HeldArrays curve = HeldArrays.curve(
                Long.MIN_VALUE,
                Long.MAX_VALUE,
                new CurveTable(new double[] {0, 0.1}, new double[] {0, 200}, new double[] {0.01, 0.02}),
                2,
                0,
                null);
        RowState state = state();
        state.use(curve, 0.1, 4);
        Rows rows = new Rows(times, counts, settings, slots, modes);
        Arrays.fill(settings, -0.0);
        assertThat(new CurveRows(LIMITS, state, curve, 4, 400).fill(rows, 0, ROWS, amounts, statuses))
                .isEqualTo(ROWS);
        assertThat(amounts).containsOnly(0);
        Arrays.fill(settings, curve.lowestOfCurve());
        settings[1] = curve.highestOfCurve();
        settings[2] = 0.2;
        assertThat(new CurveRows(LIMITS, state, curve, 4, 400).fill(rows, 0, ROWS, amounts, statuses))
                .isEqualTo(2);
    }

    @Test
    void theLongestTimeBetweenRowsIsNoGap() {
        long[] few = {T0 + 10_000, T0 + 20_000, T0 + 30_001};
        Rows rows = Rows.of(few, new long[] {1000, 1000, 1000});

        assertThat(new PlainRows(LIMITS, state()).fill(rows, 0, 3, amounts, statuses))
                .isEqualTo(2);
    }

    @Test
    void timesAndReadingsHaveTheirLimits() {
        RowRun.Limits narrow = new RowRun.Limits(T0 + 2000, T0 + 5000, 10_000, 0.1, 5, 1250);
        Rows rows = Rows.of(times, counts);
        assertThat(new PlainRows(narrow, state()).fill(rows, 0, 5, amounts, statuses))
                .isZero();
        RowState later = state();
        later.time = T0 + 1000;
        later.count = 1050;
        assertThat(new PlainRows(narrow, later).fill(rows, 1, 9, amounts, statuses))
                .isEqualTo(5);
        RowRun.Limits fewer = new RowRun.Limits(T0 + 2000, T0 + 9000, 10_000, 0.1, 5, 1249);
        assertThat(new PlainRows(fewer, later).fill(rows, 1, 9, amounts, statuses))
                .isEqualTo(4);
        RowRun.Limits sooner = new RowRun.Limits(T0 + 2000, T0 + 4999, 10_000, 0.1, 5, 2000);
        assertThat(new PlainRows(sooner, later).fill(rows, 1, 9, amounts, statuses))
                .isEqualTo(4);
        // Few enough that they are looked through one by one.
        assertThat(new PlainRows(narrow, later).fill(rows, 1, 3, amounts, statuses))
                .isEqualTo(3);
    }

    @Test
    void aCurveTakesRowsWhoseGateMovesAndEndsWhereItWasNotCaught() {
        HeldArrays curve = HeldArrays.curve(
                Long.MIN_VALUE,
                Long.MAX_VALUE,
                new CurveTable(
                        new double[] {0.05, 0.1, 0.15}, new double[] {100, 200, 400}, new double[] {0.01, 0.02, 0.02}),
                2,
                0,
                null);
        RowState state = state();
        state.use(curve, 0.1, 4);
        Arrays.setAll(settings, i -> 0.05 + 0.1 * (i % 5) / 4);
        Rows rows = new Rows(times, counts, settings, slots, modes);
        CurveRows run = new CurveRows(LIMITS, state, curve, 4, 400);

        assertThat(run.fill(rows, 0, 5, amounts, statuses)).isEqualTo(5);
        assertThat(Arrays.copyOf(amounts, 5)).containsExactly(2500, 3750, 5000, 7500, 10_000);
        RowSums sums = new RowSums(1, 2, 0);
        state.time = times[4];
        state.count = counts[4];
        run.add(state, sums, curve, 5);
        assertThat(state.setting).isEqualTo(settings[4]);
        assertThat(state.place).isEqualTo(2);
        assertThat(state.perCount).isEqualTo(200);
        assertThat(state.partsPerCount).isEqualTo(800);
        assertThat(state.parts).isEqualTo(800);
        assertThat(sums.intoLast()).isEqualTo(800);
        assertThat(sums.laid(0).amount()).isEqualTo(28_750);
        // 1 %, 1.5 %, 2 %, 2 %, 2 % in parts of 65 536.
        assertThat(sums.laid(0).uncertain())
                .isEqualTo((2500L * 655 + 3750L * 983 + (5000L + 7500 + 10_000) * 1311) / 65_536.0);
        // 400 to 200, 300, 400, 600, 800 parts, squared, and the last against nothing.
        long changes = 200 * 200 + 100 * 100 + 100 * 100 + 200 * 200 + 200 * 200;
        assertThat(sums.squares().longValueExact() >> 16).isEqualTo(changes + 800 * 800);
        settings[5] = 0.15000014;
        settings[6] = 0.15000016;
        assertThat(new CurveRows(LIMITS, state, curve, 4, 800).fill(rows, 5, 8, amounts, statuses))
                .isEqualTo(6);
        settings[5] = 0.04999984;
        assertThat(new CurveRows(LIMITS, state, curve, 4, 800).fill(rows, 5, 8, amounts, statuses))
                .isEqualTo(5);
        settings[5] = Double.NaN;
        assertThat(new CurveRows(LIMITS, state, curve, 4, 800).fill(rows, 5, 8, amounts, statuses))
                .isEqualTo(5);
        settings[5] = -0.1;
        assertThat(new CurveRows(LIMITS, state, curve, 4, 800).fill(rows, 5, 8, amounts, statuses))
                .isEqualTo(5);
    }

    @Test
    void itDoesntMatterHowManyRowsAreTakenAtATime() {
        RowEvaluator evaluator = Trucks.evaluator(Trucks.COUNTER, chain(START, 4, 2.5));
        Rows rows = new Rows(times, counts, new double[0], new int[0], modes);
        RowSums whole = Trucks.evaluated(evaluator, rows).sums();
        RowState state = evaluator.start();
        RowSums sums = evaluator.sums();
        for (int i = 0; i < ROWS; i += 7) {
            evaluator.evaluate(rows, i, Math.min(i + 7, ROWS), state, sums, amounts, statuses);
        }
        assertThat(sums).isEqualTo(whole);
    }
}
