package org.gritwright.core.verification;

import static org.assertj.core.api.Assertions.assertThat;
import static org.gritwright.core.Samples.AUGER;
import static org.gritwright.core.Samples.DAY;
import static org.gritwright.core.Samples.SCALE;
import static org.gritwright.core.Samples.assertRefused;
import static org.gritwright.core.Samples.augerInForce;
import static org.gritwright.core.Samples.caught;
import static org.gritwright.core.Samples.chainAt;
import static org.gritwright.core.Samples.inches;
import static org.gritwright.core.Samples.pounds;
import static org.gritwright.core.Samples.pulses;

import java.time.LocalDate;
import java.util.Optional;
import org.gritwright.core.calibration.CalibrationFactor;
import org.gritwright.core.calibration.CalibrationInForce;
import org.gritwright.core.judgement.Tolerance;
import org.gritwright.core.observation.CalibrationPoint;
import org.gritwright.core.observation.Material;
import org.gritwright.core.spi.Setting;
import org.gritwright.core.weighing.CaughtMass;
import org.gritwright.core.weighing.Weighing;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.junit.jupiter.api.Test;

/** Which catches can be compared with a correction at all. */
class ConfirmingCatchTest {
    private static final Tolerance TOLERANCE = Tolerance.percent(4);
    private static final CalibrationFactor LEFT = CalibrationFactor.parse("5.6 lb/rev");
    private static final Correction PROPOSED =
            Runs.counted(5000, 280.1).assess(TOLERANCE).proposedCorrection().orElseThrow();
    private static final Correction ENTERED = PROPOSED.entered(LEFT);

    private static VerificationCatch with(CalibrationInForce inForce) {
        return Runs.of(inForce, Runs.seconds(120), caught(298), pulses(5300));
    }

    private static void assertObjection(String message, Correction correction, VerificationCatch later) {
        assertThat(correction.isConfirmableBy(later)).isFalse();
        assertRefused(message, () -> correction.confirmedBy(later.assess(TOLERANCE)));
    }

    @Test
    void anotherCatchWithTheValueAsLeftCan() {
        assertThat(ENTERED.isConfirmableBy(with(augerInForce(5.6)))).isTrue();
    }

    @Test
    void noneBeforeTheValueIsEntered() {
        assertObjection(
                "corrected calibration must be entered before it is confirmed: nothing",
                PROPOSED,
                with(augerInForce(5.6)));
    }

    @Test
    void noneWithAnotherValueInForce() {
        assertObjection(
                "calibration in force during the confirming catch must be the value as left, 5.6 lb/rev: 5.7 lb/rev",
                ENTERED,
                with(augerInForce(5.7)));
    }

    @Test
    void noneOfAnotherPoint() {
        String message =
                "confirming catch must be made at the calibration point of the corrected calibration: at" + " another";
        Material sand = Material.of("sand", Amounts.of(95, SpreadingUnits.POUND_PER_CUBIC_FOOT));

        assertObjection(message, ENTERED, with(CalibrationInForce.of(chainAt(4), LEFT, Optional.empty())));
        assertObjection(
                message,
                ENTERED,
                with(CalibrationInForce.of(CalibrationPoint.of(sand, AUGER, Setting.none()), LEFT, Optional.empty())));

        Correction atFour = correctionOfChainAt(4);
        CalibrationInForce atFive = chainInForceAt(5).withFactor(atFour.toEnter());
        assertObjection(message, atFour.entered(atFour.toEnter()), with(atFive));
    }

    private static CalibrationInForce chainInForceAt(double inches) {
        return CalibrationInForce.of(chainAt(inches), CalibrationFactor.parse("62 lb/rev"), Optional.empty());
    }

    private static Correction correctionOfChainAt(double inches) {
        return Runs.of(chainInForceAt(inches), Runs.seconds(120), caught(600), pulses(1000))
                .assess(TOLERANCE)
                .proposedCorrection()
                .orElseThrow();
    }

    @Test
    void theUnitOfTheOpeningDoesNotMatter() {
        Correction atFour = correctionOfChainAt(4);
        CalibrationInForce inMillimeters = CalibrationInForce.of(
                chainAt(Amounts.of(101.6, SpreadingUnits.MILLIMETER)), atFour.toEnter(), Optional.empty());

        assertThat(atFour.entered(atFour.toEnter()).isConfirmableBy(with(inMillimeters)))
                .isTrue();
    }

    @Test
    void noneOfAnEarlierDay() {
        LocalDate dayBefore = DAY.minusDays(1);
        CaughtMass early = CaughtMass.of(SCALE, dayBefore, new Weighing("A", pounds(298), pounds(0)));

        assertObjection(
                "day of the confirming catch must be not before that of the catch that the correction was made from,"
                        + " 2026-10-19: 2026-10-18",
                ENTERED,
                Runs.of(augerInForce(5.6), Runs.seconds(120), early, pulses(5300)));
    }

    @Test
    void notTheVeryCatchThatItWasMadeFrom() {
        VerificationCatch same = Runs.of(augerInForce(5.6), Runs.seconds(120), caught(280.1), pulses(5000));

        assertObjection(
                "confirming catch must be a different catch from the one that the correction was made from: the same"
                        + " catch",
                ENTERED,
                same);
    }

    @Test
    void notTheVeryCatchInTheWordsOfADisplay() {
        VerificationCatch displayed =
                Runs.of(augerInForce(6), Runs.seconds(120), caught(280.1)).indicated(pounds(300), pounds(1));
        Correction entered =
                displayed.assess(TOLERANCE).proposedCorrection().orElseThrow().entered(LEFT);
        String message = "confirming catch must be a different catch from the one that the correction was made from:"
                + " the same catch";
        VerificationCatch withTheOldFigure =
                Runs.of(augerInForce(5.6), Runs.seconds(120), caught(280.1)).indicated(pounds(300), pounds(1));

        assertObjection(message, entered, withTheOldFigure);
        // As 5.6 lb/rev would have shown the same 50 revolutions, within a step of the display.
        for (double shown : new double[] {279.1, 280, 280.9}) {
            assertObjection(
                    message,
                    entered,
                    Runs.of(augerInForce(5.6), Runs.seconds(120), caught(280.1)).indicated(pounds(shown), pounds(1)));
        }
        for (double shown : new double[] {278.8, 281.2}) {
            assertThat(entered.isConfirmableBy(Runs.of(augerInForce(5.6), Runs.seconds(120), caught(280.1))
                            .indicated(pounds(shown), pounds(1))))
                    .isTrue();
        }
    }

    @Test
    void aCatchThatDiffersInCountMassOrRunIsAnother() {
        CalibrationInForce left = augerInForce(5.6);
        VerificationCatch displayed =
                Runs.of(augerInForce(6), Runs.seconds(120), caught(280.1)).indicated(pounds(300), pounds(1));
        Correction ofDisplay =
                displayed.assess(TOLERANCE).proposedCorrection().orElseThrow().entered(LEFT);

        assertThat(ENTERED.isConfirmableBy(Runs.of(left, Runs.seconds(120), caught(280.1), pulses(5001))))
                .isTrue();
        assertThat(ENTERED.isConfirmableBy(Runs.of(left, Runs.seconds(120), caught(283), pulses(5000))))
                .isTrue();
        assertThat(ENTERED.isConfirmableBy(Runs.of(left, Runs.seconds(119), caught(280.1), pulses(5000))))
                .isTrue();
        assertThat(ofDisplay.isConfirmableBy(
                        Runs.of(left, Runs.seconds(120), caught(280.1)).indicated(pounds(290), pounds(1))))
                .isTrue();
        assertThat(ofDisplay.isConfirmableBy(Runs.of(left, Runs.seconds(120), caught(280.1))))
                .isTrue();
    }
}
