package org.gritwright.core.telemetry;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.telemetry.Trucks.COUNTER;
import static org.gritwright.core.telemetry.Trucks.FROM;
import static org.gritwright.core.telemetry.Trucks.START;
import static org.gritwright.core.telemetry.Trucks.UNTIL;
import static org.gritwright.core.telemetry.Trucks.chain;
import static org.gritwright.core.telemetry.Trucks.evaluated;
import static org.gritwright.core.telemetry.Trucks.every;

import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.LongStream;
import javax.measure.quantity.Dimensionless;
import org.gritwright.core.Samples;
import org.gritwright.core.judgement.DecisionRule;
import org.gritwright.core.judgement.Tolerance;
import org.gritwright.core.spi.Setting;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.core.verification.Runs;
import org.gritwright.core.verification.Verification;
import org.gritwright.core.verification.VerificationLimits;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.SpreadingUnits;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Rows of 1000 s with 50 pulses each, 25 000 mg a pulse by the display; at 1000 s it is found to be off. */
class CorrectedBackTest {
    private static final Setting AT = Setting.height(Amounts.of(4, SpreadingUnits.INCH));
    private static final Instant FOUND = START.plusSeconds(1000);
    private static final Rows ROWS =
            every(1, LongStream.rangeClosed(0, 1000).map(i -> 50 * i).toArray());
    private static final long DISPLAYED = 50_000L * 25_000;

    private static final Timeline TIMELINE = Timeline.of(
            List.of(chain(START, 4, 2.5).withErrors(List.of(Totals.error("calibration", 0.01))), chain(FOUND, 4, 2.5)));

    private static AsFound found(double error, double uncertainty) {
        return new AsFound(
                "1",
                AT,
                START,
                FOUND,
                Measured.of(
                        Amounts.of(error, SpreadingUnits.PERCENT),
                        Amounts.of(uncertainty, SpreadingUnits.PERCENT),
                        Double.POSITIVE_INFINITY));
    }

    private static RowEvaluator evaluator(Timeline timeline) {
        return RowEvaluator.compile(timeline, COUNTER, FROM, UNTIL);
    }

    private static long laid(Timeline timeline) {
        return evaluated(evaluator(timeline), ROWS).sums().laid();
    }

    @Test
    void whatWasLaidWithAnErrorIsDividedByOneAndThatError() {
        Timeline corrected = TIMELINE.correctedBackBy(found(25, 1), new Onset.AtOnce(START));

        // The row at the time as found is evaluated as corrected then: as the display has it.
        assertThat(laid(corrected)).isCloseTo((long) (0.999 * DISPLAYED / 1.25 + 0.001 * DISPLAYED), within(1L));
    }

    @Test
    void anErrorThatCameAtOnceIsInNoRowBefore() {
        Timeline half = TIMELINE.correctedBackBy(found(25, 1), new Onset.AtOnce(START.plusSeconds(501)));
        Timeline none = TIMELINE.correctedBackBy(found(25, 1), new Onset.AtOnce(FOUND));

        assertThat(laid(half)).isCloseTo((long) (0.501 * DISPLAYED + 0.499 * DISPLAYED / 1.25), within(2L));
        assertThat(laid(none)).isEqualTo(DISPLAYED);
    }

    @Test
    void anErrorThatIsntShownCorrectsNothing() {
        assertThat(found(1.9, 1).isShown()).isFalse();
        assertThat(found(2, 1).isShown()).isTrue();
        assertThat(found(-2, 1).isShown()).isTrue();
        assertThat(laid(TIMELINE.correctedBackBy(found(1.9, 1), new Onset.AtOnce(START))))
                .isEqualTo(DISPLAYED);
    }

    /** ∫₀¹ ds ÷ (1 + 0.25 s) = ln 1.25 ÷ 0.25 = 0.892574. */
    @Test
    void anErrorThatGrewWithTimeIsSummedAlongTheWay() {
        Timeline corrected = TIMELINE.correctedBackBy(found(25, 1), Onset.Gradually.WITH_TIME);

        assertThat((double) laid(corrected) / DISPLAYED)
                .isCloseTo(Math.log(1.25) / 0.25 + 0.001 * (1 - 1 / 1.25), within(1e-6));
    }

    @ParameterizedTest
    @EnumSource(
            value = Onset.Gradually.class,
            names = {"WITH_TURNS", "WITH_AMOUNT"})
    void anErrorThatGrewWithTurnsOrAmountTakesTwoPasses(Onset.Gradually onset) {
        Timeline corrected = TIMELINE.correctedBackBy(found(25, 1), onset);
        assertThatThrownBy(() -> evaluator(corrected))
                .isInstanceOf(InvalidInputException.class)
                .hasMessageContaining("onset must be at once, or gradually with time, unless there are two passes");

        RowEvaluator first = RowEvaluator.firstPass(corrected, COUNTER, FROM, UNTIL);
        RowSums counted = evaluated(first, ROWS).sums();
        assertThat(counted.laid()).isEqualTo(DISPLAYED);
        RowEvaluator second = RowEvaluator.secondPass(corrected, COUNTER, FROM, UNTIL, counted);
        RowSums laid = evaluated(second, ROWS).sums();

        // All rows but the last are on the way: 49 950 pulses.
        double expected = 49_950 * 25_000.0 * Math.log(1.25) / 0.25 + 50 * 25_000.0;
        assertThat((double) laid.laid()).isCloseTo(expected, within(1.0));
        assertThat(Trucks.stepped(second, ROWS).sums()).isEqualTo(laid);
    }

    /** What another setting was off by ends half-way, which is no new beginning of this one's error. */
    @ParameterizedTest
    @EnumSource(
            value = Onset.Gradually.class,
            names = {"WITH_TURNS", "WITH_AMOUNT"})
    void anErrorGrowsOnWhereAnotherSettingsEnds(Onset.Gradually onset) {
        Timeline one =
                Timeline.of(List.of(chain(START, 2, 1), chain(START, 4, 2.5))).correctedBackBy(found(25, 1), onset);
        AsFound other = new AsFound(
                "1",
                Setting.height(Amounts.of(2, SpreadingUnits.INCH)),
                START,
                START.plusSeconds(500),
                found(10, 1).error());
        Timeline both = one.correctedBackBy(other, Onset.Gradually.WITH_TIME);
        double[] settings = new double[ROWS.size()];
        Arrays.fill(settings, AT.si());
        Rows rows = new Rows(ROWS.times(), ROWS.counts(), settings, ROWS.slots(), ROWS.modes());

        Trucks.Done alone = twice(one, rows);
        Trucks.Done beside = twice(both, rows);

        assertThat(beside.amounts()).isEqualTo(alone.amounts());
        // Behind the middle of the way half of the error and more is there.
        assertThat(beside.amounts().get(502)).isBetween(1_250_000L * 8 / 9 - 2000, 1_250_000L * 8 / 9);
    }

    /** Turns are even, so that the way is the time; the last row is behind it. */
    @ParameterizedTest
    @EnumSource(
            value = Onset.Gradually.class,
            names = {"WITH_TURNS", "WITH_AMOUNT"})
    void whatGrewWithEvenTurnsIsAsUncertainAsWhatGrewWithTime(Onset.Gradually onset) {
        Timeline ofTurns = TIMELINE.correctedBackBy(found(25, 1), onset);
        Timeline ofTime = TIMELINE.correctedBackBy(found(25, 1), Onset.Gradually.WITH_TIME);
        RowSums counted = evaluated(RowEvaluator.firstPass(ofTurns, COUNTER, FROM, UNTIL), ROWS)
                .sums();
        RowEvaluator second = RowEvaluator.secondPass(ofTurns, COUNTER, FROM, UNTIL, counted);

        AppliedTotal byTurns = second.total(evaluated(second, ROWS).sums());
        AppliedTotal byTime =
                evaluator(ofTime).total(evaluated(evaluator(ofTime), ROWS).sums());
        assertThat(byTurns.sharedErrors().keySet())
                .isEqualTo(byTime.sharedErrors().keySet())
                .hasSize(2);
        byTurns.sharedErrors()
                .forEach((id, size) -> assertThat((double) size)
                        .isCloseTo(byTime.sharedErrors().get(id), within(0.003 * size)));
    }

    @Test
    void whatIsCorrectedWasInForceWhenItWasFound() {
        // The value at 2 in is gone since the slot was set anew, for 4 in alone.
        Timeline anew = Timeline.of(List.of(chain(START.minusSeconds(100), 2, 1), chain(START, 4, 2.5)));
        AsFound gone = new AsFound(
                "1",
                Setting.height(Amounts.of(2, SpreadingUnits.INCH)),
                START,
                FOUND,
                found(25, 1).error());

        assertThatThrownBy(() -> anew.correctedBackBy(gone, Onset.Gradually.WITH_TIME))
                .hasMessageContaining("setting of the error found in slot 1 must be one that was in force then");
        assertThat(anew.correctedBackBy(found(25, 1), Onset.Gradually.WITH_TIME).corrections())
                .hasSize(1);
    }

    private static Trucks.Done twice(Timeline timeline, Rows rows) {
        RowSums counted = evaluated(RowEvaluator.firstPass(timeline, COUNTER, FROM, UNTIL), rows)
                .sums();
        return evaluated(RowEvaluator.secondPass(timeline, COUNTER, FROM, UNTIL, counted), rows);
    }

    @Test
    void partsOfASecondPassAreCountedOnAndNotApart() {
        Timeline corrected = TIMELINE.correctedBackBy(found(25, 1), Onset.Gradually.WITH_TURNS);
        RowSums counted = evaluated(RowEvaluator.firstPass(corrected, COUNTER, FROM, UNTIL), ROWS)
                .sums();
        RowEvaluator second = RowEvaluator.secondPass(corrected, COUNTER, FROM, UNTIL, counted);
        RowState state = second.start();
        RowSums early = second.sums();
        RowSums late = second.sums();
        RowSums apart = second.sums();
        long[] amounts = new long[ROWS.size()];
        byte[] statuses = new byte[ROWS.size()];
        second.evaluate(ROWS, 0, 400, state, early, amounts, statuses);
        second.evaluate(ROWS, 400, ROWS.size(), state, late, amounts, statuses);
        second.evaluate(ROWS, 400, ROWS.size(), second.start(), apart, amounts, statuses);

        assertThat(second.merged(early, late)).isEqualTo(evaluated(second, ROWS).sums());
        // After no rows at all, rows by themselves are those that come first.
        assertThat(second.merged(second.sums(), early)).isEqualTo(early);
        assertThatThrownBy(() -> second.merged(early, apart))
                .hasMessageContaining(
                        "counted on from the earlier rows' state, as an error grows with what they turned");
    }

    @Test
    void aFirstPassOfAnotherTimelineIsRefused() {
        RowSums other = Trucks.plain().sums();
        Timeline corrected = TIMELINE.correctedBackBy(found(25, 1), Onset.Gradually.WITH_TURNS);

        assertThatThrownBy(() -> RowEvaluator.secondPass(corrected, COUNTER, FROM, UNTIL, other))
                .isInstanceOf(InvalidInputException.class)
                .hasMessageContaining("of the same timeline");
    }

    @Test
    void whatAFirstPassCountedIsNoTotalOfTheSecond() {
        Timeline corrected = TIMELINE.correctedBackBy(found(25, 1), Onset.Gradually.WITH_TURNS);
        RowSums counted = evaluated(RowEvaluator.firstPass(corrected, COUNTER, FROM, UNTIL), ROWS)
                .sums();
        RowEvaluator second = RowEvaluator.secondPass(corrected, COUNTER, FROM, UNTIL, counted);

        assertThatThrownBy(() -> second.total(counted)).hasMessageContaining("sums must be of this evaluator");
        assertThatThrownBy(() -> second.merged(second.sums(), counted))
                .hasMessageContaining("sums must be of this evaluator");
        // Nor can it be the first pass of another: the error was another, and as many values were off.
        Timeline more = TIMELINE.correctedBackBy(found(26, 1), Onset.Gradually.WITH_TURNS);
        assertThatThrownBy(() -> RowEvaluator.secondPass(
                        more, COUNTER, FROM, UNTIL, evaluated(second, ROWS).sums()))
                .hasMessageContaining("what the first pass counted must be of the same timeline");
    }

    /** By −60 %, and twice as much was turned as the first pass counted: carried on, the error would pass −100 %. */
    @ParameterizedTest
    @EnumSource(
            value = Onset.Gradually.class,
            names = {"WITH_TURNS", "WITH_AMOUNT"})
    void whatTurnsMoreThanTheFirstPassCountedIsOffByAllOfItAndHasNoTotal(Onset.Gradually onset) {
        Timeline corrected = TIMELINE.correctedBackBy(found(-60, 1), onset);
        RowEvaluator first = RowEvaluator.firstPass(corrected, COUNTER, FROM, UNTIL);
        Rows half = every(1, LongStream.rangeClosed(0, 500).map(i -> 50 * i).toArray());
        RowEvaluator second = RowEvaluator.secondPass(
                corrected, COUNTER, FROM, UNTIL, evaluated(first, half).sums());

        assertThat(second.total(evaluated(second, half).sums()).amount())
                .isCloseTo((long) (25_000.0 * 25_000 * Math.log(0.4) / -0.6), within(1L));
        Trucks.Done all = evaluated(second, ROWS);
        assertThat(all.amounts().subList(501, 1000))
                .allSatisfy(amount -> assertThat((double) amount).isCloseTo(1_250_000 / 0.4, within(1.0)));
        assertThatThrownBy(() -> second.total(all.sums()))
                .isInstanceOf(InvalidInputException.class)
                .hasMessage("turned with 1, 4 in, from 2026-11-01T12:00:00Z must be"
                        + " at most what the first pass counted of it, 25000 pulse: 49950 pulse");
        assertThatThrownBy(() -> second.left(all.sums())).hasMessageContaining("25000 pulse: 49950 pulse");
    }

    @Test
    void aSecondPassAfterAFirstThatCountedNothingHasNoTotal() {
        Timeline corrected = TIMELINE.correctedBackBy(found(25, 1), Onset.Gradually.WITH_TURNS);
        RowSums nothing =
                RowEvaluator.firstPass(corrected, COUNTER, FROM, UNTIL).sums();
        RowEvaluator second = RowEvaluator.secondPass(corrected, COUNTER, FROM, UNTIL, nothing);

        assertThat(second.total(second.sums()).amount()).isZero();
        assertThatThrownBy(() -> second.total(evaluated(second, every(1, 0, 1)).sums()))
                .hasMessageContaining("at most what the first pass counted of it, 0 pulse: 1 pulse");
    }

    /** A row that begins before it was right for the last time: half-way it is 144 s too early, and nothing was off. */
    @Test
    void beforeItWasRightNothingIsOff() {
        Timeline before = Timeline.of(List.of(chain(START.minusSeconds(600), 4, 2.5)));
        AsFound found = new AsFound(
                "1", AT, START, START.plusSeconds(200), found(400, 1).error());
        RowEvaluator evaluator = evaluator(before.correctedBackBy(found, Onset.Gradually.WITH_TIME));
        RowState state = evaluator.start();
        RowSums sums = evaluator.sums();
        long start = START.toEpochMilli();
        evaluator.step(state, sums, start - 290_000, 0, Double.NaN, 0, 0);

        RowExplanation explained = evaluator.explain(state, start + 1000, 100, Double.NaN, 0, 0);
        evaluator.step(state, sums, start + 1000, 100, Double.NaN, 0, 0);

        assertThat(sums.laid()).isEqualTo(100 * 25_000).isEqualTo(explained.amount());
    }

    @Test
    void aChangeLiesBetweenAsLeftAndAsFound() {
        assertThatThrownBy(() -> TIMELINE.correctedBackBy(found(25, 1), new Onset.AtOnce(FOUND.plusSeconds(1))))
                .isInstanceOf(InvalidInputException.class)
                .hasMessageContaining(
                        "time of the change must be within 2026-11-01T12:00:00Z and 2026-11-01T12:16:40Z");
        assertThatThrownBy(() -> new AsFound("1", AT, FOUND, START, found(25, 1).error()))
                .hasMessageContaining("time as found must be later than the time as left");
        assertThatThrownBy(() -> found(-100, 1)).hasMessageContaining("calibration error must be above −100 %");
    }

    @Test
    void twoCorrectionsDontOverlap() {
        Timeline corrected = TIMELINE.correctedBackBy(found(25, 1), new Onset.AtOnce(START));
        AsFound overlapping = new AsFound(
                "1",
                AT,
                START.plusSeconds(500),
                FOUND.minusSeconds(1),
                found(5, 1).error());

        assertThatThrownBy(() -> corrected.correctedBackBy(overlapping, new Onset.AtOnce(START.plusSeconds(600))))
                .hasMessageContaining("corrections of slot 1 must be of times that don't overlap");
        AsFound after =
                new AsFound("1", AT, FOUND, FOUND.plusSeconds(999), found(5, 1).error());
        assertThat(corrected.correctedBackBy(after, new Onset.AtOnce(FOUND)).corrections())
                .hasSize(2);
    }

    @Test
    void anErrorIsOfWhatWasInForceThen() {
        Measured<Dimensionless> error = found(25, 1).error();
        assertThatThrownBy(() -> TIMELINE.correctedBackBy(
                        new AsFound("slot 1", AT, START, FOUND, error), new Onset.AtOnce(START)))
                .isInstanceOf(InvalidInputException.class)
                .hasMessage("slot of the error found must be one of [1]: slot 1");
        assertThatThrownBy(() -> TIMELINE.correctedBackBy(
                        new AsFound("1", Setting.none(), START, FOUND, error), new Onset.AtOnce(START)))
                .hasMessageContaining("setting of the error found in slot 1 must be one that was in force then");
        // Another value was entered at FOUND: what is found later says nothing about the one before.
        assertThatThrownBy(() -> TIMELINE.correctedBackBy(
                        new AsFound("1", AT, START, FOUND.plusSeconds(9), error), new Onset.AtOnce(START)))
                .hasMessage(
                        "time as left in slot 1 must be no earlier than what was in force when the error was found, since "
                                + FOUND + ": " + START);
        assertThatThrownBy(() -> TIMELINE.correctedBackBy(
                        new AsFound("1", AT, START.minusSeconds(9), START, error), new Onset.AtOnce(START)))
                .hasMessageContaining("time as left in slot 1 must be no earlier");
    }

    /** 300 lb indicated, 250 lb caught: 20 % too much is believed. */
    @Test
    void aVerificationSaysWhatItFoundAndHowSureItIs() {
        Verification verification = Runs.counted(5000, 250)
                .assess(Tolerance.percent(4), DecisionRule.SIMPLE, VerificationLimits.COMMON, Optional.empty());
        AsFound found = AsFound.of("salt", Samples.NOON.toInstant().minusSeconds(60), verification);

        assertThat(Amounts.in(found.error().value(), SpreadingUnits.PERCENT)).isCloseTo(20, within(1e-9));
        assertThat(found.error().standardUncertainty()).isPresent();
        assertThat(found.isShown()).isTrue();
        assertThat(found.at()).isEqualTo(Samples.NOON.toInstant());
        assertThat(found.setting()).isEqualTo(Setting.none());
        Verification uncounted = Runs.openLoop(250)
                .assess(Tolerance.percent(4), DecisionRule.SIMPLE, VerificationLimits.COMMON, Optional.empty());
        assertThatThrownBy(() -> AsFound.of("salt", START, uncounted))
                .hasMessage("verification must be one that counted: nothing counted");
    }

    /** Half with the calibration's error of 1 %, half with what was found: 1 % of 1.25. */
    @Test
    void whatIsCorrectedIsAsUncertainAsWhatWasFound() {
        Timeline half = TIMELINE.correctedBackBy(found(25, 1), new Onset.AtOnce(START.plusSeconds(501)));
        RowEvaluator evaluator = evaluator(half);
        AppliedTotal total = evaluator.total(evaluated(evaluator, ROWS).sums());

        assertThat(total.sharedErrors()).containsOnlyKeys("calibration", "error of 1 found at 2026-11-01T12:16:40Z");
        assertThat(total.sharedErrors().get("calibration")).isCloseTo((long) (0.5 * DISPLAYED * 0.01), within(30L));
        assertThat(total.sharedErrors().get("error of 1 found at 2026-11-01T12:16:40Z"))
                .isCloseTo((long) (0.499 * DISPLAYED / 1.25 * 0.008), within(30L));
    }

    @Test
    void itIsExplainedByItsShareOfTheWay() {
        Timeline corrected = TIMELINE.correctedBackBy(found(25, 1), Onset.Gradually.WITH_TURNS);
        RowSums counted = evaluated(RowEvaluator.firstPass(corrected, COUNTER, FROM, UNTIL), ROWS)
                .sums();
        RowEvaluator second = RowEvaluator.secondPass(corrected, COUNTER, FROM, UNTIL, counted);
        RowState state = second.start();
        RowSums sums = second.sums();
        for (int i = 0; i < 500; i++) {
            second.step(state, sums, ROWS.times()[i], ROWS.counts()[i], Double.NaN, 0, 0);
        }
        RowExplanation told = second.explain(state, ROWS.times()[500], ROWS.counts()[500], Double.NaN, 0, 0);
        second.step(state, sums, ROWS.times()[500], ROWS.counts()[500], Double.NaN, 0, 0);

        assertThat(told.amount()).isEqualTo(state.amount());
        // 24 950 and 25 000 of 49 950 pulses.
        assertThat(told.toString())
                .contains("way on which the error grew: 49.9499 % to 50.0501 %")
                .endsWith(" mg");
        assertThat(told.amount()).isCloseTo((long) (50 * 25_000 / 1.125), within(5L));
    }

    @Test
    void itIsExplainedByTheTimeHalfWay() {
        RowEvaluator evaluator = evaluator(TIMELINE.correctedBackBy(found(25, 1), Onset.Gradually.WITH_TIME));
        RowState state = evaluator.start();
        RowSums sums = evaluator.sums();
        for (int i = 0; i < 400; i++) {
            evaluator.step(state, sums, ROWS.times()[i], ROWS.counts()[i], Double.NaN, 0, 0);
        }
        RowExplanation told = evaluator.explain(state, ROWS.times()[400], ROWS.counts()[400], Double.NaN, 0, 0);
        evaluator.step(state, sums, ROWS.times()[400], ROWS.counts()[400], Double.NaN, 0, 0);

        assertThat(told.amount()).isEqualTo(state.amount());
        // 25 g ÷ (1 + 0.25 × 0.3995) = 22.7298 g.
        assertThat(told.toString()).contains("with the error that grew until half-way: 22.7");
        assertThat(told.amount()).isCloseTo((long) (50 * 25_000 / (1 + 0.25 * 0.3995)), within(1L));
    }

    @Test
    void whatGrewIsAsUncertainAsItsShareOfTheErrorAndTheRestOfTheCalibration() {
        Timeline corrected = TIMELINE.correctedBackBy(found(25, 2.5), Onset.Gradually.WITH_TIME);
        AppliedTotal total =
                evaluator(corrected).total(evaluated(evaluator(corrected), ROWS).sums());
        double before = 0;
        double after = 0;
        for (int i = 1; i < 1000; i++) {
            double share = (i - 0.5) / 1000;
            double laid = 50 * 25_000 / (1 + 0.25 * share);
            before += laid * (1 - share);
            after += laid * share;
        }

        // 1 % of the calibration; 2.5 % ÷ 1.25 of what was found.
        assertThat((double) total.sharedErrors().get("calibration")).isCloseTo(0.01 * before, within(1e-4 * before));
        assertThat((double) total.sharedErrors().get("error of 1 found at " + FOUND))
                .isCloseTo(0.02 * after, within(1e-4 * after));
    }

    @Test
    void whatCameAtOnceIsAsUncertainAsTheErrorAlone() {
        Timeline corrected = TIMELINE.correctedBackBy(found(25, 2.5), new Onset.AtOnce(START.plusSeconds(500)));
        AppliedTotal total =
                evaluator(corrected).total(evaluated(evaluator(corrected), ROWS).sums());
        double before = 499 * 50 * 25_000.0;
        double after = 500 * 50 * 25_000.0 / 1.25;

        assertThat((double) total.sharedErrors().get("calibration")).isCloseTo(0.01 * before, within(1.0));
        assertThat((double) total.sharedErrors().get("error of 1 found at " + FOUND))
                .isCloseTo(0.02 * after, within(1.0));
        assertThat(total.sharedErrors()).hasSize(2);
    }
}
