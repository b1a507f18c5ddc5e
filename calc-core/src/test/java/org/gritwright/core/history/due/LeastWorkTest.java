package org.gritwright.core.history.due;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.Samples.assertRefused;
import static org.gritwright.core.history.Happenings.TWO;
import static org.gritwright.core.history.Happenings.calibrated;
import static org.gritwright.core.history.Happenings.changed;
import static org.gritwright.core.history.Happenings.day;
import static org.gritwright.core.history.Happenings.entered;
import static org.gritwright.core.history.Happenings.event;
import static org.gritwright.core.history.Happenings.history;
import static org.gritwright.core.history.Happenings.pounds;
import static org.gritwright.core.history.Happenings.value;
import static org.gritwright.core.history.Happenings.verified;

import java.time.LocalDate;
import java.time.Period;
import java.util.List;
import java.util.Optional;
import javax.measure.Quantity;
import org.gritwright.core.Samples;
import org.gritwright.core.calibration.CalibrationFactor;
import org.gritwright.core.calibration.CalibrationInForce;
import org.gritwright.core.calibration.Change;
import org.gritwright.core.history.Event;
import org.gritwright.core.history.What;
import org.gritwright.core.judgement.Tolerance;
import org.gritwright.core.judgement.Verdict;
import org.gritwright.core.statistics.Student;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.junit.jupiter.api.Test;

/** Catches of these tests are uncertain by 0.6 % of their own and 0.2 % of their scale; the tolerance is 4 %. */
class LeastWorkTest {
    private static final Tolerance TOLERANCE = Tolerance.percent(4);
    private static final double NORMAL = Student.of(Double.POSITIVE_INFINITY).coverageFactor(0.95);

    /** The error about which an interval of so many catches just reaches 4 %. */
    private static double errorThatTakes(double catches) {
        return 0.04 - NORMAL * Math.sqrt(0.006 * 0.006 / catches + 0.002 * 0.002);
    }

    private static Optional<Event> caught(double percent) {
        return Optional.of(verified("1", day("2026-10-19"), value(TWO, 25), percent));
    }

    private static Work.Proof proof(double error, Optional<Event> lastCaught) {
        return LeastWork.proof(error, TOLERANCE, lastCaught, TWO);
    }

    private static Work.Verify catches(int number) {
        return new Work.Verify(number, Optional.of(Samples.pounds(240)));
    }

    @Test
    void anIntervalThatJustReachesTheToleranceIsWithinIt() {
        for (int number = 1; number <= 10; number++) {
            assertThat(proof(errorThatTakes(number), caught(0))).isEqualTo(catches(number));
        }
        assertThat(proof(errorThatTakes(4.01), caught(0))).isEqualTo(catches(5));
        assertThat(proof(errorThatTakes(10.01), caught(0))).isEqualTo(new Work.PlanAnew());
    }

    /** u(e) ÷ (1 + e) is 0.6 % and 0.2 % of these catches too, however far off they were. */
    @Test
    void aCatchIsAsUncertainAsItsMassHoweverFarOffTheValueWas() {
        assertThat(proof(errorThatTakes(3.9), caught(7))).isEqualTo(catches(4));
        assertThat(proof(errorThatTakes(4.1), caught(7))).isEqualTo(catches(5));
        assertThat(proof(errorThatTakes(3.9), caught(-7))).isEqualTo(catches(4));
    }

    @Test
    void anErrorAtTheToleranceThatIsCertainTakesOneCatch() {
        Event certain = event(
                "1",
                day("2026-10-19"),
                new What.Verified(
                        value(TWO, 25),
                        Measured.of(
                                Amounts.of(4, SpreadingUnits.PERCENT),
                                Amounts.of(0, SpreadingUnits.PERCENT),
                                Double.POSITIVE_INFINITY),
                        List.of(),
                        Verdict.WITHIN_TOLERANCE,
                        1,
                        Samples.pounds(240),
                        Optional.empty()));

        assertThat(proof(TOLERANCE.ratio(), Optional.of(certain))).isEqualTo(catches(1));
    }

    /** Two catches of 480 lb, uncertain by 0.6 % together: one of 240 lb is by 0.6·√2 %, which takes twice as many. */
    @Test
    void ofSeveralCatchesEachWeighsItsPartAndScattersMore() {
        Event two = event(
                "1",
                day("2026-10-19"),
                new What.Verified(
                        value(TWO, 25),
                        Measured.of(
                                Amounts.of(0, SpreadingUnits.PERCENT),
                                Amounts.of(0.6, SpreadingUnits.PERCENT),
                                Double.POSITIVE_INFINITY),
                        List.of(),
                        Verdict.WITHIN_TOLERANCE,
                        2,
                        Samples.pounds(480),
                        Optional.empty()));

        assertThat(proof(0.04 - NORMAL * 0.006 / Math.sqrt(3.9 / 2), Optional.of(two)))
                .isEqualTo(catches(4));
    }

    /** Three catches, uncertain by 0.5 % together beside 0.2 % of the scale: 1.96·√(3·0.005²/n + 0.002²) is below 0.75 % from n = 8 on. */
    @Test
    void aCalibrationTellsHowCatchesScatterAndNotHowMuchTheyHaveToCatch() {
        assertThat(proof(0.0325, Optional.of(calibrated("1", day("2026-10-19"), TWO, 25))))
                .isEqualTo(new Work.Verify(8, Optional.empty()));
    }

    private static Work work(DueRule rule, Event... events) {
        return DueList.of(history(events), DueSettings.usual(TOLERANCE).by(List.of(rule)), LocalDate.of(2026, 12, 1))
                .get(0)
                .work();
    }

    private static CalibrationFactor corrected(CalibrationInForce held, double percent) {
        Work work = work(
                new DueRule.WhileNotProven(),
                entered("0", day("2026-10-18"), held),
                verified("1", day("2026-10-19"), held, percent));
        return ((Work.Correct) work).value();
    }

    @Test
    void theCorrectedValueIsInTheFormAndTheStepOfTheDisplay() {
        CalibrationFactor turns = CalibrationFactor.of(Amounts.of(0.04, SpreadingUnits.REVOLUTION_PER_POUND));
        Optional<Quantity<?>> hundredth = Optional.of(Amounts.of(0.01, SpreadingUnits.POUND_PER_REVOLUTION));

        assertThat(corrected(CalibrationInForce.of(TWO, pounds(25), hundredth), 5))
                .isEqualTo(pounds(23.81));
        assertThat(corrected(CalibrationInForce.of(TWO, pounds(25), hundredth), -5))
                .isEqualTo(pounds(26.32));
        // Of what counts the other way about, the larger number is the smaller discharge.
        assertThat(corrected(CalibrationInForce.of(TWO, turns, Optional.empty()), 5)
                        .value()
                        .getValue()
                        .doubleValue())
                .isCloseTo(0.042, within(1e-12));
    }

    @Test
    void aValueThatIsKnownToBeOffTakesMoreCatchesWhileItIsTheOneToProve() {
        Event entered = entered("0", day("2026-10-18"), value(TWO, 25));
        DueRule age = new DueRule.AfterTime(Period.ofDays(10), ClearedBy.VERIFICATION);
        DueRule unproven = new DueRule.WhileNotProven();

        assertThat(work(age, entered, caught(3.25).orElseThrow())).isEqualTo(catches(4));
        assertThat(work(unproven, entered, verified("1", day("2026-10-19"), value(TWO, 25), -3.25, Verdict.UNDECIDED)))
                .isEqualTo(catches(4));
        // What it was off by says nothing any more after a repair, and a correction or a calibration ends it.
        assertThat(work(
                        unproven,
                        entered,
                        caught(3.25).orElseThrow(),
                        changed("2", day("2026-11-01"), Change.Part.HYDRAULIC)))
                .isEqualTo(catches(1));
        // 25 lb/rev ÷ 1.05.
        assertThat(work(unproven, entered, caught(5).orElseThrow()))
                .isEqualTo(new Work.Correct(pounds(23.809523809523807), catches(1)));
        assertThat(work(
                        new DueRule.AfterTime(Period.ofDays(10), ClearedBy.CALIBRATION),
                        entered,
                        caught(3.25).orElseThrow()))
                .isEqualTo(new Work.Calibrate(catches(1)));
    }

    @Test
    void whatToDoIsSaidInWords() {
        assertThat(new Work.Calibrate(catches(1)).words())
                .isEqualTo("calibrate; then one verification catch of 240 lb would do");
        assertThat(new Work.Verify(2, Optional.empty()).words()).isEqualTo("2 verification catches would do");
        assertRefused("verification catches must be 1 or more: 0", () -> new Work.Verify(0, Optional.empty()));
    }
}
