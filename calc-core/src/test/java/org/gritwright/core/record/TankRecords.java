package org.gritwright.core.record;

import static org.gritwright.core.record.FleetDays.quantities;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Temperature;
import javax.measure.quantity.Volume;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import org.gritwright.core.fleet.assessment.Refusal;
import org.gritwright.core.fleet.assessment.TankStep;
import org.gritwright.core.fleet.day.FleetDay;
import org.gritwright.core.judgement.Verdict;
import org.gritwright.core.solution.Side;
import org.gritwright.units.quantity.BulkDensity;

/** Any record of a tank, sensible or not. */
final class TankRecords {
    private TankRecords() {}

    static Arbitrary<TankRecord> any() {
        Arbitrary<FleetDay> days = FleetDays.any().filter(day -> !day.tanks().isEmpty());
        return Combinators.combine(
                        days,
                        CalibrationRecords.refusal().list().ofMaxSize(2),
                        outcome(),
                        Arbitraries.of(TankStep.class),
                        CalibrationRecords.finding().list().ofMaxSize(3))
                .as((day, refusals, outcome, step, findings) -> new TankRecord(
                        day.day(),
                        day.site(),
                        day.technician(),
                        day.decisionRule(),
                        day.materials().get(0),
                        day.tanks().get(0),
                        refusals,
                        outcome,
                        step,
                        findings));
    }

    private static <Q extends Quantity<Q>> Arbitrary<List<Optional<Quantity<Q>>>> two(Class<Q> kind) {
        return quantities(kind).optional().list().ofSize(2);
    }

    private static Arbitrary<TankOutcome> outcome() {
        Arbitrary<TankOutcome.Correction> correction = Combinators.combine(
                        two(Mass.class), two(Volume.class), quantities(Volume.class), quantities(Mass.class))
                .as((salt, water, filled, rest) ->
                        new TankOutcome.Correction(salt.get(0), salt.get(1), water.get(0), water.get(1), filled, rest));
        Arbitrary<Map.Entry<Optional<TankOutcome.Correction>, Optional<Refusal>>> toAdd = Combinators.combine(
                        correction.optional(), CalibrationRecords.refusal().optional())
                .as(Map::entry);
        return Combinators.combine(
                        two(Dimensionless.class),
                        two(BulkDensity.class),
                        Arbitraries.of(Side.class).optional(),
                        two(Temperature.class),
                        Arbitraries.of(Verdict.class).optional(),
                        toAdd)
                .as((share, density, side, freezes, verdict, rest) -> new TankOutcome(
                        share.get(0),
                        share.get(1),
                        density.get(0),
                        density.get(1),
                        side,
                        freezes.get(0),
                        freezes.get(1),
                        verdict,
                        rest.getKey(),
                        rest.getValue()));
    }
}
