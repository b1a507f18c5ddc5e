package org.gritwright.core.telemetry;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.telemetry.RowStatus.FIRST;
import static org.gritwright.core.telemetry.RowStatus.LAID;
import static org.gritwright.core.telemetry.RowStatus.NO_SUCH_SETTING;
import static org.gritwright.core.telemetry.Trucks.COUNTER;
import static org.gritwright.core.telemetry.Trucks.START;
import static org.gritwright.core.telemetry.Trucks.T0;
import static org.gritwright.core.telemetry.Trucks.evaluated;
import static org.gritwright.core.telemetry.Trucks.evaluator;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.gritwright.core.Samples;
import org.gritwright.core.calibration.CalibrationCatch;
import org.gritwright.core.curve.CurveModel;
import org.gritwright.core.curve.DischargeCurve;
import org.gritwright.core.spi.Setting;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.quantity.DischargePerRevolution;
import org.junit.jupiter.api.Test;

class CurveInForceTest {
    private static final double INCH = 0.0254;

    private static CalibrationCatch caught(double inches, double pounds) {
        return Samples.catchAt(Samples.chainAt(inches), Samples.caught(pounds), Samples.pulses(500));
    }

    private static final DischargeCurve CURVE = DischargeCurve.fit(
            List.of(caught(2, 150), caught(2, 151.5), caught(3, 231), caught(4, 310), caught(4, 312)),
            CurveModel.DEAD_OPENING);

    private final RowEvaluator evaluator = evaluator(
            COUNTER, TimelineEntry.curve(START, "salt", CURVE).withErrors(List.of(Totals.error("scale", 0.001))));

    private static Rows rows(double... inches) {
        long[] times = new long[inches.length];
        long[] counts = new long[inches.length];
        double[] settings = new double[inches.length];
        for (int i = 0; i < inches.length; i++) {
            times[i] = T0 + 1000L * i;
            counts[i] = 100L * i;
            settings[i] = inches[i] * INCH;
        }
        return new Rows(times, counts, settings, new int[0], new byte[0]);
    }

    /** At two openings a verification may find two errors; which of them the curve is off by nobody can tell. */
    @Test
    void twoErrorsOfOneCurveAtOneTimeAreRefused() {
        Timeline timeline = Timeline.of(List.of(TimelineEntry.curve(START, "salt", CURVE)));
        Timeline corrected = timeline.correctedBackBy(found(2, 1000), Onset.Gradually.WITH_TIME);
        AsFound beside = found(3, 1001);
        AsFound later =
                new AsFound("salt", beside.setting(), START.plusSeconds(1000), START.plusSeconds(2000), beside.error());

        assertThatThrownBy(() -> corrected.correctedBackBy(beside, Onset.Gradually.WITH_TIME))
                .hasMessageContaining("corrections of slot salt must be of times that don't overlap");
        assertThat(corrected.correctedBackBy(later, Onset.Gradually.WITH_TIME).corrections())
                .hasSize(2);
    }

    @Test
    void errorsOfValuesAreApartWhereACurveIsInAnotherSlotOrWasThereBefore() {
        Timeline timeline = Timeline.of(List.of(
                TimelineEntry.curve(START.minusSeconds(100), "1", CURVE),
                TimelineEntry.curve(START, "salt", CURVE),
                Trucks.chain(START, 2, 1),
                Trucks.chain(START, 3, 2)));
        AsFound two = found(2, 1000);
        AsFound three = found(3, 1001);

        assertThat(timeline.correctedBackBy(inSlotOne(two), Onset.Gradually.WITH_TIME)
                        .correctedBackBy(inSlotOne(three), Onset.Gradually.WITH_TIME)
                        .corrections())
                .hasSize(2);
    }

    private static AsFound inSlotOne(AsFound found) {
        return new AsFound("1", found.setting(), found.asLeft(), found.at(), found.error());
    }

    private static AsFound found(double inches, long seconds) {
        return new AsFound(
                "salt",
                Samples.chainAt(inches).setting(),
                START,
                START.plusSeconds(seconds),
                Measured.of(
                        Amounts.of(8, SpreadingUnits.PERCENT),
                        Amounts.of(1, SpreadingUnits.PERCENT),
                        Double.POSITIVE_INFINITY));
    }

    @Test
    void betweenItsCaughtSettingsARowIsEvaluatedAsTheCurvePredicts() {
        List<Double> all = new ArrayList<>();
        for (int i = 0; i <= 200; i++) {
            all.add(2 + i / 100.0);
        }
        Trucks.Done done = evaluated(
                evaluator, rows(all.stream().mapToDouble(Double::doubleValue).toArray()));

        for (int i = 1; i < all.size(); i++) {
            double predicted = 1e6
                    * Amounts.si(
                            DischargePerRevolution.class,
                            CURVE.predict(Setting.height(Amounts.of(all.get(i), SpreadingUnits.INCH)))
                                    .dischargePerRevolution()
                                    .value());
            assertThat((double) done.amounts().get(i)).isCloseTo(predicted, within(1e-5 * predicted + 1));
        }
        assertThat(Trucks.stepped(evaluator, rows(2, 2.5, 2.5, 3)))
                .isEqualTo(evaluated(evaluator, rows(2, 2.5, 2.5, 3)));
    }

    @Test
    void beyondItsCaughtSettingsAndWithoutASettingNothingIsGuessed() {
        assertThat(evaluated(evaluator, rows(2, 2, 4, 1.99, 4.01, Double.NaN, 3))
                        .statuses())
                .containsExactly(FIRST, LAID, LAID, NO_SUCH_SETTING, NO_SUCH_SETTING, NO_SUCH_SETTING, LAID);
    }

    /**
     * As the laws of values have them, and the gate is moved after so many rows on average: within what was caught, beyond it, nobody knows
     * where.
     */
    private static Rows moving(long seed, int size, int rowsBetween, boolean inOrder) {
        Rows rows = RowSumsLawsTest.rows(seed, size, inOrder);
        SplittableRandom random = new SplittableRandom(seed);
        double[] settings = new double[size];
        for (int i = 0; i < size; i++) {
            int odd = random.nextInt(20);
            settings[i] = i > 0 && random.nextInt(rowsBetween) > 0
                    ? settings[i - 1]
                    : odd == 0 ? Double.NaN : odd == 1 ? -1 : (1.95 + 2.1 * random.nextDouble()) * INCH;
        }
        return new Rows(rows.times(), rows.counts(), settings, new int[0], rows.modes());
    }

    @Property
    void columnsAndSingleRowsGiveTheSameWhereTheGateMoves(
            @ForAll long seed,
            @ForAll @IntRange(max = 300) int size,
            @ForAll @IntRange(min = 1, max = 40) int rowsBetween,
            @ForAll boolean inOrder) {
        Rows rows = moving(seed, size, rowsBetween, inOrder);

        assertThat(evaluated(evaluator, rows)).isEqualTo(Trucks.stepped(evaluator, rows));
    }

    /** A truck that goes on and on: all its rows but the first two are taken many at a time. */
    @Property(tries = 300)
    void columnsAndSingleRowsGiveTheSameWhereOnlyTheGateMoves(
            @ForAll long seed,
            @ForAll @IntRange(max = 1500) int size,
            @ForAll @IntRange(min = 1, max = 60) int rowsBetween) {
        SplittableRandom random = new SplittableRandom(seed);
        double[] inches = new double[size];
        long[] counts = new long[size];
        for (int i = 0; i < size; i++) {
            inches[i] = i > 0 && random.nextInt(rowsBetween) > 0 ? inches[i - 1] : 2 + 2 * random.nextDouble();
            counts[i] = i == 0 ? 0 : counts[i - 1] + random.nextInt(90);
        }
        Rows gates = rows(inches);
        Rows rows = new Rows(gates.times(), counts, gates.settings(), new int[0], new byte[0]);

        assertThat(evaluated(evaluator, rows)).isEqualTo(Trucks.stepped(evaluator, rows));
    }

    @Property
    void partsMergeToTheWholeWhereTheGateMoves(
            @ForAll long seed,
            @ForAll @IntRange(max = 200) int size,
            @ForAll @IntRange(max = 200) int cut,
            @ForAll @IntRange(min = 1, max = 40) int rowsBetween) {
        Rows rows = moving(seed, size, rowsBetween, true);
        RowSums early = evaluator.sums();
        RowSums late = evaluator.sums();
        long[] amounts = new long[size];
        byte[] statuses = new byte[size];
        int border = Math.min(cut, size);
        evaluator.evaluate(rows, 0, border, evaluator.start(), early, amounts, statuses);
        evaluator.evaluate(rows, border, size, evaluator.start(), late, amounts, statuses);

        assertThat(evaluator.merged(early, late))
                .isEqualTo(evaluated(evaluator, rows).sums());
    }

    @Test
    void theCurvesOwnUncertaintyIsThatOfTheSettings() {
        AppliedTotal total = evaluator.total(evaluated(evaluator, rows(2, 2, 4)).sums());
        double expected = 0;
        for (double inches : new double[] {2, 4}) {
            expected += 1e6
                    * Amounts.in(
                            CURVE.predict(Setting.height(Amounts.of(inches, SpreadingUnits.INCH)))
                                    .dischargePerRevolution()
                                    .standardUncertainty()
                                    .orElseThrow(),
                            SpreadingUnits.KILOGRAM_PER_REVOLUTION);
        }
        assertThat((double) total.sharedErrors().get("curve of salt from 2026-11-01T12:00:00Z"))
                .isCloseTo(expected, within(1e-3 * expected));
        assertThat(total.sharedErrors()).containsKey("scale");
    }

    @Test
    void aCurveStandsAlone() {
        TimelineEntry curve = TimelineEntry.curve(START, "1", CURVE);
        assertThatThrownBy(() -> evaluator(COUNTER, curve, Trucks.chain(START, 4, 2)))
                .isInstanceOf(InvalidInputException.class)
                .hasMessageContaining(
                        "entries of slot 1 from 2026-11-01T12:00:00Z must be values of one material and one sensor at"
                                + " different settings, or one curve alone, or nothing alone: a curve and salt at 4 in by");
        DischargeCurve one = DischargeCurve.fit(List.of(caught(2, 150), caught(2, 151)), CurveModel.PROPORTIONAL);
        assertThatThrownBy(() -> evaluator(COUNTER, TimelineEntry.curve(START, "1", one)))
                .hasMessageContaining("curve must be one caught at two settings or more");
    }
}
