package org.gritwright.core.telemetry;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.telemetry.Trucks.COUNTER;
import static org.gritwright.core.telemetry.Trucks.FROM;
import static org.gritwright.core.telemetry.Trucks.START;
import static org.gritwright.core.telemetry.Trucks.T0;
import static org.gritwright.core.telemetry.Trucks.UNTIL;
import static org.gritwright.core.telemetry.Trucks.auger;
import static org.gritwright.core.telemetry.Trucks.chain;
import static org.gritwright.core.telemetry.Trucks.evaluated;
import static org.gritwright.core.telemetry.Trucks.evaluator;
import static org.gritwright.core.telemetry.Trucks.every;
import static org.gritwright.core.telemetry.Trucks.plain;

import java.math.BigInteger;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import javax.measure.quantity.Dimensionless;
import org.gritwright.core.LiquidSamples;
import org.gritwright.core.Samples;
import org.gritwright.core.calibration.CalibrationFactor;
import org.gritwright.core.calibration.CalibrationInForce;
import org.gritwright.core.judgement.Tolerance;
import org.gritwright.core.metering.ShaftSensor;
import org.gritwright.core.observation.CalibrationPoint;
import org.gritwright.core.observation.Material;
import org.gritwright.core.spi.Setting;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.SpreadingUnits;
import org.junit.jupiter.api.Test;

/** Limits, refusals and words of rows, states, sums and pieces. */
class RowBordersTest {
    private static final String BY_SENSOR = " by sensor with 100 pulse/rev, gear ratio 1";

    private static final byte LAID = RowStatus.LAID.code();

    private static RowStatus second(RowEvaluator evaluator, long millis, long before, long count) {
        RowState state = evaluator.start();
        evaluator.step(state, evaluator.sums(), T0, before, Double.NaN, 0, 0);
        return evaluator.step(state, evaluator.sums(), T0 + millis, count, Double.NaN, 0, 0);
    }

    @Test
    void theMostThatTheShaftCanTurnIsCounted() {
        // 100 pulses a second for 2 s and the clock's second, and one more.
        assertThat(second(plain(), 2000, 0, 301)).isEqualTo(RowStatus.LAID);
        assertThat(second(plain(), 2000, 0, 302)).isEqualTo(RowStatus.LEAP);
        RowEvaluator rolling = evaluator(Trucks.rollingOverAt(10_000), auger());
        assertThat(second(rolling, 2000, 9999, 300)).isEqualTo(RowStatus.LAID);
        assertThat(second(rolling, 2000, 9999, 301)).isEqualTo(RowStatus.RESTARTED);
    }

    @Test
    void aRestartFitsFromItsShortestTimeOn() {
        RowEvaluator rolling = evaluator(Trucks.rollingOverAt(10_000), auger());
        // 9 s and the clock's second are the 10 s of a restart, and leave room for one pulse.
        assertThat(second(rolling, 9000, 9900, 1)).isEqualTo(RowStatus.ROLLED_OVER_OR_RESTARTED);
        assertThat(second(rolling, 8999, 9900, 1)).isEqualTo(RowStatus.LAID);
        assertThat(second(rolling, 9000, 9900, 2)).isEqualTo(RowStatus.LAID);
        assertThat(second(rolling, 10_000, 9900, 101)).isEqualTo(RowStatus.ROLLED_OVER_OR_RESTARTED);
        assertThat(second(rolling, 10_000, 9900, 102)).isEqualTo(RowStatus.LAID);
    }

    @Test
    void timesAreThoseThatRowsCanHave() {
        long first = FROM.toEpochMilli();
        long last = UNTIL.toEpochMilli();
        Rows rows = Rows.of(new long[] {first - 1, first, last, last + 1}, new long[] {1, 2, 3, 4});

        assertThat(evaluated(plain(), rows).statuses())
                .containsExactly(RowStatus.IMPOSSIBLE_TIME, RowStatus.FIRST, RowStatus.GAP, RowStatus.IMPOSSIBLE_TIME);
    }

    @Test
    void aGapKeepsWhatItsReadingsTell() {
        RowSums sums = evaluated(plain(), every(301, 100, 150, 120, 120)).sums();

        assertThat(sums.counts(RowStatus.GAP)).isEqualTo(50 + 120 + 0);
        assertThat(sums.unattributed()).isEqualTo(170);
    }

    @Test
    void readingsAreReckonedWithUpToTheirLimit() {
        // 2 to the power of 51 mg, at 25 000 mg a pulse.
        long most = (long) (0x1p51 / 25_000);
        assertThat(evaluated(plain(), every(1, most + 1, most, most)).statuses())
                .containsExactly(RowStatus.IMPOSSIBLE_READING, RowStatus.FIRST, RowStatus.STANDING);
        assertThat(evaluated(evaluator(Trucks.rollingOverAt(most), auger()), every(1, most, most - 1))
                        .statuses())
                .containsExactly(RowStatus.IMPOSSIBLE_READING, RowStatus.FIRST);
        assertThatThrownBy(() -> evaluator(Trucks.rollingOverAt(most + 1), auger()))
                .isInstanceOf(InvalidInputException.class)
                .hasMessageContaining("count at which the counter rolls over must be at most " + most);
    }

    @Test
    void statesAndSumsOfOthersAreRefused() {
        RowEvaluator one = plain();
        RowEvaluator two = evaluator(COUNTER, chain(START, 2, 1), chain(START, 4, 2));
        assertThatThrownBy(() -> one.step(one.start(), two.sums(), T0, 1, Double.NaN, 0, 0))
                .hasMessageContaining("sums must be of this evaluator");
        assertThatThrownBy(() -> one.evaluate(every(1, 0), 0, 1, one.start(), two.sums(), new long[1], new byte[1]))
                .hasMessageContaining("sums must be of this evaluator");
        assertThatThrownBy(() -> one.total(two.sums())).hasMessageContaining("sums must be");
        assertThatThrownBy(() -> one.left(two.sums())).hasMessageContaining("sums must be");
        assertThatThrownBy(() -> one.merged(two.sums(), one.sums())).hasMessageContaining("sums must be");
        assertThatThrownBy(() -> one.merged(one.sums(), two.sums())).hasMessageContaining("sums must be");
        // As many values, but so coarse that changes are squared in other parts.
        RowEvaluator coarse = evaluator(COUNTER, chain(START, 4, 2500));
        assertThatThrownBy(() -> one.total(coarse.sums())).hasMessageContaining("sums must be");
        // As many values of the same size.
        RowEvaluator heavier = evaluator(COUNTER, TimelineEntry.value(START, Trucks.value(Samples.AUGER_POINT, 2.6)));
        assertThatThrownBy(() -> one.total(heavier.sums())).hasMessageContaining("sums must be");
        RowEvaluator later =
                evaluator(COUNTER, TimelineEntry.value(START.plusSeconds(1), Trucks.value(Samples.AUGER_POINT, 2.5)));
        assertThatThrownBy(() -> one.total(later.sums())).hasMessageContaining("sums must be");
        RowEvaluator surer = evaluator(COUNTER, auger().withErrors(List.of(Totals.error("scale", 0.01))));
        RowEvaluator unsurer = evaluator(COUNTER, auger().withErrors(List.of(Totals.error("scale", 0.02))));
        RowEvaluator otherScale = evaluator(COUNTER, auger().withErrors(List.of(Totals.error("scale 2", 0.01))));
        assertThatThrownBy(() -> one.total(surer.sums())).hasMessageContaining("sums must be");
        assertThatThrownBy(() -> surer.total(unsurer.sums())).hasMessageContaining("sums must be");
        assertThatThrownBy(() -> surer.total(otherScale.sums())).hasMessageContaining("sums must be");
        RowState another = new RowState(3);
        assertThatThrownBy(() -> one.evaluate(every(1, 0), 0, 1, another, one.sums(), new long[1], new byte[1]))
                .hasMessageContaining("state must be one that this evaluator");
        assertThatThrownBy(() -> one.step(another, one.sums(), T0, 1, Double.NaN, 0, 0))
                .hasMessageContaining("state must be one that this evaluator");
    }

    /** Whoever compiles it, whatever the counter: a controller with another one may come into the truck. */
    @Test
    void sumsAreOfATimelineAndNotOfAnEvaluator() {
        RowSums sums = evaluated(plain(), every(1, 0, 2)).sums();
        RowEvaluator again = RowEvaluator.compile(
                Timeline.of(List.of(auger())), Trucks.rollingOverAt(4096), FROM.plusSeconds(1), UNTIL.plusSeconds(1));

        assertThat(again.total(sums).amount()).isEqualTo(50_000);
        assertThat(again.merged(sums, again.sums())).isEqualTo(sums);
    }

    @Test
    void rowsThatArentThereAreRefused() {
        RowEvaluator one = plain();
        assertThatThrownBy(() -> one.evaluate(every(1, 0), 0, 2, one.start(), one.sums(), new long[2], new byte[2]))
                .isInstanceOf(IndexOutOfBoundsException.class);
        assertThatThrownBy(() -> one.evaluate(every(1, 0), -1, 1, one.start(), one.sums(), new long[1], new byte[1]))
                .isInstanceOf(IndexOutOfBoundsException.class);
        assertThatThrownBy(() -> new Rows(new long[2], new long[2], new double[1], new int[0], new byte[0]))
                .hasMessageContaining("column of settings must be as long as the times");
        assertThatThrownBy(() -> new Rows(new long[2], new long[2], new double[0], new int[3], new byte[0]))
                .hasMessageContaining("column of slots must be");
        assertThatThrownBy(() -> new Rows(new long[2], new long[2], new double[0], new int[0], new byte[1]))
                .hasMessageContaining("column of modes must be");
    }

    @Test
    void aTruckOfGrainsIsNotOfLiquidsAndOneOfLiquidsIs() {
        CalibrationPoint brine = CalibrationPoint.of(
                Material.liquid("brine", Amounts.of(1177, SpreadingUnits.KILOGRAM_PER_CUBIC_METER)),
                LiquidSamples.METER,
                Setting.none());
        RowEvaluator liquids = evaluator(
                COUNTER,
                TimelineEntry.value(
                        START,
                        CalibrationInForce.of(
                                brine,
                                CalibrationFactor.of(Amounts.of(600, SpreadingUnits.PULSE_PER_US_GALLON)),
                                Optional.empty())));

        // What a pulse stands for is the same number, of microliters.
        TimelineEntry grains = TimelineEntry.value(START, Trucks.value(Samples.AUGER_POINT, 0.378_541_178_4 / 0.6));
        RowEvaluator asHeavy = evaluator(COUNTER, new TimelineEntry(START, "brine", grains.held(), grains.errors()));
        assertThatThrownBy(() -> liquids.total(asHeavy.sums())).hasMessageContaining("sums must be of this evaluator");
        assertThat(plain().isOfLiquids()).isFalse();
        assertThat(liquids.isOfLiquids()).isTrue();
        AppliedTotal total = liquids.total(evaluated(liquids, every(1, 0, 60)).sums());
        assertThat(total).hasToString(total.volume(SpreadingUnits.LITER).toString());
        assertThatThrownBy(() -> total.mass(SpreadingUnits.POUND)).hasMessageContaining("total must be of grains");
        AppliedTotal salt = plain().total(evaluated(plain(), every(1, 0, 60)).sums());
        assertThat(salt).hasToString(salt.mass(SpreadingUnits.KILOGRAM).toString());
        assertThatThrownBy(() -> salt.volume(SpreadingUnits.LITER)).hasMessageContaining("total must be of a liquid");
    }

    @Test
    void totalsDontOverflowUnnoticed() {
        AppliedTotal most = new AppliedTotal(false, Long.MAX_VALUE - 1, Map.of(), BigInteger.ZERO);
        AppliedTotal one = new AppliedTotal(false, 1, Map.of("scale", 2L), BigInteger.TEN);

        assertThat(most.plus(one).amount()).isEqualTo(Long.MAX_VALUE);
        assertThat(one.plus(one)).isEqualTo(new AppliedTotal(false, 2, Map.of("scale", 4L), BigInteger.valueOf(20)));
        assertThatThrownBy(() -> most.plus(one).plus(one)).hasMessageContaining("total to add must be at most");
        assertThat(one.plus(new AppliedTotal(false, 0, Map.of(), BigInteger.ZERO)))
                .isEqualTo(one);
    }

    /** One below 0 would cancel another's. */
    @Test
    void aSharedErrorOfATotalIsNotNegative() {
        assertThatThrownBy(() -> new AppliedTotal(false, 5, Map.of("scale", -3L), BigInteger.ONE))
                .isInstanceOf(InvalidInputException.class)
                .hasMessage("shared error scale must be 0 or more: -3");
    }

    @Test
    void statesAndSumsSayWhatTheyHold() {
        RowEvaluator evaluator = plain();
        RowState state = evaluator.start();
        assertThat(state).hasToString("no reading");
        RowSums sums = evaluator.sums();
        evaluator.step(state, sums, T0, 3, Double.NaN, 0, 0);
        evaluator.step(state, sums, T0 + 1000, 5, Double.NaN, 0, 0);
        assertThat(state).hasToString("5 pulse at " + (T0 + 1000) + " ms, ways []");
        assertThat(sums).hasToString("50000 laid, 2 pulse turned, 0 pulse unattributed");
        assertThat(sums.hashCode()).isNotEqualTo(evaluator.sums().hashCode());
        assertThat(sums.hashCode())
                .isEqualTo(evaluated(plain(), every(1, 3, 5)).sums().hashCode());
        PieceSums grains = new PieceSums(false);
        grains.add(3, 10, 0, 5, 0, 1);
        assertThat(grains).hasToString("1 pieces with 10 mg");
        assertThat(new PieceSums(true)).hasToString("0 pieces with 0 µL");
        assertThat(grains.isOfLiquids()).isFalse();
        assertThat(new PieceSums(true).isOfLiquids()).isTrue();
        assertThat(grains.hashCode()).isNotEqualTo(new PieceSums(false).hashCode());
    }

    @Test
    void aStateGoesOnWithACopyOfItsWays() {
        RowState state = new RowState(2);
        state.ways[1] = 7;
        RowState copy = state.copy();
        assertThat(copy.ways).containsExactly(0, 7);
        copy.ways[1] = 8;
        assertThat(state.ways[1]).isEqualTo(7);
    }

    @Test
    void wideSumsCarry() {
        WideSum sum = new WideSum();
        sum.add(0, -1);
        sum.add(0, 1);
        assertThat(sum.value()).isEqualTo(BigInteger.ONE.shiftLeft(64));
        sum.addSquare(-3);
        assertThat(sum)
                .hasToString(
                        BigInteger.ONE.shiftLeft(64).add(BigInteger.valueOf(9)).toString());
        WideSum other = new WideSum();
        other.add(1, 9);
        assertThat(other).isEqualTo(sum).hasSameHashCodeAs(sum);
        other.add(1, 0);
        assertThat(other).isNotEqualTo(sum);
        WideSum low = new WideSum();
        low.add(1, 8);
        assertThat(low).isNotEqualTo(sum).isNotEqualTo("9");
        assertThat(low.hashCode()).isEqualTo(39);
        WideSum square = new WideSum();
        square.addSquare(1L << 40);
        assertThat(square.value()).isEqualTo(BigInteger.ONE.shiftLeft(80));
    }

    private static PieceSums cut(PieceAxis axis, long... millimeters) {
        PieceSums sums = new PieceSums(false);
        long[] times = new long[millimeters.length];
        long[] amounts = new long[millimeters.length];
        byte[] statuses = new byte[millimeters.length];
        for (int i = 0; i < times.length; i++) {
            times[i] = T0 + 1000L * i;
            amounts[i] = 100;
            statuses[i] = LAID;
        }
        RoadCutter cutter = new RoadCutter(axis);
        cutter.cut(times, amounts, statuses, millimeters, 0, times.length, sums);
        assertThat(cutter.traveled())
                .isEqualTo(
                        Arrays.stream(millimeters).map(one -> Math.max(one, 0)).sum());
        return sums;
    }

    @Test
    void axesHaveTheirLongestPieceToo() {
        assertThat(cut(PieceAxis.everyLength(Amounts.of(1e6, SpreadingUnits.KILOMETER)), 0, 1000)
                        .pieces())
                .containsExactly(0L);
        assertThatThrownBy(() -> PieceAxis.everyLength(Amounts.of(1e300, SpreadingUnits.METER)))
                .isInstanceOf(InvalidInputException.class)
                .hasMessageContaining("length of a piece must be 1 mm to 1000000 km");
        PieceAxis longest = PieceAxis.everyTime(START, Amounts.of(1e12, SpreadingUnits.SECOND));
        assertThat(longest.pieceAt(T0 - 1)).isEqualTo(-1);
        assertThat(longest.endOf(T0)).isEqualTo(T0 + 1_000_000_000_000_000L);
        // The end of a piece would be beyond what milliseconds hold, and be looked for forever.
        assertThatThrownBy(() -> PieceAxis.everyTime(START, Amounts.of(1e16, SpreadingUnits.SECOND)))
                .isInstanceOf(InvalidInputException.class)
                .hasMessageContaining("time of a piece must be 1 ms to 30 000 years");
    }

    @Test
    void piecesEndBeforeTheirBorder() {
        PieceAxis axis = PieceAxis.everyLength(Amounts.of(1, SpreadingUnits.METER));
        // A row that ends at the border is all in the piece before it.
        PieceSums sums = cut(axis, 0, 1000, 500);
        assertThat(sums.pieces()).containsExactly(0L, 1L);
        assertThat(sums.covered(0)).isEqualTo(1000);
        assertThat(sums.covered(1)).isEqualTo(500);
        assertThat(cut(axis, 0, 700, Travel.UNKNOWN, 300).unplaced()).isEqualTo(100);
    }

    @Test
    void axesHaveTheirShortestPiece() {
        assertThat(PieceAxis.everyLength(Amounts.of(0.001, SpreadingUnits.METER))
                        .endOf(0))
                .isEqualTo(1);
        assertThatThrownBy(() -> PieceAxis.everyLength(Amounts.of(0.0009, SpreadingUnits.METER)))
                .isInstanceOf(InvalidInputException.class)
                .hasMessageContaining("length of a piece must be 1 mm to 1000000 km");
        assertThat(PieceAxis.everyTime(START, Amounts.of(0.001, SpreadingUnits.SECOND))
                        .endOf(T0))
                .isEqualTo(T0 + 1);
        assertThatThrownBy(() -> PieceAxis.everyTime(START, Amounts.of(0.0009, SpreadingUnits.SECOND)))
                .hasMessageContaining("time of a piece must be 1 ms to 30 000 years");
    }

    private static Instant second(long seconds) {
        return START.plusSeconds(seconds);
    }

    @Test
    void spansMayTouchAndHoldTheirBeginning() {
        PieceAxis spans = PieceAxis.spans(List.of(
                new PieceAxis.Span(second(10), second(20)),
                new PieceAxis.Span(second(20), second(30)),
                new PieceAxis.Span(second(40), second(50))));
        assertThat(List.of(9L, 10L, 19L, 20L, 30L, 39L, 40L, 50L).stream().map(s -> spans.pieceAt(T0 + 1000 * s)))
                .containsExactly(-1L, 0L, 0L, 1L, -1L, -1L, 2L, -1L);
        assertThat(List.of(9L, 10L, 20L, 30L, 40L, 50L).stream().map(s -> spans.endOf(T0 + 1000 * s)))
                .containsExactly(T0 + 10_000, T0 + 20_000, T0 + 30_000, T0 + 40_000, T0 + 50_000, Long.MAX_VALUE);
        assertThatThrownBy(() -> PieceAxis.spans(List.of(
                        new PieceAxis.Span(second(10), second(20)), new PieceAxis.Span(second(19), second(30)))))
                .hasMessageContaining("start of a span must be no earlier than the end of the one before");
        assertThatThrownBy(() -> new PieceAxis.Span(second(10), second(10)))
                .hasMessageContaining("end of a span must be later than its start");
    }

    @Test
    void columnsOfPiecesAreAsLongAsTheRows() {
        PieceSums sums = new PieceSums(false);
        RoadCutter cutter = new RoadCutter(PieceAxis.everyLength(Amounts.of(1, SpreadingUnits.METER)));
        assertThatThrownBy(() -> cutter.cut(new long[2], new long[1], new byte[2], new long[2], 0, 2, sums))
                .hasMessageContaining("column of amounts must be as long as the rows, 2");
        assertThatThrownBy(() -> cutter.cut(new long[2], new long[2], new byte[1], new long[2], 0, 2, sums))
                .hasMessageContaining("column of statuses");
        assertThatThrownBy(() -> cutter.cut(new long[2], new long[2], new byte[2], new long[1], 0, 2, sums))
                .hasMessageContaining("column of millimeters");
        assertThatThrownBy(
                        () -> RoadCutter.byIds(new long[2], new long[2], new long[1], new byte[2], new long[2], sums))
                .hasMessageContaining("column of amounts");
        assertThatThrownBy(
                        () -> RoadCutter.byIds(new long[1], new long[2], new long[2], new byte[2], new long[2], sums))
                .hasMessageContaining("column of ids");
        assertThat(sums.pieces()).isEmpty();
    }

    @Test
    void piecesMergeWhateverTheyHold() {
        PieceSums one = new PieceSums(false);
        one.add(1, 10, 1, 100, 5, 1000);
        one.addUnplaced(3);
        PieceSums other = new PieceSums(false);
        other.add(1, 20, 2, 200, 6, 2000);
        other.add(2, 7, 0, 70, 0, 700);
        other.addUnplaced(4);
        one.merge(other);

        assertThat(one.amount(1)).isEqualTo(30);
        assertThat(one.covered(1)).isEqualTo(300);
        assertThat(one.unknown(1)).isEqualTo(11);
        assertThat(one.millis(1)).isEqualTo(3000);
        assertThat(one.unplaced()).isEqualTo(7);
        assertThat(one.amount()).isEqualTo(44);
        assertThat(one.rate(1)).isCloseTo(27e-6 / 0.3, within(1e-12));
        assertThatThrownBy(() -> one.merge(new PieceSums(true)))
                .hasMessageContaining("sums to merge must be of grains");
        assertThatThrownBy(() -> new PieceSums(true).merge(one)).hasMessageContaining("of liquids");
        assertThatThrownBy(() -> one.rate(9)).hasMessageContaining("piece must be one in which a truck went somewhere");
        PieceSums same = new PieceSums(false);
        same.add(1, 30, 3, 300, 11, 3000);
        same.add(2, 7, 0, 70, 0, 700);
        same.addUnplaced(7);
        assertThat(same).isEqualTo(one).hasSameHashCodeAs(one);
        same.add(2, 0, 0, 0, 0, 1);
        assertThat(same).isNotEqualTo(one);
    }

    @Test
    void ratesAreWithinOrBelowOrAbove() {
        PieceSums sums = new PieceSums(false);
        // 100, 104, 96, 105, 95 g/m of 100, each on as many meters as its number; then a way that nobody knows about.
        long[] grams = {100, 104, 96, 105, 95};
        for (int i = 0; i < grams.length; i++) {
            long meters = i + 1L;
            sums.add(i, grams[i] * 1000 * meters, 0, meters * 1000, 10 * meters, 0);
        }
        RateShares shares =
                RateShares.of(sums, Amounts.of(100, SpreadingUnits.KILOGRAM_PER_KILOMETER), Tolerance.percent(4));

        assertThat(shares).isEqualTo(new RateShares(5000, 6000, 4000, 150));
        assertThat(shares.plus(new RateShares(1, 2, 3, 4))).isEqualTo(new RateShares(5001, 6002, 4003, 154));
        assertThat(Amounts.in(shares.shareWithin(), SpreadingUnits.PERCENT)).isCloseTo(40, within(1e-9));
        assertThatThrownBy(() -> RateShares.of(
                        new PieceSums(true),
                        Amounts.of(100, SpreadingUnits.KILOGRAM_PER_KILOMETER),
                        Tolerance.percent(4)))
                .hasMessageContaining("sums must be of grains");
        assertThatThrownBy(() -> RateShares.ofLiquid(
                        sums, Amounts.of(100, SpreadingUnits.LITER_PER_KILOMETER), Tolerance.percent(4)))
                .hasMessageContaining("sums must be of liquids");
        assertThatThrownBy(() -> new RateShares(0, 0, 0, 1).shareWithin())
                .hasMessageContaining("pieces must be some in which a truck went somewhere");
    }

    @Test
    void countersOfDistanceAndFlowCountAsFastAsTheirPulsesCome() {
        assertThat(Counter.ofDistance(
                                Amounts.of(2000, SpreadingUnits.PULSE_PER_KILOMETER),
                                Amounts.of(36, SpreadingUnits.KILOMETER_PER_HOUR))
                        .fastest())
                .isCloseTo(20, within(1e-9));
        assertThat(Counter.ofFlow(
                                Amounts.of(100, SpreadingUnits.PULSE_PER_LITER),
                                Amounts.of(30, SpreadingUnits.LITER_PER_MINUTE))
                        .fastest())
                .isCloseTo(50, within(1e-9));
        assertThatThrownBy(() -> Trucks.rollingOverAt(1)).hasMessageContaining("count at which the counter rolls over");
        assertThatThrownBy(() -> COUNTER.rollingOverAt(Amounts.of(2.5, SpreadingUnits.PULSE)))
                .hasMessageContaining("count at which the counter rolls over");
        assertThat(Trucks.rollingOverAt(2).rollsOverAt()).isPresent();
    }

    @Test
    void aWayIsTheCountsOverTheRoadSpeedValue() {
        Travel travel = Travel.counted(
                Counter.ofDistance(
                        Amounts.of(500, SpreadingUnits.PULSE_PER_KILOMETER),
                        Amounts.of(100, SpreadingUnits.KILOMETER_PER_HOUR)),
                Amounts.of(500, SpreadingUnits.PULSE_PER_KILOMETER),
                FROM,
                UNTIL);
        long[] millimeters = new long[2];
        travel.evaluate(new long[] {T0, T0 + 1000}, new long[] {7, 10}, 0, 2, travel.start(), millimeters, new byte[2]);

        assertThat(millimeters[1]).isEqualTo(6000);
    }

    @Test
    void timelinesNameWhatDoesntGoTogether() {
        assertThatThrownBy(() -> evaluator(COUNTER, chain(START, 4, 2), chain(START, 4, 3)))
                .isInstanceOf(InvalidInputException.class)
                .hasMessage(
                        "entries of slot 1 from 2026-11-01T12:00:00Z must be values of one material and one sensor at different"
                                + " settings, or one curve alone, or nothing alone: salt at 4 in" + BY_SENSOR
                                + " and salt at 4 in"
                                + BY_SENSOR);
        assertThatThrownBy(() -> Timeline.of(List.of())).hasMessageContaining("must be");
        assertThatThrownBy(() -> auger().withErrors(List.of(Totals.error("a", 0.1), Totals.error("a", 0.2))))
                .hasMessageContaining("shared errors must be each id once");
        assertThatThrownBy(() -> TimelineEntry.nothing(START, " ")).hasMessageContaining("slot");
    }

    @Test
    void aSlotHoldsOneMaterialAtATime() {
        CalibrationInForce sand = Trucks.value(
                        CalibrationPoint.of(
                                Material.of("sand", Amounts.of(100, SpreadingUnits.POUND_PER_CUBIC_FOOT)),
                                Samples.CHAIN,
                                Samples.height(2)),
                        3)
                .inSlot("1");
        assertThatThrownBy(() -> Timeline.of(List.of(chain(START, 4, 2), TimelineEntry.value(START, sand))))
                .isInstanceOf(InvalidInputException.class)
                .hasMessageEndingWith("nothing alone: sand at 2 in" + BY_SENSOR + " and salt at 4 in" + BY_SENSOR);
        assertThat(Timeline.of(List.of(chain(START, 4, 2), TimelineEntry.value(START.plusSeconds(1), sand)))
                        .slots())
                .containsExactly("1");
    }

    /** One shaft has one sensor: of pulses of two, one value would count wrong. */
    @Test
    void aSlotsValuesAreCountedByOneSensor() {
        CalibrationPoint other = CalibrationPoint.of(
                Samples.SALT,
                Samples.chainWith(ShaftSensor.of(Amounts.of(60, SpreadingUnits.PULSE_PER_REVOLUTION))),
                Samples.height(2));
        TimelineEntry entry = TimelineEntry.value(START, Trucks.value(other, 3).inSlot("1"));
        assertThatThrownBy(() -> Timeline.of(List.of(chain(START, 4, 2), entry)))
                .isInstanceOf(InvalidInputException.class)
                .hasMessageEndingWith(
                        "nothing alone: salt at 2 in by sensor with 60 pulse/rev, gear ratio 1 and salt at 4 in"
                                + BY_SENSOR);
    }

    /** A row at one of them would be at the other too. */
    @Test
    void settingsThatRowsCantTellApartHoldOneValue() {
        assertThatThrownBy(() -> Timeline.of(List.of(chain(START, 4, 2), chain(START, 4.000001, 3))))
                .isInstanceOf(InvalidInputException.class)
                .hasMessageContaining("at different settings");
        TimelineEntry millimeters = TimelineEntry.value(
                START,
                Trucks.value(Samples.chainAt(Amounts.of(101.6, SpreadingUnits.MILLIMETER)), 3)
                        .inSlot("1"));
        assertThatThrownBy(() -> Timeline.of(List.of(chain(START, 4, 2), millimeters)))
                .hasMessageEndingWith("nothing alone: salt at 4 in" + BY_SENSOR + " and salt at 101.6 mm" + BY_SENSOR);
        TimelineEntry none =
                TimelineEntry.value(START, Trucks.value(Samples.AUGER_POINT, 3).inSlot("1"));
        assertThatThrownBy(() -> Timeline.of(List.of(chain(START, 4, 2), none)))
                .hasMessageContaining("at different settings");
        assertThatThrownBy(() -> Timeline.of(List.of(none, none))).hasMessageContaining("at different settings");
        assertThat(Timeline.of(List.of(chain(START, 4.00001, 2), chain(START, 4, 2)))
                        .entries())
                .hasSize(2);
    }

    @Test
    void anEntryIsOfTheSlotThatItsValueIsHeldIn() {
        TimelineEntry.Value value =
                new TimelineEntry.Value(Trucks.value(Samples.AUGER_POINT, 3).inSlot("2"));
        assertThatThrownBy(() -> new TimelineEntry(START, "1", value, List.of()))
                .isInstanceOf(InvalidInputException.class)
                .hasMessage("slot must be the one that its value is held in, 2: 1");
        TimelineEntry.Value anywhere = new TimelineEntry.Value(Trucks.value(Samples.AUGER_POINT, 3));
        assertThat(new TimelineEntry(START, "1", anywhere, List.of()).slot()).isEqualTo("1");
    }

    /** A slot that holds nothing has no value by which it could be told. */
    @Test
    void timelinesThatDifferInASlotsNameAloneAreTwo() {
        RowEvaluator one = evaluator(COUNTER, auger(), TimelineEntry.nothing(START, "spare"));
        RowEvaluator two = evaluator(COUNTER, auger(), TimelineEntry.nothing(START, "sand"));
        RowEvaluator same = evaluator(COUNTER, auger(), TimelineEntry.nothing(START, "spare"));

        assertThatThrownBy(() -> one.total(two.sums())).hasMessageContaining("sums must be of this evaluator");
        assertThatThrownBy(() -> one.merged(one.sums(), two.sums()))
                .hasMessageContaining("sums must be of this evaluator");
        assertThat(one.merged(one.sums(), same.sums())).isEqualTo(one.sums());
    }

    /** Every row would be a gap, and all that was laid nothing. */
    @Test
    void aCounterThatCanRollOverWithinAStepOfTheRowsClockIsRefused() {
        Counter narrow = Trucks.rollingOverAt(100);
        assertThatThrownBy(() -> evaluator(narrow, auger()))
                .isInstanceOf(InvalidInputException.class)
                .hasMessage(
                        "count at which the counter rolls over must be one that takes longer to count, at the fastest, than a"
                                + " step of the rows' clock, 1 s: 100 pulse");
        assertThat(evaluated(
                                evaluator(narrow.withClockStep(Amounts.of(0.5, SpreadingUnits.SECOND)), auger()),
                                every(0.5, 90, 110 - 100, 30))
                        .sums()
                        .turned())
                .isEqualTo(40);
    }

    @Test
    void anErrorIsShownBeyondItsIntervalAndNotAtIt() {
        Measured<Dimensionless> error = Measured.of(
                Amounts.of(1.5, SpreadingUnits.PERCENT),
                Amounts.of(1, SpreadingUnits.PERCENT),
                Double.POSITIVE_INFINITY);
        AsFound found = new AsFound("1", Setting.none(), START, START.plusMillis(1), error);
        assertThat(found.isShown()).isFalse();
        assertThatThrownBy(() -> new AsFound("1", Setting.none(), START, START, error))
                .hasMessageContaining("time as found must be later than the time as left");
        assertThatThrownBy(() -> new AsFound(
                        "1",
                        Setting.none(),
                        START,
                        START.plusMillis(1),
                        Measured.once(Amounts.of(-100, SpreadingUnits.PERCENT))))
                .hasMessageContaining("calibration error must be above −100 %");
    }

    @Test
    void timesLieWithinThirtyThousandYears() {
        Instant last = Instant.ofEpochSecond(1_000_000_000_000L);
        assertThat(TimelineEntry.nothing(last, "1").from()).isEqualTo(last);
        assertThatThrownBy(() -> TimelineEntry.nothing(last.plusSeconds(1), "1"))
                .isInstanceOf(InvalidInputException.class)
                .hasMessageContaining("start of an entry must be within 30 000 years of 1970");
        assertThat(TimelineEntry.nothing(Instant.ofEpochSecond(-1_000_000_000_000L), "1")
                        .from())
                .isBefore(START);
    }

    @Test
    void queuesHaveTheirLimits() {
        RowEvaluator evaluator = plain();
        RowState state = evaluator.start();
        RowSums sums = evaluator.sums();
        RowQueue one = new RowQueue(Amounts.of(100, SpreadingUnits.SECOND), 1);
        one.add(T0, 0, Double.NaN, 0, 0, evaluator, state, sums);
        one.add(T0 + 1000, 10, Double.NaN, 0, 0, evaluator, state, sums);
        assertThat(one.waiting()).isEqualTo(1);
        assertThat(sums.rows(RowStatus.FIRST)).isEqualTo(1);
        assertThat(new RowQueue(Amounts.of(0, SpreadingUnits.SECOND), 1_000_000).waiting())
                .isZero();
        assertThatThrownBy(() -> new RowQueue(Amounts.of(0, SpreadingUnits.SECOND), 0))
                .hasMessageContaining("number of rows that wait must be 1 to 1000000");
        assertThatThrownBy(() -> new RowQueue(Amounts.of(0, SpreadingUnits.SECOND), 1_000_001))
                .hasMessageContaining("number of rows that wait");
    }

    @Test
    void whatACurveIsOffByShrinksAsAFoundErrorGrows() {
        RowSums sums = new RowSums(1, 0, 0);
        // A quarter of the error was there.
        sums.share(0, 1, 1000, true, 655, 16_384);
        sums.share(0, 1, 1000, false, 655, 0);

        assertThat(sums.laid(0).uncertain()).isEqualTo(1000 * 491 / 65_536.0);
        assertThat(sums.laid(0).grown()).isEqualTo(250);
        assertThat(sums.gone(0).uncertain()).isEqualTo(1000 * (491 + 655) / 65_536.0);
        assertThat(sums.gone(0).amount()).isEqualTo(2000);
        assertThat(sums.turned(0)).isEqualTo(2);
    }

    @Test
    void anErrorGrowsFromWhereItsWayBegins() {
        Drift drift = new Drift(Onset.Gradually.WITH_TURNS, 0.25, 10, 100);
        assertThat(drift.trueUpTo(60)).isCloseTo(100 * Math.log(1.125) / 0.25, within(1e-9));
        assertThat(drift.trueAt(60)).isCloseTo(1 / 1.125, within(1e-12));
        assertThat(drift.grown(60)).isEqualTo(32_768);
        // Before its way there is none of it, behind it all.
        assertThat(drift.trueAt(9)).isEqualTo(1);
        assertThat(drift.grown(9)).isZero();
        assertThat(drift.trueAt(111)).isEqualTo(1 / 1.25);
        assertThat(drift.grown(111)).isEqualTo(65_536);
        assertThat(drift.trueUpTo(110)).isEqualTo(100 * Math.log1p(0.25) / 0.25);
        assertThat(drift.trueUpTo(160)).isEqualTo(drift.trueUpTo(110) + 50 / 1.25);
    }

    @Test
    void columnsOfResultsAreAsLongAsTheRows() {
        RowEvaluator one = plain();
        assertThatThrownBy(() -> one.evaluate(every(1, 0, 1), 0, 2, one.start(), one.sums(), new long[1], new byte[2]))
                .hasMessageContaining("column of amounts must be as long as the rows, 2");
        assertThatThrownBy(() -> one.evaluate(every(1, 0, 1), 0, 2, one.start(), one.sums(), new long[2], new byte[1]))
                .hasMessageContaining("column of statuses must be as long as the rows, 2");
    }

    @Test
    void entriesMayComeInAnyOrderAndAnErrorIsOfItsSetting() {
        Timeline timeline = Timeline.of(List.of(chain(START, 4, 2), chain(START, 2, 1)));
        Timeline corrected = timeline.correctedBackBy(
                new AsFound(
                        "1",
                        Setting.height(Amounts.of(4, SpreadingUnits.INCH)),
                        START,
                        START.plusSeconds(100),
                        Measured.of(
                                Amounts.of(25, SpreadingUnits.PERCENT),
                                Amounts.of(1, SpreadingUnits.PERCENT),
                                Double.POSITIVE_INFINITY)),
                new Onset.AtOnce(START));
        RowEvaluator evaluator = RowEvaluator.compile(corrected, COUNTER, FROM, UNTIL);
        Rows rows = new Rows(
                new long[] {T0, T0 + 1000, T0 + 2000},
                new long[] {0, 100, 200},
                new double[] {0.1016, 0.1016, 0.0508},
                new int[0],
                new byte[0]);

        assertThat(evaluated(evaluator, rows).amounts()).containsExactly(0L, 1_600_000L, 1_000_000L);
    }

    @Test
    void grainsAndLiquidsHaveTimelinesOfTheirOwn() {
        assertThatThrownBy(() -> Timeline.of(List.of(auger(), brine(600))))
                .hasMessageContaining("timeline must be of grains alone or of liquids alone");
        assertThatThrownBy(() -> brine(1e-3))
                .hasMessageContaining("calibration in force must be at most 1 t or 1 m³ per pulse")
                .hasMessageContaining("µL per pulse");
    }

    private static TimelineEntry brine(double pulsesPerGallon) {
        return TimelineEntry.value(
                START,
                CalibrationInForce.of(
                        CalibrationPoint.of(
                                Material.liquid("brine", Amounts.of(1177, SpreadingUnits.KILOGRAM_PER_CUBIC_METER)),
                                LiquidSamples.METER,
                                Setting.none()),
                        CalibrationFactor.of(Amounts.of(pulsesPerGallon, SpreadingUnits.PULSE_PER_US_GALLON)),
                        Optional.empty()));
    }

    @Test
    void aLiquidsRowIsExplainedInMicroliters() {
        RowEvaluator evaluator = evaluator(COUNTER, brine(600));
        RowState state = evaluator.start();
        evaluator.step(state, evaluator.sums(), T0, 0, Double.NaN, 0, 0);

        // 3.785411784 L ÷ 600.
        assertThat(evaluator.explain(state, T0 + 1000, 60, Double.NaN, 0, 0).toString())
                .contains("a pulse stands for: 6.309")
                .contains("mL/pulse")
                .endsWith("378541 µL − 0 µL = 378541 µL");
    }

    @Test
    void ratesAreOfWhatWasLaid() {
        PieceSums liquids = new PieceSums(true);
        liquids.add(0, 5_000_000, 0, 1_000_000, 0, 0);
        PieceSums grains = new PieceSums(false);
        grains.add(0, 5_000_000, 0, 1_000_000, 0, 0);

        assertThat(Amounts.in(
                        liquids.liquidRate(0, SpreadingUnits.LITER_PER_KILOMETER), SpreadingUnits.LITER_PER_KILOMETER))
                .isCloseTo(5, within(1e-12));
        assertThat(Amounts.in(
                        grains.rate(0, SpreadingUnits.KILOGRAM_PER_KILOMETER), SpreadingUnits.KILOGRAM_PER_KILOMETER))
                .isCloseTo(5, within(1e-12));
        assertThatThrownBy(() -> liquids.rate(0, SpreadingUnits.KILOGRAM_PER_KILOMETER))
                .hasMessageContaining("sums must be of grains");
        assertThatThrownBy(() -> grains.liquidRate(0, SpreadingUnits.LITER_PER_KILOMETER))
                .hasMessageContaining("sums must be of liquids");
    }
}
