package org.gritwright.examples.fleetday;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import javax.measure.Quantity;
import org.gritwright.core.calibration.Calibration;
import org.gritwright.core.calibration.CalibrationFactor;
import org.gritwright.core.curve.DischargeCurve;
import org.gritwright.core.finding.Argument;
import org.gritwright.core.finding.Finding;
import org.gritwright.core.fleet.assessment.PointAssessment;
import org.gritwright.core.fleet.assessment.Refusal;
import org.gritwright.core.fleet.assessment.TruckAssessment;
import org.gritwright.core.observation.CalibrationPoint;
import org.gritwright.core.roadspeed.RoadSpeedCheck;
import org.gritwright.core.spi.Setting;
import org.gritwright.core.statistics.LackOfFit;
import org.gritwright.core.uncertainty.Budget;
import org.gritwright.core.uncertainty.Component;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.core.verification.Correction;
import org.gritwright.core.verification.Judgement;
import org.gritwright.core.verification.StartUp;
import org.gritwright.core.verification.Verification;
import org.gritwright.core.verification.VerificationCatch;
import org.gritwright.core.verification.VerificationSeries;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;

/**
 * Takes the facts out of an assessment. When the library's classes, fields or names change, this is what follows them;
 * the frozen table stays as it is.
 */
final class Facts {
    private static final double COVERAGE = 0.95;

    private Facts() {}

    static void add(FactTable table, TruckAssessment truck) {
        FactSheet sheet = FactSheet.of(table, truck.truck().id());
        refusal(sheet, truck.refusals());
        truck.curves().forEach(curve -> curve(sheet, curve));
        for (PointAssessment point : truck.points()) {
            point.calibration().ifPresent(calibration -> calibration(sheet, calibration));
            point.verifications().forEach(verification -> verification(sheet, verification, point.judged()));
            point.correction().ifPresent(correction -> correction(sheet, correction));
            point.startUp().ifPresent(startUp -> startUp(sheet, startUp));
        }
        truck.roadSpeed().ifPresent(check -> roadSpeed(sheet.part("road speed"), check));
        sheet.put("mass proof", truck.massProof());
        sheet.put("road proof", truck.roadProof());
        sheet.put("next step", truck.nextStep());
        sheet.putFindings(truck.findings().stream().map(Facts::finding).toList());
    }

    /** The frozen day kept the first reason only, which is the only one that it has. */
    /** As every refusal was said when the facts were frozen, whatever its words are today. */
    private static String rule(Refusal refusal) {
        return refusal.field() + " must be " + refusal.accepted() + ": " + refusal.value();
    }

    private static void refusal(FactSheet sheet, List<Refusal> refusals) {
        sheet.put("refused", refusals.isEmpty() ? "no" : "yes");
        List<String> amounts = refusals.stream()
                .flatMap(refusal -> FrozenWords.amounts(rule(refusal)).stream())
                .toList();
        for (int i = 0; i < amounts.size(); i++) {
            sheet.number(i + 1).put("refused/amount", amounts.get(i));
        }
    }

    private static FactSheet of(FactSheet sheet, String material, Optional<Quantity<?>> opening) {
        return sheet.of(material, opening.map(Amounts::format).orElse(""));
    }

    private static FactSheet of(FactSheet sheet, CalibrationPoint point) {
        return of(sheet, point.material().name(), point.setting().quantity());
    }

    private static void calibration(FactSheet all, Calibration calibration) {
        FactSheet sheet = of(all, calibration.point()).part("calibration");
        sheet.put("catches", calibration.catches().size());
        sheet.put("estimator", calibration.estimator());
        sheet.put(
                "discharge per revolution", calibration.dischargePerRevolution().value());
        sheet.put("standard uncertainty", calibration.dischargePerRevolution().standardUncertainty());
        sheet.put("sample deviation", calibration.sampleDeviation());
        sheet.put("apparent fill", calibration.apparentFill().quantity());
        sheet.put("mass per start", calibration.massPerStart().map(Measured::value));
        sheet.put(
                "mass per start, standard uncertainty",
                calibration.massPerStart().flatMap(Measured::standardUncertainty));
        budget(sheet.part("budget"), calibration.budget());
    }

    private static <Q extends Quantity<Q>> void budget(FactSheet sheet, Budget<Q> budget) {
        Measured<Q> result = budget.result();
        sheet.put("standard uncertainty", result.standardUncertainty());
        sheet.put("expanded uncertainty", result.expandedUncertainty(COVERAGE));
        degreesOfFreedom(sheet, result.degreesOfFreedom().orElseThrow());
        budget.dominant().ifPresent(largest -> sheet.put("largest component", FrozenWords.component(largest.name())));
        for (Component<Q> component : budget.components()) {
            FactSheet row = sheet.part(FrozenWords.component(component.name()));
            row.put("evaluation", component.evaluation());
            row.put("distribution", component.distribution());
            row.put("standard uncertainty", component.standardUncertainty());
            row.put("contribution", component.contribution());
            degreesOfFreedom(row, component.degreesOfFreedom());
            component.group().ifPresent(group -> row.put("group", group));
            row.put("share", Amounts.ofSi(budget.shareOf(component), SpreadingUnits.PERCENT));
        }
    }

    private static void degreesOfFreedom(FactSheet sheet, double degrees) {
        if (!Double.isInfinite(degrees)) {
            sheet.put("degrees of freedom", Amounts.of(degrees, SpreadingUnits.ONE));
        }
    }

    private static void curve(FactSheet all, DischargeCurve curve) {
        String material = curve.material().name();
        FactSheet sheet = all.of(material, "").part("curve");
        sheet.put("model", curve.model());
        sheet.put("catches", curve.catches().size());
        sheet.put("effective bulk density", curve.effectiveBulkDensity().map(Measured::value));
        sheet.put(
                "effective bulk density, standard uncertainty",
                curve.effectiveBulkDensity().flatMap(Measured::standardUncertainty));
        curve.deadOpening().ifPresent(dead -> {
            sheet.put("dead opening", dead.value());
            sheet.put("dead opening, standard uncertainty", dead.standardUncertainty());
        });
        sheet.put(
                "chance of the misfit",
                curve.test().map(LackOfFit::chance).map(chance -> Amounts.of(chance, SpreadingUnits.ONE)));
        for (Setting setting : curve.settings()) {
            FactSheet point = of(all, material, setting.quantity()).part("curve");
            var discharge = curve.predict(setting).dischargePerRevolution();
            point.put("discharge per revolution", discharge.value());
            point.put("standard uncertainty", discharge.standardUncertainty());
        }
    }

    private static void verification(FactSheet all, Verification verification, Optional<VerificationSeries> judged) {
        VerificationCatch source = verification.source();
        FactSheet sheet =
                of(all.at(source.observation().at().toString()), source.point()).part("verification");
        sheet.put("in force", verification.source().inForce().factor().value());
        sheet.put("test distance", verification.source().run().testDistance());
        sheet.put("expected", verification.expectedMass());
        sheet.put("indicated", verification.indicatedMass());
        sheet.put("caught", verification.source().caught().total());
        sheet.put("calibration error", verification.calibrationError());
        sheet.put("delivery error", verification.deliveryError());
        sheet.put("lost time", verification.equivalentLostTime());
        sheet.put("delivered rate", verification.deliveredRate());
        sheet.put("verdict", verification.verdict());
        judgement(sheet.part("judgement"), verification.judgement(), 1);
        judged.filter(series -> series.last().equals(verification))
                .filter(series -> series.verifications().size() > 1)
                .ifPresent(series -> judgement(
                        sheet.part("together"),
                        series.judgement(),
                        series.verifications().size()));
    }

    private static void judgement(FactSheet sheet, Judgement judgement, int catches) {
        sheet.put("catches", catches);
        sheet.put("error", judgement.budget().result().value());
        sheet.put("verdict", judgement.verdict());
        sheet.put("risk", judgement.rule().risk());
        sheet.put("guard band", judgement.guardBand());
        sheet.put("probability below", percent(judgement.conformity().below()));
        sheet.put("probability within", percent(judgement.conformity().within()));
        sheet.put("probability above", percent(judgement.conformity().above()));
        sheet.put("advice", judgement.advice());
        judgement.further().ifPresent(further -> {
            sheet.put("further catches", further.catches());
            sheet.put("further mass", further.amount());
        });
        budget(sheet.part("budget"), judgement.budget());
    }

    private static Quantity<?> percent(double probability) {
        return Amounts.ofSi(probability, SpreadingUnits.PERCENT);
    }

    private static void correction(FactSheet all, Correction correction) {
        FactSheet sheet = of(all, correction.evidence().point()).part("correction");
        sheet.put("as found", correction.asFound().value());
        sheet.put("computed", correction.computed().value());
        sheet.put("to enter", correction.toEnter().value());
        sheet.put("as left", correction.asLeft().map(CalibrationFactor::value));
        sheet.put("status", correction.status());
        sheet.put("basis", correction.basis());
        for (int i = 0; i < correction.history().size(); i++) {
            Correction.Step step = correction.history().get(i);
            FactSheet row = sheet.number(i + 1).part("history");
            step.on().ifPresent(day -> row.put("on", day.toString()));
            row.put("action", step.action());
            row.put("value", step.value().value());
            step.why().ifPresent(why -> {
                row.put("error", why.budget().result().value());
                row.put("expanded uncertainty", why.expandedUncertainty());
                row.put("verdict", why.verdict());
            });
        }
    }

    private static void startUp(FactSheet all, StartUp startUp) {
        FactSheet sheet = of(all, startUp.inForce().point()).part("start-up");
        sheet.put("lost mass per start", startUp.lostMassPerStart());
        sheet.put("lost time per start", startUp.lostTimePerStart());
        sheet.put("steady error", startUp.steadyError());
        sheet.put("steady error, standard uncertainty", startUp.steadyErrorUncertainty());
    }

    private static void roadSpeed(FactSheet sheet, RoadSpeedCheck check) {
        sheet.put("in force", check.inForce());
        sheet.put("measured", check.measured().value());
        sheet.put("standard uncertainty", check.measured().standardUncertainty());
        sheet.put("error", check.error());
        sheet.put("effect on rate", check.effectOnRate());
        sheet.put("verdict", check.verdict());
    }

    private static FactSheet.FindingFact finding(Finding finding) {
        Map<String, String> numbers = new TreeMap<>();
        Map<String, String> words = new TreeMap<>();
        finding.arguments().forEach((name, argument) -> {
            if (argument instanceof Argument.Amount amount) {
                numbers.put(name, Amounts.format(amount.quantity()));
            } else {
                words.put(name, argument.words());
            }
        });
        return FactSheet.FindingFact.of(finding.code().id(), numbers, words);
    }
}
