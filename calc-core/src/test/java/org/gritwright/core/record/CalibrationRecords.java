package org.gritwright.core.record;

import static org.gritwright.core.record.FleetDays.quantities;
import static org.gritwright.core.record.FleetDays.texts;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Length;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Time;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import org.gritwright.core.curve.CurveModel;
import org.gritwright.core.finding.Finding;
import org.gritwright.core.finding.FindingCode;
import org.gritwright.core.fleet.assessment.MassProof;
import org.gritwright.core.fleet.assessment.NextStep;
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
import org.gritwright.units.quantity.PulsesPerDistance;

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
        Arbitrary<Optional<String>> refusal = texts().optional();
        Arbitrary<List<CalibrationOutcome>> calibrations = calibration().list().ofMaxSize(2);
        Arbitrary<List<VerificationOutcome>> verifications =
                verification().list().ofMaxSize(2);
        Arbitrary<CalibrationRecord> unsigned = Combinators.combine(
                        oneTruck,
                        Combinators.combine(
                                        refusal, calibrations, curve().list().ofMaxSize(2), verifications)
                                .as(Computed::new),
                        correction().list().ofMaxSize(2),
                        startUp().list().ofMaxSize(2),
                        roadSpeed().optional(),
                        Combinators.combine(Arbitraries.of(MassProof.class), Arbitraries.of(RoadProof.class))
                                .as(Map::entry),
                        Arbitraries.of(NextStep.class),
                        finding().list().ofMaxSize(3))
                .as((day, computed, corrections, startUps, road, proofs, next, findings) -> new CalibrationRecord(
                        day,
                        computed.refusal(),
                        computed.calibrations(),
                        computed.curves(),
                        computed.verifications(),
                        corrections,
                        startUps,
                        road,
                        proofs.getKey(),
                        proofs.getValue(),
                        next,
                        findings,
                        Optional.empty()));
        return Combinators.combine(unsigned, signOff)
                .as((record, signature) -> signature.map(record::signedBy).orElse(record));
    }

    private record Computed(
            Optional<String> refusal,
            List<CalibrationOutcome> calibrations,
            List<CurveOutcome> curves,
            List<VerificationOutcome> verifications) {}

    private static Arbitrary<CalibrationOutcome> calibration() {
        Arbitrary<Optional<Quantity<Mass>>> perStart = quantities(Mass.class).optional();
        Arbitrary<List<Optional<Quantity<Mass>>>> ofStart = perStart.list().ofSize(2);
        Arbitrary<CalibrationOutcome> withoutStart = Combinators.combine(
                        texts(),
                        FleetDays.openings().optional(),
                        quantities(Dimensionless.class),
                        Arbitraries.of(RatioEstimator.class),
                        quantities(DischargePerRevolution.class),
                        quantities(DischargePerRevolution.class).optional(),
                        quantities(DischargePerRevolution.class).optional(),
                        quantities(Dimensionless.class))
                .as((material, opening, catches, estimator, value, uncertainty, deviation, fill) ->
                        new CalibrationOutcome(
                                material,
                                opening,
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
                        calibration.material(),
                        calibration.opening(),
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
                        quantities(Mass.class).optional(),
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
                        FleetDays.openings(),
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
                        FleetDays.openings().optional(),
                        FleetDays.openings().optional(),
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

    private static Arbitrary<Map.Entry<String, Optional<Quantity<?>>>> place() {
        return Combinators.combine(texts(), FleetDays.openings().optional()).as(Map::entry);
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
                        place(),
                        begin,
                        masses,
                        quantities(Mass.class).optional(),
                        quantities(Dimensionless.class).optional(),
                        quantities(Dimensionless.class),
                        quantities(Time.class).optional(),
                        end)
                .as((place, first, mass, indicated, calibrationError, deliveryError, lost, last) ->
                        new VerificationOutcome(
                                place.getKey(),
                                place.getValue(),
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
                        texts(),
                        FleetDays.openings().optional(),
                        values,
                        FleetDays.factors().optional(),
                        Arbitraries.of(Correction.Status.class),
                        Arbitraries.of(Correction.Basis.class).optional(),
                        step.list().ofMaxSize(3))
                .as((material, opening, value, left, status, basis, history) -> new CorrectionOutcome(
                        material, opening, value.get(0), value.get(1), value.get(2), left, status, basis, history));
    }

    private static Arbitrary<StartUpOutcome> startUp() {
        return Combinators.combine(
                        texts(),
                        FleetDays.openings().optional(),
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

    /** The names that the code's sentence asks for, each with a number or a word. */
    private static Arbitrary<Finding> finding() {
        return Arbitraries.of(FindingCode.class).flatMap(code -> {
            List<String> names = Pattern.compile("\\{(\\w+)}")
                    .matcher(code.template())
                    .results()
                    .map(match -> match.group(1))
                    .distinct()
                    .toList();
            return Combinators.combine(
                            FleetDays.factors().list().ofSize(names.size()),
                            texts().list().ofSize(names.size()),
                            Arbitraries.of(true, false).list().ofSize(names.size()))
                    .as((numbers, words, isNumber) -> finding(code, names, numbers, words, isNumber));
        });
    }

    private static Finding finding(
            FindingCode code,
            List<String> names,
            List<Quantity<?>> numbers,
            List<String> words,
            List<Boolean> isNumber) {
        Map<String, Quantity<?>> numbersByName = new HashMap<>();
        Map<String, String> wordsByName = new HashMap<>();
        for (int i = 0; i < names.size(); i++) {
            if (isNumber.get(i)) {
                numbersByName.put(names.get(i), numbers.get(i));
            } else {
                wordsByName.put(names.get(i), words.get(i));
            }
        }
        return new Finding(code, numbersByName, wordsByName);
    }
}
