package org.gritwright.examples.fleetday;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.Unit;
import org.gritwright.core.calibration.CalibrationFactor;
import org.gritwright.core.calibration.FactorForm;
import org.gritwright.core.fleet.assessment.PointAssessment;
import org.gritwright.core.fleet.assessment.TruckAssessment;
import org.gritwright.core.fleet.day.InForceEntry;
import org.gritwright.core.fleet.day.TruckDay;
import org.gritwright.core.observation.CalibrationPoint;
import org.gritwright.core.verification.Correction;
import org.gritwright.core.verification.Verification;
import org.gritwright.core.verification.VerificationCatch;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.UnitSymbol;
import org.gritwright.units.quantity.DischargePerRevolution;

/**
 * The calibration in a truck's display.
 *
 * @param asFound the value when the day began
 * @param asLeft the value by the last thing that was written down that day
 * @param massPerRevolution the value as left, as mass per revolution; none of a liquid
 */
record DisplayValue(
        Optional<Quantity<?>> asFound,
        Optional<Quantity<?>> asLeft,
        Optional<Quantity<DischargePerRevolution>> massPerRevolution) {
    /** In the one form that tells most: of grains the mass per revolution, of a liquid as its display holds it. */
    Optional<String> text() {
        return massPerRevolutionText().or(() -> asLeft.map(Amounts::format));
    }

    static DisplayValue of(TruckAssessment truck) {
        Optional<Quantity<?>> entered = shownPoint(truck)
                .<Quantity<?>>map(point -> point.inForce().get(0).factor().value())
                .or(() -> truck.truck().inForce().stream().findFirst().map(InForceEntry::value));
        List<Quantity<?>> used = new ArrayList<>();
        truck.verifications().stream()
                .map(Verification::source)
                .map(VerificationCatch::inForce)
                .filter(inForce -> isShown(truck, inForce.point()))
                .forEach(inForce -> used.add(inForce.factor().value()));
        Optional<Quantity<?>> firstUsed = used.isEmpty() ? Optional.empty() : Optional.of(used.get(0));
        Optional<Quantity<?>> lastUsed = used.isEmpty() ? Optional.empty() : Optional.of(used.get(used.size() - 1));
        Optional<Quantity<?>> corrected = truck.points().stream()
                .filter(point -> isShown(truck, point.point()))
                .flatMap(point -> point.correction().stream())
                .findFirst()
                .flatMap(Correction::asLeft)
                .map(CalibrationFactor::value);
        Optional<Quantity<?>> asLeft = corrected.or(() -> lastUsed).or(() -> entered);
        return new DisplayValue(
                entered.or(() -> firstUsed), asLeft, asLeft.flatMap(value -> massPerRevolution(value, truck.truck())));
    }

    /**
     * The one of a display's values that is shown in short: that of the only entry; of several, the one that needs
     * attention first, or else the first. None where what was in force was not recorded.
     */
    static Optional<PointAssessment> shownPoint(TruckAssessment truck) {
        List<PointAssessment> entered = truck.points().stream()
                .filter(point -> !point.inForce().isEmpty())
                .toList();
        return truck.toDo().stream()
                .flatMap(toDo -> toDo.point().stream())
                .flatMap(point -> entered.stream().filter(one -> one.point().equals(point)))
                .findFirst()
                .or(() -> entered.stream().findFirst());
    }

    static boolean isShown(TruckAssessment truck, CalibrationPoint point) {
        return shownPoint(truck).map(shown -> shown.point().equals(point)).orElse(true);
    }

    /** As the display holds it, or, where it keeps the calibration in another form, computed from that. */
    Optional<String> massPerRevolutionText() {
        return massPerRevolution.map(mass ->
                asLeft.filter(mass::equals).map(Amounts::format).orElseGet(() -> Figures.text(mass, Figures.DIGITS)));
    }

    /** Nothing where the record was refused for the very value or sensor. */
    private static Optional<Quantity<DischargePerRevolution>> massPerRevolution(Quantity<?> value, TruckDay truck) {
        if (truck.spreader().isForLiquids()) {
            return Optional.empty();
        }
        try {
            CalibrationFactor factor = CalibrationFactor.of(value);
            Unit<DischargePerRevolution> unit = UnitSymbol.tradeUnit(DischargePerRevolution.class, value);
            return Optional.of(
                    factor.form() == FactorForm.MASS_PER_REVOLUTION
                            ? Figures.asKind(DischargePerRevolution.class, value)
                            : Amounts.ofSi(
                                    factor.kilogramsPerRevolution(
                                            truck.spreader().feedback()),
                                    unit));
        } catch (InvalidInputException e) {
            return Optional.empty();
        }
    }
}
