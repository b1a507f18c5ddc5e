package org.gritwright.examples.fleetday;

import javax.measure.Quantity;
import org.gritwright.core.fleet.assessment.TruckAssessment;
import org.gritwright.core.fleet.day.TruckDay;
import org.gritwright.core.metering.Metering;
import org.gritwright.core.observation.CalibrationPoint;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.Amounts;
import org.gritwright.units.quantity.DischargePerRevolution;

/** What meters, in the words of the yard. */
final class Metered {
    private Metered() {}

    /** For example "conveyor". */
    static String machine(TruckDay truck) {
        return machine(truck.spreader().kind());
    }

    static String machine(Metering.Kind kind) {
        return switch (kind) {
            case CONVEYOR -> "conveyor";
            case PUMP -> "pump";
            case FLOW_METER -> "flow meter";
        };
    }

    /**
     * What was found, in the words of the yard: of grains the mass per revolution, of a liquid what the display keeps, such as
     * pulses per gallon, or where nobody says what that is, the volume.
     */
    static Quantity<?> found(
            TruckAssessment truck, CalibrationPoint point, Quantity<DischargePerRevolution> discharge) {
        return !point.material().isLiquid()
                ? discharge
                : truck.points().stream()
                        .filter(one -> one.point().equals(point))
                        .flatMap(one -> one.held().stream())
                        .findFirst()
                        .<Quantity<?>>map(held -> held.factor()
                                .withDischarge(Amounts.si(DischargePerRevolution.class, discharge), point)
                                .value())
                        .orElseGet(() -> point.asMetered(discharge));
    }

    /** What was found with its expanded uncertainty, which is the same part of it in every form. */
    static Quantity<?> within(TruckAssessment truck, CalibrationPoint point, Measured<DischargePerRevolution> found) {
        double half = Amounts.si(
                        DischargePerRevolution.class,
                        found.expandedUncertainty(Figures.COVERAGE).orElseThrow())
                / Amounts.si(DischargePerRevolution.class, found.value());
        return found(truck, point, found.value()).multiply(half);
    }

    /** What is found out by a calibration, for example "mass per revolution". */
    static String discharge(CalibrationPoint point) {
        return switch (point.metering().kind()) {
            case CONVEYOR -> "mass per revolution";
            case PUMP -> "volume per revolution";
            case FLOW_METER -> "volume per pulse";
        };
    }

    /** What the apparent fill is called, for example "Apparent fill". */
    static String fill(CalibrationPoint point) {
        return switch (point.metering().kind()) {
            case CONVEYOR -> "Apparent fill";
            case PUMP -> "Volume over the pump’s displacement:";
            case FLOW_METER -> "Volume over what the meter is rated for:";
        };
    }
}
