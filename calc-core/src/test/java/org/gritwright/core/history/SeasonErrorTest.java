package org.gritwright.core.history;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.Samples.assertRefused;
import static org.gritwright.core.history.Happenings.THREE;
import static org.gritwright.core.history.Happenings.TRUCK;
import static org.gritwright.core.history.Happenings.TWO;
import static org.gritwright.core.history.Happenings.calibrated;
import static org.gritwright.core.history.Happenings.changed;
import static org.gritwright.core.history.Happenings.day;
import static org.gritwright.core.history.Happenings.entered;
import static org.gritwright.core.history.Happenings.history;
import static org.gritwright.core.history.Happenings.value;
import static org.gritwright.core.history.Happenings.verified;

import java.time.LocalDate;
import java.util.List;
import javax.measure.quantity.Dimensionless;
import org.gritwright.core.calibration.Change;
import org.gritwright.core.telemetry.SharedError;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.Amounts;
import org.junit.jupiter.api.Test;

class SeasonErrorTest {
    private static final String SALT = TWO.material().name();
    private static final LocalDate FROM = LocalDate.of(2026, 11, 1);
    private static final LocalDate TO = LocalDate.of(2027, 3, 31);

    private static SeasonError of(Event... events) {
        return SeasonError.of(history(events), TRUCK, SALT, FROM, TO);
    }

    private static double percent(SeasonError error) {
        return 100 * Amounts.si(Dimensionless.class, error.error().orElseThrow().value());
    }

    private static double uncertainty(SeasonError error) {
        Measured<Dimensionless> measured = error.error().orElseThrow();
        return 100
                * Amounts.si(Dimensionless.class, measured.standardUncertainty().orElseThrow());
    }

    private static double own(double percent) {
        return Math.hypot(0.6, 0.2) * (1 + percent / 100);
    }

    @Test
    void itIsTheMeanAndAsUncertainAsTheDistance() {
        SeasonError error = of(
                entered("1", day("2026-10-19"), value(TWO, 25)),
                verified("2", day("2026-10-20"), value(TWO, 25), 0.4),
                verified("3", day("2026-12-01"), value(TWO, 25), 1.0),
                verified("4", day("2027-02-01"), value(TWO, 25), 2.2));

        assertThat(percent(error)).isCloseTo(1.2, within(1e-9));
        // GUM 4.3.7: half of 1.8 %, divided by √3.
        assertThat(uncertainty(error)).isCloseTo(Math.hypot(own(2.2), 0.9 / Math.sqrt(3)), within(1e-9));
        assertThat(error.verifications()).isEqualTo(3);
        assertThat(error.remarks()).isEmpty();
        assertThat(error.shared()).extracting(SharedError::id).containsExactly("scale S-1");
    }

    @Test
    void whatWasFoundBeforeOrAfterDoesNotCount() {
        SeasonError error = of(
                entered("1", day("2026-10-01"), value(TWO, 25)),
                verified("2", day("2026-10-02"), value(TWO, 25), 3.5),
                calibrated("3", day("2026-10-19"), TWO, 24.2),
                entered("4", day("2026-10-19"), value(TWO, 24.2)),
                verified("5", day("2026-10-20"), value(TWO, 24.2), 0.2),
                verified("6", day("2027-04-20"), value(TWO, 24.2), 4.9));

        assertThat(percent(error)).isCloseTo(0.2, within(1e-9));
        assertThat(error.verifications()).isEqualTo(1);
    }

    @Test
    void anErrorThatChangedIsSaid() {
        SeasonError error = of(
                entered("1", day("2026-10-19"), value(TWO, 25)),
                verified("2", day("2026-10-20"), value(TWO, 25), 0),
                verified("3", day("2027-01-16"), value(TWO, 25), -6));

        assertThat(percent(error)).isCloseTo(-3, within(1e-9));
        assertThat(uncertainty(error)).isGreaterThan(1.8);
        assertThat(error.remarks())
                .singleElement()
                .asString()
                .startsWith("Its error wasn't the same all the time: from -6 % to 0 %.");
    }

    @Test
    void aChangeThatNobodyCheckedWidensItByItsShareOfTheTime() {
        SeasonError error = of(
                entered("1", day("2026-10-19"), value(TWO, 25)),
                verified("2", day("2026-10-20"), value(TWO, 25), 0),
                changed("3", day("2027-03-02"), Change.Part.HYDRAULIC));

        // 30 of 151 days.
        assertThat(uncertainty(error)).isCloseTo(Math.hypot(own(0), 10 * 30 / 151.0), within(0.001));
        assertThat(error.remarks()).singleElement().asString().contains("on 2027-03-02, and nobody checked since");
    }

    @Test
    void aChangeIsUnknownUntilTheNextVerification() {
        SeasonError error = of(
                entered("1", day("2026-10-19"), value(TWO, 25)),
                verified("2", day("2026-10-20"), value(TWO, 25), 0),
                changed("3", day("2026-12-01"), Change.Part.CONVEYOR),
                calibrated("4", day("2026-12-31"), TWO, 27),
                entered("5", day("2026-12-31"), value(TWO, 27)),
                verified("6", day("2026-12-31"), value(TWO, 27), 0));

        assertThat(uncertainty(error)).isCloseTo(Math.hypot(own(0), 10 * 30 / 151.0), within(0.001));
        assertThat(error.remarks()).singleElement().asString().contains("not checked before 2026-12-31");
    }

    @Test
    void tiresDontChangeTheMass() {
        SeasonError error = of(
                entered("1", day("2026-10-19"), value(TWO, 25)),
                verified("2", day("2026-10-20"), value(TWO, 25), 0),
                changed("3", day("2026-12-01"), Change.Part.TIRE));

        assertThat(error.remarks()).isEmpty();
    }

    @Test
    void aLostSlotIsUnknownFromThenOn() {
        SeasonError error = of(
                entered("1", day("2026-10-19"), value(TWO, 25)),
                verified("2", day("2026-10-20"), value(TWO, 25), 0),
                Happenings.event("3", day("2027-03-02"), new What.SetBack()));

        assertThat(uncertainty(error)).isGreaterThan(1.9);
        assertThat(error.remarks()).singleElement().asString().contains("Controller reset or replaced on 2027-03-02");
    }

    @Test
    void aCalibrationAloneIsSaidToBeOne() {
        SeasonError error =
                of(calibrated("1", day("2026-10-19"), TWO, 25), entered("2", day("2026-10-19"), value(TWO, 25.2)));

        assertThat(percent(error)).isCloseTo(0.8, within(1e-9));
        assertThat(error.verifications()).isZero();
        assertThat(error.remarks()).containsExactly("It was calibrated and not verified.");
    }

    @Test
    void whatNothingIsKnownOfHasNoError() {
        assertThat(of().error()).isEmpty();
        assertThat(of().remarks()).containsExactly("No verification or calibration of it with " + SALT + " is known.");
        SeasonError ofAnother =
                SeasonError.of(history(verified("2", day("2026-12-01"), value(TWO, 25), 1)), TRUCK, "sand", FROM, TO);
        assertThat(ofAnother.error()).isEmpty();
        assertThat(ofAnother.remarks())
                .containsExactly("No verification or calibration of it with sand is known; its records are of " + SALT
                        + ": is that the same?");
    }

    @Test
    void twoPointsOfOneMaterialAreOneError() {
        SeasonError error = of(
                verified("1", day("2026-12-01"), value(TWO, 25), 1),
                verified("2", day("2026-12-01"), value(THREE, 37), 2));

        assertThat(percent(error)).isCloseTo(1.5, within(1e-9));
        assertThat(List.of(error.verifications())).containsExactly(2);
    }

    @Test
    void aTimeThatEndsBeforeItBeginsIsRefused() {
        assertRefused(
                "last day must be not before the first, 2027-03-31: 2026-11-01",
                () -> SeasonError.of(history(), TRUCK, SALT, TO, FROM));
    }
}
