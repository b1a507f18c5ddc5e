package org.gritwright.core.curve;

import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.gritwright.core.Samples.CHAIN;
import static org.gritwright.core.Samples.SALT;
import static org.gritwright.core.Samples.SENSOR;
import static org.gritwright.core.Samples.assertRefused;
import static org.gritwright.core.Samples.augerCatch;
import static org.gritwright.core.Samples.augerWith;
import static org.gritwright.core.Samples.catchAt;
import static org.gritwright.core.Samples.caught;
import static org.gritwright.core.Samples.inches;
import static org.gritwright.core.Samples.pulses;
import static org.gritwright.core.curve.DischargeCurveSamples.at;
import static org.gritwright.core.curve.DischargeCurveSamples.atMark;
import static org.gritwright.core.curve.DischargeCurveSamples.by;

import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.gritwright.core.calibration.CalibrationCatch;
import org.gritwright.core.metering.FixedGate;
import org.gritwright.core.metering.Gate;
import org.gritwright.core.metering.Spreader;
import org.gritwright.core.observation.CalibrationPoint;
import org.gritwright.core.observation.Material;
import org.gritwright.core.spi.Setting;
import org.gritwright.units.InvalidInputException;
import org.junit.jupiter.api.Test;

class DischargeCurveErrorsTest {
    private static void assertBothRefuse(String message, List<CalibrationCatch> catches) {
        for (CurveModel model : CurveModel.values()) {
            assertRefused(message, () -> DischargeCurve.fit(catches, model));
            assertRefused(message, () -> DischargeCurve.chosenByTest(catches, model));
        }
    }

    @Test
    void refusesNoCatch() {
        assertBothRefuse("calibration catches must be one or more: none", List.of());
    }

    @Test
    void refusesAConveyorThatNoGateMeters() {
        assertBothRefuse(
                "spreader must be one with a conveyor that an adjustable gate meters: auger, version 1 with no-gate,"
                        + " version 1",
                List.of(augerCatch(118.5, 2000)));
        // A gate that stands there and meters nothing.
        assertBothRefuse(
                "spreader must be one with a conveyor that an adjustable gate meters: auger, version 1 with"
                        + " sliding-gate, version 1",
                by(new Spreader(augerWith(SENSOR).conveyor(), CHAIN.gate(), SENSOR), at(4, 58)));
    }

    @Test
    void refusesAGateThatCantBeSet() {
        Spreader fixed = new Spreader(
                CHAIN.conveyor(), Gate.of(new FixedGate(), Map.of("width", inches(24), "height", inches(4))), SENSOR);

        assertBothRefuse(
                "spreader must be one with a conveyor that an adjustable gate meters: drag-chain, version 1 with"
                        + " fixed-opening, version 1",
                List.of(catchAt(CalibrationPoint.of(SALT, fixed, Setting.none()), caught(580), pulses(1000))));
    }

    @Test
    void refusesCatchesOfSeveralMeteringsOrMaterials() {
        Material sand = Material.of("sand", SALT.looseBulkDensity());

        assertBothRefuse(
                "catches of a discharge curve must be made with one metering and one material, salt: salt, another"
                        + " metering",
                List.of(at(4, 58), atMark(3, 40)));
        assertBothRefuse(
                "catches of a discharge curve must be made with one metering and one material, salt: sand",
                Stream.concat(Stream.of(at(4, 58)), by(CHAIN, sand, List.of(at(5, 75))).stream())
                        .toList());
        assertBothRefuse(
                "catches of a discharge curve must be made with one metering and one material, salt: salt, another"
                        + " metering",
                List.of(at(4, 58), augerCatch(118.5, 2000)));
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
                    .withMessageStartingWith("observations must be rising like the shape shifted by between ")
                    .withMessageEndingWith("no such shift fits best");
        }
    }
}
