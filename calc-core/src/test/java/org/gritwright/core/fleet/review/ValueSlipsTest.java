package org.gritwright.core.fleet.review;

import static org.assertj.core.api.Assertions.assertThat;
import static org.gritwright.core.fleet.review.EnteredDays.FOUR;
import static org.gritwright.core.fleet.review.EnteredDays.METERED;
import static org.gritwright.core.fleet.review.EnteredDays.TWO;
import static org.gritwright.core.fleet.review.EnteredDays.calibration;
import static org.gritwright.core.fleet.review.EnteredDays.day;
import static org.gritwright.core.fleet.review.EnteredDays.inForce;
import static org.gritwright.core.fleet.review.EnteredDays.net;
import static org.gritwright.core.fleet.review.EnteredDays.read;
import static org.gritwright.core.fleet.review.EnteredDays.verification;

import java.util.List;
import org.gritwright.core.calibration.CalibrationInForce;
import org.gritwright.core.observation.CatchLimits;
import org.gritwright.core.verification.VerificationCatch;
import org.junit.jupiter.api.Test;

class ValueSlipsTest {
    private static List<String> tried(Sketch day) {
        return EnteredDays.table(day, ValueSlips.of(day));
    }

    private static Sketch verified(List<CalibrationInForce> listed, VerificationCatch... catches) {
        return Sketch.of(List.of(), List.of(catches), List.of(), listed, CatchLimits.COMMON);
    }

    @Test
    void beforeAnythingIsCaughtAValueIsTriedByTenAndByTheOtherUnitOfMass() {
        assertThat(tried(EnteredDays.listing("40 lb/rev", "36 lb/rev")))
                .containsExactly("""
                        value in force × 10 (400 lb/rev) | 2 | held 0: 400 lb
                        value in force ÷ 10 (4 lb/rev) | 2 | held 0: 4 lb
                        value in force × 2.205 (88.18 lb/rev) | 2 | held 0: 88.185 lb
                        value in force ÷ 2.205 (18.14 lb/rev) | 2 | held 0: 18.144 lb
                        value in force × 10 (360 lb/rev) | 2 | held 1: 360 lb
                        value in force ÷ 10 (3.6 lb/rev) | 2 | held 1: 3.6 lb
                        value in force × 2.205 (79.37 lb/rev) | 2 | held 1: 79.366 lb
                        value in force ÷ 2.205 (16.33 lb/rev) | 2 | held 1: 16.329 lb
                        """.lines().toArray(String[]::new));
    }

    @Test
    void catchesTellOfAValueForGrainsThemselves() {
        assertThat(tried(verified(
                        List.of(inForce(FOUR, "40 lb/rev")), verification(0, FOUR, net(420), 1050, "40 lb/rev"))))
                .isEmpty();
        assertThat(tried(day(List.of(calibration(0, FOUR, net(400), 1000)), List.of())))
                .isEmpty();
    }

    /** 1000 pulses a gallon are 0.01 lb each, of 10 lb/gal. */
    @Test
    void aValueForLiquidsIsTriedByTenAndByTheOtherUnitOfVolumeBesideCatches() {
        Sketch day = Sketch.of(
                List.of(calibration(0, METERED, read(40), 40_000)),
                List.of(),
                List.of(),
                List.of(inForce(METERED, "1000 pulse/gal")),
                CatchLimits.COMMON);

        assertThat(tried(day)).containsExactly("""
                        value in force × 10 (100 pulse/gal) | 1 | held 0: 0.1 lb
                        value in force ÷ 10 (10000 pulse/gal) | 1 | held 0: 0.001 lb
                        value in force × 3.785 (264.2 pulse/gal) | 1 | held 0: 0.037854 lb
                        value in force ÷ 3.785 (3785 pulse/gal) | 1 | held 0: 0.0026417 lb
                        """.lines().toArray(String[]::new));
    }

    /** Either the catch was made with what is listed, or what is listed is wrong: one of the two values is left. */
    @Test
    void aValueThatIsNotListedMayHaveBeenTheListedOne() {
        Sketch day = verified(
                List.of(inForce(FOUR, "40 lb/rev"), inForce(TWO, "20 lb/rev")),
                verification(0, FOUR, net(420), 1050, "4.4 lb/rev"),
                verification(15, TWO, net(420), 2100, "20 lb/rev"));

        assertThat(day.unlisted()).isEqualTo(1);
        assertThat(tried(day))
                .containsExactly(
                        "value in force not as listed (40 lb/rev) | 1 | 0: held 40 lb, of values 40 lb and 20 lb,"
                                + " 0 unlisted or of values 20 lb and 4.4 lb, 0 unlisted");
    }

    @Test
    void onlyCatchesWithTheWrongValueAreMadeWithTheListedOne() {
        Sketch day = verified(
                List.of(inForce(FOUR, "40 lb/rev")),
                verification(0, FOUR, net(420), 1050, "44 lb/rev"),
                verification(15, FOUR, net(420), 1050, "40 lb/rev"));

        assertThat(tried(day))
                .containsExactly(
                        "value in force not as listed (40 lb/rev) | 1 | 0: held 40 lb, of values 40 lb, 0 unlisted or"
                                + " of values 44 lb, 0 unlisted");
    }
}
