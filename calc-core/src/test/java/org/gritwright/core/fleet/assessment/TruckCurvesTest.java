package org.gritwright.core.fleet.assessment;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.Samples.codes;
import static org.gritwright.core.Samples.height;
import static org.gritwright.core.Samples.inches;
import static org.gritwright.core.Samples.only;
import static org.gritwright.core.fleet.assessment.Assessments.calibrations;
import static org.gritwright.core.fleet.day.Trucks.calibrationCatch;
import static org.gritwright.core.fleet.day.Trucks.day;
import static org.gritwright.core.fleet.day.Trucks.entry;
import static org.gritwright.core.fleet.day.Trucks.idle;
import static org.gritwright.core.fleet.day.Trucks.pulses;
import static org.gritwright.core.fleet.day.Trucks.verificationCatch;
import static org.gritwright.core.fleet.day.Trucks.with;
import static org.gritwright.units.SpreadingUnits.MILLIMETER;
import static org.gritwright.units.SpreadingUnits.ONE;
import static org.gritwright.units.SpreadingUnits.POUND_PER_CUBIC_FOOT;
import static org.gritwright.units.SpreadingUnits.POUND_PER_REVOLUTION;
import static org.gritwright.units.SpreadingUnits.PULSE_PER_REVOLUTION;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import org.gritwright.core.calibration.CalibrationAge;
import org.gritwright.core.curve.CurveModel;
import org.gritwright.core.curve.DischargeCurve;
import org.gritwright.core.finding.Argument;
import org.gritwright.core.finding.Finding;
import org.gritwright.core.finding.FindingCode;
import org.gritwright.core.finding.Severity;
import org.gritwright.core.finding.Term;
import org.gritwright.core.fleet.day.CalibrationCatchEntry;
import org.gritwright.core.fleet.day.CatchEntry;
import org.gritwright.core.fleet.day.FleetDay;
import org.gritwright.core.fleet.day.SpreaderEntry;
import org.gritwright.core.fleet.day.TruckDay;
import org.gritwright.core.fleet.day.Trucks;
import org.gritwright.core.fleet.day.TypedEntry;
import org.gritwright.core.metering.BuiltInTypes;
import org.gritwright.core.observation.Coasting;
import org.gritwright.core.observation.Material;
import org.gritwright.core.spi.Setting;
import org.gritwright.core.statistics.RatioEstimator;
import org.gritwright.core.verification.VerificationLimits;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.quantity.BulkDensity;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** A truck that was calibrated at several gate openings has a discharge curve for each material. */
class TruckCurvesTest {
    private static final FleetAssessor ASSESSOR = FleetAssessor.of(BuiltInTypes.registry());

    private static TruckAssessment assess(TruckDay truck) {
        return ASSESSOR.assess(day(truck)).get(0);
    }

    /** A catch of 30 revolutions. */
    private static CalibrationCatchEntry caught(int hour, double openingInches, double poundsPerRevolution) {
        return new CalibrationCatchEntry(
                entry(hour, openingInches, Math.rint(30 * poundsPerRevolution), Optional.of(pulses(3000))),
                true,
                Coasting.IN_BOTH);
    }

    private static CalibrationCatchEntry of(String material, CalibrationCatchEntry one) {
        CatchEntry e = one.entry();
        return new CalibrationCatchEntry(
                new CatchEntry(
                        e.at(),
                        e.operator(),
                        e.scale(),
                        e.containers(),
                        Optional.empty(),
                        Optional.empty(),
                        e.counted(),
                        e.setting(),
                        material,
                        e.conditions(),
                        e.notes()),
                one.primed(),
                one.coasting());
    }

    private static TruckDay withModel(CurveModel model, TruckDay truck) {
        return truck.curveModel(model);
    }

    private static double poundsPerRevolutionAt(DischargeCurve curve, Quantity<Length> opening) {
        return Amounts.in(
                curve.predict(Setting.height(opening)).dischargePerRevolution().value(), POUND_PER_REVOLUTION);
    }

    @Test
    void catchesAtOneOpeningGiveNoCurve() {
        assertThat(assess(with(idle("T-01"), calibrationCatch(8, 2), calibrationCatch(9, 2)))
                        .curves())
                .isEmpty();
    }

    @Test
    void oneOpeningInTwoUnitsIsOneOpening() {
        CalibrationCatchEntry one = calibrationCatch(9, 2);
        CatchEntry e = one.entry();
        CalibrationCatchEntry metric =
                new CalibrationCatchEntry(e.at(Amounts.of(50.8, MILLIMETER)), true, Coasting.IN_BOTH);

        TruckAssessment assessment = assess(with(idle("T-01"), calibrationCatch(8, 2), metric));
        assertThat(assessment.refusals()).isEmpty();
        assertThat(calibrations(assessment)).hasSize(1);
        assertThat(assessment.curves()).isEmpty();
    }

    @Test
    void catchesAtSeveralOpeningsGiveACurveThroughThem() {
        TruckAssessment assessment =
                assess(with(idle("T-01"), calibrationCatch(8, 2), calibrationCatch(9, 3), calibrationCatch(10, 4)));

        assertThat(calibrations(assessment)).hasSize(3);
        assertThat(assessment.curves()).hasSize(1);
        DischargeCurve curve = assessment.curves().get(0);
        assertThat(curve.catches()).hasSize(3);
        assertThat(curve.settings()).containsExactly(height(2), height(3), height(4));
        assertThat(poundsPerRevolutionAt(curve, inches(3.5))).isCloseTo(9.1, within(1e-9));
    }

    /** 3 lb are lost at each start. */
    private static CalibrationCatchEntry late(int hour, double openingInches, int revolutions, double pounds) {
        return new CalibrationCatchEntry(
                entry(hour, openingInches, revolutions * pounds - 3, Optional.of(pulses(revolutions * 100.0))),
                true,
                Coasting.IN_BOTH);
    }

    @Test
    void byALineEachOpeningHasItsMassPerStartAndThereIsNoCurve() {
        FleetAssessor byLine = new FleetAssessor(
                BuiltInTypes.registry(),
                RatioEstimator.LINE_WITH_INTERCEPT,
                VerificationLimits.COMMON,
                CalibrationAge.PREPARATION);
        TruckDay truck = with(
                idle("T-01"), late(8, 2, 30, 5.2), late(9, 2, 60, 5.2), late(10, 4, 30, 10.4), late(11, 4, 60, 10.4));
        TruckAssessment assessment = byLine.assess(day(truck)).get(0);

        assertThat(assessment.refusals()).isEmpty();
        assertThat(calibrations(assessment))
                .extracting(calibration ->
                        Amounts.in(calibration.massPerStart().orElseThrow().value(), SpreadingUnits.POUND))
                .allSatisfy(pounds -> assertThat(pounds).isCloseTo(-3, within(1e-9)))
                .hasSize(2);
        assertThat(assessment.curves()).isEmpty();
        assertThat(assessment.findings()).extracting(Finding::code).doesNotContain(FindingCode.CURVE_IMPOSSIBLE);
    }

    @Test
    void withoutRepeatsADeadOpeningIsAllowedFor() {
        // 26 lb/rev at 2 in and 58 lb/rev at 4 in, both by a fifth: 16 lb/rev/in above 0.375 in
        DischargeCurve curve = assess(with(idle("T-01"), caught(8, 2, 5.2), caught(9, 4, 11.6)))
                .curves()
                .get(0);

        assertThat(curve.model()).isEqualTo(CurveModel.DEAD_OPENING);
        assertThat(poundsPerRevolutionAt(curve, inches(3))).isCloseTo(8.4, within(1e-6));
        assertThat(poundsPerRevolutionAt(curve, inches(1))).isCloseTo(2.0, within(1e-6));
    }

    @Test
    void twoOpeningsInProportionShowNoDeadOpening() {
        TruckAssessment assessment = assess(with(idle("T-01"), calibrationCatch(8, 2), calibrationCatch(9, 3)));

        assertThat(codes(assessment.findings())).doesNotContain(FindingCode.DEAD_OPENING_FOUND);
        assertThat(codes(assess(with(idle("T-01"), caught(8, 2, 5.2), caught(9, 4, 11.6)))
                        .findings()))
                .contains(FindingCode.DEAD_OPENING_FOUND);
    }

    @ParameterizedTest
    @EnumSource
    void aModelThatIsGivenIsTaken(CurveModel model) {
        TruckDay truck = withModel(model, with(idle("T-01"), caught(8, 2, 5.2), caught(9, 4, 11.6)));

        assertThat(assess(truck).curves()).extracting(DischargeCurve::model).containsExactly(model);
    }

    @Test
    void aLineThroughZeroThatWasAskedForSaysFortyFivePercentTooMuch() {
        TruckDay truck = with(idle("T-01"), caught(8, 2, 5.2), caught(9, 4, 11.6));
        double through = poundsPerRevolutionAt(
                assess(withModel(
                                CurveModel.PROPORTIONAL,
                                with(idle("T-01"), caught(8, 4, 11.6), caught(9, 4.0000001, 11.6))))
                        .curves()
                        .get(0),
                inches(1));
        double allowedFor = poundsPerRevolutionAt(assess(truck).curves().get(0), inches(1));

        assertThat(through).isCloseTo(2.9, within(1e-6));
        assertThat(through / allowedFor - 1).isCloseTo(0.45, within(1e-6));
    }

    @Test
    void repeatsChooseTheModel() {
        TruckDay proportional =
                with(idle("T-01"), caught(7, 2, 5.1), caught(8, 2, 5.3), caught(9, 4, 10.3), caught(10, 4, 10.5));
        TruckDay offset =
                with(idle("T-01"), caught(7, 2, 5.1), caught(8, 2, 5.3), caught(9, 4, 11.5), caught(10, 4, 11.7));

        assertThat(assess(proportional).curves().get(0).model()).isEqualTo(CurveModel.PROPORTIONAL);
        assertThat(assess(offset).curves().get(0).model()).isEqualTo(CurveModel.DEAD_OPENING);
    }

    @Test
    void eachMaterialHasACurveOfItsOwn() {
        FleetDay salt = day(with(
                idle("T-01"),
                calibrationCatch(8, 2),
                calibrationCatch(9, 4),
                of("sand", caught(10, 2, 6.4)),
                of("sand", caught(11, 4, 12.8)),
                of("grit", caught(12, 2, 6.1))));
        Quantity<BulkDensity> density = Amounts.of(95, POUND_PER_CUBIC_FOOT);
        FleetDay several = new FleetDay(
                salt.day(),
                salt.seasonStart(),
                salt.tolerance(),
                salt.decisionRule(),
                salt.allowances(),
                salt.site(),
                salt.technician(),
                salt.scales(),
                List.of(),
                List.of(salt.materials().get(0), Material.of("sand", density), Material.of("grit", density)),
                salt.plan(),
                salt.routes(),
                salt.trucks());

        TruckAssessment assessment = ASSESSOR.assess(several).get(0);
        assertThat(assessment.refusals()).isEmpty();
        assertThat(calibrations(assessment)).hasSize(5);
        assertThat(assessment.curves())
                .extracting(curve -> curve.material().name())
                .containsExactly("salt", "sand");
        assertThat(poundsPerRevolutionAt(assessment.curves().get(0), inches(3))).isCloseTo(7.8, within(1e-9));
        assertThat(poundsPerRevolutionAt(assessment.curves().get(1), inches(3))).isCloseTo(9.6, within(1e-9));
    }

    @Test
    void anUnmeteredConveyorHasNoCurve() {
        TypedEntry auger = new TypedEntry(
                "auger", 1, Map.of("screwDiameter", inches(6), "shaftDiameter", inches(2), "pitch", inches(6)));
        SpreaderEntry unmetered =
                SpreaderEntry.sensed(auger, Trucks.gate(), Amounts.of(100, PULSE_PER_REVOLUTION), Amounts.of(1, ONE));
        TruckDay truck = with(with(idle("T-01"), unmetered), caught(8, 2, 5.9), caught(9, 4, 5.9));

        TruckAssessment assessment = assess(truck);
        assertThat(assessment.refusals()).isEmpty();
        assertThat(calibrations(assessment)).hasSize(2);
        assertThat(assessment.curves()).isEmpty();
        assertThat(codes(assessment.findings())).doesNotContain(FindingCode.CURVE_IMPOSSIBLE);
    }

    /** 6.5 lb/rev at 2 in, 6.3 lb/rev at 4 in; fills of 1.08 and 0.52. */
    private static TruckDay falling() {
        return with(idle("T-01"), caught(8, 2, 6.5), caught(9, 4, 6.3));
    }

    @Test
    void aDischargeThatFallsAsTheGateOpensIsAFault() {
        TruckAssessment assessment = assess(falling());

        assertThat(assessment.curves()).isEmpty();
        Finding finding = only(FindingCode.CURVE_IMPOSSIBLE, assessment.findings());
        assertThat(finding.severity()).isEqualTo(Severity.ERROR);
        assertThat(finding.arguments())
                .containsEntry("model", Term.DEAD_OPENING)
                .hasEntrySatisfying("reason", reason -> assertThat(reason).isInstanceOf(Argument.Refusal.class));
        assertThat(finding.sentence()).startsWith("No curve k·g(h − h0) goes through the catches");
        assertThat(assessment.nextStep()).isEqualTo(NextStep.FIND_FAULT);
        assertThat(assessment.findings())
                .filteredOn(f -> f.severity() == Severity.ERROR)
                .as("nothing else is at fault")
                .containsExactly(finding);
    }

    @Test
    void aRisingTableGoesThroughThemAllTheSame() {
        TruckAssessment assessment = assess(withModel(CurveModel.TABLE, falling()));

        assertThat(codes(assessment.findings())).doesNotContain(FindingCode.CURVE_IMPOSSIBLE);
        assertThat(assessment.curves()).hasSize(1);
        assertThat(poundsPerRevolutionAt(assessment.curves().get(0), inches(3)))
                .as("both catches pooled")
                .isCloseTo(6.4, within(1e-9));
    }

    /** Proportional, but for what was caught at 4 in, which is twice what it should be where the others scatter by 1 %. */
    private static TruckDay oneOff() {
        return with(
                idle("T-01"),
                caught(6, 2, 5.18),
                caught(7, 2, 5.22),
                caught(8, 3, 7.77),
                caught(9, 3, 7.83),
                caught(10, 4, 13.0),
                caught(11, 5, 13.0),
                caught(12, 6, 15.6));
    }

    @Test
    void anOpeningThatDoesNotFitTheOthersIsAFault() {
        TruckAssessment assessment = assess(oneOff());

        Finding finding = only(FindingCode.OPENING_MISFIT, assessment.findings());
        assertThat(Amounts.format(finding.number("opening"))).isEqualTo("4 in");
        assertThat(assessment.nextStep()).isEqualTo(NextStep.FIND_FAULT);
        assertThat(assessment.findings())
                .filteredOn(f -> f.severity() == Severity.ERROR)
                .extracting(Finding::code)
                .isSubsetOf(FindingCode.OPENING_MISFIT, FindingCode.CURVE_SCATTER);
    }

    @Test
    void aCurveThatFitsLeavesTheNextStepAsItWas() {
        TruckAssessment assessment =
                assess(with(idle("T-01"), calibrationCatch(8, 2), calibrationCatch(9, 3), calibrationCatch(10, 4)));

        assertThat(assessment.nextStep()).isEqualTo(NextStep.VERIFY);
        assertThat(assessment.findings()).noneMatch(f -> f.severity() == Severity.ERROR);
    }

    @Test
    void aFaultInTheCurveComesBeforeACorrection() {
        TruckDay off = with(Trucks.listing(oneOff(), "5.5 lb/rev"), verificationCatch(13, "5.5 lb/rev", 120, 54.5));
        TruckDay clear =
                with(Trucks.listing(idle("T-01"), "5.5 lb/rev"), verificationCatch(13, "5.5 lb/rev", 120, 54.5));

        assertThat(assess(clear).nextStep()).isEqualTo(NextStep.ENTER_CORRECTION);
        assertThat(assess(off).nextStep()).isEqualTo(NextStep.FIND_FAULT);
    }
}
