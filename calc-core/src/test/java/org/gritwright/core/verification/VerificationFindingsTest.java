package org.gritwright.core.verification;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.Samples.CHAIN;
import static org.gritwright.core.Samples.SALT;
import static org.gritwright.core.Samples.augerCatch;
import static org.gritwright.core.Samples.augerInForce;
import static org.gritwright.core.Samples.butForUnknown;
import static org.gritwright.core.Samples.caught;
import static org.gritwright.core.Samples.codes;
import static org.gritwright.core.Samples.height;
import static org.gritwright.core.Samples.numbers;
import static org.gritwright.core.Samples.only;
import static org.gritwright.core.Samples.pounds;
import static org.gritwright.core.Samples.pulses;
import static org.gritwright.core.Samples.revolutionsByEye;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.DoubleStream;
import javax.measure.Quantity;
import org.assertj.core.data.Offset;
import org.gritwright.core.calibration.Calibration;
import org.gritwright.core.calibration.CalibrationFactor;
import org.gritwright.core.calibration.CalibrationInForce;
import org.gritwright.core.finding.Finding;
import org.gritwright.core.finding.FindingCode;
import org.gritwright.core.finding.Severity;
import org.gritwright.core.judgement.DecisionRule;
import org.gritwright.core.judgement.Tolerance;
import org.gritwright.core.metering.ShaftCount;
import org.gritwright.core.observation.CalibrationPoint;
import org.gritwright.core.observation.Material;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.junit.jupiter.api.Test;

class VerificationFindingsTest {
    private static final Offset<Double> ROUNDING = within(1e-10);
    private static final Tolerance TOLERANCE = Tolerance.percent(4);

    private static List<Finding> findings(VerificationCatch source) {
        return butForUnknown(source.assess(TOLERANCE).findings());
    }

    private static double number(Finding finding, String name) {
        Quantity<?> quantity = finding.number(name);
        return quantity.getValue().doubleValue();
    }

    @Test
    void aGoodCatchHasNone() {
        assertThat(findings(Runs.counted(5000, 298))).isEmpty();
    }

    /** At a gate opening of 2 in, 30 lb/rev in force, a quarter of a mile at so many pounds a mile and 30 mi/h. */
    private static List<Finding> findingsOfTheChain(Material material, double poundsPerMile) {
        TestRun run = TestRun.lasting(
                Amounts.of(poundsPerMile, SpreadingUnits.POUND_PER_MILE),
                Amounts.of(30, SpreadingUnits.MILE_PER_HOUR),
                Amounts.of(30, SpreadingUnits.SECOND));
        CalibrationInForce inForce = CalibrationInForce.of(
                CalibrationPoint.of(material, CHAIN, height(2)),
                CalibrationFactor.of(Amounts.of(30, SpreadingUnits.POUND_PER_REVOLUTION)),
                Optional.empty());
        return findings(
                Runs.of(inForce, run, caught(poundsPerMile / 4), pulses(Math.rint(poundsPerMile / 4 / 30 * 100))));
    }

    @Test
    void moreThanDryGrainsRunThroughTheGateIsAFinding() {
        // derived: 24 in × 2 in let 5 128 lb/min of 3 mm grains at 80 lb/ft³ through, which are 10 256 lb/mi at 30
        // mi/h.
        Material dry = SALT.withGrains(Amounts.of(3, SpreadingUnits.MILLIMETER));
        Finding finding = only(FindingCode.STARVED_GATE, findingsOfTheChain(dry, 12_000));

        assertThat(finding.severity()).isEqualTo(Severity.WARNING);
        assertThat(Amounts.format(finding.number("flow"))).isEqualTo("6000 lb/min");
        assertThat(finding.number("limit").getUnit()).isEqualTo(SpreadingUnits.POUND_PER_MINUTE);
        assertThat(number(finding, "limit")).isCloseTo(5127.987, within(5e-4));
        assertThat(codes(findingsOfTheChain(dry, 10_255))).doesNotContain(FindingCode.STARVED_GATE);
        assertThat(codes(findingsOfTheChain(dry, 10_257))).contains(FindingCode.STARVED_GATE);
        assertThat(codes(findingsOfTheChain(SALT, 12_000))).doesNotContain(FindingCode.STARVED_GATE);
    }

    @Test
    void aShortfallBeyondTheToleranceIsAFinding() {
        Finding finding = only(FindingCode.SHORTFALL, findings(Runs.counted(4750, 285)));

        assertThat(finding.severity()).isEqualTo(Severity.WARNING);
        assertThat(number(finding, "delivered")).isCloseTo(285, ROUNDING);
        assertThat(number(finding, "expected")).isCloseTo(300, ROUNDING);
        assertThat(number(finding, "error")).isCloseTo(5, ROUNDING);
        assertThat(number(finding, "lostTime")).isCloseTo(6, ROUNDING);
        assertThat(finding.sentence())
                .isEqualTo("285 lb of 300 lb expected, a shortfall of 5 % or 6 s at the target flow; one run can't tell"
                        + " a slow start from a limit.");
        assertThat(findings(Runs.counted(4800, 288))).isEmpty();
    }

    /** 47.85 rev of 50 are 4.3 % less; counted by eye to a tenth of a turn, they may be 0.4 % more: two uncertainties. */
    @Test
    void aShortfallThatTheCountMayExplainIsNone() {
        assertThat(codes(findings(Runs.counted(revolutionsByEye(47.85), 287.1))))
                .doesNotContain(FindingCode.SHORTFALL);
        assertThat(codes(findings(Runs.counted(revolutionsByEye(47.75), 286.5))))
                .contains(FindingCode.SHORTFALL);
    }

    @Test
    void anOverrunBeyondTheToleranceIsAFinding() {
        Finding finding = only(FindingCode.OVERRUN, findings(Runs.counted(5250, 315)));

        assertThat(finding.severity()).isEqualTo(Severity.WARNING);
        assertThat(numbers(finding)).containsOnlyKeys("delivered", "expected", "error");
        assertThat(finding.sentence()).isEqualTo("315 lb of 300 lb expected, an overrun of 5 %.");
        assertThat(findings(Runs.counted(5200, 312))).isEmpty();
    }

    @Test
    void aCalibrationErrorBeyondTheToleranceIsAFinding() {
        List<Finding> findings = findings(Runs.counted(5000, 280));
        Finding finding = only(FindingCode.TOLERANCE_MISSED, findings);

        assertThat(codes(findings)).containsExactly(FindingCode.TOLERANCE_MISSED);
        assertThat(finding.severity()).isEqualTo(Severity.WARNING);
        assertThat(number(finding, "error")).isCloseTo((300 / 280.0 - 1) * 100, ROUNDING);
        assertThat(finding.number("tolerance")).isEqualTo(TOLERANCE.limit());
        assertThat(finding.sentence())
                .isEqualTo(
                        "The calibration error of 7.143 % is outside the tolerance of 4 %: the truck lays 6.667 % too little.");
    }

    @Test
    void openLoopIsNotedAndItsDeliveryErrorIsNamed() {
        List<Finding> findings = findings(Runs.openLoop(270));

        assertThat(codes(findings))
                .containsExactly(FindingCode.OPEN_LOOP, FindingCode.TOLERANCE_MISSED, FindingCode.SHORTFALL);
        assertThat(only(FindingCode.OPEN_LOOP, findings).severity()).isEqualTo(Severity.NOTE);
        assertThat(only(FindingCode.TOLERANCE_MISSED, findings).sentence())
                .isEqualTo(
                        "The delivery error of -10 % is outside the tolerance of 4 %: the truck lays 10 % too little.");
        assertThat(codes(findings(Runs.openLoop(300)))).containsExactly(FindingCode.OPEN_LOOP);
    }

    @Test
    void countAndDisplayThatDisagreeByMoreThanAStepDoubtTheData() {
        Finding finding = only(
                FindingCode.COUNT_AND_DISPLAY_DISAGREE,
                findings(Runs.counted(5000, 298).indicated(pounds(302), pounds(1))));

        assertThat(finding.severity()).isEqualTo(Severity.ERROR);
        assertThat(finding.code().doubtsData()).isTrue();
        assertThat(number(finding, "byCount")).isCloseTo(300, ROUNDING);
        assertThat(finding.number("shown")).isEqualTo(pounds(302));
        assertThat(finding.sentence())
                .isEqualTo("The count times the calibration gives 300 lb, but the display showed 302 lb: one of them is"
                        + " wrong.");
    }

    @Test
    void countAndDisplayMayDifferByAStep() {
        assertThat(findings(Runs.counted(5000, 298).indicated(pounds(301), pounds(1))))
                .isEmpty();
        assertThat(findings(Runs.counted(5000, 298).indicated(pounds(299), pounds(1))))
                .isEmpty();
    }

    /** A step of 1 lb, half of 0.01 lb/rev for 50 rev, and three times a tenth of a turn of 6 lb: 3.05 lb. */
    @Test
    void aCountByEyeAndADisplayMayDifferByThreeTimesTheEyesErrorToo() {
        VerificationCatch byEye = Runs.counted(revolutionsByEye(50), 298);

        assertThat(codes(findings(byEye.indicated(pounds(303), pounds(1)))))
                .doesNotContain(FindingCode.COUNT_AND_DISPLAY_DISAGREE);
        assertThat(codes(findings(byEye.indicated(pounds(303.1), pounds(1)))))
                .contains(FindingCode.COUNT_AND_DISPLAY_DISAGREE);
    }

    /** Half a turn of the 50 that were expected is 1 %; twice that may be counted wrong, whatever was counted. */
    @Test
    void whatACountMayExplainIsAPartOfWhatWasExpected() {
        assertThat(codes(findings(Runs.counted(toHalfATurn(46.95), 281.7)))).contains(FindingCode.SHORTFALL);
        assertThat(codes(findings(Runs.counted(toHalfATurn(47.05), 282.3)))).doesNotContain(FindingCode.SHORTFALL);
    }

    private static ShaftCount toHalfATurn(double revolutions) {
        return new ShaftCount.ByEye(
                Amounts.of(revolutions, SpreadingUnits.REVOLUTION), Amounts.of(0.5, SpreadingUnits.REVOLUTION));
    }

    /** 5.9 lb/rev caught, as three calibration catches say too. */
    private static Verification withInForce(double poundsPerRevolution, Calibration calibration) {
        return Runs.of(augerInForce(poundsPerRevolution), Runs.seconds(120), caught(295), pulses(5000))
                .assess(TOLERANCE, DecisionRule.SIMPLE, VerificationLimits.COMMON, Optional.of(calibration));
    }

    private static Calibration calibration(double... pounds) {
        return Calibration.from(
                DoubleStream.of(pounds).mapToObj(one -> augerCatch(one, 2000)).toList());
    }

    @Test
    void aValueFarOffThatACalibrationRefutesIsOutOfDateAndIsCorrected() {
        Verification old = withInForce(7.5, calibration(118, 118.2, 117.8));
        Finding finding = only(FindingCode.VALUE_OUT_OF_DATE, old.findings());

        assertThat(number(finding, "error")).isCloseTo((375 / 295.0 - 1) * 100, ROUNDING);
        assertThat(codes(old.findings())).doesNotContain(FindingCode.CORRECTION_TOO_LARGE);
        assertThat(old.proposedCorrection()).isPresent();
    }

    @Test
    void aValueIsNotOutOfDateWhereTheCalibrationDisagreesOrNoWearExplainsIt() {
        // 136 lb are 6.8 lb/rev; 8 lb/rev are 35.6 % too much, beyond twice 15 %
        for (Verification fault : List.of(
                withInForce(7.5, calibration(136, 136.2, 135.8)), withInForce(8, calibration(118, 118.2, 117.8)))) {
            assertThat(codes(fault.findings()))
                    .contains(FindingCode.CORRECTION_TOO_LARGE)
                    .doesNotContain(FindingCode.VALUE_OUT_OF_DATE);
            assertThat(fault.proposedCorrection()).isEmpty();
        }
    }

    /** Student's factor for 2 degrees of freedom, 4.30, × 1 % × 1.25 is 5.4 %, and 25 % are beyond 15 % by more. */
    @Test
    void anErrorShownBeyondFifteenPercentIsAFaultToBeFound() {
        List<Finding> findings = findings(Runs.counted(5000, 240));
        Finding finding = only(FindingCode.CORRECTION_TOO_LARGE, findings);

        assertThat(codes(findings)).containsExactly(FindingCode.CORRECTION_TOO_LARGE, FindingCode.TOLERANCE_MISSED);
        assertThat(finding.severity()).isEqualTo(Severity.ERROR);
        assertThat(finding.sentence())
                .isEqualTo("The calibration error of 25 % is beyond 15 %: find the fault before correcting.");
        assertThat(finding.number("limit")).isEqualTo(VerificationLimits.COMMON.greatestCorrection());
        // 20 % less 4.30 × 1.2 % is not beyond it.
        assertThat(codes(findings(Runs.counted(5000, 250)))).doesNotContain(FindingCode.CORRECTION_TOO_LARGE);
    }

    @Test
    void findingsOfWeighingCountAndFillAreAmongThem() {
        VerificationCatch tiny = Runs.of(augerInForce(6), Runs.seconds(120), caught(40), pulses(90));

        assertThat(codes(findings(tiny)))
                .contains(
                        FindingCode.FILL_IMPOSSIBLE,
                        FindingCode.CAUGHT_MASS_SMALL,
                        FindingCode.TOO_FEW_PULSES,
                        FindingCode.TOO_FEW_REVOLUTIONS);
        assertThat(only(FindingCode.FILL_IMPOSSIBLE, findings(tiny)).arguments())
                .containsKey("slips");
        assertThat(numbers(only(FindingCode.TOO_FEW_PULSES, findings(tiny))))
                .isInstanceOf(Map.class)
                .hasSize(2);
    }
}
