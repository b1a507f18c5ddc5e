package org.gritwright.core.history.drift;

import static org.assertj.core.api.Assertions.assertThat;
import static org.gritwright.core.history.Happenings.TWO;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.function.Predicate;
import javax.measure.quantity.Dimensionless;
import org.gritwright.core.control.Goal;
import org.gritwright.core.history.Happenings;
import org.gritwright.core.judgement.Tolerance;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.junit.jupiter.api.Test;

/** Years of trucks whose truth is known. The numbers allowed for are those of a binomial distribution, ±3.3 standard deviations. */
class DriftSimulationTest {
    private static final int TRUCKS = 600;

    private static boolean isBetween(int count, double chance, int of) {
        double deviation = Math.sqrt(of * chance * (1 - chance));
        return Math.abs(count - of * chance) <= 3.3 * deviation;
    }

    /** The scale's error, which all values share, and the level, which nobody knows, raise no alarm by themselves. */
    @Test
    void chartsOfTrucksInOrderAlarmAsRarelyAsTheyAreDesignedTo() {
        int within = 30;
        double chance = 0.1;
        DriftRule rule = DriftRule.of(Simulated.between(), new Goal.FalseAlarm(chance, within));
        SplittableRandom random = new SplittableRandom(16);
        int ewma = 0;
        int cusum = 0;
        for (int truck = 0; truck < TRUCKS; truck++) {
            DriftChart chart = DriftChart.of(Simulated.stretch(random, within + 1, 0), rule);
            ewma += any(
                    chart, point -> point.ewma().flatMap(one -> one.signal()).isPresent());
            cusum += any(
                    chart, point -> point.cusum().flatMap(one -> one.signal()).isPresent());
        }

        assertThat(isBetween(ewma, chance, TRUCKS)).as("EWMA: " + ewma).isTrue();
        assertThat(isBetween(cusum, chance, TRUCKS)).as("CUSUM: " + cusum).isTrue();
    }

    /** A calibration and the verification after it are of one load: they deviate from other days together. */
    @Test
    void twoValuesADayRaiseNoMoreFalseAlarms() {
        int within = 30;
        double chance = 0.1;
        DriftRule rule = DriftRule.of(Simulated.between(), new Goal.FalseAlarm(chance, within));
        SplittableRandom random = new SplittableRandom(17);
        int ewma = 0;
        int cusum = 0;
        for (int truck = 0; truck < TRUCKS; truck++) {
            DriftChart chart = DriftChart.of(Simulated.stretch(random, within + 1, 0, 2), rule);
            ewma += any(
                    chart, point -> point.ewma().flatMap(one -> one.signal()).isPresent());
            cusum += any(
                    chart, point -> point.cusum().flatMap(one -> one.signal()).isPresent());
        }

        assertThat(isBetween(ewma, chance, TRUCKS)).as("EWMA: " + ewma).isTrue();
        assertThat(isBetween(cusum, chance, TRUCKS)).as("CUSUM: " + cusum).isTrue();
    }

    private static int any(DriftChart chart, Predicate<DriftChart.Point> alarms) {
        return chart.points().stream().anyMatch(alarms) ? 1 : 0;
    }

    /** A fleet of 24 trucks with two points each: one false alarm a season of ten values, on average, from both charts together. */
    @Test
    void aFleetsFalseAlarmsHoldToTheStatedNumber() {
        DriftRule rule = DriftRule.forFleet(Simulated.between(), 1, 48, 10);
        SplittableRandom random = new SplittableRandom(7);
        int seasons = 25;
        int alarms = 0;
        for (int chart = 0; chart < 48 * seasons; chart++) {
            alarms += any(DriftChart.of(Simulated.stretch(random, 11, 0), rule), DriftChart.Point::isSignal);
        }

        // Both charts often alarm together, so that there are fewer than one a season.
        assertThat(alarms / (double) seasons).isBetween(0.4, 1.15);
    }

    @Test
    void aDriftIsFoundBeforeItHasGrownToTheTolerance() {
        DriftRule rule = DriftRule.forFleet(Simulated.between(), 1, 48, 30);
        SplittableRandom random = new SplittableRandom(3);
        int found = 0;
        for (int truck = 0; truck < 200; truck++) {
            // Two tenths of a per cent in two weeks: 5 per cent in the year.
            DriftChart chart = DriftChart.of(Simulated.stretch(random, 26, -0.002), rule);
            found += chart.standingSignal().isPresent()
                            || Trend.of(chart(chart), rule.betweenDays())
                                    .filter(line -> line.isShown(rule.trendRisk()))
                                    .isPresent()
                    ? 1
                    : 0;
        }

        assertThat(found).isGreaterThanOrEqualTo(190);
    }

    private static Stretch chart(DriftChart chart) {
        return new Stretch(
                Optional.empty(),
                chart.points().stream().map(DriftChart.Point::implied).toList());
    }

    @Test
    void theIntervalOfALineHoldsTheTruthAsOftenAsItSays() {
        assertIntervalHolds(1);
    }

    @Test
    void theIntervalOfALineThroughTwoValuesADayDoesToo() {
        assertIntervalHolds(2);
    }

    private static void assertIntervalHolds(int aDay) {
        SplittableRandom random = new SplittableRandom(11);
        double perYear = -0.002 * 365.25 / Simulated.DAYS_APART;
        int holds = 0;
        for (int truck = 0; truck < TRUCKS; truck++) {
            Trend line = Trend.of(Simulated.stretch(random, 15, -0.002, aDay), Simulated.between())
                    .orElseThrow();
            double found = Amounts.si(Dimensionless.class, line.perYear().value());
            double half = Amounts.si(
                    Dimensionless.class,
                    line.perYear().expandedUncertainty(0.95).orElseThrow());
            holds += Math.abs(found - Math.expm1(perYear)) <= half ? 1 : 0;
        }

        assertThat(isBetween(holds, 0.95, TRUCKS)).as("held: " + holds).isTrue();
    }

    @Test
    void aLineWithoutDriftIsTakenForOneAtTheStatedRisk() {
        SplittableRandom random = new SplittableRandom(12);
        int shown = 0;
        for (int truck = 0; truck < TRUCKS; truck++) {
            shown += Trend.of(Simulated.stretch(random, 15, 0), Simulated.between())
                            .orElseThrow()
                            .isShown(0.05)
                    ? 1
                    : 0;
        }

        assertThat(isBetween(shown, 0.05, TRUCKS)).as("shown: " + shown).isTrue();
    }

    /**
     * The day on which the error really leaves ±4 % lies between the earliest and the latest day in at least 95 %: the interval of a day also
     * allows for how much that day may differ from the line.
     */
    @Test
    void theDaysBetweenWhichAnErrorLeavesTheToleranceHoldTheTrueDay() {
        SplittableRandom random = new SplittableRandom(13);
        double perValue = -0.002;
        double values = Math.log(1 / 1.04) / perValue;
        Instant truth = Simulated.FIRST
                .atStartOfDay()
                .toInstant(Happenings.YARD)
                .plus(Duration.ofSeconds((long) (values * Simulated.DAYS_APART * 86_400)));
        int holds = 0;
        int told = 0;
        for (int truck = 0; truck < TRUCKS; truck++) {
            Stretch stretch = Simulated.stretch(random, 15, perValue);
            Trend line = Trend.of(stretch, Simulated.between()).orElseThrow();
            Trend.Leaving leaving = line.leaves(
                    Happenings.value(TWO, Simulated.POUNDS),
                    Tolerance.percent(4),
                    stretch.implied().get(0).at(),
                    3660);
            told += leaving.latest().isPresent() ? 1 : 0;
            holds += leaving.earliest().filter(at -> !at.isAfter(truth)).isPresent()
                            && leaving.latest().map(at -> !at.isBefore(truth)).orElse(true)
                    ? 1
                    : 0;
        }

        assertThat(holds).isGreaterThanOrEqualTo((int) (0.95 * TRUCKS));
        // A line whose slope isn't sure may never leave it: then there is no latest day.
        assertThat(told).isBetween((int) (0.7 * TRUCKS), (int) (0.85 * TRUCKS));
    }

    @Test
    void howMuchDaysVaryIsFoundFromTheFleetAndAFewTrucksThatDriftDontSetIt() {
        SplittableRandom random = new SplittableRandom(14);
        List<DischargeHistory> fleet = new ArrayList<>();
        for (int truck = 0; truck < 60; truck++) {
            // Three of them wear by two per cent from one value to the next.
            fleet.add(new DischargeHistory(
                    "T-" + truck, TWO.key(), List.of(Simulated.stretch(random, 12, truck % 20 == 0 ? -0.02 : 0))));
        }
        BetweenDays found = BetweenDays.of(fleet, BetweenDays.assumed(Amounts.of(5, SpreadingUnits.PERCENT)));

        assertThat(found.pairs()).isEqualTo(60 * 11);
        assertThat(found.relative()).isBetween(0.0085, 0.012);
    }

    @Test
    void aNewestValueShiftedByTenDeviationsAlarms() {
        DriftRule rule = DriftRule.of(Simulated.between(), Goal.average(500));
        List<Implied> implied = new ArrayList<>(
                Simulated.stretch(new SplittableRandom(1), 12, 0).implied());
        implied.add(
                Simulated.stretch(new SplittableRandom(1), 13, -0.05).implied().get(12));
        DriftChart chart = DriftChart.of(new Stretch(Optional.empty(), implied), rule);

        assertThat(chart.standingSignal()).contains(implied.get(12).by());
        assertThat(chart.points()).filteredOn(DriftChart.Point::isSignal).hasSize(1);
    }
}
