package org.gritwright.core.fleet.assessment;

import static org.assertj.core.api.Assertions.assertThat;
import static org.gritwright.core.Samples.DAY;
import static org.gritwright.core.Samples.SCALE;
import static org.gritwright.core.Samples.catchAt;
import static org.gritwright.core.Samples.chainAt;
import static org.gritwright.core.Samples.pounds;
import static org.gritwright.core.Samples.pulses;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.gritwright.core.calibration.Calibration;
import org.gritwright.core.calibration.CalibrationCatch;
import org.gritwright.core.calibration.CalibrationFactor;
import org.gritwright.core.calibration.CalibrationInForce;
import org.gritwright.core.curve.CurveModel;
import org.gritwright.core.curve.DischargeCurve;
import org.gritwright.core.finding.Finding;
import org.gritwright.core.finding.FindingCode;
import org.gritwright.core.judgement.Tolerance;
import org.gritwright.core.observation.CalibrationPoint;
import org.gritwright.core.observation.Material;
import org.gritwright.core.verification.TestRun;
import org.gritwright.core.verification.Verification;
import org.gritwright.core.verification.VerificationCatch;
import org.gritwright.core.weighing.CaughtMass;
import org.gritwright.core.weighing.Weighing;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.junit.jupiter.api.Test;

/** What a curve proves: 15 lb/rev of salt for each inch of the gate but the first half, which is dead. */
class CurveProofTest {
    private static final Tolerance TOLERANCE = Tolerance.percent(4);
    private static final Material SAND = Material.of("sand", Amounts.of(96, SpreadingUnits.POUND_PER_CUBIC_FOOT));

    private static CalibrationPoint point(Material material, double inches) {
        return CalibrationPoint.of(
                material, chainAt(inches).metering(), chainAt(inches).setting());
    }

    private static CalibrationPoint salt(double inches) {
        return chainAt(inches);
    }

    /** 20 revolutions. */
    private static CalibrationCatch caught(CalibrationPoint point, double poundsPerRevolution) {
        return catchAt(
                point,
                CaughtMass.of(SCALE, DAY, new Weighing("tarp", pounds(20 * poundsPerRevolution + 4), pounds(4))),
                pulses(2000));
    }

    private static List<CalibrationCatch> twice(CalibrationPoint point, double poundsPerRevolution) {
        return List.of(caught(point, poundsPerRevolution), caught(point, poundsPerRevolution));
    }

    private static CalibrationInForce inForce(CalibrationPoint point, double poundsPerRevolution) {
        return CalibrationInForce.of(
                point,
                CalibrationFactor.of(Amounts.of(poundsPerRevolution, SpreadingUnits.POUND_PER_REVOLUTION)),
                Optional.empty());
    }

    /** Calibrated and verified with what it discharges. */
    private static PointHistory proven() {
        Calibration calibration = Calibration.from(twice(salt(2), 22.5));
        Verification right = VerificationCatch.of(
                        caught(salt(2), 22.5).observation(),
                        inForce(salt(2), 22.5),
                        TestRun.lasting(
                                Amounts.of(1080, SpreadingUnits.POUND_PER_MILE),
                                Amounts.of(25, SpreadingUnits.MILE_PER_HOUR),
                                Amounts.of(60, SpreadingUnits.SECOND)))
                .assess(TOLERANCE);
        return history(Optional.of(calibration), List.of(right), inForce(salt(2), 22.5));
    }

    private static PointHistory history(
            Optional<Calibration> calibration, List<Verification> verifications, CalibrationInForce listed) {
        return new PointHistory(
                listed.point(), List.of(listed), calibration, verifications, one -> Optional.empty(), TOLERANCE, DAY);
    }

    private static DischargeCurve curve(Material material, double poundsPerInch) {
        return DischargeCurve.fit(
                Stream.of(2.0, 4.0)
                        .flatMap(inches -> twice(point(material, inches), poundsPerInch * (inches - 0.5)).stream())
                        .toList(),
                CurveModel.DEAD_OPENING);
    }

    private static MassProof proof(List<DischargeCurve> curves, List<Finding> findings, CalibrationInForce listed) {
        return new CurveProof(new Curves(curves, findings), List.of(proven()), TOLERANCE, Optional.empty())
                .of(history(Optional.empty(), List.of(), listed));
    }

    @Test
    void onlyAFaultOfACurveTakesItsProofAway() {
        DischargeCurve curve = curve(salt(2).material(), 15);
        List<Finding> faults = Calibration.from(List.of(caught(salt(2), 225))).findings().stream()
                .filter(one -> one.code().doubtsData())
                .toList();

        assertThat(proven().massProof()).isEqualTo(MassProof.PROVEN);
        assertThat(faults).isNotEmpty();
        assertThat(curve.findings()).extracting(Finding::code).contains(FindingCode.TOO_FEW_OPENINGS);
        assertThat(proof(List.of(curve), List.of(), inForce(salt(3), 37.5))).isEqualTo(MassProof.PROVEN_BY_CURVE);
        assertThat(proof(List.of(curve), curve.findings(), inForce(salt(3), 37.5)))
                .isEqualTo(MassProof.PROVEN_BY_CURVE);
        assertThat(proof(List.of(curve), faults, inForce(salt(3), 37.5))).isEqualTo(MassProof.NOT_CHECKED);
    }

    @Test
    void ofASettingAtWhichNothingComesACurveProvesNothing() {
        DischargeCurve curve = curve(salt(2).material(), 15);

        assertThat(proof(List.of(curve), List.of(), inForce(salt(0.4), 5))).isEqualTo(MassProof.NOT_CHECKED);
    }

    @Test
    void aCurveProvesNoValueOfAnotherMaterial() {
        List<DischargeCurve> curves = List.of(curve(salt(2).material(), 15), curve(SAND, 18));

        assertThat(proof(curves, List.of(), inForce(salt(3), 37.5))).isEqualTo(MassProof.PROVEN_BY_CURVE);
        assertThat(proof(curves, List.of(), inForce(salt(3), 45)))
                .as("which is right for sand")
                .isEqualTo(MassProof.NOT_CHECKED);
        assertThat(proof(curves, List.of(), inForce(point(SAND, 3), 45)))
                .as("nobody has verified a value for sand")
                .isEqualTo(MassProof.NOT_CHECKED);
    }
}
