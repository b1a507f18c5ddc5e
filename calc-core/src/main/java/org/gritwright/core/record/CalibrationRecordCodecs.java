package org.gritwright.core.record;

import java.time.LocalDate;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Length;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Time;
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

/** The definition of format "gritwright/calibration-record", from its smallest parts to the whole. */
final class CalibrationRecordCodecs {
    private static final Codec<Quantity<Mass>> MASS = Codecs.quantity(Mass.class);
    private static final Codec<Quantity<Length>> LENGTH = Codecs.quantity(Length.class);
    private static final Codec<Quantity<Time>> TIME = Codecs.quantity(Time.class);
    private static final Codec<Quantity<Dimensionless>> RATIO = Codecs.quantity(Dimensionless.class);
    private static final Codec<Verdict> VERDICT = Codecs.choice(Verdict.class);

    private static final ObjectCodec<BudgetOutcome> BUDGET = budget();

    static final ObjectCodec<CalibrationRecord> CALIBRATION_RECORD = calibrationRecord();

    private CalibrationRecordCodecs() {}

    private static ObjectCodec<CalibrationOutcome> calibration() {
        Codec<Quantity<DischargePerRevolution>> discharge = Codecs.quantity(DischargePerRevolution.class);
        Field<CalibrationOutcome, String> material =
                Field.required("material", Codecs.TEXT, CalibrationOutcome::material);
        Field<CalibrationOutcome, Optional<Quantity<?>>> opening =
                Field.optional("opening", Codecs.OPENING, CalibrationOutcome::opening);
        Field<CalibrationOutcome, Quantity<Dimensionless>> catches =
                Field.required("catches", RATIO, CalibrationOutcome::catches);
        Field<CalibrationOutcome, RatioEstimator> estimator =
                Field.required("estimator", Codecs.choice(RatioEstimator.class), CalibrationOutcome::estimator);
        Field<CalibrationOutcome, Quantity<DischargePerRevolution>> value =
                Field.required("dischargePerRevolution", discharge, CalibrationOutcome::dischargePerRevolution);
        Field<CalibrationOutcome, Optional<Quantity<DischargePerRevolution>>> uncertainty =
                Field.optional("standardUncertainty", discharge, CalibrationOutcome::standardUncertainty);
        Field<CalibrationOutcome, Optional<Quantity<DischargePerRevolution>>> deviation =
                Field.optional("sampleDeviation", discharge, CalibrationOutcome::sampleDeviation);
        Field<CalibrationOutcome, Quantity<Dimensionless>> fill =
                Field.required("apparentFill", RATIO, CalibrationOutcome::apparentFill);
        Field<CalibrationOutcome, Optional<Quantity<Mass>>> perStart =
                Field.optional("massPerStart", MASS, CalibrationOutcome::massPerStart);
        Field<CalibrationOutcome, Optional<BudgetOutcome>> budget =
                Field.optional("budget", BUDGET, CalibrationOutcome::budget);
        Field<CalibrationOutcome, Optional<Quantity<Mass>>> perStartUncertainty =
                Field.optional("massPerStartUncertainty", MASS, CalibrationOutcome::massPerStartUncertainty);
        return new ObjectCodec<>(
                "calibration",
                List.of(
                        material,
                        opening,
                        catches,
                        estimator,
                        value,
                        uncertainty,
                        deviation,
                        fill,
                        perStart,
                        perStartUncertainty,
                        budget),
                v -> new CalibrationOutcome(
                        v.get(material),
                        v.get(opening),
                        v.get(catches),
                        v.get(estimator),
                        v.get(value),
                        v.get(uncertainty),
                        v.get(deviation),
                        v.get(fill),
                        v.get(perStart),
                        v.get(perStartUncertainty),
                        v.get(budget)));
    }

    private static ObjectCodec<BudgetOutcome> budget() {
        Field<BudgetOutcome.Row, String> name = Field.required("name", Codecs.TEXT, BudgetOutcome.Row::name);
        Field<BudgetOutcome.Row, Component.Evaluation> evaluation =
                Field.required("evaluation", Codecs.choice(Component.Evaluation.class), BudgetOutcome.Row::evaluation);
        Field<BudgetOutcome.Row, Distribution> distribution =
                Field.required("distribution", Codecs.choice(Distribution.class), BudgetOutcome.Row::distribution);
        Field<BudgetOutcome.Row, Quantity<?>> uncertainty =
                Field.required("standardUncertainty", Codecs.ANY_QUANTITY, BudgetOutcome.Row::standardUncertainty);
        Field<BudgetOutcome.Row, Quantity<?>> contribution =
                Field.required("contribution", Codecs.ANY_QUANTITY, BudgetOutcome.Row::contribution);
        Field<BudgetOutcome.Row, Optional<Quantity<Dimensionless>>> degrees =
                Field.optional("degreesOfFreedom", RATIO, BudgetOutcome.Row::degreesOfFreedom);
        Field<BudgetOutcome.Row, Optional<String>> group =
                Field.optional("group", Codecs.TEXT, BudgetOutcome.Row::group);
        Field<BudgetOutcome.Row, Quantity<Dimensionless>> share =
                Field.required("share", RATIO, BudgetOutcome.Row::share);
        ObjectCodec<BudgetOutcome.Row> row = new ObjectCodec<>(
                "budget-component",
                List.of(name, evaluation, distribution, uncertainty, contribution, degrees, group, share),
                v -> new BudgetOutcome.Row(
                        v.get(name),
                        v.get(evaluation),
                        v.get(distribution),
                        v.get(uncertainty),
                        v.get(contribution),
                        v.get(degrees),
                        v.get(group),
                        v.get(share)));
        Field<BudgetOutcome, List<BudgetOutcome.Row>> components =
                Field.required("components", Codecs.listOf(row), BudgetOutcome::components);
        Field<BudgetOutcome, Quantity<?>> combined =
                Field.required("combined", Codecs.ANY_QUANTITY, BudgetOutcome::combined);
        Field<BudgetOutcome, Optional<Quantity<Dimensionless>>> effective =
                Field.optional("degreesOfFreedom", RATIO, BudgetOutcome::degreesOfFreedom);
        Field<BudgetOutcome, Quantity<?>> expanded =
                Field.required("expanded", Codecs.ANY_QUANTITY, BudgetOutcome::expanded);
        Field<BudgetOutcome, Optional<String>> dominant =
                Field.optional("dominant", Codecs.TEXT, BudgetOutcome::dominant);
        return new ObjectCodec<>(
                "uncertainty-budget",
                List.of(components, combined, effective, expanded, dominant),
                v -> new BudgetOutcome(
                        v.get(components), v.get(combined), v.get(effective), v.get(expanded), v.get(dominant)));
    }

    private static ObjectCodec<JudgementOutcome> judgement() {
        Field<JudgementOutcome, Quantity<Dimensionless>> howMany =
                Field.required("catches", RATIO, JudgementOutcome::catches);
        Field<JudgementOutcome, Quantity<Dimensionless>> error =
                Field.required("error", RATIO, JudgementOutcome::error);
        Field<JudgementOutcome, Verdict> verdict = Field.required("verdict", VERDICT, JudgementOutcome::verdict);
        Field<JudgementOutcome, Optional<Quantity<Dimensionless>>> risk =
                Field.optional("risk", RATIO, JudgementOutcome::risk);
        Field<JudgementOutcome, Quantity<Dimensionless>> guard =
                Field.required("guardBand", RATIO, JudgementOutcome::guardBand);
        Field<JudgementOutcome, Quantity<Dimensionless>> below =
                Field.required("probabilityBelow", RATIO, JudgementOutcome::probabilityBelow);
        Field<JudgementOutcome, Quantity<Dimensionless>> within =
                Field.required("probabilityWithin", RATIO, JudgementOutcome::probabilityWithin);
        Field<JudgementOutcome, Quantity<Dimensionless>> above =
                Field.required("probabilityAbove", RATIO, JudgementOutcome::probabilityAbove);
        Field<JudgementOutcome, Advice> advice =
                Field.required("advice", Codecs.choice(Advice.class), JudgementOutcome::advice);
        Field<JudgementOutcome, Optional<Quantity<Dimensionless>>> catches =
                Field.optional("furtherCatches", RATIO, JudgementOutcome::furtherCatches);
        Field<JudgementOutcome, Optional<Quantity<Mass>>> mass =
                Field.optional("furtherMass", MASS, JudgementOutcome::furtherMass);
        Field<JudgementOutcome, BudgetOutcome> budget = Field.required("budget", BUDGET, JudgementOutcome::budget);
        return new ObjectCodec<>(
                "judgement",
                List.of(howMany, error, verdict, risk, guard, below, within, above, advice, catches, mass, budget),
                v -> new JudgementOutcome(
                        v.get(howMany),
                        v.get(error),
                        v.get(verdict),
                        v.get(risk),
                        v.get(guard),
                        v.get(below),
                        v.get(within),
                        v.get(above),
                        v.get(advice),
                        v.get(catches),
                        v.get(mass),
                        v.get(budget)));
    }

    private static ObjectCodec<CorrectionOutcome.Step> correctionStep() {
        Field<CorrectionOutcome.Step, Optional<LocalDate>> on =
                Field.optional("on", Codecs.DATE, CorrectionOutcome.Step::on);
        Field<CorrectionOutcome.Step, Correction.Action> action =
                Field.required("action", Codecs.choice(Correction.Action.class), CorrectionOutcome.Step::action);
        Field<CorrectionOutcome.Step, Quantity<?>> value =
                Field.required("value", Codecs.FACTOR, CorrectionOutcome.Step::value);
        Field<CorrectionOutcome.Step, Optional<Quantity<Dimensionless>>> error =
                Field.optional("error", RATIO, CorrectionOutcome.Step::error);
        Field<CorrectionOutcome.Step, Optional<Quantity<Dimensionless>>> expanded =
                Field.optional("expandedUncertainty", RATIO, CorrectionOutcome.Step::expandedUncertainty);
        Field<CorrectionOutcome.Step, Optional<Verdict>> verdict =
                Field.optional("verdict", VERDICT, CorrectionOutcome.Step::verdict);
        return new ObjectCodec<>(
                "correction-step",
                List.of(on, action, value, error, expanded, verdict),
                v -> new CorrectionOutcome.Step(
                        v.get(on), v.get(action), v.get(value), v.get(error), v.get(expanded), v.get(verdict)));
    }

    private static ObjectCodec<CurveOutcome> curve() {
        Codec<Quantity<DischargePerRevolution>> discharge = Codecs.quantity(DischargePerRevolution.class);
        Codec<Quantity<BulkDensity>> density = Codecs.quantity(BulkDensity.class);
        Field<CurveOutcome.Point, Quantity<?>> opening =
                Field.required("opening", Codecs.OPENING, CurveOutcome.Point::opening);
        Field<CurveOutcome.Point, Quantity<DischargePerRevolution>> value =
                Field.required("dischargePerRevolution", discharge, CurveOutcome.Point::dischargePerRevolution);
        Field<CurveOutcome.Point, Optional<Quantity<DischargePerRevolution>>> uncertainty =
                Field.optional("standardUncertainty", discharge, CurveOutcome.Point::standardUncertainty);
        ObjectCodec<CurveOutcome.Point> point = new ObjectCodec<>(
                "curve-point",
                List.of(opening, value, uncertainty),
                v -> new CurveOutcome.Point(v.get(opening), v.get(value), v.get(uncertainty)));
        Field<CurveOutcome, String> material = Field.required("material", Codecs.TEXT, CurveOutcome::material);
        Field<CurveOutcome, CurveModel> model =
                Field.required("model", Codecs.choice(CurveModel.class), CurveOutcome::model);
        Field<CurveOutcome, Quantity<Dimensionless>> catches = Field.required("catches", RATIO, CurveOutcome::catches);
        Field<CurveOutcome, Optional<Quantity<BulkDensity>>> effective =
                Field.optional("effectiveBulkDensity", density, CurveOutcome::effectiveBulkDensity);
        Field<CurveOutcome, Optional<Quantity<BulkDensity>>> effectiveUncertainty = Field.optional(
                "effectiveBulkDensityUncertainty", density, CurveOutcome::effectiveBulkDensityUncertainty);
        Field<CurveOutcome, Optional<Quantity<?>>> dead =
                Field.optional("deadOpening", Codecs.OPENING, CurveOutcome::deadOpening);
        Field<CurveOutcome, Optional<Quantity<?>>> deadUncertainty =
                Field.optional("deadOpeningUncertainty", Codecs.OPENING, CurveOutcome::deadOpeningUncertainty);
        Field<CurveOutcome, Optional<Quantity<Dimensionless>>> chance =
                Field.optional("misfitChance", RATIO, CurveOutcome::misfitChance);
        Field<CurveOutcome, List<CurveOutcome.Point>> points =
                Field.required("points", Codecs.listOf(point), CurveOutcome::points);
        return new ObjectCodec<>(
                "curve",
                List.of(
                        material,
                        model,
                        catches,
                        effective,
                        effectiveUncertainty,
                        dead,
                        deadUncertainty,
                        chance,
                        points),
                v -> new CurveOutcome(
                        v.get(material),
                        v.get(model),
                        v.get(catches),
                        v.get(effective),
                        v.get(effectiveUncertainty),
                        v.get(dead),
                        v.get(deadUncertainty),
                        v.get(chance),
                        v.get(points)));
    }

    private static ObjectCodec<VerificationOutcome> verification() {
        Field<VerificationOutcome, String> material =
                Field.required("material", Codecs.TEXT, VerificationOutcome::material);
        Field<VerificationOutcome, Optional<Quantity<?>>> opening =
                Field.optional("opening", Codecs.OPENING, VerificationOutcome::opening);
        Field<VerificationOutcome, Quantity<?>> inForce =
                Field.required("inForce", Codecs.FACTOR, VerificationOutcome::inForce);
        Field<VerificationOutcome, Quantity<Length>> distance =
                Field.required("testDistance", LENGTH, VerificationOutcome::testDistance);
        Field<VerificationOutcome, Quantity<Mass>> expected =
                Field.required("expected", MASS, VerificationOutcome::expected);
        Field<VerificationOutcome, Optional<Quantity<Mass>>> indicated =
                Field.optional("indicated", MASS, VerificationOutcome::indicated);
        Field<VerificationOutcome, Quantity<Mass>> caught = Field.required("caught", MASS, VerificationOutcome::caught);
        Field<VerificationOutcome, Optional<Quantity<Dimensionless>>> calibrationError =
                Field.optional("calibrationError", RATIO, VerificationOutcome::calibrationError);
        Field<VerificationOutcome, Quantity<Dimensionless>> deliveryError =
                Field.required("deliveryError", RATIO, VerificationOutcome::deliveryError);
        Field<VerificationOutcome, Optional<Quantity<Time>>> lostTime =
                Field.optional("equivalentLostTime", TIME, VerificationOutcome::equivalentLostTime);
        Field<VerificationOutcome, Quantity<ApplicationRate>> rate = Field.required(
                "deliveredRate", Codecs.quantity(ApplicationRate.class), VerificationOutcome::deliveredRate);
        Field<VerificationOutcome, Verdict> verdict = Field.required("verdict", VERDICT, VerificationOutcome::verdict);
        Field<VerificationOutcome, Optional<JudgementOutcome>> judgement =
                Field.optional("judgement", judgement(), VerificationOutcome::judgement);
        Field<VerificationOutcome, Optional<JudgementOutcome>> together =
                Field.optional("together", judgement(), VerificationOutcome::together);
        return new ObjectCodec<>(
                "verification",
                List.of(
                        material,
                        opening,
                        inForce,
                        distance,
                        expected,
                        indicated,
                        caught,
                        calibrationError,
                        deliveryError,
                        lostTime,
                        rate,
                        verdict,
                        judgement,
                        together),
                v -> new VerificationOutcome(
                        v.get(material),
                        v.get(opening),
                        v.get(inForce),
                        v.get(distance),
                        v.get(expected),
                        v.get(indicated),
                        v.get(caught),
                        v.get(calibrationError),
                        v.get(deliveryError),
                        v.get(lostTime),
                        v.get(rate),
                        v.get(verdict),
                        v.get(judgement),
                        v.get(together)));
    }

    private static ObjectCodec<CorrectionOutcome> correction() {
        Field<CorrectionOutcome, String> material =
                Field.required("material", Codecs.TEXT, CorrectionOutcome::material);
        Field<CorrectionOutcome, Optional<Quantity<?>>> opening =
                Field.optional("opening", Codecs.OPENING, CorrectionOutcome::opening);
        Field<CorrectionOutcome, Quantity<?>> asFound =
                Field.required("asFound", Codecs.FACTOR, CorrectionOutcome::asFound);
        Field<CorrectionOutcome, Quantity<?>> computed =
                Field.required("computed", Codecs.FACTOR, CorrectionOutcome::computed);
        Field<CorrectionOutcome, Quantity<?>> toEnter =
                Field.required("toEnter", Codecs.FACTOR, CorrectionOutcome::toEnter);
        Field<CorrectionOutcome, Optional<Quantity<?>>> asLeft =
                Field.optional("asLeft", Codecs.FACTOR, CorrectionOutcome::asLeft);
        Field<CorrectionOutcome, Correction.Status> status =
                Field.required("status", Codecs.choice(Correction.Status.class), CorrectionOutcome::status);
        Field<CorrectionOutcome, Optional<Correction.Basis>> basis =
                Field.optional("basis", Codecs.choice(Correction.Basis.class), CorrectionOutcome::basis);
        Field<CorrectionOutcome, List<CorrectionOutcome.Step>> history =
                Field.list("history", correctionStep(), CorrectionOutcome::history);
        return new ObjectCodec<>(
                "correction",
                List.of(material, opening, asFound, computed, toEnter, asLeft, status, basis, history),
                v -> new CorrectionOutcome(
                        v.get(material),
                        v.get(opening),
                        v.get(asFound),
                        v.get(computed),
                        v.get(toEnter),
                        v.get(asLeft),
                        v.get(status),
                        v.get(basis),
                        v.get(history)));
    }

    private static ObjectCodec<StartUpOutcome> startUp() {
        Field<StartUpOutcome, String> material = Field.required("material", Codecs.TEXT, StartUpOutcome::material);
        Field<StartUpOutcome, Optional<Quantity<?>>> opening =
                Field.optional("opening", Codecs.OPENING, StartUpOutcome::opening);
        Field<StartUpOutcome, Quantity<Mass>> mass =
                Field.required("lostMassPerStart", MASS, StartUpOutcome::lostMassPerStart);
        Field<StartUpOutcome, Quantity<Time>> time =
                Field.required("lostTimePerStart", TIME, StartUpOutcome::lostTimePerStart);
        Field<StartUpOutcome, Quantity<Dimensionless>> error =
                Field.required("steadyError", RATIO, StartUpOutcome::steadyError);
        Field<StartUpOutcome, Optional<Quantity<Dimensionless>>> uncertainty =
                Field.optional("steadyErrorUncertainty", RATIO, StartUpOutcome::steadyErrorUncertainty);
        return new ObjectCodec<>(
                "start-up",
                List.of(material, opening, mass, time, error, uncertainty),
                v -> new StartUpOutcome(
                        v.get(material), v.get(opening), v.get(mass), v.get(time), v.get(error), v.get(uncertainty)));
    }

    private static ObjectCodec<RoadSpeedOutcome> roadSpeed() {
        Codec<Quantity<PulsesPerDistance>> perDistance = Codecs.quantity(PulsesPerDistance.class);
        Field<RoadSpeedOutcome, Quantity<PulsesPerDistance>> inForce =
                Field.required("inForce", perDistance, RoadSpeedOutcome::inForce);
        Field<RoadSpeedOutcome, Quantity<PulsesPerDistance>> measured =
                Field.required("measured", perDistance, RoadSpeedOutcome::measured);
        Field<RoadSpeedOutcome, Quantity<PulsesPerDistance>> uncertainty =
                Field.required("standardUncertainty", perDistance, RoadSpeedOutcome::standardUncertainty);
        Field<RoadSpeedOutcome, Quantity<Dimensionless>> error =
                Field.required("error", RATIO, RoadSpeedOutcome::error);
        Field<RoadSpeedOutcome, Quantity<Dimensionless>> effect =
                Field.required("effectOnRate", RATIO, RoadSpeedOutcome::effectOnRate);
        Field<RoadSpeedOutcome, Verdict> verdict = Field.required("verdict", VERDICT, RoadSpeedOutcome::verdict);
        return new ObjectCodec<>(
                "road-speed-check",
                List.of(inForce, measured, uncertainty, error, effect, verdict),
                v -> new RoadSpeedOutcome(
                        v.get(inForce),
                        v.get(measured),
                        v.get(uncertainty),
                        v.get(error),
                        v.get(effect),
                        v.get(verdict)));
    }

    /** Severity and sentence follow from the code and the numbers; they are written for readers who have no library. */
    private static ObjectCodec<Finding> finding() {
        Map<String, FindingCode> codes = Arrays.stream(FindingCode.values())
                .collect(Collectors.toMap(FindingCode::id, Function.identity(), (a, b) -> a, LinkedHashMap::new));
        Field<Finding, FindingCode> code = Field.required("code", Codecs.choice(codes), Finding::code);
        Field<Finding, String> severity =
                Field.required("severity", Codecs.TEXT, f -> f.severity().name().toLowerCase(Locale.ROOT));
        Field<Finding, String> sentence = Field.required("sentence", Codecs.TEXT, Finding::sentence);
        Field<Finding, Map<String, Quantity<?>>> numbers =
                new Field<>("numbers", Codecs.mapOf(Codecs.ANY_QUANTITY), Finding::numbers, Map.of(), Map::isEmpty);
        Field<Finding, Map<String, String>> words =
                new Field<>("words", Codecs.mapOf(Codecs.TEXT), Finding::words, Map.of(), Map::isEmpty);
        return new ObjectCodec<>(
                "finding",
                List.of(code, severity, sentence, numbers, words),
                v -> new Finding(v.get(code), v.get(numbers), v.get(words)));
    }

    private static ObjectCodec<SignOff> signOff() {
        Field<SignOff, String> name = Field.required("name", Codecs.TEXT, SignOff::name);
        Field<SignOff, Optional<String>> role = Field.optional("role", Codecs.TEXT, SignOff::role);
        Field<SignOff, LocalDate> on = Field.required("on", Codecs.DATE, SignOff::on);
        return new ObjectCodec<>(
                "sign-off", List.of(name, role, on), v -> new SignOff(v.get(name), v.get(role), v.get(on)));
    }

    private static ObjectCodec<CalibrationRecord> calibrationRecord() {
        Field<CalibrationRecord, FleetDay> entered =
                Field.required("entered", FleetDayCodecs.FLEET_DAY, CalibrationRecord::entered);
        Field<CalibrationRecord, Optional<String>> refusal =
                Field.optional("refusal", Codecs.TEXT, CalibrationRecord::refusal);
        Field<CalibrationRecord, List<CalibrationOutcome>> calibrations =
                Field.list("calibrations", calibration(), CalibrationRecord::calibrations);
        Field<CalibrationRecord, List<CurveOutcome>> curves = Field.list("curves", curve(), CalibrationRecord::curves);
        Field<CalibrationRecord, List<VerificationOutcome>> verifications =
                Field.list("verifications", verification(), CalibrationRecord::verifications);
        Field<CalibrationRecord, List<CorrectionOutcome>> corrections =
                Field.list("corrections", correction(), CalibrationRecord::corrections);
        Field<CalibrationRecord, List<StartUpOutcome>> startUps =
                Field.list("startUps", startUp(), CalibrationRecord::startUps);
        Field<CalibrationRecord, Optional<RoadSpeedOutcome>> roadSpeed =
                Field.optional("roadSpeed", roadSpeed(), CalibrationRecord::roadSpeed);
        Field<CalibrationRecord, MassProof> mass =
                Field.required("massPerRevolution", Codecs.choice(MassProof.class), CalibrationRecord::massProof);
        Field<CalibrationRecord, RoadProof> road =
                Field.required("roadSpeedValue", Codecs.choice(RoadProof.class), CalibrationRecord::roadProof);
        Field<CalibrationRecord, NextStep> next =
                Field.required("nextStep", Codecs.choice(NextStep.class), CalibrationRecord::nextStep);
        Field<CalibrationRecord, List<Finding>> findings =
                Field.list("findings", finding(), CalibrationRecord::findings);
        Field<CalibrationRecord, Optional<SignOff>> signOff =
                Field.optional("signOff", signOff(), CalibrationRecord::signOff);
        return new ObjectCodec<>(
                "calibration-record",
                List.of(
                        entered,
                        refusal,
                        calibrations,
                        curves,
                        verifications,
                        corrections,
                        startUps,
                        roadSpeed,
                        mass,
                        road,
                        next,
                        findings,
                        signOff),
                v -> new CalibrationRecord(
                        v.get(entered),
                        v.get(refusal),
                        v.get(calibrations),
                        v.get(curves),
                        v.get(verifications),
                        v.get(corrections),
                        v.get(startUps),
                        v.get(roadSpeed),
                        v.get(mass),
                        v.get(road),
                        v.get(next),
                        v.get(findings),
                        v.get(signOff)));
    }
}
