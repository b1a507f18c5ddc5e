package org.gritwright.core.curve;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.gritwright.core.Samples.SALT;
import static org.gritwright.core.Samples.assertRefused;
import static org.gritwright.core.Samples.catchAt;
import static org.gritwright.core.Samples.chainAt;
import static org.gritwright.core.Samples.chainWith;
import static org.gritwright.core.Samples.codes;
import static org.gritwright.core.Samples.height;
import static org.gritwright.core.Samples.inches;
import static org.gritwright.core.Samples.numbers;
import static org.gritwright.core.Samples.only;
import static org.gritwright.core.Samples.revolutionsByEye;
import static org.gritwright.core.curve.DischargeCurveSamples.DEAD_OPENING_EXAMPLE;
import static org.gritwright.core.curve.DischargeCurveSamples.at;
import static org.gritwright.core.curve.DischargeCurveSamples.atMark;
import static org.gritwright.core.curve.DischargeCurveSamples.fit;
import static org.gritwright.core.curve.DischargeCurveSamples.millimeters;

import java.util.List;
import javax.measure.Quantity;
import org.gritwright.core.Samples;
import org.gritwright.core.calibration.CalibrationFactor;
import org.gritwright.core.calibration.CalibrationInForce;
import org.gritwright.core.finding.Finding;
import org.gritwright.core.finding.FindingCode;
import org.gritwright.core.metering.NoSensor;
import org.gritwright.core.observation.CalibrationPoint;
import org.gritwright.core.spi.Setting;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.SpreadingUnits;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class DischargeCurvePredictionTest {
    private static final DischargeCurve CURVE = fit(CurveModel.DEAD_OPENING, DEAD_OPENING_EXAMPLE);

    @ParameterizedTest
    @EnumSource
    void withinTheCaughtOpeningsNothingIsToBeSaid(CurveModel model) {
        DischargeCurve curve = fit(model, DEAD_OPENING_EXAMPLE);

        for (Setting inside : List.of(
                height(2),
                height(3),
                height(4),
                Setting.height(millimeters(50.8)),
                Setting.height(millimeters(101.6)))) {
            assertThat(curve.predict(inside).findings()).isEmpty();
            assertThat(curve.predict(inside).setting()).isEqualTo(inside);
        }
    }

    @ParameterizedTest
    @EnumSource
    void outsideTheCaughtOpeningsItIsGeometryAlone(CurveModel model) {
        DischargeCurve curve = fit(model, DEAD_OPENING_EXAMPLE);

        for (Quantity<?> outside : List.of(inches(1.99), inches(4.01), inches(1), inches(8), millimeters(50.7))) {
            Finding finding = only(
                    FindingCode.GEOMETRY_ALONE,
                    curve.predict(Setting.of(outside)).findings());
            assertThat(numbers(finding))
                    .containsEntry("opening", outside)
                    .containsEntry("lowest", inches(2))
                    .containsEntry("highest", inches(4));
        }
    }

    @Test
    void fromOneOpeningEveryOtherIsGeometryAlone() {
        DischargeCurve curve = fit(CurveModel.PROPORTIONAL, at(4, 58));

        assertThat(codes(curve.predict(height(3)).findings())).containsExactly(FindingCode.GEOMETRY_ALONE);
        assertThat(curve.predict(height(4)).findings()).isEmpty();
    }

    @Test
    void refusesAnOpeningBeyondTheGate() {
        assertRefused("gate setting must be within 0 m to 1 m: 50 in", () -> CURVE.predict(height(50)));
        assertRefused(
                "gate setting must be within 1 to 5: 5.5",
                () -> DischargeCurve.fit(List.of(atMark(1, 16)), CurveModel.PROPORTIONAL)
                        .predict(Setting.mark(5.5)));
    }

    @Test
    void refusesAClosedGate() {
        assertRefused(
                "gate setting must be one at which material is discharged; the fitted curve has a dead opening of 0.375"
                        + " in: 0 in",
                () -> CURVE.predict(height(0)));
    }

    @ParameterizedTest
    @EnumSource(names = {"PROPORTIONAL", "TABLE"})
    void refusesAClosedGateByTheGeometryToo(CurveModel model) {
        DischargeCurve curve = fit(model, at(2, 32), at(4, 64));

        assertRefused("gate setting must be above the closed position: 0 in", () -> curve.predict(height(0)));
    }

    @Test
    void refusesAnOpeningAtWhichByTheCurveNothingComes() {
        for (Quantity<?> tooSmall : List.of(inches(0.3749), inches(0.2), millimeters(5))) {
            assertThatExceptionOfType(InvalidInputException.class)
                    .isThrownBy(() -> CURVE.predict(Setting.of(tooSmall)))
                    .withMessageStartingWith(
                            "gate setting must be one at which material is discharged; the fitted curve has a dead"
                                    + " opening of 0.37")
                    .withMessageEndingWith(" in: " + Amounts.format(tooSmall));
        }
        assertThat(DischargeCurveSamples.pounds(CURVE, 0.3751)).isPositive();
    }

    @Test
    void aDeadOpeningBelowZeroLetsEveryOpeningDischarge() {
        DischargeCurve curve = fit(CurveModel.DEAD_OPENING, at(2, 38), at(4, 70));

        assertThat(DischargeCurveSamples.pounds(curve, 0.001)).isBetween(6.0, 6.02);
        assertThat(DischargeCurveSamples.pounds(curve, 0)).isBetween(5.9999, 6.0001);
    }

    @Test
    void refusesAnOpeningOfAnotherKind() {
        assertRefused("gate setting must be a height from 0 m to 1 m: 3", () -> CURVE.predict(Setting.mark(3)));
        assertRefused("gate setting must be a height from 0 m to 1 m: 3 %", () -> CURVE.predict(Setting.percent(3)));
        assertRefused("gate setting must be a height from 0 m to 1 m: nothing", () -> CURVE.predict(Setting.none()));
    }

    @Test
    void goesIntoADisplayRoundedToItsStep() {
        CalibrationInForce entered = CURVE.entered(height(3), Amounts.of(0.1, SpreadingUnits.POUND_PER_REVOLUTION));

        assertThat(entered.factor()).isEqualTo(CalibrationFactor.parse("42 lb/rev"));
        assertThat(entered.point()).isEqualTo(chainAt(3));
        assertThat(entered.point().setting()).isEqualTo(height(3));
        assertThat(entered.displayStep()).contains(Amounts.of(0.1, SpreadingUnits.POUND_PER_REVOLUTION));
        // 100 pulses per revolution: 100/42 pulses per pound.
        assertThat(CURVE.entered(height(3), Amounts.of(0.01, SpreadingUnits.PULSE_PER_POUND))
                        .factor())
                .isEqualTo(CalibrationFactor.parse("2.38 pulse/lb"));
        assertThat(CURVE.entered(height(1), Amounts.of(0.1, SpreadingUnits.POUND_PER_REVOLUTION))
                        .factor())
                .isEqualTo(CalibrationFactor.parse("10 lb/rev"));
    }

    @Test
    void whatCantBePredictedOrShownCantBeEntered() {
        assertThatExceptionOfType(InvalidInputException.class)
                .isThrownBy(() -> CURVE.entered(height(0.2), Amounts.of(0.1, SpreadingUnits.POUND_PER_REVOLUTION)));
        CalibrationPoint watched = CalibrationPoint.of(SALT, chainWith(NoSensor.onDriveShaft()), height(4));
        DischargeCurve withoutSensor = DischargeCurve.fit(
                List.of(catchAt(watched, Samples.caught(580), revolutionsByEye(10))), CurveModel.PROPORTIONAL);
        assertRefused(
                "calibration must be by revolution, as the drive has no pulse sensor: in pulse/lb",
                () -> withoutSensor.entered(height(4), Amounts.of(0.01, SpreadingUnits.PULSE_PER_POUND)));
        assertThat(withoutSensor
                        .entered(height(2), Amounts.of(0.1, SpreadingUnits.POUND_PER_REVOLUTION))
                        .factor())
                .isEqualTo(CalibrationFactor.parse("29 lb/rev"));
    }
}
