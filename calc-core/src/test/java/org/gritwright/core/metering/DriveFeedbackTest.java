package org.gritwright.core.metering;

import static org.assertj.core.api.Assertions.assertThat;
import static org.gritwright.core.Samples.assertRefused;
import static org.gritwright.core.Samples.pounds;
import static org.gritwright.core.Samples.wrongKind;

import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.junit.jupiter.api.Test;

class DriveFeedbackTest {
    @Test
    void theDriveShaftItselfHasTheGearRatioOne() {
        assertThat(ShaftSensor.of(Amounts.of(90, SpreadingUnits.PULSE_PER_REVOLUTION))
                        .gearRatio())
                .isEqualTo(Amounts.of(1, SpreadingUnits.ONE));
        assertThat(NoSensor.onDriveShaft().gearRatio()).isEqualTo(Amounts.of(1, SpreadingUnits.ONE));
    }

    @Test
    void refusesWhatNoShaftDoes() {
        assertRefused(
                "pulses per revolution must be greater than 0: 0 pulse/rev",
                () -> ShaftSensor.of(Amounts.of(0, SpreadingUnits.PULSE_PER_REVOLUTION)));
        assertRefused(
                "gear ratio must be greater than 0: -1",
                () -> new ShaftSensor(
                        Amounts.of(90, SpreadingUnits.PULSE_PER_REVOLUTION), Amounts.of(-1, SpreadingUnits.ONE)));
        assertRefused("gear ratio must be greater than 0: 0", () -> new NoSensor(Amounts.of(0, SpreadingUnits.ONE)));
        assertRefused("gear ratio must be a finite ratio: 1 lb", () -> new NoSensor(wrongKind(pounds(1))));
    }
}
