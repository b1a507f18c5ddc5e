package org.gritwright.core.record;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import org.gritwright.core.calibration.CalibrationFactor;
import org.gritwright.core.judgement.Verdict;
import org.gritwright.core.verification.Correction;
import org.gritwright.core.verification.Judgement;

/**
 * A correction as it stands in a record.
 *
 * @param asFound the value in force when the catch was made
 * @param computed the value that the catch calls for, not rounded
 * @param toEnter the value to enter, rounded to the display's step
 * @param asLeft the value that the display reads back; none before it was entered
 * @param status how far the correction has come
 * @param basis what the value was computed from; none in older records
 * @param history what was done when, with which value, and why; empty in older records
 */
public record CorrectionOutcome(
        Quantity<?> asFound,
        Quantity<?> computed,
        Quantity<?> toEnter,
        Optional<Quantity<?>> asLeft,
        Correction.Status status,
        Optional<Correction.Basis> basis,
        List<Step> history) {
    /**
     * A step of a correction's history.
     *
     * @param on the day; none where it was not recorded
     * @param action what was done
     * @param value with which value
     * @param error the error that a catch showed, if one was the reason
     * @param expandedUncertainty of that error, for a coverage of 95 %
     * @param verdict what that catch said about the tolerance
     */
    public record Step(
            Optional<LocalDate> on,
            Correction.Action action,
            Quantity<?> value,
            Optional<Quantity<Dimensionless>> error,
            Optional<Quantity<Dimensionless>> expandedUncertainty,
            Optional<Verdict> verdict) {
        static Step of(Correction.Step step) {
            return new Step(
                    step.on(),
                    step.action(),
                    step.value().value(),
                    step.why().map(why -> why.budget().result().value()),
                    step.why().map(Judgement::expandedUncertainty),
                    step.why().map(Judgement::verdict));
        }
    }

    /** Copies the list. */
    public CorrectionOutcome {
        history = List.copyOf(history);
    }

    static CorrectionOutcome of(Correction correction) {
        return new CorrectionOutcome(
                correction.asFound().value(),
                correction.computed().value(),
                correction.toEnter().value(),
                correction.asLeft().map(CalibrationFactor::value),
                correction.status(),
                Optional.of(correction.basis()),
                correction.history().stream().map(Step::of).toList());
    }
}
