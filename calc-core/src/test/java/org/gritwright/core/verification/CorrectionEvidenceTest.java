package org.gritwright.core.verification;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.Samples.AUGER;
import static org.gritwright.core.Samples.DAY;
import static org.gritwright.core.Samples.SCALE;
import static org.gritwright.core.Samples.assertRefused;
import static org.gritwright.core.Samples.augerInForce;
import static org.gritwright.core.Samples.catchAt;
import static org.gritwright.core.Samples.caught;
import static org.gritwright.core.Samples.goodAugerCatches;
import static org.gritwright.core.Samples.pounds;
import static org.gritwright.core.Samples.pulses;
import static org.gritwright.units.SpreadingUnits.PERCENT;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.assertj.core.data.Offset;
import org.gritwright.core.calibration.Calibration;
import org.gritwright.core.calibration.CalibrationFactor;
import org.gritwright.core.judgement.DecisionRule;
import org.gritwright.core.judgement.Tolerance;
import org.gritwright.core.judgement.Verdict;
import org.gritwright.core.observation.CalibrationPoint;
import org.gritwright.core.observation.Material;
import org.gritwright.core.spi.Setting;
import org.gritwright.core.verification.Correction.Action;
import org.gritwright.core.verification.Correction.Step;
import org.gritwright.core.weighing.CaughtMass;
import org.gritwright.core.weighing.Scale;
import org.gritwright.core.weighing.ScaleAccuracy;
import org.gritwright.core.weighing.Weighing;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.junit.jupiter.api.Test;

/** What a correction was computed from, and its history. */
class CorrectionEvidenceTest {
    private static final Tolerance FOUR = Tolerance.percent(4);
    private static final CalibrationFactor TO_ENTER = CalibrationFactor.parse("5.6 lb/rev");
    private static final Calibration EARLIER = Calibration.from(goodAugerCatches());

    /** 118.5 lb in 20 revolutions; 0.5 lb of deviation, of three catches. */
    private static final double BEFORE = 5.925;

    /** The relative variance of a catch by two readings to half a pound and a pulse of 100 a revolution. */
    private static double rounded(double pounds, double revolutions) {
        return 2 * 0.25 / 12 / (pounds * pounds) + 1e-4 / 6 / (revolutions * revolutions);
    }

    /** What three catches show without that, and 1 % of which nobody knew more, each with 2 degrees of freedom. */
    private static final double SCATTER = (Math.pow(0.5 / 118.5, 2) - rounded(118.5, 20) + 1e-4) / 2;

    private static final double U_BEFORE = BEFORE * Math.sqrt((SCATTER + rounded(118.5, 20)) / 3);

    /** Of 296 lb in 50 revolutions. */
    private static final double U_NOW = 5.92 * Math.sqrt(SCATTER + rounded(296, 50));

    /** The calibration's catches differ by half a pound, so that theirs is rounded a little differently each. */
    private static final Offset<Double> CLOSE = within(1e-6);

    private static VerificationCatch on(Scale scale, LocalDate day, double inForce, double pulses, double pounds) {
        CaughtMass caught = CaughtMass.of(scale, day, new Weighing("tarp", pounds(pounds), pounds(0)));
        return Runs.of(augerInForce(inForce), Runs.seconds(120), caught, pulses(pulses));
    }

    private static Verification assess(VerificationCatch source, Calibration calibration) {
        return source.assess(FOUR, DecisionRule.SIMPLE, VerificationLimits.COMMON, Optional.of(calibration));
    }

    private static double computed(Correction correction) {
        return correction.computed().value().getValue().doubleValue();
    }

    @Test
    void oldAndNewEvidenceCountByTheirWeights() {
        // 296 lb in 50 revolutions, as scattered as the catches before.
        Correction combined = assess(Runs.counted(5000, 296), EARLIER)
                .correctionCombinedWith(EARLIER)
                .orElseThrow();
        double now = 5.92;
        double weightBefore = 1 / (U_BEFORE * U_BEFORE);
        double weightNow = 1 / (U_NOW * U_NOW);

        assertThat(computed(combined))
                .isCloseTo((weightBefore * BEFORE + weightNow * now) / (weightBefore + weightNow), CLOSE);
        assertThat(combined.basis()).isEqualTo(Correction.Basis.CATCH_AND_CALIBRATION);
        assertThat(combined.toEnter()).isEqualTo(CalibrationFactor.parse("5.92 lb/rev"));
        assertThat(combined.evidence()).isEqualTo(Runs.counted(5000, 296));
    }

    @Test
    void spansOfTwoScalesWeighInBoth() {
        Scale other = Scale.of("S-2", pounds(5000), pounds(0.5))
                .withAccuracy(new ScaleAccuracy.Stated(Amounts.of(2, PERCENT)));
        Correction combined = assess(on(other, DAY, 6, 5000, 296), EARLIER)
                .correctionCombinedWith(EARLIER)
                .orElseThrow();
        double now = 5.92;
        double uBefore = Math.hypot(U_BEFORE, BEFORE * 0.001 / Math.sqrt(3));
        double uNow = Math.hypot(U_NOW, now * 0.02 / Math.sqrt(3));
        double shareBefore = uNow * uNow / (uBefore * uBefore + uNow * uNow);

        assertThat(computed(combined)).isCloseTo(shareBefore * BEFORE + (1 - shareBefore) * now, CLOSE);
    }

    @Test
    void evidenceThatDisagreesIsNotAveraged() {
        // 5.925 and 5.6 lb/rev differ by far more than either's uncertainty.
        Verification verification = assess(Runs.counted(5000, 280), EARLIER);

        assertThat(verification.correctionCombinedWith(EARLIER)).isEmpty();
        assertThat(verification.proposedCorrection().orElseThrow().basis()).isEqualTo(Correction.Basis.CATCH);
    }

    @Test
    void withoutACorrectionThereIsNothingToCombine() {
        assertThat(Runs.openLoop(296).assess(FOUR).correctionCombinedWith(EARLIER))
                .isEmpty();
    }

    @Test
    void onlyEvidenceOfTheSamePointIsCombined() {
        Calibration ofSand = Calibration.from(List.of(catchAt(
                CalibrationPoint.of(
                        Material.of("sand", Amounts.of(95, SpreadingUnits.POUND_PER_CUBIC_FOOT)),
                        AUGER,
                        Setting.none()),
                caught(118.5),
                pulses(2000))));

        assertRefused(
                "calibration to combine must be for the catch's point, salt: for sand",
                () -> Runs.counted(5000, 296).assess(FOUR).correctionCombinedWith(ofSand));
    }

    @Test
    void theHistorySaysWhatWhenWhyFromWhatAsFoundAndAsLeft() {
        Verification first = on(SCALE, DAY, 6, 5000, 280.1).assess(FOUR);
        Correction proposed = first.proposedCorrection().orElseThrow();
        Correction entered = proposed.entered(TO_ENTER, DAY.plusDays(1));
        Verification second = on(SCALE, DAY.plusDays(2), 5.6, 5300, 298).assess(FOUR);
        Correction confirmed = entered.confirmedBy(second);
        CalibrationFactor asFound = CalibrationFactor.parse("6 lb/rev");
        Step found = new Step(Optional.of(DAY), Action.FOUND, asFound, Optional.of(first.judgement()));
        Step toEnter = new Step(Optional.of(DAY), Action.PROPOSED, TO_ENTER, Optional.of(first.judgement()));
        Step asLeft = new Step(Optional.of(DAY.plusDays(1)), Action.ENTERED, TO_ENTER, Optional.empty());

        assertThat(proposed.history()).containsExactly(found, toEnter);
        assertThat(entered.history()).containsExactly(found, toEnter, asLeft);
        assertThat(confirmed.history())
                .containsExactly(
                        found,
                        toEnter,
                        asLeft,
                        new Step(
                                Optional.of(DAY.plusDays(2)),
                                Action.CONFIRMED,
                                TO_ENTER,
                                Optional.of(second.judgement())));
        assertThat(confirmed.reason()).isEqualTo(first.judgement());
        assertThat(confirmed.reason().advice()).isEqualTo(Advice.CORRECT);
        assertThat(confirmed.basis()).isEqualTo(Correction.Basis.CATCH);
    }

    @Test
    void aDayThatNobodyWroteDownStaysUnknown() {
        Correction entered = Runs.counted(5000, 280.1)
                .assess(FOUR)
                .proposedCorrection()
                .orElseThrow()
                .entered(TO_ENTER);

        assertThat(entered.history().get(2).on()).isEmpty();
        assertThat(entered)
                .isNotEqualTo(Runs.counted(5000, 280.1)
                        .assess(FOUR)
                        .proposedCorrection()
                        .orElseThrow()
                        .entered(TO_ENTER, DAY));
    }

    @Test
    void nothingIsEnteredBeforeItsCatch() {
        Correction proposed =
                Runs.counted(5000, 280.1).assess(FOUR).proposedCorrection().orElseThrow();

        assertRefused(
                "day of a correction must be not before that of its catch, 2026-10-19: 2026-10-18",
                () -> proposed.entered(TO_ENTER, DAY.minusDays(1)));
        assertThat(proposed.entered(TO_ENTER, DAY).status()).isEqualTo(Correction.Status.UNCONFIRMED);
    }

    @Test
    void nothingIsConfirmedBeforeItWasEntered() {
        Correction entered = Runs.counted(5000, 280.1)
                .assess(FOUR)
                .proposedCorrection()
                .orElseThrow()
                .entered(TO_ENTER, DAY.plusDays(2));
        VerificationCatch between = on(SCALE, DAY.plusDays(1), 5.6, 5300, 298);

        assertThat(entered.isConfirmableBy(between)).isFalse();
        assertRefused(
                "day of the confirming catch must be not before that on which the value was entered, 2026-10-21:"
                        + " 2026-10-20",
                () -> entered.confirmedBy(between.assess(FOUR)));
        assertThat(entered.confirmedBy(
                                on(SCALE, DAY.plusDays(2), 5.6, 5300, 298).assess(FOUR))
                        .status())
                .isEqualTo(Correction.Status.CONFIRMED);
    }

    /** A guarded rule confirms only what is shown within. */
    @Test
    void aCatchThatCannotTellConfirmsNothing() {
        Correction entered = Runs.counted(5000, 280.1)
                .assess(FOUR)
                .proposedCorrection()
                .orElseThrow()
                .entered(TO_ENTER);
        // 53 revolutions at 5.6 lb/rev: 296.8 lb of 287 lb caught, 3.4 % off.
        VerificationCatch later = on(SCALE, DAY, 5.6, 5300, 287);
        Verification undecided =
                later.assess(FOUR, DecisionRule.guarded(5), VerificationLimits.COMMON, Optional.of(EARLIER));

        assertThat(undecided.verdict()).isEqualTo(Verdict.UNDECIDED);
        assertThat(entered.confirmedBy(undecided)).isEqualTo(entered);
        assertThat(entered.confirmedBy(later.assess(FOUR)).status()).isEqualTo(Correction.Status.CONFIRMED);
    }
}
