package org.gritwright.core.record;

import static org.gritwright.core.record.FleetDays.either;
import static org.gritwright.core.record.FleetDays.quantities;
import static org.gritwright.core.record.FleetDays.texts;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Length;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Time;
import javax.measure.quantity.Volume;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import org.gritwright.core.boom.NozzleCondition;
import org.gritwright.core.boom.NozzleYardstick;
import org.gritwright.core.curve.CurveModel;
import org.gritwright.core.finding.Argument;
import org.gritwright.core.finding.Finding;
import org.gritwright.core.finding.FindingCode;
import org.gritwright.core.finding.Slip;
import org.gritwright.core.finding.Slot;
import org.gritwright.core.finding.Term;
import org.gritwright.core.fleet.assessment.MassProof;
import org.gritwright.core.fleet.assessment.NextStep;
import org.gritwright.core.fleet.assessment.Refusal;
import org.gritwright.core.fleet.assessment.RoadProof;
import org.gritwright.core.fleet.day.FleetDay;
import org.gritwright.core.judgement.Verdict;
import org.gritwright.core.statistics.RatioEstimator;
import org.gritwright.core.uncertainty.Component;
import org.gritwright.core.uncertainty.Distribution;
import org.gritwright.core.verification.Advice;
import org.gritwright.core.verification.Correction;
import org.gritwright.units.quantity.ApplicationRate;
import org.gritwright.units.quantity.BulkDensity;
import org.gritwright.units.quantity.DischargePerRevolution;
import org.gritwright.units.quantity.FlowRate;
import org.gritwright.units.quantity.PulsesPerDistance;
import org.gritwright.units.quantity.VolumePerPulse;
import org.gritwright.units.quantity.VolumePerRevolution;

/** Any calibration record, sensible or not. */
final class CalibrationRecords {

    private CalibrationRecords() {}

    static Arbitrary<CalibrationRecord> any() {
        Arbitrary<FleetDay> oneTruck = FleetDays.any()
                .filter(day -> !day.trucks().isEmpty())
                .map(day -> day.withOnly(day.trucks().get(0)));
        Arbitrary<Optional<SignOff>> signOff = Combinators.combine(texts(), texts().optional(), FleetDays.dates())
                .as(SignOff::new)
                .optional();
        Arbitrary<ToDoOutcome> toDo = Combinators.combine(
                        Arbitraries.of(NextStep.class),
                        texts().optional(),
                        FleetDays.settings().optional())
                .as(ToDoOutcome::new);
        Arbitrary<CalibrationRecord> unsigned = Combinators.combine(
                        oneTruck,
                        refusal().list().ofMaxSize(2),
                        point().list().ofMaxSize(2),
                        curve().list().ofMaxSize(2),
                        Combinators.combine(roadSpeed().optional(), boom().optional())
                                .as(Map::entry),
                        Combinators.combine(Arbitraries.of(MassProof.class), Arbitraries.of(RoadProof.class))
                                .as(Map::entry),
                        toDo.list().ofMaxSize(2),
                        finding().list().ofMaxSize(3))
                .as((day, refusals, points, curves, road, proofs, next, findings) -> new CalibrationRecord(
                        day,
                        refusals,
                        points,
                        curves,
                        road.getKey(),
                        road.getValue(),
                        proofs.getKey(),
                        proofs.getValue(),
                        next,
                        findings,
                        Optional.empty()));
        return Combinators.combine(unsigned, signOff)
                .as((record, signature) -> signature.map(record::signedBy).orElse(record));
    }

    static Arbitrary<Refusal> refusal() {
        return Combinators.combine(texts(), texts(), texts(), texts(), texts()).as(Refusal::new);
    }

    private static Arbitrary<PointOutcome> point() {
        return Combinators.combine(
                        texts(),
                        FleetDays.settings().optional(),
                        Arbitraries.of(MassProof.class).optional(),
                        calibration().optional(),
                        verification().list().ofMaxSize(2),
                        correction().optional(),
                        startUp().optional(),
                        FleetDays.inForce().list().ofMaxSize(2))
                .as(PointOutcome::new);
    }

    private static Arbitrary<CalibrationOutcome> calibration() {
        Arbitrary<Optional<Quantity<Mass>>> perStart = quantities(Mass.class).optional();
        Arbitrary<List<Optional<Quantity<Mass>>>> ofStart = perStart.list().ofSize(2);
        Arbitrary<CalibrationOutcome> withoutStart = Combinators.combine(
                        quantities(Dimensionless.class),
                        Arbitraries.of(RatioEstimator.class),
                        either(DischargePerRevolution.class, VolumePerRevolution.class),
                        either(DischargePerRevolution.class, VolumePerPulse.class)
                                .optional(),
                        either(DischargePerRevolution.class, VolumePerPulse.class)
                                .optional(),
                        quantities(Dimensionless.class))
                .as((catches, estimator, value, uncertainty, deviation, fill) -> new CalibrationOutcome(
                        catches,
                        estimator,
                        value,
                        uncertainty,
                        deviation,
                        fill,
                        Optional.empty(),
                        Optional.empty(),
                        Optional.empty()));
        return Combinators.combine(withoutStart, ofStart, budget().optional())
                .as((calibration, start, budget) -> new CalibrationOutcome(
                        calibration.catches(),
                        calibration.estimator(),
                        calibration.dischargePerRevolution(),
                        calibration.standardUncertainty(),
                        calibration.sampleDeviation(),
                        calibration.apparentFill(),
                        start.get(0),
                        start.get(1),
                        budget));
    }

    private static Arbitrary<BudgetOutcome> budget() {
        Arbitrary<BudgetOutcome.Row> row = Combinators.combine(
                        texts(),
                        Arbitraries.of(Component.Evaluation.class),
                        Arbitraries.of(Distribution.class),
                        quantities(Mass.class),
                        quantities(DischargePerRevolution.class),
                        quantities(Dimensionless.class).optional(),
                        texts().optional(),
                        quantities(Dimensionless.class))
                .as(BudgetOutcome.Row::new);
        return Combinators.combine(
                        row.list().ofMaxSize(2),
                        quantities(DischargePerRevolution.class),
                        quantities(Dimensionless.class).optional(),
                        quantities(DischargePerRevolution.class),
                        texts().optional())
                .as(BudgetOutcome::new);
    }

    private static Arbitrary<JudgementOutcome> judgement() {
        Arbitrary<List<Quantity<Dimensionless>>> numbers =
                quantities(Dimensionless.class).list().ofSize(5);
        return Combinators.combine(
                        Combinators.combine(
                                        Arbitraries.of(Verdict.class),
                                        quantities(Dimensionless.class).optional())
                                .as(Map::entry),
                        quantities(Dimensionless.class),
                        numbers,
                        Arbitraries.of(Advice.class),
                        quantities(Dimensionless.class).optional(),
                        either(Mass.class, Volume.class).optional(),
                        budget())
                .as((how, guard, many, advice, catches, mass, budget) -> new JudgementOutcome(
                        many.get(3),
                        many.get(4),
                        how.getKey(),
                        how.getValue(),
                        guard,
                        many.get(0),
                        many.get(1),
                        many.get(2),
                        advice,
                        catches,
                        mass,
                        budget));
    }

    private static Arbitrary<CurveOutcome> curve() {
        Arbitrary<CurveOutcome.Point> point = Combinators.combine(
                        FleetDays.settings(),
                        quantities(DischargePerRevolution.class),
                        quantities(DischargePerRevolution.class).optional())
                .as(CurveOutcome.Point::new);
        Arbitrary<Map.Entry<Optional<Quantity<Dimensionless>>, List<CurveOutcome.Point>>> rest = Combinators.combine(
                        quantities(Dimensionless.class).optional(), point.list().ofMaxSize(2))
                .as(Map::entry);
        return Combinators.combine(
                        texts(),
                        Arbitraries.of(CurveModel.class),
                        quantities(Dimensionless.class),
                        quantities(BulkDensity.class).optional(),
                        quantities(BulkDensity.class).optional(),
                        FleetDays.settings().optional(),
                        FleetDays.settings().optional(),
                        rest)
                .as((material, model, catches, density, densityUncertainty, dead, deadUncertainty, last) ->
                        new CurveOutcome(
                                material,
                                model,
                                catches,
                                density,
                                densityUncertainty,
                                dead,
                                deadUncertainty,
                                last.getKey(),
                                last.getValue()));
    }

    private static Arbitrary<VerificationOutcome> verification() {
        Arbitrary<Map.Entry<Quantity<Mass>, Quantity<Mass>>> masses = Combinators.combine(
                        quantities(Mass.class), quantities(Mass.class))
                .as(Map::entry);
        Arbitrary<Map.Entry<Verdict, List<Optional<JudgementOutcome>>>> judged = Combinators.combine(
                        Arbitraries.of(Verdict.class),
                        judgement().optional().list().ofSize(2))
                .as(Map::entry);
        Arbitrary<Map.Entry<Quantity<ApplicationRate>, Map.Entry<Verdict, List<Optional<JudgementOutcome>>>>> end =
                Combinators.combine(quantities(ApplicationRate.class), judged).as(Map::entry);
        Arbitrary<Map.Entry<Quantity<?>, Quantity<Length>>> begin = Combinators.combine(
                        FleetDays.factors(), quantities(Length.class))
                .as(Map::entry);
        return Combinators.combine(
                        FleetDays.times().optional(),
                        begin,
                        masses,
                        either(Mass.class, Volume.class).optional(),
                        quantities(Dimensionless.class).optional(),
                        quantities(Dimensionless.class),
                        quantities(Time.class).optional(),
                        end)
                .as((at, first, mass, indicated, calibrationError, deliveryError, lost, last) ->
                        new VerificationOutcome(
                                at,
                                first.getKey(),
                                first.getValue(),
                                mass.getKey(),
                                indicated,
                                mass.getValue(),
                                calibrationError,
                                deliveryError,
                                lost,
                                last.getKey(),
                                last.getValue().getKey(),
                                last.getValue().getValue().get(0),
                                last.getValue().getValue().get(1)));
    }

    private static Arbitrary<CorrectionOutcome> correction() {
        Arbitrary<CorrectionOutcome.Step> step = Combinators.combine(
                        FleetDays.dates().optional(),
                        Arbitraries.of(Correction.Action.class),
                        FleetDays.factors(),
                        quantities(Dimensionless.class).optional(),
                        quantities(Dimensionless.class).optional(),
                        Arbitraries.of(Verdict.class).optional())
                .as(CorrectionOutcome.Step::new);
        Arbitrary<List<Quantity<?>>> values = FleetDays.factors().list().ofSize(3);
        return Combinators.combine(
                        values,
                        FleetDays.factors().optional(),
                        Arbitraries.of(Correction.Status.class),
                        Arbitraries.of(Correction.Basis.class).optional(),
                        step.list().ofMaxSize(3))
                .as((value, left, status, basis, history) ->
                        new CorrectionOutcome(value.get(0), value.get(1), value.get(2), left, status, basis, history));
    }

    private static Arbitrary<StartUpOutcome> startUp() {
        return Combinators.combine(
                        quantities(Mass.class),
                        quantities(Time.class),
                        quantities(Dimensionless.class),
                        quantities(Dimensionless.class).optional())
                .as(StartUpOutcome::new);
    }

    private static Arbitrary<RoadSpeedOutcome> roadSpeed() {
        return Combinators.combine(
                        quantities(PulsesPerDistance.class),
                        quantities(PulsesPerDistance.class),
                        quantities(PulsesPerDistance.class),
                        quantities(Dimensionless.class),
                        quantities(Dimensionless.class),
                        Arbitraries.of(Verdict.class))
                .as(RoadSpeedOutcome::new);
    }

    private static Arbitrary<BoomOutcome> boom() {
        Arbitrary<BoomOutcome.Nozzle> nozzle = Combinators.combine(
                        texts(),
                        texts(),
                        quantities(FlowRate.class),
                        quantities(FlowRate.class).optional(),
                        quantities(Dimensionless.class),
                        quantities(Dimensionless.class).optional(),
                        Arbitraries.of(NozzleCondition.class))
                .as(BoomOutcome.Nozzle::new);
        Arbitrary<BoomOutcome.Review> review = Combinators.combine(
                        Arbitraries.of(NozzleYardstick.class),
                        quantities(FlowRate.class),
                        quantities(Dimensionless.class),
                        Arbitraries.of(true, false),
                        nozzle.list().ofMaxSize(3))
                .as(BoomOutcome.Review::new);
        Arbitrary<BoomOutcome.Section> section = Combinators.combine(
                        texts(),
                        quantities(Dimensionless.class),
                        quantities(Dimensionless.class),
                        quantities(Dimensionless.class),
                        quantities(Dimensionless.class))
                .as(BoomOutcome.Section::new);
        Arbitrary<BoomOutcome.Pressure> pressure = Combinators.combine(
                        quantities(BulkDensity.class),
                        quantities(BulkDensity.class),
                        quantities(Dimensionless.class),
                        quantities(Dimensionless.class))
                .as(BoomOutcome.Pressure::new);
        return Combinators.combine(review.optional(), section.list().ofMaxSize(2), pressure.optional())
                .as(BoomOutcome::new);
    }

    /** Any finding of any code, and prose where version 1 had it. */
    static Arbitrary<Finding> finding() {
        return Arbitraries.of(FindingCode.class).flatMap(code -> {
            List<Arbitrary<Argument>> arguments =
                    code.slots().stream().map(CalibrationRecords::argument).toList();
            return Combinators.combine(arguments).as(given -> {
                Map<String, Argument> byName = new HashMap<>();
                for (int i = 0; i < given.size(); i++) {
                    byName.put(code.slots().get(i).name(), given.get(i));
                }
                return Finding.of(code, byName);
            });
        });
    }

    private static Arbitrary<Argument> argument(Slot slot) {
        Arbitrary<? extends Argument> one = switch (slot.kind()) {
            case NUMBER -> FleetDays.anyQuantities().map(Argument::number);
            case DATE -> FleetDays.dates().map(Argument::date);
            case TIME -> FleetDays.times().map(Argument::time);
            case NAME -> texts().map(Argument::name);
            case TERM -> Arbitraries.of(slot.terms());
            case UNKNOWN -> unknown(slot);
            case SLIP -> slip(slot);
            case REFUSAL -> Combinators.combine(texts(), texts(), texts()).as(Argument.Refusal::new);
        };
        Arbitrary<Argument> whole =
                slot.isList() ? one.list().ofMaxSize(3).map(Argument::several) : one.map(argument -> argument);
        return slot.kind().wasProse() ? Arbitraries.oneOf(whole, texts().map(Argument.Prose::new)) : whole;
    }

    private static Arbitrary<Argument.Unknown> unknown(Slot slot) {
        return Combinators.combine(Arbitraries.of(slot.terms()), texts())
                .as((what, name) ->
                        List.of(Term.SCALE_ACCURACY, Term.CONTAINER_TOLERANCE).contains(what)
                                ? new Argument.Unknown(what, name)
                                : Argument.Unknown.of(what));
    }

    private static Arbitrary<Slip> slip(Slot slot) {
        Arbitrary<Slip> byFactor = Combinators.combine(
                        Arbitraries.of(slot.terms()),
                        Arbitraries.of(Slip.Mistake.TOO_SMALL, Slip.Mistake.TOO_LARGE),
                        Arbitraries.doubles().between(1, false, 1000, true),
                        FleetDays.anyQuantities())
                .as(Slip::byFactor);
        Arbitrary<Slip> ofDigit = Combinators.combine(
                        Arbitraries.of(slot.terms()),
                        Arbitraries.of(Slip.Mistake.DIGIT_TOO_MANY, Slip.Mistake.DIGIT_DROPPED),
                        FleetDays.anyQuantities().list().ofMinSize(1).ofMaxSize(3))
                .as(Slip::of);
        Arbitrary<Slip> inCatches = Combinators.combine(
                        Arbitraries.oneOf(byFactor, ofDigit),
                        texts(),
                        FleetDays.times().list().ofMaxSize(2))
                .as((slip, name, catches) -> slip.of(name).in(catches));
        return Arbitraries.oneOf(byFactor, ofDigit, inCatches);
    }
}
