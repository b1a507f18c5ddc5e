package org.gritwright.examples.fleetday;

import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.Unit;
import org.gritwright.core.calibration.CalibrationFactor;
import org.gritwright.core.calibration.FactorForm;
import org.gritwright.core.fleet.InForceEntry;
import org.gritwright.core.fleet.TruckAssessment;
import org.gritwright.core.fleet.TruckDay;
import org.gritwright.core.spreader.DriveFeedback;
import org.gritwright.core.spreader.NoSensor;
import org.gritwright.core.spreader.ShaftSensor;
import org.gritwright.core.verification.Correction;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.UnitSymbol;
import org.gritwright.units.quantity.DischargePerRevolution;

/**
 * The calibration in a truck's display.
 *
 * @param asFound the value when the day began
 * @param asLeft the value by the last thing that was written down that day
 * @param massPerRevolution the value as left, as mass per revolution
 */
record DisplayValue(
        Optional<Quantity<?>> asFound,
        Optional<Quantity<?>> asLeft,
        Optional<Quantity<DischargePerRevolution>> massPerRevolution) {

    static DisplayValue of(TruckAssessment truck) {
        Optional<Quantity<?>> entered = truck.truck().inForce().map(InForceEntry::value);
        Optional<Quantity<?>> firstUsed = truck.verifications().stream()
                .findFirst()
                .map(v -> v.source().inForce().factor().value());
        Optional<Quantity<?>> lastUsed =
                truck.lastVerification().map(v -> v.source().inForce().factor().value());
        Optional<Quantity<?>> corrected =
                truck.correction().flatMap(Correction::asLeft).map(CalibrationFactor::value);
        Optional<Quantity<?>> asLeft = corrected.or(() -> lastUsed).or(() -> entered);
        return new DisplayValue(
                entered.or(() -> firstUsed), asLeft, asLeft.flatMap(value -> massPerRevolution(value, truck.truck())));
    }

    /** As the display holds it, or, where it keeps the calibration in another form, computed from that. */
    Optional<String> massPerRevolutionText() {
        return massPerRevolution.map(mass ->
                asLeft.filter(mass::equals).map(Amounts::format).orElseGet(() -> Figures.text(mass, Figures.DIGITS)));
    }

    /** Nothing where the record was refused for the very value or sensor. */
    private static Optional<Quantity<DischargePerRevolution>> massPerRevolution(Quantity<?> value, TruckDay truck) {
        try {
            CalibrationFactor factor = CalibrationFactor.of(value);
            Unit<DischargePerRevolution> unit = UnitSymbol.tradeUnit(
                    DischargePerRevolution.class, UnitSymbol.of(value.getUnit()).system());
            return Optional.of(
                    factor.form() == FactorForm.MASS_PER_REVOLUTION
                            ? Figures.asKind(DischargePerRevolution.class, value)
                            : Amounts.ofSi(factor.kilogramsPerRevolution(feedback(truck)), unit));
        } catch (InvalidInputException e) {
            return Optional.empty();
        }
    }

    private static DriveFeedback feedback(TruckDay truck) {
        return truck.pulsesPerRevolution()
                .<DriveFeedback>map(pulses -> new ShaftSensor(pulses, truck.gearRatio()))
                .orElseGet(() -> new NoSensor(truck.gearRatio()));
    }
}
