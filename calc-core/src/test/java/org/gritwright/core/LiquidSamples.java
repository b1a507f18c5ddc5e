package org.gritwright.core;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Volume;
import org.gritwright.core.calibration.CalibrationCatch;
import org.gritwright.core.calibration.CalibrationFactor;
import org.gritwright.core.calibration.CalibrationInForce;
import org.gritwright.core.metering.DisplacementPump;
import org.gritwright.core.metering.DriveFeedback;
import org.gritwright.core.metering.FlowMeter;
import org.gritwright.core.metering.FlowMetering;
import org.gritwright.core.metering.KFactorMeter;
import org.gritwright.core.metering.Pump;
import org.gritwright.core.metering.PumpMetering;
import org.gritwright.core.metering.TablePump;
import org.gritwright.core.observation.CalibrationPoint;
import org.gritwright.core.observation.Material;
import org.gritwright.core.observation.Observation;
import org.gritwright.core.spi.Setting;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.core.weighing.Caught;
import org.gritwright.core.weighing.Graduate;
import org.gritwright.core.weighing.ReadVolume;
import org.gritwright.core.weighing.WeighedVolume;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.quantity.BulkDensity;

/** What tests of liquids share: brine, a flow meter with 1200 pulses a gallon, and a pump of 0.05 gallons a revolution. */
public final class LiquidSamples {
    public static final Material BRINE = Material.liquid("brine", poundsPerGallon(9.8));

    public static final FlowMetering METER = meter(1200);

    public static final CalibrationPoint METER_POINT = CalibrationPoint.of(BRINE, METER, Setting.none());

    /** A pail that is read to 0.05 gal and right to 0.03 gal. */
    public static final Graduate PAIL =
            Graduate.of("P-1", gallons(6), gallons(0.05)).within(gallons(0.03));

    private LiquidSamples() {}

    public static FlowMetering meter(double pulsesPerGallon) {
        return new FlowMetering(FlowMeter.of(
                new KFactorMeter(),
                Map.of(
                        KFactorMeter.K_FACTOR.name(), Amounts.of(pulsesPerGallon, SpreadingUnits.PULSE_PER_US_GALLON),
                        KFactorMeter.LOW_FLOW_CUTOFF.name(), Amounts.of(0.5, SpreadingUnits.US_GALLON_PER_MINUTE),
                        KFactorMeter.HIGHEST_FLOW.name(), Amounts.of(50, SpreadingUnits.US_GALLON_PER_MINUTE))));
    }

    public static PumpMetering pump(DriveFeedback feedback) {
        return new PumpMetering(
                Pump.of(
                        new DisplacementPump(),
                        Map.of(
                                DisplacementPump.DISPLACEMENT.name(),
                                Amounts.of(0.05, SpreadingUnits.US_GALLON_PER_REVOLUTION))),
                feedback);
    }

    /** A pump of 0.05 gal/rev that is known from one speed to another, in rev/min. */
    public static Pump tablePump(double slowest, double fastest) {
        return Pump.of(
                new TablePump(),
                Map.of(
                        TablePump.SPEEDS.name(),
                        List.of(
                                Amounts.of(slowest, SpreadingUnits.REVOLUTION_PER_MINUTE),
                                Amounts.of(fastest, SpreadingUnits.REVOLUTION_PER_MINUTE)),
                        TablePump.FLOWS.name(),
                        List.of(
                                Amounts.of(0.05 * slowest, SpreadingUnits.US_GALLON_PER_MINUTE),
                                Amounts.of(0.05 * fastest, SpreadingUnits.US_GALLON_PER_MINUTE))));
    }

    public static CalibrationPoint pumpPoint(DriveFeedback feedback) {
        return CalibrationPoint.of(BRINE, pump(feedback), Setting.none());
    }

    public static Quantity<Volume> gallons(double gallons) {
        return Amounts.of(gallons, SpreadingUnits.US_GALLON);
    }

    public static Quantity<BulkDensity> poundsPerGallon(double density) {
        return Amounts.of(density, SpreadingUnits.POUND_PER_US_GALLON);
    }

    public static ReadVolume read(double gallons) {
        return ReadVolume.of(PAIL, Samples.DAY, gallons(gallons));
    }

    /** On the samples' scale, at a density that is known to 0.02 lb/gal. */
    public static WeighedVolume weighed(double pounds, double poundsPerGallon) {
        return new WeighedVolume(
                Samples.caught(pounds),
                Measured.of(poundsPerGallon(poundsPerGallon), poundsPerGallon(0.02), Double.POSITIVE_INFINITY));
    }

    public static CalibrationCatch catchAt(CalibrationPoint point, Caught caught, double pulses) {
        return CalibrationCatch.of(Observation.of(point, Samples.NOON, caught).counted(Samples.pulses(pulses)));
    }

    /** A flow meter's factor in a display. */
    public static CalibrationInForce inForce(double pulsesPerGallon) {
        return CalibrationInForce.of(
                METER_POINT,
                CalibrationFactor.of(Amounts.of(pulsesPerGallon, SpreadingUnits.PULSE_PER_US_GALLON)),
                Optional.empty());
    }
}
