package org.gritwright.core.curve;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.gritwright.core.Samples.CHAIN;
import static org.gritwright.core.Samples.SALT;
import static org.gritwright.core.Samples.assertRefused;
import static org.gritwright.core.Samples.chainWith;
import static org.gritwright.core.Samples.codes;
import static org.gritwright.core.Samples.inches;
import static org.gritwright.core.Samples.only;
import static org.gritwright.core.Samples.pounds;
import static org.gritwright.core.Samples.revolutionsByEye;
import static org.gritwright.core.Samples.wrongKind;
import static org.gritwright.core.curve.DischargeCurveSamples.DEAD_OPENING_EXAMPLE;
import static org.gritwright.core.curve.DischargeCurveSamples.MARKED;
import static org.gritwright.core.curve.DischargeCurveSamples.at;
import static org.gritwright.core.curve.DischargeCurveSamples.fit;
import static org.gritwright.core.curve.DischargeCurveSamples.mark;
import static org.gritwright.core.curve.DischargeCurveSamples.millimetres;

import java.util.List;
import java.util.Optional;
import javax.measure.Quantity;
import org.gritwright.core.Samples;
import org.gritwright.core.calibration.CalibrationCatch;
import org.gritwright.core.calibration.CalibrationFactor;
import org.gritwright.core.calibration.CalibrationInForce;
import org.gritwright.core.finding.Finding;
import org.gritwright.core.finding.FindingCode;
import org.gritwright.core.metering.NoSensor;
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

        for (Quantity<?> inside : List.of(inches(2), inches(3), inches(4), millimetres(50.8), millimetres(101.6))) {
            assertThat(curve.predict(inside).findings()).isEmpty();
            assertThat(curve.predict(inside).opening()).isEqualTo(inside);
        }
    }

    @ParameterizedTest
    @EnumSource
    void outsideTheCaughtOpeningsItIsGeometryAlone(CurveModel model) {
        DischargeCurve curve = fit(model, DEAD_OPENING_EXAMPLE);

        for (Quantity<?> outside : List.of(inches(1.99), inches(4.01), inches(1), inches(8), millimetres(50.7))) {
            Finding finding =
                    only(FindingCode.GEOMETRY_ALONE, curve.predict(outside).findings());
            assertThat(finding.numbers())
                    .containsEntry("opening", outside)
                    .containsEntry("lowest", inches(2))
                    .containsEntry("highest", inches(4));
        }
    }

    @Test
    void fromOneOpeningEveryOtherIsGeometryAlone() {
        DischargeCurve curve = fit(CurveModel.PROPORTIONAL, at(4, 58));

        assertThat(codes(curve.predict(inches(3)).findings())).containsExactly(FindingCode.GEOMETRY_ALONE);
        assertThat(curve.predict(inches(4)).findings()).isEmpty();
    }

    @Test
    void refusesAnOpeningBeyondTheGate() {
        assertRefused("gate opening must be within 0 m to 1 m: 50 in", () -> CURVE.predict(inches(50)));
        assertRefused(
                "gate opening must be within 1 to 5: 5.5",
                () -> DischargeCurve.fit(MARKED, SALT, List.of(at(mark(1), 16)), CurveModel.PROPORTIONAL)
                        .predict(mark(5.5)));
    }

    @Test
    void refusesAClosedGate() {
        assertRefused(
                "gate opening must be one at which the fitted curve, with a dead opening of 0.375 in, discharges: 0 in",
                () -> CURVE.predict(inches(0)));
    }

    @Test
    void refusesAnOpeningAtWhichByTheCurveNothingComes() {
        for (Quantity<?> tooSmall : List.of(inches(0.3749), inches(0.2), millimetres(5))) {
            assertThatExceptionOfType(InvalidInputException.class)
                    .isThrownBy(() -> CURVE.predict(tooSmall))
                    .withMessageStartingWith(
                            "gate opening must be one at which the fitted curve, with a dead opening of 0.37")
                    .withMessageEndingWith(" in, discharges: " + Amounts.format(tooSmall));
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
        assertThatExceptionOfType(InvalidInputException.class)
                .isThrownBy(() -> CURVE.predict(mark(3)))
                .withMessageContaining("gate opening");
        assertThatExceptionOfType(InvalidInputException.class)
                .isThrownBy(() -> CURVE.predict(wrongKind(pounds(3))))
                .withMessageContaining("gate opening");
    }

    @Test
    void goesIntoADisplayRoundedToItsStep() {
        CalibrationInForce entered = CURVE.entered(inches(3), Amounts.of(0.1, SpreadingUnits.POUND_PER_REVOLUTION));

        assertThat(entered.factor()).isEqualTo(CalibrationFactor.parse("42 lb/rev"));
        assertThat(entered.opening()).isEqualTo(Optional.of(inches(3)));
        assertThat(entered.displayStep()).contains(Amounts.of(0.1, SpreadingUnits.POUND_PER_REVOLUTION));
        assertThat(entered.spreader()).isEqualTo(CHAIN);
        assertThat(entered.material()).isEqualTo(SALT);
        // 100 pulses per revolution: 100/42 pulses per pound.
        assertThat(CURVE.entered(inches(3), Amounts.of(0.01, SpreadingUnits.PULSE_PER_POUND))
                        .factor())
                .isEqualTo(CalibrationFactor.parse("2.38 pulse/lb"));
        assertThat(CURVE.entered(inches(1), Amounts.of(0.1, SpreadingUnits.POUND_PER_REVOLUTION))
                        .factor())
                .isEqualTo(CalibrationFactor.parse("10 lb/rev"));
    }

    @Test
    void whatCantBePredictedOrShownCantBeEntered() {
        assertThatExceptionOfType(InvalidInputException.class)
                .isThrownBy(() -> CURVE.entered(inches(0.2), Amounts.of(0.1, SpreadingUnits.POUND_PER_REVOLUTION)));
        DischargeCurve withoutSensor = DischargeCurve.fit(
                chainWith(NoSensor.onDriveShaft()),
                SALT,
                List.of(CalibrationCatch.at(inches(4), Samples.caught(580), revolutionsByEye(10))),
                CurveModel.PROPORTIONAL);
        assertRefused(
                "calibration must be by revolution, as the drive has no pulse sensor: in pulse/lb",
                () -> withoutSensor.entered(inches(4), Amounts.of(0.01, SpreadingUnits.PULSE_PER_POUND)));
        assertThat(withoutSensor
                        .entered(inches(2), Amounts.of(0.1, SpreadingUnits.POUND_PER_REVOLUTION))
                        .factor())
                .isEqualTo(CalibrationFactor.parse("29 lb/rev"));
    }
}
