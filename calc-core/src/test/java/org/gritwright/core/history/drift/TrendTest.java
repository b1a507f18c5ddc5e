package org.gritwright.core.history.drift;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.Samples.assertRefused;
import static org.gritwright.core.history.Happenings.TRUCK;
import static org.gritwright.core.history.Happenings.TWO;
import static org.gritwright.core.history.Happenings.day;
import static org.gritwright.core.history.Happenings.history;
import static org.gritwright.core.history.Happenings.value;
import static org.gritwright.core.history.Happenings.verified;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Optional;
import java.util.function.DoublePredicate;
import org.gritwright.core.history.Event;
import org.gritwright.core.judgement.Tolerance;
import org.gritwright.core.judgement.Verdict;
import org.gritwright.core.statistics.Student;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.quantity.DischargePerRevolution;
import org.junit.jupiter.api.Test;

/**
 * Eight catches a week apart whose error grows by one per cent of the discharge a week. Equal weights: the line is that of ordinary least
 * squares, through the middle of the weeks at 3.5, with σ² = 0.6² + 0.8² %² of each value and 0.2 % of the scale in all.
 */
class TrendTest {
    private static final int WEEKS = 8;
    private static final double MIDDLE = 3.5;
    private static final double VARIANCE = 0.006 * 0.006 + 0.008 * 0.008;

    /** Σ (week − 3.5)². */
    private static final double SQUARES = 42;

    private static final Instant FIRST = Instant.parse("2026-01-01T05:00:00Z");
    private static final Tolerance TOLERANCE = Tolerance.percent(8);

    /** The logarithm of 1 + error grows by as much a week. */
    private static Trend line(double perWeek) {
        Event[] events = new Event[WEEKS];
        for (int i = 0; i < WEEKS; i++) {
            events[i] = verified(
                    "v" + i,
                    day(LocalDate.of(2026, 1, 1).plusDays(7L * i).toString()),
                    value(TWO, 25),
                    100 * Math.expm1(perWeek * i),
                    Verdict.WITHIN_TOLERANCE);
        }
        return Trend.of(
                        DischargeHistory.of(history(events), TRUCK, TWO.key()).current(),
                        BetweenDays.assumed(Amounts.of(0.8, SpreadingUnits.PERCENT)))
                .orElseThrow();
    }

    private static double variance(double week) {
        return VARIANCE / WEEKS + 0.002 * 0.002 + VARIANCE / SQUARES * (week - MIDDLE) * (week - MIDDLE);
    }

    @Test
    void theDischargeByTheLineIsMoreUncertainFarFromTheMiddle() {
        Trend line = line(0.01);
        for (double week : new double[] {-10, 0, 3.5, 4, 20}) {
            Instant at = FIRST.plus(Duration.ofHours((long) (week * 7 * 24)));
            var found = line.discharge(at);

            double pounds = 25 * Math.exp(-0.01 * week);
            assertThat(Amounts.si(DischargePerRevolution.class, found.value()) / 0.45359237)
                    .isCloseTo(pounds, within(1e-9));
            assertThat(Amounts.si(
                                    DischargePerRevolution.class,
                                    found.standardUncertainty().orElseThrow())
                            / 0.45359237)
                    .isCloseTo(pounds * Math.sqrt(variance(week)), within(1e-9));
        }
    }

    /** The first whole day from the first catch on. */
    private static Optional<Instant> firstDay(DoublePredicate isSoInWeek) {
        for (int day = 0; day < 1000; day++) {
            if (isSoInWeek.test(day / 7.0)) {
                return Optional.of(FIRST.plus(Duration.ofDays(day)));
            }
        }
        return Optional.empty();
    }

    private static double half(double week) {
        return Student.of(Double.POSITIVE_INFINITY).coverageFactor(0.95) * Math.sqrt(variance(week) + 0.008 * 0.008);
    }

    @Test
    void aGrowingErrorLeavesTheToleranceWhenItsIntervalItsLineAndAllOfItsIntervalDo() {
        double limit = Math.log(1.08);
        Trend.Leaving leaving = line(0.01).leaves(value(TWO, 25), TOLERANCE, FIRST, 3660);

        assertThat(leaving)
                .isEqualTo(new Trend.Leaving(
                        firstDay(week -> 0.01 * week + half(week) > limit),
                        firstDay(week -> 0.01 * week > limit),
                        firstDay(week -> 0.01 * week - half(week) > limit)));
        assertThat(leaving.earliest().orElseThrow()).isBefore(leaving.expected().orElseThrow());
        assertThat(leaving.expected().orElseThrow())
                .isEqualTo(FIRST.plus(Duration.ofDays(54)))
                .isBefore(leaving.latest().orElseThrow());
    }

    @Test
    void aFallingErrorLeavesItOnTheOtherSide() {
        double limit = Math.log(0.92);

        assertThat(line(-0.01).leaves(value(TWO, 25), TOLERANCE, FIRST, 3660))
                .isEqualTo(new Trend.Leaving(
                        firstDay(week -> -0.01 * week - half(week) < limit),
                        firstDay(week -> -0.01 * week < limit),
                        firstDay(week -> -0.01 * week + half(week) < limit)));
    }

    @Test
    void anotherValueInTheDisplayHasAnotherError() {
        double limit = Math.log(1.08);
        double more = Math.log(26.0 / 25);

        assertThat(line(0.01).leaves(value(TWO, 26), TOLERANCE, FIRST, 3660).expected())
                .isEqualTo(firstDay(week -> more + 0.01 * week > limit));
    }

    @Test
    void theLastDayToLookAtCounts() {
        assertThat(line(0.01).leaves(value(TWO, 25), TOLERANCE, FIRST, 54).expected())
                .isPresent();
        assertThat(line(0.01).leaves(value(TWO, 25), TOLERANCE, FIRST, 53).expected())
                .isEmpty();
        Instant before = FIRST.plus(Duration.ofDays(53));
        assertThat(line(0.01).leaves(value(TWO, 25), TOLERANCE, before, 1).expected())
                .contains(FIRST.plus(Duration.ofDays(54)));
        assertRefused(
                "days to look ahead must be 1 to 3660: 3661",
                () -> line(0.01).leaves(value(TWO, 25), TOLERANCE, FIRST, 3661));
    }
}
