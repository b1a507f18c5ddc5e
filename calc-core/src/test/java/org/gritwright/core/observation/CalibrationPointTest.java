package org.gritwright.core.observation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatNullPointerException;
import static org.gritwright.core.Samples.AUGER;
import static org.gritwright.core.Samples.AUGER_POINT;
import static org.gritwright.core.Samples.CHAIN;
import static org.gritwright.core.Samples.SALT;
import static org.gritwright.core.Samples.assertRefused;
import static org.gritwright.core.Samples.augerPoint;
import static org.gritwright.core.Samples.chainAt;
import static org.gritwright.core.Samples.chainWith;
import static org.gritwright.core.Samples.foreign;
import static org.gritwright.core.Samples.height;
import static org.gritwright.core.Samples.pounds;
import static org.gritwright.core.Samples.wrongKind;

import javax.measure.Quantity;
import org.gritwright.core.LiquidSamples;
import org.gritwright.core.Samples;
import org.gritwright.core.metering.NoSensor;
import org.gritwright.core.spi.Setting;
import org.gritwright.units.Amounts;
import org.gritwright.units.Rounded;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.quantity.DischargePerRevolution;
import org.junit.jupiter.api.Test;

class CalibrationPointTest {
    private static final Material SAND = Material.of("sand", Amounts.of(95, SpreadingUnits.POUND_PER_CUBIC_FOOT));

    private static CalibrationPoint chainAtMillimeters(double millimeters) {
        return chainAt(Amounts.of(millimeters, SpreadingUnits.MILLIMETER));
    }

    @Test
    void oneOpeningInTwoUnitsIsOnePoint() {
        assertThat(chainAt(2))
                .isEqualTo(chainAtMillimeters(50.8))
                .hasSameHashCodeAs(chainAtMillimeters(50.8))
                .isNotEqualTo(chainAtMillimeters(50.81));
        assertThat(chainAt(2).key()).isEqualTo(chainAtMillimeters(50.8).key());
    }

    @Test
    void aNewLotOfTheMaterialIsNoNewPoint() {
        Material newLot = Material.of("salt", Amounts.of(76, SpreadingUnits.POUND_PER_CUBIC_FOOT));

        assertThat(CalibrationPoint.of(newLot, AUGER, Setting.none())).isEqualTo(AUGER_POINT);
    }

    @Test
    void anotherMaterialMeteringOrSettingIsAnotherPoint() {
        assertThat(AUGER_POINT)
                .isNotEqualTo(CalibrationPoint.of(SAND, AUGER, Setting.none()))
                .isNotEqualTo(augerPoint(NoSensor.onDriveShaft()))
                .isNotEqualTo(chainAt(2));
        assertThat(chainAt(2)).isNotEqualTo(chainAt(3)).doesNotHaveSameHashCodeAs(chainAt(3));
    }

    @Test
    void isSpelledAsItWasRead() {
        assertThat(chainAtMillimeters(50.8)).hasToString("salt at 50.8 mm");
        assertThat(AUGER_POINT).hasToString("salt");
    }

    @Test
    void settingsThatDifferByLessThanAHundredthAreProbablyMeantToBeOne() {
        assertThat(chainAt(2.25).isNearMiss(chainAtMillimeters(57))).isTrue();
        assertThat(chainAtMillimeters(57).isNearMiss(chainAt(2.25))).isTrue();
        assertThat(chainAtMillimeters(100).isNearMiss(chainAtMillimeters(99.1))).isTrue();
        assertThat(chainAtMillimeters(100).isNearMiss(chainAtMillimeters(99))).isFalse();
        assertThat(chainAt(2).isNearMiss(chainAt(3))).isFalse();
    }

    @Test
    void theSamePointOrOneOfAnotherMaterialOrMeteringIsNoNearMiss() {
        CalibrationPoint ofSand =
                CalibrationPoint.of(SAND, CHAIN, Setting.height(Amounts.of(57, SpreadingUnits.MILLIMETER)));
        CalibrationPoint watched = CalibrationPoint.of(SALT, chainWith(NoSensor.onDriveShaft()), height(2.24));

        assertThat(chainAt(2).isNearMiss(chainAtMillimeters(50.8))).isFalse();
        assertThat(chainAt(2.25).isNearMiss(ofSand)).isFalse();
        assertThat(chainAt(2.25).isNearMiss(watched)).isFalse();
    }

    @Test
    void refusesAMissingSetting() {
        assertRefused(
                "gate setting must be given for gate type sliding-gate, version 1: nothing",
                () -> CalibrationPoint.of(SALT, CHAIN, Setting.none()));
    }

    @Test
    void refusesASettingWhereThereIsNoGate() {
        assertRefused(
                "gate setting must be left out for gate type no-gate, version 1: 4 in",
                () -> CalibrationPoint.of(SALT, AUGER, height(4)));
    }

    @Test
    void refusesASettingBeyondTheGateOrOnAnotherScale() {
        assertRefused("gate setting must be within 0 m to 1 m: 250 in", () -> chainAt(250));
        assertRefused(
                "gate setting must be a height from 0 m to 1 m: 4",
                () -> CalibrationPoint.of(SALT, CHAIN, Setting.mark(4)));
        assertRefused(
                "gate setting must be a height from 0 m to 1 m: 4 %",
                () -> CalibrationPoint.of(SALT, CHAIN, Setting.percent(4)));
    }

    @Test
    void refusesAClosedGate() {
        assertRefused("gate setting must be one at which the conveyor sweeps a volume: 0 in", () -> chainAt(0));
    }

    @Test
    void refusesASettingThatIsNone() {
        assertRefused("gate setting must be 0 or more: -4 in", () -> chainAt(-4));
        assertRefused(
                "gate setting must be a finite length: NaN in \"in\"",
                () -> chainAt(foreign(Double.NaN, SpreadingUnits.INCH)));
        assertRefused("gate setting must be a finite length: 4 lb", () -> chainAt(wrongKind(pounds(4))));
    }

    @Test
    void materialMeteringAndSettingAreGiven() {
        assertThatNullPointerException()
                .isThrownBy(() -> CalibrationPoint.of(null, AUGER, Setting.none()))
                .withMessage("material");
        assertThatNullPointerException()
                .isThrownBy(() -> CalibrationPoint.of(SALT, null, Setting.none()))
                .withMessage("metering");
        assertThatNullPointerException()
                .isThrownBy(() -> CalibrationPoint.of(SALT, AUGER, null))
                .withMessage("setting");
    }

    /** 9.8 lb are a gallon of this brine; a pulse of a flow meter stands where a revolution does. */
    @Test
    void ofALiquidPeopleSayVolumes() {
        Quantity<DischargePerRevolution> half = Amounts.of(0.49, SpreadingUnits.POUND_PER_REVOLUTION);

        assertThat(Rounded.text(LiquidSamples.pumpPoint(Samples.SENSOR).asMetered(half), 6))
                .isEqualTo("11.55 in³/rev");
        assertThat(Rounded.text(LiquidSamples.METER_POINT.asMetered(half), 6)).isEqualTo("0.05 gal/pulse");
        assertThat(Rounded.text(LiquidSamples.METER_POINT.asCaught(Amounts.of(49, SpreadingUnits.POUND)), 6))
                .isEqualTo("5 gal");
        assertThat(Rounded.text(
                        LiquidSamples.METER_POINT.asCaught(Amounts.of(49 * 0.45359237, SpreadingUnits.KILOGRAM)), 6))
                .isEqualTo("18.9271 L");
    }

    @Test
    void ofGrainsPeopleSayMasses() {
        Quantity<DischargePerRevolution> half = Amounts.of(0.49, SpreadingUnits.POUND_PER_REVOLUTION);

        assertThat(chainAt(2).asMetered(half)).isSameAs(half);
        assertThat(chainAt(2).asCaught(Amounts.of(49, SpreadingUnits.POUND)))
                .isEqualTo(Amounts.of(49, SpreadingUnits.POUND));
    }
}
