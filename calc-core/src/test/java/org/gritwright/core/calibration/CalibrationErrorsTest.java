package org.gritwright.core.calibration;

import static org.gritwright.core.Samples.AUGER;
import static org.gritwright.core.Samples.CHAIN;
import static org.gritwright.core.Samples.SALT;
import static org.gritwright.core.Samples.assertRefused;
import static org.gritwright.core.Samples.augerCatch;
import static org.gritwright.core.Samples.augerWith;
import static org.gritwright.core.Samples.caught;
import static org.gritwright.core.Samples.foreign;
import static org.gritwright.core.Samples.inches;
import static org.gritwright.core.Samples.pounds;
import static org.gritwright.core.Samples.pulses;
import static org.gritwright.core.Samples.wrongKind;

import java.util.List;
import org.gritwright.core.metering.NoSensor;
import org.gritwright.core.observation.Material;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.junit.jupiter.api.Test;

class CalibrationErrorsTest {
    private static final CalibrationCatch AT_FOUR = CalibrationCatch.at(inches(4), caught(1252), pulses(2000));

    @Test
    void refusesNoCatch() {
        assertRefused("calibration catches must be one or more: none", () -> Calibration.from(AUGER, SALT, List.of()));
    }

    @Test
    void refusesCatchesAtDifferentOpenings() {
        assertRefused(
                "gate opening of a catch must be the same in all catches of one calibration, 4 in: 5 in",
                () -> Calibration.from(
                        CHAIN, SALT, List.of(AT_FOUR, CalibrationCatch.at(inches(5), caught(1252), pulses(2000)))));
        assertRefused(
                "gate opening of a catch must be the same in all catches of one calibration, 4 in: none",
                () -> Calibration.from(CHAIN, SALT, List.of(AT_FOUR, augerCatch(1252, 2000))));
    }

    @Test
    void refusesAMissingOpening() {
        assertRefused(
                "gate opening must be given for gate type sliding-gate, version 1: nothing",
                () -> Calibration.from(CHAIN, SALT, List.of(augerCatch(1252, 2000))));
    }

    @Test
    void refusesAnOpeningWhereThereIsNoGate() {
        assertRefused(
                "gate opening must be left out for gate type no-gate, version 1: 4 in",
                () -> Calibration.from(AUGER, SALT, List.of(AT_FOUR)));
    }

    @Test
    void refusesAnOpeningBeyondTheGate() {
        assertRefused(
                "gate opening must be within 0 m to 1 m: 250 in",
                () -> Calibration.from(
                        CHAIN, SALT, List.of(CalibrationCatch.at(inches(250), caught(1252), pulses(2000)))));
    }

    @Test
    void refusesPulsesOfADriveWithoutSensor() {
        assertRefused(
                "count must be revolutions or shaft speed × time, as the drive has no pulse sensor: 2000 pulse",
                () -> Calibration.from(augerWith(NoSensor.onDriveShaft()), SALT, List.of(augerCatch(118.5, 2000))));
    }

    @Test
    void refusesACatchAtAnOpeningThatIsNone() {
        assertRefused(
                "gate opening must be 0 or more: -4 in",
                () -> CalibrationCatch.at(inches(-4), caught(1252), pulses(2000)));
        assertRefused(
                "gate opening must be a length, or a bare number for a setting: 4 lb",
                () -> CalibrationCatch.at(wrongKind(pounds(4)), caught(1252), pulses(2000)));
        assertRefused(
                "gate opening must be a finite length: NaN in \"in\"",
                () -> CalibrationCatch.at(foreign(Double.NaN, SpreadingUnits.INCH), caught(1252), pulses(2000)));
    }

    @Test
    void refusesAMaterialWithoutNameOrDensity() {
        assertRefused(
                "material must be a text that is not blank: \"\"",
                () -> Material.of("", Amounts.of(80, SpreadingUnits.POUND_PER_CUBIC_FOOT)));
        assertRefused(
                "loose bulk density of salt must be greater than 0: 0 lb/ft³",
                () -> Material.of("salt", Amounts.of(0, SpreadingUnits.POUND_PER_CUBIC_FOOT)));
    }
}
