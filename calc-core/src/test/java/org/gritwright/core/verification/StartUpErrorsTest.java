package org.gritwright.core.verification;

import static org.assertj.core.api.Assertions.assertThat;
import static org.gritwright.core.Samples.assertRefused;
import static org.gritwright.core.Samples.augerInForce;
import static org.gritwright.core.Samples.caught;
import static org.gritwright.core.Samples.pulses;

import java.util.List;
import org.gritwright.core.judgement.Tolerance;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.junit.jupiter.api.Test;

class StartUpErrorsTest {
    private static final Tolerance TOLERANCE = Tolerance.percent(4);
    private static final VerificationCatch LONG = Runs.counted(5000, 300);
    private static final VerificationCatch SHORT =
            Runs.of(augerInForce(6), Runs.seconds(60), caught(150), pulses(2500));

    private static void assertNotSeparable(String message, VerificationCatch... catches) {
        assertThat(StartUp.isSeparable(List.of(catches))).isFalse();
        assertRefused(message, () -> StartUp.separate(List.of(catches), TOLERANCE));
    }

    private static VerificationCatch at(double poundsPerMile, double milesPerHour) {
        return Runs.of(
                augerInForce(6),
                TestRun.lasting(
                        Amounts.of(poundsPerMile, SpreadingUnits.POUND_PER_MILE),
                        Amounts.of(milesPerHour, SpreadingUnits.MILE_PER_HOUR),
                        Amounts.of(60, SpreadingUnits.SECOND)),
                caught(150),
                pulses(2500));
    }

    @Test
    void twoCountedCatchesOfDifferentRunTimesAreSeparable() {
        assertThat(StartUp.isSeparable(List.of(LONG, SHORT))).isTrue();
    }

    private static VerificationCatch lasting(double seconds) {
        return Runs.of(augerInForce(6), Runs.seconds(seconds), caught(150), pulses(2500));
    }

    @Test
    void refusesNone() {
        assertNotSeparable("run times for the start-up loss must be two or more, the longest at least 1.5 times the"
                + " shortest: none");
    }

    @Test
    void refusesRunTimesThatAreTooMuchAlike() {
        String message = "run times for the start-up loss must be two or more, the longest at least 1.5 times the"
                + " shortest: ";

        assertNotSeparable(message + "120.0 s to 120.0 s", LONG);
        assertNotSeparable(message + "120.0 s to 120.0 s", LONG, Runs.counted(5010, 301));
        assertNotSeparable(message + "81.0 s to 120.0 s", LONG, lasting(81));
        assertThat(StartUp.isSeparable(List.of(LONG, lasting(80)))).isTrue();
    }

    @Test
    void refusesDifferentConditions() {
        String message = "catches for the start-up loss must be made with one calibration, target rate and test speed:"
                + " catch 2 differs";

        assertNotSeparable(message, LONG, Runs.of(augerInForce(5.9), Runs.seconds(60), caught(150), pulses(2500)));
        assertNotSeparable(message, LONG, at(320, 25));
        assertNotSeparable(message, LONG, at(360, 20));
    }

    @Test
    void refusesACatchWithoutACount() {
        assertNotSeparable(
                "catches for the start-up loss must be counted or displayed: catch 2 is neither",
                SHORT,
                Runs.openLoop(300));
    }

    @Test
    void refusesACountThatDoesNotGrowWithTheTime() {
        VerificationCatch stuck = Runs.of(augerInForce(6), Runs.seconds(60), caught(300), pulses(5000));

        assertNotSeparable("count must be growing with the run time: 0.0 rev/s", LONG, stuck);
    }
}
