package org.gritwright.core.curve;

import static org.gritwright.core.LiquidSamples.gallons;
import static org.gritwright.core.Samples.DAY;
import static org.gritwright.core.Samples.NOON;
import static org.gritwright.core.Samples.SENSOR;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import javax.measure.Quantity;
import javax.measure.quantity.Volume;
import org.gritwright.core.LiquidSamples;
import org.gritwright.core.calibration.CalibrationCatch;
import org.gritwright.core.metering.ShaftCount;
import org.gritwright.core.observation.CalibrationPoint;
import org.gritwright.core.observation.Observation;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.core.weighing.Graduate;
import org.gritwright.core.weighing.ReadVolume;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.quantity.RotationalSpeed;
import org.gritwright.units.quantity.VolumePerRevolution;

/** Catches of a pump at several shaft speeds, read so finely that only what they say counts. */
public final class SlipSamples {
    static final CalibrationPoint POINT = LiquidSamples.pumpPoint(SENSOR);

    private static final Graduate TANK =
            Graduate.of("tank", gallons(5000), gallons(0.0001)).within(gallons(0.0001));

    private SlipSamples() {}

    public static Quantity<RotationalSpeed> rpm(double revolutionsPerMinute) {
        return Amounts.of(revolutionsPerMinute, SpreadingUnits.REVOLUTION_PER_MINUTE);
    }

    static CalibrationCatch caught(Quantity<Volume> volume, ShaftCount count) {
        return CalibrationCatch.of(
                Observation.of(POINT, NOON, ReadVolume.of(TANK, DAY, volume)).counted(count));
    }

    /** A hundred revolutions. */
    static TimedCatch at(double rpm, double gallonsPerRevolution) {
        return at(rpm, 100, gallonsPerRevolution);
    }

    static TimedCatch at(double rpm, double revolutions, double gallonsPerRevolution) {
        return TimedCatch.of(caught(
                gallons(revolutions * gallonsPerRevolution),
                new ShaftCount.SpeedTimesTime(rpm(rpm), Amounts.of(60 * revolutions / rpm, SpreadingUnits.SECOND))));
    }

    /** A gallon every 20 revolutions, less 2 gal/min. */
    public static double leaking(double rpm) {
        return 0.05 - 2 / rpm;
    }

    /** Two catches at each speed, a hundredth too much and too little. */
    public static List<TimedCatch> pairs(DoubleUnaryOperator gallonsPerRevolution, double... rpm) {
        List<TimedCatch> catches = new ArrayList<>();
        for (double speed : rpm) {
            double volume = gallonsPerRevolution.applyAsDouble(speed);
            catches.addAll(List.of(at(speed, 1.01 * volume), at(speed, 0.99 * volume)));
        }
        return catches;
    }

    static SlipCurve curve(TimedCatch... catches) {
        return SlipCurve.chosenByTest(Arrays.asList(catches));
    }

    static double gallonsPerRevolution(Measured<VolumePerRevolution> measured) {
        return Amounts.in(measured.value(), SpreadingUnits.US_GALLON_PER_REVOLUTION);
    }

    public static double gallonsPerRevolution(SlipCurve curve, double rpm) {
        return gallonsPerRevolution(curve.volumePerRevolution(rpm(rpm)));
    }

    /** The standard uncertainty, relative. */
    static double relative(Measured<VolumePerRevolution> measured) {
        return Amounts.si(
                        VolumePerRevolution.class,
                        measured.standardUncertainty().orElseThrow())
                / Amounts.si(VolumePerRevolution.class, measured.value());
    }
}
