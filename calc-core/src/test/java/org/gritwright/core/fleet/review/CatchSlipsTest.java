package org.gritwright.core.fleet.review;

import static org.assertj.core.api.Assertions.assertThat;
import static org.gritwright.core.fleet.review.EnteredDays.CHAIN;
import static org.gritwright.core.fleet.review.EnteredDays.FOUR;
import static org.gritwright.core.fleet.review.EnteredDays.box;
import static org.gritwright.core.fleet.review.EnteredDays.calibration;
import static org.gritwright.core.fleet.review.EnteredDays.day;
import static org.gritwright.core.fleet.review.EnteredDays.inForce;
import static org.gritwright.core.fleet.review.EnteredDays.net;
import static org.gritwright.core.fleet.review.EnteredDays.pulses;
import static org.gritwright.core.fleet.review.EnteredDays.read;
import static org.gritwright.core.fleet.review.EnteredDays.time;
import static org.gritwright.core.fleet.review.EnteredDays.verification;
import static org.gritwright.core.fleet.review.EnteredDays.weighed;

import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.gritwright.core.calibration.CalibrationCatch;
import org.gritwright.core.metering.NoSensor;
import org.gritwright.core.metering.ShaftCount;
import org.gritwright.core.metering.Spreader;
import org.gritwright.core.observation.CalibrationPoint;
import org.gritwright.core.observation.Observation;
import org.gritwright.core.verification.TestRun;
import org.gritwright.core.verification.VerificationCatch;
import org.gritwright.core.weighing.CaughtMass;
import org.gritwright.core.weighing.Weighing;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.junit.jupiter.api.Test;

/** What the day would be without each slip: all that are tried, and in how many places each could have been made. */
class CatchSlipsTest {
    private static final TestRun FOR_1050_SECONDS = TestRun.lasting(
            Amounts.of(400, SpreadingUnits.POUND_PER_MILE),
            Amounts.of(3.6, SpreadingUnits.MILE_PER_HOUR),
            Amounts.of(1050, SpreadingUnits.SECOND));

    private static List<String> tried(Sketch day) {
        return EnteredDays.table(day, CatchSlips.of(day, true)).stream()
                .map(line -> line.replace("catch of 2026-10-19 ", ""))
                .toList();
    }

    private static List<String> tried(Sketch day, String of) {
        return tried(day).stream().filter(line -> line.contains(of)).toList();
    }

    /**
     * Two calibration catches and one that counted as many pulses as it lasted seconds. 2.2046 lb are a kilogram; a swapped or
     * shifted gross mass counts against its tare; four boxes were weighed.
     */
    @Test
    void everySlipOfGrainsIsTriedWhereItCanHaveBeenMade() {
        VerificationCatch asLongAsCounted = VerificationCatch.of(
                        Observation.of(FOUR, time(60), net(420)).counted(pulses(1050)),
                        inForce(FOUR, "40 lb/rev"),
                        FOR_1050_SECONDS)
                .indicated(Amounts.of(410, SpreadingUnits.POUND), Amounts.of(1, SpreadingUnits.POUND));
        Sketch day = day(
                List.of(
                        calibration(0, FOUR, weighed(box(452, 52)), 1000),
                        calibration(15, FOUR, weighed(box(400, 40), box(180, 60)), 1200)),
                List.of(asLongAsCounted));

        assertThat(tried(day)).containsExactly("""
                        caught mass read in kilograms and written in pounds | 1 | 0: 881.85 lb, 1: 1058.2 lb, 2: 925.94 lb
                        caught mass read in kilograms and written in pounds, 08:00 | 3 | 0: 881.85 lb
                        caught mass read in kilograms and written in pounds, 08:15 | 3 | 1: 1058.2 lb
                        caught mass read in kilograms and written in pounds, 09:00 | 3 | 2: 925.94 lb
                        two digits in the gross mass of box swapped (425 lb), 08:00 | 8 | 0: 373 lb
                        two digits in the gross mass of box swapped (542 lb), 08:00 | 8 | 0: 490 lb
                        gross mass of box ÷ 10 (40 lb), 08:15 | 4 | 1: 120 lb
                        two digits in the gross mass of box swapped (108 lb), 08:15 | 8 | 1: 408 lb
                        two digits in the gross mass of box swapped (810 lb), 08:15 | 8 | 1: 1110 lb
                        two digits in the gross mass of box swapped (407 lb), 09:00 | 8 | 2: 357 lb
                        two digits in the gross mass of box swapped (740 lb), 09:00 | 8 | 2: 690 lb
                        pulses per revolution × 2 (200 pulse/rev) | 1 | 0: 5 rev, 1: 6 rev, 2: 5.25 rev
                        pulses per revolution ÷ 2 (50 pulse/rev) | 1 | 0: 20 rev, 1: 24 rev, 2: 21 rev
                        pulses per revolution × 10 (1000 pulse/rev) | 1 | 0: 1 rev, 1: 1.2 rev, 2: 1.05 rev
                        pulses per revolution ÷ 10 (10 pulse/rev) | 1 | 0: 100 rev, 1: 120 rev, 2: 105 rev
                        one turn too many in the count, in 2 catches | 1 | 0: 9 rev, 1: 11 rev
                        one turn too many in the count, 08:00 | 3 | 0: 9 rev
                        one turn too many in the count, 08:15 | 3 | 1: 11 rev
                        one turn too many in the count, 09:00 | 3 | 2: 9.5 rev
                        counter not reset: the count holds that of the catch before (2 rev), 08:15 | 3 | 1: 2 rev
                        the run time written as the count, 09:00 | 1 | 2: none rev
                        verification made with another material or at another gate opening, 09:00 | 11 | 2: 700 lb or 2: 600 lb or \
                        2: 552.63 lb or 2: 512.2 lb or 2: 477.27 lb or 2: 375 lb or 2: 355.93 lb or 2: 336 lb or 2: 311.11 lb or \
                        2: 280 lb or 2: 247.06 lb
                        displayed mass read in kilograms and written in pounds, 09:00 | 1 | 2: shown 903.9 lb
                        """.lines().toArray(String[]::new));
    }

    /** By a flow meter, so without turns; a gallon is 10 lb. Of 42 + 31 gal, 55 would be left if either were swapped. */
    @Test
    void everySlipOfLiquidsIsTriedWhereItCanHaveBeenMade() {
        CalibrationPoint meter = EnteredDays.METERED;
        Sketch day = day(
                List.of(calibration(0, meter, read(42, 31), 73_000)),
                List.of(VerificationCatch.of(
                        Observation.of(meter, time(60), read(50)).counted(pulses(50_000)),
                        inForce(meter, "1000 pulse/gal"),
                        EnteredDays.PUMPED)));

        assertThat(tried(day)).containsExactly("""
                        caught volume read in liters and written in gallons | 1 | 0: 192.85 lb, 1: 132.09 lb
                        caught volume read in liters and written in gallons, 08:00 | 2 | 0: 192.85 lb
                        caught volume read in liters and written in gallons, 09:00 | 2 | 1: 132.09 lb
                        caught volume read in gallons and written in liters | 1 | 0: 2763.4 lb, 1: 1892.7 lb
                        caught volume read in gallons and written in liters, 08:00 | 2 | 0: 2763.4 lb
                        caught volume read in gallons and written in liters, 09:00 | 2 | 1: 1892.7 lb
                        two digits in the caught volume swapped (24 gal), 08:00 | 4 | 0: 550 lb
                        two digits in the caught volume swapped (13 gal), 08:00 | 4 | 0: 550 lb
                        air in the line instead of a part of the caught volume, 08:00 | 14 | 0: 776.6 lb or 0: 829.55 lb or \
                        0: 890.24 lb or 0: 973.33 lb or 0: 1089.6 lb or 0: 1258.6 lb or 0: 1622.2 lb
                        air in the line instead of a part of the caught volume, 09:00 | 14 | 1: 531.91 lb or 1: 568.18 lb or \
                        1: 609.76 lb or 1: 666.67 lb or 1: 746.27 lb or 1: 862.07 lb or 1: 1111.1 lb
                        """.lines().toArray(String[]::new));
    }

    @Test
    void aFillWithItsDigitsSwappedReachesTheHighestMarkButNotBeyondIt() {
        Sketch day = day(List.of(calibration(0, EnteredDays.METERED, read(35, 36, 23), 94_000)), List.of());

        // The highest mark is at 53 gal. Each of the three fills has one pair of digits.
        assertThat(tried(day, "two digits"))
                .containsExactly(
                        "two digits in the caught volume swapped (53 gal), 08:00 | 3 | 0: 1120 lb",
                        "two digits in the caught volume swapped (32 gal), 08:00 | 3 | 0: 1030 lb");
    }

    @Test
    void aFillWithTwoPairsOfDigitsToSwapHasTwiceAsManyPlaces() {
        Sketch day = day(List.of(calibration(0, EnteredDays.METERED, read(12.34), 12_340)), List.of());

        assertThat(tried(day, "two digits"))
                .containsExactly(
                        "two digits in the caught volume swapped (12.43 gal), 08:00 | 2 | 0: 124.3 lb",
                        "two digits in the caught volume swapped (21.34 gal), 08:00 | 2 | 0: 213.4 lb");
    }

    @Test
    void whereNothingWasCaughtNoSlipOfACatchIsTried() {
        assertThat(CatchSlips.of(EnteredDays.listing("40 lb/rev"), true)).isEmpty();
    }

    @Test
    void slipsOfSingleCatchesAreTriedOnlyWhereTheyAreAskedFor() {
        Sketch day =
                day(List.of(calibration(0, FOUR, net(400), 1000), calibration(15, FOUR, net(480), 1200)), List.of());

        assertThat(EnteredDays.table(day, CatchSlips.of(day, false)))
                .filteredOn(line -> !line.contains("pulses per revolution"))
                .containsExactly(
                        "caught mass read in kilograms and written in pounds | 1 | 0: 881.85 lb, 1: 1058.2 lb",
                        "one turn too many in the count, in 2 catches | 1 | 0: 9 rev, 1: 11 rev");
    }

    @Test
    void inKilogramsNothingCanHaveBeenReadInKilograms() {
        VerificationCatch shown = VerificationCatch.of(
                        Observation.of(FOUR, time(60), kilograms(190, 10)),
                        inForce(FOUR, "18 kg/rev"),
                        EnteredDays.run())
                .indicated(Amounts.of(180, SpreadingUnits.KILOGRAM), Amounts.of(1, SpreadingUnits.KILOGRAM));
        Sketch day = day(List.of(calibration(0, FOUR, kilograms(190, 10), 1000)), List.of(shown));

        assertThat(tried(day, "kilograms")).isEmpty();
    }

    /** A tenth of 100 kg is just the empty box: then nothing was caught. */
    @Test
    void aGrossMassThatLeavesNothingCaughtIsNotTried() {
        Sketch day = day(List.of(calibration(0, FOUR, kilograms(100, 10), 500)), List.of());

        assertThat(tried(day, "gross mass")).isEmpty();
    }

    private static CaughtMass kilograms(double gross, double tare) {
        return weighed(new Weighing(
                "box", Amounts.of(gross, SpreadingUnits.KILOGRAM), Amounts.of(tare, SpreadingUnits.KILOGRAM)));
    }

    /** Two boxes of 40 and 60 lb in the other catch: 50 lb each on average. */
    @Test
    void aForgottenTareIsThatOfTheOtherCatches() {
        Sketch day = day(
                List.of(
                        calibration(0, FOUR, weighed(box(250, 0), box(250, 0)), 1000),
                        calibration(15, FOUR, weighed(box(280, 40), box(300, 60)), 1200)),
                List.of());

        assertThat(tried(day, "tare")).containsExactly("tare forgotten (50 lb), 08:00 | 1 | 0: 400 lb");
    }

    @Test
    void aForgottenTareLeavesACatchAsItIsIfThatWasNotMoreThanTheTare() {
        Sketch day = day(
                List.of(
                        calibration(0, FOUR, kilograms(10, 0), 25),
                        calibration(10, FOUR, kilograms(11, 0), 25),
                        calibration(15, FOUR, kilograms(280, 10), 1200)),
                List.of());

        assertThat(tried(day, "tare")).containsExactly("tare forgotten (10 kg), in 2 catches | 1 | 1: 2.2046 lb");
    }

    /** 0.005 k² of what is in a box, for k from 1 to 12: of 500 lb in two boxes 1.25 k² each; the seventh is 61.25 lb. */
    @Test
    void whereAllTaresAreForgottenTheyMayBeAnything() {
        Sketch day = day(List.of(calibration(0, FOUR, weighed(box(250, 0), box(250, 0)), 1000)), List.of());

        assertThat(tried(day, "tare"))
                .containsExactly("tare forgotten (61 lb) | 12 | 0: 497.5 lb or 0: 490 lb or 0: 477.5 lb or 0: 460 lb or"
                        + " 0: 437.5 lb or 0: 410 lb or 0: 377.5 lb or 0: 340 lb or 0: 297.5 lb or 0: 250 lb or 0: 197.5 lb or"
                        + " 0: 140 lb");
    }

    /** 0.4 lb/pulse were 40 lb/rev at 100 pulses, and are 80 at 200. What the display alone told has no pulses. */
    @Test
    void anotherNumberOfPulsesChangesAValueByPulseToo() {
        Sketch day = day(
                List.of(),
                List.of(
                        verification(0, FOUR, net(420), 1050, "0.4 lb/pulse"),
                        verification(15, FOUR, net(420), "0.4 lb/pulse")
                                .indicated(
                                        Amounts.of(410, SpreadingUnits.POUND), Amounts.of(1, SpreadingUnits.POUND))));

        assertThat(tried(day, "pulses per revolution"))
                .containsExactly("""
                        pulses per revolution × 2 (200 pulse/rev) | 1 | 0: 5.25 rev held 80 lb, 1: held 80 lb
                        pulses per revolution ÷ 2 (50 pulse/rev) | 1 | 0: 21 rev held 20 lb, 1: held 20 lb
                        pulses per revolution × 10 (1000 pulse/rev) | 1 | 0: 1.05 rev held 400 lb, 1: held 400 lb
                        pulses per revolution ÷ 10 (10 pulse/rev) | 1 | 0: 105 rev held 4 lb, 1: held 4 lb
                        """.lines().toArray(String[]::new));
    }

    @Test
    void turnsCountedByEyeDoNotChangeWithThePulses() {
        ShaftCount byEye = new ShaftCount.ByEye(
                Amounts.of(10, SpreadingUnits.REVOLUTION), Amounts.of(0.1, SpreadingUnits.REVOLUTION));
        Sketch day = day(
                List.of(CalibrationCatch.of(
                        Observation.of(FOUR, time(0), net(400)).counted(byEye))),
                List.of());

        assertThat(tried(day, "pulses")).isEmpty();
    }

    @Test
    void withoutASensorThereAreNoPulsesToMistake() {
        ShaftCount byEye = new ShaftCount.ByEye(
                Amounts.of(10, SpreadingUnits.REVOLUTION), Amounts.of(0.1, SpreadingUnits.REVOLUTION));
        CalibrationPoint watched = CalibrationPoint.of(
                EnteredDays.SALT,
                new Spreader(
                        CHAIN.conveyor(EnteredDays.TYPES),
                        CHAIN.gate(EnteredDays.TYPES),
                        new NoSensor(Amounts.of(1, SpreadingUnits.ONE))),
                FOUR.setting());
        Sketch day = day(
                List.of(CalibrationCatch.of(
                        Observation.of(watched, time(0), net(400)).counted(byEye))),
                List.of());

        assertThat(tried(day, "count"))
                .containsExactly(
                        "one turn too many in the count, 08:00 | 1 | 0: 9 rev",
                        "one turn too many in the count, 08:00 | 1 | 0: 9 rev");
        assertThat(tried(day, "pulses")).isEmpty();
    }

    @Test
    void theOnlyTurnOfACatchIsNotOneTooMany() {
        Sketch day = day(List.of(calibration(0, FOUR, net(40), 100)), List.of());

        assertThat(tried(day, "turn too many")).isEmpty();
    }

    @Test
    void aCounterThatStandsWhereItStoodWasReset() {
        Sketch day = day(
                List.of(
                        calibration(0, FOUR, net(400), 1000),
                        calibration(15, FOUR, net(400), 1000),
                        calibration(30, FOUR, net(360), 900)),
                List.of());

        assertThat(tried(day, "not reset")).isEmpty();
    }

    @Test
    void aCatchAfterOneThatCountedNothingIsNotCountedOn() {
        Sketch day = day(
                List.of(),
                List.of(
                        verification(0, FOUR, net(420), "40 lb/rev"),
                        verification(15, FOUR, net(420), 1050, "40 lb/rev")));

        assertThat(tried(day, "not reset")).isEmpty();
    }

    /** Pulses as many as seconds, but of a calibration catch; and a verification with other seconds. */
    @Test
    void onlyACountThatIsJustTheSecondsMayBeTheRunTime() {
        VerificationCatch other = VerificationCatch.of(
                Observation.of(FOUR, time(60), net(420)).counted(pulses(1051)),
                inForce(FOUR, "40 lb/rev"),
                FOR_1050_SECONDS);
        Sketch day = day(List.of(calibration(0, FOUR, net(420), 1050)), List.of(other));

        assertThat(tried(day, "run time")).isEmpty();
    }

    @Test
    void wherePlacesCanNotBeComparedNothingWasMadeElsewhere() {
        Sketch verified = day(List.of(), List.of(verification(0, FOUR, net(420), 1050, "40 lb/rev")));
        Sketch calibrated = day(List.of(calibration(0, FOUR, net(400), 1000)), List.of());

        assertThat(Stream.of(verified, calibrated).flatMap(one -> tried(one, "another gate").stream()))
                .isEmpty();
    }

    @Test
    void slipsOfSingleCatchesAreTriedInTwelveAtMost() {
        Sketch day = day(
                IntStream.range(0, 14)
                        .mapToObj(i -> calibration(i, FOUR, net(i == 7 ? 300 : 400 + i), 1000))
                        .toList(),
                List.of());

        assertThat(tried(day, "one turn too many in the count, 08")).hasSize(12);
        assertThat(tried(day, "one turn too many in the count, 08:07")).hasSize(1);
    }
}
