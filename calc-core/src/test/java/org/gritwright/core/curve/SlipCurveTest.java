package org.gritwright.core.curve;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.LiquidSamples.METER_POINT;
import static org.gritwright.core.LiquidSamples.gallons;
import static org.gritwright.core.LiquidSamples.read;
import static org.gritwright.core.Samples.assertRefused;
import static org.gritwright.core.Samples.codes;
import static org.gritwright.core.Samples.only;
import static org.gritwright.core.Samples.pulses;
import static org.gritwright.core.curve.SlipSamples.at;
import static org.gritwright.core.curve.SlipSamples.caught;
import static org.gritwright.core.curve.SlipSamples.curve;
import static org.gritwright.core.curve.SlipSamples.gallonsPerRevolution;
import static org.gritwright.core.curve.SlipSamples.pairs;
import static org.gritwright.core.curve.SlipSamples.relative;
import static org.gritwright.core.curve.SlipSamples.rpm;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.gritwright.core.LiquidSamples;
import org.gritwright.core.calibration.Calibration;
import org.gritwright.core.calibration.CalibrationCatch;
import org.gritwright.core.finding.FindingCode;
import org.gritwright.core.finding.Term;
import org.gritwright.core.metering.ShaftCount;
import org.gritwright.core.observation.CatchAllowances;
import org.gritwright.core.observation.CatchLimits;
import org.gritwright.core.observation.ErrorSource;
import org.gritwright.core.spi.FillLimits;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.quantity.FlowRate;
import org.gritwright.units.quantity.VolumePerRevolution;
import org.junit.jupiter.api.Test;

class SlipCurveTest {
    private static final SlipCurve LEAKING = SlipCurve.chosenByTest(pairs(SlipSamples::leaking, 100, 400));

    private static final SlipCurve CONSTANT = SlipCurve.chosenByTest(pairs(rpm -> 0.04, 100, 200, 400));

    @Test
    void aLeakIsFoundAndSaysWhatAConstantVolumeWouldBeOffBy() {
        assertThat(LEAKING.model()).isEqualTo(SlipModel.LEAK);
        assertThat(LEAKING.test().orElseThrow().chance()).isLessThan(0.05);
        assertThat(gallonsPerRevolution(LEAKING, 100)).isCloseTo(0.03, within(1e-12));
        assertThat(gallonsPerRevolution(LEAKING, 200)).isCloseTo(0.04, within(1e-12));
        assertThat(gallonsPerRevolution(LEAKING, 400)).isCloseTo(0.045, within(1e-12));
        assertThat(gallonsPerRevolution(LEAKING.withoutLeak().orElseThrow())).isCloseTo(0.05, within(1e-12));
        // As many turns at either speed: the constant is the middle of 0.03 and 0.045.
        assertThat(percent(LEAKING, 100)).isCloseTo((0.0375 / 0.03 - 1) * 100, within(1e-9));
        assertThat(percent(LEAKING, 400)).isCloseTo((0.0375 / 0.045 - 1) * 100, within(1e-9));
        assertThat(only(FindingCode.LEAK_FOUND, LEAKING.findings()).sentence())
                .isEqualTo("By the catches, the pump leaks 2 gal/min; a constant volume per revolution would have a"
                        + " calibration error of 25 % at 100 rev/min and of -16.67 % at 400 rev/min.");
        assertThat(codes(LEAKING.findings()))
                .doesNotContain(FindingCode.LEAK_UNTESTED, FindingCode.SPEED_MISFIT, FindingCode.CATCHES_SCATTER);
    }

    private static double percent(SlipCurve curve, double rpm) {
        return Amounts.in(curve.errorOfConstant(rpm(rpm)), SpreadingUnits.PERCENT);
    }

    /** With two groups, a and b follow from the two means, each of two catches that are off by s = √2 %. */
    @Test
    void aLeakIsAsUncertainAsItsCatchesScatter() {
        Measured<FlowRate> leak = LEAKING.leak().orElseThrow();
        // Σ r² ÷ (n − p) = 4·0.01² ÷ 2; each mean has half of that as its variance.
        double mean = Math.sqrt(4 * 0.0001 / 2 / 2);

        assertThat(Amounts.in(leak.value(), SpreadingUnits.US_GALLON_PER_MINUTE))
                .isCloseTo(2, within(1e-10));
        // b = (v₄ − v₁) ÷ (1/n₁ − 1/n₄)
        assertThat(Amounts.in(leak.standardUncertainty().orElseThrow(), SpreadingUnits.US_GALLON_PER_MINUTE))
                .isCloseTo(mean * Math.hypot(0.03, 0.045) / (1 / 100.0 - 1 / 400.0), within(1e-6));
        // a = (4·v₄ − v₁) ÷ 3
        Measured<VolumePerRevolution> whole = LEAKING.withoutLeak().orElseThrow();
        assertThat(relative(whole) * 0.05).isCloseTo(mean * Math.hypot(0.03, 4 * 0.045) / 3, within(1e-9));
        assertThat(leak.degreesOfFreedom()).hasValue(2);
        assertThat(whole.degreesOfFreedom()).hasValue(2);
    }

    @Test
    void aPredictionHasABudgetOfScatterAndMarks() {
        var budget = LEAKING.budget(rpm(400));

        assertThat(relative(LEAKING.volumePerRevolution(rpm(400)))).isCloseTo(0.01, within(1e-6));
        assertThat(budget.result()).isEqualTo(LEAKING.volumePerRevolution(rpm(400)));
        assertThat(budget.component(ErrorSource.CURVE.key())).isPresent();
        assertThat(budget.component(
                        ErrorSource.spanOf(LEAKING.catches().get(0).made().caught())))
                .isPresent();
    }

    @Test
    void aConstantVolumeIsTheCalibrations() {
        Calibration calibration = Calibration.from(
                CONSTANT.catches().stream().map(TimedCatch::made).toList());

        assertThat(CONSTANT.model()).isEqualTo(SlipModel.CONSTANT);
        assertThat(CONSTANT.test()).isPresent();
        assertThat(CONSTANT.leak()).isEmpty();
        assertThat(CONSTANT.withoutLeak()).isEmpty();
        assertThat(CONSTANT.constant()).isEqualTo(calibration);
        assertThat(gallonsPerRevolution(CONSTANT, 300))
                .isCloseTo(
                        gallonsPerRevolution(calibration.volumePerRevolution().orElseThrow()), within(1e-15));
        assertThat(percent(CONSTANT, 100)).isCloseTo(0, within(1e-12));
        assertThat(codes(CONSTANT.findings()))
                .doesNotContain(FindingCode.LEAK_FOUND, FindingCode.LEAK_UNTESTED, FindingCode.SPEED_MISFIT);
    }

    /** A passed test proves little: what a leak that fits would give instead is in the uncertainty. */
    @Test
    void theUncertaintyOfAConstantVolumeCoversALeakThatTheTestMisses() {
        SlipCurve curve = curve(at(100, 0.0388), at(100, 0.0404), at(400, 0.0396), at(400, 0.0412));

        assertThat(curve.model()).isEqualTo(SlipModel.CONSTANT);
        double off = 0.04 - gallonsPerRevolution(curve, 400);
        assertThat(gallonsPerRevolution(curve, 100)).isCloseTo(0.04, within(1e-12));
        // the leak goes through 0.0396 at 100 rev/min and is less sure than a constant
        assertThat(relative(curve.volumePerRevolution(rpm(100))) * 0.04).isGreaterThan(Math.hypot(0.0004, 0.0004));
        assertThat(off).isCloseTo(0, within(1e-12));
    }

    @Test
    void withoutARepeatNothingIsTested() {
        SlipCurve curve = curve(at(100, 0.03), at(400, 0.045));

        assertThat(curve.model()).isEqualTo(SlipModel.CONSTANT);
        assertThat(curve.test()).isEmpty();
        assertThat(only(FindingCode.LEAK_UNTESTED, curve.findings()).sentence())
                .isEqualTo("Whether the pump leaks can't be told by 2 catches at 2 shaft speeds from 100 rev/min to 400"
                        + " rev/min: a constant volume per revolution is taken. Catch at speeds of which the fastest is"
                        + " at least 1.5 times the slowest, and repeat there.");
        // the two catches are not at the same volume, and that shows
        assertThat(relative(curve.volumePerRevolution(rpm(100)))).isGreaterThan(0.2);
    }

    @Test
    void oneCatchIsAConstantVolume() {
        SlipCurve curve = curve(at(100, 0.03));

        assertThat(gallonsPerRevolution(curve, 100)).isCloseTo(0.03, within(1e-15));
        assertThat(curve.lowestSpeed()).isEqualTo(curve.highestSpeed());
        assertThat(codes(curve.findings())).contains(FindingCode.LEAK_UNTESTED, FindingCode.UNCERTAINTY_ASSUMED);
    }

    @Test
    void speedsThatAreTooNearEachOtherTellNoLeak() {
        SlipCurve near = SlipCurve.chosenByTest(pairs(SlipSamples::leaking, 100, 149));
        SlipCurve far = SlipCurve.chosenByTest(pairs(SlipSamples::leaking, 100, 150));

        assertThat(near.test()).isEmpty();
        assertThat(near.model()).isEqualTo(SlipModel.CONSTANT);
        // The repeats refuse a constant volume all the same.
        assertThat(codes(near.findings())).contains(FindingCode.LEAK_UNTESTED, FindingCode.SPEED_MISFIT);
        assertThat(far.model()).isEqualTo(SlipModel.LEAK);
        assertThat(codes(far.findings())).doesNotContain(FindingCode.LEAK_UNTESTED);
    }

    @Test
    void speedsThatAreNearlyTheSameAreRepeats() {
        SlipCurve repeated = curve(at(100, 0.0303), at(102.9, 0.0297), at(400, 0.045));
        SlipCurve single = curve(at(100, 0.0303), at(103.2, 0.0297), at(400, 0.045));

        assertThat(repeated.test()).isPresent();
        assertThat(single.test()).isEmpty();
        assertThat(only(FindingCode.LEAK_UNTESTED, single.findings()).sentence())
                .contains("3 catches at 3 shaft speeds");
    }

    /** Speeds that go up in small steps are one, however far they get. */
    @Test
    void stepsOfRepeatsAreOneSpeed() {
        List<TimedCatch> catches = new ArrayList<>();
        for (double rpm = 100; rpm < 200; rpm *= 1.02) {
            catches.add(at(rpm, SlipSamples.leaking(rpm)));
        }
        SlipCurve curve = SlipCurve.chosenByTest(catches);

        assertThat(curve.test()).isEmpty();
        assertThat(only(FindingCode.LEAK_UNTESTED, curve.findings()).sentence()).contains("at 1 shaft speeds");
    }

    /** Nothing leaks forward: a suction line that starves a fast pump isn't called a leak. */
    @Test
    void aVolumeThatFallsWithTheSpeedIsNoLeak() {
        SlipCurve curve = SlipCurve.chosenByTest(pairs(rpm -> 0.05 + 1 / rpm, 100, 400));

        assertThat(curve.model()).isEqualTo(SlipModel.CONSTANT);
        assertThat(only(FindingCode.SPEED_MISFIT, curve.findings()).arguments())
                .containsEntry("model", Term.CONSTANT_VOLUME);
        // 0.06 and 0.0525 gal/rev: whichever is asked for, the curve may miss it by as much
        assertThat(relative(curve.volumePerRevolution(rpm(400)))).isGreaterThan(0.0375 / 0.5625 - 0.001);
    }

    @Test
    void catchesThatFollowNoLeakEitherSaySo() {
        List<TimedCatch> catches = new ArrayList<>(pairs(rpm -> 0.03, 100));
        catches.addAll(pairs(rpm -> 0.05, 200));
        catches.addAll(pairs(rpm -> 0.042, 400));
        SlipCurve curve = SlipCurve.chosenByTest(catches);

        assertThat(curve.model()).isEqualTo(SlipModel.LEAK);
        assertThat(only(FindingCode.SPEED_MISFIT, curve.findings()).sentence())
                .startsWith("The catches at different shaft speeds don't follow a constant leak flow: the chance of");
        double misfit = 0.05 / gallonsPerRevolution(curve, 200) - 1;
        assertThat(misfit).isGreaterThan(0.05);
        double slow = 1 - 0.03 / gallonsPerRevolution(curve, 100);
        assertThat(relative(curve.volumePerRevolution(rpm(300)))).isBetween(misfit, 2 * Math.max(misfit, slow));
    }

    @Test
    void aLeakThatTheCatchesAtThreeSpeedsFollowIsNoMisfit() {
        SlipCurve curve = SlipCurve.chosenByTest(pairs(SlipSamples::leaking, 100, 200, 400));

        assertThat(curve.model()).isEqualTo(SlipModel.LEAK);
        assertThat(codes(curve.findings())).contains(FindingCode.LEAK_FOUND).doesNotContain(FindingCode.SPEED_MISFIT);
        assertThat(relative(curve.volumePerRevolution(rpm(200)))).isLessThan(0.01);
    }

    /** Half of the greatest spillage was lost in each catch: 0.97 of what was pumped lies in the container. */
    @Test
    void whatWasSpilledWasPumped() {
        CatchLimits spilling = CatchLimits.COMMON.withAllowances(new CatchAllowances(
                Amounts.of(6, SpreadingUnits.PERCENT),
                Amounts.of(0, SpreadingUnits.PERCENT),
                Optional.empty(),
                Optional.empty()));
        SlipCurve curve = SlipCurve.chosenByTest(LEAKING.catches(), spilling);

        double factor = spilling.allowances().spillageFactor();
        assertThat(factor).isGreaterThan(1.02);
        assertThat(gallonsPerRevolution(curve, 100)).isCloseTo(0.03 * factor, within(1e-12));
        assertThat(gallonsPerRevolution(curve, 400)).isCloseTo(0.045 * factor, within(1e-12));
        assertThat(percent(curve, 100)).isCloseTo(percent(LEAKING, 100), within(1e-9));
    }

    @Test
    void catchesThatScatterSaySo() {
        SlipCurve curve = curve(at(100, 0.03), at(100, 0.05), at(400, 0.03), at(400, 0.05));

        assertThat(codes(curve.findings())).contains(FindingCode.CATCHES_SCATTER);
    }

    @Test
    void itHoldsFromTheSlowestCatchToTheFastest() {
        assertThat(Amounts.in(LEAKING.lowestSpeed(), SpreadingUnits.REVOLUTION_PER_MINUTE))
                .isCloseTo(100, within(1e-9));
        assertThat(Amounts.in(LEAKING.highestSpeed(), SpreadingUnits.REVOLUTION_PER_MINUTE))
                .isCloseTo(400, within(1e-9));
        assertRefused(
                "shaft speed must be within those of the catches, 100 rev/min to 400 rev/min: 99.9 rev/min",
                () -> LEAKING.volumePerRevolution(rpm(99.9)));
        assertRefused(
                "shaft speed must be within those of the catches, 100 rev/min to 400 rev/min: 400.1 rev/min",
                () -> LEAKING.errorOfConstant(rpm(400.1)));
        assertRefused("shaft speed must be greater than 0: 0 rev/min", () -> LEAKING.budget(rpm(0)));
    }

    @Test
    void onlyAPumpsCatchesAtOnePointMakeACurve() {
        TimedCatch ofMeter = new TimedCatch(
                LiquidSamples.catchAt(METER_POINT, read(5), 6000), Amounts.of(60, SpreadingUnits.SECOND));

        assertRefused(
                "metering of catches over shaft speeds must be a pump: " + METER_POINT.metering(),
                () -> curve(ofMeter));
        assertRefused("calibration catches must be one or more: none", () -> SlipCurve.chosenByTest(List.of()));
        assertRefused(
                "calibration point of a catch must be the same in all catches of one calibration, " + SlipSamples.POINT
                        + ": another metering",
                () -> curve(at(100, 0.03), ofMeter));
    }

    @Test
    void aTimeMakesACountASpeed() {
        CalibrationCatch counted = caught(gallons(3), pulses(10_000));
        TimedCatch timed = new TimedCatch(counted, Amounts.of(60, SpreadingUnits.SECOND));

        assertThat(Amounts.in(timed.shaftSpeed(), SpreadingUnits.REVOLUTION_PER_MINUTE))
                .isCloseTo(100, within(1e-12));
        assertRefused(
                "run time must be given, as the count doesn't state it: 10000 pulse", () -> TimedCatch.of(counted));
        assertRefused(
                "run time must be greater than 0: 0 s",
                () -> new TimedCatch(counted, Amounts.of(0, SpreadingUnits.SECOND)));
        CalibrationCatch stated =
                caught(gallons(3), new ShaftCount.SpeedTimesTime(rpm(100), Amounts.of(1, SpreadingUnits.MINUTE)));
        assertRefused(
                "run time must be that of the count, 1 min: 61 s",
                () -> new TimedCatch(stated, Amounts.of(61, SpreadingUnits.SECOND)));
        assertRefused(
                "run time must be that of the count, 1 min: 59 s",
                () -> new TimedCatch(stated, Amounts.of(59, SpreadingUnits.SECOND)));
        assertThat(TimedCatch.of(stated).shaftSpeed()).isEqualTo(rpm(100));
    }

    @Test
    void twoAreEqualWhenCatchesAndLimitsAre() {
        SlipCurve same = SlipCurve.chosenByTest(pairs(SlipSamples::leaking, 100, 400));

        assertThat(same).isEqualTo(LEAKING).hasSameHashCodeAs(LEAKING).isNotEqualTo(CONSTANT);
        assertThat(LEAKING).doesNotHaveSameHashCodeAs(CONSTANT);
        assertThat(SlipCurve.chosenByTest(
                        LEAKING.catches(), CatchLimits.COMMON.withFill(new FillLimits(0.1, 0.2, 1.2, 1.5))))
                .isNotEqualTo(LEAKING);
    }
}
