package org.gritwright.core.record;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.Samples.assertNamesWhatIsMissing;
import static org.gritwright.core.fleet.day.Trucks.calibrationCatch;
import static org.gritwright.core.fleet.day.Trucks.entry;
import static org.gritwright.core.fleet.day.Trucks.idle;
import static org.gritwright.core.fleet.day.Trucks.verificationCatch;
import static org.gritwright.core.fleet.day.Trucks.with;
import static org.gritwright.core.fleet.day.Trucks.withRoadSpeed;

import java.io.IOException;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import org.gritwright.core.calibration.CalibrationInForce;
import org.gritwright.core.calibration.Since;
import org.gritwright.core.curve.CurveModel;
import org.gritwright.core.document.RejectedDocumentException;
import org.gritwright.core.fleet.assessment.FleetAssessor;
import org.gritwright.core.fleet.assessment.MassProof;
import org.gritwright.core.fleet.assessment.NextStep;
import org.gritwright.core.fleet.assessment.RoadProof;
import org.gritwright.core.fleet.assessment.TruckAssessment;
import org.gritwright.core.fleet.day.CalibrationCatchEntry;
import org.gritwright.core.fleet.day.FleetDay;
import org.gritwright.core.fleet.day.InForceEntry;
import org.gritwright.core.fleet.day.TruckDay;
import org.gritwright.core.fleet.day.Trucks;
import org.gritwright.core.judgement.Verdict;
import org.gritwright.core.metering.BuiltInTypes;
import org.gritwright.core.observation.Coasting;
import org.gritwright.core.verification.Correction;
import org.gritwright.core.verification.Verification;
import org.gritwright.core.verification.VerificationSeries;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.SpreadingUnits;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

@Tag("jackson")
class CalibrationRecordTest {
    private static final FleetAssessor ASSESSOR = FleetAssessor.of(BuiltInTypes.registry());

    /** A truck on which everything was done: calibrated, found off, corrected, run for two times, driven. */
    private static final TruckDay TRUCK = withRoadSpeed(
            with(
                    with(Trucks.listing(idle("T-01"), "5.5 lb/rev"), calibrationCatch(7, 2), calibrationCatch(8, 2)),
                    verificationCatch(9, "5.5 lb/rev", 120, 54.5),
                    verificationCatch(10, "5.2 lb/rev", 120, 57.6)),
            13_650);

    private static final FleetDay DAY = Trucks.day(TRUCK, idle("T-02"));
    private static final TruckAssessment ASSESSMENT = ASSESSOR.assess(DAY).get(0);
    private static final CalibrationRecord RECORD = CalibrationRecord.of(DAY, ASSESSMENT);

    @Test
    void holdsWhatWasEnteredForThisTruckSoThatItCanBeComputedAgain() {
        assertThat(RECORD.entered().trucks()).containsExactly(TRUCK);
        TruckAssessment again = ASSESSOR.assess(RECORD.entered()).get(0);
        assertThat(CalibrationRecord.of(RECORD.entered(), again)).isEqualTo(RECORD);
    }

    @Test
    void holdsWhatCameOut() {
        assertThat(RECORD.refusals()).isEmpty();
        assertThat(RECORD.points()).hasSize(1);
        PointOutcome point = RECORD.points().get(0);
        assertThat(point.material()).isEqualTo("salt");
        assertThat(point.setting()).contains(inches("2 in"));
        assertThat(point.proof()).contains(MassProof.PROVEN);
        CalibrationOutcome calibration = point.calibration().orElseThrow();
        assertThat(calibration.dischargePerRevolution())
                .isEqualTo(ASSESSMENT
                        .points()
                        .get(0)
                        .calibration()
                        .orElseThrow()
                        .dischargePerRevolution()
                        .value());
        assertThat(calibration.catches()).isEqualTo(Amounts.parseAny("2"));
        assertThat(calibration.standardUncertainty()).isPresent();

        assertThat(point.verifications())
                .extracting(VerificationOutcome::verdict)
                .containsExactly(Verdict.OUTSIDE_TOLERANCE, Verdict.WITHIN_TOLERANCE);
        VerificationOutcome first = point.verifications().get(0);
        assertThat(first.inForce()).isEqualTo(Amounts.parseAny("5.5 lb/rev"));
        assertThat(first.caught()).isEqualTo(Amounts.parseAny("283.4 lb"));
        assertThat(Amounts.in(first.testDistance(), SpreadingUnits.MILE)).isCloseTo(5.0 / 6, within(1e-12));

        CorrectionOutcome correction = point.correction().orElseThrow();
        assertThat(correction.asFound()).isEqualTo(Amounts.parseAny("5.5 lb/rev"));
        assertThat(correction.toEnter()).isEqualTo(Amounts.parseAny("5.2 lb/rev"));
        assertThat(correction.asLeft()).contains(Amounts.parseAny("5.2 lb/rev"));
        assertThat(correction.status()).isEqualTo(Correction.Status.CONFIRMED);

        assertThat(Amounts.in(RECORD.roadSpeed().orElseThrow().measured(), SpreadingUnits.PULSE_PER_MILE))
                .isCloseTo(13_000, within(1e-8));
        assertThat(RECORD.massProof()).isEqualTo(MassProof.PROVEN);
        assertThat(RECORD.roadProof()).isEqualTo(RoadProof.NOT_PROVEN);
        assertThat(RECORD.toDo())
                .first()
                .isEqualTo(ToDoOutcome.of(ASSESSMENT.toDo().get(0)));
        assertThat(RECORD.toDo().get(0).step()).isEqualTo(NextStep.FIX_ROAD_SPEED);
        assertThat(RECORD.findings()).isEqualTo(ASSESSMENT.findings());
        assertThat(RECORD.signOff()).isEmpty();
    }

    @Test
    void whatIsToBeDoneForAPointNamesItsMaterialAndSetting() {
        FleetDay day = Trucks.day(idle("T-02"));
        CalibrationRecord record =
                CalibrationRecord.of(day, ASSESSOR.assess(day).get(0));
        assertThat(record.toDo()).anySatisfy(toDo -> {
            assertThat(toDo.material()).contains("salt");
            assertThat(toDo.setting()).contains(inches("2 in"));
        });
    }

    @Test
    void catchesThatAreJudgedTogetherSayItAtTheLast() {
        FleetDay day = Trucks.day(with(
                idle("T-01"),
                verificationCatch(9, "5.2 lb/rev", 120, 57.6),
                verificationCatch(10, "5.2 lb/rev", 120, 57.6)));
        List<Verification> both = ASSESSOR.assess(day).get(0).points().get(0).verifications();
        Optional<VerificationSeries> judged = Optional.of(VerificationSeries.of(both));

        assertThat(VerificationOutcome.of(both.get(0), judged).together()).isEmpty();
        assertThat(VerificationOutcome.of(both.get(1), judged).together()).isPresent();
        assertThat(VerificationOutcome.of(both.get(1), Optional.of(VerificationSeries.of(both.subList(1, 2))))
                        .together())
                .isEmpty();
    }

    @Test
    void whatIsMissingIsNamed() throws ReflectiveOperationException {
        assertNamesWhatIsMissing(RECORD);
        assertNamesWhatIsMissing(new SignOff("L. Marsh", Optional.empty(), LocalDate.EPOCH));
    }

    private static Quantity<Length> inches(String text) {
        return Amounts.parse(Length.class, text);
    }

    /** 5.5 lb/rev was found wrong and 5.2 lb/rev entered: the next day begins with that, and a version of the library later too. */
    @Test
    void afterAConfirmedCorrectionTheSlotHoldsTheValueAsLeftSinceTheCatchThatFirstShowedIt() {
        List<CalibrationInForce> held = RECORD.inForceAfter(BuiltInTypes.registry());
        assertThat(held).singleElement().satisfies(one -> {
            assertThat(one.factor()).hasToString("5.2 lb/rev");
            assertThat(one.point()).hasToString("salt at 2 in");
            assertThat(one.since()).contains(Since.of(OffsetDateTime.parse("2026-10-19T10:00-05:00")));
        });
        assertThat(RECORD.points().get(0).held()).containsExactly(InForceEntry.of(held.get(0), Since.of(Trucks.DAY)));
    }

    @Test
    void theNextDayBeginsWithWhatTheDisplaysHoldAndStartsProofAgain() {
        TruckDay next = RECORD.nextDay(BuiltInTypes.registry());
        assertThat(next.id()).isEqualTo("T-01");
        assertThat(next.spreader()).isEqualTo(TRUCK.spreader());
        assertThat(next.inForce()).isEqualTo(RECORD.points().get(0).held());
        assertThat(next.verificationCatches()).isEmpty();
        FleetDay day = Trucks.day(next);
        assertThat(ASSESSOR.assess(day).get(0).massProof()).isEqualTo(MassProof.NOT_CHECKED);
    }

    @Test
    void holdsWhatAStartLosesWhereTwoRunTimesTell() {
        TruckDay slow = with(
                idle("T-01"),
                verificationCatch(9, "5.2 lb/rev", 60, 300 / 5.2 / 120 * 54),
                verificationCatch(10, "5.2 lb/rev", 120, 300 / 5.2 / 120 * 114));
        FleetDay day = Trucks.day(slow);
        CalibrationRecord record =
                CalibrationRecord.of(day, ASSESSOR.assess(day).get(0));
        assertThat(record.points())
                .singleElement()
                .satisfies(point -> assertThat(point.startUp())
                        .hasValueSatisfying(startUp ->
                                assertThat(startUp.steadyErrorUncertainty()).isEmpty()));
    }

    /** Caught at two gate openings: 26 lb/rev at 2 in and 58 lb/rev at 4 in, by a fifth. */
    private static CalibrationRecord withCurve(CurveModel model) {
        CalibrationCatchEntry two = calibrationCatch(7, 2);
        CalibrationCatchEntry four =
                new CalibrationCatchEntry(entry(8, 4, 348, Optional.of(Trucks.pulses(3000))), true, Coasting.IN_BOTH);
        FleetDay day = Trucks.day(with(idle("T-01"), two, four).curveModel(model));
        return CalibrationRecord.of(day, ASSESSOR.assess(day).get(0));
    }

    @Test
    void holdsTheCurveOverSeveralGateOpenings() {
        CurveOutcome curve = withCurve(CurveModel.DEAD_OPENING).curves().get(0);

        assertThat(curve.material()).isEqualTo("salt");
        assertThat(curve.model()).isEqualTo(CurveModel.DEAD_OPENING);
        assertThat(curve.catches()).isEqualTo(Amounts.parseAny("2"));
        assertThat(curve.deadOpening()).hasValueSatisfying(dead -> {
            assertThat(dead.getUnit()).isEqualTo(SpreadingUnits.INCH);
            assertThat(dead.getValue().doubleValue()).isCloseTo(0.375, within(1e-9));
        });
        // derived: 3.2 lb/rev/in over 7 × 2.25 in × 22 in ÷ 5.2 swept per inch and revolution of the sensed shaft
        assertThat(Amounts.in(curve.effectiveBulkDensity().orElseThrow(), SpreadingUnits.POUND_PER_CUBIC_FOOT))
                .isCloseTo(3.2 * 1728 * 5.2 / (7 * 2.25 * 22), within(1e-6));
        assertThat(curve.deadOpeningUncertainty())
                .as("two catches, two parameters")
                .isEmpty();
        assertThat(curve.effectiveBulkDensityUncertainty()).isEmpty();
        assertThat(curve.misfitChance()).isEmpty();
        assertThat(curve.points())
                .extracting(point -> Amounts.format(point.setting()))
                .containsExactly("2 in", "4 in");
        assertThat(curve.points())
                .extracting(point -> Amounts.in(point.dischargePerRevolution(), SpreadingUnits.POUND_PER_REVOLUTION))
                .satisfiesExactly(
                        at2 -> assertThat(at2).isCloseTo(5.2, within(1e-9)),
                        at4 -> assertThat(at4).isCloseTo(11.6, within(1e-9)));
    }

    @Test
    void aTableHasNoFactorAndNoDeadOpening() {
        CurveOutcome curve = withCurve(CurveModel.TABLE).curves().get(0);

        assertThat(curve.effectiveBulkDensity()).isEmpty();
        assertThat(curve.deadOpening()).isEmpty();
        assertThat(curve.points()).hasSize(2);
        assertThat(RECORD.curves()).as("one gate opening").isEmpty();
    }

    @Test
    void aSignedRecordReadsBackWithItsSignature() throws IOException, RejectedDocumentException {
        SignOff signature = new SignOff("L. Marsh", Optional.of("fleet technician"), LocalDate.of(2026, 10, 20));
        CalibrationRecord signed = RECORD.signedBy(signature);
        assertThat(signed.signOff()).contains(signature);
        assertThat(DocumentLawsTest.read(Document.CALIBRATION_RECORD, Document.CALIBRATION_RECORD.toText(signed)))
                .isEqualTo(signed);
    }

    @Test
    void aSignatureWithoutNameIsRefused() {
        assertThatThrownBy(() -> new SignOff(" ", Optional.empty(), LocalDate.EPOCH))
                .isInstanceOf(InvalidInputException.class)
                .hasMessageStartingWith("name of who signs off");
    }

    @Test
    void aRecordIsOfExactlyOneTruck() {
        assertThatThrownBy(() -> new CalibrationRecord(
                        DAY,
                        RECORD.refusals(),
                        RECORD.points(),
                        RECORD.curves(),
                        RECORD.roadSpeed(),
                        RECORD.boom(),
                        RECORD.massProof(),
                        RECORD.roadProof(),
                        RECORD.toDo(),
                        RECORD.findings(),
                        RECORD.signOff()))
                .isInstanceOf(InvalidInputException.class)
                .hasMessage("trucks of a calibration record must be exactly one: 2");
    }
}
