package org.gritwright.core.spi;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.Samples.assertRefused;
import static org.gritwright.units.SpreadingUnits.MILLILITER_PER_REVOLUTION;
import static org.gritwright.units.SpreadingUnits.REVOLUTION_PER_MINUTE;
import static org.gritwright.units.SpreadingUnits.REVOLUTION_PER_SECOND;

import java.util.Optional;
import javax.measure.Quantity;
import org.gritwright.core.Shipped;
import org.gritwright.units.Amounts;
import org.gritwright.units.quantity.RotationalSpeed;
import org.gritwright.units.quantity.VolumePerRevolution;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

class PumpOutputTest {
    private static final Quantity<VolumePerRevolution> TEN = Amounts.of(10, MILLILITER_PER_REVOLUTION);
    private static final PumpOutput ANY_SPEED = PumpOutput.constant(TEN);
    private static final PumpOutput BETWEEN = ANY_SPEED.within(turns(60), turns(600));

    private static Quantity<RotationalSpeed> turns(double perMinute) {
        return Amounts.of(perMinute, REVOLUTION_PER_MINUTE);
    }

    @Test
    void givesItsDisplacementAtAnySpeed() {
        assertThat(ANY_SPEED.volume().cubicMetersPerRevolution(0)).isEqualTo(10e-6);
        assertThat(ANY_SPEED.volume().cubicMetersPerRevolution(1000)).isEqualTo(10e-6);
        assertThat(ANY_SPEED.lowestSpeed()).isEqualTo(turns(0));
        assertThat(ANY_SPEED.highestSpeed()).isEmpty();
    }

    @Test
    void aSpeedWithinTheLimitsIsANumber() {
        assertThat(BETWEEN.number(turns(60))).isEqualTo(1);
        assertThat(BETWEEN.number(turns(300))).isEqualTo(5);
        assertThat(BETWEEN.number(turns(600))).isEqualTo(10);
        assertThat(BETWEEN.number(2.5)).isEqualTo(2.5);
        assertThat(ANY_SPEED.number(turns(1e6))).isCloseTo(1e6 / 60, within(1e-9));
    }

    @Test
    void aHairPastTheLimitsIsTheLimit() {
        assertThat(BETWEEN.number(1 - 1e-14)).isEqualTo(1);
        assertThat(BETWEEN.number(10 + 1e-12)).isEqualTo(10);
        assertThat(BETWEEN.number(Amounts.of(10 + 1e-12, REVOLUTION_PER_SECOND)))
                .isEqualTo(10);
    }

    @Test
    @Tag("locale")
    void aSpeedOutsideTheLimitsIsRefused() {
        assertRefused(
                "shaft speed must be within 60 rev/min to 600 rev/min: 59.9 rev/min",
                () -> BETWEEN.number(turns(59.9)));
        assertRefused(
                "shaft speed must be within 60 rev/min to 600 rev/min: 601 rev/min", () -> BETWEEN.number(turns(601)));
        assertRefused("shaft speed must be within 60 rev/min to 600 rev/min: 720 rev/min", () -> BETWEEN.number(12));
        assertRefused("shaft speed must be at least 0 rev/min: -1 rev/min", () -> ANY_SPEED.number(turns(-1)));
        assertRefused("shaft speed must be finite: NaN", () -> ANY_SPEED.number(Double.NaN));
    }

    @Test
    void displacementAndLimitsAreChecked() {
        assertRefused(
                "displacement must be greater than 0: 0 mL/rev",
                () -> PumpOutput.constant(Amounts.of(0, MILLILITER_PER_REVOLUTION)));
        assertRefused(
                "displacement must be greater than 0: 0 mL/rev",
                () -> PumpOutput.of(Amounts.of(0, MILLILITER_PER_REVOLUTION), speed -> 1));
        assertRefused(
                "lowest shaft speed must be 0 or more: -1 rev/min", () -> ANY_SPEED.within(turns(-1), turns(600)));
        assertRefused(
                "highest shaft speed must be greater than 0: 0 rev/min", () -> ANY_SPEED.within(turns(0), turns(0)));
        assertRefused(
                "highest shaft speed must be at least 60 rev/min: 59 rev/min",
                () -> ANY_SPEED.within(turns(60), turns(59)));
        assertThat(ANY_SPEED.within(turns(60), turns(60)).number(1)).isEqualTo(1);
        assertRefused(
                "shaft speed must be at least 60 rev/min: 59 rev/min",
                () -> ANY_SPEED.from(turns(60)).number(turns(59)));
        assertThat(BETWEEN.from(turns(120)).highestSpeed()).isEqualTo(Optional.of(turns(600)));
        assertRefused("highest shaft speed must be at least 601 rev/min: 600 rev/min", () -> BETWEEN.from(turns(601)));
    }

    @Test
    @Tag("locale")
    void arrivesAsItWasAndPrintsAsPeopleWriteIt() {
        PumpOutput arrived = Shipped.copyOf(BETWEEN);

        assertThat(arrived.displacement()).isEqualTo(TEN);
        assertThat(arrived.lowestSpeed()).isEqualTo(turns(60));
        assertThat(arrived.highestSpeed()).isEqualTo(Optional.of(turns(600)));
        assertThat(arrived.volume().cubicMetersPerRevolution(5)).isEqualTo(10e-6);
        assertThat(Shipped.copyOf(ANY_SPEED).highestSpeed()).isEmpty();
        assertThat(arrived).hasToString("10 mL/rev from 60 rev/min to 600 rev/min");
        assertThat(ANY_SPEED).hasToString("10 mL/rev from 0 rev/min");
    }
}
