package org.gritwright.examples.fleetday;

import static org.gritwright.units.SpreadingUnits.ONE;
import static org.gritwright.units.SpreadingUnits.POUND;
import static org.gritwright.units.SpreadingUnits.POUND_PER_CUBIC_FOOT;
import static org.gritwright.units.SpreadingUnits.PULSE;
import static org.gritwright.units.SpreadingUnits.PULSE_PER_REVOLUTION;

import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import org.gritwright.core.calibration.CalibrationCatch;
import org.gritwright.core.curve.CurveModel;
import org.gritwright.core.curve.DischargeCurve;
import org.gritwright.core.metering.Conveyor;
import org.gritwright.core.metering.DragChain;
import org.gritwright.core.metering.Gate;
import org.gritwright.core.metering.ShaftCount;
import org.gritwright.core.metering.ShaftSensor;
import org.gritwright.core.metering.SlidingGate;
import org.gritwright.core.metering.Spreader;
import org.gritwright.core.metering.TableGate;
import org.gritwright.core.observation.CalibrationPoint;
import org.gritwright.core.observation.Material;
import org.gritwright.core.observation.Observation;
import org.gritwright.core.spi.Setting;
import org.gritwright.core.weighing.CaughtMass;
import org.gritwright.core.weighing.Scale;
import org.gritwright.core.weighing.Weighing;
import org.gritwright.units.Amounts;

/** Discharge curves from catches of ten revolutions each, in pounds per revolution. */
final class CaughtCurves {
    private static final Material SALT = Material.of("road salt", Amounts.of(80, POUND_PER_CUBIC_FOOT));

    private final Gate gate;
    private static final OffsetDateTime AT = OffsetDateTime.parse("2026-10-19T08:40:00-05:00");
    private final List<CalibrationCatch> catches = new ArrayList<>();

    private CaughtCurves(Gate gate) {
        this.gate = gate;
    }

    /** A gate whose open area is in proportion to the opening. */
    static CaughtCurves slidingGate(String highestOpening) {
        return new CaughtCurves(Gate.of(
                new SlidingGate(),
                Map.of("width", Amounts.parseAny("24 in"), "highestOpening", Amounts.parseAny(highestOpening))));
    }

    /** A gate with painted marks from 0 to 6, the open area in proportion to them. */
    static CaughtCurves paintedMarks() {
        return new CaughtCurves(Gate.of(
                TableGate.bySetting(),
                Map.of(
                        "settings",
                        IntStream.rangeClosed(0, 6)
                                .mapToObj(mark -> Amounts.of(mark, ONE))
                                .toList(),
                        "areas",
                        IntStream.rangeClosed(0, 6)
                                .mapToObj(mark -> Amounts.parseAny(60 * mark + " cm²"))
                                .toList())));
    }

    CaughtCurves at(String opening, double... poundsPerRevolution) {
        Scale scale = Scale.of("platform", Amounts.of(5000, POUND), Amounts.of(0.5, POUND));
        for (double pounds : poundsPerRevolution) {
            CaughtMass caught = CaughtMass.of(
                    scale,
                    AT.toLocalDate(),
                    new Weighing("tarp", Amounts.of(10 * pounds + 4, POUND), Amounts.of(4, POUND)));
            CalibrationPoint point = CalibrationPoint.of(SALT, spreader(), Setting.of(Amounts.parseAny(opening)));
            catches.add(CalibrationCatch.of(
                    Observation.of(point, AT, caught).counted(new ShaftCount.Pulses(Amounts.of(600, PULSE)))));
        }
        return this;
    }

    DischargeCurve fit(CurveModel model) {
        return DischargeCurve.fit(catches, model);
    }

    private Spreader spreader() {
        return new Spreader(
                Conveyor.of(
                        new DragChain(),
                        Map.of("teeth", Amounts.of(6, ONE), "chainPitch", Amounts.parseAny("2.609 in"))),
                gate,
                ShaftSensor.of(Amounts.of(60, PULSE_PER_REVOLUTION)));
    }
}
