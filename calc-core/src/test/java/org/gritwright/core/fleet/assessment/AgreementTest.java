package org.gritwright.core.fleet.assessment;

import static org.assertj.core.api.Assertions.assertThat;
import static org.gritwright.core.Samples.AUGER_POINT;
import static org.gritwright.core.Samples.augerCatch;
import static org.gritwright.core.Samples.augerInForce;
import static org.gritwright.core.Samples.caught;
import static org.gritwright.core.Samples.observed;
import static org.gritwright.core.Samples.pounds;
import static org.gritwright.core.Samples.pulses;

import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.gritwright.core.calibration.Calibration;
import org.gritwright.core.finding.Finding;
import org.gritwright.core.finding.FindingCode;
import org.gritwright.core.judgement.DecisionRule;
import org.gritwright.core.judgement.Tolerance;
import org.gritwright.core.verification.TestRun;
import org.gritwright.core.verification.Verification;
import org.gritwright.core.verification.VerificationCatch;
import org.gritwright.core.verification.VerificationLimits;
import org.gritwright.core.verification.VerificationSeries;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.junit.jupiter.api.Test;

class AgreementTest {
    private static final Tolerance TOLERANCE = Tolerance.percent(4);

    /** 6 lb/rev, evenly. */
    private static final Calibration SIX = Calibration.from(
            List.of(augerCatch(179.5, 3000), augerCatch(180, 3000), augerCatch(180.5, 3000), augerCatch(180, 3000)));

    private static VerificationCatch counted(double inForce, double pounds, double pulses) {
        return VerificationCatch.of(
                observed(AUGER_POINT, caught(pounds)).counted(pulses(pulses)), augerInForce(inForce), run());
    }

    private static TestRun run() {
        return TestRun.lasting(
                Amounts.of(240, SpreadingUnits.POUND_PER_MILE),
                Amounts.of(20, SpreadingUnits.MILE_PER_HOUR),
                Amounts.of(150, SpreadingUnits.SECOND));
    }

    private static Verification verification(VerificationCatch source, Calibration calibration) {
        return source.assess(TOLERANCE, DecisionRule.SIMPLE, VerificationLimits.COMMON, Optional.of(calibration));
    }

    private static Optional<Finding> contradiction(VerificationCatch source) {
        return Agreement.contradiction(SIX, VerificationSeries.of(List.of(verification(source, SIX))), TOLERANCE);
    }

    @Test
    void aCatchThatGivesHalfOfTheCalibrationContradictsIt() {
        Finding finding = contradiction(counted(3, 120, 4000)).orElseThrow();

        assertThat(finding.code()).isEqualTo(FindingCode.CALIBRATION_DISAGREES);
        assertThat(finding.sentence())
                .startsWith("The day's calibration gives 6 lb/rev, but the verification gives 3 lb/rev:");
    }

    @Test
    void soDoesADisplayThatProvesAnotherValue() {
        VerificationCatch shown = VerificationCatch.of(observed(AUGER_POINT, caught(200)), augerInForce(3), run())
                .indicated(pounds(200), pounds(1));

        assertThat(contradiction(shown)).isPresent();
    }

    @Test
    void withinTheToleranceNothingIsContradicted() {
        assertThat(contradiction(counted(6, 246, 4000))).isEmpty();
        assertThat(contradiction(counted(6, 240, 4000))).isEmpty();
    }

    /** By eight catches that agree to 0.3 %, 3.5 % more is known to be a difference, but one that the day allows. */
    @Test
    void aDifferenceWithinTheToleranceIsNoContradictionHoweverSureItIs() {
        Calibration sure = Calibration.from(IntStream.range(0, 8)
                .mapToObj(i -> augerCatch(180 + 0.5 * (i % 2), 3000))
                .toList());
        VerificationSeries within = VerificationSeries.of(List.of(verification(counted(6, 248.5, 4000), sure)));
        VerificationSeries beyond = VerificationSeries.of(List.of(verification(counted(6, 252, 4000), sure)));

        assertThat(within.comparedWith(sure).orElseThrow().value()).isGreaterThan(2.5);
        assertThat(Agreement.contradiction(sure, within, TOLERANCE)).isEmpty();
        assertThat(Agreement.contradiction(sure, beyond, TOLERANCE)).isPresent();
    }

    @Test
    void whatTheUncertaintyExplainsIsNoContradiction() {
        Calibration one = Calibration.from(List.of(augerCatch(6, 100)));
        VerificationSeries series = VerificationSeries.of(List.of(verification(counted(6, 6.5, 100), one)));

        assertThat(series.comparedWith(one).orElseThrow().value()).isBetween(0.0, 1.5);
        assertThat(Agreement.contradiction(one, series, TOLERANCE)).isEmpty();
    }

    @Test
    void theyContradictEachOtherBeyondOneAndThreeQuartersOfTheNormalizedError() {
        Calibration one = Calibration.from(List.of(augerCatch(6, 100)));
        double greatestWithout = 0;
        double leastWith = Double.POSITIVE_INFINITY;
        for (double pounds = 6.3; pounds < 9; pounds += 0.005) {
            VerificationSeries series = VerificationSeries.of(List.of(verification(counted(6, pounds, 100), one)));
            double error = series.comparedWith(one).orElseThrow().value();
            if (Agreement.contradiction(one, series, TOLERANCE).isPresent()) {
                leastWith = Math.min(leastWith, error);
            } else {
                greatestWithout = Math.max(greatestWithout, error);
            }
        }

        assertThat(greatestWithout).isBetween(1.74, 1.75);
        assertThat(leastWith).isBetween(1.75, 1.76);
    }

    @Test
    void anErrorThatTheCalibrationConfirmsIsAValueOutOfDateAndIsCorrected() {
        Verification drifted = verification(counted(7.5, 240, 4000), SIX);

        assertThat(drifted.findings().stream().map(Finding::code))
                .contains(FindingCode.VALUE_OUT_OF_DATE)
                .doesNotContain(FindingCode.CORRECTION_TOO_LARGE);
        assertThat(drifted.proposedCorrection().orElseThrow().toEnter().toString())
                .isEqualTo("6 lb/rev");
    }

    @Test
    void anErrorThatTheCalibrationDoesNotConfirmIsAFault() {
        Verification odd = verification(counted(7.2, 270, 5000), SIX);

        assertThat(odd.findings().stream().map(Finding::code))
                .contains(FindingCode.CORRECTION_TOO_LARGE)
                .doesNotContain(FindingCode.VALUE_OUT_OF_DATE);
        assertThat(odd.proposedCorrection()).isEmpty();
    }
}
