package org.gritwright.core.record;

import java.time.OffsetDateTime;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Length;
import javax.measure.quantity.Time;
import org.gritwright.core.judgement.Verdict;
import org.gritwright.core.verification.Verification;
import org.gritwright.core.verification.VerificationSeries;

/**
 * A verification as it stands in a record.
 *
 * @param at when the catch was made; none in older records
 * @param inForce the calibration that the display held
 * @param testDistance the test distance
 * @param expected target rate × test distance
 * @param indicated revolutions × the calibration in force; none if nothing was counted or displayed
 * @param caught what was caught
 * @param calibrationError indicated ÷ caught − 1; none if nothing was counted or displayed
 * @param deliveryError indicated ÷ expected − 1, or caught ÷ expected − 1 if nothing was counted or displayed
 * @param equivalentLostTime shortfall ÷ target mass flow; none without a shortfall
 * @param deliveredRate caught ÷ test distance
 * @param verdict what the catch says about the calibration error, or else the delivery error, and the tolerance
 * @param judgement what the verdict was made of; none in older records
 * @param together what this catch and those before it with the same calibration in force together say; none where it
 *     stands alone, or others follow
 */
public record VerificationOutcome(
        Optional<OffsetDateTime> at,
        Quantity<?> inForce,
        Quantity<Length> testDistance,
        Quantity<?> expected,
        Optional<Quantity<?>> indicated,
        Quantity<?> caught,
        Optional<Quantity<Dimensionless>> calibrationError,
        Quantity<Dimensionless> deliveryError,
        Optional<Quantity<Time>> equivalentLostTime,
        Quantity<?> deliveredRate,
        Verdict verdict,
        Optional<JudgementOutcome> judgement,
        Optional<JudgementOutcome> together) {
    @SuppressWarnings("ReferenceEquality") // an equal one may have been written down before it
    static VerificationOutcome of(Verification verification, Optional<VerificationSeries> judged) {
        return new VerificationOutcome(
                Optional.of(verification.source().observation().at()),
                verification.source().inForce().factor().value(),
                verification.source().run().testDistance(),
                verification.expected(),
                verification.indicated(),
                verification.source().caught().total(),
                verification.calibrationError(),
                verification.deliveryError(),
                verification.equivalentLostTime(),
                verification.deliveredRate(),
                verification.verdict(),
                Optional.of(JudgementOutcome.of(verification.judgement(), 1)),
                judged.filter(series -> series.last() == verification)
                        .filter(series -> series.verifications().size() > 1)
                        .map(series -> JudgementOutcome.of(
                                series.judgement(), series.verifications().size())));
    }
}
