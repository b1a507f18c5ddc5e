package org.gritwright.core.telemetry;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.telemetry.Trucks.FROM;
import static org.gritwright.core.telemetry.Trucks.START;
import static org.gritwright.core.telemetry.Trucks.T0;
import static org.gritwright.core.telemetry.Trucks.UNTIL;
import static org.gritwright.core.telemetry.Trucks.every;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.Collectors;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.gritwright.core.judgement.Tolerance;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.SpreadingUnits;
import org.junit.jupiter.api.Test;

class PiecesTest {
    /** 2000 pulses a km: 500 mm each. */
    private final Travel travel = Travel.counted(
            Counter.ofDistance(
                    Amounts.of(2000, SpreadingUnits.PULSE_PER_KILOMETER),
                    Amounts.of(100, SpreadingUnits.KILOMETER_PER_HOUR)),
            Amounts.of(2000, SpreadingUnits.PULSE_PER_KILOMETER),
            FROM,
            UNTIL);

    private static final byte LAID = RowStatus.LAID.code();

    private static PieceAxis meters(double length) {
        return PieceAxis.everyLength(Amounts.of(length, SpreadingUnits.METER));
    }

    private static PieceSums cut(PieceAxis axis, long[] times, long[] amounts, byte[] statuses, long[] millimeters) {
        PieceSums sums = new PieceSums(false);
        new RoadCutter(axis).cut(times, amounts, statuses, millimeters, 0, times.length, sums);
        return sums;
    }

    private static long[] seconds(long... seconds) {
        return Arrays.stream(seconds).map(s -> T0 + 1000 * s).toArray();
    }

    @Test
    void axesThatDifferHaveOtherHashes() {
        assertThat(PieceAxis.everyLength(Amounts.of(1, SpreadingUnits.MILE)))
                .hasSameHashCodeAs(PieceAxis.everyLength(Amounts.of(5280, SpreadingUnits.FOOT)))
                .doesNotHaveSameHashCodeAs(PieceAxis.everyLength(Amounts.of(2, SpreadingUnits.MILE)));
    }

    @Test
    void distancesAreWholeMillimetersAndWhatIsntKnownIsnt() {
        Rows rows = every(1, 0, 20, 40, 40, 5, 25, 2000, 2020);
        long[] millimeters = new long[rows.size()];
        byte[] statuses = new byte[rows.size()];
        travel.evaluate(rows.times(), rows.counts(), 0, rows.size(), travel.start(), millimeters, statuses);

        assertThat(millimeters)
                .containsExactly(Travel.UNKNOWN, 10_000, 10_000, 0, Travel.UNKNOWN, 10_000, Travel.UNKNOWN, 10_000);
    }

    @Test
    void aRowThatSpansABorderIsSplitInProportionToItsLength() {
        PieceSums sums =
                cut(meters(10), seconds(0, 1, 2), new long[] {0, 300, 1001}, new byte[] {LAID, LAID, LAID}, new long[] {
                    0, 6000, 20_000
                });

        assertThat(sums.pieces()).containsExactly(0L, 1L, 2L);
        // 1001 mg on 20 m: 4 m, 10 m and 6 m.
        assertThat(List.of(sums.amount(0), sums.amount(1), sums.amount(2))).containsExactly(300L + 200, 501L, 300L);
        assertThat(List.of(sums.covered(0), sums.covered(1), sums.covered(2))).containsExactly(10_000L, 10_000L, 6000L);
        assertThat(sums.amount()).isEqualTo(1301);
        assertThat(sums.millis(1)).isEqualTo(500);
        assertThat(sums.amount(7)).isZero();
    }

    @Test
    void inTimeItIsSplitInProportionToItsTime() {
        PieceSums sums = cut(
                PieceAxis.everyTime(START, Amounts.of(10, SpreadingUnits.SECOND)),
                seconds(-5, 5, 25),
                new long[] {0, 100, 200},
                new byte[] {LAID, LAID, LAID},
                new long[] {0, 1000, 2000});

        assertThat(sums.pieces()).containsExactly(-1L, 0L, 1L, 2L);
        assertThat(List.of(sums.amount(-1), sums.amount(0), sums.amount(1), sums.amount(2)))
                .containsExactly(50L, 100L, 100L, 50L);
        assertThat(sums.covered(1)).isEqualTo(1000);
        assertThat(sums.millis(1)).isEqualTo(10_000);
    }

    @Test
    void stormsAreSpansAndTheRestIsOutside() {
        PieceAxis storms = PieceAxis.spans(List.of(
                new PieceAxis.Span(START.plusSeconds(10), START.plusSeconds(20)),
                new PieceAxis.Span(START.plusSeconds(20), START.plusSeconds(30))));
        PieceSums sums =
                cut(storms, seconds(0, 40), new long[] {0, 400}, new byte[] {LAID, LAID}, new long[] {0, 4000});

        assertThat(sums.pieces()).containsExactly(PieceAxis.OUTSIDE, 0L, 1L);
        assertThat(List.of(sums.amount(-1), sums.amount(0), sums.amount(1))).containsExactly(200L, 100L, 100L);
        assertThatThrownBy(() -> PieceAxis.spans(List.of(
                        new PieceAxis.Span(START, START.plusSeconds(20)),
                        new PieceAxis.Span(START.plusSeconds(19), START.plusSeconds(30)))))
                .isInstanceOf(InvalidInputException.class)
                .hasMessageContaining("start of a span must be no earlier than the end of the one before");
        assertThatThrownBy(() -> new PieceAxis.Span(START, START)).hasMessageContaining("end of a span must be later");
    }

    @Test
    void whatIsNotForTheRoadOrNotKnownIsNotLaidAndItsWayIsUnknown() {
        PieceSums sums = cut(
                meters(100),
                seconds(0, 1, 2, 3, 4),
                new long[] {0, 100, 900, 0, 50},
                new byte[] {LAID, LAID, RowStatus.UNLOADED.code(), RowStatus.GAP.code(), LAID},
                new long[] {0, 1000, 2000, 3000, Travel.UNKNOWN});

        assertThat(sums.amount(0)).isEqualTo(100);
        assertThat(sums.covered(0)).isEqualTo(1000);
        assertThat(sums.unknown(0)).isEqualTo(5000);
        assertThat(sums.unplaced()).isEqualTo(50);
        assertThat(sums.amount()).isEqualTo(150);
    }

    @Test
    void aRowOutOfOrderDoesntMoveTheTruck() {
        PieceSums sums = cut(
                PieceAxis.everyTime(START, Amounts.of(1, SpreadingUnits.MINUTE)),
                seconds(0, 70, 10, 80),
                new long[] {0, 70, 0, 10},
                new byte[] {LAID, LAID, RowStatus.OUT_OF_ORDER.code(), LAID},
                new long[] {0, 70, Travel.UNKNOWN, 10});

        assertThat(List.of(sums.amount(0), sums.amount(1))).containsExactly(60L, 20L);
        assertThat(List.of(sums.millis(0), sums.millis(1))).containsExactly(60_000L, 20_000L);
    }

    @Test
    void aRowThatIsPassedOverGoesWithTheNext() {
        PieceSums sums = cut(
                meters(10),
                seconds(0, 1, 2),
                new long[] {0, 0, 300},
                new byte[] {LAID, RowStatus.IMPOSSIBLE_READING.code(), LAID},
                new long[] {0, 5000, 10_000});

        assertThat(List.of(sums.amount(0), sums.amount(1))).containsExactly(200L, 100L);
        assertThat(List.of(sums.covered(0), sums.covered(1))).containsExactly(10_000L, 5000L);
        assertThat(List.of(sums.millis(0), sums.millis(1))).containsExactly(1333L, 667L);
    }

    /** A summer between two rows is one row, and not a piece a second. */
    @Test
    void aGapIsNoTimeInAnyPiece() {
        PieceSums sums = cut(
                PieceAxis.everyTime(START, Amounts.of(1, SpreadingUnits.SECOND)),
                seconds(0, 20_000_000),
                new long[] {0, 0},
                new byte[] {LAID, RowStatus.GAP.code()},
                new long[] {0, 700});

        assertThat(sums.pieces()).containsExactly(0L, 20_000_000L);
        assertThat(sums.millis(20_000_000)).isZero();
        assertThat(sums.unknown(20_000_000)).isEqualTo(700);
    }

    @Test
    void whatIsLaidOnAWayThatNobodyKnowsIsInNoRate() {
        PieceSums sums = cut(
                PieceAxis.everyTime(START, Amounts.of(1, SpreadingUnits.MINUTE)),
                seconds(0, 10, 20),
                new long[] {0, 5_000_000, 9_000_000},
                new byte[] {LAID, LAID, LAID},
                new long[] {0, 100_000, Travel.UNKNOWN});

        assertThat(sums.amount(0)).isEqualTo(14_000_000);
        assertThat(Amounts.in(sums.rate(0, SpreadingUnits.GRAM_PER_METER), SpreadingUnits.GRAM_PER_METER))
                .isCloseTo(50, within(1e-12));
    }

    /** As an odometer's that was set back, or 32 bits that went round. */
    @Test
    void aWayThatCantBeIsOneThatNobodyKnows() {
        for (long way : new long[] {-2, Long.MIN_VALUE, 1_000_000_000_001L, Long.MAX_VALUE}) {
            long[] times = seconds(0, 10, 20);
            long[] amounts = {0, 5_000_000, 9_000_000};
            byte[] statuses = {LAID, LAID, LAID};
            PieceSums byLength = cut(meters(100), times, amounts, statuses, new long[] {0, 99_000, way});
            assertThat(byLength.pieces()).containsExactly(0L);
            assertThat(byLength.unplaced()).isEqualTo(9_000_000);
            assertThat(byLength.amount()).isEqualTo(14_000_000);

            PieceSums byIds = new PieceSums(false);
            RoadCutter.byIds(new long[3], times, amounts, statuses, new long[] {0, 100_000, way}, byIds);
            assertThat(byIds.amount(0)).isEqualTo(14_000_000);
            assertThat(Amounts.in(byIds.rate(0, SpreadingUnits.GRAM_PER_METER), SpreadingUnits.GRAM_PER_METER))
                    .isCloseTo(50, within(1e-12));

            byte late = RowStatus.OUT_OF_ORDER.code();
            PieceSums passedOver =
                    cut(meters(100), times, new long[3], new byte[] {LAID, late, LAID}, new long[] {0, way, 99_000});
            assertThat(passedOver.covered(0)).isEqualTo(99_000);
        }
        long[] farthest = {0, 1_000_000_000_000L};
        assertThat(cut(meters(1e9), seconds(0, 10), new long[2], new byte[] {LAID, LAID}, farthest)
                        .covered(1))
                .isZero();
        assertThat(cut(meters(1e9), seconds(0, 10), new long[2], new byte[] {LAID, LAID}, farthest)
                        .covered(0))
                .isEqualTo(1_000_000_000_000L);
    }

    @Test
    void rowsThatCantBeAreRefusedBeforeAnyIsAdded() {
        long[] ways = {0, 1000, 1000};
        byte[] statuses = {LAID, LAID, LAID};
        PieceSums sums = new PieceSums(false);
        RoadCutter cutter = new RoadCutter(meters(100));
        long[] negative = {0, 5, -1};
        assertThatThrownBy(() -> cutter.cut(seconds(0, 1, 2), negative, statuses, ways, 0, 3, sums))
                .isInstanceOf(InvalidInputException.class)
                .hasMessage("amount of row 2 must be 0 or more: -1");
        assertThatThrownBy(() -> RoadCutter.byIds(new long[3], seconds(0, 1, 2), negative, statuses, ways, sums))
                .hasMessage("amount of row 2 must be 0 or more: -1");
        for (byte code : new byte[] {-1, 20, Byte.MIN_VALUE, Byte.MAX_VALUE}) {
            byte[] unknown = {LAID, LAID, code};
            assertThatThrownBy(() -> cutter.cut(seconds(0, 1, 2), new long[3], unknown, ways, 0, 3, sums))
                    .hasMessage("row status must be 0 to 19: " + code);
            assertThatThrownBy(() -> RoadCutter.byIds(new long[3], seconds(0, 1, 2), new long[3], unknown, ways, sums))
                    .hasMessage("row status must be 0 to 19: " + code);
        }
        assertThat(sums.pieces()).isEmpty();
        assertThat(cutter.traveled()).isZero();
        // What lies before and after the rows is not theirs.
        cutter.cut(seconds(0, 1, 2), new long[] {-1, 5, -1}, new byte[] {-1, LAID, -1}, ways, 1, 2, sums);
        assertThat(sums.amount()).isEqualTo(5);
    }

    /** Of the road before, what was passed over goes with the row that it was counted in. */
    @Test
    void aNewRoadBeginsWithPieceZeroAndLosesNothing() {
        byte late = RowStatus.OUT_OF_ORDER.code();
        long[] times = seconds(0, 10, 9, 20, 30);
        long[] amounts = {0, 50, 0, 70, 90};
        byte[] statuses = {LAID, LAID, late, LAID, LAID};
        long[] millimeters = {0, 150_000, 5_000, 60_000, 80_000};
        RoadCutter cutter = new RoadCutter(meters(100));
        PieceSums first = new PieceSums(false);
        PieceSums second = new PieceSums(false);
        cutter.cut(times, amounts, statuses, millimeters, 0, 3, first);
        cutter.beginAgain();
        cutter.cut(times, amounts, statuses, millimeters, 3, 5, second);

        assertThat(first.pieces()).containsExactly(0L, 1L);
        assertThat(first.covered(0) + first.covered(1)).isEqualTo(150_000);
        assertThat(second.pieces()).containsExactly(0L, 1L);
        assertThat(second.covered(0) + second.covered(1)).isEqualTo(145_000);
        assertThat(second.millis(0) + second.millis(1)).isEqualTo(20_000);
        assertThat(first.amount() + second.amount()).isEqualTo(210);
        assertThat(cutter.traveled()).isEqualTo(145_000);
    }

    /** Piece 3 of 100 m and piece 3 of 1 km are two places. */
    @Test
    void sumsAreOfPiecesOfOneKind() {
        List<PieceAxis> axes = List.of(
                meters(100),
                meters(1000),
                PieceAxis.everyTime(START, Amounts.of(1, SpreadingUnits.HOUR)),
                PieceAxis.everyTime(START, Amounts.of(24, SpreadingUnits.HOUR)),
                PieceAxis.everyTime(START.plusSeconds(1), Amounts.of(1, SpreadingUnits.HOUR)),
                PieceAxis.spans(List.of(new PieceAxis.Span(START, START.plusSeconds(9)))),
                PieceAxis.spans(List.of(new PieceAxis.Span(START, START.plusSeconds(8)))),
                PieceAxis.spans(List.of()));
        List<PieceSums> sums = axes.stream().map(PiecesTest::ofOneRow).collect(Collectors.toCollection(ArrayList::new));
        PieceSums byIds = new PieceSums(false);
        RoadCutter.byIds(new long[1], seconds(0), new long[1], new byte[] {LAID}, new long[1], byIds);
        sums.add(byIds);
        for (int i = 0; i < sums.size(); i++) {
            for (int j = 0; j < sums.size(); j++) {
                PieceSums one = sums.get(i);
                PieceSums other = sums.get(j);
                if (i != j) {
                    assertThatThrownBy(() -> one.merge(other))
                            .isInstanceOf(InvalidInputException.class)
                            .hasMessageContaining("sums of pieces must be cut as those before");
                }
            }
        }
        PieceSums first = sums.get(0);
        assertThatThrownBy(() -> first.merge(sums.get(2)))
                .hasMessage("sums of pieces must be cut as those before, every 100000 mm: every 3600000 ms from "
                        + "2026-11-01T12:00:00Z");
        assertThatThrownBy(() -> byIds.merge(sums.get(5)))
                .hasMessage("sums of pieces must be cut as those before, by ids: 1 spans of time");
        first.merge(ofOneRow(meters(100)));
        first.merge(new PieceSums(false));
        assertThat(first.amount()).isEqualTo(14);
        PieceSums fresh = new PieceSums(false);
        fresh.merge(first);
        assertThat(fresh).isEqualTo(first);
        assertThat(meters(100)).isEqualTo(meters(100)).hasSameHashCodeAs(meters(100));
    }

    private static PieceSums ofOneRow(PieceAxis axis) {
        return cut(axis, seconds(0), new long[] {7}, new byte[] {LAID}, new long[] {5});
    }

    @Test
    void idsTakeWholeRows() {
        PieceSums sums = new PieceSums(false);
        RoadCutter.byIds(
                new long[] {7, 7, 12},
                seconds(0, 1, 2),
                new long[] {0, 10, 20},
                new byte[] {LAID, LAID, LAID},
                new long[] {Travel.UNKNOWN, 1000, 4000},
                sums);

        assertThat(sums.pieces()).containsExactly(7L, 12L);
        assertThat(sums.amount(12)).isEqualTo(20);
        assertThat(Amounts.in(sums.rate(12, SpreadingUnits.GRAM_PER_METER), SpreadingUnits.GRAM_PER_METER))
                .isCloseTo(0.005, within(1e-15));
        assertThat(sums.millis(12)).isEqualTo(1000);
        assertThatThrownBy(() -> sums.rate(8, SpreadingUnits.GRAM_PER_METER))
                .hasMessage("piece must be one in which a truck went somewhere: 8");
        assertThatThrownBy(() -> sums.liquidRate(7, SpreadingUnits.LITER_PER_KILOMETER))
                .hasMessage("sums must be of liquids: of grains");
        assertThatThrownBy(
                        () -> RoadCutter.byIds(new long[1], new long[2], new long[2], new byte[2], new long[2], sums))
                .hasMessage("column of ids must be as long as the times, 2: 1");
    }

    /** As if they had been cut at the roads, and all of the way somewhere. */
    @Test
    void whatIsPassedOverGoesWithTheNextRowByIdsToo() {
        byte late = RowStatus.OUT_OF_ORDER.code();
        long[] ids = {7, 7, 7, 12, 12, 12};
        long[] times = seconds(0, 10, 9, 20, 30, 25);
        long[] amounts = {0, 50, 0, 70, 90, 0};
        byte[] statuses = {LAID, LAID, late, LAID, LAID, late};
        long[] millimeters = {0, 150_000, 5_000, 60_000, 80_000, 3_000};
        PieceSums byIds = new PieceSums(false);
        RoadCutter.byIds(ids, times, amounts, statuses, millimeters, byIds);

        RoadCutter cutter = new RoadCutter(meters(1000));
        PieceSums first = new PieceSums(false);
        PieceSums second = new PieceSums(false);
        cutter.cut(times, amounts, statuses, millimeters, 0, 3, first);
        cutter.beginAgain();
        cutter.cut(times, amounts, statuses, millimeters, 3, 6, second);
        assertThat(byIds.covered(7)).isEqualTo(first.covered(0)).isEqualTo(150_000);
        assertThat(byIds.covered(12)).isEqualTo(second.covered(0)).isEqualTo(145_000);
        assertThat(byIds.millis(7)).isEqualTo(first.millis(0)).isEqualTo(10_000);
        assertThat(byIds.millis(12)).isEqualTo(second.millis(0)).isEqualTo(20_000);
        assertThat(byIds.amount(7)).isEqualTo(50);
        assertThat(byIds.amount(12)).isEqualTo(160);
        // No row comes after the last one.
        assertThat(byIds.unknown(12)).isEqualTo(3_000);
    }

    /** 300 lb/mi are 84.55 g/m. */
    @Test
    void theShareOfTheWayWithinATolerance() {
        PieceSums sums = cut(
                meters(100),
                seconds(0, 10, 20, 30, 40),
                new long[] {0, 8_455_000, 9_500_000, 7_000_000, 8_200_000},
                new byte[] {LAID, LAID, LAID, LAID, LAID},
                new long[] {0, 100_000, 100_000, 100_000, 50_000});
        RateShares shares = RateShares.of(sums, Amounts.of(300, SpreadingUnits.POUND_PER_MILE), Tolerance.percent(10));

        assertThat(shares).isEqualTo(new RateShares(100_000, 100_000, 150_000, 0));
        assertThat(Amounts.in(shares.plus(shares).shareWithin(), SpreadingUnits.PERCENT))
                .isCloseTo(28.5714, within(1e-3));
        assertThatThrownBy(() -> new RateShares(0, 0, 0, 5).shareWithin()).hasMessageContaining("pieces must be some");
        assertThatThrownBy(() -> RateShares.ofLiquid(
                        sums, Amounts.of(1, SpreadingUnits.LITER_PER_KILOMETER), Tolerance.percent(1)))
                .hasMessage("sums must be of liquids: of grains");
        assertThatThrownBy(() -> new RateShares(-1, 0, 0, 0)).isInstanceOf(InvalidInputException.class);
    }

    @Property(tries = 300)
    void allPiecesAreAllRowsAndItDoesntMatterHowRowsAreFed(
            @ForAll long seed, @ForAll @IntRange(min = 1, max = 100) int size, @ForAll boolean byTime) {
        SplittableRandom random = new SplittableRandom(seed);
        long[] times = new long[size];
        long[] amounts = new long[size];
        byte[] statuses = new byte[size];
        long[] millimeters = new long[size];
        long time = T0;
        for (int i = 0; i < size; i++) {
            times[i] = time += random.nextInt(30_000);
            amounts[i] = random.nextLong(1L << 40);
            statuses[i] = LAID;
            millimeters[i] = random.nextInt(40_000);
        }
        PieceAxis axis = byTime
                ? PieceAxis.everyTime(START, Amounts.of(1 + random.nextInt(20), SpreadingUnits.SECOND))
                : meters(0.5 + random.nextInt(30));
        PieceSums whole = cut(axis, times, amounts, statuses, millimeters);
        RoadCutter cutter = new RoadCutter(axis);
        PieceSums fed = new PieceSums(false);
        PieceSums early = new PieceSums(false);
        int half = random.nextInt(size + 1);
        cutter.cut(times, amounts, statuses, millimeters, 0, half, early);
        cutter.cut(times, amounts, statuses, millimeters, half, size, fed);
        fed.merge(early);

        assertThat(whole.amount()).isEqualTo(Arrays.stream(amounts).sum());
        assertThat(whole.pieces().stream().mapToLong(whole::covered).sum())
                .isEqualTo(Arrays.stream(millimeters).sum());
        assertThat(whole.pieces().stream().mapToLong(whole::millis).sum()).isEqualTo(times[size - 1] - times[0]);
        assertThat(fed).isEqualTo(whole).hasSameHashCodeAs(whole);
        assertThat(whole.pieces())
                .allSatisfy(piece -> assertThat(whole.amount(piece)).isNotNegative());
    }

    /** 300 lb on a mile. */
    @Test
    void aRateIsPerDistanceTheTruckWent() {
        PieceSums sums = cut(
                meters(1609.344), seconds(0, 100), new long[] {0, 136_077_711}, new byte[] {LAID, LAID}, new long[] {
                    0, 1_609_344
                });

        assertThat(Amounts.in(sums.rate(0, SpreadingUnits.POUND_PER_MILE), SpreadingUnits.POUND_PER_MILE))
                .isCloseTo(300, within(1e-6));
    }
}
