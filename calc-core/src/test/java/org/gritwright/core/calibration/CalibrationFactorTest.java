package org.gritwright.core.calibration;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.Samples.assertRefused;
import static org.gritwright.core.Samples.foreign;
import static org.gritwright.core.Samples.pounds;

import javax.measure.Quantity;
import org.gritwright.core.Samples;
import org.gritwright.core.metering.NoSensor;
import org.gritwright.core.observation.CalibrationPoint;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

@Tag("locale")
class CalibrationFactorTest {
    private static final CalibrationPoint UNSENSED = Samples.augerPoint(NoSensor.onDriveShaft());

    @ParameterizedTest
    @CsvSource({
        "5.25 lb/rev, MASS_PER_REVOLUTION",
        "0.0525 lb/pulse, MASS_PER_PULSE",
        "0.19 rev/lb, REVOLUTIONS_PER_MASS",
        "19 pulse/lb, PULSES_PER_MASS"
    })
    void theUnitSaysTheForm(String text, FactorForm form) {
        CalibrationFactor factor = CalibrationFactor.parse(text);

        assertThat(factor.form()).isEqualTo(form);
        assertThat(factor.value()).isEqualTo(Amounts.parseAny(text));
        assertThat(factor).hasToString(text);
    }

    @ParameterizedTest
    @ValueSource(strings = {"5 lb/rev", "0.05 lb/pulse", "0.2 rev/lb", "20 pulse/lb"})
    void allFormsSayTheSameMassPerRevolution(String text) {
        // with 100 pulses a revolution
        assertThat(CalibrationFactor.parse(text).kilogramsPerRevolution(Samples.AUGER_POINT))
                .isCloseTo(5 * 0.45359237, within(1e-15));
    }

    @Test
    void ofGrainsTheDriveAloneSaysTheMassPerRevolution() {
        // with 100 pulses a revolution
        assertThat(CalibrationFactor.parse("0.05 lb/pulse").kilogramsPerRevolution(Samples.SENSOR))
                .isCloseTo(5 * 0.45359237, within(1e-15));
        assertThat(CalibrationFactor.parse("5 lb/rev").kilogramsPerRevolution(NoSensor.onDriveShaft()))
                .isCloseTo(5 * 0.45359237, within(1e-15));
    }

    @Test
    void anotherDischargeKeepsFormAndUnit() {
        CalibrationFactor factor = CalibrationFactor.parse("20 pulse/lb");

        // Twice the mass per revolution is half the pulses per mass.
        assertThat(factor.withDischarge(10 * 0.45359237, Samples.AUGER_POINT))
                .isEqualTo(CalibrationFactor.parse("10 pulse/lb"));
    }

    @Test
    void roundsToTheDisplaysStep() {
        assertThat(CalibrationFactor.parse("27.23954 lb/rev")
                        .roundedTo(Amounts.of(0.01, SpreadingUnits.POUND_PER_REVOLUTION)))
                .isEqualTo(CalibrationFactor.parse("27.24 lb/rev"));
    }

    @Test
    void isEqualWhenValueAndUnitAre() {
        assertThat(CalibrationFactor.parse("5 lb/rev"))
                .isEqualTo(CalibrationFactor.parse("5.0 lb/rev"))
                .hasSameHashCodeAs(CalibrationFactor.parse("5.0 lb/rev"))
                .isNotEqualTo(CalibrationFactor.parse("6 lb/rev"))
                .isNotEqualTo(CalibrationFactor.parse("5 kg/rev"))
                .isNotEqualTo(Amounts.parseAny("5 lb/rev"));
    }

    @Test
    void formsByPulseNeedASensor() {
        assertThat(CalibrationFactor.parse("5 lb/rev").kilogramsPerRevolution(UNSENSED))
                .isCloseTo(5 * 0.45359237, within(1e-15));
        assertRefused(
                "calibration must be by revolution, as the drive has no pulse sensor: in pulse/lb",
                () -> CalibrationFactor.parse("20 pulse/lb").kilogramsPerRevolution(UNSENSED));
        assertRefused(
                "calibration must be by revolution, as the drive has no pulse sensor: in lb/pulse",
                () -> CalibrationFactor.ofDischarge(2, UNSENSED, SpreadingUnits.POUND_PER_PULSE));
    }

    @Test
    void refusesWhatIsNoCalibration() {
        assertRefused(
                "calibration must be a mass or volume per revolution or pulse, or revolutions or pulses per mass or volume: 5 lb",
                () -> CalibrationFactor.of(pounds(5)));
        assertRefused("calibration must be greater than 0: 0 lb/rev", () -> CalibrationFactor.parse("0 lb/rev"));
        assertRefused("calibration must be greater than 0: -1 rev/lb", () -> CalibrationFactor.parse("-1 rev/lb"));
        assertRefused(
                "calibration must be finite: NaN",
                () -> CalibrationFactor.of(foreign(Double.NaN, SpreadingUnits.POUND_PER_REVOLUTION)));
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, -1, Double.NaN, Double.POSITIVE_INFINITY})
    void refusesADischargeThatIsNone(double discharge) {
        assertRefused(
                "discharge per revolution must be finite and greater than 0: " + discharge + " kg/rev",
                () -> CalibrationFactor.ofDischarge(
                        discharge, Samples.AUGER_POINT, SpreadingUnits.POUND_PER_REVOLUTION));
    }

    @Test
    void refusesADischargeBeyondAllNumbers() {
        assertRefused(
                "discharge per revolution must be finite: Infinity",
                () -> CalibrationFactor.parse("1e-320 rev/kg").kilogramsPerRevolution(Samples.AUGER_POINT));
    }

    @Test
    void refusesAStepThatIsInAnotherUnitOrLeavesNothing() {
        CalibrationFactor factor = CalibrationFactor.parse("27.24 lb/rev");
        Quantity<?> inKilograms = Amounts.of(0.01, SpreadingUnits.KILOGRAM_PER_REVOLUTION);

        assertRefused(
                "display resolution must be greater than 0 and in the unit of 27.24 lb/rev: 0.01 kg/rev",
                () -> factor.roundedTo(inKilograms));
        assertRefused(
                "calibration must be greater than 0: 0 lb/rev",
                () -> factor.roundedTo(Amounts.of(60, SpreadingUnits.POUND_PER_REVOLUTION)));
    }
}
