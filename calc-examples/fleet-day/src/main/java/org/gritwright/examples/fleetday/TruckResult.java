package org.gritwright.examples.fleetday;

import java.util.Optional;
import java.util.OptionalDouble;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import org.gritwright.core.calibration.Calibration;
import org.gritwright.core.fleet.TruckAssessment;
import org.gritwright.core.measurement.Measured;
import org.gritwright.core.verification.Verification;
import org.gritwright.units.Amounts;
import org.gritwright.units.quantity.DischargePerRevolution;

/**
 * One truck's assessment with what the outputs share.
 *
 * @param assessment the assessment
 * @param display what the display held and holds
 * @param instruction what to do next
 * @param recordFile the file name of its calibration record
 */
record TruckResult(TruckAssessment assessment, DisplayValue display, Instruction instruction, String recordFile) {

    static TruckResult of(TruckAssessment assessment, String recordFile) {
        return new TruckResult(assessment, DisplayValue.of(assessment), Instruction.of(assessment), recordFile);
    }

    String id() {
        return assessment.truck().id();
    }

    boolean needsAttention() {
        return assessment.nextStep().needsAttention();
    }

    /** The verdict in words; a refused record has none. */
    String verdict() {
        return assessment.refusal().isPresent() ? "record refused, nothing computed" : assessment.verdict();
    }

    /** The last verification of what the shown calibration is for: an error of another gate opening isn't its own. */
    Optional<Verification> lastVerification() {
        return assessment.verifications().stream()
                .filter(verification ->
                        DisplayValue.isShown(assessment, verification.source().inForce()))
                .reduce((earlier, later) -> later);
    }

    /**
     * How far the mass per revolution in the display may be from the true one, by its expanded uncertainty: that of the
     * last verification catch with it, or else of the calibration catches that it is from.
     */
    Optional<Quantity<DischargePerRevolution>> expandedUncertainty() {
        OptionalDouble ofVerification = lastVerification().stream()
                .filter(v -> v.calibrationError().isPresent())
                .mapToDouble(v -> Amounts.si(Dimensionless.class, v.judgement().expandedUncertainty())
                        / (1
                                + Amounts.si(
                                        Dimensionless.class,
                                        v.calibrationError().get())))
                .findFirst();
        OptionalDouble relative = ofVerification.isPresent()
                ? ofVerification
                : assessment.calibrations().stream()
                        .filter(c ->
                                DisplayValue.isShown(assessment, c.material().name(), c.opening()))
                        .mapToDouble(TruckResult::relativeUncertainty)
                        .findFirst();
        return massPerRevolution()
                .flatMap(mass -> relative.stream()
                        .mapToObj(r -> Amounts.of(r * mass.getValue().doubleValue(), mass.getUnit()))
                        .findFirst());
    }

    private static double relativeUncertainty(Calibration calibration) {
        Measured<DischargePerRevolution> measured = calibration.dischargePerRevolution();
        return Amounts.si(
                        DischargePerRevolution.class,
                        measured.expandedUncertainty(Figures.COVERAGE).orElseThrow())
                / Amounts.si(DischargePerRevolution.class, measured.value());
    }

    Optional<Quantity<DischargePerRevolution>> massPerRevolution() {
        return display.massPerRevolution();
    }
}
