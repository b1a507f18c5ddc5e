package org.gritwright.core.verification;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatNullPointerException;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.LiquidSamples.METER_POINT;
import static org.gritwright.core.LiquidSamples.catchAt;
import static org.gritwright.core.LiquidSamples.gallons;
import static org.gritwright.core.LiquidSamples.inForce;
import static org.gritwright.core.LiquidSamples.read;
import static org.gritwright.core.LiquidSamples.weighed;
import static org.gritwright.core.Samples.DAY;
import static org.gritwright.core.Samples.NOON;
import static org.gritwright.core.Samples.assertRefused;
import static org.gritwright.core.Samples.codes;
import static org.gritwright.core.Samples.only;
import static org.gritwright.core.Samples.pounds;
import static org.gritwright.core.Samples.pulses;
import static org.gritwright.core.Samples.revolutionsByEye;

import java.util.List;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Speed;
import javax.measure.quantity.Volume;
import org.gritwright.core.LiquidSamples;
import org.gritwright.core.calibration.Calibration;
import org.gritwright.core.calibration.CalibrationFactor;
import org.gritwright.core.calibration.CalibrationInForce;
import org.gritwright.core.finding.Finding;
import org.gritwright.core.finding.FindingCode;
import org.gritwright.core.judgement.DecisionRule;
import org.gritwright.core.judgement.Tolerance;
import org.gritwright.core.judgement.Verdict;
import org.gritwright.core.metering.NoSensor;
import org.gritwright.core.metering.PumpMetering;
import org.gritwright.core.observation.CalibrationPoint;
import org.gritwright.core.observation.ErrorSource;
import org.gritwright.core.observation.Observation;
import org.gritwright.core.spi.Setting;
import org.gritwright.core.weighing.Caught;
import org.gritwright.core.weighing.Graduate;
import org.gritwright.core.weighing.ReadVolume;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.quantity.LiquidApplicationRate;
import org.junit.jupiter.api.Test;

/** 20 gal/mi at 15 mi/h are 5 gal a minute: in a minute 5 gal, a quarter of a mile. */
class LiquidVerificationTest {
    private static final Quantity<LiquidApplicationRate> RATE = Amounts.of(20, SpreadingUnits.US_GALLON_PER_MILE);
    private static final Quantity<Speed> SPEED = Amounts.of(15, SpreadingUnits.MILE_PER_HOUR);
    private static final TestRun RUN = TestRun.pumping(RATE, SPEED, Amounts.of(60, SpreadingUnits.SECOND));
    private static final Tolerance TOLERANCE = Tolerance.percent(4);

    private static VerificationCatch made(Caught caught, double pulsesCounted) {
        return VerificationCatch.of(
                Observation.of(METER_POINT, NOON, caught).counted(pulses(pulsesCounted)), inForce(1200), RUN);
    }

    private static double percent(Quantity<?> ratio) {
        return ratio.getValue().doubleValue();
    }

    @Test
    void calibrationAndDeliveryErrorAreKeptApart() {
        // 5760 pulses are 4.8 gal by the display; 5 were caught and 5 were wanted
        Verification verification = made(read(5), 5760).assess(TOLERANCE);

        assertThat(percent(verification.calibrationError().orElseThrow())).isCloseTo(-4, within(1e-9));
        assertThat(percent(verification.deliveryError())).isCloseTo(-4, within(1e-9));
        assertThat(gallonsOf(verification.expected())).isCloseTo(5, within(1e-9));
        assertThat(gallonsOf(verification.indicated().orElseThrow())).isCloseTo(4.8, within(1e-9));
        assertThat(verification.deliveredRate().getUnit()).isEqualTo(SpreadingUnits.US_GALLON_PER_MILE);
        assertThat(percent(verification.deliveredRate())).isCloseTo(20, within(1e-12));
    }

    private static double gallonsOf(Quantity<?> volume) {
        return Amounts.in(volume.asType(Volume.class), SpreadingUnits.US_GALLON);
    }

    @Test
    void aCorrectionIsAKFactor() {
        Verification verification = made(read(4.7), 6000).assess(TOLERANCE);

        assertThat(verification.verdict()).isEqualTo(Verdict.OUTSIDE_TOLERANCE);
        CalibrationFactor computed =
                verification.proposedCorrection().orElseThrow().computed();
        assertThat(computed.value().getUnit()).isEqualTo(SpreadingUnits.PULSE_PER_US_GALLON);
        assertThat(computed.value().getValue().doubleValue()).isCloseTo(6000 / 4.7, within(1e-9));
    }

    @Test
    void whatIsSaidIsSaidInGallons() {
        Verification shortOf = made(read(4), 4800).assess(TOLERANCE);

        assertThat(only(FindingCode.SHORTFALL, shortOf.findings()).sentence()).contains("4 gal", "5 gal");
    }

    @Test
    void aPassingCatchPasses() {
        Verification verification = made(read(5), 6000).assess(TOLERANCE);

        assertThat(verification.passes()).isTrue();
        assertThat(codes(verification.findings()))
                .doesNotContain(FindingCode.SHORTFALL, FindingCode.FLOW_OUTSIDE_METER, FindingCode.OPEN_LOOP);
    }

    @Test
    void theDisplayIsReadInGallonsToo() {
        VerificationCatch shown = VerificationCatch.of(Observation.of(METER_POINT, NOON, read(5)), inForce(1200), RUN)
                .indicated(gallons(5.1), gallons(0.1));
        Verification verification = shown.assess(TOLERANCE);

        assertThat(percent(verification.calibrationError().orElseThrow())).isCloseTo(2, within(1e-9));
        assertThat(shown.shownKilograms()).isCloseTo(5.1 * 9.8 * 0.45359237, within(1e-9));
        assertThat(shown.stepKilograms()).isCloseTo(0.1 * 9.8 * 0.45359237, within(1e-9));
        var step = verification
                .judgement()
                .budget()
                .component(ErrorSource.DISPLAY_STEP.key())
                .orElseThrow();
        assertThat(step.standardUncertainty().getUnit()).isEqualTo(SpreadingUnits.US_GALLON);
        assertThat(step.standardUncertainty().getValue().doubleValue())
                .isCloseTo(Math.sqrt(0.01 / 12 + 2 / 6.0 / 1200 / 1200), within(1e-9));
    }

    @Test
    void furtherCatchesAreGallons() {
        ReadVolume coarse =
                ReadVolume.of(Graduate.of("P-4", gallons(6), gallons(0.5)).within(gallons(0.01)), DAY, gallons(5));
        Judgement.FurtherCatches further = made(coarse, 6270)
                .assess(TOLERANCE, DecisionRule.SIMPLE, VerificationLimits.COMMON, Optional.empty())
                .judgement()
                .further()
                .orElseThrow();

        assertThat(further.amount().getUnit()).isEqualTo(SpreadingUnits.US_GALLON);
        assertThat(gallonsOf(further.amount())).isCloseTo(5.0 * further.catches(), within(1e-9));
    }

    @Test
    void aFlowThatTheMeterIsNotGoodForIsSaid() {
        TestRun slow = TestRun.pumping(
                Amounts.of(2, SpreadingUnits.US_GALLON_PER_MILE), SPEED, Amounts.of(600, SpreadingUnits.SECOND));
        Verification verification = VerificationCatch.of(
                        Observation.of(METER_POINT, NOON, read(4.5)).counted(pulses(5000)), inForce(1200), slow)
                .assess(TOLERANCE);

        assertThat(only(FindingCode.FLOW_OUTSIDE_METER, verification.findings()).sentence())
                .contains("0.45 gal/min", "0.5 gal/min");
    }

    @Test
    void oneContainerOfUnknownToleranceForBothIsBlind() {
        ReadVolume volume = ReadVolume.of(Graduate.of("P-2", gallons(6), gallons(0.05)), DAY, gallons(5));
        Calibration calibration = Calibration.from(List.of(catchAt(METER_POINT, volume, 6000)));
        Verification verification = made(volume, 6000)
                .assess(TOLERANCE, DecisionRule.SIMPLE, VerificationLimits.COMMON, Optional.of(calibration));

        assertThat(only(FindingCode.SAME_CONTAINER_BLIND, verification.findings())
                        .sentence())
                .contains("container P-2");
        assertThat(codes(made(read(5), 6000)
                        .assess(
                                TOLERANCE,
                                DecisionRule.SIMPLE,
                                VerificationLimits.COMMON,
                                Optional.of(Calibration.from(List.of(catchAt(METER_POINT, read(5), 6000)))))
                        .findings()))
                .doesNotContain(FindingCode.SAME_CONTAINER_BLIND);
    }

    @Test
    void aWeighedCatchProvesTheSameAsAReadOne() {
        double byMass = percent(made(weighed(49, 9.8), 5900)
                .assess(TOLERANCE)
                .calibrationError()
                .orElseThrow());
        double byVolume =
                percent(made(read(5), 5900).assess(TOLERANCE).calibrationError().orElseThrow());

        assertThat(byMass).isCloseTo(byVolume, within(1e-9));
    }

    @Test
    void massesWhereVolumesBelongAreRefused() {
        TestRun ofMass = TestRun.lasting(
                Amounts.of(20, SpreadingUnits.POUND_PER_MILE), SPEED, Amounts.of(60, SpreadingUnits.SECOND));
        Observation observation = Observation.of(METER_POINT, NOON, read(5)).counted(pulses(6000));

        assertRefused(
                "target rate must be a volume per distance, as brine is a liquid: 20 lb/mi",
                () -> VerificationCatch.of(observation, inForce(1200), ofMass));
        assertRefused(
                "indicated amount must be a volume, as brine is a liquid: 49 lb",
                () -> VerificationCatch.of(observation, inForce(1200), RUN).indicated(pounds(49), pounds(1)));
        assertThat(RUN.isOfLiquid()).isTrue();
        assertThat(ofMass.isOfLiquid()).isFalse();
        assertThat(TestRun.pumpingOver(RATE, SPEED, Amounts.of(0.25, SpreadingUnits.MILE))
                        .expectedAmount())
                .isEqualTo(gallons(5));
        assertRefused(
                "target rate must be greater than 0: 0 gal/mi",
                () -> TestRun.pumping(
                        Amounts.of(0, SpreadingUnits.US_GALLON_PER_MILE),
                        SPEED,
                        Amounts.of(60, SpreadingUnits.SECOND)));
    }

    /** A pump known from 60 to 300 rev/min, whose sensed shaft turns three times as fast. */
    private static VerificationCatch pumped(double shaftTurns, double seconds) {
        PumpMetering metering =
                new PumpMetering(LiquidSamples.tablePump(60, 300), new NoSensor(Amounts.of(3, SpreadingUnits.ONE)));
        CalibrationPoint point = CalibrationPoint.of(LiquidSamples.BRINE, metering, Setting.none());
        CalibrationInForce held = CalibrationInForce.of(
                point,
                CalibrationFactor.of(Amounts.of(0.05 / 3, SpreadingUnits.US_GALLON_PER_REVOLUTION)),
                Optional.empty());
        return VerificationCatch.of(
                Observation.of(point, NOON, read(5)).counted(revolutionsByEye(shaftTurns)),
                held,
                TestRun.pumping(RATE, SPEED, Amounts.of(seconds, SpreadingUnits.SECOND)));
    }

    private static List<String> speedsOutside(double shaftTurns, double seconds) {
        return pumped(shaftTurns, seconds).assess(TOLERANCE).findings().stream()
                .filter(finding -> finding.code() == FindingCode.SPEED_OUTSIDE_PUMP)
                .map(Finding::sentence)
                .toList();
    }

    @Test
    void aPumpThatTurnedOutsideItsTableIsSaidOnTheShaftOfThePump() {
        // 300 turns of the sensed shaft are 100 of the pump
        assertThat(speedsOutside(300, 60)).isEmpty();
        assertThat(speedsOutside(180, 60)).isEmpty();
        assertThat(speedsOutside(900, 60)).isEmpty();
        assertThat(speedsOutside(300, 120))
                .singleElement()
                .asString()
                .contains("turned at 50 rev/min", "known of it is 60 rev/min");
        assertThat(speedsOutside(300, 15))
                .singleElement()
                .asString()
                .contains("turned at 400 rev/min", "known of it is 300 rev/min");
    }

    @Test
    void aFlowAboveTheMetersHighestIsSaidToo() {
        TestRun fast = TestRun.pumping(RATE, SPEED, Amounts.of(5, SpreadingUnits.SECOND));
        Verification verification = VerificationCatch.of(
                        Observation.of(METER_POINT, NOON, read(5)).counted(pulses(6000)), inForce(1200), fast)
                .assess(TOLERANCE);

        assertThat(only(FindingCode.FLOW_OUTSIDE_METER, verification.findings()).sentence())
                .contains("60 gal/min", "50 gal/min");
    }

    @Test
    void theMassRateOfALiquidIsInATradeUnit() {
        Verification verification = made(read(5), 6000).assess(TOLERANCE);

        assertThat(verification.deliveredMassRate().getUnit()).isEqualTo(SpreadingUnits.POUND_PER_MILE);
        assertThat(percent(verification.deliveredMassRate())).isCloseTo(20 * 9.8, within(1e-9));
        assertThat(Amounts.in(verification.expectedMass(), SpreadingUnits.POUND))
                .isCloseTo(49, within(1e-9));
        assertThat(Amounts.in(verification.indicatedMass().orElseThrow(), SpreadingUnits.POUND))
                .isCloseTo(49, within(1e-9));
    }

    @Test
    void aDisplaysStepIsPartOfWhatItShows() {
        assertThat(new IndicatedAmount(gallons(5), gallons(0.1)).relativeResolution())
                .isCloseTo(0.02, within(1e-15));
        assertThat(new IndicatedAmount(pounds(200), pounds(1)).relativeResolution())
                .isCloseTo(0.005, within(1e-15));
        assertRefused(
                "resolution of the indicated volume must be a volume, as what is shown: 1 lb",
                () -> new IndicatedAmount(gallons(5), pounds(1)));
        assertRefused(
                "resolution of the indicated mass must be a mass, or a volume of a liquid: 1 gal",
                () -> new IndicatedAmount(pounds(5), gallons(1)));
        assertRefused(
                "indicated volume must be greater than 0: 0 gal", () -> new IndicatedAmount(gallons(0), gallons(1)));
        assertRefused(
                "resolution of the indicated volume must be greater than 0: 0 gal",
                () -> new IndicatedAmount(gallons(1), gallons(0)));
    }

    @Test
    void furtherCatchesAreSomething() {
        assertRefused(
                "amount to catch must be greater than 0: 0 gal", () -> new Judgement.FurtherCatches(1, gallons(0)));
        assertThatNullPointerException()
                .isThrownBy(() -> new Judgement.FurtherCatches(1, null))
                .withMessage("amount");
    }
}
