package org.gritwright.core.observation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatNullPointerException;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.Samples.AUGER_POINT;
import static org.gritwright.core.Samples.NOON;
import static org.gritwright.core.Samples.assertRefused;
import static org.gritwright.core.Samples.augerPoint;
import static org.gritwright.core.Samples.caught;
import static org.gritwright.core.Samples.observed;
import static org.gritwright.core.Samples.pulses;
import static org.gritwright.core.Samples.revolutionsByEye;

import java.util.Optional;
import org.gritwright.core.LiquidSamples;
import org.gritwright.core.Samples;
import org.gritwright.core.finding.FindingCode;
import org.gritwright.core.metering.NoSensor;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.junit.jupiter.api.Test;

class ObservationTest {
    @Test
    void keepsWhatIsAddedOneByOne() {
        Conditions damp = Conditions.NONE.withMoisture(Amounts.of(3, SpreadingUnits.PERCENT), Moisture.Basis.WET_MASS);
        Observation all = observed(AUGER_POINT, caught(118.5))
                .counted(pulses(2000))
                .by("R. Diaz")
                .under(damp);

        assertThat(all)
                .isEqualTo(new Observation(
                        NOON, Optional.of("R. Diaz"), AUGER_POINT, caught(118.5), Optional.of(pulses(2000)), damp))
                .isEqualTo(observed(AUGER_POINT, caught(118.5))
                        .under(damp)
                        .by("R. Diaz")
                        .counted(pulses(2000)));
    }

    @Test
    void revolutionsAreThoseOfTheDriveThatWasCounted() {
        Observation counted = observed(AUGER_POINT, caught(118.5)).counted(pulses(2000));

        assertThat(counted.revolutions()).hasValue(20);
        // One pulse of 100 a revolution, within one either way: a triangle.
        assertThat(counted.uncertaintyRevolutions().orElseThrow()).isCloseTo(0.01 / Math.sqrt(6), within(1e-15));
        assertThat(observed(AUGER_POINT, caught(118.5)).revolutions()).isEmpty();
        assertThat(observed(AUGER_POINT, caught(118.5)).uncertaintyRevolutions())
                .isEmpty();
    }

    @Test
    void pulsesNeedASensor() {
        Observation watched = observed(augerPoint(NoSensor.onDriveShaft()), caught(118.5));

        assertRefused(
                "count must be revolutions or shaft speed × time, as the drive has no pulse sensor: 2000 pulse",
                () -> watched.counted(pulses(2000)));
        assertThat(watched.counted(revolutionsByEye(20)).revolutions()).hasValue(20);
    }

    @Test
    void timePointAndMassAreGiven() {
        assertThatNullPointerException()
                .isThrownBy(() -> Observation.of(AUGER_POINT, null, caught(118.5)))
                .withMessage("at");
        assertThatNullPointerException()
                .isThrownBy(() -> Observation.of(null, NOON, caught(118.5)))
                .withMessage("point");
        assertThatNullPointerException()
                .isThrownBy(() -> Observation.of(AUGER_POINT, NOON, null))
                .withMessage("caught");
    }

    @Test
    void whatIsSaidOfALiquidsMassIsAtItsStatedDensity() {
        Observation pumped = Observation.of(LiquidSamples.METER_POINT, Samples.NOON, LiquidSamples.read(5));

        assertThat(pumped.massUnit()).isEqualTo(SpreadingUnits.POUND);
        assertThat(Amounts.in(pumped.mass(), SpreadingUnits.POUND)).isCloseTo(49, within(1e-12));
        assertThat(pumped.amount(10 * 9.8 * 0.45359237).getUnit()).isEqualTo(SpreadingUnits.US_GALLON);
        assertThat(pumped.amount(10 * 9.8 * 0.45359237).getValue().doubleValue())
                .isCloseTo(10, within(1e-12));
        assertThat(pumped.roundingKilograms()).isCloseTo(0.05 / Math.sqrt(12) * 9.8 * 0.45359237, within(1e-12));
    }

    @Test
    void whatIsSaidOfGrainsIsAsTheyWereWeighed() {
        Observation weighed = Observation.of(Samples.AUGER_POINT, Samples.NOON, Samples.caught(100));

        assertThat(weighed.mass()).isEqualTo(Samples.caught(100).total());
        assertThat(weighed.amount(0.45359237).getUnit()).isEqualTo(SpreadingUnits.POUND);
    }

    @Test
    void fewPulsesOfAFlowMeterAreSaid() {
        assertThat(Samples.codes(
                        CatchFindings.ofCount(Samples.pulses(3), LiquidSamples.METER.feedback(), CatchLimits.COMMON)))
                .containsExactly(FindingCode.TOO_FEW_PULSES);
    }
}
