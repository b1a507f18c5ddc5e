package org.gritwright.core.plausibility;

import static org.assertj.core.api.Assertions.assertThat;
import static org.gritwright.core.Samples.AUGER;
import static org.gritwright.core.Samples.AUGER_POINT;
import static org.gritwright.core.Samples.CHAIN;
import static org.gritwright.core.Samples.SALT;
import static org.gritwright.core.Samples.augerPoint;
import static org.gritwright.core.Samples.augerWith;
import static org.gritwright.core.Samples.catchAt;
import static org.gritwright.core.Samples.caught;
import static org.gritwright.core.Samples.chainAt;
import static org.gritwright.core.Samples.chainWith;
import static org.gritwright.core.Samples.height;
import static org.gritwright.core.Samples.inches;
import static org.gritwright.core.Samples.only;
import static org.gritwright.core.Samples.pulses;
import static org.gritwright.core.Samples.revolutionsByEye;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import org.gritwright.core.calibration.Calibration;
import org.gritwright.core.calibration.CalibrationCatch;
import org.gritwright.core.finding.Argument;
import org.gritwright.core.finding.Finding;
import org.gritwright.core.finding.FindingCode;
import org.gritwright.core.finding.Slip;
import org.gritwright.core.finding.Term;
import org.gritwright.core.metering.Gate;
import org.gritwright.core.metering.NoSensor;
import org.gritwright.core.metering.ShaftSensor;
import org.gritwright.core.metering.SlidingGate;
import org.gritwright.core.metering.Spreader;
import org.gritwright.core.metering.TableGate;
import org.gritwright.core.observation.CalibrationPoint;
import org.gritwright.core.spi.FillLimits;
import org.gritwright.core.spi.Setting;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.quantity.BulkDensity;
import org.junit.jupiter.api.Test;

/** One slip is made on purpose; the list must hold it. */
class FillSlipsTest {
    private static final double SALT_DENSITY = Amounts.si(BulkDensity.class, SALT.looseBulkDensity());

    /** What 0.85 of the swept volume weighs. */
    private static double kilogramsPerRevolution(Spreader spreader, Setting setting) {
        return 0.85 * spreader.sweptCubicMetersPerRevolution(setting) * SALT_DENSITY;
    }

    /** The slips that would explain salt by a spreader at one setting, recorded at another. */
    private static List<String> slips(Spreader spreader, Setting actual, Setting recorded) {
        return slips(kilogramsPerRevolution(spreader, actual), true, CalibrationPoint.of(SALT, spreader, recorded));
    }

    private static List<String> slips(double kilogramsPerRevolution, boolean inPulses, CalibrationPoint point) {
        return ApparentFill.of(kilogramsPerRevolution, 0, inPulses, point, Optional.empty()).slips().stream()
                .map(Slip::words)
                .toList();
    }

    private static List<String> ofOpening(double trueInches, double recordedInches) {
        return slips(CHAIN, height(trueInches), height(recordedInches));
    }

    private static ShaftSensor sensor(double pulsesPerRevolution, double gearRatio) {
        return new ShaftSensor(
                Amounts.of(pulsesPerRevolution, SpreadingUnits.PULSE_PER_REVOLUTION),
                Amounts.of(gearRatio, SpreadingUnits.ONE));
    }

    @Test
    void aGateAtThreeInchesRecordedAsThirteenHasADigitTooMany() {
        assertThat(ofOpening(3, 13)).containsExactly("a digit too many in the gate opening (3 in)");

        // 1502.784 in³ at 4 in, so 1127.088 in³ at 3 in, 80 lb/ft³, fill 0.85: 44.35 lb/rev
        Calibration calibration = Calibration.from(List.of(catchAt(chainAt(13), caught(443.5), pulses(1000))));
        Finding finding = only(FindingCode.FILL_IMPOSSIBLE, calibration.findings());
        assertThat(finding.arguments())
                .containsEntry(
                        "slips",
                        Argument.several(
                                List.of(Slip.of(Term.GATE_SETTING, Slip.Mistake.DIGIT_TOO_MANY, List.of(inches(3))))));
    }

    @Test
    void aDecimalPointTooFarIsAFactorOfTen() {
        assertThat(ofOpening(2, 20))
                .containsExactly(
                        "gate opening ÷ 10 (2 in)",
                        "a digit too many in the gate opening (2 in)",
                        "pulses per revolution × 10 (1000 pulse/rev)",
                        "gear ratio × 10 (10)");
        assertThat(ofOpening(3.5, 0.35))
                .containsExactly(
                        "gate opening × 10 (3.5 in)",
                        "pulses per revolution ÷ 10 (10 pulse/rev)",
                        "gear ratio ÷ 10 (0.1)");
    }

    @Test
    void centimetersTakenForInchesAreAFactorOf254() {
        assertThat(ofOpening(4, 10.16))
                .containsExactly(
                        "gate opening ÷ 2.54 (4 in)",
                        "pulses per revolution × 2 (200 pulse/rev)",
                        "gear ratio × 2 (2)");
        assertThat(ofOpening(10.16, 4)).contains("gate opening × 2.54 (10.16 in)");
    }

    @Test
    void millimetersTakenForInchesAreAFactorOf254ByTen() {
        assertThat(ofOpening(1, 25.4)).containsExactly("gate opening ÷ 25.4 (1 in)");
        assertThat(ofOpening(25.4, 1)).contains("gate opening × 25.4 (25.4 in)");
    }

    @Test
    void aDroppedDigitIsSoughtAtEveryPlace() {
        assertThat(ofOpening(12, 2))
                .containsExactly(
                        "gate opening × 10 (20 in)",
                        "a dropped digit in the gate opening (12 in or 20 in)",
                        "pulses per revolution ÷ 10 (10 pulse/rev)",
                        "gear ratio ÷ 10 (0.1)");
    }

    @Test
    void everyDigitIsTried() {
        assertThat(ofOpening(19, 1))
                .contains("a dropped digit in the gate opening (15 in or 16 in or 17 in or 18 in or 19 in or 21 in or"
                        + " 31 in)");
        assertThat(ofOpening(10, 1)).anyMatch(slip -> slip.contains("(10 in or 11 in"));
    }

    @Test
    void aClosedGateIsNoExplanation() {
        // "10" with a digit too many may be 1 or 0.
        assertThat(ofOpening(1, 10))
                .contains("a digit too many in the gate opening (1 in)")
                .noneMatch(slip -> slip.contains("0 in or"));
    }

    /** Its discharge at 0 in would be usual, but nobody reads 10 where the gate says that it is closed. */
    @Test
    void aReadingOfZeroIsNoExplanationEvenWhereTheGateLetsSomethingThrough() {
        Spreader openAtZero = new Spreader(
                CHAIN.conveyor(),
                Gate.of(new SlidingGate(), Map.of("width", inches(24), "deadOpening", inches(-0.5))),
                CHAIN.feedback());

        assertThat(slips(openAtZero, height(0), height(10))).noneMatch(slip -> slip.contains("(0 in)"));
        assertThat(slips(openAtZero, height(1), height(10))).anyMatch(slip -> slip.contains("(1 in)"));
    }

    @Test
    void openingsThatTheGateCanNotHaveAreNoExplanation() {
        // 10 × 6 in would make it usual, but the gate opens to 1 m only.
        assertThat(ofOpening(39, 6)).noneMatch(slip -> slip.contains("× 10 (60 in)"));
    }

    @Test
    void wrongPulsesPerRevolutionAndGearRatiosAreFound() {
        for (double factor : List.of(2.0, 10.0)) {
            // Recorded too high: the revolutions come out too few and the fill too large by the factor.
            assertThat(slipsOfSensor(sensor(100, 1), sensor(100 * factor, 1)))
                    .contains("pulses per revolution ÷ " + (int) factor + " (100 pulse/rev)");
            assertThat(slipsOfSensor(sensor(100, 1), sensor(100 / factor, 1)))
                    .contains("pulses per revolution × " + (int) factor + " (100 pulse/rev)");
            assertThat(slipsOfSensor(sensor(100, 3), sensor(100, 3 * factor)))
                    .contains("gear ratio ÷ " + (int) factor + " (3)");
            assertThat(slipsOfSensor(sensor(100, 3), sensor(100, 3 / factor)))
                    .contains("gear ratio × " + (int) factor + " (3)");
        }
    }

    /** Ten revolutions of the auger's drive shaft, counted with the true sensor, reckoned with the recorded one. */
    private static List<String> slipsOfSensor(ShaftSensor actual, ShaftSensor recorded) {
        double sensedRevolutions = 10 * actual.gearRatio().getValue().doubleValue();
        double pulses =
                sensedRevolutions * actual.pulsesPerRevolution().getValue().doubleValue();
        double kilograms = 10 * kilogramsPerRevolution(AUGER, Setting.none());
        return slips(kilograms / pulses(pulses).revolutions(recorded), true, augerPoint(recorded));
    }

    @Test
    void pulsesPerRevolutionExplainNothingWhereNoPulsesWereCounted() {
        // Half of what 20 revolutions carry.
        double pounds = 0.425 * 6.98132 * 20;
        CalibrationCatch byEye = catchAt(AUGER_POINT, caught(pounds), revolutionsByEye(20));
        CalibrationCatch withoutSensor =
                catchAt(augerPoint(NoSensor.onDriveShaft()), caught(pounds), revolutionsByEye(20));

        assertThat(Calibration.from(List.of(byEye)).apparentFill().slips())
                .extracting(Slip::words)
                .containsExactly("gear ratio × 2 (2)");
        assertThat(Calibration.from(List.of(withoutSensor)).apparentFill().slips())
                .extracting(Slip::words)
                .containsExactly("gear ratio × 2 (2)");
        assertThat(Calibration.from(List.of(catchAt(AUGER_POINT, caught(pounds), pulses(2000))))
                        .apparentFill()
                        .slips())
                .extracting(Slip::words)
                .containsExactly("pulses per revolution × 2 (200 pulse/rev)", "gear ratio × 2 (2)");
    }

    @Test
    void whereThereIsNoSensorADisplaysPulsesAreUnknown() {
        CalibrationPoint point = augerPoint(NoSensor.onDriveShaft());
        double kilograms = kilogramsPerRevolution(augerWith(NoSensor.onDriveShaft()), Setting.none()) / 2;

        assertThat(slips(kilograms, true, point)).containsExactly("gear ratio × 2 (2)");
    }

    @Test
    void metricOpeningsAreSoughtInTheirOwnUnit() {
        Spreader spreader = chainWith(NoSensor.onDriveShaft());
        double kilograms = kilogramsPerRevolution(spreader, height(4));
        Setting inCentimeters = Setting.height(Amounts.of(4, SpreadingUnits.CENTIMETER));

        assertThat(slips(kilograms, false, CalibrationPoint.of(SALT, spreader, inCentimeters)))
                .contains("gate opening × 2.54 (10.16 cm)");
    }

    /** Marks from 0 to 30, each of which opens as much as an inch of the sample's sliding gate. */
    private static final Spreader BY_MARKS = new Spreader(
            CHAIN.conveyor(),
            Gate.of(
                    TableGate.bySetting(),
                    Map.of(
                            "settings", List.of(Amounts.of(0, SpreadingUnits.ONE), Amounts.of(30, SpreadingUnits.ONE)),
                            "areas",
                                    List.of(
                                            Amounts.of(0, SpreadingUnits.SQUARE_INCH),
                                            Amounts.of(24 * 30, SpreadingUnits.SQUARE_INCH)))),
            CHAIN.feedback());

    private static List<String> ofSetting(double trueMark, double recordedMark) {
        return slips(BY_MARKS, Setting.mark(trueMark), Setting.mark(recordedMark));
    }

    @Test
    void aSettingMayHaveADigitTooManyOrTooFew() {
        assertThat(ofSetting(3, 13)).containsExactly("a digit too many in the gate opening (3)");
        assertThat(ofSetting(12, 2))
                .containsExactly(
                        "gate opening × 10 (20)",
                        "a dropped digit in the gate opening (12 or 20)",
                        "pulses per revolution ÷ 10 (10 pulse/rev)",
                        "gear ratio ÷ 10 (0.1)");
    }

    @Test
    void aSettingIsInNoUnitThatCouldBeMixedUp() {
        // As a length, 4 for 10.16 would be inches for centimeters.
        assertThat(ofSetting(4, 10.16))
                .containsExactly("pulses per revolution × 2 (200 pulse/rev)", "gear ratio × 2 (2)");
        assertThat(ofSetting(1, 25.4)).isEmpty();
    }

    @Test
    void aSettingThatTheGateCanNotHaveIsNoExplanation() {
        // 10 × 4 would make it usual, but the marks go to 30 only.
        assertThat(ofSetting(30, 4)).noneMatch(slip -> slip.contains("× 10"));
    }

    @Test
    void onlyASlipByTwoCanStayUnseen() {
        FillLimits common = FillLimits.COMMON;
        List<Double> usual =
                IntStream.rangeClosed(100, 230).mapToObj(i -> i / 200.0).toList();

        for (double factor : new double[] {2.54, 10, 25.4}) {
            assertThat(usual).noneMatch(fill -> common.isUsual(fill * factor) || common.isUsual(fill / factor));
        }
        // It hides where the true fill is at most 0.575 and doubled, or at least 1 and halved.
        assertThat(usual).allMatch(fill -> common.isUsual(fill * 2) == (fill <= 0.575));
        assertThat(usual).allMatch(fill -> common.isUsual(fill / 2) == (fill >= 1));
    }
}
