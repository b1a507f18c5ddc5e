package org.gritwright.core.curve;

import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.assertThatNullPointerException;
import static org.gritwright.core.Samples.AUGER;
import static org.gritwright.core.Samples.CHAIN;
import static org.gritwright.core.Samples.SALT;
import static org.gritwright.core.Samples.SENSOR;
import static org.gritwright.core.Samples.assertRefused;
import static org.gritwright.core.Samples.augerCatch;
import static org.gritwright.core.Samples.augerWith;
import static org.gritwright.core.Samples.caught;
import static org.gritwright.core.Samples.chainWith;
import static org.gritwright.core.Samples.inches;
import static org.gritwright.core.Samples.pulses;
import static org.gritwright.core.curve.DischargeCurveSamples.at;
import static org.gritwright.core.curve.DischargeCurveSamples.mark;

import java.util.List;
import java.util.Map;
import org.gritwright.core.calibration.CalibrationCatch;
import org.gritwright.core.metering.FixedGate;
import org.gritwright.core.metering.Gate;
import org.gritwright.core.metering.NoSensor;
import org.gritwright.core.metering.Spreader;
import org.gritwright.units.InvalidInputException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class DischargeCurveErrorsTest {
    private static void assertBothRefuse(String message, Spreader spreader, List<CalibrationCatch> catches) {
        for (CurveModel model : CurveModel.values()) {
            assertRefused(message, () -> DischargeCurve.fit(spreader, SALT, catches, model));
            assertRefused(message, () -> DischargeCurve.chosenByTest(spreader, SALT, catches, model));
        }
    }

    @Test
    void refusesNoCatch() {
        assertBothRefuse("calibration catches must be one or more: none", CHAIN, List.of());
    }

    @Test
    void refusesAConveyorThatNoGateMeters() {
        assertBothRefuse(
                "spreader must be one with a conveyor that an adjustable gate meters: auger, version 1 with no-gate,"
                        + " version 1",
                AUGER,
                List.of(augerCatch(118.5, 2000)));
        // A gate that stands there and meters nothing.
        assertBothRefuse(
                "spreader must be one with a conveyor that an adjustable gate meters: auger, version 1 with"
                        + " sliding-gate, version 1",
                new Spreader(augerWith(SENSOR).conveyor(), CHAIN.gate(), SENSOR),
                List.of(at(4, 58)));
    }

    @Test
    void refusesAGateThatCantBeSet() {
        Spreader fixed = new Spreader(
                CHAIN.conveyor(), Gate.of(new FixedGate(), Map.of("width", inches(24), "height", inches(4))), SENSOR);

        assertBothRefuse(
                "spreader must be one with a conveyor that an adjustable gate meters: drag-chain, version 1 with"
                        + " fixed-opening, version 1",
                fixed,
                List.of(CalibrationCatch.ungated(caught(580), pulses(1000))));
    }

    @Test
    void refusesOpeningsThatAreMissingClosedBeyondTheGateOrOfAnotherKind() {
        assertBothRefuse(
                "gate opening must be given for gate type sliding-gate, version 1: nothing",
                CHAIN,
                List.of(at(4, 58), CalibrationCatch.ungated(caught(580), pulses(1000))));
        assertBothRefuse(
                "gate opening must be one at which the conveyor sweeps a volume: 0 in",
                CHAIN,
                List.of(at(4, 58), at(0, 1)));
        assertBothRefuse("gate opening must be within 0 m to 1 m: 50 in", CHAIN, List.of(at(4, 58), at(50, 400)));
        for (CurveModel model : CurveModel.values()) {
            assertThatExceptionOfType(InvalidInputException.class)
                    .isThrownBy(() -> DischargeCurve.fit(CHAIN, SALT, List.of(at(4, 58), at(mark(3), 40)), model))
                    .withMessageContaining("gate opening");
        }
    }

    @Test
    void refusesPulsesOfADriveWithoutSensor() {
        assertBothRefuse(
                "count must be revolutions or shaft speed × time, as the drive has no pulse sensor: 1000 pulse",
                chainWith(NoSensor.onDriveShaft()),
                List.of(at(4, 58)));
    }

    @Test
    void refusesADeadOpeningFromOneOpening() {
        assertThatExceptionOfType(InvalidInputException.class)
                .isThrownBy(() -> DischargeCurveSamples.fit(CurveModel.DEAD_OPENING, at(4, 58), at(4, 57)))
                .withMessageStartingWith("observations must be at two different x or more: all at ");
        // Untested, since there is no other opening to test by.
        assertThatExceptionOfType(InvalidInputException.class)
                .isThrownBy(() -> DischargeCurveSamples.chosen(List.of(at(4, 58), at(4, 57))));
    }

    @Test
    void refusesADeadOpeningOfADischargeThatDoesNotRise() {
        for (List<CalibrationCatch> falling :
                List.of(List.of(at(2, 58), at(4, 57)), List.of(at(2, 58), at(4, 58)), List.of(at(2, 58), at(3, 40)))) {
            assertThatExceptionOfType(InvalidInputException.class)
                    .isThrownBy(() -> DischargeCurveSamples.fit(CurveModel.DEAD_OPENING, falling))
                    .withMessageStartingWith("observations must be rising as a shift of the shape between ")
                    .withMessageEndingWith("none that fits best");
        }
    }

    @ParameterizedTest
    @EnumSource
    void refusesNoMaterial(CurveModel model) {
        assertThatNullPointerException()
                .isThrownBy(() -> DischargeCurve.fit(CHAIN, null, List.of(at(4, 58), at(5, 75)), model))
                .withMessage("material");
    }
}
