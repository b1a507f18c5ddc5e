package org.gritwright.core.calibration;

import static org.gritwright.core.Samples.AUGER;
import static org.gritwright.core.Samples.AUGER_POINT;
import static org.gritwright.core.Samples.SALT;
import static org.gritwright.core.Samples.assertRefused;
import static org.gritwright.core.Samples.augerCatch;
import static org.gritwright.core.Samples.augerPoint;
import static org.gritwright.core.Samples.catchAt;
import static org.gritwright.core.Samples.caught;
import static org.gritwright.core.Samples.chainAt;
import static org.gritwright.core.Samples.observed;
import static org.gritwright.core.Samples.pulses;
import static org.gritwright.core.Samples.revolutionsByEye;

import java.util.List;
import org.gritwright.core.metering.NoSensor;
import org.gritwright.core.observation.CalibrationPoint;
import org.gritwright.core.observation.Material;
import org.gritwright.core.spi.Setting;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.junit.jupiter.api.Test;

class CalibrationErrorsTest {
    private static final CalibrationCatch AT_FOUR = catchAt(chainAt(4), caught(1252), pulses(2000));

    @Test
    void refusesNoCatch() {
        assertRefused("calibration catches must be one or more: none", () -> Calibration.from(List.of()));
    }

    @Test
    void refusesCatchesAtDifferentPoints() {
        assertRefused(
                "calibration point of a catch must be the same in all catches of one calibration, salt at 4 in: salt at"
                        + " 5 in",
                () -> Calibration.from(List.of(AT_FOUR, catchAt(chainAt(5), caught(1252), pulses(2000)))));
        assertRefused(
                "calibration point of a catch must be the same in all catches of one calibration, salt at 4 in: salt",
                () -> Calibration.from(List.of(AT_FOUR, augerCatch(1252, 2000))));
        CalibrationPoint ofSand =
                CalibrationPoint.of(Material.of("sand", SALT.looseBulkDensity()), AUGER, Setting.none());
        assertRefused(
                "calibration point of a catch must be the same in all catches of one calibration, salt: sand",
                () -> Calibration.from(List.of(augerCatch(118.5, 2000), catchAt(ofSand, caught(118.5), pulses(2000)))));
        assertRefused(
                "calibration point of a catch must be the same in all catches of one calibration, salt: another"
                        + " metering",
                () -> Calibration.from(List.of(
                        augerCatch(118.5, 2000),
                        catchAt(augerPoint(NoSensor.onDriveShaft()), caught(118.5), revolutionsByEye(20)))));
    }

    @Test
    void refusesPulsesOfADriveWithoutSensor() {
        CalibrationPoint watched = augerPoint(NoSensor.onDriveShaft());

        assertRefused(
                "count must be revolutions or shaft speed × time, as the drive has no pulse sensor: 2000 pulse",
                () -> catchAt(watched, caught(118.5), pulses(2000)));
    }

    @Test
    void refusesACatchForWhichNothingWasCounted() {
        assertRefused(
                "count of a calibration catch must be given: nothing",
                () -> CalibrationCatch.of(observed(AUGER_POINT, caught(118.5))));
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
