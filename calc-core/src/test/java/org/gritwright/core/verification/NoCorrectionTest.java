package org.gritwright.core.verification;

import static org.assertj.core.api.Assertions.assertThat;
import static org.gritwright.core.Samples.DAY;
import static org.gritwright.core.Samples.assertRefused;
import static org.gritwright.core.Samples.augerCatch;
import static org.gritwright.core.Samples.augerInForce;
import static org.gritwright.core.Samples.caught;
import static org.gritwright.core.Samples.goodAugerCatches;
import static org.gritwright.core.Samples.pounds;
import static org.gritwright.core.Samples.pulses;

import java.util.List;
import java.util.Optional;
import org.gritwright.core.SimulatedDay;
import org.gritwright.core.calibration.Calibration;
import org.gritwright.core.judgement.DecisionRule;
import org.gritwright.core.judgement.Tolerance;
import org.gritwright.core.observation.CatchLimits;
import org.gritwright.core.spi.FillLimits;
import org.gritwright.core.weighing.CaughtMass;
import org.gritwright.core.weighing.Scale;
import org.gritwright.core.weighing.ScaleCheck;
import org.gritwright.core.weighing.Weighing;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.junit.jupiter.api.Test;

/** When no correction is proposed. */
class NoCorrectionTest {
    private static final Tolerance TOLERANCE = Tolerance.percent(4);

    /** 300 lb indicated, 280 lb caught: 7 % too much, a case for a correction. */
    private static final VerificationCatch OFF = Runs.counted(5000, 280);

    private static boolean proposes(VerificationCatch source) {
        return source.assess(TOLERANCE).proposedCorrection().isPresent();
    }

    private static boolean proposes(VerificationLimits limits, Optional<Calibration> calibration) {
        return OFF.assess(TOLERANCE, DecisionRule.SIMPLE, limits, calibration)
                .proposedCorrection()
                .isPresent();
    }

    @Test
    void otherwiseOneIsProposed() {
        assertThat(proposes(OFF)).isTrue();
    }

    @Test
    void anErrorWithinToleranceStillTellsWhatItCallsFor() {
        assertThat(proposes(Runs.counted(5000, 299))).isTrue();
    }

    @Test
    void noneWithoutACount() {
        assertThat(proposes(Runs.openLoop(280))).isFalse();
    }

    @Test
    void noneWhereCountAndDisplayDisagree() {
        assertThat(proposes(OFF.indicated(pounds(310), pounds(1)))).isFalse();
        assertThat(proposes(OFF.indicated(pounds(300), pounds(1)))).isTrue();
    }

    @Test
    void noneWhereTheFillCanNotBe() {
        // 1.54 and 2.2 lb/rev with 6.98 lb/rev to fill the screw: 0.22 and 0.32
        VerificationCatch impossible = Runs.of(augerInForce(1.6), Runs.seconds(120), caught(77), pulses(5000));
        VerificationCatch implausible = Runs.of(augerInForce(2.3), Runs.seconds(120), caught(110), pulses(5000));

        assertThat(proposes(impossible)).isFalse();
        assertThat(proposes(implausible)).isTrue();
    }

    @Test
    void noneWhereTheCallersLimitsSayTheFillCanNotBe() {
        CatchLimits strict = CatchLimits.COMMON.withFill(new FillLimits(0.9, 0.95, 1.05, 1.1));

        assertThat(proposes(
                        new VerificationLimits(strict, VerificationLimits.COMMON.greatestCorrection()),
                        Optional.empty()))
                .isFalse();
    }

    @Test
    void noneWhereTheScaleMissedItsTestWeight() {
        Scale bad = Scale.of("S-2", pounds(500), pounds(0.5)).checked(new ScaleCheck(DAY, pounds(50), pounds(52)));
        CaughtMass caught = CaughtMass.of(bad, DAY, new Weighing("A", pounds(280), pounds(0)));

        assertThat(proposes(Runs.of(augerInForce(6), Runs.seconds(120), caught, pulses(5000))))
                .isFalse();
    }

    @Test
    void noneWhileTheCalibrationInForceIsDoubted() {
        Calibration scattered = Calibration.from(List.of(augerCatch(100, 2000), augerCatch(130, 2000)));
        Calibration single = Calibration.from(List.of(augerCatch(118, 2000)));
        Calibration good = Calibration.from(goodAugerCatches());

        assertThat(proposes(VerificationLimits.COMMON, Optional.of(scattered))).isFalse();
        assertThat(proposes(VerificationLimits.COMMON, Optional.of(single))).isTrue();
        assertThat(proposes(VerificationLimits.COMMON, Optional.of(good))).isTrue();
    }

    /** 6 lb/rev caught, with so much more in force. */
    private static VerificationCatch off(double percent) {
        return Runs.of(augerInForce(6 * (1 + percent / 100)), Runs.seconds(120), caught(300), pulses(5000));
    }

    @Test
    void noneShownBeyondFifteenPercent() {
        // common practice, no source
        assertThat(VerificationLimits.COMMON.greatestCorrection()).isEqualTo(Amounts.of(15, SpreadingUnits.PERCENT));
        assertThat(proposes(off(15))).isTrue();
        assertThat(proposes(off(25))).isFalse();
        assertThat(proposes(off(-15))).isTrue();
        assertThat(proposes(off(-25))).isFalse();
    }

    @Test
    void anErrorBeyondTheLimitByLessThanItsUncertaintyIsCorrected() {
        Verification close = off(16).assess(TOLERANCE);

        assertThat(close.calibrationError().orElseThrow().getValue().doubleValue())
                .isGreaterThan(15);
        assertThat(close.proposedCorrection()).isPresent();
    }

    private static VerificationLimits atMost(CatchLimits limits, double percent) {
        return new VerificationLimits(limits, Amounts.of(percent, SpreadingUnits.PERCENT));
    }

    /** 7.14 %, shown to a percent where the catches are known to scatter by half of that, and to 4.7 % where nobody knows. */
    @Test
    void noneBeyondTheCallersLimit() {
        CatchLimits known = SimulatedDay.limits(0, 0.005);

        assertThat(proposes(atMost(known, 4), Optional.empty())).isFalse();
        assertThat(proposes(atMost(known, 8), Optional.empty())).isTrue();
        assertThat(proposes(atMost(CatchLimits.COMMON, 4), Optional.empty())).isTrue();
        assertThat(proposes(atMost(CatchLimits.COMMON, 2), Optional.empty())).isFalse();
        assertRefused(
                "greatest correction must be greater than 0: 0 %",
                () -> new VerificationLimits(CatchLimits.COMMON, Amounts.of(0, SpreadingUnits.PERCENT)));
    }
}
