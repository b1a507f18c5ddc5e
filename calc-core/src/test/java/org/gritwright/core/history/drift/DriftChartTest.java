package org.gritwright.core.history.drift;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.Samples.assertRefused;
import static org.gritwright.core.history.Happenings.TRUCK;
import static org.gritwright.core.history.Happenings.TWO;
import static org.gritwright.core.history.Happenings.calibrated;
import static org.gritwright.core.history.Happenings.day;
import static org.gritwright.core.history.Happenings.event;
import static org.gritwright.core.history.Happenings.history;
import static org.gritwright.core.history.Happenings.value;
import static org.gritwright.core.history.Happenings.verified;

import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javax.measure.quantity.Dimensionless;
import org.gritwright.core.Samples;
import org.gritwright.core.control.Goal;
import org.gritwright.core.history.Event;
import org.gritwright.core.history.What;
import org.gritwright.core.judgement.Tolerance;
import org.gritwright.core.judgement.Verdict;
import org.gritwright.core.statistics.Student;
import org.gritwright.core.telemetry.SharedError;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.quantity.DischargePerRevolution;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.LUDecomposition;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;
import org.junit.jupiter.api.Test;

class DriftChartTest {
    private static final BetweenDays BETWEEN = BetweenDays.assumed(Amounts.of(0.8, SpreadingUnits.PERCENT));
    private final DriftRule rule = DriftRule.of(BETWEEN, Goal.average(500));

    private static Stretch stretch(Event... events) {
        return DischargeHistory.of(history(events), TRUCK, TWO.key()).current();
    }

    /** Errors in per cent, in steps of a week from January 1 on. */
    private static List<Event> weekly(double... percent) {
        List<Event> events = new ArrayList<>();
        for (int i = 0; i < percent.length; i++) {
            events.add(verified(
                    "v" + i,
                    day(LocalDate.of(2026, 1, 1).plusDays(7L * i).toString()),
                    value(TWO, 25),
                    percent[i],
                    Verdict.WITHIN_TOLERANCE));
        }
        return events;
    }

    private static Stretch of(List<Event> events) {
        return stretch(events.toArray(new Event[0]));
    }

    /** By the definition: each value less the best estimate from those before it, over the standard deviation of that difference. */
    @Test
    void aStandardizedValueIsItsDifferenceFromTheBestEstimateBeforeIt() {
        double[] errors = {0.5, -0.8, 1.1, 0.2, 2.0};
        DriftChart chart = DriftChart.of(of(weekly(errors)), rule);

        for (int i = 1; i < errors.length; i++) {
            RealMatrix v = covariance(i + 1);
            RealMatrix before = v.getSubMatrix(0, i - 1, 0, i - 1);
            RealVector ones = new ArrayRealVector(i, 1.0);
            RealMatrix inverse = new LUDecomposition(before).getSolver().getInverse();
            double information = ones.dotProduct(inverse.operate(ones));
            RealVector y = new ArrayRealVector(i);
            for (int j = 0; j < i; j++) {
                y.setEntry(j, -Math.log1p(errors[j] / 100));
            }
            double level = ones.dotProduct(inverse.operate(y)) / information;
            RealVector cross = v.getRowVector(i).getSubVector(0, i);
            RealVector weights = inverse.operate(cross);
            double expected = level + weights.dotProduct(y.subtract(ones.mapMultiply(level)));
            double slack = 1 - weights.dotProduct(ones);
            double variance = v.getEntry(i, i) - cross.dotProduct(weights) + slack * slack / information;
            double wanted = (-Math.log1p(errors[i] / 100) - expected) / Math.sqrt(variance);

            assertThat(chart.points().get(i).standardized().orElseThrow()).isCloseTo(wanted, within(1e-9));
        }
    }

    /** Own 0.6 % and 0.8 % from day to day; 0.2 % of the scale in all. */
    private static RealMatrix covariance(int n) {
        RealMatrix v = new Array2DRowRealMatrix(n, n);
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < n; j++) {
                v.setEntry(i, j, (i == j ? 0.006 * 0.006 + 0.008 * 0.008 : 0) + 0.002 * 0.002);
            }
        }
        return v;
    }

    @Test
    void anErrorThatAllShareMovesNoPoint() {
        DriftChart one = DriftChart.of(of(weekly(0, 1, -1, 0.5)), rule);
        List<Event> shifted = weekly(
                100 * Math.expm1(0.03),
                100 * Math.expm1(Math.log1p(0.01) + 0.03),
                100 * Math.expm1(Math.log1p(-0.01) + 0.03),
                100 * Math.expm1(Math.log1p(0.005) + 0.03));

        assertThat(DriftChart.of(of(shifted), rule).points())
                .zipSatisfy(
                        one.points(),
                        (a, b) -> assertThat(a.standardized().orElse(0.0))
                                .isCloseTo(b.standardized().orElse(0.0), within(1e-9)));
    }

    @Test
    void theFirstValueGivesNoPointAndDeviationsAreFromIt() {
        DriftChart chart = DriftChart.of(of(weekly(0, 4)), rule);

        assertThat(chart.points().get(0).isFirst()).isTrue();
        assertThat(chart.points().get(0).isSignal()).isFalse();
        assertThat(chart.points().get(1).isFirst()).isFalse();
        assertThat(Amounts.si(Dimensionless.class, chart.points().get(1).deviation()))
                .isCloseTo(1 / 1.04 - 1, within(1e-12));
        assertThat(DriftChart.of(stretch(), rule).points()).isEmpty();
    }

    @Test
    void theLinesOfAFleetShareOneRisk() {
        assertThat(DriftRule.forFleet(rule.betweenDays(), 1, 50, 10).trendRisk())
                .isCloseTo(0.01 / 50, within(1e-15));
        assertThat(DriftRule.of(rule.betweenDays(), Goal.average(370)).trendRisk())
                .isEqualTo(0.01);
    }

    @Test
    void fewerThanFivePointsAreFew() {
        assertThat(DriftChart.of(of(weekly(0, 0, 0, 0, 0)), rule).isFew()).isTrue();
        assertThat(DriftChart.of(of(weekly(0, 0, 0, 0, 0, 0)), rule).isFew()).isFalse();
        assertThat(DriftChart.of(stretch(), rule).isFew()).isTrue();
    }

    @Test
    void aCalibrationAfterASignalBeginsTheChartsAnewAndOneBeforeDoesnt() {
        List<Event> events = weekly(0, 0.2, -0.2, 0, 12, 12, 12);
        assertThat(DriftChart.of(of(events), rule).standingSignal())
                .map(Event::id)
                .contains("v4");

        List<Event> known = new ArrayList<>(events);
        known.add(calibrated("k", day("2026-02-20"), TWO, 22.3));
        DriftChart anew = DriftChart.of(of(known), rule);
        assertThat(anew.standingSignal()).isEmpty();
        assertThat(anew.clearedSignals()).extracting(Event::id).containsExactly("v4");
        assertThat(DriftChart.of(of(events), rule).clearedSignals()).isEmpty();
        assertThat(DriftChart.of(stretch(), rule).clearedSignals()).isEmpty();
        assertThat(DriftChart.of(stretch(), rule).standingSignal()).isEmpty();
        assertThat(anew.points().get(7).isFirst()).isTrue();
        assertThat(anew.points().get(4).isSignal()).isTrue();
        assertThat(anew.isFew()).isTrue();

        for (String before : List.of("2026-01-02", "2026-01-09", "2026-01-16")) {
            List<Event> early = new ArrayList<>(events);
            early.add(calibrated("k", day(before), TWO, 25));
            assertThat(DriftChart.of(of(early), rule).points())
                    .filteredOn(DriftChart.Point::isFirst)
                    .hasSize(1);
        }
    }

    private static Event ofFewDegrees(String id, String on, double percent, double degrees) {
        return event(
                id,
                day(on),
                new What.Verified(
                        value(TWO, 25),
                        Measured.of(
                                Amounts.of(percent, SpreadingUnits.PERCENT),
                                Amounts.of(0.6 * (1 + percent / 100), SpreadingUnits.PERCENT),
                                degrees),
                        List.of(),
                        Verdict.WITHIN_TOLERANCE,
                        1,
                        Samples.pounds(240),
                        Optional.empty()));
    }

    /** Where nothing varies from day to day, a residual of few degrees of freedom is as unlikely as by Student's t. */
    @Test
    void fewDegreesOfFreedomCountAsStudentsDistributionHasIt() {
        DriftRule certain = DriftRule.of(BetweenDays.assumed(Amounts.of(0, SpreadingUnits.PERCENT)), Goal.average(500));
        double t = -Math.log1p(0.03) / (0.006 * Math.sqrt(2));
        DriftChart few = DriftChart.of(
                stretch(ofFewDegrees("1", "2026-01-01", 0, 3), ofFewDegrees("2", "2026-01-08", 3, 3)), certain);
        DriftChart many = DriftChart.of(
                stretch(
                        ofFewDegrees("1", "2026-01-01", 0, Double.POSITIVE_INFINITY),
                        ofFewDegrees("2", "2026-01-08", 3, Double.POSITIVE_INFINITY)),
                certain);
        double z = few.points().get(1).standardized().orElseThrow();

        assertThat(many.points().get(1).standardized().orElseThrow()).isCloseTo(t, within(1e-9));
        assertThat(Student.of(Double.POSITIVE_INFINITY).probabilityAbove(-z))
                .isCloseTo(Student.of(3).probabilityAbove(-t), within(1e-9));
        assertThat(z).isNegative();
    }

    /** 0.6 % known from 3 degrees of freedom beside 0.8 % from day to day that counts as known: 3·(0.6² + 0.8²)² ÷ 0.6⁴ of them. */
    @Test
    void whatVariesFromDayToDayAddsDegreesOfFreedom() {
        double t = -Math.log1p(0.03) / (0.01 * Math.sqrt(2));
        DriftChart few = DriftChart.of(
                stretch(ofFewDegrees("1", "2026-01-01", 0, 3), ofFewDegrees("2", "2026-01-08", 3, 3)), rule);
        double z = few.points().get(1).standardized().orElseThrow();

        assertThat(Student.of(Double.POSITIVE_INFINITY).probabilityAbove(-z))
                .isCloseTo(Student.of(3 / Math.pow(0.36, 2)).probabilityAbove(-t), within(1e-9));
    }

    @Test
    void whatIsCertainAndDoesntVaryCantBeCharted() {
        DriftRule certain = DriftRule.of(BetweenDays.assumed(Amounts.of(0, SpreadingUnits.PERCENT)), Goal.average(500));
        Event exact = event(
                "1",
                day("2026-01-01"),
                new What.Calibrated(
                        TWO,
                        Measured.of(
                                Amounts.of(25, SpreadingUnits.POUND_PER_REVOLUTION),
                                Amounts.of(0, SpreadingUnits.POUND_PER_REVOLUTION),
                                5),
                        List.of(),
                        3,
                        Optional.empty()));

        assertRefused(
                "uncertainty of the discharge of 2026-01-01T05:00:00Z must be greater than 0, or a deviation from day to day beside it: 0.0",
                () -> DriftChart.of(stretch(exact), certain));
    }

    @Test
    void whatHasNoUncertaintyIsLeftOut() {
        Event once = event(
                "once",
                day("2026-01-04"),
                new What.Calibrated(
                        TWO,
                        Measured.once(Amounts.of(50, SpreadingUnits.POUND_PER_REVOLUTION)),
                        List.of(),
                        1,
                        Optional.empty()));
        List<Event> events = weekly(0, 0.1, 0.2);
        events.add(once);

        assertThat(DriftChart.of(of(events), rule).points()).hasSize(3);
        assertThat(Trend.of(of(events), BETWEEN).orElseThrow().values()).isEqualTo(3);
    }

    /** Equal weights: the line is that of ordinary least squares, and a common error moves only its level. */
    @Test
    void theLineIsThatOfGeneralizedLeastSquares() {
        Trend line = Trend.of(of(weekly(0, 1, 2, 3)), BETWEEN).orElseThrow();
        double perWeek = -(3 * Math.log1p(0.03) + Math.log1p(0.02) - Math.log1p(0.01)) / 10;
        double weeks = 365.25 / 7;
        double deviation = Math.hypot(0.006, 0.008) / Math.sqrt(5) * weeks;

        assertThat(Amounts.si(Dimensionless.class, line.perYear().value()))
                .isCloseTo(Math.expm1(perWeek * weeks), within(1e-9));
        assertThat(Amounts.si(
                        Dimensionless.class,
                        line.perYear().standardUncertainty().orElseThrow()))
                .isCloseTo(Math.exp(perWeek * weeks) * deviation, within(1e-9));
        double middle = Amounts.si(
                        DischargePerRevolution.class,
                        line.discharge(Instant.parse("2026-01-11T17:00:00Z")).value())
                / 0.45359237;
        assertThat(middle)
                .isCloseTo(25 * Math.exp(-(Math.log1p(0.01) + Math.log1p(0.02) + Math.log1p(0.03)) / 4), within(1e-9));
        assertThat(line.toString()).matches("-4\\d\\.\\d ± \\d+\\.\\d % a year");
    }

    @Test
    void aLineNeedsThreeValuesOfTwoTimes() {
        assertThat(Trend.of(of(weekly(0, 1)), BETWEEN)).isEmpty();
        Event[] oneTime = {
            verified("1", day("2026-01-01"), value(TWO, 25), 1),
            verified("2", day("2026-01-01"), value(TWO, 25), 2),
            verified("3", day("2026-01-01"), value(TWO, 25), 3)
        };
        assertThat(Trend.of(stretch(oneTime), BETWEEN)).isEmpty();
        assertThat(DriftChart.of(stretch(oneTime), rule).points()).hasSize(3);
    }

    @Test
    void anErrorThatIsOutAlreadyHasLeftOnTheFirstDay() {
        Trend line = Trend.of(of(weekly(0, 1, 2, 3)), BETWEEN).orElseThrow();
        Instant from = Instant.parse("2027-01-01T00:00:00Z");
        Trend.Leaving out = line.leaves(value(TWO, 25), Tolerance.percent(4), from, 10);

        assertThat(out.earliest()).contains(from);
        assertThat(out.expected()).contains(from);
        assertRefused(
                "days to look ahead must be 1 to 3660: 0",
                () -> line.leaves(value(TWO, 25), Tolerance.percent(4), from, 0));
    }

    @Test
    void anErrorThatStaysWithinNeverLeaves() {
        Trend line = Trend.of(of(weekly(0, 0.01, 0, 0.01, 0, 0.01, 0)), BETWEEN).orElseThrow();
        Trend.Leaving in = line.leaves(value(TWO, 25), Tolerance.percent(20), Instant.parse("2026-01-20T00:00:00Z"), 5);

        assertThat(in).isEqualTo(new Trend.Leaving(Optional.empty(), Optional.empty(), Optional.empty()));
    }

    private static DischargeHistory known(Event... events) {
        return DischargeHistory.of(history(events), TRUCK, TWO.key());
    }

    @Test
    void fewPairsOfDaysDontTellHowDaysVary() {
        BetweenDays otherwise = BetweenDays.assumed(Amounts.of(2, SpreadingUnits.PERCENT));

        assertThat(BetweenDays.of(
                        List.of(known(weekly(0, 3, 0, 3, 0, 3, 0, 3, 0, 3).toArray(new Event[0]))), otherwise))
                .isEqualTo(otherwise);
        assertThat(BetweenDays.of(
                                List.of(known(
                                        weekly(0, 3, 0, 3, 0, 3, 0, 3, 0, 3, 0).toArray(new Event[0]))),
                                otherwise)
                        .pairs())
                .isEqualTo(10);
    }

    /** All differences are d = ln 1.03: then 2τ² = (d ÷ 0.6745)² − 2·0.6 %², as the scale drops out. */
    @Test
    void howDaysVaryIsWhatTheCatchesDontExplain() {
        BetweenDays found = BetweenDays.of(
                List.of(known(weekly(0, 3, 0, 3, 0, 3, 0, 3, 0, 3, 0).toArray(new Event[0]))),
                BetweenDays.assumed(Amounts.of(2, SpreadingUnits.PERCENT)));
        double half = Student.of(Double.POSITIVE_INFINITY).coverageFactor(0.5);
        double wanted = Math.sqrt(Math.pow(Math.log(1.03) / half, 2) / 2 - 0.006 * 0.006);

        assertThat(found.relative()).isCloseTo(wanted, within(1e-9));
    }

    /** Five differences of ln 1.01 and five of ln 1.03: half of ten are below the middle between both. */
    @Test
    void theMiddleOfAnEvenNumberOfDifferencesLiesBetweenTwo() {
        BetweenDays found = BetweenDays.of(
                List.of(known(weekly(1, 0, 1, 0, 1, 0, 3, 0, 3, 0, 3).toArray(new Event[0]))), BETWEEN);

        assertThat(found.relative()).isCloseTo(deviationOf((Math.log(1.01) + Math.log(1.03)) / 2), within(1e-9));
    }

    /** Six of ln 1.01 and five of ln 1.03, and then six of ln 1.03. */
    @Test
    void theMiddleOfAnOddNumberOfDifferencesIsOneOfThem() {
        BetweenDays low = BetweenDays.of(
                List.of(known(weekly(0, 1, 0, 1, 0, 1, 0, 3, 0, 3, 0, 3).toArray(new Event[0]))), BETWEEN);
        BetweenDays high = BetweenDays.of(
                List.of(known(weekly(1, 0, 1, 0, 1, 0, 3, 0, 3, 0, 3, 0).toArray(new Event[0]))), BETWEEN);

        assertThat(low.relative()).isCloseTo(deviationOf(Math.log(1.01)), within(1e-9));
        assertThat(high.relative()).isCloseTo(deviationOf(Math.log(1.03)), within(1e-9));
    }

    /** With which half of all differences of two values, each with 0.6 % of its own, are below the number. */
    private static double deviationOf(double median) {
        double half = Student.of(Double.POSITIVE_INFINITY).coverageFactor(0.5);
        return Math.sqrt(Math.pow(median / half, 2) / 2 - 0.006 * 0.006);
    }

    /** Two scales in turns, each uncertain by 0.5 %: their errors don't drop out of a difference. */
    @Test
    void whatTwoScalesDifferByIsNoVariationOfDays() {
        List<Event> events = new ArrayList<>();
        for (int i = 0; i < 11; i++) {
            events.add(event(
                    "v" + i,
                    day(LocalDate.of(2026, 1, 1).plusDays(7L * i).toString()),
                    new What.Verified(
                            value(TWO, 25),
                            Measured.of(
                                    Amounts.of(i % 2 * 3, SpreadingUnits.PERCENT),
                                    Amounts.of(Math.hypot(0.6, 0.5) * (1 + i % 2 * 0.03), SpreadingUnits.PERCENT),
                                    Double.POSITIVE_INFINITY),
                            List.of(new SharedError("scale S-" + i % 2, Amounts.of(0.5, SpreadingUnits.PERCENT))),
                            Verdict.WITHIN_TOLERANCE,
                            1,
                            Samples.pounds(240),
                            Optional.empty())));
        }
        double half = Student.of(Double.POSITIVE_INFINITY).coverageFactor(0.5);
        double wanted = Math.sqrt((Math.pow(Math.log(1.03) / half, 2) - 2 * 0.006 * 0.006 - 2 * 0.005 * 0.005) / 2);

        assertThat(BetweenDays.of(List.of(known(events.toArray(new Event[0]))), BETWEEN)
                        .relative())
                .isCloseTo(wanted, within(1e-9));
    }

    @Test
    void numbersOfPairsAreNeverNegativeAndAHistoryHasAStretch() {
        assertRefused(
                "pairs of days must be 0 or more: -1",
                () -> new BetweenDays(Amounts.of(1, SpreadingUnits.PERCENT), -1));
        assertRefused("stretches must be one or more: none", () -> new DischargeHistory(TRUCK, TWO.key(), List.of()));
    }

    @Test
    void whatTheCatchesExplainAloneIsNoVariation() {
        List<Event> events = weekly(0, 0.1, 0, 0.1, 0, 0.1, 0, 0.1, 0, 0.1, 0);

        assertThat(BetweenDays.of(List.of(known(events.toArray(new Event[0]))), BETWEEN)
                        .relative())
                .isZero();
        assertThat(Whitened.varianceOfWhatIsNotShared(
                        of(events).implied().get(0), of(events).implied().get(1)))
                .isZero();
    }
}
