package org.gritwright.core.fleet.assessment;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.gritwright.core.Samples.codes;
import static org.gritwright.core.fleet.assessment.Assessments.corrections;
import static org.gritwright.core.fleet.assessment.Assessments.reasons;
import static org.gritwright.core.fleet.assessment.Driven.first;
import static org.gritwright.core.fleet.assessment.Driven.sentences;
import static org.gritwright.core.fleet.assessment.Written.calibrates;
import static org.gritwright.core.fleet.assessment.Written.withMaterials;
import static org.gritwright.core.fleet.day.Trucks.DAY;
import static org.gritwright.core.fleet.day.Trucks.calibrationCatch;
import static org.gritwright.core.fleet.day.Trucks.day;
import static org.gritwright.core.fleet.day.Trucks.entry;
import static org.gritwright.core.fleet.day.Trucks.idle;
import static org.gritwright.core.fleet.day.Trucks.inForce;
import static org.gritwright.core.fleet.day.Trucks.pulses;
import static org.gritwright.core.fleet.day.Trucks.verificationCatch;
import static org.gritwright.core.fleet.day.Trucks.with;
import static org.gritwright.core.fleet.day.Trucks.withRoadSpeed;

import java.util.List;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Mass;
import org.gritwright.core.calibration.CalibrationAge;
import org.gritwright.core.calibration.Change;
import org.gritwright.core.calibration.Since;
import org.gritwright.core.finding.FindingCode;
import org.gritwright.core.fleet.day.CalibrationCatchEntry;
import org.gritwright.core.fleet.day.DayLimits;
import org.gritwright.core.fleet.day.FleetDay;
import org.gritwright.core.fleet.day.TargetEntry;
import org.gritwright.core.fleet.day.TruckDay;
import org.gritwright.core.fleet.day.VerificationCatchEntry;
import org.gritwright.core.metering.BuiltInTypes;
import org.gritwright.core.observation.Material;
import org.gritwright.core.statistics.RatioEstimator;
import org.gritwright.core.verification.Correction;
import org.gritwright.core.verification.VerificationLimits;
import org.gritwright.core.weighing.Graduate;
import org.gritwright.core.weighing.Scale;
import org.gritwright.core.weighing.ScaleCheck;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.SpreadingUnits;
import org.junit.jupiter.api.Test;

/** What a truck's entries show together. */
class TruckAssessorTest {
    private static final Material SAND = Material.of("sand", Amounts.of(90, SpreadingUnits.POUND_PER_CUBIC_FOOT));

    private static FleetDay withSand(TruckDay truck) {
        FleetDay day = day(truck);
        return withMaterials(day, day.materials().get(0), SAND);
    }

    /** 57 mm are 2.2441 in. */
    @Test
    void twoSettingsOfOneMaterialAreNearlyOneWhateverIsCaughtBetween() {
        CalibrationCatchEntry metric =
                calibrates(calibrationCatch(8, 2.25).entry().at(Amounts.of(57, SpreadingUnits.MILLIMETER)));
        CalibrationCatchEntry between =
                calibrates(Written.of("sand", calibrationCatch(9, 2.247).entry()));
        TruckAssessment assessed = first(withSand(with(idle("T-1"), metric, between, calibrationCatch(10, 2.25))));

        assertThat(assessed.refusals()).isEmpty();
        assertThat(sentences(assessed, FindingCode.SETTINGS_NEARLY_THE_SAME)).hasSize(1);
    }

    /** 300 lb in 120 s at 25 mi/h are 360 lb/mi; 1277 lb/mi are as many kilograms per kilometer. */
    @Test
    void eachCatchIsComparedWithItsOwnTarget() {
        VerificationCatchEntry right = verificationCatch(9, "5.2 lb/rev", 120, 57.7);
        VerificationCatchEntry other = verificationCatch(10, "5.2 lb/rev", 120, 57.6);
        VerificationCatchEntry mistaken = new VerificationCatchEntry(
                other.entry(),
                other.inForce(),
                other.slot(),
                new TargetEntry(
                        Optional.of(Amounts.of(1277, SpreadingUnits.POUND_PER_MILE)),
                        Optional.empty(),
                        Optional.empty(),
                        Optional.empty()),
                other.testSpeed(),
                other.runTime(),
                other.testDistance(),
                other.indicated(),
                other.indicatedStep());

        assertThat(sentences(first(day(with(idle("T-1"), right, mistaken))), FindingCode.RATE_IN_OTHER_UNIT))
                .singleElement()
                .satisfies(one -> assertThat(one).contains("10:00").contains("1277 lb/mi"));
    }

    @Test
    void newTiresPutNoCalibrationOutOfDate() {
        TruckDay tires = with(with(idle("T-1"), inForce("5.2 lb/rev", DAY.minusDays(30))), DAY, Change.Part.TIRE);

        assertThat(codes(first(day(tires)).findings()))
                .contains(FindingCode.ROAD_SPEED_BEFORE_CHANGE)
                .doesNotContain(FindingCode.CALIBRATION_BEFORE_CHANGE);
    }

    @Test
    void newHydraulicsLeaveTheRoadSpeedAsItWas() {
        TruckDay changed = with(withRoadSpeed(idle("T-1"), DAY.minusDays(1), 13_000), DAY, Change.Part.HYDRAULIC);

        assertThat(first(day(changed)).roadProof()).isEqualTo(RoadProof.PROVEN);
    }

    @Test
    void aConfirmedCorrectionIsTheOneToLookAtWhereNoOtherIsOpen() {
        TruckDay truck = with(
                with(idle("T-1"), inForce("7.8 lb/rev", 3, Since.of(DAY)), inForce("5.5 lb/rev", 2, Since.of(DAY))),
                verificationCatch("7.8 lb/rev", 120, entry(8, 3, 300.3, Optional.of(pulses(3850)))),
                verificationCatch(9, "5.5 lb/rev", 120, 54.5),
                verificationCatch(10, "5.2 lb/rev", 120, 57.6));
        TruckAssessment assessed = first(day(truck));

        assertThat(assessed.points().get(0).correction()).isEmpty();
        assertThat(corrections(assessed)).extracting(Correction::status).containsExactly(Correction.Status.CONFIRMED);
        assertThat(assessed.toCorrect()).contains(assessed.points().get(1));
    }

    @Test
    void catchesOfOneLengthGiveNoLineAndThatIsTheRefusalOfTheirTruck() {
        FleetAssessor byLine = new FleetAssessor(
                BuiltInTypes.registry(),
                RatioEstimator.LINE_WITH_INTERCEPT,
                VerificationLimits.COMMON,
                CalibrationAge.PREPARATION);
        List<TruckAssessment> both =
                byLine.assess(day(with(idle("T-1"), calibrationCatch(8, 2), calibrationCatch(9, 2)), idle("T-2")));

        assertThat(reasons(both.get(0)))
                .singleElement()
                .satisfies(one -> assertThat(one).startsWith("/trucks/0/calibrationCatches: "));
        assertThat(both.get(1).refusals()).isEmpty();
    }

    @Test
    void aDayWithMoreTrucksThanItMayHoldIsNotAssessed() {
        FleetAssessor few = FleetAssessor.of(BuiltInTypes.registry()).within(new DayLimits(1, 10, 10, 10));

        assertThat(few.assess(day(idle("T-1")))).hasSize(1);
        assertThatThrownBy(() -> few.assess(day(idle("T-1"), idle("T-2"))))
                .isInstanceOf(InvalidInputException.class)
                .hasMessage("trucks of a day must be at most 1: 2");
    }

    private static FleetDay on(Scale scale, FleetDay day) {
        return new FleetDay(
                day.day(),
                day.seasonStart(),
                day.tolerance(),
                day.decisionRule(),
                day.allowances(),
                day.site(),
                day.technician(),
                List.of(scale),
                day.graduates(),
                day.materials(),
                day.plan(),
                day.routes(),
                day.trucks());
    }

    @Test
    void aScalesCheckOfADayToComeRefusesTheTrucksThatWereWeighedOnIt() {
        FleetDay day = day(with(idle("T-1"), calibrationCatch(8, 2)), idle("T-2"));
        Quantity<Mass> weight = Amounts.of(100, SpreadingUnits.POUND);
        Scale plain =
                Scale.of("platform", Amounts.of(1000, SpreadingUnits.POUND), Amounts.of(0.5, SpreadingUnits.POUND));
        Scale today = plain.checked(new ScaleCheck(DAY, weight, weight));

        List<TruckAssessment> trucks =
                LiquidDays.assess(on(today.checked(new ScaleCheck(DAY.plusYears(1), weight, weight)), day));
        assertThat(reasons(trucks.get(0)))
                .containsExactly(
                        "/scales/0/checks/1/on: date of a scale's check must be not after the document's own day,"
                                + " 2026-10-19 (is one of both years wrong?): 2027-10-19");
        assertThat(trucks.get(1).refusals()).isEmpty();
        assertThat(LiquidDays.assess(on(today, day)).get(0).refusals()).isEmpty();
    }

    /** Of a scale or a material that it uses; the truck that doesn't is assessed. */
    @Test
    void aNumberThatCanNotBeRefusesTheTrucksThatItIsFor() {
        FleetDay day = day(with(idle("T-1"), calibrationCatch(8, 2)), idle("T-2"));
        Scale huge = Scale.of("platform", Amounts.of(1e9, SpreadingUnits.POUND), Amounts.of(0.5, SpreadingUnits.POUND));
        List<TruckAssessment> weighed = LiquidDays.assess(on(huge, day));
        assertThat(reasons(weighed.get(0)))
                .containsExactly("/scales/0/capacity: capacity must be within 0.001 g to 1000 t: 1000000000 lb");
        assertThat(weighed.get(1).refusals()).isEmpty();

        FleetDay ofLead =
                withMaterials(day, Material.of("salt", Amounts.of(78_000, SpreadingUnits.POUND_PER_CUBIC_FOOT)));
        assertThat(reasons(LiquidDays.assess(ofLead).get(0)))
                .singleElement()
                .satisfies(one -> assertThat(one).startsWith("/materials/0/looseBulkDensity: "));
    }

    @Test
    void aContainerWithMarksThatCanNotBeRefusesTheTruckThatReadsIt() {
        FleetDay day = LiquidDays.day("");
        FleetDay huge = day.withGraduates(List.of(new Graduate(
                "M",
                Amounts.of(1e9, SpreadingUnits.US_GALLON),
                day.graduates().get(0).division(),
                day.graduates().get(0).tolerance())));

        assertThat(reasons(LiquidDays.assess(huge).get(0)))
                .singleElement()
                .satisfies(one -> assertThat(one).startsWith("/graduates/0/capacity: "));
    }
}
