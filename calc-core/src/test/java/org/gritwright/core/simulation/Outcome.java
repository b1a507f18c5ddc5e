package org.gritwright.core.simulation;

import javax.measure.quantity.Dimensionless;
import org.gritwright.core.fleet.assessment.NextStep;
import org.gritwright.core.spi.Setting;
import org.gritwright.core.verification.Correction;
import org.gritwright.units.Amounts;
import org.gritwright.units.quantity.DischargePerRevolution;

/**
 * One truck, what was told of it and what would have been right.
 *
 * @param made the truck and its document
 * @param fault what is wrong
 * @param told what the technician is told
 * @param ratio Λ of the fault, see {@link Ideal}
 * @param rival the greatest Λ of any other fault
 * @param decision of the ideal rule, as if the document were sound
 */
record Outcome(DayMaker.Made made, Fault fault, Told told, double ratio, double rival, Ideal.Decision decision) {

    boolean isVisible() {
        return ratio > Ideal.VISIBLE;
    }

    /** Whether the cause can be told from all others. */
    boolean isTellable() {
        return isVisible() && ratio - Math.max(0, rival) > Ideal.TOLD;
    }

    /** Whether no other cause explains the document much better, though some may explain it as well. */
    boolean isAmongTheBest() {
        return isVisible() && ratio > rival - Ideal.TOLD;
    }

    /** Whether more or less than the tolerance allows is laid while the value stays as it is. */
    boolean isOffOnTheRoad() {
        return Math.abs(made.roadError()) > DayMaker.TOLERANCE;
    }

    boolean isNamed() {
        return told.suggestions().stream().anyMatch(fault::isNamedIn);
    }

    boolean isNamedFirst() {
        return !told.suggestions().isEmpty()
                && fault.isNamedIn(told.suggestions().get(0));
    }

    boolean isCorrected() {
        return told.step() == NextStep.ENTER_CORRECTION && told.correction().isPresent();
    }

    private double entered() {
        return Amounts.si(
                DischargePerRevolution.class,
                Amounts.parse(
                        DischargePerRevolution.class,
                        told.correction().orElseThrow().toEnter().toString()));
    }

    /** The opening of which the correction speaks. */
    private int opening() {
        var setting = told.correction().orElseThrow().evidence().point().setting();
        for (int i = 0; i < made.truck().openings().size(); i++) {
            if (Setting.of(made.truck().openings().get(i)).isSameAs(setting)) {
                return i;
            }
        }
        return 0;
    }

    /** By how much the mass on the road is off once the correction is entered. */
    double roadErrorOnceCorrected() {
        return made.roadError(opening(), entered());
    }

    /** Whether the truth lies outside the correction's own 99 % interval. */
    boolean isCorrectionOutsideItsInterval() {
        Correction correction = told.correction().orElseThrow();
        double halfWidth = Amounts.si(
                Dimensionless.class,
                correction.reason().budget().result().expandedUncertainty(0.99).orElseThrow());
        return Math.abs(roadErrorOnceCorrected()) > halfWidth;
    }
}
