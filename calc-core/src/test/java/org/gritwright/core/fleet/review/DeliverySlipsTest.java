package org.gritwright.core.fleet.review;

import static org.assertj.core.api.Assertions.assertThat;
import static org.gritwright.core.fleet.review.EnteredDays.FOUR;
import static org.gritwright.core.fleet.review.EnteredDays.METERED;
import static org.gritwright.core.fleet.review.EnteredDays.inForce;
import static org.gritwright.core.fleet.review.EnteredDays.net;
import static org.gritwright.core.fleet.review.EnteredDays.pulses;
import static org.gritwright.core.fleet.review.EnteredDays.read;
import static org.gritwright.core.fleet.review.EnteredDays.time;

import java.util.List;
import java.util.Optional;
import org.gritwright.core.finding.Finding;
import org.gritwright.core.fleet.day.TargetEntry;
import org.gritwright.core.judgement.Tolerance;
import org.gritwright.core.observation.Observation;
import org.gritwright.core.verification.TestRun;
import org.gritwright.core.verification.Verification;
import org.gritwright.core.verification.VerificationCatch;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Runs at 4 lb/s: 360 lb/mi at 40 mi/h. 40 lb/rev are right, so that what the count says was caught. */
class DeliverySlipsTest {
    private static final Tolerance TOLERANCE = new Tolerance(Amounts.of(4, SpreadingUnits.PERCENT));
    private static final TargetEntry TARGET = new TargetEntry(
            Optional.of(Amounts.of(360, SpreadingUnits.POUND_PER_MILE)),
            Optional.empty(),
            Optional.empty(),
            Optional.empty());

    private static TestRun run(double seconds) {
        return TestRun.lasting(
                Amounts.of(360, SpreadingUnits.POUND_PER_MILE),
                Amounts.of(40, SpreadingUnits.MILE_PER_HOUR),
                Amounts.of(seconds, SpreadingUnits.SECOND));
    }

    /** So much of what the run should have laid, counted and caught. */
    private static Verification delivered(double seconds, double part) {
        double pounds = part * 4 * seconds;
        return assessed(VerificationCatch.of(
                Observation.of(FOUR, time(0), net(pounds)).counted(pulses(Math.rint(pounds * 2.5))),
                inForce(FOUR, "40 lb/rev"),
                run(seconds)));
    }

    private static Verification assessed(VerificationCatch one) {
        return one.assess(TOLERANCE);
    }

    private static String found(Verification... all) {
        return DeliverySlips.of(List.of(all), one -> TARGET)
                .map(Finding::sentence)
                .orElse("none");
    }

    /** 90 s were written as 130; 60 s as 100. 160 is no time in minutes and seconds, nor is 99. */
    @ParameterizedTest
    @CsvSource({
        "130, 0.6923, 90 s",
        "100, 0.6, 60 s",
        "159, 0.7484, 119 s",
        "160, 0.75, none",
        "99, 0.99, none",
        "130, 1, none",
        "130, 0.8, none"
    })
    void aRunThatLaidWhatTheMinutesAskForWasMistimed(double seconds, double part, String instead) {
        assertThat(found(delivered(seconds, part))).contains(instead);
    }

    /** A run of 60 s can't be misread: a drive that was slow in it is slow in the other too. */
    @ParameterizedTest
    @CsvSource({"0.94, none", "0.96, 90 s"})
    void aDriveThatIsSlowInARunThatCouldNotBeMisreadIsSlowInOthers(double part, String instead) {
        assertThat(found(delivered(60, part), delivered(130, 0.6923))).contains(instead);
    }

    @Test
    void aPersonWritesTimesInOneWay() {
        assertThat(found(delivered(130, 0.6923), delivered(230, 1))).isEqualTo("none");
        assertThat(found(delivered(130, 0.6923), delivered(230, 150 / 230.0))).contains("90 s");
    }

    /** 360 lb for 520: shown to 6 %, that is 33 times as likely as a slow drive; to 10 %, 20 times; 30 times are asked for. */
    @ParameterizedTest
    @CsvSource({"0.06, 90 s", "0.10, none"})
    void aDisplayTellsAsMuchAsItIsFine(double resolution, String instead) {
        VerificationCatch one = VerificationCatch.of(
                        Observation.of(FOUR, time(0), net(360)), inForce(FOUR, "40 lb/rev"), run(130))
                .indicated(Amounts.of(360, SpreadingUnits.POUND), Amounts.of(360 * resolution, SpreadingUnits.POUND));

        assertThat(found(assessed(one))).contains(instead);
    }

    /** A kilogram per kilometer is 3.548 lb/mi: 70 to 105 % of what the other unit asks for. */
    @ParameterizedTest
    @CsvSource({
        "3.548, 1277 lb/mi", "2.52, 1277 lb/mi", "2.44, none", "3.69, 1277 lb/mi", "3.76, none",
        "0.2818, 101.5 lb/mi", "0.2, 101.5 lb/mi", "0.19, none", "0.29, 101.5 lb/mi", "0.3, none"
    })
    void aRateInTheOtherUnitLaysSoMuchMoreOrLess(double part, String instead) {
        assertThat(found(delivered(50, part))).contains(instead);
    }

    /** A gallon per mile is 2.352 L/km. */
    @ParameterizedTest
    @CsvSource({"2.352, 47.04 gal/mi", "0.425, 8.503 gal/mi", "3.3, none"})
    void aRateOfLiquidIsInLitersPerKilometer(double part, String instead) {
        double gallons = 20 * part;
        VerificationCatch one = VerificationCatch.of(
                Observation.of(METERED, time(0), read(gallons / 2, gallons / 2))
                        .counted(pulses(Math.rint(gallons * 1000))),
                inForce(METERED, "1000 pulse/gal"),
                TestRun.pumpingOver(
                        Amounts.of(20, SpreadingUnits.US_GALLON_PER_MILE),
                        Amounts.of(20, SpreadingUnits.MILE_PER_HOUR),
                        Amounts.of(1, SpreadingUnits.MILE)));

        assertThat(found(assessed(one))).contains(instead);
    }

    /** What wets grains is asked for by the rate of the grains, in pounds per mile. */
    @ParameterizedTest
    @CsvSource({"3.548, 1277 lb/mi", "2.352, none"})
    void aPrewetIsMistakenByTheRateOfItsGrains(double part, String instead) {
        double gallons = 10 * part;
        Verification one = assessed(VerificationCatch.of(
                Observation.of(METERED, time(0), read(gallons)).counted(pulses(Math.rint(gallons * 1000))),
                inForce(METERED, "1000 pulse/gal"),
                TestRun.pumpingOver(
                        Amounts.of(10, SpreadingUnits.US_GALLON_PER_MILE),
                        Amounts.of(20, SpreadingUnits.MILE_PER_HOUR),
                        Amounts.of(1, SpreadingUnits.MILE))));
        TargetEntry wetted = new TargetEntry(
                TARGET.rate(),
                Optional.empty(),
                Optional.empty(),
                Optional.of(Amounts.of(10, SpreadingUnits.US_GALLON_PER_SHORT_TON)));

        assertThat(DeliverySlips.of(List.of(one), any -> wetted)
                        .map(Finding::sentence)
                        .orElse("none"))
                .contains(instead);
    }

    /** Scale and count 12 % apart: something else is wrong; 8 % apart: maybe nothing. */
    @ParameterizedTest
    @CsvSource({"1.12, none", "0.88, none", "1.08, 90 s", "0.93, 90 s"})
    void whatScaleAndCountDisagreeOnSaysNothingOfADelivery(double caught, String instead) {
        VerificationCatch one = VerificationCatch.of(
                Observation.of(FOUR, time(0), net(360 * caught)).counted(pulses(900)),
                inForce(FOUR, "40 lb/rev"),
                run(130));

        assertThat(found(assessed(one))).contains(instead);
    }
}
