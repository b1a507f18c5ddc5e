package org.gritwright.core.verification;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.Samples.AUGER_POINT;
import static org.gritwright.core.Samples.augerInForce;
import static org.gritwright.core.Samples.butForUnknown;
import static org.gritwright.core.Samples.caught;
import static org.gritwright.core.Samples.codes;
import static org.gritwright.core.Samples.numbers;
import static org.gritwright.core.Samples.only;
import static org.gritwright.core.Samples.pulses;

import java.util.Map;
import java.util.Optional;
import org.gritwright.core.calibration.CalibrationFactor;
import org.gritwright.core.calibration.CalibrationInForce;
import org.gritwright.core.finding.Finding;
import org.gritwright.core.finding.FindingCode;
import org.gritwright.core.finding.Severity;
import org.gritwright.core.judgement.Tolerance;
import org.gritwright.core.judgement.Verdict;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.junit.jupiter.api.Test;

class CorrectionTest {
    private static final Tolerance TOLERANCE = Tolerance.percent(4);
    private static final CalibrationFactor TO_ENTER = CalibrationFactor.parse("5.6 lb/rev");

    /** As found 6 lb/rev; 280.1 lb in 50 revolutions call for 5.602 lb/rev, and the display takes hundredths. */
    private static final Correction PROPOSED =
            Runs.counted(5000, 280.1).assess(TOLERANCE).proposedCorrection().orElseThrow();

    /** A catch with 5.6 lb/rev in force, so many pulses and pounds. */
    private static Verification later(double pulses, double caughtPounds) {
        return Runs.of(augerInForce(5.6), Runs.seconds(120), caught(caughtPounds), pulses(pulses))
                .assess(TOLERANCE);
    }

    @Test
    void aProposalKeepsAsFoundComputedAndToEnter() {
        assertThat(PROPOSED.status()).isEqualTo(Correction.Status.PROPOSED);
        assertThat(PROPOSED.asFound()).isEqualTo(CalibrationFactor.parse("6 lb/rev"));
        assertThat(PROPOSED.computed().value().getValue().doubleValue()).isCloseTo(5.602, within(1e-13));
        assertThat(PROPOSED.toEnter()).isEqualTo(TO_ENTER);
        assertThat(PROPOSED.evidence()).isEqualTo(Runs.counted(5000, 280.1));
        assertThat(PROPOSED.asLeft()).isEmpty();
        assertThat(PROPOSED.confirmation()).isEmpty();
        assertThat(PROPOSED.findings()).isEmpty();
        assertThat(PROPOSED).hasToString("6 lb/rev to 5.6 lb/rev, PROPOSED");
    }

    @Test
    void enteredItIsUnconfirmed() {
        Correction entered = PROPOSED.entered(TO_ENTER);

        assertThat(entered.status()).isEqualTo(Correction.Status.UNCONFIRMED);
        assertThat(entered.asLeft()).contains(TO_ENTER);
        assertThat(entered.asFound()).isEqualTo(PROPOSED.asFound());
        assertThat(codes(entered.findings())).containsExactly(FindingCode.CORRECTION_UNCONFIRMED);
        assertThat(only(FindingCode.CORRECTION_UNCONFIRMED, entered.findings()).severity())
                .isEqualTo(Severity.WARNING);
        assertThat(only(FindingCode.CORRECTION_UNCONFIRMED, entered.findings()).sentence())
                .isEqualTo("The corrected calibration is unconfirmed until an independent catch passes.");
        assertThat(entered).hasToString("6 lb/rev to 5.6 lb/rev, UNCONFIRMED");
    }

    @Test
    void aReadBackThatDiffersIsAnError() {
        Correction entered = PROPOSED.entered(CalibrationFactor.parse("5.06 lb/rev"));

        assertThat(codes(entered.findings()))
                .containsExactly(FindingCode.READ_BACK_DIFFERS, FindingCode.CORRECTION_UNCONFIRMED);
        Finding finding = only(FindingCode.READ_BACK_DIFFERS, entered.findings());
        assertThat(finding.severity()).isEqualTo(Severity.ERROR);
        assertThat(numbers(finding))
                .isEqualTo(Map.of(
                        "readBack", Amounts.of(5.06, SpreadingUnits.POUND_PER_REVOLUTION),
                        "toEnter", Amounts.of(5.6, SpreadingUnits.POUND_PER_REVOLUTION)));
        assertThat(finding.sentence())
                .isEqualTo("The display reads back 5.06 lb/rev, but 5.6 lb/rev was to be entered.");
        assertThat(entered).hasToString("6 lb/rev to 5.06 lb/rev, UNCONFIRMED");
    }

    @Test
    void anIndependentCatchThatPassesConfirmsIt() {
        Verification passing = later(5300, 298);
        Correction confirmed = PROPOSED.entered(TO_ENTER).confirmedBy(passing);

        assertThat(confirmed.status()).isEqualTo(Correction.Status.CONFIRMED);
        assertThat(confirmed.confirmation()).contains(passing.source());
        assertThat(confirmed.findings()).isEmpty();
        assertThat(confirmed.asLeft()).contains(TO_ENTER);
    }

    @Test
    void aFindingThatDoesNotDoubtTheDataDoesNotKeepACatchFromConfirming() {
        // 250 lb of 300 lb: a shortfall, but counted and caught agree.
        Verification shortRun = later(4464, 250);

        assertThat(codes(butForUnknown(shortRun.findings()))).containsExactly(FindingCode.SHORTFALL);
        assertThat(PROPOSED.entered(TO_ENTER).confirmedBy(shortRun).status()).isEqualTo(Correction.Status.CONFIRMED);
    }

    @Test
    void aReadBackThatDiffersIsSettledByTheCatchThatProvesIt() {
        CalibrationFactor readBack = CalibrationFactor.parse("5.61 lb/rev");
        Verification passing = Runs.of(augerInForce(5.61), Runs.seconds(120), caught(298), pulses(5300))
                .assess(TOLERANCE);

        assertThat(codes(PROPOSED.entered(readBack).findings())).contains(FindingCode.READ_BACK_DIFFERS);
        assertThat(PROPOSED.entered(readBack).confirmedBy(passing).findings()).isEmpty();
        assertThat(PROPOSED.entered(readBack).confirmedBy(passing).asLeft()).contains(readBack);
    }

    @Test
    void aCatchThatFailsLeavesItUnconfirmed() {
        Correction entered = PROPOSED.entered(TO_ENTER);

        assertThat(entered.confirmedBy(later(5300, 280))).isEqualTo(entered);
    }

    @Test
    void aCatchWhoseDataAreDoubtedConfirmsNothing() {
        Correction entered = PROPOSED.entered(TO_ENTER);
        Verification doubted = later(5300, 298)
                .source()
                .indicated(Amounts.of(320, SpreadingUnits.POUND), Amounts.of(1, SpreadingUnits.POUND))
                .assess(TOLERANCE);

        assertThat(doubted.verdict()).isEqualTo(Verdict.WITHIN_TOLERANCE);
        assertThat(entered.confirmedBy(doubted)).isEqualTo(entered);
    }

    @Test
    void aCatchWithoutACountConfirmsNothing() {
        Correction entered = PROPOSED.entered(TO_ENTER);
        Verification openLoop =
                Runs.of(augerInForce(5.6), Runs.seconds(120), caught(298)).assess(TOLERANCE);

        assertThat(openLoop.verdict()).isEqualTo(Verdict.WITHIN_TOLERANCE);
        assertThat(entered.confirmedBy(openLoop)).isEqualTo(entered);
    }

    @Test
    void anotherEntryBeginsAnew() {
        Correction confirmed = PROPOSED.entered(TO_ENTER).confirmedBy(later(5300, 298));

        assertThat(confirmed.entered(TO_ENTER).status()).isEqualTo(Correction.Status.UNCONFIRMED);
    }

    @Test
    void withoutADisplayStepTheComputedValueIsToBeEntered() {
        CalibrationInForce anyValue =
                CalibrationInForce.of(AUGER_POINT, CalibrationFactor.parse("6 lb/rev"), Optional.empty());
        Correction correction = Runs.of(anyValue, Runs.seconds(120), caught(280.1), pulses(5000))
                .assess(TOLERANCE)
                .proposedCorrection()
                .orElseThrow();

        assertThat(correction.toEnter()).isEqualTo(correction.computed());
    }

    @Test
    void aFactorPerMassGoesTheOtherWayRound() {
        CalibrationInForce inverse = CalibrationInForce.of(
                AUGER_POINT,
                CalibrationFactor.parse("0.16 rev/lb"),
                Optional.of(Amounts.of(0.001, SpreadingUnits.REVOLUTION_PER_POUND)));
        // 50 rev ÷ 0.16 rev/lb = 312.5 lb indicated; 300 lb caught call for 50/300 rev/lb.
        Correction correction = Runs.of(inverse, Runs.seconds(120), caught(300), pulses(5000))
                .assess(TOLERANCE)
                .proposedCorrection()
                .orElseThrow();

        assertThat(correction.computed().value().getValue().doubleValue()).isCloseTo(1 / 6.0, within(1e-15));
        assertThat(correction.toEnter()).isEqualTo(CalibrationFactor.parse("0.167 rev/lb"));
    }

    @Test
    void isEqualWhenEvidenceAndHistoryAre() {
        Correction entered = PROPOSED.entered(TO_ENTER);

        assertThat(PROPOSED)
                .isEqualTo(Runs.counted(5000, 280.1)
                        .assess(TOLERANCE)
                        .proposedCorrection()
                        .orElseThrow())
                .hasSameHashCodeAs(Runs.counted(5000, 280.1)
                        .assess(TOLERANCE)
                        .proposedCorrection()
                        .orElseThrow())
                .isNotEqualTo(Runs.counted(5000, 283)
                        .assess(TOLERANCE)
                        .proposedCorrection()
                        .orElseThrow())
                .isNotEqualTo(entered)
                .doesNotHaveSameHashCodeAs(entered)
                .isNotEqualTo(TO_ENTER);
        assertThat(entered).isNotEqualTo(entered.confirmedBy(later(5300, 298)));
    }

    @Test
    void aDisplayOfUnknownStepMayRoundByAThousandth() {
        CalibrationInForce known = Runs.counted(5000, 280.1).inForce();
        CalibrationInForce unknown = CalibrationInForce.of(known.point(), known.factor(), Optional.empty());
        Correction proposed = Runs.of(unknown, Runs.seconds(120), caught(280.1), pulses(5000))
                .assess(TOLERANCE)
                .proposedCorrection()
                .orElseThrow();

        assertThat(proposed.toEnter()).isEqualTo(proposed.computed());
        assertThat(codes(proposed.entered(CalibrationFactor.parse("5.6 lb/rev")).findings()))
                .containsExactly(FindingCode.CORRECTION_UNCONFIRMED);
        assertThat(codes(
                        proposed.entered(CalibrationFactor.parse("5.59 lb/rev")).findings()))
                .contains(FindingCode.READ_BACK_DIFFERS);
    }
}
