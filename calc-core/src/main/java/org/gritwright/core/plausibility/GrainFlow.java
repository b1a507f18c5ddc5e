package org.gritwright.core.plausibility;

import static org.gritwright.core.finding.Argument.number;

import java.util.Map;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Area;
import javax.measure.quantity.Length;
import org.gritwright.core.finding.Finding;
import org.gritwright.core.finding.FindingCode;
import org.gritwright.core.observation.CalibrationPoint;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.check.Comparison;
import org.gritwright.units.check.Require;
import org.gritwright.units.quantity.BulkDensity;
import org.gritwright.units.quantity.DischargeRate;

/**
 * The law of dry grains that run freely through an opening: W = C · ρ · √g · (D − k·d)^2.5, with the loose bulk density ρ,
 * the opening's diameter D and the grains' diameter d (W. A. Beverloo, H. A. Leniger and J. van de Velde, The flow of
 * granular solids through orifices, Chemical Engineering Science 15 (1961); constants from memory).
 *
 * <p>It knows no revolutions, so it is never a conveyor's geometry. It serves as an upper limit: what a conveyor is
 * asked to carry beyond it has to be pulled through the gate. An opening of another form counts as the circle of its
 * area, the form that lets most through. Damp material runs less freely, and stops; the law doesn't hold for it.
 * Immutable, thread-safe, a value.
 *
 * @param coefficient C, greater than 0
 * @param margin k, by how many grain diameters the opening is effectively narrower, 0 or more
 */
public record GrainFlow(double coefficient, double margin) {
    /** C = 0.58 and k = 1.4, the law's usual constants (from memory). */
    public static final GrainFlow USUAL = new GrainFlow(0.58, 1.4);

    private static final double STANDARD_GRAVITY = 9.80665;

    /**
     * Checks the constants.
     *
     * @throws org.gritwright.units.InvalidInputException if one is out of its range
     */
    public GrainFlow {
        Require.positive("coefficient of grain flow", coefficient);
        Require.notNegative("margin of grain flow", margin);
    }

    /**
     * The flow through an opening.
     *
     * @param area the open area, 0 or more
     * @param looseBulkDensity the material's loose bulk density, greater than zero
     * @param grainDiameter the diameter of its grains, greater than zero
     * @return the flow in kg/s; 0 through an opening that is no wider than the margin
     * @throws org.gritwright.units.InvalidInputException if a value is out of its range
     */
    public Quantity<DischargeRate> through(
            Quantity<Area> area, Quantity<BulkDensity> looseBulkDensity, Quantity<Length> grainDiameter) {
        Require.notNegative("open area", Area.class, area);
        Require.positive("loose bulk density", BulkDensity.class, looseBulkDensity);
        Require.positive("grain diameter", Length.class, grainDiameter);
        double diameter = Math.sqrt(4 * Amounts.si(Area.class, area) / Math.PI);
        double effective = Math.max(0, diameter - margin * Amounts.si(Length.class, grainDiameter));
        double kilogramsPerSecond = coefficient
                * Amounts.si(BulkDensity.class, looseBulkDensity)
                * Math.sqrt(STANDARD_GRAVITY)
                * Math.pow(effective, 2.5);
        return Amounts.of(kilogramsPerSecond, SpreadingUnits.KILOGRAM_PER_SECOND);
    }

    /**
     * Whether a flow is more than what runs through the gate by itself.
     *
     * @param point the calibration point
     * @param flow the flow that is asked for
     * @return one finding, {@link FindingCode#STARVED_GATE}, if it is; none for a material whose grains are not known, or a
     *     conveyor that no gate meters
     */
    public Optional<Finding> starved(CalibrationPoint point, Quantity<DischargeRate> flow) {
        return point.metering()
                .meteringArea(point.setting())
                .flatMap(area -> point.material()
                        .grainDiameter()
                        .map(grains -> through(area, point.material().looseBulkDensity(), grains)))
                .filter(limit -> Comparison.isAbove(
                        Amounts.si(DischargeRate.class, flow), Amounts.si(DischargeRate.class, limit)))
                .map(limit -> Finding.of(
                        FindingCode.STARVED_GATE,
                        Map.of(
                                "flow",
                                number(flow),
                                "limit",
                                number(Amounts.ofSi(Amounts.si(DischargeRate.class, limit), flow.getUnit())))));
    }
}
