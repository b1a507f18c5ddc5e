package org.gritwright.core.telemetry;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.gritwright.core.telemetry.RowStatus.BLAST;
import static org.gritwright.core.telemetry.RowStatus.DUPLICATE;
import static org.gritwright.core.telemetry.RowStatus.FIRST;
import static org.gritwright.core.telemetry.RowStatus.GAP;
import static org.gritwright.core.telemetry.RowStatus.IMPOSSIBLE_READING;
import static org.gritwright.core.telemetry.RowStatus.IMPOSSIBLE_TIME;
import static org.gritwright.core.telemetry.RowStatus.LAID;
import static org.gritwright.core.telemetry.RowStatus.LAID_BY_HAND;
import static org.gritwright.core.telemetry.RowStatus.LEAP;
import static org.gritwright.core.telemetry.RowStatus.NO_CALIBRATION;
import static org.gritwright.core.telemetry.RowStatus.NO_SUCH_SETTING;
import static org.gritwright.core.telemetry.RowStatus.OUT_OF_ORDER;
import static org.gritwright.core.telemetry.RowStatus.PASSED;
import static org.gritwright.core.telemetry.RowStatus.RESTARTED;
import static org.gritwright.core.telemetry.RowStatus.ROLLED_OVER_OR_RESTARTED;
import static org.gritwright.core.telemetry.RowStatus.STANDING;
import static org.gritwright.core.telemetry.RowStatus.TURNED_EMPTY;
import static org.gritwright.core.telemetry.RowStatus.UNKNOWN_MODE;
import static org.gritwright.core.telemetry.RowStatus.UNKNOWN_SLOT;
import static org.gritwright.core.telemetry.RowStatus.UNLOADED;
import static org.gritwright.core.telemetry.Trucks.COUNTER;
import static org.gritwright.core.telemetry.Trucks.START;
import static org.gritwright.core.telemetry.Trucks.T0;
import static org.gritwright.core.telemetry.Trucks.auger;
import static org.gritwright.core.telemetry.Trucks.chain;
import static org.gritwright.core.telemetry.Trucks.evaluated;
import static org.gritwright.core.telemetry.Trucks.evaluator;
import static org.gritwright.core.telemetry.Trucks.every;
import static org.gritwright.core.telemetry.Trucks.plain;
import static org.gritwright.core.telemetry.Trucks.rollingOverAt;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.ObjectInputStream;
import java.io.ObjectOutputStream;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import org.gritwright.core.Samples;
import org.gritwright.core.calibration.CalibrationInForce;
import org.gritwright.core.calibration.Since;
import org.gritwright.core.metering.NoSensor;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.SpreadingUnits;
import org.junit.jupiter.api.Test;

class RowEvaluatorTest {
    private static final double INCH = 0.0254;

    @Test
    void aPulseIsTheCalibrationOverItsPulses() {
        Trucks.Done done = evaluated(plain(), every(1, 500, 510, 530, 530, 531));

        assertThat(done.statuses()).containsExactly(FIRST, LAID, LAID, STANDING, LAID);
        assertThat(done.amounts()).containsExactly(0L, 250_000L, 500_000L, 0L, 25_000L);
        assertThat(done.sums().laid()).isEqualTo(775_000);
        assertThat(done.sums().turned()).isEqualTo(31);
        assertThat(done.sums().unattributed()).isZero();
        assertThat(done.sums().rows(LAID)).isEqualTo(3);
    }

    /** 1/3 kg/rev are 3333.33 mg a pulse. */
    @Test
    void roundingDoesntAccumulate() {
        RowEvaluator third = evaluator(COUNTER, chain(START, 4, 1 / 3.0));

        assertThat(evaluated(third, every(1, 0, 1, 2, 3, 4)).amounts()).containsExactly(0L, 3333L, 3334L, 3333L, 3333L);
    }

    @Test
    void aCounterOfAKnownWidthRollsOver() {
        Trucks.Done done = evaluated(evaluator(rollingOverAt(65_536), auger()), every(1, 65_500, 65_530, 10, 40));

        assertThat(done.statuses()).containsExactly(FIRST, LAID, LAID, LAID);
        assertThat(done.sums().turned()).isEqualTo(76);
        assertThat(done.sums().laid()).isEqualTo(76 * 25_000);
    }

    @Test
    void aLowerReadingThatRollingOverCantExplainIsARestart() {
        Trucks.Done done = evaluated(evaluator(rollingOverAt(65_536), auger()), every(1, 30_000, 30_010, 5, 25));

        assertThat(done.statuses()).containsExactly(FIRST, LAID, RESTARTED, LAID);
        assertThat(done.sums().turned()).isEqualTo(30);
        assertThat(done.sums().counts(RESTARTED)).isEqualTo(5);
        assertThat(done.sums().unattributed()).isEqualTo(5);
    }

    @Test
    void aCounterWithoutAWidthRestarts() {
        assertThat(evaluated(plain(), every(1, 65_530, 5, 6)).statuses()).containsExactly(FIRST, RESTARTED, LAID);
    }

    /** A restart takes 10 s: in 8 s it can't have been one, in 20 s it can, if it turned no more than 11 s since. */
    @Test
    void whereARestartFitsBetweenRowsALowerReadingIsAmbiguous() {
        RowEvaluator wide = evaluator(rollingOverAt(65_536), auger());

        assertThat(evaluated(wide, every(8, 65_500, 100)).statuses()).containsExactly(FIRST, LAID);
        assertThat(evaluated(wide, every(20, 65_500, 100)).statuses()).containsExactly(FIRST, ROLLED_OVER_OR_RESTARTED);
        assertThat(evaluated(wide, every(20, 65_500, 1101)).statuses())
                .containsExactly(FIRST, ROLLED_OVER_OR_RESTARTED);
        assertThat(evaluated(wide, every(20, 65_500, 1102)).statuses()).containsExactly(FIRST, LAID);
        assertThat(evaluated(wide, every(20, 65_500, 100)).sums().unattributed())
                .isEqualTo(100);
    }

    /** 100 pulses a second, a clock of whole seconds, and one pulse. */
    @Test
    void moreThanTheShaftCanTurnIsALeap() {
        assertThat(evaluated(plain(), every(1, 0, 201)).statuses()).containsExactly(FIRST, LAID);
        Trucks.Done done = evaluated(plain(), every(1, 0, 202, 210));
        assertThat(done.statuses()).containsExactly(FIRST, LEAP, LAID);
        assertThat(done.sums().counts(LEAP)).isEqualTo(202);
        assertThat(done.sums().laid()).isEqualTo(8 * 25_000);
    }

    @Test
    void rowsTooFarApartAreAGap() {
        Trucks.Done done = evaluated(plain(), every(301, 0, 500, 900));
        assertThat(done.statuses()).containsExactly(FIRST, GAP, GAP);
        assertThat(done.sums().counts(GAP)).isEqualTo(900);
        assertThat(evaluated(plain(), every(300, 0, 500)).statuses()).containsExactly(FIRST, LAID);
    }

    /** 16 bits at 360 pulses a revolution and 30 rev/min: 6 min 4 s, less the clock's second. */
    @Test
    void noGapIsLongerThanTheShortestTimeToRollOver() {
        Counter counter = Counter.ofShaft(
                        Amounts.of(360, SpreadingUnits.PULSE_PER_REVOLUTION),
                        Amounts.of(30, SpreadingUnits.REVOLUTION_PER_MINUTE))
                .rollingOverAt(Amounts.of(65_536, SpreadingUnits.PULSE))
                .withGapsUpTo(Amounts.of(1, SpreadingUnits.HOUR));

        assertThat(Amounts.in(counter.shortestWrap().orElseThrow(), SpreadingUnits.SECOND))
                .isEqualTo(65_536 / 180.0);
        assertThat(evaluated(evaluator(counter, auger()), every(363, 0, 500)).statuses())
                .containsExactly(FIRST, LAID);
        assertThat(evaluated(evaluator(counter, auger()), every(364, 0, 500)).statuses())
                .containsExactly(FIRST, GAP);
    }

    @Test
    void whatIsOutOfOrderOrThereTwiceCountsOnce() {
        Rows rows =
                Rows.of(new long[] {T0, T0 + 2000, T0 + 1000, T0 + 2000, T0 + 3000}, new long[] {0, 20, 10, 20, 30});
        Trucks.Done done = evaluated(plain(), rows);

        assertThat(done.statuses()).containsExactly(FIRST, LAID, OUT_OF_ORDER, DUPLICATE, LAID);
        assertThat(done.sums().laid()).isEqualTo(30 * 25_000);
    }

    @Test
    void aClockOfAnotherYearSpoilsNoOtherRow() {
        Rows rows =
                Rows.of(new long[] {T0, 4_000_000_000_000L, T0 + 1000, 0, T0 + 2000}, new long[] {0, 10, 20, 25, 30});
        Trucks.Done done = evaluated(plain(), rows);

        assertThat(done.statuses()).containsExactly(FIRST, IMPOSSIBLE_TIME, LAID, IMPOSSIBLE_TIME, LAID);
        assertThat(done.sums().laid()).isEqualTo(30 * 25_000);
    }

    @Test
    void readingsThatCantBeAreLeftOut() {
        assertThat(evaluated(evaluator(rollingOverAt(1000), auger()), every(1, 5, -1, 1000, Long.MAX_VALUE, 7))
                        .statuses())
                .containsExactly(FIRST, IMPOSSIBLE_READING, IMPOSSIBLE_READING, IMPOSSIBLE_READING, LAID);
        // 2⁵¹ mg at 25 000 mg a pulse.
        long most = (long) (0x1p51 / 25_000);
        assertThat(evaluated(plain(), every(1, most, most + 1)).statuses()).containsExactly(FIRST, IMPOSSIBLE_READING);
    }

    @Test
    void modesSayWhatWasForTheRoad() {
        Rows rows = new Rows(
                every(1, 0, 1, 3, 6, 10, 15, 21, 28).times(),
                new long[] {0, 1, 3, 6, 10, 15, 21, 28},
                new double[0],
                new int[0],
                new byte[] {0, 0, 1, 2, 3, 4, 5, 6});
        Trucks.Done done = evaluated(plain(), rows);

        assertThat(done.statuses())
                .containsExactly(FIRST, LAID, LAID_BY_HAND, BLAST, UNLOADED, PASSED, TURNED_EMPTY, UNKNOWN_MODE);
        assertThat(done.amounts()).containsExactly(0L, 25_000L, 50_000L, 75_000L, 100_000L, 125_000L, 0L, 0L);
        assertThat(done.sums().laid()).isEqualTo(6 * 25_000);
        assertThat(done.sums().left()).isEqualTo(15 * 25_000);
        assertThat(done.sums().turned()).isEqualTo(21);
        assertThat(done.sums().unattributed()).isEqualTo(7);
        assertThat(done.sums().amount(UNLOADED)).isEqualTo(100_000);
    }

    @Test
    void aRowIsEvaluatedWithWhatWasInForceAtItsTime() {
        RowEvaluator changed = evaluator(
                COUNTER,
                chain(START, 4, 2.5),
                chain(START.plusSeconds(2), 4, 5),
                TimelineEntry.nothing(START.plusSeconds(4), "1"));

        Trucks.Done done = evaluated(changed, every(1, 0, 1, 2, 3, 4, 4));
        assertThat(done.amounts()).containsExactly(0L, 25_000L, 50_000L, 50_000L, 0L, 0L);
        assertThat(done.statuses()).containsExactly(FIRST, LAID, LAID, LAID, NO_CALIBRATION, STANDING);
    }

    @Test
    void aValueIsInForceSinceItWasEnteredOrFromTheBeginningOfItsDay() {
        ZoneOffset yard = ZoneOffset.ofHours(-5);
        CalibrationInForce value = Trucks.value(Samples.AUGER_POINT, 2.5);
        TimelineEntry atATime = TimelineEntry.entered(
                value.since(Since.parse("2026-10-19T08:40:00-05:00")).inSlot("3"), yard);

        assertThat(atATime.from()).isEqualTo(Instant.parse("2026-10-19T13:40:00Z"));
        assertThat(atATime.slot()).isEqualTo("3");
        assertThat(TimelineEntry.entered(value.since(Since.parse("2026-10-19")), yard)
                        .from())
                .isEqualTo(Instant.parse("2026-10-19T05:00:00Z"));
        assertThatThrownBy(() -> TimelineEntry.entered(value, yard))
                .isInstanceOf(InvalidInputException.class)
                .hasMessage("calibration in force must be one that says since when it is held: 2.5 kg/rev");
    }

    /** A value is entered while the truck is out: the state goes on, and not with what was in force before. */
    @Test
    void anotherEvaluatorGoesOnFromAStateWithWhatItKnows() {
        RowEvaluator before = plain();
        RowEvaluator after = evaluator(
                COUNTER, auger(), TimelineEntry.value(START.plusSeconds(2), Trucks.value(Samples.AUGER_POINT, 5)));
        RowState state = before.start();
        RowSums sums = before.sums();
        Rows rows = every(1, 0, 1, 2, 3);
        long[] amounts = new long[4];
        byte[] statuses = new byte[4];
        before.evaluate(rows, 0, 2, state, sums, amounts, statuses);
        RowSums later = after.sums();
        after.evaluate(rows, 2, 4, state, later, amounts, statuses);

        assertThat(amounts).containsExactly(0, 25_000, 50_000, 50_000);
        assertThat(later.laid()).isEqualTo(100_000);
        assertThatThrownBy(() -> after.evaluate(rows, 2, 4, state, sums, amounts, statuses))
                .isInstanceOf(InvalidInputException.class)
                .hasMessage("sums must be of this evaluator, or of one of the same timeline: another evaluator's");
        assertThatThrownBy(() -> after.merged(later, sums)).hasMessageContaining("sums must be of this evaluator");
        assertThatThrownBy(() -> after.total(sums)).hasMessageContaining("sums must be of this evaluator");
    }

    /** A worker gets the evaluator, a truck's state and its sums, and has none of the types behind the calibration. */
    @Test
    void whatIsSentToAWorkerNamesNoTypeButItsOwn() throws IOException, ClassNotFoundException {
        RowEvaluator evaluator = evaluator(rollingOverAt(65_536), chain(START, 4, 2.5));
        RowState state = evaluator.start();
        RowSums sums = evaluator.sums();
        Rows rows = every(1, 65_500, 65_530, 10, 40);
        long[] amounts = new long[4];
        byte[] statuses = new byte[4];
        evaluator.evaluate(rows, 0, 2, state, sums, amounts, statuses);
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (ObjectOutputStream out = new ObjectOutputStream(bytes)) {
            out.writeObject(List.of(evaluator, state, sums));
        }

        assertThat(Pattern.compile("org\\.gritwright\\.[\\w.]+")
                        .matcher(bytes.toString(StandardCharsets.ISO_8859_1))
                        .results()
                        .map(MatchResult::group))
                .isNotEmpty()
                .allSatisfy(name -> assertThat(name).startsWith("org.gritwright.core.telemetry."));
        try (ObjectInputStream in = new ObjectInputStream(new ByteArrayInputStream(bytes.toByteArray()))) {
            List<?> sent = (List<?>) in.readObject();
            RowEvaluator there = (RowEvaluator) sent.get(0);
            RowSums sumsThere = (RowSums) sent.get(2);
            there.evaluate(rows, 2, 4, (RowState) sent.get(1), sumsThere, amounts, statuses);
            assertThat(sumsThere).isEqualTo(evaluated(evaluator, rows).sums());
            assertThat(amounts).containsExactly(0, 750_000, 400_000, 750_000);
        }
    }

    @Test
    void beforeTheFirstEntryNothingIsInForce() {
        Rows rows = Rows.of(new long[] {T0 - 2000, T0 - 1, T0}, new long[] {0, 5, 7});

        assertThat(evaluated(plain(), rows).statuses()).containsExactly(FIRST, NO_CALIBRATION, LAID);
    }

    @Test
    void aSettingHasItsOwnValue() {
        RowEvaluator two = evaluator(COUNTER, chain(START, 2, 1), chain(START, 4, 2));
        Rows rows = new Rows(
                every(1, 0, 1, 2, 3, 4, 5, 6).times(),
                new long[] {0, 1, 2, 3, 4, 5, 6},
                new double[] {2 * INCH, 2 * INCH, 4 * INCH, 3 * INCH, Double.NaN, 2 * INCH, 2 * INCH * (1 + 1e-9)},
                new int[0],
                new byte[0]);
        Trucks.Done done = evaluated(two, rows);

        assertThat(done.statuses()).containsExactly(FIRST, LAID, LAID, NO_SUCH_SETTING, NO_SUCH_SETTING, LAID, LAID);
        assertThat(done.amounts()).containsExactly(0L, 10_000L, 20_000L, 0L, 0L, 10_000L, 10_000L);
    }

    @Test
    void slotsAreToldApart() {
        TimelineEntry other =
                TimelineEntry.value(START, Trucks.value(Samples.chainAt(4), 5).inSlot("2"));
        RowEvaluator two = evaluator(COUNTER, chain(START, 4, 2.5), other);
        Rows rows = new Rows(
                every(1, 0, 1, 2, 3, 4).times(),
                new long[] {0, 1, 2, 3, 4},
                new double[0],
                new int[] {0, 0, 1, 2, -1},
                new byte[0]);

        assertThat(two.slots()).containsExactly("1", "2");
        assertThat(evaluated(two, rows).statuses()).containsExactly(FIRST, LAID, LAID, UNKNOWN_SLOT, UNKNOWN_SLOT);
        assertThat(evaluated(two, rows).amounts()).containsExactly(0L, 25_000L, 50_000L, 0L, 0L);
    }

    @Test
    void ofSeveralSlotsARowNamesItsOwn() {
        RowEvaluator two = evaluator(
                COUNTER,
                TimelineEntry.value(
                        START, Trucks.value(Samples.AUGER_POINT, 2.5).inSlot("1")),
                TimelineEntry.value(START, Trucks.value(Samples.AUGER_POINT, 9).inSlot("2")));

        assertThatThrownBy(() -> evaluated(two, every(1, 0, 50)))
                .isInstanceOf(InvalidInputException.class)
                .hasMessage("column of slots must be there, as the rows may be of several slots, [1, 2]: none");
        assertThat(evaluated(two, Rows.of(new long[0], new long[0])).amounts()).isEmpty();
    }

    @Test
    void columnsAreAsLongAsEachOther() {
        assertThatThrownBy(() -> Rows.of(new long[2], new long[1]))
                .isInstanceOf(InvalidInputException.class)
                .hasMessage("column of counts must be as long as the times, 2: 1");
        assertThatThrownBy(() -> new Rows(new long[2], new long[2], new double[1], new int[0], new byte[0]))
                .hasMessageContaining("column of settings");
        Rows rows = every(1, 0, 1);
        RowEvaluator evaluator = plain();
        assertThatThrownBy(() ->
                        evaluator.evaluate(rows, 0, 2, evaluator.start(), evaluator.sums(), new long[1], new byte[2]))
                .hasMessage("column of amounts must be as long as the rows, 2: 1");
        assertThatThrownBy(() ->
                        evaluator.evaluate(rows, 0, 3, evaluator.start(), evaluator.sums(), new long[3], new byte[3]))
                .isInstanceOf(IndexOutOfBoundsException.class);
    }

    @Test
    void aSensorIsNeeded() {
        assertThatThrownBy(() -> TimelineEntry.value(
                        START, Trucks.value(Samples.augerPoint(new NoSensor(Amounts.of(1, SpreadingUnits.ONE))), 2)))
                .isInstanceOf(InvalidInputException.class)
                .hasMessageContaining("drive feedback must be a sensor whose pulses rows can count");
    }

    @Test
    void statusesHaveTheirNumbers() {
        for (RowStatus status : RowStatus.values()) {
            assertThat(RowStatus.of(status.code())).isSameAs(status);
        }
        assertThatThrownBy(() -> RowStatus.of(20)).hasMessage("row status must be 0 to 19: 20");
        assertThatThrownBy(() -> RowStatus.of(-1)).isInstanceOf(InvalidInputException.class);
        assertThat(List.of(RowMode.values())).extracting(RowMode::code).containsExactly(0, 1, 2, 3, 4, 5);
    }
}
