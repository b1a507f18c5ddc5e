package org.gritwright.core.verification;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.Samples.assertNamesWhatIsMissing;
import static org.gritwright.core.Samples.assertRefused;
import static org.gritwright.core.Samples.augerInForce;
import static org.gritwright.core.Samples.caught;
import static org.gritwright.core.Samples.pounds;

import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import org.gritwright.core.judgement.Tolerance;
import org.gritwright.core.judgement.Verdict;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.junit.jupiter.api.Test;

class VerificationTest {
    private static final Tolerance TOLERANCE = Tolerance.percent(4);

    private static double percent(Quantity<Dimensionless> error) {
        return Amounts.in(error, SpreadingUnits.PERCENT);
    }

    @Test
    void calibrationErrorIsIndicatedOverCaught() {
        // 5 000 pulses of 100 a revolution at 6 lb/rev: 300 lb indicated
        Verification verification = Runs.counted(5000, 290).assess(TOLERANCE);

        assertThat(Amounts.in(verification.indicatedMass().orElseThrow(), SpreadingUnits.POUND))
                .isCloseTo(300, within(1e-12));
        assertThat(percent(verification.calibrationError().orElseThrow()))
                .isCloseTo((300 / 290.0 - 1) * 100, within(1e-12));
        assertThat(percent(verification.deliveryError())).isCloseTo(0, within(1e-12));
    }

    @Test
    void aSlowStartIsNoWrongCalibration() {
        // 270 lb of 300 lb were counted, and as many caught.
        Verification verification = Runs.counted(4500, 270).assess(TOLERANCE);

        assertThat(percent(verification.calibrationError().orElseThrow())).isCloseTo(0, within(1e-12));
        assertThat(percent(verification.deliveryError())).isCloseTo(-10, within(1e-12));
        assertThat(verification.verdict()).isEqualTo(Verdict.WITHIN_TOLERANCE);
        assertThat(Amounts.in(verification.equivalentLostTime().orElseThrow(), SpreadingUnits.SECOND))
                .isCloseTo(12, within(1e-12));
    }

    @Test
    void anOverrunLosesNoTime() {
        assertThat(Runs.counted(5500, 330).assess(TOLERANCE).equivalentLostTime())
                .isEmpty();
    }

    /** 25 mi/h for 120 s are 5/6 mi. */
    @Test
    void theRateReallyDeliveredIsCaughtOverTestDistance() {
        Verification verification = Runs.counted(5000, 290).assess(TOLERANCE);

        assertThat(verification.deliveredRate().getUnit()).isEqualTo(SpreadingUnits.POUND_PER_MILE);
        assertThat(Amounts.in(verification.deliveredMassRate(), SpreadingUnits.POUND_PER_MILE))
                .isCloseTo(348, within(1e-12));
    }

    @Test
    void aDisplayedMassStandsInForTheCount() {
        Verification verification = Runs.of(augerInForce(6), Runs.seconds(120), caught(290))
                .indicated(pounds(300), pounds(1))
                .assess(TOLERANCE);

        assertThat(Amounts.in(verification.indicatedMass().orElseThrow(), SpreadingUnits.POUND))
                .isCloseTo(300, within(1e-12));
        assertThat(Amounts.in(
                        verification
                                .dischargePerRevolution(SpreadingUnits.POUND_PER_REVOLUTION)
                                .orElseThrow(),
                        SpreadingUnits.POUND_PER_REVOLUTION))
                .isCloseTo(290 / 50.0, within(1e-13));
    }

    @Test
    void withCountAndDisplayTheCountIsReckonedWith() {
        Verification verification =
                Runs.counted(5000, 290).indicated(pounds(300.6), pounds(1)).assess(TOLERANCE);

        assertThat(Amounts.in(verification.indicatedMass().orElseThrow(), SpreadingUnits.POUND))
                .isCloseTo(300, within(1e-12));
    }

    @Test
    void openLoopHasADeliveryErrorOfTheCaughtMassAndNoOther() {
        Verification verification = Runs.openLoop(270).assess(TOLERANCE);

        assertThat(verification.calibrationError()).isEmpty();
        assertThat(verification.indicatedMass()).isEmpty();
        assertThat(verification.apparentFill()).isEmpty();
        assertThat(verification.dischargePerRevolution(SpreadingUnits.POUND_PER_REVOLUTION))
                .isEmpty();
        assertThat(verification.proposedCorrection()).isEqualTo(Optional.empty());
        assertThat(percent(verification.deliveryError())).isCloseTo(-10, within(1e-12));
        assertThat(Amounts.in(verification.equivalentLostTime().orElseThrow(), SpreadingUnits.SECOND))
                .isCloseTo(12, within(1e-12));
        assertThat(verification.verdict()).isEqualTo(Verdict.OUTSIDE_TOLERANCE);
        assertThat(Runs.openLoop(290).assess(TOLERANCE).verdict()).isEqualTo(Verdict.WITHIN_TOLERANCE);
    }

    @Test
    void theVerdictIsOnTheCalibrationErrorAndItsLimitPasses() {
        assertThat(Runs.counted(5200, 300).assess(TOLERANCE).verdict()).isEqualTo(Verdict.WITHIN_TOLERANCE);
        assertThat(Runs.counted(5201, 300).assess(TOLERANCE).verdict()).isEqualTo(Verdict.OUTSIDE_TOLERANCE);
        assertThat(Runs.counted(4800, 300).assess(TOLERANCE).verdict()).isEqualTo(Verdict.WITHIN_TOLERANCE);
        assertThat(Runs.counted(4799, 300).assess(TOLERANCE).verdict()).isEqualTo(Verdict.OUTSIDE_TOLERANCE);
    }

    @Test
    void keepsCatchToleranceAndFill() {
        VerificationCatch source = Runs.counted(5000, 290);
        Verification verification = source.assess(TOLERANCE);

        assertThat(verification.source()).isEqualTo(source);
        assertThat(verification.tolerance()).isEqualTo(TOLERANCE);
        assertThat(Amounts.in(verification.expectedMass(), SpreadingUnits.POUND))
                .isCloseTo(300, within(1e-12));
        // 5.8 lb/rev of 6.98132 lb/rev
        assertThat(verification.apparentFill().orElseThrow().value()).isCloseTo(0.830789, within(5e-7));
    }

    @Test
    void whatIsMissingIsNamed() throws ReflectiveOperationException {
        Verification verification = Runs.counted(5000, 290).assess(TOLERANCE);

        assertNamesWhatIsMissing(Runs.seconds(120));
        assertNamesWhatIsMissing(verification.judgement());
        assertNamesWhatIsMissing(new Correction.Step(
                Optional.empty(),
                Correction.Action.ENTERED,
                verification.source().inForce().factor(),
                Optional.empty()));
    }

    @Test
    void furtherCatchesAreOneOrMore() {
        assertRefused("further catches must be 1 or more: 0", () -> new Judgement.FurtherCatches(0, pounds(300)));
    }

    @Test
    void adviceIsGivenInWords() {
        assertThat(Advice.CORRECT.words()).isEqualTo("correct and confirm");
        assertThat(Advice.FIND_FAULT.words()).isEqualTo("find the fault");
    }
}
